"""Figures and report of 25 frequencies, `python benchmarks/report.py`; exit code 1 if the report takes 6 s or more.

The named baseline is the recipe on the same record: reading figures with their budgets costs some multiples of it.
"""

from __future__ import annotations

import sys
import tempfile
import time
from dataclasses import replace
from pathlib import Path

from colure.app import services
from colure.app.services.rehearsal import record_of_rehearsal
from colure.app.storage.folders import run_folder
from colure.model.campaign import Campaign
from colure.model.chamber import SimulatedChamber
from colure.model.files import save_dataset
from colure.planning.preflight import make_plan

FREQUENCIES, LIMIT_S = 25, 6.0


def main() -> int:
    """Run the benchmark; 1 if the limit is missed."""
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name) / "c"
        services.new_campaign(folder)
        base = Campaign.load(folder)
        campaign, plan = make_plan(replace(base, goal=base.goal.model_copy(update={"points": FREQUENCIES})))
        run = run_folder(folder, "first")
        run.path.mkdir(parents=True)
        save_dataset(
            record_of_rehearsal(campaign, plan, truth=SimulatedChamber(seed=1, drift_db=0.3, drift_deg=10)), run.record
        )
        times = {}
        begin = time.perf_counter()
        done = services.process(campaign, run)
        times["recipe"] = time.perf_counter() - begin
        begin = time.perf_counter()
        figures = services.evaluate(done, run)
        times["figures with budgets"] = time.perf_counter() - begin
        begin = time.perf_counter()
        services.write_report(campaign, plan, run, done, figures)
        times["report"] = time.perf_counter() - begin
        for what, seconds in times.items():
            print(f"{what}: {seconds:.2f} s, {seconds / times['recipe']:.1f} times the recipe", flush=True)
        good = times["report"] < LIMIT_S
        print(f"{'ok  ' if good else 'MISS'} report of {FREQUENCIES} frequencies (limit {LIMIT_S:g} s)")
    return 0 if good else 1


if __name__ == "__main__":
    sys.exit(main())
