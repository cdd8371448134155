"""The learned room that a chamber names: read, and held against the range that it is to serve."""

from __future__ import annotations

from typing import TYPE_CHECKING

from colure.errors import InputError
from colure.model.campaign import Campaign
from colure.model.probe_door import PREFIX

if TYPE_CHECKING:
    from pathlib import Path

    from colure.geometry.conventions import FloatArray
    from colure.model.learned_room import LearnedRoom, RangeIdentity


def identity_of(campaign: Campaign) -> RangeIdentity:
    """Return what a learned room of this campaign's range belongs to."""
    from colure.model.files import file_hash
    from colure.model.learned_room import RangeIdentity

    chamber, pattern = campaign.chamber, campaign.chamber.probe.pattern
    known = "no pattern"
    if pattern is not None:
        known = pattern if pattern.startswith(PREFIX) else f"pattern {file_hash(campaign.folder / pattern)[:16]}"
    probe = chamber.probe
    words = (
        f"{probe.ports} port{'s' if probe.ports == 2 else ''}, {probe.polarization}, {probe.gain_dbi:g} dBi, {known}"
    )
    return RangeIdentity(chamber.positioner.geometry.value, chamber.range_length_m, words)


def learned_room_of(campaign: Campaign, frequency_hz: FloatArray) -> LearnedRoom | None:
    """Return the learned room that chamber.toml names; None if it names none.

    Raises
    ------
    InputError
        If the file cannot be read, or was learned on another range, with another probe or at other frequencies.
    """
    if campaign.chamber.room is None:
        return None
    room = read_room(campaign.folder / campaign.chamber.room)
    room.require_fits(identity_of(campaign), frequency_hz)
    return room


def read_room(path: Path) -> LearnedRoom:
    """Read a learned room; raises `InputError` if the file is missing, damaged or something else."""
    from colure.model.files import open_dataset
    from colure.model.learned_room import LearnedRoom

    if not path.is_file():
        raise InputError(
            [
                f"chamber.toml: room = {path.name!r}: there is no such file in {path.parent.name}; colure learn-room writes one"
            ]
        )
    return LearnedRoom.from_dataset(open_dataset(path), path.name)
