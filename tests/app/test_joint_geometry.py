"""`colure geometry` on a run of the simulated chamber, whose joints are off by known amounts; nothing of the campaign is changed."""

from __future__ import annotations

import json
from dataclasses import replace

import pytest
from click.testing import CliRunner

from colure.app.cli import main
from tests.mounts import swinging_arm
from tests.twin.test_linkage import dipole_on

WIDE = "zero_error_deg = 0.3\ntilt_error_deg = 0.3\noffset_error_mm = 1.8"
#: How the joints truly stand: the arm's zero and the turntable's tilt about y look alike, 0.3 - 0.1 = 0.2 deg.
TRUE = [{"name": "arm", "zero_deg": 0.3}, {"name": "turntable", "tilt_deg": [0.0, 0.1, 0.0]}]


def colure(*words: str, exit_code: int = 0) -> str:
    result = CliRunner().invoke(main, [str(word) for word in words])
    assert result.exit_code == exit_code, result.output
    return result.output


def contents(folder):
    """Everything but the database's own files beside the journal, which come and go as it is read."""
    return {path: path.read_bytes() for path in folder.rglob("*") if path.is_file() and "sqlite-" not in path.name}


@pytest.fixture(scope="module")
def folder(tmp_path_factory):
    scenario = dipole_on(swinging_arm(800, more=WIDE), 0.8)
    scenario = replace(
        scenario, chamber={**scenario.chamber, "echo_level_db": -55}, twin={**scenario.twin, "joints": TRUE}
    )
    folder = scenario.write(tmp_path_factory.mktemp("arm") / "c")
    colure("plan", folder)
    colure("acquire", folder, "--yes")
    return folder


def test_a_sum_of_joints_is_told_and_nothing_is_changed(folder, tmp_path):
    before = contents(folder)
    target = tmp_path / "geometry.toml"
    found = json.loads(colure("geometry", folder, "--to", target, "--json"))
    assert contents(folder) == before
    sums = [one for one in found["sums"] if "arm zero" in one["says"] and "turntable tilt" in one["says"]]
    assert len(sums) == 1
    # Only the sum is known. Its first member leads: a turn of the turntable about y counts against the arm's zero.
    assert "cannot be told apart" in sums[0]["says"]
    assert abs(abs(sums[0]["value"]) - 0.2) <= sums[0]["expanded"] < 0.1
    states = {(one["joint"], one["kind"]): one["state"] for one in found["motions"]}
    assert states["turntable", "zero"] == "not seen"
    text = target.read_text(encoding="utf-8")
    assert "nothing reads this file" in text
    table = colure("geometry", folder)
    assert "known, best first:" in table
    assert "stay as declared" in table
    # A file that is there is not written over.
    assert target.name in colure("geometry", folder, "--to", target, exit_code=2)


def test_a_sum_of_joints_is_not_written(folder):
    """Nobody knows which of the two it is: the arm's zero would be wrong by what the turntable's tilt makes."""
    before = (folder / "chamber.toml").read_bytes()
    assert "no adjustment is known well enough to write it" in colure("geometry", folder, "--apply")
    assert (folder / "chamber.toml").read_bytes() == before


def test_a_run_that_is_missing_is_named(folder):
    assert "second" in colure("geometry", folder, "--run", "second", exit_code=2)
