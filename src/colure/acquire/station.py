"""The chamber as the engine handles it: one point is moved to, proven and measured here."""

from __future__ import annotations

import threading
import time
from collections.abc import Callable, Iterator
from concurrent.futures import ThreadPoolExecutor
from concurrent.futures import TimeoutError as NotYetError
from contextlib import AbstractContextManager, contextmanager
from dataclasses import replace
from typing import Any, TypeVar

import numpy as np

from colure.acquire.clocks import Clock
from colure.acquire.control import Control
from colure.acquire.freshness import UNKNOWN, Freshness, SweptView
from colure.acquire.guard import Guard, MotionWatch
from colure.acquire.journal import Row
from colure.acquire.run_time import RunTime
from colure.acquire.watchdog import Watchdog
from colure.errors import InstrumentError, MotionError
from colure.geometry.conventions import FloatArray
from colure.instruments.contacts import Contacts
from colure.instruments.protocols import (
    AnalyzerDriver,
    AxesDriver,
    HeldError,
    LostError,
    StateDriver,
    Sweep,
    SweepSettings,
    require_segments,
)
from colure.instruments.sensors import Sensors
from colure.model.chamber import Chamber
from colure.model.device import Device, States
from colure.model.plan import ROLES, Plan, Role
from colure.model.record import Flag

T = TypeVar("T")
CHANNELS = {
    Role.SCAN: 1, Role.TIE: 1, Role.RESUME: 1, Role.TURN: 1, Role.REFERENCE: 2, Role.CABLE: 3, Role.REFLECTION: 1,
}  # fmt: skip
#: How often the engine looks up while an instrument answers, real seconds.
LOOK_S = 0.05
#: A watchdog's hold is waited for this long, seconds, before a recovery begins.
BRAKE_LIMIT_S = 5.0


def device_of(plan: Plan, chamber: Chamber) -> Device | None:
    """Return the device that a plan was made for where solids of a mount with joints must not touch it."""
    told = plan.inputs.get("device") if chamber.positioner.solids else None
    return None if told is None else Device.model_validate(told)


