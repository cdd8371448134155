"""Intervals of moduli: what the true modulus may be, given the measured one and how errors of the field are distributed.

Near zero an error makes a modulus larger whatever its sign, and the largest of many lobes is mostly one that errors raised. What
errors did to the measured value is then not what they would do to it again. So the question is turned round: which true fields
would have given the measured modulus? The field measured is scaled; the largest and the smallest scale that still give the
measured modulus in more than 2.5 % of all draws are the ends (inversion of a distribution; with one direction and Gaussian
errors that is the distribution of Rice). Where even no field at all would give it, the interval begins at zero.
"""

from __future__ import annotations

import numpy as np

from colure.geometry.conventions import ComplexArray, FloatArray

#: Share of the draws beyond either end.
TAIL = 0.025
#: Directions that count at most: those whose field may be the largest.
MOST = 24
#: Scales that are tried, as distances from the measured modulus in standard deviations of the error there.
#: For the lower end, fields within so many standard deviations of the largest count as large as it.
RAISED = 1.3
TRIED = np.linspace(-6.0, 6.0, 41)


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
    above = _share_above(measured, _rivals(shape, measured, sigma), errors, tried)
    low = 0.0 if above[0] >= tail else float(np.interp(tail, np.maximum.accumulate(above), tried))
    below = 1.0 - (above if len(ratio) == 1 else _share_above(measured, shape, errors, tried))
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


def _share_above(measured: float, shape: ComplexArray, errors: ComplexArray, tried: FloatArray) -> FloatArray:
    """Return in which share of the draws each scale (n,) of a shape gives at least the measured modulus."""
    power = np.sum(np.abs(shape) ** 2, axis=-1)
    meets = np.sum((np.conj(shape) * errors).real, axis=-1)  # (draw, n)
    added = np.sum(np.abs(errors) ** 2, axis=-1)
    seen = np.stack([np.max(s * s * power + 2.0 * s * meets + added, axis=1) for s in tried])
    return np.asarray(np.mean(seen >= measured**2, axis=1))
