"""The explore page: what a measured run holds, cut by cut; everything is worked out when it is asked for."""

from __future__ import annotations

import json
from dataclasses import dataclass
from functools import lru_cache
from pathlib import Path
from typing import TYPE_CHECKING

import numpy as np

from colure.app import services
from colure.app.storage.folders import RunFolder, run_folder
from colure.app.storage.run_kinds import NO_SPHERE, is_cuts
from colure.app.web.views import answers
from colure.errors import InputError
from colure.geometry.conventions import BoolArray, ComplexArray, FloatArray, amplitude_db, power_db
from colure.model.campaign import Campaign

if TYPE_CHECKING:
    from colure.analysis.pipeline.recipe import Processed

MAP_STEP_DEG = 2.0
#: A thumbnail is this large; enough to tell one pattern from another.
THUMB_ROWS, THUMB_COLUMNS, THUMB_RANGE_DB = 24, 48, 40.0
FLOOR_DB = -120.0
#: Angles from the peak of every cut.
ANGLES_DEG = np.arange(-180.0, 180.01, 0.5)


def runs_of(folder: Path) -> list[answers.Run]:
    """Return the runs of a campaign, newest first, with what each holds."""
    found: list[answers.Run] = []
    for path in sorted((folder / "runs").glob("*")) if (folder / "runs").is_dir() else ():
        try:
            run = run_folder(folder, path.name)
        except InputError:
            continue  # not a run's name: nothing of ours
        if run.journal.is_file() or run.record.is_file():
            found.append({"name": path.name, "changed": path.stat().st_mtime, "record": run.record.is_file(),
                          "figures": run.figures.is_file(), "report": run.report_html.is_file(), "thumb": _thumb(run)})  # fmt: skip
    return sorted(found, key=lambda one: -one["changed"])


