"""Any ASCII axis controller, adapted by a line profile: a TOML file instead of a driver."""

from __future__ import annotations

import math
import re
import threading
from collections import deque
from collections.abc import Callable, Mapping
from contextlib import suppress

from colure.errors import InstrumentError, MotionError
from colure.geometry.move_times import move_time
from colure.instruments.line import BRAKED_S, ControllerLine, LineRules
from colure.instruments.line_profile import LineAxis, LineProfile, SequenceStep
from colure.instruments.line_status import LineStatus
from colure.instruments.protocols import AxesStatus, HeldError, LostError, Timer, Watch
from colure.instruments.sequences import Talk
from colure.instruments.wires import WireOpener, open_wire
from colure.model.chamber import Axis

#: Who answers where nobody says; not the address, which may change.
NAMELESS = "an axis controller without a name"
#: How often a controller that cannot be asked while it moves is waited for, seconds.
WATCH_S = 0.05
#: A controller may take so long to begin a move that it has accepted; axes that home rest for less than the second number.
START_S, HOMING_REST_S = 0.5, 2.0
#: Attempts to hear the same identity two times in a row; a controller that starts up answers nothing at first.
MEETINGS = 6
#: Each of them is given up after this time, seconds.
MEETING_S = 3.0


def rules_of(words: LineProfile) -> LineRules:
    """Return which lines of a controller are not answers."""
    table = words.line
    return LineRules(
        ends=table.ends, echo=table.echo, prompt=table.prompt, pace_s=table.pace_s, greeting=table.greeting, restart=table.restart,
        messages=table.messages, arrived=words.arrived, alarm=words.alarm_message, hold_answer=words.hold_answer,
        sync=words.sync, sync_pattern=words.sync_pattern,
    )  # fmt: skip


