"""How far the edges of a main lobe may be where its flank is not straight: a shoulder near the level ends the lobe, or does not.

What errors add over the slope of the flank says how far an edge moves where the flank falls evenly. Near a shoulder, or a minimum that just
touches the level, the edge is elsewhere altogether: there the level is passed again where it would be a little higher or lower.
"""

from __future__ import annotations

import numpy as np

from colure.analysis.figures.lobes import edges_deg
from colure.analysis.figures.places import FieldReading, Width
from colure.analysis.figures.response import PatternChanges, Response
from colure.analysis.uncertainty.lobes_apart import drawn_levels
from colure.geometry.conventions import ComplexArray, FloatArray, amplitude_db

#: So many standard deviations: a lobe ends at the first of several places where errors let it, where they are larger than at any one place.
REACH = 3.0
#: An edge that moves by more than so many times what the slope at it says stands on no even flank.
UNEVEN = 1.5
#: Where it moves by more than this share of the width, that slope is the least of those to so small shares of the change as well.
MUCH, NEAR = 0.05, (0.05, -0.05, 0.005, -0.005)


def farthest_widths(
    response: Response, answer: PatternChanges, joint: ComplexArray, always: FloatArray
) -> dict[str, tuple[float, float]]:
    """Return by how much narrower and wider than by an even slope each beamwidth becomes, degrees, as errors move one of its edges.

    joint, always
        Weights (draw, change) of errors, and those (change,) of biases that stay in the value.
    """
    return {
        one.name: beyond_the_slope(one, _reach(response, answer, joint, always, one))
        for one in response.places.widths
        if len(one.where)
    }


def _reach(
    response: Response, answer: PatternChanges, joint: ComplexArray, always: FloatArray, one: Width
) -> FloatArray:
    """Return how far the level at both edges (edge,) may be off, over the peak's."""
    reading = FieldReading(one.name, "level", one.where, co=one.co)
    levels = drawn_levels(response, answer, joint, reading)
    bias = np.linalg.norm(np.tensordot(always, response.errors(reading, answer.fields), axes=1), axis=-1)
    return np.asarray(REACH * np.std(levels[1:], axis=0) + bias)


def beyond_the_slope(one: Width, reach: FloatArray) -> tuple[float, float]:
    """Return by how much narrower and wider a width becomes than the slopes at its edges say, degrees, where the level is off by `reach` (edge,)."""
    level = float(np.sqrt(one.share))
    now = _edges_at(one, level)
    narrower, wider = [0.0], [0.0]
    top = float(one.cut.amplitude[one.cut.amplitude.size // 2]) ** 2
    slope = one.fall / (2.0 * level * top)
    for side, size in enumerate(reach):
        straight = float(np.rad2deg(size / max(slope[side], 1e-9)))
        for change, off in ((size, narrower), (-size, wider)):
            far = abs(_edges_at(one, level + change)[side] - now[side])
            if far > MUCH * sum(now):
                # The slope is that of one place: close to a shoulder it is none of the flank's.
                nearly = (abs((_edges_at(one, level + part * change)[side] - now[side]) / part) for part in NEAR)
                straight = min(straight, *nearly)
            if not far <= UNEVEN * straight:
                off.append(far - min(straight, far))
    return max(narrower), max(wider)


def _edges_at(one: Width, level: float) -> tuple[float, float]:
    """Return how far the main lobe reaches to both sides at a level over the peak's, degrees: 0 above it, infinite where it never falls so far."""
    if level >= 1.0:
        return 0.0, 0.0
    ends = edges_deg(one.cut, float(-amplitude_db(level))) if level > 0.0 else (np.nan, np.nan)
    right, left = (np.inf if np.isnan(end) else float(end) for end in ends)
    return right, left
