"""Which maxima are lobes of their own: on the flat ridge of a fan beam every echo makes maxima that belong to the main lobe."""

from __future__ import annotations

import numpy as np

from colure.analysis.figures.cuts import FarField
from colure.geometry.conventions import FloatArray
from colure.geometry.directions import angle_between, tangents

#: A lobe is bounded by regions of relatively weak radiation (IEEE Std 145). Ours: on the straight way to the peak the level falls this
#: far below the lobe's own, or the maximum belongs to the main lobe.
DIP_DB = 1.0
#: Steps of that way, as a share of what the waves resolve.
ON_THE_WAY = 0.25


#: Maxima whose ways to the peak are read together.
TOGETHER = 8
#: A maximum with so much of a dip is a lobe whatever small errors do; no lower one is the highest then (common practice, no source).
#: So many with less of one are looked at.
DEEP_DB, MOST_DOUBTFUL = 8.0, 4


def _stand_apart(field: FarField, peak: FloatArray, tops: FloatArray, power: FloatArray) -> list[bool]:
    """Return which maxima in directions `tops` (n, 3) with intensities (n,) are other lobes than that of the peak (3,)."""
    least = [
        float(np.min(np.sum(np.abs(e) ** 2, axis=-1))) for e in field.at_each(*(_way(field, peak, top) for top in tops))
    ]
    return [bool(low < one * 10.0 ** (-DIP_DB / 10.0)) for low, one in zip(least, power, strict=True)]


def _way(field: FarField, peak: FloatArray, top: FloatArray) -> FloatArray:
    """Return directions (n, 3) on the straight way from the peak (3,) to a maximum in direction `top` (3,)."""
    angle = float(angle_between(peak, top))
    across = top - (top @ peak) * peak
    # Opposite to the peak every way is a straight one.
    size = float(np.linalg.norm(across))
    across = across / size if size > 1e-9 else tangents(peak)[0]
    steps = max(3, int(np.ceil(angle * field.order / (ON_THE_WAY * np.pi))))
    a = angle * np.arange(1, steps)[:, None] / steps
    return np.asarray(np.cos(a) * peak + np.sin(a) * across)


def highest_apart(field: FarField, peak: FloatArray, tops: FloatArray, power: FloatArray) -> int | None:
    """Return which of maxima (n, 3) with intensities (n,) is the highest lobe besides the main one; None if none is a lobe of its own."""
    for i in np.argsort(-power):
        if _stand_apart(field, peak, tops[[i]], power[[i]])[0]:
            return int(i)
    return None


def all_apart(
    field: FarField, peak: FloatArray, tops: FloatArray, power: FloatArray, *, down_to: float, most: int
) -> FloatArray:
    """Return those of maxima (n, 3) with intensities (n,) that are lobes of their own, the highest first.

    down_to, most
        Down to which share of the highest of them, and how many.
    """
    own: list[int] = []
    highest_first = np.argsort(-power)
    for begin in range(0, len(power), TOGETHER):
        some = highest_first[begin : begin + TOGETHER]
        for i, apart in zip(some, _stand_apart(field, peak, tops[some], power[some]), strict=True):
            if len(own) == most or (own and power[i] < down_to * power[own[0]]):
                return np.asarray(tops[own])
            if apart:
                own.append(int(i))
    return np.asarray(tops[own]).reshape(-1, 3)


def ways_to_doubtful(field: FarField, peak: FloatArray, tops: FloatArray, power: FloatArray) -> list[FloatArray]:
    """Return the ways (n, 3) from the peak to the highest of maxima (n, 3), each with the maximum at its end, that errors may make lobes or none.

    The last of several is a lobe for sure, where there is one: it is the highest where the others are none. A single one is left out.
    """
    highest_first = np.argsort(-power)[: MOST_DOUBTFUL + 1]
    ways = [np.concatenate([_way(field, peak, tops[i]), tops[[i]]]) for i in highest_first]
    kept: list[FloatArray] = []
    for one, e in zip(ways, field.at_each(*ways) if ways else [], strict=True):
        level = np.sum(np.abs(e) ** 2, axis=-1)
        kept.append(one)
        if level.min() < level[-1] * 10.0 ** (-DEEP_DB / 10.0):
            return kept if len(kept) > 1 else []
    return kept
