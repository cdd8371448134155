"""A device that slips between repeats of a cut: readings of the same direction tell that it did, and between which sweeps."""

from __future__ import annotations

import numpy as np
import pytest

from colure.app.services.cuts import figures_of
from colure.app.services.rehearsal import record_of_rehearsal
from colure.model.figure import NOT_TO_BE_USED
from colure.model.plan import ROLES, Role
from colure.planning.preflight import make_plan
from colure.twin.rehearsal import draw_chamber
from tests.app.test_cuts import AZ_EL, campaign

SCAN = 'azimuth_deg = "-60:60:6"\nelevation_deg = 0\nrepeats = 3\n'


@pytest.fixture(scope="module")
def measured(tmp_path_factory):
    """Campaign, a right record of a horn's cut, and one of the same range whose device stands turned by 2 deg."""
    held, plan = make_plan(campaign(tmp_path_factory.mktemp("slip") / "c", "horn", "37-40", AZ_EL, SCAN))
    drawn = draw_chamber(held.chamber, held.device, plan, 3, holding=held.simulated())
    x, y, z = drawn.device_pose_deg
    turned = drawn.model_copy(update={"device_pose_deg": (x, y + 2.0, z)})
    return held, *(record_of_rehearsal(held, plan, truth=one) for one in (drawn, turned))


def told(measured, late):
    """Return the figures of a record whose sweeps `late` of the scan, numbers from 0, are of the turned device."""
    held, record, turned = measured
    record = record.copy(deep=True)
    rows = np.flatnonzero(record["role"].values == ROLES.index(Role.SCAN))[late]
    record["trace"].values[rows] = turned["trace"].values[rows]
    return figures_of(held, record)


@pytest.mark.parametrize("first", [25, 36, 50])
def test_a_slip_between_repeats_is_told_with_its_sweeps(measured, first):
    read = told(measured, slice(first, None))
    slip = read.scan.slip
    assert slip is not None and slip.earliest <= first <= slip.latest - 1 and slip.sweeps == 63
    stated = [one for one in read.figures if not one.reason]
    assert stated and all(one.use == NOT_TO_BE_USED and "slipped on its mount" in one.cautions[0] for one in stated)


def test_a_device_that_stands_is_not_accused(measured):
    assert told(measured, slice(0, 0)).scan.slip is None


@pytest.mark.parametrize("wrong", [slice(26, 30), slice(58, 60)], ids=["in the second of three", "in the last"])
def test_sweeps_that_went_wrong_are_no_slip(measured, wrong):
    held, record, _ = measured
    record = record.copy(deep=True)
    record["trace"].values[np.flatnonzero(record["role"].values == ROLES.index(Role.SCAN))[wrong]] *= 0.3
    assert figures_of(held, record).scan.slip is None
