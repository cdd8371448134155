"""Twenty wrong campaign files: every message gives field, value, limit and unit, before anything moves."""

from __future__ import annotations

import pytest
from click.testing import CliRunner

from colure.app.cli import main
from colure.errors import InputError
from colure.model.goal import Goal
from colure.model.loading import validate

# file, old text, new text, words that the message must hold
WRONG = [
    ("chamber.toml", "range_length_m = 1.2", "range_length_m = -1", ("range_length_m = -1", "0.05 to 1000 m")),
    ("chamber.toml", "range_length_m = 1.2", 'range_length_m = "long"', ("range_length_m = 'long'", "0.05 to 1000 m")),
    ("chamber.toml", "range_length_m = 1.2", "range_length_m = nan", ("range_length_m = nan", "0.05 to 1000 m")),
    ("chamber.toml", "speed_deg_s = 20", "speed_deg_s = 0", ("azimuth.speed_deg_s = 0", "0.01 to 1000 deg/s")),
    ("chamber.toml", "max_deg = 185", "max_deg = -200", ("max_deg = -200", "above min_deg = -185 deg")),
    ("chamber.toml", "max_deg = 185", "max_deg = 170", ("axis azimuth target = 180", "-185 to 170 deg")),
    ("chamber.toml", '"roll-over-azimuth"', '"roll-over-head"', ("geometry = 'roll-over-head'", "azimuth-over-elevation")),
    ("chamber.toml", "gain_dbi = 7.0", "gain_dbi = 700", ("probe.gain_dbi = 700", "-20 to 60 dBi")),
    ("chamber.toml", "gain_dbi = 7.0", "gian_dbi = 7.0", ("probe.gian_dbi", "did you mean gain_dbi")),
    ("chamber.toml", "if_bandwidth_hz = 1000", "if_bandwidth_hz = 0.1", ("if_bandwidth_hz = 0.1", "1 to 1e+07 Hz")),
    ("chamber.toml", "aperture_a_mm = 50.0", "", ("reference.aperture_a_mm: missing", "1 to 10000 mm")),
    ("chamber.toml", "power_dbm = 0", "power_dbm = 20", ("analyzer.power_dbm = 20", "at most 15 dBm")),
    ("chamber.toml", "load_limit_kg = 5", "load_limit_kg = 0.2", ("mass_kg = 0.4", "at most 0.2 kg")),
    ("chamber.toml", "largest_device_m = 0.4", "largest_device_m = 0.05", ("95", "at most 50 mm")),
    ("device.toml", "mass_kg = 0.4", "mass_kg = 0", ("mass_kg = 0", "0.001 to 10000 kg")),
    ("device.toml", "[49.7, 49.7, 4.0]", "[49.7, 49.7]", ("size_mm", "missing")),
    ("goal.toml", "stop_ghz = 24.25", "stop_ghz = 23", ("stop_ghz = 23", "at least start_ghz = 24 GHz")),
    ("goal.toml", "points = 11", "points = 0", ("points = 0", "1 to 100001 frequencies")),
    ("goal.toml", "points = 11", "points = 11\nstep_deg = 10", ("step_deg = 10", "at most 6 deg", "47.5 mm")),
    ("goal.toml", '"two-pass"', '"dual-port"', ("scheme = 'dual-port'", "1 probe port")),
    ("chamber.toml", 'method = "switch"', 'method = "operator"', ("reference.method = 'operator'", "'switch'")),
    ("device.toml", '"linear"', '"right-hand"', ("polarization = 'right-hand'", "'linear'")),
    ("goal.toml", "points = 11", 'points = 11\ntag = "lot 3"', ("tag = 'lot 3': unknown field", "[run] (run.tag)")),
    ("goal.toml", "points = 11", "points = 11\nphi_deg = 0", ("phi_deg = 0: unknown field", "[scan] (scan.phi_deg)")),
    ("goal.toml", "points = 11", "points = = 11", ("goal.toml", "not valid TOML", "line")),
    ("chamber.toml", 'profile = "gcode-axes"', 'profile = "../../etc/passwd"', ("profile", "letters, digits")),
]  # fmt: skip


@pytest.mark.parametrize(("name", "old", "new", "words"), WRONG, ids=[f"{w[0]}-{w[2][:30]}" for w in WRONG])
def test_wrong_file_is_refused_with_field_value_limit_and_unit(campaign_folder, name, old, new, words):
    path = campaign_folder / name
    text = path.read_text(encoding="utf-8")
    assert old in text
    path.write_text(text.replace(old, new, 1), encoding="utf-8")
    result = CliRunner().invoke(main, ["acquire", str(campaign_folder), "--yes", "--json"])
    assert result.exit_code == 2, result.output
    for word in words:
        assert word in result.stderr
    assert not (campaign_folder / "runs" / "first" / "journal.sqlite").exists()


def test_every_fault_of_every_file_is_told_at_once(campaign_folder):
    for name, old, new, _ in (WRONG[0], WRONG[14], WRONG[17]):
        path = campaign_folder / name
        path.write_text(path.read_text(encoding="utf-8").replace(old, new, 1), encoding="utf-8")
    result = CliRunner().invoke(main, ["plan", str(campaign_folder)])
    assert result.exit_code == 2
    assert len(result.stderr.strip().splitlines()) == 3


def test_missing_folder_is_named(tmp_path):
    result = CliRunner().invoke(main, ["plan", str(tmp_path / "nowhere")])
    assert result.exit_code == 2 and "goal.toml" in result.stderr


@pytest.mark.parametrize("name", ["../x", "", "a/b", "x" * 81])
def test_run_names_cannot_leave_the_campaign(campaign_folder, name):
    result = CliRunner().invoke(main, ["acquire", str(campaign_folder), "--yes", "--run", name])
    assert result.exit_code == 2 and "letters, digits" in result.stderr


def test_nothing_moves_without_the_cautions(campaign_folder):
    result = CliRunner().invoke(main, ["acquire", str(campaign_folder)])
    assert result.exit_code == 2 and "must be acknowledged" in result.stderr
    assert "hard-wired" in result.stdout and "ICNIRP" in result.stdout
    assert not (campaign_folder / "runs").exists()


def test_a_fault_of_a_whole_file_names_no_value():
    with pytest.raises(InputError) as caught:
        validate(Goal, {"name": "x", "start_ghz": 24.0, "stop_ghz": 25.0, "points": 1}, source="goal.toml")
    assert caught.value.faults == ["goal.toml: points = 1 needs start_ghz equal to stop_ghz (GHz)"]
    with pytest.raises(InputError) as caught:
        validate(Goal, {"name": "x", "start_ghz": 24.0, "stop_ghz": 24.0, "points": 3}, source="goal.toml")
    both = "must be 1 where start_ghz and stop_ghz are both 24 GHz, or stop_ghz higher"
    assert caught.value.faults == [f"goal.toml: points = 3: {both}"]
