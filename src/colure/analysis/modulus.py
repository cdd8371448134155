"""Intervals of moduli: what the true modulus may be, given the measured one and how errors of the field are distributed.

Near zero an error makes a modulus larger whatever its sign, and the largest of many lobes is mostly one that errors raised. What
errors did to the measured value is then not what they would do to it again. So the question is turned round: which true fields
would have given the measured modulus? The field measured is scaled; the largest and the smallest scale that still give the
measured modulus in more than 2.5 % of all draws are the ends (inversion of a distribution; with one direction and Gaussian
errors that is the distribution of Rice). Where even no field at all would give it, the interval begins at zero. Errors of co and
cross may differ in size: of all fields with a modulus the most probable one counts, whose surer component stays as measured.
"""

from __future__ import annotations

import numpy as np

from colure.geometry.conventions import ComplexArray, FloatArray

#: Share of the draws beyond either end.
TAIL = 0.025
#: Directions that count at most: those whose field may be the largest.
MOST = 24
#: For the lower end, fields within so many standard deviations of the largest count as large as it; for the upper end others are
#: so much smaller.
RAISED = 1.3
#: Scales that are tried, as distances from the measured modulus in standard deviations of the error there.
TRIED = np.linspace(-6.0, 6.0, 41)
#: The errors of a component count as at least this share of the largest, in variance.
LEAST_SHARE = 1e-3
#: A component grows or shrinks by at most this natural logarithm; it is found by so many halvings.
MOST_GROWN, HALVINGS = 25.0, 40


def may_be_largest(ratio: ComplexArray, spread: FloatArray) -> FloatArray:
    """Return which of several fields (n, component) may be the largest when errors have rms moduli (n,)."""
    size = np.linalg.norm(ratio, axis=-1)
    reach = size + 3.0 * spread
    candidates = np.flatnonzero(reach >= np.max(size - 3.0 * spread))
    return np.asarray(candidates[np.argsort(-reach[candidates])][:MOST])


def modulus_interval(ratio: ComplexArray, errors: ComplexArray, *, tail: float = TAIL) -> tuple[float, float]:
    """Return the ends of the interval of the true modulus: of one field (1, component), or the largest of several (n, component).

    errors (draw, n, component)
        What errors add to them, jointly drawn.
    """
    measured = float(np.sqrt(np.max(np.sum(np.abs(ratio) ** 2, axis=-1))))
    added = np.sum(np.abs(errors) ** 2, axis=-1)
    shape = _shape(ratio, added.mean(axis=0))
    sigma = float(np.sqrt(0.5 * added[:, int(np.argmax(np.linalg.norm(shape, axis=-1)))].mean()))
    if sigma <= 1e-12 * measured or measured == 0.0:
        return measured, measured + (2.72 * sigma if measured == 0.0 else 0.0)
    tried = np.unique(np.maximum(measured + sigma * TRIED, 0.0))
    wanted = (tried / measured)[:, None] * np.linalg.norm(_rivals(shape, measured, sigma), axis=-1)
    above = _share_above(measured, probable(ratio, errors, measured * wanted), errors)
    low = 0.0 if above[0] >= tail else float(np.interp(tail, np.maximum.accumulate(above), tried))
    wanted = (tried / measured)[:, None] * np.linalg.norm(_outsiders(shape, measured, sigma), axis=-1)
    below = 1.0 - (
        above if len(ratio) == 1 else _share_above(measured, probable(ratio, errors, measured * wanted), errors)
    )
    # Where errors alone are mostly larger than what was measured, that share is divided by theirs: the interval is never empty.
    share = below / max(float(below[0]), 1.0 / len(errors))
    high = float(np.interp(-tail, -np.minimum.accumulate(share), tried))
    return min(low, measured), max(high, measured)


