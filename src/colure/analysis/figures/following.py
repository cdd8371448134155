"""How what is read on cuts through the peak changes as errors move the peak: the cuts follow it, and turn as the E plane there does.

A broad beam is found degrees beside its place, and its cuts lie elsewhere by as much; of a narrow one hardly anything is felt.
"""

from __future__ import annotations

from typing import TypeVar

import numpy as np
from numpy.typing import NDArray

from colure.analysis.figures.cuts import Beam, FarField, beam_at, ludwig_3, tangent_at
from colure.geometry.conventions import ComplexArray, FloatArray

Inexact = TypeVar("Inexact", np.float64, np.complex128)


def slopes_of_sides(values: NDArray[Inexact], step: float) -> NDArray[Inexact]:
    """Return the slopes (..., 2) along two axes of what lies at both sides of a place on either axis (..., 4)."""
    return np.stack([values[..., 0] - values[..., 1], values[..., 2] - values[..., 3]], axis=-1) / (2.0 * step)


class FollowingCuts:
    """Cuts through peaks (4, 3) on both sides of a beam's, along either of two axes, `step` radians away."""

    def __init__(self, field: FarField, beam: Beam, peaks: FloatArray, *, step: float, slant: float) -> None:
        self._field, self._step, self._slant = field, step, slant
        self._beams = [
            _alike(beam_at(peak, vector, slant, plane=beam.plane), beam)
            for peak, vector in zip(peaks, field.at(peaks), strict=True)
        ]

    def _places(self, plane_deg: float, angles_deg: FloatArray) -> list[FloatArray]:
        a = np.deg2rad(angles_deg)[:, None]
        return [np.cos(a) * one.direction + np.sin(a) * tangent_at(one, plane_deg) for one in self._beams]

    def ratio_runs(self, plane_deg: float, angles_deg: FloatArray) -> ComplexArray:
        """Return how cross over co at angles (n,) of a cut runs (n, axis), per radian that the peak moves along either axis."""
        places = self._places(plane_deg, angles_deg)
        both = [ludwig_3(e, d, self._slant) for e, d in zip(self._field.at_each(*places), places, strict=True)]
        return slopes_of_sides(np.stack([cross / co for co, cross in both], axis=-1), self._step)

    def power_runs(self, plane_deg: float, angles_deg: FloatArray, *, co: bool) -> FloatArray:
        """Return how the power at angles (n,) of a cut runs (n, axis), per radian that the peak moves along either axis.

        plane_deg
            From the E plane towards the H plane.
        co
            True: the co-polar component alone counts.
        """
        places = self._places(plane_deg, angles_deg)
        power = [
            np.abs(ludwig_3(e, d, self._slant)[0]) ** 2 if co else np.sum(np.abs(e) ** 2, axis=-1)
            for e, d in zip(self._field.at_each(*places), places, strict=True)
        ]
        return slopes_of_sides(np.stack(power, axis=-1), self._step)

    def drift(self, plane_deg: float, angles_deg: FloatArray, fields: ComplexArray, *, co: bool) -> ComplexArray:
        """Return the same of fields (n, 2: co, cross) in modulus: (n, axis, component), as `FieldReading.drift` says."""
        own = fields * [1.0, 0.0] if co else fields
        size = np.maximum(np.linalg.norm(own, axis=-1), 1e-300)
        runs = self.power_runs(plane_deg, angles_deg, co=co) / (2.0 * size[:, None])
        return np.asarray(runs[:, :, None] * (own / size[:, None])[:, None])


def _alike(one: Beam, other: Beam) -> Beam:
    """Return a beam whose E plane's tangent points to the same side as another's: an axis of an ellipse has two ends."""
    if float(one.tangent @ other.tangent) >= 0.0:
        return one
    return Beam(one.direction, -one.tangent, one.intensity, one.plane)
