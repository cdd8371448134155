"""The page and the commands by hand on a mount with joints: coordinates are drawn, joints are moved."""

from __future__ import annotations

import json

import numpy as np
import pytest
from click.testing import CliRunner

from colure.analysis.pipeline.sweep_steps import gate_of
from colure.app.cli import main
from colure.app.web.scan.layout import layout_for
from colure.app.web.scan.live import LiveScan
from colure.app.web.views import plan as page
from colure.errors import InputError
from colure.model.campaign import Campaign
from colure.model.recipe import Recipe
from tests.mounts import swinging_arm
from tests.twin.test_linkage import dipole_on


@pytest.fixture
def on_an_arm(tmp_path):
    return dipole_on(swinging_arm(800), 0.8).write(tmp_path / "c")


def test_the_page_shows_coordinates_and_says_that_joints_are_not_drawn(on_an_arm):
    way = page.motion_of(on_an_arm, {})
    assert way["axes"] == ["azimuth", "roll", "probe"] and "3 joints of the mount are not drawn" in way["formula"]
    angles = np.reshape(way["angles_deg"], (-1, 3))
    assert len(angles) == len(way["role"]) and np.abs(angles[:, 0]).max() <= 180.0
    # The tutor names the joints' own limits, as the chamber declares them, and its slices stay where the plan goes.
    assert way["limits_words"] == ["turntable -10 to 370 deg", "arm -185 to 185 deg", "rotary -200 to 200 deg"]
    assert way["limits_deg"][0] == [angles[:, 0].min(), angles[:, 0].max()] and way["limits_deg"][0][1] <= 180.0
    layout = layout_for(on_an_arm)
    scan = np.flatnonzero(layout.cell >= 0)
    # Where a point's coordinates look is where the page draws it: d = (sin th cos ph, sin th sin ph, cos th).
    theta, phi = np.deg2rad(angles[scan, 0]), np.deg2rad(angles[scan, 1])
    d = np.stack([np.sin(theta) * np.cos(phi), np.sin(theta) * np.sin(phi), np.cos(theta)], axis=-1)
    off_pole = np.abs(np.sin(theta)) > 1e-6
    assert np.allclose(layout.directions[layout.cell[scan]][off_pole], d[off_pole], rtol=0, atol=1e-3)
    # A scan tells coordinates of the joints it read. Turntable 30 deg is phi, arm 40 deg is theta: the drawing of the mount.
    live = LiveScan("c", "first", layout)
    live.hear({"row": [0, 0, 0.0, [30.0, 40.0, 5.0], [1.0, 0.0], 0]})
    told = live.status()
    assert told["axes"] == ["azimuth", "roll", "probe"]
    assert told["position_deg"] == pytest.approx([40.0, 30.0, 5.0], abs=1e-3) == told["angles_deg"]


def test_homes_of_joints_are_not_written_by_the_page(on_an_arm):
    with pytest.raises(InputError, match="home_deg"):
        page.save_home(on_an_arm, {"arm": 3.0}, "stamp")


def test_aim_and_goto_from_the_command_line(on_an_arm):
    def run(*words: str):
        return CliRunner().invoke(main, [str(word) for word in words])

    aimed = json.loads(run("aim", "--theta", "40", "--phi", "30", "--campaign", on_an_arm, "--json").stdout)
    assert aimed[0]["solutions"][0]["readouts_deg"] == pytest.approx({"turntable": 30, "arm": 40, "rotary": 0})
    back = run("aim", "--readout", "turntable=30,arm=40,rotary=0", "--campaign", on_an_arm)
    assert back.exit_code == 0 and "40.000 / 30.000" in back.output, back.output
    there = run("goto", on_an_arm, "--theta", "40", "--phi", "30", "--yes", "--json")
    assert json.loads(there.stdout) == pytest.approx({"turntable": 30, "arm": 40, "rotary": 0}, abs=0.02), there.output
    beyond = run("goto", on_an_arm, "--theta", "40", "--phi", "30", "--home", "--yes", "--json")
    assert json.loads(beyond.stdout) == pytest.approx({"turntable": 0, "arm": 0, "rotary": 0}, abs=0.02), beyond.output


def test_steps_that_a_swinging_probe_does_not_allow_are_refused(on_an_arm):
    campaign = Campaign.load(on_an_arm)
    with pytest.raises(InputError, match=r"recipe.toml: step 'gate': must be off"):
        gate_of(
            None,
            campaign.chamber,
            campaign.device,
            Recipe.model_validate({"steps": [{"step": name} for name in ("gate", "gain", "assemble")]}),
        )
