"""The walls that a compact chamber could have, and what the probe hears of waves that come by way of them."""

from __future__ import annotations

from collections.abc import Callable, Iterator

import numpy as np

from colure.analysis.assembly import MeasuredSphere
from colure.analysis.echo_map import Wall
from colure.analysis.figures.cuts import FarField
from colure.analysis.nearfield import FarFieldStep
from colure.geometry.conventions import ComplexArray, FloatArray, wavenumber
from colure.geometry.directions import tangents
from colure.geometry.kinematics import Geometry
from colure.waves.expansion import Expansion

#: Walls of a compact chamber: distance from the crossing in range lengths, tilt, and spread of their reflections.
NEAREST_WALL, FARTHEST_WALL, WALL_TILT_DEG, WALL_SPREAD_DB, WALL_DEPOLARIZES_DB = 0.45, 1.0, 5.0, 5.0, -12.0


def hearing(probe: Expansion | None, gain_dbi: float) -> Callable[[FloatArray], ComplexArray]:
    """Return what gives the probe's two unit responses (n, 2, 3) to waves that travel along directions (n, 3) of the lab.

    The two are the probe as it is and rolled by 90 deg; on its axis they are the lab's x and y. Without a pattern it
    is a Gaussian beam of its gain, exp(-c a^2) with gain 8 c, which carries a wave to its axis without turning it.
    """
    if probe is None:
        bend = 10.0 ** (gain_dbi / 10.0) / 8.0

        def beam(travel: FloatArray) -> ComplexArray:
            aside = np.arccos(np.clip(travel[:, 2], -1.0, 1.0))
            carry = np.zeros((len(travel), 2, 3))
            carry[:, :, :2] = np.eye(2)
            carry[:, :, 2] = -travel[:, :2] / (1.0 + travel[:, 2:])
            return np.asarray(carry * np.exp(-bend * np.minimum(aside, 0.5 * np.pi) ** 2)[:, None, None])

        return beam
    own = FarField(probe.coefficients[len(probe.coefficients) // 2])
    on_axis = own.at(np.array([[0.0, 0.0, 1.0]]))[0, 0]
    # The probe looks back at the device: its own axes are the lab's x, -y and -z.
    back = np.array([1.0, -1.0, -1.0])
    quarter = np.array([[0.0, -1.0, 0.0], [1.0, 0.0, 0.0], [0.0, 0.0, 1.0]])  # x of the lab to y

    def pattern(travel: FloatArray) -> ComplexArray:
        both = own.at(np.concatenate([-travel * back, (-travel @ quarter) * back])) / on_axis * back
        return np.stack([both[: len(travel)], both[len(travel) :] @ quarter.T], axis=1)

    return pattern


def draw_walls(
    random: np.random.Generator, range_m: float, hears: Callable[[FloatArray], ComplexArray]
) -> tuple[FloatArray, FloatArray, ComplexArray]:
    """Return where waves leave for the walls of a rectangular room (wall, 3), how much longer that way is, and the mirrors.

    Side walls, floor, ceiling and the wall behind the device, anywhere from `NEAREST_WALL` to `FARTHEST_WALL` range
    lengths away and not quite square to the axes (common practice, no source): the direction of the probe's image.
    A mirror (wall, 2, 2) turns the wave's two components there into those along the lab's x and y: as a plane
    conductor does, weaker, and with some of it depolarized. `hears` gives the probe's responses.
    """
    normals = np.array([[1.0, 0, 0], [-1.0, 0, 0], [0, 1.0, 0], [0, -1.0, 0], [0, 0, -1.0]])
    count = len(normals)
    normals = normals + random.normal(0.0, np.deg2rad(WALL_TILT_DEG), normals.shape)
    normals /= np.linalg.norm(normals, axis=1, keepdims=True)
    away = range_m * random.uniform(NEAREST_WALL, FARTHEST_WALL, count)
    probe = np.array([0.0, 0.0, range_m])
    image = probe + 2.0 * (away - normals @ probe)[:, None] * normals
    far = np.linalg.norm(image, axis=1)
    directions = image / far[:, None]
    strength = 10.0 ** (-random.exponential(WALL_SPREAD_DB, count) / 20.0) * range_m / far
    phase = np.exp(2j * np.pi * random.random(count))
    across = np.array([tangents(d) for d in directions])  # wall, tangent, 3
    turned = 2.0 * np.einsum("wi,wti->wt", normals, across)[..., None] * normals[:, None] - across
    # The probe looks at the device; what comes from aside it hears less.
    arrival = probe - 2.0 * away[:, None] * normals
    heard = hears(arrival / np.linalg.norm(arrival, axis=1, keepdims=True))
    plain = np.einsum("wai,wti->wat", heard, turned)  # wall, lab axis, tangent
    raw = (
        random.normal(size=(2, *plain.shape))
        / np.sqrt(2.0)
        * np.linalg.norm(heard, axis=(1, 2))[:, None, None]
        / np.sqrt(2.0)
    )
    mirror = plain + 10.0 ** (WALL_DEPOLARIZES_DB / 20.0) * (raw[0] + 1j * raw[1])
    return directions, far - range_m, (strength * phase)[:, None, None] * mirror


def stray_fields(
    sphere: MeasuredSphere,
    step: FarFieldStep,
    geometry: Geometry,
    *,
    range_m: float,
    hears: Callable[[FloatArray], ComplexArray],
    rooms: int,
    phases: int,
    seed: int,
) -> Iterator[ComplexArray]:
    """Yield what drawn rooms add to a scan of both polarizations, (phase, frequency, 2, theta, phi), one room after another.

    The walls of a room stay where they are, and the phases of their echoes are drawn `phases` times: the costly part of
    a room is where it sends the device's waves. The level is arbitrary.
    """
    random = np.random.default_rng(seed)
    wall = Wall(sphere, step, step.expansion(sphere.field), geometry)
    k = wavenumber(sphere.frequency_hz)
    for _ in range(rooms):
        directions, way, mirror = draw_walls(random, range_m, hears)
        shape = (phases, 1, len(way))
        turn = np.exp(2j * np.pi * random.random(shape)) * np.exp(-1j * k[:, None] * way)
        yield wall.through_mirrors(directions, mirror * turn[..., None, None])
