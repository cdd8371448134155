"""A thread that brakes the axes when the engine no longer looks at them, and beats for the controller."""

from __future__ import annotations

import threading
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager

BEAT_S = 0.1
TRIP_S = 0.5


class Watchdog:
    """Trips once if `alive` is not called for `TRIP_S` real seconds while a motion is guarded.

    trip
        Called with the reason, from the watchdog's thread.
    beat
        Called every `BEAT_S` while the engine is alive and axes move; errors are ignored, the
        controller's own time-out backs them.
    """

    def __init__(self, trip: Callable[[str], None], beat: Callable[[], None]) -> None:
        self._trip = trip
        self._beat = beat
        self._last = time.monotonic()
        self._guarding = False
        self._end = threading.Event()
        self._limit_s = TRIP_S
        self._thread = threading.Thread(target=self._run, name="watchdog", daemon=True)

    def start(self) -> None:
        """Begin to watch."""
        self._thread.start()

    def close(self) -> None:
        """Stop watching."""
        self._end.set()

    def alive(self) -> None:
        """The engine is alive."""
        self._last = time.monotonic()

    @contextmanager
    def guarding(self, limit_s: float = TRIP_S) -> Iterator[None]:
        """Watch the engine while axes move."""
        self.alive()
        self._limit_s = limit_s
        self._guarding = True
        try:
            yield
        finally:
            self._guarding = False

    def _run(self) -> None:
        while not self._end.wait(BEAT_S):
            if not self._guarding:
                continue
            silent = time.monotonic() - self._last
            if silent > self._limit_s:
                self._guarding = False
                self._trip(f"engine did not look at moving axes for {silent:.2f} s, limit {self._limit_s:g} s")
            else:
                try:
                    self._beat()
                except Exception:
                    continue
