"""A mount that is described by its joints, as the page draws it: lines, declared solids, and the way of the joints."""

from __future__ import annotations

import numpy as np

from colure.app.web.views import preparing
from colure.geometry.conventions import FloatArray
from colure.geometry.rotations import RigidMotion
from colure.geometry.solids import Box, Capsule, Solid, distance
from colure.model.campaign import Campaign
from colure.model.chamber import Chamber
from colure.model.joints import JointTable, solids_of
from colure.model.plan import Plan
from colure.planning.aim import Bearing
from colure.planning.joint_aim import ways_to

#: A solid of the room whose centre lies this far below the axes' intersection says where the floor is, metres.
BELOW_M = 0.05
#: A box of the room is a floor if it is this many times as wide, both ways, as it is thick.
FLAT = 4.0


def mount_of(chamber: Chamber, plan: Plan) -> preparing.Mount | None:
    """Return the mount of a chamber with joints and the joints' values along a plan; None for other positioners."""
    joints = chamber.positioner.joints
    if not joints:
        return None
    solids, _ = solids_of(joints, chamber.positioner.solids)
    return {
        "joints": [_line(one) for one in joints], "solids": [_solid(one) for one in solids],
        "up": _up(chamber, solids), "values": np.round(shown_values(joints, plan.targets_deg), 3).ravel().tolist(),
        "slice_index": plan.slice_index.tolist(), "pass_index": plan.pass_index.tolist(),
    }  # fmt: skip


def shown_values(joints: tuple[JointTable, ...], readouts: FloatArray) -> FloatArray:
    """Return joint values (..., joint) of readouts as the page has them: degrees, millimetres of prismatic joints."""
    return np.stack([one.map.angle_deg(readouts[..., number]) for number, one in enumerate(joints)], axis=-1)


def pose_at(campaign: Campaign, direction: FloatArray) -> preparing.MountPose | None:
    """Return where the joints stand to look along a direction (3,) of the device; None on a mount without joints."""
    chamber = campaign.chamber
    joints = chamber.positioner.joints
    if not joints:
        return None
    aim = ways_to(Bearing.of(direction), chamber.positioner.geometry, chamber, campaign.device)[0]
    if aim.fault:
        return {"values": [], "fault": aim.fault}
    readouts = np.array([aim.readouts_deg[one.name] for one in joints])
    return {"values": np.round(shown_values(joints, readouts), 3).tolist(), "fault": ""}


def _line(joint: JointTable) -> preparing.JointLine:
    ends = sorted(float(joint.map.angle_deg(v)) for v in (joint.min_deg, joint.max_deg))
    return {
        "name": joint.name, "carries": joint.carries, "kind": joint.kind, "axis": joint.joint.direction.tolist(),
        "point_m": list(joint.joint.point), "least": ends[0], "most": ends[1], "unit": joint.unit,
        "rolls": joint.carries == "probe" and joint.rolls_only,
    }  # fmt: skip


def _solid(solid: Solid) -> preparing.MountSolid:
    shape = solid.shape
    if isinstance(shape, Box):
        return {"name": solid.name, "body": solid.body, "shape": "box", "a_m": list(shape.centre), "b_m": list(shape.half), "radius_m": 0.0}  # fmt: skip
    return {"name": solid.name, "body": solid.body, "shape": "capsule", "a_m": list(shape.start), "b_m": list(shape.end), "radius_m": shape.radius}  # fmt: skip


def _up(chamber: Chamber, solids: list[Solid]) -> list[float]:
    """Return what the page draws upwards. chamber.toml does not say it, so it follows from what stands in the room.

    The joint next to the floor that turns the device stands upright if it lies along y or z; else it is y, as on the other
    positioners (common practice, no source). A floor of the room says on which side down is, or what carries the device:
    solids of the room that come nearer to it than the probe does. What stands farther out, as an arch does, tells nothing.
    """
    upright = _upright(chamber)
    room = [one for one in solids if one.body < 0]
    floors = [one for one in room if isinstance(one.shape, Box) and _flat(one.shape, upright)]
    near = [one for one in room if _distance_m(one) < chamber.range_length_m]
    for those in (floors, near):
        middle = [float(np.mean(one.shape.farthest, axis=0)[upright]) for one in those]
        if middle and abs(np.mean(middle)) > BELOW_M:
            return [float(-np.sign(np.mean(middle))) if n == upright else 0.0 for n in range(3)]
    return [1.0 if n == upright else 0.0 for n in range(3)]


def _upright(chamber: Chamber) -> int:
    """Return which axis of the laboratory stands upright: 1 is y, 2 is z."""
    for one in chamber.positioner.joints:
        if one.carries == "device" and one.kind == "revolute":
            return 2 if abs(one.joint.direction[2]) > 0.9 else 1
    return 1


def _flat(box: Box, upright: int) -> bool:
    across = [half for n, half in enumerate(box.half) if n != upright]
    return min(across) >= FLAT * box.half[upright]


def _distance_m(solid: Solid) -> float:
    """Return how near a solid comes to the axes' intersection, metres."""
    middle, still = (0.0, 0.0, 0.0), RigidMotion.none(())
    return float(distance(solid.shape, still, Capsule(middle, middle, 0.0), still))
