"""How a device is put into one of its beams, modes or channels, and proves it."""

from __future__ import annotations

import re
import subprocess
from collections.abc import Callable
from pathlib import Path

from colure.errors import InstrumentError
from colure.instruments.links import Opener, VisaLink
from colure.instruments.protocols import LostError
from colure.model.device import States


class CommandStates:
    """States taken by a text command over a VISA resource; see `StateDriver`."""

    def __init__(self, states: States, *, opener: Opener = VisaLink) -> None:
        assert states.resource is not None and states.set is not None  # the model guarantees both
        self._words = states
        self._set = states.set
        self._link = opener(states.resource, timeout_s=states.timeout_s)

    def identity(self) -> str:
        """Return how states are taken; the address may change."""
        return f"device states by {self._set!r}"

    def take(self, index: int, name: str) -> None:
        """Take a state and read it back.

        Raises
        ------
        InstrumentError
            If the command is not acknowledged, or the readback differs from what is expected.
        """
        self._send(self._set.format(index=index, name=name))
        if self._words.readback is None:
            return
        readback = self._link.query(self._words.readback.format(index=index, name=name))
        wanted = self._words.expect.format(index=index, name=name)
        if readback != wanted:
            raise InstrumentError(f"{self._link.resource}: state reads {readback[:60]!r}, must be {wanted!r}")

    def _send(self, command: str) -> None:
        if self._words.acknowledge is None:
            self._link.write(command)
            return
        answer = self._link.query(command)
        if not re.search(self._words.acknowledge, answer):
            # Whose answer comes next nobody knows.
            raise LostError(
                f"{self._link.resource}: {command!r} answered {answer[:60]!r}, must match {self._words.acknowledge!r}"
            )

    def reconnect(self) -> None:
        """Open the connection anew."""
        self._link.reopen()

    def close(self) -> None:
        """Close the connection."""
        self._link.close()


class ProgramStates:
    """States taken by a user's program, run without a shell; exit code 0 means taken."""

    def __init__(self, states: States, folder: Path) -> None:
        self._words = states
        self._folder = folder

    def identity(self) -> str:
        """Return the command line."""
        return " ".join(self._words.program)

    def take(self, index: int, name: str) -> None:
        """Run the program for a state; raises `InstrumentError` with its last words if it fails."""
        command = [part.format(index=index, name=name) for part in self._words.program]
        try:
            program = subprocess.run(
                command, cwd=self._folder, capture_output=True, text=True, timeout=self._words.timeout_s, check=False
            )
        except subprocess.TimeoutExpired:
            raise LostError(f"{command[0]}: state {name} not taken within {self._words.timeout_s:g} s") from None
        except OSError as error:
            raise InstrumentError(f"{command[0]}: cannot be run: {error.strerror}") from None
        if program.returncode != 0:
            last = re.sub(r"\s+", " ", (program.stderr or program.stdout).strip())[-200:]
            raise InstrumentError(f"{command[0]}: state {name}: exit code {program.returncode}: {last}")

    def reconnect(self) -> None:
        """Nothing is kept open."""

    def close(self) -> None:
        """Nothing is kept open."""


class CallableStates:
    """States taken by a Python callable `f(index, name)`, for notebooks; it raises if it fails."""

    def __init__(self, take: Callable[[int, str], None]) -> None:
        self._take = take

    def identity(self) -> str:
        """Return the callable's name."""
        return getattr(self._take, "__qualname__", repr(self._take))

    def take(self, index: int, name: str) -> None:
        """Call it; whatever it raises becomes an `InstrumentError`."""
        try:
            self._take(index, name)
        except Exception as error:
            raise InstrumentError(f"{self.identity()}: state {name}: {error}") from error

    def reconnect(self) -> None:
        """Nothing is kept open."""

    def close(self) -> None:
        """Nothing is kept open."""
