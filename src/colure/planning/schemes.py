"""Positioners and polarization schemes side by side, for this device and this goal."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from colure.errors import InputError
from colure.geometry.conventions import FloatArray
from colure.geometry.kinematics import Geometry, sighting
from colure.model.campaign import Campaign
from colure.model.chamber import Chamber
from colure.model.plan import ROLES, Plan, Role
from colure.planning.load import assess_load
from colure.planning.path import Path, build_path

#: What the trade says of each (common practice, no source).
POLARIZATION = {
    Geometry.ROLL_OVER_AZIMUTH: "turns with the roll; a probe that follows it keeps one Ludwig-3 slant everywhere",
    Geometry.AZIMUTH_OVER_ELEVATION: "Ludwig-2 pair of the grid about y; a fixed probe keeps it",
    Geometry.ELEVATION_OVER_AZIMUTH: "Ludwig-2 pair of the grid about x; a fixed probe keeps it",
}
HOLDER = {
    Geometry.ROLL_OVER_AZIMUTH: np.array([0.0, 0.0, -1.0]),
    Geometry.AZIMUTH_OVER_ELEVATION: np.array([0.0, -1.0, 0.0]),
    Geometry.ELEVATION_OVER_AZIMUTH: np.array([0.0, 0.0, -1.0]),
}
POLE = {
    Geometry.ROLL_OVER_AZIMUTH: "+z (boresight) and -z",
    Geometry.AZIMUTH_OVER_ELEVATION: "+y and -y",
    Geometry.ELEVATION_OVER_AZIMUTH: "+x and -x",
}
SUITS = {
    Geometry.ROLL_OVER_AZIMUTH: "beams along the roll axis, whole spheres, heavy devices that can be balanced",
    Geometry.AZIMUTH_OVER_ELEVATION: "devices that must stand upright, wide scans in azimuth, light loads",
    Geometry.ELEVATION_OVER_AZIMUTH: "fans about the vertical, pointing at several bearings, light loads",
}


@dataclass(frozen=True, kw_only=True)
class Choice:
    """One positioner with one scheme; durations in seconds, torque in newton metres."""

    geometry: Geometry
    scheme: str
    points: int
    duration_s: float | None
    blocked_percent: float
    near_boresight: int
    torque_nm: float
    fault: str

    @property
    def pole(self) -> str:
        """Where the slices meet."""
        return POLE[self.geometry]

    @property
    def polarization(self) -> str:
        """What the received polarization does on the way."""
        return POLARIZATION[self.geometry]

    @property
    def suits(self) -> str:
        """What the trade uses it for."""
        return SUITS[self.geometry]


def directions(plan_axes: tuple[str, ...], targets_deg: FloatArray, chamber: Chamber) -> FloatArray:
    """Return the direction under test of every target, device frame, (point, 3)."""
    geometry = chamber.positioner.geometry
    first, second = (
        np.deg2rad(chamber.axis_table[name].map.angle_deg(targets_deg[:, plan_axes.index(name)]))
        for name in geometry.axis_names
    )
    return sighting(geometry, first=first, second=second).direction


def blocked_share(half_angle_deg: float) -> float:
    """Return the share of the sphere that what holds the device hides: a cone of that half angle."""
    return float(0.5 * (1.0 - np.cos(np.deg2rad(half_angle_deg))))


def is_blocked(directions_: FloatArray, geometry: Geometry, half_angle_deg: float) -> FloatArray:
    """Tell which directions (..., 3) the holder hides from the probe."""
    return np.asarray(directions_ @ HOLDER[geometry] > np.cos(np.deg2rad(half_angle_deg)))


def compare(campaign: Campaign, plan: Plan) -> list[Choice]:
    """Return every positioner and scheme for this device, with the same axes' speeds, this chamber's first.

    Raises
    ------
    InputError
        On a mount with joints: its joints' speeds say nothing about the axes of another positioner.
    """
    if campaign.chamber.positioner.joints:
        raise InputError(
            [
                "chamber.toml: positioner.joints: this mount is not set beside other positioners: the speeds of its joints are not theirs"
            ]
        )
    own = campaign.chamber.positioner.geometry
    geometries = [own, *(geometry for geometry in Geometry if geometry is not own)]
    return [_choice(campaign, plan, geometry, ports) for geometry in geometries for ports in (1, 2)]


def _choice(campaign: Campaign, plan: Plan, geometry: Geometry, ports: int) -> Choice:
    half_angle = campaign.chamber.positioner.bracket_half_angle_deg
    torque = max(load.gravity_nm for load in assess_load(campaign.device, campaign.chamber, geometry).axes.values())
    scheme = _scheme_words(geometry, ports)
    try:
        chamber = _as_if(campaign.chamber, geometry, ports)
        goal = campaign.goal.model_copy(update={"scheme": "auto"})
        path = build_path(goal, chamber, campaign.device, plan.grid)
    except InputError as error:
        return Choice(
            geometry=geometry,
            scheme=scheme,
            points=0,
            duration_s=None,
            blocked_percent=100 * blocked_share(half_angle),
            near_boresight=0,
            torque_nm=torque,
            fault=error.faults[0],
        )
    return Choice(
        geometry=geometry,
        scheme=scheme,
        points=len(path.role),
        duration_s=float(path.time_s.sum()),
        blocked_percent=100.0 * blocked_share(half_angle),
        near_boresight=_near_boresight(path, chamber, plan.step_deg),
        torque_nm=torque,
        fault="",
    )


def _scheme_words(geometry: Geometry, ports: int) -> str:
    if ports == 2:
        return "one pass, dual-polarized probe"
    if geometry is Geometry.ROLL_OVER_AZIMUTH:
        return "two passes, probe follows the roll"
    return "two passes, probe fixed at 0 and 90 deg"


def _as_if(chamber: Chamber, geometry: Geometry, ports: int) -> Chamber:
    """Return the chamber with another positioner or probe; the second axis keeps its speed and gets the travel."""
    table = chamber.positioner
    second = table.second
    if geometry is not table.geometry:
        second = second.model_copy(update={"min_deg": -190.0, "max_deg": 190.0, "zero_deg": 0.0, "sense": 1})
    roll, elevation = (second, None) if geometry is Geometry.ROLL_OVER_AZIMUTH else (None, second)
    positioner = table.model_copy(update={"geometry": geometry, "roll": roll, "elevation": elevation})
    probe = chamber.probe.model_copy(update={"ports": ports})
    if ports == 1 and probe.roll is None:
        raise InputError(["chamber.toml: probe.roll: missing; a single-port probe needs a roll axis (deg, deg/s)"])
    return chamber.model_copy(update={"positioner": positioner, "probe": probe, "keep_out": ()})


def _near_boresight(path: Path, chamber: Chamber, step_deg: float) -> int:
    """Count sampled directions within one step of +z."""
    scan = (path.role == ROLES.index(Role.SCAN)) & (path.pass_index == 0)
    if path.coordinates_deg is None:
        d = directions(path.axes, path.targets_deg[scan], chamber)
    else:
        d = directions(tuple(chamber.axis_table), path.coordinates_deg[scan], chamber)
    return int(np.sum(d[:, 2] > np.cos(np.deg2rad(1.001 * step_deg))))
