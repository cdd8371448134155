"""The journal: one committed SQLite row per point, checksummed and chained.

APSW bundles a SQLite without the WAL-reset corruption bug (3.7.0 to 3.51.2); the version is
checked when a journal is opened. WAL with synchronous=FULL: a commit that returned survives a
crash and a power cut. SQLite itself does not notice flipped bits, so every row carries a
CRC-32, and a SHA-256 chained to the row before it.
"""

from __future__ import annotations

import hashlib
import json
import os
import struct
import zlib
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import apsw
import numpy as np

from colure.geometry.conventions import ComplexArray, FloatArray
from colure.model.plan import Plan

OLDEST_SQLITE = (3, 51, 3)
JOURNAL_FORMAT = 1
GENESIS = b"\0" * 32


class JournalError(RuntimeError):
    """The journal cannot be trusted or written; words for people."""


@dataclass(frozen=True)
class Row:
    """One measured point."""

    plan_index: int
    role: int
    time_s: float
    wall_time: float
    commanded_deg: FloatArray
    readback_deg: FloatArray
    trace: ComplexArray
    flags: int

    def encode(self) -> bytes:
        """Return the row's content as bytes: a fixed header, positions, trace."""
        head = struct.pack("<qqddqq", self.plan_index, self.role, self.time_s, self.wall_time, self.flags,
                           self.commanded_deg.size)  # fmt: skip
        shape = struct.pack("<qq", *self.trace.shape)
        return b"".join(
            [
                head,
                shape,
                np.ascontiguousarray(self.commanded_deg, "<f8").tobytes(),
                np.ascontiguousarray(self.readback_deg, "<f8").tobytes(),
                np.ascontiguousarray(self.trace, "<c16").tobytes(),
            ]
        )

    @classmethod
    def decode(cls, blob: bytes) -> Row:
        """Rebuild a row from `encode`."""
        plan_index, role, time_s, wall, flags, axes = struct.unpack_from("<qqddqq", blob, 0)
        frequencies, ports = struct.unpack_from("<qq", blob, 48)
        values = np.frombuffer(blob, "<f8", count=2 * axes, offset=64)
        trace = np.frombuffer(blob, "<c16", count=frequencies * ports, offset=64 + 16 * axes)
        return cls(
            plan_index, role, time_s, wall, values[:axes], values[axes:], trace.reshape(frequencies, ports), flags
        )


@dataclass(frozen=True)
class Verification:
    """What a check of the whole journal found."""

    rows: int
    damaged: tuple[str, ...]
    root_hash: str

    @property
    def whole(self) -> bool:
        """Tell whether nothing is damaged."""
        return not self.damaged


