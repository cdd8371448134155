"""The beam's direction from a few sweeps about it."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np

from colure.analysis.steps.drift import correct, declared_drift, track
from colure.geometry.conventions import FloatArray, power_db
from colure.geometry.directions import azimuth_over_elevation
from colure.geometry.kinematics import sighting
from colure.model.chamber import Chamber
from colure.model.plan import Role
from colure.model.record import of_role

if TYPE_CHECKING:
    import xarray as xr

#: The top of a beam is a surface of third degree in dB down to here.
TOP_DB = 5.0
#: Unknowns of that surface; the remainder tells how sure they are.
UNKNOWNS = 10
ROUNDS = 20


@dataclass(frozen=True, kw_only=True)
class BeamFound:
    """Where the beam was strongest, device frame (pole y), degrees; expanded (k = 2), nan where only looked at coarsely."""

    azimuth_deg: float
    elevation_deg: float
    azimuth_expanded_deg: float
    elevation_expanded_deg: float
    level_db: float


def strongest(record: xr.Dataset, chamber: Chamber) -> BeamFound:
    """Return the strongest direction of a coarse look, as it was sampled."""
    azimuth, elevation, level = levels_of(record, chamber)
    top = int(np.argmax(level))
    return BeamFound(
        azimuth_deg=float(azimuth[top]),
        elevation_deg=float(elevation[top]),
        azimuth_expanded_deg=float("nan"),
        elevation_expanded_deg=float("nan"),
        level_db=float(level[top]),
    )


def strongest_of_scan(record: xr.Dataset, chamber: Chamber) -> tuple[BeamFound, float]:
    """Return the strongest direction of a scan as it was sampled, and the level at the boresight in dB: first state, middle frequency.

    Raises
    ------
    ValueError
        If no sample lies within half a step of the boresight: the scan is no sphere about it.
    """
    names = {str(name) for name in record["axis"].values}
    if not set(chamber.positioner.geometry.axis_names) <= names:
        raise ValueError(f"beam search: the record's axes are {', '.join(sorted(names))}, another positioner's (axes)")
    middle, first = record.sizes["frequency"] // 2, np.flatnonzero(record["state_index"].values <= 0)
    azimuth, elevation, level = levels_of(record.isel(frequency=[middle]).isel(point=first), chamber)
    near = np.hypot(azimuth, elevation) <= 0.51 * float(record.attrs["step_deg"])
    if not near.any():
        raise ValueError("beam search: no sample at the boresight (deg)")
    # Several passes see a direction: together they hold both polarizations.
    places, which = np.unique(np.round(np.stack([azimuth, elevation], axis=-1), 3), axis=0, return_inverse=True)
    power = np.bincount(which.ravel(), 10.0 ** (level / 10.0)) / np.maximum(1, np.bincount(which.ravel()))
    top = int(np.argmax(power))
    at_boresight = float(np.mean(10.0 ** (level[near] / 10.0)))
    nan, top_db = float("nan"), float(power_db(power[top]))
    return BeamFound(
        azimuth_deg=float(places[top, 0]),
        elevation_deg=float(places[top, 1]),
        azimuth_expanded_deg=nan,
        elevation_expanded_deg=nan,
        level_db=top_db,
    ), float(power_db(at_boresight))


def beam_of(record: xr.Dataset, chamber: Chamber) -> BeamFound:
    """Return the top of a smooth surface through the strongest directions of a fine look.

    Raises
    ------
    ValueError
        If there are too few of them, or the beam's top does not lie among them.
    """
    azimuth, elevation, level = levels_of(record, chamber)
    top = level >= level.max() - TOP_DB
    if np.count_nonzero(top) < UNKNOWNS + 3:
        raise ValueError(
            f"beam search: {np.count_nonzero(top)} directions within {TOP_DB:g} dB, needs at least {UNKNOWNS + 3} (directions)"
        )
    centre = np.array([azimuth[top].mean(), elevation[top].mean()])
    x, y = azimuth[top] - centre[0], elevation[top] - centre[1]
    design = _terms(x, y)
    c, *_ = np.linalg.lstsq(design, level[top], rcond=None)
    place = _top(c, np.array([x, y])[:, int(np.argmax(level[top]))])
    if place is None:
        raise ValueError("beam search: the level has no top among the directions; look coarsely again (dB)")
    if abs(place[0]) > np.abs(x).max() or abs(place[1]) > np.abs(y).max():
        raise ValueError("beam search: the level's top lies outside the directions; look coarsely again (deg)")
    if _at_the_rim(azimuth, centre[0] + place[0]) or _at_the_rim(elevation, centre[1] + place[1]):
        raise ValueError("beam search: the level's top lies at the rim of the directions; look coarsely again (deg)")
    left = level[top] - design @ c
    sigma = float(np.sqrt(left @ left / max(1, left.size - UNKNOWNS)))
    slope = np.linalg.solve(_bend(c, place), _gradient_of(place) @ np.linalg.pinv(design))
    spread = 2.0 * sigma * np.linalg.norm(slope, axis=1)
    height = _terms(place[0], place[1]) @ c
    azimuth_deg, elevation_deg = (float(one) for one in centre + place)
    return BeamFound(
        azimuth_deg=azimuth_deg, elevation_deg=elevation_deg, azimuth_expanded_deg=float(spread[0]),
        elevation_expanded_deg=float(spread[1]), level_db=float(height),
    )  # fmt: skip


def _at_the_rim(angle_deg: FloatArray, top_deg: float) -> bool:
    """Tell whether a top lies within half a step of the outermost angles: a slope that the look cuts off has its top there."""
    known = np.unique(np.round(angle_deg, 3))
    step = float(np.median(np.diff(known))) if known.size > 1 else 0.0
    return not known[0] + 0.5 * step < top_deg < known[-1] - 0.5 * step


def _terms(x: FloatArray, y: FloatArray) -> FloatArray:
    """Return the terms of the surface at places (...), shape (..., unknown)."""
    return np.stack([np.ones_like(x), x, y, x * x, x * y, y * y, x**3, x * x * y, x * y * y, y**3], axis=-1)


def _gradient_of(place: FloatArray) -> FloatArray:
    """Return what turns the surface's coefficients into its slope at a place, (2, unknown)."""
    x, y = place
    return np.array([
        [0, 1, 0, 2 * x, y, 0, 3 * x * x, 2 * x * y, y * y, 0],
        [0, 0, 1, 0, x, 2 * y, 0, x * x, 2 * x * y, 3 * y * y],
    ], float)  # fmt: skip


