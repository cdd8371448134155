"""The walls that a compact chamber could have, and what the probe hears of waves that come by way of them."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from functools import cached_property

import numpy as np

from colure.analysis.figures.cuts import FarField
from colure.analysis.steps.assemble import MeasuredSphere, angles_of, azimuths, finer_columns
from colure.analysis.steps.far_field import FarFieldStep
from colure.analysis.stray.turning_rings import TurningRings
from colure.geometry.conventions import ComplexArray, FloatArray, wavenumber
from colure.geometry.directions import phi_hat, tangents, theta_hat, theta_phi
from colure.geometry.kinematics import Geometry, device_to_lab
from colure.model.chamber import Chamber
from colure.waves.circles import Circles
from colure.waves.expansion import Expansion
from colure.waves.horn import horn_aside, horn_gain_dbi
from colure.waves.scattered import Sampler, synthesis_at

#: Walls of a compact chamber: distance from the axes' intersection in range lengths, tilt, and spread of their reflections.
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
    random: np.random.Generator,
    range_m: float,
    hears: Callable[[FloatArray], ComplexArray],
    excess_m: tuple[float, ...] = (),
) -> tuple[FloatArray, FloatArray, ComplexArray]:
    """Return where waves leave for the walls of a rectangular room (wall, 3), how much longer that way is, and the mirrors.

    Side walls, floor, ceiling and the wall behind the device, anywhere from `NEAREST_WALL` to `FARTHEST_WALL` range
    lengths away and not quite at right angles to the axes (common practice, no source): the direction of the probe's image.
    A mirror (wall, 2, 2) turns the wave's two components there into those along the lab's x and y: as a plane
    conductor does, weaker, and with some of it depolarized. `hears` gives the probe's responses. Where the extra paths of
    known echoes are declared, every wall has one of them.
    """
    normals = np.array([[1.0, 0, 0], [-1.0, 0, 0], [0, 1.0, 0], [0, -1.0, 0], [0, 0, -1.0]])
    count = len(normals)
    normals = normals + random.normal(0.0, np.deg2rad(WALL_TILT_DEG), normals.shape)
    normals /= np.linalg.norm(normals, axis=1, keepdims=True)
    away = range_m * random.uniform(NEAREST_WALL, FARTHEST_WALL, count)
    if excess_m:
        # |2 d n - R z| = R + excess, solved for the distance d.
        far, along = range_m + random.choice(excess_m, count), range_m * normals[:, 2]
        away = 0.5 * (along + np.sqrt(along**2 + far**2 - range_m**2))
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


def of_reference(chamber: Chamber, frequency_hz: FloatArray, directions: FloatArray) -> ComplexArray:
    """Return what the reference horn sends towards walls (frequency, wall, tangent), over what it lays on its axis."""
    horn = chamber.reference
    if not horn.absolute:
        return np.zeros((frequency_hz.size, len(directions), 2), complex)
    sides = dict(zip(("a", "b", "slant_e", "slant_h"), horn.sides_m, strict=True))
    sent = horn_aside(frequency_hz, directions, **sides)
    # So near, the horn lays less on its axis than its far field would.
    near = horn_gain_dbi(frequency_hz, **sides, distance=chamber.range_length_m)
    over = 10.0 ** ((horn_gain_dbi(frequency_hz, **sides) - near) / 20.0)
    return np.asarray(
        np.einsum("fwi,wti->fwt", over[:, None, None] * sent, np.array([tangents(d) for d in directions]))
    )


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


#: Accuracy of the field that leaves for the walls: the model of a wall is no better.
ACCURACY = 1e-5


class Wall:
    """What every direction of the room would add to a scan: four readings for a wall of any polarization."""

    def __init__(
        self,
        sphere: MeasuredSphere,
        step: FarFieldStep,
        device: Expansion,
        geometry: Geometry,
        *,
        rotation: FloatArray | None = None,
    ) -> None:
        """Take a scan, and what was found of its device.

        rotation
            Device frame to lab at every direction (theta, column, 3, 3) where joints hold the device; else as two axes do.
        """
        self._sphere, self._step, self._device = sphere, step, device
        first, second = angles_of(sphere, geometry)
        if rotation is None:
            rotation = device_to_lab(geometry, first=first, second=second).rotation
        self._rotation = rotation
        # The polar vectors of every direction as the probe sees them, in the room.
        columns = first.shape[1]
        phi = azimuths(sphere, columns)
        t, p = np.meshgrid(sphere.theta, phi, indexing="ij")
        own = np.stack([theta_hat(theta=t, phi=p), phi_hat(theta=t, phi=p)], axis=-2)
        seen = np.einsum("...ij,...cj->...ci", self._rotation, own @ sphere.polar_to_device.T)
        self._probe = np.moveaxis(seen[..., :2], (-2, -1), (0, 1))  # component, lab axis, theta, column
        self.rings = TurningRings.of(self._rotation @ sphere.polar_to_device, self._probe)
        polar = (
            device if np.array_equal(sphere.polar_to_device, np.eye(3)) else device.rotated(sphere.polar_to_device.T)
        )
        self._in_polar_frame = polar.coefficients

    @cached_property
    def _circles(self) -> Circles:
        """The device's field on circles about the polar axis; the same for every room."""
        return Circles(self._in_polar_frame)

    @cached_property
    def rests(self) -> tuple[ComplexArray, ...]:
        """What the scan itself leaves outside the device's waves at every frequency."""
        return tuple(self.outside(field, index) for index, field in enumerate(self._sphere.field))

    @property
    def shape(self) -> tuple[int, int, int]:
        """Components, rings and columns of one reading."""
        return 2, self._sphere.theta.size, self._sphere.phi.size

    def readings(self, directions: FloatArray, index: int, *, device: ComplexArray | None = None) -> ComplexArray:
        """Return (direction, 4, 2, theta, phi) readings at one frequency.

        device
            Its waves (2, J) where they are not those of the far field: of an image that stands near.
        """
        out = []
        waves = self._device.coefficients[index] if device is None else device
        for d in directions:
            local = np.einsum("...ji,j->...i", self._rotation, d)
            t, p = theta_phi(local)
            e = synthesis_at(waves, theta=t, phi=p, accuracy=ACCURACY).reshape(2, *t.shape)
            vector = e[0][..., None] * theta_hat(theta=t, phi=p) + e[1][..., None] * phi_hat(theta=t, phi=p)
            room = np.einsum("...ij,...j->...i", self._rotation, vector)
            across = np.stack([room @ one for one in tangents(d)])
            four = self._probe[:, :, None] * across[None, None]  # component, lab axis, tangent, theta, column
            out.append(np.moveaxis(four.reshape(2, 4, *t.shape), 0, 1))
        return finer_columns(np.stack(out), self._sphere.phi.size)

    def through_mirrors(
        self, directions: FloatArray, mirrors: ComplexArray, *, as_measured: bool = False
    ) -> ComplexArray:
        """Return what waves that leave in some directions (wall, 3) add by way of mirrors: (set, frequency, 2, theta, phi).

        mirrors
            (set, frequency, wall, 2, 2): components along the lab's x and y per component along the direction's tangents.
        as_measured
            True: at the measured columns alone, two for every slice.
        """
        columns = self._probe.shape[-1] if as_measured else self._sphere.phi.size
        if self.rings is not None:
            return finer_columns(self.rings.through_mirrors(self._circles, directions, mirrors), columns)
        samplers = [Sampler(c) for c in self._device.coefficients]
        shape = self._probe.shape[2:]
        out = np.zeros((*mirrors.shape[:2], 2, *shape), complex)
        for w, d in enumerate(directions):
            # Everything but the field itself is the same at all frequencies.
            t, p = theta_phi(np.einsum("...ji,j->...i", self._rotation, d))
            local = np.stack([theta_hat(theta=t, phi=p), phi_hat(theta=t, phi=p)])
            turned = np.einsum("...ji,bj->b...i", self._rotation, np.stack(tangents(d)))
            share = np.einsum("e...i,b...i->eb...", local, turned)
            for f, sampler in enumerate(samplers):
                e = sampler.at(t, p, accuracy=ACCURACY).reshape(2, *shape)
                across = np.einsum("e...,eb...->b...", e, share)
                lab = np.einsum("sab,b...->sa...", mirrors[:, f, w], across)
                out[:, f] += np.einsum("ca...,sa...->sc...", self._probe, lab)
        return finer_columns(out, columns)

    def outside(self, field: ComplexArray, index: int) -> ComplexArray:
        """Return what of fields (..., 2, theta, phi) at one frequency does not fit into the device's waves, weighted."""
        fitted = self._step.at_frequency(index).refitted(field)
        return np.asarray((field - fitted) * np.sqrt(np.maximum(np.sin(self._sphere.theta), 0.0))[:, None])
