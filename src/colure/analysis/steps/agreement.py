"""How well slices agree with each other, as a level below the peak."""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np

from colure.analysis.steps.assemble import components, evenly_spaced_slices
from colure.geometry.conventions import ComplexArray, FloatArray, amplitude_db
from colure.geometry.kinematics import Geometry
from colure.model.chamber import Chamber
from colure.model.record import grid_of

if TYPE_CHECKING:
    import xarray as xr


NOTHING_DB = -200.0


def level_db(ratio: float) -> float:
    """Return a field ratio in dB, not below `NOTHING_DB`."""
    return float(amplitude_db(max(ratio, 10.0 ** (NOTHING_DB / 20.0))))


def boresight_by_slice(record: xr.Dataset, chamber: Chamber) -> tuple[FloatArray, ComplexArray, float] | None:
    """Return what every complete slice says of the boresight, in a fixed frame; None if fewer than three saw it.

    (slice,) roll in degrees, (2, slice, frequency) components, and the largest component anywhere.
    """
    if chamber.positioner.geometry is not Geometry.ROLL_OVER_AZIMUTH or record.attrs["scheme"] == "one-pass":
        return None
    grid = grid_of(record)
    whole_slices = evenly_spaced_slices(record, grid.slices_planned, grid.swept_deg(chamber.positioner.geometry).size)
    pair, theta, phi = components(whole_slices, chamber)
    at_pole = np.abs(theta) < 1e-3
    if int(at_pole.sum()) < 3:
        return None
    angle = np.deg2rad(phi[at_pole])[:, None]
    first, second = pair[at_pole, :, 0], pair[at_pole, :, 1]
    # In a fixed frame all slices must say the same (Ludwig-3 pair at the pole).
    fixed = np.stack([np.cos(angle) * first - np.sin(angle) * second, np.sin(angle) * first + np.cos(angle) * second])
    return phi[at_pole], fixed, float(np.abs(pair).max())


def pole_spread_db(record: xr.Dataset, chamber: Chamber) -> float | None:
    """Return how much the slices disagree about the boresight, which all of them saw, below the peak; None if only one did."""
    boresight = boresight_by_slice(record, chamber)
    if boresight is None:
        return None
    _, fixed, peak = boresight
    spread = np.sqrt(np.mean(np.abs(fixed - fixed.mean(axis=1, keepdims=True)) ** 2))
    return level_db(float(spread / peak))
