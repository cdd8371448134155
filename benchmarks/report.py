"""Figures and report of 25 frequencies, and the report of a run with 8 beams, `python benchmarks/report.py`.

Exit code 1 if a report takes as long as its limit. The named baseline is the recipe on the same record: reading figures with their
budgets costs some multiples of it.
"""

from __future__ import annotations

import sys
import tempfile
import time
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path
from typing import TypeVar

from colure.app import services
from colure.app.services.rehearsal import record_of_rehearsal
from colure.app.storage.folders import RunFolder, run_folder
from colure.model.campaign import Campaign
from colure.model.chamber import SimulatedChamber
from colure.model.files import save_dataset
from colure.model.plan import Plan
from colure.planning.preflight import make_plan

T = TypeVar("T")
FREQUENCIES, LIMIT_S = 25, 6.0
STATES, STATES_LIMIT_S = 8, 12.0
STATES_TABLE = """
[states]
names = [{names}]
loop = "inner"
program = ["true"]
"""


def timed(times: dict[str, float], what: str, work: Callable[[], T]) -> T:
    """Carry something out and keep how long it took."""
    begin = time.perf_counter()
    out = work()
    times[what] = time.perf_counter() - begin
    return out


def rehearsed(campaign: Campaign, plan: Plan, truth: SimulatedChamber) -> RunFolder:
    """Put a record into a run's folder."""
    run = run_folder(campaign.folder, "first")
    run.path.mkdir(parents=True)
    save_dataset(record_of_rehearsal(campaign, plan, truth=truth), run.record)
    return run


def judged(times: dict[str, float], what: str, limit_s: float) -> bool:
    """Print the times, and whether the report keeps its limit."""
    for name, seconds in times.items():
        print(f"{name}: {seconds:.2f} s, {seconds / times['recipe']:.1f} times the recipe", flush=True)
    good = times["report"] < limit_s
    print(f"{'ok  ' if good else 'MISS'} report of {what} (limit {limit_s:g} s)", flush=True)
    return good


def many_frequencies(folder: Path) -> bool:
    """Measure the report of the demo's panel at 25 frequencies."""
    services.new_campaign(folder)
    base = Campaign.load(folder)
    campaign, plan = make_plan(replace(base, goal=base.goal.model_copy(update={"points": FREQUENCIES})))
    run = rehearsed(campaign, plan, SimulatedChamber(seed=1, drift_db=0.3, drift_deg=10))
    times: dict[str, float] = {}
    processed = timed(times, "recipe", lambda: services.process(campaign, run))
    figures = timed(times, "figures with budgets", lambda: services.evaluate(processed, run))
    timed(times, "report", lambda: services.write_report(campaign, plan, run, processed, figures))
    return judged(times, f"{FREQUENCIES} frequencies", LIMIT_S)


def many_states(folder: Path) -> bool:
    """Measure the report of the demo's panel with 8 beams at one frequency: it holds the coverage of all of them."""
    services.new_campaign(folder)
    device = folder / "device.toml"
    names = ", ".join(f'"b{i}"' for i in range(STATES))
    device.write_text(device.read_text("utf-8") + STATES_TABLE.format(names=names), "utf-8")
    base = Campaign.load(folder)
    one = base.goal.model_copy(update={"points": 1, "start_ghz": 24.0, "stop_ghz": 24.0})
    campaign, plan = make_plan(replace(base, goal=one))
    steered = tuple(-35.0 + 10.0 * i for i in range(STATES))
    run = rehearsed(campaign, plan, SimulatedChamber(seed=1, state_steer_deg=steered))
    first = run.state("b0")
    times: dict[str, float] = {}
    processed = timed(times, "recipe", lambda: services.process(campaign, first))
    figures = timed(times, "figures with budgets", lambda: services.evaluate(processed, first))
    timed(times, "report", lambda: services.write_report(campaign, plan, first, processed, figures))
    return judged(times, f"{STATES} states", STATES_LIMIT_S)


def main() -> int:
    """Run the benchmark; 1 if a limit is missed."""
    with tempfile.TemporaryDirectory() as name:
        good = [many_frequencies(Path(name) / "frequencies"), many_states(Path(name) / "states")]
    return 0 if all(good) else 1


if __name__ == "__main__":
    sys.exit(main())
