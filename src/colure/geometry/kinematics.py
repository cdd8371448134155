"""Positioner geometries, forward and inverse, with rigid misalignments.

The three geometries and their signs:

=====================  =================  ==========================================
name                   R (device to lab)  direction under test, device frame
=====================  =================  ==========================================
roll-over-azimuth      Ry(-th) Rz(-ph)    (sin th cos ph, sin th sin ph, cos th)
azimuth-over-elevation Rx(el) Ry(-az)     (sin az cos el, sin el, cos az cos el)
elevation-over-azimuth Ry(-az) Rx(el)     (sin az, cos az sin el, cos az cos el)
=====================  =================  ==========================================

The first axis named in a pair of angles is always (azimuth-like, other): (theta, phi) =
(azimuth axis, roll axis) for roll-over-azimuth, (az, el) for the other two. Trade usage of
"azimuth over elevation" differs between texts, so screens show the formula beside the name.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from enum import StrEnum
from functools import lru_cache

import numpy as np
from numpy.typing import ArrayLike

from colure.geometry.conventions import FloatArray, wrapped
from colure.geometry.directions import azimuth_over_elevation, elevation_over_azimuth, theta_phi
from colure.geometry.rotations import RigidMotion, about_axis, from_rotation_vector
from colure.values import holds_arrays


class Geometry(StrEnum):
    """How the two device axes are stacked."""

    ROLL_OVER_AZIMUTH = "roll-over-azimuth"
    AZIMUTH_OVER_ELEVATION = "azimuth-over-elevation"
    ELEVATION_OVER_AZIMUTH = "elevation-over-azimuth"

    @property
    def axis_names(self) -> tuple[str, str]:
        """Names of the two axes, azimuth-like first."""
        if self is Geometry.ROLL_OVER_AZIMUTH:
            return ("azimuth", "roll")
        return ("azimuth", "elevation")

    @property
    def direction_formula(self) -> str:
        """The direction under test in the device frame, as text."""
        return {
            Geometry.ROLL_OVER_AZIMUTH: "(sin th cos ph, sin th sin ph, cos th)",
            Geometry.AZIMUTH_OVER_ELEVATION: "(sin az cos el, sin el, cos az cos el)",
            Geometry.ELEVATION_OVER_AZIMUTH: "(sin az, cos az sin el, cos az cos el)",
        }[self]


@dataclass(frozen=True, kw_only=True)
class AxisMap:
    """How a controller's readout relates to the angle of the conventions.

    angle_deg = sense * (readout_deg - zero_deg), with `sense` +1 or -1.
    """

    sense: int = 1
    zero_deg: float = 0.0
    min_deg: float = -180.0
    max_deg: float = 180.0

    def angle_deg(self, readout_deg: ArrayLike) -> FloatArray:
        """Return the convention's angle for a controller readout."""
        return np.asarray(self.sense * (np.asarray(readout_deg, float) - self.zero_deg))

    def readout_deg(self, angle_deg: ArrayLike) -> FloatArray:
        """Return the controller readout for an angle of the conventions."""
        return np.asarray(self.sense * np.asarray(angle_deg, float) + self.zero_deg)

    def readouts_within(self, angle_deg: float) -> list[float]:
        """Return every readout inside the limits that shows this angle, whole turns included."""
        base = float(self.readout_deg(angle_deg))
        slack = 1e-9
        first = int(np.ceil((self.min_deg - base - slack) / 360.0))
        last = int(np.floor((self.max_deg - base + slack) / 360.0))
        return [float(np.clip(base + 360.0 * turn, self.min_deg, self.max_deg)) for turn in range(first, last + 1)]


Vector3 = tuple[float, float, float]
NO_SHIFT: Vector3 = (0.0, 0.0, 0.0)


