"""What is tried on the explore page: a gate and steps left out change what is shown, and nothing on disk."""

from __future__ import annotations

import numpy as np
import pytest

from colure.app import services
from colure.app.services.rehearsal import record_of_rehearsal
from colure.app.storage.folders import run_folder
from colure.app.web.views.explore import PLAIN, ViewSettings, impulse, opened, overview
from colure.errors import InputError
from colure.model.chamber import SimulatedChamber
from colure.model.files import save_dataset
from tests.endtoend.test_near_to_far import edited


@pytest.fixture
def run(tiny_campaign):
    """A run over a band that a gate can work on."""
    edited(tiny_campaign, "goal.toml", ("points = 1", "points = 7"), ("stop_ghz = 24.0", "stop_ghz = 24.6"))
    campaign, plan = services.make_plan(tiny_campaign)
    folder = run_folder(tiny_campaign, "first")
    folder.path.mkdir(parents=True)
    save_dataset(record_of_rehearsal(campaign, plan, truth=SimulatedChamber(noise=False)), folder.record)
    return tiny_campaign


def test_a_gate_is_tried_within_its_limits(run):
    shown = impulse(run, "first")
    least, most = shown["widths_ns"]
    # 2 / span and 1 / step of seven frequencies over 0.6 GHz (the gate's own definition).
    assert least == pytest.approx(10.0 / 3.0) and most == pytest.approx(10.0)
    before = run_folder(run, "first").record.read_bytes()
    trial = ViewSettings(gate_ns=(shown["strongest_ns"], 5.0))
    tried, plain = opened(run, "first", None, trial), opened(run, "first")
    recipe = plain.recipe
    assert recipe is not None
    by_hand = services.process_with(
        services.make_plan(run)[0],
        run_folder(run, "first"),
        recipe.gated(centre_ns=shown["strongest_ns"], width_ns=5.0),
    )
    np.testing.assert_array_equal(tried.expansion.coefficients, by_hand.expansion.coefficients)
    assert not np.allclose(tried.expansion.coefficients, plain.expansion.coefficients, rtol=1e-6, atol=0.0)
    steps = {one["name"]: one["on"] for one in overview(run, "first", None, trial)["steps"]}
    assert (
        steps["gate"] and not {one["name"]: one["on"] for one in overview(run, "first", None, PLAIN)["steps"]}["gate"]
    )
    assert run_folder(run, "first").record.read_bytes() == before
    with pytest.raises(InputError, match="must be from"):
        opened(run, "first", None, ViewSettings(gate_ns=(1.0, 0.1)))


def test_steps_are_left_out_by_name(run):
    assert not opened(run, "first", None, ViewSettings(off=("drift",))).recipe.runs("drift")
    with pytest.raises(InputError, match="cannot be switched off"):
        opened(run, "first", None, ViewSettings(off=("gain",)))
