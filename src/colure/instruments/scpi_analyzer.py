"""A vector network analyzer driven by the words of a profile."""

from __future__ import annotations

from typing import Any

import numpy as np

from colure.geometry.conventions import ComplexArray
from colure.instruments.links import Opener, VisaLink
from colure.instruments.profile import AnalyzerProfile
from colure.instruments.protocols import InstrumentError, LostError, Sweep, SweepSettings
from colure.instruments.scpi_words import ScpiInstrument

#: No path between two antennas amplifies by more than this, active devices included (common practice, no source).
MOST_GAIN_DB = 80.0


class ScpiAnalyzer(ScpiInstrument):
    """Analyzer behind a VISA resource; see `AnalyzerDriver`."""

    receiver = "vector"

    def __init__(self, resource: str, profile: AnalyzerProfile, *, timeout_s: float, opener: Opener = VisaLink) -> None:
        super().__init__(resource, profile, timeout_s=timeout_s, opener=opener)
        self._profile = profile
        self._points = 0
        self._ports: tuple[int, ...] = ()

    def configure(self, settings: SweepSettings, ports: tuple[int, ...]) -> dict[str, Any]:
        """Send every setting, read the error queue, and return the settings as read back.

        Raises
        ------
        InstrumentError
            If the instrument refuses a setting or keeps another value; its own words are told.
        """
        self.setup(settings)
        self._points, self._ports = settings.points, ports
        return self.confirm(self._profile.confirm, settings)

    def trigger(self, *, external: bool) -> None:
        """Let sweeps start at once, or wait for the controller's pulse."""
        command = self._profile.trigger_external if external else self._profile.trigger_internal
        if not command:
            if external:
                raise InstrumentError("analyzer profile: `trigger_external` is empty, pulses cannot start sweeps")
            return
        self._link.write(command)
        self.raise_errors()

    def sweep(self) -> Sweep:
        """Run one sweep and return the traces of all ports.

        Raises
        ------
        InstrumentError
            If the sweep did not complete or is stale, the instrument reports an error of this sweep, or the traces
            hold what no receiver measures.
        """
        answer = self._link.query(self._profile.sweep)
        if answer.lstrip("+") != "1":
            raise LostError(f"{self._link.resource}: sweep did not complete, answered {answer[:60]!r}")
        # A word that the instrument did not know leaves the trace of the sweep before.
        self.raise_errors()
        columns = []
        for port in self._ports:
            raw = self._link.query_numbers(
                self._profile.trace.format(port=port),
                form=self._profile.number_format,
                big_endian=self._profile.byte_order == "big",
                expected=2 * self._points,
            )
            columns.append(raw[0::2] + 1j * raw[1::2])
        trace = np.stack(columns, axis=-1)
        flags = self.flags()
        self.raise_errors()
        require_plausible(trace, self._link.resource)
        return Sweep(trace, flags)


def require_plausible(trace: ComplexArray, resource: str) -> None:
    """Raise `InstrumentError` if a trace holds values that no receiver measures."""
    if not np.all(np.isfinite(trace)):
        raise InstrumentError(f"{resource}: trace holds values that are not finite")
    if not np.all(np.any(trace != 0.0, axis=0)):
        raise InstrumentError(f"{resource}: trace is all zero")
    highest = 20.0 * np.log10(float(np.abs(trace).max()))
    if highest > MOST_GAIN_DB:
        raise InstrumentError(
            f"{resource}: trace reads {highest:.0f} dB, must be below {MOST_GAIN_DB:g} dB: is it a ratio, and are byte order and "
            "number format those of the profile?"
        )
