"""Every command: help with an example, JSON, exit codes; and a quick start."""

from __future__ import annotations

import json
import os
import subprocess
import sys

import pytest
from click.testing import CliRunner

from colure.app.cli import main
from colure.app.scale.threads import ONE_THREAD

COMMANDS = sorted(main.commands)


@pytest.mark.parametrize("name", COMMANDS)
def test_help_shows_an_example(name):
    result = CliRunner().invoke(main, [name, "--help"])
    assert result.exit_code == 0 and "Example" in result.output and f"colure {name}" in result.output


def test_plan_json_and_table(campaign_folder):
    result = CliRunner().invoke(main, ["plan", str(campaign_folder), "--json"])
    data = json.loads(result.output)
    assert data["order"] == 34 and data["step_deg"] == 6.0 and data["points"]["scan"] == 72 * 30 * 2
    table = CliRunner().invoke(main, ["plan", str(campaign_folder)]).output
    for word in ("Range", "2D", "order 34", "Duration", "signal-to-noise", "Exposure"):
        assert word in table


def test_plan_lists_points(small_campaign):
    output = CliRunner().invoke(main, ["plan", str(small_campaign), "--points"]).output
    assert output.count(" scan ") >= 324 and "azimuth / deg" in output


def test_new_never_overwrites(campaign_folder):
    before = (campaign_folder / "goal.toml").read_bytes()
    result = CliRunner().invoke(main, ["new", str(campaign_folder)])
    assert result.exit_code == 2 and "choose an empty folder" in result.stderr
    assert (campaign_folder / "goal.toml").read_bytes() == before


def test_process_without_a_record_says_so(campaign_folder):
    result = CliRunner().invoke(main, ["process", str(campaign_folder)])
    assert result.exit_code == 2 and "there are no runs here yet" in result.stderr


def test_heavy_libraries_stay_out_of_help():
    heavy = ("numpy", "xarray", "matplotlib", "pyvisa", "scipy", "pydantic")
    code = f"import sys, colure.app.cli; print([m for m in {heavy} if m in sys.modules])"
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, timeout=60)
    assert done.stdout.strip() == "[]"


@pytest.mark.parametrize(("given", "expected"), [(None, "1"), ("3", "3")])
def test_a_command_computes_with_one_thread_unless_told_otherwise(campaign_folder, monkeypatch, given, expected):
    for name in ONE_THREAD:
        monkeypatch.delenv(name) if given is None else monkeypatch.setenv(name, given)
    assert CliRunner().invoke(main, ["plan", str(campaign_folder), "--json"]).exit_code == 0
    assert [os.environ[name] for name in ONE_THREAD] == [expected] * 3
