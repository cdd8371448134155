"""Where ties look: the strongest direction that anything in a campaign's folder knows.

A tie at a null is noise, and what it corrects is noise. So device.toml, the direction that a state was told to point at, a beam
search and earlier runs are asked, in this order; the boresight is what remains.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from pathlib import Path
from typing import TYPE_CHECKING

from colure.app.storage.before_motion import keep_before_motion
from colure.app.storage.folders import RunFolder
from colure.errors import InputError
from colure.model.admission import read_json

if TYPE_CHECKING:
    from colure.model.campaign import Campaign

#: Ties stay at the boresight if an earlier run was no weaker there than this below its strongest direction, dB.
STRONG_ENOUGH_DB = 3.0
#: Directions are kept to this many decimals of a degree: a plan must not change with the last digit of an estimate.
DECIMALS = 1


@dataclass(frozen=True)
class TieDirection:
    """Azimuth and elevation of the device frame in degrees, and who says so."""

    beam_deg: tuple[float, float]
    source: str

    def as_dict(self) -> dict[str, object]:
        """Return it as plain data."""
        return {"beam_deg": list(self.beam_deg), "source": self.source}


def with_tie_direction(campaign: Campaign, run: RunFolder | None = None) -> tuple[Campaign, TieDirection]:
    """Return the campaign with the strongest direction known as its device's, and where that comes from.

    run
        The run that is to be measured: one that has begun keeps the direction that it began with.
    """
    if run is not None and run.journal.exists() and not run.tie_direction.exists():
        return campaign, TieDirection(campaign.device.beam_deg, "as the run began")
    direction = _kept(run) or strongest_known(campaign, run)
    if direction.beam_deg == campaign.device.beam_deg:
        return campaign, direction
    return replace(campaign, device=campaign.device.model_copy(update={"beam_deg": direction.beam_deg})), direction


def keep(run: RunFolder, direction: dict[str, object]) -> None:
    """Write down where the ties of a run look; what a run began with stays.

    Raises
    ------
    InputError
        If the run's folder cannot be written to.
    """
    if not run.tie_direction.exists():
        keep_before_motion(run.tie_direction, direction)


def strongest_known(campaign: Campaign, run: RunFolder | None = None) -> TieDirection:
    """Return the strongest direction that the campaign's folder knows."""
    device = campaign.device
    if "beam_deg" in device.model_fields_set:
        return TieDirection(device.beam_deg, "device.toml beam_deg")
    # Ties are measured in the first state.
    state = "beam" if device.states is None else device.states.names[0]
    told = campaign.evaluation().commanded_deg.get(state)
    if told is not None:
        return TieDirection((float(told[0]), float(told[1])), f"evaluation.toml commanded_deg of {state}")
    return _searched(campaign) or _measured(campaign, run) or TieDirection((0.0, 0.0), "nothing known: the boresight")


def _kept(run: RunFolder | None) -> TieDirection | None:
    if run is None or not run.tie_direction.is_file():
        return None
    try:
        content = read_json(run.tie_direction)
        azimuth, elevation = (float(one) for one in content["beam_deg"])
        return TieDirection((azimuth, elevation), str(content["source"]))
    except (OSError, ValueError, KeyError, TypeError) as error:
        raise InputError(
            [f"{run.tie_direction.name}: must hold beam_deg (two numbers, deg) and source: {error}"]
        ) from None


def _records(campaign: Campaign, pattern: str, run: RunFolder | None = None) -> list[Path]:
    """Return the run folders that hold a record, newest first."""
    runs = campaign.folder / "runs"
    folders = [one for one in runs.glob(pattern) if (one / "record.nc").is_file() and (run is None or one != run.path)]
    return sorted(folders, key=lambda one: (one / "record.nc").stat().st_mtime, reverse=True)


def _searched(campaign: Campaign) -> TieDirection | None:
    """Return what the latest beam search found."""
    from colure.app.services.beam_search import result

    for one in _records(campaign, "*-fine"):
        name = one.name.removesuffix("-fine")
        try:
            beam = result(campaign.folder, name).beam
        except InputError:
            continue  # no top among its directions
        return TieDirection(_rounded(beam.azimuth_deg, beam.elevation_deg), f"beam search {name}")
    return None


def _measured(campaign: Campaign, run: RunFolder | None) -> TieDirection | None:
    """Return the strongest sample of the latest whole scan, if the boresight was much weaker there."""
    from colure.analysis.setup.beam_search import strongest_of_scan
    from colure.model.files import open_dataset

    for one in _records(campaign, "*", run):
        if one.name.endswith(("-coarse", "-fine")):
            continue
        try:
            record = open_dataset(one / "record.nc")
            strongest, boresight_db = strongest_of_scan(record, campaign.chamber)
        except (ValueError, KeyError, OSError):
            continue  # a cut, another chamber, a damaged file: nothing to learn from
        if strongest.level_db - boresight_db <= STRONG_ENOUGH_DB:
            return TieDirection((0.0, 0.0), f"run {one.name}: the boresight")
        return TieDirection(_rounded(strongest.azimuth_deg, strongest.elevation_deg), f"run {one.name}")
    return None


def _rounded(azimuth_deg: float, elevation_deg: float) -> tuple[float, float]:
    return round(azimuth_deg, DECIMALS) + 0.0, round(elevation_deg, DECIMALS) + 0.0
