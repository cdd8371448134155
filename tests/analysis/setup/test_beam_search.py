"""The beam search: a steered beam found on every positioner, with an interval; refusals in words; zeros set to it."""

from __future__ import annotations

import json

import numpy as np
import pytest
from click.testing import CliRunner

from colure.analysis.setup.beam_search import BeamFound, beam_of, strongest
from colure.app import services
from colure.app.cli import main
from colure.app.services import beam_search
from colure.app.services.rehearsal import _record
from colure.errors import InputError
from colure.model.campaign import Campaign
from colure.model.chamber import SimulatedChamber
from colure.model.files import save_dataset
from colure.planning.beam_search import expected_beamwidth_deg, search_plan
from colure.twin.declared import stand_in
from colure.twin.rehearsal import rehearse
from colure.twin.truth import figures_of
from tests.endtoend.test_near_to_far import AZIMUTH_ELEVATION, edited
from tests.mounts import telescope
from tests.twin.test_linkage import dipole_on


def looked(campaign, plan, truth):
    found = rehearse(campaign.chamber, campaign.device, plan, np.arange(len(plan), dtype=float), seed=3, truth=truth)
    return _record(plan, found, np.arange(len(plan), dtype=float))


def test_a_beam_is_found_within_its_interval(campaign_folder):
    """The stand-in panel's beam, tilted on its mount; the truth is the twin's closed-form peak, turned the same way."""
    edited(campaign_folder, "goal.toml", ("points = 11", "points = 1"), ("stop_ghz = 24.25", "stop_ghz = 24.0"))
    campaign = Campaign.load(campaign_folder)
    device = stand_in(campaign.device, campaign.goal.frequency_hz, band_hz=campaign.goal.frequency_hz, seed=3)
    (true,) = figures_of(device, 0.0)
    for tilt, turn in ((0.0, 0.0), (7.0, 0.0), (-4.0, 9.0)):
        truth = SimulatedChamber(noise=False, seed=3, device_pose_deg=(tilt, turn, 0.0))
        coarse = strongest(looked(campaign, search_plan(campaign), truth), campaign.chamber)
        fine = search_plan(campaign, (coarse.azimuth_deg, coarse.elevation_deg))
        found = beam_of(looked(campaign, fine, truth), campaign.chamber)
        # Small rotations about x and y move the beam against elevation and along azimuth.
        wanted = np.array([true["beam_azimuth_deg"] + turn, true["beam_elevation_deg"] - tilt])
        error = np.abs(np.array([found.azimuth_deg, found.elevation_deg]) - wanted)
        print(f"tilt {tilt:g}, turn {turn:g}: found {found}, off by {error}")
        assert np.all(error < 0.25) and max(found.azimuth_expanded_deg, found.elevation_expanded_deg) < 0.3


def test_a_level_without_a_top_is_refused(campaign_folder):
    edited(campaign_folder, "goal.toml", ("points = 11", "points = 1"), ("stop_ghz = 24.25", "stop_ghz = 24.0"))
    campaign = Campaign.load(campaign_folder)
    for azimuth in (14.0, 15.5, 17.0, 20.0):  # the beam's slope, cut off by the rim of the look, and then nothing of it
        aside = search_plan(campaign, (azimuth, 0.0))
        with pytest.raises(ValueError, match="beam search"):
            beam_of(looked(campaign, aside, SimulatedChamber(noise=False, seed=3)), campaign.chamber)
    with pytest.raises(InputError, match="holds no record"):
        beam_search.stage_plan(campaign_folder, "beam", "fine")
    assert expected_beamwidth_deg(20.0) == pytest.approx(18.0)  # G = 32400/width^2 (J. D. Kraus, from memory)


def test_the_command_searches_over_sockets_and_home_is_for_azimuth_and_elevation(tiny_campaign):
    result = CliRunner().invoke(main, ["beam", str(tiny_campaign), "--yes", "--json"])
    assert result.exit_code == 0, result.output
    found = json.loads(result.output)
    assert set(found["readouts_deg"]) == {"azimuth", "roll"} and abs(found["found"]["azimuth_deg"]) < 10.0
    with pytest.raises(InputError, match="zero of a roll over azimuth lies on its roll axis"):
        beam_search.set_zeros(tiny_campaign, "beam", "now")
    assert not list(tiny_campaign.glob("chamber.toml.*"))
    # Home is where the axes go when nobody asks for more: it may be on the beam of any positioner, and no angle changes.
    before = Campaign.load(tiny_campaign).chamber.axis_table
    beam_search.set_home(tiny_campaign, "beam", "now")
    table = Campaign.load(tiny_campaign).chamber.axis_table
    for name, readout in found["readouts_deg"].items():
        assert table[name].home_deg == pytest.approx(readout, abs=1e-4) and table[name].map == before[name].map
    again = CliRunner().invoke(main, ["beam", str(tiny_campaign)])
    assert again.exit_code == 0 and "beam at azimuth" in again.output
    assert services.verify(beam_search.stage_run(tiny_campaign, "beam", "fine")).whole


