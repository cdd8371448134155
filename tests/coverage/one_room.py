"""Unlike devices that turn in one room, one after the other: worlds for rooms that are learned, with walls that can be moved.

Devices, chambers and rooms are invented. A room is drawn as `colure rehearse` draws one; its walls and the range's own errors stay while
devices, their poses, drift and noise change from run to run.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from pathlib import Path

import numpy as np
import xarray as xr

from colure.analysis.pipeline.recipe import Processed, process
from colure.analysis.stray.images import Scanned
from colure.analysis.stray.known_room import asked_at, surround_of
from colure.analysis.stray.learning import Misfit, learn
from colure.app import services
from colure.app.services.known_rooms import identity_of
from colure.app.services.reference import probe_of
from colure.app.services.rehearsal import record_of_rehearsal
from colure.geometry.conventions import power_db
from colure.model.campaign import Campaign
from colure.model.chamber import EchoTable, SimulatedChamber
from colure.model.learned_room import LearnedRoom
from colure.model.plan import Plan
from colure.model.recipe import ORDER, Recipe, Step
from colure.twin.rehearsal import draw_chamber
from tests.coverage.scenarios import Scenario, band, four_by_four, sized

BAND = band(24.0, 24.25, 3)
P4 = {"kind": "panel", "rows": 4, "columns": 4, "pitch_mm": 6.213}
HORN = {"kind": "horn", "aperture_a_mm": 34.0, "aperture_b_mm": 26.0, "slant_e_mm": 55.0, "slant_h_mm": 60.0}
CIRCULAR = {"polarization": "elliptical", "sense": "right", "axial_ratio_db": 1.0}
UNLIKE: dict[str, Scenario] = {
    "horn": Scenario(device=sized(26, 34, 5, 17.5, offset_mm=[0, 0, 10]), goal=BAND, twin={"device": HORN}),
    "patch": Scenario(device=sized(6, 6, 2, 7.0), goal=BAND, twin={"device": {"kind": "patch"}}),
    "dipole": Scenario(device=sized(6, 1, 1, 2.1), goal=BAND, twin={"device": {"kind": "dipole", "axis": "x"}}),
    "4 x 4": Scenario(device=four_by_four(offset_mm=[0, 0, -30]), goal=BAND, twin={"device": P4}),
    "circular": Scenario(
        device=four_by_four(polarization="right", axial_ratio_db=1.0), goal=BAND, twin={"device": {**P4, **CIRCULAR}}
    ),
    "steered": Scenario(
        device=four_by_four(offset_mm=[8, 0, 0], beam_deg=[36.0, 16.0]), goal=BAND,
        twin={"device": {**P4, "steer_deg": [35.0, 10.0]}},
    ),
    "2 x 6": Scenario(
        device=sized(40, 12, 4, 15, offset_mm=[0, 0, -10]), goal=BAND,
        twin={"device": {"kind": "panel", "rows": 2, "columns": 6, "pitch_mm": 6.213}},
    ),
}  # fmt: skip
#: What stays from run to run beside the walls: errors of the range.
OF_THE_RANGE = (
    "theta_zero_deg", "roll_axis_tilt_deg", "axes_offset_mm", "probe_roll_zero_deg", "probe_offset_mm", "probe_cross_polar_db",
    "cable_flex_deg", "cable_flex_other_deg",
)  # fmt: skip


@dataclass(frozen=True)
class Measured:
    """One device in a room: its campaign, what the room was, and the record."""

    campaign: Campaign
    plan: Plan
    truth: SimulatedChamber
    record: xr.Dataset

    def processed(self, room: LearnedRoom | None = None) -> Processed:
        """Return what the recipe makes of it, with a learned room declared or without."""
        chamber = (
            self.campaign.chamber if room is None else self.campaign.chamber.model_copy(update={"room": "room.nc"})
        )
        probe = probe_of(self.campaign, self.plan.frequency_hz)
        return process(self.record, chamber, self.campaign.device, probe=probe, grid_step_deg=15.0, room=room)

    def processed_with(self, room: LearnedRoom | None, *steps: str) -> Processed:
        """Return what a recipe makes of it that has these steps beside gain, assembly and transform."""
        names = [one for one in ORDER if one in (*steps, "drift", "gain", "assemble", "far-field")]
        recipe = Recipe(steps=tuple(Step(step=one) for one in names))
        probe = probe_of(self.campaign, self.plan.frequency_hz)
        return process(
            self.record,
            self.campaign.chamber,
            self.campaign.device,
            probe=probe,
            grid_step_deg=15.0,
            room=room,
            recipe=recipe,
        )

    def in_a(self, echoes: tuple[EchoTable, ...]) -> Measured:
        """Return the same run, noise and drift alike, in a room with other walls."""
        truth = self.truth.model_copy(update={"echoes": echoes})
        return Measured(self.campaign, self.plan, truth, record_of_rehearsal(self.campaign, self.plan, truth=truth))


class OneRoom:
    """A room of which any device can be measured."""

    def __init__(
        self,
        folder: Path,
        seed: int,
        *,
        level_db: float,
        walls: tuple[EchoTable, ...] | None = None,
        points: int = 3,
        devices: Mapping[str, Scenario] = UNLIKE,
        level_of: str = "4 x 4",
    ) -> None:
        """Draw a room whose echoes are `level_db` below the peak of the device `level_of`; `walls` instead of drawn ones."""
        self._folder, self._seed, self._level, self._points = folder, seed, level_db, points
        self._devices = devices
        campaign, plan = self._campaign(level_of)
        self.range = draw_chamber(
            campaign.chamber, campaign.device, plan, seed, holding=campaign.simulated(), folder=campaign.folder
        )
        self.walls = self.range.echoes if walls is None else walls

    def _campaign(self, name: str) -> tuple[Campaign, Plan]:
        folder = self._folder / f"{name.replace(' ', '')}{self._level:g}"
        if not folder.exists():
            one = self._devices[name]
            chamber = {**one.chamber, "echo_level_db": self._level}
            Scenario(one.device, {**one.goal, "points": self._points}, chamber, one.twin).write(folder)
        campaign, plan = services.make_plan(folder)
        return campaign, plan

    def measured(self, name: str, number: int) -> Measured:
        """Measure a device: every number has its own noise, drift and pose."""
        campaign, plan = self._campaign(name)
        own = draw_chamber(
            campaign.chamber,
            campaign.device,
            plan,
            1000 * self._seed + number,
            holding=campaign.simulated(),
            folder=campaign.folder,
        )
        stays = {one: getattr(self.range, one) for one in OF_THE_RANGE}
        truth = own.model_copy(update={**stays, "echoes": self.walls})
        return Measured(campaign, plan, truth, record_of_rehearsal(campaign, plan, truth=truth))

    def learned(self, names: list[str]) -> LearnedRoom:
        """Learn the room from a run of each device; raises `ValueError` where there is nothing to learn."""
        return learned_from([self.measured(name, number) for number, name in enumerate(names)], names)


def learned_from(runs: list[Measured], names: list[str]) -> LearnedRoom:
    """Learn a room from runs, as the service does with files."""
    done = [one.processed() for one in runs]
    frequency = done[0].frequency_hz
    middle = 0.5 * float(frequency[0] + frequency[-1])
    misfits = [
        Misfit(
            Scanned(one.sphere, one.step, one.expansion, surround_of(run.campaign.chamber, one.budget.probe, middle)),
            one.sphere.field,
            asked_at(frequency.size),
        )
        for run, one in zip(runs, done, strict=True)
    ]
    found = learn(misfits, [one.sphere.field for one in done])
    return LearnedRoom(
        found.images.places, found.images.weights, found.covariance, found.drops, found.explained, frequency, middle,
        identity_of(runs[0].campaign), tuple(names), tuple(names),
    )  # fmt: skip


def moved_wall(walls: tuple[EchoTable, ...], index: int, by_m: float) -> tuple[EchoTable, ...]:
    """Return the walls with one moved along its normal."""
    own = list(walls)
    own[index] = own[index].model_copy(update={"distance_m": own[index].distance_m + by_m})
    return tuple(own)


@dataclass(frozen=True)
class EchoLeft:
    """Error by echoes of the far field's waves, in dB of the device's power, without and with the learned room."""

    before_db: float
    after_db: float
    done: Processed

    @property
    def gain_db(self) -> float:
        """How much lower the error is with the learned room."""
        return self.before_db - self.after_db


def echo_left(run: Measured, room: LearnedRoom) -> EchoLeft:
    """Return the error by echoes against the same run, noise and all, in a room without walls."""
    clean = run.in_a(()).processed().expansion
    power = float(np.sum(clean.power()))
    level: Callable[[Processed], float] = lambda done: float(  # noqa: E731
        power_db(np.sum(np.abs(done.expansion.coefficients - clean.coefficients) ** 2) / power)
    )
    corrected = run.processed(room)
    return EchoLeft(level(run.processed()), level(corrected), corrected)
