"""Near field to far field against the twin's own closed-form far field.

Noise and imperfections off, everything else real: plan, kinematics, probe cluster at the exact
finite distance, polarization assembly, probe correction.
"""

from __future__ import annotations

from pathlib import Path

import numpy as np
import pytest

from colure.analysis.pipeline.recipe import process
from colure.app.services.reference import probe_of
from colure.geometry.directions import unit_vector
from colure.geometry.polarization import from_cartesian
from colure.model.campaign import Campaign
from colure.model.chamber import SimulatedChamber
from colure.model.pattern import field_of
from colure.model.plan import Plan
from colure.model.record import build_record
from colure.planning.preflight import make_plan
from colure.twin.antennas import panel
from colure.twin.chamber import DEVICE_CHANNEL, REFERENCE_CHANNEL, SimulatedRange
from colure.twin.sources import Cluster

PERFECT = SimulatedChamber(noise=False, crosstalk_db=-200, probe_cross_polar_db=-200)


def simulated_record(campaign: Campaign, plan: Plan, truth: SimulatedChamber):
    """Measure a plan on the simulated range without sockets, clock or noise."""
    offset = tuple(1e-3 * x for x in campaign.device.offset_mm)
    chamber = SimulatedRange(campaign.chamber, truth, lambda f: panel(f, centre_m=offset))
    chamber.set_frequencies(plan.frequency_hz)
    trace = np.empty((len(plan), plan.frequency_hz.size, len(plan.ports)), complex)
    for index, (target, role) in enumerate(zip(plan.targets_deg, plan.roles(), strict=True)):
        channel = REFERENCE_CHANNEL if role == "reference" else DEVICE_CHANNEL
        readouts = dict(zip(plan.axes, target, strict=True))
        for column, port in enumerate(plan.ports):
            trace[index, :, column] = chamber.received(readouts, port, channel=channel)
    count = np.arange(len(plan))
    return build_record(
        plan, plan_index=count, role=plan.role, state_index=plan.state_index, trace=trace, commanded_deg=plan.targets_deg,
        readback_deg=plan.targets_deg, rate_deg_s=0.0 * plan.targets_deg, time_s=count.astype(float),
        wall_time=count.astype(float), monotonic_s=count.astype(float), flags=0 * count,
    )  # fmt: skip


def rms_error_db(campaign: Campaign, pattern, device: Cluster | None = None) -> float:
    """Rms of the complex vector difference to the closed form (of the demo's panel), relative to the peak, level and phase free."""
    offset = tuple(1e-3 * x for x in campaign.device.offset_mm)
    device = panel(pattern["frequency"].values, centre_m=offset) if device is None else device
    t, p = np.meshgrid(np.deg2rad(pattern["theta"].values), np.deg2rad(pattern["phi"].values), indexing="ij")
    true = device.far_field(unit_vector(theta=t, phi=p).reshape(-1, 3)).reshape(-1, *t.shape, 3)
    truth = np.stack(from_cartesian(true, theta=t, phi=p), axis=1)
    # Directions outside a region are blank: nothing is claimed there.
    known = np.isfinite(pattern["e_theta"].values[0].real)
    found, truth = np.where(known, field_of(pattern), 0.0), np.where(known, truth, 0.0)
    worst = -np.inf
    for one, reference in zip(found, truth, strict=True):
        # The reference horn fixes the level to its own accuracy and an arbitrary phase: one complex factor.
        scaled = one * np.vdot(one, reference) / np.vdot(one, one)
        weight = np.sin(t) * known
        error = np.sum(np.sum(np.abs(scaled - reference) ** 2, axis=0) * weight) / np.sum(weight)
        peak = np.sum(np.abs(reference) ** 2, axis=0).max()
        worst = max(worst, 10 * np.log10(error / peak))
    return worst


def edited(folder: Path, name: str, *pairs: tuple[str, str]) -> None:
    text = (folder / name).read_text(encoding="utf-8")
    for old, new in pairs:
        assert old in text
        text = text.replace(old, new)
    (folder / name).write_text(text, encoding="utf-8")


