"""A vector network analyzer driven by the words of a profile."""

from __future__ import annotations

import re
import time
from dataclasses import asdict
from typing import Any

import numpy as np

from colure.errors import InstrumentError
from colure.geometry.conventions import ComplexArray, FloatArray, amplitude_db
from colure.instruments.links import Opener, VisaLink
from colure.instruments.profile import AnalyzerProfile
from colure.instruments.protocols import LostError, Sweep, SweepSettings
from colure.instruments.scpi_words import ScpiInstrument
from colure.model.bands import Segment

#: No path between two antennas amplifies by more than this, active devices included (common practice, no source).
MOST_GAIN_DB = 80.0
#: A passive device sends back no more than it got; the error terms of a calibration may make a little more of it.
MOST_REFLECTED_DB = 1.0
#: Bytes in the wrong order make numbers without any meaning, most of them far below all noise (from memory).
LEAST_LEVEL_DB = -400.0
#: So few values may look sound by chance when their bytes come in the wrong order (8 in 100 do for one double, half for one
#: single): the words that were confirmed before the run are asked for again with every sweep.
FEW_VALUES = 32
#: A sweep that is polled for is looked at this often, seconds.
POLL_S = 0.002


class ScpiAnalyzer(ScpiInstrument):
    """Analyzer behind a VISA resource; see `AnalyzerDriver`."""

    receiver = "vector"
    takes_segments = True

    def __init__(self, resource: str, profile: AnalyzerProfile, *, timeout_s: float, opener: Opener = VisaLink) -> None:
        super().__init__(resource, profile, timeout_s=timeout_s, opener=opener)
        self._profile = profile
        self._timeout_s = timeout_s
        self._points, self._sweeps = 0, 1
        #: Whether a sweep was begun that waits for its pulse.
        self._waits = False
        self._ports: tuple[int, ...] = ()
        self._frequency_hz: FloatArray = np.empty(0)

    def configure(self, settings: SweepSettings, ports: tuple[int, ...]) -> dict[str, Any]:
        """Send every setting, read the error queue, and return the settings as read back.

        Raises
        ------
        InstrumentError
            If the instrument refuses a setting or keeps another value; its own words are told.
        """
        self.setup(settings)
        self._points, self._ports, self._frequency_hz = settings.points, ports, settings.frequency_hz
        self._sweeps = settings.averages if self._profile.each_average else 1
        self._waits = False
        readback = self.confirm(self._profile.confirm, settings)
        if settings.segments:
            readback |= self._set_segments(settings.segments)
        self._confirm_words()
        self._confirm_frequencies(settings)
        return readback

    def _set_segments(self, segments: tuple[Segment, ...]) -> dict[str, Any]:
        """Send the table of segments, read the error queue, and return what was read back of each.

        Raises
        ------
        InstrumentError
            If the profile has no words for segments, or the instrument refuses one or keeps another value.
        """
        words = self._profile
        if missing := words.lacks_for_segments:
            raise InstrumentError(
                f"analyzer profile: `{missing}` is empty, {len(segments)} segments cannot be swept; give goal.toml one evenly "
                "spaced band"
            )
        for command in words.segment_start:
            self._link.write(command)
        for number, one in enumerate(segments, start=1):
            for command in words.segment:
                self._link.write(command.format(number=number, **asdict(one)))
        for command in words.segment_end:
            self._link.write(command)
        self.raise_errors()
        readback: dict[str, Any] = {}
        for number, one in enumerate(segments, start=1):
            queries = {name: query.format(number=number) for name, query in words.segment_confirm.items()}
            try:
                kept = self.confirm(queries, one)
            except InstrumentError as error:
                raise InstrumentError(f"segment {number}: {error}") from None
            readback |= {f"segment {number} {name}": value for name, value in kept.items()}
        return readback

    def _confirm_words(self) -> None:
        for query, pattern in self._profile.confirm_words.items():
            answer = self.ask(query)
            if re.search(pattern, answer) is None:
                raise InstrumentError(
                    f"{self._link.resource}: {query!r} was answered {answer[:60]!r}, must match {pattern!r}"
                )

    def _confirm_frequencies(self, settings: SweepSettings) -> None:
        """Raise `InstrumentError` if the trace is taken at other frequencies than those asked for."""
        if not self._profile.frequency_list:
            return
        wanted = settings.frequency_hz
        try:
            swept_hz = self._link.query_numbers(
                self._profile.frequency_list, form="ascii", big_endian=True, expected=settings.points
            )
        except LostError as lost:
            raise self.in_its_words(lost) from None
        off = np.abs(swept_hz - wanted)
        limit = rounding_hz(settings.stop_hz)
        if not np.all(off <= limit):
            worst = int(np.argmax(off))
            raise InstrumentError(
                f"{self._link.resource}: frequency {worst} is {swept_hz[worst]:.0f}, must be {wanted[worst]:.0f} Hz (limit {limit:.0f} Hz)"
            )

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
        for _ in range(self._sweeps):
            self._one_sweep()
        columns = [self._trace(port) for port in self._ports]
        trace = np.stack(columns, axis=-1)
        # A word that the instrument did not know leaves the trace of the sweep before: no trace counts before this.
        self.raise_errors()
        flags = self.flags()
        require_plausible(trace, self._link.resource)
        if trace.size < FEW_VALUES and self._profile.number_format != "ascii":
            self._confirm_words()
        return Sweep(trace, flags)

    def arm(self, sweeps: int) -> None:
        """Let the analyzer keep so many sweeps, one for every pulse, and return once it waits for the first.

        Raises
        ------
        InstrumentError
            If the profile lacks a word for it.
        LostError
            If the analyzer does not say in time that it waits for pulses.
        """
        words = self._profile
        if missing := words.lacks_for_buffer:
            raise InstrumentError(
                f"analyzer profile: `{missing}` is empty, the sweeps of a slice cannot be kept; buffered = false (goal.toml)"
            )
        if words.buffer_status:
            self.ask(words.buffer_status)  # what happened before is of other sweeps
        for command in words.buffer_start:
            self._link.write(command.format(count=sweeps))
        self.raise_errors()
        self._require_ready()

    def await_pulse(self) -> bool:
        """Begin a sweep that waits for its pulse, and return once the analyzer says so; False if the profile lacks words for that.

        Raises
        ------
        LostError
            If the analyzer does not say in time that it waits.
        """
        words = self._profile
        if words.lacks_for_ready:
            return False
        self._waits = True
        for command in (*words.start, words.sweep) if words.poll else words.ready_start:
            self._link.write(command)
        self._require_ready()
        return True

    def give_up(self) -> None:
        """Wait for a pulse no longer, if a sweep that was begun still does."""
        if self._waits:
            self._waits = False
            for command in self._profile.ready_end:
                self._link.write(command)

    def _require_ready(self) -> None:
        """Return once the analyzer says that it waits for a pulse; raises `LostError` if it does not in time."""
        words, begin = self._profile, time.monotonic()
        while re.search(words.ready_pattern, answer := self.ask(words.ready)) is None:
            if time.monotonic() - begin > self._timeout_s:
                raise LostError(
                    f"{self._link.resource}: not ready for pulses after {self._timeout_s:g} s, {words.ready!r} answered {answer[:60]!r}, "
                    f"must match {words.ready_pattern!r}"
                )
            time.sleep(POLL_S)

    def point_by_point(self, *, on: bool) -> None:
        """Let a pulse start one frequency of a sweep, or a whole sweep again; raises `InstrumentError` if a word for it lacks."""
        words = self._profile
        if missing := words.lacks_for_points:
            raise InstrumentError(
                f"analyzer profile: `{missing}` is empty, a pulse cannot start one frequency; pulse_each = 'sweep' (goal.toml)"
            )
        for command in words.point_start if on else words.point_end:
            self._link.write(command)
        self.raise_errors()

    def kept(self) -> int:
        """Return how many sweeps the analyzer has kept; raises `LostError` if the answer is no number."""
        return self._number_of(self._profile.buffer_count)

    def pulses_heard(self) -> int:
        """Return how many pulses have started a frequency since `arm`; raises `LostError` if the answer is no number."""
        return self._number_of(self._profile.point_count)

    def _number_of(self, query: str) -> int:
        answer = self.ask(query)
        match = re.fullmatch(r"\s*\+?(\d+)\s*", answer)
        if match is None:
            raise LostError(f"{self._link.resource}: {query!r} answered {answer[:60]!r}, no number")
        return int(match[1])

    def moments(self, sweeps: int) -> FloatArray | None:
        """Return when each kept sweep began, seconds; None without a word for it."""
        return self._moments_of(self._profile.buffer_times, sweeps)

    def point_moments(self, pulses: int) -> FloatArray | None:
        """Return when each frequency began at its pulse, seconds; None without a word for it."""
        return self._moments_of(self._profile.point_times, pulses)

    def _moments_of(self, query: str, count: int) -> FloatArray | None:
        if not query:
            return None
        try:
            return self._link.query_numbers(query, form="ascii", big_endian=True, expected=count)
        except LostError as lost:
            raise self.in_its_words(lost) from None

    def fetch(self, sweeps: int) -> list[Sweep]:
        """Return the sweeps that were kept; what the event register says of any of them is said of all.

        Raises
        ------
        InstrumentError
            As `sweep`, with the number of the sweep that holds what no receiver measures.
        """
        words = self._profile
        columns = [
            self._read(words.buffer_trace.format(port=port, count=sweeps), sweeps).reshape(sweeps, self._points)
            for port in self._ports
        ]
        traces = np.stack(columns, axis=-1)
        self.raise_errors()
        flags = self.flags(words.buffer_status)
        for number, trace in enumerate(traces, start=1):
            require_plausible(trace, f"{self._link.resource}: sweep {number} of {sweeps}")
        if traces.size < FEW_VALUES and words.number_format != "ascii":
            self._confirm_words()
        return [Sweep(trace, flags) for trace in traces]

    def disarm(self) -> None:
        """Let the analyzer sweep one by one again."""
        for command in self._profile.buffer_end:
            self._link.write(command)

    def reflect(self) -> Sweep:
        """Run one sweep and return the reflection of the device's port, the same in the column of every port.

        Raises
        ------
        InstrumentError
            If the profile has no words for it, as `sweep` does, or if more comes back than was sent.
        """
        words = self._profile
        if not words.reflection:
            raise InstrumentError("analyzer profile: `reflection` is empty, the device's reflection cannot be read")
        for command in words.reflection_start:
            self._link.write(command)
        for _ in range(self._sweeps):
            self._one_sweep()
        reflection = self._read(words.reflection)
        self.raise_errors()
        flags = self.flags()
        for command in words.reflection_end:
            self._link.write(command)
        require_plausible(reflection[:, None], self._link.resource)
        highest = float(amplitude_db(np.abs(reflection).max()))
        if highest > MOST_REFLECTED_DB:
            raise InstrumentError(
                f"{self._link.resource}: reflection reads {highest:.1f} dB, must be at most {MOST_REFLECTED_DB:g} dB: is "
                "it S11 of the device's port, and is the one-port calibration on?"
            )
        if reflection.size < FEW_VALUES and words.number_format != "ascii":
            self._confirm_words()
        return Sweep(np.repeat(reflection[:, None], len(self._ports), axis=1), flags)

    def held(self) -> ComplexArray | None:
        """Return the traces that the instrument holds, without another sweep; None if it has none yet, zeros, or none that are finite.

        Raises
        ------
        InstrumentError
            If they cannot be read, or hold what no receiver measures.
        """
        traces = np.stack([self._trace(port) for port in self._ports], axis=-1)
        try:
            self.raise_errors()
        except LostError:
            raise
        except InstrumentError:
            return None
        if not np.any(traces):
            return None
        if not np.all(np.isfinite(traces)):
            # Bytes in the wrong order look so too. A trace that is really not finite is no witness, and needs none: a sweep that
            # hands it over again is refused for that.
            self._confirm_words()
            if self._profile.confirm_words or self._profile.number_format == "ascii":
                return None
            raise InstrumentError(
                f"{self._link.resource}: the trace that it still holds, of a sweep before, has values that are not finite: put a query of the "
                "byte order into `confirm_words` of the profile, so that it is known whether they are; then look at the trace at the "
                "analyzer's front panel"
            )
        require_plausible(traces, self._link.resource)
        if traces.size < FEW_VALUES and self._profile.number_format != "ascii":
            self._confirm_words()
        return traces

    def _trace(self, port: int) -> ComplexArray:
        """Read one port's trace."""
        if not self._profile.trace:
            return np.array(
                [self._marked(port, number, hz) for number, hz in enumerate(self._frequency_hz.tolist(), start=1)]
            )
        return self._read(self._profile.trace.format(port=port))

    def _marked(self, port: int, number: int, frequency_hz: float) -> complex:
        """Put the marker on a frequency, prove that it stands there, and read the value."""
        words = self._profile
        fields = {"port": port, "number": number, "frequency_hz": frequency_hz}
        for command in words.marker:
            self._link.write(command.format(**fields))
        try:
            place = self._link.query_numbers(
                words.marker_frequency.format(**fields), form="ascii", big_endian=True, expected=1
            )
            value = self._link.query_numbers(
                words.marker_value.format(**fields), form="ascii", big_endian=True, expected=2
            )
        except LostError as lost:
            raise self.in_its_words(lost) from None
        limit = rounding_hz(frequency_hz)
        # Said so that a `nan` is refused as well.
        if not abs(place[0] - frequency_hz) <= limit:
            self.raise_errors()
            raise InstrumentError(
                f"{self._link.resource}: marker stands at {place[0]:.0f}, must be {frequency_hz:.0f} Hz (limit {limit:.0f} Hz)"
            )
        return complex(value[0], value[1])

    def _read(self, query: str, sweeps: int = 1) -> ComplexArray:
        """Read complex values of so many sweeps; raises `LostError`, with the instrument's own words if it has any."""
        try:
            raw = self._link.query_numbers(
                query,
                form=self._profile.number_format,
                big_endian=self._profile.byte_order == "big",
                expected=2 * self._points * sweeps,
            )
        except LostError as lost:
            raise self.in_its_words(lost) from None
        return np.asarray(raw[0::2] + 1j * raw[1::2])

    def _one_sweep(self) -> None:
        """Start a sweep and wait for its end; raises `LostError` if that does not come."""
        p, begun = self._profile, self._waits
        self._waits = False
        for command in () if begun else p.start:
            self._link.write(command)
        if not p.poll:
            answer = self.ask(p.ready_sweep if begun else p.sweep)
            if answer.lstrip("+") != "1":
                raise LostError(f"{self._link.resource}: sweep did not complete, answered {answer[:60]!r}")
            return
        if not begun:
            self._link.write(p.sweep)
        begin = time.monotonic()
        while re.search(p.poll_pattern, answer := self.ask(p.poll)) is None:
            if time.monotonic() - begin > self._timeout_s:
                raise LostError(
                    f"{self._link.resource}: sweep not complete after {self._timeout_s:g} s, {p.poll!r} answered {answer[:60]!r}"
                )
            time.sleep(POLL_S)


def rounding_hz(frequency_hz: float) -> float:
    """Return how far a synthesizer rounds a frequency; a tenth of the step would shift no figure either."""
    return max(1e-9 * frequency_hz, 1.0)


def require_plausible(trace: ComplexArray, resource: str) -> None:
    """Raise `InstrumentError` if a trace holds values that no receiver measures."""
    if not np.all(np.isfinite(trace)):
        raise InstrumentError(f"{resource}: trace holds values that are not finite")
    if not np.all(np.any(trace != 0.0, axis=0)):
        raise InstrumentError(f"{resource}: trace is all zero")
    level_db = amplitude_db(trace[trace != 0.0])
    highest, lowest = float(level_db.max()), float(level_db.min())
    if highest > MOST_GAIN_DB or lowest < LEAST_LEVEL_DB:
        wrong, limit = (
            (highest, f"below {MOST_GAIN_DB:g}") if highest > MOST_GAIN_DB else (lowest, f"above {LEAST_LEVEL_DB:g}")
        )
        raise InstrumentError(
            f"{resource}: trace reads {wrong:.0f} dB, must be {limit} dB: is it a ratio, and are byte order and "
            "number format those of the profile?"
        )
