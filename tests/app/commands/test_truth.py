"""`colure truth`: closed-form figures of the campaign's simulated device."""

from __future__ import annotations

import json

import pytest
from click.testing import CliRunner

from colure.app.cli import main


def run(*words: str) -> str:
    done = CliRunner().invoke(main, ["truth", *words])
    assert done.exit_code == 0, done.output
    return done.output


def test_every_figure_has_a_value_or_a_reason(small_campaign):
    data = json.loads(run(str(small_campaign), "--json"), parse_constant=lambda name: pytest.fail(f"not JSON: {name}"))
    assert [round(row["frequency_hz"]) for row in data["truth"]] == [24_000_000_000, 24_100_000_000]
    for row in data["truth"]:
        assert {"gain_dbi", "beamwidth_e_deg", "phase_centre_z_mm", "group_delay_ns"} <= set(row["figures"])
        for name, one in row["figures"].items():
            assert set(one) == {"value", "unit", "reason"}, name
            assert (one["value"] is None) == bool(one["reason"]), name
    assert data["truth"][0]["figures"]["gain_dbi"]["unit"] == "dBi"
    assert "Peak gain (realized)" in run(str(small_campaign))


def test_a_dipole_along_x_reads_as_the_handbook_says(small_campaign):
    """Half-wave dipole: 2.151 dBi, 78.08 deg (handbook values, derivable); around it no beam and no half-power width."""
    (small_campaign / "twin.toml").write_text(
        'noise = false\n[device]\nkind = "dipole"\nefficiency_db = 0.0\n', encoding="utf-8"
    )
    row = json.loads(run(str(small_campaign), "--json"))["truth"][0]["figures"]
    assert row["directivity_dbi"]["value"] == pytest.approx(2.151, abs=0.01)
    assert row["beamwidth_e_deg"]["value"] == pytest.approx(78.08, abs=0.2)
    assert "omnidirectional" in row["beamwidth_h_deg"]["reason"]
    assert row["beam_azimuth_deg"] == {"value": None, "unit": "deg", "reason": row["beam_azimuth_deg"]["reason"]}
    assert "no single beam" in row["beam_azimuth_deg"]["reason"]


def test_part_of_a_sphere_says_what_it_cannot_know(small_campaign):
    goal = (small_campaign / "goal.toml").read_text(encoding="utf-8")
    (small_campaign / "goal.toml").write_text(goal + "region_deg = 60\n", encoding="utf-8")
    row = json.loads(run(str(small_campaign), "--json"))["truth"][0]["figures"]
    assert "whole sphere" in row["directivity_dbi"]["reason"] and row["gain_dbi"]["reason"] == ""


def test_every_state_has_its_own_truth(small_campaign):
    device = (small_campaign / "device.toml").read_text(encoding="utf-8")
    states = '\n[states]\nnames = ["left", "right"]\nprogram = ["true", "{name}"]\n'
    (small_campaign / "device.toml").write_text(device + states, encoding="utf-8")
    (small_campaign / "twin.toml").write_text("noise = false\nstate_steer_deg = [-20.0, 20.0]\n", encoding="utf-8")
    beams = []
    for name in ("left", "right"):
        row = json.loads(run(str(small_campaign), "--state", name, "--json"))["truth"][0]["figures"]
        beams.append(row["beam_azimuth_deg"]["value"])
    assert beams[0] < -5.0 and beams[1] > 5.0
    first = json.loads(run(str(small_campaign), "--json"))["truth"][0]["figures"]
    assert first["beam_azimuth_deg"]["value"] == pytest.approx(beams[0])


def test_an_unknown_state_is_refused(small_campaign):
    done = CliRunner().invoke(main, ["truth", str(small_campaign), "--state", "left"])
    assert done.exit_code == 2 and "--state = 'left': must be one of none, the device has one" in done.stderr
