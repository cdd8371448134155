"""Intervals of moduli: what the true modulus may be, given the measured one and how errors of the field are distributed.

Near zero an error makes a modulus larger whatever its sign, and the largest of many lobes is mostly one that errors raised. What
errors did to the measured value is then not what they would do to it again. So the question is turned round: which true fields
would have given the measured modulus? The field measured is scaled; the largest and the smallest scale that still give the
measured modulus in more than 2.5 % of all draws are the ends (inversion of a distribution; with one direction and Gaussian
errors that is the distribution of Rice). Where even no field at all would give it, the interval begins at zero. Errors of co and
cross may differ in size: of all fields with a modulus the most probable one counts, whose surer component stays as measured.
Where draws hold inputs that were drawn themselves (rooms), an end holds one that was not drawn (cross-validation).
"""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from colure.geometry.conventions import ComplexArray, FloatArray, IntArray

#: Share of the draws beyond either end.
TAIL = 0.025
#: Directions that count at most: those whose field may be the largest.
MOST = 24
#: For the lower end, fields within so many standard deviations of the largest count as large as it; for the upper end others are
#: so much smaller.
RAISED = 1.3
#: Scales that are tried, as distances from the measured modulus in standard deviations of the error there.
TRIED = np.linspace(-6.0, 6.0, 41)
#: Every so many of them are looked at first.
COARSE = 5
#: The errors of a component count as at least this share of the largest, in variance.
LEAST_SHARE = 1e-3
#: A modulus that fewer draws of errors alone leave as small says no more than one that so many do.
LUCKY = 0.2
#: Draws whose rank is within this share of an end's own count as beside it.
BESIDE = 0.8
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
    return modulus_intervals([(ratio, errors)], tail=tail)[0]


def modulus_intervals(
    asked: Sequence[tuple[ComplexArray, ComplexArray]], *, tail: float = TAIL, drawn: Sequence[FloatArray] = ()
) -> list[tuple[float, float]]:
    """Return `modulus_interval` of several (ratio, errors): the search for their most probable fields is one.

    Shares are looked at coarsely first, then between the two sizes that an end lies between: they rise with the size.

    drawn
        Which input each draw holds, (draw, input) 1 or 0, of every cause that was drawn: ends then hold an input that was not among them.
    """
    every = [_Inversion(ratio, errors, tail) for ratio, errors in asked]
    curves = [curve for one in every for curve in one.curves]
    _fill(curves, [np.unique([*range(0, len(curve.tried), COARSE), len(curve.tried) - 1]) for curve in curves])
    _fill(curves, [one.between(curve) for one in every for curve in one.curves])
    if drawn:
        _hold_one_more([one for one in every if one.curves], drawn)
        _fill(curves, [one.between(curve) for one in every for curve in one.curves])
    return [one.ends() for one in every]


class _ShareCurve:
    """In which share of the draws the largest modulus comes out as measured or above, for true fields of several sizes.

    form (n,)
        True moduli for a size of 1.
    """

    def __init__(self, measured: float, tried: FloatArray, form: FloatArray, likely: _Likely) -> None:
        self.measured, self.tried, self.form, self.likely = measured, tried, form, likely
        self.share = np.full(len(tried), np.nan)

    def crossing(self, *, rises: bool, to: float) -> tuple[FloatArray, FloatArray, int]:
        """Return (sizes, shares made monotonic) as far as they are known, and the number of the first share beyond `to`."""
        at = np.flatnonzero(np.isfinite(self.share))
        share = self.share[at] if rises else 1.0 - self.share[at]
        even = np.maximum.accumulate(share) if rises else -np.minimum.accumulate(share)
        beyond = np.flatnonzero(even > (to if rises else -to))
        return self.tried[at], even, int(at[beyond[0]]) if beyond.size else -1


