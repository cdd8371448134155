"""Device and horn exchanged by a person: the run rests, says what to mount, and goes on; on a 4 x 4 panel over real sockets."""

from __future__ import annotations

import threading

import numpy as np
import pytest

from colure.acquire.states import State
from colure.app import services
from colure.app.services.measuring_again import again_plan
from colure.app.storage.folders import run_folder
from colure.model.campaign import Campaign
from colure.model.files import open_dataset
from colure.model.plan import ROLES, Role
from colure.planning.preflight import make_plan
from tests.coverage.scenarios import AZIMUTH_OVER_ELEVATION, Scenario, band, four_by_four, sized

HELD = {"kind": "panel", "rows": 4, "columns": 4, "pitch_mm": 6.213}


def campaign_of(folder, *, positioner=None, device=None, **reference) -> Campaign:
    chamber = {"reference": {"reconnect_db": 0.1, "reconnect_deg": 2.0, **reference}}
    if positioner is not None:
        chamber["positioner"] = positioner
    goal = band(24.1, wanted_level_db=-20, region_deg=25)
    return Campaign.load(
        Scenario(device=device or four_by_four(), goal=goal, chamber=chamber, twin={"device": HELD}).write(folder)
    )


def measured(campaign: Campaign, *, refuse: int = -1, again: str = ""):
    """Acquire; whoever is asked goes on at once, or stops at the exchange that has the number `refuse`."""
    from colure.acquire.outcome import Options

    asked, engines = [], []

    def listen(event):
        if event.data.get("state") == "paused":
            asked.append(event.text)
            act = engines[-1].resume if len(asked) - 1 != refuse else (lambda: engines[-1].stop("nobody is here"))
            threading.Timer(0.05, act).start()

    run, options = run_folder(campaign.folder, "first"), Options(pause_limit_s=5.0)
    plan = make_plan(campaign)[1]
    if again:
        campaign, plan, part = again_plan(campaign.folder, run, again)
        options = Options(pause_limit_s=5.0, again=part.points, said=again)
    outcome = services.acquire(campaign, plan, run, listener=listen, on_engine=engines.append, options=options)
    return outcome, asked


def gain_of(campaign: Campaign) -> tuple[float, float, float]:
    figures = services.read_figures(campaign, run_folder(campaign.folder, "first"))
    one = next(f for f in figures if f.name == "gain_dbi")
    rows = {row.term: row.expanded for row in one.budget}
    return one.value, one.expanded_uncertainty, rows.get("reconnection", 0.0)


def test_a_person_exchanges_horn_and_device(tmp_path):
    swap, switch = campaign_of(tmp_path / "swap", method="swap"), campaign_of(tmp_path / "switch")
    outcome, asked = measured(swap)
    assert outcome.state is State.DONE
    assert len(asked) == 2
    assert "mount the reference horn" in asked[0] and "mount the device" in asked[1]
    assert all("source is off" in text for text in asked)
    assert measured(switch)[1] == []
    record = open_dataset(run_folder(swap.folder, "first").record)
    assert record.attrs["reference_method"] == "swap"
    value, expanded, reconnection = gain_of(swap)
    other, _, _ = gain_of(switch)
    assert value == pytest.approx(other, abs=0.05)
    assert reconnection == pytest.approx(0.1, rel=0.1)
    assert expanded > reconnection


@pytest.mark.nightly
def test_the_reference_measured_again_ends_with_the_device_mounted(tmp_path):
    """The last boresight check would read the horn otherwise, and its level would be taken for drift."""
    campaign = campaign_of(tmp_path, method="swap")
    measured(campaign)
    outcome, asked = measured(campaign, again="reference")
    assert outcome.state is State.DONE, outcome.reason
    assert len(asked) == 2 and "mount the reference horn" in asked[0] and "mount the device" in asked[1]
    record = open_dataset(run_folder(campaign.folder, "first").record)
    ties = record["trace"].values[record["role"].values == ROLES.index(Role.TIE)]
    assert np.abs(np.abs(ties[-1] / ties[0]) - 1.0).max() < 0.05


@pytest.mark.nightly
def test_a_run_that_was_left_at_the_exchange_asks_again(tmp_path):
    campaign = campaign_of(tmp_path, method="swap")
    outcome, asked = measured(campaign, refuse=1)
    assert outcome.state is State.STOPPED and len(asked) == 2
    outcome, again = measured(campaign)
    assert outcome.state is State.DONE
    assert len(again) == 1 and "mount the device" in again[0]
    trace = open_dataset(run_folder(campaign.folder, "first").record)["trace"].values
    assert np.all(np.isfinite(trace))


@pytest.mark.nightly
def test_an_exchange_on_azimuth_over_elevation(tmp_path):
    """Over the shipped words of a controller whose elevation axis has the letter A."""
    campaign = campaign_of(tmp_path, method="swap", positioner=AZIMUTH_OVER_ELEVATION, device=sized(4.0, 4.0, 1.0, 5.0))
    outcome, asked = measured(campaign)
    assert (outcome.state, len(asked)) == (State.DONE, 2), outcome.reason


def test_a_person_moves_the_probe_and_the_run_goes_on_after_a_stop(tmp_path):
    """Three distances of a 4 x 4 panel over sockets: asked before each, left at the second, asked again; the bounce is found."""
    steps = {"mm": [0.0, 1.6, 3.2], "expanded_mm": 0.05, "moves": "probe"}
    goal = {**band(24.1, wanted_level_db=-20, region_deg=25), "distance_steps": steps}
    twin = {"device": HELD, "standing_wave_db": -25.0, "drift_deg": 3.0}
    campaign = Campaign.load(
        Scenario(device=four_by_four(), goal=goal, chamber={"standing_wave_db": -25.0}, twin=twin).write(tmp_path)
    )
    outcome, asked = measured(campaign, refuse=1)
    assert outcome.state is State.STOPPED, outcome.reason
    assert "distance 2 of 3: move the probe 1.600 mm away from the device" in asked[0] and "source is off" in asked[0]
    assert "distance 3 of 3: move the probe 1.600 mm away" in asked[1] and "3.200 mm from its first place" in asked[1]
    outcome, again = measured(campaign)
    assert outcome.state is State.DONE and len(again) == 1, outcome.reason
    done = services.process(campaign, run_folder(campaign.folder, "first"))
    assert done.bounce is not None and done.bounce.steps_mm == (0.0, 1.6, 3.2)
    assert 0.003 < done.bounce.rms < 0.06 and abs(done.bounce.path_deg) < 20.0
