"""`colure rehearse`: the plan on the simulated chamber first, judged against known truth."""

from __future__ import annotations

import time
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

import numpy as np

from colure.app.services.reference import probe_of, reference_of
from colure.errors import InputError
from colure.geometry.conventions import FloatArray
from colure.model.campaign import Campaign
from colure.model.chamber import SimulatedChamber
from colure.model.definitions import DEFINITIONS
from colure.model.plan import Plan
from colure.values import holds_arrays

if TYPE_CHECKING:
    import xarray as xr

    from colure.analysis.pipeline.power_levels import PowerSphere
    from colure.analysis.pipeline.recipe import Processed
    from colure.analysis.steps.gain import ReferenceData
    from colure.model.chamber import Chamber
    from colure.model.device import Device
    from colure.model.figure import Figure
    from colure.model.recipe import Recipe
    from colure.twin.rehearsal import Rehearsed


#: What a person can do about each cause of the budget.
REMEDIES = {
    "noise": "lower if_bandwidth_hz, raise power_dbm within the device's limit, or average",
    "drift residual": "shorten tie_interval_s, let the chamber warm up, or scan on the fly",
    "reference gain": "use a reference antenna with a better gain table",
    "range echoes": "more absorber, or a smaller turning sphere so that mode filtering takes more of them out",
    "alignment": "align better: the tolerances under alignment in chamber.toml decide this term",
    "probe polarization": "calibrate the probe's purity, or use a purer probe",
    "finite distance": "a longer range, or both polarizations and a transform",
    "reference place": "survey the horn's place: reference.offset_uncertainty_mm in chamber.toml, or put it at the axes' intersection",
    "near horn": "a smaller reference horn, or a longer range",
    "drift since calibration": "calibrate the range again: colure calibrate, or a reference in every run",
    "mismatch": "state the reflections in files, or better matched cables, or an attenuator at the cable's end",
    "leakage": "better shielding, tighter connectors, more power",
    "receiver compression": "less power at the receiver: 10 dB less is a tenth of it",
    "receiver linearity": "less power at the receiver, or its own linearity correction",
    "standing wave": "tilt or cover what reflects beside probe and device, or scan at several distances: [distance_steps] in goal.toml",
    "probe place": "survey the probe's place: probe_lateral_mm under alignment in chamber.toml",
    "probe pointing": "point the probe with a laser: probe_pointing_deg under alignment in chamber.toml, or a wider probe",
    "probe pattern": "calibrate the probe's pattern, or a longer range",
    "polarization imbalance": "measure the imbalance with the reference in both polarizations, or a better rotary joint",
    "reconnection": "torque the connectors, or a switch instead of a new connection, and repeat the reference at the end",
    "position error": "slower moves, longer settling, or better encoders",
    "temperature": "ties closer together than half the swing: tie_interval_s, or a steadier room",
    "jumps": "find the loose connector; ties closer together bracket a jump better",
    "sampling and truncation": "a lower wanted_level_db: more waves",
    "region truncation": "a larger region_deg: what lies beyond it is not known",
    "element commands": "measure the beam itself, or add states with its commands: colure codes --commands",
    "time gate": "a wider band, or absorber instead of a gate",
    "cable flexing": "a phase-stable cable, a rotary joint, or dedicated turns",
}


#: Figures that are the same after so many degrees.
PERIODS_DEG = {what.name: what.period for what in DEFINITIONS if what.period}


@dataclass(frozen=True)
class FigureAgainstTruth:
    """One figure of one rehearsal beside its truth."""

    figure: Figure
    truth: float

    @property
    def nearest_truth(self) -> float:
        """The truth, whole turns away from the value: an ellipse's tilt of 89 and of -91 deg is the same."""
        period = PERIODS_DEG.get(self.figure.name)
        if period is None or not np.isfinite(self.figure.value - self.truth):
            return self.truth
        return self.truth + period * float(np.round((self.figure.value - self.truth) / period))

    @property
    def error(self) -> float:
        """Measured minus true."""
        return self.figure.value - self.nearest_truth

    @property
    def inside(self) -> bool:
        """Tell whether the stated interval holds the truth."""
        return self.figure.contains(self.nearest_truth)

    @property
    def ratio(self) -> float:
        """Size of the error over half the interval; nan where that is a bound, or nothing by definition."""
        half = 0.5 * (self.figure.upper - self.figure.lower)
        return abs(self.error) / half if np.isfinite(half) and half > 0.0 else float("nan")

    @property
    def counts(self) -> bool:
        """Tell whether there is an interval and a truth to hold against it."""
        return not self.figure.reason and not np.isnan(self.truth)

    @property
    def cause(self) -> str:
        """The largest group of terms of the budget."""
        groups = self.figure.groups()
        return max(groups, key=lambda name: groups[name]) if groups else ""


