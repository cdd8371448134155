"""How far a run is, read from its journal without holding it: works beside a run that is being written."""

from __future__ import annotations

import json
import struct
import zlib
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import apsw

from colure.acquire.again import pending_points
from colure.acquire.chain import opened_to_read
from colure.acquire.journal import unreadable
from colure.acquire.rows import HEADER, HEADER_BYTES, Row
from colure.errors import JournalError
from colure.model.plan import Plan


@dataclass(frozen=True)
class Glance:
    """What a journal holds.

    measured, total
        Points of the plan that are committed and do not wait to be measured again, and all of them.
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
        with opened_to_read(path) as database:
            told = dict(database.execute("select key, value from meta where key in ('plan', 'plan_hash', 'again')"))
            rows = database.execute(
                "select count(distinct plan_index) from point where plan_index >= 0 "
                "and seq not in (select seq from superseded)"
            )
            measured = next(iter(rows))[0] - len(pending_points(database, json.loads(told.get("again", "[]")) or []))
            ends = [_wall_time(database, order) for order in ("asc", "desc")]
        total = len(json.loads(told["plan"])["role"])
        return Glance(int(measured), total, ends[0], ends[1], str(json.loads(told["plan_hash"])))
    except (apsw.Error, KeyError, ValueError, TypeError, struct.error, RecursionError):
        return None


def _wall_time(database: apsw.Connection, order: str) -> float | None:
    row = database.execute(f"select body from point order by seq {order} limit 1").fetchone()
    return None if row is None else float(struct.unpack(HEADER, row[0][:HEADER_BYTES])[4])


def rows_so_far(path: Path) -> tuple[Plan, list[Row], dict[str, Any]] | None:
    """Read plan, rows and identity of a journal while another process may be writing it; None if it holds no point yet.

    Raises
    ------
    JournalError
        If a row fails its checksum, or the file is no journal.
    """
    if not path.is_file():
        return None
    try:
        with opened_to_read(path) as database:
            told = {key: json.loads(value) for key, value in database.execute("select key, value from meta")}
            rows = list(
                database.execute(
                    "select seq, body, crc from point where seq not in (select seq from superseded) order by seq"
                )
            )
    except apsw.Error as error:
        raise unreadable(path, error) from None
    except (ValueError, RecursionError) as error:
        raise JournalError(f"{path.name}: cannot be read as a journal: {error}") from None
    for seq, body, crc in rows:
        if zlib.crc32(body) != crc:
            raise JournalError(f"{path.name}: row {seq} is damaged; run the verification")
    if not rows or "plan" not in told:
        return None
    return Plan.from_dict(told["plan"]), [Row.decode(body) for _, body, _ in rows], told
