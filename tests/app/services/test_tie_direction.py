"""Ties look along the strongest direction that the campaign's folder knows: a dipole along z, three steered states, a beam search."""

from __future__ import annotations

import json

import numpy as np
import pytest

from colure.analysis.pipeline.recipe import process
from colure.app import services
from colure.app.services import beam_search
from colure.app.services.reference import probe_of
from colure.app.services.rehearsal import _record, record_of_rehearsal
from colure.app.services.tie_direction import keep, strongest_known, with_tie_direction
from colure.app.storage.folders import run_folder
from colure.errors import InputError
from colure.geometry.directions import from_azimuth_over_elevation
from colure.model.campaign import Campaign
from colure.model.files import save_dataset
from colure.model.record import of_state
from colure.twin.rehearsal import rehearse
from tests.coverage.scenarios import ONE, SCENARIOS, Scenario, four_by_four, sized

STATES = {"names": ["left", "middle", "right"], "program": ["true"], "loop": "outer"}
STEERED = Scenario(
    device=four_by_four(states=STATES),
    goal=ONE,
    twin={
        "device": {"kind": "panel", "rows": 4, "columns": 4, "pitch_mm": 6.213},
        "state_steer_deg": [50.0, 0.0, -50.0],
    },
)
ALONG_Z = Scenario(device=sized(1.0, 1.0, 6.0, 2.1), goal=ONE, twin=SCENARIOS["dipole along z"].twin)


def measured(folder, name):
    """Save a simulated run and return what it made of the ties."""
    run = run_folder(folder, name)
    campaign, plan = services.make_plan(folder, run)
    run.path.mkdir(parents=True)
    record = record_of_rehearsal(campaign, plan, seed=3)
    save_dataset(record, run.record)
    one = of_state(record, 0) if plan.states else record
    return process(one, campaign.chamber, campaign.device, probe=probe_of(campaign, plan.frequency_hz))


def test_a_second_run_of_a_dipole_along_z_looks_where_the_first_one_saw_it(tmp_path):
    folder = ALONG_Z.write(tmp_path / "c")
    first = measured(folder, "first")
    second = measured(folder, "second")
    print(f"ties {first.tie_below_peak_db:.1f} and {second.tie_below_peak_db:.1f} dB below the strongest sweep")
    assert first.tie_below_peak_db > 30.0 and not first.drift.readable
    assert second.tie_below_peak_db < 1.0 and second.drift.readable
    campaign, plan = services.make_plan(folder)
    azimuth, elevation = np.deg2rad(campaign.device.beam_deg)
    # A dipole is strongest across its axis (any text on antennas): 90 deg from z, within the scan's step.
    assert abs(from_azimuth_over_elevation(azimuth=azimuth, elevation=elevation)[2]) < np.sin(np.deg2rad(plan.step_deg))
    assert plan.predicted["ties"]["source"] == "run second"


def test_a_device_that_is_strong_at_the_boresight_keeps_its_plan(tmp_path):
    folder = SCENARIOS["circular, 1 dB"].write(tmp_path / "c")
    before = services.make_plan(folder)[1].hash
    measured(folder, "first")
    assert services.make_plan(folder)[1].hash == before


@pytest.mark.parametrize("told", [True, False])
def test_ties_of_three_steered_states_look_where_the_first_one_points(tmp_path, told):
    folder = STEERED.write(tmp_path / "c")
    if told:
        (folder / "evaluation.toml").write_text(
            "[commanded_deg]\nleft = [50, 0]\nmiddle = [0, 0]\nright = [-50, 0]\n", "utf-8"
        )
    done = measured(folder, "first")
    print(f"ties {done.tie_below_peak_db:.1f} dB below the strongest sweep")
    if told:
        assert done.tie_below_peak_db < 1.5
        assert services.make_plan(folder)[1].predicted["ties"]["source"] == "evaluation.toml commanded_deg of left"
    else:
        assert done.tie_below_peak_db > 6.0
        # What was not told is known after the first run: the panel's beam, element pattern and all, within a step.
        assert services.make_plan(folder)[0].device.beam_deg == pytest.approx((50.0, 0.0), abs=10.0)


def test_a_beam_search_is_believed_before_an_earlier_run_and_device_toml_before_both(tmp_path):
    folder = SCENARIOS["steered 45 deg"].write(tmp_path / "c")
    for stage in ("coarse", "fine"):
        campaign, plan = beam_search.stage_plan(folder, "look", stage)
        moments = np.arange(len(plan)) * 2.0
        found = rehearse(campaign.chamber, campaign.device, plan, moments, seed=1, holding=campaign.simulated())
        run = beam_search.stage_run(folder, "look", stage)
        run.path.mkdir(parents=True)
        save_dataset(_record(plan, found, moments), run.record)
    known = strongest_known(Campaign.load(folder))
    assert known.source == "beam search look" and known.beam_deg == pytest.approx((45.0, 0.0), abs=6.0)
    table = (folder / "device.toml").read_text("utf-8")
    (folder / "device.toml").write_text(f"beam_deg = [10.0, 0.0]\n{table}", "utf-8")
    assert strongest_known(Campaign.load(folder)).beam_deg == (10.0, 0.0)


def test_a_run_that_goes_on_keeps_the_direction_that_it_began_with(tmp_path):
    folder = ALONG_Z.write(tmp_path / "c")
    run = run_folder(folder, "first")
    run.path.mkdir(parents=True)
    begun = services.make_plan(folder, run)[1]
    keep(run, begun.predicted["ties"])
    measured(folder, "other")
    assert services.make_plan(folder)[1].hash != begun.hash
    assert services.make_plan(folder, run)[1].hash == begun.hash
    # A run that began before this was written down looks where device.toml says.
    run.tie_direction.unlink()
    run.journal.write_bytes(b"")
    assert with_tie_direction(Campaign.load(folder), run)[0].device.beam_deg == (0.0, 0.0)


def test_a_damaged_file_of_it_is_named(tmp_path):
    folder = ALONG_Z.write(tmp_path / "c")
    run = run_folder(folder, "first")
    run.path.mkdir(parents=True)
    run.tie_direction.write_text(json.dumps({"beam_deg": [90.0]}), "utf-8")
    with pytest.raises(InputError, match=r"ties\.json: must hold beam_deg \(two numbers, deg\)"):
        services.make_plan(folder, run)
