"""Hundreds of simulated hours with faults at random, in several dialects, step by step and on the fly, with an operator who looks,
homes and resumes: `python -m tests.acquire.hours --seed N --hours 500 --minutes 60`.

The seed of the faults is another one in every run and after every restart; one number repeats all of it, with `--first K` from
its run K on."""

from __future__ import annotations

import argparse
import itertools
import shutil
import tempfile
import time
from pathlib import Path

import numpy as np

from colure.acquire.journal import Journal
from colure.acquire.outcome import Options
from colure.acquire.states import State
from colure.app import services
from tests.conftest import DEMO_DEVICE, tiny
from tests.world import world_of

#: The dialect of the axes and how often they are looked at, and what goal.toml says more.
KINDS = {"line": ("line", ""), "gcode": ("gcode", ""), "fly": ("unlatched", 'style = "fly"\n'),
         "latched": ("gcode", 'style = "fly"\n'), "kept": ("gcode", 'style = "fly"\nbuffered = true\n'),
         "each": ("gcode", 'style = "fly"\nbuffered = true\npulse_each = "frequency"\n')}  # fmt: skip
#: A run's own seed is this one's times 100,000 and the number of the run; twin.toml takes 31 bits.
MOST_SEEDS = 21_474
#: How many operations of 1000 fail; every fourth run of a dialect fails in none.
SHARE_PER_1000 = 150.0
#: Receiver noise of the runs with faults: 174 dB below 1 mW in 1 Hz, over 1 kHz, from 1 mW; seven times that is no noise any more.
#: Without any noise a frozen trace could not be told from a good one of the same place.
NOISE = 10.0 ** ((-174.0 + 30.0) / 20.0)

NO_NOISE = ("noise_figure_db = 30", "noise_figure_db = 0")
SLOW_AXES = (("speed_deg_s = 20", "speed_deg_s = 1"), ("acceleration_deg_s2 = 40", "acceleration_deg_s2 = 0.5"),
             ("speed_deg_s = 30", "speed_deg_s = 1"), ("acceleration_deg_s2 = 60", "acceleration_deg_s2 = 0.5"))  # fmt: skip


def big_positioner(folder: Path, seed: int, share: float, *, noise: bool) -> None:
    """Make of a campaign one with a heavy, slow positioner and much going wrong."""
    chamber = (folder / "chamber.toml").read_text(encoding="utf-8")
    for old, new in (*SLOW_AXES, NO_NOISE):
        chamber = chamber.replace(old, new)
    (folder / "chamber.toml").write_text(
        chamber.replace("tie_interval_s = 180\n", "tie_interval_s = 1800\n"), encoding="utf-8"
    )
    (folder / "twin.toml").write_text(
        # The same device whatever the seed of the faults.
        f"seed = {seed}\nnoise = {str(noise).lower()}\nrandom_faults_per_1000 = {share}\n" + DEMO_DEVICE,
        encoding="utf-8",
    )


class Operator:
    """Does what a person at the chamber would do, and checks the invariants every time."""

    def __init__(self, world, plan, journal, reference, seed):
        self.seed = seed
        self.world, self.plan, self.journal, self.reference = world, plan, journal, reference
        self.announced: set[int] = set()
        self.engine = None
        self.pauses = 0
        self.limits = [world.stage.axes[name] for name in plan.axes]

    def listen(self, event):
        index = event.data.get("index")
        if index is not None and index >= 0:
            assert index not in self.announced, "I3: a point was measured twice"
            self.announced.add(index)
        if event.data.get("state") == "paused":
            self.pauses += 1
            assert self.pauses < 2000, event.text
            self.world.clock.sleep(30.0)  # he walks there, closes the door, looks around
            assert self.world.stage.held.is_set(), "I4: motion during a pause"
            self.engine.resume()

    def work(self) -> int:
        """Run until the plan is done, restarting after faults; returns how many starts it took."""
        home = False
        for start in itertools.count(1):
            if start > 1:
                self.world.stage.faults.reseed((self.seed, start))
            self.world.scpi._identity = type(self.world.scpi).__init__.__globals__["IDENTITY"]
            options = Options(threads=False, pause_limit_s=1e-3, home=home)
            self.engine = self.world.engine(self.plan, self.journal, listener=self.listen, options=options)
            outcome = self.engine.run()
            self.check(outcome)
            if outcome.state is State.DONE:
                return start
            self.world.stage.reset()  # the emergency stop is reset by hand
            home = self.journal.meta("distrust") is not None
            assert start < 500, outcome
        raise AssertionError

    def check(self, outcome) -> None:
        """Invariants I1 to I5 of the reliability page."""
        done = self.journal.measured()
        assert self.announced == done, "I1: announced and saved differ"
        assert self.journal.meta("stops")[-1]["reason"], "I5: a stop without a reason"
        for row in self.journal.rows():
            if row.plan_index >= 0:
                wanted = self.reference[row.plan_index]
                assert row.flags or np.allclose(row.trace, wanted, rtol=1e-9, atol=7.0 * NOISE), (
                    f"I2: wrong value accepted: {row}"
                )
        for axis, place in zip(
            self.limits, self.world.stage.true_positions(self.world.time.now()).values(), strict=True
        ):
            assert axis.min_deg - 1e-6 <= place <= axis.max_deg + 1e-6, "I4: outside the limits"
        if outcome.state is not State.DONE:
            assert self.world.stage.held.is_set(), "I4: not held after a stop"


