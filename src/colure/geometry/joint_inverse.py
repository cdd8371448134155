"""From a probe's coordinates to joint values: the chain is followed from its reference position by damped least squares.

Joints that spin device or probe about the line between them answer phi and chi in closed form. What is left is followed in
small steps from the reference position, so that the answer is one continuous branch: a function of the coordinates, whatever
the order in which they are asked for (Nakamura and Hanafusa, "Inverse kinematic solutions with singularity robustness", 1986,
for the damping).
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property, lru_cache

import numpy as np

from colure.geometry.conventions import BoolArray, FloatArray
from colure.geometry.joints import Carried, JointChain, JointKind, pose_at
from colure.geometry.rotations import RigidMotion
from colure.values import holds_arrays

#: Largest step of a coordinate on the way from the reference position, radians.
STEP = np.deg2rad(4.0)
#: Newton steps on the way, and at the end.
ON_THE_WAY, AT_THE_END = 2, 12
#: More steps for poses not met by then: at the edge of a mount's reach two ways become one, and steps shrink to halves.
AT_THE_EDGE = 24
#: Damping relative to the largest joint's influence: felt only where the chain is singular.
DAMPING, DAMPING_AT_THE_EDGE = 1e-7, 1e-10
#: A pose that is met within this (radians; position over the range length) is reached.
REACHED = 1e-8
#: No joint goes further in one step, radians or metres: beyond that the chain is singular.
LARGEST_STEP = 0.3
#: A line this near to z_L is z_L.
ON_Z = 1e-9


@dataclass(frozen=True)
@holds_arrays
class JointSolution:
    """Joint values (point, joint) and how far the probe then stands beside what was asked for.

    miss
        (point,) metres.
    turned
        (point,) radians.
    """

    values: FloatArray
    miss: FloatArray
    turned: FloatArray
    reached: BoolArray


class JointInverse:
    """Answers coordinates of a probe with joint values, one continuous branch."""

    def __init__(self, chain: JointChain) -> None:
        self.chain = chain

    @cached_property
    def device_spin(self) -> tuple[int, float] | None:
        """Which joint turns the device about its own z axis, and its value for a growing phi; None if none does."""
        return self._spin(Carried.DEVICE, -1.0)

    @cached_property
    def probe_spin(self) -> tuple[int, float] | None:
        """Which joint rolls the probe about its boresight, and its value for a growing chi; None if none does."""
        return self._spin(Carried.PROBE, 1.0)

    def _spin(self, end: Carried, sense: float) -> tuple[int, float] | None:
        own = self.chain.carrying(end)
        if not own:
            return None
        joint = self.chain.joints[own[-1]]
        axis = joint.direction
        beside = np.hypot(axis[0], axis[1]) > ON_Z or np.hypot(joint.point[0], joint.point[1]) > ON_Z
        return None if joint.kind is JointKind.PRISMATIC or beside else (own[-1], sense * float(np.sign(axis[2])))

    def solve(self, *, theta: FloatArray, phi: FloatArray, chi: FloatArray) -> JointSolution:
        """Return the joint values of coordinates (point,), radians."""
        asked = np.stack([theta, np.zeros_like(phi) if self.device_spin else phi,
                          np.zeros_like(chi) if self.probe_spin else chi], axis=-1)  # fmt: skip
        unique, where = np.unique(np.asarray(np.round(asked, 12), np.float64), axis=0, return_inverse=True)
        values, miss, turned = self._followed(unique)
        values = values[where.ravel()]
        for spin, angle in ((self.device_spin, phi), (self.probe_spin, chi)):
            if spin is not None:
                values[:, spin[0]] += spin[1] * angle
        miss, turned = miss[where.ravel()], turned[where.ravel()]
        return JointSolution(values, miss, turned, self._met(miss, turned))

    def _followed(self, asked: FloatArray) -> tuple[FloatArray, FloatArray, FloatArray]:
        """Return (values, miss, turned) of coordinates (point, 3), followed from the reference position."""
        values = np.zeros((len(asked), len(self.chain.joints)))
        steps = max(1, int(np.ceil(np.abs(asked).max(initial=0.0) / STEP)))
        for number in range(1, steps + 1):
            for _ in range(ON_THE_WAY if number < steps else AT_THE_END):
                links = self.chain.links(values)
                error = self._error(values, links, asked * (number / steps))
                values += self._step(values, links, error, DAMPING)
        miss, turned = self._beside(values, asked)
        far = ~self._met(miss, turned)
        if far.any():
            edge = values[far]
            for _ in range(AT_THE_EDGE):
                links = self.chain.links(edge)
                edge += self._step(edge, links, self._error(edge, links, asked[far]), DAMPING_AT_THE_EDGE)
            met = self._met(*self._beside(edge, asked[far]))
            values[np.flatnonzero(far)[met]] = edge[met]
            miss, turned = self._beside(values, asked)
        return values, miss, turned

    def _beside(self, values: FloatArray, asked: FloatArray) -> tuple[FloatArray, FloatArray]:
        """Return how far the probe stands beside coordinates (point, 3), metres and radians."""
        error = self._error(values, self.chain.links(values), asked)
        return np.linalg.norm(error[:, :3], axis=1), np.linalg.norm(error[:, 3:], axis=1)

    def _met(self, miss: FloatArray, turned: FloatArray) -> BoolArray:
        return np.asarray(np.maximum(miss / self.chain.distance, turned) < REACHED)

    def _error(self, values: FloatArray, links: list[RigidMotion], asked: FloatArray) -> FloatArray:
        """Return what is left to go (point, 6): shift in metres and turn in radians, in the lab frame."""
        device, probe = self.chain.ends(values, links)
        wanted = pose_at(theta=asked[:, 0], phi=asked[:, 1], chi=asked[:, 2], distance=self.chain.distance).then(device)
        turn = wanted.rotation @ np.swapaxes(probe.rotation, -1, -2)
        vector = 0.5 * np.stack(
            [turn[:, 2, 1] - turn[:, 1, 2], turn[:, 0, 2] - turn[:, 2, 0], turn[:, 1, 0] - turn[:, 0, 1]], axis=-1
        )
        # The sine of the turn alone would take half a turn for none.
        cosine = 0.5 * (np.trace(turn, axis1=-2, axis2=-1) - 1.0)
        sine = np.linalg.norm(vector, axis=-1)
        angle = np.arctan2(sine, cosine)
        scale = np.where(sine > 1e-12, angle / np.maximum(sine, 1e-12), np.where(cosine < 0.0, np.inf, 1.0))
        with np.errstate(invalid="ignore"):
            vector = np.where(np.isfinite(scale)[:, None], vector * scale[:, None], np.pi)
        return np.concatenate([wanted.translation - probe.translation, vector], axis=-1)

    def _step(self, values: FloatArray, links: list[RigidMotion], error: FloatArray, damping: float) -> FloatArray:
        unit = np.array([1.0 / self.chain.distance] * 3 + [1.0] * 3)
        influence = influence_of(self.chain, values, links) * unit[:, None]
        square = np.swapaxes(influence, -1, -2) @ influence
        size = np.maximum(np.trace(square, axis1=-2, axis2=-1), 1e-30)
        square += (damping * size)[:, None, None] * np.eye(square.shape[-1])
        step = np.linalg.solve(square, np.swapaxes(influence, -1, -2) @ (error * unit)[..., None])[..., 0]
        largest = np.abs(step).max(axis=-1, keepdims=True)
        return np.asarray(step * np.minimum(1.0, LARGEST_STEP / np.maximum(largest, 1e-30)))


@lru_cache(maxsize=32)
def rolls_probe(chain: JointChain) -> bool:
    """Tell whether a mount can roll its probe about the line to the device while it looks in one direction, limits apart."""
    one = np.ones(1)
    return bool(JointInverse(chain).solve(theta=one, phi=0.0 * one, chi=0.5 * one).reached[0])


def influence_of(chain: JointChain, values: FloatArray, links: list[RigidMotion] | None = None) -> FloatArray:
    """Return how the probe moves against the device, (..., 6, joint): shift (m) and turn (rad) in the lab frame by one rad or m."""
    links = links or chain.links(values)
    axes, points = chain.lines(values, links)
    probe = chain.ends(values, links)[1].translation
    columns = []
    for number, joint in enumerate(chain.joints):
        sign = 1.0 if joint.carries is Carried.PROBE else -1.0
        axis = axes[..., number, :]
        if joint.kind is JointKind.PRISMATIC:
            column = np.concatenate([axis, np.zeros_like(axis)], axis=-1)
        else:
            column = np.concatenate([np.cross(axis, probe - points[..., number, :]), axis], axis=-1)
        columns.append(sign * column)
    return np.stack(columns, axis=-1)
