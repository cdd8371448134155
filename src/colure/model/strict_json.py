"""JSON as RFC 8259 has it: it knows no NaN and no Infinity, so numbers that are none become null."""

from __future__ import annotations

import json
import math
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


def json_text(content: Any, *, indent: int | None = None) -> str:
    """Return content as JSON text that every parser reads."""
    return json.dumps(plain(content), indent=indent, allow_nan=False)
