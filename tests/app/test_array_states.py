"""An array of 2 x 2 elements in code states: acquired over sockets, its beams, elements and calibration held against the truth."""

from __future__ import annotations

import json

import pytest
from click.testing import CliRunner

from colure.app import services
from colure.app.cli import main
from colure.app.services.rehearsal import record_of_rehearsal
from colure.app.storage.folders import run_folder
from colure.model.files import save_dataset
from tests.conftest import SMALL_GOAL

STATES = """
[elements]
rows = 2
columns = 2
pitch_mm = 1.4

[states]
codes = "codes.csv"
resource = "twin"
set = "STATE {index}"
readback = "STATE?"
expect = "{index}"
command_error_db = 0.2
command_error_deg = 2.0
"""
#: Two beams of a 5-bit phase shifter; elements row by row from -y.
BEAMS = "state,element,phase_deg\n" + "".join(
    f"{name},{element},{phase}\n"
    for name, phases in (("ahead", (0, 0, 0, 0)), ("aside", (0, 45, 0, 45)))
    for element, phase in enumerate(phases)
)


def command(*words, good=(0,)):
    result = CliRunner().invoke(main, [str(word) for word in words])
    assert result.exit_code in good and "Traceback" not in result.output, result.output
    return result.stdout


def started(folder, *, errors="command_error_db = 0.2\ncommand_error_deg = 2.0\n"):
    """Return a campaign folder with a tiny array: 30 deg steps, one frequency."""
    services.new_campaign(folder)
    goal = SMALL_GOAL.replace("points = 2", "points = 1").replace("stop_ghz = 24.1", "stop_ghz = 24.0")
    (folder / "goal.toml").write_text(goal.replace("step_deg = 15", "step_deg = 30"), "utf-8")
    (folder / "twin.toml").write_text(f"seed = 5\n{errors}", "utf-8")
    device = (folder / "device.toml").read_text("utf-8").split("[elements]")[0]
    device = device.replace("[49.7, 49.7, 4.0]", "[2.8, 2.8, 1.0]").replace("[0.0, 0.0, -30.0]", "[0.0, 0.0, 0.0]")
    (folder / "device.toml").write_text(device + STATES, "utf-8")
    (folder / "beams.csv").write_text(BEAMS, "utf-8")
    return folder


@pytest.fixture(scope="module")
def array(tmp_path_factory):
    """Eight codes and two beams over the sphere, rehearsed in the chamber of twin.toml."""
    folder = started(tmp_path_factory.mktemp("array") / "campaign")
    assert "10 states of 4 elements" in command("codes", folder, "--beams", folder / "beams.csv")
    campaign, plan = services.make_plan(folder)
    run = run_folder(folder, "first")
    run.path.mkdir(parents=True)
    save_dataset(record_of_rehearsal(campaign, plan, truth=campaign.simulated()), run.record)
    return folder


def test_an_acquired_run_holds_every_state_at_every_place(tmp_path):
    """Four codes and a beam within 30 deg of the boresight, through engine, sockets and simulated device."""
    folder = started(tmp_path / "campaign")
    beam = "".join(line + "\n" for line in BEAMS.splitlines() if not line.startswith("ahead"))
    (folder / "beam.csv").write_text(beam, "utf-8")
    command("codes", folder, "--order", "4", "--beams", folder / "beam.csv")
    goal = (folder / "goal.toml").read_text("utf-8")
    (folder / "goal.toml").write_text(goal.replace("two-pass", "one-pass") + "region_deg = 30\n", "utf-8")
    assert json.loads(command("acquire", folder, "--yes", "--json"))["state"] == "done"
    found = json.loads(command("synthesize", folder, "--against", "aside", "--json"))
    assert found["held"][0]["within"] and "none is spare" in found["cautions"][0]


def test_measured_beams_lie_within_the_interval_of_their_sums(array):
    found = json.loads(command("synthesize", array, "--against", "ahead", "--against", "aside", "--json"))
    assert [one["state"] for one in found["held"]] == ["ahead", "aside"] and not found["cautions"]
    assert all(one["within"] and one["difference_db"] <= one["limit_db"] for one in found["held"])
    # The sum of eight states is less noisy than one sweep.
    assert all(one["noise_factor"] < 1.0 for one in found["held"])


def test_a_synthesized_beam_is_the_true_one_within_its_intervals(array):
    """The truth is the simulated chamber's own, of the same beam as a state."""
    found = json.loads(command("synthesize", array, "--weights", array / "beams.csv", "--json"))
    for beam in found["beams"]:
        truth = json.loads(command("truth", array, "--state", beam["name"], "--json"))["truth"][0]["figures"]
        rows = {row["name"]: row for row in beam["figures"]}
        assert "element commands" in [one["term"] for one in rows["gain_dbi"]["budget"]]
        for name in ("gain_dbi", "directivity_dbi", "beamwidth_e_deg", "beam_azimuth_deg"):
            assert rows[name]["lower"] <= truth[name]["value"] <= rows[name]["upper"], (beam["name"], name)
