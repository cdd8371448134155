"""Control charts of a check antenna: Shewhart's chart of single values, and the cumulative sum of small shifts.

NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2.2 (individuals) and 6.3.2.3 (CUSUM).
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from colure.geometry.conventions import FloatArray
from colure.values import holds_arrays

#: Mean range of two values of a normal distribution with unit standard deviation (d2 for n = 2).
RANGE_OF_TWO = 1.128
#: Limits of the chart of single values, in standard deviations.
SHEWHART = 3.0
#: Allowance and decision interval of the cumulative sum, in standard deviations: on the average one false alarm in 465 runs.
ALLOWANCE, DECISION = 0.5, 5.0
#: Limits from fewer runs than this are no limits (common practice, no source).
LEAST_RUNS = 8


@dataclass(frozen=True, kw_only=True)
@holds_arrays
class ControlChart:
    """One figure of a check antenna over runs.

    centre, sigma
        Mean of the runs that set the limits, and their standard deviation from the mean moving range.
    low, high
        Shewhart's limits.
    rising, falling
        Cumulative sums (run,) of what exceeds the allowance, in the figure's unit; never negative.
    decision
        A sum above this is an alarm.
    baseline
        So many runs, the first ones, set the limits.
    """

    values: FloatArray
    centre: float
    sigma: float
    low: float
    high: float
    rising: FloatArray
    falling: FloatArray
    decision: float
    baseline: int

    @property
    def outside(self) -> list[int]:
        """Indices of the runs outside Shewhart's limits."""
        return [int(i) for i in np.flatnonzero((self.values < self.low) | (self.values > self.high))]

    @property
    def shifted(self) -> list[int]:
        """Indices of the runs at which a cumulative sum is beyond its decision interval."""
        return [int(i) for i in np.flatnonzero((self.rising > self.decision) | (self.falling > self.decision))]


def control_chart(values: Sequence[float], *, baseline: int) -> ControlChart:
    """Return the control chart of a figure over runs in the order of time; the first `baseline` of them set its limits.

    Raises
    ------
    ValueError
        If the baseline has fewer than `LEAST_RUNS` runs or more than there are, a value is no number, or all are equal.
    """
    x = np.asarray(values, float)
    if not LEAST_RUNS <= baseline <= x.size:
        raise ValueError(f"baseline = {baseline}: must be from {LEAST_RUNS} to {x.size} runs; fewer set no limits")
    if not np.all(np.isfinite(x)):
        raise ValueError("a run holds no value of this figure; leave the run or the figure out")
    first = x[:baseline]
    sigma = float(np.mean(np.abs(np.diff(first)))) / RANGE_OF_TWO
    if sigma <= 0.0:
        raise ValueError("all runs of the baseline hold the same value; no spread, no limits")
    centre = float(first.mean())
    rising, falling = cumulative_sums(x, target=centre, allowance=ALLOWANCE * sigma)
    return ControlChart(
        values=x,
        centre=centre,
        sigma=sigma,
        low=centre - SHEWHART * sigma,
        high=centre + SHEWHART * sigma,
        rising=rising,
        falling=falling,
        decision=DECISION * sigma,
        baseline=baseline,
    )


def cumulative_sums(values: FloatArray, *, target: float, allowance: float) -> tuple[FloatArray, FloatArray]:
    """Return the sums (run,) of how far values lie above, and below, a target by more than an allowance; they restart at zero."""
    rising, falling = np.zeros(values.size), np.zeros(values.size)
    up = down = 0.0
    for index, value in enumerate(values):
        up = max(0.0, up + value - target - allowance)
        down = max(0.0, down + target - value - allowance)
        rising[index], falling[index] = up, down
    return rising, falling