@dataclass(frozen=True, kw_only=True)
class Misalignment:
    """Rigid errors of a range; everything zero means the nominal range.

    Tilts are rotation vectors in radians, offsets in metres, zero errors in radians.

    fixed_axis_tilt, fixed_axis_offset
        of the axis bolted to the floor, in the lab frame;
    carried_axis_tilt, carried_axis_offset
        of the carried axis relative to the fixed one (axes not square, not crossing);
    device_tilt, device_offset
        of the device frame on its flange (beyond the pose declared for the device);
    azimuth_zero, other_zero
        true angle minus shown angle of the two axes;
    probe_offset, probe_tilt, probe_roll_zero
        of the probe: position in the lab frame, pointing, true roll minus shown roll.
    """

    fixed_axis_tilt: Vector3 = NO_SHIFT
    fixed_axis_offset: Vector3 = NO_SHIFT
    carried_axis_tilt: Vector3 = NO_SHIFT
    carried_axis_offset: Vector3 = NO_SHIFT
    device_tilt: Vector3 = NO_SHIFT
    device_offset: Vector3 = NO_SHIFT
    azimuth_zero: float = 0.0
    other_zero: float = 0.0
    probe_offset: Vector3 = NO_SHIFT
    probe_tilt: Vector3 = NO_SHIFT
    probe_roll_zero: float = 0.0


ALIGNED = Misalignment()


@lru_cache(maxsize=64)
def _tilted(vector: Vector3) -> FloatArray:
    """Return the rotation matrix of a rotation vector, read-only: every point of a scan asks for the same few."""
    matrix = from_rotation_vector(vector)
    matrix.setflags(write=False)
    return matrix


def axis_rotations(geometry: Geometry, *, first: ArrayLike, second: ArrayLike) -> tuple[FloatArray, FloatArray]:
    """Return (fixed-axis rotation, carried-axis rotation) matrices, each (..., 3, 3)."""
    a, b = np.broadcast_arrays(np.asarray(first, float), np.asarray(second, float))
    if geometry is Geometry.ROLL_OVER_AZIMUTH:
        return about_axis("y", -a), about_axis("z", -b)
    if geometry is Geometry.AZIMUTH_OVER_ELEVATION:
        return about_axis("x", b), about_axis("y", -a)
    return about_axis("y", -a), about_axis("x", b)


def device_to_lab(
    geometry: Geometry, *, first: ArrayLike, second: ArrayLike, misalignment: Misalignment = ALIGNED
) -> RigidMotion:
    """Return the rigid motion that carries device-frame points into the lab frame.

    Parameters
    ----------
    first, second
        Azimuth-like angle and roll or elevation angle in radians, broadcast to shape (...).
    misalignment
        Rigid errors of the range; the nominal range by default.
    """
    m = misalignment
    a, b = np.broadcast_arrays(np.asarray(first, float), np.asarray(second, float))
    fixed, carried = axis_rotations(geometry, first=a + m.azimuth_zero, second=b + m.other_zero)
    nothing = np.zeros(3)
    motion = RigidMotion.of(rotation=_tilted(m.device_tilt), shift=m.device_offset)
    motion = motion.then(RigidMotion(carried, nothing))
    motion = motion.then(RigidMotion.of(rotation=_tilted(m.carried_axis_tilt), shift=m.carried_axis_offset))
    motion = motion.then(RigidMotion(fixed, nothing))
    return motion.then(RigidMotion.of(rotation=_tilted(m.fixed_axis_tilt), shift=m.fixed_axis_offset))


def probe_to_lab(*, distance: float, roll: ArrayLike, misalignment: Misalignment = ALIGNED) -> RigidMotion:
    """Return the motion from the probe's own frame into the lab frame.

    In the probe's frame z points out of its aperture (towards the device), x is the
    polarization of port 1. At roll chi (radians) port 1 lies along
    cos chi x_L + sin chi y_L; `distance` is in metres.
    """
    chi = np.asarray(roll, dtype=np.float64) + misalignment.probe_roll_zero
    # Facing -z_L with x along x_L at chi = 0: a half turn about x_L, then the roll about z_L.
    facing = about_axis("z", chi) @ about_axis("x", np.pi)
    tilt = _tilted(misalignment.probe_tilt)
    shift = np.asarray(misalignment.probe_offset) + np.array([0.0, 0.0, distance])
    return RigidMotion(tilt @ facing, np.broadcast_to(shift, (*chi.shape, 3)))


