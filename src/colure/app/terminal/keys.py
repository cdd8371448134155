"""Pause, resume, stop and abort from a terminal or by signals while a run is under way."""

from __future__ import annotations

import os
import select
import signal
import sys
import threading
from contextlib import suppress
from types import FrameType, TracebackType
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from colure.acquire.engine import Engine

#: What a signal means, where its name alone would not tell.
REASONS = {"SIGINT": "operator pressed Ctrl-C", "SIGHUP": "the terminal was closed (signal HUP)",
           "SIGBREAK": "the console was closed or Ctrl-Break was pressed"}  # fmt: skip
#: How often keys are looked for, seconds.
LOOK_S = 0.1


class Controls:
    """Holds signals and keys while the block runs; `attach` tells them whom they control."""

    def __init__(self, *, quiet: bool) -> None:
        self._engine: Engine | None = None
        self._previous: dict[int, Any] = {}
        self._end = threading.Event()
        self._terminal: list[Any] | None = None
        self._keys = not quiet and sys.stdin.isatty() and os.name == "posix"

    def attach(self, engine: Engine) -> None:
        """Control this engine from now on."""
        self._engine = engine

    def act(self, key: str) -> None:
        """Do what a key means: p pause, r resume, s stop, a abort."""
        engine = self._engine
        if engine is None:
            return
        if key == "p":
            engine.pause("operator pressed p")
        elif key == "r":
            engine.resume()
        elif key == "s":
            engine.stop("operator pressed s")
        elif key == "a":
            engine.abort("operator pressed a")

    def __enter__(self) -> Controls:
        self._previous = {number: signal.getsignal(number) for number in self._signals()}
        for number in self._previous:
            signal.signal(number, self._on_signal)
        if self._keys:
            import termios
            import tty

            self._terminal = termios.tcgetattr(sys.stdin)
            tty.setcbreak(sys.stdin)
            print("keys: p pauses, r resumes, s stops, a aborts", file=sys.stderr)
            threading.Thread(target=self._read_keys, daemon=True).start()
        return self

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> None:
        self._end.set()
        for number, previous in self._previous.items():
            signal.signal(number, previous)
        if self._terminal is not None:
            import termios

            termios.tcsetattr(sys.stdin, termios.TCSADRAIN, self._terminal)

    @staticmethod
    def _signals() -> list[int]:
        names = ("SIGINT", "SIGTERM", "SIGHUP", "SIGQUIT", "SIGBREAK", "SIGUSR1", "SIGUSR2")
        return [getattr(signal, name) for name in names if hasattr(signal, name)]

    def _on_signal(self, number: int, frame: FrameType | None) -> None:
        name = signal.Signals(number).name
        engine = self._engine
        if engine is None:
            if not name.startswith("SIGUSR"):
                raise KeyboardInterrupt
        elif name == "SIGUSR1":
            engine.pause("signal USR1")
        elif name == "SIGUSR2":
            engine.resume()
        else:
            engine.stop(REASONS.get(name, f"signal {name.removeprefix('SIG')}"))
            if name == "SIGHUP":
                self._leave_terminal()

    def _leave_terminal(self) -> None:
        """Write to nowhere from now on: a terminal that is gone fails every write, and the run has to end in order."""
        self._end.set()
        self._terminal = None
        nowhere = os.open(os.devnull, os.O_RDWR)
        for stream in (0, 1, 2):
            with suppress(OSError):
                if os.isatty(stream) or not _open(stream):
                    os.dup2(nowhere, stream)

    def _read_keys(self) -> None:
        while not self._end.is_set():
            try:
                ready, _, _ = select.select([sys.stdin], [], [], LOOK_S)
                key = os.read(sys.stdin.fileno(), 1) if ready else b" "
            except (OSError, ValueError):
                return
            if not key:
                return
            self.act(key.decode("ascii", "replace").lower())


def _open(stream: int) -> bool:
    """Tell whether a terminal or pipe still takes what is written."""
    if not hasattr(select, "poll"):
        return True
    poll = select.poll()
    poll.register(stream, 0)
    return not any(event & (select.POLLHUP | select.POLLERR) for _, event in poll.poll(0))