class Station:
    """Instruments, guard and clock of one run, and what they are set to at the moment."""

    def __init__(
        self,
        plan: Plan,
        chamber: Chamber,
        *,
        analyzer: AnalyzerDriver,
        axes: AxesDriver,
        states: StateDriver | None,
        state_table: States | None,
        clock: Clock,
        control: Control,
        watchdog: Watchdog | None,
        contacts: Contacts | None = None,
        sensors: Sensors | None = None,
        sensor_names: tuple[str, ...] = (),
    ) -> None:
        self.plan = plan
        self.contacts = contacts or Contacts()
        self._sensors, self._sensor_names = sensors or Sensors(), sensor_names
        self.analyzer = analyzer
        self.axes = axes
        self.states = states
        self.clock = clock
        self.guard = Guard(
            chamber,
            plan.axes,
            clock,
            coordinated=axes.coordinated,
            one_by_one=axes.one_by_one,
            device=device_of(plan, chamber),
        )
        self._state_table = state_table
        self._control = control
        self._watchdog = watchdog
        self._settle_s = {name: axis.settle_s for name, axis in self.guard.axes.items()}
        self._approach_deg = np.array([axis.approach_deg for axis in self.guard.axes.values()])
        self._worker = None if watchdog is None else ThreadPoolExecutor(1, thread_name_prefix="sweep")
        #: Why the watchdog braked the axes; the engine takes it for a lost line and recovers.
        self.late = ""
        self._braked = threading.Event()
        self._braked.set()
        if watchdog is not None:
            axes.heard = watchdog.alive
        #: Where the axes were sent last; None until they were.
        self.sent_deg: FloatArray | None = None
        self._fresh = Freshness(analyzer)
        self.run_time = RunTime(clock)
        self._lost: set[str] = set()
        self.forget()

    def forget(self) -> None:
        """Take nothing for granted about switch, state and trigger any more."""
        self._channel: int | None = None
        self._state: int | None = None
        self._external: bool | None = None

    def settings(self) -> SweepSettings:
        """Return the plan's trace settings."""
        return SweepSettings.of_plan(self.plan.settings)

    def configure(self) -> dict[str, Any]:
        """Set the receiver up and return its settings as read back."""
        settings = self.settings()
        with blame("analyzer"):
            require_segments(self.analyzer, settings)
            settings_read = self.analyzer.configure(settings, self.plan.ports)
        self.forget()
        return settings_read

    def look(self) -> FloatArray:
        """Read where the axes stand; raises if an alarm stands, the door is open or a stop was asked for."""
        self.alive()
        with blame("axes"):
            begin = time.monotonic()
            status = self.axes.status()
            if self._watchdog is not None:
                self._watchdog.exchange_took(time.monotonic() - begin)
            readouts = self.guard.readouts(status)
        self.guard.require_safe(status)
        return readouts

    def move(self, target_deg: FloatArray, *, settle_s: float | None = None, run_up: int | None = None) -> FloatArray:
        """Move all axes to a position, watched all the way, and return the readout.

        An axis with `approach_deg` that comes from above goes below its target first.

        settle_s
            Rest at the end; the longest settling of a moved axis by default.
        run_up
            The axis that runs on from here, if one does: it needs no approach.
        """
        start = self.look() if self.guard.last_deg is None else self.guard.last_deg
        approach = self._approach_deg.copy()
        if run_up is not None:
            approach[run_up] = 0.0
        below = target_deg - np.where(target_deg < start - 1e-9, approach, 0.0)
        if np.any(below < target_deg):
            self._move(start, below, 0.0)
        return self._move(start, target_deg, settle_s)

    def _move(self, start: FloatArray, target_deg: FloatArray, settle_s: float | None) -> FloatArray:
        """Make one move; `start` says which axes have to settle after it."""
        assert self.guard.last_deg is not None  # `move` has looked
        self.guard.check_path(np.stack([self.guard.last_deg, target_deg]), "next move")
        moved = np.abs(target_deg - start) > 1e-9
        longest = max((s for s, m in zip(self._settle_s.values(), moved, strict=True) if m), default=0.0)
        settle = longest if settle_s is None else settle_s
        watch = self.watch(target_deg)
        self.sent_deg = target_deg
        with self.guarded(), blame("axes"):
            self.axes.begin(self.guard.wire(target_deg), from_deg=self.guard.wire(self.guard.last_deg))
            watch.begun()
            # A sane controller is done long before; its own words (stall, hold) usually come first.
            status = self.axes.finish(settle, watch, limit_s=2.0 * watch.expected_s + settle + 10.0)
            return self.guard.readouts(status)

    def watch(self, target_deg: FloatArray, *, per_s: float | None = None) -> MotionWatch:
        """Return the eye on one move; it also keeps the watchdog quiet and notices a stop."""
        return MotionWatch(self.guard, target_deg, self.clock, per_s=per_s, also=self.alive)

    @property
    def stopping(self) -> bool:
        """Tell whether somebody asked for the end of the run."""
        return self._control.stopping

    @property
    def stopped_softly(self) -> bool:
        """Tell whether somebody asked for the end of the run, and not for the drives' power to be taken away."""
        return self._control.stopping and not self._control.aborting

    def in_time(self, action: Callable[[], T], limit_s: float) -> T:
        """Run a blocking call beside us after a stop; raises `LostError` if it takes longer."""
        if self._worker is None:
            return action()
        try:
            return self._worker.submit(action).result(timeout=limit_s)
        except NotYetError:
            raise LostError(f"no answer within {limit_s:g} s after a stop") from None

    def alive(self) -> None:
        """Tell the watchdog that we are here, and raise what happened beside us.

        Raises
        ------
        HeldError
            If a stop was asked for.
        DoorOpenError, MotionError
            If the interlock chain has opened since it was acknowledged.
        LostError
            If the watchdog has braked.
        """
        self.heed()
        self.contacts.require_never_opened()
        self.raise_late()

    def heed(self) -> None:
        """Tell the watchdog that we are here; raises `HeldError` if a stop was asked for."""
        if self._watchdog is not None:
            self._watchdog.alive()
        if self._control.stopping:
            raise HeldError(self._control.reason)

    def brake_late(self, reason: str, brake: Callable[[], None]) -> None:
        """Let the watchdog's thread brake; whoever waits for the axes then finds why."""
        self._braked.clear()
        self.late = reason
        try:
            brake()
        finally:
            self._braked.set()

    def raise_late(self) -> None:
        """Raise `LostError` if the watchdog has braked the axes meanwhile."""
        if self.late:
            # A hold that is still on its way would arrive after the recovery's release, and look like somebody else's.
            self._braked.wait(BRAKE_LIMIT_S)
            reason, self.late = self.late, ""
            with blame("axes"):
                raise LostError(f"{reason}; the axes were braked")

    @contextmanager
    def guarded(self, limit_s: float | None = None) -> Iterator[None]:
        """Keep the watchdog on while axes move."""
        if self._watchdog is None:
            yield
        elif limit_s is None:
            with self._watchdog.guarding():
                yield
        else:
            with self._watchdog.guarding(limit_s):
                yield

    def patiently(self, action: Callable[[], T]) -> T:
        """Run a blocking call beside us, so that a stop need not wait for a hung instrument."""
        if self._worker is None:
            return action()
        due = self._worker.submit(action)
        while True:
            try:
                return due.result(timeout=LOOK_S)
            except NotYetError:
                if due.done():
                    # It ended just after we looked, or what it raised is a time-out of its own.
                    return due.result()
                self.alive()

    def prepare(self, role: Role, state: int, *, external: bool = False) -> None:
        """Set switch, trigger and device state as a point wants them."""
        channel = CHANNELS[role]
        if role is Role.REFERENCE and self.plan.settings.get("reference_method", "switch") != "switch":
            channel = CHANNELS[Role.SCAN]  # the horn in the device's place, or the device itself
        with blame("analyzer"):
            if channel != self._channel:
                self.analyzer.route(channel)
                self._channel = channel
            if external != self._external:
                self.analyzer.trigger(external=external)
                self._external = external
        self._take_state(state)

    def _take_state(self, state: int) -> None:
        if self.states is None or state < 0 or state == self._state:
            return
        self._state = None  # until it is proven
        driver, name = self.states, self.plan.states[state]
        with blame("device"):
            self.patiently(lambda: driver.take(state, name))
        if self._state_table is not None:
            self.clock.sleep(self._state_table.settle_s)
        self._state = state

    def _dwell(self) -> None:
        """Rest before the sweep as long as the plan says; a stop is noticed."""
        left = float(self.plan.settings.get("dwell_s", 0.0))
        while left > 0.0:
            self.alive()
            self.clock.sleep(min(left, LOOK_S))
            left -= LOOK_S

    def state_of(self, index: int) -> int:
        """Return the device state of a plan point; ties are measured in the first state."""
        state = int(self.plan.state_index[index])
        return 0 if state < 0 and self.plan.states else state

    def measure(self, index: int, role: Role) -> Row:
        """Move to a plan point, sweep, and prove that the axes still stand there.

        Raises
        ------
        PositionError
            If an axis stands elsewhere before or after the sweep.
        InstrumentError
            If anything else is wrong with the point; it is then measured anew.
        """
        target = self.plan.targets_deg[index]
        self.prepare(role, self.state_of(index))
        shown = self.move(target)
        self._require_position(index, target, shown)
        if role is Role.SCAN:
            self._dwell()
        self.look_back(target)
        with blame("analyzer"):
            moment = self.analyzer.clock_s()
            sweep = self.sweep(target, self.reflect if role is Role.REFLECTION else self.analyzer.sweep)
        sweep = self.fresh(sweep, target)
        self._require_position(index, target, self.look())
        # A resume tie stands outside the plan; -1 keeps it apart from the planned one.
        return self.row(-1 if role is Role.RESUME else index, role, moment, target, shown, sweep)

    def reflect(self) -> Sweep:
        """Return the reflection of the device's port; raises `InstrumentError` where the receiver cannot read it."""
        reader = getattr(self.analyzer, "reflect", None)
        if reader is None:
            raise InstrumentError("the receiver's driver lacks `reflect`: the device's reflection cannot be read")
        reflection: Sweep = reader()
        return reflection

    def row(
        self,
        plan_index: int,
        role: Role,
        moment: float,
        target: FloatArray,
        shown: FloatArray,
        sweep: Sweep,
        rate: FloatArray | None = None,
    ) -> Row:
        """Put a measured point together."""
        still = np.zeros(len(self.plan.axes)) if rate is None else rate
        state = int(self.plan.state_index[plan_index]) if plan_index >= 0 else -1
        clock = self.clock
        return Row(plan_index=plan_index, role=ROLES.index(role), state_index=state, time_s=self.run_time.of(moment),
                   wall_time=clock.wall(), monotonic_s=clock.monotonic(), commanded_deg=target.copy(),
                   readback_deg=shown,
                   rate_deg_s=still, trace=sweep.trace, flags=sweep.flags, conditions=self._conditions())  # fmt: skip

    def _conditions(self) -> FloatArray:
        """Return what the sensors said last, in the journal's order; `nan` for a lost one."""
        if not self._sensor_names:
            return np.empty(0)
        readings = self._sensors.latest()
        return np.array([readings.get(name, np.nan) for name in self._sensor_names])

    def sensors_changed(self, conditions: FloatArray) -> list[str]:
        """Say which sensors were lost with this point, and which are back."""
        lost = {name for name, value in zip(self._sensor_names, conditions, strict=True) if not np.isfinite(value)}
        texts = [f"sensor {name} is lost: nan is logged, the run goes on" for name in sorted(lost - self._lost)]
        texts += [f"sensor {name} is back" for name in sorted(self._lost - lost)]
        self._lost = lost
        return texts

    def require_entry(self, index: int, target: FloatArray, shown: FloatArray) -> None:
        """Prove that axes stand where a line begins, those that still settle at a second look; raises like a point does."""
        if self.guard.position_fault(wanted_deg=target, found_deg=shown):
            self.clock.sleep(max(self._settle_s.values()))
            shown = self.look()
        self._require_position(index, target, shown)

    def _require_position(self, index: int, target: FloatArray, shown: FloatArray) -> None:
        fault = self.guard.position_fault(wanted_deg=target, found_deg=shown)
        if not fault:
            return
        off = np.abs(target - shown)
        limits = np.array([axis.following_error_deg for axis in self.guard.axes.values()])
        if np.any(off > limits):
            # No settling explains that: the axis stalled, slipped, or its encoder jumped.
            raise MotionError(f"point {index}: {fault}; home the axes")
        raise PositionError(f"point {index}: {fault}")

    def _view(self, place: FloatArray) -> SweptView:
        return (*np.round(place, 6).tolist(), self._channel, self._state)

    def sweep(self, place: FloatArray | None, sweep: Callable[[], Sweep]) -> Sweep:
        """Sweep at a place; a trace that cannot be read is known to be one of it, or of an unknown place (None)."""
        with self.sweeping_somewhere() if place is None else self._fresh.sweeping(self._view(place)):
            return self.patiently(sweep)

    def sweeping_somewhere(self) -> AbstractContextManager[None]:
        """Know, while the analyzer keeps sweeps of a slice, that a trace which cannot be read then is of an unknown place."""
        return self._fresh.sweeping(UNKNOWN)

    def look_back(self, place: FloatArray) -> None:
        """Read the trace that the analyzer still holds, if nobody has seen it and it is of another place."""
        with blame("analyzer"):
            self._fresh.look_back(self._view(place), self.patiently)

    def fresh(self, sweep: Sweep, place: FloatArray | None) -> Sweep:
        """Return a sweep that is not the one before, with a flag where that is undecided; None: of a place that nobody knows.

        Raises
        ------
        InstrumentError
            If its trace equals the one before, bit for bit, although axes, switch or state have changed.
        """
        undecided = self._fresh.require(sweep.trace, UNKNOWN if place is None else self._view(place))
        return replace(sweep, flags=sweep.flags | int(Flag.UNDECIDED)) if undecided else sweep

    def resume_after(self, row: Row) -> None:
        """Take the newest row of an earlier session for what the analyzer may still hold, and for the time that goes on."""
        self.run_time.resumed(row.time_s, row.wall_time)
        state = None if self.states is None else max(row.state_index, 0)
        place = np.round(row.commanded_deg, 6).tolist()
        self._fresh.resumed(row.trace, (*place, CHANNELS[ROLES[row.role]], state))

    def close(self) -> None:
        """Let go of the worker; a hung call ends with its own time-out."""
        if self._worker is not None:
            self._worker.shutdown(wait=False, cancel_futures=True)


class PositionError(InstrumentError):
    """An axis stands outside its tolerance; the point is rejected."""


@contextmanager
def blame(instrument: str) -> Iterator[None]:
    """Note on an instrument's error which instrument it was, so that the right one is recovered."""
    try:
        yield
    except InstrumentError as error:
        if not hasattr(error, "instrument"):
            error.instrument = instrument  # type: ignore[attr-defined]
        raise
