"""Which readouts point the device at a bearing, on every positioner, and how the polarization turns on the way."""

from __future__ import annotations

import math
from dataclasses import dataclass
from pathlib import Path

import numpy as np

from colure.errors import InputError
from colure.geometry.conventions import FloatArray
from colure.geometry.directions import (
    azimuth_over_elevation,
    elevation_over_azimuth,
    from_azimuth_over_elevation,
    theta_phi,
    unit_vector,
)
from colure.geometry.kinematics import AxisMap, Geometry, Positioner, sighting, solutions
from colure.geometry.polarization import Basis, basis_matrix, from_cartesian
from colure.model.chamber import Chamber
from colure.model.tables import read_rows

#: A list of targets longer than this is refused before it is read.
LARGEST_TARGETS_BYTES = 1_000_000


@dataclass(frozen=True, kw_only=True)
class Bearing:
    """One direction of the device frame in every pair of angles the trade uses, degrees.

    azimuth_deg, elevation_deg
        d = (sin az cos el, sin el, cos az cos el): the pole of elevation is y.
    alpha_deg, epsilon_deg
        d = (sin al, cos al sin ep, cos al cos ep): the pole of alpha is x.
    """

    name: str
    theta_deg: float
    phi_deg: float
    azimuth_deg: float
    elevation_deg: float
    alpha_deg: float
    epsilon_deg: float

    @classmethod
    def of(cls, direction: FloatArray, name: str = "") -> Bearing:
        """Describe a unit vector of the device frame."""
        theta, phi = theta_phi(direction)
        azimuth, elevation = azimuth_over_elevation(direction)
        alpha, epsilon = elevation_over_azimuth(direction)
        return cls(
            name=name, theta_deg=float(np.rad2deg(theta)), phi_deg=float(np.rad2deg(phi)),
            azimuth_deg=float(np.rad2deg(azimuth)),
            elevation_deg=float(np.rad2deg(elevation)), alpha_deg=float(np.rad2deg(alpha)),
            epsilon_deg=float(np.rad2deg(epsilon)),
        )  # fmt: skip

    @property
    def direction(self) -> FloatArray:
        """The unit vector in the device frame."""
        return unit_vector(theta=np.deg2rad(self.theta_deg), phi=np.deg2rad(self.phi_deg))


@dataclass(frozen=True)
class Aim:
    """One way to point at a bearing.

    readouts_deg
        By axis name, as the controller shows them.
    fault
        Which limit keeps this solution out of reach; empty if none.
    slant_deg
        Slant of the Ludwig-3 component that the probe receives at roll 0: what the polarization
        has turned by, seen from the device. The probe rolled by minus this angle receives the
        device's own x component again.
    """

    geometry: Geometry
    readouts_deg: dict[str, float]
    fault: str
    slant_deg: float

    @property
    def probe_roll_deg(self) -> float:
        """Probe roll at which slant 0 is received."""
        return wrapped_deg(-self.slant_deg)


def bearing_from(
    *,
    azimuth_deg: float | None,
    elevation_deg: float | None,
    theta_deg: float | None,
    phi_deg: float | None,
    name: str = "",
) -> Bearing:
    """Read a bearing given as azimuth and elevation or as theta and phi.

    Raises
    ------
    InputError
        If both pairs, none, or half a pair is given, or a value is out of range.
    """
    one, two = (azimuth_deg, elevation_deg), (theta_deg, phi_deg)
    if (None in one) == (None in two):
        raise InputError(["bearing: needs `az` with `el`, or `theta` with `phi` (deg), and not both"])
    if azimuth_deg is not None and elevation_deg is not None:
        _require("az", azimuth_deg, 360.0)
        _require("el", elevation_deg, 90.0)
        az, el = np.deg2rad(azimuth_deg), np.deg2rad(elevation_deg)
        direction = from_azimuth_over_elevation(azimuth=az, elevation=el)
        return Bearing.of(direction, name)
    assert theta_deg is not None and phi_deg is not None
    _require("theta", theta_deg, 180.0)
    _require("phi", phi_deg, 720.0)
    return Bearing.of(unit_vector(theta=np.deg2rad(theta_deg), phi=np.deg2rad(phi_deg)), name)


def _require(name: str, value: float, limit: float) -> None:
    if not math.isfinite(value) or abs(value) > limit:
        raise InputError([f"{name} = {value:g}: must be from {-limit:g} to {limit:g} deg"])


def aims(bearing: Bearing, geometry: Geometry, chamber: Chamber | None = None) -> list[Aim]:
    """Return every way to point at a bearing, those within limits and near home first.

    Parameters
    ----------
    chamber
        Gives senses, zeros and limits if its positioner has this geometry; else axes that
        read the angles themselves and turn freely are assumed.
    """
    positioner = _positioner(geometry, chamber)
    names = geometry.axis_names
    candidates = []
    for a, b in solutions(geometry, bearing.direction):
        ways = [
            (one, two)
            for one in positioner.first.readouts_within(float(np.rad2deg(a)))
            for two in positioner.second.readouts_within(float(np.rad2deg(b)))
        ]
        outside = (
            float(positioner.first.readout_deg(np.rad2deg(a))),
            float(positioner.second.readout_deg(np.rad2deg(b))),
        )
        fault = "" if ways else _beyond(names, outside, (positioner.first, positioner.second))
        slant = slant_at(geometry, first=a, second=b)
        candidates += [Aim(geometry, dict(zip(names, pair, strict=True)), fault, slant) for pair in ways or [outside]]
    return sorted(candidates, key=lambda aim: (bool(aim.fault), sum(abs(v) for v in aim.readouts_deg.values())))


