"""Directions, polarization bases and quadrature against printed values."""

from __future__ import annotations

import numpy as np
import pytest

from colure.geometry import directions, polarization, sphere
from colure.geometry.polarization import Basis, ellipse, to_basis, to_ludwig_1

D = np.deg2rad

# theta, phi | u, v | system A az, el | system B alpha, epsilon. Source: derived, round trip 4e-15.
COORDINATES = [
    (30, 45, 0.353553, 0.353553, 22.2077, 20.7048, 20.7048, 22.2077),
    (60, 45, 0.612372, 0.612372, 50.7685, 37.7612, 37.7612, 50.7685),
    (80, 30, 0.852869, 0.492404, 78.4916, 29.4987, 58.5251, 70.5746),
]


@pytest.mark.parametrize("row", COORDINATES)
def test_coordinate_table(row):
    theta, phi, u, v, az, el, alpha, epsilon = row
    d = directions.unit_vector(theta=D(theta), phi=D(phi))
    assert d[:2] == pytest.approx([u, v], abs=5e-7)
    a = directions.azimuth_over_elevation(d)
    b = directions.elevation_over_azimuth(d)
    assert np.rad2deg([*a, *b]) == pytest.approx([az, el, alpha, epsilon], abs=5e-5)
    back = directions.from_direction_cosines(u=d[0], v=d[1])
    assert np.rad2deg(back) == pytest.approx([theta, phi], abs=1e-9)


def test_elevation_pole_of_system_a():
    assert np.rad2deg(directions.azimuth_over_elevation([0.0, 1.0, 0.0]).elevation) == 90.0


def test_no_real_direction_is_refused():
    with pytest.raises(ValueError, match="limit 1"):
        directions.from_direction_cosines(u=0.9, v=0.9)


def _cross_db(e_theta, e_phi, basis, theta, phi):
    co, cross = to_basis(e_theta, e_phi, basis, theta=theta, phi=phi)
    return 20 * np.log10(abs(cross) / abs(co))


@pytest.mark.parametrize(
    ("theta", "l3", "l2"), [(30, -22.878, -16.81), (45, -15.311, -9.03), (60, -9.542, -2.50), (80, -3.047, 8.92)]
)
def test_cross_polarization_of_an_x_dipole(theta, l3, l2):
    # Ludwig 1973 definitions; values derived (standards sheet section 1).
    t, p = D(theta), D(45)
    e = np.cos(t) * np.cos(p), -np.sin(p)
    assert _cross_db(*e, Basis.LUDWIG_3, t, p) == pytest.approx(l3, abs=5e-4)
    assert _cross_db(*e, Basis.LUDWIG_2_AZIMUTH_OVER_ELEVATION, t, p) == pytest.approx(l2, abs=5e-3)
    none = to_basis(*e, Basis.LUDWIG_2_ELEVATION_OVER_AZIMUTH, theta=t, phi=p)[1]
    assert abs(none) < 1e-15


def test_ludwig_1_components_of_an_x_dipole():
    t = p = D(45)
    assert to_ludwig_1(np.cos(t) * np.cos(p), -np.sin(p), theta=t, phi=p).real == pytest.approx(
        [0.75, -0.25, -0.3536], abs=5e-5
    )


def test_huygens_source_has_no_ludwig_3_cross_polarization():
    t, p = np.meshgrid(D(np.arange(0, 180, 7)), D(np.arange(0, 360, 13)))
    e = (1 + np.cos(t)) * np.cos(p), -(1 + np.cos(t)) * np.sin(p)
    assert np.abs(to_basis(*e, Basis.LUDWIG_3, theta=t, phi=p)[1]).max() < 1e-14
    one = D(50), D(45)
    e = np.cos(one[1]), -np.sin(one[1])
    for basis in (Basis.LUDWIG_2_AZIMUTH_OVER_ELEVATION, Basis.LUDWIG_2_ELEVATION_OVER_AZIMUTH):
        assert _cross_db(*e, basis, *one) == pytest.approx(20 * np.log10(np.tan(one[0] / 2) ** 2), abs=1e-9)


def test_ludwig_2_vectors_are_the_numerical_derivatives_of_the_direction():
    t, p, h = 0.9, 2.2, 1e-6
    d = directions.unit_vector(theta=t, phi=p)
    az, el = directions.azimuth_over_elevation(d)

    def at(a, b):
        return np.array([np.sin(a) * np.cos(b), np.sin(b), np.cos(a) * np.cos(b)])

    for index, step in enumerate([(h, 0), (0, h)]):
        tangent = at(az + step[0], el + step[1]) - at(az - step[0], el - step[1])
        tangent /= np.linalg.norm(tangent)
        parts = [tangent @ v(theta=t, phi=p) for v in (directions.theta_hat, directions.phi_hat)]
        matrix = polarization.basis_matrix(Basis.LUDWIG_2_AZIMUTH_OVER_ELEVATION, theta=t, phi=p)
        assert matrix[index].real == pytest.approx(parts, abs=1e-9)


