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

from colure.geometry.conventions import ComplexArray, FloatArray, mode_count, mode_degrees
from colure.values import holds_arrays
from colure.waves.cells import Cells
from colure.waves.direct_fit import HIGHEST_DIRECT, TAIL_DEGREES, FitRows, solve_directly
from colure.waves.least_squares import LeastSquares, LeastSquaresFit, solve_with_noise
from colure.waves.modes import resized
from colure.waves.normal_fit import solve_by_squares
from colure.waves.radial import outgoing
from colure.waves.scattered import adjoint_at, synthesis_at
from colure.waves.threads import threaded

#: Relative accuracy of interpolating radial functions between reference spheres.
RADIAL_ACCURACY = 1e-9
MOST_SPHERES = 24
#: Below these a fit is solved directly even without holes.
SMALL_ORDER, SMALL_COUNT = 14, 4000


@dataclass(frozen=True)
@holds_arrays
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
        *,
        theta: ArrayLike,
        phi: ArrayLike,
        field: ArrayLike,
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


class ScatteredOperator(LeastSquares):
    """Coefficients on a reference sphere to weighted samples, and its adjoint."""

    def __init__(self, samples: Samples, order: int, k: float, cells: Cells | None = None) -> None:
        self.samples, self.order, self.k = samples, order, k
        self.degrees = mode_degrees(order) - 1
        self.cells = Cells.of(samples.theta, samples.phi) if cells is None else cells
        self.row_weight = np.sqrt(self.cells.solid_angles(order) * samples.weight)
        self.sample_weight = samples.weight
        if samples.radius is None:
            self._shares = np.ones((1, samples.count))
            self._scales = self._more_scales = np.ones((1, 2, self.degrees.size), complex)
            self.reference = np.ones((2, self.degrees.size), complex)
            self.common = np.ones(samples.count, complex)
            return
        nodes = radial_nodes(samples.radius, order, k)
        self._shares = lagrange_shares(nodes, samples.radius)
        middle = float(nodes[len(nodes) // 2])
        reference = outgoing(order, np.array(k * middle))
        # Ratios to one reference radius stay near 1 however far n lies above k r.
        more = mode_degrees(order + TAIL_DEGREES) - 1
        beyond = outgoing(order + TAIL_DEGREES, np.array(k * middle))
        self._more_scales = np.stack(
            [outgoing(order + TAIL_DEGREES, np.array(k * r)).ratio_to(beyond)[:, more] for r in nodes]
        )
        self._scales = np.ascontiguousarray(self._more_scales[..., : self.degrees.size])
        self.reference = reference.tangential()[:, self.degrees]
        self.common = np.exp(-1j * k * samples.radius) / samples.radius

    def forward(self, b: ComplexArray) -> ComplexArray:
        """Return weighted samples (2, count), common factor exp(-jkr)/r removed."""

        def one(q: int) -> ComplexArray:
            field = synthesis_at(
                b * self._scales[q], theta=self.samples.theta, phi=self.samples.phi, accuracy=self.accuracy
            )
            return np.asarray(field * self._shares[q])

        return np.asarray(sum(threaded(one, len(self._scales))) * self.row_weight)

    def adjoint(self, rows: ComplexArray) -> ComplexArray:
        """Return the adjoint of `forward`, shape (2, N(N+2))."""
        weighted = rows * self.row_weight

        def one(q: int) -> ComplexArray:
            s = self.samples
            coefficients = adjoint_at(
                weighted * self._shares[q], self.order, theta=s.theta, phi=s.phi, accuracy=self.accuracy
            )
            return np.asarray(coefficients * np.conj(self._scales[q]))

        return np.asarray(sum(threaded(one, len(self._scales))))

    def data(self) -> ComplexArray:
        """Return the weighted measured samples, common factor removed."""
        return np.asarray(self.samples.field / self.common * self.row_weight)

    def lowered(self, order: int) -> ScatteredOperator:
        """Return the same samples' operator for a lower order."""
        return ScatteredOperator(self.samples, order, self.k, self.cells)

    def solved_directly(self) -> LeastSquaresFit | None:
        """Return the direct solution, or None where it would take too long (`direct_fit`)."""
        level = np.abs(self.common) / np.sqrt(np.mean(np.abs(self.common) ** 2))
        weight = level * np.sqrt(self.sample_weight)
        data = self.samples.field / self.common
        rows = FitRows(self.samples.theta, self.samples.phi, weight, self._shares, self._more_scales, data * weight)
        solution, clear = (None, True) if self.order <= SMALL_ORDER else solve_by_squares(rows, self.order)
        if solution is None or not clear:
            # Too little noise for products of columns: all digits are wanted where that is quick enough.
            needed = self.order if solution is None else solution.signal.size
            exact = solve_directly(rows, self.order) if solution is None or needed <= HIGHEST_DIRECT else None
            solution = exact or solution
        if solution is None:
            return None
        count, largest = solution.coefficients.shape[-1], float(np.max(np.abs(data * level))) or 1.0
        lower = self
        # Both operators may rest on spheres of their own where radii scatter; coefficients belong to this one's.
        reference = self.reference[:, :count]
        with np.errstate(over="ignore", invalid="ignore"):
            seen = np.isfinite(reference) & (np.abs(reference) < 1e150)
            safe = np.where(seen, reference, 1.0)
            far = np.where(seen, solution.coefficients / safe, 0.0)
            errors = np.where(seen, solution.draws / safe, 0.0)
        damping = np.full(self.order, np.inf)
        full = np.sqrt(np.sum(weight**2) / (4.0 * np.pi))
        damping[: solution.signal.size] = solution.noise / (full * np.maximum(solution.signal, 1e-300))
        return LeastSquaresFit(
            coefficients=resized(far, self.order), residual=solution.residual, noise=solution.noise / largest,
            freedom=solution.freedom, iterations=0, converged=True, damping=damping,
            signal=solution.signal, operator=lower, possible_errors=errors, beyond=solution.beyond,
        )  # fmt: skip


def fit_scattered(
    samples: Samples,
    order: int,
    k: float,
    *,
    damping: float | None = None,
    tolerance: float = 1e-9,
    most_iterations: int = 300,
    dense: bool = False,
) -> LeastSquaresFit:
    """Fit an expansion of degree `order` to scattered samples of one frequency.

    Parameters
    ----------
    k
        Wavenumber in rad/m.
    damping
        Tikhonov parameter relative to a fully sampled mode's singular value 1; by default it is
        found from the data, and the order up to `order` with it: directly by the evidence where samples
        leave parts out (`direct_fit`), else as large per degree as the noise that the residual shows
        is against the signal (a Wiener filter over the degrees).
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
    holes = operator.cells.has_holes(order)
    small = order <= SMALL_ORDER and samples.count <= SMALL_COUNT
    if damping is None and not dense and (holes or small) and (direct := operator.solved_directly()) is not None:
        return direct
    return solve_with_noise(
        operator, damping=damping, tolerance=tolerance, most_iterations=most_iterations, dense=dense, holes=holes
    )


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
        interpolated = np.einsum("qt,qkn->tkn", lagrange_shares(nodes, test), values)
        if np.max(np.abs(interpolated - exact) / np.max(np.abs(exact), axis=0)) < RADIAL_ACCURACY:
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
