"""Small files beside a campaign or a run, written whole: who reads them sees the old content or the new, never a part."""

from __future__ import annotations

import os
import uuid
from pathlib import Path
from typing import Any

from colure.errors import InputError
from colure.model.strict_json import json_text


def write_whole(path: Path, text: str) -> None:
    """Write a text through a temporary file and an atomic replace.

    Raises
    ------
    OSError
        If the folder cannot be written; an existing file is then left untouched.
    """
    part = path.with_name(f".{path.name}.{os.getpid()}.{uuid.uuid4().hex[:8]}.part")
    try:
        part.write_text(text, encoding="utf-8")
        part.replace(path)
    finally:
        part.unlink(missing_ok=True)


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
