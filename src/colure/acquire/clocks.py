"""The engine's time: real, scaled to a simulated chamber's, or standing still while that one jumps."""

from __future__ import annotations

import time
from typing import Protocol

from colure.instruments.protocols import Timer


class Clock(Timer, Protocol):
    """Time as the engine needs it.

    real_time
        False when the instruments live in virtual time, so that no interval measured here says
        anything about their motion.
    """

    real_time: bool

    def wall(self) -> float: ...
    def asleep_s(self) -> float: ...
    def of_real(self, seconds: float) -> float: ...


class SystemClock:
    """The computer's clocks; `factor` instrument seconds pass per real second (0: virtual time)."""

    def __init__(self, factor: float = 1.0) -> None:
        self._factor = factor
        self.real_time = factor > 0.0

    def monotonic(self) -> float:
        """Return instrument seconds that never jump."""
        return time.monotonic() * (self._factor or 1.0)

    def wall(self) -> float:
        """Return seconds since 1970; may jump."""
        return time.time()

    def sleep(self, seconds: float) -> None:
        """Wait for instrument seconds; hardly at all in virtual time."""
        time.sleep(seconds / self._factor if self.real_time else min(seconds, 0.002))

    def of_real(self, seconds: float) -> float:
        """Return how many instrument seconds pass in so many real ones; 0 in virtual time."""
        return seconds * self._factor

    def asleep_s(self) -> float:
        """Return how long the computer was suspended since it was started (Linux; elsewhere always 0)."""
        if not hasattr(time, "CLOCK_BOOTTIME"):
            return 0.0
        return time.clock_gettime(time.CLOCK_BOOTTIME) - time.clock_gettime(time.CLOCK_MONOTONIC)
