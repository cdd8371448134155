"""Small fits solved directly: order, damping and error from the data and the geometry.

The samples are a matrix times coefficients plus noise. One triangular factorization, columns by rising
degree, holds the residual of every order at the same time; the order ends where further degrees
take no more out of the residual than noise would. How strong each degree is follows from the data
by the evidence (D. J. C. MacKay, Neural Computation 4:415-447, 1992: Bayesian interpolation), and with it
comes the error of every coefficient: noise, and what the data leave open.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from scipy.linalg import get_lapack_funcs, qr, solve_triangular

from colure.geometry.conventions import ComplexArray, FloatArray, IntArray, mode_count
from colure.values import holds_arrays
from colure.waves.harmonics_at import (
    degrees_of_columns,
    matrix_at,
    mode_of_columns,
    orders_of_columns,
    to_modes,
)
from colure.waves.least_squares import tail_of

#: Highest order that is solved directly; 2,178 columns.
HIGHEST_DIRECT = 30
FIRST_ORDER = 14
ORDER_STEP = 8
#: A degree is significant where it takes this many times more out of the residual than noise would.
SIGNIFICANT = 1.6
#: Degrees without signal after which the search for the order ends.
SILENT_DEGREES = 3
#: Relative rms below which a residual is the arithmetic's.
ROUNDING = 2e-15
EVIDENCE_ROUNDS = 8
#: Waves of one |m| are at most so much weaker or stronger than others of their degree (power).
SHARE_LIMITS = (0.02, 200.0)
#: Beyond the last seen degree one mode may hold this many times the noise (power): few of a degree do not show in its sum.
CONCENTRATED = 4.0
#: Residual (rms over rms) that needs no higher order, though higher degrees may hold a little.
WELL_SHOWN = 1e-7
DRAWS = 48
#: Degrees above the order leave at most so many times the residual that was found (power).
RESIDUAL_TIMES = 2.0
#: Degrees above the order that are drawn to learn what a fit makes of them.
TAIL_DEGREES = 8
#: Most products of a direct fit (a few seconds on one core); beyond, the iterative path is quicker.
MOST_WORK = 9e10


@dataclass(frozen=True, kw_only=True)
@holds_arrays
class DirectSolution:
    """Coefficients on the reference sphere, draws of their error, and what led to them.

    coefficients
        (2, N(N+2)).
    draws
        (draw, 2, N(N+2)): possible errors, as likely as the data and the noise make them.
    noise
        Rms of the noise in one component of one sample, in the unit of the rows.
    freedom
        Number of coefficients that the data determine.
    signal
        (N,) rms size of one coefficient of each degree.
    beyond
        Rms of the field on the reference sphere that degrees above the order may add.
    """

    coefficients: ComplexArray
    draws: ComplexArray
    noise: float
    freedom: float
    signal: FloatArray
    residual: float
    beyond: float


@dataclass(frozen=True)
@holds_arrays
class FitRows:
    """The problem: places, weights, and how the reference sphere's functions change with radius.

    shares
        (node, count) interpolation between reference spheres, scales (node, 2, N(N+2)) at the cap.
    data
        (2, count), common factor removed and weighted.
    """

    theta: FloatArray
    phi: FloatArray
    weight: FloatArray
    shares: FloatArray
    scales: ComplexArray
    data: ComplexArray

    def some(self, which: slice) -> FitRows:
        """Return the rows of some of the samples."""
        return FitRows(
            self.theta[which], self.phi[which], self.weight[which], self.shares[:, which], self.scales,
            self.data[:, which],
        )  # fmt: skip

    def matrix(self, order: int) -> FloatArray | ComplexArray:
        """Return the weighted rows (2 count, 2 N(N+2)); real where one radius serves all samples."""
        harmonics = matrix_at(self.theta, self.phi, order)
        if len(self.scales) == 1:
            harmonics *= self.weight[:, None]
            return harmonics.reshape(-1, harmonics.shape[-1])
        degree, kind = degrees_of_columns(order), mode_of_columns(order)
        at = degree * degree - 1  # the first mode of a degree: scales depend on degree and kind alone
        factor = np.einsum("qc,qm->cm", self.shares * self.weight, self.scales[:, kind, at])
        return np.asarray((harmonics * factor).reshape(-1, harmonics.shape[-1]))


@dataclass(frozen=True)
@holds_arrays
class Squares:
    """The normal equations: products of the columns, of columns and data, and the noise that they still tell.

    matrix
        (column, column) A^H A, its upper half.
    right
        (column,) A^H d.
    """

    matrix: np.ndarray
    right: ComplexArray
    least_noise: float

    def damped(self, scale: FloatArray, noise: float) -> tuple[np.ndarray, ComplexArray]:
        """Return the triangle of (A S; noise) and its right-hand side."""
        whole = np.asfortranarray(self.matrix) * scale
        whole *= scale[:, None]
        whole[np.diag_indices(len(whole))] += noise**2
        (factor,) = get_lapack_funcs(("potrf",), (whole,))
        upper, failed = factor(whole, lower=0, clean=1, overwrite_a=1)
        if failed:
            raise ArithmeticError(f"normal equations: column {failed} depends on the ones before")
        right = solve_triangular(upper, scale * self.right, trans="C", check_finite=False)
        return np.asarray(upper), np.asarray(right)


def solve_directly(rows: FitRows, cap: int, *, seed: int = 11) -> DirectSolution | None:
    """Return the fit, or None where it needs a higher order than is solved directly."""
    order = min(cap, FIRST_ORDER)
    if work_of(rows, order) > MOST_WORK:
        return None
    size = float(np.sqrt(np.mean(np.abs(rows.data) ** 2)))
    while True:
        triangle, rotated, left = _factorized(rows, order)
        last, noise = order_of(rotated, left, order, 2 * rows.data.shape[-1])
        if order == cap or last + SILENT_DEGREES <= order:
            break
        following = min(cap, order + ORDER_STEP, HIGHEST_DIRECT)
        if following == order or work_of(rows, following) > MOST_WORK:
            if noise > WELL_SHOWN * size:
                return None
            break  # the remainder counts as noise, and no iteration would come closer
        order = following
    order = min(order, last + SILENT_DEGREES)
    count = 2 * mode_count(order)
    left += float(np.sum(np.abs(rotated[count:]) ** 2))
    return weighed(triangle[:count, :count], rotated[:count], left, order, rows, last, noise, seed)


def work_of(rows: FitRows, order: int) -> float:
    """Return the products of numbers that a direct fit takes: one factorization and the rounds that follow."""
    columns = 2.0 * mode_count(order)
    kind = 1.0 if len(rows.scales) == 1 else 8.0  # complex numbers, and slower to fill
    return float(kind * columns**2 * (2.0 * rows.data.shape[-1] + EVIDENCE_ROUNDS * columns))


def _factorized(rows: FitRows, order: int) -> tuple[np.ndarray, ComplexArray, float]:
    """Return R, Q^H d and the squared norm of what no column explains."""
    matrix, data = rows.matrix(order), rows.data.ravel()
    columns = matrix.shape[1]
    beside = np.stack([data.real, data.imag], axis=-1) if np.isrealobj(matrix) else data[:, None]
    whole = np.concatenate([matrix, beside], axis=1)
    if whole.shape[0] < whole.shape[1]:
        whole = np.concatenate([whole, np.zeros((whole.shape[1] - whole.shape[0], whole.shape[1]))])
    triangle = qr(whole, mode="r", overwrite_a=True, check_finite=False)[0]
    right = triangle[:columns, columns:]
    rotated = right[:, 0] + 1j * right[:, 1] if beside.shape[1] == 2 else right[:, 0]
    rest = triangle[columns : columns + beside.shape[1], columns:]
    return triangle[:columns, :columns], np.asarray(rotated), float(np.sum(np.abs(rest) ** 2))


def order_of(rotated: ComplexArray, left: float, order: int, components: int) -> tuple[int, float]:
    """Return the last degree that takes more than noise out of the residual, and the noise's rms."""
    degree = degrees_of_columns(order)
    taken = np.bincount(degree, np.abs(rotated) ** 2, minlength=order + 1)[1:]
    size = np.bincount(degree, minlength=order + 1)[1:]
    after = left + np.concatenate([np.cumsum(taken[::-1])[::-1][1:], [0.0]])
    spare = np.maximum(components - np.cumsum(size), 1)
    total = left + float(taken.sum())
    floor = ROUNDING**2 * total / components
    variance = np.maximum(after / spare, floor)
    out = np.flatnonzero(taken / size > SIGNIFICANT * variance)
    last = int(out[-1]) + 1 if out.size else 1
    return last, float(np.sqrt(variance[min(last + SILENT_DEGREES, order) - 1]))


