"""Errors that Colure raises on purpose: words for people, and the exit code that the command line gives for each.

0 good, 1 a check or mask failed, 2 bad input, 3 an instrument, the journal or a safety rule stopped the work. Every room may import
this module; it imports none.
"""

from __future__ import annotations

import errno
import os
import re
from collections.abc import Sequence
from typing import Any, ClassVar

GOOD, CHECK_FAILED, BAD_INPUT, STOPPED = 0, 1, 2, 3


class ColureError(Exception):
    """Anything that Colure refuses or cannot do; the message says what, and what to do.

    exit_code
        What the command line ends with.
    """

    exit_code: ClassVar[int] = CHECK_FAILED


class InputError(ColureError, ValueError):
    """Bad input: one line per fault, each naming field, value, limit and unit.

    faults
        The lines.
    """

    exit_code = BAD_INPUT

    def __init__(self, faults: Sequence[str]) -> None:
        super().__init__("\n".join(faults))
        self.faults = list(faults)

    def __reduce__(self) -> tuple[Any, ...]:
        """Keep the lines apart on the way from one process to another."""
        return type(self), (self.faults,)


class InstrumentError(ColureError, RuntimeError):
    """An instrument did not answer, or answered that something is wrong."""

    exit_code = STOPPED


class MotionError(InstrumentError):
    """An axis did not do what it was told: its position is not trusted until it is homed."""


class JournalError(ColureError, RuntimeError):
    """The journal cannot be trusted or written."""

    exit_code = STOPPED


class AcquisitionError(ColureError, RuntimeError):
    """The run may not go on; the message is the reason."""

    exit_code = STOPPED


class GuardError(ColureError, RuntimeError):
    """A motion that must not be commanded; nothing has moved yet."""

    exit_code = STOPPED


class LockedError(ColureError, RuntimeError):
    """Another process holds it; the message names the process."""

    exit_code = STOPPED


#: What the system refuses for a reason that lies outside the program, and what to do.
REMEDIES: dict[int, str] = {
    errno.ENOSPC: "free the disk, then repeat the command",
    errno.EDQUOT: "free some of your share of the disk, then repeat the command",
    errno.EFBIG: "raise the limit of a file's size, or write to another disk",
    errno.EROFS: "write to another folder",
    errno.EACCES: "write to another folder, or have its permissions changed",
    errno.EPERM: "write to another folder, or have its permissions changed",
    errno.EIO: "the disk fails: copy the campaign to another one",
    errno.ENXIO: "a pipe that nobody reads: remove it, then repeat the command",
    errno.ENAMETOOLONG: "choose a shorter name",
    errno.EMFILE: "this process may open too few files: raise the limit (ulimit -n 1024), then repeat the command",
    errno.ENFILE: "the computer has too many open files: close programs, then repeat the command",
}


#: So many files a database wants beside its own.
MORE_FILES = 4


def out_of_files() -> str:
    """Return why hardly another file could be opened now, and what to do; empty if it is not that.

    A library that could not open its files may say that it could not open them, and no more.
    """
    opened: list[int] = []
    try:
        opened.extend(os.open(os.devnull, os.O_RDONLY) for _ in range(MORE_FILES))
    except OSError as error:
        return f"{os.strerror(error.errno or 0)}: {REMEDIES.get(error.errno or 0, 'close programs')}"
    finally:
        for number in opened:
            os.close(number)
    return ""


def system_fault(error: OSError, *, whole_path: bool = True) -> str | None:
    """Return one line for what the system refused: where, why, what to do; None for what may be a fault of the program.

    Libraries put a file's name into a longer text, and other numbers with it; a file that was to be written whole is named by its
    final name.

    whole_path
        With the folders that lead to it; a page is not told where the server keeps its files.
    """
    remedy = REMEDIES.get(error.errno or 0)
    if remedy is None:
        return None
    inside = re.search(r"filename = '([^']+)'|name = '([^']+)'", str(error))
    name = error.filename or (next(filter(None, inside.groups())) if inside else "")
    where = re.sub(r"\.([^/\\]+)\.\d+\.[0-9a-f]{8}\.part$", r"\1", os.fsdecode(name)) if name else ""
    where = where if whole_path else re.split(r"[/\\]", where)[-1]
    why = error.strerror if error.filename and error.strerror else os.strerror(error.errno or 0)
    return f"{where + ': ' if where else ''}{why}; nothing that was there is lost; {remedy}"
