"""The explore page: what a measured run holds, cut by cut; everything is worked out when it is asked for."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from pathlib import Path
from typing import TYPE_CHECKING

import numpy as np

from colure.app import services
from colure.app.services.processing import own_state
from colure.app.storage.begun import campaign_of, changed_since, measured_run
from colure.app.storage.folders import RunFolder, run_folder
from colure.app.storage.kept_figures import are_of
from colure.app.storage.run_kinds import NO_SPHERE, is_cuts
from colure.app.web.views import answers, components
from colure.errors import InputError
from colure.geometry.conventions import amplitude_db, power_db
from colure.model.admission import read_json
from colure.model.campaign import Campaign

if TYPE_CHECKING:
    from colure.analysis.pipeline.recipe import Processed
    from colure.model.definitions import Definition

MAP_STEP_DEG = 2.0
#: Angles from the peak of every cut.
ANGLES_DEG = np.arange(-180.0, 180.01, 0.5)


@dataclass(frozen=True)
class ViewSettings:
    """How a run is looked at: steps of its recipe that are left out, and a time gate (middle, width in ns) that is tried."""

    off: tuple[str, ...] = ()
    gate_ns: tuple[float, float] | None = None

    @property
    def plain(self) -> bool:
        """Tell whether this is the recipe as it stands."""
        return not self.off and self.gate_ns is None


PLAIN = ViewSettings()


@lru_cache(maxsize=4)
def _opened(folder: Path, run_name: str, state: str | None, trial: ViewSettings, _changed: float) -> Processed:
    from colure.model.recipe import ORDER, Recipe

    campaign, run = measured_run(folder, run_name)
    if trial.plain:
        return services.process_with(campaign, run.state(state), campaign.recipe())
    whole = opened(folder, run_name, state)
    recipe: Recipe | None = whole.recipe
    assert recipe is not None  # the recipe always says what it did
    if trial.gate_ns is not None:
        if not any(one.step == "gate" for one in recipe.steps):
            raise InputError(["recipe: recipe.toml lists no step 'gate' that could be tried"])
        recipe = recipe.gated(centre_ns=trial.gate_ns[0], width_ns=trial.gate_ns[1])
    for name in ORDER:
        if name in trial.off:
            if name not in recipe.switchable:
                raise InputError([f"recipe: {name} cannot be switched off here"])
            recipe = recipe.without(name)
    return services.process_with(campaign, run.state(state), recipe)


def opened(folder: Path, run_name: str, state: str | None = None, trial: ViewSettings = PLAIN) -> Processed:
    """Return a processed run; what was asked for lately is kept."""
    run = run_folder(folder, run_name)
    if not run.path.is_dir():
        raise InputError([f"run {run_name}: there is none of that name; choose one of the list"])
    if not run.record.is_file():
        raise InputError([f"run {run_name}: holds no record yet"])
    if not services.has_phase(run):
        raise InputError([f"run {run_name}: power only; its figures are read by colure evaluate"])
    if is_cuts(run):
        raise InputError([f"run {run_name}: {NO_SPHERE}; its cuts are read as cuts"])
    # Without a name the first state is meant: it is processed once under both.
    own = state or next(iter(services.states_of(run)), None)
    changed = max(one.stat().st_mtime for one in (run.record, *folder.glob("*.toml")) if one.is_file())
    return _opened(folder, run_name, own, trial, changed)


def overview(folder: Path, run_name: str, state: str | None, trial: ViewSettings) -> answers.Overview:
    """Return what a run holds: frequencies, states, recipe, findings, and the figures as they are known."""
    processed = opened(folder, run_name, state, trial)
    campaign, run = measured_run(folder, run_name)
    whole = opened(folder, run_name, state).recipe
    assert whole is not None and processed.recipe is not None  # the recipe always says what it did
    return {
        "of": {"run": run_name, "state": state, "frequency_hz": None}, "states": services.states_of(run),
        "frequency_hz": processed.frequency_hz.tolist(),
        "shown": campaign.goal.shown_index(processed.frequency_hz),
        "basis": "ludwig-3" if campaign.device.polarization == "linear" else "circular",
        "steps": [{"name": one.step, "on": one.on,
        "may_change": one.step in whole.switchable} for one in processed.recipe.steps],
        "region_deg": processed.sphere.region_deg, "slant_deg": float(np.rad2deg(processed.budget.slant)),
        "figures": _figures(processed, campaign, run.state(state), trial),
        "unit": "dBi" if campaign.chamber.reference.absolute else "dB, relative",
        "demo": campaign.chamber.analyzer.resource == "twin", "specification": (folder / "limits.toml").is_file(),
        "report": run.state(state).report_html.is_file(), "edited": changed_since(run, campaign),
    }  # fmt: skip


def _figures(processed: Processed, campaign: Campaign, run: RunFolder, trial: ViewSettings) -> list[answers.FigureRow]:
    """Return the figures with their intervals if they were evaluated, else the values alone."""
    kept = services.addresses(run, "figures.json")[0]
    fresh = trial.plain and kept.is_file() and kept.stat().st_mtime >= run.record.stat().st_mtime
    if fresh and are_of(campaign, run, own_state(run)):
        from colure.model.figure import format_value

        rows = read_json(kept)
        return [
            {"name": r["name"], "label": r["label"], "unit": answers.shown_unit(r["unit"], r.get("reason")),
            "frequency_hz": r["frequency_hz"], "value": r["value"],
             "lower": r["lower"], "upper": r["upper"], "definition": r["definition"],
             "text": r.get("reason") or ("-" if r["value"] is None else format_value(r["value"],
             uncertainty=r["expanded_uncertainty"] or float("nan")))}
            for r in rows
        ]  # fmt: skip
    values, near = processed.budget.figures.read(processed.expansion)
    return [
        _plain(what, float(v), float(f), own.reasons.get(what.name, "undefined"))
        for f, row, own in zip(processed.frequency_hz, values, near, strict=True)
        for what, v in zip(processed.budget.figures.definitions, row, strict=True)
    ]


def _plain(what: Definition, value: float, frequency_hz: float, reason: str) -> answers.FigureRow:
    """Return a figure without its interval: the value to two decimals, or the reason why it does not exist."""
    from colure.model.figure import format_value

    known, shown = np.isfinite(value), what.display(value)
    return {
        "name": what.name, "label": what.label, "unit": answers.shown_unit(what.unit, "" if known else reason),
        "frequency_hz": frequency_hz,
        "value": _number(shown), "lower": None, "upper": None, "definition": what.text,
        "text": format_value(shown, uncertainty=float("nan")) if known else reason,
    }  # fmt: skip


def _of(run_name: str, state: str | None, processed: Processed | None = None, index: int | None = None) -> answers.Of:
    at_hz = None if processed is None or index is None else float(processed.frequency_hz[index])
    return {"run": run_name, "state": state, "frequency_hz": at_hz}


def _number(value: float) -> float | None:
    return value if np.isfinite(value) else None


def beside(folder: Path, run_name: str, state: str | None, other: str) -> str | None:
    """Return the state of another run that is shown beside a state of this one: the one of the same name."""
    from colure.app.services import processing

    return processing.beside(run_folder(folder, run_name).state(state), run_folder(folder, other)).chosen


def evaluated(folder: Path, run_name: str, state: str | None) -> int:
    """Read every figure with its interval and keep them beside the record; returns how many."""
    return len(services.evaluate(opened(folder, run_name, state), run_folder(folder, run_name)))


def cut(
    folder: Path, run_name: str, state: str | None, trial: ViewSettings, frequency: int, plane_deg: float, basis: str
) -> answers.CutAnswer:
    """Return a great-circle cut through the peak: levels of both components and of the total, and what is read from it."""
    from colure.analysis.figures.beams import EDGE
    from colure.analysis.figures.cuts import FarField, cuts, find_beam, tangent_at
    from colure.analysis.figures.lobes import beamwidth_deg, edges_deg, first_null, first_side_lobe
    from colure.geometry.directions import theta_phi
    from colure.geometry.polarization import Basis, from_cartesian, to_basis

    processed = opened(folder, run_name, state, trial)
    index = _index(processed, frequency)
    slant, region = processed.budget.slant, float(np.deg2rad(processed.sphere.region_deg))
    field = FarField(processed.expansion.coefficients[index])
    beam = find_beam(field, slant=slant, region=region)
    tangent = tangent_at(beam, plane_deg)
    angle = ANGLES_DEG
    a = np.deg2rad(angle)[:, None]
    d = np.cos(a) * beam.direction + np.sin(a) * tangent
    t, p = theta_phi(d)
    kind = Basis(basis)
    first, second = to_basis(*from_cartesian(field.at(d), theta=t, phi=p), kind, theta=t, phi=p, slant=slant)
    known, clear = t <= region + 1e-9, components.clear_along(kind, d)
    levels = components.drawn((first, second), known=known, clear=clear)
    (own,) = cuts(field, beam, [tangent], slant=slant, span_deg=182.0, region=region)
    edges = edges_deg(own)
    why = processed.budget.figures.patterns(processed.expansion.at_frequency(index))[0].several
    if region < np.pi - 1e-9 and beam.direction[2] <= np.cos(region - 1e-6):
        why = EDGE.format(np.rad2deg(region))
    return {
        "of": _of(run_name, state, processed, index), "why": why, "angle_deg": angle.tolist(),
        "singular": components.said_of(kind, angle, d, total_db=levels[2], clear=clear),
        "first": levels[0], "second": levels[1], "total": levels[2], "names": list(kind.component_names),
        "peak_dbi": float(power_db(beam.intensity)), "beamwidth_deg": _number(beamwidth_deg(own)),
        "edges_deg": [_number(-edges[1]), _number(edges[0])],
        "side_lobe_db": None if why else _number(float(amplitude_db(first_side_lobe(own), least=1e-9))),
        "null_db": _number(float(amplitude_db(first_null(own), least=1e-9))),
        "peak_theta_deg": float(np.rad2deg(np.arccos(np.clip(beam.direction[2], -1.0, 1.0)))),
        "peak_phi_deg": float(np.rad2deg(np.arctan2(beam.direction[1], beam.direction[0]))),
        "peak": beam.direction.tolist(), "tangent": np.asarray(tangent).tolist(),
    }  # fmt: skip


def difference(
    folder: Path, run_name: str, other: str, frequency: int, plane_deg: float, basis: str, state: str | None = None
) -> answers.Difference:  # fmt: skip
    """Return the difference between two runs' fields along a cut; as they stand, the phase of every frequency matched."""
    from colure.analysis.compare.match import AS_THEY_STAND, match
    from colure.analysis.figures.cuts import FarField, find_beam, tangent_at
    from colure.geometry.directions import theta_phi
    from colure.geometry.polarization import Basis, from_cartesian, to_basis

    one, two = opened(folder, run_name, state), opened(folder, other, beside(folder, run_name, state, other))
    index = _index(one, frequency)
    region = float(np.deg2rad(min(one.sphere.region_deg, two.sphere.region_deg)))
    try:
        matched = match(one.expansion, two.expansion, region=region, freedom=AS_THEY_STAND)
    except ValueError as error:
        raise InputError([str(error)]) from None
    order = max(one.expansion.order, matched.expansion.order)
    rest = matched.expansion.truncated(order).coefficients[index] - one.expansion.truncated(order).coefficients[index]
    slant = one.budget.slant
    beam = find_beam(FarField(one.expansion.coefficients[index]), slant=slant, region=region)
    a = np.deg2rad(ANGLES_DEG)[:, None]
    d = np.cos(a) * beam.direction + np.sin(a) * tangent_at(beam, plane_deg)
    t, p = theta_phi(d)
    pair = to_basis(*from_cartesian(FarField(rest).at(d), theta=t, phi=p), Basis(basis), theta=t, phi=p, slant=slant)
    return {
        "of": _of(run_name, state, one, index), "other": other,
        "total": components.level(np.hypot(np.abs(pair[0]), np.abs(pair[1])), t <= region + 1e-9),
        "rotation_deg": matched.rotation_deg.tolist(), "shift_mm": matched.shift_mm.tolist(),
        "level_db": float(matched.level_db[index]), "difference_db": float(matched.difference_db[index]),
    }  # fmt: skip


