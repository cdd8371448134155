"""Power without phase: figures from sums of powers, against the closed-form truth of the simulated device."""

from __future__ import annotations

import numpy as np
import pytest

from colure.analysis.power_only import power_figures, power_sphere
from colure.app import service
from colure.app.rehearsal import record_of_rehearsal
from colure.model.chamber import SimulatedChamber
from colure.model.evaluation import Evaluation
from colure.twin.declared import stand_in
from colure.twin.truth import figures_of
from tests.endtoend.test_near_to_far import edited


@pytest.mark.parametrize("ports", [1, 2])
def test_power_figures_of_a_scan_without_phase(small_campaign, ports):
    """A small panel 3 m away, drift and noise in it, phases thrown away: every figure inside its interval."""
    edited(small_campaign, "chamber.toml", ("range_length_m = 1.2 ", "range_length_m = 3.0 "))
    edited(small_campaign, "goal.toml", ("step_deg = 15", "step_deg = 10"))
    text = (small_campaign / "device.toml").read_text(encoding="utf-8")
    (small_campaign / "device.toml").write_text(text.split("[elements]")[0], encoding="utf-8")
    if ports == 2:
        edited(small_campaign, "chamber.toml", ("ports = 1", "ports = 2"))
        edited(small_campaign, "goal.toml", ('"two-pass"', '"dual-port"'))
    campaign, plan = service.make_plan(small_campaign)
    truth = SimulatedChamber(seed=4, drift_db=0.3, drift_deg=20, crosstalk_db=-130, probe_cross_polar_db=-45)
    record = record_of_rehearsal(campaign, plan, truth=truth)
    powers = record.assign(trace=(record["trace"].dims, np.abs(record["trace"].values).astype(complex))).assign_attrs(
        receiver="power"
    )
    sphere = power_sphere(powers, campaign.chamber)
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


def test_what_power_cannot_say_is_refused(small_campaign):
    edited(small_campaign, "goal.toml", ('"two-pass"', '"one-pass"\nregion_deg = 60'))
    campaign, plan = service.make_plan(small_campaign)
    record = record_of_rehearsal(campaign, plan, truth=SimulatedChamber(noise=False))
    with pytest.raises(ValueError, match="1 to 1 polarizations a direction, must be 2"):
        power_sphere(record, campaign.chamber)
