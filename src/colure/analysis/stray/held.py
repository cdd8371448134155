"""How a mount of joints really held its device at every sample: what a room that stands still does to each pass.

Joint values answer where the probe stands in the device frame, not how both are turned in the room. An arm may hold the device
otherwise than two axes would, and in one pass otherwise than in the next; walls are met accordingly.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np

from colure.analysis.steps.assemble import MeasuredSphere, azimuths, finer_columns
from colure.analysis.steps.far_field import FarFieldStep
from colure.analysis.steps.joint_motions import values_of_pass
from colure.analysis.stray.mirrors import Wall
from colure.geometry.conventions import ComplexArray, FloatArray
from colure.geometry.directions import phi_hat, theta_hat
from colure.geometry.joints import JointChain
from colure.geometry.kinematics import Geometry
from colure.model.chamber import Chamber
from colure.model.plan import Role
from colure.model.record import of_role
from colure.values import holds_arrays
from colure.waves.expansion import Expansion

if TYPE_CHECKING:
    import xarray as xr

#: Passes that hold the device so nearly alike are one pose: matrix elements, and metres.
ALIKE = 1e-9


@dataclass(frozen=True)
@holds_arrays
class HeldPasses:
    """Poses of a device in the room, and what passes read.

    rotations (pose, theta, column, 3, 3)
        Device frame to lab; one pose for all passes where they hold the device alike.
    places (pose, theta, column, 3)
        Device frame's origin in the lab, metres.
    seen (pose, port, component, theta, column)
        What the ports of a pass read of the components along theta^ and phi^.
    """

    rotations: FloatArray
    places: FloatArray
    seen: FloatArray

    @staticmethod
    def of(sphere: MeasuredSphere, record: xr.Dataset, chamber: Chamber) -> HeldPasses:
        """Return the poses in which a record was measured, from the joints that it holds.

        Raises
        ------
        ValueError
            If the mount has no joints, or the record lacks a direction of the sphere.
        """
        if chamber.chain is None:
            raise ValueError("positioner.joints: none in chamber.toml: its two axes say how the device is held")
        numbers = np.unique(of_role(record, Role.SCAN)["pass_index"].values)
        values = np.stack([values_of_pass(sphere, record, chamber, int(number)) for number in numbers])
        return HeldPasses.of_values(sphere, chamber.chain, values, ports=record.sizes["port"])

    @staticmethod
    def of_values(sphere: MeasuredSphere, chain: JointChain, values: FloatArray, *, ports: int) -> HeldPasses:
        """Return the poses of joint values (pass, theta, column, joint), radians or metres."""
        device, probe = chain.ends(values)
        t, p = np.meshgrid(sphere.theta, azimuths(sphere, values.shape[2]), indexing="ij")
        polar = np.stack([theta_hat(theta=t, phi=p), phi_hat(theta=t, phi=p)])
        turned = probe.then(device.inverse()).rotation
        # At the probe's roll 0 port 2 lies a quarter turn from port 1, counter-clockwise seen from the probe.
        along = np.stack([turned[..., 0], -turned[..., 1]][:ports])
        seen = np.einsum("cabi,npabi->pncab", polar, along)
        every = (device.rotation, device.translation, seen)
        alike = all(np.abs(one - one[:1]).max() < ALIKE for one in every[:2])
        return HeldPasses(*(one[:1] if alike else one for one in every))

    def read(self, fields: Sequence[ComplexArray]) -> ComplexArray:
        """Return the components (..., 2, theta, column) that passes yield together, each of which met its own field (the same shape)."""
        if len(fields) == 1:
            return fields[0]
        told = [np.einsum("ncab,...cab->...nab", seen, one) for seen, one in zip(self.seen, fields, strict=True)]
        every = np.moveaxis(self.seen.reshape(-1, *self.seen.shape[2:]), (0, 1), (-2, -1))
        return np.asarray(np.einsum("abcn,...nab->...cab", np.linalg.pinv(every), np.concatenate(told, axis=-3)))


class HeldWalls:
    """What walls add to a scan whose probe stands still while joints hold the device, as `Wall` with its two axes."""

    def __init__(self, sphere: MeasuredSphere, step: FarFieldStep, device: Expansion, held: HeldPasses) -> None:
        self._held, self._total = held, sphere.phi.size
        self._walls = [Wall(sphere, step, device, Geometry.ROLL_OVER_AZIMUTH, rotation=one) for one in held.rotations]

    def through_mirrors(self, directions: FloatArray, mirrors: ComplexArray) -> ComplexArray:
        """Return what `Wall.through_mirrors` does."""
        fields = [wall.through_mirrors(directions, mirrors, as_measured=True) for wall in self._walls]
        return finer_columns(self._held.read(fields), self._total)
