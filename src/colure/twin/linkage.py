"""How the simulated mount really moves: its own kinematics, by homogeneous matrices joint after joint.

Written without the chains that plans and analysis use: nothing here shares mathematics with what it judges.
"""

from __future__ import annotations

from collections.abc import Mapping

import numpy as np

from colure.errors import InputError
from colure.geometry.conventions import FloatArray
from colure.geometry.rotations import RigidMotion
from colure.model.chamber import Chamber, SimulatedChamber
from colure.model.joints import JointTable
from colure.model.simulated_chamber import TrueJoint

#: Errors of two axes, which a mount with joints does not have.
OF_AXES = ("theta_zero_deg", "roll_axis_tilt_deg", "elevation_zero_deg", "axes_square_deg")


def require_joints(chamber: Chamber, truth: SimulatedChamber) -> None:
    """Raise `InputError` where twin.toml speaks of a mount that chamber.toml does not have."""
    known, faults = [one.name for one in chamber.positioner.joints], []
    for one in truth.joints:
        if one.name not in known:
            names = ", ".join(known) or "none, there is no [[positioner.joints]]"
            faults.append(f"twin.toml: joints.name = {one.name!r}: must be a joint of chamber.toml: {names}")
    if known:
        told = [name for name in OF_AXES if getattr(truth, name) != 0.0]
        told += ["axes_offset_mm"] if any(truth.axes_offset_mm) else []
        faults += [f"twin.toml: {name}: remove it: [[joints]] says how a mount with joints is off" for name in told]
    near = [
        wall.distance_m for wall in truth.echoes if chamber.swings_probe and wall.distance_m <= chamber.range_length_m
    ]
    faults += [
        f"twin.toml: echoes.distance_m = {one:g}: must be above {chamber.range_length_m:g} m (range_length_m): the mount swings the "
        f"probe around the device, through such a wall"
        for one in near
    ]
    if faults:
        raise InputError(faults)


class Linkage:
    """A mount with joints, each a little off, and where it carries device and probe."""

    def __init__(self, chamber: Chamber, truth: SimulatedChamber) -> None:
        self._joints = chamber.positioner.joints
        off = {one.name: one for one in truth.joints}
        self._off = [_small(joint, off.get(joint.name)) for joint in self._joints]
        self._zero = [off[j.name].zero_deg if j.name in off else 0.0 for j in self._joints]

    def roll_deg(self, readouts_deg: Mapping[str, float | FloatArray]) -> FloatArray:
        """Return the angle of the rotary joint next to the probe; 0 without one."""
        own = [one for one in self._joints if one.carries == "probe" and one.kind == "revolute"]
        return np.asarray(
            own[-1].sense * (np.asarray(readouts_deg[own[-1].name], float) - own[-1].zero_deg) if own else 0.0
        )

    def frames(self, readouts_deg: Mapping[str, float | FloatArray]) -> tuple[RigidMotion, RigidMotion]:
        """Return what device and probe have moved by since the reference position, lab frame."""
        shape = np.broadcast_shapes(*(np.shape(readouts_deg[joint.name]) for joint in self._joints))
        carried = {end: np.broadcast_to(np.eye(4), (*shape, 4, 4)) for end in ("device", "probe")}
        for joint, off, zero in zip(self._joints, self._off, self._zero, strict=True):
            shown = np.broadcast_to(np.asarray(readouts_deg[joint.name], float), shape)
            value = joint.sense * (shown - joint.zero_deg) + zero
            carried[joint.carries] = carried[joint.carries] @ off @ _moved(joint, value)
        return _motion(carried["device"]), _motion(carried["probe"])


def _motion(matrix: FloatArray) -> RigidMotion:
    return RigidMotion(matrix[..., :3, :3], matrix[..., :3, 3])


def _moved(joint: JointTable, value: FloatArray) -> FloatArray:
    """Return the matrices (..., 4, 4) of a joint at angles in degrees, or ways in millimetres."""
    out = np.zeros((*value.shape, 4, 4))
    out[..., 3, 3] = 1.0
    axis = np.array(joint.axis, float)
    axis /= np.sqrt(axis @ axis)
    if joint.kind == "prismatic":
        out[..., :3, :3] = np.eye(3)
        out[..., :3, 3] = 1e-3 * value[..., None] * axis
        return out
    out[..., :3, :3] = _turn(axis, np.pi * value / 180.0)
    point = 1e-3 * np.array(joint.point_mm, float)
    out[..., :3, 3] = point - out[..., :3, :3] @ point
    return out


def _turn(axis: FloatArray, angle: FloatArray) -> FloatArray:
    """Return the rotations (..., 3, 3) of a unit quaternion about an axis."""
    w, (x, y, z) = np.cos(0.5 * angle), (np.sin(0.5 * angle) * part for part in axis)
    rows = [
        [w * w + x * x - y * y - z * z, 2 * (x * y - w * z), 2 * (x * z + w * y)],
        [2 * (x * y + w * z), w * w - x * x + y * y - z * z, 2 * (y * z - w * x)],
        [2 * (x * z - w * y), 2 * (y * z + w * x), w * w - x * x - y * y + z * z],
    ]
    return np.stack([np.stack(row, axis=-1) for row in rows], axis=-2)


def _small(joint: JointTable, off: TrueJoint | None) -> FloatArray:
    """Return the small motion (4, 4) of a joint's line: turned about x, y and z through its point, and shifted."""
    out = np.eye(4)
    if off is None:
        return out
    point = 1e-3 * np.array(joint.point_mm, float)
    for number, angle in enumerate(off.tilt_deg):
        out[:3, :3] = out[:3, :3] @ _turn(np.eye(3)[number], np.array(np.pi * angle / 180.0))
    out[:3, 3] = point - out[:3, :3] @ point + 1e-3 * np.array(off.offset_mm, float)
    return out
