"""The page and the commands by hand on a mount with joints: coordinates are told, joints are drawn and moved."""

from __future__ import annotations

import json

import numpy as np
import pytest
from click.testing import CliRunner

from colure.analysis.pipeline.sweep_steps import gate_of
from colure.app.cli import main
from colure.app.web.bodies import MoveRequest
from colure.app.web.scan.hand import _pose
from colure.app.web.scan.layout import layout_for
from colure.app.web.scan.live import LiveScan
from colure.app.web.views import plan as page
from colure.app.web.views.mount import _up
from colure.app.web.views.tutor import lesson
from colure.errors import InputError
from colure.model.campaign import Campaign
from colure.model.joints import solids_of
from colure.model.recipe import Recipe
from tests.mounts import SOLIDS_OF_ARM, solid, swinging_arm, telescope
from tests.twin.test_linkage import dipole_on


@pytest.fixture
def on_an_arm(tmp_path):
    return dipole_on(swinging_arm(800), 0.8).write(tmp_path / "c")


def test_the_page_shows_coordinates_and_draws_joints(on_an_arm):
    way = page.motion_of(on_an_arm, {})
    assert way["axes"] == ["azimuth", "roll", "probe"]
    mount = way["mount"]
    assert [(one["name"], one["carries"], one["rolls"]) for one in mount["joints"]] == [
        ("turntable", "device", False),
        ("arm", "probe", False),
        ("rotary", "probe", True),
    ]
    assert mount["up"] == [0.0, 0.0, 1.0], "the turntable stands upright"
    joints = np.reshape(mount["values"], (-1, 3))
    assert len(joints) == len(way["role"]) == len(mount["slice_index"])
    # What the joints do is what the coordinates say, point by point: turntable is phi and arm is theta, or the same pose behind.
    told = np.reshape(way["angles_deg"], (-1, 3))
    assert np.allclose(_looks(joints[:, 1], joints[:, 0]), _looks(told[:, 0], told[:, 1]), rtol=0, atol=1e-4)
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
    assert told["joints"] == [30.0, 40.0, 5.0]


def _looks(theta_deg, phi_deg):
    """d = (sin th cos ph, sin th sin ph, cos th): the table of the conventions."""
    theta, phi = np.deg2rad(theta_deg), np.deg2rad(phi_deg)
    return np.stack([np.sin(theta) * np.cos(phi), np.sin(theta) * np.sin(phi), np.cos(theta)], axis=-1)


def test_readouts_with_sense_and_zero_become_values_of_joints(on_an_arm):
    """A controller that counts the arm backwards from 90: what the page draws is the joint's own value, sense * (readout - zero)."""
    path = on_an_arm / "chamber.toml"
    text = path.read_text("utf-8")
    head, tail = text.split('name = "arm"')
    path.write_text(head + 'name = "arm"\nsense = -1\nzero_deg = 10.0' + tail, "utf-8")
    live = LiveScan("c", "first", layout_for(on_an_arm))
    live.hear({"row": [0, 0, 0.0, [30.0, -30.0, 5.0], [1.0, 0.0], 0]})
    assert live.status()["joints"] == [30.0, 40.0, 5.0]
    chamber = Campaign.load(on_an_arm).chamber
    pose = _pose(chamber, {"turntable": 30.0, "arm": -30.0, "rotary": 5.0})
    assert pose == {"axes": [], "angles_deg": [], "joints": [30.0, 40.0, 5.0]}
    arm = page.motion_of(on_an_arm, {})["mount"]["joints"][1]
    assert (arm["least"], arm["most"]) == (-175.0, 195.0)


def test_the_tutor_asks_the_mount_how_it_looks_there(on_an_arm):
    found = lesson(40.0, 30.0, 0.0, on_an_arm)["mount"]
    assert found == {"values": [30.0, 40.0, 0.0], "fault": ""}
    assert lesson(40.0, 30.0)["mount"] is None
    text = (on_an_arm / "chamber.toml").read_text("utf-8")
    (on_an_arm / "chamber.toml").write_text(text.replace("min_deg = -185", "min_deg = -30").replace("max_deg = 185", "max_deg = 30"), "utf-8")  # fmt: skip
    beyond = lesson(40.0, 30.0, 0.0, on_an_arm)["mount"]
    assert beyond["values"] == [] and "arm" in beyond["fault"] and "out of reach" in beyond["fault"]