class _Inversion:
    """One measured modulus: sizes of the true one that are tried, and what each of them makes of it.

    tails
        Share of the draws beyond the lower and the upper end.
    """

    def __init__(self, ratio: ComplexArray, errors: ComplexArray, tail: float) -> None:
        self.tails = [tail, tail]
        self.measured = measured = float(np.sqrt(np.max(np.sum(np.abs(ratio) ** 2, axis=-1))))
        added = np.sum(np.abs(errors) ** 2, axis=-1)
        shape = _shape(ratio, added.mean(axis=0))
        self.sigma = sigma = float(np.sqrt(0.5 * added[:, int(np.argmax(np.linalg.norm(shape, axis=-1)))].mean()))
        self.draws, self.curves = len(errors), list[_ShareCurve]()
        if sigma <= 1e-12 * measured or measured == 0.0:
            return
        # Errors that happen to cancel the field leave hardly a draw as small: the share of those is not to be read from draws.
        self.measured = measured = max(measured, float(np.quantile(np.sqrt(added.max(axis=-1)), LUCKY)))
        tried = np.unique(np.maximum(measured + sigma * TRIED, 0.0))
        shapes = [_rivals(shape, measured, sigma)]
        if len(ratio) > 1:
            shapes.append(_outsiders(shape, measured, sigma))
        likely = _Likely(ratio, errors, added)
        self.curves = [_ShareCurve(measured, tried, np.asarray(np.linalg.norm(one, axis=-1)), likely) for one in shapes]

    @property
    def _least(self) -> float:
        # Where errors alone are mostly larger than what was measured, that share is divided by theirs: the interval is never empty.
        return self.tails[1] * max(1.0 - float(self.curves[-1].share[0]), 1.0 / self.draws)

    def between(self, curve: _ShareCurve) -> IntArray:
        """Return the sizes that are to be looked at beside those known."""
        crossings = []
        if curve is self.curves[0]:
            crossings.append(curve.crossing(rises=True, to=self.tails[0])[2])
        if curve is self.curves[-1]:
            crossings.append(curve.crossing(rises=False, to=self._least)[2])
        steps = [np.arange(max(1, one - COARSE + 1), one) for one in crossings if one > 0]
        sizes = np.unique(np.concatenate([np.zeros(0, int), *steps]))
        return np.asarray(sizes[np.isnan(curve.share[sizes])])

    def ends(self) -> tuple[float, float]:
        """Return the ends of the interval."""
        measured, sigma = self.measured, self.sigma
        if not self.curves:
            return measured, measured + (2.72 * sigma if measured == 0.0 else 0.0)
        low = 0.0
        if self.curves[0].share[0] < self.tails[0]:
            tried, even, _ = self.curves[0].crossing(rises=True, to=self.tails[0])
            low = float(np.interp(self.tails[0], even, tried))
        tried, even, _ = self.curves[-1].crossing(rises=False, to=self._least)
        high = float(np.interp(-self._least, even, tried))
        return min(low, measured), max(high, measured)


