"""Keeping the computer awake for a run of hours, as far as the system lets a program ask for it."""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
from collections.abc import Iterator
from contextlib import contextmanager

#: Windows: SetThreadExecutionState flags ES_CONTINUOUS | ES_SYSTEM_REQUIRED (Win32 documentation; from memory).
STAY_AWAKE, AS_BEFORE = 0x80000000 | 0x00000001, 0x80000000


@contextmanager
def kept_awake(reason: str) -> Iterator[str]:
    """Ask the system not to sleep while the block runs; yields a warning if it cannot be asked, else nothing.

    A computer that sleeps all the same is noticed by the engine, which then stops safely.
    """
    command = _inhibitor(reason)
    if sys.platform == "win32":
        import ctypes

        granted = ctypes.windll.kernel32.SetThreadExecutionState(STAY_AWAKE)
        try:
            yield "" if granted else "the system refused to stay awake; switch its sleep off for the run"
        finally:
            ctypes.windll.kernel32.SetThreadExecutionState(AS_BEFORE)
        return
    if command is None:
        yield "this system cannot be asked to stay awake; switch its sleep off for the run"
        return
    child = subprocess.Popen(command, stdin=subprocess.DEVNULL, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
    try:
        try:
            code = child.wait(timeout=0.1)
        except subprocess.TimeoutExpired:
            yield ""
        else:
            yield f"{command[0]} ended with code {code}; switch the computer's sleep off for the run"
    finally:
        child.kill()
        child.wait()


def _inhibitor(reason: str) -> list[str] | None:
    """Return the command that holds off sleep for as long as it lives and we live, or None."""
    if sys.platform == "darwin" and shutil.which("caffeinate"):
        return ["caffeinate", "-i", "-w", str(os.getpid())]
    if sys.platform == "linux" and shutil.which("systemd-inhibit"):
        # `tail --pid` ends with us, whatever happens to us.
        return ["systemd-inhibit", "--what=sleep:idle", "--who=colure", f"--why={reason}",
                "tail", f"--pid={os.getpid()}", "-f", "/dev/null"]  # fmt: skip
    return None
