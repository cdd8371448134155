"""What a finite distance does to a cut that nobody transforms: worked out on apertures as long as the device.

Uniform and tapered (cosine) apertures model the device, in phase and with an edge that leads or lags by 90 deg, as in
a horn; the true effect is taken to lie between the extremes that they show.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

import numpy as np

from colure.geometry.conventions import ComplexArray, FloatArray, amplitude_db, wavenumber

#: How far beyond the extremes of the stand-ins the true effect may lie (common practice, no source).
MARGIN = 1.3
SOURCES = 61
ANGLES_DEG = np.linspace(0.0, 90.0, 226)
#: A stand-in is like the device if its widths at the range length differ from the measured ones by no more than this share.
LIKE = 0.25
#: Lengths of the stand-ins as shares of the declared one: a device may be lit in its middle, or its housing be larger.
LENGTHS = (1.0, 0.85, 0.7, 0.55, 0.4)


#: Phase of the stand-ins' edges against their middle, radians: a horn of greatest gain has about 90 deg (common practice, no source).
EDGES = (0.0, 0.25 * np.pi, -0.25 * np.pi, 0.5 * np.pi, -0.5 * np.pi)


@dataclass(frozen=True)
class DistanceError:
    """Extremes at one frequency for one cut: (lowest, highest) of measured less true.

    peak_db
        Of the level at the peak, dB.
    width
        Of a beamwidth, as a share of it, by level below the peak.
    floor
        Largest change of the field beyond the first null, relative to the peak.
    """

    peak_db: tuple[float, float]
    width: dict[float, tuple[float, float]]
    floor: float


def extent_m(size_mm: tuple[float, float, float], direction: FloatArray) -> float:
    """Return the extent of a box of that size along a direction of the device frame, metres."""
    return float(np.sum(np.abs(direction) * np.asarray(size_mm)) * 1e-3)


@dataclass(frozen=True)
class _StandIn:
    """Half widths in degrees by level, near and far; largest change of the field beyond the first null; change of the peak in dB."""

    near: dict[float, float]
    far: dict[float, float]
    floor: float
    peak_db: float

    def like(self, widths_deg: dict[float, float]) -> bool:
        """Tell whether its near pattern is as wide as a measured one, at every level that was measured."""
        return all(
            abs(2.0 * self.near[level] / width - 1.0) <= LIKE
            for level, width in widths_deg.items()
            if np.isfinite(width)
        )


@lru_cache(maxsize=4096)
def distance_error(
    *,
    along_m: float,
    across_m: float,
    distance_m: float,
    frequency_hz: float,
    levels_db: tuple[float, ...],
    widths_deg: tuple[float, ...] = (),
) -> DistanceError:
    """Return what a distance does to an aperture `along_m` in the cut's plane and `across_m` across it.

    widths_deg
        Measured widths at the levels, nan where unknown. Of the stand-ins only those count that would have been measured about
        as wide; all of the full length where none would, or where nothing was measured.
    """
    k = float(wavenumber(frequency_hz))
    every = [
        (share, _stand_in(k, share * along_m, share * across_m, distance_m, taper, edge, levels_db))
        for share in LENGTHS
        for taper in (False, True)
        for edge in EDGES
    ]
    longest = [one for share, one in every if share == 1.0]
    measured = dict(zip(levels_db, widths_deg, strict=False))
    chosen = [one for _, one in every if one.like(measured)] if any(np.isfinite(w) for w in widths_deg) else []
    chosen = chosen or longest
    widths = {
        level: [
            0.0,
            *(
                one.near[level] / one.far[level] - 1.0
                for one in chosen
                if np.isfinite(one.near[level] + one.far[level])
            ),
        ]
        for level in levels_db
    }
    return DistanceError(
        _extremes([0.0, *(one.peak_db for one in longest)]),
        {level: _extremes(errors) for level, errors in widths.items()},
        MARGIN * max(one.floor for one in chosen),
    )


def _stand_in(
    k: float, along_m: float, across_m: float, distance_m: float, taper: bool, edge: float, levels_db: tuple[float, ...]
) -> _StandIn:
    near, far = (_pattern(k, along_m, where, tapered=taper, edge=edge) for where in (distance_m, None))
    one, two = (
        abs(_pattern(k, across_m, where, tapered=taper, edge=edge, angles=0.0)[0]) for where in (distance_m, None)
    )
    peak_db = float(amplitude_db(abs(near[0]) / abs(far[0]) * one / two))
    a, b = np.abs(near) / abs(near[0]), np.abs(far) / abs(far[0])
    ends = [{level: _crossing(x, level) for level in levels_db} for x in (a, b)]
    return _StandIn(ends[0], ends[1], float(np.abs(a - b)[_first_null(b) :].max()), peak_db)


def _extremes(errors: list[float]) -> tuple[float, float]:
    return MARGIN * min(errors), MARGIN * max(errors)


def _pattern(
    k: float,
    length_m: float,
    distance_m: float | None,
    *,
    tapered: bool,
    edge: float,
    angles: float | FloatArray = ANGLES_DEG,
) -> ComplexArray:
    """Return the pattern of a line of sources at angles in degrees, at a distance or far away."""
    u = np.linspace(-0.5, 0.5, SOURCES)
    x = u * max(length_m, 1e-9)
    weight = (np.cos(np.pi * u) if tapered else np.ones(SOURCES)) * np.exp(1j * edge * (2.0 * u) ** 2)
    angle = np.deg2rad(np.atleast_1d(angles))[:, None]
    if distance_m is None:
        return np.asarray(np.exp(1j * k * x * np.sin(angle)) @ weight)
    r = np.sqrt(distance_m**2 + x**2 - 2.0 * distance_m * x * np.sin(angle))
    return np.asarray((distance_m / r * np.exp(-1j * k * (r - distance_m))) @ weight)


def _crossing(amplitude: FloatArray, level_db: float) -> float:
    """Return the angle (degrees) at which a pattern first falls below a level; nan if it never does."""
    below = np.flatnonzero(amplitude < 10.0 ** (-level_db / 20.0))
    if not below.size or below[0] == 0:
        return float("nan")
    i = int(below[0])
    level = 10.0 ** (-level_db / 20.0)
    share = (amplitude[i - 1] - level) / (amplitude[i - 1] - amplitude[i])
    return float(ANGLES_DEG[i - 1] + share * (ANGLES_DEG[i] - ANGLES_DEG[i - 1]))


def _first_null(amplitude: FloatArray) -> int:
    """Return where a pattern first rises again; 0 if it falls all the way."""
    rising = np.flatnonzero(np.diff(amplitude) > 0.0)
    return int(rising[0]) if rising.size else 0
