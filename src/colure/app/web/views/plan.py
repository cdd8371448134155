"""The plan page: what a campaign's files say, and what follows from them as somebody types."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING, Any, Literal, get_args

import numpy as np
from pydantic import BaseModel

from colure.app.services.campaigns import plan_of
from colure.app.services.plan_words import duration_text, plan_rows
from colure.app.storage.file_edits import write_fields, write_readouts
from colure.app.web.views import preparing
from colure.app.web.views.mount import mount_of
from colure.errors import InputError
from colure.geometry.conventions import FloatArray, amplitude_db
from colure.model.bands import GoalBand
from colure.model.campaign import Campaign
from colure.model.chamber import Chamber
from colure.model.definitions import Definition, definitions_for
from colure.model.device import Device
from colure.model.entries import meaning_of
from colure.model.evaluation import Evaluation
from colure.model.goal import Goal
from colure.model.loading import read_toml

if TYPE_CHECKING:
    from colure.app.services.rehearsal import Rehearsal

MODELS: dict[str, type[BaseModel]] = {"goal": Goal, "device": Device, "chamber": Chamber}
#: Fields that the form shows, in this order, with the words beside them; everything else stays in the files.
FIELDS: tuple[tuple[str, str, str], ...] = (
    ("Wanted", "goal.start_ghz", "lowest frequency"),
    ("Wanted", "goal.stop_ghz", "highest frequency"),
    ("Wanted", "goal.points", "frequencies"),
    ("Wanted", "goal.wanted_level_db", "right down to"),
    ("Wanted", "goal.region_deg", "from boresight out to"),
    ("Scan", "goal.scheme", "polarization"),
    ("Scan", "goal.style", "motion"),
    ("Scan", "goal.order", "order of slices"),
    ("Scan", "goal.step_deg", "between slices"),
    ("Scan", "goal.swept_step_deg", "between sweeps"),
    ("Device", "device.size_mm", "size x, y, z"),
    ("Device", "device.offset_mm", "centre x, y, z"),
    ("Device", "device.mass_kg", "mass"),
    ("Device", "device.expected_gain_dbi", "expected gain"),
    ("Device", "device.slant_deg", "co-polar slant"),
    ("Device", "device.input_limit_dbm", "largest input"),
    ("Range", "chamber.range_length_m", "axes to probe"),
    ("Range", "chamber.door_distance_m", "axes to door"),
    ("Range", "chamber.echo_level_db", "stray level"),
    ("Range", "chamber.tie_interval_s", "between ties"),
    ("Range", "chamber.analyzer.power_dbm", "power"),
    ("Range", "chamber.analyzer.if_bandwidth_hz", "bandwidth"),
    ("Range", "chamber.analyzer.averages", "averages"),
)

#: What [[band]] in goal.toml, or a list of frequencies, says instead.
BY_BANDS = ("goal.start_ghz", "goal.stop_ghz", "goal.points")
#: What a band may say, with the words beside it.
BAND_COLUMNS = (
    ("start_ghz", "lowest"),
    ("stop_ghz", "highest"),
    ("points", "frequencies"),
    ("step_mhz", "step"),
    ("if_bandwidth_hz", "bandwidth"),
    ("power_dbm", "power"),
)
#: What [scan] in goal.toml decides: the form of such a campaign does not show it.
BY_SCAN = ("goal.region_deg", "goal.scheme", "goal.order", "goal.step_deg", "goal.swept_step_deg")


def form_of(folder: Path) -> preparing.FormAnswer:
    """Return the form's fields with values, units and limits, all from the models themselves."""
    campaign = Campaign.load(folder)
    own = {"goal": campaign.goal, "device": campaign.device, "chamber": campaign.chamber}
    return {"name": campaign.goal.name, "device": campaign.device.name, "chamber": campaign.chamber.name,
            "simulated": "twin" in (campaign.chamber.analyzer.resource, campaign.chamber.axes.resource),
            "fields": [_field(own, *one) for one in FIELDS if campaign.goal.scan is None or one[1] not in BY_SCAN],
            "bands": _bands(campaign.goal, str(read_toml(folder / "goal.toml").get("frequency_list") or ""))}  # fmt: skip


