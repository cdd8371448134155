"""What every element of an array radiates: one excitation each, and the pattern that all of them share.

The far field is taken as e(d) = f(d) sum_i w_i exp(jk d . r_i). The element's own vector pattern f is declared, or found with the
excitations: it is a few spherical waves about the element, the same for all of them (alternating least squares).
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

import numpy as np
from numpy.typing import ArrayLike

from colure.geometry.conventions import ComplexArray, FloatArray, IntArray, mode_count
from colure.geometry.directions import theta_phi
from colure.values import holds_arrays
from colure.waves.aperture import visible_region
from colure.waves.expansion import Expansion
from colure.waves.scattered import synthesis_at

#: `estimated`: common to all elements, from the data. `panel`: (1 + cos theta)/2 of the co-polar vector, a small source on a ground plane.
ElementPattern = Literal["estimated", "panel"]
#: Highest degree of an element's own waves that is tried, and how much a degree must lower the misfit to be kept.
HIGHEST_DEGREE = 3
WORTH = 0.5
ROUNDS = 40
#: The alternation ends when the excitations change by less than this.
SETTLED = 1e-4
#: A factor by which the changes of two rounds differ counts as this at most.
SLOWEST = 0.98
#: No floor is stated below this amplitude: the cut of the waves leaves as much in the cleanest field, and it is no noise.
LEAST_FLOOR = 1e-4
#: A misfit above this share of the field says that the alternation may have ended in the wrong place.
STRANGE = 0.1
#: A grid of n elements has fewer than this times n distance vectors.
GRID_DISTANCES = 8
#: Rings of directions per degree of the pattern: a fit needs fewer than an integral.
DIRECTIONS = 0.6


@dataclass(frozen=True)
@holds_arrays
class Excitations:
    """What each element radiates.

    weight
        (..., element) complex excitation, largest magnitude about one.
    residual
        (...,) rms of what the elements do not explain, relative to the pattern, in the cone used.
    floor
        (...,) amplitude of an element (largest: about one) below which it cannot be told from nothing: twice its standard
        deviation if the residual were noise, and what more rounds of the alternation would change.
    """

    weight: ComplexArray
    residual: FloatArray
    floor: FloatArray


def element_excitations(
    expansion: Expansion,
    position: ArrayLike,
    *,
    slant: float = 0.0,
    cone: float = np.deg2rad(75.0),
    pattern: ElementPattern = "estimated",
) -> Excitations:
    """Fit one complex excitation per element to the far field in the front cone.

    Parameters
    ----------
    position
        (element, 3) in the device frame, metres, the expansion's origin.
    slant
        Slant of the co-polar reference in radians (Ludwig 3), for the panel's pattern.
    cone
        Half angle of the directions used, radians.
    pattern
        The element's own pattern.
    """
    places = np.asarray(position, float)
    d, root = _looked_at(expansion.order, cone)
    theta, phi = theta_phi(d)
    lead = expansion.coefficients.shape[:-2]
    flat = expansion.coefficients.reshape(-1, *expansion.coefficients.shape[-2:])
    out = np.empty((len(flat), len(places)), complex)
    left, floor = np.empty(len(flat)), np.empty(len(flat))
    waves = _element_waves(theta, phi) if pattern == "estimated" else None
    pairs = None if waves is None else _pairs(places)
    for index, (coefficients, k) in enumerate(zip(flat, expansion.k.reshape(-1), strict=True)):
        e = root * synthesis_at(coefficients, theta=theta, phi=phi)
        steer = np.exp(1j * k * (d @ places.T))
        # The panel's own pattern is also where the search for another one starts.
        co = np.stack([np.cos(phi - slant), -np.sin(phi - slant)])
        shape = root * (1.0 + d[:, 2]) / 2.0
        excitation = np.linalg.lstsq(shape[:, None] * steer, co[0] * e[0] + co[1] * e[1], rcond=1e-3)[0]
        unsettled = 0.0
        if waves is None:
            matrix, data = shape[:, None] * steer, co[0] * e[0] + co[1] * e[1]
        else:
            excitation, own, unsettled = _together(_Sampled(e, root, steer, waves, _Gram(steer, pairs)), excitation)
            matrix, data = (own[:, :, None] * steer).reshape(-1, len(places)), e.reshape(-1)
        left[index] = np.linalg.norm(matrix @ excitation - data) / np.linalg.norm(data)
        scale = float(np.quantile(np.abs(excitation), 0.9))
        out[index] = excitation / scale
        # As white as the waves that fit into the cone: neighbouring directions say nothing new.
        free = mode_count(expansion.order) * (1.0 - np.cos(cone)) * (1 if waves is None else 2) / 2.0 - excitation.size
        noise = np.linalg.norm(matrix @ excitation - data) / np.sqrt(max(1.0, free))
        spread = noise * np.sqrt(np.diag(np.linalg.pinv(matrix.conj().T @ matrix, rcond=1e-8, hermitian=True)).real)
        floor[index] = max(2.0 * float(np.hypot(np.median(spread), unsettled)) / scale, LEAST_FLOOR)
    return Excitations(out.reshape(*lead, -1), left.reshape(lead), floor.reshape(lead))


def _looked_at(order: int, cone: float) -> tuple[FloatArray, FloatArray]:
    """Return the directions (n, 3) in a cone about +z that a fit to waves of an order uses, and roots of their solid angles (n,)."""
    u, v, w, area = visible_region(int(DIRECTIONS * order) + 8)
    use = w > np.cos(cone)
    return np.stack([u, v, w], axis=-1)[use], np.sqrt(area[use] / w[use])


def _element_waves(theta: FloatArray, phi: FloatArray) -> ComplexArray:
    """Return the fields (wave, 2, direction) of all waves up to `HIGHEST_DEGREE` about an element."""
    count = mode_count(HIGHEST_DEGREE)
    return synthesis_at(np.eye(2 * count, dtype=complex).reshape(2 * count, 2, count), theta=theta, phi=phi)


@dataclass(frozen=True)
class _Sampled:
    """What the alternation fits at one frequency.

    e (2, direction) far field times `root` (direction,), the root of the solid angle; steer (direction, element) phase factors of
    the places; waves (wave, 2, direction) about an element; gram of the phase factors.
    """

    e: ComplexArray
    root: FloatArray
    steer: ComplexArray
    waves: ComplexArray
    gram: _Gram


def _together(data: _Sampled, start: ComplexArray) -> tuple[ComplexArray, ComplexArray, float]:
    """Return (excitations, element's own field (2, direction), change still to come) of the lowest degree that explains the data.

    Rounds end before nothing changes: the changes to come shrink by the same factor as the last two did.

    A degree more is kept only if it lowers the misfit by half: waves that nothing needs would take the elements' part.
    """
    e, waves = data.e, data.waves
    tried = _alternated(data, start)
    if tried[0] <= STRANGE * float(np.linalg.norm(e)):
        return tried[1:]
    # An element that radiates nothing ahead is not reached from one that does: start from every wave of degree 1 alone.
    for one in (waves[i + offset] for i in range(mode_count(1)) for offset in (0, mode_count(HIGHEST_DEGREE))):
        matrix = ((data.root * one)[:, :, None] * data.steer).reshape(-1, start.size)
        held = np.asarray(np.linalg.lstsq(matrix, e.reshape(-1), rcond=1e-3)[0], complex)
        other = _alternated(data, held)
        tried = other if other[0] < tried[0] else tried
    return tried[1:]


def _alternated(data: _Sampled, start: ComplexArray) -> tuple[float, ComplexArray, ComplexArray, float]:
    """Return (misfit, excitations, element's own field (2, direction), change still to come) from where the alternation starts."""
    e, root, steer = data.e, data.root, data.steer
    size, best = float(np.linalg.norm(e)), (np.inf, start, root * data.waves[0], 0.0)
    adjoint = steer.conj().T
    for degree in range(1, HIGHEST_DEGREE + 1):
        some = np.concatenate([np.arange(mode_count(degree)) + offset for offset in (0, mode_count(HIGHEST_DEGREE))])
        basis = root * data.waves[some]
        # Products of waves at every direction: they stay the same from round to round.
        products = np.einsum("icd,jcd->ijd", basis.conj(), basis)
        onto = np.einsum("icd,cd->id", basis.conj(), e)
        excitation, before = np.array(best[1]), np.zeros_like(start)
        own, step, last = best[2], 1.0, 1.0
        for _ in range(ROUNDS):
            array = steer @ excitation
            q = _solved(products @ np.abs(array) ** 2, onto @ array.conj())
            own = np.tensordot(q, basis, axes=1)
            power = np.sum(np.abs(own) ** 2, axis=0)
            excitation = _solved(data.gram.weighted(power), adjoint @ np.sum(own.conj() * e, axis=0))
            excitation = np.asarray(excitation / np.linalg.norm(excitation))
            last, step = step, float(np.linalg.norm(excitation - before * np.vdot(before, excitation)))
            if step < SETTLED:
                break
            before = excitation
        # The scale that the last normalization took out goes to the element.
        model = own * (steer @ excitation)
        own = own * (np.vdot(model, e) / np.vdot(model, model))
        misfit = float(np.linalg.norm(own * (steer @ excitation) - e))
        if misfit >= WORTH * best[0]:
            break
        shrinks = min(step / last, SLOWEST)
        best = (misfit, excitation, own, step * shrinks / (1.0 - shrinks))
        if misfit < 1e-9 * size:
            break
    return best


@dataclass(frozen=True)
class _Pairs:
    """Pairs of elements that lie equally far apart: a grid has few distances.

    first, second (distance,) an example of each; number (element, element) the distance of each pair.
    """

    first: IntArray
    second: IntArray
    number: IntArray


def _pairs(places: FloatArray) -> _Pairs | None:
    """Return the pairs of elements by their distance vectors; None where most differ: elements on no grid."""
    apart = (places[None, :] - places[:, None]).reshape(-1, 3)
    size = float(np.abs(apart).max())
    if size == 0.0:
        return None
    _, example, number = np.unique(np.round(apart / size, 9), axis=0, return_index=True, return_inverse=True)
    if len(example) > GRID_DISTANCES * len(places):
        return None
    return _Pairs(*np.divmod(example, len(places)), number.reshape(len(places), -1))


class _Gram:
    """Products of the elements' phase factors, summed over directions with weights that change from round to round."""

    def __init__(self, steer: ComplexArray, pairs: _Pairs | None) -> None:
        self._steer, self._pairs = steer, pairs
        self._factors = None if pairs is None else steer[:, pairs.first].conj() * steer[:, pairs.second]

    def weighted(self, power: FloatArray) -> ComplexArray:
        """Return the products (element, element); `power` (direction,) weighs the directions."""
        if self._pairs is None or self._factors is None:
            return (self._steer.conj().T * power) @ self._steer
        return np.asarray((power @ self._factors)[self._pairs.number])


def _solved(gram: ComplexArray, right: ComplexArray) -> ComplexArray:
    """Return the solution of normal equations: few unknowns, well conditioned, many rows."""
    loaded = gram + 1e-13 * np.trace(gram).real / len(gram) * np.eye(len(gram))
    return np.asarray(np.linalg.solve(loaded, right))


def element_waves(
    expansion: Expansion,
    position: ArrayLike,
    weight: ComplexArray,
    *,
    slant: float = 0.0,
    cone: float = np.deg2rad(75.0),
    pattern: ElementPattern = "estimated",
) -> ComplexArray:
    """Return the waves (frequency, 2, J) about its own place of an element with excitation one.

    Parameters
    ----------
    weight
        (frequency, element) excitations as `element_excitations` found them.

    Other parameters as there: the same directions are used.
    """
    places = np.asarray(position, float)
    d, root = _looked_at(expansion.order, cone)
    theta, phi = theta_phi(d)
    waves = _element_waves(theta, phi)
    out = np.zeros((expansion.k.size, 2, mode_count(HIGHEST_DEGREE)), complex)
    for f, (c, k) in enumerate(zip(expansion.coefficients, expansion.k, strict=True)):
        e = synthesis_at(c, theta=theta, phi=phi)
        factor = np.exp(1j * k * (d @ places.T)) @ weight[f]
        if pattern == "panel":
            shape = (1.0 + d[:, 2]) / 2.0 * np.stack([np.cos(phi - slant), -np.sin(phi - slant)])
            model = shape * factor
            e = shape * (np.vdot(model * root, e * root) / np.vdot(model * root, model * root)) * factor
        out[f] = _of_lowest_degree(waves * factor * root, e * root)
    return out


def _of_lowest_degree(waves: ComplexArray, field: ComplexArray) -> ComplexArray:
    """Return the coefficients (2, J) of waves (wave, 2, direction) up to the lowest degree that explains a field (2, direction).

    A degree more is kept only if it lowers the misfit by half: behind, where no field was given, it would be anything.
    """
    count, least, best = mode_count(HIGHEST_DEGREE), np.inf, np.zeros(0)
    for degree in range(1, HIGHEST_DEGREE + 1):
        some = np.concatenate([np.arange(mode_count(degree)) + offset for offset in (0, count)])
        matrix = waves[some].reshape(some.size, -1).T
        coefficients = np.linalg.lstsq(matrix, field.reshape(-1), rcond=1e-9)[0]
        misfit = float(np.linalg.norm(matrix @ coefficients - field.reshape(-1)))
        if misfit >= WORTH * least:
            break
        least, best = misfit, np.zeros(2 * count, complex)
        best[some] = coefficients
    return np.asarray(best.reshape(2, count))
