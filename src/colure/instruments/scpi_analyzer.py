"""A vector network analyzer driven by the words of a profile."""

from __future__ import annotations

import re
import time

import numpy as np

from colure.instruments.profile import AnalyzerProfile
from colure.instruments.protocols import InstrumentError, Sweep, SweepSettings
from colure.instruments.transport import Transport


class ScpiAnalyzer:
    """Analyzer behind a VISA resource; see `AnalyzerDriver`."""

    def __init__(self, resource: str, profile: AnalyzerProfile, *, timeout_s: float) -> None:
        self._profile = profile
        self._link = Transport(resource, timeout_s=timeout_s)
        self._points = 0
        self._ports: tuple[int, ...] = ()
        self._identity = self._link.query(profile.identity)

    def identity(self) -> str:
        """Return what the instrument says it is."""
        return self._identity

    def configure(self, settings: SweepSettings, ports: tuple[int, ...]) -> None:
        """Send every setting, then read the error queue until it is empty.

        Raises
        ------
        InstrumentError
            If the instrument refuses a setting; the message carries its own words.
        """
        for command in self._profile.setup:
            self._link.write(command.format(**settings.__dict__))
        self._raise_errors()
        self._points, self._ports = settings.points, ports

    def route(self, channel: int) -> None:
        """Connect the analyzer to an antenna by its switch."""
        if not self._profile.route:
            raise InstrumentError("analyzer profile: `route` is empty, the reference switch cannot be set")
        self._link.write(self._profile.route.format(channel=channel))
        self._raise_errors()

    def sweep(self) -> Sweep:
        """Run one sweep and return the traces of all ports.

        Raises
        ------
        InstrumentError
            If the traces are not finite, all zero, or flagged by the instrument's error queue.
        """
        answer = self._link.query(self._profile.sweep)
        if answer != "1":
            raise InstrumentError(f"{self._link.resource}: sweep did not complete, answered {answer!r}")
        columns = []
        for port in self._ports:
            raw = self._link.query_block(
                self._profile.trace.format(port=port),
                big_endian=self._profile.byte_order == "big",
                expected=2 * self._points,
            )
            columns.append(raw[0::2] + 1j * raw[1::2])
        trace = np.stack(columns, axis=-1)
        if not np.all(np.isfinite(trace)):
            raise InstrumentError(f"{self._link.resource}: trace holds values that are not finite")
        if not np.all(np.any(trace != 0.0, axis=0)):
            raise InstrumentError(f"{self._link.resource}: trace is all zero")
        condition = int(float(self._link.query(self._profile.condition))) if self._profile.condition else 0
        return Sweep(trace, condition)

    def clock_s(self) -> float:
        """Return the instrument's clock in seconds, or the computer's monotonic one."""
        if not self._profile.clock:
            return time.monotonic()
        hours, minutes, seconds = (float(part) for part in self._link.query(self._profile.clock).split(","))
        return 3600.0 * hours + 60.0 * minutes + seconds

    def safe(self) -> None:
        """Switch the source off, as the profile says."""
        for command in self._profile.safe:
            self._link.write(command)

    def close(self) -> None:
        """Close the connection."""
        self._link.close()

    def _raise_errors(self) -> None:
        found = []
        for _ in range(40):
            answer = self._link.query(self._profile.error)
            if re.match(self._profile.error_none, answer):
                break
            found.append(answer)
        if found:
            raise InstrumentError(f"{self._link.resource}: {'; '.join(found)}")
