"""A plan carried out on the simulated range without sockets or waiting: what the analyzer would have read.

The imperfections are drawn from what the chamber declares of itself, so that a rehearsal shows
what this chamber may do to this plan. Every draw is an invented chamber and says so.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from functools import partial
from pathlib import Path

import numpy as np

from colure.geometry.conventions import ComplexArray, FloatArray, IntArray
from colure.geometry.joint_errors import across
from colure.geometry.kinematics import Geometry
from colure.model.chamber import Chamber, EchoTable, SimulatedChamber
from colure.model.device import Device
from colure.model.joints import JointTable
from colure.model.plan import ROLES, Plan, Role
from colure.model.reference import WITH_HORN
from colure.model.simulated_chamber import TrueJoint
from colure.twin.chamber import CABLE_CHANNEL, DEVICE_CHANNEL, REFERENCE_CHANNEL, SimulatedRange
from colure.twin.devices import DeviceMaker, device_maker, device_of
from colure.twin.drawn_chain import draw_chain
from colure.twin.signal_chain import SignalChain
from colure.twin.sources import Cluster
from colure.twin.states import responses_of
from colure.values import holds_arrays

#: Side walls, floor, ceiling and the wall behind the device: how far from the axes' intersection (range lengths), how much tilted.
WALLS = ((1.0, 0.0, 0.0), (-1.0, 0.0, 0.0), (0.0, 1.0, 0.0), (0.0, -1.0, 0.0), (0.0, 0.0, -1.0))
NEAREST, FARTHEST, TILT_DEG = 0.45, 0.9, 4.0
#: Walls around a mount that swings the probe, and how far away (range lengths): there is one on every side.
AROUND, BEYOND_PROBE = (*WALLS, (0.0, 0.0, 1.0)), (1.1, 2.0)
#: No wall stands nearer to the axes' intersection than this, metres.
NEAREST_WALL_M = 0.1
#: A chamber warms up over this time, however long a scan lasts (common practice, no source).
DRIFT_TIME_S = 1800.0
#: Points that are worked out together; bounds the memory.
BLOCK_POINTS = 64
#: Directions over which stray signals are compared with what the chamber declares.
PROBES_OF_STRAY = 900


@dataclass(frozen=True)
@holds_arrays
class Rehearsed:
    """What a rehearsal read: (point, frequency, port) traces, the chamber that was drawn, its device in state 0.

    readback_deg (point, axis): what the axes' readouts showed.
    """

    trace: ComplexArray
    rate_deg_s: FloatArray
    readback_deg: FloatArray
    truth: SimulatedChamber
    device: Cluster
    reference_error_db: float


def draw_chamber(
    chamber: Chamber,
    device: Device,
    plan: Plan,
    seed: int,
    *,
    holding: SimulatedChamber | None = None,
    folder: Path | None = None,
) -> SimulatedChamber:
    """Draw a chamber's truth from its declared tolerances (k = 2: half of each is the standard deviation).

    Parameters
    ----------
    holding
        Whose simulated device and states the chamber holds; what device.toml declares if None.
    folder
        Where files of the device's sources lie.
    """
    random = np.random.default_rng((seed, 4))
    along = np.random.default_rng((seed, 41))
    a = chamber.alignment

    def draw(expanded: float, random: np.random.Generator = random) -> float:
        return float(np.clip(random.normal(0.0, 0.5 * expanded), -1.5 * expanded, 1.5 * expanded))

    def three(expanded: float) -> tuple[float, float, float]:
        return (draw(expanded) / 3**0.5, draw(expanded) / 3**0.5, draw(expanded) / 3**0.5)

    rolls = chamber.positioner.geometry is Geometry.ROLL_OVER_AZIMUTH
    stacked = not chamber.positioner.joints
    walls = _walls(random, chamber, device.reach_m)
    bends = random.normal(0.0, 0.5 * chamber.cable_flex_deg / 3**0.5, 3)
    chain = draw_chain(chamber, seed)
    beside = chain.pop("probe_offset_mm")
    truth = SimulatedChamber(
        device=None if holding is None else holding.device,
        state_steer_deg=() if holding is None else holding.state_steer_deg,
        command_error_db=0.0 if device.states is None else device.states.command_error_db,
        command_error_deg=0.0 if device.states is None else device.states.command_error_deg,
        probe_ring_mm=(holding or SimulatedChamber()).probe_ring_mm,
        seed=seed,
        drift_db=chamber.tie_drift_db,
        drift_deg=min(360.0, chamber.tie_drift_deg),
        drift_time_s=DRIFT_TIME_S * float(2.0 ** random.uniform(-1.0, 1.0)),
        drift_swing=float(random.uniform(0.0, 0.5)),
        drift_swing_deg=float(random.uniform(-180.0, 180.0)),
        cable_flex_deg=float(abs(bends[0])),
        cable_flex_other_deg=(float(bends[1]), float(bends[2])),
        joints=tuple(_joint(one, draw, partial(draw, random=along)) for one in chamber.positioner.joints),
        theta_zero_deg=draw(a.theta_zero_deg) if stacked else 0.0,
        roll_axis_tilt_deg=draw(a.roll_axis_tilt_deg) if rolls and stacked else 0.0,
        elevation_zero_deg=0.0 if rolls else draw(a.elevation_zero_deg),
        axes_square_deg=0.0 if rolls else draw(a.axes_square_deg),
        axes_offset_mm=three(a.axes_offset_mm if stacked else 0.0),
        device_pose_deg=(draw(a.device_pose_deg), draw(a.device_pose_deg), draw(a.device_pose_deg)),
        probe_roll_zero_deg=draw(a.probe_roll_zero_deg),
        probe_offset_mm=(beside[0], beside[1], draw(a.distance_mm)),
        probe_cross_polar_db=chamber.probe.cross_polar_db - 2.0,
        reference_offset_mm=_horn_place(chamber, draw),
        reference_cross_polar_db=-200.0
        if chamber.reference.cross_polar_db is None
        else chamber.reference.cross_polar_db,
        reference_cross_polar_deg=float(random.uniform(-180.0, 180.0)),
        echoes=tuple(walls),
        distance_step_error_mm=0.5 * float(plan.settings.get("distance_expanded_mm", 0.0)),
        **chain,
    )
    make = device_maker(truth, device, band_hz=plan.frequency_hz, folder=folder)
    excess = _stray_db(chamber, make, plan, truth) - chamber.echo_level_db
    scaled = tuple(
        echo.model_copy(update={"level_db": float(np.clip(echo.level_db - excess, -120.0, 0.0))})
        for echo in truth.echoes
    )
    return truth.model_copy(update={"echoes": scaled})


def _joint(joint: JointTable, draw: Callable[[float], float], draw_along: Callable[[float], float]) -> TrueJoint:
    """Draw how a joint really stands: its zero, tilts and shifts across its line, and a shift along it (a turn, if prismatic)."""
    axis = np.asarray(joint.axis, float)
    sides, line = np.array(across(axis)), axis / np.linalg.norm(axis)
    tilt = np.array([draw(joint.tilt_error_deg), draw(joint.tilt_error_deg)]) @ sides
    shift = np.array([draw(joint.offset_error_mm), draw(joint.offset_error_mm)]) @ sides
    if joint.kind == "prismatic":
        tilt = tilt + draw_along(joint.tilt_error_deg) * line
    else:
        shift = shift + draw_along(joint.axial_error_mm) * line
    return TrueJoint(
        name=joint.name,
        zero_deg=draw(joint.zero_error_deg),
        tilt_deg=(float(tilt[0]), float(tilt[1]), float(tilt[2])),
        offset_mm=(float(shift[0]), float(shift[1]), float(shift[2])),
    )


def _horn_place(chamber: Chamber, draw: Callable[[float], float]) -> tuple[float, float, float] | None:
    """Draw where the horn really stands; nothing is drawn where nothing is declared."""
    reference = chamber.reference
    if reference.offset_uncertainty_mm == 0.0:
        return None
    x, y, z = (at + draw(reference.offset_uncertainty_mm) for at in reference.offset_mm)
    return x, y, z


def _walls(random: np.random.Generator, chamber: Chamber, reach_m: float) -> list[EchoTable]:
    """Draw the walls of a room, as far away as the declared extra paths of known echoes say where there are any."""
    known = np.array(chamber.echo_excess_m)
    # No wall stands where a joint carries the probe.
    swung = chamber.swings_probe
    sides, far = (AROUND, BEYOND_PROBE) if swung else (WALLS, (NEAREST, FARTHEST))
    reach_m = max(reach_m, BEYOND_PROBE[0] * chamber.range_length_m / 1.5) if swung else reach_m
    walls = [
        _wall(random, sides[i % len(sides)], chamber.range_length_m, reach_m, far)
        for i in range(max(len(sides), known.size))
    ]
    if not known.size:
        return walls
    excess_m = np.concatenate([known, random.choice(known, len(walls) - known.size)])
    return [
        _at_excess(wall, float(one), chamber.range_length_m, reach_m)
        for wall, one in zip(walls, random.permutation(excess_m), strict=True)
    ]


def _at_excess(wall: EchoTable, excess_m: float, range_m: float, reach_m: float) -> EchoTable:
    """Move a wall to where the path by it, from the axes' intersection to the probe, is longer than the direct one by `excess_m`.

    With n the wall's normal, d its distance and R the range's length: |2 d n - R z| = R + excess. Where the wall would then
    stand in the device, it stands behind the probe instead.
    """
    normal = np.asarray(wall.normal) / np.linalg.norm(wall.normal)
    for towards in (normal, np.array([normal[0], normal[1], 10.0]) / np.linalg.norm([normal[0], normal[1], 10.0])):
        along = range_m * towards[2]
        distance = 0.5 * (along + float(np.sqrt(along**2 + (range_m + excess_m) ** 2 - range_m**2)))
        if distance >= max(1.5 * reach_m, NEAREST_WALL_M):
            break
    return wall.model_copy(
        update={"normal": (float(towards[0]), float(towards[1]), float(towards[2])), "distance_m": distance}
    )


def _wall(
    random: np.random.Generator,
    square: tuple[float, float, float],
    range_m: float,
    reach_m: float,
    far: tuple[float, float],
) -> EchoTable:
    """Draw one wall of a room that is nearly at right angles to the range."""
    normal = np.asarray(square) + random.normal(0.0, np.deg2rad(TILT_DEG), 3)
    normal /= np.linalg.norm(normal)
    return EchoTable(
        normal=(float(normal[0]), float(normal[1]), float(normal[2])),
        distance_m=max(range_m * random.uniform(*far), 1.5 * reach_m, NEAREST_WALL_M),
        level_db=-30.0 - float(random.exponential(5.0)),
        phase_deg=float(random.uniform(-180.0, 180.0)),
    )


def _stray_db(chamber: Chamber, make: DeviceMaker, plan: Plan, truth: SimulatedChamber) -> float:
    """Return what the walls add, rms over directions below the peak, in dB.

    Circular ports hear an echo of a circular device very unlike: a wall turns its sense over. Their readings count alike, below the
    peak of both together; a linear port meets both halves of an echo over its two passes.
    """
    middle = plan.frequency_hz[plan.frequency_hz.size // 2 :][:1]
    with_walls, without = (
        _range_of(chamber, truth.model_copy(update={"echoes": walls}), make, middle) for walls in (truth.echoes, ())
    )
    scan = np.flatnonzero(plan.role == ROLES.index(Role.SCAN))
    some = scan[np.linspace(0, scan.size - 1, min(scan.size, PROBES_OF_STRAY)).astype(int)]
    tie = np.flatnonzero(plan.role == ROLES.index(Role.TIE))[:1]
    clean, dirty = (_received_at(simulated, plan, np.concatenate([some, tie])) for simulated in (without, with_walls))
    stray = np.mean(np.abs(dirty - clean) ** 2, axis=0)[: some.size]
    weight = _solid_angles(chamber, plan.in_coordinates[1][some])
    mean = np.sum(stray * weight) / np.sum(weight)
    return float(10.0 * np.log10(mean / np.max(np.sum(np.abs(clean) ** 2, axis=0))))


def _solid_angles(chamber: Chamber, targets_deg: FloatArray) -> FloatArray:
    """Return the relative solid angle that points (point, axis) of an angular grid stand for."""
    tables = list(chamber.axis_table.values())
    first, second = (np.deg2rad(tables[i].map.angle_deg(targets_deg[:, i])) for i in (0, 1))
    geometry = chamber.positioner.geometry
    if geometry is Geometry.ROLL_OVER_AZIMUTH:
        return np.asarray(np.abs(np.sin(first)) + 1e-6)
    polar = second if geometry is Geometry.AZIMUTH_OVER_ELEVATION else first
    return np.asarray(np.abs(np.cos(polar)) + 1e-6)


def _received_at(simulated: SimulatedRange, plan: Plan, rows: IntArray) -> ComplexArray:
    """Return what port 1, or both circular ports, receive from the device at plan points, first frequency, (port, point)."""
    ports = (1, 2) if simulated.chamber.probe.polarization == "circular" else (1,)
    blocks = np.split(rows, range(BLOCK_POINTS, rows.size, BLOCK_POINTS))
    places = [dict(zip(plan.axes, plan.targets_deg[b].T, strict=True)) for b in blocks]
    received = [[simulated.received(one, port)[:, 0] for one in places] for port in ports]
    return np.stack([np.concatenate(one) for one in received])


def _range_of(
    chamber: Chamber,
    truth: SimulatedChamber,
    make: DeviceMaker,
    frequency_hz: FloatArray,
    responses: ComplexArray | None = None,
) -> SimulatedRange:
    simulated = SimulatedRange(chamber, truth, make, responses)
    simulated.set_frequencies(frequency_hz)
    return simulated


def rehearse(
    chamber: Chamber,
    device: Device,
    plan: Plan,
    time_s: FloatArray,
    *,
    seed: int,
    reference_gain_dbi: FloatArray | None = None,
    truth: SimulatedChamber | None = None,
    holding: SimulatedChamber | None = None,
    folder: Path | None = None,
) -> Rehearsed:
    """Measure every point of a plan at its predicted time.

    Parameters
    ----------
    time_s
        (point,) when each point's sweep begins, seconds.
    reference_gain_dbi
        (frequency,) gain that the reference is taken to have: the true one scatters about it within
        what is declared. The simulated horn's own gain if None.
    truth
        The chamber's imperfections and its device; drawn from what it declares if None.
    holding
        Whose simulated device and states a drawn chamber holds; what device.toml declares if None.
    folder
        Where files of the device's sources lie.
    """
    drawn = truth is None
    if truth is None:
        truth = draw_chamber(chamber, device, plan, seed, holding=holding, folder=folder)
    make = device_maker(truth, device, band_hz=plan.frequency_hz, folder=folder)
    simulated = _range_of(chamber, truth, make, plan.frequency_hz, responses_of(truth, device, folder))
    # The horn's true gain differs from its computed one within what is declared (k = 2).
    error_db = (
        0.0
        if not drawn
        else float(np.random.default_rng((seed, 5)).normal(0.0, 0.5 * chamber.reference.gain_uncertainty_db))
    )
    rate = _rates(plan)
    trace = np.empty((len(plan), plan.frequency_hz.size, len(plan.ports)), complex)
    for rows in _alike(plan):
        _move(simulated, plan, int(rows[0]))
        simulated.state = max(0, int(plan.state_index[rows[0]]))
        if ROLES[plan.role[rows[0]]] is Role.REFLECTION:
            trace[rows] = _reflections(simulated, plan, time_s, rows)[:, :, None]
            continue
        for column, port in enumerate(plan.ports):
            trace[rows, :, column] = _sweeps(simulated, plan, rows, rate[rows], port=port, time_s=time_s[rows])
    off_db = np.full(plan.frequency_hz.size, error_db)
    if reference_gain_dbi is not None:
        off_db += reference_gain_dbi - simulated.reference_gain_dbi()
    trace[channels(plan) == REFERENCE_CHANNEL] *= 10.0 ** (off_db / 20.0)[:, None]
    held = device_of(truth, device, plan.frequency_hz, band_hz=plan.frequency_hz, folder=folder, state=0)
    jitter = [SignalChain(truth, truth.seed).jitter_deg(name, time_s) for name in plan.axes]
    return Rehearsed(trace, rate, plan.targets_deg + np.stack(jitter, axis=-1), truth, held, error_db)


def _move(simulated: SimulatedRange, plan: Plan, row: int) -> None:
    """Move what a person moves before a point of the plan, where it is measured at several distances."""
    steps_mm = plan.settings.get("distance_steps_mm")
    if steps_mm:
        step = row // int(plan.settings["points_per_distance"])
        simulated.move(str(plan.settings["distance_moves"]), 1e-3 * float(steps_mm[step]))


def channels(plan: Plan) -> IntArray:
    """Return the switch's channel of every point."""
    horn = plan.settings.get("reference_method", "switch") in WITH_HORN
    own = {Role.REFERENCE: REFERENCE_CHANNEL if horn else DEVICE_CHANNEL, Role.CABLE: CABLE_CHANNEL}
    return np.array([own.get(role, DEVICE_CHANNEL) for role in ROLES])[plan.role]


