"""Least squares with damping found from the data, by conjugate gradients, and the error of what comes out.

The unknowns are coefficients on a reference sphere, which all weigh alike. Where samples leave a hole, the
order comes first: degrees above what the samples show are left out, or they would fill the hole with anything.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np

from colure.geometry.conventions import ComplexArray, FloatArray, order_of_count
from colure.values import holds_arrays
from colure.waves.modes import resized
from colure.waves.scattered import ACCURACY

#: Damping of the first fit, and the noise below which it is kept as it is.
FIRST_DAMPING = 1e-5
NEGLIGIBLE_NOISE = 3e-5
WIENER_ROUNDS = 3
#: Where an iteration ends: relative to the largest sample no smaller error is claimed.
ITERATION_FLOOR = 1e-9
#: Tolerance and iterations of a first look at the residual, and the noise from which that look is enough.
LOOK_TOLERANCE, LOOK_ITERATIONS, LOOK_NOISE = 1e-5, 100, 3e-4
#: Accuracy of the transform while the noise, at least 3e-5, is what limits the fit.
NOISY_ACCURACY = 1e-8
#: Largest change of the logarithm of the damping that counts as settled.
SETTLED = 0.3
#: Random devices fitted to learn the error of an iterative solution.
DRAWS = 6
#: Search for the order: iterations, accuracy, and the residual's variance that counts as no larger.
SEARCH_ITERATIONS = 40
SEARCH_TOLERANCE = 1e-9
SEARCH_SHARES = (0.4, 0.7, 1.0)
SAME_RESIDUAL = 1.15
MORE_DEGREES = 2


@dataclass(frozen=True, kw_only=True)
@holds_arrays
class LeastSquaresFit:
    """A least-squares expansion and what is known about it.

    coefficients
        (2, N(N+2)) far-field coefficients.
    residual
        Weighted rms of (data - model) over the weighted rms of the data.
    noise
        Estimated rms of the noise in one component of one sample relative to the largest
        sample, from the residual and the degrees of freedom left.
    freedom
        Effective number of coefficients that the data determined.
    iterations, converged
        Of the conjugate-gradient solution; the dense one has 0 iterations.
    damping
        (N,) per degree, relative to a fully sampled mode's singular value 1.
    holes
        Whether the samples leave parts of the sphere out.
    signal
        (N,) rms size of one coefficient of each degree on the reference sphere, as the data show it.
    near
        (2, n(n+2)) the coefficients on the reference sphere, where an iteration found them.
    possible_errors
        (draw, 2, n(n+2)) far-field coefficients of errors as likely as the noise and the geometry make
        them, where the solution already gave them (`error_draws`).
    beyond
        Rms of the field on the reference sphere that degrees above the order may add, where the solution already
        gave it (`truncation`).
    """

    coefficients: ComplexArray
    residual: float
    noise: float
    freedom: float
    iterations: int
    converged: bool
    damping: FloatArray
    signal: FloatArray
    operator: LeastSquares
    possible_errors: ComplexArray | None = None
    holes: bool = False
    near: ComplexArray | None = None
    beyond: float | None = None

    def truncation(self) -> float:
        """Return the rms of the far field that degrees above the order may add, in the unit of the far field.

        Judged by how the last degrees fall where they stand out of the noise, and never more than the residual shows.
        """
        operator = self.operator
        order = min(self.signal.size, operator.reference_by_degree().size)
        if self.beyond is not None:
            return float(self.beyond / operator.reference_by_degree()[order - 1])
        rows = operator.data()
        noise = self.noise * float(np.max(np.abs(rows / operator.row_weight)))
        if order < 6:
            return 0.0
        count = 2.0 * (2.0 * np.arange(1, order + 1) + 1.0)
        share = operator.row_weight**2
        per_coefficient = noise**2 * float(np.sum(share**2) / np.sum(share))
        power = tail_of(count * self.signal[:order] ** 2, float(count[-1]) * per_coefficient)
        near = min(power / (4.0 * np.pi), 2.0 * noise**2)
        return float(np.sqrt(near) / operator.reference_by_degree()[order - 1])

    def error_draws(self, count: int = DRAWS, *, seed: int = 11) -> ComplexArray:
        """Return possible errors of the coefficients (draw, 2, n(n+2)), noise and undetermined parts together.

        Random devices with the same spectrum are sampled at the same places with the same noise,
        fitted in the same manner, and compared (unless the direct solution gave its covariance).
        """
        if self.possible_errors is not None:
            return self.possible_errors
        operator, random = self.operator, np.random.default_rng(seed)
        operator.accuracy = NOISY_ACCURACY if self.noise >= NEGLIGIBLE_NOISE else ACCURACY
        rows = operator.data()
        # With holes the truncated degrees, small as they are, grow there like noise that no damping holds.
        noise = max(self.noise, NEGLIGIBLE_NOISE if self.holes else ITERATION_FLOOR)
        sigma = noise * float(np.max(np.abs(rows / operator.row_weight)))
        tolerance = max(1e-9, 1e-3 * self.noise)
        out = []
        for _ in range(count):
            true = _normal(random, (2, operator.degrees.size)) * self.signal[operator.degrees]
            measured = operator.forward(true) + sigma * operator.row_weight * _normal(random, rows.shape)
            fitted, _, _ = _iterated(operator, measured, self.damping[: operator.order], tolerance, 150)
            out.append(operator.far_field(fitted - true))
        operator.accuracy = ACCURACY
        return np.stack(out)


def tail_of(spectrum: FloatArray, floor: float) -> float:
    """Return the power that degrees above the last one may hold, judged by how the last ones fall.

    spectrum
        (N,) power of each degree; `floor` the power of noise in the last one.
    """
    if spectrum.size < 6:
        return 0.0
    last, before = float(spectrum[-2:].sum()), float(spectrum[-4:-2].sum())
    if last <= 2.0 * floor or last <= 1e-26 * float(spectrum.sum()):
        return 0.0
    ratio = min(last / before, 0.9) if before > 0.0 else 0.9
    return last * ratio / (1.0 - ratio)


def _normal(random: np.random.Generator, shape: tuple[int, ...]) -> ComplexArray:
    """Return complex normal numbers of unit variance."""
    raw = random.normal(size=(2, *shape)) * np.sqrt(0.5)
    return np.asarray(raw[0] + 1j * raw[1])


class LeastSquares:
    """What the solvers need of an operator from reference-sphere coefficients to weighted rows."""

    order: int
    degrees: np.ndarray
    reference: ComplexArray
    row_weight: FloatArray
    sample_weight: FloatArray
    accuracy: float = ACCURACY

    def forward(self, b: ComplexArray) -> ComplexArray:
        """Return weighted rows (components, count)."""
        raise NotImplementedError

    def adjoint(self, rows: ComplexArray) -> ComplexArray:
        """Return the adjoint of `forward`, shape (2, N(N+2))."""
        raise NotImplementedError

    def data(self) -> ComplexArray:
        """Return the weighted measured rows."""
        raise NotImplementedError

    def lowered(self, order: int) -> LeastSquares:
        """Return the same samples' operator for a lower order."""
        raise NotImplementedError

    def reference_by_degree(self) -> FloatArray:
        """Return the size of the reference sphere's functions (N,), the smaller of the two kinds."""
        first = np.arange(1, self.order + 1) ** 2 - 1
        return np.asarray(np.min(np.abs(self.reference[:, first]), axis=0))

    def far_field(self, b: ComplexArray) -> ComplexArray:
        """Return far-field coefficients of reference-sphere coefficients; unseen modes are zero."""
        with np.errstate(over="ignore", invalid="ignore"):
            seen = np.isfinite(self.reference) & (np.abs(self.reference) < 1e150)
            return np.asarray(np.where(seen, b / np.where(seen, self.reference, 1.0), 0.0))


