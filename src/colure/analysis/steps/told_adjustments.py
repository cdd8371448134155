"""The five adjustments of a roll-over-azimuth positioner, by the small motions of its joints that were solved.

A joint's motions act alike in part: a tilt of the roll axis about the azimuth's line is a zero of the azimuth axis. An adjustment is
their sum, with the covariance of its members.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from colure.analysis.steps.alignment import PARAMETERS
from colure.analysis.steps.joint_estimate import SEEN, JointEstimate
from colure.analysis.steps.moved_joints import PROBE
from colure.geometry.conventions import FloatArray

X, Y, Z = np.eye(3)
#: (joint, does it turn, direction along which it counts) of every member of an adjustment; the azimuth's line is -y (conventions).
MEMBERS: dict[str, tuple[tuple[str, bool, FloatArray], ...]] = {
    "theta_zero": (("azimuth", True, -Y), ("roll", True, -Y)),
    "roll_axis_tilt": (("roll", True, X),),
    "axes_offset_x": (("roll", False, X),),
    "axes_offset_y": (("roll", False, Y),),
    "probe_roll_zero": ((PROBE, True, Z),),
}


@dataclass(frozen=True, kw_only=True)
class ToldAdjustment:
    """What a run tells of one adjustment, in degrees or millimetres: value, its expanded uncertainty and the declared one (k = 2)."""

    name: str
    value: float
    expanded: float
    declared: float
    unit: str

    @property
    def told(self) -> bool:
        """Tell whether the run knows it at least twice as well as it was declared."""
        return self.expanded < SEEN * self.declared


def told_adjustments(joints: JointEstimate) -> tuple[ToldAdjustment, ...]:
    """Return what a built-in stack's joints say of every adjustment that may be off."""
    out = []
    for one in PARAMETERS:
        weights = _weights(joints, one.name)
        declared = float(np.linalg.norm(weights))
        if declared == 0.0:
            continue
        variance = float(weights @ joints.covariance @ weights)
        out.append(
            ToldAdjustment(
                name=one.name,
                value=one.per_si * float(weights @ joints.sizes),
                expanded=2.0 * one.per_si * float(np.sqrt(max(variance, 0.0))),
                declared=2.0 * one.per_si * declared,
                unit=one.unit,
            )
        )
    return tuple(out)


def _weights(joints: JointEstimate, name: str) -> FloatArray:
    """Return what one standard deviation of every motion (motion,) is of an adjustment, SI."""
    out = np.zeros(len(joints.motions))
    for number, motion in enumerate(joints.motions):
        for joint, turns, along in MEMBERS[name]:
            if motion.joint == joint and turns is not motion.linear:
                out[number] = float(np.dot(motion.turn if turns else motion.shift, along))
    return out
