"""A scan of one pass: nothing but the scan itself tells that it went wrong. Records are those of right scans, spoilt as a laboratory does it."""

from __future__ import annotations

import re

import numpy as np
import pytest

from colure.analysis.findings.sanity import sanity
from colure.analysis.pipeline.recipe import process
from colure.analysis.steps.agreement import boresight_agreement
from colure.app import services
from colure.app.services.reference import probe_of
from colure.app.services.rehearsal import record_of_rehearsal
from colure.model.figure import NOT_TO_BE_USED
from colure.model.plan import Role
from colure.model.record import of_role
from colure.report.translation import Translation
from colure.twin.rehearsal import draw_chamber
from tests.coverage.scenarios import AT_2_4_GHZ, HORN_38_GHZ, TRUE_HORN_38_GHZ, Scenario, band, circular, sized

ONE_PASS = {
    "patch": Scenario(
        device=sized(60.0, 60.0, 6.0, 7.0),
        goal=band(2.45, scheme="one-pass", region_deg=90),
        chamber=AT_2_4_GHZ,
        twin={"device": {"kind": "patch"}},
    ),
    "dipole": Scenario(
        device=sized(6.0, 1.0, 1.0, 2.1),
        goal=band(24.1, scheme="one-pass", region_deg=90),
        twin={"device": {"kind": "dipole", "axis": "x"}},
    ),
    "circular": Scenario(
        device=circular(1.0).device, goal=band(24.1, scheme="one-pass", region_deg=90), twin=circular(1.0).twin
    ),
    "horn": Scenario(
        device=sized(21.0, 27.0, 5.0, 18.0, offset_mm=[0.0, 0.0, -15.0]),
        goal=band(38.0, scheme="one-pass", region_deg=40),
        chamber={"reference": HORN_38_GHZ},
        twin={"device": TRUE_HORN_38_GHZ},
    ),
}


@pytest.fixture(scope="module")
def measured(tmp_path_factory):
    """Campaign, plan and right record of every device, made when asked for."""
    made = {}

    def of(name):
        if name not in made:
            campaign, plan = services.make_plan(ONE_PASS[name].write(tmp_path_factory.mktemp("one") / "c"))
            made[name] = campaign, plan, record_of_rehearsal(campaign, plan, seed=1)
        return made[name]

    return of


def told(campaign, plan, record):
    """What is said against a record, by topic."""
    run = process(record, campaign.chamber, campaign.device, probe=probe_of(campaign, plan.frequency_hz))
    return {one.topic: one for one in sanity(run) if one.severity != "information"}


def of_scan(record):
    """Places of the scan's sweeps in a record, in measured order."""
    scan = of_role(record.assign(place=("point", np.arange(record.sizes["point"]))), Role.SCAN)
    return scan["place"].values


def stood_still(record):
    """The record of an azimuth axis that stood still from half of the scan on."""
    spoilt, scan = record.copy(deep=True), of_scan(record)
    azimuth, roll = (np.round(record["commanded_deg"].values[:, n], 3) for n in (0, 1))
    later = scan[len(scan) // 2 :]
    for one in later:
        same = scan[(azimuth[scan] == azimuth[later[0]]) & (roll[scan] == roll[one])]
        spoilt["trace"].values[one] = record["trace"].values[same[0]]
    return spoilt


@pytest.mark.parametrize("name", ONE_PASS)
def test_nothing_is_said_against_a_right_scan(measured, name):
    assert told(*measured(name)) == {}


@pytest.mark.parametrize("name", ["patch", "horn"])
def test_an_axis_that_stood_still_is_not_to_be_used(measured, name):
    """Beamwidths were off by a factor of two and more with intervals of 0.1 to 3 deg."""
    campaign, plan, record = measured(name)
    assert told(campaign, plan, stood_still(record))["one pass"].severity == NOT_TO_BE_USED


@pytest.mark.parametrize("name", ["patch", "horn"])
def test_each_trace_of_the_point_before_is_not_to_be_used(measured, name):
    campaign, plan, record = measured(name)
    spoilt, scan = record.copy(deep=True), of_scan(record)
    spoilt["trace"].values[scan] = np.roll(record["trace"].values[scan], 1, axis=0)
    assert told(campaign, plan, spoilt)["one pass"].severity == NOT_TO_BE_USED


def test_a_cable_that_gained_two_decibels_is_looked_at(measured):
    """Half of the slices are 2 dB higher, and beamwidths off by eight intervals."""
    campaign, plan, record = measured("patch")
    spoilt, scan = record.copy(deep=True), of_scan(record)
    spoilt["trace"].values[scan[len(scan) // 2 :]] *= 10.0 ** (2.0 / 20.0)
    assert {"one pass", "pole"} & set(told(campaign, plan, spoilt))


@pytest.mark.parametrize(("turns", "named"), [(2, "reversed"), (1, "one still")])
def test_a_roll_that_turns_the_other_way_or_stands_still_is_named(measured, turns, named):
    """A linear component read at twice the roll's angle goes with cos 2 phi, by a probe that stood still with cos phi (derivable)."""
    campaign, plan, record = measured("circular")
    spoilt, scan = record.copy(deep=True), of_scan(record)
    roll = np.deg2rad(record["commanded_deg"].values[scan, 1])
    spoilt["trace"].values[scan] *= np.cos(turns * roll - 0.3)[:, None, None]
    agreement = boresight_agreement(spoilt, campaign.chamber)
    assert agreement is not None and agreement.turned == named
    pole = told(campaign, plan, spoilt)["pole"]
    assert pole.severity == NOT_TO_BE_USED
    assert ("turns the other way" if turns == 2 else "stood still while the other one turned") in pole.text


def test_a_reference_that_reads_three_decibels_less_gives_a_region_more_than_all_power(measured):
    """Half the reference's power doubles the gain: a patch radiates nine tenths into half the sphere, 180 % then (derivable)."""
    campaign, plan, record = measured("patch")
    spoilt = record.copy(deep=True)
    role = record["role"].values
    reference = role == of_role(record, Role.REFERENCE)["role"].values[0]
    spoilt["trace"].values[reference] *= 10.0 ** (-3.0 / 20.0)
    finding = told(campaign, plan, spoilt)["efficiency"]
    assert finding.severity == NOT_TO_BE_USED and "90 deg about the boresight" in finding.text
    assert "gain_dbi" in finding.figures


@pytest.mark.parametrize("off_deg", [0.0, 1.0])
def test_a_zero_of_azimuth_that_is_off_is_told_by_the_seam_of_one_pass(measured, off_deg):
    """Beam elevation -1.2 deg instead of 0.0 +- 0.12, and nothing was said."""
    campaign, plan, _ = measured("circular")
    drawn = draw_chamber(campaign.chamber, campaign.device, plan, 5).model_copy(
        update={"device": campaign.simulated().device, "theta_zero_deg": off_deg}
    )
    said = told(campaign, plan, record_of_rehearsal(campaign, plan, truth=drawn)).get("azimuth zero")
    assert (said is not None) == (off_deg > 0.0)
    if said is not None:
        assert (
            said.severity == NOT_TO_BE_USED and "beam_elevation_deg" in said.figures and "gain_dbi" not in said.figures
        )
        zero = float(re.search(r"azimuth is ([+-][\d.]+) deg off", said.text)[1])
        assert abs(zero - off_deg) < 0.3
        for language in ("de", "fr", "es"):
            translate = Translation(language)
            assert "readings" not in translate(said.text) and not translate.left