@dataclass(frozen=True)
@holds_arrays
class Rehearsal:
    """Everything one rehearsal found: a pattern, or total levels where the receiver reads power alone."""

    findings: list[FigureAgainstTruth]
    rehearsed: Rehearsed
    pattern: xr.Dataset | PowerSphere
    seconds: float

    @property
    def share_inside(self) -> float:
        """Share of the figures whose interval holds the truth, of those that exist; 1 if none does."""
        counted = [finding.inside for finding in self.findings if finding.counts]
        return float(np.mean(counted)) if counted else 1.0

    def causes(self) -> list[tuple[str, int]]:
        """Return the causes by how many figures they dominate, most first."""
        names = [finding.cause for finding in self.findings if finding.cause]
        return sorted(((name, names.count(name)) for name in set(names)), key=lambda pair: -pair[1])


@dataclass(frozen=True)
class CarriedOut:
    """A plan that was carried out on an invented chamber and processed."""

    processed: Processed
    rehearsed: Rehearsed
    truth: list[dict[str, float]]


def carry_out(campaign: Campaign, plan: Plan, *, seed: int = 1, true: Campaign | None = None) -> CarriedOut:
    """Measure and process a plan on an invented chamber that is as imperfect as the declared one.

    true
        The campaign whose chamber is drawn, where it is not what the first one declares.

    Raises
    ------
    InputError
        If the plan cannot be processed.
    """
    from colure.analysis.pipeline.recipe import process

    settings = campaign.evaluation()
    chamber, device, recipe = without_learned_room(campaign)
    rehearsed, moments = measured(campaign if true is None else true, plan, seed=seed)
    record = _first_state(plan, rehearsed, moments, campaign.chamber)
    try:
        probe = probe_of(campaign, plan.frequency_hz)
        reference = _beyond_the_horn(campaign, plan.frequency_hz)
        processed = process(
            record, chamber, device, probe=probe, recipe=recipe, reference=reference,
            evaluation=settings,
        )  # fmt: skip
    except ValueError as error:
        raise InputError([str(error)]) from None
    truth = _truth(campaign, rehearsed, region_deg=processed.sphere.region_deg)
    return CarriedOut(processed, rehearsed, truth)


def _first_state(plan: Plan, rehearsed: Rehearsed, moments: FloatArray, chamber: Chamber) -> xr.Dataset:
    from colure.model.record import of_state

    record = _record(plan, rehearsed, moments, chamber)
    return of_state(record, 0) if plan.states else record


def _truth(campaign: Campaign, rehearsed: Rehearsed, *, region_deg: float) -> list[dict[str, float]]:
    """Return the true figures of the rehearsed device by name, one table a frequency."""
    from colure.twin.campaign_truth import asked_of
    from colure.twin.truth import truth_of

    asked = replace(asked_of(campaign, campaign.evaluation()), region_deg=region_deg)
    if not campaign.goal.reflection:
        asked = replace(asked, mismatch_loss_db=None)
    return [{name: one.value for name, one in row.items()} for row in truth_of(rehearsed.device, asked)]


def without_learned_room(campaign: Campaign) -> tuple[Chamber, Device, Recipe | None]:
    """Return chamber, device and recipe without a learned room: a drawn chamber has other walls than those that were learned."""
    recipe = campaign.recipe()
    chamber = campaign.chamber.model_copy(update={"room": None})
    return chamber, campaign.device, None if recipe is None else recipe.without("room")


def _beyond_the_horn(campaign: Campaign, frequency_hz: FloatArray) -> ReferenceData | None:
    """Return what a rehearsal knows of the reference: the simulated horn has no table and no adapter of its own."""
    from colure.analysis.steps.gain import ReferenceData

    known = reference_of(campaign, frequency_hz)
    if known is None or (known.stored is None and known.probe is None):
        return None
    return ReferenceData(None, None, None, None, known.stored, known.stored_at_s, probe=known.probe)


