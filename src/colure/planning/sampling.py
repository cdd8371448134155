"""How many waves, and so how many points."""

from __future__ import annotations

import numpy as np

from colure.geometry.conventions import wavenumber

#: Steps a person can read and a controller can keep; all divide 180 deg.
_DIVISIONS = (
    *(8, 9, 10, 12, 15, 16, 18, 20, 24, 25, 30, 32, 36, 40, 45, 48, 50, 60, 72, 75, 80, 90, 100, 120, 144, 150),
    *(160, 180, 200, 225, 240, 250, 288, 300, 360, 400, 450, 480, 500, 600, 720, 900, 1000, 1200, 1800),
)
NICE_STEPS_DEG = tuple(180.0 / n for n in _DIVISIONS)


def order_for(*, reach_m: float, frequency_hz: float, level_db: float) -> int:
    """Return the order N that keeps the truncated remainder below `level_db` (negative, dB).

    N = k r0 + 1.8 d^(2/3) (k r0)^(1/3) with d digits (Chew, Jin, Michielssen and Song (eds.),
    Fast and Efficient Algorithms in Computational Electromagnetics, 2001; from memory);
    section 5 of the standards sheet lists residuals of -20 d dB or better.
    """
    kr = float(wavenumber(frequency_hz)) * reach_m
    digits = max(1.0, -level_db / 20.0)
    return max(5, int(np.ceil(kr + 1.8 * digits ** (2 / 3) * kr ** (1 / 3))))


def step_for(order: int, *, oversampling: float = 1.0) -> float:
    """Return the largest readable step (degrees) that samples `order` on rings with poles."""
    intervals = int(np.ceil((order + 1) * oversampling))
    for step in NICE_STEPS_DEG:
        if round(180.0 / step) >= intervals:
            return step
    return 180.0 / intervals


def order_of_step(step_deg: float) -> int:
    """Return the highest order that rings with poles at `step_deg` determine."""
    return round(180.0 / step_deg) - 1


def region_margin_deg(reach_m: float, range_length_m: float, swept_step_deg: float) -> float:
    """Return how far beyond a region a scan must reach, degrees.

    A far-field direction draws on the near field around it: rays from the rim of the turning
    sphere meet the measuring sphere up to asin(r0/A) away (common practice, no source). One step
    more keeps the edge of the fit outside.
    """
    return float(np.rad2deg(np.arcsin(min(1.0, reach_m / range_length_m)))) + swept_step_deg
