"""What both shells do: the composition of rooms into commands."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

from colure.app.services.acquisition import (
    require_own_record,
)
from colure.app.services.reference import probe_of, reference_of
from colure.app.storage.folders import RunFolder, require_record
from colure.app.storage.run_kinds import require_sphere
from colure.errors import InputError
from colure.model.campaign import Campaign

if TYPE_CHECKING:
    import xarray as xr

    from colure.analysis.pipeline.recipe import Processed
    from colure.model.recipe import Recipe


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
    return processed(campaign, opened(run, state), recipe)


def opened(run: RunFolder, state: str | None) -> xr.Dataset:
    """Read a run's record, of one state if the device has several."""
    from colure.model.files import file_hash, open_dataset, require_unchanged, with_step
    from colure.model.lazy import open_lazily, read_rows, rows_of_state

    require_record(run)
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
    from colure.analysis.pipeline.recipe import process as run_recipe

    require_sphere(record)
    frequency = record["frequency"].values
    probe, reference = probe_of(campaign, frequency), reference_of(campaign, frequency)
    try:
        return run_recipe(
            record, campaign.chamber, campaign.device, probe=probe, recipe=recipe, reference=reference,
            evaluation=campaign.evaluation(), state=str(record.attrs.get("state", "beam")),
        )  # fmt: skip
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


def state_beside(run: RunFolder, state: str | None, other: RunFolder, other_state: str | None = None) -> str | None:
    """Return which state of `other` is held against a state of `run`: the one that is named, else the one of the same name.

    None where `other` has one state only.

    Raises
    ------
    InputError
        If `other` has several states and none of that name.
    """
    names = states_of(other)
    if other_state is not None or not names:
        return other_state
    own = state or next(iter(states_of(run)), None)
    if own is None or own in names:
        return own
    raise InputError([f"run {other.path.name}: holds no state {own!r}; must be one of {', '.join(names)}"])


def addresses(run: RunFolder, file: Path, state: str | None) -> list[Path]:
    """Return where a result of a state is written: under the state's name, and the first state's also under the plain one.

    A plain name never holds another state than the first.
    """
    if state is None:
        return [file]
    plain = [file] if states_of(run)[:1] == [state] else []
    return [*plain, run.of_state(file, state)]


def has_phase(run: RunFolder) -> bool:
    """Tell whether a run's receiver measured phase."""
    from colure.model.files import attribute_of

    return attribute_of(run.record, "receiver", "vector") == "vector"


def step_cautions(run: RunFolder, *, state: str | None = None) -> list[str]:
    """Return what the steps that made a run's pattern (of one state) warn of, in plain words."""
    from colure.model.files import attribute_of, cautions

    pattern = run.pattern if state is None else run.pattern_of(state)
    return cautions(attribute_of(pattern, "history_json", "[]")) if pattern.is_file() else []
