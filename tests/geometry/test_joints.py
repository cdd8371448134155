"""Chains of joints against the three stacks, a textbook's arm, and rotations composed by another library."""

from __future__ import annotations

import numpy as np
import pytest
from scipy.spatial.transform import Rotation

from colure.geometry.joint_errors import JointTolerance, direction_tolerance
from colure.geometry.joint_inverse import JointInverse, influence_of
from colure.geometry.joints import Carried, Joint, JointChain, JointKind, coordinates_of, pose_at, stack_of
from colure.geometry.kinematics import Geometry, device_to_lab, probe_to_lab
from colure.geometry.rotations import RigidMotion

SWINGING = JointChain(
    (
        Joint("turntable", Carried.DEVICE, (0, 0, -1)),
        Joint("arm", Carried.PROBE, (0, 1, 0)),
        Joint("rotary", Carried.PROBE, (0, 0, 1), (0, 0, 1.5)),
    ),
    1.5,
)


def six(base: float = 1.1, r: float = 0.6) -> JointChain:
    lines = [((0, 0, 1), (base, 0, 0)), ((0, 1, 0), (base, 0, 0)), ((0, 1, 0), (0.8 * base, 0, r + 0.4)),
             ((1, 0, 0), (0, 0, r + 0.15)), ((0, 1, 0), (0, 0, r + 0.15)), ((0, 0, 1), (0, 0, r))]  # fmt: skip
    arm = [Joint(f"j{n}", Carried.PROBE, axis, point) for n, (axis, point) in enumerate(lines, 1)]
    return JointChain((Joint("turntable", Carried.DEVICE, (0, 0, -1)), *arm), r)


@pytest.mark.parametrize("geometry", list(Geometry))
def test_the_three_stacks_are_chains(geometry):
    a, b, chi = np.random.default_rng(1).uniform(-3, 3, (3, 40))
    chain = stack_of(geometry, distance=1.3)
    by_name = {geometry.axis_names[0]: a, geometry.axis_names[1]: b, "probe": chi}
    values = np.stack([by_name[joint.name] for joint in chain.joints], axis=-1)
    found = chain.probe_in_device(values)
    wanted = probe_to_lab(distance=1.3, roll=chi).then(device_to_lab(geometry, first=a, second=b).inverse())
    assert np.allclose(found.rotation, wanted.rotation, rtol=0, atol=1e-14)
    assert np.allclose(found.translation, wanted.translation, rtol=0, atol=1e-14)


def test_an_arm_of_six_axes_as_printed():
    """Lynch and Park, Modern Robotics (2017), example 4.5: a six-axis arm at (0, -90, 0, 0, 90, 0) deg (from memory)."""
    w1, w2, l1, l2, h1, h2 = 0.109, 0.082, 0.425, 0.392, 0.089, 0.095
    lines = [((0, 0, 1), (0, 0, 0)), ((0, 1, 0), (0, 0, h1)), ((0, 1, 0), (l1, 0, h1)),
             ((0, 1, 0), (l1 + l2, 0, h1)), ((0, 0, -1), (l1 + l2, w1, 0)), ((0, 1, 0), (l1 + l2, 0, h1 - h2))]  # fmt: skip
    chain = JointChain(tuple(Joint(f"j{n}", Carried.PROBE, axis, point) for n, (axis, point) in enumerate(lines)), 1.0)
    home = RigidMotion(np.array([[-1.0, 0, 0], [0, 0, 1], [0, 1, 0]]), np.array([l1 + l2, w1 + w2, h1 - h2]))
    angles = np.deg2rad([0.0, -90.0, 0.0, 0.0, 90.0, 0.0])
    found = home.then(chain.links(angles)[-1])
    assert np.allclose(found.rotation, [[0, -1, 0], [1, 0, 0], [0, 0, 1]], rtol=0, atol=1e-12)
    assert np.allclose(found.translation, [0.095, 0.109, 0.988], rtol=0, atol=5e-4)


def test_a_chain_is_what_rotations_composed_by_hand_say():
    random = np.random.default_rng(3)
    chain, values = six(), random.uniform(-2, 2, 7)
    probe, place = Rotation.from_euler("x", np.pi), np.array([0.0, 0.0, chain.distance])
    for joint, value in list(zip(chain.joints, values, strict=True))[:0:-1]:
        turn = Rotation.from_rotvec(value * np.asarray(joint.axis, float))
        place = turn.apply(place - np.asarray(joint.point)) + np.asarray(joint.point)
        probe = turn * probe
    device = Rotation.from_rotvec(values[0] * np.asarray(chain.joints[0].axis, float))
    found = chain.probe_in_device(values)
    assert np.allclose(found.translation, device.inv().apply(place), rtol=0, atol=1e-12)
    assert np.allclose(found.rotation, (device.inv() * probe).as_matrix(), rtol=0, atol=1e-12)


