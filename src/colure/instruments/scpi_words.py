"""What every SCPI instrument shares: error queue, settings, routes, clock, condition register."""

from __future__ import annotations

import re
import time
from collections.abc import Mapping
from contextlib import suppress
from typing import Any

from colure.errors import InstrumentError
from colure.instruments.links import Link, Opener, VisaLink
from colure.instruments.profile import AnalyzerProfile, PowerProfile
from colure.instruments.protocols import LostError, SweepSettings
from colure.model.bands import Segment
from colure.model.record import Flag

FLAGS = {"overload": Flag.OVERLOAD, "unlevelled": Flag.UNLEVELLED, "unlocked": Flag.UNLOCKED}

DAY_S = 86400.0
#: An instrument says who it is within this time, and has read its error queue out within the second, seconds.
MEETING_S, OWN_WORDS_S = 5.0, 2.0
#: So many entries of an error queue are read; one that does not end then is none.
MOST_ERRORS = 40


class ScpiInstrument:
    """One SCPI instrument behind a link; raises `InstrumentError` with the instrument's own words."""

    def __init__(
        self, resource: str, profile: AnalyzerProfile | PowerProfile, *, timeout_s: float, opener: Opener = VisaLink
    ) -> None:
        self._words = profile
        self._link: Link = opener(resource, timeout_s=timeout_s, ends=profile.line.ends)
        self._count: int | None = None
        self._clock_s, self._days_s = 0.0, 0.0
        self._words_s = min(timeout_s, OWN_WORDS_S)
        try:
            self._identity = self.ask(profile.identity, min(timeout_s, MEETING_S))
        except LostError as lost:
            self._link.close()
            raise LostError(
                f"{lost}; is the instrument on, and are `identity` and the line ends of the profile the right ones?"
            ) from None
        if profile.identity and profile.identity in self._identity:
            # What was not understood is repeated by many a controller, and by every line that echoes.
            self._link.close()
            raise InstrumentError(
                f"{self._link.resource}: {profile.identity!r} was answered {self._identity[:60]!r}, which repeats the question: another "
                "instrument, such as an axis controller, is at this address, or the line sends back what it is sent; put `resource` "
                "right (chamber.toml)"
            )

    def ask(self, text: str, limit_s: float | None = None) -> str:
        """Send a query and return its answer; raises `LostError`, with the instrument's own words if it has any."""
        try:
            return self._link.query(text) if limit_s is None else self._link.query(text, limit_s)
        except LostError as lost:
            raise self.in_its_words(lost) from None

    def in_its_words(self, lost: LostError) -> LostError:
        """Return the loss of an answer with the newest entry of the error queue, if that can be read soon.

        A query that an instrument does not know is never answered; the queue says which word it was.
        """
        with suppress(LostError):
            if self._words.error:
                answer = self._link.query(self._words.error, self._words_s)
                # A late answer to the question itself is no entry.
                if re.match(r"[-+]?\d+\s*,", answer) and not re.match(self._words.error_none, answer):
                    return LostError(f"{lost}; it says: {answer[:120]}")
        return lost

    def identity(self) -> str:
        """Return what the instrument says it is."""
        return self._identity

    def setup(self, settings: SweepSettings) -> None:
        """Send every setting, then read the error queue until it is empty."""
        for command in self._words.setup:
            self._link.write(command.format(**settings.__dict__))
        self.raise_errors()
        self._count = None

    def confirm(self, queries: Mapping[str, str], settings: SweepSettings | Segment) -> dict[str, Any]:
        """Read settings back and compare them with what was asked for.

        Raises
        ------
        InstrumentError
            Naming setting, value found and value wanted.
        """
        readback: dict[str, Any] = {}
        for name, query in queries.items():
            wanted = float(getattr(settings, name))
            answer = self.ask(query)
            try:
                readback[name] = float(answer)
            except ValueError:
                raise InstrumentError(f"{self._link.resource}: {query!r} was answered {answer[:60]!r}") from None
            if abs(readback[name] - wanted) > 1e-6 * max(1.0, abs(wanted)):
                raise InstrumentError(f"{self._link.resource}: {name} = {readback[name]:g}, must be {wanted:g}")
        return readback

    def route(self, channel: int) -> None:
        """Connect the receiver to an antenna by its switch; without one the device (1) is always connected."""
        if not self._words.route and channel == 1:
            return
        if not self._words.route:
            raise InstrumentError("receiver profile: `route` is empty, the reference switch cannot be set")
        self._link.write(self._words.route.format(channel=channel))
        self.raise_errors()

    def clock_s(self) -> float:
        """Return the instrument's clock in seconds, over midnight too, or the computer's monotonic one."""
        if not self._words.clock:
            return time.monotonic()
        answer = self.ask(self._words.clock)
        try:
            hours, minutes, seconds = (float(part) for part in answer.split(","))
        except ValueError:
            raise InstrumentError(f"{self._link.resource}: clock answered {answer[:60]!r}") from None
        shown = 3600.0 * hours + 60.0 * minutes + seconds
        if shown < self._clock_s - 0.5 * DAY_S:  # midnight
            self._days_s += DAY_S
        self._clock_s = shown
        return self._days_s + shown

    def flags(self, query: str = "") -> int:
        """Read the condition register, or what `query` asks for, after a sweep, and refuse a sweep that was never made.

        Raises
        ------
        LostError
            If the reply does not look like one.
        InstrumentError
            If the sweep counter stands where it stood before.
        """
        query = query or self._words.status
        if not query:
            return 0
        answer = self.ask(query)
        match = re.search(self._words.status_pattern, answer)
        if match is None:
            raise LostError(f"{self._link.resource}: status answered {answer[:60]!r}")
        groups = match.groupdict()
        if groups.get("count") is not None:
            count, before = int(groups["count"]), self._count
            self._count = count
            if count == before:
                raise InstrumentError(f"{self._link.resource}: stale sweep, the sweep counter still stands at {count}")
        return self._flags(int(groups.get("condition") or 0))

    def _flags(self, condition: int) -> int:
        known, flags = 0, Flag(0)
        for name, mask in self._words.conditions.items():
            known |= mask
            if condition & mask:
                flags |= FLAGS[name]
        return int(flags | Flag.OTHER) if condition & ~known else int(flags)

    def safe(self) -> None:
        """Switch the source off, as the profile says."""
        for command in self._words.safe:
            self._link.write(command)

    def reconnect(self) -> None:
        """Clear the device or open the connection anew, and check that the same instrument answers.

        Raises
        ------
        InstrumentError
            If another instrument answers.
        """
        self._link.reopen()
        self._count = None
        identity = self._link.query(self._words.identity)
        if identity != self._identity:
            raise InstrumentError(f"{self._link.resource}: is {identity!r}, must be {self._identity!r}")

    def close(self) -> None:
        """Close the connection."""
        self._link.close()

    def raise_errors(self) -> None:
        """Empty the error queue; raises `InstrumentError` with everything found in it."""
        if not self._words.error:
            return
        errors = []
        for _ in range(MOST_ERRORS):
            answer = self._link.query(self._words.error)
            if re.match(self._words.error_none, answer):
                break
            errors.append(answer)
        if len(errors) == MOST_ERRORS:
            raise InstrumentError(
                f"{self._link.resource}: {self._words.error!r} was answered {errors[-1][:60]!r} {MOST_ERRORS} times, never by "
                f"`error_none` = {self._words.error_none!r}: is the profile the right one?"
            )
        if errors:
            raise InstrumentError(f"{self._link.resource}: {'; '.join(errors)}")
