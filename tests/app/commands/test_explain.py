"""Help by the order of the work, and the meaning of every entry on the command line."""

from __future__ import annotations

import json

from click.testing import CliRunner

from colure.app.cli import GROUPS, main


def test_an_entry_is_explained_with_unit_limits_and_default():
    said = CliRunner().invoke(main, ["explain", "goal.wanted_level_db"])
    assert said.exit_code == 0
    assert "goal.wanted_level_db  (number, dB, from -100 to -10, default -50.0)" in said.output
    assert "Level below the peak" in said.output


def test_a_table_shows_what_stands_in_it_and_json_is_json():
    rows = json.loads(CliRunner().invoke(main, ["explain", "chamber.probe", "--json"]).output)
    assert rows[0]["name"] == "chamber.probe" and rows[0]["kind"] == "table"
    assert {"chamber.probe.gain_dbi", "chamber.probe.roll.max_deg"} <= {row["name"] for row in rows}


def test_an_unknown_entry_names_the_nearest():
    refused = CliRunner().invoke(main, ["explain", "chamber.range_lenght_m"])
    assert refused.exit_code == 2 and "chamber.range_length_m" in refused.output


def test_help_lists_every_command_by_the_order_of_the_work():
    text = CliRunner().invoke(main, ["--help"]).output
    assert list(GROUPS) == ["Prepare", "Check and align", "Scan", "Correct", "Read", "Judge", "Hand over"]
    assert [text.index(f"\n{title}:") for title in GROUPS] == sorted(text.index(f"\n{title}:") for title in GROUPS)
    for name in main.commands:
        assert f"\n  {name} " in text, name