def _index(processed: Processed, frequency: int) -> int:
    count = processed.frequency_hz.size
    if not 0 <= frequency < count:
        raise InputError([f"frequency = {frequency}: must be from 0 to {count - 1} (index)"])
    return frequency


def field_map(
    folder: Path, run_name: str, state: str | None, trial: ViewSettings, frequency: int, coordinates: str, basis: str
) -> answers.FieldMap:  # fmt: skip
    """Return levels over a grid of coordinates: rows of the second (or of theta), None where nothing was measured."""
    from colure.analysis.figures.frames import Coordinates, direction_of, view
    from colure.geometry.polarization import Basis

    processed = opened(folder, run_name, state, trial)
    index = _index(processed, frequency)
    kind = Coordinates(coordinates)
    seen = view(
        processed.expansion.at_frequency(index), kind, Basis(basis), step_deg=MAP_STEP_DEG, slant=processed.budget.slant
    )
    pair = (seen.field[0][0], seen.field[0][1])
    direction = direction_of(kind, seen.first, seen.second)
    inside = direction[..., 2] >= np.cos(np.deg2rad(processed.sphere.region_deg)) - 1e-9
    first, at_first = np.unique(np.round(seen.first, 6), return_inverse=True)
    second, at_second = np.unique(np.round(seen.second, 6), return_inverse=True)
    theta_rows = kind is Coordinates.THETA_PHI
    rows, columns = (first, second) if theta_rows else (second, first)
    at = (at_first, at_second) if theta_rows else (at_second, at_first)
    grids: list[list[float | None]] = []
    for level in components.drawn(pair, known=inside, clear=components.clear_at(Basis(basis), direction)):
        grid = np.full((rows.size, columns.size), np.nan)
        grid[at] = [np.nan if v is None else v for v in level]
        grids.append([None if np.isnan(v) else round(float(v), 2) for v in grid.ravel()])
    names = kind.names if theta_rows else kind.names[::-1]
    return {
        "of": _of(run_name, state, processed, index), "rows": rows.tolist(), "columns": columns.tolist(),
        "row_name": names[0], "column_name": names[1], "formula": kind.formula,
        "names": list(Basis(basis).component_names), "first": grids[0], "second": grids[1], "total": grids[2],
    }  # fmt: skip


