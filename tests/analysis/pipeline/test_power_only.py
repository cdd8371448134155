"""Power without phase: figures from sums of powers, against the closed-form truth of the simulated device."""

from __future__ import annotations

import numpy as np
import pytest

from colure.analysis.pipeline.power_levels import PowerSphere
from colure.analysis.pipeline.power_only import power_figures, power_sphere
from colure.app import services
from colure.app.services.rehearsal import record_of_rehearsal
from colure.model.chamber import SimulatedChamber
from colure.model.evaluation import Evaluation
from colure.twin.declared import stand_in
from colure.twin.truth import figures_of
from tests.endtoend.test_near_to_far import edited


@pytest.mark.parametrize("ports", [1, 2])
def test_power_figures_of_a_scan_without_phase(broader_campaign, ports):
    """A small panel 3 m away, drift and noise in it, phases thrown away: every figure inside its interval."""
    edited(broader_campaign, "chamber.toml", ("range_length_m = 1.2 ", "range_length_m = 3.0 "))
    edited(broader_campaign, "goal.toml", ("step_deg = 15", "step_deg = 10"))
    text = (broader_campaign / "device.toml").read_text(encoding="utf-8")
    (broader_campaign / "device.toml").write_text(text.split("[elements]")[0], encoding="utf-8")
    if ports == 2:
        edited(broader_campaign, "chamber.toml", ("ports = 1", "ports = 2"))
        edited(broader_campaign, "goal.toml", ('"two-pass"', '"dual-port"'))
    campaign, plan = services.make_plan(broader_campaign)
    truth = SimulatedChamber(seed=4, drift_db=0.3, drift_deg=20, crosstalk_db=-130, probe_cross_polar_db=-45)
    record = record_of_rehearsal(campaign, plan, truth=truth)
    powers = record.assign(trace=(record["trace"].dims, np.abs(record["trace"].values).astype(complex))).assign_attrs(
        receiver="power"
    )
    sphere = power_sphere(powers, campaign.chamber, offset_mm=campaign.device.offset_mm)
    wanted = Evaluation(transmit_power_dbm=10.0, horizon_bands_deg=(45.0,), coverage_percent=(50.0,), up="z")
    found = power_figures(sphere, campaign.chamber, campaign.device, wanted)
    device = stand_in(campaign.device, plan.frequency_hz, band_hz=plan.frequency_hz, seed=1)
    true = figures_of(device, 0.0)
    checked = 0
    for figure in found:
        f = int(np.argmin(np.abs(plan.frequency_hz - figure.frequency_hz)))
        known = {**true[f], "trp_dbm": 10.0 + true[f]["efficiency_db"], "eirp_dbm": 10.0 + true[f]["gain_dbi"]}
        known.pop("upper_share_db")  # worked out about another axis
        if figure.name in known:
            checked += 1
            print(f"{figure.name}: {figure.text()} {figure.unit}, truth {known[figure.name]:.3f}")
            assert figure.contains(known[figure.name]), figure.name
    assert checked == 2 * 8
    names = {figure.name for figure in found}
    assert {"horizon_45_db", "coverage_50_dbi", "upper_share_db"} <= names and "xpd_db" not in names


def test_what_power_cannot_say_is_refused(broader_campaign):
    edited(broader_campaign, "goal.toml", ('"two-pass"', '"one-pass"\nregion_deg = 60'))
    campaign, plan = services.make_plan(broader_campaign)
    record = record_of_rehearsal(campaign, plan, truth=SimulatedChamber(noise=False))
    with pytest.raises(ValueError, match="1 to 1 polarizations a direction, must be 2"):
        power_sphere(record, campaign.chamber)


def sphere_of(step_deg: float, power) -> PowerSphere:
    """Return a noiseless whole sphere of a power (x, y, z) -> (...), both halves of every slice."""
    steps = round(180.0 / step_deg)
    theta, phi = np.linspace(0.0, np.pi, steps + 1), np.arange(2 * steps) * np.pi / steps
    t, p = np.meshgrid(theta, phi, indexing="ij")
    gain = power(np.sin(t) * np.cos(p), np.sin(t) * np.sin(p), np.cos(t))
    return PowerSphere(frequency_hz=np.array([24e9]), theta=theta, phi=phi, gain=gain[None], noise_db=0.0, drift_db=0.0)


def shown(sphere: PowerSphere, campaign, **wanted):
    found = power_figures(sphere, campaign.chamber, campaign.device, Evaluation(**wanted))
    return {figure.name: figure for figure in found}


