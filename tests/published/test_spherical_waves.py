"""Spherical waves against an independent library and printed values.

Independent reference: treams.special.vsw_M / vsw_N (general-purpose scattering library).
Printed values: section 5 of the standards sheet, formulas of J. E. Hansen (ed.), Spherical
Near-Field Antenna Measurements, 1988 (equation numbers from memory).
"""

from __future__ import annotations

import numpy as np
import pytest

from colure.geometry.conventions import CURL, GRAD, mode_count, mode_degrees, mode_index, mode_orders
from colure.geometry.directions import unit_vector
from colure.twin.antennas import probe_ports
from colure.waves.expansion import Expansion
from colure.waves.modes import from_power_normalized, to_power_normalized
from colure.waves.probe import first_order_response, mode_response
from colure.waves.radial import outgoing
from colure.waves.scattered import synthesis_at
from tests.conftest import cluster_of, expansion_of

special = pytest.importorskip("treams.special")

LIGHT = 299_792_458.0


def one_mode(order: int, kind: int, n: int, m: int) -> np.ndarray:
    a = np.zeros((2, mode_count(order)), complex)
    a[kind, mode_index(n, azimuthal=m)] = 1.0
    return a


def hansen_field(s: int, n: int, m: int, kr: float, theta: float, phi: float) -> np.ndarray:
    """F_smn of the literature through treams: F_1mn = -i vsw_M, F_2mn = -i vsw_N (exp(-iwt))."""
    wave = special.vsw_M if s == 1 else special.vsw_N
    return -1j * np.asarray(wave(n, m, kr, theta, phi))


@pytest.mark.parametrize("nm", [(1, 0), (1, 1), (1, -1), (2, 1), (3, -2), (5, 4), (12, -7), (30, 12)])
@pytest.mark.parametrize("s", [1, 2])
@pytest.mark.parametrize("kr", [3.0, 12.5, 80.0])
def test_near_field_of_every_mode_equals_the_independent_wave(s, nm, kr):
    """Q_smn -> our coefficients -> near field is the conjugate of F_smn's field, radial part included."""
    n, m = nm
    theta, phi, radius = 0.8, 2.3, 0.37
    q = np.zeros((2, mode_count(n)), complex)
    q[s - 1, mode_index(n, azimuthal=m)] = 1.0
    expansion = Expansion(from_power_normalized(q), np.array(kr / radius))
    ours = expansion.near_field(radius, [theta], 1)
    # Our grid starts at phi = 0: turn the device back by phi instead of the grid.
    point = radius * unit_vector(theta=theta, phi=phi)
    cartesian = expansion.near_field_at(point[None])[0]
    e_r = cartesian @ unit_vector(theta=theta, phi=phi)
    tangential = synthesis_at(
        expansion.coefficients * outgoing(n, np.array(kr)).tangential()[:, mode_degrees(n) - 1], theta=theta, phi=phi
    )[:, 0] * (np.exp(-1j * kr) / radius)
    assert ours.shape == (3, 1, 1)
    found = np.array([e_r, *tangential])
    # E of the literature is k sqrt(eta) sum Q F for exp(-iwt); |e|^2 = EIRP means e = E r sqrt(4 pi / 2 eta).
    expected = np.conj(hansen_field(s, n, m, kr, theta, phi)) * (kr / radius) * np.sqrt(2.0 * np.pi)
    assert found == pytest.approx(expected, abs=2e-11 * np.abs(expected).max())


def test_power_normalization_is_half_the_sum_of_squares():
    rng = np.random.default_rng(5)
    a = rng.normal(size=(2, mode_count(7))) + 1j * rng.normal(size=(2, mode_count(7)))
    q = to_power_normalized(a)
    assert 0.5 * np.sum(np.abs(q) ** 2) == pytest.approx(np.sum(np.abs(a) ** 2) / (4 * np.pi), rel=1e-14)
    assert from_power_normalized(q) == pytest.approx(a, abs=1e-14)


@pytest.mark.parametrize(("n", "printed"), [(1, 0.86603), (2, 1.11803), (5, 1.65831)])
def test_on_axis_only_first_order_modes_survive(n, printed):
    """|K_theta| = |K_phi| = sqrt(2n+1)/2 on axis for m = +-1, with the integral of |K|^2 equal 4 pi."""
    for kind in (GRAD, CURL):
        for m in range(-n, n + 1):
            field = np.sqrt(4 * np.pi) * synthesis_at(one_mode(n, kind, n, m), theta=0.0, phi=0.0)[:, 0]
            size = printed if abs(m) == 1 else 0.0
            assert np.abs(field) == pytest.approx([size, size], abs=6e-6)


