"""A look at a run while it is measured, or after it stopped: figures and a picture of whatever is there; nothing of the run is written."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np

from colure.app.services import cuts
from colure.app.services.processing import LOOK, opened, processed
from colure.app.storage.folders import RunFolder, require_begun
from colure.errors import InputError
from colure.geometry.conventions import power_db
from colure.geometry.kinematics import Geometry
from colure.model.campaign import Campaign
from colure.model.plan import ROLES, Plan, Role
from colure.model.record import holds_cuts, of_state
from colure.model.scan import Scan

if TYPE_CHECKING:
    import xarray as xr

    from colure.model.figure import Figure
    from colure.report.drawing import Panels


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
    drawing: Panels | None


def look(campaign: Campaign, run: RunFolder) -> Look:
    """Read what is there of a run: its figures if it carries a pattern already, else its slices as cuts.

    Raises
    ------
    InputError
        If the run holds no point yet.
    """
    from colure.acquire.glance import rows_so_far
    from colure.acquire.seal import record_of_rows

    journal = rows_so_far(run.journal)
    if journal is None:
        if run.record.is_file():
            # A record that came without its journal is all there is.
            record = opened(run)
            how, figures, drawing = _read(campaign, None, record, run.path.name)
            return Look(*_standing(campaign, record, total=None), how, figures, drawing)
        require_begun(run)
        raise InputError([f"run {run.path.name}: holds no point yet; a look needs at least one (points)"])
    plan, rows, told = journal
    record = record_of_rows(plan, rows, told.get("sensors") or ())
    record = record.assign_attrs(receiver=(told.get("identity") or {}).get("receiver", "vector"), complete=0)
    standing = _standing(campaign, record, total=len(plan))
    if plan.states:
        record = of_state(record, 0)
    record, beside = _one_distance(campaign, record)
    how, figures, drawing = _read(campaign, plan, record, run.path.name)
    return Look(*standing, f"{how}{beside}", figures, drawing)


def _one_distance(campaign: Campaign, record: xr.Dataset) -> tuple[xr.Dataset, str]:
    """Return a record of several distances as one, or its first distance alone as long as there is no other, and what to say of it."""
    from colure.analysis.steps.distance_steps import at_one_distance, first_distance

    try:
        return at_one_distance(record, campaign.chamber, campaign.device), ""
    except ValueError as error:
        return first_distance(record), f"; the first distance alone: {error}"


def _standing(
    campaign: Campaign, record: xr.Dataset, *, total: int | None
) -> tuple[int, int, float | None, float, float, dict[str, float]]:
    """Return points measured and planned, time left, levels, and where the axes stand; all planned ones are there if `total` is None."""
    shown = campaign.goal.shown_index(record["frequency"].values)
    power = np.sum(np.abs(record["trace"].values[:, shown]) ** 2, axis=1)
    level = power_db(power, least=1e-30)
    indices, order = record["plan_index"].values, np.argsort(record["wall_time"].values)
    wall, monotonic = (record[name].values[order] for name in ("wall_time", "monotonic_s"))
    measured = int(np.unique(indices[indices >= 0]).size)
    planned = measured if total is None else total
    # The clock of the computer begins anew where a run was resumed: the pause is no work.
    spent = float(np.sum(np.diff(wall)[np.diff(monotonic) > 0.0]))
    last = int(order[-1])
    angles = {str(n): float(v) for n, v in zip(record["axis"].values, record["readback_deg"].values[last], strict=True)}
    seconds = None if planned == measured else (planned - measured) * spent / max(1, level.size - 1)
    return measured, planned, seconds, float(level[last]), float(level.max()), angles


def _read(
    campaign: Campaign, plan: Plan | None, record: xr.Dataset, name: str
) -> tuple[str, list[Figure], Panels | None]:
    """Return what figures were read from, the figures, and the picture."""
    if record.attrs.get("receiver", "vector") != "vector":
        return "levels alone: the receiver gives power", [], None
    why = ""
    if not holds_cuts(record.attrs):
        try:
            return _pattern(campaign, record, name)
        except InputError as error:
            why = error.faults[0].removesuffix(LOOK)
        if plan is None:
            return f"levels alone: {why}", [], None
        record = _as_cuts(plan, campaign, record)
    try:
        read_cuts = cuts.figures_of(campaign, record)
    except InputError as error:
        return f"levels alone: {error.faults[0]}", [], None
    shown = float(read_cuts.scan.frequency_hz[read_cuts.shown])
    from colure.report.cut_charts import cuts_chart

    drawing = cuts_chart(read_cuts.levels, shown, cuts.component_words(read_cuts.scan))
    number = len(read_cuts.scan.cuts)
    how = f"{number} cut{'' if number == 1 else 's'} at the range length"
    return (how if not why else f"{how}; no pattern of the sphere yet ({why})"), read_cuts.figures, drawing


def _pattern(campaign: Campaign, record: xr.Dataset, name: str) -> tuple[str, list[Figure], Panels]:
    from colure.analysis.uncertainty.budget import figures_with_budget
    from colure.app.services.pattern_files import waves_of_processed
    from colure.app.services.pattern_object import FilePattern

    processed_run = processed(campaign, record, campaign.recipe())
    shown = float(processed_run.frequency_hz[campaign.goal.shown_index(processed_run.frequency_hz)])
    drawing = FilePattern(waves_of_processed(name, processed_run)).plot("cuts", frequency_ghz=1e-9 * shown)
    assert processed_run.completeness is not None  # the recipe always counts
    return processed_run.completeness.text, list(figures_with_budget(processed_run.budget)), drawing


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
