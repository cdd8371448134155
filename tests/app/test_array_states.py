"""An array of 2 x 2 elements in code states: acquired over sockets, its beams, elements and calibration held against the truth."""

from __future__ import annotations

import csv
import json

import numpy as np
import pytest
import xarray as xr
from click.testing import CliRunner

from colure.app import services
from colure.app.cli import main
from colure.app.services.rehearsal import record_of_rehearsal
from colure.app.storage.folders import run_folder
from colure.errors import InputError
from colure.geometry.conventions import amplitude_db
from colure.geometry.directions import unit_vector
from colure.geometry.polarization import from_cartesian
from colure.model.campaign import Campaign
from colure.model.commands import read_commands
from colure.model.files import save_dataset
from colure.twin.devices import maker_of
from colure.twin.states import responses_in, told
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


def true_elements(folder):
    """Return the simulated device, what each element really is (element,): half the difference of its answers to 0 and 180 deg, all answers."""
    campaign = Campaign.load(folder)
    answers, weight = responses_in(campaign), campaign.commands().weight
    at = {s: np.array([answers[np.argmax(np.abs(w - s) < 1e-9), n] for n, w in enumerate(weight.T)]) for s in (1, -1)}
    return maker_of(campaign)(campaign.goal.frequency_hz), 0.5 * (at[1] - at[-1]), at[1]


def test_embedded_patterns_are_the_elements_own(array, tmp_path):
    """Closed form: one source alone, on the whole array's input power. The error stays within what the file states."""
    target = tmp_path / "embedded.nc"
    found = json.loads(command("embedded", array, "--out", target, "--step-deg", "15", "--json"))
    device, own, _ = true_elements(array)
    with xr.open_dataset(target, engine="h5netcdf") as patterns:
        theta, phi = (np.deg2rad(patterns[name].values) for name in ("theta", "phi"))
        measured = np.stack([patterns[name].isel(frequency=0).values for name in ("e_theta", "e_phi")], axis=1)
        stated = np.sqrt(sum(patterns[f"{name}_rms"].values[:, 0] ** 2 for name in ("noise", "command", "chamber")))
    t, p = np.meshgrid(theta, phi, indexing="ij")
    weight = np.sin(t) / np.sum(np.sin(t))
    vectors = [told(device, row).far_field(unit_vector(theta=t, phi=p).reshape(-1, 3)) for row in np.diag(own)]
    true = np.stack([np.stack(from_cartesian(v.reshape(*t.shape, 3), theta=t, phi=p)) for v in vectors])
    # Cables give the whole record one phase that nothing tells: one number for all elements and directions.
    measured = measured * np.exp(-1j * np.angle(np.vdot(true, measured)))
    error = np.sqrt(np.sum(weight * np.abs(measured - true) ** 2, axis=(1, 2, 3)))
    assert (error < 2.0 * stated).all() and amplitude_db(stated / np.abs(true).max()).max() < -30.0
    assert [one["number"] for one in found["elements"]] == [0, 1, 2, 3]
    refused = CliRunner().invoke(main, ["embedded", str(array), "--out", str(target)])
    assert refused.exit_code == 2 and "exists already" in refused.output


def test_the_array_is_calibrated(array, tmp_path):
    """Elements to 0.1 dB and 1 deg, and within their intervals; commands within theirs."""
    command("calibrate-array", array, "--out", tmp_path / "table.csv")
    rows = list(csv.DictReader((tmp_path / "table.csv").read_text("utf-8").splitlines()))
    device, own, zero = true_elements(array)
    ahead = np.array([told(device, row).far_field([[0.0, 0.0, 1.0]])[0, 0, 0] for row in np.diag(own)])
    true = ahead / np.sqrt(np.mean(np.abs(ahead) ** 2)) * np.exp(-1j * np.angle(ahead.sum()))
    elements = [row for row in rows if row["command"] == "element"]
    assert len(elements) == 4
    for row, value in zip(elements, true, strict=True):
        level, phase = float(row["level_db"]) - amplitude_db(abs(value)), float(row["phase_deg"]) - np.rad2deg(np.angle(value))  # fmt: skip
        assert abs(level) < min(0.1, 1.3 * float(row["level_expanded_db"]))
        assert abs(phase) < min(1.0, 1.3 * float(row["phase_expanded_deg"]))
    for row in rows:
        if row["command"] == "0 deg":
            value = zero[int(row["element"])] / own[int(row["element"])]
            assert abs(float(row["level_db"]) - amplitude_db(abs(value))) < 1.3 * float(row["level_expanded_db"])
            assert abs(float(row["phase_deg"]) - np.rad2deg(np.angle(value))) < 1.3 * float(row["phase_expanded_deg"])


def test_power_alone_calibrates(array, tmp_path):
    """Powers of four elements by superposition; the table's levels are their own, the phases about their sum."""
    values = np.array([1.0, 0.8 * np.exp(0.4j), 1.1 * np.exp(-0.3j), 0.9])
    random = np.random.default_rng(3)
    lines = ["element,phase_deg,power_db"]
    for n, v in enumerate(values):
        for turn in range(0, 360, 45):
            power = abs(values.sum() + v * (np.exp(1j * np.deg2rad(turn)) - 1.0)) ** 2
            lines.append(f"{n},{turn},{10 * np.log10(power) + 0.005 * random.normal():.5f}")
    (tmp_path / "powers.csv").write_text("\n".join(lines), "utf-8")
    found = json.loads(command("calibrate-array", tmp_path / "powers.csv", "--json"))
    true = values / np.sqrt(np.mean(np.abs(values) ** 2)) * np.exp(-1j * np.angle(values.sum()))
    for row, value in zip(found["rows"], true, strict=True):
        assert row["level_db"] == pytest.approx(amplitude_db(abs(value)), abs=0.1) and not row["remark"]
        assert row["phase_deg"] == pytest.approx(np.rad2deg(np.angle(value)), abs=1.0)
    (tmp_path / "short.csv").write_text("\n".join(lines[:20]), "utf-8")
    said = CliRunner().invoke(main, ["calibrate-array", str(tmp_path / "short.csv")])
    assert said.exit_code == 2 and "element 2: 3 different turns, needs at least 4" in said.output
    refused = CliRunner().invoke(main, ["calibrate-array", str(array), "--power-only"])
    assert refused.exit_code == 2 and "never turned by itself" in refused.output


