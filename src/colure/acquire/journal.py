"""The journal: one committed SQLite row per point, checksummed and chained.

APSW bundles a SQLite without the WAL-reset corruption bug (3.7.0 to 3.51.2); the version is
checked when a journal is opened. WAL with synchronous=FULL: a commit that returned survives a
crash and a power cut. SQLite itself does not notice flipped bits, so every row carries a
CRC-32, and a SHA-256 chained to the row before it. How many rows there are, and the last one's
chain, are confirmed with every row in the same transaction: rows cut off at the end are noticed.
"""

from __future__ import annotations

import hashlib
import json
import struct
import zlib
from collections.abc import Iterable, Iterator
from contextlib import contextmanager, suppress
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import apsw

from colure.acquire.again import faults_of_what_was_replaced, pending_points, replaced_rows
from colure.acquire.chain import (
    GENESIS,
    Chain,
    faults_of_the_end,
    faults_of_what_is_aside,
    faults_of_what_was_confirmed,
)
from colure.acquire.locks import hold_lock
from colure.acquire.rows import Row as Row  # noqa: PLC0414 - the room's front offers it too
from colure.errors import InputError, LockedError, out_of_files
from colure.errors import JournalError as JournalError  # noqa: PLC0414 - the room's front offers it too
from colure.instruments.sensors import Sensors
from colure.model.plan import Plan

OLDEST_SQLITE = (3, 51, 3)
JOURNAL_FORMAT = 2
#: Entry that is saved with every point and event: what is confirmed so far.
CONFIRMED = "confirmed"


@dataclass(frozen=True)
class Verification:
    """What a check of the whole journal found.

    damaged
        Faults that nobody has accepted yet, in plain words.
    damaged_rows
        Sequence numbers of rows whose content cannot be trusted.
    accepted
        Faults that were found before and whose points were measured anew.
    again
        How many first readings are kept beside those that were measured again in their place.
    """

    rows: int
    damaged: tuple[str, ...]
    root_hash: str
    damaged_rows: tuple[int, ...] = ()
    accepted: tuple[str, ...] = ()
    again: int = 0

    @property
    def whole(self) -> bool:
        """Tell whether nothing is damaged."""
        return not self.damaged


SCHEMA = (
    "create table if not exists meta(key text primary key, value text not null, crc integer not null)",
    "create table if not exists point(seq integer primary key, plan_index integer not null, "
    "body blob not null, crc integer not null, chain blob not null)",
    "create table if not exists event(seq integer primary key, wall_time real not null, kind text not null, "
    "text text not null, crc integer not null)",
    "create table if not exists superseded(seq integer primary key)",
)