def _alike(plan: Plan) -> Iterator[IntArray]:
    """Yield blocks of points that share antenna, device state and kind of motion, in measuring order."""
    reflections = plan.role == ROLES.index(Role.REFLECTION)
    distance = np.arange(len(plan)) // int(plan.settings.get("points_per_distance", max(1, len(plan))))
    key = np.stack([channels(plan), plan.state_index, plan.line_index >= 0, reflections, distance], axis=-1)
    borders = np.flatnonzero(np.any(np.diff(key, axis=0), axis=-1)) + 1
    for block in np.split(np.arange(len(plan)), borders):
        yield from np.split(block, range(BLOCK_POINTS, block.size, BLOCK_POINTS))


def _reflections(simulated: SimulatedRange, plan: Plan, time_s: FloatArray, rows: IntArray) -> ComplexArray:
    """Return readings of the device's reflection, (point, frequency)."""
    return simulated.reflected(
        dict(zip(plan.axes, plan.targets_deg[rows].T, strict=True)),
        time_s=time_s[rows],
        power_dbm=_every(plan, "power_dbm"),
        if_bandwidth_hz=_every(plan, "if_bandwidth_hz") / int(plan.settings["averages"]),
    )


def _every(plan: Plan, name: str) -> float | FloatArray:
    """Return a setting of the receiver: one for all frequencies, or (frequency,) where the sweep has segments."""
    rows = plan.settings.get("segments")
    if not rows:
        return float(plan.settings[name])
    return np.concatenate([np.full(int(row["points"]), float(row[name])) for row in rows])


