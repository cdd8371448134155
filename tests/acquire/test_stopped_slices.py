"""A stop inside a slice flown by pulses: what was proven up to it is kept, all else is flown again, on simulated instruments."""

from __future__ import annotations

import re
import threading
import time
from dataclasses import dataclass, replace
from itertools import pairwise

import numpy as np
import pytest

from colure.acquire.engine import Engine
from colure.acquire.journal import Journal
from colure.acquire.latched import PulseTrain
from colure.acquire.outcome import Options
from colure.acquire.states import State
from colure.acquire.stopped import at_full_speed
from colure.app import services
from colure.app.storage.folders import run_folder
from colure.errors import InstrumentError
from colure.model.faults import FaultKind
from tests.acquire.test_faults import with_faults
from tests.acquire.test_pulses import flown, require_equal, to_every_frequency, world_that_flies
from tests.instruments.range_beside import require_right

#: Of 12 sweeps of a slice the first so many have been started when somebody stops.
STARTED = 6


@dataclass
class Stopped:
    """What a run that was stopped in its third slice and resumed has left: indices of that slice kept by the stop, and all rows."""

    kept: list[int]
    rows: dict
    pulses: list[int]


def stop_and_resume(folder, path, *, more: str, faults=(), abort: bool = False) -> Stopped:
    """Stop where the sixth sweep of the third slice has begun, and go on in another session."""
    world, plan = world_that_flies(folder, more, faults)
    journal, stage, pulses, asked = Journal.create(path, plan, {}), world.stage, [], []

    def stop() -> None:
        asked.append(True)
        (engine.abort if abort else engine.stop)("enough")

    wait_idle, set_pulses, next_pulse = stage.wait_idle, stage.set_pulses, stage.next_pulse
    each = plan.pulses_each

    def due() -> list[float]:
        """Return the moments of the third slice's pulses while it is flown and nobody has stopped."""
        moments = stage.pulses_after(0.0) if len(pulses) == 3 and not asked else []
        return moments if stage.busy_until() > stage.clock.now() else []

    def stopping_wait(dwell_s):
        """Time passes only where somebody waits: for the end of the move, where the analyzer keeps its sweeps."""
        if "buffered" in more and (moments := due()):
            stage.clock.wait_until(moments[STARTED * each - 1] + 1e-3)
            stop()
        return wait_idle(dwell_s)

    def stopping_pulse(after):
        if "buffered" not in more and (moments := due()) and after > moments[STARTED - 2]:
            stop()
        return next_pulse(after)

    stage.wait_idle, stage.next_pulse = stopping_wait, stopping_pulse
    stage.set_pulses = lambda one: (pulses.append(one.count // each), set_pulses(one))[1]
    engine = world.engine(plan, journal, options=Options(threads=False, pause_limit_s=1e-3))
    outcome = engine.run()
    assert outcome.state is (State.ABORTED if abort else State.STOPPED), outcome
    third = np.unique(plan.line_index[plan.line_index >= 0])[2]
    kept = [
        row.plan_index for row in journal.rows() if row.plan_index >= 0 and plan.line_index[row.plan_index] == third
    ]
    assert asked
    outcome = world.engine(plan, journal, options=Options(threads=False, pause_limit_s=1e-3, home=abort)).run()
    assert outcome.state is State.DONE and outcome.flagged == 0, outcome
    rows = {row.plan_index: row for row in journal.rows() if row.plan_index >= 0}
    assert journal.verify().whole and len(rows) == len(plan)
    journal.close()
    return Stopped(kept, rows, pulses)


class KilledError(BaseException):
    """What no engine catches."""


def test_a_process_that_died_on_the_run_out_of_a_slice_before_a_tie_goes_on(tiny_campaign, tmp_path, monkeypatch):
    """Every point of the slice is kept, the axes stand behind its last one, and the plan goes the other way next."""
    world, plan = world_that_flies(tiny_campaign, "")
    lines, path = plan.line_index, tmp_path / "died.sqlite"
    last = next(i for i in range(len(plan) - 1) if lines[i] >= 0 and lines[i + 1] < 0)
    journal, execute, events = Journal.create(path, plan, {}), Engine._execute, []

    def dies(engine, missing):
        if missing[0] > last:
            raise KilledError
        execute(engine, missing)

    monkeypatch.setattr(Engine, "_execute", dies)
    with pytest.raises(KilledError):
        world.engine(plan, journal, options=Options(threads=False)).run()
    monkeypatch.setattr(Engine, "_execute", execute)
    axis = plan.axes.index(plan.settings["fly_axis"])
    beyond = abs(world.stage.positions()[plan.axes[axis]] - plan.targets_deg[last, axis])
    assert beyond == pytest.approx(plan.settings["run_up_deg"], abs=0.1)

    def listen(event):
        events.append(event)
        if event.kind == "tie":
            engine.finish("seen")

    engine = world.engine(plan, journal, listener=listen, options=Options(threads=False, pause_limit_s=1e-3))
    outcome = engine.run()
    assert outcome.state is State.DONE and outcome.measured > last + 1, outcome
    # Turned by hand meanwhile, by as much as nothing explains, it is refused all the same.
    journal.set_meta("rest", None)
    world.stage.shift_counts({plan.axes[axis]: 700.0})
    assert "stands at" in world.engine(plan, journal, options=Options(threads=False)).run().reason
    journal.close()


EACH = 'buffered = true\npulse_each = "frequency"\n'
LONG = pytest.mark.nightly


@pytest.mark.parametrize(
    "more",
    ["buffered = true\n", pytest.param("", marks=LONG), pytest.param(EACH, marks=LONG)],
    ids=["kept", "one by one", "each"],
)
def test_what_was_proven_before_a_stop_is_not_flown_again(tiny_campaign, tmp_path, more, request):
    if more == EACH:
        to_every_frequency(tiny_campaign)
    stopped = stop_and_resume(tiny_campaign, tmp_path / "stopped.sqlite", more=more)
    # The sixth may be of an axis that brakes already.
    assert len(stopped.kept) == STARTED - 1
    assert stopped.kept == list(range(stopped.kept[0], stopped.kept[0] + len(stopped.kept)))
    assert stopped.pulses[3] == 12 - len(stopped.kept), "the rest of the slice only"
    if not request.config.getoption("--nightly"):
        return
    _, _, (_, right) = flown(tiny_campaign, tmp_path / "right.sqlite", more=more)
    require_equal(stopped.rows, right, time_s=np.inf)
    for one, other in pairwise(stopped.kept):
        apart_s = right[other].time_s - right[one].time_s
        assert stopped.rows[other].time_s - stopped.rows[one].time_s == pytest.approx(apart_s, abs=1e-3)


#: Pulses are counted from the run's first, latched positions by how often they are read.
SPOILT = [
    ("buffered = true\n", ((FaultKind.PULSE_LOST, 27),), False),
    ("buffered = true\n", ((FaultKind.PULSE_DOUBLED, 27),), False),
    ("buffered = true\n", ((FaultKind.LATCH_OFF, 3),), False),
    ("", ((FaultKind.LATCH_OFF, 3),), False),
    # One lost and another doubled: as many as there should be, at other moments.
    ("buffered = true\n", ((FaultKind.PULSE_LOST, 26), (FaultKind.PULSE_DOUBLED, 28)), False),
    ("buffered = true\n", ((FaultKind.PULSE_LOST, 25), (FaultKind.PULSE_DOUBLED, 29)), False),
    ("buffered = true\n", (), True),
    ("", (), True),
]


@LONG
@pytest.mark.parametrize(("more", "faults", "abort"), SPOILT)
def test_nothing_is_kept_of_a_slice_whose_pulses_are_not_proven_or_whose_run_was_aborted(
    tiny_campaign, tmp_path, more, faults, abort
):
    _, _, (_, right) = flown(tiny_campaign, tmp_path / "right.sqlite", more=more)
    stopped = stop_and_resume(tiny_campaign, tmp_path / "stopped.sqlite", more=more, faults=faults, abort=abort)
    assert stopped.kept == [] and stopped.pulses[3] == 12
    require_equal(stopped.rows, right, time_s=np.inf)


@LONG
def test_nothing_is_kept_where_a_report_cannot_tell_one_place_from_the_next(tiny_campaign, tmp_path, monkeypatch):
    """Read one by one, sweeps and pulses are as many only at the end of a slice."""
    monkeypatch.setattr("colure.acquire.flying._tells_steps", lambda station, flight: False)
    stopped = stop_and_resume(tiny_campaign, tmp_path / "stopped.sqlite", more="")
    assert stopped.kept == [] and stopped.pulses[3] == 12


@LONG
def test_nothing_is_kept_where_the_analyzer_cannot_tell_when_its_sweeps_began(tiny_campaign, tmp_path, monkeypatch):
    monkeypatch.setattr("colure.instruments.scpi_analyzer.ScpiAnalyzer.moments", lambda analyzer, sweeps: None)
    stopped = stop_and_resume(tiny_campaign, tmp_path / "stopped.sqlite", more="buffered = true\n")
    assert stopped.kept == [] and stopped.pulses[3] == 12


TRAIN = PulseTrain(axis=0, name="azimuth", places_deg=np.arange(10.0), step_deg=1.0, speed_deg_s=2.0, modulo_deg=None)


@pytest.mark.parametrize(
    ("gaps_s", "count"),
    [([0.5] * 6, 6), ([0.5, 0.5, 0.5, 0.7, 1.4], 3), ([0.5, 0.5, 0.61, 0.9], 0), ([0.7, 0.5, 0.5], 0),
     ([0.56, 0.56, 0.56], 0), ([0.5, np.nan, 0.5], 0), ([], 0), ([0.5, 0.5, 0.5, 0.3, 0.5], 0),
     ([0.5, 0.5, 0.5, 0.01, 0.49], 0), ([0.5, 0.5, 0.5, 1.2, 0.5], 0), ([0.5, 0.5, 0.5, 0.66, 1.2], 3)],
)  # fmt: skip
def test_sweeps_count_up_to_the_last_but_one_that_came_at_the_planned_speed(gaps_s, count):
    """A step of 1 deg at 2 deg/s takes half a second; 0.61 s after two of it is 7 % slow on average."""
    assert at_full_speed(TRAIN, np.cumsum([3.0, *gaps_s])) == count


@pytest.mark.parametrize(("latched", "told"), [([0.0, 1.0, 2.3], "pulse 3 of 10"), ([0.0, np.nan], "pulse 2 of 10"),
                                               ([*range(11)], "must be 10 at most"), ([9.0, 8.0], "pulse 1 of 10")])  # fmt: skip
def test_positions_latched_before_a_stop_are_those_of_the_first_pulses(latched, told):
    with pytest.raises(InstrumentError, match=told):
        TRAIN.require_first(latched)
    assert TRAIN.by_sweep(TRAIN.require_first([0.1, 1.1, 1.9])).tolist() == [0.1, 1.1, 1.9]


def test_a_sweep_whose_last_pulses_were_not_given_has_no_place():
    train = replace(TRAIN, each=4)
    assert train.by_sweep(train.require_first([0.0, 0.25, 0.5, 0.75, 1.0, 1.25])).tolist() == [0.0]


@LONG
@pytest.mark.parametrize("more", ["buffered = true\n", ""], ids=["kept", "one by one"])
def test_a_slice_stopped_over_real_sockets_is_gone_on_with(tiny_campaign, more):
    """Threads, time-outs and a stop from another thread, in the middle of a slice."""
    goal, chamber = tiny_campaign / "goal.toml", tiny_campaign / "chamber.toml"
    goal.write_text('style = "fly"\n' + more + goal.read_text(encoding="utf-8"), encoding="utf-8")
    text = chamber.read_text(encoding="utf-8")
    for key, value in (("speed_deg_s", 80.0), ("acceleration_deg_s2", 400.0), ("settle_s", 0.05)):
        text = re.sub(rf"(?m)^{key} = \S+", f"{key} = {value:g}", text)
    chamber.write_text(text, encoding="utf-8")
    with_faults(tiny_campaign, extra="time_factor = 3\n")
    campaign, plan = services.make_plan(tiny_campaign)
    run, lines = run_folder(tiny_campaign, "first"), np.unique(plan.line_index[plan.line_index >= 0])
    ends, engines, timers, over_s = [int(np.flatnonzero(plan.line_index == line)[-1]) for line in lines[:3]], [], [], []

    def listen(event):
        if event.data.get("index") in ends[:2]:
            over_s.append(time.monotonic())
        if len(over_s) == 2 and not timers:
            timers.append(threading.Timer(0.6 * (over_s[1] - over_s[0]), engines[0].stop, ["enough"]))
            timers[0].start()

    outcome = services.acquire(campaign, plan, run, listener=listen, on_engine=engines.append)
    timers[0].join()
    assert outcome.state is State.STOPPED, outcome
    kept = 12 - (ends[2] + 1 - outcome.measured)
    outcome = services.acquire(campaign, plan, run, options=Options(position_confirmed=True))
    assert outcome.state is State.DONE, outcome
    print(f"{kept} of 12 kept, slices of {over_s[1] - over_s[0]:.2f} s")
    require_right(tiny_campaign, "first", points=len(plan), share=1e-3, twin="gcode")
    assert 0 < kept < 12
