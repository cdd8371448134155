"""What both shells do: the composition of rooms into commands."""

from __future__ import annotations

import json
import shutil
from dataclasses import dataclass, replace
from pathlib import Path
from typing import TYPE_CHECKING

from colure.app.acquisition import (
    CheckLine,
    acquire,
    check_instruments,
    instruments,
    rebuild,
    require_own_record,
    twin_process,
    verify,
)
from colure.app.folders import RunFolder, require_free, run_folder
from colure.app.reference import probe_of, reference_of
from colure.app.starting import copy_profile, new_campaign, start_campaign
from colure.model.campaign import Campaign
from colure.model.loading import InputError
from colure.model.plan import Plan

if TYPE_CHECKING:
    from collections.abc import Callable

    import xarray as xr

    from colure.analysis.flip_test import Flip
    from colure.analysis.profiles import LevelCut
    from colure.analysis.recipe import Processed
    from colure.analysis.self_check import Finding
    from colure.app.judging import Judged
    from colure.geometry.conventions import FloatArray
    from colure.model.figure import Figure
    from colure.model.recipe import Recipe
    from colure.planning.learning import Learned
    from colure.report.content import Verdicts

#: One service for both shells, in two files: what happens in the chamber, and what happens at the desk.
__all__ = [
    "CheckLine",
    "RunFolder",
    "acquire",
    "check_instruments",
    "copy_profile",
    "instruments",
    "new_campaign",
    "rebuild",
    "run_folder",
    "start_campaign",
    "twin_process",
    "verify",
]

#: The report draws the coverage of so many states beside each other.
MOST_STATES_DRAWN = 12


def make_plan(folder: Path, run: RunFolder | None = None) -> tuple[Campaign, Plan]:
    """Read a campaign and plan it; what the goal leaves open is chosen in the campaign returned.

    run
        The run that is to be measured: ties look where they did if it has begun, else along the strongest direction known.
    """
    from colure.app.tie_direction import with_tie_direction
    from colure.planning.preflight import make_plan as plan_campaign

    campaign, ties = with_tie_direction(Campaign.load(folder), run)
    resolved, plan = plan_campaign(campaign)
    plan.predicted["ties"] = ties.as_dict()
    return resolved, plan


def learn_axes(folder: Path, run_name: str) -> tuple[Learned, Path]:
    """Fit the real axes to a run's record and write learned.toml beside chamber.toml."""
    from colure.model.files import open_dataset
    from colure.planning.learning import learn, save

    learned = learn(open_dataset(run_folder(folder, run_name).record), Campaign.load(folder).chamber, run_name)
    return learned, save(learned, folder)


def process(campaign: Campaign, run: RunFolder, *, state: str | None = None) -> Processed:
    """Run the default recipe on a run's record and save the pattern beside it.

    Parameters
    ----------
    state
        Which state of a device that has several; the first by default.

    Raises
    ------
    InputError
        If the record lacks what the recipe needs, or there is no such state.
    """
    from colure.model.files import save_dataset

    done = process_with(campaign, run, campaign.recipe(), state=state)
    save_dataset(done.pattern, run.pattern if state is None else run.pattern_of(state))
    return done


def process_with(campaign: Campaign, run: RunFolder, recipe: Recipe | None, *, state: str | None = None) -> Processed:
    """Run a recipe of one's own on a run's record; nothing is saved. Raises `InputError` as `process` does."""
    return processed(campaign, _opened(run, state), recipe)


def _opened(run: RunFolder, state: str | None) -> xr.Dataset:
    """Read a run's record, of one state if the device has several."""
    from colure.model.files import file_hash, open_dataset, require_unchanged, with_step
    from colure.model.lazy import open_lazily, read_rows, rows_of_state

    names = states_of(run)
    chosen = state or (names[0] if names else None)
    if chosen is not None and chosen not in names:
        raise InputError([f"--state = {chosen!r}: must be one of {', '.join(names) or 'none, the device has one'}"])
    if chosen is None:
        record: xr.Dataset = open_dataset(run.record)
    else:
        # The other states stay on the disk.
        require_unchanged(run.record)
        with open_lazily(str(run.record)) as lazy:
            record = read_rows(lazy, rows_of_state(lazy, names.index(chosen)), slice(None))
    require_own_record(run, str(record.attrs.get("journal_root_hash", "")))
    record = with_step(record, "open", file=run.record.name, sha256=file_hash(run.record))
    return record if chosen is None else with_step(record.assign_attrs(state=chosen), "state", name=chosen)