def _hold_one_more(every: Sequence[_Inversion], drawn: Sequence[FloatArray]) -> None:
    """Lessen the tails of every inversion so that an input that was not among the drawn ones (draw, input) is beyond an end as often as they say."""
    curves = [curve for one in every for curve in (one.curves[0], one.curves[-1])]
    sizes = [np.array([size]) for one in every for size in one.ends()]
    fields = _most_probable(curves, sizes)
    for i, (curve, field) in enumerate(zip(curves, fields, strict=True)):
        over = curve.likely.seen(field)[0] - curve.measured**2
        every[i // 2].tails[i % 2] *= _left_of_a_tail(over if i % 2 == 0 else -over, drawn)


def _left_of_a_tail(over: FloatArray, drawn: Sequence[FloatArray]) -> float:
    """Return which share of a tail is to be left, from draws (draw,) that are in it where they are not below zero.

    The tail p is that of the n inputs that were drawn. Of one of them that is left out p_i is beyond an end that moves inwards by
    (p_i - p)/(n - 1) of the draws: to first order the share beyond is larger by the mean of that over draws beside the end, p_i being the
    share beyond of draws that hold the same input (derivable; `combination.joint_half_width` does the same about zero).
    """
    beyond = over >= 0.0
    tail = float(beyond.mean())
    if not 0.0 < tail < 0.5:
        return 1.0
    far, near = np.quantile(over, [1.0 - (1.0 - BESIDE) * tail, 1.0 - (1.0 + BESIDE) * tail])
    beside = (over >= near) & (over <= far)
    more = 0.0
    for holds in drawn:
        share = beyond @ holds / np.maximum(holds.sum(axis=0), 1.0)
        more += max(float(np.mean(holds[beside] @ share)) - tail, 0.0) / max(holds.shape[1] - 1.0, 1.0)
    # One draw is the least that a tail can be read from.
    return max(1.0 - more / tail, 1.0 / (tail * over.size))


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


class _Likely:
    """The most probable true fields of given moduli behind measured ones (n, component), and what draws make of them.

    errors (draw, n, component)
        As if Gaussian: what is least likely to have been added, of all that leads from a field of that modulus to the measured
        one, is (v - x) with v = (1 - lambda C)^-1 x, C their covariance (a multiplier of Lagrange; derivable).
    """

    def __init__(self, ratio: ComplexArray, errors: ComplexArray, added: FloatArray) -> None:
        by_place = np.ascontiguousarray(errors.transpose(1, 2, 0))  # place, component, draw
        covariance = by_place @ by_place.conj().swapaxes(1, 2) / len(errors)
        variance, self.axes = np.linalg.eigh(covariance)
        self.share = np.clip(variance / np.maximum(variance[:, -1:], 1e-300), LEAST_SHARE, 1.0)
        self.along = np.einsum("nij,ni->nj", np.conj(self.axes), ratio)
        # Nothing at all grows to nothing: the least sure component is never quite zero.
        self.along[:, -1] += np.where(np.abs(self.along[:, -1]) < 1e-9, 1e-9, 0.0)
        self._errors = np.concatenate([by_place.real, by_place.imag, added.T[:, None]], axis=1)

    def seen(self, along: ComplexArray) -> FloatArray:
        """Return the power (m, draw) of the largest of fields (m, n, component), along the axes, with the errors of every draw."""
        fields = np.einsum("nij,mnj->nmi", self.axes, along)
        power = np.sum(np.abs(fields) ** 2, axis=-1)
        # |field + error|^2 less the field's own power: one product for all draws.
        meets = np.concatenate([2.0 * fields.real, 2.0 * fields.imag, np.ones((*power.shape, 1))], axis=-1)
        return np.asarray(np.max(meets @ self._errors + power[..., None], axis=0))


def _fill(curves: Sequence[_ShareCurve], rows: Sequence[IntArray]) -> None:
    """Work the shares of some of their sizes out, of all curves together."""
    fields = _most_probable(curves, [curve.tried[at] for curve, at in zip(curves, rows, strict=True)])
    for curve, at, field in zip(curves, rows, fields, strict=True):
        if at.size:
            curve.share[at] = np.mean(curve.likely.seen(field) >= curve.measured**2, axis=-1)


def _most_probable(curves: Sequence[_ShareCurve], tried: Sequence[FloatArray]) -> list[ComplexArray]:
    """Return the most probable fields (size, n, component), along the axes of errors, of sizes (size,) of every curve."""
    sizes = [size[:, None] * curve.form for curve, size in zip(curves, tried, strict=True)]
    along = [
        np.broadcast_to(c.likely.along, (*s.shape, c.likely.along.shape[1])) for c, s in zip(curves, sizes, strict=True)
    ]
    two = [i for i, one in enumerate(along) if one.shape[-1] > 1 and one.size]
    if two:
        power = np.concatenate([np.abs(along[i]).reshape(-1, 2) ** 2 for i in two])
        share = np.concatenate([np.broadcast_to(curves[i].likely.share, along[i].shape).reshape(-1, 2) for i in two])
        grown = _grown(power, share, np.concatenate([sizes[i].ravel() for i in two]))
        for i, part in zip(two, np.split(grown, np.cumsum([sizes[i].size for i in two])[:-1]), strict=True):
            along[i] = along[i] * part.reshape(along[i].shape)
    return [
        one * (size / np.maximum(np.linalg.norm(one, axis=-1), 1e-300))[..., None]
        for one, size in zip(along, sizes, strict=True)
    ]


def _grown(power: FloatArray, share: FloatArray, size: FloatArray) -> FloatArray:
    """Return by how much two components of powers (n, 2) grow together to a size (n,), each by its share (n, 2) of the variance."""
    low, high = np.full(size.shape, -MOST_GROWN), np.full(size.shape, MOST_GROWN)
    rest, wanted = 1.0 - share, size**2
    for _ in range(HALVINGS):
        middle = 0.5 * (low + high)
        grown = np.exp(middle)[:, None]
        larger = np.sum(power * (grown / (grown * rest + share)) ** 2, axis=-1) > wanted
        low, high = np.where(larger, low, middle), np.where(larger, middle, high)
    grown = np.exp(0.5 * (low + high))[:, None]
    return np.asarray(grown / (grown * rest + share))