def measured(
    campaign: Campaign, plan: Plan, *, seed: int = 1, truth: SimulatedChamber | None = None
) -> tuple[Rehearsed, FloatArray]:
    """Return what the plan reads on a drawn chamber (or on `truth`), and when each sweep begins (seconds)."""
    from colure.analysis.steps.gain import reference_gain_dbi
    from colure.planning.free_scan import scan_proposal
    from colure.planning.path import build_path
    from colure.twin.rehearsal import rehearse as measure

    if campaign.goal.scan is None:
        path = build_path(campaign.goal, campaign.chamber, campaign.device, plan.grid)
    else:
        path = scan_proposal(campaign).path
    moments = np.cumsum(path.time_s) - float(plan.settings["sweep_s"])
    horn = campaign.chamber.reference.has_horn
    gain = reference_gain_dbi(plan.frequency_hz, campaign.chamber.reference) if horn else None
    rehearsed = measure(
        campaign.chamber,
        campaign.device,
        plan,
        moments,
        seed=seed,
        reference_gain_dbi=gain,
        truth=truth,
        holding=campaign.simulated(),
        folder=campaign.folder,
    )
    return rehearsed, moments


def record_of_rehearsal(
    campaign: Campaign, plan: Plan, *, seed: int = 1, truth: SimulatedChamber | None = None
) -> xr.Dataset:
    """Return the record of a rehearsed plan; `truth` instead of a drawn chamber."""
    rehearsed, moments = measured(campaign, plan, seed=seed, truth=truth)
    return _record(plan, rehearsed, moments, campaign.chamber)


def _record(plan: Plan, rehearsed: Rehearsed, moments: FloatArray, chamber: Chamber | None = None) -> xr.Dataset:
    from colure.model.record import build_record
    from colure.twin.signal_chain import air_c

    # A plan whose budget counts on a logged temperature gets the drawn chamber's.
    air = air_c(rehearsed.truth, moments)[:, None] if chamber is not None and chamber.temperature.of_sensor else None
    return build_record(
        plan,
        plan_index=np.arange(len(plan)),
        role=plan.role,
        state_index=plan.state_index,
        trace=rehearsed.trace,
        commanded_deg=plan.targets_deg,
        readback_deg=rehearsed.readback_deg,
        rate_deg_s=rehearsed.rate_deg_s,
        time_s=moments,
        wall_time=moments,
        monotonic_s=moments,
        flags=np.zeros(len(plan), np.int64),
        sensors=() if air is None or chamber is None else (chamber.temperature.sensor or "air.temperature_c",),
        conditions=air,
    )


def rehearse(campaign: Campaign, plan: Plan, *, seed: int = 1, true: Campaign | None = None) -> Rehearsal:
    """Carry a plan out on an invented chamber and hold every stated interval against the truth; `true` as in `carry_out`.

    Raises
    ------
    InputError
        If the plan cannot be processed.
    """
    from colure.analysis.uncertainty.budget import figures_with_budget

    begin = time.perf_counter()
    pattern: xr.Dataset | PowerSphere
    if campaign.levels_alone:
        pattern, figures, rehearsed, truth = _levels_carried_out(campaign, plan, seed=seed, true=true)
    else:
        carried_out = carry_out(campaign, plan, seed=seed, true=true)
        figures, rehearsed, truth = (
            figures_with_budget(carried_out.processed.budget), carried_out.rehearsed, carried_out.truth,
        )  # fmt: skip
        pattern = carried_out.processed.pattern
    frequencies = [float(f) for f in plan.frequency_hz]
    findings = [
        FigureAgainstTruth(figure, truth[frequencies.index(figure.frequency_hz)][figure.name])
        for figure in figures
        if figure.name in truth[0]
    ]
    return Rehearsal(findings, rehearsed, pattern, time.perf_counter() - begin)


def _levels_carried_out(
    campaign: Campaign, plan: Plan, *, seed: int, true: Campaign | None
) -> tuple[PowerSphere, list[Figure], Rehearsed, list[dict[str, float]]]:
    """Return what a receiver without phase makes of a plan: levels, their figures, what was rehearsed, and the truth.

    Raises
    ------
    InputError
        If the plan cannot be evaluated.
    """
    from colure.analysis.pipeline.power_only import power_figures, power_sphere

    rehearsed, moments = measured(campaign if true is None else true, plan, seed=seed)
    record = _first_state(plan, rehearsed, moments, campaign.chamber)
    record = record.assign(trace=np.abs(record["trace"]).astype(complex))
    try:
        levels = power_sphere(
            record, campaign.chamber, _beyond_the_horn(campaign, plan.frequency_hz),
            offset_mm=campaign.device.offset_mm, probe=probe_of(campaign, plan.frequency_hz),
        )  # fmt: skip
        figures = power_figures(levels, campaign.chamber, campaign.device, campaign.evaluation())
    except ValueError as error:
        raise InputError([str(error)]) from None
    return levels, figures, rehearsed, _truth(campaign, rehearsed, region_deg=float(np.rad2deg(levels.theta[-1])))
