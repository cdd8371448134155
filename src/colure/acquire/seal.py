"""Journal in, record out: one netCDF-4 file through temporary file, fsync and atomic replace."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING

import numpy as np

from colure.acquire.journal import Journal, Row
from colure.errors import JournalError
from colure.model.files import save_dataset, with_step
from colure.model.plan import Plan
from colure.model.record import build_record

if TYPE_CHECKING:
    import xarray as xr


def record_of_rows(plan: Plan, rows: Sequence[Row], sensors: Sequence[str] = ()) -> xr.Dataset:
    """Return points as a record, in plan order; unplanned ties come last.

    sensors
        Quantities that every row holds.
    """
    rows = sorted(rows, key=lambda row: (row.plan_index < 0, row.plan_index))
    return build_record(
        plan,
        plan_index=np.array([row.plan_index for row in rows]),
        role=np.array([row.role for row in rows]),
        state_index=np.array([row.state_index for row in rows]),
        trace=np.stack([row.trace for row in rows]),
        commanded_deg=np.stack([row.commanded_deg for row in rows]),
        readback_deg=np.stack([row.readback_deg for row in rows]),
        rate_deg_s=np.stack([row.rate_deg_s for row in rows]),
        time_s=np.array([row.time_s for row in rows]),
        wall_time=np.array([row.wall_time for row in rows]),
        monotonic_s=np.array([row.monotonic_s for row in rows]),
        flags=np.array([row.flags for row in rows]),
        sensors=tuple(sensors),
        conditions=np.stack([row.conditions for row in rows]) if sensors else None,
    )


def record_of(journal: Journal) -> xr.Dataset:
    """Return the journal's points as a record, in plan order; unplanned ties come last.

    Raises
    ------
    JournalError
        If the journal is empty or damaged.
    """
    check = journal.verify()
    if not check.whole:
        raise JournalError(f"{journal.path.name}: damaged: {'; '.join(check.damaged[:5])}")
    plan, rows = journal.plan(), journal.rows()
    if not rows:
        raise JournalError(f"{journal.path.name}: holds no points yet")
    record = record_of_rows(plan, rows, journal.meta("sensors") or ())
    identity = journal.meta("identity") or {}
    record = record.assign_attrs(receiver=identity.get("receiver", "vector"))
    return with_step(
        record.assign_attrs(
            journal_root_hash=check.root_hash, complete=int(journal.measured() >= set(range(len(plan))))
        ),
        "acquire",
        journal=journal.path.name,
        root_hash=check.root_hash,
        identity=identity,
        stops=journal.meta("stops") or [],
        accepted_damage=list(check.accepted),
        **({"checks": checks} if (checks := journal.meta("checks")) else {}),
        **({"again": again} if (again := journal.meta("again")) else {}),
    )


def seal(journal: Journal, path: Path) -> xr.Dataset:
    """Write the record beside the journal and return it."""
    record = record_of(journal)
    keep_record(journal, record, path)
    return record


def keep_record(journal: Journal, record: xr.Dataset, path: Path) -> None:
    """Write a record that was made from a journal, and note there what it was made from."""
    journal.note_end()
    save_dataset(record, path)
