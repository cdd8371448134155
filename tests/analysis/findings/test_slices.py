"""A roll that turns the other way, or stands still: every slice sees the boresight, and they disagree about it.

The records are those of a right scan whose angles, or traces, are then what the fault would have made of them.
"""

from __future__ import annotations

import numpy as np
import pytest

from colure.analysis.findings.sanity import sanity
from colure.analysis.pipeline.recipe import process
from colure.analysis.steps.agreement import boresight_agreement
from colure.app import services
from colure.app.services.reference import probe_of
from colure.app.services.rehearsal import record_of_rehearsal
from colure.model.figure import NOT_TO_BE_USED
from tests.coverage.scenarios import SCENARIOS

LINEAR, CIRCULAR = "dipole along x", "circular, 1 dB"


@pytest.fixture(scope="module")
def measured(tmp_path_factory):
    """Campaign, plan and record of a linear and of a circular device."""
    scans = {}
    for name in (LINEAR, CIRCULAR):
        campaign, plan = services.make_plan(SCENARIOS[name].write(tmp_path_factory.mktemp("slices") / "c"))
        scans[name] = campaign, plan, record_of_rehearsal(campaign, plan, seed=1)
    return scans


def reversed_axis(record, axis):
    """The record of an axis whose counts have the other sign than what it does."""
    record = record.copy(deep=True)
    column = list(record["axis"].values).index(axis)
    for name in ("commanded_deg", "readback_deg", "rate_deg_s"):
        record[name].values[:, column] *= -1.0
    return record


def at_boresight(record, *, probe_moves, roll_moves):
    """The record whose points at the boresight were measured by axes that did not move though they say so."""
    record = record.copy(deep=True)
    azimuth, roll, probe = np.deg2rad(record["commanded_deg"].values.T)
    ahead = (np.abs(azimuth) < 1e-6) & (record["slice_index"].values >= 0)
    both = [np.flatnonzero(ahead & (record["pass_index"].values == n)) for n in (0, 1)]
    first, second = (one[np.argsort(roll[one])] for one in both)
    assert np.allclose(roll[first], roll[second]) and np.ptp(roll[first]) > 1.0
    # What both passes say of the field in the chamber's frame at this roll, and what a probe at another angle reads of it.
    pair = np.stack([record["trace"].values[one] for one in (first, second)])
    angle = np.stack([probe[one] for one in (first, second)])
    basis = np.stack([np.cos(angle), np.sin(angle)], axis=1)  # (pass, component, slice)
    field = np.linalg.solve(basis.transpose(2, 0, 1), pair.transpose(1, 0, 2, 3).reshape(pair.shape[1], 2, -1))
    if not roll_moves:
        field = np.broadcast_to(field[np.argmin(np.abs(roll[first]))], field.shape)
    if not probe_moves:
        angle = angle[:, [int(np.argmin(np.abs(roll[first])))]] + np.zeros_like(angle)
    read = np.einsum("pcs,scf->psf", np.stack([np.cos(angle), np.sin(angle)], axis=1), field)
    for one, values in zip((first, second), read, strict=True):
        record["trace"].values[one] = values.reshape(record["trace"].values[one].shape)
    return record


@pytest.mark.parametrize("device", [LINEAR, CIRCULAR])
@pytest.mark.parametrize("axis", ["roll", "probe"])
def test_a_roll_of_the_other_sense_is_named_and_nothing_is_to_be_used(measured, device, axis):
    campaign, plan, record = measured[device]
    run = process(
        reversed_axis(record, axis), campaign.chamber, campaign.device, probe=probe_of(campaign, plan.frequency_hz)
    )
    told = {one.topic: one for one in sanity(run)}
    assert told["pole"].severity == NOT_TO_BE_USED and "turns the other way" in told["pole"].text
    assert "size" not in told, "the declared size is right"


@pytest.mark.parametrize("device", [LINEAR, CIRCULAR])
@pytest.mark.parametrize(
    ("moves", "fault"),
    [
        ({"probe_moves": True, "roll_moves": True}, ""),
        ({"probe_moves": False, "roll_moves": True}, "probe still"),
        ({"probe_moves": True, "roll_moves": False}, "roll still"),
    ],
)
def test_an_axis_that_stood_still_is_named(measured, device, moves, fault):
    campaign, _, record = measured[device]
    agreement = boresight_agreement(at_boresight(record, **moves), campaign.chamber)
    assert agreement.turned == fault
    assert agreement.left_db < -25.0 and (agreement.spread_db > -8.0) is bool(fault)


@pytest.mark.parametrize("device", [LINEAR, CIRCULAR])
def test_a_right_scan_is_not_accused(measured, device):
    campaign, plan, record = measured[device]
    run = process(record, campaign.chamber, campaign.device, probe=probe_of(campaign, plan.frequency_hz))
    assert [one.severity for one in sanity(run) if one.topic == "pole"] == ["information"]