class Journal:
    """An open journal. `append` returns after the row is durable; announce it then, not before."""

    def __init__(self, path: Path, *, vfs: str | None = None) -> None:
        _require_sound_sqlite()
        self.path = path
        self._lock = None
        if vfs is None:
            self._lock = _exclusive_lock(path)
        try:
            self._db = apsw.Connection(str(path), vfs=vfs) if vfs else apsw.Connection(str(path))
            self._db.set_busy_timeout(1000)
            self._db.execute("pragma journal_mode=wal")
            self._db.execute("pragma synchronous=full")
            self._db.execute("create table if not exists meta(key text primary key, value text not null)")
            self._db.execute(
                "create table if not exists point(seq integer primary key, plan_index integer not null, "
                "body blob not null, crc integer not null, chain blob not null)"
            )
            row = self._db.execute("select seq, chain from point order by seq desc limit 1").fetchone()
        except apsw.Error as error:
            self.close()
            raise JournalError(f"{path.name}: cannot be opened as a journal: {error}") from None
        self._seq: int = row[0] if row else 0
        self._chain: bytes = row[1] if row else GENESIS

    @classmethod
    def create(cls, path: Path, plan: Plan, identity: dict[str, Any], *, vfs: str | None = None) -> Journal:
        """Start a journal for a plan; refuses to touch an existing one."""
        if vfs is None and path.exists():
            raise JournalError(f"{path.name}: exists already; resume it or choose another run name")
        journal = cls(path, vfs=vfs)
        journal._begin(plan, identity)
        return journal

    @classmethod
    def open(cls, path: Path, plan: Plan, identity: dict[str, Any]) -> Journal:
        """Go on with a run's journal, or start it; a start that was killed halfway counts as none.

        Raises
        ------
        JournalError
            If it is in use, damaged, or written in another format.
        """
        journal = cls(path)
        if journal.meta("format") is None and journal._seq == 0:
            journal._begin(plan, identity)
        journal._require_format()
        return journal

    def _begin(self, plan: Plan, identity: dict[str, Any]) -> None:
        """Write what the run is about in one transaction: all of it or nothing."""
        with self._db:
            self.set_meta("plan", plan.as_dict())
            self.set_meta("plan_hash", plan.hash)
            self.set_meta("identity", identity)
            self.set_meta("format", JOURNAL_FORMAT)

    def _require_format(self) -> None:
        found = self.meta("format")
        if found != JOURNAL_FORMAT:
            self.close()
            raise JournalError(f"{self.path.name}: format {found!r}, must be {JOURNAL_FORMAT} (version)")

    @classmethod
    def resume(cls, path: Path, *, vfs: str | None = None) -> Journal:
        """Open an existing journal.

        Raises
        ------
        JournalError
            If there is none, or it was written in another format.
        """
        if vfs is None and not path.exists():
            raise JournalError(f"{path.name}: no journal to resume in {path.parent}")
        journal = cls(path, vfs=vfs)
        journal._require_format()
        return journal

    def set_meta(self, key: str, value: Any) -> None:
        """Store one fact about the run."""
        self._db.execute("insert or replace into meta values(?, ?)", (key, json.dumps(value)))

    def meta(self, key: str) -> Any:
        """Return one fact about the run, or None."""
        if self._db is None:
            return None
        row = self._db.execute("select value from meta where key = ?", (key,)).fetchone()
        return None if row is None else json.loads(row[0])

    def plan(self) -> Plan:
        """Return the plan this journal belongs to."""
        return Plan.from_dict(self.meta("plan"))

    def append(self, row: Row) -> int:
        """Commit one point and return its sequence number; it is on disk when this returns.

        Raises
        ------
        JournalError
            If the disk is full, read-only or failing; the point is then not in the journal.
        """
        body = row.encode()
        seq, chain = self._seq + 1, hashlib.sha256(self._chain + body).digest()
        try:
            self._db.execute(
                "insert into point values(?, ?, ?, ?, ?)", (seq, row.plan_index, body, zlib.crc32(body), chain)
            )
        except apsw.Error as error:
            raise JournalError(f"{self.path.name}: point {row.plan_index} could not be saved: {error}") from None
        self._seq, self._chain = seq, chain
        return seq

    def rows(self) -> list[Row]:
        """Return every row in measured order; raises `JournalError` if one fails its checksum."""
        out = []
        for seq, body, crc in self._db.execute("select seq, body, crc from point order by seq"):
            if zlib.crc32(body) != crc:
                raise JournalError(f"{self.path.name}: row {seq} is damaged; run the verification")
            out.append(Row.decode(body))
        return out

    def done(self) -> set[int]:
        """Return the plan indices that are committed."""
        return {index for (index,) in self._db.execute("select plan_index from point where plan_index >= 0")}

    def verify(self) -> Verification:
        """Check every checksum and the whole chain; names the damaged points."""
        damaged: list[str] = []
        previous, count, expected = GENESIS, 0, 1
        try:
            for seq, index, body, crc, chain in self._db.execute(
                "select seq, plan_index, body, crc, chain from point order by seq"
            ):
                count += 1
                if seq != expected:
                    damaged.append(f"rows {expected} to {seq - 1} are missing")
                if zlib.crc32(body) != crc:
                    damaged.append(f"row {seq} (plan point {index}): checksum differs")
                elif struct.unpack_from("<q", body)[0] != index:
                    damaged.append(f"row {seq} (plan point {index}): index differs from content")
                if hashlib.sha256(previous + body).digest() != chain:
                    damaged.append(f"row {seq} (plan point {index}): chain broken")
                previous, expected = chain, seq + 1
            for (message,) in self._db.execute("pragma integrity_check"):
                if message != "ok":
                    damaged.append(f"database: {message}")
            plan_hash = self.meta("plan_hash")
            if self.plan().hash != plan_hash:
                damaged.append("plan: hash differs from its content")
        except (apsw.Error, ValueError, TypeError) as error:
            damaged.append(f"database: {error}")
        return Verification(count, tuple(damaged), bytes(previous).hex())

    def close(self) -> None:
        """Close the database and give up the lock."""
        if getattr(self, "_db", None) is not None:
            self._db.close()
        if self._lock is not None:
            self._lock.close()
            self._lock = None


def _require_sound_sqlite() -> None:
    version = tuple(int(part) for part in apsw.sqlite_lib_version().split(".")[:3])
    if version < OLDEST_SQLITE:
        raise JournalError(f"SQLite {apsw.sqlite_lib_version()}: must be at least 3.51.3 (version) to be safe with WAL")


def _exclusive_lock(path: Path) -> Any:
    """Hold an operating-system lock beside the journal; the system frees it when we die."""
    lock_path = path.with_name(path.name + ".lock")
    handle = lock_path.open("a+", encoding="ascii")
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
        owner = lock_path.with_name(lock_path.name + ".pid")
        pid = owner.read_text(encoding="ascii").strip() if owner.exists() else "unknown"
        raise JournalError(f"{path.name}: in use by process {pid}") from None
    lock_path.with_name(lock_path.name + ".pid").write_text(str(os.getpid()), encoding="ascii")
    return handle