#: A pulse for every frequency needs more than one of them, and room for a step more beyond the last sweep.
FREQUENCIES, ROOM = (
    (("points = 1", "points = 3\nswept_step_deg = 30"), ("stop_ghz = 24.0", "stop_ghz = 24.1")),
    ("min_deg = -185\nmax_deg = 185", "min_deg = -230\nmax_deg = 230"),
)


def with_goal(folder: Path, goal: str, more: str) -> None:
    each = "pulse_each" in more
    for old, new in FREQUENCIES if each else ():
        goal = goal.replace(old, new)
    (folder / "goal.toml").write_text(goal + more, encoding="utf-8")
    chamber = (folder / "chamber.toml").read_text(encoding="utf-8")
    (folder / "chamber.toml").write_text(chamber.replace(*(ROOM if each else ROOM[::-1])), encoding="utf-8")


def reference_of(folder: Path, fast: Path, kind: str) -> dict[int, np.ndarray]:
    """Return the traces of an undisturbed run, by point of the plan."""
    big_positioner(folder, 1, 0.0, noise=False)
    world, plan = world_of(folder, kind=KINDS[kind][0], poll_s=5.0)
    truth = Journal.create(fast / f"truth-{kind}.sqlite", plan, {})
    assert world.engine(plan, truth).run().state is State.DONE
    found = {row.plan_index: row.trace for row in truth.rows() if row.plan_index >= 0}
    truth.close()
    return found


def long_run(
    folder: Path,
    fast: Path,
    seed: int,
    *,
    hours: float,
    faults: float,
    kinds: tuple[str, ...],
    minutes: float = float("inf"),
    first: int = 1,
    tell: bool = False,
) -> str:
    """Measure a campaign again and again until hours and faults are enough, or the time is over; returns what was seen."""
    goal = (folder / "goal.toml").read_text(encoding="utf-8")
    references = {}
    for kind in kinds:
        with_goal(folder, goal, KINDS[kind][1])
        references[kind] = reference_of(folder, fast, kind)
    seen = dict.fromkeys(("hours", "faults", "starts", "runs"), 0.0)
    begin, before = time.perf_counter(), first - 1

    def words() -> str:
        seconds = time.perf_counter() - begin
        return (f"{seen['hours']:.0f} h in {seen['runs']:.0f} runs and {seen['starts']:.0f} starts, {seen['faults']:.0f} faults, "
                f"{3600 * seen['hours'] / seconds:.0f} times real time, {seconds:.0f} s")  # fmt: skip

    while (seen["hours"] < hours or seen["faults"] < faults) and time.perf_counter() - begin < 60.0 * minutes:
        turn, which = divmod(before + int(seen["runs"]), len(kinds))
        seen["runs"] += 1
        kind = kinds[which]
        own = int(seed * 100_000 + before + seen["runs"])
        with_goal(folder, goal, KINDS[kind][1])
        big_positioner(folder, own, 0.0 if turn % 4 == 0 else SHARE_PER_1000, noise=True)
        world, plan = world_of(folder, kind=KINDS[kind][0], poll_s=5.0)
        path = fast / f"{own}.sqlite"
        journal = Journal.create(path, plan, {})
        try:
            starts = Operator(world, plan, journal, references[kind], own).work()
        except BaseException:
            print(f"seed {own}, {kind}, after {words()}; latest faults {world.stage.faults.happened[-5:]}", flush=True)
            raise
        assert journal.verify().whole
        journal.close()
        path.unlink()
        seen["starts"] += starts
        seen["hours"] += world.time.now() / 3600.0
        seen["faults"] += len(world.stage.faults.happened)
        if tell:
            print(f"{kind}: {starts} starts; {words()}", flush=True)
    return words()


def main() -> None:
    """Run it as said on the command line."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--seed", type=int, required=True)
    parser.add_argument("--first", type=int, default=1)
    parser.add_argument("--hours", type=float, default=500.0)
    parser.add_argument("--minutes", type=float, default=60.0)
    parser.add_argument("--kinds", nargs="+", choices=tuple(KINDS), default=tuple(KINDS))
    asked = parser.parse_args()
    if not 0 <= asked.seed < MOST_SEEDS:
        parser.error(f"--seed = {asked.seed}: must be from 0 to {MOST_SEEDS - 1}")
    fast = Path(tempfile.mkdtemp(dir=Path("/dev/shm") if Path("/dev/shm").is_dir() else None))
    try:
        services.new_campaign(fast / "campaign")
        print(long_run(tiny(fast / "campaign"), fast, asked.seed, hours=asked.hours, faults=0, kinds=tuple(asked.kinds),
                       minutes=asked.minutes, first=asked.first, tell=True))  # fmt: skip
    finally:
        shutil.rmtree(fast, ignore_errors=True)


if __name__ == "__main__":
    main()