def impulse(folder: Path, run_name: str) -> answers.Impulse:
    """Return the impulse response of the strongest tie, dB over nanoseconds."""
    from colure.analysis.steps.time_gate import impulse_response, limits
    from colure.model.bands import evenly_spaced
    from colure.model.files import open_dataset
    from colure.model.plan import Role
    from colure.model.record import of_role

    record = open_dataset(run_folder(folder, run_name).record)
    frequency = record["frequency"].values
    if frequency.size < 3:
        raise InputError(
            [f"run {run_name}: {frequency.size} frequencies: an impulse response needs at least 3 (frequencies)"]
        )
    if not evenly_spaced(frequency):
        raise InputError(
            [f"run {run_name}: bands or unequal steps: an impulse response needs equal steps (frequencies)"]
        )
    ties = of_role(record, Role.TIE)["trace"].values
    strong = int(np.argmax(np.abs(ties).mean(axis=(0, 1))))
    time_s, response = impulse_response(ties[0, :, strong], frequency)
    level = np.abs(response) / np.abs(response).max()
    narrowest, widest = (0.0, 0.0) if frequency.size < 5 else limits(frequency)
    return {
        "of": _of(run_name, None),
        "widths_ns": [1e9 * narrowest, 1e9 * widest],
        "strongest_ns": float(1e9 * time_s[int(np.argmax(level))]),
        "time_ns": (1e9 * time_s).tolist(),
        "level_db": np.round(amplitude_db(level, least=1e-6), 2).tolist(),
    }


