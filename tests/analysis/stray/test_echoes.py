"""Where stray signals come from, and what two set-ups say of them: against the simulated room."""

from __future__ import annotations

import json

import numpy as np
import pytest
from click.testing import CliRunner

from colure.analysis.compare.match import Freedom, match
from colure.analysis.pipeline.recipe import process
from colure.analysis.stray.echo_map import echo_map
from colure.app import services
from colure.app.cli import main
from colure.app.services.reference import probe_of
from colure.app.services.rehearsal import record_of_rehearsal
from colure.app.storage.folders import run_folder
from colure.geometry.rotations import from_rotation_vector
from colure.model.chamber import EchoTable, SimulatedChamber
from colure.model.files import save_dataset
from colure.twin.antennas import panel
from tests.conftest import expansion_of
from tests.endtoend.test_near_to_far import edited


@pytest.mark.parametrize(
    ("normal", "distance", "azimuth", "place"),
    [((1.0, 0.0, 0.0), 0.75, np.degrees(np.arctan2(1.5, 1.2)), "the right wall"),
     pytest.param((-1.0, 0.0, 0.0), 0.9, -np.degrees(np.arctan2(1.8, 1.2)), "the left wall", marks=pytest.mark.nightly)],
)  # fmt: skip
def test_the_map_points_at_the_wall_and_says_how_late_it_answers(campaign_folder, normal, distance, azimuth, place):
    """Image of the probe in the wall (geometrical optics): direction within 4 deg, longer way within the band's resolution."""
    edited(campaign_folder, "goal.toml", ("points = 11", "points = 5"), ("stop_ghz = 24.25", "stop_ghz = 24.7"))
    campaign, plan = services.make_plan(campaign_folder)
    wall = EchoTable(normal=normal, distance_m=distance, level_db=-20.0, phase_deg=40.0)
    record = record_of_rehearsal(campaign, plan, truth=SimulatedChamber(echoes=(wall,), probe_cross_polar_db=-60))
    done = process(
        record, campaign.chamber, campaign.device, probe=probe_of(campaign, plan.frequency_hz), grid_step_deg=15
    )
    found = echo_map(done.sphere, done.step, done.expansion, campaign.chamber.positioner.geometry)
    print(found.echoes)
    first = found.echoes[0]
    assert first.place == place and abs(first.elevation_deg) < 4.0
    assert first.azimuth_deg == pytest.approx(azimuth, abs=4.0)
    longer = np.hypot(2 * distance, 1.2) - 1.2
    assert first.excess_m == pytest.approx(longer, abs=0.5 * first.resolution_m)
    assert first.share > 0.25  # the device's own wide radiation beside the wall's


def test_a_quiet_room_has_no_echo_to_name(campaign_folder):
    edited(campaign_folder, "goal.toml", ("points = 11", "points = 1"), ("stop_ghz = 24.25", "stop_ghz = 24.0"))
    campaign, plan = services.make_plan(campaign_folder)
    record = record_of_rehearsal(campaign, plan, truth=SimulatedChamber(probe_cross_polar_db=-60))
    done = process(
        record, campaign.chamber, campaign.device, probe=probe_of(campaign, plan.frequency_hz), grid_step_deg=15
    )
    assert echo_map(done.sphere, done.step, done.expansion, campaign.chamber.positioner.geometry).echoes == ()


def test_pose_level_and_difference_are_told_apart():
    """A panel turned by 1.4 deg, moved by 1.3 mm and 1 dB stronger: each found, nothing left between them."""
    frequency = np.array([24.0e9, 24.25e9])
    one = expansion_of(panel(frequency), 38)
    turn, shift = np.array([0.3, -0.5, 1.2]), np.array([0.4, -0.3, 1.1])
    other = one.rotated(from_rotation_vector(np.deg2rad(turn))).translated(1e-3 * shift)
    other = other.with_coefficients(other.coefficients * 10 ** (1 / 20) * np.exp(0.4j))
    for region in (np.pi, np.deg2rad(60.0)):
        found = match(other, one, region=region)
        assert found.rotation_deg == pytest.approx(turn, abs=1e-8) and found.shift_mm == pytest.approx(shift, abs=1e-8)
        assert found.level_db == pytest.approx(1.0, abs=1e-9) and found.difference_db.max() < -150.0
    kept = match(other, one, freedom=Freedom(frame=False, origin=False, level=False))
    assert kept.level_db == pytest.approx(0.0, abs=1e-12) and kept.difference_db.max() > -40.0
    with pytest.raises(ValueError, match="different frequencies"):
        match(one, expansion_of(panel(frequency + 1e8), 38))


def test_two_distances_show_the_rooms_stray_level(campaign_folder, tmp_path, nightly):
    """The same panel at 1.2 and 1.3 m beside a wall: the level from the difference against the true stray field's."""
    edited(campaign_folder, "goal.toml", ("points = 11", "points = 1"), ("stop_ghz = 24.25", "stop_ghz = 24.0"))
    wall, runs, true = EchoTable(normal=(1.0, 0.0, 0.0), distance_m=0.7, level_db=-25.0), [], []
    for length in ("1.2", "1.3"):
        folder = tmp_path / length
        services.new_campaign(folder)
        for name in ("goal.toml", "device.toml"):
            (folder / name).write_text((campaign_folder / name).read_text("utf-8"), "utf-8")
        edited(folder, "chamber.toml", ("range_length_m = 1.2 ", f"range_length_m = {length} "))
        campaign, plan = services.make_plan(folder)
        probe, clean = probe_of(campaign, plan.frequency_hz), None
        for echoes in ((), (wall,)):
            truth = SimulatedChamber(noise=False, probe_cross_polar_db=-200, echoes=echoes)
            record = record_of_rehearsal(campaign, plan, truth=truth)
            done = process(record, campaign.chamber, campaign.device, probe=probe, grid_step_deg=15)
            clean = done.expansion if clean is None else clean
        run = run_folder(folder, "first")
        run.path.mkdir(parents=True)
        save_dataset(record, run.record)
        runs.append(folder)
        true.append(match(clean, done.expansion).difference_db[0])
    arguments = ["set-ups", *map(str, runs), "--mean", str(tmp_path / "mean.nc")]
    result = CliRunner().invoke(main, [*arguments, "--json"])
    found = json.loads(result.output)
    print(f"stray {found['stray_db'][0]:.1f} dB from the difference, {true[0]:.1f} and {true[1]:.1f} dB in truth")
    assert found["stray_db"][0] == pytest.approx(np.mean(true), abs=2.5)
    assert (tmp_path / "mean.nc").is_file()
    again = CliRunner().invoke(main, arguments)
    assert again.exit_code == 2 and "exists already" in again.stderr
