"""What the device does to the positioner: torque on every axis, tilt, and how fast it may be accelerated."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from colure.errors import InputError
from colure.geometry.conventions import FloatArray
from colure.geometry.kinematics import Geometry
from colure.model.chamber import Chamber
from colure.model.device import Device

#: Standard acceleration of gravity (3rd CGPM, 1901), m/s^2.
GRAVITY = 9.80665


@dataclass(frozen=True, kw_only=True)
class AxisLoad:
    """Static torque by gravity and torque to accelerate, newton metres, at their worst position."""

    gravity_nm: float
    inertia_kg_m2: float
    acceleration_nm: float
    limit_nm: float | None

    @property
    def total_nm(self) -> float:
        """What the drive must hold while it accelerates."""
        return self.gravity_nm + self.acceleration_nm


@dataclass(frozen=True)
class Load:
    """Loads by axis name; tilt of the carried axis in degrees where the stiffness is declared."""

    axes: dict[str, AxisLoad]
    tilt_deg: float | None
    words: str


def lever_arms(geometry: Geometry, centre_m: FloatArray) -> dict[str, tuple[float, float]]:
    """Return (lever arm of gravity, distance of the mass from the axis) per axis, metres, worst position.

    A vertical axis feels no gravity. Roll over azimuth: the roll axis is horizontal and sees
    the mass beside it. Azimuth over elevation: the elevation axis lifts everything that is off
    it; the carried azimuth axis tips over with it. Elevation over azimuth: the elevation axis
    lifts, the azimuth axis stands.
    """
    x, y, z = (abs(float(value)) for value in centre_m)
    about_x, about_y, about_z = float(np.hypot(y, z)), float(np.hypot(x, z)), float(np.hypot(x, y))
    if geometry is Geometry.ROLL_OVER_AZIMUTH:
        return {"azimuth": (0.0, about_y), "roll": (about_z, about_z)}
    if geometry is Geometry.AZIMUTH_OVER_ELEVATION:
        return {"azimuth": (about_y, about_y), "elevation": (about_x, about_x)}
    return {"azimuth": (0.0, about_y), "elevation": (about_x, about_x)}


def carrying_axis(geometry: Geometry) -> str:
    """Return the axis that carries the other one, which is the lower one of the stack."""
    return "elevation" if geometry is Geometry.AZIMUTH_OVER_ELEVATION else "azimuth"


def assess_load(device: Device, chamber: Chamber, geometry: Geometry | None = None) -> Load:
    """Return the loads of a device on a chamber's positioner, or on one of another geometry; none on a mount with joints.

    The device counts as a box of its size about its centre of gravity. The carried stage on its arm
    (chamber.toml positioner.carried_mass_kg, carried_arm_mm) loads the axis that carries it in every geometry:
    an elevation axis lifts it and turns its inertia, a vertical azimuth axis turns its inertia.
    """
    own = chamber.positioner
    if own.joints:
        return Load(
            {}, None, f"device {device.mass_kg:g} kg; torques of the {len(own.joints)} joints are not worked out"
        )
    kind = own.geometry if geometry is None else geometry
    centre = 1e-3 * (np.asarray(device.offset_mm) + np.asarray(device.centre_of_gravity_mm))
    size = 1e-3 * np.asarray(device.size_mm)
    table = chamber.axis_table if kind is own.geometry else {}
    loads = {}
    for name, (arm, apart) in lever_arms(kind, centre).items():
        box = device.mass_kg * float(np.sum(size**2)) / 12.0
        inertia = box + device.mass_kg * apart**2
        gravity = device.mass_kg * GRAVITY * arm
        if name == carrying_axis(kind):
            carried = 1e-3 * own.carried_arm_mm
            inertia += own.carried_mass_kg * carried**2
            if name == "elevation":
                gravity += own.carried_mass_kg * GRAVITY * carried
        axis = table.get(name) or own.azimuth
        loads[name] = AxisLoad(
            gravity_nm=gravity,
            inertia_kg_m2=inertia,
            acceleration_nm=inertia * float(np.deg2rad(axis.acceleration_deg_s2)),
            limit_nm=axis.torque_nm,
        )
    return Load(loads, _tilt(device, chamber, centre), _words(loads))


def _tilt(device: Device, chamber: Chamber, centre: FloatArray) -> float | None:
    stiffness = chamber.positioner.stiffness_nm_deg
    if stiffness is None:
        return None
    overhang = abs(float(centre[2])) + 1e-3 * chamber.positioner.carried_arm_mm
    moment = device.mass_kg * GRAVITY * overhang
    moment += chamber.positioner.carried_mass_kg * GRAVITY * 1e-3 * chamber.positioner.carried_arm_mm
    return moment / stiffness


def _words(loads: dict[str, AxisLoad]) -> str:
    parts = []
    for name, load in loads.items():
        limit = "" if load.limit_nm is None else f" of {load.limit_nm:g}"
        parts.append(f"{name} {load.gravity_nm:.2f} N m by gravity, {load.total_nm:.2f}{limit} N m with acceleration")
    return "; ".join(parts)


def require_bearable(load: Load, chamber: Chamber) -> None:
    """Raise `InputError` if an axis' torque limit is exceeded, with the acceleration that it would bear."""
    faults = []
    for name, own in load.axes.items():
        if own.limit_nm is None or own.total_nm <= own.limit_nm:
            continue
        left = own.limit_nm - own.gravity_nm
        if left <= 0.0:
            faults.append(
                f"device.toml: mass_kg: torque on axis {name} by gravity alone = {own.gravity_nm:.2f}: must be below "
                f"{own.limit_nm:g} N m; balance the device about the axis"
            )
        else:
            bearable = float(np.rad2deg(left / own.inertia_kg_m2))
            faults.append(
                f"chamber.toml: positioner.{name}.acceleration_deg_s2 = "
                f"{chamber.axis_table[name].acceleration_deg_s2:g}: must be at most {bearable:.1f} deg/s^2 for "
                f"{own.limit_nm:g} N m"
            )
    if faults:
        raise InputError(faults)
