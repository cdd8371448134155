"""The engine: what is left of the plan, point by point, committed before announced."""

from __future__ import annotations

import threading
import time
from dataclasses import dataclass

import numpy as np

from colure.acquire.journal import Journal, JournalError, Row
from colure.acquire.states import State, check
from colure.instruments.protocols import AnalyzerDriver, AxesDriver, HeldError, InstrumentError, SweepSettings
from colure.model.chamber import Axis, Chamber
from colure.model.events import Event, Listener, nobody
from colure.model.plan import ROLES, Plan, Role

RETRIES = 3
#: A tie point re-measured on resume must agree with the journal's within this, in dB.
RESUME_TOLERANCE_DB = 1.0
CHANNELS = {Role.SCAN: 1, Role.TIE: 1, Role.RESUME: 1, Role.REFERENCE: 2}


class AcquisitionError(RuntimeError):
    """The run ended before its plan; the reason in plain words is the message."""


@dataclass(frozen=True)
class Outcome:
    """How a run ended."""

    state: State
    reason: str
    measured: int
    total: int


class Engine:
    """Executes a plan. `stop` may be called from any thread or signal handler."""

    def __init__(
        self,
        plan: Plan,
        chamber: Chamber,
        journal: Journal,
        analyzer: AnalyzerDriver,
        axes: AxesDriver,
        *,
        listener: Listener = nobody,
    ) -> None:
        self._plan = plan
        self._tables: list[Axis] = [chamber.axis_table[name] for name in plan.axes]
        self._journal = journal
        self._analyzer = analyzer
        self._axes = axes
        self._tell = listener
        self._stop = threading.Event()
        self._stop_reason = ""
        self._channel = 0
        self.state = State.IDLE

    def stop(self, reason: str) -> None:
        """Brake the axes at once on their own connection and end the run after that."""
        self._stop_reason = self._stop_reason or reason
        self._stop.set()
        self._axes.hold()

    def run(self) -> Outcome:
        """Measure every point that the journal does not hold yet; always ends in a safe state."""
        total = len(self._plan)
        done = self._journal.done()
        try:
            self._prepare(resuming=bool(done))
            self._change(State.RUNNING, f"{total - len(done)} of {total} points to measure")
            for index in (i for i in range(total) if i not in done):
                if self._stop.is_set():
                    raise HeldError(self._stop_reason)
                self._point(index, ROLES[self._plan.role[index]])
                done.add(index)
            self._home()
            return self._end(State.DONE, "plan completed", len(done))
        except HeldError as error:
            return self._end(State.STOPPED, self._stop_reason or str(error), len(done))
        except (InstrumentError, JournalError, AcquisitionError) as error:
            return self._end(State.FAULTED, self._stop_reason or str(error), len(done))

    def _prepare(self, *, resuming: bool) -> None:
        s = self._plan.settings
        settings = SweepSettings(s["start_hz"], s["stop_hz"], s["points"], s["if_bandwidth_hz"], s["power_dbm"])
        self._analyzer.configure(settings, self._plan.ports)
        self._axes.release()
        if resuming:
            self._check_tie()

    def _check_tie(self) -> None:
        """Re-measure the tie point after an interruption and compare it with the journal's last."""
        ties = [row for row in self._journal.rows() if ROLES[row.role] in (Role.TIE, Role.RESUME)]
        if not ties:
            return
        first_tie = int(np.flatnonzero(self._plan.role == ROLES.index(Role.TIE))[0])
        row = self._measure(first_tie, Role.RESUME)
        change = 20.0 * np.log10(np.abs(row.trace).mean() / np.abs(ties[-1].trace).mean())
        if abs(change) > RESUME_TOLERANCE_DB:
            raise AcquisitionError(
                f"tie point changed by {change:+.2f} dB since the interruption, limit {RESUME_TOLERANCE_DB:g} dB"
            )
        self._journal.append(row)
        self._tell(Event("tie", f"tie point after the interruption: {change:+.3f} dB"))

    def _point(self, index: int, role: Role) -> None:
        for attempt in range(1, RETRIES + 1):
            try:
                row = self._measure(index, role)
                break
            except HeldError:
                raise
            except InstrumentError as error:
                if self._stop.is_set():
                    raise HeldError(self._stop_reason) from None
                if attempt == RETRIES:
                    raise AcquisitionError(f"point {index}: {error} (after {RETRIES} attempts)") from None
                self._tell(Event("warning", f"point {index}: {error}; attempt {attempt + 1} of {RETRIES}"))
        self._journal.append(row)
        # Only a committed point is announced.
        kind = "tie" if role is Role.TIE else "point"
        self._tell(Event(kind, f"point {index}", {"index": index, "row": row, "total": len(self._plan)}))

    def _measure(self, index: int, role: Role) -> Row:
        channel = CHANNELS[role]
        if channel != self._channel:
            self._analyzer.route(channel)
            self._channel = channel
        target = self._plan.targets_deg[index]
        settle = max(axis.settle_s for axis in self._tables)
        readback = self._axes.move(dict(zip(self._plan.axes, target, strict=True)), settle)
        shown = np.array([readback[name] for name in self._plan.axes])
        self._check_position(index, target, shown)
        moment = self._analyzer.clock_s()
        sweep = self._analyzer.sweep()
        # A resume tie stands outside the plan; -1 keeps it apart from the planned one.
        plan_index = -1 if role is Role.RESUME else index
        return Row(plan_index, ROLES.index(role), moment, time.time(), target, shown, sweep.trace, sweep.condition)

    def _check_position(self, index: int, target: np.ndarray, shown: np.ndarray) -> None:
        for name, axis, wanted, found in zip(self._plan.axes, self._tables, target, shown, strict=True):
            if abs(wanted - found) > axis.readback_tolerance_deg:
                raise InstrumentError(
                    f"point {index}: axis {name} stands at {found:.4f} deg, commanded {wanted:.4f} deg, "
                    f"limit {axis.readback_tolerance_deg:g} deg"
                )

    def _home(self) -> None:
        home = {name: axis.home_deg for name, axis in zip(self._plan.axes, self._tables, strict=True)}
        self._axes.move(home, 0.0)

    def _change(self, new: State, text: str) -> None:
        self.state = check(self.state, new)
        self._tell(Event("state", f"{new.value}: {text}", {"state": new.value}))

    def _end(self, state: State, reason: str, measured: int) -> Outcome:
        """Leave a safe state behind whatever happened: axes held, source off, reason journalled."""
        for action in (self._axes.hold if state is not State.DONE else None, self._analyzer.safe):
            if action is not None:
                try:
                    action()
                except InstrumentError as error:
                    self._tell(Event("warning", f"while stopping: {error}"))
        try:
            stops = self._journal.meta("stops") or []
            self._journal.set_meta(
                "stops", [*stops, {"state": state.value, "reason": reason, "wall_time": time.time()}]
            )
        except Exception as error:
            self._tell(Event("warning", f"the reason could not be journalled: {error}"))
        self._change(state, reason)
        return Outcome(state, reason, measured, len(self._plan))
