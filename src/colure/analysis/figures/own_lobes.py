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


def stands_apart(field: FarField, peak: FloatArray, top: FloatArray, power: float) -> bool:
    """Return whether a maximum in direction `top` (3,) with intensity `power` is another lobe than that of the peak (3,)."""
    angle = float(angle_between(peak, top))
    across = top - (top @ peak) * peak
    # Opposite to the peak every way is a straight one.
    size = float(np.linalg.norm(across))
    across = across / size if size > 1e-9 else tangents(peak)[0]
    steps = max(3, int(np.ceil(angle * field.order / (ON_THE_WAY * np.pi))))
    a = angle * np.arange(1, steps)[:, None] / steps
    least = float(np.min(field.power_at(np.cos(a) * peak + np.sin(a) * across)))
    return bool(least < power * 10.0 ** (-DIP_DB / 10.0))


def highest_apart(field: FarField, peak: FloatArray, tops: FloatArray, power: FloatArray) -> int | None:
    """Return which of maxima (n, 3) with intensities (n,) is the highest lobe besides the main one; None if none is a lobe of its own."""
    for i in np.argsort(-power):
        if stands_apart(field, peak, tops[i], float(power[i])):
            return int(i)
    return None


def all_apart(field: FarField, peak: FloatArray, tops: FloatArray, power: FloatArray, *, down_to: float) -> FloatArray:
    """Return those of maxima (n, 3) with intensities (n,) that are lobes of their own, down to a share of the highest of them."""
    own: list[FloatArray] = []
    least = 0.0
    for i in np.argsort(-power):
        if power[i] < least:
            break
        if stands_apart(field, peak, tops[i], float(power[i])):
            own.append(tops[i])
            least = max(least, down_to * float(power[i]))
    return np.array(own).reshape(-1, 3)
