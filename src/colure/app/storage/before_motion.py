"""What a run begins with, kept beside its journal before anything moves."""

from __future__ import annotations

from pathlib import Path
from typing import Any

from colure.errors import InputError
from colure.model.strict_json import json_text
from colure.model.whole import write_whole


def keep_before_motion(path: Path, content: Any) -> None:
    """Write what a run begins with as JSON, so that it goes on with the same.

    Raises
    ------
    InputError
        If the run's folder cannot be written to.
    """
    try:
        write_whole(path, json_text(content))
    except OSError as error:
        raise InputError([f"{path}: cannot be written: {error.strerror}; nothing has moved"]) from None
