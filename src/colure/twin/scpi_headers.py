"""SCPI headers in short and long form, and what each stands for (SCPI-1999, volume 1, 6.2; from memory)."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping

#: What a command does with its query mark and number (`?2`; `2` alone for a setting), and with its argument.
CommandAction = Callable[[str, str], "str | bytes | None"]


def header_pattern(definition: str) -> re.Pattern[str]:
    """Turn 'SENSe:FREQuency:STARt' into a pattern for its short and long forms."""
    parts = []
    for word in definition.split(":"):
        short = "".join(c for c in word if not c.islower())
        base = re.escape(word.rstrip("#"))
        number = r"(\d*)" if word.endswith("#") else ""
        parts.append(f"(?:{base}|{re.escape(short.rstrip('#'))}){number}")
    return re.compile("^:?" + ":".join(parts) + "$", re.IGNORECASE)


class HeaderTable:
    """Commands by their definitions; a header that was understood is remembered."""

    def __init__(self, entries: Mapping[str, CommandAction]) -> None:
        self._commands = [(header_pattern(name), action) for name, action in entries.items()]
        self._heads: dict[str, tuple[CommandAction, str]] = {}

    def understood(self, head: str) -> tuple[CommandAction, str] | None:
        """Return what a header stands for, and its number; None if nothing."""
        if head not in self._heads:
            matches = ((pattern.match(head), action) for pattern, action in self._commands)
            first_match = next(((match, action) for match, action in matches if match), None)
            if first_match is None:
                return None
            match, action = first_match
            self._heads[head] = action, match.group(1) if match.groups() else ""
        return self._heads[head]
