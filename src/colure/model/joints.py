"""A mount of any kind, described by its joints and by simple solids that must not meet."""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING, Annotated, Any, Literal

import numpy as np
from pydantic import Field, model_validator

from colure.geometry.conventions import FloatArray
from colure.geometry.joint_errors import JointTolerance
from colure.geometry.joints import Carried, Joint, JointChain, JointKind
from colure.geometry.kinematics import Vector3
from colure.geometry.solids import Box, Capsule, Solid
from colure.model.axis import Axis
from colure.model.loading import Section, number

if TYPE_CHECKING:
    from colure.model.device import Device

JointName = Annotated[str, Field(pattern=r"^[A-Za-z][A-Za-z0-9_-]{0,39}$")]
_Coordinate = Annotated[float, Field(ge=-20000.0, le=20000.0)]
LabPlace = tuple[_Coordinate, _Coordinate, _Coordinate]
_Length = Annotated[float, Field(gt=0.0, le=20000.0)]
#: What solids stand on beside the joints.
ROOM, DEVICE, PROBE = "room", "device", "probe"
#: Names that mean something else already: the coordinates of every record, and the bodies of solids.
TAKEN = frozenset({"azimuth", "roll", "elevation", "probe", ROOM, DEVICE})
_LINEAR = {"min_mm": "min_deg", "max_mm": "max_deg", "speed_mm_s": "speed_deg_s",
           "acceleration_mm_s2": "acceleration_deg_s2",
           "zero_mm": "zero_deg", "home_mm": "home_deg", "readback_tolerance_mm": "readback_tolerance_deg",
           "following_error_mm": "following_error_deg", "zero_error_mm": "zero_error_deg"}  # fmt: skip


class JointTable(Axis):
    """One joint of a mount. Its line is written where every joint stands at its zero.

    There the device frame is the lab frame (z to the probe, x and y across), and the probe stands on z at the range
    length, facing the device, its port 1 along x. Joints are listed from the floor outwards.

    A prismatic joint has `min_mm`, `max_mm`, `speed_mm_s`, `acceleration_mm_s2`, `zero_mm`, `home_mm`,
    `readback_tolerance_mm`, `following_error_mm` and `zero_error_mm` in place of the entries in degrees.

    name
        Name of the joint; the controller's axis.
    carries
        Which end of the mount it carries: the device or the probe.
    kind
        `revolute` turns about its axis, `prismatic` shifts along it.
    axis
        Direction of its line in the lab frame; readouts grow right-handed about it, or along it, with sense = 1.
    point_mm
        A point of its line in the lab frame; it does not matter for a prismatic joint.
    letter
        Letter of the joint on a G-code controller; left out: what the profile says.
    zero_error_deg, tilt_error_deg, offset_error_mm
        How far the joint's zero, its direction (either way across) and its line (either way across) may be off: expanded (k = 2).
        A prismatic joint may turn about its own line as far as across it.
    axial_error_mm
        How far a revolute joint may stand off along its own line: expanded (k = 2).
    """

    name: JointName
    carries: Literal["device", "probe"]
    kind: Literal["revolute", "prismatic"] = "revolute"
    axis: LabPlace
    point_mm: LabPlace = (0.0, 0.0, 0.0)
    letter: Annotated[str, Field(pattern=r"^[ABCEHIJKLQRTUVWXYZ]$")] | None = None
    zero_error_deg: float = number("deg", 0, 10, 0.05)
    tilt_error_deg: float = number("deg", 0, 10, 0.05)
    offset_error_mm: float = number("mm", 0, 100, 0.3)
    axial_error_mm: float = number("mm", 0, 100, 0.3)

    @model_validator(mode="before")
    @classmethod
    def _linear(cls, data: Any) -> Any:
        """Take the entries of a prismatic joint, which are in millimetres."""
        if not isinstance(data, dict):
            return data
        linear = [name for name in _LINEAR if name in data]
        if linear and data.get("kind", "revolute") != "prismatic":
            raise ValueError(f"{linear[0]}: only a joint with kind = 'prismatic' has entries in mm")
        both = [name for name in linear if _LINEAR[name] in data]
        if both:
            raise ValueError(f"{both[0]}: given beside {_LINEAR[both[0]]}: one of the two (mm)")
        return {_LINEAR.get(name, name): value for name, value in data.items()}

    @classmethod
    def written(cls, name: str, table: Mapping[str, Any]) -> tuple[str, str]:
        """Name an entry of a prismatic joint as its file does: in millimetres."""
        if table.get("kind") != "prismatic":
            return name, ""
        linear = {field: entry for entry, field in _LINEAR.items()}
        return (linear[name], "mm") if name in linear else (name, "")

    @model_validator(mode="after")
    def _sound(self) -> JointTable:
        if self.name in TAKEN:
            raise ValueError(
                f"name = {self.name!r}: must not be one of {', '.join(sorted(TAKEN))} (they name other things)"
            )
        if np.linalg.norm(self.axis) < 1e-6:
            raise ValueError(f"axis = {list(self.axis)}: must have a length above 0")
        if self.position_error_deg > 0.0:
            raise ValueError(
                f"position_error_deg = {self.position_error_deg:g}: remove it: random errors of a joint are not in the budget yet; "
                "state them in zero_error_deg (deg)"
            )
        if self.torque_nm is not None:
            raise ValueError(f"torque_nm = {self.torque_nm:g}: remove it: torques of joints are not worked out (N m)")
        # What a plan keeps of a chamber states every entry, this one as nobody set it.
        if self.kind == "prismatic" and self.axial_error_mm != type(self).model_fields["axial_error_mm"].default:
            raise ValueError(
                f"axial_error_mm = {self.axial_error_mm:g}: remove it: along its own line a prismatic joint is off by zero_error_mm (mm)"
            )
        if self.modulo_deg is not None and self.kind == "prismatic":
            raise ValueError("modulo_deg: a prismatic joint has no turns; leave it out")
        return self

    @property
    def unit(self) -> str:
        """Unit of the readout."""
        return "mm" if self.kind == "prismatic" else "deg"

    @property
    def rolls_only(self) -> bool:
        """Tell whether the joint turns about the line from the device to the probe, and moves neither of them."""
        across = np.hypot(self.axis[0], self.axis[1]) / np.linalg.norm(self.axis)
        aside_mm = np.hypot(self.point_mm[0], self.point_mm[1])
        return self.kind == "revolute" and bool(across < 1e-9 and aside_mm < 1e-6)

    @property
    def tolerance(self) -> JointTolerance:
        """How far the joint may be off, expanded: radians and metres."""
        zero = 1e-3 * self.zero_error_deg if self.kind == "prismatic" else float(np.deg2rad(self.zero_error_deg))
        return JointTolerance(
            zero=zero,
            tilt=float(np.deg2rad(self.tilt_error_deg)),
            offset=1e-3 * self.offset_error_mm,
            axial=1e-3 * self.axial_error_mm,
        )

    @property
    def joint(self) -> Joint:
        """The joint as the geometry sees it."""
        x, y, z = (1e-3 * value for value in self.point_mm)
        return Joint(self.name, Carried(self.carries), self.axis, (x, y, z), JointKind(self.kind))


