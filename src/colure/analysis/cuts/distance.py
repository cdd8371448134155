"""What a finite distance does to a cut that nobody transforms: worked out on apertures as long as the device.

Evenly lit and tapered (cosine) apertures speak for the device, in phase and with an edge that leads or lags by 90 deg, as in
a horn; the true effect is taken to lie between the extremes that they show.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

import numpy as np

from colure.geometry.conventions import ComplexArray, FloatArray, wavenumber

#: How far beyond the extremes of the stand-ins the true effect may lie (common practice, no source).
MARGIN = 1.3
SOURCES = 81
ANGLES_DEG = np.linspace(0.0, 90.0, 451)


#: Phase of the stand-ins' edges against their middle, radians: a horn of greatest gain has about 90 deg (common practice, no source).
EDGES = (0.0, 0.5 * np.pi, -0.5 * np.pi)


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


@lru_cache(maxsize=4096)
def distance_error(
    *, along_m: float, across_m: float, distance_m: float, frequency_hz: float, levels_db: tuple[float, ...]
) -> DistanceError:
    """Return what a distance does to an aperture `along_m` in the cut's plane and `across_m` across it."""
    k = float(wavenumber(frequency_hz))
    peaks, floors = [0.0], [0.0]
    widths: dict[float, list[float]] = {level: [0.0] for level in levels_db}
    for taper in (False, True):
        for edge in EDGES:
            near, far = (_pattern(k, along_m, where, tapered=taper, edge=edge) for where in (distance_m, None))
            one, two = (abs(_pattern(k, across_m, where, tapered=taper, edge=edge)[0]) for where in (distance_m, None))
            peaks.append(float(20.0 * np.log10(abs(near[0]) / abs(far[0]) * one / two)))
            a, b = np.abs(near) / abs(near[0]), np.abs(far) / abs(far[0])
            for level in levels_db:
                measured, true = _crossing(a, level), _crossing(b, level)
                if np.isfinite(measured) and np.isfinite(true):
                    widths[level].append(measured / true - 1.0)
            floors.append(float(np.abs(a - b)[_first_null(b) :].max()))
    return DistanceError(
        _extremes(peaks), {level: _extremes(found) for level, found in widths.items()}, MARGIN * max(floors)
    )


def _extremes(found: list[float]) -> tuple[float, float]:
    return MARGIN * min(found), MARGIN * max(found)


def _pattern(k: float, length_m: float, distance_m: float | None, *, tapered: bool, edge: float) -> ComplexArray:
    """Return the pattern of a line of sources at `ANGLES_DEG`, at a distance or far away."""
    u = np.linspace(-0.5, 0.5, SOURCES)
    x = u * max(length_m, 1e-9)
    weight = (np.cos(np.pi * u) if tapered else np.ones(SOURCES)) * np.exp(1j * edge * (2.0 * u) ** 2)
    angle = np.deg2rad(ANGLES_DEG)[:, None]
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