def _sweeps(
    simulated: SimulatedRange, plan: Plan, rows: IntArray, rate: FloatArray, *, port: int, time_s: FloatArray
) -> ComplexArray:
    """Return the sweeps of one block, (point, frequency)."""
    places, way = plan.targets_deg[rows], None
    if rate.any():
        each = np.broadcast_to(1.0 / np.asarray(_every(plan, "if_bandwidth_hz")), plan.frequency_hz.shape)
        moments = (np.cumsum(each) - 0.5 * each) / each.sum() * float(plan.settings["trace_s"])
        ways = [rate * moment for moment in moments]
        if apart_deg := float(plan.settings.get("point_step_deg", 0.0)):
            # A pulse for every frequency: the place does not follow from the time.
            lasts = each / each.sum() * float(plan.settings["trace_s"])
            ways = [np.sign(rate) * number * apart_deg + 0.5 * rate * last for number, last in enumerate(lasts)]
        way = [dict(zip(plan.axes, (places + one).T, strict=True)) for one in ways]
    return simulated.sweep(
        dict(zip(plan.axes, places.T, strict=True)),
        port=port,
        channel=int(channels(plan)[rows[0]]),
        time_s=time_s,
        power_dbm=_every(plan, "power_dbm"),
        if_bandwidth_hz=_every(plan, "if_bandwidth_hz") / int(plan.settings["averages"]),
        on_the_way=way,
    )


def _rates(plan: Plan) -> FloatArray:
    """Return (point, axis) speeds during the sweeps: zero but for flown lines."""
    rate = np.zeros_like(plan.targets_deg)
    if plan.settings.get("style") != "fly":
        return rate
    axis = plan.axes.index(plan.settings["fly_axis"])
    for line in np.unique(plan.line_index[plan.line_index >= 0]):
        rows = np.flatnonzero(plan.line_index == line)
        way = plan.targets_deg[rows[-1], axis] - plan.targets_deg[rows[0], axis]
        rate[rows, axis] = np.sign(way) * float(plan.settings["fly_speed_deg_s"])
    return rate
