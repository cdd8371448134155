"""Simulated time: real, scaled, or as fast as the questions come."""

from __future__ import annotations

import threading
import time


class SimulatedClock:
    """Time of the simulated chamber in seconds since it was started.

    factor 0: virtual; time only passes when somebody waits for something. Otherwise
    simulated seconds per real second.
    """

    def __init__(self, factor: float = 0.0) -> None:
        self._factor = factor
        self._virtual = 0.0
        self._start = time.monotonic()
        self._lock = threading.Lock()

    @property
    def virtual(self) -> bool:
        """Tell whether time only passes when somebody waits."""
        return self._factor == 0.0

    def of_real(self, seconds: float) -> float:
        """Return how much simulated time passes in so much real time, in which computers live; 0 where time is virtual."""
        return seconds * self._factor

    def now(self) -> float:
        """Return the simulated time in seconds."""
        if self.virtual:
            with self._lock:
                return self._virtual
        return (time.monotonic() - self._start) * self._factor

    def wait_until(self, moment: float, interrupted: threading.Event | None = None) -> bool:
        """Wait for a moment; returns False if `interrupted` was set before it came."""
        if self.virtual:
            if interrupted is not None and interrupted.is_set():
                return False
            with self._lock:
                self._virtual = max(self._virtual, moment)
            return True
        while True:
            if interrupted is not None and interrupted.is_set():
                return False
            left = (moment - self.now()) / self._factor
            if left <= 0.0:
                return True
            time.sleep(min(left, 0.002))
