"""Points of a run that are measured again: which were asked for, which still wait, and which readings were put aside for them.

A reading stays in use until the one in its place is on disk: both are saved in one transaction. What was read first stays in the
journal for good, under the same checksums and in the same chain.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from typing import Any

#: One request: "points" of the plan, "after" which row of the journal, "wall_time", and what a person "said".
Request = Mapping[str, Any]


def pending_points(database: Any, requests: Sequence[Request]) -> dict[int, int]:
    """Return the points of the plan that still wait to be measured again, each with the last row that the new one replaces.

    database
        The journal's SQLite connection.
    """
    wanted = {int(point): int(one["after"]) for one in requests for point in one["points"]}
    if not wanted:
        return {}
    newest = dict(database.execute("select plan_index, max(seq) from point where plan_index >= 0 group by plan_index"))
    return {point: after for point, after in wanted.items() if newest.get(point, 0) <= after}


def replaced_rows(database: Any, requests: Sequence[Request]) -> set[int]:
    """Return the rows that a request allows to be put aside, because the same point was measured after it."""
    out: set[int] = set()
    for one in requests:
        after, points = int(one["after"]), {int(point) for point in one["points"]}
        again = {
            index for (index,) in database.execute("select plan_index from point where seq > ?", (after,))
        } & points
        rows = database.execute("select seq, plan_index from point where seq <= ?", (after,))
        out |= {seq for seq, index in rows if index in again}
    return out


def faults_of_what_was_replaced(replaced: Iterable[int], aside: Iterable[int]) -> list[str]:
    """Return which rows are used although their point was measured again."""
    return [
        f"row {seq}: its point was measured again, and it is not put aside" for seq in sorted({*replaced} - {*aside})
    ]
