"""Sphere grids and quadrature weights that integrate band-limited patterns exactly.

The plain sin(theta) rule is never used: it is biased even for an isotropic source
(-0.1008 dB at 30 deg steps, section 6 of the standards sheet).
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike
from scipy.special import roots_legendre, sph_harm_y

from colure.geometry.conventions import FloatArray
from colure.geometry.directions import fold
from colure.values import holds_arrays


def clenshaw_curtis_weights(intervals: int) -> FloatArray:
    """Return weights w_i with sum w_i f(theta_i) = int f sin(theta) dtheta over 0..pi.

    Nodes theta_i = pi i / intervals, i = 0..intervals, poles included; exact for
    cos(k theta), k <= intervals. Sum is 2; pole weight 1/(N^2 - 1) for even N
    (section 6 of the standards sheet prints N = 6 and 12).

    Raises
    ------
    ValueError
        If `intervals` is below 1.
    """
    n = intervals
    if n < 1:
        raise ValueError(f"intervals: {n}, must be at least 1 (count)")
    k = np.arange(n + 1)
    moments = np.where(k % 2 == 0, 2.0 / (1.0 - np.where(k % 2 == 0, k, 0).astype(float) ** 2), 0.0)
    halves = np.where((k == 0) | (k == n), 0.5, 1.0)
    cosines = np.cos(np.pi * np.outer(k, k) / n)
    return np.asarray(2.0 / n * halves * (cosines @ (halves * moments)), dtype=np.float64)


def open_ring_weights(rings: int) -> FloatArray:
    """Return Fejer's first-rule weights for rings at (i + 1/2) pi / rings, without poles."""
    n = rings
    if n < 1:
        raise ValueError(f"rings: {n}, must be at least 1 (count)")
    k = np.arange(n)
    theta = (k + 0.5) * np.pi / n
    even = np.arange(2, n, 2)
    return np.asarray(
        2.0 / n * (1.0 - 2.0 * (np.cos(np.outer(theta, even)) @ (1.0 / (even**2 - 1.0)))), dtype=np.float64
    )


def sector_weights(theta: ArrayLike, *, degree: int | None = None) -> FloatArray:
    """Return weights for int f sin(theta) dtheta over a sector sampled at `theta`.

    Equidistant nodes from theta[0] to theta[-1] in radians within 0..pi, both ends
    included; exact for cos(k theta), k <= degree (half the interval count by default).
    The smallest change of the trapezoidal rule that is exact is taken, so that the
    weights stay as even, and noise as low, as they can be.
    """
    t = np.asarray(theta, dtype=np.float64)
    top = (t.size - 1) // 2 if degree is None else degree
    start = np.sin(t) * np.gradient(t)
    start[[0, -1]] *= 0.5
    k = np.arange(top + 1)
    with np.errstate(divide="ignore", invalid="ignore"):
        upper, lower = _cosine_moment(t[-1], k), _cosine_moment(t[0], k)
    matrix = np.cos(np.outer(k, t))
    change, *_ = np.linalg.lstsq(matrix, (upper - lower) - matrix @ start, rcond=1e-13)
    return np.asarray(start + change, dtype=np.float64)


def _cosine_moment(theta: float, k: FloatArray | np.ndarray) -> FloatArray:
    """Antiderivative of cos(k x) sin(x) at theta."""
    kf = np.asarray(k, dtype=np.float64)
    with np.errstate(divide="ignore", invalid="ignore"):
        general = -0.5 * (np.cos((1 + kf) * theta) / (1 + kf) + np.cos((1 - kf) * theta) / (1 - kf))
    return np.asarray(np.where(kf == 1, 0.5 * np.sin(theta) ** 2, general))


@dataclass(frozen=True)
@holds_arrays
class SphereGrid:
    """A regular grid: rings of constant theta, `phi` shared by all rings.

    theta, phi
        Radians; theta may be negative on double-sided grids.
    ring_weights
        Solid angle of one sample on each ring in steradians; over the whole grid the sum
        is the solid angle covered.
    name
        How the grid was made, for reports.
    """

    theta: FloatArray
    phi: FloatArray
    ring_weights: FloatArray
    name: str

    @property
    def solid_angle(self) -> float:
        """Solid angle covered in steradians."""
        return float(self.ring_weights.sum() * self.phi.size)

    def integrate(self, values: ArrayLike) -> FloatArray:
        """Integrate values of shape (..., theta, phi) over the solid angle covered."""
        return np.asarray(np.einsum("...tp,t->...", np.asarray(values), self.ring_weights))

    def directions(self) -> tuple[FloatArray, FloatArray]:
        """Return folded (theta, phi) of every sample, each of shape (theta, phi), radians."""
        t, p = np.meshgrid(self.theta, self.phi, indexing="ij")
        folded, _ = fold(theta=t, phi=p)
        return folded.theta, folded.phi


