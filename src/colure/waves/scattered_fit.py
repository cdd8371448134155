"""Least squares on scattered samples: any directions, a radius per point, any part of the sphere.

Unknowns are the tangential coefficients on a reference sphere (far-field coefficients times the
radial functions there), which all weigh alike; far-field coefficients follow by division with
functions that are never small. Rows are weighted with the solid angle of each sample, so that a
whole, decently sampled sphere makes the normal matrix nearly the identity and a dozen
conjugate-gradient steps are enough. Radii that scatter are interpolated between a few spheres.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike
from scipy.spatial import SphericalVoronoi

from colure.geometry.conventions import ComplexArray, FloatArray, mode_count, mode_degrees
from colure.geometry.directions import unit_vector
from colure.waves.radial import outgoing
from colure.waves.scattered import ACCURACY, adjoint_at, synthesis_at
from colure.waves.threads import threaded

#: Relative accuracy of interpolating radial functions between reference spheres.
RADIAL_ACCURACY = 1e-9
MOST_SPHERES = 24
#: Damping of the first fit, and the noise below which it is kept as it is.
FIRST_DAMPING = 1e-5
NEGLIGIBLE_NOISE = 3e-5
WIENER_ROUNDS = 3
#: Accuracy of the transform while the noise, at least 3e-5, is what limits the fit.
NOISY_ACCURACY = 1e-8
#: Largest change of the logarithm of the damping that counts as settled.
SETTLED = 0.3


@dataclass(frozen=True)
class Samples:
    """Tangential fields at scattered places, one frequency.

    theta, phi
        (count,) radians.
    radius
        (count,) metres, or None for far-field samples (exp(-jkr)/r removed).
    field
        (2, count): (e_theta, e_phi) at the place, exp(-jkr)/r included when radius is given.
    weight
        (count,) relative trust in each sample, 1 by default; 0 leaves it out.
    """

    theta: FloatArray
    phi: FloatArray
    radius: FloatArray | None
    field: ComplexArray
    weight: FloatArray

    @classmethod
    def of(
        cls,
        theta: ArrayLike,
        phi: ArrayLike,
        field: ArrayLike,
        *,
        radius: ArrayLike | None = None,
        weight: ArrayLike | None = None,
    ) -> Samples:
        """Check and bundle samples.

        Raises
        ------
        ValueError
            If shapes differ, a value is not finite, a radius is not positive or all weights are 0.
        """
        t = np.asarray(theta, float).ravel()
        p = np.asarray(phi, float).ravel()
        e = np.asarray(field, complex)
        w = np.ones_like(t) if weight is None else np.broadcast_to(np.asarray(weight, float), t.shape)
        r = None if radius is None else np.array(np.broadcast_to(np.asarray(radius, float), t.shape))
        if p.shape != t.shape or e.shape != (2, t.size):
            raise ValueError(f"samples: theta {t.shape}, phi {p.shape}, field {e.shape}, must be (n,), (n,), (2, n)")
        bad = ~(np.isfinite(t) & np.isfinite(p) & np.all(np.isfinite(e), axis=0) & np.isfinite(w) & (w >= 0.0))
        if r is not None:
            bad |= ~(np.isfinite(r) & (r > 0.0))
        if np.any(bad):
            raise ValueError(
                f"samples: {int(bad.sum())} of {t.size} hold values that are not finite (or weight < 0, radius <= 0)"
            )
        if not np.any(w > 0.0):
            raise ValueError("samples: every weight is 0, needs at least one above 0 (relative)")
        keep = w > 0.0
        return cls(t[keep], p[keep], None if r is None else r[keep], e[:, keep], np.array(w[keep]))

    @property
    def count(self) -> int:
        """Number of samples."""
        return self.theta.size


@dataclass(frozen=True)
class Fit:
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
    """

    coefficients: ComplexArray
    residual: float
    noise: float
    freedom: float
    iterations: int
    converged: bool
    damping: FloatArray


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

    def far_field(self, b: ComplexArray) -> ComplexArray:
        """Return far-field coefficients of reference-sphere coefficients; unseen modes are zero."""
        with np.errstate(over="ignore", invalid="ignore"):
            seen = np.isfinite(self.reference) & (np.abs(self.reference) < 1e150)
            return np.asarray(np.where(seen, b / np.where(seen, self.reference, 1.0), 0.0))


