"""Any ASCII axis controller, adapted by a line profile: a TOML file instead of a driver."""

from __future__ import annotations

import re
import threading
from collections.abc import Callable, Mapping
from concurrent.futures import ThreadPoolExecutor
from concurrent.futures import TimeoutError as NotYetError

from colure.instruments.gcode_axes import WATCH_S
from colure.instruments.links import Link, Opener, VisaLink, real_number
from colure.instruments.profile import LineAxis, LineProfile
from colure.instruments.protocols import (
    AxesStatus,
    HeldError,
    InstrumentError,
    LostError,
    MotionError,
    Timer,
    Watch,
    unheard,
)
from colure.instruments.status_words import read_status, refusal, says
from colure.model.chamber import Axis


class LineAxes:
    """Axis controller behind one serial or TCP line; see `AxesDriver`.

    Exchanges are short and serialized by a lock; `hold` writes past the lock, so it never
    waits for an exchange. Axes of one move start one after the other: the path between two
    positions is only known to stay inside the box they span.
    """

    coordinated = False

    def __init__(
        self,
        resource: str,
        profile: LineProfile,
        axes: Mapping[str, Axis],
        *,
        timeout_s: float,
        timer: Timer,
        opener: Opener = VisaLink,
    ) -> None:
        self.heard: Callable[[], None] = unheard
        missing = [name for name in axes if name not in profile.axes]
        if missing:
            raise InstrumentError(f"axes profile: `axes` has no entry for {', '.join(missing)}")
        self._words = profile
        self._speeds = {name: axis.speed_deg_s for name, axis in axes.items()}
        self._timer = timer
        self._lock = threading.Lock()
        self._held = threading.Event()
        self._stray = threading.Event()
        self._pending: list[str] = []
        self._reader = ThreadPoolExecutor(1, thread_name_prefix="axes-reader")
        self._link: Link = opener(resource, timeout_s=timeout_s, ends=profile.line.ends)
        self._prepare()
        self._identity = self.identity()

    def _prepare(self) -> None:
        for command in self._words.prepare:
            self._tell(command)
        if self._words.speed:
            for name, speed in self._speeds.items():
                axis = self._words.axes[name]
                self._tell(self._words.speed.format(axis=axis.name, speed=f"{abs(speed * axis.units_per_deg):.6g}"))

    def identity(self) -> str:
        """Return what the controller says it is, or its resource name if it cannot tell."""
        return self._ask(self._words.identity) if self._words.identity else self._link.resource

    def begin(self, targets_deg: Mapping[str, float], *, per_s: float | None = None) -> None:
        """Start a move of every axis that is not there yet."""
        if per_s is not None:
            raise InstrumentError("line profile: moves cannot be timed; use style = 'step'")
        self._refuse_when_held()
        here = self.status().positions_deg
        for name, target in targets_deg.items():
            axis = self._words.axes[name]
            # Half a unit of the wire: an axis that is there already need not be sent.
            if abs(here[name] - target) * abs(axis.units_per_deg) < 0.5 * 10.0**-axis.decimals:
                continue
            value = f"{target * axis.units_per_deg + axis.offset_units:.{axis.decimals}f}"
            command = self._words.move.format(axis=axis.name, value=value)
            if self._words.completion == "reply":
                with self._lock:
                    self._link.write(command)
                self._pending.append(name)
            else:
                self._tell(command)
        if self._words.start:
            self._tell(self._words.start)

    def finish(self, settle_s: float, watch: Watch, limit_s: float) -> AxesStatus:
        """Wait until all axes stand, looking at them meanwhile, then let them settle."""
        self._await_replies(watch, limit_s)
        begin = self._timer.monotonic()
        while True:
            self._refuse_when_held()
            status = self.status()
            watch(status)
            if not status.moving:
                break
            if self._timer.monotonic() - begin > limit_s:
                raise MotionError(f"{self._link.resource}: axes not there after {limit_s:.1f} s")
            self._timer.sleep(self._words.poll_s)
        self._timer.sleep(settle_s)
        return self.status() if settle_s > 0.0 else status

    def _await_replies(self, watch: Watch, limit_s: float) -> None:
        """Read one completion reply per commanded axis; meanwhile such a controller cannot be asked anything."""
        waited = 0.0
        while self._pending:
            due = self._reader.submit(self._link.read)
            while True:
                try:
                    answer = due.result(timeout=WATCH_S)
                    break
                except NotYetError:
                    waited += WATCH_S
                    self._refuse_when_held()
                    watch(None)
                    if waited > limit_s:
                        raise MotionError(f"{self._link.resource}: axes not there after {waited:.1f} s") from None
            self._refuse_when_held()
            self._check(answer, self._words.acknowledge)
            self._pending.pop()

    def status(self) -> AxesStatus:
        """Ask every axis whether it moves, the controller for its state, and every axis for its position.

        Positions come last: one that was read before the axes said that they stand would be where they were on the way.
        """
        moving = False
        if self._words.busy:
            for name in self._speeds:
                answer = self._ask(self._words.busy.format(axis=self._words.axes[name].name))
                moving = moving or re.search(self._words.busy_pattern, answer) is not None
        text = self._ask(self._words.status) if self._words.status else ""
        positions = {name: self._position(self._words.axes[name]) for name in self._speeds}
        found = read_status(self._words, text, positions, moving=moving)
        held = found.held or self._held.is_set()
        return AxesStatus(positions, moving, held, found.door_open, found.alarm)

    def _position(self, axis: LineAxis) -> float:
        answer = self._ask(self._words.position.format(axis=axis.name))
        match = re.search(self._words.position_pattern, answer)
        if match is None:
            raise LostError(f"{self._link.resource}: axis {axis.name}: {answer[:60]!r} is no position")
        try:
            units = real_number(match.group("value"), self._link.resource, f"position of axis {axis.name}")
        except InstrumentError as error:
            # Axes may be moving: whoever hears of a lost position brakes them first.
            raise LostError(str(error)) from None
        return (units - axis.offset_units) / axis.units_per_deg

    def pulses(self, axis: str, *, start_deg: float, step_deg: float, count: int) -> None:
        """Refuse: a line profile has no words for pulses."""
        raise InstrumentError("line profile: sweeps cannot be started by position; use style = 'step'")

    def hold(self) -> None:
        """Brake all axes now, without waiting for an exchange that may be under way."""
        self._held.set()
        self._stray.set()
        self._link.write_raw(self._words.hold + self._words.line.write_end)

    def release(self) -> None:
        """Allow motion after a hold; what the hold left on the line is thrown away."""
        with self._lock:
            self._pending.clear()
        if self._words.release:
            self._tell(self._words.release)
        self._held.clear()

    def disable(self) -> None:
        """Take the drives' power away, if the profile knows how."""
        if self._words.disable:
            self._tell(self._words.disable)

    def home(self, watch: Watch, limit_s: float) -> AxesStatus:
        """Seek the reference marks of every axis."""
        if not self._words.home:
            raise InstrumentError("axes profile: `home` is empty; home the axes by the controller's own means")
        for name in self._speeds:
            self._tell(self._words.home.format(axis=self._words.axes[name].name))
        return self.finish(0.0, watch, limit_s)

    def beat(self) -> None:
        """Tell the controller that we are alive, if the profile knows how."""
        if self._words.beat:
            self._tell(self._words.beat)

    def reconnect(self) -> None:
        """Open the line anew and check that the same controller answers."""
        self._link.reopen()
        self._stray.clear()
        self._pending.clear()
        self._prepare()
        found = self.identity()
        if found != self._identity:
            raise InstrumentError(f"{self._link.resource}: is {found!r}, must be {self._identity!r}")

    def close(self) -> None:
        """Close the line."""
        self._reader.shutdown(wait=False, cancel_futures=True)
        self._link.close()

    def _tell(self, command: str) -> None:
        """Send a command and read its acknowledgement, if the controller gives one."""
        if self._words.acknowledge:
            self._check(self._exchange(command), self._words.acknowledge)
        else:
            with self._lock:
                self._link.write(command)

    def _ask(self, query: str) -> str:
        answer = self._exchange(query)
        self._check(answer, "")
        return answer

    def _exchange(self, text: str) -> str:
        """Send a line and read its answer; what a hold left on the wire is thrown away first."""
        with self._lock:
            if self._stray.is_set():
                self._stray.clear()
                self._link.drain()
            answer = self._link.query(text)
            self.heard()
            if self._stray.is_set():
                # A hold came between question and answer: nobody knows whose answer this is.
                self._stray.clear()
                self._link.drain()
                raise HeldError(f"{self._link.resource}: held by this program")
            return answer

    def _check(self, answer: str, pattern: str) -> None:
        if says(self._words.fault, answer):
            raise refusal(self._words, answer, self._link.resource)
        if pattern and re.search(pattern, answer) is None:
            raise LostError(f"{self._link.resource}: answered {answer[:60]!r}, expected {pattern!r}")

    def _refuse_when_held(self) -> None:
        if self._held.is_set():
            raise HeldError(f"{self._link.resource}: held by this program")
