"""A cut between its samples: peak, widths, nulls and lobes of a curve through the measured fields."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise

import numpy as np
from scipy.interpolate import make_interp_spline
from scipy.signal import find_peaks

from colure.geometry.conventions import ComplexArray, FloatArray, amplitude_db
from colure.values import holds_arrays

#: Points of the curve between two samples.
FINER = 24
#: A lobe stands out from the dips beside it by at least this, dB.
LEAST_PROMINENCE_DB = 1.0
LOWEST = 1e-12


@dataclass(frozen=True)
@holds_arrays
class CutCurve:
    """Amplitude along a cut, finely: angle (m,) rising, degrees; closed where the cut runs round."""

    angle_deg: FloatArray
    amplitude: FloatArray
    closed: bool
    samples: int

    @property
    def level_db(self) -> FloatArray:
        """Level in dB."""
        return amplitude_db(np.maximum(self.amplitude, LOWEST))

    def at(self, angle_deg: float) -> float:
        """Return the amplitude at an angle, linear between fine points."""
        return float(np.interp(angle_deg, self.angle_deg, self.amplitude))


def curve_of(angle_deg: FloatArray, fields: tuple[ComplexArray, ...]) -> CutCurve | None:
    """Lay a curve through samples: each field by splines of order 5, amplitudes summed as powers.

    A cut that runs round once is closed: it goes on beyond its ends, half a turn to both sides. None below 4 samples.
    """
    order = np.argsort(angle_deg, kind="stable")
    angle = angle_deg[order]
    keep = np.append(True, np.diff(angle) > 1e-6)
    angle, chosen = angle[keep], order[keep]
    if angle.size < 4:
        return None
    step = float(np.median(np.diff(angle)))
    closed = bool(
        abs(angle[-1] - angle[0] - 360.0) < 0.51 * step or abs(angle[-1] + step - angle[0] - 360.0) < 0.51 * step
    )
    samples = [field[chosen] for field in fields]
    if closed:
        if angle[-1] - angle[0] > 360.0 - 0.5 * step:
            angle, samples = angle[:-1], [one[:-1] for one in samples]
        angle = np.concatenate([angle - 360.0, angle, angle + 360.0])
        samples = [np.tile(one, 3) for one in samples]
    fine = np.unique(np.concatenate([np.linspace(a, b, FINER, endpoint=False) for a, b in pairwise(angle)]))
    fine = np.append(fine, angle[-1])
    degree = min(5, angle.size - 1)
    degree -= 1 - degree % 2
    power = np.sum([np.abs(make_interp_spline(angle, one, k=degree)(fine)) ** 2 for one in samples], axis=0)
    return CutCurve(fine, np.sqrt(np.maximum(power, LOWEST**2)), closed, angle.size // (3 if closed else 1))


def thinned(angle_deg: FloatArray, fields: tuple[ComplexArray, ...], start: int) -> CutCurve | None:
    """Return the curve that every second sample gives, beginning at sample 0 or 1."""
    order = np.argsort(angle_deg, kind="stable")[start::2]
    return curve_of(angle_deg[order], tuple(field[order] for field in fields))


@dataclass(frozen=True)
class Lobes:
    """What a curve shows about its highest point; nan where the cut ends before it.

    peak_index
        Fine point of the peak; `at_end` where the level still rises at the cut's end.
    crossing_deg
        Angles left and right at which the level has fallen by each of the levels asked for.
    null_index, lobe_index
        First dip left and right, and the highest lobe beyond it; -1 where there is none.
    """

    curve: CutCurve
    peak_index: int
    at_end: bool
    crossing_deg: dict[float, tuple[float, float]]
    null_index: tuple[int, int]
    lobe_index: tuple[int, int]

    @property
    def peak_deg(self) -> float:
        """Angle of the peak."""
        return float(self.curve.angle_deg[self.peak_index])

    @property
    def peak(self) -> float:
        """Amplitude at the peak."""
        return float(self.curve.amplitude[self.peak_index])

    def within_of_end(self, step_deg: float) -> bool:
        """Tell whether the peak lies less than a step from an end of the cut, so that samples show it from one side only."""
        angle = self.curve.angle_deg
        return not self.curve.closed and min(self.peak_deg - angle[0], angle[-1] - self.peak_deg) < step_deg

    def width_deg(self, level_db: float) -> float:
        """Return the width at a level below the peak."""
        left, right = self.crossing_deg[level_db]
        return right - left


def lobes_of(curve: CutCurve, levels_db: tuple[float, ...], *, near_deg: float | None = None) -> Lobes:
    """Read peak, widths, nulls and lobes of a curve; the highest within 5 deg of `near_deg` if that is given."""
    angle, amplitude, level = curve.angle_deg, curve.amplitude, curve.level_db
    middle = np.abs(angle - 0.5 * (angle[0] + angle[-1])) <= 180.0 + 1e-9 if curve.closed else np.ones(angle.size, bool)
    if near_deg is not None:
        middle = middle & (np.abs(angle - near_deg) <= 5.0)
    peak = int(np.argmax(np.where(middle, amplitude, -1.0)))
    reach = np.abs(angle - angle[peak]) <= 180.0 + 1e-9 if curve.closed else np.ones(angle.size, bool)
    crossings = {one: _crossings(angle, level, peak, one) for one in levels_db}
    dips, _ = find_peaks(-level, prominence=LEAST_PROMINENCE_DB)
    tops, _ = find_peaks(level, prominence=LEAST_PROMINENCE_DB)
    nulls, side_lobes = [], []
    for side in (-1, 1):
        beside = [int(i) for i in dips if (i - peak) * side > 0 and reach[i]]
        null = min(beside, key=lambda i: abs(i - peak)) if beside else -1
        beyond = [int(i) for i in tops if null >= 0 and (i - null) * side > 0 and reach[i]]
        nulls.append(null)
        side_lobes.append(max(beyond, key=lambda i: amplitude[i]) if beyond else -1)
    at_end = not curve.closed and peak in (0, angle.size - 1)
    return Lobes(curve, peak, at_end, crossings, (nulls[0], nulls[1]), (side_lobes[0], side_lobes[1]))


def _crossings(angle: FloatArray, level: FloatArray, peak: int, down_db: float) -> tuple[float, float]:
    """Return where the level first lies `down_db` below the peak, left and right; nan where it does not."""
    out = []
    for side in (-1, 1):
        path = np.arange(peak, -1, -1) if side < 0 else np.arange(peak, level.size)
        below = np.flatnonzero(level[path] < level[peak] - down_db)
        if not below.size:
            out.append(float("nan"))
            continue
        i, j = int(path[below[0] - 1]), int(path[below[0]])
        share = (level[i] - level[peak] + down_db) / (level[i] - level[j])
        out.append(float(angle[i] + share * (angle[j] - angle[i])))
    return out[0], out[1]
