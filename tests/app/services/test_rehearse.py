"""A rehearsal's stated uncertainties hold its errors, and what was drawn is within what is declared."""

from __future__ import annotations

import json
import subprocess
import sys

import numpy as np
import pytest

from colure.app import services
from colure.app.services.rehearsal import REMEDIES, rehearse
from colure.model.chamber import EchoTable, SimulatedChamber
from colure.model.definitions import NAMES
from colure.twin import rehearsal as rehearsal_room
from colure.twin.chamber import SimulatedRange
from colure.twin.devices import device_maker
from colure.twin.rehearsal import draw_chamber
from colure.twin.sources import Cluster
from tests.coverage.scenarios import HORN_5_8_GHZ, Scenario, band, sized
from tests.docs.worlds import four_by_four
from tests.endtoend.test_near_to_far import edited


@pytest.fixture
def light(campaign_folder):
    """A quarter of the demo's panel at two frequencies, on the axes' crossing: fewer waves, fewer points."""
    four_by_four(campaign_folder)
    edited(campaign_folder, "goal.toml", ("points = 11", "points = 2"))
    edited(campaign_folder, "device.toml", ("[0.0, 0.0, -30.0]", "[0.0, 0.0, 0.0]"))
    return campaign_folder


@pytest.mark.parametrize(("style", "seed"), [("step", 1), ("fly", 2)])
def test_intervals_hold_the_errors(light, style, seed):
    with (light / "goal.toml").open("a", encoding="utf-8") as out:
        out.write(f'style = "{style}"\n')
    campaign, plan = services.make_plan(light)
    found = rehearse(campaign, plan, seed=seed)
    print(f"{style}: {100 * found.share_inside:.1f} % inside, {found.seconds:.1f} s")
    assert found.share_inside >= 0.93
    assert {cause for cause, _ in found.causes()} <= set(REMEDIES)
    # Errors are real, not intervals that swallow everything: gain is off by more than a thousandth.
    assert max(abs(f.error) for f in found.findings if f.figure.name == "gain_dbi") > 1e-3


def test_walls_are_as_strong_as_the_chamber_declares_its_stray_signals(light):
    campaign, plan = services.make_plan(light)
    truth = draw_chamber(campaign.chamber, campaign.device, plan, 3)
    make = device_maker(truth, campaign.device, band_hz=plan.frequency_hz)
    found = rehearsal_room._stray_db(campaign.chamber, make, plan, truth)
    assert found == pytest.approx(campaign.chamber.echo_level_db, abs=0.05)


def test_a_circular_probe_hears_the_same_walls_of_a_circular_device(tmp_path):
    """Half of an echo goes to each linear port, nearly all of it to one circular port: 3 dB between what one reading hears (derivable)."""
    walls = {}
    for polarization in ("linear", "circular"):
        helix = Scenario(
            device=sized(18, 18, 50, 10, polarization="right"),
            goal=band(5.8, scheme="auto"),
            chamber={"reference": HORN_5_8_GHZ, "probe": {"ports": 2, "polarization": polarization}},
            twin={"device": {"kind": "helix", "turns": 4}},
        )
        campaign, plan = services.make_plan(helix.write(tmp_path / polarization))
        drawn = draw_chamber(campaign.chamber, campaign.device, plan, 3, holding=campaign.simulated())
        walls[polarization] = np.array([one.level_db for one in drawn.echoes])
    louder = walls["circular"] - walls["linear"]
    assert np.ptp(louder) < 1e-6
    assert 0.0 < louder[0] < 3.2


def test_the_chamber_is_drawn_within_its_declarations(light, monkeypatch):
    monkeypatch.setattr(rehearsal_room, "_stray_db", lambda *_: -50.0)
    campaign, plan = services.make_plan(light)
    a = campaign.chamber.alignment
    draws = [draw_chamber(campaign.chamber, campaign.device, plan, seed) for seed in range(40)]
    for name, expanded in (("theta_zero_deg", a.theta_zero_deg), ("probe_roll_zero_deg", a.probe_roll_zero_deg)):
        values = np.array([getattr(draw, name) for draw in draws])
        assert np.all(np.abs(values) <= 1.5 * expanded) and 0.3 * expanded < values.std() < 0.7 * expanded


def test_walls_stand_where_the_declared_extra_paths_put_them(light, monkeypatch):
    """Turn of the phase over frequency of what each wall adds: the path that the analyzer would see."""
    monkeypatch.setattr(rehearsal_room, "_stray_db", lambda chamber, *_: chamber.echo_level_db)
    edited(light, "chamber.toml", ("door_distance_m", "echo_excess_m = [0.7, 1.9]\ndoor_distance_m"))
    campaign, plan = services.make_plan(light)
    chamber, device = campaign.chamber, campaign.device
    band = np.array([24.0e9, 24.02e9])  # a turn of the phase is 15 m
    ahead = {"azimuth": np.zeros(1), "roll": np.zeros(1), "probe": np.zeros(1)}

    def one_dipole(frequency_hz):
        one, f = np.ones((1, 3)), np.asarray(frequency_hz)
        return Cluster(f, 0.0 * one, one * [1.0, 0.3, 0.2], 0j * one, np.ones((f.size, 1), complex), np.ones(f.size))

    for seed in range(6):
        walls = draw_chamber(chamber, device, plan, seed).echoes
        found = []
        for wall in walls:
            rooms = [
                SimulatedRange(chamber, SimulatedChamber(noise=False, echoes=echoes), one_dipole)
                for echoes in ((), (wall,))
            ]
            for room in rooms:
                room.set_frequencies(band)
            clean, dirty = (room.received(ahead, 1)[0] for room in rooms)
            turn = np.angle(((dirty - clean) / clean)[1] / ((dirty - clean) / clean)[0])
            found.append(-turn * 299_792_458.0 / (2.0 * np.pi * (band[1] - band[0])))
        # The probe's phase pattern towards a wall shifts this by millimetres.
        assert np.all(np.min(np.abs(np.array(found)[:, None] - [0.7, 1.9]), axis=1) < 0.02)
        assert min(found) < 0.75 and max(found) > 1.85


def test_a_wall_that_would_stand_in_the_device_stands_behind_the_probe():
    wall = EchoTable(normal=(0.0, 0.0, -1.0), distance_m=0.5, level_db=-30.0)
    moved = rehearsal_room._at_excess(wall, 0.2, 1.2, 0.3)
    assert moved.normal[2] > 0.9 and 2.0 * moved.distance_m - 1.2 == pytest.approx(1.4, abs=1e-9)


def test_the_command(light):
    edited(light, "goal.toml", ("points = 2", "points = 1"), ("stop_ghz = 24.25", "stop_ghz = 24.00"))
    done = subprocess.run(
        [sys.executable, "-m", "colure", "rehearse", str(light), "--draws", "2", "--json"],
        capture_output=True,
        text=True,
        timeout=200,
    )
    content = json.loads(done.stdout)
    one, two = content["draws"]
    assert content["note"].startswith("invented") and len(one["figures"]) == len(NAMES)
    assert [row["value"] for row in one["figures"]] != [row["value"] for row in two["figures"]]
    assert done.returncode == (0 if content["share_inside"] >= 0.93 else 1)
    assert not (light / "runs").exists(), "a rehearsal measures nothing"
