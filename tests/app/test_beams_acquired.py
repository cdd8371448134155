"""Three beams over a part of a sphere, really acquired from the simulated chamber: every command shows the state it is asked for."""

from __future__ import annotations

import csv
import json
import shutil

import numpy as np
import pytest
from click.testing import CliRunner

from colure.app import services
from colure.app.cli import main
from colure.app.storage.folders import run_folder
from colure.app.web.views import explore
from tests.conftest import SMALL_GOAL

REGION_DEG = 60.0
STATES = """
[states]
names = ["left", "boresight", "right"]
resource = "twin"
set = "STATE {index}"
readback = "STATE?"
expect = "{index}"
"""


def command(*words, good=(0,)):
    result = CliRunner().invoke(main, [str(word) for word in words])
    assert result.exit_code in good, result.output
    return result.stdout


@pytest.fixture(scope="module")
def beams(tmp_path_factory):
    folder = tmp_path_factory.mktemp("beams") / "campaign"
    services.new_campaign(folder)
    goal = SMALL_GOAL.replace("points = 2", "points = 1").replace("stop_ghz = 24.1", "stop_ghz = 24.0")
    (folder / "goal.toml").write_text(f"{goal}region_deg = {REGION_DEG:g}\n", "utf-8")
    (folder / "twin.toml").write_text("seed = 3\nnoise = false\nstate_steer_deg = [-30, 0, 30]\n", "utf-8")
    device = (folder / "device.toml").read_text("utf-8").split("[elements]")[0]
    device = device.replace("[49.7, 49.7, 4.0]", "[14.0, 14.0, 2.0]").replace("[0.0, 0.0, -30.0]", "[0.0, 0.0, 0.0]")
    (folder / "device.toml").write_text(device + STATES, "utf-8")
    assert json.loads(command("acquire", folder, "--yes", "--json"))["state"] == "done"
    # The same run again under another name.
    shutil.copytree(folder / "runs" / "first", folder / "runs" / "second")
    return folder


def azimuth(rows):
    return next(row["value"] for row in rows if row["name"] == "beam_azimuth_deg")


def true_azimuth(folder, state):
    found = json.loads(command("truth", folder, "--state", state, "--json"))
    return found["truth"][0]["figures"]["beam_azimuth_deg"]["value"]


@pytest.mark.nightly
def test_every_reading_command_shows_the_beam_that_is_asked_for(beams, tmp_path):
    """The truth is the simulated chamber's own; the right beam first: what was written last must not answer for another."""
    for state in ("right", "left"):
        truth = true_azimuth(beams, state)
        assert abs(truth) > 25.0
        read = json.loads(command("evaluate", beams, "--state", state, "--json", good=(0, 1)))
        assert azimuth(read) == pytest.approx(truth, abs=1.0)
        if state == "right":  # the first one needs no state to be said
            command("export", beams, "csv", tmp_path / "right.csv", "--state", state)
            assert azimuth(json.loads(command("evaluate", tmp_path / "right.csv", "--json"))) == pytest.approx(
                truth, abs=1.0
            )
        seen = explore.cut(beams, "first", state, explore.PLAIN, 0, 0.0, "ludwig-3")
        assert seen["peak_theta_deg"] == pytest.approx(abs(truth), abs=1.0)
        rows = explore.overview(beams, "first", state, explore.PLAIN)["figures"]
        assert azimuth(rows) == pytest.approx(truth, abs=1.0)
    # Without a state it is the first one's.
    plain = json.loads(run_folder(beams, "first").figures.read_text("utf-8"))
    assert azimuth(plain) == pytest.approx(true_azimuth(beams, "left"), abs=1.0)


def test_a_part_of_a_sphere_that_was_acquired_is_exported_as_far_as_it_was_measured(beams, tmp_path):
    command("export", beams, "csv", tmp_path / "part.csv")
    rows = list(csv.DictReader((tmp_path / "part.csv").read_text("utf-8").splitlines()))
    theta = np.array([float(row["theta_deg"]) for row in rows])
    known = np.array([row["e_theta_re"] != "nan" for row in rows])
    assert len(rows) == 181 * 360
    assert np.array_equal(known, theta <= theta[known].max()) and REGION_DEG <= theta[known].max() < REGION_DEG + 20.0


@pytest.mark.nightly
def test_two_runs_are_compared_state_by_state(beams):
    same = json.loads(command("compare", beams, "second", "--state", "right", "--json"))
    assert same["agrees"] and azimuth(same["figures"]) == pytest.approx(true_azimuth(beams, "right"), abs=1.0)
    other = json.loads(
        command("compare", beams, "second", "--state", "left", "--other-state", "right", "--json", good=(1,))
    )
    assert not other["agrees"] and max(other["difference_db"]) > -20.0
    for run in ("first", "second"):
        for state in ("left", "right"):
            command("evaluate", beams, "--run", run, "--state", state, good=(0, 1))
    for state in ("left", "right"):
        rows = json.loads(command("series", beams, "first", "second", "--state", state, "--json"))
        mean = next(row["mean"] for row in rows if row["name"] == "beam_azimuth_deg")
        assert mean == pytest.approx(true_azimuth(beams, state), abs=1.0)
    found = json.loads(command("set-ups", beams, beams, "--other-run", "second", "--state", "right", "--json"))
    assert max(found["stray_db"]) < -200.0


def test_what_lies_beside_is_the_state_of_the_same_name(beams):
    assert explore.beside(beams, "first", "right", "second") == "right"
    assert explore.beside(beams, "first", None, "second") == "left"
    assert explore.difference(beams, "first", "second", 0, 0.0, "ludwig-3", "right")["difference_db"] < -80.0


def test_a_state_that_is_not_there_is_named(beams, tmp_path):
    for words in (
        ["compare", beams, "second", "--state", "up"],
        ["compare", beams, "second", "--other-state", "up"],
        ["series", beams, "first", "second", "--state", "up"],
        ["set-ups", beams, beams, "--state", "up"],
        ["compare", tmp_path / "a.nc", tmp_path / "b.nc", "--state", "left"],
    ):
        result = CliRunner().invoke(main, [str(word) for word in words])
        assert result.exit_code == 2 and "state" in result.output and "Traceback" not in result.output, result.output
