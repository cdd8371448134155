"""Many beam states: coverage of each and of their best, weighted with solid angle."""

from __future__ import annotations

import json
import shutil
from pathlib import Path

import numpy as np
import pytest
from click.testing import CliRunner

from colure.app import services
from colure.app.cli import main
from colure.app.scale.batch import find_items, run_batch
from colure.app.services.rehearsal import record_of_rehearsal
from colure.app.storage.folders import run_folder
from colure.model.chamber import SimulatedChamber
from colure.model.files import save_dataset
from tests.conftest import small

STATES = """
[states]
names = ["left", "broadside", "right"]
loop = "inner"
program = ["true"]
"""


@pytest.fixture(scope="module")
def rehearsed(tmp_path_factory):
    """A small panel with three beams, rehearsed once for all tests."""
    folder = tmp_path_factory.mktemp("states") / "campaign"
    services.new_campaign(folder)
    small(folder)
    device = folder / "device.toml"
    text = device.read_text("utf-8").split("[elements]")[0]
    device.write_text(text + STATES, "utf-8")
    goal = folder / "goal.toml"
    goal.write_text(
        goal.read_text("utf-8").replace("points = 2", "points = 1").replace("stop_ghz = 24.1", "stop_ghz = 24.0"),
        "utf-8",
    )
    campaign, plan = services.make_plan(folder)
    truth = SimulatedChamber(noise=False, state_steer_deg=(-40.0, 0.0, 40.0))
    run = run_folder(folder, "first")
    run.path.mkdir(parents=True)
    save_dataset(record_of_rehearsal(campaign, plan, truth=truth), run.record)
    return folder


@pytest.fixture
def beams(rehearsed, tmp_path):
    """A copy of one's own of what was rehearsed."""
    return Path(shutil.copytree(rehearsed, tmp_path / "beams"))


def test_the_best_of_all_covers_more_than_each(beams):
    (beams / "evaluation.toml").write_text("coverage_percent = [20, 50, 80]\ntransmit_power_dbm = 10\n", "utf-8")
    result = CliRunner().invoke(main, ["coverage", str(beams), "--json"])
    found = json.loads(result.output)
    assert found["unit"] == "dBm" and list(found["states"]) == ["left", "broadside", "right"]
    rows = np.array(list(found["states"].values()))
    assert np.all(np.array(found["best"]) >= rows.max(axis=0) - 1e-9) and np.all(np.diff(rows, axis=1) > 0)
    # The two steered beams mirror each other.
    assert rows[0] == pytest.approx(rows[2], abs=0.3)
    assert found["expanded_db"] > 0.2 and max(found["peak"].values()) > max(found["best"])
    drawn = beams / "coverage.png"
    assert "best of all" in CliRunner().invoke(main, ["coverage", str(beams), "--plot", str(drawn)]).output
    assert drawn.read_bytes().startswith(b"\x89PNG")


def test_one_state_has_no_envelope(small_campaign):
    campaign, plan = services.make_plan(small_campaign)
    run = run_folder(small_campaign, "first")
    run.path.mkdir(parents=True)
    save_dataset(record_of_rehearsal(campaign, plan, truth=SimulatedChamber(noise=False)), run.record)
    result = CliRunner().invoke(main, ["coverage", str(small_campaign)])
    assert result.exit_code == 2 and "1 state: must be 2 or more" in result.stderr


@pytest.mark.nightly
def test_a_batch_does_every_state_by_itself(beams):
    items = find_items([str(beams)])
    assert [item.state for item in items] == ["left", "broadside", "right"]
    found = {one.item.state: one for one in run_batch(items, "evaluate", scheduler="threads", workers=2)}
    assert {one.status for one in found.values()} == {"done"}
    azimuth = {
        state: next(r["value"] for r in one.rows if r["name"] == "beam_azimuth_deg") for state, one in found.items()
    }
    assert azimuth["left"] < -20.0 < abs(azimuth["broadside"]) + 1.0 and azimuth["right"] > 20.0
    assert all(row["state"] == state for state, one in found.items() for row in one.rows)
    run = run_folder(beams, "first")
    kept = json.loads(run.of_state(run.figures, "left").read_text("utf-8"))
    assert next(one["value"] for one in kept if one["name"] == "beam_azimuth_deg") == azimuth["left"]
    run.of_state(run.figures, "right").unlink()
    again = {one.item.state: one.status for one in run_batch(items, "evaluate", scheduler="threads")}
    assert again == {"left": "kept", "broadside": "kept", "right": "done"}


def beam_of(path) -> float:
    rows = json.loads(path.read_text("utf-8"))
    return next(row["value"] for row in rows if row["name"] == "beam_azimuth_deg")