class ScatteredOperator(LeastSquares):
    """Coefficients on a reference sphere to weighted samples, and its adjoint."""

    def __init__(self, samples: Samples, order: int, k: float) -> None:
        self.samples, self.order, self.k = samples, order, k
        self.degrees = mode_degrees(order) - 1
        self.row_weight = np.sqrt(solid_angles(samples.theta, samples.phi, order) * samples.weight)
        self.sample_weight = samples.weight
        if samples.radius is None:
            self._shares = np.ones((1, samples.count))
            self._scales = np.ones((1, 2, self.degrees.size), complex)
            self.reference = np.ones((2, self.degrees.size), complex)
            self.common = np.ones(samples.count, complex)
            return
        nodes = radial_nodes(samples.radius, order, k)
        self._shares = lagrange_shares(nodes, samples.radius)
        middle = float(nodes[len(nodes) // 2])
        reference = outgoing(order, np.array(k * middle))
        # Ratios to one reference radius stay near 1 however far n lies above k r.
        self._scales = np.stack([outgoing(order, np.array(k * r)).ratio_to(reference)[:, self.degrees] for r in nodes])
        self.reference = reference.tangential()[:, self.degrees]
        self.common = np.exp(-1j * k * samples.radius) / samples.radius

    def forward(self, b: ComplexArray) -> ComplexArray:
        """Return weighted samples (2, count), common factor exp(-jkr)/r removed."""

        def one(q: int) -> ComplexArray:
            found = synthesis_at(b * self._scales[q], self.samples.theta, self.samples.phi, accuracy=self.accuracy)
            return np.asarray(found * self._shares[q])

        return np.asarray(sum(threaded(one, len(self._scales))) * self.row_weight)

    def adjoint(self, rows: ComplexArray) -> ComplexArray:
        """Return the adjoint of `forward`, shape (2, N(N+2))."""
        weighted = rows * self.row_weight

        def one(q: int) -> ComplexArray:
            places = self.samples.theta, self.samples.phi
            found = adjoint_at(weighted * self._shares[q], self.order, *places, accuracy=self.accuracy)
            return np.asarray(found * np.conj(self._scales[q]))

        return np.asarray(sum(threaded(one, len(self._scales))))

    def data(self) -> ComplexArray:
        """Return the weighted measured samples, common factor removed."""
        return np.asarray(self.samples.field / self.common * self.row_weight)


def fit_scattered(
    samples: Samples,
    order: int,
    k: float,
    *,
    damping: float | None = None,
    tolerance: float = 1e-9,
    most_iterations: int = 300,
    dense: bool = False,
) -> Fit:
    """Fit an expansion of degree `order` to scattered samples of one frequency.

    Parameters
    ----------
    k
        Wavenumber in rad/m.
    damping
        Tikhonov parameter relative to a fully sampled mode's singular value 1; by default it is
        found from the data: first nearly none, then per degree as large as the noise that the residual
        shows is against the signal (a Wiener filter over the degrees).
    tolerance
        Relative size of the gradient at which the iteration ends.
    dense
        True solves the dense normal equations by singular values (small problems, reference).

    Raises
    ------
    ValueError
        If there are fewer sample components than a quarter of the unknowns.
    """
    unknowns = 2 * mode_count(order)
    if 2 * samples.count < unknowns // 4:
        raise ValueError(
            f"samples: {samples.count}, must be at least {unknowns // 8 + 1} (directions) for order {order}; "
            f"lower the order"
        )
    operator = ScatteredOperator(samples, order, k)
    return solve_with_noise(
        operator, damping=damping, tolerance=tolerance, most_iterations=most_iterations, dense=dense
    )


def solve_with_noise(
    operator: LeastSquares, *, damping: float | None, tolerance: float, most_iterations: int, dense: bool
) -> Fit:
    """Solve, learn the noise from the residual, and solve again with the damping that suits it."""
    rows, order = operator.data(), operator.order
    solve = _dense if dense else _conjugate_gradients
    plain = FIRST_DAMPING if damping is None else damping
    first = solve(operator, rows, np.full(order, plain), tolerance, most_iterations)
    if damping is not None or first.noise < NEGLIGIBLE_NOISE:
        return first
    # A bare fit of a partial sphere puts noise into every degree; the even damping that suits
    # the noise gives the first honest spectrum, and a few rounds settle it.
    sigma = first.noise * float(np.max(np.abs(rows / operator.row_weight)))
    even = sigma / float(np.sqrt(np.mean(np.abs(rows / operator.row_weight) ** 2)))
    enough = max(tolerance, 1e-3 * even)
    operator.accuracy = NOISY_ACCURACY
    found = solve(operator, rows, np.full(order, min(0.3, even)), enough, most_iterations)
    for _ in range(WIENER_ROUNDS):
        damping_now = _damping_per_degree(operator, found, sigma)
        settled = np.max(np.abs(np.log(damping_now / found.damping))) < SETTLED
        found = solve(operator, rows, damping_now, enough, most_iterations)
        if settled:
            break
    operator.accuracy = ACCURACY
    return found


def _damping_per_degree(operator: LeastSquares, fit: Fit, sigma: float) -> FloatArray:
    """Return noise over signal per degree (N,), the Wiener damping with the spectrum of the first fit.

    The noise that one coefficient carries is the sample noise times the mean solid angle of a
    sample; degrees in which the first fit shows no more than that are damped away.
    """
    share = operator.row_weight**2
    variance = sigma**2 * float(np.sum(share**2) / np.sum(share))
    per_mode = np.sum(np.abs(fit.coefficients * operator.reference) ** 2, axis=0)
    starts = np.arange(1, operator.order + 1) ** 2 - 1
    count = 2.0 * (2.0 * np.arange(1, operator.order + 1) + 1.0)
    signal = np.maximum(np.add.reduceat(per_mode, starts) / count - variance, 0.02 * variance)
    return np.asarray(np.clip(np.sqrt(variance / signal), FIRST_DAMPING, 10.0))


def _conjugate_gradients(
    operator: LeastSquares, rows: ComplexArray, damping: FloatArray, tolerance: float, most: int
) -> Fit:
    """Conjugate gradients on (A^H A + D^2) b = A^H d (M. R. Hestenes and E. Stiefel, 1952).

    Preconditioned with 1 + D^2: on a well-sampled sphere A^H A is nearly one.
    """
    square = (damping**2)[operator.degrees]
    scale = 1.0 / (1.0 + square)
    b = np.zeros((2, operator.degrees.size), complex)
    remainder = rows.copy()
    gradient = operator.adjoint(remainder)
    direction = gradient * scale
    size = float(np.vdot(gradient, gradient * scale).real)
    start, count = size, 0
    while count < most and size > (tolerance**2) * start and size > 0.0:
        image = operator.forward(direction)
        curvature = float(np.vdot(image, image).real + np.vdot(direction, square * direction).real)
        step = size / curvature
        b += step * direction
        remainder -= step * image
        gradient = operator.adjoint(remainder) - square * b
        following = float(np.vdot(gradient, gradient * scale).real)
        direction = gradient * scale + (following / size) * direction
        size, count = following, count + 1
    return _report(operator, rows, b, damping, count, size <= (tolerance**2) * start)


def _effective_freedom(operator: LeastSquares, damping: FloatArray, rows: int) -> float:
    """Return how many complex coefficients the samples determine: coverage times undamped unknowns."""
    undamped = float(2.0 * np.sum(1.0 / (1.0 + damping[operator.degrees] ** 2)))
    covered = float(np.sum(operator.row_weight**2 / operator.sample_weight)) / (4.0 * np.pi)
    return min(undamped * min(1.0, covered * 1.05), rows - 1.0)


def _dense(operator: LeastSquares, rows: ComplexArray, damping: FloatArray, tolerance: float, most: int) -> Fit:
    """Solve the stacked system (A; D) explicitly; the reference for the iterative path."""
    del tolerance, most
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
    operator: LeastSquares, rows: ComplexArray, b: ComplexArray, damping: FloatArray, iterations: int, done: bool
) -> Fit:
    remainder = rows - operator.forward(b)
    left, total = float(np.linalg.norm(remainder)), float(np.linalg.norm(rows))
    largest = float(np.max(np.abs(rows / operator.row_weight))) or 1.0
    freedom = _effective_freedom(operator, damping, rows.size)
    spare = max(1.0 - freedom / rows.size, 0.02)
    noise = float(np.sqrt(np.mean(np.abs(remainder / operator.row_weight) ** 2) / spare)) / largest
    residual = left / total if total else 0.0
    return Fit(operator.far_field(b), residual, noise, freedom, iterations, bool(done), damping)


def solid_angles(theta: FloatArray, phi: FloatArray, order: int) -> FloatArray:
    """Return the solid angle that each sample stands for, in steradians, shape (count,).

    Areas of the spherical Voronoi cells; samples at one place share their cell. Cells at the
    rim of a partial sphere, which would reach into the unsampled part, are cut to twice the
    area that a sample of degree `order` may stand for.
    """
    points = unit_vector(theta=theta, phi=phi)
    unique, inverse, counts = np.unique(np.round(points, 9), axis=0, return_inverse=True, return_counts=True)
    inverse = inverse.reshape(-1)
    if len(unique) < 5:
        return np.full(theta.size, 4.0 * np.pi / theta.size)
    unique = unique / np.linalg.norm(unique, axis=1, keepdims=True)
    area = SphericalVoronoi(unique).calculate_areas()
    largest = max(2.0 * float(np.median(area)), 2.0 * np.pi / (order + 1) ** 2)
    return np.asarray(np.minimum(area, largest)[inverse] / counts[inverse])


def radial_nodes(radius: FloatArray, order: int, k: float) -> FloatArray:
    """Return the few reference radii between which all radial functions interpolate well.

    Chebyshev nodes over the spread; their number grows until functions of all degrees at test
    radii agree to `RADIAL_ACCURACY` of their size.

    Raises
    ------
    ValueError
        If the radii spread so far that `MOST_SPHERES` reference spheres are not enough.
    """
    low, high = float(radius.min()), float(radius.max())
    if high - low < 1e-9 / k:
        return np.array([0.5 * (low + high)])
    test = np.linspace(low, high, 7)
    middle = outgoing(order, np.array(k * 0.5 * (low + high)))
    exact = np.stack([outgoing(order, np.array(k * r)).ratio_to(middle) for r in test])
    for count in range(2, MOST_SPHERES + 1):
        angle = (np.arange(count) + 0.5) * np.pi / count
        nodes = np.sort(0.5 * (low + high) + 0.5 * (high - low) * np.cos(angle))
        values = np.stack([outgoing(order, np.array(k * r)).ratio_to(middle) for r in nodes])
        found = np.einsum("qt,qkn->tkn", lagrange_shares(nodes, test), values)
        if np.max(np.abs(found - exact) / np.max(np.abs(exact), axis=0)) < RADIAL_ACCURACY:
            return np.asarray(nodes)
    raise ValueError(
        f"radius: {low:.4g} to {high:.4g} m, too wide a spread for one fit of order {order}; "
        f"split the data by radius (at most {MOST_SPHERES} reference spheres)"
    )


def lagrange_shares(nodes: FloatArray, radius: FloatArray) -> FloatArray:
    """Return Lagrange weights (node, count) of interpolation at `radius`."""
    shares = np.ones((nodes.size, radius.size))
    for q in range(nodes.size):
        for other in range(nodes.size):
            if other != q:
                shares[q] *= (radius - nodes[other]) / (nodes[q] - nodes[other])
    return shares


def support_map(
    samples: Samples, order: int, k: float, theta: ArrayLike, phi: ArrayLike, *, damping: float = 1e-3, draws: int = 4
) -> FloatArray:
    """Return, per direction, the share of an arbitrary field of degree `order` that the data recover.

    Random fields are sampled at the same places, fitted with the same damping, and compared:
    1 where everything comes back, 0 where nothing does. Values are averaged over a cap of one
    resolution cell (pi / order), `theta` and `phi` in radians, result (count,).
    """
    random = np.random.default_rng(7)
    t, p = np.asarray(theta, float).ravel(), np.asarray(phi, float).ravel()
    lost, whole = np.zeros(t.size), np.zeros(t.size)
    far = Samples(samples.theta, samples.phi, None, samples.field, samples.weight)
    operator = ScatteredOperator(far, order, k)
    ring = np.deg2rad(np.arange(0, 360, 60))
    cap = 0.5 * np.pi / order
    around = [(0.0, 0.0), *((cap * np.cos(a), cap * np.sin(a)) for a in ring)]
    places = [_step_aside(t, p, a, b) for a, b in around]
    for _ in range(draws):
        raw = random.normal(size=(2, 2, operator.degrees.size))
        true = raw[0] + 1j * raw[1]
        fit = _conjugate_gradients(operator, operator.forward(true), np.full(order, damping), 1e-5, 150)
        for where in places:
            lost += np.sum(np.abs(synthesis_at(fit.coefficients - true, *where)) ** 2, axis=0)
            whole += np.sum(np.abs(synthesis_at(true, *where)) ** 2, axis=0)
    return np.asarray(np.clip(1.0 - np.sqrt(lost / whole), 0.0, 1.0))


def _step_aside(theta: FloatArray, phi: FloatArray, a: float, b: float) -> tuple[FloatArray, FloatArray]:
    from colure.geometry.directions import phi_hat, theta_hat, theta_phi

    moved = unit_vector(theta=theta, phi=phi) + a * theta_hat(theta=theta, phi=phi) + b * phi_hat(theta=theta, phi=phi)
    found = theta_phi(moved)
    return found.theta, found.phi