def _bands(goal: Goal, listed: str) -> preparing.BandForm:
    """Return the bands of a goal as rows of the form."""
    blank = {"band": GoalBand(frequencies_ghz=(goal.start_ghz,))}
    return {
        "rows": [_band_row(one, summed=listed != "") for one in goal.band],
        "columns": [_field(blank, "", f"band.{name}", label) for name, label in BAND_COLUMNS],
        "listed": listed, "help": meaning_of(Goal, "band").replace("`", ""),
    }  # fmt: skip


def _band_row(band: GoalBand, *, summed: bool) -> dict[str, Any]:
    """Return what a band says; of a stretch of a list its ends and how many, for the list itself may be long."""
    row = band.model_dump(mode="json", exclude_none=True)
    if summed:
        ghz = row.pop("frequencies_ghz")
        row |= {"start_ghz": ghz[0], "stop_ghz": ghz[-1], "points": len(ghz)}
    return row


def _field(own: dict[str, Any], group: str, key: str, label: str) -> preparing.Field:
    root, *path = key.split(".")
    value: Any = own[root]
    for part in path[:-1]:
        value = getattr(value, part)
    info = type(value).model_fields[path[-1]]
    schema = type(value).model_json_schema()["properties"][path[-1]]
    options = next(x for x in schema.get("anyOf", [schema]) if x.get("type") != "null")
    setting = getattr(value, path[-1])
    return {
        "group": group, "key": key, "label": label, "value": list(setting) if isinstance(setting, tuple) else setting,
        "unit": schema.get("unit", ""), "least": options.get("minimum", options.get("exclusiveMinimum")),
        "most": options.get("maximum"), "choices": [c for c in options.get("enum", []) if isinstance(c, str)],
        "help": meaning_of(type(value), path[-1]).replace("`", ""),
        "optional": type(None) in get_args(info.annotation), "whole": options.get("type") == "integer",
    }  # fmt: skip


def edited(folder: Path, edits: dict[str, Any]) -> Campaign:
    """Return a campaign with fields of the form changed; nothing is written.

    Raises
    ------
    InputError
        If a key is none of the form's, or a value is refused; every fault is named.
    """
    tables = {name: read_toml(folder / f"{name}.toml") for name in MODELS}
    known = {key for _, key, _ in FIELDS} | {"goal.band"}
    unknown = sorted(set(edits) - known)
    if unknown:
        raise InputError([f"field = {name[:60]!r}: must be one of the form's" for name in unknown[:5]])
    for key, value in with_bands(edits).items():
        root, *path = key.split(".")
        table = tables[root]
        for part in path[:-1]:
            table = table.setdefault(part, {})
        if value is None:
            table.pop(path[-1], None)
        else:
            table[path[-1]] = value
    return Campaign.of(folder, tables)


def with_bands(edits: dict[str, Any]) -> dict[str, Any]:
    """Return edits with the bands as goal.toml writes them: empty entries left out, and the one stretch with them."""
    if not isinstance(bands := edits.get("goal.band"), list):
        return edits
    rows = [{name: value for name, value in one.items() if value is not None} for one in bands]
    return {**edits, **dict.fromkeys(BY_BANDS), "goal.band": rows}


def _definitions(device: Device) -> dict[str, Definition]:
    """Return the usual figures of a device by name: what they are called depends on its polarization."""
    circular, hands = bool(device.hand), device.polarization != "linear"
    return {one.name: one for one in definitions_for(Evaluation(), band=True, circular=circular, hands=hands)}


