"""Rooms that a chamber could be: stray signals as the device's own waves that walls send back to the probe."""

from __future__ import annotations

from collections.abc import Callable

import numpy as np

from colure.analysis.steps.assemble import MeasuredSphere
from colure.analysis.stray.held import HeldPasses, HeldWalls
from colure.analysis.stray.mirrors import Wall, draw_walls, hearing, of_reference
from colure.analysis.stray.swung import SwungWalls, drawn_room
from colure.analysis.uncertainty.trial import Trial
from colure.geometry.conventions import ComplexArray, FloatArray, wavenumber
from colure.waves.expansion import Expansion

#: How well an aperture's field tells a horn's far side lobes: what runs around its rim is left out (common practice, no source).
RIM_DB = 3.5
#: Rooms that are transformed together; bounds the memory.
BLOCK = 8
PHASES = (1.0, 1j)


def in_a_room(trial: Trial, level: float, random: np.random.Generator) -> Callable[[int], ComplexArray]:
    """Return draws of what is added to the waves by reflections from unknown directions of the room, rms `level` below the peak.

    The device turns, the room stands: its waves come back as its own far field in a fixed direction of the
    room, through a mirror of unknown strength, polarization and path length. The part inside the device's mode space is kept.
    Walls leave the phase of all they send back open: every room comes twice, in phase and in quadrature. So many rooms give
    (2 rooms, frequency, 2, J).
    """
    draw_stray = stray_in_a_room(trial, level, random)

    def draw(rooms: int) -> ComplexArray:
        out = np.empty((len(PHASES) * rooms, *trial.nominal.coefficients.shape), complex)
        for begin in range(0, rooms, BLOCK):
            count = min(BLOCK, rooms - begin)
            out[2 * begin : 2 * (begin + count)] = _changes(trial, draw_stray, count, random)
        return out

    return draw


def _changes(
    trial: Trial,
    draw_stray: Callable[[], tuple[ComplexArray, ComplexArray]],
    rooms: int,
    random: np.random.Generator,
) -> ComplexArray:
    """Return what some rooms add to the waves (2 rooms, frequency, 2, J), in phase and in quadrature one after the other."""
    step, realigned = trial.inputs.step, trial.realigned
    drawn_rooms, moved = [], []
    for _ in range(rooms):
        drawn_rooms.append(draw_stray())
        if realigned is not None and not realigned.follows:
            moved.append([realigned.drawn(random) for _ in PHASES])
    stray, common = (np.stack(part) for part in zip(*drawn_rooms, strict=True))
    # The transform is linear and the reference's echo is one factor a frequency: one transform tells both phases.
    stray = trial.inputs.sphere.as_assembled(stray)
    measured = step.measured(stray)
    seen, one = step.from_measured(measured).coefficients, common[..., None, None]
    out = np.stack(
        [(1.0 - phase * one) * (phase * seen) - phase * one * trial.nominal.coefficients for phase in PHASES], axis=1
    )
    if realigned is not None:
        # The alignment took this room's echoes for a misalignment as far as they look like one.
        if realigned.follows:
            along = realigned.along(stray, measured)
            out -= realigned.off(np.stack([(phase * along).real for phase in PHASES], axis=1))
        else:
            out -= realigned.off(np.array(moved))
    return np.asarray(out.reshape(2 * rooms, *out.shape[2:]))