class SolidTable(Section):
    """A solid that must not touch others: a sphere, a capsule or a box, written where every joint stands at its zero.

    One of `sphere_mm`, `capsule_mm` and `box_mm` is given.

    name
        What messages call it.
    on
        What it moves with: `room`, `device`, `probe`, or the name of the joint that carries it.
    at_mm
        Centre of a sphere or a box, one end of a capsule, in the lab frame.
    to_mm
        Other end of a capsule's axis.
    sphere_mm, capsule_mm
        Radius.
    box_mm
        Whole sides along the lab's axes.
    may_touch
        Solids that it is joined to; pairs on one body are never compared. `device` is the box of device.toml.
    """

    name: JointName
    on: JointName
    at_mm: LabPlace
    to_mm: LabPlace | None = None
    sphere_mm: Annotated[float, Field(gt=0.0, le=20000.0, json_schema_extra={"unit": "mm"})] | None = None
    capsule_mm: Annotated[float, Field(gt=0.0, le=20000.0, json_schema_extra={"unit": "mm"})] | None = None
    box_mm: tuple[_Length, _Length, _Length] | None = None
    may_touch: tuple[JointName, ...] = ()

    @model_validator(mode="after")
    def _one_shape(self) -> SolidTable:
        given = [name for name in ("sphere_mm", "capsule_mm", "box_mm") if getattr(self, name) is not None]
        if len(given) != 1:
            raise ValueError(f"{len(given)} of sphere_mm, capsule_mm, box_mm given: must be one (mm)")
        if (self.to_mm is not None) != (given[0] == "capsule_mm"):
            raise ValueError(
                "to_mm: must be given with capsule_mm, the other end of its axis, and with nothing else (mm)"
            )
        return self

    def solid(self, bodies: dict[str, int]) -> Solid:
        """Return the solid as the geometry sees it; `bodies` numbers what solids stand on."""
        at = _metres(self.at_mm)
        if self.box_mm is not None:
            x, y, z = (0.5e-3 * side for side in self.box_mm)
            return Solid(self.name, bodies[self.on], Box(at, (x, y, z)))
        radius = self.sphere_mm if self.sphere_mm is not None else self.capsule_mm
        assert radius is not None  # guaranteed by the validator
        return Solid(
            self.name, bodies[self.on], Capsule(at, at if self.to_mm is None else _metres(self.to_mm), 1e-3 * radius)
        )


