"""A second polarization that reads with another level, phase or sign is told, and by how much; a right scan is not accused.

The records are those of a right scan, spoilt as a rotary joint or a motor that turns the other way spoils them.
"""

from __future__ import annotations

import numpy as np
import pytest

from colure.analysis.findings.sanity import sanity
from colure.analysis.pipeline.recipe import process
from colure.app import services
from colure.app.services.reference import probe_of
from colure.app.services.rehearsal import record_of_rehearsal
from colure.model.figure import NOT_TO_BE_USED
from colure.model.plan import ROLES, Role
from tests.coverage.scenarios import AZIMUTH_OVER_ELEVATION, ONE, SCENARIOS, Scenario, sized

DIPOLE = SCENARIOS["dipole along x"]
RANGES = {
    "roll over azimuth": DIPOLE,
    "azimuth over elevation": Scenario(
        device=sized(6.0, 1.0, 1.0, 2.1), goal=ONE, chamber={"positioner": AZIMUTH_OVER_ELEVATION}, twin=DIPOLE.twin
    ),
    "two ports": Scenario(
        device=DIPOLE.device, goal={**ONE, "scheme": "dual-port"}, chamber={"probe": {"roll": None, "ports": 2}}, twin=DIPOLE.twin
    ),
}  # fmt: skip


@pytest.fixture(scope="module")
def measured(tmp_path_factory):
    scans = {}
    for name, scenario in RANGES.items():
        campaign, plan = services.make_plan(scenario.write(tmp_path_factory.mktemp("passes") / "c"))
        scans[name] = campaign, plan, record_of_rehearsal(campaign, plan, seed=1)
    return scans


def told(measured, name, ratio):
    """Return what is said of polarization once the second one of the scan, not of the ties, reads `ratio` times as much."""
    campaign, plan, record = measured[name]
    record = record.copy(deep=True)
    scan = record["role"].values == ROLES.index(Role.SCAN)
    if record.sizes["port"] == 2:
        record["trace"].values[scan, :, 1] *= ratio
    else:
        record["trace"].values[scan & (record["pass_index"].values == 1)] *= ratio
    run = process(record, campaign.chamber, campaign.device, probe=probe_of(campaign, plan.frequency_hz))
    return [one for one in sanity(run) if one.topic == "polarization"]


@pytest.mark.parametrize(("name", "ratio", "words"), [
    ("roll over azimuth", 10.0**0.1, "reads +2.0 dB and -0 deg"),
    ("azimuth over elevation", np.exp(1j * np.deg2rad(15.0)), "dB and +15 deg"),
    ("two ports", 10.0**-0.05, "reads -1.0 dB and"),
])  # fmt: skip
def test_a_ratio_is_told_with_its_size(measured, name, ratio, words):
    (one,) = told(measured, name, ratio)
    assert words in one.text and "Look at rotary joint" in one.text
    assert one.severity == NOT_TO_BE_USED and not one.figures


def test_another_sign_is_told_as_a_roll_that_turned_the_other_way(measured):
    (one,) = told(measured, "azimuth over elevation", -1.0)
    assert "turned the other way" in one.text and one.severity == NOT_TO_BE_USED


@pytest.mark.parametrize("name", RANGES)
def test_a_right_scan_is_not_accused(measured, name):
    assert told(measured, name, 1.0) == []
