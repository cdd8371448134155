"""The chain of a journal's points, and what shows that its end was cut or points were put aside."""

from __future__ import annotations

import hashlib
import struct
import zlib
from collections.abc import Mapping, Sequence
from typing import Any

GENESIS = b"\0" * 32


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
    faults = []
    rows, root, events = int(sealed["rows"]), str(sealed["root"]), int(sealed["events"])
    link = database.execute("select chain from point where seq = ?", (rows,)).fetchone()
    if rows and (link is None or bytes(link[0]).hex() != root):
        faults.append(f"end: the record was made from {rows} points, and not all of them are here")
    if database.execute("select count(*) from event").fetchone()[0] < events:
        faults.append(f"end: the record was made beside {events} events, and not all of them are here")
    there = {key for (key,) in database.execute("select key from meta")}
    return faults + [f"entry {key}: is gone" for key in sealed["entries"] if key not in there]
