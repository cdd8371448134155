"""Locks that the operating system frees when their owner dies: one writer per journal, one per controller."""

from __future__ import annotations

import hashlib
import os
import tempfile
from pathlib import Path
from typing import IO


class LockedError(RuntimeError):
    """Somebody else holds it; the message names the process."""


def hold_lock(path: Path, what: str) -> IO[str]:
    """Lock a file until the returned handle is closed or this process ends.

    Raises
    ------
    LockedError
        Naming the process that holds it.
    """
    handle = path.open("a+", encoding="ascii")
    owner = path.with_name(path.name + ".pid")
    try:
        if os.name == "nt":
            import msvcrt

            handle.seek(0)
            msvcrt.locking(handle.fileno(), msvcrt.LK_NBLCK, 1)  # type: ignore[attr-defined,unused-ignore]
        else:
            import fcntl

            fcntl.flock(handle.fileno(), fcntl.LOCK_EX | fcntl.LOCK_NB)
    except OSError:
        handle.close()
        pid = owner.read_text(encoding="ascii").strip() if owner.exists() else "unknown"
        raise LockedError(f"{what}: in use by process {pid}") from None
    owner.write_text(str(os.getpid()), encoding="ascii")
    return handle


def hold_resource(resource: str) -> IO[str]:
    """Lock an instrument's resource name for this computer; raises `LockedError` naming the process."""
    # Resource names hold characters that file systems refuse.
    digest = hashlib.sha256(resource.strip().upper().encode()).hexdigest()[:16]
    return hold_lock(Path(tempfile.gettempdir()) / f"colure-{digest}.lock", resource)
