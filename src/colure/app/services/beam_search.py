"""The beam search of a campaign: two short runs, what they found, and the axes' home or zeros set to it."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING, Any, Literal

from colure.app.storage.file_edits import write_readouts
from colure.app.storage.folders import RunFolder, run_folder
from colure.errors import InputError
from colure.geometry.conventions import FloatArray
from colure.geometry.kinematics import Geometry
from colure.model.campaign import Campaign

if TYPE_CHECKING:
    from colure.analysis.setup.beam_search import BeamFound
    from colure.model.plan import Plan

SearchStage = Literal["coarse", "fine"]


@dataclass(frozen=True)
class Search:
    """What a search found, and the readouts that point the beam at the probe.

    readouts_deg
        By the name of each axis or joint; a prismatic joint's is in millimetres.
    fault
        Which limit keeps the axes from there; empty if none.
    units
        Unit of each readout, deg or mm.
    """

    beam: BeamFound
    readouts_deg: dict[str, float]
    fault: str
    units: dict[str, str]

    def sentences(self) -> list[str]:
        """Say where the beam is."""
        f = self.beam
        shown = ", ".join(f"{name} {value:.3f} {self.units[name]}" for name, value in self.readouts_deg.items())
        return [
            f"beam at azimuth {f.azimuth_deg:+.3f} \u00b1 {f.azimuth_expanded_deg:.3f}, elevation {f.elevation_deg:+.3f} "
            f"\u00b1 {f.elevation_expanded_deg:.3f} deg of the device frame; {f.level_db:.1f} dB (S21) there",
            f"the probe does not reach it: {self.fault}" if self.fault else f"the probe sees it at {shown}",
        ]


def stage_run(folder: Path, name: str, stage: SearchStage) -> RunFolder:
    """Return the run of one look of a search."""
    return run_folder(folder, f"{name}-{stage}")


def stage_plan(folder: Path, name: str, stage: SearchStage) -> tuple[Campaign, Plan]:
    """Plan one look: coarse, or fine about what the coarse one found.

    Raises
    ------
    InputError
        If the coarse look was not finished, or nothing is in reach.
    """
    from colure.analysis.setup.beam_search import strongest
    from colure.planning.beam_search import search_plan

    campaign = Campaign.load(folder)
    if stage == "coarse":
        return campaign, search_plan(campaign)
    first = strongest(_record(stage_run(folder, name, "coarse")), campaign.chamber)
    return campaign, search_plan(campaign, (round(first.azimuth_deg, 3), round(first.elevation_deg, 3)))


def finished(folder: Path, name: str) -> list[SearchStage]:
    """Return which looks of a search hold a record."""
    stages: tuple[SearchStage, ...] = ("coarse", "fine")
    return [stage for stage in stages if stage_run(folder, name, stage).record.is_file()]


def levels(folder: Path, name: str, stage: SearchStage) -> tuple[FloatArray, FloatArray, FloatArray]:
    """Return azimuth, elevation (degrees, device frame) and level (dB, S21) of every direction of one look."""
    from colure.analysis.setup.beam_search import levels_of

    return levels_of(_record(stage_run(folder, name, stage)), Campaign.load(folder).chamber)


def strongest_of(folder: Path, name: str) -> BeamFound:
    """Return the strongest direction of a coarse look; raises `InputError` if there is none."""
    from colure.analysis.setup.beam_search import strongest

    return strongest(_record(stage_run(folder, name, "coarse")), Campaign.load(folder).chamber)


def result(folder: Path, name: str) -> Search:
    """Read what both looks found; raises `InputError` if the beam's top is not there."""
    import numpy as np

    from colure.analysis.setup.beam_search import beam_of
    from colure.geometry.directions import from_azimuth_over_elevation
    from colure.planning.aim import Bearing
    from colure.planning.joint_aim import ways_to

    campaign = Campaign.load(folder)
    try:
        beam = beam_of(_record(stage_run(folder, name, "fine")), campaign.chamber)
    except ValueError as error:
        raise InputError([str(error)]) from None
    d = from_azimuth_over_elevation(azimuth=np.deg2rad(beam.azimuth_deg), elevation=np.deg2rad(beam.elevation_deg))
    aim = ways_to(Bearing.of(d), campaign.chamber.positioner.geometry, campaign.chamber, campaign.device)[0]
    units = {one.name: one.unit for one in campaign.chamber.positioner.joints}
    return Search(beam, aim.readouts_deg, aim.fault, {name: units.get(name, "deg") for name in aim.readouts_deg})


def set_home(folder: Path, name: str, stamp: str) -> list[str]:
    """Make the beam's readouts the home of axes or joints: `home` turns the beam to the probe; angles stay what they were.

    chamber.toml is written; the file as it was stays beside it.

    Raises
    ------
    InputError
        If the beam is out of reach.
    """
    search, campaign = result(folder, name), Campaign.load(folder)
    if search.fault:
        raise InputError([f"set as home: the beam is out of reach: {search.fault}"])
    homes = write_readouts(folder, campaign.chamber, "home", search.readouts_deg, stamp)
    return [f"{axis}: home at {value:.4f} {search.units[axis]} now" for axis, value in homes.items()]


def set_zeros(folder: Path, name: str, stamp: str) -> list[str]:
    """Make the beam's readouts the axes' zeros in chamber.toml; the file as it was stays beside it.

    Only right where the beam is known to leave the device straight: then what the search found is an error of the zeros.
    A beam that leans on its device is none, and zeros set to it turn every direction away from the elevation's zero.

    Raises
    ------
    InputError
        If the positioner rolls about the boresight: its zero is the roll axis, not a number; or if the mount has joints.
    """
    search, campaign = result(folder, name), Campaign.load(folder)
    _require_axes(campaign)
    if campaign.chamber.positioner.geometry is Geometry.ROLL_OVER_AZIMUTH:
        raise InputError([
            f"take as zeros: the zero of a roll over azimuth lies on its roll axis; mount the device so that its beam (azimuth "
            f"{search.beam.azimuth_deg:+.2f}, elevation {search.beam.elevation_deg:+.2f} deg) looks along it, or leave it: "
            f"the pattern is found all the same"
        ])  # fmt: skip
    write_readouts(folder, campaign.chamber, "zero", search.readouts_deg, stamp)
    return [f"{axis}: zero at {value:.4f} deg now" for axis, value in search.readouts_deg.items()]


def _require_axes(campaign: Campaign) -> None:
    """Raise `InputError` for a positioner whose zeros no beam tells."""
    positioner = campaign.chamber.positioner
    if positioner.joints:
        raise InputError([
            "take as zeros: many positions of the joints point a beam at the probe, so it tells no joint's zero; level each joint "
            "by other means and make its readout its zero (control room, Align, axes by hand), or let a scan tell (colure geometry)"
        ])  # fmt: skip
    if positioner.turntable:
        raise InputError([
            "take as zeros: a turntable has one axis, a beam's direction two; level azimuth by other means and make its readout "
            "its zero (control room, Align, axes by hand)"
        ])  # fmt: skip


def _record(run: RunFolder) -> Any:
    from colure.model.files import open_dataset

    if not run.record.is_file():
        raise InputError([f"run {run.path.name}: holds no record; its look comes first"])
    return open_dataset(run.record)
