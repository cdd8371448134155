"""Axes that take time to move: trapezoidal speed profiles, limits, feed hold."""

from __future__ import annotations

import threading
from dataclasses import dataclass

import numpy as np

from colure.model.chamber import Axis
from colure.twin.clock import Clock


@dataclass
class Move:
    """One move of one axis: start, signed distance and when it began."""

    start_deg: float
    distance_deg: float
    begin_s: float
    speed: float
    acceleration: float

    @property
    def peak_speed(self) -> float:
        """Highest speed reached in deg/s; short moves never cruise."""
        return float(min(self.speed, np.sqrt(abs(self.distance_deg) * self.acceleration)))

    @property
    def end_s(self) -> float:
        """When the axis stands again."""
        if self.distance_deg == 0.0:
            return self.begin_s
        ramp = self.peak_speed / self.acceleration
        return self.begin_s + abs(self.distance_deg) / self.peak_speed + ramp

    def state(self, moment: float) -> tuple[float, float]:
        """Return (position in deg, speed in deg/s) at a moment."""
        if moment >= self.end_s or self.distance_deg == 0.0:
            return self.start_deg + self.distance_deg, 0.0
        t = max(0.0, moment - self.begin_s)
        total, ramp, peak = self.end_s - self.begin_s, self.peak_speed / self.acceleration, self.peak_speed
        sign = float(np.sign(self.distance_deg))
        if t < ramp:
            return self.start_deg + sign * 0.5 * self.acceleration * t**2, sign * self.acceleration * t
        if t <= total - ramp:
            return self.start_deg + sign * (0.5 * peak * ramp + peak * (t - ramp)), sign * peak
        left = total - t
        position = self.start_deg + self.distance_deg - sign * 0.5 * self.acceleration * left**2
        return position, sign * self.acceleration * left


class Stage:
    """All axes of the simulated positioner, moved together and held together."""

    def __init__(self, axes: dict[str, Axis], clock: Clock) -> None:
        self.axes = axes
        self.clock = clock
        self.held = threading.Event()
        self._lock = threading.Lock()
        self._moves = {
            name: Move(axis.home_deg, 0.0, 0.0, axis.speed_deg_s, axis.acceleration_deg_s2)
            for name, axis in axes.items()
        }

    def positions(self, moment: float | None = None) -> dict[str, float]:
        """Return every axis' readout in degrees."""
        when = self.clock.now() if moment is None else moment
        with self._lock:
            return {name: move.state(when)[0] for name, move in self._moves.items()}

    def busy_until(self) -> float:
        """Return when the last axis stands."""
        with self._lock:
            return max(move.end_s for move in self._moves.values())

    def limit_fault(self, targets: dict[str, float]) -> str:
        """Name the axis and limit that a target would cross; empty if none."""
        for name, value in targets.items():
            axis = self.axes[name]
            if not axis.min_deg - 1e-6 <= value <= axis.max_deg + 1e-6:
                return f"{name} target {value:g} outside {axis.min_deg:g}..{axis.max_deg:g} deg"
        return ""

    def start(self, targets: dict[str, float]) -> None:
        """Start a move after the one in progress; each axis at its own speed."""
        begin = max(self.clock.now(), self.busy_until())
        current = self.positions(begin)
        with self._lock:
            for name, value in targets.items():
                axis = self.axes[name]
                self._moves[name] = Move(
                    current[name], value - current[name], begin, axis.speed_deg_s, axis.acceleration_deg_s2
                )

    def hold(self) -> None:
        """Brake every axis at its full deceleration and stay there until released."""
        self.held.set()
        now = self.clock.now()
        with self._lock:
            for name, move in self._moves.items():
                position, speed = move.state(now)
                braking = np.sign(speed) * speed**2 / (2.0 * move.acceleration)
                self._moves[name] = Move(position + float(braking), 0.0, now, move.speed, move.acceleration)

    def release(self) -> None:
        """Allow motion again."""
        self.held.clear()

    def wait_idle(self, dwell_s: float) -> bool:
        """Wait until all axes stand plus a dwell; False if held meanwhile."""
        return self.clock.wait_until(max(self.clock.now(), self.busy_until()) + dwell_s, self.held)