def solve_with_noise(
    operator: LeastSquares,
    *,
    damping: float | None,
    tolerance: float,
    most_iterations: int,
    dense: bool = False,
    holes: bool = False,
) -> LeastSquaresFit:
    """Solve, learn the noise from the residual, and solve again with the damping that suits it.

    `holes` says that the samples leave parts of the sphere out: then the order is found first.
    """
    whole = operator.order
    if holes and damping is None:
        operator = operator.lowered(shown_order(operator))
    rows, order = operator.data(), operator.order
    solve = _dense if dense else _conjugate_gradients
    plain = FIRST_DAMPING if damping is None else damping
    bare, start = np.full(order, plain), None
    if damping is None and not dense:
        look = solve(operator, rows, bare, LOOK_TOLERANCE, LOOK_ITERATIONS)
        start, first = look.near, look
    if start is None or first.noise < LOOK_NOISE:
        first = solve(operator, rows, bare, tolerance, most_iterations, start)
    if damping is not None or first.noise < NEGLIGIBLE_NOISE:
        return replace(_filled(first, whole), holes=holes)
    # A bare fit of a partial sphere puts noise into every degree; the even damping that suits
    # the noise gives the first honest spectrum, and a few rounds settle it.
    sigma = first.noise * float(np.max(np.abs(rows / operator.row_weight)))
    even = sigma / float(np.sqrt(np.mean(np.abs(rows / operator.row_weight) ** 2)))
    enough = max(tolerance, 1e-3 * even)
    operator.accuracy = NOISY_ACCURACY
    fit = solve(operator, rows, np.full(order, min(0.3, even)), enough, most_iterations)
    for _ in range(WIENER_ROUNDS):
        damping_now = _damping_per_degree(operator, fit, sigma)
        settled = np.max(np.abs(np.log(damping_now / fit.damping))) < SETTLED
        fit = solve(operator, rows, damping_now, enough, most_iterations, fit.near)
        if settled:
            break
    operator.accuracy = ACCURACY
    return replace(_filled(fit, whole), holes=holes)


