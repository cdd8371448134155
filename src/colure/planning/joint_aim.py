"""Which joint readouts point a mount at a bearing, and where given readouts point: by its own chain of joints."""

from __future__ import annotations

import numpy as np

from colure.errors import InputError
from colure.geometry.conventions import FloatArray
from colure.geometry.directions import unit_vector
from colure.geometry.joints import coordinates_of
from colure.geometry.kinematics import Geometry
from colure.model.chamber import Chamber, clearance_of
from colure.model.device import Device
from colure.model.joints import device_solid, values_of
from colure.planning.aim import Aim, Bearing, aims, bearing_at, wrapped_deg
from colure.planning.joint_path import ways_of, why_not

#: Solutions of a mount with many joints are listed up to this many.
MOST_WAYS = 12


def ways_to(
    bearing: Bearing, geometry: Geometry, chamber: Chamber | None = None, device: Device | None = None
) -> list[Aim]:
    """Return every way to point at a bearing as `aims` does; on a chamber with joints the readouts are those of the joints.

    device
        Its box must touch no solid of the mount either.
    """
    if chamber is None or not chamber.positioner.joints:
        return aims(bearing, geometry, chamber)
    joints = chamber.positioner.joints
    asked = np.array([[bearing.theta_deg, bearing.phi_deg, 0.0]])
    ways = ways_of(chamber, asked)
    shown, possible = ways.readouts_deg[:, 0], ways.possible[:, 0]
    clearance = clearance_of(chamber, *(() if device is None else (device_solid(device),)))
    free = possible.copy()
    if clearance is not None and possible.any():
        free[possible] = np.all(clearance.gaps(values_of(joints, shown[possible])) > 0.0, axis=1)
    if not free.any():
        here = shown[int(np.argmax(possible))]
        fault = "out of reach: " + why_not(chamber, ways, clearance, 0)
        return [_aim(chamber, here, fault)]
    home = np.array([joint.home_deg for joint in joints])
    _, first = np.unique(np.round(shown[free], 6), axis=0, return_index=True)
    readouts_deg = sorted((shown[free][n] for n in first), key=lambda one: float(np.abs(one - home).sum()))
    return [_aim(chamber, one, "") for one in readouts_deg[:MOST_WAYS]]


def bearing_of_readouts(
    readouts_deg: dict[str, float], geometry: Geometry, chamber: Chamber | None = None
) -> tuple[Bearing, float]:
    """Return the bearing that readouts show and the slant received there, as `bearing_at` does; of joints by their chain.

    Raises
    ------
    InputError
        If the readouts do not name every joint, or the two axes of a positioner.
    """
    if chamber is None or not chamber.positioner.joints:
        return bearing_at(readouts_deg, geometry, chamber)
    names = [joint.name for joint in chamber.positioner.joints]
    if set(readouts_deg) != set(names):
        raise InputError([f"readout: names {', '.join(sorted(readouts_deg))}: must be {', '.join(names)} (deg or mm)"])
    return _sight(chamber, np.array([readouts_deg[name] for name in names]))


def _aim(chamber: Chamber, shown_deg: FloatArray, fault: str) -> Aim:
    names = [joint.name for joint in chamber.positioner.joints]
    _, slant = _sight(chamber, shown_deg)
    readouts = {name: float(value) + 0.0 for name, value in zip(names, np.round(shown_deg, 9), strict=True)}
    return Aim(Geometry.ROLL_OVER_AZIMUTH, readouts, fault, slant)


def _sight(chamber: Chamber, shown_deg: FloatArray) -> tuple[Bearing, float]:
    """Return where joints point, and the Ludwig-3 slant of what port 1 receives there: chi = psi - phi."""
    chain = chamber.chain
    assert chain is not None  # only asked of a mount with joints
    pose = chain.probe_in_device(values_of(chamber.positioner.joints, shown_deg[None]))
    at = coordinates_of(pose)
    direction = unit_vector(theta=at.theta[0], phi=at.phi[0])
    return Bearing.of(direction), wrapped_deg(float(np.rad2deg(at.phi[0] + at.chi[0])))
