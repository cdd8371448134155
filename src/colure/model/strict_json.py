"""JSON as RFC 8259 has it: it knows no NaN and no Infinity, so numbers that are none become null."""

from __future__ import annotations

import json
import math
import re
from typing import Any


def plain(content: Any) -> Any:
    """Return content of dicts, lists, tuples and numbers (numpy's too) with null for every number that is not finite."""
    if isinstance(content, dict):
        return {key: plain(value) for key, value in content.items()}
    if isinstance(content, list | tuple):
        return [plain(value) for value in content]
    if hasattr(content, "tolist"):  # numpy's, without importing it: the command line starts quickly
        return plain(content.tolist())
    return None if isinstance(content, float) and not math.isfinite(content) else content


#: As JSON writes them: control characters but for line ends and tabs, and marks that turn the writing; a written backslash goes first.
ACTING = re.compile(
    r"(\\\\)|\\[bf]|\x7f|\\u(?:00[01][0-9a-f]|00[89][0-9a-f]|061c|200[ef]|202[a-e]|206[6-9])", re.IGNORECASE
)


def shown_json(content: Any) -> str:
    """Return content as JSON text for a page: what would turn the writing or steer a terminal is `?` (see `colure.values.printable`)."""
    return ACTING.sub(lambda match: match[1] or "?", json_text(content))


def json_text(content: Any, *, indent: int | None = None) -> str:
    """Return content as JSON text that every parser reads."""
    return json.dumps(plain(content), indent=indent, allow_nan=False)
