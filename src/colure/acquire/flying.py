"""On the fly: one slice as one continuous motion, sweeps at the planned places of the swept axis."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

import numpy as np

from colure.acquire.journal import Row
from colure.acquire.latched import Looks, PulseTrain, armed, at_latched, awaiting, kept_sweeps, read_latches
from colure.acquire.station import Station, blame
from colure.acquire.stopped import kept_at_stop, latched_at_stop
from colure.errors import InstrumentError
from colure.geometry.conventions import FloatArray, IntArray
from colure.geometry.move_times import ramp_time
from colure.instruments.protocols import HeldError, LostError, PositionLatch, Sweep, latch_of
from colure.model.plan import ROLES, Role
from colure.values import holds_arrays


@dataclass(frozen=True, kw_only=True)
@holds_arrays
class Flight:
    """One line: from run-up to run-out, at constant speed between.

    indices
        (point,) plan points to be swept, in flight order: those still missing, and a neighbour of a single one.
    missing
        Those of them that are kept.
    places_deg
        (point,) readouts of the swept axis at which their sweeps begin.
    step_deg
        Signed distance between neighbours of the whole line.
    """

    indices: IntArray
    missing: frozenset[int]
    axis: int
    places_deg: FloatArray
    from_deg: FloatArray
    to_deg: FloatArray
    step_deg: float
    speed_deg_s: float

    @property
    def direction(self) -> float:
        """+1 or -1: which way the swept axis runs."""
        return float(np.sign(self.to_deg[self.axis] - self.from_deg[self.axis]))

    @property
    def per_s(self) -> float:
        """Share of the line per second at constant speed."""
        return self.speed_deg_s / abs(float(self.to_deg[self.axis] - self.from_deg[self.axis]))


def flight_of(station: Station, line: IntArray, missing: IntArray) -> Flight:
    """Lay out the motion that visits the missing points of a line, whatever else it passes.

    A line that was interrupted is entered just before its first missing point.
    """
    plan = station.plan
    axis = plan.axes.index(plan.settings["fly_axis"])
    targets = plan.targets_deg[line]
    step = float(targets[-1, axis] - targets[0, axis]) / max(1, len(line) - 1)
    direction = float(np.sign(step))
    swept = _swept(line, missing) if plan.settings["trigger"] == "position" else missing
    wanted = plan.targets_deg[swept]
    run_up = float(plan.settings["run_up_deg"])
    from_deg, to_deg = wanted[0].copy(), wanted[-1].copy()
    from_deg[axis] -= direction * run_up
    to_deg[axis] += direction * run_up
    speed = float(plan.settings["fly_speed_deg_s"])
    return Flight(
        indices=swept,
        missing=frozenset(missing.tolist()),
        axis=axis,
        places_deg=wanted[:, axis],
        from_deg=from_deg,
        to_deg=to_deg,
        step_deg=step,
        speed_deg_s=speed,
    )


def _swept(line: IntArray, missing: IntArray) -> IntArray:
    """Return the points to be swept: one pulse alone says nothing of the speed, so a single point takes a neighbour along."""
    if missing.size != 1 or line.size == 1:
        return missing
    number = int(np.flatnonzero(line == missing[0])[0])
    return line[number : number + 2] if number + 1 < line.size else line[number - 1 :]


def fly(station: Station, flight: Flight) -> Iterator[Row]:
    """Fly a line and hand over every point as soon as its place is proven: at the end of the line where only the count proves it.

    Points whose moment was missed are left out; the engine flies them again.

    Raises
    ------
    InstrumentError
        If an instrument fails on the way; axes come to rest at the end of the line or held.
    """
    plan = station.plan
    role = ROLES[plan.role[flight.indices[0]]]
    triggered, buffered = plan.settings["trigger"] == "position", bool(plan.settings.get("buffered"))
    train = train_of(station, flight)
    latch = latch_of(station.axes, train.name) if triggered else None
    if buffered and latch is None:
        raise InstrumentError(
            "axes profile: `latched` is empty, sweeps that the analyzer keeps cannot be counted against pulses; buffered = false (goal.toml)"
        )
    # What the run-up leaves of the settling is waited for here.
    shown = station.move(flight.from_deg, settle_s=float(plan.settings["entry_settle_s"]), run_up=flight.axis)
    station.require_entry(int(flight.indices[0]), flight.from_deg, shown)
    station.prepare(role, station.state_of(int(flight.indices[0])), external=triggered)
    station.guard.check_path(np.stack([flight.from_deg, flight.to_deg]), "line")
    if triggered:
        with blame("axes"):
            station.axes.pulses(
                train.name, start_deg=float(flight.places_deg[0]), step_deg=train.pulse_step_deg, count=train.pulses
            )
    station.look_back(plan.targets_deg[flight.indices[0]])
    counted: list[Row] = []
    try:
        if buffered and latch is not None:
            with armed(station, train):
                counted += _buffered(station, flight, role, train, latch, counted)
        elif triggered:
            with awaiting(station):
                way = _by_position(station, flight, role, counted, latches=latch is not None)
                yield from _flown(station, flight, Looks(train, station), way)
        else:
            yield from _flown(station, flight, Looks(train, station), _by_time(station, flight, role))
    except (HeldError, LostError):
        # Instruments that a stop leaves waiting for a pulse may fall silent before it is noticed.
        if latch is not None and station.stopped_softly:
            yield from _proven_at_stop(station, flight, train, latch, counted)
        raise
    if latch is not None:
        latched = read_latches(latch, train)
        counted = [at_latched(row, train, latched) for row in counted]
    yield from (row for row in counted if row.plan_index in flight.missing)


def _proven_at_stop(
    station: Station, flight: Flight, train: PulseTrain, latch: PositionLatch, counted: list[Row]
) -> list[Row]:
    """Return the rows of a slice that was stopped whose places are proven: by counts, or by the axis' report, and by latched positions.

    Read one by one, sweeps and pulses are as many only at the end of a slice: where steps are small beside what the axis' report
    may be off, nothing tells one place from the next after a stop.
    """
    latched = latched_at_stop(train, latch)
    numbers = [train.number_at(float(row.commanded_deg[train.axis])) for row in counted]
    if not station.plan.settings.get("buffered") and (max(numbers, default=0) < 1 or not _tells_steps(station, flight)):
        return []
    return [at_latched(row, train, latched) for number, row in zip(numbers, counted, strict=True)
            if number < latched.size and row.plan_index in flight.missing]  # fmt: skip


def train_of(station: Station, flight: Flight) -> PulseTrain:
    """Return the pulses of a flight: one at every place of its line between the first and the last that are wanted."""
    span = float(flight.places_deg[-1] - flight.places_deg[0])
    count = round(span / flight.step_deg) + 1
    name = station.plan.axes[flight.axis]
    return PulseTrain(
        axis=flight.axis,
        name=name,
        places_deg=float(flight.places_deg[0]) + flight.step_deg * np.arange(count, dtype=np.float64),
        step_deg=flight.step_deg,
        speed_deg_s=flight.speed_deg_s,
        modulo_deg=station.guard.axes[name].modulo_deg,
        each=station.plan.pulses_each,
    )


def _flown(station: Station, flight: Flight, looks: Looks, rows: Iterable[Row]) -> Iterator[Row]:
    """Turn the axis through its line, hand over what is measured on the way, and wait for its end."""
    watch = station.watch(flight.to_deg, per_s=flight.per_s)
    sweep_s = float(station.plan.settings["sweep_s"])
    with station.guarded(limit_s=max(0.5, 5.0 * sweep_s)), blame("axes"):
        here = station.guard.wire(flight.from_deg)
        station.sent_deg = flight.to_deg
        station.axes.begin(station.guard.wire(flight.to_deg), per_s=flight.per_s, from_deg=here)
        watch.begun()
        yield from rows
        station.guard.readouts(station.axes.finish(0.0, looks.beside(watch), limit_s=2.0 * watch.expected_s + 10.0))


def _buffered(
    station: Station, flight: Flight, role: Role, train: PulseTrain, latch: PositionLatch, before_stop: list[Row]
) -> list[Row]:
    """Fly a line whose sweeps the analyzer keeps, fetch them, and return the rows of the points that are wanted.

    A line is as long before its middle as after it: the middle of its time is that of its way, from which every pulse has its moment.
    After a stop the rows that it leaves are put into `before_stop`; its beginning gives their moments.
    """
    looks = Looks(train, station)
    with blame("analyzer"):
        begin_s = station.patiently(station.analyzer.clock_s)
    left_s = station.clock.monotonic()
    try:
        for _ in _flown(station, flight, looks, ()):
            pass
    except HeldError:
        axis = station.guard.axes[train.name]
        ramp_s = float(ramp_time(flight.speed_deg_s, axis.acceleration_deg_s2, axis.jerk))
        left = (float(flight.from_deg[flight.axis]), begin_s + 0.5 * ramp_s)
        before_stop += _rows_kept(station, flight, role, train, kept_at_stop(station, train, latch), left)
        raise
    took_s = station.clock.monotonic() - left_s
    with blame("analyzer"):
        end_s = station.patiently(station.analyzer.clock_s)
    with blame("axes"):
        looks.require_speed(abs(float(flight.to_deg[flight.axis] - flight.from_deg[flight.axis])), took_s)
    middle = 0.5 * float(flight.from_deg[flight.axis] + flight.to_deg[flight.axis])
    return _rows_kept(station, flight, role, train, kept_sweeps(station, train), (middle, 0.5 * (begin_s + end_s)))


def _rows_kept(
    station: Station, flight: Flight, role: Role, train: PulseTrain, sweeps: list[Sweep], passed: tuple[float, float]
) -> list[Row]:
    """Return the rows of a line's sweeps that are wanted; at constant speed it `passed` a place (degrees) at a moment (seconds)."""
    plan = station.plan
    wanted = {
        train.number_at(float(place)): int(index)
        for place, index in zip(flight.places_deg, flight.indices, strict=True)
    }
    rows = []
    for number, (kept, place) in enumerate(zip(sweeps, train.places_deg.tolist(), strict=False)):
        moment = passed[1] + flight.direction * (place - passed[0]) / flight.speed_deg_s
        shown = plan.targets_deg[int(flight.indices[0])].copy()
        shown[flight.axis] = place
        # Of every sweep, wanted or not: one that equals the one before, bit for bit, is a frozen one.
        sweep = station.fresh(kept, shown)
        if number in wanted:
            index = wanted[number]
            rows.append(station.row(index, role, moment, plan.targets_deg[index], shown, sweep, _rate(flight)))
    return rows


