"""Many runs of a campaign's devices: spread and trend of every figure, each against a golden unit."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

import numpy as np

from colure.app.services import processing
from colure.app.storage import folders
from colure.app.storage.folders import RunFolder
from colure.errors import InputError
from colure.model.admission import read_json


@dataclass(frozen=True, kw_only=True)
class SeriesRow:
    """One figure over many devices: spread, trend per device in measured order, and each against the golden unit."""

    name: str
    label: str
    unit: str
    frequency_hz: float
    values: list[float]
    expanded: list[float]
    mean: float
    spread: float
    trend: float
    trend_expanded: float
    e_n: list[float]


def series(campaign_folder: Path, names: list[str], golden: str, *, state: str | None = None) -> list[SeriesRow]:
    """Return every figure over several evaluated runs, at their middle frequency, against a golden unit's run.

    Of a device with several states, the state of that name in every run; the golden run's first by default.

    Raises
    ------
    InputError
        If a run was not evaluated, or the golden one is not among them.
    """

    from colure.analysis.compare.match import normalized_error

    if golden not in names:
        raise InputError([f"golden = {golden!r}: must be one of {', '.join(names)}"])
    tables = []
    for name in names:
        folders.require_record(folders.run_folder(campaign_folder, name))
    reference_run = folders.run_folder(campaign_folder, golden)
    for name in names:
        run = folders.run_folder(campaign_folder, name)
        path = _figures_of(processing.beside(reference_run.state(state), run))
        if not path.is_file():
            raise InputError([f"run {name}: has no {path.name}; run colure evaluate first"])
        tables.append(read_json(path))
    frequencies = sorted({row["frequency_hz"] for row in tables[0]})
    middle = frequencies[len(frequencies) // 2]
    at = [{row["name"]: row for row in table if row["frequency_hz"] == middle} for table in tables]
    common = [
        row["name"] for row in tables[0] if row["frequency_hz"] == middle and all(row["name"] in one for one in at)
    ]
    rows, reference = [], names.index(golden)
    for name in common:
        figures = [one[name] for one in at]
        if any(one["value"] is None or one["expanded_uncertainty"] is None for one in figures):
            continue
        values, expanded = ([float(one[key]) for one in figures] for key in ("value", "expanded_uncertainty"))
        trend, trend_expanded = _trend(values)
        e_n = [
            normalized_error(one=v, expanded_one=u, other=values[reference], expanded_other=expanded[reference])
            for v, u in zip(values, expanded, strict=True)
        ]
        spread = float(np.std(values, ddof=1)) if len(values) > 1 else 0.0
        rows.append(SeriesRow(name=name, label=figures[0]["label"], unit=figures[0]["unit"], frequency_hz=middle,
                              values=values, expanded=expanded, mean=float(np.mean(values)),
                              spread=spread, trend=trend, trend_expanded=trend_expanded, e_n=e_n))  # fmt: skip
    return rows


def _figures_of(run: RunFolder) -> Path:
    """Return where the figures of a run's state lie; raises `InputError` if there is no such state."""
    if run.chosen is None:
        return run.figures
    if run.chosen not in (names := processing.states_of(run)):
        raise InputError([f"state = {run.chosen!r}: run {run.path.name} holds {', '.join(names) or 'one state only'}"])
    return run.figures


def _trend(values: list[float]) -> tuple[float, float]:
    """Return (slope per device, its expanded uncertainty from the scatter about the line); infinite below three devices."""
    n = len(values)
    if n < 3:
        return 0.0, float("inf")
    x = np.arange(n) - (n - 1) / 2.0
    y = np.asarray(values)
    slope = float(x @ y / (x @ x))
    rest = y - y.mean() - slope * x
    return slope, 2.0 * float(np.sqrt(rest @ rest / (n - 2) / (x @ x)))
