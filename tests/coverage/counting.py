"""Complete simulated campaigns of a scenario, and for every figure the share of truths inside its interval.

`python -m tests.coverage.counting --draws 25 "dipole along x" ...` prints the tables; all scenarios if none is named.
`python -m tests.coverage.counting --draws 100 --processes 2 --minutes 38` takes a portion of every scenario in turn, begins no other when
the time is over, and ends with one line a scenario: campaigns, share inside, median |error|/U, worst single figure.
"""

from __future__ import annotations

import tempfile
import time
import traceback
from collections import defaultdict
from collections.abc import Sequence
from concurrent.futures import FIRST_COMPLETED, ProcessPoolExecutor, wait
from dataclasses import dataclass, replace
from pathlib import Path

import numpy as np

from colure.app import services
from colure.app.services.rehearsal import rehearse
from colure.model.campaign import Campaign
from tests.coverage.asking import arguments
from tests.coverage.scenarios import SCENARIOS, Scenario

#: Campaigns of a scenario that are carried out before the next one has its turn.
PORTION = 10


@dataclass(frozen=True)
class Case:
    """One figure of one campaign: inside its interval or not, and its error over half of it."""

    figure: str
    inside: bool
    ratio: float


@dataclass(frozen=True)
class Count:
    """All cases of a scenario, and CPU seconds of a campaign."""

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


def held(folder: Path, seeds: Sequence[int], really: Path | None = None) -> tuple[list[Case], dict[str, int], float]:
    """Carry campaigns out, in the chamber of `really` if given; also return how often figures were said to be undefined, and CPU seconds."""
    begin = time.process_time()
    campaign, plan = services.make_plan(folder)
    true = None if really is None else Campaign.load(really)
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
    return out, dict(undefined), time.process_time() - begin


def count(name: str, scenario: Scenario, draws: int, *, first: int = 1, processes: int = 1) -> Count:
    """Carry out `draws` campaigns of a scenario."""
    with tempfile.TemporaryDirectory() as where:
        folder, other = scenario.write(Path(where) / "campaign"), scenario.really()
        really = None if other is None else other.write(Path(where) / "really")
        seeds = range(first, first + draws)
        if processes == 1:
            parts = [held(folder, seeds, really)]
        else:
            with ProcessPoolExecutor(processes) as pool:
                shares = [list(seeds[i::processes]) for i in range(processes)]
                parts = list(pool.map(held, [folder] * processes, shares, [really] * processes))
    undefined: dict[str, int] = defaultdict(int)
    for _, more, _ in parts:
        for figure, times in more.items():
            undefined[figure] += times
    cases = [case for cases, _, _ in parts for case in cases]
    return Count(name, cases, draws, sum(seconds for _, _, seconds in parts) / draws, dict(undefined))


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
        f"median |error|/U {found.median:.2f}, {found.seconds:.2f} CPU s a campaign"
    ]
    for name, (cases, share, median) in found.by_figure().items():
        mark = "  <-- " if not 0.90 <= share <= 0.995 else ""
        if every or mark:
            lines.append(f"    {name:28s} {cases:5d} cases {100 * share:6.1f} %  {median:.2f}{mark}")
    if found.undefined:
        lines.append("    undefined: " + ", ".join(f"{n} {c}" for n, c in found.undefined.items()))
    return "\n".join(lines)


def merged(parts: Sequence[Count]) -> Count:
    """Return portions of one scenario as one."""
    campaigns, undefined = sum(one.campaigns for one in parts), defaultdict[str, int](int)
    for one in parts:
        for figure, times in one.undefined.items():
            undefined[figure] += times
    seconds = sum(one.seconds * one.campaigns for one in parts) / campaigns
    return Count(parts[0].scenario, [case for one in parts for case in one.cases], campaigns, seconds, dict(undefined))


def portion(name: str, first: int, draws: int) -> Count | str:
    """Carry a few campaigns of a scenario out; return what went wrong if they cannot be."""
    try:
        return count(name, SCENARIOS[name], draws, first=first)
    except Exception:
        return f"{name}, seeds from {first}: CRASHED\n{traceback.format_exc()}"


def count_all(
    names: Sequence[str], draws: int, *, first: int, processes: int, minutes: float
) -> tuple[list[Count], list[str]]:
    """Count scenarios portion by portion until all draws are done or the time is over: (counts, what crashed)."""
    end = time.perf_counter() + 60.0 * minutes
    found, crashed = defaultdict[str, list[Count]](list), list[str]()
    todo = [(n, first + i, min(PORTION, draws - i)) for i in range(0, draws, PORTION) for n in names][::-1]
    with ProcessPoolExecutor(processes) as pool:
        running = {pool.submit(portion, *todo.pop()) for _ in range(min(processes, len(todo)))}
        while running:
            done, running = wait(running, return_when=FIRST_COMPLETED)
            for one in done:
                got = one.result()
                if isinstance(got, str):
                    crashed.append(got)
                else:
                    found[got.scenario].append(got)
                if todo and time.perf_counter() < end:
                    running.add(pool.submit(portion, *todo.pop()))
    return [merged(found[name]) for name in names if found[name]], crashed


def summary(found: Sequence[Count]) -> str:
    """Return one line a scenario, and one for all together."""
    lines = [f"{'scenario':40s} {'n':>4s} {'inside':>7s} {'|e|/U':>6s} {'CPU s':>6s}  lowest figure"]
    for one in found:
        figures = {name: row for name, row in one.by_figure().items() if row[0] >= one.campaigns // 4}
        worst = min(figures, key=lambda name: figures[name][1])
        lines.append(
            f"{one.scenario:40s} {one.campaigns:4d} {100 * one.share:6.2f}% {one.median:6.2f} {one.seconds:6.2f}  "
            f"{worst} {100 * figures[worst][1]:.1f} % of {figures[worst][0]}"
        )
    everything = replace(merged(found), scenario="all")
    lines += ["", table(everything, every=True)]
    return "\n".join(lines)


def main() -> None:
    """Print the tables of the scenarios named."""
    parser = arguments(__doc__ or "")
    parser.add_argument("--minutes", type=float, default=600.0)
    parser.add_argument("--every", action="store_true")
    wanted = parser.parse_args()
    found, crashed = count_all(
        wanted.names or list(SCENARIOS),
        wanted.draws,
        first=wanted.first,
        processes=wanted.processes,
        minutes=wanted.minutes,
    )
    for one in found:
        print(table(one, every=wanted.every), flush=True)
    print("\n" + summary(found) if found else "nothing was counted")
    print("\n".join(crashed))


if __name__ == "__main__":
    main()
