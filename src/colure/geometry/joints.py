"""A positioner as two chains of joints, one that carries the device and one that carries the probe: forward kinematics.

Everything is written in the reference position, in which every joint stands at its zero: device frame and lab frame
coincide there, and the probe stands on z_L at the range length, facing the device, its port 1 along x_L. A joint is then a
line in the lab frame, and a chain is the product of the motions about its lines, that nearest to the floor first
(product of exponentials; R. W. Brockett, "Robotic manipulators and the product of exponentials formula", 1984).
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum
from functools import cached_property

import numpy as np

from colure.geometry.conventions import FloatArray
from colure.geometry.directions import phi_hat, theta_hat, theta_phi
from colure.geometry.kinematics import Geometry, Vector3, device_to_lab, probe_to_lab
from colure.geometry.rotations import RigidMotion
from colure.values import holds_arrays

#: A probe this near to the device frame's z axis stands on the pole, where phi is anyone's: radians.
POLE = 1e-7


class JointKind(StrEnum):
    """How a joint moves: about its axis, or along it."""

    REVOLUTE = "revolute"
    PRISMATIC = "prismatic"


class Carried(StrEnum):
    """Which end of the mount a joint carries."""

    DEVICE = "device"
    PROBE = "probe"


@dataclass(frozen=True)
class Joint:
    """One joint: its line in the reference position, lab frame, metres.

    A revolute joint turns what it carries about `axis` through `point`, right-handed; a prismatic one shifts it along `axis`.
    """

    name: str
    carries: Carried
    axis: Vector3
    point: Vector3 = (0.0, 0.0, 0.0)
    kind: JointKind = JointKind.REVOLUTE

    @cached_property
    def direction(self) -> FloatArray:
        """Unit vector (3,) of its line."""
        return np.asarray(np.asarray(self.axis, float) / np.linalg.norm(self.axis))

    @cached_property
    def _cross(self) -> FloatArray:
        """Matrix (3, 3) of the cross product with the line's direction."""
        return np.asarray(np.cross(self.direction, np.eye(3)).T)

    def motion(self, value: FloatArray) -> RigidMotion:
        """Return the motion for joint values (...): radians, or metres."""
        along = value[..., None] * self.direction
        if self.kind is JointKind.PRISMATIC:
            return RigidMotion(np.broadcast_to(np.eye(3), (*value.shape, 3, 3)), along)
        # Rodrigues' formula about a fixed axis.
        sine, rest = np.sin(value)[..., None, None], (1.0 - np.cos(value))[..., None, None]
        turned = np.eye(3) + sine * self._cross + rest * (self._cross @ self._cross)
        point = np.asarray(self.point, float)
        return RigidMotion(turned, point - turned @ point)


@dataclass(frozen=True)
@holds_arrays
class ProbeCoordinates:
    """Where a probe stands as a roll-over-azimuth positioner would say it, radians and metres.

    theta, phi
        Direction of the probe in the device frame; theta from 0 to pi.
    chi
        Port 1 lies along cos chi theta^ + sin chi phi^.
    distance
        Of the probe from the device frame's origin.
    off_axis
        Angle between the probe's boresight and the line to the device frame's origin.
    """

    theta: FloatArray
    phi: FloatArray
    chi: FloatArray
    distance: FloatArray
    off_axis: FloatArray


