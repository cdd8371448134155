"""What proves a flown line at its end: positions that the controller latched at its pulses, sweeps that the analyzer has kept."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from contextlib import contextmanager, suppress
from dataclasses import dataclass, field, replace

import numpy as np

from colure.acquire.journal import Row
from colure.acquire.station import Station, blame
from colure.errors import InstrumentError
from colure.geometry.conventions import FloatArray
from colure.geometry.move_times import move_time
from colure.instruments.protocols import (
    AxesStatus,
    PositionLatch,
    PulseWaiter,
    Sweep,
    Watch,
    point_taker_of,
    sweep_keeper_of,
)
from colure.model.plan import Plan
from colure.values import holds_arrays

#: A pulse belongs to the place that it was planned for if it was given within this share of a step of it.
OFF_SHARE = 0.25
#: Two neighbouring pulses come so much earlier or later than planned at most, as a share of the time between them.
NEIGHBOUR_SHARE = 0.5
#: An axis that flies faster or slower by more than this share reads every frequency elsewhere than its line says (common
#: practice, no source); a readout may be as old as the second number, seconds.
SPEED_SHARE, OLD_S = 0.05, 0.1


@dataclass(frozen=True, kw_only=True)
@holds_arrays
class PulseTrain:
    """The pulses of one flight: the swept axis, its name, and the readouts at which its sweeps are to begin, evenly spaced.

    modulo_deg
        Turn after which the axis' readout begins anew; None if it does not.
    each
        How many pulses a sweep takes: 1, or one for every frequency, evenly spread over the way to the next sweep.
    """

    axis: int
    name: str
    places_deg: FloatArray
    step_deg: float
    speed_deg_s: float
    modulo_deg: float | None
    each: int = 1

    @property
    def count(self) -> int:
        """How many sweeps there must be."""
        return int(self.places_deg.size)

    @property
    def pulses(self) -> int:
        """How many pulses there must be."""
        return self.count * self.each

    @property
    def pulse_step_deg(self) -> float:
        """Signed way from one pulse to the next."""
        return self.step_deg / self.each

    def number_at(self, place_deg: float) -> int:
        """Return which pulse comes at a place of the line."""
        return round((place_deg - float(self.places_deg[0])) / self.step_deg)

    def require(self, latched_deg: Sequence[float]) -> FloatArray:
        """Return the readout of every sweep's place, whole turns counted.

        Where every frequency has a pulse it is the mean of what all pulses of the sweep say of it.

        Raises
        ------
        InstrumentError
            If they are not as many as the pulses, or one of them is another pulse's.
        """
        if len(latched_deg) != self.pulses:
            first, last = self._planned_deg[[0, -1]]
            raise InstrumentError(
                f"line: the controller latched {len(latched_deg)} positions of {self.name}, must be {self.pulses}, one for every pulse from "
                f"{first:.3f} to {last:.3f} deg"
            )
        return self.by_sweep(self.require_first(latched_deg))

    @property
    def _planned_deg(self) -> FloatArray:
        """Where every pulse is to come."""
        beyond = self.pulse_step_deg * np.arange(self.each)
        return np.asarray((self.places_deg[:, None] + beyond).ravel())

    def require_first(self, latched_deg: Sequence[float]) -> FloatArray:
        """Return the readouts of the first pulses, as many as were latched, whole turns counted.

        Raises
        ------
        InstrumentError
            If one of them is another pulse's, or they are more than there are pulses.
        """
        latched = np.asarray(latched_deg, float)
        if latched.size > self.pulses:
            raise InstrumentError(
                f"line: the controller latched {latched.size} positions of {self.name}, must be {self.pulses} at most"
            )
        planned = self._planned_deg[: latched.size]
        if self.modulo_deg is not None:
            latched = latched + self.modulo_deg * np.round((planned - latched) / self.modulo_deg)
        off, limit = np.abs(latched - planned), OFF_SHARE * abs(self.pulse_step_deg)
        # Said so that a `nan` is refused as well.
        if not np.all(off <= limit):
            worst = int(np.argmax(np.where(np.isfinite(off), off, np.inf)))
            raise InstrumentError(
                f"line: pulse {worst + 1} of {self.pulses} was latched at {latched[worst]:.4f} deg of {self.name}, planned at "
                f"{planned[worst]:.4f} deg, limit {limit:.4f} deg apart"
            )
        return latched

    def by_sweep(self, latched_deg: FloatArray) -> FloatArray:
        """Return the readout of every sweep's place: the mean of what all its pulses say of it; of a begun sweep nothing."""
        whole = latched_deg.size // self.each
        beyond = self.pulse_step_deg * np.arange(self.each)
        return np.asarray(np.mean(latched_deg[: whole * self.each].reshape(whole, self.each) - beyond, axis=1))

    def require_even(self, begun_s: FloatArray) -> None:
        """Raise `InstrumentError` unless sweeps began as the pulses came: a pulse lost and another doubled leave their number alone."""
        period_s = abs(self.step_deg) / self.speed_deg_s
        late_s = begun_s - period_s * np.arange(self.count)
        late_s = late_s - np.median(late_s)
        if not np.all(np.abs(late_s) <= OFF_SHARE * period_s):
            worst = int(np.argmax(np.where(np.isfinite(late_s), np.abs(late_s), np.inf)))
            raise InstrumentError(
                f"line: sweep {worst + 1} of {self.count} began {late_s[worst]:+.4f} s from where its pulse belongs, limit "
                f"{OFF_SHARE * period_s:.4f} s: a pulse was lost, and another heard twice"
            )