@dataclass(frozen=True)
@holds_arrays
class Sighting:
    """What the probe sees: directions and unit vectors in the device frame, shape (..., 3)."""

    direction: FloatArray
    first_vector: FloatArray
    second_vector: FloatArray


def sighting(
    geometry: Geometry, *, first: ArrayLike, second: ArrayLike, misalignment: Misalignment = ALIGNED
) -> Sighting:
    """Return direction under test and the components seen at probe roll 0 and 90 deg.

    With misalignments the direction is the probe's position seen from the device-frame
    origin for an infinitely distant probe; unit vectors are the lab x and y axes.
    """
    rotation = device_to_lab(geometry, first=first, second=second, misalignment=misalignment).rotation
    return Sighting(rotation[..., 2, :], rotation[..., 0, :], rotation[..., 1, :])


def solutions(geometry: Geometry, direction: ArrayLike) -> list[tuple[float, float]]:
    """Return both pairs of angles (radians) that bring one direction onto the probe.

    On the geometry's pole the second angle is free; zero is chosen for it.
    """
    d = np.asarray(direction, dtype=np.float64)
    if geometry is Geometry.ROLL_OVER_AZIMUTH:
        theta, phi = (float(x) for x in theta_phi(d))
        if np.hypot(d[0], d[1]) < 1e-15:
            phi = 0.0
        return [(theta, _wrap(phi)), (-theta, _wrap(phi + np.pi))]
    if geometry is Geometry.AZIMUTH_OVER_ELEVATION:
        az, el = (float(x) for x in azimuth_over_elevation(d))
        if np.hypot(d[0], d[2]) < 1e-15:
            az = 0.0
        return [(az, el), (_wrap(az + np.pi), _wrap(np.pi - el))]
    az, el = (float(x) for x in elevation_over_azimuth(d))
    if np.hypot(d[1], d[2]) < 1e-15:
        el = 0.0
    return [(az, el), (_wrap(np.pi - az), _wrap(el + np.pi))]


def _wrap(angle: float) -> float:
    """Bring an angle to (-pi, pi]."""
    principal = float(wrapped(angle))
    return np.pi if np.isclose(principal, -np.pi, rtol=0.0, atol=1e-14) else principal


@dataclass(frozen=True)
class Positioner:
    """A geometry together with its two axis maps; the door between readouts and directions."""

    geometry: Geometry
    first: AxisMap = field(default_factory=AxisMap)
    second: AxisMap = field(default_factory=AxisMap)

    def sighting(
        self, *, first_deg: ArrayLike, second_deg: ArrayLike, misalignment: Misalignment = ALIGNED
    ) -> Sighting:
        """Return what the probe sees at controller readouts in degrees."""
        return sighting(
            self.geometry,
            first=np.deg2rad(self.first.angle_deg(first_deg)),
            second=np.deg2rad(self.second.angle_deg(second_deg)),
            misalignment=misalignment,
        )

    def readouts(self, direction: ArrayLike) -> list[tuple[float, float]]:
        """Return every pair of readouts (degrees) within limits that shows a direction.

        An empty list means the direction cannot be reached; see `reach_error` for the words.
        """
        pairs: list[tuple[float, float]] = []
        for a, b in solutions(self.geometry, direction):
            for first in self.first.readouts_within(float(np.rad2deg(a))):
                pairs += [(first, s) for s in self.second.readouts_within(float(np.rad2deg(b)))]
        return sorted(set(pairs), key=lambda pair: (abs(pair[0]) + abs(pair[1]), pair))

    def reach_error(self, direction: ArrayLike) -> str:
        """Say in plain words which limits keep a direction out of reach."""
        names = self.geometry.axis_names
        wanted = "; or ".join(
            f"{names[0]} {np.rad2deg(a):.3f} deg with {names[1]} {np.rad2deg(b):.3f} deg"
            for a, b in solutions(self.geometry, direction)
        )
        return (
            f"direction out of reach: needs {wanted}; limits {names[0]} "
            f"{self.first.min_deg:g}..{self.first.max_deg:g} deg, {names[1]} "
            f"{self.second.min_deg:g}..{self.second.max_deg:g} deg (readouts)"
        )