@pytest.mark.parametrize("step_deg", [10.0, 15.0, 20.0, 30.0])
def test_partial_powers_of_a_short_dipole_whose_edges_miss_the_rings(broader_campaign, step_deg):
    """Short dipole along z: within +-b of the horizon (3 sin b - sin^3 b) / 2; along x and about x the same (derivable)."""
    campaign, _ = services.make_plan(broader_campaign)
    for up, power in (("z", lambda x, y, z: 1.5 * (1 - z**2)), ("x", lambda x, y, z: 1.5 * (1 - x**2))):
        found = shown(sphere_of(step_deg, power), campaign, horizon_bands_deg=(22.5, 37.0), up=up)
        for band in (22.5, 37.0):
            s = np.sin(np.deg2rad(band))
            true = 10.0 * np.log10((3.0 * s - s**3) / 2.0)
            assert found[f"horizon_{band:g}_db"].value == pytest.approx(true, abs=2e-4)
        assert found["upper_share_db"].value == pytest.approx(-3.0103, abs=2e-4)
        assert found["directivity_dbi"].value == pytest.approx(1.7609, abs=2e-3)  # section 4 of the standards sheet


def test_a_huygens_source_sends_seven_eighths_upwards(broader_campaign):
    """Section 6 of the standards sheet; about z from 30 deg steps, and turned to look along x and y."""
    campaign, _ = services.make_plan(broader_campaign)
    for up, power in zip("zxy", (lambda x, y, z: (1 + z) ** 2, lambda x, y, z: (1 + x) ** 2, lambda x, y, z: (1 + y) ** 2),
                         strict=True):  # fmt: skip
        found = shown(sphere_of(30.0, power), campaign, up=up)
        assert found["upper_share_db"].value == pytest.approx(10.0 * np.log10(7.0 / 8.0), abs=5e-4)


@pytest.mark.nightly
def test_what_the_sampling_leaves_open_holds_the_error(broader_campaign):
    """Beams cos^n about random axes on coarse grids: shares, efficiency and peak by closed form lie inside the sampling's row."""
    campaign, _ = services.make_plan(broader_campaign)
    random, held = np.random.default_rng(8), []
    for _ in range(40):
        n, step = int(random.integers(4, 40)), float(random.choice([10.0, 12.0, 15.0, 20.0, 30.0]))
        axis = random.normal(size=3)
        axis /= np.linalg.norm(axis)
        # cos^n over both sides: a polynomial of degree n, mean 1 / (n + 1).
        found = shown(
            sphere_of(step, lambda x, y, z, a=axis, n=2 * (n // 2): (a[0] * x + a[1] * y + a[2] * z) ** n), campaign
        )
        mean = 1.0 / (2 * (n // 2) + 1)
        for name, true in (
            ("efficiency_db", 10 * np.log10(mean)),
            ("gain_dbi", 0.0),
            ("upper_share_db", 10 * np.log10(0.5)),
        ):
            figure = found[name]
            row = next(row for row in figure.budget if row.term == "sampling and truncation")
            held.append(abs(figure.value - true) <= row.expanded + 1e-3)
    print(f"{np.mean(held):.3f} of {len(held)}")
    assert np.mean(held) >= 0.95


def test_too_few_rings_are_refused_in_words(broader_campaign):
    campaign, _ = services.make_plan(broader_campaign)
    with pytest.raises(ValueError, match=r"4 rings, needs at least 5 \(step 60 deg, at most 45 deg"):
        shown(sphere_of(60.0, lambda x, y, z: 1.0 + 0.0 * z), campaign)


def test_a_dipole_has_no_beam_without_phase_either(broader_campaign):
    """A ring of maxima: its strongest sample is rounding, and its direction is not a beam's."""
    campaign, _ = services.make_plan(broader_campaign)
    theta, phi = np.deg2rad(np.arange(0.0, 181.0, 15.0)), np.deg2rad(np.arange(0.0, 360.0, 15.0))
    gain = 1.5 * np.sin(theta)[None, :, None] ** 2 * np.ones((1, 1, phi.size))
    sphere = PowerSphere(frequency_hz=np.array([24e9]), theta=theta, phi=phi, gain=gain, noise_db=0.01, drift_db=0.01)
    found = {f.name: f for f in power_figures(sphere, campaign.chamber, campaign.device, Evaluation())}
    assert found["directivity_dbi"].value == pytest.approx(1.7609, abs=0.01)  # short dipole, derivable
    for name in ("beam_azimuth_deg", "beam_elevation_deg", "front_to_back_db"):
        assert "no single beam" in found[name].reason and np.isnan(found[name].value)


def test_a_null_behind_between_coarse_samples_is_no_infinite_front_to_back_ratio(broader_campaign):
    """A beam 25 deg off the samples of a 30 deg grid, 1e-4 behind (40 dB): a value, and no upper end that excludes 40 dB."""
    campaign, _ = services.make_plan(broader_campaign)
    a = np.deg2rad(25.0)

    def power(x, y, z):
        ahead = x * np.sin(a) + z * np.cos(a)
        return ((1.0 + ahead) / 2.0) ** 8 + 1e-4

    figure = shown(sphere_of(30.0, power), campaign)["front_to_back_db"]
    print(figure.text())
    assert np.isfinite(figure.value) and figure.contains(10 * np.log10(1.0001 / 1e-4))