def weighed(
    triangle: np.ndarray,
    rotated: ComplexArray,
    left: float,
    order: int,
    rows: FitRows,
    last: int,
    noise: float,
    seed: int,
    squares: Squares | None = None,
) -> DirectSolution:
    """Find the size of every degree by the evidence, and the solution and its error with it."""
    degree = degrees_of_columns(order) - 1
    number = np.bincount(degree).astype(float)
    seen = np.sum(rows.weight**2) / (4.0 * np.pi)  # squared norm of a column on a whole sphere
    per_mode = np.bincount(degree, np.abs(rotated) ** 2) / number
    variance = np.maximum(per_mode - noise**2, 1e-2 * noise**2) / seen
    least = noise**2 / seen
    components = 2.0 * rows.data.shape[-1]
    turning = orders_of_columns(order)
    share = np.ones(order + 1)
    for turn in range(EVIDENCE_ROUNDS):
        variance = _with_tail(variance, last, least)
        prior = variance[degree] * share[turning]
        # What nothing shows stays near the noise.
        prior = np.where(degree < last, prior, np.minimum(prior, CONCENTRATED * least))
        scale = np.sqrt(prior)
        if squares is None:
            upper, right = _damped(triangle * scale, rotated, noise)
        else:
            upper, right = squares.damped(scale, noise)
        inverse = _inverted(upper)
        solution = inverse @ right
        spread = noise**2 * np.sum(np.abs(inverse) ** 2, axis=1)
        known = np.maximum(np.bincount(degree, 1.0 - spread), 1e-3 * number)
        size = np.abs(solution) ** 2
        remainder = left + float(np.sum(np.abs(rotated - triangle @ (scale * solution)) ** 2))
        total = left + float(np.sum(np.abs(rotated) ** 2))
        noise_now = np.sqrt(remainder / max(components - float(known.sum()), 1.0))
        least_noise = ROUNDING * np.sqrt(total / components) if squares is None else squares.least_noise
        noise_now = max(float(noise_now), float(least_noise))
        following = _sizes(size, prior, variance, known, share[turning] * (1.0 - spread), degree)
        next_share = _shares(share, size, 1.0 - spread, turning)
        moved = np.max(np.abs(np.log(following[:last] / variance[:last])))
        moved = max(moved, np.max(np.abs(np.log(next_share / share)[: last + 1])))
        if turn == EVIDENCE_ROUNDS - 1 or (moved < 0.4 and abs(np.log(noise_now / noise)) < 0.05):
            break
        variance, noise, share = following, noise_now, next_share
    spectrum = np.bincount(degree, prior) / number
    random = np.random.default_rng(seed)
    raw = random.normal(size=(2, upper.shape[0], DRAWS)) * np.sqrt(0.5)
    errors = noise * scale[:, None] * (inverse @ (raw[0] + 1j * raw[1]))
    wrong, beyond = _mistaken(rows, spectrum, share, noise, np.sqrt(seen), remainder, scale[:, None] * inverse, random)
    errors = errors + wrong
    return DirectSolution(
        coefficients=to_modes(scale * solution, order),
        draws=to_modes(errors.T, order),
        noise=noise,
        freedom=float(known.sum()),
        signal=np.sqrt(spectrum),
        residual=float(np.sqrt(remainder / total)) if total else 0.0,
        beyond=beyond,
    )


