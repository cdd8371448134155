"""The engine: the remaining plan, point by point, committed before announced."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from contextlib import suppress
from dataclasses import replace

import numpy as np

from colure.acquire.clocks import Clock, SystemClock
from colure.acquire.control import Control
from colure.acquire.exchange import DEVICE, DistanceKeeper, DoneByHand, Exchange
from colure.acquire.flying import flight_of, fly
from colure.acquire.gate import StartCheck
from colure.acquire.journal import Journal, Row, names_of_sensors
from colure.acquire.outcome import Options, Outcome, Tally
from colure.acquire.persistence import RETRIES, Persistence
from colure.acquire.states import State, check
from colure.acquire.station import Station
from colure.acquire.ties import TieKeeper
from colure.acquire.watchdog import Watchdog
from colure.acquire.whereabouts import Whereabouts
from colure.errors import AcquisitionError, GuardError, InstrumentError, JournalError, MotionError
from colure.geometry.conventions import FloatArray, IntArray
from colure.instruments.contacts import Contacts
from colure.instruments.protocols import AnalyzerDriver, AxesDriver, HeldError, LostError, StateDriver
from colure.instruments.sensors import Sensors
from colure.model.chamber import Chamber
from colure.model.device import States
from colure.model.events import Event, Listener, nobody
from colure.model.plan import ROLES, Plan, Role
from colure.model.record import Flag

__all__ = ["Engine", "Options", "Outcome"]

#: A gap of this much suspended time means that the computer slept.
SLEEP_S = 2.0


class Engine:
    """Executes a plan; `mount` is told what a person has mounted or moved, as a command (the simulated chamber does it). `pause`, `resume`, `stop` and `abort` may be called from any thread or signal handler."""

    def __init__(
        self,
        plan: Plan,
        chamber: Chamber,
        journal: Journal,
        analyzer: AnalyzerDriver,
        axes: AxesDriver,
        *,
        states: StateDriver | None = None,
        state_table: States | None = None,
        listener: Listener = nobody,
        clock: Clock | None = None,
        options: Options | None = None,
        mount: Callable[[str], None] | None = None,
        contacts: Contacts | None = None,
        sensors: Sensors | None = None,
    ) -> None:
        self._mount = mount
        self._plan = plan
        self._journal = journal
        self._axes = axes
        self._analyzer = analyzer
        self._tell_listener = listener
        self._clock = clock or SystemClock()
        self._options = options or Options()
        self._control = Control()
        self._watchdog = Watchdog(self._late, axes.beat) if self._options.threads else None
        self._station = Station(
            plan,
            chamber,
            analyzer=analyzer,
            axes=axes,
            states=states,
            state_table=state_table,
            clock=self._clock,
            control=self._control,
            watchdog=self._watchdog,
            contacts=contacts,
            sensors=sensors,
            sensor_names=names_of_sensors(journal, sensors),
        )
        self._ties = TieKeeper(chamber)
        self._gate = StartCheck(self._station, journal, self._ties, self._note)
        self._persistence = Persistence(
            self._station, self._gate, self._control, note=self._note, rest=self._rest, reenter=self._reenter
        )
        self._whereabouts = Whereabouts(self._station, journal)
        self._exchange = Exchange(plan, journal)
        self._distances = DistanceKeeper(plan, journal)
        self._tally = Tally()
        self._asleep_s = self._clock.asleep_s()
        self._first_tie = next(iter(np.flatnonzero(plan.role == ROLES.index(Role.TIE))), None)
        self._enough = ""
        self.state = State.IDLE

    def pause(self, reason: str) -> None:
        """Rest after the point in flight, until `resume`."""
        self._control.pause(reason)

    def resume(self) -> None:
        """Go on after a pause, from a proven state."""
        self._control.resume()

    def stop(self, reason: str) -> None:
        """Brake the axes at once on their own connection and end the run after that."""
        self._control.stop(reason)
        self._brake()

    def finish(self, reason: str) -> None:
        """End the run in good order after the step in flight: nothing more of the plan is needed."""
        self._enough = self._enough or reason

    def abort(self, reason: str) -> None:
        """Brake, take the drives' power away, and end the run; the axes must be homed before the next."""
        self._control.abort(reason)
        self._brake()

    def _late(self, reason: str) -> None:
        """Brake from the watchdog's thread; whoever waits for the axes then finds why, and recovers."""
        self._station.brake_late(reason, self._brake)

    def _brake(self) -> None:
        """Hold; if even that does not get through, take the drives' power away."""
        try:
            self._axes.hold()
        except InstrumentError:
            with suppress(InstrumentError):
                # Of several controllers those that are held keep their power.
                getattr(self._axes, "disable_unheld", self._axes.disable)()

    def run(self) -> Outcome:
        """Measure every point that the journal does not hold yet; always ends in a safe state."""
        if self._watchdog is not None:
            self._watchdog.start()
        try:
            return self._run()
        finally:
            if self._watchdog is not None:
                self._watchdog.close()
            self._station.close()

    def _run(self) -> Outcome:
        total = len(self._plan)
        again = self._options.again
        try:
            self._tally.measured = self._journal.measured()
            resuming = bool(self._tally.measured)
            last = self._journal.last_row()
            if last is not None:
                self._station.resume_after(last)
            self._tally.measured -= self._journal.left_of(again) if again else set()
            self._change(State.RUNNING, f"{self._left()} of {total} points to measure")
            self._persistence.insist(lambda: self._enter(resuming=resuming, home=self._options.home), "start")
            if again:
                self._journal.ask_again(again, self._options.said, self._clock.wall())
                self._tally.measured = self._journal.measured()
            for step in self._steps():
                self._execute(step)
                if self._enough:
                    break
            if (self._enough or again) and self._first_tie is not None:
                # What drifted since the last tie is known only by another one: of the device, whatever was mounted last.
                self._exchange_if_due(Role.TIE)
                self._persistence.insist(self._extra_tie, "last tie")
            self._persistence.insist(self._go_home, "way home")
            return self._end(State.DONE, self._enough or "plan completed")
        except HeldError as error:
            reason = self._control.reason or str(error)
            return self._end(State.ABORTED if self._control.aborting else State.STOPPED, reason)
        except MotionError as error:
            self._distrust(str(error))
            return self._end(State.FAULTED, self._control.reason or str(error))
        except (InstrumentError, JournalError, AcquisitionError, GuardError) as error:
            return self._end(State.FAULTED, self._control.reason or str(error))
        except Exception as error:
            # A defect of ours: the chamber is made safe first, then whoever called sees it.
            self._end(State.FAULTED, f"internal error, {type(error).__name__}: {error}")
            raise

    def _enter(self, *, resuming: bool, home: bool) -> None:
        """Prove interlock, instruments, settings, position, path and tie."""
        self._station.contacts.acknowledge()
        self._gate.require_same()
        self._gate.configure()
        self._gate.trust_position(home=home)
        way = self._way_left()
        if resuming and not home:
            self._require_followed(way)
        self._gate.check_remaining(way)
        self._whereabouts.setting_out()
        if resuming and self._exchange.mounted == DEVICE and self._has_tie_here():
            if self._first_tie is not None:
                self._whereabouts.heading(self._plan.targets_deg[self._first_tie])
            self._gate.check_tie()

    def _has_tie_here(self) -> bool:
        """Tell whether the last tie was read at the distance at which the range stands now."""
        ties = [i for i in self._tally.measured if ROLES[self._plan.role[i]] is Role.TIE]
        return not ties or self._distances.wanted(max(ties)) == self._distances.reached

    def _require_followed(self, way: FloatArray) -> None:
        """Raise `AcquisitionError` if the axes stand where this run cannot have left them."""
        doubt = self._whereabouts.doubt(self._next_places(way))
        if not doubt:
            return
        if self._options.position_confirmed:
            # A person has looked now; what a later pause brings he has not seen.
            self._options = replace(self._options, position_confirmed=False)
            self._note("home", f"{doubt}; confirmed by a person")
            return
        raise AcquisitionError(f"{doubt}; home the axes (`home`), or look at them and confirm (`position_confirmed`)")

    def _next_places(self, way: FloatArray) -> FloatArray | None:
        """Return where the plan goes first: one point, or both ends of a flown line; the home position at its end."""
        if not len(way):
            return np.array([axis.home_deg for axis in self._station.guard.axes.values()])
        first = next(self._steps())
        return way[:1] if self._plan.line_index[first[0]] < 0 else way[:2]

    def _way_left(self) -> FloatArray:
        """Return every position still to be visited, run-up and run-out of flown lines included."""
        way = []
        for missing in self._steps():
            if self._plan.line_index[missing[0]] < 0:
                way.append(self._plan.targets_deg[missing])
            else:
                flight = flight_of(self._station, self._line_of(missing), missing)
                way.append(np.stack([flight.from_deg, flight.to_deg]))
        return np.concatenate(way) if way else np.empty((0, len(self._plan.axes)))

    def _line_of(self, missing: IntArray) -> IntArray:
        """Return all points of the line that a missing point belongs to."""
        return np.flatnonzero(self._plan.line_index == self._plan.line_index[missing[0]])

    def _steps(self) -> Iterator[IntArray]:
        """Yield what remains: single points, or all missing points of one line."""
        lines = self._plan.line_index
        index, total = 0, len(self._plan)
        while index < total:
            end = index + 1
            while lines[index] >= 0 and end < total and lines[end] == lines[index]:
                end += 1
            missing = np.array([i for i in range(index, end) if self._wanted(i)], np.int64)
            if missing.size:
                yield missing
            index = end

    def _wanted(self, index: int) -> bool:
        """Tell whether a point is still to be measured in this session."""
        again = self._options.again
        return index not in self._tally.measured and (not again or index in again)

    def _left(self) -> int:
        return sum(1 for index in range(len(self._plan)) if self._wanted(index))

    def _execute(self, missing: IntArray) -> None:
        """Measure a point or a line, with everything that may have to happen before."""
        self._checkpoint()
        index = int(missing[0])
        self._move_if_due(index)
        self._exchange_if_due(ROLES[self._plan.role[index]])
        self._tie_if_due()
        if self._plan.line_index[index] < 0:
            self._persistence.insist(lambda: self._point(index), f"point {index}")
            return
        line = self._line_of(missing)
        flight = flight_of(self._station, line, missing)
        number = int(self._plan.line_index[index])
        self._whereabouts.heading(flight.from_deg, flight.to_deg, line=number)
        self._persistence.insist(lambda: self._line(line), f"line {number}")

    def _exchange_if_due(self, role: Role) -> None:
        """Let a person exchange device and reference where the next point needs the other one."""
        if why := self._exchange.due(role):
            self._by_a_person(why, lambda: self._exchange.confirm(role))

    def _move_if_due(self, index: int) -> None:
        """Let a person move probe or positioner where the next point needs another distance; ties of the last one say nothing then."""

        def moved() -> DoneByHand:
            # Before everything is proven anew: that reads a tie at the new distance.
            self._ties.forget()
            return self._distances.confirm(index)

        if why := self._distances.due(index):
            self._by_a_person(why, moved)

    def _by_a_person(self, why: str, confirm: Callable[[], DoneByHand]) -> None:
        """Rest at home until a person has done what `why` says; what follows must prove everything anew."""
        self._persistence.insist(self._go_home, "way home")
        self._rest(why)
        manual_step = confirm()
        if self._mount is not None:
            self._mount(manual_step.command)
        self._note("exchange", manual_step.words)
        self._persistence.insist(self._reenter, "resume")

    def _point(self, index: int) -> None:
        role = ROLES[self._plan.role[index]]
        row = self._station.measure(index, role)
        if row.flags and not self._clean_at_last(index, role):
            self._keep(row, flagged=True)
        elif not row.flags:
            self._keep(row)

    def _clean_at_last(self, index: int, role: Role) -> bool:
        """Measure a flagged point again; True if a clean one was kept instead."""
        for attempt in range(2, RETRIES + 1):
            self._note("warning", f"point {index}: flagged by the analyzer; attempt {attempt} of {RETRIES}")
            row = self._station.measure(index, role)
            if not row.flags:
                self._keep(row)
                return True
        return False

    def _line(self, line: IntArray) -> None:
        """Fly a line until none of its points is missing; flagged points only count on the last flight."""
        for flight in range(1, RETRIES + 1):
            missing = np.array([i for i in line if int(i) not in self._tally.measured], np.int64)
            if missing.size == 0:
                return
            for row in fly(self._station, flight_of(self._station, line, missing)):
                if not row.flags or flight == RETRIES:
                    self._keep(row, flagged=bool(row.flags))
        left = [int(i) for i in line if int(i) not in self._tally.measured]
        if left:
            raise InstrumentError(f"{len(left)} points missed, first point {left[0]} (after {RETRIES} flights)")

    def _keep(self, row: Row, *, flagged: bool = False) -> None:
        """Commit a point, then announce it."""
        self._journal.append(row)
        for text in self._station.sensors_changed(row.conditions) + self._station.run_time.news():
            self._note("warning", text)
        self._tally.time_s = row.time_s
        if row.plan_index >= 0:
            self._tally.measured.add(row.plan_index)
        role = ROLES[row.role]
        if flagged:
            self._tally.flagged += 1
            self._note("warning", f"point {row.plan_index}: saved with flags {Flag(row.flags)!r}")
        change = self._ties.measured(row) if role is Role.TIE else None
        # Only a committed point is announced.
        kind = "tie" if role is Role.TIE else "point"
        text = f"point {row.plan_index}"
        if change is not None:
            text += f": tie changed by {change.level_db:+.3f} dB, {change.phase_deg:+.2f} deg"
        elif role is Role.TIE:
            text += ": first tie"
        self._tell(Event(kind, text, {"index": row.plan_index, "row": row, "total": len(self._plan),
                                      "measured": len(self._tally.measured)}))  # fmt: skip
        if change is not None and self._ties.restless:
            self._note("warning", f"{text}: beyond the chamber's limits, ties come twice as often")

    def _tie_if_due(self) -> None:
        """Measure an unplanned tie when time or drift asks for one."""
        why = self._ties.due(self._tally.time_s)
        if why and self._first_tie is not None and self._exchange.mounted == DEVICE:
            self._note("tie", f"extra tie point: {why}")
            self._persistence.insist(self._extra_tie, "extra tie")

    def _extra_tie(self) -> None:
        assert self._first_tie is not None
        self._whereabouts.heading(self._plan.targets_deg[self._first_tie])
        row = self._station.measure(int(self._first_tie), Role.TIE)
        self._keep(replace(row, plan_index=-1, state_index=-1))

    def _go_home(self) -> None:
        home = np.array([axis.home_deg for axis in self._station.guard.axes.values()])
        self._whereabouts.heading(home)
        self._station.move(home)

    def _checkpoint(self) -> None:
        """Between two points: has anybody asked for something, has the computer slept?"""
        self._station.heed()
        slept = self._clock.asleep_s() - self._asleep_s
        if slept > SLEEP_S:
            self._asleep_s += slept
            raise MotionError(f"the computer slept for {slept:.0f} s; positions are not trusted")
        reason = self._control.take_pause()
        if reason:
            self._rest(reason)
            self._persistence.insist(self._reenter, "resume")

    def _rest(self, reason: str) -> None:
        """Pause in a safe state until somebody resumes; what follows must prove everything anew."""
        for action in (self._hold, self._source_off):
            with suppress(InstrumentError):
                action()
        self._whereabouts.at_rest()
        self._control.rest()
        self._change(State.PAUSED, reason)
        if not self._control.await_resume(self._options.pause_limit_s):
            raise AcquisitionError(f"paused for {self._options.pause_limit_s:g} s and nobody came: {reason}")
        self._station.heed()
        self._change(State.RUNNING, "resumed by a person")

    def _reenter(self) -> None:
        """Prove everything anew after a pause; the source stays off while the interlock is open."""
        self._station.contacts.acknowledge()
        self._gate.regain_analyzer()
        self._gate.regain_axes()
        self._station.forget()
        self._enter(resuming=bool(self._tally.measured), home=False)

    def _distrust(self, reason: str) -> None:
        with suppress(JournalError):
            self._journal.set_meta("distrust", reason)

    def _note(self, kind: str, text: str) -> None:
        """Tell the listener, and the journal for later."""
        self._tell(Event(kind, text))
        self._journal.note(kind, text, self._clock.wall())

    def _tell(self, event: Event) -> None:
        """Announce; whatever a listener does wrong stays with the listener."""
        try:
            self._tell_listener(event)
        except Exception as error:
            with suppress(JournalError):
                self._journal.note("warning", f"a listener failed: {error}", self._clock.wall())

    def _change(self, new: State, text: str, *, at_rest: bool = False) -> None:
        self.state = check(self.state, new)
        self._tell(Event("state", f"{new.value}: {text}", {"state": new.value, "at_rest": at_rest}))
        with suppress(JournalError):
            self._journal.note("state", f"{new.value}: {text}", self._clock.wall())

    def _hold(self) -> None:
        """Brake; over a new connection if the old one is gone."""
        try:
            self._axes.hold()
        except LostError:
            self._axes.reconnect()
            self._axes.hold()

    def _answering(self) -> None:
        """Raise if a controller does not answer after a hold: nobody knows then whether its axes stand."""
        try:
            self._axes.status()
        except InstrumentError as error:
            raise InstrumentError(f"axes may still move, look before you go near: {error}") from None

    def _source_off(self) -> None:
        """Switch the source off; over a new connection if the old one is gone."""
        try:
            self._analyzer.safe()
        except LostError:
            self._analyzer.reconnect()
            self._analyzer.safe()

    def _end(self, state: State, reason: str) -> Outcome:
        """Leave a safe state behind whatever happened: axes held, source off, reason journalled."""
        actions = [self._source_off]
        if state is not State.DONE:
            actions = [self._hold, self._source_off, self._answering]
        if state is State.ABORTED:
            actions.insert(1, self._axes.disable)
            self._distrust(reason)
        # Whoever watches takes the axes for standing only where every one of them said so.
        at_rest = True
        for action in actions:
            try:
                action()
            except InstrumentError as error:
                at_rest = at_rest and action == self._source_off
                with suppress(JournalError):
                    self._note("warning", f"while stopping: {error}")
        self._whereabouts.at_rest()
        try:
            stops = self._journal.meta("stops") or []
            stop = {"state": state.value, "reason": reason, "wall_time": self._clock.wall()}
            self._journal.set_meta("stops", [*stops, stop])
        except JournalError as error:
            self._tell(Event("warning", f"the reason could not be journalled: {error}"))
        self._change(state, reason, at_rest=at_rest)
        return Outcome(
            state=state,
            reason=reason,
            measured=len(self._tally.measured),
            total=len(self._plan),
            flagged=self._tally.flagged,
        )