@dataclass(frozen=True)
class JointChain:
    """Both chains of a mount; joints of each end from the floor outwards. Joint values: (..., joint), radians or metres."""

    joints: tuple[Joint, ...]
    distance: float

    def carrying(self, end: Carried) -> list[int]:
        """Return which joints carry an end, from the floor outwards."""
        return [number for number, joint in enumerate(self.joints) if joint.carries is end]

    def links(self, values: FloatArray) -> list[RigidMotion]:
        """Return the motion of what each joint carries, from its reference position: one for each joint."""
        standing = RigidMotion.of()
        carried = dict.fromkeys(Carried, standing)
        out = []
        for number, joint in enumerate(self.joints):
            carried[joint.carries] = joint.motion(values[..., number]).then(carried[joint.carries])
            out.append(carried[joint.carries])
        return out

    def ends(self, values: FloatArray, links: list[RigidMotion] | None = None) -> tuple[RigidMotion, RigidMotion]:
        """Return (device frame to lab, probe frame to lab); `links` of the values, if they are known already."""
        device, probe = self._last(links or self.links(values), values.shape[:-1])
        return device, probe_to_lab(distance=self.distance, roll=0.0).then(probe)

    def _last(self, links: list[RigidMotion], shape: tuple[int, ...]) -> tuple[RigidMotion, RigidMotion]:
        motions = []
        for end in (Carried.DEVICE, Carried.PROBE):
            own = self.carrying(end)
            motions.append(links[own[-1]] if own else RigidMotion.none(shape))
        return motions[0], motions[1]

    def probe_in_device(self, values: FloatArray) -> RigidMotion:
        """Return the motion from the probe's frame into the device frame."""
        device, probe = self.ends(values)
        return probe.then(device.inverse())

    def lines(self, values: FloatArray, links: list[RigidMotion] | None = None) -> tuple[FloatArray, FloatArray]:
        """Return where every joint's line lies now: directions and points (..., joint, 3) in the lab frame."""
        axes, points = [], []
        before = {end: RigidMotion.of() for end in Carried}
        for joint, link in zip(self.joints, links or self.links(values), strict=True):
            there = before[joint.carries]
            shape = values.shape[:-1]
            axes.append(np.broadcast_to(there.rotation @ joint.direction, (*shape, 3)))
            points.append(np.broadcast_to(there.points([joint.point])[..., 0, :], (*shape, 3)))
            before[joint.carries] = link
        return np.stack(axes, axis=-2), np.stack(points, axis=-2)


def coordinates_of(pose: RigidMotion, *, phi_at_pole: FloatArray | float = 0.0) -> ProbeCoordinates:
    """Return the coordinates of a probe's pose in the device frame.

    phi_at_pole
        What phi is taken for where the probe stands on the device frame's z axis.
    """
    place = pose.translation
    distance = np.linalg.norm(place, axis=-1)
    direction = place / distance[..., None]
    theta, phi = theta_phi(direction)
    phi = np.where(np.hypot(direction[..., 0], direction[..., 1]) < POLE, phi_at_pole, phi)
    port, boresight = pose.rotation[..., 0], pose.rotation[..., 2]
    along = np.sum(port * theta_hat(theta=theta, phi=phi), axis=-1)
    across = np.sum(port * phi_hat(theta=theta, phi=phi), axis=-1)
    off = np.arctan2(np.linalg.norm(np.cross(boresight, direction), axis=-1), -np.sum(boresight * direction, axis=-1))
    return ProbeCoordinates(theta, phi, np.arctan2(across, along), distance, off)


def pose_at(*, theta: FloatArray, phi: FloatArray, chi: FloatArray, distance: float) -> RigidMotion:
    """Return the probe's pose in the device frame as a roll-over-azimuth positioner gives it; angles in radians, (...).

    (theta, phi, chi) and (-theta, phi + pi, chi + pi) are the same pose.
    """
    device = device_to_lab(Geometry.ROLL_OVER_AZIMUTH, first=theta, second=phi)
    return probe_to_lab(distance=distance, roll=chi).then(device.inverse())


def stack_of(geometry: Geometry, *, distance: float) -> JointChain:
    """Return a built-in positioner with a probe that rolls as a chain: its axes' values are the angles of the conventions."""
    lines: dict[Geometry, Sequence[tuple[str, Vector3]]] = {
        Geometry.ROLL_OVER_AZIMUTH: (("azimuth", (0.0, -1.0, 0.0)), ("roll", (0.0, 0.0, -1.0))),
        Geometry.AZIMUTH_OVER_ELEVATION: (("elevation", (1.0, 0.0, 0.0)), ("azimuth", (0.0, -1.0, 0.0))),
        Geometry.ELEVATION_OVER_AZIMUTH: (("azimuth", (0.0, -1.0, 0.0)), ("elevation", (1.0, 0.0, 0.0))),
    }
    device = [Joint(name, Carried.DEVICE, axis) for name, axis in lines[geometry]]
    return JointChain((*device, Joint("probe", Carried.PROBE, (0.0, 0.0, 1.0))), distance)
