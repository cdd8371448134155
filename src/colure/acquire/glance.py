"""How far a run is, read from its journal without holding it: works beside a run that is being written."""

from __future__ import annotations

import json
import struct
from dataclasses import dataclass
from pathlib import Path

import apsw

from colure.acquire.journal import HEADER, HEADER_BYTES


@dataclass(frozen=True)
class Glance:
    """What a journal holds.

    measured, total
        Points of the plan that are committed, and all of them.
    began, ended
        When its first and its last row were measured, seconds since 1970; None before the first.
    plan_hash
        Of the plan it began with.
    """

    measured: int
    total: int
    began: float | None
    ended: float | None
    plan_hash: str

    @property
    def complete(self) -> bool:
        """Tell whether no point of the plan is missing."""
        return self.measured >= self.total > 0


def glance(path: Path) -> Glance | None:
    """Look at a journal; None if there is none or it cannot be read (what is wrong with it, the verification says)."""
    if not path.is_file():
        return None
    try:
        database = apsw.Connection(str(path), flags=apsw.SQLITE_OPEN_READONLY)
        try:
            told = dict(database.execute("select key, value from meta where key in ('plan', 'plan_hash')"))
            rows = database.execute(
                "select count(distinct plan_index) from point where plan_index >= 0 "
                "and seq not in (select seq from superseded)"
            )
            measured = next(iter(rows))[0]
            ends = [_wall_time(database, order) for order in ("asc", "desc")]
        finally:
            database.close()
        total = len(json.loads(told["plan"])["role"])
        return Glance(int(measured), total, ends[0], ends[1], str(json.loads(told["plan_hash"])))
    except (apsw.Error, KeyError, ValueError, TypeError, struct.error):
        return None


def _wall_time(database: apsw.Connection, order: str) -> float | None:
    row = database.execute(f"select body from point order by seq {order} limit 1").fetchone()
    return None if row is None else float(struct.unpack(HEADER, row[0][:HEADER_BYTES])[4])
