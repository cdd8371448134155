"""Widths, side lobes and nulls of one cut."""

from __future__ import annotations

import numpy as np

from colure.analysis.figures.cuts import GreatCircleCut
from colure.geometry.conventions import FloatArray, IntArray, amplitude_db, power_db

HALF_POWER_DB = float(power_db(2.0))
#: A cut must pass a level by this share of its power: one that only touches it (a turnstile at its horizon) stays above.
PASSES = 1e-4
#: A minimum belongs beside the main lobe below this share of the centre's amplitude.
MAIN_LOBE = 0.7
#: Angles along which one first side lobe is met, at most.
MOST_ON_PATH = 40


def beamwidth_deg(one: GreatCircleCut, level_db: float = HALF_POWER_DB) -> float:
    """Return the width of the main lobe `level_db` below the cut's centre; NaN if it never falls so far."""
    ends = edges_deg(one, level_db)
    return float(ends[0] + ends[1])


def edges_deg(one: GreatCircleCut, level_db: float = HALF_POWER_DB) -> tuple[float, float]:
    """Return how far the main lobe reaches to both sides of the cut's centre, degrees; NaN where it never falls so far."""
    power = one.amplitude**2
    centre = power.size // 2
    threshold = power[centre] * 10.0 ** (-level_db / 10.0)
    step = float(one.angle_deg[1] - one.angle_deg[0])
    ends = []
    for side in (power[centre:], power[centre::-1]):
        below = np.flatnonzero(side < threshold * (1.0 - PASSES))
        if below.size == 0:
            ends.append(float("nan"))
            continue
        last_above = int(np.flatnonzero(side[: below[0]] >= threshold)[-1])
        ends.append(step * _crossing(side, last_above + 1, threshold))
    return ends[0], ends[1]


def _crossing(values: FloatArray, i: int, threshold: float) -> float:
    """Return the fractional index at which falling values pass a threshold between i - 1 and i.

    Inverse cubic interpolation through the four neighbours where they fall steadily.
    """
    first = min(max(i - 2, 0), values.size - 4)
    near = values[first : first + 4]
    if not np.all(np.diff(near) < 0.0):
        return float(i - 1 + (values[i - 1] - threshold) / (values[i - 1] - values[i]))
    a, b, c, d = (float(v) for v in near)
    x = float(threshold)
    # Lagrange: the index as a cubic of the value; the first index is 0 and needs no term.
    second = (x - a) * (x - c) * (x - d) / ((b - a) * (b - c) * (b - d))
    third = (x - a) * (x - b) * (x - d) / ((c - a) * (c - b) * (c - d))
    fourth = (x - a) * (x - b) * (x - c) / ((d - a) * (d - b) * (d - c))
    return float(first + second + 2.0 * third + 3.0 * fourth)


def _dips(side: FloatArray) -> IntArray:
    """Return the minima beyond the main lobe of one side of a cut, from the centre outwards."""
    inner = np.arange(1, side.size - 1)
    dips = inner[(side[inner] < side[inner - 1]) & (side[inner] <= side[inner + 1])]
    return np.asarray(dips[side[dips] < MAIN_LOBE * side[0]])


def _tops(side: FloatArray, dips: IntArray) -> IntArray:
    """Return the maxima of one side of a cut beyond its first minimum beside the main lobe."""
    inner = np.arange(1, side.size - 1)
    tops = inner[(side[inner] > side[inner - 1]) & (side[inner] >= side[inner + 1])]
    return np.asarray(tops[tops > dips[0]] if dips.size else tops[:0])


def first_side_lobe(one: GreatCircleCut) -> float:
    """Return the higher first side lobe as an amplitude ratio to the cut's centre; NaN if none."""
    level = one.amplitude
    centre = level.size // 2
    peaks = []
    for side in (level[centre:], level[centre::-1]):
        tops = _tops(side, _dips(side))
        if tops.size:
            peaks.append(_vertex(side, int(tops[0])))
    return max(peaks) / float(level[centre]) if peaks else float("nan")


def top_angles_deg(one: GreatCircleCut) -> FloatArray:
    """Return the angles of the first maxima beside the main lobe, at most one a side, degrees."""
    centre = one.amplitude.size // 2
    angles_deg = []
    for sign, side in ((1, one.amplitude[centre:]), (-1, one.amplitude[centre::-1])):
        tops = _tops(side, _dips(side))
        if tops.size:
            angles_deg.append(one.angle_deg[centre + sign * int(tops[0])])
    return np.array(angles_deg, float)