def _beyond(names: tuple[str, str], pair: tuple[float, float], maps: tuple[AxisMap, AxisMap]) -> str:
    """Say which axis would have to leave its limits, whole turns considered."""
    faults = [
        f"{name} = {value:.3f}: must be from {axis.min_deg:g} to {axis.max_deg:g} deg"
        for name, value, axis in zip(names, pair, maps, strict=True)
        if not axis.readouts_within(float(axis.angle_deg(value)))
    ]
    return "out of reach: " + ", ".join(faults)


def bearing_at(
    readouts_deg: dict[str, float], geometry: Geometry, chamber: Chamber | None = None
) -> tuple[Bearing, float]:
    """Return the bearing that given readouts show, and the slant received at probe roll 0 (degrees).

    Raises
    ------
    InputError
        If the readouts do not name the geometry's two axes.
    """
    names = geometry.axis_names
    if set(readouts_deg) != set(names):
        raise InputError([f"readout: names {', '.join(sorted(readouts_deg))}: must be {names[0]} and {names[1]} (deg)"])
    positioner = _positioner(geometry, chamber)
    first = float(np.deg2rad(positioner.first.angle_deg(readouts_deg[names[0]])))
    second = float(np.deg2rad(positioner.second.angle_deg(readouts_deg[names[1]])))
    return Bearing.of(sighting(geometry, first=first, second=second).direction), slant_at(
        geometry, first=first, second=second
    )


def slant_at(geometry: Geometry, *, first: float, second: float) -> float:
    """Return the Ludwig-3 slant (degrees) of what the probe receives at roll 0 for two angles in radians."""
    seen = sighting(geometry, first=first, second=second)
    theta, phi = theta_phi(seen.direction)
    pair = np.stack(from_cartesian(seen.first_vector.astype(complex), theta=theta, phi=phi))
    co, cross = (basis_matrix(Basis.LUDWIG_3, theta=theta, phi=phi) @ pair).real
    return wrapped_deg(float(np.rad2deg(np.arctan2(cross, co))))


def read_targets(path: Path) -> list[Bearing]:
    """Read targets from a CSV with columns name, az_deg, el_deg or name, theta_deg, phi_deg.

    Raises
    ------
    InputError
        Naming line, column, value and limit of everything that is wrong.
    """
    try:
        size = path.stat().st_size
    except OSError as error:
        raise InputError([f"{path.name}: cannot be read: {error.strerror or error}"]) from None
    if size > LARGEST_TARGETS_BYTES:
        raise InputError([f"{path.name}: size = {size}: must be at most {LARGEST_TARGETS_BYTES} bytes"])
    header, rows = read_rows(path, names=True)
    if not rows:
        raise InputError([f"{path.name}: 0 targets: must be at least 1 (rows below the header)"])
    pairs = (("az_deg", "el_deg"), ("theta_deg", "phi_deg"))
    pair = next((pair for pair in pairs if set(pair) <= set(header)), None)
    if pair is None:
        raise InputError(
            [f"{path.name}: columns {', '.join(header)}: must be name, az_deg, el_deg or name, theta_deg, phi_deg"]
        )
    faults, targets = [], []
    for line, row in rows:
        try:
            one, two = (float(row[column] or "") for column in pair)
            az, el, theta, phi = (one, two, None, None) if pair == pairs[0] else (None, None, one, two)
            targets.append(
                bearing_from(
                    azimuth_deg=az,
                    elevation_deg=el,
                    theta_deg=theta,
                    phi_deg=phi,
                    name=row.get("name") or f"line {line}",
                )
            )
        except ValueError as error:
            words = (
                error.faults[0] if isinstance(error, InputError) else f"{pair[0]}, {pair[1]}: must be two numbers (deg)"
            )
            faults.append(f"{path.name}: line {line}: {words}")
    if faults:
        raise InputError(faults)
    return targets


def _positioner(geometry: Geometry, chamber: Chamber | None) -> Positioner:
    if chamber is not None and chamber.positioner.geometry is geometry:
        return Positioner(geometry, chamber.positioner.azimuth.map, chamber.positioner.second.map)
    free = AxisMap(min_deg=-180.0, max_deg=180.0)
    return Positioner(geometry, free, free)


def wrapped_deg(angle_deg: float) -> float:
    """Bring an angle to (-180, 180] degrees, without a negative zero."""
    wrapped = -((-angle_deg + 180.0) % 360.0 - 180.0)
    return 0.0 if abs(wrapped) < 1e-12 else wrapped