def _shape(ratio: ComplexArray, power: FloatArray) -> ComplexArray:
    """Return fields (n, component) whose largest modulus is 1, in the proportions that remain when the power of errors (n,) is off."""
    size = np.sum(np.abs(ratio) ** 2, axis=-1)
    left = ratio * np.sqrt(np.maximum(1.0 - power / np.maximum(size, 1e-300), 0.0))[:, None]
    lengths = np.linalg.norm(left, axis=-1)
    if lengths.max() <= 0.0:
        left = np.where((size == size.max())[:, None], ratio, 0.0)
        lengths = np.linalg.norm(left, axis=-1)
    return np.asarray(left / lengths.max())


def _rivals(shape: ComplexArray, measured: float, sigma: float) -> ComplexArray:
    """Return a shape in which every field that may be as large as the largest is so.

    Of several nearly equal ones the largest measured is one that errors raised; that it stands out is mostly their doing.
    """
    size = np.linalg.norm(shape, axis=-1, keepdims=True)
    raised = np.minimum(size + RAISED * sigma / measured, 1.0)
    return np.asarray(shape * raised / np.maximum(size, 1e-12))


def _outsiders(shape: ComplexArray, measured: float, sigma: float) -> ComplexArray:
    """Return a shape in which all fields but the largest are as small as errors may have found them too large.

    For the upper end: of several nearly equal ones the largest is seldom measured too small, but true ones are less equal than that.
    """
    size = np.linalg.norm(shape, axis=-1, keepdims=True)
    lowered = np.maximum(size - RAISED * sigma / measured, 0.0)
    lowered[int(np.argmax(size))] = 1.0
    return np.asarray(shape * lowered / np.maximum(size, 1e-12))


def probable(ratio: ComplexArray, errors: ComplexArray, size: FloatArray) -> ComplexArray:
    """Return the most probable true fields (m, n, component) of moduli `size` (m, n) behind measured ones (n, component).

    errors (draw, n, component)
        As if Gaussian: what is least likely to have been added, of all that leads from a field of that modulus to the measured
        one, is (v - x) with v = (1 - lambda C)^-1 x, C their covariance (a multiplier of Lagrange; derivable).
    """
    variance, axes = np.linalg.eigh(np.einsum("dni,dnj->nij", errors, np.conj(errors)) / len(errors))
    along = np.einsum("nij,ni->nj", np.conj(axes), ratio)
    share = np.clip(variance / np.maximum(variance[:, -1:], 1e-300), LEAST_SHARE, 1.0)
    # Nothing at all grows to nothing: the least sure component is never quite zero.
    along[:, -1] += np.where(np.abs(along[:, -1]) < 1e-9, 1e-9, 0.0)
    low, high = np.full(size.shape, -MOST_GROWN), np.full(size.shape, MOST_GROWN)
    for _ in range(HALVINGS):
        middle = 0.5 * (low + high)
        larger = np.linalg.norm(_grown(along, share, middle), axis=-1) > size
        low, high = np.where(larger, low, middle), np.where(larger, middle, high)
    found = _grown(along, share, 0.5 * (low + high))
    found = found * (size / np.maximum(np.linalg.norm(found, axis=-1), 1e-300))[..., None]
    return np.asarray(np.einsum("nij,mnj->mni", axes, found))


def _grown(along: ComplexArray, share: FloatArray, logarithm: FloatArray) -> ComplexArray:
    """Return components (m, n, component) when the least sure one grows by exp(logarithm (m, n)), others by their share of its variance."""
    grown = np.exp(logarithm)[..., None]
    return np.asarray(along * grown / (grown * (1.0 - share) + share))


def _share_above(measured: float, fields: ComplexArray, errors: ComplexArray) -> FloatArray:
    """Return in which share of the draws true fields (m, n, component) give at least the measured modulus, (m,)."""
    added = np.sum(np.abs(errors) ** 2, axis=-1)
    power = np.sum(np.abs(fields) ** 2, axis=-1)
    meets = 2.0 * np.einsum("mni,dni->mdn", np.conj(fields), errors, optimize=True).real
    seen = np.max(power[:, None] + meets + added, axis=-1)
    return np.asarray(np.mean(seen >= measured**2, axis=1))
