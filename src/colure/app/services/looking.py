"""A look at a run while it is measured, or after it stopped: figures and a picture of whatever is there; nothing of the run is written."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise
from typing import TYPE_CHECKING

import numpy as np

from colure.app.services import cuts
from colure.app.services.processing import processed
from colure.app.storage.folders import RunFolder
from colure.errors import InputError
from colure.geometry.kinematics import Geometry
from colure.model.campaign import Campaign
from colure.model.plan import ROLES, Plan, Role
from colure.model.record import holds_cuts, of_state
from colure.model.scan import Scan

if TYPE_CHECKING:
    import xarray as xr

    from colure.acquire.journal import Row
    from colure.model.figure import Figure
    from colure.report.drawing import Drawing


@dataclass(frozen=True)
class Look:
    """What a run says so far.

    left_s
        Time left at the pace so far; None once every point is there.
    level_db, strongest_db
        Of the newest sweep and of the strongest one at the frequency to watch (S21).
    angles_deg
        Where the axes stood at the newest sweep, readouts by name.
    how
        What the figures were read from, in words.
    """

    measured: int
    total: int
    left_s: float | None
    level_db: float
    strongest_db: float
    angles_deg: dict[str, float]
    how: str
    figures: list[Figure]
    drawing: Drawing | None


def look(campaign: Campaign, run: RunFolder) -> Look:
    """Read what is there of a run: its figures if it carries a pattern already, else its slices as cuts.

    Raises
    ------
    InputError
        If the run holds no point yet.
    """
    from colure.acquire.glance import rows_so_far
    from colure.acquire.seal import record_of_rows

    found = rows_so_far(run.journal)
    if found is None:
        raise InputError([f"run {run.path.name}: holds no point yet; a look needs at least one (points)"])
    plan, rows, told = found
    record = record_of_rows(plan, rows, told.get("sensors") or ())
    record = record.assign_attrs(receiver=(told.get("identity") or {}).get("receiver", "vector"), complete=0)
    if plan.states:
        record = of_state(record, 0)
    how, figures, drawing = _read(campaign, plan, record, run.path.name)
    return Look(*_standing(campaign, plan, rows), how, figures, drawing)


def _standing(
    campaign: Campaign, plan: Plan, rows: list[Row]
) -> tuple[int, int, float | None, float, float, dict[str, float]]:
    """Return points measured and planned, time left, levels, and where the axes stand."""
    shown = campaign.goal.shown_index(plan.frequency_hz)
    power = np.array([float(np.sum(np.abs(row.trace[shown]) ** 2)) for row in rows])
    level = 10.0 * np.log10(np.maximum(power, 1e-30))
    done = {row.plan_index for row in rows if row.plan_index >= 0}
    spent = sum(max(0.0, b.wall_time - a.wall_time) for a, b in pairwise(rows) if b.monotonic_s > a.monotonic_s)
    left = len(plan) - len(done)
    angles = {name: float(value) for name, value in zip(plan.axes, rows[-1].readback_deg, strict=True)}
    seconds = None if not left else left * spent / max(1, len(rows) - 1)
    return len(done), len(plan), seconds, float(level[-1]), float(level.max()), angles


def _read(campaign: Campaign, plan: Plan, record: xr.Dataset, name: str) -> tuple[str, list[Figure], Drawing | None]:
    """Return what figures were read from, the figures, and the picture."""
    if record.attrs["receiver"] != "vector":
        return "levels alone: the receiver gives power", [], None
    why = ""
    if not holds_cuts(record.attrs):
        try:
            return _pattern(campaign, record, name)
        except InputError as error:
            why = error.faults[0]
        record = _as_cuts(plan, campaign, record)
    try:
        found = cuts.figures_of(campaign, record)
    except InputError as error:
        return f"levels alone: {error.faults[0]}", [], None
    shown = float(found.scan.frequency_hz[found.shown])
    from colure.report.cut_charts import cuts_chart

    drawing = cuts_chart(found.levels, shown, cuts.component_words(found.scan))
    how = f"{len(found.scan.cuts)} cuts at the range length"
    return (how if not why else f"{how}; no pattern of the sphere yet ({why})"), found.figures, drawing


def _pattern(campaign: Campaign, record: xr.Dataset, name: str) -> tuple[str, list[Figure], Drawing]:
    from colure.analysis.uncertainty.budget import figures_with_budget
    from colure.app.services.pattern_files import Waves
    from colure.app.services.pattern_object import FilePattern

    done = processed(campaign, record, campaign.recipe())
    region = float(np.deg2rad(done.sphere.region_deg))
    waves = Waves(name, done.frequency_hz, done.expansion, region, done.pattern, "realized_gain", done.budget.slant)
    shown = float(done.frequency_hz[campaign.goal.shown_index(done.frequency_hz)])
    drawing = FilePattern(waves).plot("cuts", frequency_ghz=1e-9 * shown)
    assert done.completeness is not None  # the recipe always counts
    return done.completeness.text, list(figures_with_budget(done.budget)), drawing


def _as_cuts(plan: Plan, campaign: Campaign, record: xr.Dataset) -> xr.Dataset:
    """Return a grid's record as one of cuts: every slice stands for itself."""
    geometry, grid = campaign.chamber.positioner.geometry, plan.grid
    swept, sliced = (tuple(x.tolist()) for x in (grid.swept_deg(geometry), grid.sliced_deg(geometry)))
    offsets = plan.settings.get("offsets_deg", "")
    slant = (campaign.device.slant_deg,) if plan.scheme == "one-pass" else (0.0,)
    first = tuple(float(x) for x in str(offsets).split(",")) if offsets else slant
    follows = geometry is Geometry.ROLL_OVER_AZIMUTH and plan.scheme != "dual-port" and campaign.goal.probe == "follows"
    common = {"offset_deg": first, "probe": "follows" if follows else "fixed"}
    if geometry is Geometry.ROLL_OVER_AZIMUTH:
        scan = Scan(theta_deg=swept, phi_deg=sliced, **common)
    elif geometry is Geometry.AZIMUTH_OVER_ELEVATION:
        scan = Scan(azimuth_deg=swept, elevation_deg=sliced, **common)
    else:
        # Its slices are no cuts with a name: their directions are one list.
        scan = Scan(directions="measured", **common)
        scans = record["role"].values == ROLES.index(Role.SCAN)
        record = record.assign(slice_index=record["slice_index"].where(~scans, 0))
    return record.assign_attrs(form="directions", scan_json=scan.model_dump_json())
