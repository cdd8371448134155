"""Quadrature weights integrate what they promise, exactly."""

from __future__ import annotations

import numpy as np
import pytest
from scipy.special import sph_harm_y

from colure.geometry import sphere

GRIDS = [
    sphere.equiangular(theta_intervals=24, phi_count=48),
    sphere.equiangular_open(rings=24, phi_count=48),
    sphere.gauss_legendre(rings=13, phi_count=48),
    sphere.double_sided(theta_max=np.pi, theta_intervals=24, phi_count=24),
]


@pytest.mark.parametrize("grid", GRIDS, ids=lambda grid: grid.name)
def test_whole_sphere_grids_integrate_harmonics_exactly(grid):
    t, p = grid.directions()
    assert grid.solid_angle == pytest.approx(4 * np.pi, rel=1e-14)
    for n in range(24):
        for m in range(0, n + 1, 3):
            expected = np.sqrt(4 * np.pi) if n == 0 else 0.0
            assert grid.integrate(sph_harm_y(n, m, t, p)) == pytest.approx(expected, abs=2e-13)


def test_half_sphere_of_great_circle_slices():
    # -90..90 x 0..180: exact for polynomials in cos(theta), e.g. the power of a cosine beam.
    grid = sphere.double_sided(theta_max=np.pi / 2, theta_intervals=30, phi_count=60)
    t, p = grid.directions()
    assert grid.solid_angle == pytest.approx(2 * np.pi, rel=1e-13)
    assert grid.integrate(np.cos(t) ** 4) == pytest.approx(2 * np.pi / 5, rel=1e-12)
    assert grid.integrate(np.sin(t) ** 2 * np.cos(p) ** 2) == pytest.approx(2 * np.pi / 3, rel=1e-12)


def test_fibonacci_weights_are_exact_to_their_degree():
    grid = sphere.fibonacci(600)
    for n in range(grid.exact_degree + 1):
        for m in range(n + 1):
            expected = np.sqrt(4 * np.pi) if n == 0 else 0.0
            assert np.sum(grid.weights * sph_harm_y(n, m, grid.theta, grid.phi)) == pytest.approx(expected, abs=1e-12)
    assert grid.weights.min() > 0


@pytest.mark.parametrize("count", [3, 20_001])
def test_fibonacci_refuses_counts_outside_its_limits(count):
    with pytest.raises(ValueError, match="4 to 20000"):
        sphere.fibonacci(count)


def test_the_golden_spiral_cuts_the_sphere_into_equal_zones():
    """z_i = 1 - (2 i + 1) / N: the middles of N zones of equal area (Archimedes: a zone's area grows with its height)."""
    theta, phi = sphere.fibonacci_lattice(50)
    assert np.cos(theta) == pytest.approx(np.arange(49, -50, -2) / 50.0, abs=1e-12)
    assert np.rad2deg(phi[1]) == pytest.approx(137.50776, abs=1e-5)  # the golden angle
