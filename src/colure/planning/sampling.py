"""How many waves, and so how many points."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from colure.geometry.conventions import order_within, wavelength, wavenumber

#: Steps a person can read and a controller can keep; all divide 180 deg.
_DIVISIONS = (
    *(8, 9, 10, 12, 15, 16, 18, 20, 24, 25, 30, 32, 36, 40, 45, 48, 50, 60, 72, 75, 80, 90, 100, 120, 144, 150),
    *(160, 180, 200, 225, 240, 250, 288, 300, 360, 400, 450, 480, 500, 600, 720, 900, 1000, 1200, 1800),
)
NICE_STEPS_DEG = tuple(180.0 / n for n in _DIVISIONS)


def order_for(*, reach_m: float, frequency_hz: float, level_db: float) -> int:
    """Return the order N that keeps the truncated remainder below `level_db` (negative, dB).

    `order_within` has the formula and its source;
    section 5 of the standards sheet lists residuals of -20 d dB or better.
    """
    return max(5, int(np.ceil(_with_excess(float(wavenumber(frequency_hz)) * reach_m, level_db))))


def azimuthal_order_for(*, lateral_m: float, frequency_hz: float, level_db: float, reach_deg: float = 180.0) -> int:
    """Return the highest order about the boresight axis that matters: it decides the number of slices.

    A source at distance rho from the axis gives waves J_m(k rho sin theta) exp(j m phi), which die
    out beyond m = k rho sin theta as those of a sphere do beyond n = k r (derivable), and the
    polarization turns along once. A device far in front of the axes' intersection has a large sphere, but needs
    no more slices for it.
    """
    side = np.sin(np.deg2rad(min(reach_deg, 90.0)))
    return max(5, 1 + int(np.ceil(_with_excess(float(wavenumber(frequency_hz)) * lateral_m * float(side), level_db))))


def _with_excess(kr: float, level_db: float) -> float:
    """Return k r with the excess that keeps what is left out below a level."""
    return order_within(kr, digits=max(1.0, -level_db / 20.0))


def step_for(order: int, *, oversampling: float = 1.0, readable: bool = True) -> float:
    """Return the largest step (degrees) that samples `order` on rings with poles.

    readable
        Take the next finer step that a person can read; otherwise exactly as many as needed.
    """
    intervals = int(np.ceil((order + 1) * oversampling))
    if not readable:
        return 180.0 / intervals
    for step in NICE_STEPS_DEG:
        if round(180.0 / step) >= intervals:
            return step
    return 180.0 / intervals


def order_of_step(step_deg: float) -> int:
    """Return the highest order that rings with poles at `step_deg` determine."""
    return round(180.0 / step_deg) - 1


def region_margin_deg(reach_m: float, range_length_m: float, edge_deg: float) -> float:
    """Return how far beyond a region a scan must reach, degrees.

    A far-field direction draws on the near field around it: rays from the rim of the turning
    sphere meet the measuring sphere up to asin(r0/A) away (common practice, no source). The edge
    of the fit, `edge_deg` wide, stays outside.
    """
    return float(np.rad2deg(np.arcsin(min(1.0, reach_m / range_length_m)))) + edge_deg


@dataclass(frozen=True, kw_only=True)
class PowerGrids:
    """Coarsest steps at which power figures are usually taken, degrees, and how this plan compares.

    total_power_step_deg, sensitivity_step_deg
        15 and 30 deg: handset test plans, 3GPP TR 25.914 / TS 37.544 (section 6 of the standards sheet).
    reference_step_deg
        lambda / D of the largest dimension: 3GPP TS 37.145-2 Annex F (from memory).
    sparsity
        Step of the plan over the reference step; below 1 nothing has to be allowed for.
    """

    total_power_step_deg: float
    sensitivity_step_deg: float
    reference_step_deg: float
    sparsity: float
    enough: bool


def unique_directions(step_deg: float) -> int:
    """Return the number of different directions of a whole-sphere grid with poles.

    2 + (180/step - 1)(360/step); every count in 3GPP TS 38.521-2 annex M follows from it.
    """
    return 2 + round((180.0 / step_deg - 1.0) * (360.0 / step_deg))


def power_grids(*, largest_m: float, frequency_hz: float, step_deg: float) -> PowerGrids:
    """Compare a plan's step with the grids that power figures are usually taken on."""
    reference = float(np.rad2deg(min(np.pi, float(wavelength(frequency_hz)) / largest_m)))
    sparsity = step_deg / min(reference, 15.0)
    return PowerGrids(
        total_power_step_deg=15.0,
        sensitivity_step_deg=30.0,
        reference_step_deg=reference,
        sparsity=sparsity,
        enough=bool(sparsity <= 1.0 + 1e-9),
    )