def _sizes(
    size: FloatArray, prior: FloatArray, variance: FloatArray, known: FloatArray, share: FloatArray, degree: IntArray
) -> FloatArray:
    """Return the size (power) of one mode of every degree, before the |m| are weighed.

    By the evidence, but never less than holds the degree's whole power: where few |m| hold nearly all of it, more so than
    `SHARE_LIMITS` lets them, the evidence follows the many that hold none.
    """
    likely = np.bincount(degree, size) * variance / known
    whole = np.bincount(degree, size * prior) / np.maximum(np.bincount(degree, share), 1e-3 * known)
    return np.asarray(np.maximum(likely, whole))


def _shares(share: FloatArray, size: FloatArray, known: FloatArray, turning: IntArray) -> FloatArray:
    """Return how strong waves of every |m| are against their degree, by the evidence.

    A device whose axis is z holds few |m|: in a hole about that axis they alone count.
    """
    number = np.bincount(turning)
    estimate = share * np.bincount(turning, size) / np.maximum(np.bincount(turning, known), 0.5)
    enough = np.bincount(turning, known) > 1.0
    out = np.where(enough, np.clip(estimate, *SHARE_LIMITS), share)
    return np.asarray(out / np.exp(np.sum(number * np.log(out)) / number.sum()))


def _mistaken(
    rows: FitRows,
    per_mode: FloatArray,
    share: FloatArray,
    noise: float,
    column: float,
    remainder: float,
    root: np.ndarray,
    random: np.random.Generator,
) -> tuple[ComplexArray | float, float]:
    """Return draws (mode, draw) of what the fit makes of degrees above its order, and the rms of the field that they add.

    In a hole they are no noise. A fit with a hole takes most of them up where samples lie: so what the residual says
    against them is judged by the residual that the drawn ones leave.

    per_mode
        (N,) mean square of one coefficient of each degree; share (N + 1,) how strong each |m| is against that.
    column
        Norm of a column on a whole sphere; root (mode, mode) of the covariance of the solution, which takes A^H d to it.
    remainder
        Square of the norm of the residual.
    """
    order = per_mode.size
    count = 2.0 * (2.0 * np.arange(1, order + 1) + 1.0)
    spectrum = count * per_mode
    power = tail_of(spectrum, float(count[-1]) * (noise / column) ** 2)
    if power <= 0.0:
        return 0.0, 0.0
    fall = float(np.clip(np.sqrt(spectrum[-2:].sum() / spectrum[-4:-2].sum()), 0.0, 0.9))
    above = degrees_of_columns(order + TAIL_DEGREES)
    start = 2 * mode_count(order)
    turning = np.minimum(orders_of_columns(order + TAIL_DEGREES)[start:], order)
    weight = fall ** (above[start:] - order - 1.0) * share[turning]
    size = np.sqrt(power * weight / weight.sum())
    raw = random.normal(size=(2, size.size, DRAWS)) * np.sqrt(0.5)
    matrix = rows.matrix(order + TAIL_DEGREES)
    data = matrix[:, start:] @ (size[:, None] * (raw[0] + 1j * raw[1]))
    made = root @ (root.conj().T @ (matrix[:, :start].conj().T @ data))
    left = float(np.mean(np.sum(np.abs(data - matrix[:, :start] @ made) ** 2, axis=0)))
    allowed = min(1.0, np.sqrt(RESIDUAL_TIMES * remainder / left)) if left > 0.0 else 1.0
    return np.asarray(allowed * made), float(allowed * np.sqrt(power / (4.0 * np.pi)))


