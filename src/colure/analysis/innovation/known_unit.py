"""What is known before a device is measured: the reference's waves, its elements' own, and how good units differ."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from colure.geometry.conventions import ComplexArray, FloatArray
from colure.geometry.directions import unit_vector
from colure.values import holds_arrays
from colure.waves.elements import ElementPattern, element_excitations, element_waves
from colure.waves.expansion import Expansion
from colure.waves.modes import resized
from colure.waves.transform import analysis


@dataclass(frozen=True, kw_only=True)
class Likeness:
    """How good units differ from the reference, and how well that is known.

    spread
        Rms of a good element's complex deviation, relative to itself.
    reference_error_db
        Error of the reference pattern, rms over directions below its peak.
    slope
        Rms at the array's edge of a deviation that grows evenly over the face, in level or phase: a feed that stands askew.
    faulty
        Share of elements that are faulty, before anything is measured.
    """

    spread: float = 0.03
    reference_error_db: float = -45.0
    slope: float = 0.1
    faulty: float = 0.02


@dataclass(frozen=True)
@holds_arrays
class KnownUnit:
    """The reference, ready to be compared with.

    expansion
        Waves (frequency, 2, J) in the device frame.
    elements
        (element, frequency, 2, J) what each element contributes to them.
    shapes
        (shape, element) what a deviation over the whole face does to every element.
    residual
        What the elements do not explain, relative to the pattern, worst frequency.
    """

    expansion: Expansion
    elements: ComplexArray
    shapes: FloatArray
    residual: float
    likeness: Likeness

    @property
    def new(self) -> ComplexArray:
        """Waves (element + shape, frequency, 2, J) of what may be new in a unit: a change of each element, and of the whole face."""
        return np.concatenate([self.elements, np.tensordot(self.shapes, self.elements, axes=1)])

    @property
    def usual(self) -> FloatArray:
        """By how much good units deviate (element + shape,), rms of the complex value."""
        return np.repeat([self.likeness.spread, self.likeness.slope], [len(self.elements), len(self.shapes)])

    def by_element(self, new: ComplexArray) -> ComplexArray:
        """Return every element's own deviation (..., element) of what is new (..., element + shape)."""
        count = len(self.elements)
        return np.asarray(new[..., :count] + new[..., count:] @ self.shapes)


def known_unit(
    expansion: Expansion, places_m: FloatArray, likeness: Likeness, *, order: int, slant: float, pattern: ElementPattern
) -> KnownUnit:
    """Split a reference's waves among elements at known places.

    Parameters
    ----------
    order
        Of the device's waves.
    slant, pattern
        As in `element_excitations`.
    """
    kept = Expansion(resized(expansion.coefficients, order), expansion.k)
    excitations = element_excitations(kept, places_m, slant=slant, pattern=pattern)
    own = element_waves(kept, places_m, excitations.weight, slant=slant, pattern=pattern)
    theta, columns = np.linspace(0.0, np.pi, order + 3), 2 * order + 2
    phi = np.arange(columns) * 2.0 * np.pi / columns
    d = unit_vector(theta=theta[:, None], phi=phi[None, :])
    field = Expansion(own, kept.k).far_field(theta, columns)
    out = np.empty((len(places_m), *kept.coefficients.shape), complex)
    for i, place in enumerate(places_m):
        turn = np.exp(1j * kept.k[:, None, None] * (d @ place))[:, None]
        out[i] = analysis(field * turn * excitations.weight[:, i, None, None, None], order)
    centred = places_m[:, :2] - places_m[:, :2].mean(axis=0)
    reach = np.abs(centred).max(axis=0)
    shapes = (centred[:, reach > 0.0] / reach[reach > 0.0]).T
    return KnownUnit(kept, out, shapes, float(excitations.residual.max()), likeness)