def dip_angles_deg(one: GreatCircleCut) -> FloatArray:
    """Return the angles of the first minima beside the main lobe, at most one a side, degrees."""
    centre = one.amplitude.size // 2
    angles_deg = []
    for sign, side in ((1, one.amplitude[centre:]), (-1, one.amplitude[centre::-1])):
        dips = _dips(side)
        if dips.size:
            angles_deg.append(one.angle_deg[centre + sign * int(dips[0])])
    return np.array(angles_deg, float)


def first_lobe_paths_deg(one: GreatCircleCut, step_deg: float) -> list[FloatArray]:
    """Return the angles along which each first side lobe is met, for the sides of `top_angles_deg`, degrees.

    From the main lobe's skirt over the first minimum, the lobe's top and the minimum beyond it to the next top, about
    `step_deg` apart; minima and tops are among them.
    """
    centre, paths = one.amplitude.size // 2, []
    for sign, side in ((1, one.amplitude[centre:]), (-1, one.amplitude[centre::-1])):
        dips = _dips(side)
        tops = _tops(side, dips)
        if not tops.size:
            continue
        start = int(np.flatnonzero(~(side >= MAIN_LOBE * side[0]))[0])
        known = int(np.flatnonzero(np.isfinite(side))[-1])
        beyond = dips[dips > tops[0]][:1]
        after = tops[tops > beyond[0]][:1] if beyond.size else beyond
        last = int(after[0]) if after.size else known
        width = abs(float(one.angle_deg[centre + sign * last] - one.angle_deg[centre + sign * start]))
        even = np.linspace(start, last, int(np.clip(np.ceil(width / step_deg) + 1, 4, MOST_ON_PATH)))
        index = np.unique(np.concatenate([np.round(even).astype(int), dips[:1], tops[:1], beyond]))
        paths.append(one.angle_deg[centre + sign * index])
    return paths


def first_null(one: GreatCircleCut) -> float:
    """Return the shallower of the first minima beside the main lobe, as an amplitude ratio; NaN if none."""
    level = one.amplitude
    centre = level.size // 2
    nulls = []
    for side in (level[centre:], level[centre::-1]):
        dips = _dips(side)
        if dips.size:
            # Through a deep null the field runs nearly straight: the parabola is laid through its power.
            nulls.append(np.sqrt(max(_vertex(side**2, int(dips[0])), 0.0)))
    return float(max(nulls) / level[centre]) if nulls else float("nan")


def side_lobes(one: GreatCircleCut) -> list[tuple[float, float]]:
    """Return (angle in degrees, level in dB re the cut's centre) of every side lobe of a cut, from -span to span."""
    level = one.amplitude
    centre = level.size // 2
    inner = np.arange(1, level.size - 1)
    tops = inner[(level[inner] > level[inner - 1]) & (level[inner] >= level[inner + 1])]
    right, left = _dips(level[centre:]), _dips(level[centre::-1])
    high = centre + int(right[0]) if right.size else level.size
    low = centre - int(left[0]) if left.size else -1
    return [
        (float(one.angle_deg[i]), float(amplitude_db(_vertex(level, int(i)) / level[centre])))
        for i in tops
        if i > high or i < low
    ]


def standing(
    lobes: list[tuple[float, float]], angle_deg: FloatArray, amplitude: FloatArray, expanded: FloatArray
) -> list[tuple[float, float]]:
    """Return the lobes (angle, level) that stand above what noise and stray signals may add.

    A lobe stands out if its amplitude exceeds the higher of the two minima beside it by more than its expanded uncertainty:
    a ripple of noise does not. amplitude, expanded: (angle,) of the same cut.
    """
    clear_lobes = []
    for angle, level in lobes:
        top = int(np.argmin(np.abs(angle_deg - angle)))
        low = []
        for step in (1, -1):
            i = top
            while 0 <= i + step < amplitude.size and amplitude[i + step] <= amplitude[i]:
                i += step
            low.append(float(amplitude[i]))
        if amplitude[top] - max(low) > expanded[top]:
            clear_lobes.append((angle, level))
    return clear_lobes


def _vertex(values: FloatArray, i: int) -> float:
    """Height of the parabola through three neighbours of a maximum or a minimum."""
    left, middle, right = values[i - 1 : i + 2]
    bend = left - 2.0 * middle + right
    return float(middle - (right - left) ** 2 / (8.0 * bend)) if abs(bend) > 0.0 else float(middle)
