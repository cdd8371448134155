"""Where in the room the energy comes from that is not the device's.

A wave that leaves the turning device in a fixed direction of the room, and reaches the probe by way
of a wall, reads like the device's own far field in that direction, whatever the wall does to its
strength, phase and polarization (one complex 2 x 2 matrix). Much of it looks like waves of the
device and stays in the result; the rest does not fit, and which direction explains it best is the map.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np

from colure.analysis.steps.assemble import MeasuredSphere
from colure.analysis.steps.far_field import FarFieldStep
from colure.analysis.stray.mirrors import Wall
from colure.geometry.conventions import SPEED_OF_LIGHT, ComplexArray, FloatArray, amplitude_db, power_db, wavenumber
from colure.geometry.directions import azimuth_over_elevation, tangents, unit_vector
from colure.geometry.kinematics import Geometry
from colure.model.bands import evenly_spaced
from colure.values import holds_arrays
from colure.waves.expansion import Expansion

#: Directions that are worked out together; bounds the memory.
BLOCK = 24
#: Readings of directions are kept up to this size, bytes.
MOST_KEPT = 200_000_000
#: Around a maximum the map is drawn finer in these steps, degrees.
FINER_DEG = (6.0, 2.0)
#: An echo that explains less of the rest than this is not named.
LEAST_SHARE = 0.05
#: A mode filter that keeps more than this share of the degrees shows no more than the scan itself.
WORTH_FILTERING = 0.8
#: Nearer to the direct ray than this (resolutions of the array of poses), nothing can be told apart.
DIRECT_DEG = 12.0


@dataclass(frozen=True, kw_only=True)
class Echo:
    """One echo: where it leaves the axes' intersection (lab frame, seen from the probe's direction), how strong, how late.

    azimuth_deg, elevation_deg
        Towards +x (right when seen from the probe) and up.
    level_db
        Rms over the scan relative to the device's peak.
    share
        Part of what does not fit the device that this echo explains.
    excess_m, resolution_m
        Way beyond the direct one, and what the band resolves; None where one frequency was measured.
    """

    azimuth_deg: float
    elevation_deg: float
    level_db: float
    share: float
    excess_m: float | None
    resolution_m: float | None

    @property
    def place(self) -> str:
        """The direction in words, seen by somebody who stands at the probe and looks at the device."""
        if abs(self.elevation_deg) > 60.0:
            return "the ceiling" if self.elevation_deg > 0.0 else "the floor"
        height = "" if abs(self.elevation_deg) < 15.0 else ", upper part" if self.elevation_deg > 0 else ", lower part"
        side = "right" if self.azimuth_deg > 0.0 else "left"
        turned = abs(self.azimuth_deg)
        if turned < 20.0 and height:
            return "the ceiling in front" if self.elevation_deg > 0 else "the floor in front"
        wall = (
            "the probe's side"
            if turned < 20.0
            else f"the {side} wall"
            if turned < 140.0
            else "the wall behind the device"
        )
        return wall + height


@dataclass(frozen=True)
@holds_arrays
class EchoMap:
    """The map: unit vectors (direction, 3) in the lab frame, the share (direction,) each explains, and the echoes named."""

    directions: FloatArray
    share: FloatArray
    echoes: tuple[Echo, ...]
    rest_db: float


def echo_map(
    sphere: MeasuredSphere,
    step: FarFieldStep,
    device: Expansion,
    geometry: Geometry,
    *,
    step_deg: float = 15.0,
    rotation: FloatArray | None = None,
) -> EchoMap:
    """Map what does not fit the device over the directions of the room, and name the echoes.

    Parameters
    ----------
    device
        What the scan made of the device.
    step_deg
        Grid of the map; maxima are looked at more finely.
    rotation
        Device frame to lab at every direction (theta, column, 3, 3) where joints hold the device; else as two axes do.

    Raises
    ------
    ValueError
        If the scan is not a whole sphere with both polarizations.
    """
    if not sphere.whole or sphere.one_polarization:
        raise ValueError("echo map: needs a whole sphere in both polarizations; part of one fits anything (deg)")
    middle = sphere.frequency_hz.size // 2
    own = step.own_waves
    if own is not None and own.order(float(device.k[middle])) > WORTH_FILTERING * step.keep_order:
        # About its own centre the device needs hardly fewer waves: what the filter takes out is next to nothing.
        step = replace(step, own_waves=None)
    wall = Wall(sphere, step, device, geometry, rotation=rotation)
    rest = wall.outside(sphere.field[middle], middle)
    directions = _grid(step_deg)
    # The grid is asked once more for every echo that is taken out: its readings are kept as far as they fit.
    grid = _Looked(wall, directions, middle)
    share = grid.shares(rest)
    echoes: list[Echo] = []
    left, seen = rest, share
    for _ in range(3):
        d = directions[int(np.argmax(seen))]
        for finer in FINER_DEG:
            near = _around(d, finer)
            d = near[int(np.argmax(_Looked(wall, near, middle, keep=False).shares(left)))]
        echo, left, explained = _taken_out(wall, sphere, left, rest, d, middle)
        if explained < LEAST_SHARE:
            break
        echoes.append(echo)
        seen = grid.shares(left)
    peak = float(np.abs(sphere.field[middle]).max())
    weight = float(np.sum(np.sin(sphere.theta)) * sphere.phi.size)
    rest_db = amplitude_db(float(np.linalg.norm(rest)) / np.sqrt(weight) / peak, least=1e-10)
    return EchoMap(directions, share, tuple(echoes), float(rest_db))


def _grid(step_deg: float) -> FloatArray:
    """Return directions about evenly spread over the room, the direct ray left out."""
    rings = []
    for polar in np.arange(step_deg, 180.0 + 0.5 * step_deg, step_deg):
        theta = np.deg2rad(min(float(polar), 180.0))
        count = max(1, round(360.0 * float(np.sin(theta)) / step_deg))
        turn = np.arange(count) * 2.0 * np.pi / count
        rings.append(unit_vector(theta=np.full(count, theta), phi=turn))
    every = np.concatenate(rings)
    return np.asarray(every[every[:, 2] < np.cos(np.deg2rad(DIRECT_DEG))])


def _around(d: FloatArray, size_deg: float) -> FloatArray:
    """Return a direction and its eight neighbours `size_deg` away, the direction itself first."""
    first, second = tangents(d)
    a, b = (np.deg2rad(size_deg) * g.ravel() for g in np.meshgrid(*2 * [np.arange(-1, 2)], indexing="ij"))
    near = d + np.tan(a)[:, None] * first + np.tan(b)[:, None] * second
    return np.concatenate([d[None], near / np.linalg.norm(near, axis=-1, keepdims=True)])


def _fit(readings: ComplexArray, rest: ComplexArray) -> ComplexArray:
    """Return least-squares weights (direction, 4) of readings (direction, 4, ...) for the rest."""
    flat, wanted = readings.reshape(*readings.shape[:2], -1), rest.ravel()
    gram = flat.conj() @ flat.swapaxes(1, 2)
    size = np.trace(gram, axis1=1, axis2=2).real[:, None, None]
    right = flat.conj() @ wanted
    return np.asarray(np.linalg.solve(gram + 1e-9 * size * np.eye(4), right[..., None])[..., 0])


class _Looked:
    """Directions that the rest is held against, with what waves by way of walls there leave outside the device's."""

    def __init__(self, wall: Wall, directions: FloatArray, index: int, *, keep: bool = True) -> None:
        self._wall, self._directions, self._index = wall, directions, index
        one = 16 * 4 * int(np.prod(wall.shape))
        self._kept: dict[int, ComplexArray] | None = {} if keep and one * len(directions) <= MOST_KEPT else None

    def _outside(self, start: int) -> ComplexArray:
        if self._kept is not None and start in self._kept:
            return self._kept[start]
        readings = self._wall.readings(self._directions[start : start + BLOCK], self._index)
        outside = self._wall.outside(readings, self._index)
        if self._kept is not None:
            self._kept[start] = outside
        return outside

    def shares(self, rest: ComplexArray) -> FloatArray:
        """Return the share of the rest's power that each direction explains, (direction,)."""
        power, out = float(np.linalg.norm(rest) ** 2), []
        for start in range(0, len(self._directions), BLOCK):
            outside = self._outside(start)
            weights = _fit(outside, rest)
            right = outside.conj().reshape(*outside.shape[:2], -1) @ rest.ravel()
            out.append(np.sum(weights.conj() * right, axis=1).real / power)
        return np.concatenate(out)


