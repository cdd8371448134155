"""Corrupt, correct, recover: slow drift and jumps put on a record, found and taken out."""

from __future__ import annotations

import numpy as np
import pytest

from colure.analysis.drift import correct, track
from colure.app import service
from colure.app.rehearsal import record_of_rehearsal
from colure.model.chamber import SimulatedChamber
from colure.model.plan import ROLES, Role

DB = 20 / np.log(10)


@pytest.fixture
def clean(small_campaign):
    """A record of the small device without any imperfection."""
    text = (small_campaign / "chamber.toml").read_text(encoding="utf-8")
    (small_campaign / "chamber.toml").write_text(text.replace("tie_interval_s = 180", "tie_interval_s = 60"), "utf-8")
    campaign, plan = service.make_plan(small_campaign)
    return record_of_rehearsal(campaign, plan, truth=SimulatedChamber(noise=False))


def corrupted(record, drift):
    """Multiply every sweep by exp(drift(time in seconds))."""
    gain = np.exp(drift(record["time_s"].values))[:, None, None]
    return record.assign(trace=(record["trace"].dims, record["trace"].values * gain))


def left(record, fixed):
    """Return the largest errors (dB, deg) of what a correction leaves on the scan, after one common factor."""
    scan = record["role"].values == ROLES.index(Role.SCAN)
    true, found = record["trace"].values[scan], fixed["trace"].values[scan]
    strong = np.abs(true) > 0.05 * np.abs(true).max()
    rest = np.log(found[strong] / true[strong])
    rest = rest - np.median(rest.real) - 1j * np.median(rest.imag)
    return DB * np.abs(rest.real).max(), np.rad2deg(np.abs(rest.imag)).max()


def test_half_a_db_and_20_deg_of_drift_are_taken_out(clean):
    """Warm-up over the run, 0.5 dB and 20 deg: below 0.02 dB and 0.5 deg with a tie a minute; the data stay untouched."""
    end = float(clean["time_s"].values.max())
    drift = lambda t: (-0.5 / DB + 1j * np.deg2rad(20)) * (1 - np.exp(-2.0 * t / end)) / (1 - np.exp(-2.0))  # noqa: E731
    record = corrupted(clean, drift)
    before = record["trace"].values.copy()
    found = track(record)
    level, phase = left(clean, correct(record, found))
    print(f"left {level:.4f} dB, {phase:.3f} deg; residual {100 * found.residual:.3f} %")
    assert level <= 0.02 and phase <= 0.5 and not found.jumps
    assert np.array_equal(record["trace"].values, before)


@pytest.mark.parametrize("share", [0.31, 0.47, 0.72])
def test_a_jump_is_placed_where_it_happened_not_smoothed_over(clean, share):
    """A connector slips by 0.5 dB and 20 deg between two ties: found within one slice, with size and moment."""
    times = clean["time_s"].values
    moment = float(times[int(share * times.size)])
    slow = lambda t: (-0.05 / DB + 0.02j) * t / times.max()  # noqa: E731
    jump = -0.5 / DB + 1j * np.deg2rad(20)
    record = corrupted(clean, lambda t: slow(t) + jump * (t > moment))
    found = track(record)
    (one,) = found.jumps
    assert one.after_s <= moment <= one.before_s
    assert one.level_db == pytest.approx(-0.5, abs=0.02) and one.phase_deg == pytest.approx(20.0, abs=0.5)
    fixed = correct(record, found)
    sure = (times < one.after_s) | (times > one.before_s)
    kept = clean.isel(point=np.flatnonzero(sure)), fixed.isel(point=np.flatnonzero(sure))
    level, phase = left(*kept)
    print(f"{100 * (1 - sure.mean()):.1f} % of the points undecided; elsewhere {level:.4f} dB, {phase:.3f} deg left")
    assert level <= 0.02 and phase <= 0.5
    assert found.residual < 2e-3