def effects(folder: Path, run_name: str, state: str | None = None) -> answers.Effects:
    """Return what every step of the recipe does to every figure at mid-band."""
    step_effects = services.effects(*measured_run(folder, run_name, state))
    return {
        "of": _of(run_name, state), "labels": step_effects.labels, "whole": {k: _number(v) for k,
        v in step_effects.whole.items()},
        "without": {step: {k: _number(v) for k, v in row.items()} for step, row in step_effects.without.items()},
    }  # fmt: skip


def findings(folder: Path, run_name: str, state: str | None = None) -> answers.Findings:
    """Return the self-consistency checks."""
    checks = services.findings(*measured_run(folder, run_name, state))
    rows: list[answers.FindingRow] = [
        {"topic": one.topic, "level_db": one.level_db, "text": one.text} for one in checks
    ]
    return {"of": _of(run_name, state), "rows": rows}


def aperture(folder: Path, run_name: str, state: str | None, frequency: int) -> answers.Aperture:
    """Return the picture of a panel's face, amplitude in dB and phase in degrees; None if its elements are not declared.

    Every element is a tile: the field on the face would smear a dead one. An element in the floor has no phase: 0.
    """
    from colure.analysis.figures.face import face_of, tiles

    processed = opened(folder, run_name, state)
    index = _index(processed, frequency)
    panel = face_of(processed.expansion, Campaign.load(folder).device, index=index)
    about = _of(run_name, state, processed, index)
    if panel is None:
        return {"of": about, "face": None}
    shown = tiles(panel)
    size = np.abs(shown) / np.abs(shown).max()
    mean = np.angle(np.sum(panel.excited * np.abs(panel.excited)))
    known = size > 10.0 ** (panel.floor_db / 20.0)
    turn = np.where(known, np.rad2deg(np.angle(shown * np.exp(-1j * mean))), 0.0)
    face: answers.FaceAnswer = {
        "x_mm": (1e3 * panel.x_m).tolist(), "y_mm": (1e3 * panel.y_m).tolist(),
        "level_db": np.round(amplitude_db(size, least=1e-4), 2).ravel().tolist(),
        "phase_deg": np.round(turn, 1).ravel().tolist(),
        "elements": np.round(1e3 * panel.positions_m[:, :2], 3).tolist(),
        "excitation_db": np.round(amplitude_db(np.abs(panel.excitation[index]) / np.abs(panel.excitation[index]).max(),
        least=1e-4), 2).tolist(),
        "suspects": [
            f"row {s.row}, column {s.column} (from 0): {s.verdict} ({s.words})" for s in panel.suspects
        ],
    }  # fmt: skip
    return {"of": about, "face": face}


