"""Levels of a run as they were read, uncorrected: what a stopped run shows, and a small picture of every run."""

from __future__ import annotations

from functools import lru_cache
from pathlib import Path
from typing import TYPE_CHECKING

import numpy as np

from colure.app.storage.begun import campaign_of
from colure.app.storage.folders import RunFolder, run_folder
from colure.app.storage.run_kinds import is_cuts
from colure.app.web.views import answers
from colure.errors import ColureError, InputError, JournalError
from colure.geometry.conventions import FloatArray, IntArray, power_db
from colure.geometry.directions import unit_vector
from colure.geometry.kinematics import sighting
from colure.model.campaign import Campaign
from colure.model.plan import ROLES, Role

if TYPE_CHECKING:
    import xarray as xr

#: A small picture has so many rows of theta and columns of phi, and shows levels down to so far below the strongest.
THUMB_ROWS, THUMB_COLUMNS, THUMB_RANGE_DB = 24, 48, 40.0
#: A cell is drawn if something was measured this near to it, degrees: the half diagonal of a cell.
THUMB_REACH_DEG = 6.0
#: Levels below this under the strongest are not told, as a ratio of powers.
LEAST = 1e-12


def as_read(folder: Path, run_name: str) -> answers.AsRead:
    """Return the levels of a run that has no pattern yet, direction by direction, at the frequency to watch.

    Raises
    ------
    InputError
        If the run holds no point, or the campaign cannot be loaded.
    """
    run = run_folder(folder, run_name)
    campaign = campaign_of(folder, run)
    record, total = _record(run)
    shown = campaign.goal.shown_index(record["frequency"].values)
    direction, power, _ = _levels(campaign, record, shown)
    return {
        "of": {"run": run_name, "state": None, "frequency_hz": float(record["frequency"].values[shown])},
        "directions": np.round(direction, 5).ravel().tolist(),
        "level_db": np.round(power_db(power, least=1e-30), 3).tolist(),
        "measured": int(np.unique(record["plan_index"].values[record["plan_index"].values >= 0]).size), "total": total,
        "state": _first_state(record),
    }  # fmt: skip


def thumb(folder: Path, run_name: str) -> answers.Thumb:
    """Return a small picture of a run: its pattern, else what was read of it; nothing (`what` empty) where no point is."""
    run = run_folder(folder, run_name)
    source = next((file for file in (run.pattern, run.record, run.journal) if file.is_file()), None)
    nothing: answers.Thumb = {"run": run_name, "what": "", "shades": []}
    if source is None:
        return nothing
    seen = source.stat()
    try:
        what, shades = _picture(folder, run_name, source, seen.st_mtime_ns, seen.st_size)
    except ColureError:
        return nothing
    return {"run": run_name, "what": what, "shades": list(shades)}


@lru_cache(maxsize=2000)
def _picture(
    folder: Path, run_name: str, source: Path, _changed_ns: int, _size: int
) -> tuple[answers.ThumbKind, tuple[int, ...]]:
    """Draw once for what a file holds; the time and size of the file stand for its content."""
    run = run_folder(folder, run_name)
    if source == run.pattern:
        return "pattern", _shades(*_of_pattern(source))
    campaign = campaign_of(folder, run)
    record, _ = _record(run)
    direction, power, order = _levels(campaign, record, campaign.goal.shown_index(record["frequency"].values))
    if is_cuts(run):
        return "cut", _line(power[order])
    return "as read", _shades(direction, power)


def _record(run: RunFolder) -> tuple[xr.Dataset, int]:
    """Return what was measured, from the record or from the journal of a run that is not sealed, and the points planned."""
    from colure.acquire.glance import glance, rows_so_far
    from colure.acquire.seal import record_of_rows
    from colure.model.files import open_dataset

    if run.record.is_file():
        record, seen = open_dataset(run.record), glance(run.journal)
        measured = int(np.unique(record["plan_index"].values[record["plan_index"].values >= 0]).size)
        return record, measured if seen is None else seen.total
    try:
        journal = rows_so_far(run.journal)
    except JournalError as error:
        # No path of the server crosses the door.
        raise InputError([f"run {run.path.name}: {str(error).replace(str(run.journal), run.journal.name)}"]) from None
    if journal is None:
        raise InputError([f"run {run.path.name}: holds no point yet"])
    plan, rows, told = journal
    return record_of_rows(plan, rows, told.get("sensors") or ()), len(plan)


