"""What a run tells of a positioner goes into chamber.toml: readings where later runs are aligned, zeros elsewhere; nothing else changes."""

from __future__ import annotations

from dataclasses import replace

import pytest

from colure.analysis.steps.told_adjustments import ToldAdjustment
from colure.app import services
from colure.app.services.applied_geometry import apply_geometry
from colure.app.services.joint_geometry import GeometryAnswer, MotionRow, solve_geometry
from colure.app.services.rehearsal import record_of_rehearsal
from colure.app.storage.folders import run_folder
from colure.errors import InputError
from colure.model.campaign import Campaign
from colure.model.files import save_dataset
from colure.model.simulated_chamber import TrueJoint
from colure.twin.rehearsal import draw_chamber
from tests.analysis.steps.test_joint_estimate import patch_on, roll_over_azimuth
from tests.coverage.scenarios import AZIMUTH_OVER_ELEVATION, HORN_2_4_GHZ, SCENARIOS, Scenario, band, sized

ZERO = ToldAdjustment(name="theta_zero", value=0.20444, expanded=0.03811, declared=0.24, unit="deg")
UNSEEN = ToldAdjustment(name="roll_axis_tilt", value=0.01, expanded=0.17, declared=0.18, unit="deg")
ANSWER = GeometryAnswer(rows=(), sums=(), wanted=(), before_db=-40.0, after_db=-47.0, conflict=0.5,
                        adjustments=(ZERO, UNSEEN), mark="1a2b3c4d")  # fmt: skip


def motion(joint, kind, value, state="seen", unit="deg"):
    return MotionRow(joint=joint, kind=kind, direction=(1.0, 0.0, 0.0), value=value, expanded=0.04, declared=0.2,
                     unit=unit, state=state)  # fmt: skip


def test_what_is_told_is_written_and_a_surer_reading_stays(tmp_path):
    folder = tmp_path / "c"
    services.new_campaign(folder)
    before = (folder / "chamber.toml").read_text(encoding="utf-8")
    assert apply_geometry(ANSWER, Campaign.load(folder)) == ["alignment.readings.theta_zero = +0.204 \u00b1 0.038 deg"]
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


def test_zeros_of_joints_are_written_once_and_the_rest_is_said(tmp_path):
    folder = SCENARIOS["six axes, 38 GHz horn"].write(tmp_path / "c")
    began = Campaign.load(folder)
    first, second, third = began.chamber.positioner.joints[:3]
    rows = (
        motion(first.name, "zero", 0.1),
        motion(second.name, "zero", 0.1, state="in a sum"),
        motion(second.name, "tilt", -0.2),
        motion(third.name, "zero", 0.03),  # covered by its uncertainty
    )
    answer = replace(ANSWER, rows=rows, adjustments=())
    before = (folder / "chamber.toml").read_text(encoding="utf-8").splitlines()
    wanted = first.zero_deg - first.sense * 0.1
    written, said = apply_geometry(answer, began, began)
    assert written.startswith(f"{first.name}.zero_deg = {wanted:g} deg instead of {first.zero_deg:g}")
    assert f"{second.name} tilt" in said and "no entry corrects it" in said
    after = (folder / "chamber.toml").read_text(encoding="utf-8").splitlines()
    changed = set(after) ^ set(before)
    assert changed and all(line.startswith("zero_deg") for line in changed)
    joints = Campaign.load(folder).chamber.positioner.joints
    assert joints[0].zero_deg == pytest.approx(wanted) and joints[1:] == began.chamber.positioner.joints[1:]
    # The same run again changes nothing: it began with the zero as it was.
    assert "is there already" in apply_geometry(answer, Campaign.load(folder), began)[0]


def test_a_zero_that_was_changed_since_is_refused(tmp_path):
    folder = SCENARIOS["azimuth over elevation"].write(tmp_path / "c")
    began = Campaign.load(folder)
    answer = replace(ANSWER, rows=(motion("elevation", "zero", 0.1),), adjustments=())
    text = (folder / "chamber.toml").read_text(encoding="utf-8")
    (folder / "chamber.toml").write_text(
        text.replace("[positioner.elevation]\n", "[positioner.elevation]\nzero_deg = 0.7\n"), "utf-8"
    )
    now = (folder / "chamber.toml").read_bytes()
    with pytest.raises(InputError, match=r"elevation\.zero_deg = 0\.7: must be 0 as the run began with it \(deg\)"):
        apply_geometry(answer, Campaign.load(folder), began)
    assert (folder / "chamber.toml").read_bytes() == now


WIDE = {"theta_zero_deg": 0.24, "elevation_zero_deg": 0.4, "axes_square_deg": 0.3, "axes_offset_mm": 2.0}


def over_elevation(sense):
    elevation = {**AZIMUTH_OVER_ELEVATION["elevation"], "sense": sense, "zero_deg": 1.5}
    chamber = {
        "positioner": {**AZIMUTH_OVER_ELEVATION, "elevation": elevation}, "alignment": WIDE, "echo_level_db": -75,
        "range_length_m": 1.0, "reference": HORN_2_4_GHZ, "largest_device_m": 0.5,
    }  # fmt: skip
    return Scenario(device=sized(60.0, 60.0, 6.0, 7.0, offset_mm=[120.0, 0.0, 60.0]), goal=band(2.45, wanted_level_db=-50),
                    chamber=chamber, twin={"device": {"kind": "patch"}})  # fmt: skip


def with_joints():
    # A tilt of the next joint would look like a zero: none is declared.
    own = "zero_error_deg = 0.4\ntilt_error_deg = 0\noffset_error_mm = 2"
    one = patch_on(roll_over_azimuth(1000, own), offset_mm=[0.0, 60.0, 60.0])
    return replace(one, chamber={**one.chamber, "echo_level_db": -75})


def solved(campaign, record):
    run = run_folder(campaign.folder, "first")
    run.path.mkdir(parents=True, exist_ok=True)
    save_dataset(record, run.record)
    answer = solve_geometry(campaign, run)
    return {one.called: one for one in answer.rows}, answer


@pytest.mark.parametrize(
    ("scenario", "name", "error"),
    [
        (over_elevation(1), "elevation zero", {"elevation_zero_deg": 0.35}),
        (over_elevation(-1), "elevation zero", {"elevation_zero_deg": 0.35}),
        (with_joints(), "turn zero", {"joints": (TrueJoint(name="turn", zero_deg=0.35),)}),
    ],
    ids=["azimuth over elevation", "the other sense", "joints"],
)
def test_an_axis_that_is_off_is_read_corrected_and_no_longer_off(tmp_path, nightly, scenario, name, error):
    """Corrupt, correct, recover: the next plan runs with the new zero on a positioner whose motors did not change."""
    began, plan = services.make_plan(scenario.write(tmp_path / "c"))
    drawn = draw_chamber(
        began.chamber, began.device, plan, 11, holding=began.simulated(), folder=began.folder
    ).model_copy(update=error)
    rows, answer = solved(began, record_of_rehearsal(began, plan, seed=5, truth=drawn))
    print(rows[name])
    assert rows[name].state == "seen" and abs(rows[name].value - 0.35) <= rows[name].expanded
    apply_geometry(answer, began, began)
    then, again = services.make_plan(began.folder)
    # Readouts of the new plan turn the motors of the chamber as it always was.
    record = record_of_rehearsal(then.with_chamber(began.chamber), again, seed=6, truth=drawn)
    after, _ = solved(then, record)
    print(after[name])
    assert abs(after[name].value) <= after[name].expanded
    assert abs(after[name].value) < 0.1