def stray_in_a_room(
    trial: Trial, level: float, random: np.random.Generator
) -> Callable[[], tuple[ComplexArray, ComplexArray]]:
    """Return draws of what a room adds to the measured field (frequency, 2, theta, phi), rms `level` below the peak.

    The second part of a draw (frequency,) is the echo of the reference, relative: it stood in the same room.
    """
    sphere = trial.inputs.sphere
    if trial.inputs.chamber.swings_probe:
        return _around_the_probe(trial, level, random)
    wall = _walls_of(trial)
    k = wavenumber(sphere.frequency_hz)
    peak = _peak(sphere)
    length, known = trial.inputs.chamber.range_length_m, trial.inputs.chamber.echo_excess_m
    gate = trial.inputs.gate
    hears = hearing(trial.inputs.probe, trial.inputs.chamber.probe.gain_dbi)

    def draw() -> tuple[ComplexArray, ComplexArray]:
        directions, way, mirror = draw_walls(random, length, hears, known)
        turn = np.exp(-1j * k[:, None] * way)[..., None, None]
        # A time gate was used: the declared level is that of the echoes before it.
        passed = turn
        if gate is not None:
            earlier = gate.spread_m * random.uniform(-1.0, 1.0, way.size)
            passed = turn * gate.of_late(way - earlier)[..., None, None]
        (stray,) = wall.through_mirrors(directions, (mirror * turn)[None])
        # The reference stood in the same room: its own echo is in every level.
        rim = 10.0 ** (random.normal(0.0, RIM_DB / 20.0, len(way)))
        common = np.einsum(
            "fwt,wt,fw,w->f",
            of_reference(trial.inputs.chamber, sphere.frequency_hz, directions),
            mirror[:, 0],
            passed[..., 0, 0],
            rim,
        )
        if sphere.one_polarization:
            stray = _along_the_probe(sphere, stray, trial.inputs.slant)
        scale = level * peak / _size_of(sphere, stray)
        if gate is not None:
            (stray,) = wall.through_mirrors(directions, (mirror * passed)[None])
            if sphere.one_polarization:
                stray = _along_the_probe(sphere, stray, trial.inputs.slant)
        return np.asarray(scale * stray), np.asarray(scale * trial.inputs.horn_louder * common)

    return draw


def _walls_of(trial: Trial) -> Wall | HeldWalls:
    """Return walls around a probe that stands, met as two axes hold the device, or as joints really do."""
    inputs = trial.inputs
    if inputs.chamber.chain is None:
        return Wall(inputs.sphere, inputs.step, trial.nominal, inputs.chamber.positioner.geometry)
    held = HeldPasses.of(inputs.sphere, inputs.sweeps.record, inputs.chamber)
    return HeldWalls(inputs.sphere, inputs.step, trial.nominal, held)


def _peak(sphere: MeasuredSphere) -> float:
    """Return the largest amplitude of both components at mid-band."""
    return float(np.sqrt(np.sum(np.abs(sphere.field[len(sphere.field) // 2]) ** 2, axis=0).max()))


def _size_of(sphere: MeasuredSphere, stray: ComplexArray) -> float:
    """Return the rms of one reading of a stray field at mid-band."""
    return float(np.sqrt(max(float(sphere.reading_power(stray[len(stray) // 2])), 1e-300)))


def _around_the_probe(
    trial: Trial, level: float, random: np.random.Generator
) -> Callable[[], tuple[ComplexArray, ComplexArray]]:
    """Return draws as `stray_in_a_room` does, of rooms around a mount that swings the probe."""
    inputs, sphere = trial.inputs, trial.inputs.sphere
    length, k = inputs.chamber.range_length_m, wavenumber(sphere.frequency_hz)
    hears = hearing(inputs.probe, inputs.chamber.probe.gain_dbi)
    held = HeldPasses.of(sphere, inputs.sweeps.record, inputs.chamber)
    walls, peak = SwungWalls(sphere, trial.nominal, length, held, hears), _peak(sphere)

    def draw() -> tuple[ComplexArray, ComplexArray]:
        room = drawn_room(random, length)
        stray = walls.stray(room)
        directions, way, mirror = walls.to_horn(room)
        rim = 10.0 ** (random.normal(0.0, RIM_DB / 20.0, len(way)))
        turn = np.exp(-1j * k[:, None] * way)
        common = np.einsum(
            "fwt,wt,fw,w->f",
            of_reference(trial.inputs.chamber, sphere.frequency_hz, directions),
            mirror[:, 0],
            turn,
            rim,
        )
        if sphere.one_polarization:
            stray = _along_the_probe(sphere, stray, inputs.slant)
        scale = level * peak / _size_of(sphere, stray)
        return np.asarray(scale * stray), np.asarray(scale * trial.inputs.horn_louder * common)

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


def _along_the_probe(sphere: MeasuredSphere, field: ComplexArray, slant: float) -> ComplexArray:
    """Return what a single probe that follows the roll would have made of a field (..., 2, theta, phi)."""
    c, s = np.cos(slant - sphere.phi), np.sin(slant - sphere.phi)
    read = field[:, 0] * c + field[:, 1] * s
    return np.stack([read * c, read * s], axis=1)