def _taken_out(
    wall: Wall, sphere: MeasuredSphere, left: ComplexArray, rest: ComplexArray, d: FloatArray, index: int
) -> tuple[Echo, ComplexArray, float]:
    """Return (the echo, the rest without it, the share of the whole rest that it explains)."""
    readings = wall.readings(d[None], index)
    outside = wall.outside(readings, index)
    weights = _fit(outside, left)[0]
    without = left - np.tensordot(weights, outside[0], 1)
    share = float((np.linalg.norm(left) ** 2 - np.linalg.norm(without) ** 2) / np.linalg.norm(rest) ** 2)
    whole = np.tensordot(weights, readings[0], 1)
    power = np.sum(np.abs(whole) ** 2 * np.sin(sphere.theta)[:, None]) / (
        np.sum(np.sin(sphere.theta)) * sphere.phi.size
    )
    level = power_db(float(power) / float(np.max(np.sum(np.abs(sphere.field[index]) ** 2, axis=0))))
    place = azimuth_over_elevation(d)
    excess, resolution = _excess(wall, sphere, d)
    echo = Echo(
        azimuth_deg=float(np.rad2deg(place[0])), elevation_deg=float(np.rad2deg(place[1])), level_db=float(level),
        share=share, excess_m=excess, resolution_m=resolution
    )  # fmt: skip
    return echo, without, share


def _excess(wall: Wall, sphere: MeasuredSphere, d: FloatArray) -> tuple[float | None, float | None]:
    """Return how much longer the way by a wall is, and what the band resolves, metres."""
    frequency = sphere.frequency_hz
    if frequency.size < 3 or not evenly_spaced(frequency):
        return None, None
    weights = []
    for index, rest in enumerate(wall.rests):
        weights.append(_fit(wall.outside(wall.readings(d[None], index), index), rest)[0])
    k = wavenumber(frequency)
    resolution = SPEED_OF_LIGHT / float(np.ptp(frequency))
    alias = SPEED_OF_LIGHT / float(np.max(np.diff(frequency)))
    way = np.arange(0.0, alias, 0.02 * resolution)
    power = np.sum(np.abs(np.exp(1j * way[:, None] * k) @ np.stack(weights)) ** 2, axis=1)
    return float(way[int(np.argmax(power))]), resolution
