"""Runs of power without phase: what no device of the declared size radiates, and more than 100 %, is told.

The records are those of a right scan, spoilt as a connector, a receiver's range or the wrong cable spoils them.
"""

from __future__ import annotations

import numpy as np
import pytest

from colure.app import services
from colure.app.services.power_runs import PowerRun
from colure.app.services.rehearsal import record_of_rehearsal
from colure.app.storage.folders import run_folder
from colure.model.figure import NOT_TO_BE_USED, USABLE
from colure.model.files import save_dataset
from colure.model.plan import ROLES, Role
from tests.coverage.scenarios import SCENARIOS


@pytest.fixture(scope="module")
def measured(tmp_path_factory):
    """Campaign and record of a dipole 1.2 m away, as a receiver without phase would have read it."""
    folder = SCENARIOS["dipole along x"].write(tmp_path_factory.mktemp("power") / "c")
    campaign, plan = services.make_plan(folder)
    record = record_of_rehearsal(campaign, plan, seed=1)
    levels = record["trace"].dims, np.abs(record["trace"].values).astype(complex)
    return campaign, record.assign(trace=levels).assign_attrs(receiver="power")


def told(measured, role, part, ratio):
    """Return the stated figures of a run in which a part of the sweeps of a role reads `ratio` times as much."""
    campaign, record = measured
    record = record.copy(deep=True)
    rows = np.flatnonzero(record["role"].values == ROLES.index(role))
    record["trace"].values[rows[part(rows.size)]] *= ratio
    run = run_folder(campaign.folder, f"power-{role}-{ratio:.3g}".lower().replace(".", "-"))
    run.path.mkdir(parents=True)
    save_dataset(record, run.path / "record.nc")
    return [one for one in PowerRun(campaign, run).evaluate() if not one.reason]


def test_a_right_run_is_not_accused(measured):
    figures = told(measured, Role.SCAN, lambda count: slice(0, 0), 1.0)
    assert figures and all(one.use == USABLE for one in figures)


@pytest.mark.parametrize(("part", "ratio"), [
    (lambda count: slice(count // 4, count // 2), 10.0**0.1),
    (lambda count: slice(count // 2, count // 2 + 2), 0.1),
], ids=["2 dB for a quarter", "two sweeps lost"])  # fmt: skip
def test_sweeps_that_went_wrong_are_told_without_phase(measured, part, ratio):
    """By 2 dB for a quarter of the scan: gain 4.1 dBi of 2.15, six of its intervals, and nothing was said."""
    figures = told(measured, Role.SCAN, part, ratio)
    assert figures and all(one.use == NOT_TO_BE_USED for one in figures)
    assert all(any("does not fit the power of a device" in word for word in one.cautions) for one in figures)


def test_more_than_all_power_is_told_without_phase(measured):
    """The reference 3 dB low: an efficiency of +3.0 dB, eleven of its intervals, was stated without a word."""
    figures = told(measured, Role.REFERENCE, lambda count: slice(None), 10.0**-0.15)
    marked = {one.name for one in figures if any("more than 100 %" in word for word in one.cautions)}
    assert marked == {"gain_dbi", "efficiency_db"}