def _thumb(run: RunFolder) -> list[int] | None:
    """Return a small picture of the pattern, levels 0 to 255, rows of theta; None before it was processed."""
    from colure.model.files import open_dataset
    from colure.model.pattern import field_of

    if not run.pattern.is_file():
        return None
    pattern = open_dataset(run.pattern)
    field = field_of(pattern.isel(frequency=[pattern.sizes["frequency"] // 2]))[0]
    power = np.nan_to_num(np.sum(np.abs(field) ** 2, axis=0))
    rows = np.linspace(0, power.shape[0] - 1, THUMB_ROWS).astype(int)
    columns = np.linspace(0, power.shape[1] - 1, THUMB_COLUMNS).astype(int)
    level = power_db(power[np.ix_(rows, columns)] / power.max(), least=1e-12)
    shade = np.clip(255.0 * (1.0 + level / THUMB_RANGE_DB), 0, 255).astype(int)
    return [int(v) for v in shade.ravel()]


def _changed_at(folder: Path, run: RunFolder) -> float:
    files = [run.record, *folder.glob("*.toml")]
    return max(file.stat().st_mtime for file in files if file.is_file())


@dataclass(frozen=True)
class Trial:
    """How a run is looked at: steps of its recipe that are left out, and a time gate (middle, width in ns) that is tried."""

    off: tuple[str, ...] = ()
    gate_ns: tuple[float, float] | None = None

    @property
    def plain(self) -> bool:
        """Tell whether this is the recipe as it stands."""
        return not self.off and self.gate_ns is None


PLAIN = Trial()


@lru_cache(maxsize=4)
def _opened(folder: Path, run_name: str, state: str | None, trial: Trial, _changed: float) -> Processed:
    from colure.model.recipe import ORDER, Recipe

    campaign, run = Campaign.load(folder), run_folder(folder, run_name)
    if trial.plain:
        return services.process(campaign, run, state=state)
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
    return services.process_with(campaign, run, recipe, state=state)


def opened(folder: Path, run_name: str, state: str | None = None, trial: Trial = PLAIN) -> Processed:
    """Return a processed run; what was asked for lately is kept."""
    run = run_folder(folder, run_name)
    if not run.record.is_file():
        raise InputError([f"run {run_name}: holds no record yet"])
    if not services.has_phase(run):
        raise InputError([f"run {run_name}: power only; its figures are read by colure evaluate"])
    if is_cuts(run):
        raise InputError([f"run {run_name}: {NO_SPHERE}; the picture is {run.path / 'cuts.png'}"])
    return _opened(folder, run_name, state, trial, _changed_at(folder, run))


def overview(folder: Path, run_name: str, state: str | None, trial: Trial) -> answers.Overview:
    """Return what a run holds: frequencies, states, recipe, findings, and the figures as they are known."""
    done = opened(folder, run_name, state, trial)
    run, campaign = run_folder(folder, run_name), Campaign.load(folder)
    whole = opened(folder, run_name, state).recipe
    assert whole is not None and done.recipe is not None  # the recipe always says what it did
    return {
        "run": run_name, "state": state, "states": services.states_of(run), "frequency_hz": done.frequency_hz.tolist(),
        "steps": [{"name": one.step, "on": one.on, "may_change": one.step in whole.switchable} for one in done.recipe.steps],
        "region_deg": done.sphere.region_deg, "slant_deg": float(np.rad2deg(done.budget.slant)), "figures": _figures(done, run, trial, state),
        "demo": campaign.chamber.analyzer.resource == "twin", "specification": (folder / "limits.toml").is_file(),
        "report": services.addresses(run, run.report_html, state)[-1].is_file(),
    }  # fmt: skip


def _figures(done: Processed, run: RunFolder, trial: Trial, state: str | None) -> list[answers.FigureRow]:
    """Return the figures with their intervals if they were evaluated, else the values alone."""
    kept = services.addresses(run, run.figures, state)[0]
    if trial.plain and kept.is_file() and kept.stat().st_mtime >= run.record.stat().st_mtime:
        from colure.model.figure import format_value

        rows = json.loads(kept.read_text(encoding="utf-8"))
        return [
            {"name": r["name"], "label": r["label"], "unit": "" if r.get("reason") else r["unit"], "frequency_hz": r["frequency_hz"], "value": r["value"],
             "lower": r["lower"], "upper": r["upper"], "definition": r["definition"],
             "text": r.get("reason") or ("-" if r["value"] is None else format_value(r["value"], r["expanded_uncertainty"] or float("nan")))}
            for r in rows
        ]  # fmt: skip
    values = done.budget.figures.values(done.expansion)
    return [
        {"name": what.name, "label": what.label, "unit": what.unit, "frequency_hz": float(f), "value": _number(what.display(float(v))),
         "lower": None, "upper": None, "definition": what.text, "text": f"{what.display(float(v)):.3g}" if np.isfinite(v) else "undefined"}
        for f, row in zip(done.frequency_hz, values, strict=True) for what, v in zip(done.budget.figures.definitions, row, strict=True)
    ]  # fmt: skip


def _number(value: float) -> float | None:
    return value if np.isfinite(value) else None


def beside(folder: Path, run_name: str, state: str | None, other: str) -> str | None:
    """Return the state of another run that is shown beside a state of this one: the one of the same name."""
    from colure.app.services.processing import state_beside

    return state_beside(run_folder(folder, run_name), state, run_folder(folder, other))


def evaluated(folder: Path, run_name: str, state: str | None) -> int:
    """Read every figure with its interval and keep them beside the record; returns how many."""
    return len(services.evaluate(opened(folder, run_name, state), run_folder(folder, run_name)))


def cut(
    folder: Path, run_name: str, state: str | None, trial: Trial, frequency: int, plane_deg: float, basis: str
) -> answers.CutAnswer:
    """Return a great-circle cut through the peak: levels of both components and of the total, and what is read from it."""
    from colure.analysis.figures.cuts import FarField, cuts, find_beam, tangent_at
    from colure.analysis.figures.lobes import beamwidth_deg, edges_deg, first_null, first_side_lobe
    from colure.geometry.directions import theta_phi
    from colure.geometry.polarization import Basis, from_cartesian, to_basis

    done = opened(folder, run_name, state, trial)
    index = _index(done, frequency)
    slant, region = done.budget.slant, float(np.deg2rad(done.sphere.region_deg))
    field = FarField(done.expansion.coefficients[index])
    beam = find_beam(field, slant=slant, region=region)
    tangent = tangent_at(beam, plane_deg)
    angle = ANGLES_DEG
    a = np.deg2rad(angle)[:, None]
    d = np.cos(a) * beam.direction + np.sin(a) * tangent
    t, p = theta_phi(d)
    kind = Basis(basis)
    first, second = to_basis(*from_cartesian(field.at(d), theta=t, phi=p), kind, theta=t, phi=p, slant=slant)
    known = t <= region + 1e-9
    (own,) = cuts(field, beam, [tangent], slant=slant, span_deg=182.0, region=region)
    edges = edges_deg(own)
    return {
        "angle_deg": angle.tolist(), "first": _level(first, known), "second": _level(second, known),
        "total": _level(np.hypot(np.abs(first), np.abs(second)), known), "names": list(kind.component_names),
        "peak_dbi": float(10.0 * np.log10(beam.intensity)), "beamwidth_deg": _number(beamwidth_deg(own)),
        "edges_deg": [_number(-edges[1]), _number(edges[0])], "side_lobe_db": _number(20.0 * np.log10(max(first_side_lobe(own), 1e-9))),
        "null_db": _number(20.0 * np.log10(max(first_null(own), 1e-9))),
        "peak_theta_deg": float(np.rad2deg(np.arccos(np.clip(beam.direction[2], -1.0, 1.0)))),
        "peak_phi_deg": float(np.rad2deg(np.arctan2(beam.direction[1], beam.direction[0]))),
    }  # fmt: skip


def difference(
    folder: Path, run_name: str, other: str, frequency: int, plane_deg: float, basis: str, state: str | None = None
) -> answers.Difference:  # fmt: skip
    """Return what is left between two runs' fields along a cut; as they stand, the phase of every frequency matched."""
    from colure.analysis.compare.match import AS_THEY_STAND, match
    from colure.analysis.figures.cuts import FarField, find_beam, tangent_at
    from colure.geometry.directions import theta_phi
    from colure.geometry.polarization import Basis, from_cartesian, to_basis

    one, two = opened(folder, run_name, state), opened(folder, other, beside(folder, run_name, state, other))
    index = _index(one, frequency)
    region = float(np.deg2rad(min(one.sphere.region_deg, two.sphere.region_deg)))
    try:
        found = match(one.expansion, two.expansion, region=region, freedom=AS_THEY_STAND)
    except ValueError as error:
        raise InputError([str(error)]) from None
    order = max(one.expansion.order, found.expansion.order)
    rest = found.expansion.truncated(order).coefficients[index] - one.expansion.truncated(order).coefficients[index]
    slant = one.budget.slant
    beam = find_beam(FarField(one.expansion.coefficients[index]), slant=slant, region=region)
    a = np.deg2rad(ANGLES_DEG)[:, None]
    d = np.cos(a) * beam.direction + np.sin(a) * tangent_at(beam, plane_deg)
    t, p = theta_phi(d)
    pair = to_basis(*from_cartesian(FarField(rest).at(d), theta=t, phi=p), Basis(basis), theta=t, phi=p, slant=slant)
    return {
        "total": _level(np.hypot(np.abs(pair[0]), np.abs(pair[1])), t <= region + 1e-9),
        "rotation_deg": found.rotation_deg.tolist(), "shift_mm": found.shift_mm.tolist(),
        "level_db": float(found.level_db[index]), "difference_db": float(found.difference_db[index]),
    }  # fmt: skip


def _index(done: Processed, frequency: int) -> int:
    count = done.frequency_hz.size
    if not 0 <= frequency < count:
        raise InputError([f"frequency = {frequency}: must be from 0 to {count - 1} (index)"])
    return frequency


def _level(values: ComplexArray | FloatArray, known: BoolArray) -> list[float | None]:
    """Return levels in dBi rounded for the page; None where nothing was measured."""
    level = np.round(amplitude_db(values, least=10.0 ** (FLOOR_DB / 20.0)), 3)
    return [float(v) if k else None for v, k in zip(level, known, strict=True)]


def field_map(
    folder: Path, run_name: str, state: str | None, trial: Trial, frequency: int, coordinates: str, basis: str, component: str
) -> answers.FieldMap:  # fmt: skip
    """Return levels over a grid of coordinates: rows of the second (or of theta), None where nothing was measured."""
    from colure.analysis.figures.frames import Coordinates, direction_of, view
    from colure.geometry.polarization import Basis

    done = opened(folder, run_name, state, trial)
    index = _index(done, frequency)
    kind = Coordinates(coordinates)
    seen = view(done.expansion.at_frequency(index), kind, Basis(basis), step_deg=MAP_STEP_DEG, slant=done.budget.slant)
    pair = seen.field[0]
    value = (
        np.hypot(np.abs(pair[0]), np.abs(pair[1])) if component == "total" else pair[0 if component == "first" else 1]
    )
    inside = direction_of(kind, seen.first, seen.second)[..., 2] >= np.cos(np.deg2rad(done.sphere.region_deg)) - 1e-9
    first, at_first = np.unique(np.round(seen.first, 6), return_inverse=True)
    second, at_second = np.unique(np.round(seen.second, 6), return_inverse=True)
    theta_rows = kind is Coordinates.THETA_PHI
    rows, columns = (first, second) if theta_rows else (second, first)
    grid = np.full((rows.size, columns.size), np.nan)
    level = amplitude_db(value, least=10.0 ** (FLOOR_DB / 20.0))
    at = (at_first, at_second) if theta_rows else (at_second, at_first)
    grid[at] = np.where(inside, level, np.nan)
    names = kind.names if theta_rows else kind.names[::-1]
    return {
        "rows": rows.tolist(), "columns": columns.tolist(), "row_name": names[0], "column_name": names[1], "formula": kind.formula,
        "names": list(Basis(basis).component_names),
        "level": [None if np.isnan(v) else round(float(v), 2) for v in grid.ravel()],
    }  # fmt: skip


def impulse(folder: Path, run_name: str) -> answers.Impulse:
    """Return the impulse response of the strongest tie, dB over nanoseconds."""
    from colure.analysis.steps.gate import impulse_response, limits
    from colure.model.files import open_dataset
    from colure.model.plan import Role
    from colure.model.record import of_role

    record = open_dataset(run_folder(folder, run_name).record)
    frequency = record["frequency"].values
    if frequency.size < 3:
        raise InputError(
            [f"run {run_name}: {frequency.size} frequencies: an impulse response needs at least 3 (frequencies)"]
        )
    ties = of_role(record, Role.TIE)["trace"].values
    strong = int(np.argmax(np.abs(ties).mean(axis=(0, 1))))
    time_s, response = impulse_response(ties[0, :, strong], frequency)
    level = np.abs(response) / np.abs(response).max()
    narrowest, widest = (0.0, 0.0) if frequency.size < 5 else limits(frequency)
    return {
        "widths_ns": [1e9 * narrowest, 1e9 * widest],
        "strongest_ns": float(1e9 * time_s[int(np.argmax(level))]),
        "time_ns": (1e9 * time_s).tolist(),
        "level_db": np.round(amplitude_db(level, least=1e-6), 2).tolist(),
    }


def effects(folder: Path, run_name: str, state: str | None = None) -> answers.Effects:
    """Return what every step of the recipe does to every figure at mid-band."""
    found = services.effects(Campaign.load(folder), run_folder(folder, run_name), state=state)
    return {
        "labels": found.labels, "whole": {k: _number(v) for k, v in found.whole.items()},
        "without": {step: {k: _number(v) for k, v in row.items()} for step, row in found.without.items()},
    }  # fmt: skip


def findings(folder: Path, run_name: str, state: str | None = None) -> list[answers.FindingRow]:
    """Return what the data say of themselves."""
    found = services.findings(Campaign.load(folder), run_folder(folder, run_name), state=state)
    return [{"topic": one.topic, "level_db": one.level_db, "text": one.text} for one in found]


def aperture(folder: Path, run_name: str, state: str | None, frequency: int) -> answers.Face | None:
    """Return the picture of a panel's face, amplitude in dB and phase in degrees; None if its elements are not declared.

    Every element is a tile: the field on the face would smear a dead one. An element in the floor has no phase: 0.
    """
    from colure.analysis.figures.face import face_of, tiles

    done = opened(folder, run_name, state)
    index = _index(done, frequency)
    found = face_of(done.expansion, Campaign.load(folder).device, index=index)
    if found is None:
        return None
    shown = tiles(found)
    size = np.abs(shown) / np.abs(shown).max()
    mean = np.angle(np.sum(found.excited * np.abs(found.excited)))
    known = size > 10.0 ** (found.floor_db / 20.0)
    turn = np.where(known, np.rad2deg(np.angle(shown * np.exp(-1j * mean))), 0.0)
    return {
        "x_mm": (1e3 * found.x_m).tolist(), "y_mm": (1e3 * found.y_m).tolist(),
        "level_db": np.round(amplitude_db(size, least=1e-4), 2).ravel().tolist(),
        "phase_deg": np.round(turn, 1).ravel().tolist(),
        "elements": np.round(1e3 * found.positions_m[:, :2], 3).tolist(),
        "excitation_db": np.round(amplitude_db(np.abs(found.excitation[index]) / np.abs(found.excitation[index]).max(), least=1e-4), 2).tolist(),
        "suspects": [
            f"row {s.row}, column {s.column} (from 0): {s.verdict} ({s.relative_level_db:+.1f} dB, {s.phase_error_deg:+.0f} deg)"
            for s in found.suspects
        ],
    }  # fmt: skip


def mask_levels(
    folder: Path, run_name: str, frequency: int, plane_deg: float, state: str | None = None
) -> list[answers.MaskLevel]:
    """Return the masks of limits.toml that hold for a plane and frequency, in dBi over the angle from the peak."""
    from colure.analysis.verdict.masks import level_of
    from colure.analysis.verdict.verdicts import in_band, planes_of
    from colure.model.specification import load_specification

    if not (folder / "limits.toml").is_file():
        return []
    done = opened(folder, run_name, state)
    at_hz = float(done.frequency_hz[_index(done, frequency)])
    gains = done.budget.figures.values(done.expansion)[:, done.budget.figures.names.index("gain_dbi")]
    peak, angle = float(gains[frequency]), np.arange(-180.0, 180.01, 0.5)
    found: list[answers.MaskLevel] = []
    for mask in load_specification(folder / "limits.toml").masks:
        if in_band(mask.band_ghz, at_hz) and any(abs(plane - plane_deg % 180.0) < 1e-6 for plane in planes_of(mask)):
            level = level_of(mask, angle, frequency_hz=at_hz, peak_gain_dbi=peak) + (peak if mask.relative else 0.0)
            level = np.where((np.abs(angle) >= mask.from_deg) & (np.abs(angle) <= mask.to_deg), level, np.nan)
            found.append(
                {"name": mask.name, "component": mask.component, "level": [_number(round(float(v), 3)) for v in level]}
            )
    return found


def reported(folder: Path, run_name: str, state: str | None = None) -> list[str]:
    """Evaluate a state of a run and write its report, with a verdict if limits.toml is there; returns the files' names."""
    from colure.app.services.reporting import report_on

    run = run_folder(folder, run_name)
    campaign, plan = services.make_plan(folder)
    limits = folder / "limits.toml"
    report_on(campaign, plan, run, opened(folder, run_name, state), limits if limits.is_file() else None)
    return [services.addresses(run, one, state)[-1].name for one in (run.report_html, run.report_pdf)]


def report_file(folder: Path, run_name: str, kind: str, state: str | None = None) -> bytes:
    """Return a state's report as it was written; raises `InputError` if there is none yet, or no such state."""
    run = run_folder(folder, run_name)
    if state is not None and state not in (names := services.states_of(run)):
        raise InputError([f"state = {state!r}: must be one of {', '.join(names) or '(this run has one state only)'}"])
    target = services.addresses(run, run.report_html if kind == "html" else run.report_pdf, state)[-1]
    if not target.is_file():
        raise InputError([f"run {run_name}{'' if state is None else f', state {state}'}: has no report yet"])
    return target.read_bytes()


def flip_words(folder: Path, run_name: str) -> answers.FlipWords:
    """Return what a flip test found: numbers, and what to turn or shift."""
    found = services.flip_result(Campaign.load(folder), run_folder(folder, run_name))
    return {
        "numbers": {
            "theta_zero_deg": found.theta_zero_deg, "theta_zero_expanded_deg": found.theta_zero_expanded_deg,
            "axes_offset_mm": found.axes_offset_mm, "axes_offset_expanded_mm": found.axes_offset_expanded_mm,
        },
        "sentences": found.sentences(),
    }  # fmt: skip


def beam_words(folder: Path, run_name: str) -> answers.BeamWords:
    """Return what a beam search found: numbers, and where the readouts point the beam at the probe."""
    from colure.app.services.beam_search import result

    found = result(folder, run_name)
    return {"numbers": found.found.__dict__, "readouts_deg": found.readouts_deg, "sentences": found.sentences()}


def bench(folder: Path) -> list[answers.InstrumentLine]:
    """Talk to every instrument, move nothing, and return what was found."""
    campaign, plan = services.make_plan(folder)
    return [
        {"what": one.what, "good": one.good, "found": one.found} for one in services.check_instruments(campaign, plan)
    ]


def cautions(folder: Path) -> list[str]:
    """Return the cautions that a person reads before anything moves."""
    from colure.app.services.cautions import cautions_of

    campaign, plan = services.make_plan(folder)
    return cautions_of(campaign, plan)
