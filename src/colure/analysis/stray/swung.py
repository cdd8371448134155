"""Rooms around a mount that swings the probe: every sample looks into the room from another place.

Turned so that the probe stands still, the device turns as on two axes and the walls turn around it: a wall is a normal that
differs from sample to sample.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np

from colure.analysis.steps.assemble import MeasuredSphere, angles_of, azimuths, finer_columns
from colure.analysis.stray.held import HeldPasses
from colure.analysis.stray.mirrors import FARTHEST_WALL as FARTHEST_BESIDE
from colure.analysis.stray.mirrors import NEAREST_WALL as NEAREST_BESIDE
from colure.geometry.conventions import ComplexArray, FloatArray, wavenumber
from colure.geometry.directions import phi_hat, tangents, theta_hat, theta_phi, unit_vector
from colure.geometry.kinematics import Geometry, device_to_lab
from colure.values import holds_arrays
from colure.waves.expansion import Expansion
from colure.waves.scattered import Sampler

#: Walls of a room in which a probe swings: on every side, this far from the axes' intersection in range lengths, not quite
#: square, with this spread of their reflections, and so much of a wave depolarized (common practice, no source).
NEAREST_WALL, FARTHEST_WALL, WALL_TILT_DEG, WALL_SPREAD_DB, DEPOLARIZES_DB = 1.1, 2.2, 5.0, 5.0, -12.0
#: Accuracy of the field that leaves for the walls: the model of a wall is no better.
ACCURACY = 1e-5
#: The probe's responses are looked up on a grid of directions this fine, degrees.
LOOKED_UP_DEG = 3.0


@dataclass(frozen=True)
@holds_arrays
class SurroundingRoom:
    """Walls of one room: normals (wall, 3), distances (wall,), reflections (wall,), and what they turn round (wall, 2, 2)."""

    normals: FloatArray
    away_m: FloatArray
    strength: ComplexArray
    astray: ComplexArray

    def wall(self, number: int) -> SurroundingRoom:
        """Return the room with one of its walls alone."""
        one = slice(number, number + 1)
        return SurroundingRoom(self.normals[one], self.away_m[one], self.strength[one], self.astray[one])


def drawn_room(random: np.random.Generator, range_m: float, *, standing: bool = False) -> SurroundingRoom:
    """Draw a room; around a probe that stands, walls may be nearer, and the one behind the probe is not heard."""
    normals = np.concatenate([np.eye(3)[: 2 if standing else 3], -np.eye(3)])
    normals = normals + random.normal(0.0, np.deg2rad(WALL_TILT_DEG), normals.shape)
    normals /= np.linalg.norm(normals, axis=1, keepdims=True)
    count = len(normals)
    strength = 10.0 ** (-random.exponential(WALL_SPREAD_DB, count) / 20.0) * np.exp(2j * np.pi * random.random(count))
    raw = random.normal(size=(2, count, 2, 2)) / 2.0
    nearest, farthest = (NEAREST_BESIDE, FARTHEST_BESIDE) if standing else (NEAREST_WALL, FARTHEST_WALL)
    away = range_m * random.uniform(nearest, farthest, count)
    return SurroundingRoom(normals, away, strength, 10.0 ** (DEPOLARIZES_DB / 20.0) * (raw[0] + 1j * raw[1]))


class Hearing:
    """A probe's two responses (..., 2, 3) looked up by the direction of travel in the probe's own lab."""

    def __init__(self, hears: Callable[[FloatArray], ComplexArray]) -> None:
        self._rows = round(180.0 / LOOKED_UP_DEG) + 1
        self._columns = 2 * (self._rows - 1)
        t, p = np.meshgrid(
            np.linspace(0.0, np.pi, self._rows), np.arange(self._columns) * 2.0 * np.pi / self._columns, indexing="ij"
        )
        d = unit_vector(theta=t, phi=p)
        # Straight backwards the responses of a beam are not defined; nothing is heard there.
        d[-1, :, 2] = -0.999999
        responses = hears(d.reshape(-1, 3)).reshape(self._rows, self._columns, 2, 3)
        self._table = np.nan_to_num(responses)

    def at(self, travel: FloatArray) -> ComplexArray:
        """Return the responses to waves along directions (..., 3), interpolated linearly."""
        t, p = theta_phi(travel)
        row = t / np.pi * (self._rows - 1)
        column = np.mod(p, 2.0 * np.pi) / (2.0 * np.pi) * self._columns
        i, j = np.minimum(row.astype(int), self._rows - 2), column.astype(int) % self._columns
        a, b = (row - i)[..., None, None], (column - np.floor(column))[..., None, None]
        k = (j + 1) % self._columns
        table = self._table
        return np.asarray(
            (1 - a) * ((1 - b) * table[i, j] + b * table[i, k]) + a * ((1 - b) * table[i + 1, j] + b * table[i + 1, k])
        )


class SwungWalls:
    """What a room adds to a sphere that a swinging probe measured."""

    def __init__(
        self,
        sphere: MeasuredSphere,
        device: Expansion,
        range_m: float,
        held: HeldPasses,
        hears: Callable[[FloatArray], ComplexArray],
    ) -> None:
        """Take the poses in which every measured direction was read, and the range's length."""
        self._range, self._total, self._k = range_m, sphere.phi.size, wavenumber(sphere.frequency_hz)
        self._held = held
        first, second = angles_of(sphere, Geometry.ROLL_OVER_AZIMUTH)
        self._rotation = device_to_lab(Geometry.ROLL_OVER_AZIMUTH, first=first, second=second).rotation
        # The turns of the room that let the probe stand still.
        self._turns = self._rotation @ np.swapaxes(held.rotations, -1, -2)
        columns = first.shape[1]
        phi = azimuths(sphere, columns)
        t, p = np.meshgrid(sphere.theta, phi, indexing="ij")
        own = np.stack([theta_hat(theta=t, phi=p), phi_hat(theta=t, phi=p)], axis=-2)
        seen = np.einsum("...ij,...cj->...ci", self._rotation, own)
        self._probe = np.moveaxis(seen[..., :2], (-2, -1), (0, 1))  # component, lab axis, theta, column
        self._samplers = [Sampler(one) for one in device.coefficients]
        self._hearing = Hearing(hears)

    def stray(self, room: SurroundingRoom) -> ComplexArray:
        """Return what a room adds to the field (frequency, 2, theta, phi); the level is arbitrary."""
        return finer_columns(
            self._held.read([self._met(room, *pose) for pose in zip(self._turns, self._held.places, strict=True)]),
            self._total,
        )

    def _met(self, room: SurroundingRoom, turned: FloatArray, place: FloatArray) -> ComplexArray:
        """Return what passes in one pose meet of a room, (frequency, 2, theta, column)."""
        shape = self._probe.shape[2:]
        out = np.zeros((self._k.size, 2, *shape), complex)
        for wall in range(len(room.normals)):
            normal = turned @ room.normals[wall]
            direction, way, travel = self._way(normal, room.away_m[wall] - place @ room.normals[wall])
            t, p = theta_phi(np.einsum("...ji,...j->...i", self._rotation, direction))
            local = np.stack([theta_hat(theta=t, phi=p), phi_hat(theta=t, phi=p)], axis=-2)
            across = np.einsum("...ij,...tj->...ti", self._rotation, local)
            mirror = self._mirror(room, wall, normal, across, travel)
            turn = room.strength[wall] * self._range / (self._range + way) * np.exp(-1j * self._k[:, None, None] * way)
            for f, sampler in enumerate(self._samplers):
                e = sampler.at(t, p, accuracy=ACCURACY).reshape(2, *shape)
                lab = np.einsum("...at,t...->a...", mirror, e) * turn[f]
                out[f] += np.einsum("ca...,a...->c...", self._probe, lab)
        return out

    def _way(self, normal: FloatArray, away: FloatArray) -> tuple[FloatArray, FloatArray, FloatArray]:
        """Return where waves leave for a wall (..., 3), how much longer that way is, and how they travel at the probe."""
        probe = np.array([0.0, 0.0, self._range])
        image = probe + 2.0 * (away - normal @ probe)[..., None] * normal
        far = np.linalg.norm(image, axis=-1)
        arrival = probe - 2.0 * away[..., None] * normal
        return image / far[..., None], far - self._range, arrival / np.linalg.norm(arrival, axis=-1, keepdims=True)

    def _mirror(
        self, room: SurroundingRoom, wall: int, normal: FloatArray, across: FloatArray, travel: FloatArray
    ) -> ComplexArray:
        """Return what the probe hears along the lab's x and y of the wave's components (..., 2, 2)."""
        turned = 2.0 * np.einsum("...i,...ti->...t", normal, across)[..., None] * normal[..., None, :] - across
        heard = self._hearing.at(travel)
        plain = np.einsum("...ai,...ti->...at", heard, turned)
        loud = np.linalg.norm(heard, axis=(-2, -1)) / np.sqrt(2.0)
        return np.asarray(plain + room.astray[wall] * loud[..., None, None])

    def to_horn(self, room: SurroundingRoom) -> tuple[FloatArray, FloatArray, ComplexArray]:
        """Return directions (wall, 3), longer ways (wall,) and mirrors (wall, 2, 2) in the reference position."""
        directions, ways, mirrors = [], [], []
        for wall, normal in enumerate(room.normals):
            direction, way, travel = self._way(normal, room.away_m[wall])
            mirror = self._mirror(room, wall, normal, np.stack(tangents(direction)), travel)
            directions.append(direction)
            ways.append(way)
            mirrors.append(room.strength[wall] * self._range / (self._range + way) * mirror)
        return np.array(directions), np.array(ways), np.array(mirrors)