def device_solid(device: Device) -> Solid:
    """Return the device as the box that device.toml makes it; `clearance_of` puts it on the body that carries it."""
    x, y, z = (1e-3 * value for value in device.offset_mm)
    a, b, c = (0.5e-3 * value for value in device.size_mm)
    return Solid(DEVICE, -1, Box((x, y, z), (a, b, c)))


def _metres(place_mm: LabPlace) -> Vector3:
    x, y, z = (1e-3 * value for value in place_mm)
    return x, y, z


def bodies_of(joints: tuple[JointTable, ...]) -> dict[str, int]:
    """Return the number of every body that solids can stand on: -1 the room, else the joint that carries it."""
    bodies = {ROOM: -1, DEVICE: -1, PROBE: -1}
    for number_, joint in enumerate(joints):
        bodies[joint.name] = number_
        bodies[joint.carries] = number_
    return bodies


def letters_of(axes: Mapping[str, Axis]) -> dict[str, str]:
    """Return the letters that joints have on a G-code controller, by name; nothing of axes that are no joints."""
    return {name: one.letter for name, one in axes.items() if isinstance(one, JointTable) and one.letter is not None}


def chain_of(joints: tuple[JointTable, ...], range_length_m: float) -> JointChain:
    """Return the joints as the geometry sees them."""
    return JointChain(tuple(one.joint for one in joints), range_length_m)


def solids_of(
    joints: tuple[JointTable, ...], solids: tuple[SolidTable, ...]
) -> tuple[list[Solid], list[tuple[str, str]]]:
    """Return the solids as the geometry sees them, and the pairs that may touch."""
    bodies = bodies_of(joints)
    return [one.solid(bodies) for one in solids], [(one.name, other) for one in solids for other in one.may_touch]


def values_of(joints: tuple[JointTable, ...], readouts_deg: FloatArray) -> FloatArray:
    """Return joint values (..., joint), radians and metres, of readouts in degrees and millimetres."""
    angles = [one.map.angle_deg(readouts_deg[..., number_]) for number_, one in enumerate(joints)]
    return np.stack([a * _per_unit(one) for a, one in zip(angles, joints, strict=True)], axis=-1)


def readouts_of_values(joints: tuple[JointTable, ...], values: FloatArray) -> FloatArray:
    """Return readouts in degrees and millimetres of joint values (..., joint)."""
    return np.stack(
        [one.map.readout_deg(values[..., number_] / _per_unit(one)) for number_, one in enumerate(joints)], axis=-1
    )


def _per_unit(joint: JointTable) -> float:
    return 1e-3 if joint.kind == "prismatic" else float(np.deg2rad(1.0))


def faults_of_joints(joints: tuple[JointTable, ...], solids: tuple[SolidTable, ...]) -> list[str]:
    """Return what is wrong with joints and solids together, in words that name the entry."""
    names = [one.name for one in joints]
    faults = [
        f"joints: name {name!r}: given twice; each must be unique"
        for name in sorted(set(names))
        if names.count(name) > 1
    ]
    for end in ("device", "probe"):
        if not any(one.carries == end for one in joints) and len(joints) < 2:
            faults.append(f"joints: {len(joints)} given: must be at least 2, to point in every direction (joints)")
            break
    letters = [one.letter for one in joints if one.letter is not None]
    faults += [
        f"joints: letter {one!r}: given twice; each must be unique"
        for one in sorted(set(letters))
        if letters.count(one) > 1
    ]
    known, called = bodies_of(joints), [one.name for one in solids]
    for solid in solids:
        if solid.on not in known:
            faults.append(f"solids: {solid.name}.on = {solid.on!r}: must be one of {', '.join(known)}")
        if called.count(solid.name) > 1 or solid.name == DEVICE:
            faults.append(f"solids: name {solid.name!r}: given twice, or the device's own; each must be unique")
        faults += [
            f"solids: {solid.name}.may_touch = {other!r}: must be one of {', '.join([*called, DEVICE])}"
            for other in solid.may_touch
            if other not in (*called, DEVICE)
        ]
    return list(dict.fromkeys(faults))