def processed(campaign: Campaign, record: xr.Dataset, recipe: Recipe | None) -> Processed:
    from colure.analysis.recipe import process as run_recipe

    frequency = record["frequency"].values
    probe, reference = probe_of(campaign, frequency), reference_of(campaign, frequency)
    try:
        return run_recipe(
            record, campaign.chamber, campaign.device, probe=probe, recipe=recipe, reference=reference,
            evaluation=campaign.evaluation(), state=str(record.attrs.get("state", "beam")),
        )  # fmt: skip
    except ValueError as error:
        raise InputError([str(error)]) from None


@dataclass(frozen=True)
class Effects:
    """Figures at mid-band with the whole recipe, and by step what they are without it."""

    labels: dict[str, str]
    whole: dict[str, float]
    without: dict[str, dict[str, float]]


def effects(campaign: Campaign, run: RunFolder, *, state: str | None = None) -> Effects:
    """Process a run with each step of its recipe left out in turn.

    Raises
    ------
    InputError
        If the record lacks what the recipe needs.
    """
    record = _opened(run, state)
    done = processed(campaign, record, campaign.recipe())
    assert done.recipe is not None  # the recipe always says what it did

    def figures(processed: Processed) -> dict[str, float]:
        chosen = processed.budget.figures
        values = chosen.values(processed.expansion)[processed.frequency_hz.size // 2]
        return {what.name: what.display(float(v)) for what, v in zip(chosen.definitions, values, strict=True)}

    left_out = {
        str(name): figures(processed(campaign, record, done.recipe.without(name))) for name in done.recipe.switchable
    }
    return Effects(
        {what.name: f"{what.label} / {what.unit}" for what in done.budget.figures.definitions}, figures(done), left_out
    )


def findings(campaign: Campaign, run: RunFolder, *, state: str | None = None) -> list[Finding]:
    """Return what a run's data say of themselves, largest effect first.

    Raises
    ------
    InputError
        If the record lacks what the recipe needs.
    """
    from colure.analysis.self_check import room_of, self_check

    done = processed(campaign, _opened(run, state), campaign.recipe())
    room = room_of(done, campaign.chamber)
    return self_check(done, campaign.chamber, campaign.device.slant_deg, room=room)


def write_view(
    campaign: Campaign,
    run: RunFolder,
    target: Path,
    *,
    coordinates: str,
    basis: str,
    boresight: str,
    origin: str,
    step_deg: float,
    state: str | None = None,
) -> list[str]:
    """Write a run's pattern in a chosen frame, coordinates and basis, and return the formulas in words.

    Raises
    ------
    InputError
        If boresight or origin cannot be read, the target exists, or the record lacks what the recipe needs.
    """
    import csv

    import numpy as np

    from colure.analysis import frames
    from colure.geometry.polarization import Basis

    require_free(target)
    done = processed(campaign, _opened(run, state), campaign.recipe())
    middle, slant = done.frequency_hz.size // 2, done.budget.slant
    region = float(np.deg2rad(done.sphere.region_deg))
    direction = frames.boresight_of(boresight, done.expansion.coefficients[middle], slant=slant, region=region)
    origin_m = _origin(origin, done, campaign)
    turned = frames.turned_to(frames.recentred(done.expansion, origin_m), direction)
    seen = frames.view(turned, frames.Coordinates(coordinates), Basis(basis), step_deg=step_deg, slant=slant)
    # Back in the device frame: only what was measured is written.
    own = frames.direction_of(seen.coordinates, seen.first, seen.second) @ frames.rotation_to(direction)
    inside = np.flatnonzero(own[:, 2] >= np.cos(region) - 1e-9)
    one, two = (name.split(" ")[0].replace("-", "_") for name in seen.basis.component_names)
    with target.open("w", newline="", encoding="utf-8") as out:
        writer = csv.writer(out)
        writer.writerow(
            ["frequency_hz", *seen.coordinates.names, f"{one}_re", f"{one}_im", f"{two}_re", f"{two}_im", "total_dbi"]
        )
        for frequency, field in zip(done.frequency_hz, seen.field, strict=True):
            total = 10.0 * np.log10(np.maximum(np.sum(np.abs(field) ** 2, axis=0), 1e-20))
            for i in inside:
                values = (
                    seen.first[i],
                    seen.second[i],
                    field[0, i].real,
                    field[0, i].imag,
                    field[1, i].real,
                    field[1, i].imag,
                )
                writer.writerow([f"{frequency:.3f}", *(f"{v:.9g}" for v in values), f"{total[i]:.4f}"])
    az, el = (float(np.rad2deg(v)) for v in (np.arctan2(direction[0], direction[2]), np.arcsin(direction[1])))
    return [
        f"+z of the frame looks at azimuth {az:.3f}, elevation {el:.3f} deg of the device (smallest turn)",
        "phases refer to x {:.3f}, y {:.3f}, z {:.3f} mm of the device frame: e(d) exp(-j k d . origin)".format(
            *(1e3 * origin_m)
        ),
        f"coordinates {coordinates}: {seen.coordinates.formula}",
        f"components {', '.join(seen.basis.component_names)}: {frames.BASIS_FORMULA[seen.basis]}",
    ]


def _origin(text: str, done: Processed, campaign: Campaign) -> FloatArray:
    """Return the phase reference (3,) in metres that `crossing`, `phase-centre` or X,Y,Z (mm) names."""
    import numpy as np

    from colure.analysis.self_check import centre_of

    if text == "crossing":
        return np.zeros(3)
    if text == "phase-centre":
        return np.asarray(centre_of(done, campaign.device.slant_deg).position_m)
    try:
        x, y, z = (1e-3 * float(part) for part in text.split(","))
    except ValueError:
        raise InputError([f"--origin-mm = {text!r}: must be crossing, phase-centre, or X,Y,Z (mm)"]) from None
    return np.array([x, y, z])


def flip_plan(folder: Path) -> tuple[Campaign, Plan]:
    """Read a campaign and plan its flip test."""
    from colure.planning.flip import flip_plan as plan_flip

    campaign = Campaign.load(folder)
    return campaign, plan_flip(campaign)


def flip_result(campaign: Campaign, run: RunFolder) -> Flip:
    """Evaluate the record of a flip test; raises `InputError` if it is not one."""
    from colure.analysis.flip_test import evaluate_flip

    try:
        return evaluate_flip(_opened(run, None), campaign.chamber)
    except ValueError as error:
        raise InputError([str(error)]) from None


def states_of(run: RunFolder) -> list[str]:
    """Return the names of the device states that a run's record holds; empty if the device has none."""
    from colure.model.files import attribute_of
    from colure.model.record import names_of_states

    return names_of_states(attribute_of(run.record, "states", ""))


def state_in(processed: Processed, run: RunFolder) -> str | None:
    """Return the device state that a processed run is of; None if the device has one."""
    name = processed.budget.figures.state
    return name if name in states_of(run) else None


def addresses(run: RunFolder, file: Path, state: str | None) -> list[Path]:
    """Return where a result of a state is written: under the state's name, and the first state's also under the plain one.

    A plain name never holds another state than the first.
    """
    if state is None:
        return [file]
    plain = [file] if states_of(run)[:1] == [state] else []
    return [*plain, run.of_state(file, state)]


def evaluate(processed: Processed, run: RunFolder, *, state: str | None = None) -> list[Figure]:
    """Read the figures with their budgets and save them as JSON; of one device state under its own name."""
    from colure.analysis.sanity import marked, sanity
    from colure.analysis.uncertainty import budget_of

    own = state or state_in(processed, run)
    found = budget_of(processed.budget)
    found = replace(found, figures=[*found.figures, *_bandwidths(processed, found.figures)])
    found = replace(found, figures=marked(found.figures, sanity(processed, found.figures)))
    content = json.dumps([figure.as_dict() for figure in found.figures], indent=1)
    for figures in addresses(run, run.figures, own):
        figures.write_text(content, encoding="utf-8")
    kept = {
        "names": found.names,
        "frequency_hz": [float(f) for f in found.frequency_hz],
        "correlation": found.correlation.round(4).tolist(),
    }
    for correlations in addresses(run, run.correlations, own):
        correlations.write_text(json.dumps(kept), encoding="utf-8")
    return found.figures


def read_figures(campaign: Campaign, run: RunFolder, *, state: str | None = None) -> list[Figure]:
    """Process a run and read its figures; a power-only run gives the power figures. Raises `InputError` as both do."""
    if not has_phase(run):
        return evaluate_power(campaign, run, state=state)
    return known_figures(campaign, run, lambda: process(campaign, run, state=state), state=state)


def known_figures(
    campaign: Campaign, run: RunFolder, processed_: Callable[[], Processed], *, state: str | None = None
) -> list[Figure]:
    """Return the figures of a run as its campaign's recipe gives them: kept from last time, or read from `processed_()` and kept."""
    from colure.app.kept_figures import keep_figures, kept_figures, key_of

    key = key_of(campaign, run, state)
    written, pattern = [run.figures, run.correlations], run.pattern
    if state is not None:
        written, pattern = [run.of_state(one, state) for one in written], run.pattern_of(state)
    found = kept_figures(run, key, written, state) if pattern.is_file() else None
    if found is None:
        found = evaluate(processed_(), run, state=state)
        keep_figures(run, key, written, state, found)
    return found


def _bandwidths(processed: Processed, figures: list[Figure]) -> list[Figure]:
    """Return the bandwidths that evaluation.toml asks for."""
    from colure.analysis.figures.bandwidths import bandwidth_of

    try:
        return [bandwidth_of(span, figures) for span in processed.budget.figures.settings.bandwidths]
    except ValueError as error:
        raise InputError([str(error)]) from None


def has_phase(run: RunFolder) -> bool:
    """Tell whether a run's receiver measured phase."""
    from colure.model.files import attribute_of

    return attribute_of(run.record, "receiver", "vector") == "vector"


def cautions_of(run: RunFolder, *, state: str | None = None) -> list[str]:
    """Return what the steps that made a run's pattern (of one state) warn of, in plain words."""
    from colure.model.files import attribute_of, cautions

    pattern = run.pattern if state is None else run.pattern_of(state)
    return cautions(attribute_of(pattern, "history_json", "[]")) if pattern.is_file() else []


def evaluate_power(campaign: Campaign, run: RunFolder, *, state: str | None = None) -> list[Figure]:
    """Read the figures that power alone gives from a power-only run, and save them as JSON.

    Raises
    ------
    InputError
        If the record lacks directions or polarizations.
    """
    from colure.analysis.power_only import power_figures, power_sphere

    record = _opened(run, state)
    own = str(record.attrs["state"]) if states_of(run) else None
    try:
        sphere = power_sphere(record, campaign.chamber, reference_of(campaign, record["frequency"].values))
        found = power_figures(sphere, campaign.chamber, campaign.device, campaign.evaluation())
    except ValueError as error:
        raise InputError([str(error)]) from None
    for target in addresses(run, run.figures, own):
        target.write_text(json.dumps([figure.as_dict() for figure in found], indent=1), encoding="utf-8")
    return found


def write_report(
    campaign: Campaign,
    plan: Plan,
    run: RunFolder,
    processed: Processed,
    figures: list[Figure],
    judged: Judged | None = None,
) -> None:
    """Write the report as one HTML page and as a PDF beside the record; `judged` fills its verdict."""
    from colure.analysis.diagnosis import diagnoses
    from colure.analysis.self_check import room_of
    from colure.model.files import file_hash
    from colure.report.content import Source, compose
    from colure.report.html import render_html
    from colure.report.pdf import render_pdf

    state = state_in(processed, run)
    record = _opened(run, state)
    document = compose(
        Source(
            plan=plan,
            chamber=campaign.chamber,
            device=campaign.device,
            processed=processed,
            figures=figures,
            record_attrs=dict(record.attrs),
            record_file=run.record.name,
            record_sha256=file_hash(run.record),
            demo=campaign.chamber.analyzer.resource == "twin",
            diagnoses=diagnoses(
                record,
                processed,
                campaign.chamber,
                campaign.device,
                reference_of(campaign, processed.frequency_hz),
            ),
            room=room_of(processed, campaign.chamber),
            levels=_principal_levels(processed),
            judged=None if judged is None else _verdicts(judged),
            states=_power_of_states(campaign, run, processed),
        )
    )
    page = render_html(document)
    for target in addresses(run, run.report_html, state):
        target.write_text(page, encoding="utf-8")
    printed = addresses(run, run.report_pdf, state)
    render_pdf(document, printed[0])
    for target in printed[1:]:
        shutil.copyfile(printed[0], target)


def _power_of_states(campaign: Campaign, run: RunFolder, processed: Processed) -> dict[str, FloatArray]:
    """Return total gain at mid-band of every state of a device that has several; none of very many."""
    import numpy as np

    from colure.model.pattern import field_of

    names = states_of(run)
    if not 2 <= len(names) <= MOST_STATES_DRAWN or not processed.sphere.whole or processed.sphere.one_polarization:
        return {}
    middle = processed.frequency_hz.size // 2
    # The state that the report is of is processed already.
    own = state_in(processed, run)
    patterns = {
        name: processed.pattern if name == own else process_with(campaign, run, processed.recipe, state=name).pattern
        for name in names
    }
    return {name: np.sum(np.abs(field_of(one)[middle]) ** 2, axis=0) for name, one in patterns.items()}


def _principal_levels(processed: Processed) -> dict[str, LevelCut]:
    """Return the principal cuts at mid-band with their intervals."""
    from colure.analysis.profiles import level_cuts

    inputs = processed.budget.only(processed.frequency_hz.size // 2)
    e_cut, h_cut = level_cuts(inputs, (0.0, 90.0), step_deg=0.5)[0]
    return {"E": e_cut, "H": h_cut}


def _verdicts(judged: Judged) -> Verdicts:
    from colure.report.content import Verdicts

    rule = {"simple": "simple acceptance", "guard-band": "guard band of the expanded uncertainty"}
    return Verdicts(
        judged.specification.name, rule[judged.specification.decision], judged.outcome, judged.verdicts, judged.views
    )