def _by_position(station: Station, flight: Flight, role: Role, counted: list[Row], *, latches: bool) -> Iterator[Row]:
    """Every pulse starts a sweep: the place is the pulse's, the moment tells which pulse it was.

    If the first pulse was not heard, every sweep looks like that of the place before. The axis' own report tells, where steps are
    large beside what it may be off. Elsewhere sweeps and pulses are counted against each other: rows wait in `counted` until the
    last pulse has come in its time after the first; it is waited for in vain if one was missed. So do they where the controller
    latches positions, which are read at the end. After a trace that was refused, and that nobody has seen, the next one may be
    the same again: neither is kept.
    The first point is kept once the second pulse has come in time: until then nobody knows how fast the axis runs.
    """
    period = abs(flight.step_deg) / flight.speed_deg_s
    sweep_s = float(station.plan.settings["sweep_s"])
    first: float | None = None
    rate = _rate(flight)
    travelled = np.abs(flight.places_deg - flight.places_deg[0]) / flight.speed_deg_s
    # A first pulse whose trace was refused lets every later sweep look like that of the place before.
    refused = shifted = False
    number, timed, told = -1, False, _tells_steps(station, flight) and not latches
    while True:
        # Of which place it is, if it cannot be read: the next pulse's.
        due = station.plan.targets_deg[flight.indices[min(number + 1, flight.indices.size - 1)]]
        try:
            with blame("analyzer"):
                # Nobody knows which pulse comes after one whose trace was refused.
                sweep = station.sweep(None if refused else due, station.analyzer.sweep)
                moment = station.analyzer.clock_s() - sweep_s
        except InstrumentError as error:
            # A trace that was refused spoils two points only, which are flown again, where the others wait for the last pulse.
            if told or type(error) is not InstrumentError:
                raise
            refused, shifted = True, shifted or first is None
            continue
        first = moment if first is None else first
        number = int(np.argmin(np.abs(travelled - (moment - first))))
        late = abs(float(travelled[number]) - (moment - first))
        if late >= 0.25 * period:
            # Of a point that is not wanted: a frozen analyzer may hand its trace over at the next one.
            passed = station.plan.targets_deg[int(flight.indices[0])].copy()
            passed[flight.axis] += flight.direction * flight.speed_deg_s * (moment - first)
            station.fresh(sweep, None if refused or shifted else passed)
        else:
            index = int(flight.indices[number])
            shown = station.plan.targets_deg[index].copy()
            sweep = station.fresh(sweep, None if refused or shifted else shown)
            _check_place(station, flight, moment, sweep_s, float(flight.places_deg[number]))
            if not refused:
                counted.append(station.row(index, role, moment, station.plan.targets_deg[index], shown, sweep, rate))
            timed |= number > 0
            if timed and told:
                yield from (row for row in counted if row.plan_index in flight.missing)
                counted.clear()
        refused = False
        if moment - first > float(travelled[-1]) - 0.5 * period:
            if not timed:
                counted.clear()
            return


