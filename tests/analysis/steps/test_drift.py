"""Corrupt, correct, recover: slow drift and jumps put on a record, found and taken out."""

from __future__ import annotations

import numpy as np
import pytest

from colure.analysis.steps.drift import correct, track
from colure.app import services
from colure.app.services.rehearsal import record_of_rehearsal
from colure.model.chamber import SimulatedChamber
from colure.model.plan import ROLES, Role

DB = 20 / np.log(10)


@pytest.fixture
def clean(small_campaign):
    """A record of the small device without any imperfection."""
    text = (small_campaign / "chamber.toml").read_text(encoding="utf-8")
    (small_campaign / "chamber.toml").write_text(text.replace("tie_interval_s = 180", "tie_interval_s = 60"), "utf-8")
    campaign, plan = services.make_plan(small_campaign)
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


def with_noise(record, level, seed):
    """Add receiver noise of one complex rms to every sweep, whatever it reads."""
    random = np.random.default_rng(seed)
    trace = record["trace"].values
    noise = (random.normal(size=trace.shape) + 1j * random.normal(size=trace.shape)) * level / np.sqrt(2)
    return record.assign(trace=(record["trace"].dims, trace + noise))


def weakened(record, db):
    """Lower every tie, as if it looked where the device radiates little."""
    role = record["role"].values
    weak = np.where(role == ROLES.index(Role.TIE), 10 ** (-db / 20), 1.0)[:, None, None]
    return record.assign(trace=(record["trace"].dims, record["trace"].values * weak))


def errors(record, found, drift):
    """Return the rms of what the correction leaves over the scan, after what all of it has in common, relative."""
    times = record["time_s"].values[record["role"].values == ROLES.index(Role.SCAN)]
    rest = found.log_gain(times) - drift(times)[:, None]
    rest = rest - rest.mean(axis=0)
    return float(np.sqrt(np.mean(np.abs(rest) ** 2)))


@pytest.mark.parametrize("weak_db", [0.0, 30.0, 60.0])
def test_noisy_ties_never_do_more_harm_than_no_correction(clean, weak_db):
    """The optimal linear estimate of a drift is at worst no estimate (Wiener, 1949; derivable), and its error is as stated.

    Sweeps 60 dB above the noise, ties as strong, 30 dB and 60 dB weaker: the last say nothing.
    """
    times = clean["time_s"].values
    peak = np.abs(clean["trace"].values).max()
    real, stated, raw = [], [], []
    for seed in range(12):
        random = np.random.default_rng((seed, 7))
        # As large as is declared: warm-up within half an hour and a swing on top of it.
        warm, swing, begin = 1800 * 2 ** random.uniform(-1, 1), random.uniform(0, 0.5), random.uniform(0, 2 * np.pi)

        def drift(t, warm=warm, swing=swing, begin=begin):
            shape = 1 - np.exp(-t / warm) + swing * (np.sin(2 * np.pi * t / warm + begin) - np.sin(begin))
            return (-0.3 / DB + 1j * np.deg2rad(8)) * shape

        record = with_noise(weakened(corrupted(clean, drift), weak_db), 1e-3 * peak, seed)
        found = track(record)
        real.append(errors(record, found, drift))
        raw.append(float(np.std(drift(times))))
        stated.append(found.between)
    rms = lambda x: float(np.sqrt(np.mean(np.square(x))))  # noqa: E731
    print(f"ties {weak_db:g} dB weaker: left {rms(real):.5f}, stated {rms(stated):.5f}, uncorrected {rms(raw):.5f}")
    assert rms(real) <= 1.05 * rms(raw)
    assert 0.4 <= rms(real) / rms(stated) <= 1.4
    if weak_db == 0.0:
        assert rms(real) < 0.02 * rms(raw)
