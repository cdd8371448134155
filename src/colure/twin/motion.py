"""Axes that take time to move: trapezoidal or jerk-limited speed, limits, hold, door, and their faults."""

from __future__ import annotations

import math
import threading
from collections.abc import Mapping
from dataclasses import dataclass, replace
from functools import cached_property
from itertools import pairwise

import numpy as np

from colure.model.chamber import Axis, SimulatedChamber
from colure.model.faults import FaultKind
from colure.twin.clock import SimulatedClock
from colure.twin.faults import Faults, HangUpError, SilenceError
from colure.twin.signal_chain import SignalChain

#: A door opened by a fault is shut again after this, in simulated seconds.
DOOR_OPEN_S = 20.0
#: In virtual time, somebody who only watches a move lets this much time pass per look.
GLANCE_S = 0.25


@dataclass(frozen=True, kw_only=True)
class Move:
    """One move of one axis: start, signed distance and when it began; infinite jerk is a trapezoid."""

    start_deg: float
    distance_deg: float
    begin_s: float
    speed: float
    acceleration: float
    jerk: float = float("inf")

    @cached_property
    def phases(self) -> tuple[tuple[float, float, float, float, float], ...]:
        """Spans of constant jerk: (begin, way, speed, acceleration, jerk) from the move's start, unsigned.

        The last entry is the end. The peak speed of a short move is found by halving the interval.
        """
        way, low, high = abs(self.distance_deg), 0.0, self.speed
        if way > 0.0 and self._needs(high) > way:
            while low < (middle := 0.5 * (low + high)) < high:
                low, high = (middle, high) if self._needs(middle) <= way else (low, middle)
        bend, flat = self._ramp(high)
        kinks = [(bend, self.jerk), (flat, 0.0), (bend, -self.jerk), ((way - self._needs(high)) / high, 0.0),
                 (bend, -self.jerk), (flat, 0.0), (bend, self.jerk)]  # fmt: skip
        t, x, v, a, out = 0.0, 0.0, 0.0, 0.0, []
        endless = not math.isfinite(self.jerk)
        for number, (span, change) in enumerate(kinks):
            if span <= 0.0:
                continue
            jerk = 0.0 if endless else change
            if endless:
                a = {1: self.acceleration, 5: -self.acceleration}.get(number, 0.0)
            out.append((t, x, v, a, jerk))
            x += v * span + 0.5 * a * span**2 + jerk * span**3 / 6.0
            v, a, t = v + a * span + 0.5 * jerk * span**2, a + jerk * span, t + span
        return (*out, (t, way, 0.0, 0.0, 0.0))

    def _ramp(self, peak: float) -> tuple[float, float]:
        """Return (time of changing, time of constant acceleration) of a ramp to a speed."""
        if not math.isfinite(self.jerk):
            return 0.0, peak / self.acceleration
        bend = min(self.acceleration / self.jerk, math.sqrt(peak / self.jerk))
        return bend, max(0.0, peak / (self.jerk * bend) - bend) if bend > 0.0 else 0.0

    def _needs(self, peak: float) -> float:
        """Return the way that both ramps to a speed take."""
        bend, flat = self._ramp(peak)
        return peak * (2.0 * bend + flat)

    @property
    def end_s(self) -> float:
        """When the axis stands again."""
        return self.begin_s if self.distance_deg == 0.0 else self.begin_s + self.phases[-1][0]

    def state(self, moment: float) -> tuple[float, float]:
        """Return (position in deg, speed in deg/s) at a moment."""
        if moment >= self.end_s or self.distance_deg == 0.0:
            return self.start_deg + self.distance_deg, 0.0
        t = max(0.0, moment - self.begin_s)
        begin, x, v, a, jerk = next(phase for phase in reversed(self.phases) if phase[0] <= t)
        into, sign = t - begin, float(np.sign(self.distance_deg))
        way = x + v * into + 0.5 * a * into**2 + jerk * into**3 / 6.0
        return self.start_deg + sign * way, sign * (v + a * into + 0.5 * jerk * into**2)

    def when(self, position_deg: float) -> float | None:
        """Return the moment at which the axis passes a position on this move; None if it does not."""
        share = float((position_deg - self.start_deg) * np.sign(self.distance_deg))
        if self.distance_deg == 0.0 or not 0.0 <= share <= abs(self.distance_deg):
            return None
        for (begin, x, v, a, jerk), (end, further, *_) in pairwise(self.phases):
            if share <= further:
                return self.begin_s + begin + _passes(share - x, v, a, jerk, end - begin)
        return self.end_s