@pytest.mark.parametrize("distance", [0.3, pytest.param(1.2, marks=pytest.mark.nightly)])
def test_roll_over_azimuth_two_passes(campaign_folder, distance):
    edited(campaign_folder, "goal.toml", ("points = 11", "points = 2"), ("= -50 ", "= -95 "))
    edited(campaign_folder, "chamber.toml", ("range_length_m = 1.2", f"range_length_m = {distance}"))
    campaign = Campaign.load(campaign_folder)
    campaign, plan = make_plan(campaign)
    record = simulated_record(campaign, plan, PERFECT)
    done = process(
        record, campaign.chamber, campaign.device, probe=probe_of(campaign, plan.frequency_hz), grid_step_deg=3
    )
    error = rms_error_db(campaign, done.pattern)
    print(f"{distance} m: {error:.1f} dB rms relative to the peak")
    assert error <= -80.0


AZIMUTH_ELEVATION = """
[positioner.elevation]
min_deg = -185
max_deg = 185
speed_deg_s = 20
acceleration_deg_s2 = 40
"""


@pytest.mark.parametrize(
    ("geometry", "ports"),
    [
        pytest.param("azimuth-over-elevation", 1, marks=pytest.mark.nightly),
        ("elevation-over-azimuth", 2),
        pytest.param("azimuth-over-elevation", 2, marks=pytest.mark.nightly),
        pytest.param("elevation-over-azimuth", 1, marks=pytest.mark.nightly),
    ],
)
def test_azimuth_elevation_positioners(campaign_folder, geometry, ports):
    edited(campaign_folder, "goal.toml", ("points = 11", "points = 2"), ('"two-pass"', '"auto"'), ("= -50 ", "= -95 "))
    edited(campaign_folder, "device.toml", ("[49.7, 49.7, 4.0]", "[30.0, 30.0, 4.0]"))
    text = (campaign_folder / "chamber.toml").read_text(encoding="utf-8")
    start, end = text.index("[positioner.roll]"), text.index("[probe]")
    text = text[:start] + AZIMUTH_ELEVATION + text[end:]
    text = text.replace("roll-over-azimuth", geometry).replace("ports = 1", f"ports = {ports}")
    (campaign_folder / "chamber.toml").write_text(text, encoding="utf-8")
    campaign = Campaign.load(campaign_folder)
    campaign, plan = make_plan(campaign)
    record = simulated_record(campaign, plan, PERFECT)
    done = process(
        record, campaign.chamber, campaign.device, probe=probe_of(campaign, plan.frequency_hz), grid_step_deg=3
    )
    # The panel is larger than declared here, so truncation, not the geometry, sets the floor.
    assert rms_error_db(campaign, done.pattern) <= -45.0


@pytest.mark.nightly
def test_dual_port_roll_over_azimuth_without_a_probe_axis(campaign_folder):
    edited(
        campaign_folder, "goal.toml", ("points = 11", "points = 2"), ('"two-pass"', '"dual-port"'), ("= -50 ", "= -95 ")
    )
    text = (campaign_folder / "chamber.toml").read_text(encoding="utf-8")
    start, end = text.index("[probe.roll]"), text.index("[analyzer]")
    text = (text[:start] + text[end:]).replace("ports = 1", "ports = 2")
    (campaign_folder / "chamber.toml").write_text(text, encoding="utf-8")
    campaign = Campaign.load(campaign_folder)
    campaign, plan = make_plan(campaign)
    assert plan.axes == ("azimuth", "roll") and plan.ports == (1, 2)
    record = simulated_record(campaign, plan, PERFECT)
    done = process(
        record, campaign.chamber, campaign.device, probe=probe_of(campaign, plan.frequency_hz), grid_step_deg=3
    )
    assert rms_error_db(campaign, done.pattern) <= -80.0
