"""One question after the other over a line: what the drivers of small instruments share."""

from __future__ import annotations

import re
import threading

from colure.errors import InstrumentError
from colure.instruments.links import Link, Opener, VisaLink
from colure.instruments.protocols import LostError
from colure.instruments.role_profiles import WordsProfile

MOST_ERRORS = 40


class WordsInstrument:
    """An instrument that is told and asked one line at a time, from any thread.

    After an answer that did not come, or that nobody understands, the connection is opened anew before the next question:
    a late answer must never be taken for that of a later question.
    """

    def __init__(self, resource: str, profile: WordsProfile, *, timeout_s: float, opener: Opener = VisaLink) -> None:
        self._words = profile
        self._lock = threading.RLock()
        self._doubt = False
        self._link: Link = opener(resource, timeout_s=timeout_s, ends=profile.line.ends)
        self.resource = self._link.resource
        self._identity = self.identity()

    def identity(self) -> str:
        """Return what the instrument says it is; without words for it, what it is spoken to by."""
        return self.ask(self._words.identity) if self._words.identity else f"unnamed {self._words.kind}"

    def ask(self, query: str, pattern: str = "") -> str:
        """Return the answer to a query.

        Raises
        ------
        LostError
            If none comes, or it does not match the pattern.
        """
        with self._lock:
            self._in_step()
            try:
                answer = self._link.query(query)
                if pattern and not re.search(pattern, answer):
                    raise LostError(f"{self.resource}: {query!r} answered {answer[:60]!r}, must match {pattern!r}")
            except LostError:
                self._doubt = True
                raise
            return answer

    def tell(self, command: str) -> None:
        """Send a command, and see that it was taken as far as the profile says how.

        Raises
        ------
        LostError
            If the acknowledgement does not come, or is another.
        InstrumentError
            If the error queue is not empty afterwards.
        """
        with self._lock:
            if self._words.acknowledge:
                self.ask(command, self._words.acknowledge)
            else:
                self._in_step()
                self._link.write(command)
            self.raise_errors()

    def raise_errors(self) -> None:
        """Empty the error queue; raises `InstrumentError` with everything found in it."""
        errors: list[str] = []
        while self._words.error and len(errors) < MOST_ERRORS:
            answer = self.ask(self._words.error)
            if re.search(self._words.error_none, answer):
                break
            errors.append(answer)
        if errors:
            raise InstrumentError(f"{self.resource}: {'; '.join(errors)}")

    def _in_step(self) -> None:
        if self._doubt:
            self.reconnect()

    def reconnect(self) -> None:
        """Open the connection anew; raises `InstrumentError` if another instrument answers."""
        with self._lock:
            self._link.reopen()
            self._doubt = False
            identity = self.identity()
            if identity != self._identity:
                self._doubt = True
                raise InstrumentError(f"{self.resource}: is {identity[:60]!r}, must be {self._identity[:60]!r}")

    def close(self) -> None:
        """Close the connection."""
        self._link.close()