@pytest.mark.parametrize("chain", [SWINGING, six(), stack_of(Geometry.ELEVATION_OVER_AZIMUTH, distance=1.0)])
def test_joint_values_lead_to_the_coordinates_asked_for(chain):
    theta, phi = (
        x.ravel() for x in np.meshgrid(np.deg2rad([-170, -95, -30, 20, 60, 89, 140, 180]), np.deg2rad([0, 35, 80]))
    )
    chi = 0.3 - phi
    found = JointInverse(chain).solve(theta=theta, phi=phi, chi=chi)
    if chain.joints[0].name == "azimuth":  # a stack without a pole on z turns over near it
        assert found.reached.mean() > 0.5
    else:
        assert found.reached.all()
    pose, wanted = (
        chain.probe_in_device(found.values[found.reached]),
        pose_at(theta=theta, phi=phi, chi=chi, distance=chain.distance),
    )
    assert np.allclose(pose.translation, wanted.translation[found.reached], rtol=0, atol=1e-7)
    assert np.allclose(pose.rotation, wanted.rotation[found.reached], rtol=0, atol=1e-7)


def test_a_swinging_arm_answers_in_its_own_angles():
    theta, phi = np.deg2rad([-120.0, 0.0, 77.0]), np.deg2rad([10.0, 50.0, 170.0])
    found = JointInverse(SWINGING).solve(theta=theta, phi=phi, chi=-phi)
    assert np.allclose(found.values, np.stack([phi, theta, -phi], axis=-1), rtol=0, atol=1e-12)


def test_what_no_joint_can_do_is_not_reached_and_says_by_how_much():
    """Without a rotary joint the probe stays 30 deg beside the roll asked for (derivable)."""
    two = JointChain(SWINGING.joints[:2], 1.5)
    found = JointInverse(two).solve(theta=np.array([0.5]), phi=np.zeros(1), chi=np.deg2rad([30.0]))
    assert not found.reached[0] and 0.1 < found.turned[0] <= np.deg2rad(30.0) + 1e-9


def test_the_very_edge_of_a_mounts_reach_is_reached_and_nothing_beyond():
    """A roll axis that a second axis, 45 deg beside it, swings away: polar angles to 90 deg exactly, where two ways become one."""
    cone = JointChain(
        (Joint("cone", Carried.DEVICE, (1, 0, 1)), Joint("spin", Carried.DEVICE, (0, 0, -1)), Joint("rotary", Carried.PROBE, (0, 0, 1), (0, 0, 1))),
        distance=1.0,
    )  # fmt: skip
    theta = np.deg2rad([-90.0, 90.0, 89.9, 60.0, 91.0])
    solution = JointInverse(cone).solve(theta=theta, phi=np.full(5, 0.6), chi=np.zeros(5))
    assert solution.reached.tolist() == [True, True, True, True, False]
    # At the edge the cone's axis has turned by half a turn, whichever way round.
    np.testing.assert_allclose(np.abs(solution.values[:2, 0]), np.pi, atol=1e-3)


def test_a_pose_half_a_turn_round_is_the_same_pose():
    one = coordinates_of(pose_at(theta=np.array(0.7), phi=np.array(0.4), chi=np.array(0.2), distance=2.0))
    other = pose_at(theta=np.array(-0.7), phi=np.array(0.4 + np.pi), chi=np.array(0.2 + np.pi), distance=2.0)
    same = coordinates_of(other)
    assert np.allclose([one.theta, one.phi, one.chi, one.distance], [0.7, 0.4, 0.2, 2.0])
    assert np.allclose([same.theta, same.phi, same.chi, same.off_axis], [0.7, 0.4, 0.2, 0.0], atol=1e-12)


def test_influence_is_the_difference_of_neighbouring_positions():
    slide = Joint("slide", Carried.PROBE, (0, 0, 1), kind=JointKind.PRISMATIC)
    chain = JointChain((*six().joints[:4], slide, *six().joints[4:]), 0.6)
    values, step = np.random.default_rng(5).uniform(-1, 1, 8), 1e-6
    found = influence_of(chain, values)
    for number in range(8):
        there = values.copy()
        there[number] += step
        device, probe = chain.ends(values)
        moved_device, moved_probe = chain.ends(there)
        # What the probe does while the device is held: the device's own motion taken back.
        back = moved_device.inverse().then(device)
        shift = (moved_probe.then(back).translation - probe.translation) / step
        turn = Rotation.from_matrix(moved_probe.then(back).rotation @ probe.rotation.T).as_rotvec() / step
        assert np.allclose(found[:, number], [*shift, *turn], rtol=0, atol=2e-5)


def test_tolerances_of_an_arm_come_to_what_a_ruler_says():
    """0.1 deg of the arm's zero is 0.1 deg of theta; 1 mm along the arm's bearing is 1 mm of distance (derivable)."""
    zero = (JointTolerance(), JointTolerance(zero=np.deg2rad(0.1)), JointTolerance())
    along, beside, away = direction_tolerance(SWINGING, zero)
    assert np.isclose(np.rad2deg(along), 0.1) and np.isclose(beside, 0, atol=1e-12) and np.isclose(away, 0, atol=1e-12)
    shifted = (JointTolerance(), JointTolerance(), JointTolerance(offset=1e-3))
    along, beside, away = direction_tolerance(SWINGING, shifted)
    assert np.isclose(along, 1e-3 / 1.5) and np.isclose(beside, 1e-3 / 1.5) and np.isclose(away, 0, atol=1e-12)
