"""Two runs are compared as they stand; what a turn of the device hides is taken out only if asked for. On a 4 x 4 panel."""

from __future__ import annotations

import json

import pytest
from click.testing import CliRunner

from colure.app.cli import main
from colure.app.services.rehearsal import record_of_rehearsal
from colure.app.storage.folders import run_folder
from colure.model.campaign import Campaign
from colure.model.files import save_dataset
from colure.planning.preflight import make_plan
from tests.coverage.scenarios import Scenario, band, four_by_four

HELD = {"kind": "panel", "rows": 4, "columns": 4, "pitch_mm": 6.213}
TURN_DEG, LOUDER_DB = 3.0, -0.7


@pytest.fixture(scope="module")
def folder(tmp_path_factory):
    """Runs `first`, and `turned`: the same device turned by 3 deg about y, on a range that lost 0.7 dB to it."""
    where = tmp_path_factory.mktemp("two")
    chamber = {"echo_level_db": -60, "alignment": {"device_pose_deg": 0.05}}
    Scenario(device=four_by_four(), goal=band(24.1, wanted_level_db=-25), chamber=chamber, twin={"device": HELD}).write(
        where
    )
    campaign = Campaign.load(where)
    _, plan = make_plan(campaign)
    for name, change in (
        ("first", {}),
        ("turned", {"device_pose_deg": (0.0, TURN_DEG, 0.0), "reconnect_db": -LOUDER_DB, "seed": 5}),
    ):
        run = run_folder(where, name)
        run.path.mkdir(parents=True)
        save_dataset(
            record_of_rehearsal(campaign, plan, truth=campaign.simulated().model_copy(update=change)), run.record
        )
    return where


def compared(folder, *options):
    result = CliRunner().invoke(main, ["compare", str(folder), "turned", "--run", "first", "--json", *options])
    assert result.exit_code in (0, 1), result.output
    return json.loads(result.stdout)


def test_nothing_is_matched_unless_asked(folder):
    found = compared(folder)
    assert found["matched"] == [] and found["rotation_deg"] == [0.0, 0.0, 0.0] and found["shift_mm"] == [0.0, 0.0, 0.0]
    rows = {row["name"]: row for row in found["figures"]}
    # Turned by +3 deg about y, +z goes towards +x: azimuth grows (derivable).
    assert rows["beam_azimuth_deg"]["change"] == pytest.approx(TURN_DEG, abs=0.1)
    assert rows["gain_dbi"]["change"] == pytest.approx(LOUDER_DB, abs=0.05)
    assert rows["beam_azimuth_deg"]["change_expanded"] < 0.5 and not rows["beam_azimuth_deg"]["agrees"]
    assert not found["agrees"]
    matched = compared(folder, "--match", "frame,origin,level")
    assert matched["rotation_deg"][1] == pytest.approx(-TURN_DEG, abs=0.1)
    assert matched["level_db"][0] == pytest.approx(-LOUDER_DB, abs=0.05)
    # As it stands the difference is that of a beam beside its place; matched it is gone.
    assert found["difference_db"][0] > matched["difference_db"][0] + 15.0


@pytest.mark.nightly
def test_the_picture_lays_the_same_directions_over_each_other(folder, tmp_path):
    from colure.analysis.compare.match import AS_THEY_STAND
    from colure.app.services.comparing import compare_run

    campaign = Campaign.load(folder)
    found = compare_run(
        campaign, run_folder(folder, "first"), (campaign, run_folder(folder, "turned")), freedom=AS_THEY_STAND
    )
    assert [one.plane for one in found.overlaid] == ["E plane", "H plane"]
    e = found.overlaid[0]
    tops = [float(e.angle_deg[level.argmax()]) for level in e.level]
    assert abs(tops[0]) <= 1.0 and abs(abs(tops[1] - tops[0]) - TURN_DEG) <= 1.0
    assert all((e.lower[i] <= e.level[i] + 1e-9).all() and (e.level[i] <= e.upper[i] + 1e-9).all() for i in (0, 1))
    target = tmp_path / "change.png"
    result = CliRunner().invoke(main, ["compare", str(folder), "turned", "--run", "first", "--plot", str(target)])
    assert result.exit_code == 1 and target.stat().st_size > 10_000
    assert "nothing but the phase" in result.output and "change" in result.output


def test_a_word_that_cannot_be_matched_is_refused(folder):
    result = CliRunner().invoke(main, ["compare", str(folder), "turned", "--match", "everything"])
    assert result.exit_code == 2 and "--match = 'everything': must be any of frame,origin,level" in result.stderr