def mask_levels(
    folder: Path, run_name: str, frequency: int, plane_deg: float, state: str | None = None
) -> answers.Masks:
    """Return the masks of limits.toml that hold for a plane and frequency, in dBi over the angle from the peak."""
    from colure.analysis.verdict.masks import level_of
    from colure.analysis.verdict.verdicts import in_band, planes_of
    from colure.model.specification import load_specification

    processed = opened(folder, run_name, state)
    about = _of(run_name, state, processed, _index(processed, frequency))
    if not (folder / "limits.toml").is_file():
        return {"of": about, "masks": []}
    at_hz = float(processed.frequency_hz[frequency])
    gains = processed.budget.figures.values(processed.expansion)[:, processed.budget.figures.names.index("gain_dbi")]
    peak, angle = float(gains[frequency]), np.arange(-180.0, 180.01, 0.5)
    masks: list[answers.MaskLevel] = []
    for mask in load_specification(folder / "limits.toml").masks:
        if in_band(mask.band_ghz, at_hz) and any(abs(plane - plane_deg % 180.0) < 1e-6 for plane in planes_of(mask)):
            level = level_of(mask, angle, frequency_hz=at_hz, peak_gain_dbi=peak) + (peak if mask.relative else 0.0)
            level = np.where((np.abs(angle) >= mask.from_deg) & (np.abs(angle) <= mask.to_deg), level, np.nan)
            masks.append(
                {"name": mask.name, "component": mask.component, "level": [_number(round(float(v), 3)) for v in level]}
            )
    return {"of": about, "masks": masks}


