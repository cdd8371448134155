"""A journal where nothing may be written: on a disk for archives, or in somebody else's folder."""

from __future__ import annotations

import os
import shutil
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from tempfile import TemporaryDirectory

from colure.acquire.locks import UnusableLockError, hold_lock
from colure.errors import JournalError, LockedError


@contextmanager
def readable(path: Path) -> Iterator[Path]:
    """Yield where a journal can be opened: its own place, or a copy's if its folder cannot be written; nothing is left or changed there.

    Raises
    ------
    JournalError
        If another process writes it: a copy would be of two moments.
    """
    if not path.is_file() or os.access(path.parent, os.W_OK | os.X_OK):
        yield path
        return
    lock = path.with_name(path.name + ".lock")
    held = None
    try:
        held = hold_lock(lock, path.name) if lock.is_file() else None
    except UnusableLockError:
        pass  # nobody can write on such a disk
    except LockedError as error:
        raise JournalError(str(error)) from None
    try:
        with TemporaryDirectory(prefix="colure-") as place:
            for one in (path, path.with_name(path.name + "-wal")):
                if one.is_file():
                    shutil.copyfile(one, Path(place) / one.name)
            yield Path(place) / path.name
    finally:
        if held is not None:
            held.close()