def _passes(way: float, v: float, a: float, jerk: float, span: float) -> float:
    """Return when x = v t + a t^2 / 2 + jerk t^3 / 6, which rises over a span, reaches `way`."""
    if a == 0.0 and jerk == 0.0:
        return way / v
    low, high = 0.0, span
    for _ in range(60):
        middle = 0.5 * (low + high)
        low, high = (middle, high) if v * middle + 0.5 * a * middle**2 + jerk * middle**3 / 6.0 < way else (low, middle)
    return high


@dataclass(frozen=True, kw_only=True)
class Pulses:
    """Positions of one axis at which the controller starts a sweep."""

    axis: str
    start_deg: float
    step_deg: float
    count: int


class Stage:
    """All axes of the simulated positioner, moved together and held together."""

    def __init__(
        self,
        axes: dict[str, Axis],
        clock: SimulatedClock,
        truth: SimulatedChamber | None = None,
        faults: Faults | None = None,
    ) -> None:
        self.axes = axes
        self.clock = clock
        self.truth = truth or SimulatedChamber()
        self._chain = SignalChain(self.truth, self.truth.seed)
        self.faults = faults or Faults(self.truth)
        self.held = threading.Event()
        self.alarm = ""
        self.pulses: Pulses | None = None
        self._door_until = -1.0
        self._beat_until: float | None = None
        self._lock = threading.RLock()
        self._seen_s = -1.0
        #: 0 where whoever watches lets time pass by himself.
        self.glance_s = GLANCE_S
        self._busy_extra_s = 0.0
        self._offset_deg = dict.fromkeys(axes, 0.0)
        self._drift_deg_s = dict.fromkeys(axes, 0.0)
        self._direction = dict.fromkeys(axes, 0.0)
        self._moves = {
            name: Move(
                start_deg=axis.home_deg,
                distance_deg=0.0,
                begin_s=0.0,
                speed=axis.speed_deg_s,
                acceleration=axis.acceleration_deg_s2,
            )
            for name, axis in axes.items()
        }
        #: When a hold broke moves off, and these moves: what was asked of moments before it is answered by them.
        self._broken: tuple[float, dict[str, Move]] = (0.0, {})

    def stand_at(self, positions_deg: dict[str, float]) -> None:
        """Let axes stand where an earlier session left them; unknown names and places beyond the limits are left out."""
        with self._lock:
            for name, place in positions_deg.items():
                axis = self.axes.get(name)
                if axis is not None and axis.min_deg <= place <= axis.max_deg:
                    self._moves[name] = replace(self._moves[name], start_deg=float(place), distance_deg=0.0)

    def rest_positions(self) -> dict[str, float]:
        """Brake, and return where the axes' counts come to stand, turns included."""
        self._brake(self.clock.now())
        with self._lock:
            return {name: move.start_deg + self._offset_deg[name] for name, move in self._moves.items()}

    def shift_counts(self, offsets_deg: dict[str, float]) -> None:
        """Let the readouts of axes be off from now on, as after a power cycle somewhere else."""
        with self._lock:
            self._offset_deg.update(offsets_deg)

    def positions(self, moment: float | None = None) -> dict[str, float]:
        """Return every axis' readout in degrees, as the controller reports it."""
        when = self.clock.now() if moment is None else moment
        with self._lock:
            out = {}
            for name, move in self._moves.items():
                rest = max(0.0, when - move.end_s)
                shown = move.state(when - self.truth.axes_latency_s)[0]
                value = shown + self._offset_deg[name] + self._drift_deg_s[name] * rest
                value += float(self._chain.jitter_deg(name, when))
                modulo = self.axes[name].modulo_deg
                out[name] = value if modulo is None else value % modulo
            return out

    def true_positions(self, moment: float) -> dict[str, float]:
        """Return where the axes really are: backlash lags behind the last direction."""
        loose = self.truth.backlash_deg
        with self._lock:
            broken_s, broken = self._broken
            moves = {**self._moves, **broken} if moment < broken_s else self._moves
            return {
                name: move.state(moment)[0] - 0.5 * loose.get(name, 0.0) * self._direction[name]
                for name, move in moves.items()
            }

    def busy_until(self) -> float:
        """Return when the last axis stands."""
        with self._lock:
            return max(move.end_s for move in self._moves.values()) + self._busy_extra_s

    def moving(self) -> bool:
        """Tell whether any axis moves; in virtual time a mere watcher lets a little time pass."""
        self._check_beat()
        now, busy = self.clock.now(), self.busy_until()
        if now >= busy:
            return False
        if self.clock.virtual:
            # Somebody else (a sweep, a dwell) may be advancing the time; then looking costs nothing.
            if now == self._seen_s:
                self.clock.wait_until(min(now + self.glance_s, busy))
            self._seen_s = self.clock.now()
        return True

    def limit_fault(self, targets: dict[str, float]) -> str:
        """Name the axis and limit that a target would cross; empty if none."""
        for name, value in targets.items():
            axis = self.axes[name]
            if not axis.min_deg - 1e-6 <= value <= axis.max_deg + 1e-6:
                return f"{name} target {value:g} outside {axis.min_deg:g}..{axis.max_deg:g} deg"
        return ""

    @property
    def door_open(self) -> bool:
        """Tell whether somebody may be inside."""
        return self.clock.now() < self._door_until

    def open_door(self, seconds: float = DOOR_OPEN_S) -> None:
        """Open the door: the hard-wired interlock brakes the axes. It shuts, but releases nothing."""
        self._door_until = self.clock.now() + seconds
        self.hold()

    def start(
        self,
        targets: dict[str, float],
        *,
        per_s: float | None = None,
        coordinated: bool = True,
        speeds_deg_s: Mapping[str, float] | None = None,
    ) -> None:
        """Start a move after the one in progress.

        per_s
            Share of the move per second at cruising speed; as fast as the axes can if None.
        coordinated
            All axes start and end together; otherwise each axis goes at its own speed.
        speeds_deg_s
            Speeds of such axes that a command has set; never faster than the axis can.
        """
        kind = self.faults.next_move()
        self._before_move(kind)
        if kind is FaultKind.RESET_TO_ZERO:
            return
        queue = targets if not coordinated else self.axes
        begin = max([self.clock.now(), *(self._moves[name].end_s for name in queue)])
        with self._lock:
            self._busy_extra_s, self._broken = 0.0, (0.0, {})
            self._drift_deg_s = dict.fromkeys(self.axes, 0.0)
            here = {name: move.state(begin)[0] for name, move in self._moves.items()}
            ways = {name: value - here[name] for name, value in targets.items()}
            rate, ramp, bend = self._shared(ways, per_s)
            for name, way in ways.items():
                axis = self.axes[name]
                acceleration, jerk = axis.acceleration_deg_s2, axis.jerk
                speed = min(axis.speed_deg_s, (speeds_deg_s or {}).get(name, axis.speed_deg_s))
                if coordinated and way != 0.0:
                    speed, acceleration, jerk = abs(way) * rate, abs(way) * ramp, abs(way) * bend
                self._moves[name] = Move(
                    start_deg=here[name],
                    distance_deg=way,
                    begin_s=begin,
                    speed=speed,
                    acceleration=acceleration,
                    jerk=jerk,
                )
                if way != 0.0:
                    self._direction[name] = float(np.sign(way))
        self._after_start(kind, ways, begin)

    def _shared(self, ways: dict[str, float], per_s: float | None) -> tuple[float, float, float]:
        """Return the share per second, per second squared and cubed that every axis can follow."""
        moving = {name: abs(way) for name, way in ways.items() if way != 0.0}
        if not moving:
            return 1.0, 1.0, float("inf")
        rate = min(self.axes[name].speed_deg_s / way for name, way in moving.items())
        ramp = min(self.axes[name].acceleration_deg_s2 / way for name, way in moving.items())
        jerk = min(self.axes[name].jerk / way for name, way in moving.items())
        return (rate if per_s is None else min(rate, per_s)), ramp, jerk

    def _before_move(self, kind: FaultKind | None) -> None:
        if kind is FaultKind.LIMIT_SWITCH:
            self._trip("limit-switch")
        elif kind is FaultKind.EMERGENCY_STOP:
            self._trip("emergency-stop")
        elif kind is FaultKind.DOOR_OPEN:
            self.open_door()
        elif kind is FaultKind.RESET_TO_ZERO:
            self._lose_power()

    def _lose_power(self) -> None:
        """Brake, and count from zero again: what a controller without absolute encoders does after a power cut."""
        self.hold()
        now = self.clock.now()
        with self._lock:
            self._offset_deg = {name: -move.state(now)[0] for name, move in self._moves.items()}

    def _trip(self, alarm: str) -> None:
        self.alarm = alarm
        self.hold()

    def _after_start(self, kind: FaultKind | None, ways: dict[str, float], begin: float) -> None:
        """Spoil the move that was just started, if it is its turn to fail."""
        if not ways or kind is None:
            return
        name = max(ways, key=lambda axis: abs(ways[axis]))
        with self._lock:
            move = self._moves[name]
            if kind is FaultKind.STALL:
                self._moves[name] = replace(move, distance_deg=0.5 * move.distance_deg)
                self._busy_extra_s = 30.0
            elif kind is FaultKind.SLOW:
                self._moves[name] = replace(move, speed=0.1 * move.speed)
            elif kind is FaultKind.READBACK_OFF:
                self._offset_deg[name] += 0.5
            elif kind is FaultKind.READBACK_JUMP:
                self._offset_deg[name] += 30.0
            elif kind is FaultKind.READBACK_DRIFT:
                self._drift_deg_s[name] = 1.0
            elif kind is FaultKind.READBACK_NAN:
                self._drift_deg_s[name] = float("nan")
            elif kind is FaultKind.WRONG_WAY:
                # Miswired: as far as the axis' own stops let it.
                axis = self.axes[name]
                end = float(np.clip(move.start_deg - move.distance_deg, axis.min_deg, axis.max_deg))
                self._moves[name] = replace(move, distance_deg=end - move.start_deg)

    def set_pulses(self, pulses: Pulses) -> None:
        """Choose the positions at which the controller's output starts sweeps."""
        with self._lock:
            self.pulses, self._broken = pulses, (0.0, {})

    def next_pulse(self, after: float) -> float | None:
        """Return the next moment at which a pulse comes; None if no move under way passes one."""
        return next(iter(self.pulses_after(after)), None)

    def pulses_after(self, after: float) -> list[float]:
        """Return the moments at which pulses come, of the move under way, in their order."""
        with self._lock:
            if self.pulses is None:
                return []
            places = self.pulses.start_deg + self.pulses.step_deg * np.arange(self.pulses.count)
            moments = [
                moment for place in places if (moment := self._passes(self.pulses.axis, float(place))) is not None
            ]
            return sorted(moment for moment in moments if moment > after - 1e-12)

    def _passes(self, name: str, place_deg: float) -> float | None:
        """Return when an axis passes a place on the move under way, or did on the one that a hold broke off; None if it does not."""
        broken_s, broken = self._broken
        if name in broken and (moment := broken[name].when(place_deg)) is not None and moment < broken_s:
            return moment
        return self._moves[name].when(place_deg)

    def latched(self) -> list[float]:
        """Return the readouts of the pulsing axis at the pulses so far, in their order, as the controller has stored them."""
        with self._lock:
            if self.pulses is None:
                return []
            axis, step = self.pulses.axis, self.pulses.step_deg
            offset, now = self._offset_deg[axis], self.clock.now()
            places = [self.pulses.start_deg + number * step for number in range(self.pulses.count)]
            moments = [self._passes(axis, place) for place in places]
            out = [place + offset for place, at in zip(places, moments, strict=True) if at is not None and at <= now]
            if out and self.faults.of(FaultKind.LATCH_OFF):
                out[len(out) // 2] += 0.5 * step
            modulo = self.axes[axis].modulo_deg
            return out if modulo is None else [place % modulo for place in out]

    def hold(self) -> None:
        """Brake every axis at its full deceleration and stay there until released."""
        self.held.set()
        self._brake(self.clock.now())

    def _brake(self, now: float) -> None:
        with self._lock:
            self._busy_extra_s = 0.0
            # A decoder that lost its count for a move finds it again at rest.
            self._drift_deg_s = {name: 0.0 if np.isnan(drift) else drift for name, drift in self._drift_deg_s.items()}
            if any(move.distance_deg and now < move.end_s for move in self._moves.values()):
                self._broken = now, dict(self._moves)
            for name, move in self._moves.items():
                position, speed = move.state(now)
                axis = self.axes[name]
                braking = np.sign(speed) * speed**2 / (2.0 * axis.acceleration_deg_s2)
                self._moves[name] = Move(
                    start_deg=position + float(braking),
                    distance_deg=0.0,
                    begin_s=now,
                    speed=axis.speed_deg_s,
                    acceleration=axis.acceleration_deg_s2,
                )

    def release(self) -> None:
        """Allow motion again, unless the door is open or an alarm stands."""
        if not self.alarm and not self.door_open:
            self._beat_until = None
            self.held.clear()

    def reset(self) -> None:
        """What a person does at the switch after an emergency stop; no command can."""
        self.alarm = ""

    def home(self) -> None:
        """Seek the reference marks: leaves a limit switch and clears every error of the readout."""
        if self.alarm == "emergency-stop":
            return
        with self._lock:
            self.alarm = ""
            self._offset_deg = dict.fromkeys(self.axes, 0.0)
            self._drift_deg_s = dict.fromkeys(self.axes, 0.0)
        if not self.door_open:
            self.held.clear()
        self.start({name: axis.home_deg for name, axis in self.axes.items()})

    def beat(self, seconds: float) -> None:
        """The computer is alive; brake by ourselves if this is not repeated in time, which is the computer's: no scaled one."""
        if not self.clock.virtual:
            self._beat_until = self.clock.now() + self.clock.of_real(seconds)

    def _check_beat(self) -> None:
        until = self._beat_until
        if until is None or self.clock.now() <= until:
            return
        # A rest needs no heartbeat: only a move that it lapses in is braked, and the next one is armed by the next beat.
        self._beat_until = None
        if until < self.busy_until() and not self.held.is_set():
            self.held.set()
            self._brake(until)

    def wait_idle(self, dwell_s: float) -> bool:
        """Wait until all axes stand plus a dwell; False if held meanwhile."""
        return self.clock.wait_until(max(self.clock.now(), self.busy_until()) + dwell_s, self.held)


def fail_to_answer(stage: Stage) -> str:
    """Return garbage for the answer to the latest move, hang or hang up, if that is its fault; else nothing."""
    kind = stage.faults.of_move
    if kind is FaultKind.AXES_HANG:
        raise SilenceError
    if kind in (FaultKind.AXES_DROP, FaultKind.RESET_TO_ZERO):
        raise HangUpError
    return "\x7f@#" if kind is FaultKind.AXES_GARBAGE else ""
