"""Complete simulated campaigns of a scenario, and for every figure the share of truths inside its interval.

`python -m tests.coverage.counting --draws 25 "dipole along x" ...` prints the table; all scenarios if none is named.
"""

from __future__ import annotations

import argparse
import tempfile
import time
import traceback
from collections import defaultdict
from collections.abc import Sequence
from concurrent.futures import ProcessPoolExecutor
from dataclasses import dataclass
from pathlib import Path

import numpy as np

from colure.app import service
from colure.app.rehearsal import rehearse
from tests.coverage.scenarios import SCENARIOS, Scenario


@dataclass(frozen=True)
class Case:
    """One figure of one campaign: inside its interval or not, and its error over half of it."""

    figure: str
    inside: bool
    ratio: float


@dataclass(frozen=True)
class Count:
    """All cases of a scenario, and how long a campaign took."""

    scenario: str
    cases: list[Case]
    campaigns: int
    seconds: float
    undefined: dict[str, int]

    @property
    def share(self) -> float:
        """Share of all truths inside."""
        return float(np.mean([one.inside for one in self.cases])) if self.cases else float("nan")

    @property
    def median(self) -> float:
        """Median of |error| over half the interval."""
        known = [abs(one.ratio) for one in self.cases if np.isfinite(one.ratio)]
        return float(np.median(known)) if known else float("nan")

    def by_figure(self) -> dict[str, tuple[int, float, float]]:
        """Return (cases, share inside, median |error|/U) of every figure."""
        parts: dict[str, list[Case]] = defaultdict(list)
        for one in self.cases:
            parts[one.figure].append(one)
        return {
            name: (
                len(some),
                float(np.mean([one.inside for one in some])),
                float(np.median([abs(one.ratio) for one in some if np.isfinite(one.ratio)] or [np.nan])),
            )
            for name, some in parts.items()
        }


def held(folder: Path, seeds: Sequence[int], really: Path | None = None) -> tuple[list[Case], dict[str, int]]:
    """Carry campaigns out, in the chamber of `really` if given; also count the figures that were said to be undefined."""
    campaign, plan = service.make_plan(folder)
    true = None if really is None else service.Campaign.load(really)
    out, undefined = [], defaultdict[str, int](int)
    for seed in seeds:
        for one in rehearse(campaign, plan, seed=seed, true=true).findings:
            figure = one.figure
            if figure.value == one.truth == figure.lower == figure.upper:
                continue  # by definition exact, as squint and delay at the middle of three frequencies
            if np.isnan(figure.value) or np.isnan(one.truth):
                undefined[figure.name] += 1
                continue
            half = 0.5 * (figure.upper - figure.lower)
            ratio = one.error / half if np.isfinite(half) and half > 0 else float("nan")
            out.append(Case(figure.name, one.inside, ratio))
    return out, dict(undefined)


def count(name: str, scenario: Scenario, draws: int, *, first: int = 1, processes: int = 1) -> Count:
    """Carry out `draws` campaigns of a scenario."""
    with tempfile.TemporaryDirectory() as where:
        folder, other = scenario.write(Path(where) / "campaign"), scenario.really()
        really = None if other is None else other.write(Path(where) / "really")
        begin = time.perf_counter()
        seeds = range(first, first + draws)
        if processes == 1:
            parts = [held(folder, seeds, really)]
        else:
            with ProcessPoolExecutor(processes) as pool:
                shares = [list(seeds[i::processes]) for i in range(processes)]
                parts = list(pool.map(held, [folder] * processes, shares, [really] * processes))
        seconds = (time.perf_counter() - begin) / draws
    undefined: dict[str, int] = defaultdict(int)
    for _, more in parts:
        for figure, times in more.items():
            undefined[figure] += times
    return Count(name, [case for cases, _ in parts for case in cases], draws, seconds, dict(undefined))


def outside(found: Count, *, low: float, high: float) -> list[str]:
    """Return the figures whose share is not within bounds, in words."""
    return [
        f"{name}: {100 * share:.1f} % of {cases}"
        for name, (cases, share, _) in found.by_figure().items()
        if cases >= found.campaigns // 4 and not low <= share <= high
    ]


def table(found: Count, *, every: bool) -> str:
    """Return what was counted as text."""
    lines = [
        f"{found.scenario}: {found.campaigns} campaigns, {100 * found.share:.2f} % of {len(found.cases)} inside, "
        f"median |error|/U {found.median:.2f}, {found.seconds:.2f} s a campaign"
    ]
    for name, (cases, share, median) in found.by_figure().items():
        mark = "  <-- " if not 0.90 <= share <= 0.995 else ""
        if every or mark:
            lines.append(f"    {name:28s} {cases:5d} cases {100 * share:6.1f} %  {median:.2f}{mark}")
    if found.undefined:
        lines.append("    undefined: " + ", ".join(f"{n} {c}" for n, c in found.undefined.items()))
    return "\n".join(lines)


def main() -> None:
    """Print the table of the scenarios named."""
    parser = argparse.ArgumentParser()
    parser.add_argument("names", nargs="*")
    parser.add_argument("--draws", type=int, default=25)
    parser.add_argument("--first", type=int, default=1)
    parser.add_argument("--processes", type=int, default=1)
    parser.add_argument("--every", action="store_true")
    wanted = parser.parse_args()
    for name in wanted.names or SCENARIOS:
        try:
            found = count(name, SCENARIOS[name], wanted.draws, first=wanted.first, processes=wanted.processes)
        except Exception:
            print(f"{name}: CRASHED\n{traceback.format_exc()}", flush=True)
            continue
        print(table(found, every=wanted.every), flush=True)


if __name__ == "__main__":
    main()