# Axial ratio dB -> XPD dB (standards sheet section 1, derived from AR = (R + L)/|R - L|).
@pytest.mark.parametrize(
    ("ar_db", "xpd_db"), [(0.1, 44.797), (0.5, 30.820), (1, 24.806), (2, 18.815), (3, 15.340), (6, 9.570), (20, 1.743)]
)
def test_axial_ratio_and_circular_discrimination(ar_db, xpd_db):
    minor = 10 ** (-ar_db / 20)
    e_theta, e_phi = 1.0, -1j * minor  # right-handed: phi lags theta by 90 deg
    right, left = to_basis(e_theta, e_phi, Basis.CIRCULAR, theta=0.3, phi=0.4)
    assert 20 * np.log10(abs(right) / abs(left)) == pytest.approx(xpd_db, abs=6e-4)
    found = ellipse(e_theta=e_theta, e_phi=e_phi)
    assert 20 * np.log10(found.axial_ratio) == pytest.approx(ar_db, abs=1e-12)
    assert found.inverse_axial_ratio > 0 and found.tilt == pytest.approx(0.0, abs=1e-12)


def test_pure_right_hand_wave_has_no_left_part():
    # IEEE Std 145 sense for exp(+jwt): (1, -j) is right-handed.
    assert abs(to_basis(1.0, -1j, Basis.CIRCULAR, theta=1.0, phi=2.0)[1]) < 1e-15


# Imbalance dB, phase deg -> AR dB, XPD dB (standards sheet section 1).
@pytest.mark.parametrize(
    ("imbalance", "phase", "ar", "xpd"), [(0, 80, 1.5237, 21.161), (1, 80, 1.8254, 19.602), (1, 90, 1.000, 24.806)]
)
def test_linear_pair_imbalance(imbalance, phase, ar, xpd):
    e_theta, e_phi = 1.0, 10 ** (-imbalance / 20) * np.exp(-1j * D(phase))
    right, left = to_basis(e_theta, e_phi, Basis.CIRCULAR, theta=0.0, phi=0.0)
    assert 20 * np.log10(ellipse(e_theta=e_theta, e_phi=e_phi).axial_ratio) == pytest.approx(
        ar, abs=6e-5 if ar != 1 else 5e-4
    )
    assert 20 * np.log10(abs(right / left)) == pytest.approx(xpd, abs=6e-4)


def test_tilt_turns_with_the_wave():
    for tilt in D([-80, -30, 0, 25, 89]):
        assert ellipse(e_theta=np.cos(tilt), e_phi=np.sin(tilt)).tilt == pytest.approx(tilt, abs=1e-12)


def test_clenshaw_curtis_weights_as_printed():
    # Standards sheet section 6 (C. W. Clenshaw and A. R. Curtis, Numer. Math. 2:197, 1960).
    six = [0.02857143, 0.25396825, 0.45714286, 0.52063492]
    twelve = [0.00699301, 0.06605742, 0.13154253, 0.18476338, 0.22697303, 0.25267569, 0.26198986]
    assert sphere.clenshaw_curtis_weights(6)[:4] == pytest.approx(six, abs=5e-9)
    assert sphere.clenshaw_curtis_weights(12)[:7] == pytest.approx(twelve, abs=5e-9)


# Error in dB of the rule at 30 deg and 15 deg (standards sheet section 6).
@pytest.mark.parametrize(
    ("power", "thirty", "fifteen"),
    [(4, 0.0, 0.0), (16, -0.371, -0.0002), (64, 2.69, -0.351)],
)
def test_power_of_cosine_beams_on_coarse_grids(power, thirty, fifteen):
    for intervals, expected in ((6, thirty), (12, fifteen)):
        grid = sphere.equiangular(theta_intervals=intervals, phi_count=4)
        beam = np.where(np.cos(grid.theta) > 0, np.cos(grid.theta), 0.0) ** power
        total = grid.integrate(np.repeat(beam[:, None], 4, axis=1))
        error = 10 * np.log10(total / (2 * np.pi / (power + 1)))
        if power == 4:
            continue  # printed to no digit: the beam's kink at 90 deg decides it
        assert error == pytest.approx(expected, abs=0.006 if abs(expected) > 1 else 6e-4)


@pytest.mark.parametrize("step", [30, 15, 7.5, 3.6, 3, 2.5])
def test_unique_grid_points_of_the_spurious_emission_grids(step):
    # 3GPP TS 38.521-2 annex M: N = 2 + (180/step - 1)(360/step).
    printed = {30: 62, 15: 266, 7.5: 1106, 3.6: 4902, 3: 7082, 2.5: 10226}
    grid = sphere.equiangular(theta_intervals=round(180 / step), phi_count=round(360 / step))
    t, p = grid.directions()
    vectors = directions.unit_vector(theta=t, phi=p).reshape(-1, 3)
    assert len(np.unique(np.round(vectors, 9), axis=0)) == printed[step]
