"""A run of levels without phase: the total over its grid, and the figures that power alone gives."""

from __future__ import annotations

from functools import lru_cache
from pathlib import Path
from typing import TYPE_CHECKING, TypedDict

import numpy as np

from colure.app import services
from colure.app.storage.begun import campaign_of
from colure.app.storage.folders import RunFolder, run_folder
from colure.app.web.views import answers
from colure.app.web.views.together import figure_row
from colure.errors import InputError
from colure.geometry.conventions import power_db
from colure.model.campaign import Campaign

if TYPE_CHECKING:
    from colure.app.services.power_runs import PowerRun
    from colure.model.figure import Figure

#: Levels below this under 1 are not told, dB.
FLOOR_DB = -120.0


class PowerView(TypedDict):
    """Levels at one frequency (`total`, theta by theta, None where nothing was read) and the figures at all of them.

    unit
        dBi where the range is absolute, else relative.
    """

    of: answers.Of
    states: list[str]
    all_hz: list[float]
    unit: str
    rows: list[float]
    columns: list[float]
    total: answers.Levels
    figures: list[answers.FigureRow]


def levels_of(folder: Path, run_name: str, state: str | None, frequency: int | None) -> PowerView:
    """Return what a power-only run holds at one frequency, by default the one that is shown first.

    Raises
    ------
    InputError
        If the run measured phase, or holds no such frequency.
    """
    run = run_folder(folder, run_name)
    if not run.record.is_file() or services.has_phase(run):
        raise InputError([f"run {run_name}: is no run of levels without phase"])
    changed = max(file.stat().st_mtime_ns for file in (run.record, *folder.glob("*.toml")))
    opened, figures = _opened(folder, run, state, changed)
    table, all_hz = opened.table, opened.table.frequency_hz
    index = Campaign.load(folder).goal.shown_index(all_hz) if frequency is None else frequency
    if not 0 <= index < all_hz.size:
        raise InputError([f"frequency = {index}: must be from 0 to {all_hz.size - 1} (index)"])
    level = power_db(table.power[index], least=10.0 ** (0.1 * FLOOR_DB))
    return {
        "of": {"run": run_name, "state": state, "frequency_hz": float(all_hz[index])},
        "states": services.states_of(run),
        "all_hz": all_hz.tolist(), "unit": "dBi" if table.quantity == "gain" else "dB, relative",
        "rows": np.rad2deg(table.theta).round(6).tolist(), "columns": np.rad2deg(table.phi).round(6).tolist(),
        "total": [float(v) if np.isfinite(v) else None for v in level.ravel()],
        "figures": [figure_row(one) for one in figures],
    }  # fmt: skip


@lru_cache(maxsize=4)
def _opened(folder: Path, run: RunFolder, state: str | None, _changed: int) -> tuple[PowerRun, list[Figure]]:
    from colure.app.services.power_runs import PowerRun

    power_run = PowerRun(campaign_of(folder, run), run.state(state))
    return power_run, list(power_run.evaluate())
