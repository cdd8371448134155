"""What an axis controller says about itself, read by the patterns of either kind of profile."""

from __future__ import annotations

import re

from colure.instruments.line_profile import LineProfile
from colure.instruments.profile import GcodeProfile
from colure.instruments.protocols import AxesStatus, HeldError, RefusedError


def says(pattern: str, text: str) -> bool:
    """Tell whether a text matches a pattern; an empty pattern matches nothing."""
    return bool(pattern) and re.search(pattern, text) is not None


def refusal(words: GcodeProfile | LineProfile, line: str, resource: str) -> RefusedError:
    """Return the error for a reply that refuses: held, or refused for another reason."""
    kind = HeldError if says(words.held, line) else RefusedError
    return kind(f"{resource}: {line}")


def read_status(
    words: GcodeProfile | LineProfile, text: str, positions: dict[str, float], *, moving: bool
) -> AxesStatus:
    """Read hold, door and alarm out of a status text."""
    door_open = None
    if says(words.door_closed, text):
        door_open = False
    if says(words.door_open, text):
        door_open = True
    alarm = re.search(words.alarm, text) if words.alarm else None
    alarm_text = "" if alarm is None else alarm.groupdict().get("text") or alarm.group()
    return AxesStatus(positions, moving, says(words.held, text), door_open, alarm_text)
