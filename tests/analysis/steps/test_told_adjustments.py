"""Adjustments by small motions of joints: the signs against the rotation matrices of the conventions, sums with their covariance."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from colure.analysis.steps.alignment import readings_of, without_own
from colure.analysis.steps.joint_estimate import JointEstimate
from colure.analysis.steps.moved_joints import motions_of
from colure.analysis.steps.told_adjustments import MEMBERS, told_adjustments
from colure.geometry.joint_errors import JointTolerance
from colure.geometry.joints import stack_of
from colure.geometry.kinematics import ALIGNED, Geometry, device_to_lab
from colure.geometry.rotations import about_axis, from_rotation_vector
from colure.model.chamber import AlignmentTolerance, Reading, Readings

SMALL, AZIMUTH, ROLL = 1e-4, 0.7, 0.4


@pytest.mark.parametrize(
    ("name", "error"),
    [
        ("theta_zero", replace(ALIGNED, azimuth_zero=SMALL)),
        ("roll_axis_tilt", replace(ALIGNED, carried_axis_tilt=(SMALL, 0.0, 0.0))),
        ("axes_offset_x", replace(ALIGNED, carried_axis_offset=(SMALL, 0.0, 0.0))),
        ("axes_offset_y", replace(ALIGNED, carried_axis_offset=(0.0, SMALL, 0.0))),
    ],
)
def test_every_member_moves_the_device_as_the_adjustment_does(name, error):
    """R = R_y(-theta) R_z(-phi) (conventions); what stands off on the roll axis lies between the two, on the azimuth's before them."""
    known = device_to_lab(
        Geometry.ROLL_OVER_AZIMUTH, first=np.array([AZIMUTH]), second=np.array([ROLL]), misalignment=error
    )
    azimuth, roll = about_axis("y", -AZIMUTH), about_axis("z", -ROLL)
    for joint, turns, along in MEMBERS[name]:
        small = from_rotation_vector(SMALL * along) if turns else np.eye(3)
        inner = azimuth @ small if joint == "roll" else small @ azimuth
        np.testing.assert_allclose(known.rotation[0], inner @ roll, atol=1e-8)
        if not turns:
            np.testing.assert_allclose(known.translation[0], azimuth @ (SMALL * along), atol=1e-8)


def estimate_with(sizes, covariance):
    sized = (JointTolerance(zero=4e-3), JointTolerance(tilt=2e-3, offset=1e-3), JointTolerance())
    motions = motions_of(stack_of(Geometry.ROLL_OVER_AZIMUTH, distance=1.2), sized, lateral=0.0, roll=0.0)
    count, none = len(motions), np.zeros(len(motions))
    x = np.array(
        [sizes.get((m.joint, m.kind, int(np.argmax(np.abs(m.shift if m.linear else m.turn)))), 0.0) for m in motions]
    )
    return JointEstimate(motions=motions, sizes=x, covariance=covariance(motions), quiet=np.eye(count), taken=none,
                         combinations=np.eye(count), sums=none, sums_sigma=none, before=0.0, after=0.0, conflict=1.0)  # fmt: skip


def test_a_sum_of_a_zero_and_a_tilt_is_surer_than_its_members():
    """Errors of the two cancel: each is known to one declared standard deviation (2 and 1 mrad), their sum to a tenth of a mrad."""

    def covariance(motions):
        out = np.eye(len(motions))
        zero, tilt = (next(i for i, m in enumerate(motions) if m.joint == joint and m.kind == kind and abs(m.turn[1]) > 0)
                      for joint, kind in (("azimuth", "zero"), ("roll", "tilt")))  # fmt: skip
        sign = np.sign(motions[tilt].turn[1] * motions[zero].turn[1])
        out[tilt, tilt] = 4.0 + 0.1**2  # 1 mrad each: the tilt's error is the zero's, and 0.1 mrad beside it
        out[zero, tilt] = out[tilt, zero] = -2.0 * sign
        return out

    told = {one.name: one for one in told_adjustments(estimate_with({("azimuth", "zero", 1): 0.5}, covariance))}
    zero = told["theta_zero"]
    assert zero.value == pytest.approx(np.rad2deg(0.5 * 2e-3))
    assert zero.expanded == pytest.approx(2.0 * np.rad2deg(1e-4), rel=1e-6)
    assert zero.declared == pytest.approx(np.rad2deg(np.hypot(4e-3, 2e-3)))
    assert zero.told and zero.unit == "deg"
    assert not told["axes_offset_x"].told
    assert "probe_roll_zero" not in told


def test_a_run_is_not_aligned_by_what_it_told_itself():
    own, other = Reading(value=0.2, expanded=0.02, run="1a2b3c4d"), Reading(value=0.1, expanded=0.05)
    declared = AlignmentTolerance(readings=Readings(theta_zero=own, axes_offset_x=other))
    assert set(readings_of(without_own(declared, "1a2b3c4d"))) == {"axes_offset_x"}
    assert set(readings_of(without_own(declared, "00000000"))) == {"theta_zero", "axes_offset_x"}
