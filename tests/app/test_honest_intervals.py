"""Honest intervals: complete simulated campaigns, and for every figure the share of truths inside its 95 % interval.

The chamber of every campaign is drawn: drift, a room's walls, misalignment, the device's pose, a bending
cable, the probe's and the horn's impurity, noise, the reference's error. A sound interval holds the truth in
95 of 100; one that always does is too long to be of use.
"""

from __future__ import annotations

from collections import defaultdict
from concurrent.futures import ProcessPoolExecutor
from pathlib import Path

import numpy as np
import pytest

from colure.app import services
from colure.app.services.rehearsal import rehearse
from tests.endtoend.test_near_to_far import edited


def held(folder: Path, seeds: list[int]) -> list[tuple[str, bool, float]]:
    """Return (figure, inside, error over half the interval) of campaigns."""
    campaign, plan = services.make_plan(folder)
    out = []
    for seed in seeds:
        for one in rehearse(campaign, plan, seed=seed).findings:
            # By definition exact at the middle frequency.
            if one.figure.name == "squint_deg" and one.figure.value == 0.0:
                continue
            if np.isnan(one.truth):
                continue  # a small device has no such lobe
            half = 0.5 * (one.figure.upper - one.figure.lower)
            out.append((one.figure.name, one.inside, one.error / half if np.isfinite(half) and half > 0 else np.nan))
    return out


def campaigns(folder: Path, count: int) -> dict[str, list[tuple[bool, float]]]:
    """Return what `count` campaigns found, by figure; on two processes."""
    found: dict[str, list[tuple[bool, float]]] = defaultdict(list)
    with ProcessPoolExecutor(2) as pool:
        parts = list(pool.map(held, [folder, folder], [list(range(0, count, 2)), list(range(1, count, 2))]))
    for name, inside, ratio in (case for part in parts for case in part):
        found[name].append((inside, ratio))
    return found


@pytest.mark.nightly
def test_intervals_are_neither_too_short_nor_too_long(campaign_folder):
    """A light count of many scenarios stands in `coverage/test_matrix.py`."""
    edited(campaign_folder, "goal.toml", ("points = 11", "points = 3"))
    outside = []
    found = campaigns(campaign_folder, 200)
    for name, cases in found.items():
        share = float(np.mean([inside for inside, _ in cases]))
        known = [r**2 for _, r in cases if np.isfinite(r)] or [np.nan]
        ratio = float(np.sqrt(np.mean(known)))
        print(f"{name:24s} {len(cases)} cases, {100 * share:5.1f} % inside, rms error {ratio:.2f} of the half width")
        if not 0.92 <= share <= 0.99:
            outside.append(f"{name} {100 * share:.1f} %")
    total = float(np.mean([inside for cases in found.values() for inside, _ in cases]))
    print(f"all together {100 * total:.2f} %")
    assert not outside, outside
    assert 0.93 <= total <= 0.99
