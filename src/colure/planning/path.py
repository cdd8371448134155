"""The order of points: states, polarization passes, slices, lines, ties, reference sweeps."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from typing import Any

import numpy as np

from colure.errors import InputError
from colure.geometry.conventions import BoolArray, FloatArray, IntArray
from colure.geometry.kinematics import Geometry
from colure.model.chamber import Axis, Chamber
from colure.model.device import Device
from colure.model.goal import Goal
from colure.model.plan import ROLES, Role, ScanGrid
from colure.planning.duration import approached_time, line_time, narrowest_bandwidth, point_times, sweep_time
from colure.planning.flight import BeyondLimitsError, FlightSpeed, PulseEach, flight_speed, smear_limit, swept_axis
from colure.planning.joint_path import OutOfReachError, joint_path
from colure.planning.passes import pass_offsets, polarization_scheme
from colure.planning.progressive import progressive_order
from colure.planning.scan import edge_margin_deg
from colure.planning.visits import readouts_of, reference_readouts, tie_readouts
from colure.values import holds_arrays

#: A plan of more points is refused before any of them is laid out: at a second each it would take twelve days.
MOST_POINTS = 1_000_000
#: A smaller region than this is no goal, degrees.
SMALLEST_REGION_DEG = 5.0


@dataclass(frozen=True)
@holds_arrays
class Path:
    """Points in measuring order: convention angles are already controller readouts (degrees).

    before_deg, own_s
        (point, axis) where the axes come from, and (point,) the time beyond the move and settling.
    """

    axes: tuple[str, ...]
    targets_deg: FloatArray
    role: IntArray
    slice_index: IntArray
    pass_index: IntArray
    state_index: IntArray
    line_index: IntArray
    time_s: FloatArray
    before_deg: FloatArray
    own_s: FloatArray
    flight: FlightSpeed | None = None
    coordinates_deg: FloatArray | None = None
    half_turned: BoolArray | None = None

    def columns(self) -> dict[str, Any]:
        """Return what a plan takes over as it is: axes, targets and the columns of its points."""
        names = ("axes", "targets_deg", "role", "slice_index", "pass_index", "state_index", "line_index",
                 "coordinates_deg", "half_turned")  # fmt: skip
        return {name: getattr(self, name) for name in names}

    def time_with(self, tables: list[Axis], overhead_s: float) -> FloatArray:
        """Return the time of every point with other axes than those the path was laid out for.

        overhead_s
            Added to every step point. Flown lines keep their time: their speed is commanded.
        """
        ways = np.abs(self.targets_deg - self.before_deg)
        settle = np.where(ways > 1e-9, [axis.settle_s for axis in tables], 0.0).max(axis=1)
        flown = self.line_index >= 0
        moving = approached_time(self.targets_deg, self.before_deg, tables)
        return np.asarray(moving + settle + self.own_s + np.where(flown, 0.0, overhead_s))


@dataclass(frozen=True)
@holds_arrays
class PlannedSlice:
    """Points measured one after the other without a tie between them being necessary: one slice."""

    targets_deg: FloatArray
    role: Role
    slice_index: int
    pass_index: int
    state_index: IntArray
    line: bool


def build_path(goal: Goal, chamber: Chamber, device: Device, grid: ScanGrid) -> Path:
    """Lay out the whole run: reference, ties, and every slice of every pass and state, at every distance.

    Raises
    ------
    InputError
        If there are more than `MOST_POINTS`, or an axis would leave its limits anywhere; the message names axis, value and limit.
    """
    _require_bearable(goal, chamber, device, grid)
    states = device.states
    if states is not None and goal.style == "fly" and states.loop == "inner":
        raise InputError(["device.toml: states.loop = 'inner': must be 'outer' on the fly (goal.toml style)"])
    if goal.style == "fly" and chamber.analyzer.averages > 1:
        raise InputError(
            [f"chamber.toml: analyzer.averages = {chamber.analyzer.averages}: must be 1 on the fly (sweeps)"]
        )
    runs, flight = within_limits(goal, chamber, device, grid)
    try:
        return repeated(build_runs(goal, chamber, device, runs, flight, dwell_s=goal.dwell_s), goal)
    except OutOfReachError as error:
        raise InputError([*error.faults, *_region_in_reach(goal, chamber, device, grid, error.theta_deg)]) from None


def within_limits(
    goal: Goal, chamber: Chamber, device: Device, grid: ScanGrid
) -> tuple[list[PlannedSlice], FlightSpeed | None]:
    """Return every slice of a grid, and how it is flown; raises `BeyondLimitsError` if an axis would leave its limits for it."""
    runs = list(_runs(goal, chamber, grid, device))
    table = chamber.axis_table
    check_limits(tuple(table), np.concatenate([run.targets_deg for run in runs]), list(table.values()))
    return runs, _flight(goal, chamber, grid) if goal.style == "fly" else None


def repeated(path: Path, goal: Goal) -> Path:
    """Return a path once for every distance; as it is where goal.toml asks for one distance."""
    if goal.distance_steps is None:
        return path
    count = goal.distance_steps.steps_m(goal.frequency_hz).size

    of_points = ("targets_deg", "role", "slice_index", "pass_index", "state_index", "line_index", "time_s",
        "before_deg", "own_s")  # fmt: skip
    columns: dict[str, Any] = {name: np.concatenate([getattr(path, name)] * count) for name in of_points}
    return replace(path, **columns)


def _require_bearable(goal: Goal, chamber: Chamber, device: Device, grid: ScanGrid) -> None:
    """Raise `InputError` for a plan of too many points, counted from its angles alone."""
    geometry = chamber.positioner.geometry
    directions = grid.swept_deg(geometry).size * grid.sliced_deg(geometry).size
    passes = len(pass_offsets(goal, chamber, device))
    states = 1 if device.states is None else len(device.states.names)
    distances = 1 if goal.distance_steps is None else goal.distance_steps.steps_m(goal.frequency_hz).size
    count = directions * passes * states * distances
    if count > MOST_POINTS:
        raise InputError(
            [
                f"goal.toml: step_deg = {grid.step_deg:g}: {count} points ({directions} directions, {passes} passes, {states} states): "
                f"must be at most {MOST_POINTS} (points); take a larger step_deg, a higher wanted_level_db or a smaller region_deg"
            ]
        )


def build_runs(
    goal: Goal,
    chamber: Chamber,
    device: Device,
    runs: list[PlannedSlice],
    flight: FlightSpeed | None = None,
    *,
    dwell_s: float = 0.0,
) -> Path:
    """Lay slices out in the order given, with reference and ties around and between them.

    dwell_s
        Rest at every point of a slice beyond settling.

    Raises
    ------
    InputError
        If an axis would leave its limits anywhere; the message names axis, value and limit.
    """
    if chamber.positioner.joints and goal.style == "fly":
        raise InputError(
            [
                "goal.toml: style = 'fly': must be 'step' with chamber.toml positioner.joints: joints together fly no straight line"
            ]
        )
    path = _with_ties(chamber, goal, runs, flight, device, dwell_s)
    check_limits(tuple(chamber.axis_table), path.targets_deg, list(chamber.axis_table.values()))
    return path if chamber.chain is None else _by_joints(path, chamber, device)


def _by_joints(path: Path, chamber: Chamber, device: Device) -> Path:
    """Return a path of coordinates as a path of joints, with the time that the joints take."""
    tables = list(chamber.driven_table.values())
    motion = joint_path(chamber, device, path.targets_deg, path.role)
    before = np.vstack([[axis.home_deg for axis in tables], motion.targets_deg[:-1]])
    moved = replace(
        path,
        axes=tuple(chamber.driven_table),
        targets_deg=motion.targets_deg,
        before_deg=before,
        coordinates_deg=path.targets_deg,
        half_turned=motion.half_turned,
    )
    return replace(moved, time_s=moved.time_with(tables, 0.0))


def _flight(goal: Goal, chamber: Chamber, grid: ScanGrid) -> FlightSpeed:
    name = swept_axis(chamber.positioner.geometry)
    axis = chamber.axis_table[name]
    readouts = axis.map.readout_deg(grid.swept_deg(chamber.positioner.geometry))
    return flight_speed(
        name,
        axis,
        step_deg=grid.swept_step_deg,
        sweep_s=sweep_time(goal, chamber.analyzer),
        low_deg=float(readouts.min()),
        high_deg=float(readouts.max()),
        settle_s=max(axis.settle_s for axis in chamber.axis_table.values()),
        smear_deg_s=smear_limit(
            order=grid.slices_planned,
            if_bandwidth_hz=narrowest_bandwidth(goal, chamber.analyzer),
            level_db=goal.wanted_level_db,
        ),
        each=PulseEach.of(goal, chamber.analyzer),
    )


def _runs(goal: Goal, chamber: Chamber, grid: ScanGrid, device: Device) -> Iterator[PlannedSlice]:
    """Yield every slice in measuring order."""
    states = device.states
    geometry = chamber.positioner.geometry
    swept, slices = grid.swept_deg(geometry), grid.sliced_deg(geometry)
    scheme = polarization_scheme(goal, chamber)
    offsets = pass_offsets(goal, chamber, device)
    follow = geometry is Geometry.ROLL_OVER_AZIMUTH and scheme != "dual-port" and goal.probe == "follows"
    order = progressive_order(slices.size) if goal.progressive else list(range(slices.size))
    count = 0 if states is None else len(states.names)
    inner = states is not None and states.loop == "inner"
    fly = goal.style == "fly"

    def angles(line: FloatArray, slice_angle: float, offset: float) -> FloatArray:
        first, second = line, np.full(line.size, slice_angle)
        if geometry is Geometry.ELEVATION_OVER_AZIMUTH:
            first, second = second, line
        probe = offset - second if follow else np.full(line.size, offset)
        return readouts_of(chamber, np.stack([first, second, probe], axis=-1))

    if fly:
        # One slice flown both ways shows latency and backlash. Its scan is one of the two, unless states differ.
        where = _through_boresight(geometry, slices)
        backwards = order.index(where) % 2 == 1 and goal.path == "serpentine"
        other = swept if backwards else swept[::-1]
        for line in (other,) if count == 0 else (other, other[::-1]):
            yield PlannedSlice(
                angles(line, slices[where], offsets[0]), Role.TURN, where, 0, _states(line.size, -1), line=True
            )
    for outer in range(count if count and not inner else 1):
        state = outer if count and not inner else -1
        for number, (pass_index, where) in enumerate(_passes(order, len(offsets), goal.progressive)):
            line = swept if number % 2 == 0 or goal.path == "one-way" else swept[::-1]
            targets, own = angles(line, slices[where], offsets[pass_index]), _states(line.size, state)
            if inner:
                targets, own = np.repeat(targets, count, axis=0), np.tile(np.arange(count), line.size)
            yield PlannedSlice(targets, Role.SCAN, where, pass_index, own, line=fly)


def _passes(order: list[int], passes: int, progressive: bool) -> Iterator[tuple[int, int]]:
    """Yield (pass, slice) in measuring order.

    Side by side, the second pass begins where the first one ends: nothing has to be unwound in between. A progressive
    scan takes both polarizations of every slice one after the other, so that each even set of slices is a pattern.
    """
    if not progressive:
        for pass_index in range(passes):
            yield from ((pass_index, where) for where in (order[::-1] if pass_index % 2 else order))
        return
    for number, where in enumerate(order):
        turns = range(passes) if number % 2 == 0 else reversed(range(passes))
        yield from ((pass_index, where) for pass_index in turns)


def _through_boresight(geometry: Geometry, slices_deg: FloatArray) -> int:
    """Return the slice that is flown both ways: one that passes the boresight, where the signal is strong."""
    return 0 if geometry is Geometry.ROLL_OVER_AZIMUTH else int(np.argmin(np.abs(slices_deg)))


def _states(size: int, state: int) -> IntArray:
    return np.full(size, state, np.int64)


def check_limits(axes: tuple[str, ...], targets_deg: FloatArray, tables: list[Axis]) -> None:
    """Raise `BeyondLimitsError` naming every axis that a list of targets would drive past a limit."""
    faults = []
    for index, (name, axis) in enumerate(zip(axes, tables, strict=True)):
        low, high = float(targets_deg[:, index].min()), float(targets_deg[:, index].max())
        for value, bad in ((low, low < axis.min_deg - 1e-9), (high, high > axis.max_deg + 1e-9)):
            if bad:
                missing = axis.min_deg - value if value < axis.min_deg else value - axis.max_deg
                faults.append(
                    f"plan: axis {name} target = {value:g}: must be from {axis.min_deg:g} to {axis.max_deg:g} deg; "
                    f"{missing:.4g} deg of travel are missing{axis.why_fixed}"
                )
    if faults:
        raise BeyondLimitsError(faults)


def _region_in_reach(goal: Goal, chamber: Chamber, device: Device, grid: ScanGrid, theta_deg: float) -> list[str]:
    """Say which region a mount allows that takes up all poses to a polar angle of the grid."""
    margin = edge_margin_deg(
        goal, chamber, device, swept_step_deg=grid.swept_step_deg, one_pass=goal.scheme == "one-pass"
    )
    region = float(np.floor(theta_deg - margin))
    if region < SMALLEST_REGION_DEG:
        return []
    return [
        f"goal.toml: region_deg = {goal.region_deg:g}: must be at most {region:g} deg for that (the scan goes {margin:.3g} deg beyond "
        f"the region), or the mount must reach further"
    ]


class _PathBuilder:
    """Collects points and the time they take, with a tie whenever the interval is over."""

    def __init__(
        self, chamber: Chamber, goal: Goal, flight: FlightSpeed | None, device: Device, dwell_s: float = 0.0
    ) -> None:
        self.tables = list(chamber.axis_table.values())
        self.names = tuple(chamber.axis_table)
        self.flight = flight
        self._interval_s = chamber.tie_interval_s
        self._sweep_s = sweep_time(goal, chamber.analyzer)
        self._dwell_s = dwell_s
        self._state_s = 0.0 if device.states is None else device.states.settle_s
        self.tie_deg = tie_readouts(chamber, device, follows=polarization_scheme(goal, chamber) != "dual-port")
        self._here = np.array([axis.home_deg for axis in self.tables])
        self._reflects = goal.reflection
        self._reflected = range(-1, 0) if device.states is None else range(len(device.states.names))
        self._elapsed_s = 0.0
        self._lines = 0
        self._targets: list[FloatArray] = []
        self._before: list[FloatArray] = []
        self._own_s: list[float] = []
        self._columns: list[tuple[int, int, int, int, int]] = []

    def _add(self, target: FloatArray, own_s: float, *column: int) -> None:
        """Append one point; `own_s` is its time beyond the move to it."""
        self._before.append(self._here)
        self._targets.append(target)
        self._own_s.append(own_s)
        self._columns.append((column[0], column[1], column[2], column[3], column[4]))
        self._here = target

    def single(self, target: FloatArray, role: Role) -> None:
        """Append a point of no slice."""
        self._add(target, self._sweep_s, ROLES.index(role), -1, -1, -1, -1)

    def tie(self) -> None:
        """Append a tie point and start its interval anew; the device's reflection is read before it, where the axes stand."""
        if self._reflects and self._columns[-1][0] != ROLES.index(Role.REFLECTION):
            self.reflections()
        self.single(self.tie_deg, Role.TIE)
        self._elapsed_s = 0.0

    def first_tie(self) -> None:
        """Append the first tie, and the device's reflection in the same place."""
        self.single(self.tie_deg, Role.TIE)
        if self._reflects:
            self.reflections()

    def reflections(self) -> None:
        """Append readings of the device's reflection in each of its states, without a move."""
        here = self._here
        for state in self._reflected:
            switched = self._state_s if state >= 0 else 0.0
            self._add(here, self._sweep_s + switched, ROLES.index(Role.REFLECTION), -1, -1, state, -1)

    @property
    def ends_with_tie(self) -> bool:
        """Tell whether the last point is a tie."""
        return self._columns[-1][0] == ROLES.index(Role.TIE)

    def steps(self, run: PlannedSlice) -> None:
        """Append a slice point by point, with ties in between."""
        times = point_times(run.targets_deg, self._here, self.tables, self._sweep_s)
        switched = (np.diff(run.state_index, prepend=-1) != 0) & (run.state_index >= 0)
        extra = np.where(switched, self._state_s, 0.0) + (self._dwell_s if run.role is Role.SCAN else 0.0)
        role = ROLES.index(run.role)
        for target, seconds, more, state in zip(run.targets_deg, times, extra, run.state_index, strict=True):
            self._add(target, self._sweep_s + float(more), role, run.slice_index, run.pass_index, int(state), -1)
            self._elapsed_s += float(seconds + more)
            if self._elapsed_s >= self._interval_s:
                self.tie()

    def line(self, run: PlannedSlice) -> None:
        """Append a slice that is flown; its time is shared evenly among its points."""
        assert self.flight is not None
        axis = self.names.index(self.flight.axis)
        direction = float(np.sign(run.targets_deg[-1, axis] - run.targets_deg[0, axis]))
        begin, end = run.targets_deg[0].copy(), run.targets_deg[-1].copy()
        begin[axis] -= direction * self.flight.run_up_deg
        end[axis] += direction * self.flight.run_up_deg
        entry = float(approached_time(begin[None], self._here[None], self.tables, run_up=axis)[0])
        entry += self.flight.entry_settle_s
        seconds = entry + line_time(abs(float(end[axis] - begin[axis])), self.flight.speed_deg_s, self.tables[axis])
        role = ROLES.index(run.role)
        for target, state in zip(run.targets_deg, run.state_index, strict=True):
            self._here = target  # the line's time holds its motion
            own_s = seconds / len(run.targets_deg)
            self._add(target, own_s, role, run.slice_index, run.pass_index, int(state), self._lines)
        self._lines += 1
        self._here = end
        self._elapsed_s += seconds
        if self._elapsed_s >= self._interval_s:
            self.tie()

    def path(self) -> Path:
        """Return everything collected."""
        role, slices, passes, states, lines = np.array(self._columns, np.int64).T.copy()
        path = Path(
            self.names,
            np.stack(self._targets),
            role,
            slices,
            passes,
            states,
            lines,
            np.zeros(len(role)),
            np.stack(self._before),
            np.array(self._own_s),
            self.flight,
        )
        return replace(path, time_s=path.time_with(self.tables, 0.0))


