"""Directions on the command line of `plan` and `acquire`: the same words as `colure cut`, in place of what goal.toml scans."""

from __future__ import annotations

import json

from click.testing import CliRunner

from colure.app import services
from colure.app.cli import main
from colure.app.commands.cut import cut
from colure.app.commands.scan_options import NAMES


def run(*words):
    return CliRunner().invoke(main, [str(word) for word in words])


def test_the_three_commands_share_their_words():
    for command in (main.commands["plan"], main.commands["acquire"], cut):
        assert set(NAMES) <= {one.name for one in command.params}


def test_options_plan_what_the_same_words_in_goal_toml_plan(tiny_campaign):
    said = run("plan", tiny_campaign, "--theta", "-60:60:30", "--phi", "0,90", "--offset", "0,90", "--json")
    assert said.exit_code == 0, said.output
    goal = tiny_campaign / "goal.toml"
    written = 'theta_deg = "-60:60:30"\nphi_deg = "0,90"\noffset_deg = "0,90"\n'
    plain = "".join(
        line for line in goal.read_text().splitlines(keepends=True) if not line.startswith(("step", "scheme"))
    )
    goal.write_text(f"{plain}\n[scan]\n{written}")
    assert json.loads(said.output)["points"] == services.make_plan(tiny_campaign)[1].predicted["points"]


def test_a_grid_on_the_command_line_is_measured_and_evaluated(tiny_campaign):
    grid = ("--theta", "-150:180:30", "--phi", "0:150:30", "--offset", "30,120", "--run", "habit")
    said = run("acquire", tiny_campaign, *grid, "--yes")
    assert said.exit_code == 0, said.output
    again = run("acquire", tiny_campaign, *grid, "--yes")
    assert again.exit_code == 0, again.output
    figures = run("evaluate", tiny_campaign, "--run", "habit", "--json")
    assert figures.exit_code in (0, 1)  # 1: findings speak against so small a device
    assert '"name": "directivity_dbi"' in figures.output


def test_what_belongs_to_directions_is_refused_without_them(tiny_campaign):
    said = run("acquire", tiny_campaign, "--offset", "45", "--single-sided", "--yes")
    assert said.exit_code == 2
    assert "--offset, --single-sided: must come with directions" in said.output
    until = run("acquire", tiny_campaign, "--theta", "0:90:10", "--phi", "0", "--until", "gain_dbi=0.3", "--yes")
    assert until.exit_code == 2
    assert "leave it out" in until.output
    assert not list((tiny_campaign / "runs").glob("*/record.nc"))