def _filled(fit: LeastSquaresFit, order: int) -> LeastSquaresFit:
    """Return the fit with coefficients of the order that was asked for."""
    if fit.operator.order == order:
        return fit
    more = np.full(order - fit.damping.size, np.inf)
    damping = np.concatenate([fit.damping, more])
    return replace(fit, coefficients=resized(fit.coefficients, order), damping=damping)


def residual_variance(operator: LeastSquares) -> float:
    """Return the residual's variance per spare row after a few iterations, in the unit of the weighted rows.

    A residual tells only of the sampled part, so it needs few iterations whatever the holes are.
    """
    rows = operator.data()
    b, _, _ = _iterated(operator, rows, np.full(operator.order, FIRST_DAMPING), SEARCH_TOLERANCE, SEARCH_ITERATIONS)
    spare = max(rows.size - _effective_freedom(operator, np.zeros(operator.order), rows.size), 0.02 * rows.size)
    return float(np.sum(np.abs(rows - operator.forward(b)) ** 2)) / spare


def shown_order(operator: LeastSquares) -> int:
    """Return the lowest order whose residual is no larger than that of the highest, and a few degrees more."""
    candidates = sorted({max(1, round(share * operator.order)) for share in SEARCH_SHARES})
    variances = [residual_variance(operator.lowered(order)) for order in candidates]
    rows = operator.data()
    enough = max(SAME_RESIDUAL * min(variances), SEARCH_TOLERANCE**2 * float(np.mean(np.abs(rows) ** 2)))
    first = next(i for i, value in enumerate(variances) if value <= enough)
    low, high = candidates[first - 1] if first else 0, candidates[first]
    while high - low > 1:
        middle = (low + high) // 2
        if residual_variance(operator.lowered(middle)) <= enough:
            high = middle
        else:
            low = middle
    return min(operator.order, high + MORE_DEGREES)


def _damping_per_degree(operator: LeastSquares, fit: LeastSquaresFit, sigma: float) -> FloatArray:
    """Return noise over signal per degree (N,), the Wiener damping with the spectrum of the first fit.

    The noise that one coefficient carries is the sample noise times the mean solid angle of a
    sample; degrees in which the first fit shows no more than that are damped away.
    """
    share = operator.row_weight**2
    variance = sigma**2 * float(np.sum(share**2) / np.sum(share))
    signal = np.maximum(fit.signal**2 - variance, 0.02 * variance)
    return np.asarray(np.clip(np.sqrt(variance / signal), FIRST_DAMPING, 10.0))


def _conjugate_gradients(
    operator: LeastSquares,
    rows: ComplexArray,
    damping: FloatArray,
    tolerance: float,
    most: int,
    start: ComplexArray | None = None,
) -> LeastSquaresFit:
    """Solve by conjugate gradients and report."""
    b, count, converged = _iterated(operator, rows, damping, tolerance, most, start)
    return _report(operator, rows, b, damping, count, converged)