def test_home_is_set_where_the_beam_is(campaign_folder):
    """Azimuth over elevation: home, or the zeros, become the beam's readouts, and the file as it was stays beside it."""
    edited(
        campaign_folder,
        "goal.toml",
        ("points = 11", "points = 1"),
        ("stop_ghz = 24.25", "stop_ghz = 24.0"),
        ('"two-pass"', '"auto"'),
    )
    text = (campaign_folder / "chamber.toml").read_text("utf-8")
    start, end = text.index("[positioner.roll]"), text.index("[probe]")
    text = text[:start] + AZIMUTH_ELEVATION + text[end:]
    (campaign_folder / "chamber.toml").write_text(text.replace("roll-over-azimuth", "azimuth-over-elevation"), "utf-8")
    truth = SimulatedChamber(noise=False, seed=3, device_pose_deg=(-6.0, 5.0, 0.0))
    for stage in ("coarse", "fine"):
        campaign, plan = beam_search.stage_plan(campaign_folder, "beam", stage)
        run = beam_search.stage_run(campaign_folder, "beam", stage)
        run.path.mkdir(parents=True)
        save_dataset(looked(campaign, plan, truth), run.record)
    before = (campaign_folder / "chamber.toml").read_text("utf-8")
    beam_search.set_home(campaign_folder, "beam", "home")
    table = Campaign.load(campaign_folder).chamber.axis_table
    assert table["azimuth"].home_deg == pytest.approx(5.0, abs=0.3) and table["azimuth"].zero_deg == 0.0
    assert table["elevation"].home_deg == pytest.approx(6.0, abs=0.3) and table["elevation"].zero_deg == 0.0
    (campaign_folder / "chamber.toml").write_text(before, "utf-8")
    words = beam_search.set_zeros(campaign_folder, "beam", "before")
    assert len(words) == 2 and (campaign_folder / "chamber.toml.before").read_text("utf-8") == before
    table = Campaign.load(campaign_folder).chamber.axis_table
    assert table["azimuth"].zero_deg == pytest.approx(5.0, abs=0.3)
    assert table["elevation"].zero_deg == pytest.approx(6.0, abs=0.3)


def test_the_home_of_joints_turns_the_beam_to_the_probe(tmp_path, monkeypatch):
    """Readouts of joints become their homes, of a prismatic one in millimetres; a beam out of reach is refused with the limit."""
    folder = dipole_on(telescope(800), 0.8).write(tmp_path / "c")
    beam = BeamFound(
        azimuth_deg=10.0, elevation_deg=-4.0, azimuth_expanded_deg=0.1, elevation_expanded_deg=0.1, level_db=-50.0
    )
    readouts = {"turntable": 21.8, "arm": 12.5, "telescope": 3.25, "tilt": -1.5, "rotary": 0.0}
    units = {name: "mm" if name == "telescope" else "deg" for name in readouts}
    found = beam_search.Search(beam, readouts, "", units)
    assert "telescope 3.250 mm" in found.sentences()[1] and "arm 12.500 deg" in found.sentences()[1]
    monkeypatch.setattr(beam_search, "result", lambda *_: found)
    said = beam_search.set_home(folder, "beam", "home")
    assert "telescope: home at 3.2500 mm now" in said
    assert {one.name: one.home_deg for one in Campaign.load(folder).chamber.positioner.joints} == readouts
    kept = (folder / "chamber.toml").read_text("utf-8")
    lost = beam_search.Search(beam, readouts, "joint arm = 200: must be from -185 to 185 deg", units)
    assert "does not reach it: joint arm = 200" in lost.sentences()[1]
    monkeypatch.setattr(beam_search, "result", lambda *_: lost)
    with pytest.raises(InputError, match="out of reach: joint arm = 200"):
        beam_search.set_home(folder, "beam", "again")
    assert (folder / "chamber.toml").read_text("utf-8") == kept