@pytest.mark.parametrize(("order", "limit"), [(1, 3), (2, 8), (5, 35), (10, 120)])
def test_highest_directivity_of_all_modes_is_n_squared_plus_two_n(order, limit):
    """R. F. Harrington 1960: N^2 + 2N; reached by coefficients conjugate to the on-axis field."""
    modes = np.concatenate(
        [[synthesis_at(one_mode(order, kind, n, m), theta=0.0, phi=0.0)[0, 0]
          for n, m in zip(mode_degrees(order), mode_orders(order), strict=True)] for kind in (GRAD, CURL)]
    )  # fmt: skip
    best = np.conj(modes)
    directivity = 4 * np.pi * np.abs(modes @ best) ** 2 / np.sum(np.abs(best) ** 2)
    assert directivity == pytest.approx(limit, rel=1e-12)


def test_mode_count_of_the_literature():
    assert [2 * mode_count(n) for n in (10, 60, 110)] == [240, 7440, 24640]


@pytest.mark.parametrize(
    ("ka", "n", "printed"), [(20, 10, 0.85257), (50, 20, 0.91222), (50, 40, 0.58913), (100, 20, 0.97878)]
)
def test_dipole_probe_response_ratio(ka, n, printed):
    """|P_2n / P_1n| of an x-dipole probe, by the radial functions and by reciprocity on a sphere."""
    functions = outgoing(n, np.array(float(ka)))
    ratio = abs(functions.grad[-1] / functions.curl[-1])
    assert ratio == pytest.approx(printed, abs=6e-6)
    f = 10e9
    k = 2 * np.pi * f / LIGHT
    probe = expansion_of(cluster_of(f, [0, 0, 0], [1, 0, 0]), 3)
    found = mode_response(probe, n, ka / k)[0]
    assert abs(found[GRAD, n - 1, 4] / found[CURL, n - 1, 4]) == pytest.approx(printed, abs=6e-6)


@pytest.mark.parametrize(("digits", "best", "worst"), [(2, -69, -40), (3, -91, -60), (4, -111, -80)])
@pytest.mark.parametrize("kr0", [10, 30, 50, 100])
def test_truncation_residual_rule(digits, best, worst, kr0):
    """Edge x-dipole: residual power beyond N = kr0 + 1.8 d^(2/3) kr0^(1/3) is below -20 d dB."""
    from scipy.special import spherical_jn

    from colure.planning.sampling import order_for

    k = 2 * np.pi * 10e9 / LIGHT
    order = order_for(reach_m=kr0 / k, frequency_hz=10e9, level_db=-20.0 * digits)
    n = np.arange(1, 400)
    j, d = spherical_jn(n, kr0), spherical_jn(n, kr0, derivative=True)
    weight = (2 * n + 1) * (j**2 + (d + j / kr0) ** 2)
    residual = 10 * np.log10(weight[n > order].sum() / weight.sum())
    assert best - 1.0 < residual <= worst


def test_probe_rotated_by_roll_is_first_order():
    """A first-order probe's response to roll is exactly a cos(chi) + b sin(chi): only mu = +-1 answer."""
    f = 24e9
    probe = expansion_of(probe_ports(np.array([f]), cross_polar_db=-200.0)[0], 12)
    response = first_order_response(probe, 20, 0.3)
    assert 1.0 - response.first_order_share[0] < 1e-9


def test_radial_functions_far_above_kr_keep_their_digits():
    mpmath = pytest.importorskip("mpmath")
    mpmath.mp.dps = 60
    x = np.array([1.0, 100.0, 1500.0])
    found = outgoing(2000, x)
    for i, value in enumerate(x):
        for n in (1, 2, 50, 1000, 1501, 2000):
            z = mpmath.mpf(float(value))
            h = mpmath.sqrt(mpmath.pi / (2 * z)) * mpmath.hankel2(n + mpmath.mpf(1) / 2, z)
            below = mpmath.sqrt(mpmath.pi / (2 * z)) * mpmath.hankel2(n - mpmath.mpf(1) / 2, z)
            scale = mpmath.exp(-1j * z) / z
            curl = h / (mpmath.mpc(0, 1) ** (n + 1) * scale)
            grad = (below - n / z * h) / (mpmath.mpc(0, 1) ** n * scale)
            two = mpmath.mpf(2) ** int(found.exponent[i, n - 1])
            for ours, reference in ((found.curl, curl), (found.grad, grad)):
                assert abs(mpmath.mpc(complex(ours[i, n - 1])) * two / reference - 1) < 1e-12