def _iterated(
    operator: LeastSquares,
    rows: ComplexArray,
    damping: FloatArray,
    tolerance: float,
    most: int,
    start: ComplexArray | None = None,
) -> tuple[ComplexArray, int, bool]:
    """Conjugate gradients on (A^H A + D^2) b = A^H d (M. R. Hestenes and E. Stiefel, 1952).

    Preconditioned with 1 + D^2: on a well-sampled sphere A^H A is nearly one. `start` is a guess of b.
    """
    square = (damping**2)[operator.degrees]
    scale = 1.0 / (1.0 + square)
    b = np.zeros((2, operator.degrees.size), complex)
    gradient = operator.adjoint(rows)
    whole = float(np.vdot(gradient, gradient * scale).real)
    remainder = rows.copy()
    if start is not None:
        b = start.copy()
        remainder -= operator.forward(b)
        gradient = operator.adjoint(remainder) - square * b
    direction = gradient * scale
    size = float(np.vdot(gradient, gradient * scale).real)
    count = 0
    while count < most and size > (tolerance**2) * whole and size > 0.0:
        image = operator.forward(direction)
        curvature = float(np.vdot(image, image).real + np.vdot(direction, square * direction).real)
        step = size / curvature
        b += step * direction
        remainder -= step * image
        gradient = operator.adjoint(remainder) - square * b
        following = float(np.vdot(gradient, gradient * scale).real)
        direction = gradient * scale + (following / size) * direction
        size, count = following, count + 1
    return b, count, bool(size <= (tolerance**2) * whole)


def _effective_freedom(operator: LeastSquares, damping: FloatArray, rows: int) -> float:
    """Return how many complex coefficients the samples determine: coverage times undamped unknowns."""
    undamped = float(2.0 * np.sum(1.0 / (1.0 + damping[operator.degrees] ** 2)))
    covered = float(np.sum(operator.row_weight**2 / operator.sample_weight)) / (4.0 * np.pi)
    return min(undamped * min(1.0, covered * 1.05), rows - 1.0)


def _dense(
    operator: LeastSquares,
    rows: ComplexArray,
    damping: FloatArray,
    tolerance: float,
    most: int,
    start: ComplexArray | None = None,
) -> LeastSquaresFit:
    """Solve the stacked system (A; D) explicitly; the reference for the iterative path."""
    del tolerance, most, start
    unknowns = 2 * operator.degrees.size
    matrix = np.empty((rows.size, unknowns), complex)
    for column in range(unknowns):
        unit = np.zeros(unknowns, complex)
        unit[column] = 1.0
        matrix[:, column] = operator.forward(unit.reshape(2, -1)).ravel()
    stacked = np.concatenate([matrix, np.diag(np.tile(damping[operator.degrees], 2))])
    target = np.concatenate([rows.ravel(), np.zeros(unknowns)])
    b = np.linalg.lstsq(stacked, target, rcond=1e-14)[0].reshape(2, -1)
    return _report(operator, rows, b, damping, 0, True)


def _report(
    operator: LeastSquares, rows: ComplexArray, b: ComplexArray, damping: FloatArray, iterations: int, converged: bool
) -> LeastSquaresFit:
    remainder = rows - operator.forward(b)
    left, total = float(np.linalg.norm(remainder)), float(np.linalg.norm(rows))
    largest = float(np.max(np.abs(rows / operator.row_weight))) or 1.0
    freedom = _effective_freedom(operator, damping, rows.size)
    spare = max(1.0 - freedom / rows.size, 0.02)
    noise = float(np.sqrt(np.mean(np.abs(remainder / operator.row_weight) ** 2) / spare)) / largest
    residual = left / total if total else 0.0
    return LeastSquaresFit(
        coefficients=operator.far_field(b), residual=residual, noise=noise, freedom=freedom, iterations=iterations,
        converged=bool(converged), damping=damping, signal=_spectrum(b), operator=operator, near=b
    )  # fmt: skip


def _spectrum(b: ComplexArray) -> FloatArray:
    """Return the rms size of one coefficient of each degree (N,)."""
    order = order_of_count(b.shape[-1])
    n = np.arange(1, order + 1)
    power = np.add.reduceat(np.sum(np.abs(b) ** 2, axis=0), n**2 - 1)
    return np.asarray(np.sqrt(power / (2.0 * (2.0 * n + 1.0))))
