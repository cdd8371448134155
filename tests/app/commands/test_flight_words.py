"""A scan on the fly that controller or analyzer have no words for is told by plan, check and acquire, before anything moves."""

from __future__ import annotations

import json

import pytest
from click.testing import CliRunner

from colure.app.cli import main
from colure.app.services.starting import copy_profile


def run(*words):
    return CliRunner().invoke(main, [str(word) for word in words])


@pytest.mark.parametrize(
    ("profile", "word", "named"),
    [("gcode-axes", "pulses", "trigger = 'time' or style = 'step'"), ("gcode-axes", "timed", "style = 'step'"),
     ("scpi-analyzer", "trigger_external", "trigger = 'time' or style = 'step'"),
     # What buffered = true needs beyond; the pattern goes with its query.
     ("scpi-analyzer", "ready", "buffered = false"),
     ("scpi-analyzer", "point_count", "pulse_each = 'sweep'"),
     *(pytest.param("scpi-analyzer", word, "pulse_each = 'sweep'", marks=pytest.mark.nightly) for word in ("point_start", "point_end")),
     pytest.param("gcode-axes", "latched", "buffered = false (goal.toml)", marks=pytest.mark.nightly),
     pytest.param("gcode-axes", "latched", "buffered = false, with pulse_each = 'sweep',", marks=pytest.mark.nightly),
     *(pytest.param("scpi-analyzer", word, "buffered = false", marks=pytest.mark.nightly)
       for word in ("buffer_start", "buffer_count", "buffer_trace", "buffer_status"))],
)  # fmt: skip
def test_a_missing_word_for_the_flight_is_named_beforehand(tiny_campaign, profile, word, named):
    goal = tiny_campaign / "goal.toml"
    more = "buffered = true\n" if "buffered" in named or "pulse_each" in named else ""
    if "pulse_each" in named:
        more += 'pulse_each = "frequency"\nswept_step_deg = 1\n'
        frequencies = (
            goal.read_text(encoding="utf-8")
            .replace("points = 1", "points = 2")
            .replace("= 24.0\nstop_ghz = 24.0", "= 24.0\nstop_ghz = 24.1")
        )
        goal.write_text(frequencies, encoding="utf-8")
    goal.write_text(goal.read_text(encoding="utf-8") + 'style = "fly"\n' + more, encoding="utf-8")
    assert json.loads(run("plan", tiny_campaign, "--json").output)["not_possible"] == []
    own = copy_profile(tiny_campaign, profile)
    lines = own.read_text(encoding="utf-8").splitlines()
    assert any(line.startswith(f"{word} =") for line in lines)
    left_out = (f"{word} =", "latched_pattern =") if word == "latched" else (f"{word} =",)
    own.write_text("\n".join(line for line in lines if not line.startswith(left_out)), encoding="utf-8")
    planned = json.loads(run("plan", tiny_campaign, "--json").output)["not_possible"]
    assert len(planned) == 1 and f"{profile}.toml: `{word}` is empty" in planned[0] and named in planned[0]
    assert "Not possible" in run("plan", tiny_campaign).output
    checked = run("acquire", tiny_campaign, "--check", "--json")
    assert checked.exit_code == 3
    assert [one["found"] for one in json.loads(checked.stdout) if not one["good"]] == planned
    begun = run("acquire", tiny_campaign, "--yes", "--despite-check")
    assert begun.exit_code == 2 and f"`{word}` is empty" in begun.output and "nothing was moved" in begun.output
    goal.write_text(
        goal.read_text(encoding="utf-8").replace("fly", "step").replace("true", "false").replace("frequency", "sweep"),
        encoding="utf-8",
    )
    assert json.loads(run("plan", tiny_campaign, "--json").output)["not_possible"] == []
