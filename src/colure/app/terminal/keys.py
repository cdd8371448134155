"""Pause, resume, stop and abort from a terminal or by signals while a run is under way."""

from __future__ import annotations

import os
import select
import signal
import sys
import threading
from types import FrameType, TracebackType
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from colure.acquire.engine import Engine

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
        names = ("SIGINT", "SIGTERM", "SIGUSR1", "SIGUSR2")
        return [getattr(signal, name) for name in names if hasattr(signal, name)]

    def _on_signal(self, number: int, frame: FrameType | None) -> None:
        name = signal.Signals(number).name
        engine = self._engine
        if engine is None:
            if name in ("SIGINT", "SIGTERM"):
                raise KeyboardInterrupt
        elif name == "SIGUSR1":
            engine.pause("signal USR1")
        elif name == "SIGUSR2":
            engine.resume()
        else:
            engine.stop("operator pressed Ctrl-C" if name == "SIGINT" else "signal TERM")

    def _read_keys(self) -> None:
        while not self._end.is_set():
            ready, _, _ = select.select([sys.stdin], [], [], LOOK_S)
            if ready:
                self.act(os.read(sys.stdin.fileno(), 1).decode("ascii", "replace").lower())
