"""A disk that remembers, forgets, fills up and fails: SQLite's own technique (a file system layer of one's
own) applied to our journal."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field
from pathlib import Path

import apsw
import numpy as np

SECTOR = 512


@dataclass
class Operation:
    """One thing done to a file: write, truncate, sync, delete; or a promise made (ack)."""

    kind: str
    name: str = ""
    offset: int = 0
    data: bytes = b""


class RecordingFile(apsw.VFSFile):
    def __init__(self, disk: RecordingDisk, name, flags):
        super().__init__("", name, flags)
        self._name = Path(name.filename() if isinstance(name, apsw.URIFilename) else name).name
        self._log = disk.log

    def xWrite(self, data, offset):
        self._log.append(Operation("write", self._name, offset, bytes(data)))
        super().xWrite(data, offset)

    def xTruncate(self, size):
        self._log.append(Operation("truncate", self._name, size))
        super().xTruncate(size)

    def xSync(self, flags):
        self._log.append(Operation("sync", self._name))
        super().xSync(flags)


class RecordingDisk(apsw.VFS):
    """Passes everything to the real disk and remembers it."""

    def __init__(self, name: str):
        self.log: list[Operation] = []
        super().__init__(name, "")

    def xOpen(self, name, flags):
        return RecordingFile(self, name, flags)

    def xDelete(self, name, sync_dir):
        self.log.append(Operation("delete", Path(name).name))
        super().xDelete(name, sync_dir)


@dataclass
class Content:
    """One file: what is certainly on the platter, and what was done to it since the last sync."""

    safe: bytes | None = None
    since: list[Operation] = field(default_factory=list)


def apply(content: bytes | None, operation: Operation) -> bytes | None:
    """Do one operation to a file's bytes."""
    if operation.kind == "delete":
        return None
    out = bytearray(content or b"")
    if operation.kind == "truncate":
        return bytes(out[: operation.offset]).ljust(operation.offset, b"\0")
    end = operation.offset + len(operation.data)
    if len(out) < end:
        out.extend(bytes(end - len(out)))
    out[operation.offset : end] = operation.data
    return bytes(out)


def torn(operation: Operation, random: np.random.Generator) -> Operation:
    """Keep only the first sectors of a write."""
    if operation.kind != "write" or len(operation.data) <= SECTOR:
        return operation
    keep = int(random.integers(0, len(operation.data) // SECTOR + 1)) * SECTOR
    return Operation("write", operation.name, operation.offset, operation.data[:keep])


MODES = ("lost", "kept", "random", "torn", "reordered")


def survivors(content: Content, mode: str, random: np.random.Generator) -> bytes | None:
    """Return what the platter holds after the power went: unsynced operations lost, kept, torn or reordered."""
    pending = list(content.since)
    if mode == "lost":
        pending = []
    elif mode != "kept":
        pending = [operation for operation in pending if random.random() < 0.6]
        if mode == "torn":
            pending = [torn(operation, random) for operation in pending]
        if mode == "reordered":
            pending = [pending[i] for i in random.permutation(len(pending))]
    found = content.safe
    for operation in pending:
        found = apply(found, operation)
    return found


def crashes(log: list[Operation], *, rounds: int, seed: int) -> Iterator[tuple[list[str], dict[str, bytes]]]:
    """Yield (promises made, files on the platter) for a power cut after every operation, in every mode."""
    files: dict[str, Content] = {}
    promises: list[str] = []
    random = np.random.default_rng(seed)
    for operation in log:
        if operation.kind == "ack":
            promises.append(operation.name)
            continue
        content = files.setdefault(operation.name, Content())
        if operation.kind == "sync":
            for done in content.since:
                content.safe = apply(content.safe, done)
            content.since = []
        else:
            content.since.append(operation)
        for mode in MODES:
            # Without randomness one look is enough.
            for _ in range(1 if mode in ("lost", "kept") else rounds):
                found = {name: survivors(one, mode, random) for name, one in files.items()}
                yield list(promises), {name: data for name, data in found.items() if data is not None}


class FailingFile(apsw.VFSFile):
    def __init__(self, disk: FailingDisk, name, flags):
        super().__init__("", name, flags)
        self._disk = disk

    def xWrite(self, data, offset):
        fault = self._disk.next("write")
        if fault == "short":
            super().xWrite(data[: len(data) // 2], offset)
            raise apsw.IOError("short write")
        super().xWrite(data, offset)

    def xRead(self, amount, offset):
        self._disk.next("read")
        return super().xRead(amount, offset)

    def xTruncate(self, size):
        self._disk.next("truncate")
        super().xTruncate(size)

    def xSync(self, flags):
        self._disk.next("sync")
        super().xSync(flags)


class FailingDisk(apsw.VFS):
    """Passes everything to the real disk until its turn comes to fail."""

    def __init__(self, name: str):
        self.calls = 0
        self.fail_at = 0
        self.kind = "eio"
        self.persistent = False
        super().__init__(name, "")

    def arm(self, at: int, kind: str, *, persistent: bool) -> None:
        self.calls, self.fail_at, self.kind, self.persistent = 0, at, kind, persistent

    def next(self, call: str) -> str:
        """Count a call; raise, or say how it fails."""
        self.calls += 1
        due = self.fail_at and (self.calls == self.fail_at or (self.persistent and self.calls > self.fail_at))
        if not due:
            return ""
        if self.kind == "fsync" and call != "sync":
            return ""
        if self.kind == "short" and call == "write":
            return "short"
        if self.kind == "enospc" and call == "write":
            raise apsw.FullError("disk full")
        raise apsw.IOError("input/output error")

    def xOpen(self, name, flags):
        self.next("open")
        return FailingFile(self, name, flags)

    def excepthook(self, *_):
        """The errors are meant; they need not be printed."""
