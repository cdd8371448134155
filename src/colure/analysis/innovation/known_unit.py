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

#: Directions ahead that tell the elements' shares apart: the cone of `element_excitations`.
CONE = np.deg2rad(75.0)


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
    share_error
        (element,) rms of what the reference's error does to an element's share of it, relative to that share: even over the
        band, and as much straight over it; at most the whole share.
    residual
        What the elements do not explain, relative to the pattern, worst frequency.
    """

    expansion: Expansion
    elements: ComplexArray
    shapes: FloatArray
    share_error: FloatArray
    residual: float
    likeness: Likeness

    @property
    def new(self) -> ComplexArray:
        """Waves (element + shape + element, frequency, 2, J) of what may be new in a unit: a change of each element, of the whole
        face, and of each element straight over the band.

        A fault changes what an element truly radiates, and the reference tells that with an error of its own: neighbours half
        a wave apart are told apart by little that radiates, at every frequency anew.
        """
        straight = over_band(self.elements.shape[1])[1]
        return np.concatenate([self.elements, np.tensordot(self.shapes, self.elements, axes=1),
                               straight[:, None, None] * self.elements])  # fmt: skip

    @property
    def usual(self) -> FloatArray:
        """By how much good units deviate (element + shape + element,), rms of the complex value."""
        even = np.repeat([self.likeness.spread, self.likeness.slope], [len(self.elements), len(self.shapes)])
        return np.concatenate([even, self.likeness.spread * self.share_error])

    def by_element(self, new: ComplexArray) -> ComplexArray:
        """Return every element's own deviation (..., element) at the band's middle of what is new (..., element + shape + element)."""
        count, shapes = len(self.elements), len(self.shapes)
        return np.asarray(new[..., :count] + new[..., count : count + shapes] @ self.shapes)


def over_band(count: int) -> FloatArray:
    """Return how an error of the reference may go over so many frequencies (2, frequency): even, or straight; of constant size."""
    x = np.linspace(-1.0, 1.0, count) if count > 1 else np.zeros(1)
    return np.stack([np.ones(count), x]) / np.sqrt(1.0 + x**2)


def wave_error(likeness: Likeness, peak: float, waves: int) -> float:
    """Return the rms of a reference's error in one wave: of waves (2, J) of variance one each component has the mean square J / (4 pi)."""
    return float(10.0 ** (likeness.reference_error_db / 20.0) * peak / np.sqrt(waves / (4.0 * np.pi)))


def told_apart(shares: ComplexArray) -> FloatArray:
    """Return the relative error (element,) of every element's share (element, sample) per error of one sample (least squares)."""
    values, vectors = np.linalg.eigh(shares @ shares.conj().T)
    return np.asarray(np.sqrt(np.sum(np.abs(vectors) ** 2 / np.maximum(values, 1e-12 * values[-1]), axis=1)))


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
    middle, ahead = len(kept.k) // 2, theta <= CONE
    seen = []
    for i, place in enumerate(places_m):
        turn = np.exp(1j * kept.k[:, None, None] * (d @ place))[:, None]
        shares = field * turn * excitations.weight[:, i, None, None, None]
        out[i] = analysis(shares, order)
        seen.append((shares[middle][:, ahead] * np.sqrt(np.sin(theta[ahead]))[:, None]).reshape(-1))
    one_wave = wave_error(likeness, float(np.abs(kept.far_field(theta, columns)[middle]).max()), out.shape[-1])
    solid = (theta[1] - theta[0]) * (phi[1] - phi[0])
    share_error = np.minimum(one_wave * told_apart(np.array(seen) * np.sqrt(solid)), 1.0)
    centred = places_m[:, :2] - places_m[:, :2].mean(axis=0)
    reach = np.abs(centred).max(axis=0)
    shapes = (centred[:, reach > 0.0] / reach[reach > 0.0]).T
    return KnownUnit(kept, out, shapes, share_error, float(excitations.residual.max()), likeness)
