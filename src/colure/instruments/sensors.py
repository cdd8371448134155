"""Temperature, humidity and the like, read beside the run: the newest value of each goes with every point.

A sensor that is lost gives `nan` and never stops a run.
"""

from __future__ import annotations

import math
import re
import threading
import time
from collections.abc import Iterable, Sequence
from contextlib import suppress
from dataclasses import dataclass

from colure.instruments.protocols import SensorDriver

#: A quantity's name: small letters and digits, the unit at its end.
UNIT_NAME = re.compile(r"[a-z0-9]+(_[a-z0-9]+)+")
#: A value older than so many reading periods, and this at least, is none.
STALE_PERIODS, STALE_S = 3.0, 2.0
#: How long a reading under way is waited for at the end, seconds.
CLOSING_S = 1.0


def require_unit_names(names: Iterable[str]) -> None:
    """Raise `ValueError` for a quantity whose name does not end with its unit, as `temperature_c` does."""
    for name in names:
        if not UNIT_NAME.fullmatch(name):
            raise ValueError(f"quantity {name!r}: must be small letters, digits and _, with its unit at the end")


@dataclass(frozen=True)
class Sensor:
    """One sensor and how often it is read (seconds)."""

    name: str
    driver: SensorDriver
    every_s: float = 2.0


class Sensors:
    """All sensors of a range, a thread each once `watch` was called; without it they are read when asked."""

    def __init__(self, sensors: Sequence[Sensor] = ()) -> None:
        self.sensors = tuple(sensors)
        self._end = threading.Event()
        self._watching = False
        self._threads: list[threading.Thread] = []
        self._values: dict[str, tuple[float, float, float]] = {}

    @property
    def names(self) -> tuple[str, ...]:
        """Every quantity, the sensor's name before it: `sensor.temperature_c`."""
        return tuple(f"{one.name}.{quantity}" for one in self.sensors for quantity in one.driver.quantities)

    def watch(self) -> None:
        """Read all sensors from now on."""
        for one in self.sensors:
            self._read(one)
        self._watching = True
        self._threads = [
            threading.Thread(target=self._run, args=(one,), name=f"sensor {one.name}", daemon=True)
            for one in self.sensors
        ]
        for thread in self._threads:
            thread.start()

    def close(self) -> None:
        """Read no more; readings under way are waited for a moment."""
        self._end.set()
        for thread in self._threads:
            thread.join(CLOSING_S)

    def _run(self, one: Sensor) -> None:
        while not self._end.wait(one.every_s):
            self._read(one)

    def _read(self, one: Sensor) -> None:
        # A driver of another package may raise whatever it likes: a sensor never stops a run.
        with suppress(Exception):
            now, limit_s = time.monotonic(), max(STALE_S, STALE_PERIODS * one.every_s)
            for quantity, value in one.driver.read().items():
                self._values[f"{one.name}.{quantity}"] = (now, float(value), limit_s)

    def latest(self) -> dict[str, float]:
        """Return the newest value of every quantity; `nan` where there is none, or only an old one."""
        if not self._watching:
            for one in self.sensors:
                self._read(one)
        now = time.monotonic()
        out = dict.fromkeys(self.names, math.nan)
        for name, (when, value, limit_s) in self._values.items():
            if now - when <= limit_s:
                out[name] = value
        return out
