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
from colure.errors import InputError
from colure.geometry.conventions import FloatArray, power_db
from colure.model.campaign import Campaign
from colure.values import holds_arrays

if TYPE_CHECKING:
    from colure.analysis.pipeline.recipe import Processed
    from colure.analysis.uncertainty.inputs import Inputs

USUAL_PERCENT = (15.0, 20.0, 50.0, 85.0)


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

    @property
    def strongest(self) -> str:
        """Name of the state with the highest peak."""
        return max(self.peak, key=lambda name: self.peak[name])


def _peak_alone(inputs: Inputs) -> Inputs:
    """Return a budget's inputs without the figures that every changed pattern is read anew for: the gain needs none of them."""
    settings = inputs.figures.settings.model_copy(update={"coverage_percent": (), "sectors": ()})
    return replace(inputs, figures=replace(inputs.figures, settings=settings))


def coverage_over_states(campaign: Campaign, run: RunFolder) -> StateCoverage:
    """Process every state of a run and read the coverage of each and of the best of all, weighted with solid angle.

    Raises
    ------
    InputError
        If the device has one state only, or the scan does not cover the whole sphere.
    """
    names = processing.states_of(run)
    if len(names) < 2:
        raise InputError(
            [f"run {run.path.name}: {max(len(names), 1)} state, needs at least 2 for a best-of envelope (states)"]
        )
    return _coverage(campaign, run, ((name, processing.process(campaign, run.state(name))) for name in names))


def coverage_over_codebook(campaign: Campaign, run: RunFolder, weights: Path) -> StateCoverage:
    """Synthesize every beam of a codebook from a run's states, and read the coverage of each and of the best of all.

    Raises
    ------
    InputError
        If beams cannot be synthesized from the run, or the scan does not cover the whole sphere.
    """
    array = array_run(campaign, run)
    beams = each_beam(array, codebook(array, weights))
    return _coverage(campaign, run, ((name, done) for name, done, _ in beams))


def _coverage(campaign: Campaign, run: RunFolder, beams: Iterable[tuple[str, Processed]]) -> StateCoverage:
    from colure.analysis.figures.sphere import coverage
    from colure.analysis.uncertainty.budget import figures_with_budget
    from colure.model.pattern import field_of

    if not campaign.chamber.reference.absolute:
        raise InputError(["coverage: needs a reference: reference.method = 'none' in chamber.toml gives no gain (dBi)"])
    settings = campaign.evaluation()
    percent = settings.coverage_percent or USUAL_PERCENT
    power, peak, toward, expanded, frequency, theta = {}, {}, {}, 0.0, 0.0, np.zeros(0)
    for name, done in beams:
        if not done.sphere.whole:
            raise InputError([f"run {run.path.name}: covers part of the sphere; coverage needs all of it (deg)"])
        middle = done.frequency_hz.size // 2
        frequency, theta = float(done.frequency_hz[middle]), np.deg2rad(done.pattern["theta"].values)
        power[name] = np.sum(np.abs(field_of(done.pattern)[middle]) ** 2, axis=0)
        read = {f.name: f for f in figures_with_budget(_peak_alone(done.budget.only(middle)))}
        gain = read["gain_dbi"]
        toward[name] = (read["beam_azimuth_deg"].value, read["beam_elevation_deg"].value)
        peak[name], expanded = gain.value, max(expanded, gain.expanded_uncertainty)
    offset = 0.0 if settings.transmit_power_dbm is None else settings.transmit_power_dbm
    unit = "dBi" if settings.transmit_power_dbm is None else "dBm"

    def levels(one: FloatArray) -> FloatArray:
        return np.asarray(power_db(coverage(one, theta, percent), least=1e-20) + offset)

    best = np.max(np.stack(list(power.values())), axis=0)
    return StateCoverage(
        frequency, percent, {name: levels(one) for name, one in power.items()}, levels(best), unit, expanded,
        {name: value + offset for name, value in peak.items()}, power, best, theta, toward,
    )  # fmt: skip
