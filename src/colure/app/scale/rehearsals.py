"""Many rehearsals side by side, and how often every figure's interval held the truth."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from colure.app.services.rehearsal import FigureAgainstTruth, rehearse
from colure.errors import InputError
from colure.model.campaign import Campaign
from colure.model.plan import Plan

#: From so many draws on, two processes share them.
SHARED_FROM, PROCESSES = 4, 2


@dataclass(frozen=True, kw_only=True)
class Draw:
    """What one of many rehearsals found; without its record and pattern."""

    seed: int
    findings: list[FigureAgainstTruth]
    seconds: float
    causes: list[tuple[str, int]]
    share_inside: float


@dataclass(frozen=True, kw_only=True)
class FigureCount:
    """One figure over all draws and frequencies.

    share_inside
        Share of the truths inside their intervals.
    median_ratio
        Median of |error| over half the interval; nan where no interval has two ends.
    """

    name: str
    label: str
    cases: int
    share_inside: float
    median_ratio: float


def draws_of(campaign: Campaign, plan: Plan, seeds: Sequence[int]) -> tuple[list[Draw], dict[int, str]]:
    """Rehearse a plan in many invented chambers: (what was found, why by seed where a chamber could not be processed).

    Raises
    ------
    InputError
        If none of them could.
    """
    from colure.app.scale.executors import Failed, workers_of

    if len(seeds) < SHARED_FROM:
        return [_draw((campaign, plan, seed)) for seed in seeds], {}
    draws, failed = dict[int, Draw](), dict[int, str]()
    with workers_of("processes", PROCESSES) as workers:
        for index, one in workers.run(_draw, [(campaign, plan, seed) for seed in seeds]):
            if isinstance(one, Failed):
                failed[seeds[index]] = str(one)
            else:
                draws[seeds[index]] = one
    if not draws:
        raise InputError([f"rehearsal: {next(iter(failed.values()))}"])
    return [draws[seed] for seed in seeds if seed in draws], failed


def _draw(task: tuple[Campaign, Plan, int]) -> Draw:
    campaign, plan, seed = task
    one = rehearse(campaign, plan, seed=seed)
    return Draw(
        seed=seed, findings=one.findings, seconds=one.seconds, causes=one.causes(), share_inside=one.share_inside
    )


def counts_by_figure(draws: Sequence[Draw]) -> list[FigureCount]:
    """Return every figure's share inside over draws and frequencies, in the figures' order."""
    cases: dict[str, list[FigureAgainstTruth]] = {}
    for draw in draws:
        for finding in draw.findings:
            if finding.counts:
                cases.setdefault(finding.figure.name, []).append(finding)
    out = []
    for name, some in cases.items():
        ratios = [one.ratio for one in some if np.isfinite(one.ratio)]
        median = float(np.median(ratios)) if ratios else float("nan")
        share = float(np.mean([one.inside for one in some]))
        out.append(
            FigureCount(name=name, label=some[0].figure.label, cases=len(some), share_inside=share, median_ratio=median)
        )
    return out