def train_of_one(plan: Plan) -> PulseTrain:
    """Return the least train of a plan: what the analyzer is let wait for where nothing flies."""
    axis, step_deg = plan.axes.index(plan.settings["fly_axis"]), float(plan.settings["swept_step_deg"])
    return PulseTrain(
        axis=axis, name=plan.axes[axis], places_deg=np.zeros(1), step_deg=step_deg,
        speed_deg_s=float(plan.settings["fly_speed_deg_s"]), modulo_deg=None, each=plan.pulses_each,
    )  # fmt: skip


def require_each(train: PulseTrain, begun_s: FloatArray) -> None:
    """Raise `InstrumentError` unless frequencies began one pulse after the other.

    A lost pulse leaves a gap of two, a doubled one nearly none: neighbours tell that, however unevenly the axis runs over a line.
    """
    period_s = abs(train.pulse_step_deg) / train.speed_deg_s
    gaps_s = np.diff(begun_s)
    if not np.all(np.abs(gaps_s - period_s) <= NEIGHBOUR_SHARE * period_s):
        off = np.abs(gaps_s - period_s)
        worst = int(np.argmax(np.where(np.isfinite(off), off, np.inf)))
        raise InstrumentError(
            f"line: frequency {worst + 2} of {train.pulses} began {gaps_s[worst]:.6f} s after the one before, pulses come every "
            f"{period_s:.6f} s, limit {100.0 * NEIGHBOUR_SHARE:g} % off: a pulse was lost, and another heard twice"
        )


@dataclass
class Looks:
    """What was seen of the swept axis on its way: moments (seconds) and readouts (degrees) along the line."""

    train: PulseTrain
    station: Station
    seen: list[tuple[float, float]] = field(default_factory=list)

    def beside(self, watch: Watch) -> Watch:
        """Return a watch that also remembers where the swept axis was."""
        low, high = sorted((float(self.train.places_deg[0]), float(self.train.places_deg[-1])))

        def look(status: AxesStatus | None) -> None:
            watch(status)
            last = self.station.guard.last_deg
            if status is not None and last is not None and low <= last[self.train.axis] <= high:
                self.seen.append((self.station.clock.monotonic(), float(last[self.train.axis])))

        return look

    def require_speed(self, way_deg: float, took_s: float) -> None:
        """Raise `InstrumentError` unless the axis has flown as fast as planned, by two looks or by the time of the whole move."""
        if not self.station.clock.real_time:
            return
        axis = list(self.station.guard.axes.values())[self.train.axis]
        if len(self.seen) > 1:
            (one_s, one), (two_s, two) = self.seen[0], self.seen[-1]
            over_s = two_s - one_s
            share = abs(two - one) / max(over_s, 1e-9) / self.train.speed_deg_s
        else:
            over_s = float(move_time(way_deg, self.train.speed_deg_s, axis.acceleration_deg_s2, axis.jerk))
            share = over_s / max(took_s, 1e-9)
        if abs(share - 1.0) > SPEED_SHARE + OLD_S / max(over_s, 1e-9):
            raise InstrumentError(
                f"line: axis {self.train.name} flew at {share * self.train.speed_deg_s:.3f} deg/s, planned "
                f"{self.train.speed_deg_s:.3f} deg/s, limit {100.0 * SPEED_SHARE:g} %"
            )


