"""A thread that brakes the axes when the engine no longer looks at them, and beats for the controller."""

from __future__ import annotations

import threading
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager

BEAT_S = 0.1
TRIP_S = 0.5
#: A line may take so many of its longest exchanges between two signs of life; more than the second number it never gets, seconds.
EXCHANGES, LONGEST_TRIP_S = 6.0, 5.0


class Watchdog:
    """Trips if `alive` is not called for a while while a motion is guarded: `TRIP_S`, longer on a slow line.

    Only time that this thread itself was given counts: a computer that gave nobody time for a second says nothing of
    the engine.

    trip
        Called with the reason, from the watchdog's thread.
    beat
        Called every `BEAT_S` while the engine is alive and axes move; errors are ignored, the
        controller's own time-out backs them.
    """

    def __init__(self, trip: Callable[[str], None], beat: Callable[[], None]) -> None:
        self._trip = trip
        self._beat = beat
        self._sign = 0
        self._guarding = False
        self._end = threading.Event()
        self._least_s = TRIP_S
        self._exchange_s = 0.0
        self._thread = threading.Thread(target=self._run, name="watchdog", daemon=True)

    def start(self) -> None:
        """Begin to watch."""
        self._thread.start()

    def close(self) -> None:
        """Stop watching."""
        self._end.set()

    def alive(self) -> None:
        """The engine is alive, or an instrument has answered it."""
        self._sign += 1

    def exchange_took(self, seconds: float) -> None:
        """Learn how long one look at the axes takes on this line, while they rest; the slowest of late counts."""
        self._exchange_s = max(0.9 * self._exchange_s, seconds)

    @property
    def limit_s(self) -> float:
        """Silence that is still taken for life, seconds."""
        return max(self._least_s, min(EXCHANGES * self._exchange_s, LONGEST_TRIP_S))

    @contextmanager
    def guarding(self, limit_s: float = TRIP_S) -> Iterator[None]:
        """Watch the engine while axes move."""
        self.alive()
        self._least_s = limit_s
        self._guarding = True
        try:
            yield
        finally:
            self._guarding = False

    def _run(self) -> None:
        seen, silent, before = self._sign, 0.0, time.monotonic()
        while not self._end.wait(BEAT_S):
            now = time.monotonic()
            if not self._guarding or self._sign != seen:
                seen, silent = self._sign, 0.0
            else:
                silent += min(now - before, 1.5 * BEAT_S)
            before = now
            if not self._guarding:
                continue
            if silent > self.limit_s:
                self._guarding = False
                self._trip(
                    f"engine did not look at moving axes for {silent:.1f} s and the controller did not answer, "
                    f"limit {self.limit_s:.1f} s"
                )
            else:
                try:
                    self._beat()
                except Exception:
                    continue