def equiangular(*, theta_intervals: int, phi_count: int) -> SphereGrid:
    """Whole sphere, rings from pole to pole at pi / theta_intervals, Clenshaw-Curtis weights."""
    weights = clenshaw_curtis_weights(theta_intervals) * 2.0 * np.pi / phi_count
    theta = np.linspace(0.0, np.pi, theta_intervals + 1)
    return SphereGrid(theta, _turn(phi_count), weights, "equiangular with poles")


def equiangular_open(*, rings: int, phi_count: int) -> SphereGrid:
    """Whole sphere, rings half a step away from the poles, Fejer's first-rule weights."""
    weights = open_ring_weights(rings) * 2.0 * np.pi / phi_count
    theta = (np.arange(rings) + 0.5) * np.pi / rings
    return SphereGrid(theta, _turn(phi_count), weights, "equiangular without poles")


def gauss_legendre(*, rings: int, phi_count: int) -> SphereGrid:
    """Whole sphere, Gauss-Legendre rings: exact to degree 2 rings - 1 with fewest rings."""
    nodes, weights = roots_legendre(rings)
    return SphereGrid(
        np.arccos(nodes[::-1]), _turn(phi_count), weights[::-1] * 2.0 * np.pi / phi_count, "Gauss-Legendre"
    )


def double_sided(*, theta_max: float, theta_intervals: int, phi_count: int) -> SphereGrid:
    """Great-circle slices: theta from -theta_max to +theta_max, phi over a half turn.

    `theta_intervals` counts the steps from 0 to `theta_max` (radians, <= pi), so theta = 0
    is always sampled. With theta_max = pi the reading -pi repeats +pi and is left out.
    Weights are exact for the sector (Clenshaw-Curtis where it is the whole sphere).
    """
    side = np.linspace(0.0, theta_max, theta_intervals + 1)
    whole = np.isclose(theta_max, np.pi)
    weights = clenshaw_curtis_weights(theta_intervals) if whole else sector_weights(side)
    theta = np.concatenate([-side[:0:-1], side])
    both = np.concatenate([weights[:0:-1], weights])
    both[theta_intervals] = weights[0]
    if whole:  # both ends of a slice are the same pole: one sample per slice carries it all
        theta, both = theta[1:], both[1:]
    # phi covers a half turn, so the two signs of theta together see a full one; the pole
    # rings are seen once per slice and carry the full turn on their own.
    scale = np.full(theta.shape, np.pi / phi_count)
    scale[np.isclose(np.sin(theta), 0.0, atol=1e-12)] *= 2.0
    phi = np.arange(phi_count) * np.pi / phi_count
    return SphereGrid(theta, phi, both * scale, "double-sided great-circle slices")


def _turn(count: int) -> FloatArray:
    return np.asarray(np.arange(count) * 2.0 * np.pi / count, dtype=np.float64)


@dataclass(frozen=True)
@holds_arrays
class DirectionSet:
    """Scattered directions (radians) with solid-angle weights in steradians."""

    theta: FloatArray
    phi: FloatArray
    weights: FloatArray
    exact_degree: int


def fibonacci_lattice(count: int) -> tuple[FloatArray, FloatArray]:
    """Return (theta, phi) in radians of `count` directions along the golden spiral, each with the same area."""
    i = np.arange(count)
    return np.arccos(1.0 - (2.0 * i + 1.0) / count), np.mod(i * np.pi * (3.0 - np.sqrt(5.0)), 2.0 * np.pi)


def fibonacci(count: int) -> DirectionSet:
    """Return `count` nearly evenly spread directions with weights exact to a stated degree.

    The lattice: z_i = 1 - (2 i + 1) / count, phi_i = i times the golden angle. Equal
    weights would only be nearly right; the smallest change that integrates every spherical
    harmonic up to degree floor(sqrt(count) / 2) exactly is applied.

    Raises
    ------
    ValueError
        If `count` is below 4 or above 20000 (the weights need a dense solve).
    """
    if not 4 <= count <= 20_000:
        raise ValueError(f"count: {count}, must be 4 to 20000 (directions)")
    theta, phi = fibonacci_lattice(count)
    degree = int(np.sqrt(count) / 2.0)
    rows = [np.full(count, 1.0)]
    for n in range(1, degree + 1):
        for m in range(n + 1):
            harmonic = sph_harm_y(n, m, theta, phi)
            rows += [harmonic.real] + ([harmonic.imag] if m else [])
    matrix = np.array(rows)
    target = np.zeros(len(rows))
    target[0] = 4.0 * np.pi
    start = np.full(count, 4.0 * np.pi / count)
    gram = matrix @ matrix.T
    change = matrix.T @ np.linalg.solve(gram, target - matrix @ start)
    return DirectionSet(theta, phi, start + change, degree)