def _first_state(record: xr.Dataset) -> str | None:
    from colure.model.record import names_of_states

    return next(iter(names_of_states(str(record.attrs.get("states", "")))), None)


def _levels(campaign: Campaign, record: xr.Dataset, shown: int) -> tuple[FloatArray, FloatArray, list[int]]:
    """Return (n, 3) directions of the scan, the power in each (all passes and ports together), and the order in which to join them.

    Of a device with states only the first one counts.
    """
    mine = (record["role"].values == ROLES.index(Role.SCAN)) & (record["state_index"].values <= 0)
    if not mine.any():
        raise InputError(["the run holds no point of its scan yet"])
    geometry, tables = campaign.chamber.positioner.geometry, campaign.chamber.axis_table
    axes = [str(name) for name in record["axis"].values]
    first, second = (
        tables[name].map.angle_deg(record["commanded_deg"].values[mine, axes.index(name)])
        for name in geometry.axis_names
    )
    power = np.sum(np.abs(record["trace"].values[mine, shown]) ** 2, axis=-1)
    places, at = np.unique(np.round(np.stack([second, first], axis=-1), 4), axis=0, return_inverse=True)
    total = np.asarray(np.bincount(at.ravel(), weights=power), float)
    direction = sighting(geometry, first=np.deg2rad(places[:, 1]), second=np.deg2rad(places[:, 0])).direction
    # The first slice in the order of the axis that sweeps.
    return np.asarray(direction), total, np.flatnonzero(places[:, 0] == places[0, 0]).tolist()


def _of_pattern(file: Path) -> tuple[FloatArray, FloatArray]:
    """Return directions and power of a pattern's middle frequency."""
    from colure.model.files import open_dataset
    from colure.model.pattern import field_of

    pattern = open_dataset(file)
    field = field_of(pattern.isel(frequency=[pattern.sizes["frequency"] // 2]))[0]
    power = np.sum(np.abs(field) ** 2, axis=0)
    theta, phi = np.meshgrid(*(np.deg2rad(pattern[name].values) for name in ("theta", "phi")), indexing="ij")
    known = np.isfinite(power)
    return unit_vector(theta=theta, phi=phi)[known], power[known]


def _shades(direction: FloatArray, power: FloatArray) -> tuple[int, ...]:
    """Return shades 0 to 255 by rows of theta and columns of phi, each of the nearest direction; -1 where none is near."""
    from scipy.spatial import KDTree

    theta = np.deg2rad((np.arange(THUMB_ROWS) + 0.5) * 180.0 / THUMB_ROWS)
    phi = np.deg2rad((np.arange(THUMB_COLUMNS) + 0.5) * 360.0 / THUMB_COLUMNS)
    rows, columns = np.meshgrid(theta, phi, indexing="ij")
    cells = unit_vector(theta=rows, phi=columns).reshape(-1, 3)
    spacing = np.sqrt(4.0 * np.pi / max(1, len(direction)))
    reach = max(np.deg2rad(THUMB_REACH_DEG), 0.75 * min(spacing, np.deg2rad(30.0)))
    apart, nearest = KDTree(direction).query(cells)
    shade = np.where(apart <= 2.0 * np.sin(0.5 * reach), _level_shades(power)[nearest], -1)
    return tuple(int(v) for v in shade)


def _line(power: FloatArray) -> tuple[int, ...]:
    """Return the heights 0 to 255 of a cut, one a column."""
    level = _level_shades(power)
    at = np.linspace(0, level.size - 1, THUMB_COLUMNS)
    return tuple(int(v) for v in np.interp(at, np.arange(level.size), level))


def _level_shades(power: FloatArray) -> IntArray:
    level = power_db(power / power.max(), least=LEAST)
    return np.clip(255.0 * (1.0 + level / THUMB_RANGE_DB), 0, 255).astype(int)