def _bend(c: FloatArray, place: FloatArray) -> FloatArray:
    """Return the second derivatives of the surface at a place."""
    x, y = place
    across = c[4] + 2 * c[7] * x + 2 * c[8] * y
    return np.array(
        [[2 * c[3] + 6 * c[6] * x + 2 * c[7] * y, across], [across, 2 * c[5] + 2 * c[8] * x + 6 * c[9] * y]]
    )


def _top(c: FloatArray, start: FloatArray) -> FloatArray | None:
    """Return the surface's maximum near a place, or None if it bends upwards there."""
    place = start.astype(float)
    for _ in range(ROUNDS):
        bend = _bend(c, place)
        if np.any(np.linalg.eigvalsh(bend) >= 0.0):
            return None
        place = place - np.linalg.solve(bend, _gradient_of(place) @ c)
    return place


def levels_of(record: xr.Dataset, chamber: Chamber) -> tuple[FloatArray, FloatArray, FloatArray]:
    """Return azimuth and elevation in degrees and level in dB of every direction, both ports and all frequencies together."""
    scan = of_role(correct(record, track(record, declared=declared_drift(chamber))), Role.SCAN)
    names = [str(name) for name in record["axis"].values]
    geometry, shown = chamber.positioner.geometry, scan["commanded_deg"].values
    first, second = (
        np.deg2rad(chamber.axis_table[name].map.angle_deg(shown[:, names.index(name)])) for name in geometry.axis_names
    )
    azimuth, elevation = azimuth_over_elevation(sighting(geometry, first=first, second=second).direction)
    power = np.mean(np.sum(np.abs(scan["trace"].values) ** 2, axis=2), axis=1)
    return np.rad2deg(azimuth), np.rad2deg(elevation), power_db(power, least=1e-30)