def _inverted(upper: np.ndarray) -> np.ndarray:
    """Return the inverse of an upper triangle."""
    (invert,) = get_lapack_funcs(("trtri",), (upper,))
    inverse, failed = invert(upper)
    if failed:
        raise ArithmeticError(f"triangle: row {failed} is zero")
    return np.asarray(inverse)


def _with_tail(variance: FloatArray, last: int, least: float) -> FloatArray:
    """Let degrees beyond the last seen one fall on as the last seen ones do, but not above the noise.

    What the data do not show may be there; the spectrum of a bounded device only falls.
    """
    out = np.maximum(variance, 1e-4 * least)
    before = max(last - 4, 1)
    slope = np.clip((out[last - 1] / out[before - 1]) ** (1.0 / max(last - before, 1)), 1e-3, 0.5)
    for at in range(last, out.size):
        out[at] = max(min(out[at], out[at - 1]), min(out[at - 1] * slope, least))
    return out


def _damped(triangle: np.ndarray, rotated: ComplexArray, noise: float) -> tuple[np.ndarray, ComplexArray]:
    """Return the triangle of (R S; noise) and its right-hand side; both blocks are triangular already."""
    count = triangle.shape[0]
    kind = triangle.dtype
    factor, apply = get_lapack_funcs(("tpqrt", "tpmqrt"), (triangle,))
    below = np.zeros((count, count), dtype=kind, order="F")
    below[np.diag_indices(count)] = noise
    upper, reflectors, blocks, failed = factor(count, min(32, count), triangle, below)
    beside = np.stack([rotated.real, rotated.imag], axis=-1) if np.isrealobj(triangle) else rotated[:, None]
    zero = np.zeros_like(beside)
    turned, _, failed_too = apply(count, reflectors, blocks, beside, zero, trans="T" if np.isrealobj(triangle) else "C")
    if failed or failed_too:
        raise ArithmeticError(f"factorization: arguments {failed}, {failed_too} refused")
    right = turned[:, 0] + 1j * turned[:, 1] if np.isrealobj(triangle) else turned[:, 0]
    return np.triu(upper), np.asarray(right)
