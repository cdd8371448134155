"""Positioners: the table of the conventions, both ways, with and without errors."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from colure.geometry.directions import (
    angle_between,
    fold,
    from_azimuth_over_elevation,
    phi_hat,
    theta_hat,
    unit_vector,
)
from colure.geometry.kinematics import (
    AxisMap,
    Geometry,
    Misalignment,
    Positioner,
    device_to_lab,
    probe_to_lab,
    sighting,
    solutions,
)

angles = st.floats(-np.pi, np.pi)
geometries = st.sampled_from(list(Geometry))


def formula(geometry: Geometry, a: float, b: float) -> list[float]:
    """Direction under test as printed in the conventions."""
    sa, ca, sb, cb = np.sin(a), np.cos(a), np.sin(b), np.cos(b)
    return {
        Geometry.ROLL_OVER_AZIMUTH: [sa * cb, sa * sb, ca],
        Geometry.AZIMUTH_OVER_ELEVATION: [sa * cb, sb, ca * cb],
        Geometry.ELEVATION_OVER_AZIMUTH: [sa, ca * sb, ca * cb],
    }[geometry]


@given(geometries, angles, angles)
def test_direction_matches_the_printed_formula(geometry, a, b):
    assert sighting(geometry, first=a, second=b).direction == pytest.approx(formula(geometry, a, b), abs=1e-14)


@given(geometries, angles, st.floats(-1.5, 1.5))
def test_vectors_are_derivatives_of_the_direction(geometry, a, b):
    if geometry is Geometry.ROLL_OVER_AZIMUTH:
        a, b = b, a
    h = 1e-6
    step = [np.array(formula(geometry, a + h, b)) - formula(geometry, a - h, b),
            np.array(formula(geometry, a, b + h)) - formula(geometry, a, b - h)]  # fmt: skip
    found = sighting(geometry, first=a, second=b)
    for tangent, vector in zip(step, (found.first_vector, found.second_vector), strict=True):
        if np.linalg.norm(tangent) > 1e-8:
            # The second axis' circle shrinks with sin(theta) or cos(az), and turns round with its sign.
            shrink = {Geometry.ROLL_OVER_AZIMUTH: np.sin(a), Geometry.ELEVATION_OVER_AZIMUTH: np.cos(a)}
            sign = np.sign(shrink.get(geometry, 1.0)) if tangent is step[1] else 1.0
            assert sign * tangent / np.linalg.norm(tangent) == pytest.approx(vector, abs=1e-6)


def test_roll_over_azimuth_shows_theta_and_phi():
    found = sighting(Geometry.ROLL_OVER_AZIMUTH, first=0.7, second=2.1)
    assert found.first_vector == pytest.approx(theta_hat(theta=0.7, phi=2.1), abs=1e-15)
    assert found.second_vector == pytest.approx(phi_hat(theta=0.7, phi=2.1), abs=1e-15)


@given(geometries, st.floats(0.01, 3.13), angles)
def test_both_solutions_show_the_direction(geometry, theta, phi):
    d = unit_vector(theta=theta, phi=phi)
    pairs = solutions(geometry, d)
    assert len(pairs) == 2
    for a, b in pairs:
        assert angle_between(sighting(geometry, first=a, second=b).direction, d) < 1e-12


@given(st.floats(-3.1, 3.1), angles)
def test_negative_theta_is_the_same_direction_with_both_vectors_reversed(theta, phi):
    folded, sign = fold(theta=theta, phi=phi)
    assert unit_vector(theta=folded.theta, phi=folded.phi) == pytest.approx(
        unit_vector(theta=theta, phi=phi), abs=1e-14
    )
    for hat in (theta_hat, phi_hat):
        assert sign * hat(theta=folded.theta, phi=folded.phi) == pytest.approx(hat(theta=theta, phi=phi), abs=1e-12)


def test_readouts_respect_limits_sense_and_zero():
    positioner = Positioner(
        Geometry.ROLL_OVER_AZIMUTH,
        AxisMap(sense=-1, zero_deg=10, min_deg=-90, max_deg=110),
        AxisMap(min_deg=-10, max_deg=370),
    )
    d = unit_vector(theta=np.deg2rad(40), phi=np.deg2rad(30))
    found = positioner.readouts(d)
    assert sorted(found) == [(pytest.approx(-30), pytest.approx(30)), (pytest.approx(50), pytest.approx(210))]
    for first, second in found:
        assert angle_between(positioner.sighting(first_deg=first, second_deg=second).direction, d) < 1e-12


def test_unreachable_direction_says_why():
    positioner = Positioner(
        Geometry.ROLL_OVER_AZIMUTH, AxisMap(min_deg=-90, max_deg=90), AxisMap(min_deg=0, max_deg=360)
    )
    back = unit_vector(theta=np.deg2rad(150), phi=0.2)
    assert positioner.readouts(back) == []
    assert "150.000 deg" in positioner.reach_error(back) and "-90..90 deg" in positioner.reach_error(back)


@given(angles, st.floats(-3.0, 3.0), angles)
def test_probe_that_follows_the_roll_measures_ludwig_3(phi, theta, psi):
    # chi = psi - phi on roll over azimuth is the slant-psi Ludwig-3 component at every theta.
    found = sighting(Geometry.ROLL_OVER_AZIMUTH, first=theta, second=phi)
    chi = psi - phi
    seen = np.cos(chi) * found.first_vector + np.sin(chi) * found.second_vector
    x3 = np.cos(phi - psi) * theta_hat(theta=theta, phi=phi) - np.sin(phi - psi) * phi_hat(theta=theta, phi=phi)
    assert seen == pytest.approx(x3, abs=1e-13)


def test_probe_port_lies_along_x_and_turns_towards_y():
    for chi in (0.0, 0.4, 2.0):
        motion = probe_to_lab(distance=1.2, roll=chi)
        assert motion.rotation @ [1, 0, 0] == pytest.approx([np.cos(chi), np.sin(chi), 0], abs=1e-15)
        assert motion.rotation @ [0, 0, 1] == pytest.approx([0, 0, -1], abs=1e-15)
        assert motion.translation == pytest.approx([0, 0, 1.2])


def test_misalignments_act_where_they_belong():
    one_mm = Misalignment(carried_axis_offset=(1e-3, 0, 0), device_offset=(0, 2e-3, 0), azimuth_zero=0.01)
    motion = device_to_lab(Geometry.ROLL_OVER_AZIMUTH, first=0.3, second=0.5, misalignment=one_mm)
    nominal = device_to_lab(Geometry.ROLL_OVER_AZIMUTH, first=0.31, second=0.5)
    assert motion.rotation == pytest.approx(nominal.rotation, abs=1e-15)
    # The roll-axis offset turns with azimuth only; the device offset with both axes.
    by_azimuth = device_to_lab(Geometry.ROLL_OVER_AZIMUTH, first=0.31, second=0.0).rotation
    expected = by_azimuth @ [1e-3, 0, 0] + nominal.rotation @ [0, 2e-3, 0]
    assert motion.translation == pytest.approx(expected, abs=1e-15)


def test_rigid_motion_inverse():
    motion = device_to_lab(
        Geometry.ELEVATION_OVER_AZIMUTH, first=0.3, second=-0.5,
        misalignment=Misalignment(fixed_axis_tilt=(0.01, 0.02, 0.0), fixed_axis_offset=(1, 2, 3)),
    )  # fmt: skip
    points = np.array([[0.1, 0.2, 0.3], [1.0, -1.0, 0.5]])
    assert motion.inverse().points(motion.points(points)) == pytest.approx(points, abs=1e-12)


@given(geometries, angles, angles, st.floats(-0.2, 0.2), st.floats(-0.2, 0.2))
def test_zero_errors_are_true_angle_minus_shown_angle(geometry, a, b, azimuth_zero, other_zero):
    """The definition of both: what is shown as (a, b) looks where the printed formula looks at the true angles."""
    off = Misalignment(azimuth_zero=azimuth_zero, other_zero=other_zero)
    seen = sighting(geometry, first=a, second=b, misalignment=off).direction
    assert seen == pytest.approx(formula(geometry, a + azimuth_zero, b + other_zero), abs=1e-14)


def test_readouts_nearest_to_home_come_first():
    """Worked out by hand: theta 30, phi -10 deg is azimuth 30 with roll -10 or 350, or azimuth -30 with roll 170 or -190."""
    positioner = Positioner(
        Geometry.ROLL_OVER_AZIMUTH, AxisMap(min_deg=-90, max_deg=90), AxisMap(min_deg=-200, max_deg=360)
    )
    found = positioner.readouts(unit_vector(theta=np.deg2rad(30.0), phi=np.deg2rad(-10.0)))
    assert np.array(found) == pytest.approx(np.array([(30, -10), (-30, 170), (-30, -190), (30, 350)]))


def test_azimuth_and_elevation_point_where_the_formula_says():
    """d = (sin az cos el, sin el, cos az cos el), worked out by hand for az 30 deg, el 20 deg."""
    d = from_azimuth_over_elevation(azimuth=np.deg2rad(30.0), elevation=np.deg2rad(20.0))
    assert d == pytest.approx([0.4698463, 0.3420201, 0.8137977], abs=1e-7)


def test_a_readout_exactly_on_a_limit_is_inside():
    axis = AxisMap(min_deg=-180.0, max_deg=180.0)
    assert axis.readouts_within(180.0) == [-180.0, 180.0]
    assert AxisMap(min_deg=-10.0, max_deg=190.0).readouts_within(-10.0) == [-10.0]
