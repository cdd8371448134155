"""Many states together: the best-of envelope and its spherical coverage."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace
from pathlib import Path
from typing import TYPE_CHECKING

import numpy as np

from colure.app.services import processing
from colure.app.services.array_states import array_run
from colure.app.services.synthesizing import codebook, each_beam
from colure.app.storage.folders import RunFolder
from colure.app.storage.run_kinds import NO_SPHERE, is_cuts
from colure.errors import InputError
from colure.geometry.conventions import FloatArray, power_db
from colure.model.campaign import Campaign
from colure.values import holds_arrays

if TYPE_CHECKING:
    from colure.analysis.pipeline.recipe import Processed
    from colure.analysis.uncertainty.inputs import Inputs
    from colure.model.evaluation import Evaluation
    from colure.model.figure import Figure

USUAL_PERCENT = (15.0, 20.0, 50.0, 85.0)
#: A level of a power-only run that changes by more than this with fewer samples is not told, dB.
MOST_SAMPLED_DB = 2.0


@dataclass(frozen=True)
@holds_arrays
class StateCoverage:
    """Coverage at mid-band: by state and of their best, values in dBi (or dBm EIRP) at each percentile.

    expanded_db
        Of all values: what moves every level together, and the largest of the states' own peaks.
    power, best_power
        (theta, phi) total gain of every state and of the best, on rings `theta` (radians).
    toward
        Azimuth and elevation of every state's peak, degrees; nan where it has no single beam.
    untold
        Usual percentages that the samples of a power-only run do not tell.
    """

    frequency_hz: float
    percent: tuple[float, ...]
    states: dict[str, FloatArray]
    best: FloatArray
    unit: str
    expanded_db: float
    peak: dict[str, float]
    power: dict[str, FloatArray]
    best_power: FloatArray
    theta: FloatArray
    toward: dict[str, tuple[float, float]]
    untold: tuple[float, ...] = ()

    @property
    def strongest(self) -> str:
        """Name of the state with the highest peak."""
        return max(self.peak, key=lambda name: self.peak[name])


def _gain_alone(settings: Evaluation) -> Evaluation:
    """Return settings without the figures that every changed pattern is read anew for: the gain needs none of them."""
    return settings.model_copy(update={"coverage_percent": (), "sectors": ()})


def _peak_alone(inputs: Inputs) -> Inputs:
    return replace(inputs, figures=replace(inputs.figures, settings=_gain_alone(inputs.figures.settings)))


@dataclass(frozen=True)
class _Seen:
    """One beam at mid-band: its figures by name, rings (radians), total gain (theta, phi), and the same from fewer samples."""

    figures: dict[str, Figure]
    theta: FloatArray
    power: FloatArray
    fewer: tuple[FloatArray, ...] = ()
    least_told: float = 0.0

    @property
    def gain(self) -> Figure:
        """Its peak gain."""
        return self.figures["gain_dbi"]

    @property
    def toward(self) -> tuple[float, float]:
        """Azimuth and elevation of its peak, degrees."""
        return self.figures["beam_azimuth_deg"].value, self.figures["beam_elevation_deg"].value


def _with_phase(run: RunFolder, processed: Processed) -> _Seen:
    from colure.analysis.uncertainty.budget import figures_with_budget
    from colure.model.pattern import field_of

    _require_whole(run, whole=processed.sphere.whole)
    middle = processed.frequency_hz.size // 2
    figures = {f.name: f for f in figures_with_budget(_peak_alone(processed.budget.only(middle)))}
    field = field_of(processed.pattern)[middle]
    return _Seen(figures, np.deg2rad(processed.pattern["theta"].values), np.sum(np.abs(field) ** 2, axis=0))


def _without_phase(campaign: Campaign, run: RunFolder) -> _Seen:
    """Return what a power-only state shows, on rings that its continuous pattern is read at."""
    from colure.analysis.pipeline.power_between import Continuous
    from colure.analysis.pipeline.power_only import FINE_RINGS, thinned
    from colure.app.services.power_runs import PowerRun

    measured = PowerRun(campaign, run)
    _require_whole(run, whole=measured.sphere.whole)
    middle = measured.frequency_hz.size // 2
    figures = {f.name: f for f in measured.evaluate(_gain_alone(campaign.evaluation()), index=middle)}
    sphere = measured.sphere.only(middle)
    between = [Continuous(one.gain[0]) for one in (sphere, *thinned(sphere))]
    fine = [one.sky(np.eye(3), least_rings=FINE_RINGS) for one in between]
    return _Seen(figures, fine[0][0], fine[0][1], tuple(power for _, power in fine[1:]), between[0].least_told)


def _require_whole(run: RunFolder, *, whole: bool) -> None:
    if not whole:
        raise InputError([f"run {run.path.name}: covers part of the sphere; coverage needs all of it (deg)"])


def coverage_over_states(campaign: Campaign, run: RunFolder) -> StateCoverage:
    """Process every state of a run and read the coverage of each and of the best of all, weighted with solid angle.

    Raises
    ------
    InputError
        If the device has one state only, the scan does not cover the whole sphere, or evaluation.toml asks for a level of
        a power-only run that its samples do not tell.
    """
    if is_cuts(run):
        raise InputError([f"run {run.path.name} {NO_SPHERE}"])
    names = processing.states_of(run)
    if len(names) < 2:
        raise InputError(
            [
                f"run {run.path.name}: {max(len(names), 1)} state: must be 2 or more for a best-of envelope (states); the coverage of one state stands in "
                "its report, and among the figures of colure evaluate with coverage_percent in evaluation.toml, such as [50]"
            ]
        )
    return _coverage(campaign, ((name, _seen(campaign, run.state(name))) for name in names))


def coverage_over_codebook(campaign: Campaign, run: RunFolder, weights: Path) -> StateCoverage:
    """Synthesize every beam of a codebook from a run's states, and read the coverage of each and of the best of all.

    Raises
    ------
    InputError
        If beams cannot be synthesized from the run, or the scan does not cover the whole sphere.
    """
    array = array_run(campaign, run)
    beams = each_beam(array, codebook(array, weights))
    return _coverage(campaign, ((name, _with_phase(run, processed)) for name, processed, _ in beams))


def _seen(campaign: Campaign, run: RunFolder) -> _Seen:
    if not processing.has_phase(run):
        return _without_phase(campaign, run)
    return _with_phase(run, processing.process(campaign, run))


def _coverage(campaign: Campaign, beams: Iterable[tuple[str, _Seen]]) -> StateCoverage:
    from colure.analysis.figures.sphere import coverage

    if not campaign.chamber.reference.absolute:
        raise InputError(["coverage: needs a reference: reference.method = 'none' in chamber.toml gives no gain (dBi)"])
    settings = campaign.evaluation()
    seen = dict(beams)
    first = next(iter(seen.values()))
    power = {name: one.power for name, one in seen.items()}
    best = np.max(np.stack(list(power.values())), axis=0)
    wanted = settings.coverage_percent or USUAL_PERCENT
    sparse = [np.max(np.stack(some), axis=0) for some in zip(*(one.fewer for one in seen.values()), strict=True)]
    every = [(best, sparse), *((one.power, list(one.fewer)) for one in seen.values())]
    least = max(one.least_told for one in seen.values())
    change = np.max([_change_db(one, fewer, first.theta, wanted, least) for one, fewer in every], axis=0)
    percent = _told(wanted, change, asked=bool(settings.coverage_percent))
    offset = 0.0 if settings.transmit_power_dbm is None else settings.transmit_power_dbm
    unit = "dBi" if settings.transmit_power_dbm is None else "dBm"

    def levels(one: FloatArray) -> FloatArray:
        return np.asarray(power_db(coverage(one, first.theta, percent), least=1e-20) + offset)

    sampled = max(change[[p in percent for p in wanted]], default=0.0)
    expanded = float(np.hypot(max(one.gain.expanded_uncertainty for one in seen.values()), sampled))
    return StateCoverage(
        first.gain.frequency_hz, percent, {name: levels(one) for name, one in power.items()}, levels(best), unit,
        expanded,
        {name: one.gain.value + offset for name, one in seen.items()}, power, best, first.theta,
        {name: one.toward for name, one in seen.items()},
        tuple(p for p in wanted if p not in percent),
    )  # fmt: skip


def _change_db(
    power: FloatArray, fewer: list[FloatArray], theta: FloatArray, percent: tuple[float, ...], least_told: float
) -> FloatArray:
    """Return by how much fewer samples change each level, dB; infinite where a level lies below what the samples tell."""
    from colure.analysis.figures.sphere import coverage

    level = coverage(power, theta, percent)
    change = np.zeros(len(percent))
    for one in fewer:
        other = coverage(one, theta, percent)
        change = np.maximum(change, np.abs(power_db(level, least=1e-20) - power_db(other, least=1e-20)))
    return np.where(level > least_told, change, np.inf)


def _told(wanted: tuple[float, ...], change_db: FloatArray, *, asked: bool) -> tuple[float, ...]:
    """Return the percentiles that the samples tell; raises `InputError` if none is left, or one that was asked for is not told."""
    loose = [(p, c) for p, c in zip(wanted, change_db, strict=True) if c > MOST_SAMPLED_DB]
    if loose and (asked or len(loose) == len(wanted)):
        raise InputError(
            [f"coverage_percent = {p:g}: "
             + (f"changes by {c:.2g} dB with fewer samples, at most {MOST_SAMPLED_DB:g}" if np.isfinite(c) else "below what the samples tell")
             + ": measure with a smaller step (step_deg in goal.toml), or ask for a larger percentage" for p,
             c in loose]
        )  # fmt: skip
    return tuple(p for p in wanted if p not in [one for one, _ in loose])
