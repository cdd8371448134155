"""The chain of a journal's points, and what shows that its end was cut or points were put aside."""

from __future__ import annotations

import hashlib
import struct
import zlib
from collections.abc import Iterator, Mapping, Sequence
from contextlib import contextmanager
from pathlib import Path
from typing import Any

import apsw

GENESIS = b"\0" * 32
#: A journal that another process opens, recovers or closes at this moment cannot be read for so long, milliseconds.
BUSY_MS = 5000


class Chain:
    """Walks the points in order and remembers what the next link must continue."""

    def __init__(self) -> None:
        self.previous: bytes = GENESIS
        self.count = 0
        self._expected = 1

    def check(self, seq: int, index: int, body: bytes, crc: int, chain: bytes) -> list[str]:
        """Return what is wrong with one row."""
        faults = []
        name = f"row {seq} (plan point {index})"
        if seq != self._expected:
            faults.append(f"rows {self._expected} to {seq - 1} are missing")
        if zlib.crc32(body) != crc:
            faults.append(f"{name}: checksum differs")
        elif struct.unpack_from("<q", body)[0] != index:
            faults.append(f"{name}: index differs from content")
        if hashlib.sha256(self.previous + body).digest() != chain:
            faults.append(f"{name}: chain broken")
        self.previous, self._expected = chain, seq + 1
        self.count += 1
        return faults


def faults_of_what_is_aside(aside: Sequence[int], accepted: Sequence[str]) -> list[str]:
    """Return what is wrong with points that are no longer used: each has a fault that a person accepted."""
    return [
        f"row {seq} (put aside): no fault of it was accepted"
        for seq in aside
        if not any(text.startswith(f"row {seq} (") for text in accepted)
    ]


def faults_of_the_end(database: Any, sealed: Mapping[str, Any] | None) -> list[str]:
    """Return what a record was made from and is no longer there.

    database
        The journal's SQLite connection.
    sealed
        What `Journal.note_end` wrote when the newest record was made; None: no record was made yet, and nothing can be told.
    """
    if sealed is None:
        return []
    faults = _fewer(database, sealed, "the record was made from {} points", "the record was made beside {} events")
    there = {key for (key,) in database.execute("select key from meta")}
    return faults + [f"entry {key}: is gone" for key in sealed["entries"] if key not in there]


def faults_of_what_was_confirmed(database: Any, confirmed: Mapping[str, Any] | None) -> list[str]:
    """Return which confirmed points and events are no longer there.

    database
        The journal's SQLite connection.
    confirmed
        What was saved in one transaction with the last point or event; None: an older program wrote them, and nothing can be told.
    """
    if confirmed is None:
        return []
    return _fewer(database, confirmed, "{} points were confirmed", "{} events were confirmed")


def _fewer(database: Any, wanted: Mapping[str, Any], of_points: str, of_events: str) -> list[str]:
    """Return whether the last of a number of points, or any of a number of events, is missing; more than these are no fault."""
    faults = []
    rows, root, events = int(wanted["rows"]), str(wanted["root"]), int(wanted["events"])
    link = database.execute("select chain from point where seq = ?", (rows,)).fetchone()
    if rows and (link is None or bytes(link[0]).hex() != root):
        faults.append(f"end: {of_points.format(rows)}, and not all of them are here")
    if database.execute("select count(*) from event").fetchone()[0] < events:
        faults.append(f"end: {of_events.format(events)}, and not all of them are here")
    return faults


@contextmanager
def opened_to_read(path: Path) -> Iterator[apsw.Connection]:
    """Open a journal for reading, beside whoever writes it; waits for one that opens or closes it. Raises `apsw.Error`."""
    database = apsw.Connection(str(path), flags=apsw.SQLITE_OPEN_READONLY)
    try:
        database.set_busy_timeout(BUSY_MS)
        yield database
    finally:
        database.close()


def holds_root(path: Path, root_hash: str) -> bool | None:
    """Tell whether a record with this root hash was made from a journal; None if the journal cannot be asked.

    Only reads, and works beside a run that is writing. An older record's root is the chain at an earlier row.
    """
    try:
        wanted = bytes.fromhex(root_hash)
    except ValueError:
        return False  # nothing that a journal gives
    try:
        with opened_to_read(path) as database:
            # Mostly it is the last row's: only an older record makes every row be looked at.
            row = database.execute("select chain from point order by seq desc limit 1").fetchone()
            if row is not None and row[0] != wanted:
                row = database.execute("select 1 from point where chain = ?", (wanted,)).fetchone()
    except apsw.Error:
        return None
    return row is not None
