"""What people (and watchdogs) asked of a running acquisition; safe from any thread or signal handler."""

from __future__ import annotations

import sys
import threading

#: A thread that works lets another one on after this, seconds. The interpreter's own 5 ms count for every thread that works: beside
#: two of them a word on a pipe was heard after 63 ms (median, busy computer), with 1 ms after 14 ms.
SWITCH_S = 0.001


def hear_stops_soon() -> None:
    """Let the threads of this process take turns more often, so that a stop is not kept waiting by those that work."""
    sys.setswitchinterval(SWITCH_S)


class Control:
    """Requests to pause, resume, stop and abort. A stop outranks everything and is never taken back."""

    def __init__(self) -> None:
        # Events only: a signal handler may interrupt a thread that holds a lock, and must not wait for it.
        self._stop = threading.Event()
        self._abort = threading.Event()
        self._pause = threading.Event()
        self._resume = threading.Event()
        self._wake = threading.Event()
        self._reason = ""
        self._pause_reason = ""

    def stop(self, reason: str) -> None:
        """Ask for the end of the run; the first reason is kept."""
        self._reason = self._reason or reason
        self._stop.set()
        self._wake.set()

    def abort(self, reason: str) -> None:
        """Ask for the end of the run with the drives' power taken away."""
        self._abort.set()
        self.stop(reason)

    def pause(self, reason: str) -> None:
        """Ask for a rest after the point in flight."""
        self._pause_reason = reason
        self._pause.set()
        self._wake.set()

    def resume(self) -> None:
        """Ask to go on after a pause."""
        self._resume.set()
        self._wake.set()

    @property
    def stopping(self) -> bool:
        """Tell whether the run is to end."""
        return self._stop.is_set()

    @property
    def aborting(self) -> bool:
        """Tell whether the drives' power is to be taken away."""
        return self._abort.is_set()

    @property
    def reason(self) -> str:
        """Why the run is to end."""
        return self._reason

    def take_pause(self) -> str:
        """Return why a pause was asked for since the last call; empty if it was not."""
        if not self._pause.is_set():
            return ""
        self._pause.clear()
        return self._pause_reason

    def rest(self) -> None:
        """A pause begins: what was asked before it does not end it. Announce the pause after this."""
        self._resume.clear()

    def await_resume(self, limit_s: float) -> bool:
        """Wait for `resume` or `stop`; False if neither came in real seconds."""
        while not (self._resume.is_set() or self._stop.is_set()):
            self._wake.clear()
            if self._resume.is_set() or self._stop.is_set():
                break
            if not self._wake.wait(limit_s):
                return False
        self._resume.clear()
        self._pause.clear()
        return True
