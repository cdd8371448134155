"""The positioner: its axes, how they are stacked, and where they must not go."""

from __future__ import annotations

from typing import Annotated, Any

from pydantic import Field, model_validator

from colure.geometry.kinematics import Geometry
from colure.model.axis import Axis as Axis  # noqa: PLC0414 - offered here too
from colure.model.joints import JointTable, SolidTable, faults_of_joints
from colure.model.loading import Section, number

AngleInterval = tuple[Annotated[float, Field(ge=-3600, le=3600)], Annotated[float, Field(ge=-3600, le=3600)]]


#: What a turntable has in place of its second axis: it stands at 0 and never moves.
FIXED = Axis.model_construct(min_deg=0.0, max_deg=0.0, speed_deg_s=1.0, acceleration_deg_s2=1.0, settle_s=0.0)


def coordinate_of(joints: Any) -> Axis:
    """Return a coordinate of a mount with joints: any angle, whole turns included, as fast as the slowest joint.

    What the joints reach is checked joint by joint. `joints` may not have been validated yet.
    """

    def values(name: str) -> list[float]:
        entries = [one.get(name) if isinstance(one, dict) else getattr(one, name, None) for one in joints]
        return [float(value) for value in entries if isinstance(value, (int, float)) and not isinstance(value, bool)]

    return Axis.model_construct(
        min_deg=-720.0,
        max_deg=720.0,
        speed_deg_s=min(values("speed_deg_s"), default=10.0),
        acceleration_deg_s2=min(values("acceleration_deg_s2"), default=10.0),
        settle_s=max(values("settle_s"), default=0.25),
    )


class PositionerTable(Section):
    """Positioner geometry and its two device axes, azimuth-like axis first.

    carried_mass_kg, carried_arm_mm
        Mass of the carried axis with its arm, and the distance of its centre of gravity from the axis that carries it.
    stiffness_nm_deg
        Moment that tilts the carried axis by one degree.
    bracket_half_angle_deg
        Half angle of the cone in which what holds the device hides it from the probe.
    geometry
        How the axes are stacked: roll over azimuth, azimuth over elevation, or elevation over azimuth.
    azimuth, roll, elevation
        The device axes: azimuth, and roll or elevation, whichever the geometry has.
    load_limit_kg
        Largest mass of device and mount.
    joints
        Joints of a mount of any kind (swinging arm, arch, robot arm), from the floor outwards; they take the place of
        geometry, azimuth, roll, elevation and of the probe's roll. Plans, records and figures keep the coordinates theta
        (azimuth), phi (roll) and the probe's roll.
    solids
        Spheres, capsules and boxes on a mount with joints that must not touch; left out: collisions are not checked.
    turntable
        True: azimuth is the only axis of the device that turns. Roll or elevation has no table, stays at 0 and is never
        commanded; what needs it elsewhere is refused.
    """

    geometry: Geometry
    azimuth: Axis
    roll: Axis | None = None
    elevation: Axis | None = None
    load_limit_kg: float = number("kg", 0.01, 10000, 10.0)
    carried_mass_kg: float = number("kg", 0, 10000, 0.0)
    carried_arm_mm: float = number("mm", 0, 10000, 0.0)
    stiffness_nm_deg: float | None = Field(default=None, ge=0.01, le=1e9, json_schema_extra={"unit": "N m per deg"})
    bracket_half_angle_deg: float = number("deg", 0, 90, 0.0)
    turntable: bool = False
    joints: tuple[JointTable, ...] = ()
    solids: tuple[SolidTable, ...] = ()

    @model_validator(mode="before")
    @classmethod
    def _coordinates(cls, data: Any) -> Any:
        """Give a mount with joints the coordinates that its plans and records are written in."""
        if not isinstance(data, dict) or not data.get("joints"):
            return data
        one = coordinate_of(data["joints"])
        filled = {"geometry": Geometry.ROLL_OVER_AZIMUTH.value, "azimuth": one, "roll": one}
        for name in ("geometry", "azimuth", "roll", "elevation", "turntable"):
            wanted = filled.get(name)
            own = wanted.model_dump() if isinstance(wanted, Axis) else wanted
            told = data.get(name)
            told = told.model_dump() if isinstance(told, Axis) else told
            if told not in (None, False, own):
                raise ValueError(f"{name}: remove it: the joints say how the mount moves")
        return {**data, **filled}

    @model_validator(mode="after")
    def _joints_fit(self) -> PositionerTable:
        if self.solids and not self.joints:
            raise ValueError("solids: need [[positioner.joints]]; keep_out bounds the readouts of other positioners")
        faults = faults_of_joints(self.joints, self.solids) if self.joints else []
        if self.joints:
            told = {
                "carried_mass_kg": self.carried_mass_kg,
                "carried_arm_mm": self.carried_arm_mm,
                "stiffness_nm_deg": self.stiffness_nm_deg,
            }
            faults += [
                f"{name} = {value:g}: remove it: loads of joints are not worked out"
                for name, value in told.items()
                if value
            ]
        if faults:
            raise ValueError("; ".join(faults))
        return self

    @model_validator(mode="after")
    def _second_axis(self) -> PositionerTable:
        wanted = self.geometry.axis_names[1]
        other = "elevation" if wanted == "roll" else "roll"
        if self.turntable:
            for name in (wanted, other):
                if getattr(self, name) is not None:
                    raise ValueError(f"turntable = true: only azimuth turns; remove [positioner.{name}]")
            return self
        if getattr(self, wanted) is None:
            raise ValueError(
                f"geometry {self.geometry} needs a table [positioner.{wanted}] (deg, deg/s), or turntable = true"
            )
        if getattr(self, other) is not None:
            raise ValueError(f"geometry {self.geometry} has no {other} axis; remove [positioner.{other}]")
        return self

    @property
    def second(self) -> Axis:
        """Roll or elevation, whichever the geometry has; on a turntable an axis without travel."""
        if self.turntable:
            return FIXED
        axis = self.roll if self.roll is not None else self.elevation
        assert axis is not None  # guaranteed by the validator
        return axis


class KeepOut(Section):
    """A box of readouts (degrees) where device or bracket could touch something; open axes are free.

    name
        What could be touched there; messages name it.
    azimuth, roll, elevation, probe
        Interval of the axis' readout; left out: at any readout.
    """

    name: Annotated[str, Field(min_length=1, max_length=200)]
    azimuth: AngleInterval | None = None
    roll: AngleInterval | None = None
    elevation: AngleInterval | None = None
    probe: AngleInterval | None = None

    @model_validator(mode="after")
    def _bounded(self) -> KeepOut:
        given = self.intervals
        if not given:
            raise ValueError(f"keep_out {self.name!r} needs at least one axis with [low, high] (deg)")
        for axis, (low, high) in given.items():
            if high <= low:
                raise ValueError(f"keep_out {self.name!r}: {axis} = [{low:g}, {high:g}]: high must be above low (deg)")
        return self

    @property
    def intervals(self) -> dict[str, tuple[float, float]]:
        """The bounded axes and their intervals."""
        values = {name: getattr(self, name) for name in ("azimuth", "roll", "elevation", "probe")}
        return {name: value for name, value in values.items() if value is not None}