class LineAxes:
    """Axis controller behind one serial or TCP line; see `AxesDriver`.

    Exchanges are short and serialized; `hold` is sent past them, so it never waits. Unless the profile says that
    moves are coordinated, the path between two positions is only known to stay inside the box they span.
    """

    def __init__(
        self,
        resource: str,
        profile: LineProfile,
        axes: Mapping[str, Axis],
        *,
        timeout_s: float,
        timer: Timer,
        opener: WireOpener = open_wire,
    ) -> None:
        missing = [name for name in axes if name not in profile.axes]
        if missing:
            raise InstrumentError(f"axes profile: `axes` has no entry for {', '.join(missing)}")
        self.coordinated = profile.coordinated
        self._words = profile
        self._axes = dict(axes)
        self._names = {name: profile.axes[name] for name in axes}
        for name, own in self._names.items():
            if own.wraps_deg is not None and own.wraps_deg != axes[name].modulo_deg:
                raise InstrumentError(
                    f"axis {name}: modulo_deg = {axes[name].modulo_deg}: must be {own.wraps_deg:g} in chamber.toml, as `wraps_deg` of the "
                    "profile says (deg)"
                )
        wraps = any(axis.wraps_deg is not None for axis in self._names.values())
        # Where the answer to a list of commands comes at the end of the move, the next list has to wait for it.
        lists = [axis.move or profile.move for axis in self._names.values()]
        self._alone = profile.sequential or (
            profile.completion == "reply" and any(len(one) > 1 for one in lists) and not self._together(profile.move)
        )
        self.one_by_one = self._alone or wraps
        self._timer = timer
        self._held = threading.Event()
        self._line = ControllerLine(resource, rules_of(profile), timeout_s=timeout_s, opener=opener)
        self._aside: ControllerLine | None = None
        self._talk = Talk(self._line, profile, timer, self._held.is_set)
        self._status = LineStatus(self._talk, profile, self._names)
        self._batches: deque[dict[str, float]] = deque()
        self._targets: dict[str, float] = {}
        #: Speeds of moves by hand that `timed` has to make, degrees per second.
        self._timed_deg_s: dict[str, float] = {}
        self._replies: list[str] = []
        self._due: set[str] = set()
        try:
            if profile.hold_line == "second":
                self._aside = ControllerLine(resource, rules_of(profile), timeout_s=timeout_s, opener=opener)
            self._meet()
            self._prepare()
            self._identity = self.identity()
        except InstrumentError:
            self.close()
            raise

    @property
    def heard(self) -> Callable[[], None]:
        """Called with every line of the controller."""
        return self._line.heard

    @heard.setter
    def heard(self, listener: Callable[[], None]) -> None:
        self._line.heard = listener

    def _meet(self) -> None:
        """Learn the sentinel's answer; what a controller says at its first connection, restarts included, is no news."""
        words, line = self._words, self._line
        if words.sync:
            line.get_in_step()
        elif len(words.identity) == 1:
            line.keep_in_step_by(words.identity[0].send, self._constant_answer())
        elif not line.fresh:
            raise InstrumentError(
                f"{line.resource}: line profile: `identity` and `sync` are empty; a serial line needs one of them, a query with "
                "an answer of its own, to know whose answer comes next"
            )
        line.news.restart = ""

    def _constant_answer(self) -> list[str]:
        """Return the lines of the identity, heard two times in a row."""
        before, heard = "", []
        for _ in range(MEETINGS):
            try:
                answer = self._talk.first(self._words.identity, MEETING_S)
            except LostError as error:
                heard.append(str(error))
                continue
            if answer and answer == before:
                return answer.splitlines()
            before = answer
            heard.append(repr(answer[:60]))
        raise LostError(
            f"{self._line.resource}: `identity` was not answered alike two times in a row: {'; '.join(heard[-3:])}; is the "
            "controller on, and are line end, baud rate and profile right? A line that comes by itself belongs into `greeting` or "
            "`messages`"
        )

    def _prepare(self) -> None:
        self._talk.tell(self._words.prepare)
        self._tell_speeds({name: self._axes[name].speed_deg_s for name in self._names})

    def _tell_speeds(self, speeds_deg_s: Mapping[str, float]) -> None:
        for name, speed_deg_s in speeds_deg_s.items():
            axis = self._names[name]
            speed = f"{abs(speed_deg_s * axis.units_per_deg):.6g}"
            self._talk.tell(axis.speed or self._words.speed, axis=axis.name, speed=speed)

    def set_speeds(self, speeds_deg_s: Mapping[str, float] | None) -> None:
        """Let axes go at these speeds from the next move on, by `speed` or else by `timed`; None: as declared."""
        told = [name for name, axis in self._names.items() if axis.speed or self._words.speed]
        self._timed_deg_s = {}
        if speeds_deg_s is None:
            self._tell_speeds({name: self._axes[name].speed_deg_s for name in told})
        elif all(name in told for name in speeds_deg_s):
            self._tell_speeds(speeds_deg_s)
        elif all(self._names[name].timed or self._words.timed for name in speeds_deg_s):
            self._timed_deg_s = dict(speeds_deg_s)
        else:
            raise InstrumentError(
                f"{self._line.resource}: line profile: neither speed nor timed has words: this controller cannot be told a speed; "
                "leave the speed out"
            )

    def identity(self) -> str:
        """Return what the controller says it is, if it can tell."""
        return self._talk.ask(self._words.identity) if self._words.identity else NAMELESS

    def begin(
        self,
        targets_deg: Mapping[str, float],
        *,
        per_s: float | None = None,
        from_deg: Mapping[str, float] | None = None,
    ) -> None:
        """Start a move of every axis that is not there yet.

        from_deg
            Where the axes come from, whole turns counted; needed for axes that wrap.
        """
        if per_s is not None and not all(axis.timed or self._words.timed for axis in self._names.values()):
            raise InstrumentError(
                "line profile: `timed` is empty, the speed of a move cannot be set; use style = 'step'"
            )
        self._refuse_when_held()
        here = self.status().positions_deg
        self._line.news.arrived.clear()
        self._replies.clear()
        self._due.clear()
        self._targets = {}
        self._batches = deque(self._split(targets_deg, here, from_deg, per_s))
        self._send_batch(here, per_s)

    def _split(
        self,
        targets_deg: Mapping[str, float],
        here: Mapping[str, float],
        from_deg: Mapping[str, float] | None,
        per_s: float | None,
    ) -> list[dict[str, float]]:
        """Return what is commanded one after the other, so that every axis goes the way that was meant."""
        moved = {n: t for n, t in targets_deg.items() if self._off(n, here[n], t) >= self._names[n].least_deg}
        legs: dict[str, list[float]] = {}
        for name, target in moved.items():
            wraps = self._names[name].wraps_deg
            if wraps is None:
                legs[name] = [target]
                continue
            if from_deg is None:
                raise InstrumentError(f"axis {name} wraps: where it comes from must be known, whole turns counted")
            start = from_deg[name]
            # A third of a turn at most: the controller goes the shorter way round, so that is the way meant.
            count = max(1, math.ceil(3.0 * abs(target - start) / wraps))
            legs[name] = [start + (target - start) * (k + 1) / count for k in range(count)]
            if per_s is not None and count > 1:
                raise InstrumentError(
                    f"axis {name} wraps: it cannot be flown over more than a third of a turn; use style = 'step'"
                )
        if self._alone:
            return [{name: leg} for name, ways in legs.items() for leg in ways]
        most = max(map(len, legs.values()), default=0)
        return [{name: ways[k] for name, ways in legs.items() if k < len(ways)} for k in range(most)]

    @staticmethod
    def _together(steps: tuple[SequenceStep, ...]) -> bool:
        """Tell whether commands name all axes at once."""
        return bool(steps) and not any("{axis" in step.send or "{value" in step.send for step in steps)

    def _off(self, name: str, position_deg: float, wanted: float) -> float:
        """Return how far an axis stands from a position, degrees."""
        wraps = self._names[name].wraps_deg
        off = wanted - position_deg
        return abs(off if wraps is None else off - wraps * round(off / wraps))

    def _send_batch(self, here: Mapping[str, float], per_s: float | None = None) -> None:
        if not self._batches:
            return
        batch = self._batches.popleft()
        self._targets |= batch
        ways = {name: self._off(name, here[name], target) for name, target in batch.items()}
        if per_s is None and self._timed_deg_s:
            per_s = min(self._timed_deg_s[name] / way for name, way in ways.items())
        values = {name: self._value(name, batch.get(name, here[name])) for name in self._names}
        words = self._words.separator.join(
            self._words.word.format(axis=self._names[name].name, value=values[name]) for name in batch
        )
        shared = {**values, "words": words, "seconds": "", "per_minute": ""}
        if per_s is not None:
            shared |= {"seconds": f"{1.0 / per_s:.6g}", "per_minute": f"{60.0 * per_s:.9f}"}
        common = self._words.move if per_s is None else self._words.timed
        own = {name: self._names[name].move if per_s is None else self._names[name].timed for name in batch}
        way_s = self._way_s(ways, per_s)
        if self._together(common) and not any(own.values()):
            self._command(common, tuple(batch), shared, way_s)
        else:
            for name in batch:
                axis = self._names[name]
                rate = ways[name] * (per_s or 0.0) * abs(axis.units_per_deg)
                fields = {**shared, "axis": axis.name, "value": values[name], "speed": f"{rate:.6g}"}
                self._command(own[name] or common, (name,), fields, way_s)
        self._talk.tell(self._words.start, moves=True, way_s=way_s)

    def _way_s(self, ways_deg: Mapping[str, float], per_s: float | None) -> float:
        """Return how long a move by these angles should take, seconds."""
        axes = [self._axes[name] for name in ways_deg]
        own = [float(move_time(way, a.speed_deg_s, a.acceleration_deg_s2, a.jerk))
               for way, a in zip(ways_deg.values(), axes, strict=True)]  # fmt: skip
        return max(own, default=0.0) + (0.0 if per_s is None else 1.0 / per_s)

    def _value(self, name: str, angle_deg: float) -> str:
        axis = self._names[name]
        return f"{axis.to_wire(angle_deg if axis.wraps_deg is None else angle_deg % axis.wraps_deg):.{axis.decimals}f}"

    def _command(
        self, steps: tuple[SequenceStep, ...], names: tuple[str, ...], fields: Mapping[str, str], way_s: float
    ) -> None:
        if self._words.completion == "reply":
            self._replies.append(self._talk.post(steps, **fields))
            return
        self._due.update(names)
        self._talk.tell(steps, moves=True, way_s=way_s, **fields)

    def finish(self, settle_s: float, watch: Watch, *, limit_s: float) -> AxesStatus:
        """Wait until all axes stand, looking at them meanwhile, then let them settle."""
        begin = self._timer.monotonic()
        status = self._stand(watch, limit_s, begin)
        while self._batches:
            self._refuse_when_held()
            self._send_batch(status.positions_deg)
            status = self._stand(watch, limit_s, begin)
        self._timer.sleep(settle_s)
        return self.status() if settle_s > 0.0 else status

    def _stand(self, watch: Watch, limit_s: float, begin: float) -> AxesStatus:
        """Wait until the axes stand after one batch of commands."""
        self._await_replies(watch, limit_s)
        sent, resting = self._timer.monotonic(), math.inf
        while True:
            self._refuse_when_held()
            status = self.status()
            watch(status)
            now = self._timer.monotonic()
            if not status.moving and not (now - sent < START_S and self._has_not_begun(status)):
                # Axes that seek their reference rest on the way; only positions tell of them here.
                resting = min(resting, now)
                if self._targets or self._words.completion != "position" or now - resting > HOMING_REST_S:
                    return status
            else:
                resting = math.inf
            if now - begin > limit_s:
                raise MotionError(f"{self._line.resource}: axes not there after {limit_s:.1f} s")
            self._timer.sleep(self._words.poll_s)

    def _has_not_begun(self, status: AxesStatus) -> bool:
        """Tell whether an axis is still far from where it was sent although it says that it stands."""
        if status.held or self._words.completion == "reply":
            return False
        return any(
            self._off(name, status.positions_deg[name], target) > 0.5 * self._axes[name].following_error_deg
            for name, target in self._targets.items()
        )

    def _await_replies(self, watch: Watch, limit_s: float) -> None:
        """Wait for the completion reply of every command; meanwhile such a controller cannot be asked anything."""
        waited = 0.0
        while self._replies:
            self._hear_braked()
            try:
                there = self._talk.posted(self._replies[0], WATCH_S)
            except InstrumentError:
                # Braked axes do not arrive, and their controller says so in any way it likes.
                self._replies.pop(0)
                self._hear_braked()
                raise
            if there:
                self._replies.pop(0)
                continue
            waited += WATCH_S
            watch(None)
            if waited > limit_s:
                raise MotionError(f"{self._line.resource}: axes not there after {waited:.1f} s")
        self._refuse_when_held()

    def _hear_braked(self) -> None:
        """Raise `HeldError` when held, after the answers to the moves that were broken off, if any come."""
        if not self._held.is_set():
            return
        with suppress(InstrumentError):
            while (self._replies or self._line.unanswered_holds) and self._line.take(BRAKED_S) is not None:
                if self._replies:
                    self._replies.pop(0)
                else:
                    self._line.hold_answered()
        self._refuse_when_held()

    def status(self) -> AxesStatus:
        """Ask every axis whether it moves, the controller for its state, and every axis for its position.

        Positions come last: one that was read before the axes said that they stand would be where they were on the way.
        """
        self._hear_arrivals()
        axes_status = self._status.read(self._targets, self._off)
        moving = axes_status.moving or (self._words.completion == "message" and bool(self._due))
        alarm = axes_status.alarm or self._line.news.alarm
        return AxesStatus(
            axes_status.positions_deg, moving, axes_status.held or self._held.is_set(), axes_status.door_open, alarm
        )

    def _hear_arrivals(self) -> None:
        """Cross off the axes that have said that they stand."""
        if self._words.completion != "message":
            return
        self._line.listen(0.0)
        arrived = self._line.news.arrived
        while arrived:
            match = re.search(self._words.arrived, arrived.popleft())
            axis = None if match is None else match.groupdict().get("axis")
            self._due -= {n for n, a in self._names.items() if axis is None or a.name == axis}

    def pulses(self, axis: str, *, start_deg: float, step_deg: float, count: int) -> None:
        """Let the controller start a sweep whenever an axis passes start + k step."""
        if not self._words.pulses:
            raise InstrumentError(
                "line profile: `pulses` is empty, sweeps cannot be started by position; use style = 'step'"
            )
        own: LineAxis = self._names[axis]
        step = f"{step_deg * own.units_per_deg:.{own.decimals}f}"
        if fault := own.pulse_fault(step_deg, count):
            raise InstrumentError(f"line profile: {fault}")
        self._talk.tell(self._words.pulses, axis=own.name, start=self._value(axis, start_deg), step=step, count=count)

    def latches(self, axis: str) -> bool:
        """Tell whether the controller stores where an axis is at its pulses."""
        return bool(self._words.latched)

    def latched(self, axis: str, count: int) -> list[float]:
        """Return the readouts that were stored at the pulses of an axis, degrees."""
        own, words = self._names[axis], self._words
        answer = self._talk.ask(words.latched, axis=own.name, count=count)
        try:
            return [own.from_wire(float(match["value"])) for match in re.finditer(words.latched_pattern, answer)]
        except ValueError as error:
            raise LostError(f"{self._line.resource}: latched positions: {error}") from None

    def hold(self) -> None:
        """Brake all axes now, without waiting for an exchange that may be under way."""
        self._held.set()
        step = self._words.hold[0]
        (self._aside or self._line).shout(step.send + ("" if step.raw else self._words.line.write_end))

    def release(self) -> None:
        """Allow motion after a hold; what the hold left on the line is thrown away."""
        self._forget_move()
        self._talk.tell(self._words.release)
        self._held.clear()

    def _forget_move(self) -> None:
        self._batches.clear()
        self._replies.clear()
        self._due.clear()
        self._targets = {}

    def disable(self) -> None:
        """Take the drives' power away, if the profile knows how."""
        self._talk.tell(self._words.disable)

    def home(self, watch: Watch, limit_s: float) -> AxesStatus:
        """Seek the reference marks of every axis."""
        homes = [axis.home or self._words.home for axis in self._names.values()]
        if not all(homes):
            raise InstrumentError("axes profile: `home` is empty; home the axes by the controller's own means")
        self._refuse_when_held()
        self._forget_move()
        self._line.news.restart = self._line.news.alarm = ""
        # From one end of its travel to the other and back: nobody knows where an axis comes from.
        way_s = self._way_s({name: 2.0 * (axis.max_deg - axis.min_deg) for name, axis in self._axes.items()}, None)
        if all(steps == self._words.home for steps in homes) and not any("{axis" in s.send for s in self._words.home):
            self._talk.tell(self._words.home, moves=True, way_s=way_s)
        else:
            for axis in self._names.values():
                self._talk.tell(axis.home or self._words.home, moves=True, way_s=way_s, axis=axis.name)
        return self.finish(0.0, watch, limit_s=limit_s)

    def beat(self) -> None:
        """Tell the controller that we are alive, if the profile knows how and the controller can listen now."""
        if not self._replies:
            self._talk.tell(self._words.beat)

    def reconnect(self) -> None:
        """Open the line anew and check that the same controller answers."""
        self._forget_move()
        self._line.reopen()
        if self._aside is not None:
            self._aside.reopen()
        self._prepare()
        identity = self.identity()
        if identity != self._identity:
            raise InstrumentError(f"{self._line.resource}: is {identity!r}, must be {self._identity!r}")

    def close(self) -> None:
        """Close the line."""
        self._line.close()
        if self._aside is not None:
            self._aside.close()

    def _refuse_when_held(self) -> None:
        if self._held.is_set():
            raise HeldError(f"{self._line.resource}: held by this program")
