"""Text files written whole: who reads them sees the old content or the new, never a part, also where the disk is full."""

from __future__ import annotations

import os
import uuid
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import TextIO


def write_whole(path: Path, text: str) -> None:
    """Write a text through a temporary file and an atomic replace.

    Raises
    ------
    OSError
        If the folder cannot be written; an existing file is then left untouched.
    """
    with whole_file(path) as out:
        out.write(text)


@contextmanager
def whole_file(path: Path) -> Iterator[TextIO]:
    """Open a text file (UTF-8, lines end as they are written) that takes its name once all of it is on the disk.

    Raises
    ------
    OSError
        If the folder cannot be written; an existing file is then left untouched.
    """
    target = Path(path)
    if target.exists() and not target.is_file():
        # A pipe or a terminal has no old content, and nothing may take its place.
        with _of_a_pipe(target) if target.is_fifo() else target.open("w", newline="", encoding="utf-8") as out:
            yield out
        return
    with replacing(target.resolve()) as part, part.open("w", newline="", encoding="utf-8") as out:
        yield out


def _of_a_pipe(path: Path) -> TextIO:
    """Open a pipe that somebody reads; raises `OSError` (ENXIO) if nobody does, where an ordinary open would wait for ever."""
    number = os.open(path, os.O_WRONLY | os.O_NONBLOCK)
    os.set_blocking(number, True)
    return os.fdopen(number, "w", newline="", encoding="utf-8")


@contextmanager
def replacing(path: Path) -> Iterator[Path]:
    """Give the name of a file beside another one, which takes its place when the block ends without an error.

    Raises
    ------
    OSError
        If the folder cannot be written; an existing file is then left untouched.
    """
    part = path.with_name(f".{path.name}.{os.getpid()}.{uuid.uuid4().hex[:8]}.part")
    try:
        yield part
        part.replace(path)
    except OSError as error:
        if error.filename is None:  # a write says that the disk is full, not of which file
            error.filename = str(path)
        raise
    finally:
        part.unlink(missing_ok=True)
