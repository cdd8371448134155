"""Small motions of each joint beside what is declared, and what they do to the probe as the device sees it.

A joint that stands off carries everything further out with it: its motion is E exp(S q), E the small motion. All six small
motions count: of a revolute joint the zero, two tilts, and shifts across its line and along it; of a prismatic one the zero is
the shift along its line, and it may turn about every axis.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import lru_cache

import numpy as np

from colure.geometry.conventions import FloatArray
from colure.geometry.joint_inverse import JointInverse
from colure.geometry.joints import Carried, JointChain, JointKind
from colure.values import holds_arrays

#: Polar angles at which tolerances of joints are put into tolerances of directions, degrees.
SAMPLES_DEG = np.arange(-165.0, 166.0, 30.0)


@dataclass(frozen=True, kw_only=True)
class JointTolerance:
    """How far a joint may be off: radians and metres (the zero of a prismatic joint in metres).

    axial
        Of a revolute joint along its own line; a prismatic joint has its zero there.
    """

    zero: float = 0.0
    tilt: float = 0.0
    offset: float = 0.0
    axial: float = 0.0


@dataclass(frozen=True)
@holds_arrays
class Shifted:
    """What a small motion does to the probe as the device sees it: metres and radians, (...,).

    theta, phi
        Along the unit vectors of the direction under test.
    away
        Away from the device.
    roll
        From theta^ towards phi^, against a probe that was carried to its new direction along a great circle.
    """

    theta: FloatArray
    phi: FloatArray
    away: FloatArray
    roll: FloatArray


def across(axis: FloatArray) -> tuple[FloatArray, FloatArray]:
    """Return two unit vectors across an axis and each other."""
    axis = axis / np.linalg.norm(axis)
    one = np.cross(axis, np.eye(3)[int(np.argmin(np.abs(axis)))])
    one /= np.linalg.norm(one)
    return one, np.cross(axis, one)


def small_motions(
    chain: JointChain, values: FloatArray, tolerances: tuple[JointTolerance, ...], *, phi: FloatArray
) -> Iterator[tuple[str, Shifted]]:
    """Yield (joint's name, what one of its small motions does) for joint values (..., joint), where it is not zero.

    phi
        (...,) of the direction under test, radians: on the pole the direction itself does not tell it.
    """
    axes, points = chain.lines(values)
    device, probe = chain.ends(values)
    direction = probe.translation - device.translation
    direction = direction / np.linalg.norm(direction, axis=-1, keepdims=True)
    own = np.stack([-np.sin(phi), np.cos(phi), np.zeros_like(phi)], axis=-1)
    phi_hat = np.einsum("...ij,...j->...i", device.rotation, own)
    theta_hat = np.cross(phi_hat, direction)
    before = _before(chain, values)
    for number, (joint, size) in enumerate(zip(chain.joints, tolerances, strict=True)):
        sign = 1.0 if joint.carries is Carried.PROBE else -1.0
        arm = probe.translation - points[..., number, :]
        straight = np.zeros_like(arm)
        line, linear = axes[..., number, :], joint.kind is JointKind.PRISMATIC
        sides = [before[number] @ side for side in across(np.asarray(joint.axis, float))]
        moves = [(straight, line * size.zero)] if linear else [(line * size.zero, straight)]
        moves += [(side * size.tilt, straight) for side in ([*sides, line] if linear else sides)]
        moves += [(straight, side * size.offset) for side in sides] + (
            [] if linear else [(straight, line * size.axial)]
        )
        for turn, shift in moves:
            moved = sign * (shift + np.cross(turn, arm))
            if not np.any(turn) and not np.any(shift):
                continue
            yield (
                joint.name,
                Shifted(
                    np.sum(moved * theta_hat, axis=-1),
                    np.sum(moved * phi_hat, axis=-1),
                    np.sum(moved * direction, axis=-1),
                    sign * np.sum(turn * direction, axis=-1),
                ),
            )


def _before(chain: JointChain, values: FloatArray) -> list[FloatArray]:
    """Return the rotation (..., 3, 3) of what carries each joint."""
    out, last = [], dict.fromkeys(Carried, np.broadcast_to(np.eye(3), (*values.shape[:-1], 3, 3)))
    for joint, link in zip(chain.joints, chain.links(values), strict=True):
        out.append(last[joint.carries])
        last[joint.carries] = link.rotation
    return out


@lru_cache(maxsize=32)
def direction_tolerance(chain: JointChain, tolerances: tuple[JointTolerance, ...]) -> tuple[float, float, float]:
    """Return what tolerances of all joints come to: angle along theta, angle across it (radians), distance (metres).

    Root of the sum of squares over the joints, at the polar angle where it is largest, of those that the chain reaches.
    """
    theta = np.deg2rad(SAMPLES_DEG)
    solution = JointInverse(chain).solve(theta=theta, phi=np.zeros_like(theta), chi=np.zeros_like(theta))
    values = solution.values[solution.reached]
    found_theta = theta[solution.reached]
    if not len(values):
        values, found_theta = np.zeros((1, len(chain.joints))), np.zeros(1)
    square = np.zeros((3, len(values)))
    for _, one in small_motions(chain, values, tolerances, phi=np.where(np.sin(found_theta) < 0.0, np.pi, 0.0)):
        square += np.stack([one.theta / chain.distance, one.phi / chain.distance, one.away]) ** 2
    worst = np.sqrt(square.max(axis=1))
    return float(worst[0]), float(worst[1]), float(worst[2])