def test_a_state_is_part_of_every_address(beams):
    """Three beams at -40, 0 and +40 deg steering: what is said of one of them is never said of another."""
    from colure.app.web.views.explore import PLAIN, evaluated, overview

    run = run_folder(beams, "first")
    assert CliRunner().invoke(main, ["evaluate", str(beams), "--run", "first"]).exit_code == 0
    first = run.figures.read_bytes()
    (beams / "limits.toml").write_text('name = "x"\n[[limits]]\nfigure = "gain_dbi"\nat_least = -50\n', "utf-8")
    verdict = CliRunner().invoke(main, ["verdict", str(beams), str(beams / "limits.toml"), "--state", "right"])
    assert verdict.exit_code == 0, verdict.output
    assert run.figures.read_bytes() == first and not (run.path / "verdicts.json").exists()
    assert (run.path / "verdicts-right.json").is_file()
    assert evaluated(beams, "first", "broadside") > 10
    sides = {"left": -1, "broadside": 0, "right": 1}
    found = {}
    for state in sides:
        shown = {row["name"]: row["value"] for row in overview(beams, "first", state, PLAIN)["figures"]}
        found[state] = shown["beam_azimuth_deg"]
        assert shown["beam_azimuth_deg"] == pytest.approx(beam_of(run.of_state(run.figures, state)), abs=1e-6)
    assert found["left"] < -15 < abs(found["broadside"]) - 14 and found["right"] > 15
    assert beam_of(run.figures) == pytest.approx(found["left"], abs=1e-6)


def test_every_command_on_one_run_takes_a_state(beams):
    """Beams steered to -40, 0 and +40 deg: each command shows the one that was asked for, and lists the names if there is none."""
    run = run_folder(beams, "first")

    def call(*arguments, state=None):
        return CliRunner().invoke(main, [*arguments, *(["--state", state] if state else [])])

    azimuth = {}
    for state, side in (("left", -1), ("right", 1)):
        rows = json.loads(call("evaluate", str(beams), "--json", state=state).stdout)
        azimuth[state] = next(row["value"] for row in rows if row["name"] == "beam_azimuth_deg")
        assert abs(azimuth[state] - 30.0 * side) < 8.0
    first, right = run.figures.read_bytes(), run.of_state(run.figures, "right")
    assert str(right) in call("evaluate", str(beams), state="right").stdout.replace("\n", "")
    assert beam_of(right) == pytest.approx(azimuth["right"])

    table, cut = beams / "figures.csv", beams / "cut.csv"
    assert call("export", str(beams), "figures", str(table), state="right").exit_code == 0
    row = next(line for line in table.read_text("utf-8").splitlines() if "beam_azimuth_deg" in line)
    assert float(row.split(",")[3]) == pytest.approx(azimuth["right"], rel=1e-6)
    step = ("--coordinates", "az-el", "--step-deg", "5")
    assert call("pattern", str(beams), str(cut), *step, state="right").exit_code == 0
    rows = np.array([[float(x) for x in line.split(",")] for line in cut.read_text("utf-8").splitlines()[1:]])
    assert rows[rows[:, -1].argmax(), 1] == pytest.approx(azimuth["right"], abs=5.0)
    seen = json.loads(call("effects", str(beams), "--json", state="right").stdout)["with_all"]
    assert seen["beam_azimuth_deg"] == pytest.approx(azimuth["right"], abs=1e-6)
    said = {s: call("findings", str(beams), "--json", state=s).stdout for s in ("left", "right")}
    assert json.loads(said["left"]) and said["left"] != said["right"]
    # What was said of the first state is as it was.
    assert run.figures.read_bytes() == first and beam_of(run.figures) == pytest.approx(azimuth["left"])

    for command in (["evaluate"], ["findings"], ["effects"], ["export", "csv", "new.csv"], ["pattern", "new.csv"]):
        refused = call(command[0], str(beams), *command[1:], state="up")
        assert refused.exit_code == 2 and "must be one of left, broadside, right" in refused.stderr, command
    refused = call("evaluate", str(beams), str(beams), state="right")
    assert refused.exit_code == 2 and "a batch does every state by itself" in refused.stderr


@pytest.mark.nightly
def test_the_page_speaks_of_the_state_that_it_shows(beams):
    """Effects and the report of the right-hand beam are its own; no link opens another state's report."""
    from colure.app.web.views import explore
    from colure.errors import InputError

    (beams / "limits.toml").unlink(missing_ok=True)  # its masks hold at frequencies that were not measured here
    told = {s: explore.effects(beams, "first", s)["whole"]["beam_azimuth_deg"] for s in ("left", "right")}
    assert told["left"] < -15.0 and told["right"] > 15.0
    with pytest.raises(InputError, match="state right: has no report yet"):
        explore.report_file(beams, "first", "html", "right")
    assert explore.reported(beams, "first", "right") == ["report-right.html", "report-right.pdf"]
    page = explore.report_file(beams, "first", "html", "right").decode("utf-8")
    assert "<html" in page and "Spherical coverage of 3 states and of the best of all" in page
    with pytest.raises(InputError, match="has no report yet"):
        explore.report_file(beams, "first", "html", "left")
    with pytest.raises(InputError, match="must be one of left, broadside, right"):
        explore.report_file(beams, "first", "html", "up")
