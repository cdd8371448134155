"""Errors that Colure raises on purpose: words for people, and the exit code that the command line gives for each.

0 good, 1 a check or mask failed, 2 bad input, 3 an instrument, the journal or a safety rule stopped the work. Every room may import
this module; it imports none.
"""

from __future__ import annotations

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