def _may_be_off_deg(station: Station, flight: Flight) -> float:
    """Return how far an axis' report, read while it turns, may be off where a pulse says it was."""
    axis = list(station.guard.axes.values())[flight.axis]
    return axis.following_error_deg + 0.1 * flight.speed_deg_s


def _tells_steps(station: Station, flight: Flight) -> bool:
    """Tell whether the axis' report cannot take one step for the next; in virtual time no pulse is missed."""
    return not station.clock.real_time or 2.0 * _may_be_off_deg(station, flight) < abs(flight.step_deg)


def _check_place(station: Station, flight: Flight, moment: float, sweep_s: float, place: float) -> None:
    """Compare the axis' own report with where the pulse says it was: a lost pulse must not shift a line."""
    shown = float(station.look()[flight.axis])
    if not station.clock.real_time:
        return
    expected = place + flight.direction * flight.speed_deg_s * sweep_s
    limit = _may_be_off_deg(station, flight)
    if abs(shown - expected) > limit:
        raise InstrumentError(
            f"line: axis stands at {shown:.3f} deg after the pulse at {place:.3f} deg, limit {limit:.3f} deg apart"
        )


def _by_time(station: Station, flight: Flight, role: Role) -> Iterator[Row]:
    """Sweeps are started by the computer's clock; positions read before and after place them."""
    clock, direction = station.clock, flight.direction
    sweep_s = float(station.plan.settings["sweep_s"])
    before_s, before = _stamp(station, flight.axis)
    for index, place in zip(flight.indices, flight.places_deg, strict=True):
        # Wait for the place, by the speed last seen; the first ramp corrects itself at every look.
        while (left := direction * (float(place) - before)) > 1.5 * flight.speed_deg_s * sweep_s:
            clock.sleep(min(0.02, left / flight.speed_deg_s))
            before_s, before = _stamp(station, flight.axis)
        clock.sleep(max(0.0, left / flight.speed_deg_s - (clock.monotonic() - before_s)))
        begin = clock.monotonic()
        with blame("analyzer"):
            moment = station.analyzer.clock_s()
            sweep = station.sweep(station.plan.targets_deg[int(index)], station.analyzer.sweep)
        after_s, after = _stamp(station, flight.axis)
        speed = (after - before) / max(after_s - before_s, 1e-9)
        at = before + speed * (begin - before_s)
        before_s, before = after_s, after
        shown = station.plan.targets_deg[int(index)].copy()
        shown[flight.axis] = at
        # Whether its point is kept or not: a frozen analyzer may hand this trace over at the next one.
        sweep = station.fresh(sweep, shown)
        if abs(at - float(place)) > 0.5 * abs(flight.step_deg) or abs(speed) < 0.9 * flight.speed_deg_s:
            continue  # too late, or not at constant speed yet: flown again
        rate = _rate(flight) * (speed / (direction * flight.speed_deg_s))
        yield station.row(int(index), role, moment, station.plan.targets_deg[int(index)], shown, sweep, rate)


def _stamp(station: Station, axis: int) -> tuple[float, float]:
    """Read the swept axis between two looks at the clock; the middle is the moment of the reading."""
    one = station.clock.monotonic()
    place = float(station.look()[axis])
    return 0.5 * (one + station.clock.monotonic()), place


def _rate(flight: Flight) -> FloatArray:
    out = np.zeros(flight.from_deg.size)
    out[flight.axis] = flight.direction * flight.speed_deg_s
    return out
