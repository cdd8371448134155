"""What a run tells of a positioner goes into chamber.toml; a surer reading stays, joints are refused, and nothing else changes."""

from __future__ import annotations

from dataclasses import replace

import pytest

from colure.analysis.steps.told_adjustments import ToldAdjustment
from colure.app import services
from colure.app.services.applied_geometry import apply_geometry
from colure.app.services.joint_geometry import GeometryAnswer
from colure.errors import InputError
from colure.model.campaign import Campaign
from tests.coverage.scenarios import SCENARIOS

ZERO = ToldAdjustment(name="theta_zero", value=0.20444, expanded=0.03811, declared=0.24, unit="deg")
UNSEEN = ToldAdjustment(name="roll_axis_tilt", value=0.01, expanded=0.17, declared=0.18, unit="deg")
ANSWER = GeometryAnswer(rows=(), sums=(), wanted=(), before_db=-40.0, after_db=-47.0, conflict=0.5,
                        adjustments=(ZERO, UNSEEN), mark="1a2b3c4d")  # fmt: skip


def test_what_is_told_is_written_and_a_surer_reading_stays(tmp_path):
    folder = tmp_path / "c"
    services.new_campaign(folder)
    before = (folder / "chamber.toml").read_text(encoding="utf-8")
    assert apply_geometry(ANSWER, Campaign.load(folder)) == ["theta_zero = +0.204 \u00b1 0.038 deg"]
    readings = Campaign.load(folder).chamber.alignment.readings
    assert (readings.theta_zero.value, readings.theta_zero.expanded, readings.theta_zero.run) == (
        0.2044,
        0.0381,
        "1a2b3c4d",
    )
    assert readings.roll_axis_tilt is None
    left = [
        line for line in (folder / "chamber.toml").read_text(encoding="utf-8").splitlines() if "1a2b3c4d" not in line
    ]
    assert [line for line in left if line and line != "[alignment.readings]"] == [
        line for line in before.splitlines() if line
    ]
    # Another run that knows it less well does not take its place; one that knows it better does.
    worse = replace(ANSWER, adjustments=(replace(ZERO, value=0.1, expanded=0.05),), mark="other")
    assert "surer" in apply_geometry(worse, Campaign.load(folder))[0]
    better = replace(ANSWER, adjustments=(replace(ZERO, value=0.19, expanded=0.02),), mark="other")
    apply_geometry(better, Campaign.load(folder))
    assert Campaign.load(folder).chamber.alignment.readings.theta_zero.value == 0.19


def test_a_mount_with_joints_is_refused_by_name(tmp_path):
    campaign = Campaign.load(SCENARIOS["six axes, 38 GHz horn"].write(tmp_path / "c"))
    text = (campaign.folder / "chamber.toml").read_bytes()
    with pytest.raises(InputError, match=r"positioner\.joints: must be a built-in positioner"):
        apply_geometry(ANSWER, campaign)
    assert (campaign.folder / "chamber.toml").read_bytes() == text
