"""What differs from slice to slice at a pole is averaged by the assembly: no drawn error may hold it, or be too small without its mean."""

from __future__ import annotations

import numpy as np
import pytest

from colure.analysis.pipeline.recipe import process
from colure.analysis.uncertainty import rooms
from colure.analysis.uncertainty.trial import Trial
from colure.app import services
from colure.app.services.reference import probe_of
from colure.app.services.rehearsal import record_of_rehearsal


@pytest.fixture
def trial(tiny_campaign):
    campaign, plan = services.make_plan(tiny_campaign)
    record = record_of_rehearsal(campaign, plan, seed=3)
    probe = probe_of(campaign, plan.frequency_hz)
    inputs = process(record, campaign.chamber, campaign.device, probe=probe, grid_step_deg=30.0).budget
    nominal = inputs.step.expansion(inputs.sphere.field)
    return Trial(inputs, nominal, *inputs.figures.read(nominal))


def only_at_a_pole(sphere):
    """An error that turns with the slices twice as fast as a field in one direction may: its mean in a fixed frame is nothing."""
    error = np.zeros_like(sphere.field)
    error[:, 0, 0], error[:, 1, 0] = np.cos(3.0 * sphere.phi), np.sin(3.0 * sphere.phi)
    return error


def test_what_the_assembly_averages_away_moves_nothing(trial):
    sphere, step = trial.inputs.sphere, trial.inputs.step
    error = only_at_a_pole(sphere)
    assert np.abs(step.measured(error)).max() > 1e-3  # the transform itself would take it in
    size = np.abs(trial.nominal.coefficients).max()
    assert np.abs(trial.changed_field(sphere.field + error)).max() < 1e-9 * size


def test_echoes_that_the_assembly_averages_away_move_nothing(trial, monkeypatch):
    sphere, inputs = trial.inputs.sphere, trial.inputs
    nothing = np.zeros(sphere.frequency_hz.size, complex)
    monkeypatch.setattr(rooms, "stray_in_a_room", lambda *_: lambda: (only_at_a_pole(sphere), nothing))
    moved = rooms.in_a_room(trial, inputs.chamber.echo_amplitude, np.random.default_rng(1))(1)
    assert np.abs(moved).max() < 1e-6 * np.abs(trial.nominal.coefficients).max()
