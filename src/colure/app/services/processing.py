"""What both shells do: the composition of rooms into commands."""

from __future__ import annotations

import shutil
from pathlib import Path
from typing import TYPE_CHECKING

from colure.app.services.acquisition import (
    require_own_record,
)
from colure.app.services.known_rooms import learned_room_of
from colure.app.services.reference import probe_of, reference_of
from colure.app.storage.folders import RunFolder, require_free, require_record
from colure.app.storage.run_kinds import require_sphere
from colure.errors import InputError
from colure.model.campaign import Campaign
from colure.model.whole import write_whole

if TYPE_CHECKING:
    import xarray as xr

    from colure.analysis.pipeline.recipe import Processed
    from colure.analysis.steps.reflection import DeviceReflection
    from colure.model.recipe import Recipe
    from colure.report.document import Document

#: What is said where no pattern follows from what a run holds so far.
LOOK = "; colure look shows what is there"


def process(campaign: Campaign, run: RunFolder) -> Processed:
    """Run the default recipe on a run's record, or on one state of it (`RunFolder.state`), and save the pattern beside it.

    Raises
    ------
    InputError
        If the record lacks what the recipe needs, or there is no such state.
    """
    from colure.model.files import save_dataset

    processed_run = process_with(campaign, run, campaign.recipe())
    save_dataset(processed_run.pattern, run.pattern)
    return processed_run


def process_with(campaign: Campaign, run: RunFolder, recipe: Recipe | None) -> Processed:
    """Run a recipe of one's own on a run's record; nothing is saved. Raises `InputError` as `process` does."""
    return processed(campaign, opened(run), recipe)


def opened(run: RunFolder) -> xr.Dataset:
    """Read a run's record, of the chosen state (or the first) if the device has several."""
    from colure.model.files import file_hash, open_dataset, require_unchanged, with_step
    from colure.model.lazy import open_lazily, read_rows, rows_of_state

    require_record(run)
    names = states_of(run)
    chosen = run.chosen or (names[0] if names else None)
    if chosen is not None and chosen not in names:
        raise InputError([f"state = {chosen!r}: must be one of {', '.join(names) or 'none, the device has one'}"])
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


def one_distance(campaign: Campaign, record: xr.Dataset) -> xr.Dataset:
    """Return a record of several distances as one at the declared range length, any other as it is; `InputError` if it is not complete."""
    from colure.analysis.steps.distance_steps import at_one_distance

    try:
        return at_one_distance(record, campaign.chamber, campaign.device)
    except ValueError as error:
        raise InputError([str(error)]) from None


def reflection_of(campaign: Campaign, record: xr.Dataset) -> DeviceReflection | None:
    """Return the device's reflection as a record holds it; raises `InputError` where nobody says what its calibration leaves."""
    from colure.analysis.steps.reflection import device_reflection

    try:
        return device_reflection(record, campaign.chamber.one_port)
    except ValueError as error:
        raise InputError([str(error)]) from None


def write_reflection(campaign: Campaign, run: RunFolder, target: Path) -> str:
    """Write the device's reflection as a run measured it as a one-port Touchstone file; return what was written in words.

    Raises
    ------
    InputError
        If the target exists or has another ending, or the run did not measure it.
    """
    from colure.model.exports import write_reflection as write

    require_free(target)
    if target.suffix.lower() != ".s1p":
        raise InputError([f"{target}: must end in .s1p for reflection (file ending)"])
    record = opened(run)
    reflection = reflection_of(campaign, record)
    if reflection is None:
        why = (
            "it was stopped before the first reading; resume it"
            if campaign.goal.reflection
            else "set reflection = true in goal.toml"
        )
        raise InputError([f"export reflection: run {run.path.name} did not measure the device's reflection: {why}"])
    write(target, record["frequency"].values, reflection.coefficient, reflection_words(reflection))
    return reflection_words(reflection)


def reflection_words(reflection: DeviceReflection) -> str:
    """Say what a written reflection is."""
    return f"S11 of the device's connector, mean of {reflection.readings} readings, corrected by the analyzer's own one-port calibration"


def processed(campaign: Campaign, record: xr.Dataset, recipe: Recipe | None) -> Processed:
    from colure.analysis.pipeline.recipe import process as run_recipe

    require_sphere(record)
    frequency = record["frequency"].values
    probe, reference = probe_of(campaign, frequency), reference_of(campaign, frequency)
    room = learned_room_of(campaign, frequency)
    try:
        return run_recipe(
            record, campaign.chamber, campaign.device, probe=probe, recipe=recipe, reference=reference, room=room,
            evaluation=campaign.evaluation(), state=str(record.attrs.get("state", "beam")),
        )  # fmt: skip
    except ValueError as error:
        stopped = str(record.attrs.get("complete", "1")) != "1"
        raise InputError([f"{error}{LOOK if stopped else ''}"]) from None


def states_of(run: RunFolder) -> list[str]:
    """Return the names of the device states that a run's record holds; empty if the device has none."""
    from colure.model.files import attribute_of
    from colure.model.record import names_of_states

    require_record(run)
    return names_of_states(attribute_of(run.record, "states", ""))


def state_in(processed: Processed, run: RunFolder) -> RunFolder:
    """Return the state of a run that was processed; the run itself if its device has one."""
    name = processed.budget.figures.state
    return run.state(name if name in states_of(run) else None)


def own_state(run: RunFolder) -> RunFolder:
    """Return the chosen state of a run, or its first; the run itself if its device has one."""
    return run if run.chosen is not None else run.state(next(iter(states_of(run)), None))


def beside(run: RunFolder, other: RunFolder) -> RunFolder:
    """Return the state of `other` that is held against a state of `run`: the one that is chosen, else the one of the same name.

    `other` itself where it has one state only.

    Raises
    ------
    InputError
        If `other` has several states and none of that name.
    """
    names = states_of(other)
    if other.chosen is not None or not names:
        return other
    own = run.chosen or next(iter(states_of(run)), None)
    if own is None or own in names:
        return other.state(own)
    raise InputError([f"run {other.path.name}: holds no state {own!r}; must be one of {', '.join(names)}"])


def addresses(run: RunFolder, name: str) -> list[Path]:
    """Return where a result of this name is written: under the state's name, and the first state's also under the plain one.

    A plain name never holds another state than the first.
    """
    if run.chosen is None:
        return [run.path / name]
    plain = [run.path / name] if states_of(run)[:1] == [run.chosen] else []
    return [*plain, run.result(name)]


def write_documents(own: RunFolder, document: Document) -> None:
    """Write a report of a run (of one state) as one HTML page and as a PDF beside the record, each made once."""
    from colure.report.html import render_html
    from colure.report.pdf import render_pdf

    page = render_html(document)
    for target in addresses(own, "report.html"):
        write_whole(target, page)
    printed = addresses(own, "report.pdf")
    render_pdf(document, printed[0])
    for target in printed[1:]:
        shutil.copyfile(printed[0], target)


def has_phase(run: RunFolder) -> bool:
    """Tell whether a run's receiver measured phase."""
    from colure.model.files import attribute_of

    require_record(run)
    return attribute_of(run.record, "receiver", "vector") == "vector"


def step_cautions(run: RunFolder) -> list[str]:
    """Return what the steps that made a run's pattern (of one state) warn of, in plain words."""
    from colure.model.files import attribute_of, cautions

    return cautions(attribute_of(run.pattern, "history_json", "[]")) if run.pattern.is_file() else []