@contextmanager
def awaiting(station: Station) -> Iterator[bool]:
    """Let the analyzer wait for the pulse of its next sweep, which is read as any other; tells whether it said so.

    Raises
    ------
    InstrumentError
        If it does not wait in time; the axis has not moved then.
    """
    analyzer = station.analyzer
    waiter = analyzer if isinstance(analyzer, PulseWaiter) else None
    try:
        with blame("analyzer"):
            told = waiter is not None and station.patiently(waiter.await_pulse)
        yield told
    finally:
        # After a stop, or a move that did not begin: the next sweep is not to wait for a pulse.
        if waiter is not None:
            with suppress(InstrumentError):
                waiter.give_up()


@contextmanager
def armed(station: Station, train: PulseTrain) -> Iterator[None]:
    """Let the analyzer keep sweeps, with place for one more than there are pulses: a pulse too many must show.

    Raises
    ------
    InstrumentError
        If the receiver cannot do that, or is not ready for pulses in time; the axis has not moved then.
    """
    with blame("analyzer"):
        keeper = sweep_keeper_of(station.analyzer)
        taker = point_taker_of(station.analyzer) if train.each > 1 else None

    def arm() -> None:
        if taker is not None:
            taker.point_by_point(on=True)
        keeper.arm(train.count + 1)

    def disarm() -> None:
        keeper.disarm()
        if taker is not None:
            taker.point_by_point(on=False)

    with station.sweeping_somewhere():
        try:
            with blame("analyzer"):
                station.patiently(arm)
            yield
        except BaseException:
            # Whatever ended the line: the next sweep is not to wait for a pulse.
            with suppress(InstrumentError):
                disarm()
            raise
        with blame("analyzer"):
            disarm()


def kept_sweeps(station: Station, train: PulseTrain) -> list[Sweep]:
    """Fetch the sweeps of a line; raises `InstrumentError` unless there is one for every pulse."""
    keeper = sweep_keeper_of(station.analyzer)
    with blame("analyzer"):
        count = station.patiently(keeper.kept)
        if count != train.count:
            why = "a pulse was not heard, or came during a sweep" if count < train.count else "a pulse was heard twice"
            more = " or more" if count > train.count else ""
            raise InstrumentError(f"line: the analyzer kept {count}{more} sweeps of {train.pulses} pulses: {why}")
        if train.each > 1:
            taker = point_taker_of(station.analyzer)
            heard = station.patiently(taker.pulses_heard)
            if heard != train.pulses:
                why = (
                    "a pulse was not heard, or came during a frequency"
                    if heard < train.pulses
                    else "a pulse was heard twice"
                )
                raise InstrumentError(
                    f"line: the analyzer heard {heard} of {train.pulses} pulses, one for every frequency: {why}"
                )
            each_s = station.patiently(lambda: taker.point_moments(heard))
            if each_s is not None:
                require_each(train, each_s)
        begun_s = station.patiently(lambda: keeper.moments(count))
        if begun_s is not None:
            train.require_even(begun_s)
        return station.patiently(lambda: keeper.fetch(count))


def read_latches(latch: PositionLatch, train: PulseTrain) -> FloatArray:
    """Read what the controller latched; raises as `PulseTrain.require`."""
    with blame("axes"):
        return train.require(latch.latched(train.name, train.pulses))


def at_latched(row: Row, train: PulseTrain, latched_deg: FloatArray) -> Row:
    """Return a row whose readout of the swept axis is the one that was latched at its pulse."""
    readback = row.readback_deg.copy()
    readback[train.axis] = latched_deg[train.number_at(float(row.commanded_deg[train.axis]))]
    return replace(row, readback_deg=readback)