def spectrum(
    folder: Path, run_name: str, state: str | None, trial: ViewSettings, theta_deg: float, phi_deg: float, basis: str
) -> answers.Spectrum:
    """Return levels of one direction over all frequencies; raises `InputError` outside the measured region."""
    from colure.analysis.figures.cuts import FarField
    from colure.geometry.directions import unit_vector
    from colure.geometry.polarization import Basis, from_cartesian, to_basis

    processed = opened(folder, run_name, state, trial)
    if theta_deg > processed.sphere.region_deg + 1e-9:
        raise InputError([f"theta = {theta_deg:g}: was measured to {processed.sphere.region_deg:g} deg only (deg)"])
    t, p = np.array([np.deg2rad(theta_deg)]), np.array([np.deg2rad(phi_deg)])
    d, kind = unit_vector(theta=t, phi=p), Basis(basis)
    fields = np.stack([FarField(one).at(d)[0] for one in processed.expansion.coefficients])
    pair = to_basis(*from_cartesian(fields, theta=t, phi=p), kind, theta=t, phi=p, slant=processed.budget.slant)
    count = processed.frequency_hz.size
    clear = components.clear_at(kind, np.broadcast_to(d, (count, 3)))
    levels = components.drawn((pair[0], pair[1]), known=np.ones(count, bool), clear=clear)
    return {
        "of": _of(run_name, state), "theta_deg": theta_deg, "phi_deg": phi_deg,
        "frequency_hz": processed.frequency_hz.tolist(),
        "first": levels[0], "second": levels[1], "total": levels[2], "names": list(kind.component_names),
    }  # fmt: skip


def verdicts(folder: Path, run_name: str, state: str | None) -> answers.VerdictsAnswer | None:
    """Return the verdicts that are kept beside a run; None if limits.toml was never held against it."""
    run = run_folder(folder, run_name)
    kept, limits = services.addresses(run.state(state), "verdicts.json")[0], folder / "limits.toml"
    if not kept.is_file():
        return None
    judgement = read_json(kept)
    current = limits.is_file() and max(limits.stat().st_mtime, run.record.stat().st_mtime) <= kept.stat().st_mtime
    # A verdict with the present chamber is not the one of the values that the page shows.
    current = current and judgement.get("edited", []) == changed_since(run, campaign_of(folder, run))
    return {
        "of": _of(run_name, state), "specification": judgement["specification"], "document": judgement["document"],
        "decision": judgement["decision"], "outcome": judgement["outcome"], "current": current,
        "rows": judgement["verdicts"],
    }  # fmt: skip


def judged(folder: Path, run_name: str, state: str | None) -> answers.VerdictsAnswer | None:
    """Hold limits.toml against a run, keep the verdicts beside it and return them."""
    from colure.app.services.verdicts import judge_run

    if not (folder / "limits.toml").is_file():
        why = "is not beside the campaign; without it there is nothing to hold the run against"
        raise InputError([f"limits.toml: {why}"])
    judge_run(*measured_run(folder, run_name, state), folder / "limits.toml")
    return verdicts(folder, run_name, state)


def reported(folder: Path, run_name: str, state: str | None = None) -> list[str]:
    """Evaluate a state of a run and write its report, with a verdict if limits.toml is there; returns the files' names."""
    from colure.app.services.campaigns import plan_of
    from colure.app.services.reporting import report_on

    run = run_folder(folder, run_name).state(state)
    campaign, plan = plan_of(campaign_of(folder, run))
    limits = folder / "limits.toml"
    report_on(campaign, plan, run, opened(folder, run_name, state), limits if limits.is_file() else None)
    return [run.report_html.name, run.report_pdf.name]


def report_file(folder: Path, run_name: str, kind: str, state: str | None = None) -> bytes:
    """Return a state's report as it was written; raises `InputError` if there is none yet, or no such state."""
    run = run_folder(folder, run_name)
    if state is not None and state not in (names := services.states_of(run)):
        raise InputError([f"state = {state!r}: must be one of {', '.join(names) or '(this run has one state only)'}"])
    chosen = run.state(state)
    target = chosen.report_html if kind == "html" else chosen.report_pdf
    if not target.is_file():
        raise InputError([f"run {run_name}{'' if state is None else f', state {state}'}: has no report yet"])
    return target.read_bytes()