def _with_ties(
    chamber: Chamber,
    goal: Goal,
    runs: list[PlannedSlice],
    flight: FlightSpeed | None,
    device: Device,
    dwell_s: float = 0.0,
) -> Path:
    layout = _PathBuilder(chamber, goal, flight, device, dwell_s)
    for here in reference_readouts(chamber, device, polarization_scheme(goal, chamber)):
        for _ in range(chamber.reference.sweeps):
            layout.single(here, Role.REFERENCE)
    for place in _cable_turns(chamber, runs, layout.tie_deg):
        layout.single(place, Role.CABLE)
    layout.first_tie()
    for run in runs:
        if run.line:
            layout.line(run)
        else:
            layout.steps(run)
    if not layout.ends_with_tie:
        layout.tie()
    return layout.path()


def _cable_turns(chamber: Chamber, runs: list[PlannedSlice], rest_deg: FloatArray) -> Iterator[FloatArray]:
    """Yield readouts that turn each axis of the device there and back over the scan's travel, the others at rest."""
    if chamber.cable is None:
        return
    reached = np.concatenate([run.targets_deg for run in runs])
    for index in range(2):
        low, high = (float(end) for end in (reached[:, index].min(), reached[:, index].max()))
        count = max(4, int(np.ceil((high - low) / chamber.cable.step_deg))) + 1
        there = np.linspace(low, high, count)
        for value in np.concatenate([there, there[::-1]]):
            target = rest_deg.copy()
            target[index] = value
            yield target
