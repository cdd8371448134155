"""Rooms that a chamber could be: stray signals as the device's own waves that walls send back to the probe."""

from __future__ import annotations

from collections.abc import Callable

import numpy as np

from colure.analysis.assembly import MeasuredSphere
from colure.analysis.bench import Bench, Inputs
from colure.analysis.echo_map import Wall
from colure.analysis.figures.cuts import FarField
from colure.geometry.conventions import ComplexArray, FloatArray, wavenumber
from colure.geometry.directions import tangents
from colure.waves.expansion import Expansion
from colure.waves.horn import horn_aside, horn_gain_dbi

#: How well an aperture's field tells a horn's far side lobes: what runs around its rim is left out (common practice, no source).
RIM_DB = 3.5
#: Walls of a compact chamber: distance from the crossing in range lengths, tilt, and spread of their reflections.
NEAREST_WALL, FARTHEST_WALL, WALL_TILT_DEG, WALL_SPREAD_DB, WALL_DEPOLARIZES_DB = 0.45, 1.0, 5.0, 5.0, -12.0


def in_a_room(bench: Bench, level: float, random: np.random.Generator) -> Callable[[], Expansion]:
    """Return draws of the result with reflections from unknown directions of the room, rms `level` below the peak.

    The device turns, the room stands: its waves come back as its own far field in a fixed direction of the
    room, through a mirror of unknown strength, polarization and way. What looks like the device stays in.
    """
    sphere, step = bench.inputs.sphere, bench.inputs.step
    geometry = bench.inputs.chamber.positioner.geometry
    wall = Wall(sphere, step, bench.nominal, geometry)
    k = wavenumber(sphere.frequency_hz)
    middle = k.size // 2
    weight = np.sin(sphere.theta)[:, None]
    intensity = np.sum(np.abs(sphere.field[middle]) ** 2, axis=0)
    row, column = (int(i) for i in np.unravel_index(int(np.argmax(intensity)), intensity.shape))
    peak = float(np.sqrt(intensity[row, column]))

    length = bench.inputs.chamber.range_length_m
    hears = _hearing(bench.inputs)

    def draw() -> Expansion:
        directions, way, mirror = _walls(random, length, hears)
        turn = np.exp(-1j * k[:, None] * way)[..., None, None]
        (stray,) = wall.through_mirrors(directions, (mirror * turn)[None])
        # The reference stood in the same room: its own echo is in every level.
        rim = 10.0 ** (random.normal(0.0, RIM_DB / 20.0, len(way)))
        common = np.einsum("fwt,wt,fw,w->f", _of_reference(bench, directions), mirror[:, 0], turn[..., 0, 0], rim)
        if sphere.one_polarization:
            stray = _along_the_probe(sphere, stray, bench.inputs.slant)
        # The declared level is that of one reading: half of both components together.
        power = 0.5 * np.sum(np.abs(stray[middle]) ** 2 * weight) / (np.sum(weight) * sphere.phi.size)
        scale = level * peak / float(np.sqrt(max(power, 1e-300)))
        return step.expansion((sphere.field + scale * stray) * (1.0 - scale * common)[:, None, None, None])

    return draw


def shared_power(nominal: Expansion, rooms: ComplexArray) -> FloatArray:
    """Return the mean square (frequency,), in dB of the radiated power, of what drawn rooms have in common with the record's own.

    The record holds one room already, and power is a square: a draw meets that room as well as the device. Draws
    (draw, frequency, 2, J) meet each other in the same way, so their pairs tell how much of the variance this is.
    """
    flat = np.moveaxis(rooms.reshape(*rooms.shape[:2], -1), 1, 0)  # frequency, draw, wave
    met = 2.0 * (flat.conj() @ np.swapaxes(flat, 1, 2)).real / nominal.power()[:, None, None]
    pairs = met[:, ~np.eye(len(rooms), dtype=bool)]
    return np.asarray(np.mean((10.0 / np.log(10.0) * pairs) ** 2, axis=-1))


def _of_reference(bench: Bench, directions: FloatArray) -> ComplexArray:
    """Return what the reference horn sends towards walls (frequency, wall, tangent), over what it lays on its axis."""
    horn, frequency_hz = bench.inputs.chamber.reference, bench.inputs.sphere.frequency_hz
    sides = {
        "a": 1e-3 * horn.aperture_a_mm,
        "b": 1e-3 * horn.aperture_b_mm,
        "slant_e": 1e-3 * horn.slant_e_mm,
        "slant_h": 1e-3 * horn.slant_h_mm,
    }
    sent = horn_aside(frequency_hz, directions, **sides)
    # So near, the horn lays less on its axis than its far field would.
    near = horn_gain_dbi(frequency_hz, **sides, distance=bench.inputs.chamber.range_length_m)
    over = 10.0 ** ((horn_gain_dbi(frequency_hz, **sides) - near) / 20.0)
    return np.asarray(
        np.einsum("fwi,wti->fwt", over[:, None, None] * sent, np.array([tangents(d) for d in directions]))
    )


def _hearing(inputs: Inputs) -> Callable[[FloatArray], ComplexArray]:
    """Return what gives the probe's two unit responses (n, 2, 3) to waves that travel along directions (n, 3) of the lab.

    The two are the probe as it is and rolled by 90 deg; on its axis they are the lab's x and y. Without a pattern it
    is a Gaussian beam of its gain, exp(-c a^2) with gain 8 c, which carries a wave to its axis without turning it.
    """
    if inputs.probe is None:
        bend = 10.0 ** (inputs.chamber.probe.gain_dbi / 10.0) / 8.0

        def beam(travel: FloatArray) -> ComplexArray:
            aside = np.arccos(np.clip(travel[:, 2], -1.0, 1.0))
            carry = np.zeros((len(travel), 2, 3))
            carry[:, :, :2] = np.eye(2)
            carry[:, :, 2] = -travel[:, :2] / (1.0 + travel[:, 2:])
            return np.asarray(carry * np.exp(-bend * np.minimum(aside, 0.5 * np.pi) ** 2)[:, None, None])

        return beam
    own = FarField(inputs.probe.coefficients[len(inputs.probe.coefficients) // 2])
    on_axis = own.at(np.array([[0.0, 0.0, 1.0]]))[0, 0]
    # The probe looks back at the device: its own axes are the lab's x, -y and -z.
    back = np.array([1.0, -1.0, -1.0])
    quarter = np.array([[0.0, -1.0, 0.0], [1.0, 0.0, 0.0], [0.0, 0.0, 1.0]])  # x of the lab to y

    def pattern(travel: FloatArray) -> ComplexArray:
        plain = own.at(-travel * back) / on_axis * back
        rolled = (own.at((-travel @ quarter) * back) / on_axis * back) @ quarter.T
        return np.stack([plain, rolled], axis=1)

    return pattern


def _walls(
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


def _along_the_probe(sphere: MeasuredSphere, field: ComplexArray, slant: float) -> ComplexArray:
    """Return what a single probe that follows the roll would have made of a field (..., 2, theta, phi)."""
    c, s = np.cos(slant - sphere.phi), np.sin(slant - sphere.phi)
    read = field[:, 0] * c + field[:, 1] * s
    return np.stack([read * c, read * s], axis=1)