class Journal:
    """An open journal. `append` returns after the row is durable; announce it then, not before."""

    def __init__(self, path: Path, *, vfs: str | None = None) -> None:
        _require_sound_sqlite()
        self.path = path
        self._lock = None
        self._failed = ""
        self._waiting: dict[int, int] | None = None
        self._db: Any = None
        if vfs is None:
            try:
                self._lock = hold_lock(path.with_name(path.name + ".lock"), path.name)
            except LockedError as error:
                raise JournalError(str(error)) from None
            self._require_file_of_log()
        try:
            self._db = apsw.Connection(str(path), vfs=vfs) if vfs else apsw.Connection(str(path))
            self._db.set_busy_timeout(1000)
            self._db.execute("pragma journal_mode=wal")
            self._db.execute("pragma synchronous=full")
            with self._db:
                for statement in SCHEMA:
                    self._db.execute(statement)
            row = self._db.execute("select seq, chain from point order by seq desc limit 1").fetchone()
            self._events: int = self._db.execute("select count(*) from event").fetchone()[0]
        except apsw.Error as error:
            fault = unreadable(path, error)  # before its files are closed: they may be one too many
            self.close()
            raise fault from None
        self._seq: int = row[0] if row else 0
        self._chain: bytes = row[1] if row else GENESIS

    def _require_file_of_log(self) -> None:
        """Refuse a log without the file that it belongs to: SQLite would remove it, and the points in it."""
        log = self.path.with_name(self.path.name + "-wal")
        if log.is_file() and log.stat().st_size and not (self.path.is_file() and self.path.stat().st_size):
            self.close()
            raise JournalError(
                f"{self.path}: is gone or empty, but confirmed points may lie in {log.name} ({log.stat().st_size} bytes): copy the run's "
                "folder first, then put a copy of the journal back, or choose another run name; nothing was changed"
            )

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
        try:
            begun = journal.meta("format") is not None or journal._seq > 0
        except JournalError:
            journal.close()  # else nobody could open a copy that was put back
            raise
        if not begun:
            journal._begin(plan, identity)
        journal._require_format()
        return journal

    def _begin(self, plan: Plan, identity: dict[str, Any]) -> None:
        """Write what the run is about in one transaction: all of it or nothing."""
        try:
            with self._db:
                self.set_meta("plan", plan.as_dict())
                self.set_meta("plan_hash", plan.hash)
                self.set_meta("identity", identity)
                self.set_meta("format", JOURNAL_FORMAT)
                self.set_meta(CONFIRMED, self._confirmed(self._seq, self._chain, self._events))
        except (apsw.Error, JournalError) as error:
            self.close()
            raise JournalError(f"{self.path.name}: cannot be started: {error}") from None

    def _require_format(self) -> None:
        try:
            format_version = self.meta("format")
        except JournalError:
            self.close()
            raise
        if format_version is None and self._seq == 0:
            self.close()
            raise JournalError(
                f"{self.path}: holds no run: the file is empty or was cut; put a copy of it back, or choose another run name"
            )
        if format_version != JOURNAL_FORMAT:
            self.close()
            raise JournalError(f"{self.path.name}: format {format_version!r}, must be {JOURNAL_FORMAT} (version)")

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
        """Store one fact about the run; raises `JournalError` if it cannot be saved."""
        text = json.dumps(value)
        self._save("insert or replace into meta values(?, ?, ?)", (key, text, _crc(key, text)), f"{key}")

    def meta(self, key: str) -> Any:
        """Return one fact about the run, or None; raises `JournalError` if it is damaged."""
        if self._db is None:
            return None
        try:
            row = self._db.execute("select value, crc from meta where key = ?", (key,)).fetchone()
            if row is None:
                return None
            if _crc(key, row[0]) != row[1]:
                raise JournalError(f"{self.path.name}: entry {key} is damaged: checksum differs")
            return json.loads(row[0])
        except apsw.Error as error:
            raise unreadable(self.path, error) from None
        except (ValueError, TypeError, AttributeError, RecursionError) as error:
            raise JournalError(f"{self.path.name}: entry {key} cannot be read: {error}") from None

    def note(self, kind: str, text: str, wall_time: float) -> None:
        """Write down something that happened, durably."""
        self._confirm(
            "insert into event(wall_time, kind, text, crc) values(?, ?, ?, ?)",
            (wall_time, kind, text, _crc(repr(wall_time), kind, text)),
            "an event",
            self._confirmed(self._seq, self._chain, self._events + 1),
        )
        self._events += 1

    def events(self) -> list[tuple[float, str, str]]:
        """Return everything noted, as (seconds since 1970, kind, text), oldest first."""
        with _reading(self.path):
            return list(self._db.execute("select wall_time, kind, text from event order by seq"))

    def plan(self) -> Plan:
        """Return the plan this journal belongs to; raises `JournalError` if it is gone."""
        content = self.meta("plan")
        if not isinstance(content, dict):
            raise JournalError(f"{self.path.name}: entry plan is missing")
        return Plan.from_dict(content)

    def append(self, row: Row) -> int:
        """Commit one point and return its sequence number; it is on disk when this returns.

        Raises
        ------
        JournalError
            If the disk is full, read-only or failing; the point is then not in the journal.
        """
        body = row.encode()
        seq, chain = self._seq + 1, hashlib.sha256(self._chain + body).digest()
        statement = "insert into point values(?, ?, ?, ?, ?)"
        values: tuple[Any, ...] = (seq, row.plan_index, body, zlib.crc32(body), chain)
        waiting = self.pending()
        if row.plan_index in waiting:
            statement += "; insert or ignore into superseded select seq from point where plan_index = ? and seq <= ?"
            values += (row.plan_index, waiting[row.plan_index])
        self._confirm(statement, values, f"point {row.plan_index}", self._confirmed(seq, chain, self._events))
        self._seq, self._chain = seq, chain
        waiting.pop(row.plan_index, None)
        return seq

    def pending(self) -> dict[int, int]:
        """Return the points that wait to be measured again, each with the last row that the new one replaces."""
        if self._waiting is None:
            with _reading(self.path):
                self._waiting = pending_points(self._db, self.meta("again") or [])
        return self._waiting

    def ask_again(self, points: Iterable[int], said: str, wall_time: float) -> None:
        """Write down that points shall be measured again; their readings stay in use until each has a new one."""
        if self.left_of(points) != self.pending().keys():
            request = {"points": sorted(points), "after": self._seq, "said": said, "wall_time": wall_time}
            self.set_meta("again", [*(self.meta("again") or []), request])
            self._waiting = None

    def left_of(self, points: Iterable[int]) -> set[int]:
        """Return which of points to be measured again are left: those that wait, if the newest request for them was broken off."""
        wanted, waiting = set(points), set(self.pending())
        broken_off = waiting and set((self.meta("again") or [])[-1]["points"]) == wanted
        return waiting if broken_off else wanted

    def _save(self, statement: str, values: tuple[Any, ...], what: str) -> None:
        """Commit one change. After a failure nothing more is written: a sync that failed once lies later."""
        if self._failed:
            raise JournalError(f"{self.path.name}: {what} not saved, writing failed before: {self._failed}")
        try:
            self._db.execute(statement, values)
        except apsw.Error as error:
            with suppress(apsw.Error):
                if not self._db.get_autocommit():
                    self._db.execute("rollback")
            self._failed = f"{type(error).__name__.removesuffix('Error')}: {out_of_files() or error}"
            raise JournalError(f"{self.path.name}: {what} could not be saved: {self._failed}") from None

    def _confirm(self, statement: str, values: tuple[Any, ...], what: str, confirmed: dict[str, Any]) -> None:
        """Commit a row and what is confirmed with it in one transaction: both or none."""
        text = json.dumps(confirmed)
        self._save(
            f"begin immediate; {statement}; insert or replace into meta values(?, ?, ?); commit",
            (*values, CONFIRMED, text, _crc(CONFIRMED, text)),
            what,
        )

    @staticmethod
    def _confirmed(rows: int, chain: bytes, events: int) -> dict[str, Any]:
        return {"rows": rows, "root": chain.hex(), "events": events}

    @property
    def count(self) -> int:
        """Rows committed so far, superseded ones included."""
        return int(self._seq)

    def rows(self) -> list[Row]:
        """Return every row in measured order; raises `JournalError` if one fails its checksum."""
        out = []
        with _reading(self.path):
            for seq, body, crc in self._db.execute(
                "select seq, body, crc from point where seq not in (select seq from superseded) order by seq"
            ):
                if zlib.crc32(body) != crc:
                    raise JournalError(f"{self.path.name}: row {seq} is damaged; run the verification")
                out.append(Row.decode(body))
        return out

    def last_row(self, *roles: int) -> Row | None:
        """Return the newest row that has one of the roles (any role if none is named), or None."""
        with _reading(self.path):
            for body, crc in self._db.execute(
                "select body, crc from point where seq not in (select seq from superseded) order by seq desc"
            ):
                if zlib.crc32(body) == crc and (not roles or (row := Row.decode(body)).role in roles):
                    return row if roles else Row.decode(body)
        return None

    def measured(self) -> set[int]:
        """Return the plan indices that are committed and do not wait to be measured again."""
        with _reading(self.path):
            return {
                index
                for (index,) in self._db.execute(
                    "select plan_index from point where plan_index >= 0 and seq not in (select seq from superseded)"
                )
            } - self.pending().keys()

    def accept_damage(self) -> tuple[str, ...]:
        """Give up the damaged rows, so that their points are measured anew; returns what was wrong.

        The damaged bytes stay where they are; verification goes on naming them as accepted.
        """
        verification = self.verify()
        with self._db:
            for seq in verification.damaged_rows:
                self._db.execute("insert or ignore into superseded values(?)", (seq,))
            self.set_meta("accepted_damage", [*verification.accepted, *verification.damaged])
            self.set_meta(CONFIRMED, self._confirmed(self._seq, self._chain, self._events))
        return verification.damaged

    def verify(self) -> Verification:
        """Check every checksum and the whole chain; names the damaged points."""
        damaged: list[str] = []
        bad_rows: list[int] = []
        state = Chain()
        accepted: list[str] = []
        again = 0
        try:
            accepted = self.meta("accepted_damage") or []
            for entry in self._db.execute("select seq, plan_index, body, crc, chain from point order by seq"):
                faults = state.check(*entry)
                damaged += faults
                if any(text.startswith("row ") for text in faults):
                    bad_rows.append(entry[0])
            damaged += self._verify_rest()
            again = len(replaced_rows(self._db, self.meta("again") or []))
        except (apsw.Error, JournalError, InputError, ValueError, TypeError, struct.error) as error:
            damaged.append(f"database: {error}")
        known = set(accepted)
        return Verification(
            state.count,
            tuple(text for text in damaged if text not in known),
            bytes(state.previous).hex(),
            tuple(bad_rows),
            tuple(accepted),
            again,
        )

    def _verify_rest(self) -> list[str]:
        """Return what is wrong outside the points: entries, events, the database's own structure."""
        damaged = []
        for key, value, crc in self._db.execute("select key, value, crc from meta"):
            if _crc(key, value) != crc:
                damaged.append(f"entry {key}: checksum differs")
        for number, (seq, wall_time, kind, text, crc) in enumerate(
            self._db.execute("select seq, wall_time, kind, text, crc from event order by seq"), start=1
        ):
            if seq != number or _crc(repr(wall_time), kind, text) != crc:
                damaged.append(f"event {seq}: checksum or number differs")
        damaged += [
            f"database: {message}" for (message,) in self._db.execute("pragma integrity_check") if message != "ok"
        ]
        if self.plan().hash != self.meta("plan_hash"):
            damaged.append("plan: hash differs from its content")
        aside = [seq for (seq,) in self._db.execute("select seq from superseded order by seq")]
        replaced = replaced_rows(self._db, self.meta("again") or [])
        damaged += faults_of_what_is_aside([*{*aside} - replaced], self.meta("accepted_damage") or [])
        damaged += faults_of_what_was_replaced(replaced, aside)
        damaged += faults_of_the_end(self._db, self.meta("sealed"))
        return damaged + faults_of_what_was_confirmed(self._db, self.meta(CONFIRMED))

    def note_end(self) -> None:
        """Write down what a record is made from: points, events and entries that may not be fewer later.

        A journal that can no longer be written has said so: its record is worth more than this note.
        """
        end = {
            **self._confirmed(self._seq, self._chain, self._events),
            "entries": sorted(key for (key,) in self._db.execute("select key from meta")),
        }
        with suppress(JournalError):
            self.set_meta("sealed", end)

    def close(self) -> None:
        """Close the database and give up the lock.

        A disk that fails now only spoils the tidying up: what was confirmed is safe in the log beside the database.
        """
        if self._db is not None:
            with suppress(apsw.Error, OSError):
                self._db.close(True)
        if self._lock is not None:
            self._lock.close()
            self._lock = None


