"""Carries out the words of a line profile: templates filled in, answers judged, captures handed on."""

from __future__ import annotations

import re
import time
from collections.abc import Mapping

from colure.errors import InstrumentError
from colure.instruments.line import ControllerLine, ExpectedReply, HoldAsked
from colure.instruments.line_profile import LineProfile, SequenceStep
from colure.instruments.protocols import LostError, Timer
from colure.instruments.status_words import refusal, says

#: What to do about an answer that is none.
STRAY = (
    "a line that comes by itself belongs into `messages` of [line], a prompt without a line end into `prompt`, the answer to a command into `acknowledge`, and an answer of "
    "several lines needs `end`"
)


class Talk:
    """Sequences on one line; one that moves axes ends with its next step once somebody holds them.

    Raises
    ------
    RefusedError, HeldError
        From every method, in the controller's own words.
    LostError
        If an answer is missing or is not the one expected.
    """

    def __init__(self, line: ControllerLine, words: LineProfile, timer: Timer, held: HoldAsked) -> None:
        self.line = line
        self._held = held
        self._words = words
        self._timer = timer

    def tell(
        self, steps: tuple[SequenceStep, ...], *, moves: bool = False, way_s: float = 0.0, **fields: object
    ) -> None:
        """Send commands, each acknowledged if the controller acknowledges; `moves`: none after a hold, `way_s` long."""
        self._run(steps, fields, asked=False, expect="", unless=self._held if moves else None, way_s=way_s)

    def ask(self, steps: tuple[SequenceStep, ...], expect: str = "", **fields: object) -> str:
        """Send queries and return the last answer, its lines joined by newlines."""
        return self._run(steps, fields, asked=True, expect=expect)

    def first(self, steps: tuple[SequenceStep, ...], limit_s: float) -> str:
        """Ask before the sentinel is known."""
        step = steps[0]
        wanted = ExpectedReply(lines=1 if step.answers is None else step.answers, end=step.end, expect=step.expect)
        return "\n".join(self.line.first(self._fill(step, {}), wanted, raw=step.raw, limit_s=limit_s))

    def post(self, steps: tuple[SequenceStep, ...], **fields: object) -> str:
        """Send commands without waiting for the last one's answer; return the pattern of that answer."""
        captured = dict(fields)
        if steps[:-1]:
            self._run(steps[:-1], captured, asked=False, expect="", unless=self._held)
        last = steps[-1]
        pattern = last.expect or last.end or self._words.acknowledge
        wanted = ExpectedReply(expect=pattern, fault=self._words.fault)
        self.line.post(self._fill(last, captured), wanted, raw=last.raw, unless=self._held)
        return pattern

    def posted(self, pattern: str, limit_s: float) -> bool:
        """Wait for the answer to a posted command; False if it is not there yet."""
        answer = self.line.take(limit_s)
        if answer is None:
            return False
        self._judge(answer, pattern)
        return True

    def _run(
        self,
        steps: tuple[SequenceStep, ...],
        fields: Mapping[str, object],
        *,
        asked: bool,
        expect: str,
        unless: HoldAsked | None = None,
        way_s: float = 0.0,
    ) -> str:
        captured, answer = dict(fields), ""
        for number, step in enumerate(steps):
            last = number == len(steps) - 1
            if step.send:
                answer = self._until(step, captured, unless) if step.until else self._once(
                    step, captured, asked=asked, expect=expect if last else "", unless=unless, way_s=way_s
                )  # fmt: skip
            match = re.search(step.expect, answer) if step.expect else None
            captured |= {} if match is None else match.groupdict()
            if step.pause_s:
                self._timer.sleep(step.pause_s)
        return answer

    def _once(
        self, step: SequenceStep, fields: Mapping[str, object], *, asked: bool, expect: str, unless: HoldAsked | None,
        way_s: float = 0.0,
    ) -> str:  # fmt: skip
        acknowledged = "" if asked else self._words.acknowledge
        pattern = step.expect or acknowledged
        lines = step.answers
        if lines is None:
            lines = 1 if asked or pattern else 0
        wanted = ExpectedReply(lines=lines, end=step.end, expect=pattern or expect, fault=self._words.fault)
        # Questions, and the words of a move, are answered at once or not at all; others may take the whole time-out.
        prompt = step.limit_s is None and (asked or unless is not None)
        replies = self.line.exchange(
            self._fill(step, fields), wanted, raw=step.raw, limit_s=step.limit_s, unless=unless,
            question=step.send if prompt else "", way_s=way_s,
        )  # fmt: skip
        answer = "\n".join(replies)
        if replies:
            self._judge(answer, pattern)
        return answer

    def _until(self, step: SequenceStep, fields: Mapping[str, object], unless: HoldAsked | None) -> str:
        limit_s = self.line.timeout_s if step.limit_s is None else step.limit_s
        text, begin = self._fill(step, fields), time.monotonic()
        wanted = ExpectedReply(lines=1 if step.answers is None else step.answers, end=step.end, fault=self._words.fault)
        while True:
            answer = "\n".join(self.line.exchange(text, wanted, raw=step.raw, unless=unless))
            self._judge(answer, "")
            if says(step.until, answer):
                return answer
            if time.monotonic() - begin > limit_s:
                raise LostError(
                    f"{self.line.resource}: {text!r} answered {answer[:60]!r} for {limit_s:g} s, expected {step.until!r}"
                )
            self._timer.sleep(step.every_s)

    def _fill(self, step: SequenceStep, fields: Mapping[str, object]) -> str:
        try:
            return step.send.format(**fields)
        except (KeyError, ValueError, IndexError) as error:
            raise InstrumentError(f"line profile: {step.send!r} cannot be filled in: {error}") from None

    def _judge(self, answer: str, pattern: str) -> None:
        if says(self._words.fault, answer):
            raise refusal(self._words, answer, self.line.resource)
        if pattern and re.search(pattern, answer) is None:
            self.line.distrust(f"answered {answer[:60]!r}")
            raise LostError(f"{self.line.resource}: answered {answer[:60]!r}, expected {pattern!r}; {STRAY}")