def test_solids_say_where_the_floor_is(on_an_arm):
    with (on_an_arm / "chamber.toml").open("a", encoding="utf-8") as out:
        out.write("\n" + SOLIDS_OF_ARM)
    goal = on_an_arm / "goal.toml"
    kept = [line for line in goal.read_text("utf-8").splitlines() if not line.startswith("region_deg")]
    goal.write_text("\n".join(["region_deg = 100.0", *kept]) + "\n", "utf-8")
    mount = page.motion_of(on_an_arm, {})["mount"]
    solids = {one["name"]: one for one in mount["solids"]}
    assert mount["up"] == [0.0, 0.0, 1.0] and set(solids) == {"table", "post", "floor", "boom", "horn", "tip"}
    assert [solids[name]["body"] for name in ("post", "table", "boom", "horn")] == [-1, 0, 1, 2]
    assert solids["table"]["shape"] == "box" and solids["table"]["b_m"] == pytest.approx([0.1, 0.1, 0.01])
    assert solids["boom"]["radius_m"] == 0.04 and solids["boom"]["b_m"] == pytest.approx([0.0, 0.3, 1.1])


def test_a_joint_is_moved_by_any_name_that_a_chamber_may_give_it():
    """Capitals and digits are allowed in chamber.toml, and so they are in a move by hand."""
    asked = MoveRequest.model_validate({"campaign": "c", "to_deg": {"J1": 3.0, "arm-2": 4.0}, "clear": True})
    assert set(asked.to_deg) == {"J1", "arm-2"}


def test_an_arch_above_the_device_does_not_turn_the_room_over(on_an_arm):
    """What stands farther out than the probe says nothing of the floor; a floor or a post does, on either side."""
    path = on_an_arm / "chamber.toml"
    before = path.read_text("utf-8")
    arch = "".join(
        solid(f"arch{i}", "room", at, to_mm=to, capsule_mm="40", may_touch='["arch0", "arch1"]')
        for i, (at, to) in enumerate((("[-1200, 0, -50]", "[0, 0, 1250]"), ("[0, 0, 1250]", "[1200, 0, -50]")))
    )
    for solids, up in (
        (arch, 1.0),
        (arch + solid("post", "room", "[0, 0, -1390]", to_mm="[0, 0, -170]", capsule_mm="60"), 1.0),
        (solid("floor", "room", "[0, 0, 2000]", box_mm="[3000, 3000, 100]"), -1.0),
        (solid("hanger", "room", "[0, 0, 1390]", to_mm="[0, 0, 170]", capsule_mm="60"), -1.0),
        (solid("wall", "room", "[-2000, 0, 1000]", box_mm="[100, 3000, 3000]"), 1.0),
    ):
        path.write_text(before + "\n" + solids, "utf-8")
        chamber = Campaign.load(on_an_arm).chamber
        bodies, _ = solids_of(chamber.positioner.joints, chamber.positioner.solids)
        assert _up(chamber, bodies) == [0.0, 0.0, up], solids


def test_readouts_become_the_homes_of_joints(tmp_path):
    """Degrees and, of a prismatic joint, millimetres; other joints and comments stay; beyond a limit nothing is written."""
    folder = dipole_on(telescope(800), 0.8).write(tmp_path / "c")
    path = folder / "chamber.toml"
    path.write_text(path.read_text("utf-8") + "\n# kept\n", "utf-8")
    assert page.save_readouts(folder, "home", {"arm": 3.0, "telescope": -12.5}, "one") == ["chamber.toml"]
    home = {one.name: one.home_deg for one in Campaign.load(folder).chamber.positioner.joints}
    assert home == {"turntable": 0.0, "arm": 3.0, "telescope": -12.5, "tilt": 0.0, "rotary": 0.0}
    text = path.read_text("utf-8")
    assert "home_mm = -12.5" in text and "# kept" in text
    assert page.save_readouts(folder, "home", {"telescope": 7.0}, "two") == ["chamber.toml"] and text in (
        (folder / "chamber.toml.two").read_text("utf-8"),
    )
    text = path.read_text("utf-8")
    for wrong, words in (({"telescope": 401.0}, "home_mm = 401 must be from -400 to 400 mm"), ({"mast": 1.0}, "must be one of turntable")):  # fmt: skip
        with pytest.raises(InputError, match=words):
            page.save_readouts(folder, "home", wrong, "three")
    assert path.read_text("utf-8") == text and not (folder / "chamber.toml.three").exists()
    # What shifts is said in the words and the unit of its file, what turns in degrees.
    for old, new, words in (
        ("max_mm = 400", "max_mm = 9000", "max_mm = 9000: must be a number from -3600 to 3600 mm"),
        ("speed_mm_s = 200\n", "", "speed_mm_s: missing; needs a number from 0.01 to 1000 mm/s"),
        ("max_mm = 400", "max_mm = -900", "max_mm = -900 must be above min_mm = -400 mm"),
        ("max_deg = 370", "max_deg = 9999", "max_deg = 9999: must be a number from -3600 to 3600 deg"),
    ):
        assert old in text
        path.write_text(text.replace(old, new, 1), "utf-8")
        with pytest.raises(InputError, match=words):
            Campaign.load(folder)


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