def test_a_run_of_turning_elements_calibrates_without_phase(tmp_path):
    """Rotating states at the strongest place, commands without errors; the truth is each element's share of the whole field there."""
    folder = started(tmp_path / "campaign", errors="noise = true\n")
    command("codes", folder, "--method", "rotate", "--steps", "6")
    goal = (folder / "goal.toml").read_text("utf-8")
    (folder / "goal.toml").write_text(goal.replace("two-pass", "one-pass") + "region_deg = 30\n", "utf-8")
    campaign, plan = services.make_plan(folder)
    run = run_folder(folder, "first")
    run.path.mkdir(parents=True)
    save_dataset(record_of_rehearsal(campaign, plan, truth=campaign.simulated()), run.record)
    found = json.loads(command("calibrate-array", folder, "--power-only", "--json"))
    device = maker_of(campaign)(campaign.goal.frequency_hz)
    ahead = np.array([told(device, row).far_field([[0.0, 0.0, 1.0]])[0, 0, 0] for row in np.eye(4)])
    true = ahead / np.sqrt(np.mean(np.abs(ahead) ** 2)) * np.exp(-1j * np.angle(ahead.sum()))
    for row, value in zip(found["rows"], true, strict=True):
        assert row["level_db"] == pytest.approx(amplitude_db(abs(value)), abs=0.1 + row["level_expanded_db"])
        assert row["phase_deg"] == pytest.approx(np.rad2deg(np.angle(value)), abs=1.0 + row["phase_expanded_deg"])
        assert row["phase_expanded_deg"] < 3.0


def test_what_cannot_be_added_up_is_refused_by_name(array, tmp_path):
    (tmp_path / "wide.csv").write_text("state,element,phase_deg\nb,0,0\nb,1,0\n", "utf-8")
    for words, said in (
        (["synthesize", array], "either a CSV of beams"),
        (["synthesize", array, "--weights", tmp_path / "wide.csv"], "2 elements, the run's codes have 4"),
        (["synthesize", array, "--against", "up"], "must be one of code-000"),
        (["codes", array], "exists already"),
    ):
        result = CliRunner().invoke(main, [str(word) for word in words])
        assert result.exit_code == 2 and said in result.output, result.output
    table = tmp_path / "codes.csv"
    for text, said in (
        ("state,element,phase\na,0,0\n", "header must be state,element,phase_deg"),
        ("state,element,phase_deg\na,0,0\na,2,0\n", "state a: element 1 is missing"),
        ("state,element,phase_deg\na,0,0\na,0,0\n", "state a, element 0: stands there twice"),
        ("state,element,phase_deg\na,0,x\n", "phase_deg = 'x': must be a finite number (deg)"),
        ("state,element,re,im\na,0.5,1,0\n", "element = 0.5: must be a whole number"),
    ):
        table.write_text(text, "utf-8")
        with pytest.raises(InputError, match=".*") as refused:
            read_commands(table)
        assert said in str(refused.value)


@pytest.mark.nightly
@pytest.mark.usefixtures("nightly")
def test_64_elements_in_68_code_states(tmp_path):
    """An 8 x 8 panel, whole sphere, errors of commands: beams within their limits, elements to -50 dB of the noise and commands alone."""
    folder = started(tmp_path / "campaign")
    device = (
        (folder / "device.toml")
        .read_text("utf-8")
        .replace("rows = 2", "rows = 8")
        .replace("columns = 2", "columns = 8")
    )
    device = device.replace("pitch_mm = 1.4", "pitch_mm = 6.2").replace("[2.8, 2.8, 1.0]", "[50.0, 50.0, 2.0]")
    (folder / "device.toml").write_text(device, "utf-8")
    goal = (folder / "goal.toml").read_text("utf-8")
    (folder / "goal.toml").write_text(goal.replace("step_deg = 30\n", ""), "utf-8")
    beams = "".join(f"{name},{n},{step * (n % 8) % 360}\n" for name, step in (("ahead", 0), ("aside", 90)) for n in range(64))  # fmt: skip
    (folder / "beams.csv").write_text("state,element,phase_deg\n" + beams, "utf-8")
    command("codes", folder, "--beams", folder / "beams.csv")
    campaign, plan = services.make_plan(folder)
    run = run_folder(folder, "first")
    run.path.mkdir(parents=True)
    save_dataset(record_of_rehearsal(campaign, plan, truth=campaign.simulated()), run.record)
    found = json.loads(command("synthesize", folder, "--against", "ahead", "--against", "aside", "--json"))
    assert all(one["within"] for one in found["held"])
    told_ = json.loads(command("embedded", folder, "--step-deg", "15", "--json"))
    assert len(told_["elements"]) == 64
    assert all(one["commands_db"] < -50.0 for one in told_["elements"])