def consequences(folder: Path, edits: dict[str, Any]) -> preparing.PlanAnswer:
    """Return everything that follows from a form: answers with reasons, forecast, duration's parts, alternatives."""
    campaign, plan = plan_of(edited(folder, edits))
    p = plan.predicted
    declared_s = float(p.get("declared_duration_s", p["duration_s"]))
    sweep_s = float(p["sweep_s"])
    sweeping = sweep_s * len(plan)
    wishes = {} if campaign.goal.want is None else campaign.goal.want.wishes
    known = _definitions(campaign.device)
    forecast: list[preparing.ForecastRow] = [
        {
            "name": name, "label": known[name].label, "unit": known[name].unit.replace("dBi", "dB"),
            "expanded": predicted["expanded"], "text": f"{predicted['expanded']:.2g}", "wanted": wishes.get(name),
            "cause": predicted["cause"],
        }
        for name, predicted in p["forecast"].items()
    ]  # fmt: skip
    return {
        "rows": [(name, text) for name, text in plan_rows(campaign, plan)], "missing": p["missing"],
        "forecast": forecast,
        "verdict": p["reach"]["verdict"], "duration": duration_text(p["duration_s"]), "points": len(plan),
        "hash": plan.hash,
        "split": [("sweeps", sweeping), ("motion and settling", max(0.0, declared_s - sweeping))],
        "alternatives": [
            {"name": one["name"], "why": one["why"], "duration": duration_text(one["duration_s"]),
            "points": one["points"],
             "choices": one["choices"]} for one in p["alternatives"]
        ],
    }  # fmt: skip


def schemes(folder: Path, edits: dict[str, Any]) -> list[preparing.Scheme]:
    """Return every positioner with every polarization scheme, for this device and this goal."""
    from colure.planning.schemes import compare

    campaign, plan = plan_of(edited(folder, edits))
    return [
        {"geometry": one.geometry.value, "scheme": one.scheme, "points": one.points, "pole": one.pole,
        "fault": one.fault,
         "duration": "-" if one.duration_s is None else duration_text(one.duration_s), "polarization": one.polarization,
         "suits": one.suits, "formula": one.geometry.direction_formula}
        for one in compare(campaign, plan)
    ]  # fmt: skip


def motion_of(folder: Path, edits: dict[str, Any]) -> preparing.Motion:
    """Return the way of the axes for the 3D view: targets, what they point at, and when; and what stands on them."""
    from colure.app.web.scan.layout import layout_of
    from colure.planning.path import build_path

    campaign, plan = plan_of(edited(folder, edits))
    time_s = build_path(campaign.goal, campaign.chamber, campaign.device, plan.grid).time_s
    layout = layout_of(campaign, plan, time_s)
    positioner = campaign.chamber.positioner
    tables = campaign.chamber.axis_table
    # On a mount with joints the page shows the coordinates that plans and records are written in.
    axes, shown = plan.in_coordinates
    angles = np.stack([tables[name].map.angle_deg(shown[:, i]) for i, name in enumerate(axes)], axis=-1)
    return {
        "geometry": positioner.geometry.value, "formula": positioner.geometry.direction_formula, "axes": list(axes),
        "angles_deg": np.round(angles, 3).ravel().tolist(), "readouts_deg": np.round(shown, 3).ravel().tolist(),
        "role": plan.role.tolist(), "cell": layout.cell.tolist(), "time_s": np.round(np.cumsum(time_s), 2).tolist(),
        "directions": np.round(layout.directions, 5).ravel().tolist(), "range_m": campaign.chamber.range_length_m,
        "size_mm": list(campaign.device.size_mm), "offset_mm": list(campaign.device.offset_mm),
        "slant_deg": campaign.device.slant_deg, "reach_m": campaign.device.reach_m, "ports": len(plan.ports),
        "limits_deg": _limits_deg(campaign.chamber, axes, angles),
        "mount": mount_of(campaign.chamber, plan),
        "limits_words": [
            f"{name} {one.min_deg:g} to {one.max_deg:g} {getattr(one, 'unit', 'deg')}"
            for name, one in campaign.chamber.driven_table.items() if not one.fixed
        ],
    }  # fmt: skip


def _limits_deg(chamber: Chamber, axes: Sequence[str], angles_deg: FloatArray) -> list[list[float]]:
    """Return how far each axis goes, as angles of the conventions: coordinates of joints as far as the plan goes."""
    if chamber.positioner.joints:
        return [[float(one.min()), float(one.max())] for one in np.round(angles_deg.T, 3)]
    limits = [(chamber.axis_table[name].map, chamber.axis_table[name]) for name in axes]
    return [sorted(float(one.angle_deg(v)) for v in (table.min_deg, table.max_deg)) for one, table in limits]


