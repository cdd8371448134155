"""Several runs on one page: compared, over states, over devices, in two set-ups; and a run that holds cuts alone."""

from __future__ import annotations

import math
from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING, TypedDict

import numpy as np

from colure.app import services
from colure.app.storage.begun import campaign_of, measured_run
from colure.app.storage.folders import run_folder
from colure.app.storage.run_kinds import is_cuts
from colure.app.web.views import answers
from colure.errors import InputError
from colure.geometry.conventions import FloatArray

if TYPE_CHECKING:
    from colure.app.services.comparing import ComparedFigure
    from colure.app.services.cuts import CutChange
    from colure.model.figure import Figure


class CutOfRun(TypedDict):
    """One measured cut; lower and upper hold the co-polar level in 95 of 100 cases.

    directions
        Three values a point: the direction in the device frame.
    """

    name: str
    label: str
    angle_name: str
    unit: str
    angle_deg: list[float]
    directions: list[float]
    co: answers.Levels
    cross: answers.Levels
    lower: answers.Levels
    upper: answers.Levels


class CutsRun(TypedDict):
    """A run of cuts at one frequency, with its figures at all of them."""

    of: answers.Of
    states: list[str]
    all_hz: list[float]
    components: tuple[str, str]
    cuts: list[CutOfRun]
    figures: list[answers.FigureRow]


class Change(TypedDict):
    """One figure of two runs; `reason` says why a number is missing."""

    label: str
    unit: str
    frequency_hz: float
    value: float | None
    expanded: float | None
    other: float | None
    other_expanded: float | None
    change: float | None
    change_expanded: float | None
    agrees: bool
    reason: str


class Comparison(TypedDict):
    """What was matched, what the difference is then, and every figure; rotation, shift and level are what matching took out."""

    matched: list[str]
    middle_hz: float | None
    rotation_deg: list[float]
    shift_mm: list[float]
    level_db: float | None
    difference_db: float | None
    rows: list[Change]
    agrees: bool


class SeriesLine(TypedDict):
    """One figure over many runs at mid-band; E_n against the golden unit's run (None where both state no uncertainty)."""

    label: str
    unit: str
    values: list[float]
    mean: float
    spread: float
    trend: float | None
    trend_expanded: float | None
    e_n: list[float | None]


class Series(TypedDict):
    runs: list[str]
    golden: str
    frequency_hz: float | None
    rows: list[SeriesLine]


class CoverageLine(TypedDict):
    state: str
    levels: list[float]
    peak: float | None


class Coverage(TypedDict):
    """Levels that so many per cent of all solid angle do not exceed, state by state; the best of all comes last."""

    frequency_hz: float
    percent: list[float]
    unit: str
    expanded_db: float
    rows: list[CoverageLine]


class SetUpsWords(TypedDict):
    sentences: list[str]


def cuts_of(folder: Path, run_name: str, state: str | None, frequency: int | None) -> CutsRun:
    """Return the cuts of a run at one frequency, by default the one that its charts show, and all its figures."""
    from colure.app.services import cuts

    run = run_folder(folder, run_name)
    if not is_cuts(run):
        raise InputError([f"run {run_name}: holds no cuts alone; its views are those of a sphere"])
    read_cuts = cuts.read(campaign_of(folder, run), run.state(state))
    all_hz = read_cuts.scan.frequency_hz
    index = read_cuts.shown if frequency is None else frequency
    if not 0 <= index < all_hz.size:
        raise InputError([f"frequency = {index}: must be from 0 to {all_hz.size - 1} (index)"])
    at_hz = float(all_hz[index])
    return {
        "of": {"run": run_name, "state": state, "frequency_hz": at_hz}, "states": services.states_of(run),
        "all_hz": all_hz.tolist(),
        "components": cuts.component_words(read_cuts.scan),
        "cuts": [
            {"name": one.name, "label": one.label, "angle_name": one.angle_name, "unit": one.unit,
            "angle_deg": one.angle_deg.tolist(),
             "directions": np.round(one.directions, 5).ravel().tolist(),
             "co": _levels(one.co_dbi), "cross": _levels(one.cross_dbi), "lower": _levels(one.lower_dbi),
             "upper": _levels(one.upper_dbi)}
            for one in read_cuts.levels if abs(one.frequency_hz - at_hz) < 1.0
        ],
        "figures": [figure_row(one) for one in read_cuts.figures],
    }  # fmt: skip


