"""Learning a room from finished runs, and asking a run whether the room is as it was."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

import numpy as np

from colure.app.services.known_rooms import identity_of, learned_room_of
from colure.app.services.processing import opened, processed
from colure.app.services.reference import probe_of
from colure.app.storage.folders import RunFolder, require_free, run_folder
from colure.errors import InputError
from colure.model.campaign import Campaign

if TYPE_CHECKING:
    import xarray as xr

    from colure.analysis.pipeline.recipe import Processed
    from colure.analysis.stray.known_room import RoomHeard
    from colure.analysis.stray.learning import Misfit
    from colure.model.learned_room import LearnedRoom
    from colure.model.recipe import Recipe

#: Name of the file that is written unless another is asked for.
ROOM_FILE = "room.nc"


@dataclass(frozen=True)
class _TakenRun:
    """One finished run that a room is learned from."""

    name: str
    seal: str
    processed: Processed
    campaign: Campaign


def runs_named(folder: Path, names: list[str]) -> list[tuple[Path, RunFolder]]:
    """Return (campaign folder, run) for names of runs of `folder`, or paths such as OTHER/runs/NAME.

    Raises
    ------
    InputError
        If a run is named twice or a path is no run of a campaign.
    """
    out: list[tuple[Path, RunFolder]] = []
    for name in names:
        path = Path(name)
        if len(path.parts) == 1:
            out.append((folder, run_folder(folder, name)))
            continue
        if path.parent.name != "runs" or not (path.parent.parent / "chamber.toml").is_file():
            raise InputError(
                [f"run = {name!r}: must be the name of a run here, or a path such as other-campaign/runs/first"]
            )
        out.append((path.parent.parent, run_folder(path.parent.parent, path.name)))
    where = [run.path.resolve() for _, run in out]
    if len(set(where)) < len(where):
        raise InputError(["runs: one run is named twice: every run must be a measurement of its own"])
    return out


def learn_room(folder: Path, names: list[str], *, target: Path | None = None) -> tuple[LearnedRoom, Path]:
    """Learn the room of a campaign's range from runs of unlike devices, and write it beside chamber.toml.

    Raises
    ------
    InputError
        If runs were measured on different ranges or bands, or do not agree on a single echo, or the file exists.
    """
    from colure.analysis.stray.learning import learn
    from colure.model.files import save_dataset
    from colure.model.learned_room import LearnedRoom

    campaign = Campaign.load(folder)
    path = folder / ROOM_FILE if target is None else target
    require_free(path)
    identity, own = identity_of(campaign), runs_named(folder, names)
    taken = [_taken(where, run) for where, run in own]
    faults = [f"run {one.name}: {fault}" for one in taken for fault in identity.faults_of(identity_of(one.campaign))]
    if faults:
        raise InputError([*faults, "a room is learned on one range with one probe"])
    low = max(float(one.processed.frequency_hz.min()) for one in taken)
    high = min(float(one.processed.frequency_hz.max()) for one in taken)
    if low > high:
        raise InputError(
            [
                f"runs: have no frequency in common: the highest start is {1e-9 * low:g}, the lowest stop {1e-9 * high:g} (GHz)"
            ]
        )
    middle = 0.5 * (low + high)
    try:
        learned = learn(
            [_misfit(one, middle, low, high) for one in taken], [one.processed.sphere.field for one in taken]
        )
    except ValueError as error:
        raise InputError([str(error)]) from None
    room = LearnedRoom(
        learned.images.places, learned.images.weights, learned.covariance, learned.drops, learned.explained,
        np.array([low, high]),
        middle, identity, tuple(one.name for one in taken), tuple(one.seal for one in taken),
    )  # fmt: skip
    save_dataset(room.to_dataset(), path)
    return room, path


def _taken(folder: Path, run: RunFolder) -> _TakenRun:
    campaign = Campaign.load(folder)
    name = f"{folder.name}/{run.path.name}"
    record = opened(run)
    recipe = _recipe_without(campaign, record)
    if recipe.runs("gate") or not recipe.runs("far-field"):
        raise InputError(
            [
                f"run {name}: recipe.toml: must have 'gate' off and 'far-field' on: a gate takes out the echoes that are to be learned"
            ]
        )
    processed_run = processed(campaign, record, recipe)
    if not processed_run.sphere.whole or processed_run.sphere.one_polarization or campaign.chamber.positioner.joints:
        raise InputError(
            [
                f"run {name}: must be a whole sphere in both polarizations on a positioner of two axes; anything less does not part a device from its room"
            ]
        )
    return _TakenRun(
        name, str(record.attrs.get("journal_root_hash", record.attrs.get("seal", ""))), processed_run, campaign
    )


def _recipe_without(campaign: Campaign, record: xr.Dataset) -> Recipe:
    """Return a record's recipe with the step `room` switched off."""
    from colure.analysis.pipeline.recipe import default_recipe

    asked = campaign.recipe()
    return (default_recipe(record, campaign.chamber, campaign.device) if asked is None else asked).without("room")


def _misfit(one: _TakenRun, middle_hz: float, low_hz: float, high_hz: float) -> Misfit:
    from colure.analysis.stray.images import Scanned
    from colure.analysis.stray.known_room import asked_at, surround_of
    from colure.analysis.stray.learning import Misfit

    processed_run, frequency = one.processed, one.processed.frequency_hz
    surround = surround_of(one.campaign.chamber, probe_of(one.campaign, frequency), middle_hz)
    inside = np.flatnonzero((frequency >= low_hz - 1.0) & (frequency <= high_hz + 1.0))
    chosen = [int(inside[index]) for index in asked_at(inside.size)]
    return Misfit(
        Scanned(processed_run.sphere, processed_run.step, processed_run.expansion, surround),
        processed_run.sphere.field,
        chosen,
    )


def check_room(campaign: Campaign, run: RunFolder) -> tuple[RoomHeard, LearnedRoom]:
    """Ask a run whether the room that its chamber names is as it was learned.

    Raises
    ------
    InputError
        If chamber.toml names no learned room, or the step is switched off.
    """
    record = opened(run)
    room = learned_room_of(campaign, record["frequency"].values)
    if room is None:
        raise InputError(
            [f'chamber.toml: room: is missing: colure learn-room writes {ROOM_FILE}; then add room = "{ROOM_FILE}"']
        )
    processed_run = processed(campaign, record, campaign.recipe())
    if processed_run.heard is None:
        raise InputError(
            ["recipe.toml: step 'room': must be on to check it, and the run a whole sphere in both polarizations"]
        )
    return processed_run.heard, room