def save(folder: Path, edits: dict[str, Any], stamp: str) -> list[str]:
    """Write a form into the campaign's files, comments kept; the files as they were stay beside them.

    Raises
    ------
    InputError
        If the form is refused, or a copy of that name is there already.
    """
    edited(folder, edits)
    edits = with_bands(edits)
    written = []
    for name, model in MODELS.items():
        own = {key.removeprefix(f"{name}."): value for key, value in edits.items() if key.startswith(f"{name}.")}
        if own:
            target = folder / f"{name}.toml"
            write_fields(target, model, own, stamp)
            written.append(target.name)
    return written


def save_readouts(folder: Path, entry: Literal["home", "zero"], values: dict[str, float], stamp: str) -> list[str]:
    """Make readouts the home or the zero of axes in chamber.toml; raises `InputError` for an unknown axis or beyond its limits.

    A prismatic joint's readout is in millimetres and becomes its `home_mm` (`zero_mm`). A zero outside the limits is refused
    too: no axis stood there.
    """
    chamber = Campaign.load(folder).chamber
    known = chamber.driven_table
    faults = [f"axis = {name!r}: must be one of {', '.join(known)}" for name in values if name not in known]
    faults += [
        f"{name}: readout {value:g} must be from {known[name].min_deg:g} to {known[name].max_deg:g} "
        f"{known[name].unit} (the limits of {name})"
        for name, value in values.items()
        if entry == "zero" and name in known and not known[name].min_deg <= value <= known[name].max_deg
    ]
    if faults:
        raise InputError(faults)
    write_readouts(folder, chamber, entry, values, stamp)
    return ["chamber.toml"]


def rehearsal_of(folder: Path, edits: dict[str, Any], seed: int) -> preparing.RehearsalAnswer:
    """Carry a form's plan out on the simulated chamber and hold it against the truth."""
    from colure.app.services.rehearsal import rehearse

    campaign, plan = plan_of(edited(folder, edits))
    rehearsal = rehearse(campaign, plan, seed=seed)
    middle = float(plan.frequency_hz[plan.frequency_hz.size // 2])
    theta, phi, error = _error_of(rehearsal, plan.frequency_hz.size // 2)
    return {
        "rows": [
            {"name": f.figure.label, "unit": f.figure.unit, "value": f.figure.text(), "truth": f.truth,
            "inside": f.inside, "cause": f.cause}
            for f in rehearsal.findings if f.figure.frequency_hz == middle and f.counts and np.isfinite(f.truth)
        ],
        "share_inside": rehearsal.share_inside, "seconds": rehearsal.seconds,
        "theta": np.rad2deg(theta).tolist(), "phi": np.rad2deg(phi).tolist(),
        "error_db": np.round(amplitude_db(error, least=1e-6), 2).ravel().tolist(),
    }  # fmt: skip


def _error_of(rehearsal: Rehearsal, index: int) -> tuple[FloatArray, FloatArray, FloatArray]:
    """Return theta and phi (rad) and the error of the field at one frequency (theta, phi), relative to the peak.

    Level and phase are matched: what the reference makes of them is a figure of its own. Of levels alone the error of their root.
    """
    from colure.analysis.pipeline.power_levels import PowerSphere
    from colure.model.pattern import field_of
    from colure.twin.truth import far_field_on

    pattern = rehearsal.pattern
    if isinstance(pattern, PowerSphere):
        theta, phi = pattern.theta, pattern.phi
    else:
        theta, phi = (np.deg2rad(pattern[name].values) for name in ("theta", "phi"))
    true = far_field_on(rehearsal.rehearsed.device, index, theta=theta, phi=phi)
    if isinstance(pattern, PowerSphere):
        measured, true = np.sqrt(pattern.gain[index])[None], np.sqrt(np.sum(np.abs(true) ** 2, axis=0))[None]
    else:
        measured = field_of(pattern)[index]
    known = np.isfinite(measured)
    true = true * np.vdot(true[known], measured[known]) / np.vdot(true[known], true[known])
    error = np.sqrt(np.sum(np.where(known, np.abs(measured - true) ** 2, 0.0), axis=0))
    return theta, phi, error / np.sqrt(np.max(np.sum(np.abs(true) ** 2, axis=0)))
