"""The default recipe on large records, `python benchmarks/recipe.py [--large]`; exit code 1 if a limit is missed.

91 x 91 directions, 25 frequencies, 2 polarizations: below 2 s. 181 x 361 directions, 201 frequencies,
2 polarizations (3 GB of complex values on disk would be 0.4 GB): below 60 s and 6 GiB of memory.
"""

from __future__ import annotations

import resource
import sys
import tempfile
import time
from dataclasses import replace
from pathlib import Path

import numpy as np

from colure.analysis.pipeline.recipe import process
from colure.app import services
from colure.app.services.reference import probe_of
from colure.model.campaign import Campaign
from colure.model.record import build_record
from colure.planning.preflight import make_plan

FAILED: list[str] = []


def check(name: str, value: float, limit: float, unit: str) -> None:
    """Print a figure beside its limit and remember a miss."""
    good = value <= limit
    print(f"{'ok  ' if good else 'MISS'} {name}: {value:.2f} {unit} (limit {limit:g} {unit})", flush=True)
    if not good:
        FAILED.append(name)


def record_of(campaign: Campaign, plan: object, seed: int = 1) -> object:
    """Return a record of a plan filled with a smooth beam and noise: the recipe does the same work on any numbers."""
    from colure.model.plan import Plan

    assert isinstance(plan, Plan)
    rng = np.random.default_rng(seed)
    count, frequencies, ports = len(plan), plan.frequency_hz.size, len(plan.ports)
    beam = np.exp(-((plan.targets_deg[:, 0] / 20.0) ** 2))[:, None, None]
    trace = 1e-3 * beam * np.ones((1, frequencies, ports)) + 1e-7 * rng.normal(size=(count, frequencies, ports))
    moments = np.arange(count, dtype=float)
    return build_record(
        plan, plan_index=np.arange(count), role=plan.role, state_index=plan.state_index, trace=trace.astype(complex),
        commanded_deg=plan.targets_deg, readback_deg=plan.targets_deg, rate_deg_s=np.zeros_like(plan.targets_deg),
        time_s=moments, wall_time=moments, monotonic_s=moments, flags=np.zeros(count, np.int64),
    )  # fmt: skip


def timed(folder: Path, name: str, limit_s: float, **goal: object) -> None:
    """Process one record and compare with its limit."""
    base = Campaign.load(folder)
    chamber = base.chamber.model_copy(update={"tie_interval_s": 600.0})
    campaign = replace(base, chamber=chamber, goal=base.goal.model_copy(update=goal))
    campaign, plan = make_plan(campaign)
    record = record_of(campaign, plan)
    probe = probe_of(campaign, plan.frequency_hz)
    begin = time.perf_counter()
    done = process(record, campaign.chamber, campaign.device, probe=probe)  # type: ignore[arg-type]
    seconds = time.perf_counter() - begin
    steps = [step.step for step in done.recipe.steps if step.on] if done.recipe else []
    print(f"{name}: {len(plan)} points x {plan.frequency_hz.size} frequencies; {', '.join(steps)}")
    check(f"recipe, {name}", seconds, limit_s, "s")


def main() -> int:
    """Run the benchmarks; 1 if one is missed."""
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name) / "c"
        services.new_campaign(folder)
        timed(folder, "91 x 91 x 25 x 2, half sphere", 2.0, points=25, step_deg=2.0, region_deg=85.0)
        timed(folder, "91 x 91 x 25 x 2, whole sphere", 2.0, points=25, step_deg=4.0, swept_step_deg=2.0)
        if "--large" in sys.argv:
            timed(folder, "181 x 361 x 201 x 2", 60.0, points=201, step_deg=1.0)
            peak = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 2**20
            check("memory, 181 x 361 x 201 x 2", peak, 6.0, "GiB")
    return 1 if FAILED else 0


if __name__ == "__main__":
    sys.exit(main())
