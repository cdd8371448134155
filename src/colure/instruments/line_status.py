"""What a line profile's controller says of its axes at one moment: motion, state, positions."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping

from colure.errors import InstrumentError
from colure.instruments.line_profile import LineAxis, LineProfile, SequenceStep
from colure.instruments.links import real_number, whole_number
from colure.instruments.protocols import AxesStatus, LostError
from colure.instruments.sequences import STRAY, Talk
from colure.instruments.status_words import read_status, says

#: Axes that are asked for positions only stand when two looks agree within this, degrees.
SAME_DEG = 1e-3

Off = Callable[[str, float, float], float]


def _names_axis(steps: tuple[SequenceStep, ...]) -> bool:
    return any("{axis" in step.send for step in steps)


class LineStatus:
    """Asks for status; questions that are the same for several axes are asked once."""

    def __init__(self, talk: Talk, words: LineProfile, axes: Mapping[str, LineAxis]) -> None:
        self._talk = talk
        self._words = words
        self._axes = axes
        self._before: dict[str, float] = {}
        self._answers: dict[tuple[tuple[SequenceStep, ...], str], str] = {}

    def read(self, targets_deg: Mapping[str, float], off: Off) -> AxesStatus:
        """Return positions, motion, hold, door and alarm.

        off
            Distance of an axis from a position, degrees.
        """
        self._answers.clear()
        moving = self._words.completion == "busy" and any(self._busy(axis) for axis in self._axes.values())
        text = self._ask(self._words.status, "") if self._words.status else ""
        positions = {name: self._position(name, axis) for name, axis in self._axes.items()}
        if self._words.completion == "position":
            moving = self._has_moved(positions, targets_deg, off)
        self._before = positions
        status = read_status(self._words, text, positions, moving=moving)
        if says(self._words.not_referenced, text) and not status.alarm:
            return AxesStatus(positions, moving, status.held, status.door_open, "axes not referenced")
        return status

    def _busy(self, axis: LineAxis) -> bool:
        answer = self._ask(axis.busy or self._words.busy, axis.name)
        return says(axis.busy_pattern or self._words.busy_pattern, answer)

    def _has_moved(self, positions: Mapping[str, float], targets_deg: Mapping[str, float], off: Off) -> bool:
        """Tell whether an axis has moved since the last look, or is not where it was sent."""
        if set(self._before) != set(positions):
            return True
        changed = any(abs(positions[name] - self._before[name]) > SAME_DEG for name in positions)
        far = any(
            off(name, positions[name], target) > max(4.0 * self._axes[name].least_deg, 10.0 * SAME_DEG)
            for name, target in targets_deg.items()
        )
        return changed or far

    def _ask(self, steps: tuple[SequenceStep, ...], axis: str, expect: str = "") -> str:
        key = (steps, axis if _names_axis(steps) else "")
        if key not in self._answers:
            self._answers[key] = self._talk.ask(steps, expect, axis=axis)
        return self._answers[key]

    def _position(self, name: str, axis: LineAxis) -> float:
        pattern = axis.position_pattern or self._words.position_pattern
        answer = self._ask(axis.position or self._words.position, axis.name, pattern)
        resource, what = self._talk.line.resource, f"position of axis {axis.name}"
        try:
            value = _find(pattern, answer, name, axis, resource)
            if value is not None:
                return axis.from_wire(real_number(value, resource, what))
        except InstrumentError as error:
            # Axes may be moving: whoever hears of a lost position brakes them first.
            raise LostError(str(error)) from None
        self._talk.line.distrust(f"answered {answer[:60]!r}")
        raise LostError(f"{resource}: axis {axis.name}: {answer[:60]!r} is no position; {STRAY}")


def _find(pattern: str, answer: str, name: str, axis: LineAxis, resource: str) -> str | None:
    """Return an axis' position in an answer: a group named after it, the value beside its name, or the only value."""
    for match in re.finditer(pattern, answer):
        groups = match.groupdict()
        own = name if name in groups else "value"
        if own == "value" and "axis" in groups and groups["axis"] not in (axis.name, name):
            continue
        if groups.get(own) is None:
            return None
        return whole_number(match, own, resource, f"position of axis {axis.name}")
    return None