def unreadable(path: Path, error: apsw.Error) -> JournalError:
    """Return the error of a journal that SQLite cannot read: which file, what is wrong with it, what to do."""
    if isinstance(error, apsw.NotADBError):
        wrong, remedy = "it is no journal", "put a copy of it back, or choose another run name"
    elif isinstance(error, apsw.CorruptError):
        wrong = "pages of it are damaged or missing"
        remedy = "copy the run's folder first; put a copy from before back, or measure under another run name"
    elif isinstance(error, apsw.BusyError):
        wrong, remedy = "another program holds it", "close that program and repeat the command"
    elif few := out_of_files():
        wrong, _, remedy = few.partition(": ")
    else:
        wrong = "the disk or its file system does not give it back"
        remedy = "check disk, cable, free space and permissions, then repeat the command: confirmed points are in it and in its -wal file"
    return JournalError(f"{path}: cannot be read as a journal ({error}): {wrong}; nothing was changed; {remedy}")


@contextmanager
def _reading(path: Path) -> Iterator[None]:
    """Say of a database that fails while it is read which file it is and what to do."""
    try:
        yield
    except apsw.Error as error:
        raise unreadable(path, error) from None


def names_of_sensors(journal: Journal, sensors: Sensors | None) -> tuple[str, ...]:
    """Return the quantities that every row of a journal holds: those of the sensors that the run began with."""
    names = journal.meta("sensors")
    if names is None and journal.count == 0 and sensors is not None and sensors.names:
        names = list(sensors.names)
        journal.set_meta("sensors", names)
    return tuple(str(name) for name in names or ())


def _crc(*texts: str) -> int:
    return zlib.crc32("\0".join(texts).encode("utf-8", "surrogateescape"))


def _require_sound_sqlite() -> None:
    version = tuple(int(part) for part in apsw.sqlite_lib_version().split(".")[:3])
    if version < OLDEST_SQLITE:
        raise JournalError(f"SQLite {apsw.sqlite_lib_version()}: must be at least 3.51.3 (version) to be safe with WAL")