def comparison(folder: Path, run_name: str, state: str | None, other: str, matched: Sequence[str]) -> Comparison:
    """Hold two runs of a campaign against each other, figure by figure, as `colure compare` does."""
    from colure.analysis.compare.match import Freedom
    from colure.app.services import cuts
    from colure.app.services.comparing import compare_power, compare_run

    run, second = run_folder(folder, run_name), run_folder(folder, other)
    campaign, theirs = campaign_of(folder, run), campaign_of(folder, second)
    for one in (run, second):
        if not one.record.is_file():
            raise InputError([f"run {one.path.name}: holds no record yet"])
    of_cuts = is_cuts(run) or is_cuts(second)
    if of_cuts or not (services.has_phase(run) and services.has_phase(second)):
        if matched:
            raise InputError([f"matched = {', '.join(matched)}: needs two spheres with phase; leave it out here"])
        if of_cuts:
            plain = [_change(row) for row in cuts.compare((campaign, run), (theirs, second))]
        else:
            plain = [_change(row) for row in compare_power((campaign, run.state(state)), (theirs, second.state(state)))]
        return {
            "matched": [], "middle_hz": _middle([row["frequency_hz"] for row in plain]), "rotation_deg": [],
            "shift_mm": [],
            "level_db": None, "difference_db": None, "rows": plain, "agrees": all(row["agrees"] for row in plain),
        }  # fmt: skip
    freedom = Freedom("frame" in matched, "origin" in matched, "level" in matched)
    compared = compare_run(campaign, run.state(state), (theirs, second), freedom=freedom)
    return {
        "matched": list(matched), "middle_hz": float(compared.frequency_hz[compared.middle]),
        "rotation_deg": compared.match.rotation_deg.tolist(), "shift_mm": compared.match.shift_mm.tolist(),
        "level_db": float(compared.match.level_db[compared.middle]),
        "difference_db": float(compared.match.difference_db[compared.middle]),
        "rows": [_change(row) for row in compared.rows], "agrees": compared.agrees,
    }  # fmt: skip


def over_runs(folder: Path, runs: Sequence[str], golden: str, state: str | None) -> Series:
    """Return spread, trend and E_n of every figure over several evaluated runs, as `colure series` does."""
    from colure.app.services.series import series

    rows = series(folder, list(runs), golden, state=state)
    return {
        "runs": list(runs), "golden": golden, "frequency_hz": rows[0].frequency_hz if rows else None,
        "rows": [
            {"label": one.label, "unit": one.unit, "values": one.values, "mean": one.mean, "spread": one.spread,
             "trend": _known(one.trend) if math.isfinite(one.trend_expanded) else None,
             "trend_expanded": _known(one.trend_expanded),
             "e_n": [_known(v) for v in one.e_n]}
            for one in rows
        ],
    }  # fmt: skip


def over_states(folder: Path, run_name: str) -> Coverage:
    """Return the spherical coverage of every state and of the best of all, as `colure coverage` does."""
    from colure.app.services.coverage import coverage_over_states

    coverage = coverage_over_states(*measured_run(folder, run_name))
    rows: list[CoverageLine] = [
        {"state": name, "levels": row.tolist(), "peak": _known(coverage.peak[name])}
        for name, row in coverage.states.items()
    ]
    best: CoverageLine = {
        "state": "best of all",
        "levels": coverage.best.tolist(),
        "peak": _known(max(coverage.peak.values())),
    }
    return {
        "frequency_hz": coverage.frequency_hz, "percent": list(coverage.percent), "unit": coverage.unit,
        "expanded_db": coverage.expanded_db, "rows": [*rows, best],
    }  # fmt: skip


def two_set_ups(folder: Path, run_name: str, state: str | None, other_folder: Path, other: str) -> SetUpsWords:
    """Hold one device in two set-ups against each other, as `colure set-ups` does; nothing is written."""
    from colure.app.services.comparing import compare_set_ups

    if folder == other_folder and run_name == other:
        raise InputError([f"run {other}: is the same run; a second set-up is another one (run)"])
    sentences = compare_set_ups(
        measured_run(folder, run_name, state), measured_run(other_folder, other), None
    ).sentences
    return {"sentences": sentences}


def figure_row(one: Figure) -> answers.FigureRow:
    """Return a figure for the page, or the reason why it has no value."""
    from colure.model.figure import format_value

    known = math.isfinite(one.value)
    text = one.reason or (format_value(one.value, uncertainty=one.expanded_uncertainty or math.nan) if known else "-")
    return {
        "name": one.name, "label": one.label, "unit": answers.shown_unit(one.unit, one.reason),
        "frequency_hz": one.frequency_hz,
        "value": _known(one.value), "lower": _known(one.lower), "upper": _known(one.upper),
        "definition": one.definition, "text": text,
    }  # fmt: skip


def _change(row: ComparedFigure | CutChange) -> Change:
    missing = [math.isnan(row.value), math.isnan(row.other)]
    why = ("undefined in both" if all(missing) else "undefined in one of them") if any(missing) else ""
    return {
        "label": row.label, "unit": row.unit, "frequency_hz": row.frequency_hz, "value": _known(row.value),
        "expanded": _known(row.expanded),
        "other": _known(row.other), "other_expanded": _known(row.other_expanded), "change": _known(row.change),
        "change_expanded": _known(row.change_expanded), "agrees": row.agrees,
        "reason": getattr(row, "reason", "") or why,
    }  # fmt: skip


def _middle(all_hz: list[float]) -> float | None:
    known = sorted(set(all_hz))
    return known[len(known) // 2] if known else None


def _levels(values: FloatArray) -> answers.Levels:
    return [round(float(v), 3) if math.isfinite(v) else None for v in values]


def _known(value: float) -> float | None:
    return float(value) if math.isfinite(value) else None
