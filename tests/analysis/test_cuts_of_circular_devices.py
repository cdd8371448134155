"""Cuts of a device that turns its field: gains of both hands, their ratio, the axial ratio with its sense; held against the simulated truth."""

from __future__ import annotations

import numpy as np
import pytest

from colure.analysis.cuts.curve import curve_of, lobes_of
from colure.analysis.cuts.figures import cut_figures
from colure.analysis.cuts.scan import read_cuts
from colure.app.services.rehearsal import record_of_rehearsal
from colure.model.campaign import Campaign
from colure.planning.preflight import make_plan
from colure.twin.campaign_truth import campaign_truth
from colure.twin.rehearsal import draw_chamber
from tests.coverage.scenarios import Scenario, band, four_by_four

GRID = {"kind": "panel", "rows": 4, "columns": 4, "pitch_mm": 6.213}
NAMES = ("gain_right_dbic", "gain_left_dbic", "xpd_circular_db", "axial_ratio_signed_db")


def campaign_of(folder, *, held, device, offset="0,90", theta="-40:40:4") -> Campaign:
    goal = {
        **band(24.1),
        "scheme": None,
        "step_deg": None,
        "scan": {"theta_deg": theta, "phi_deg": [0.0], "offset_deg": offset},
    }
    return Campaign.load(
        Scenario(device=device, goal=goal, chamber={"range_length_m": 3.0}, twin={"device": held}).write(folder)
    )


def figures_of(campaign, *, seed=None):
    _, plan = make_plan(campaign)
    truth = campaign.simulated() if seed is None else draw_chamber(
        campaign.chamber, campaign.device, plan, seed, holding=campaign.simulated(), folder=campaign.folder)  # fmt: skip
    record = record_of_rehearsal(campaign, plan, truth=truth)
    scan = read_cuts(record, campaign.chamber, campaign.device)
    found = cut_figures(scan, campaign.chamber, campaign.device, campaign.evaluation(), order=float(plan.order))
    return {one.name.removeprefix("phi_0_"): one for one in found}


@pytest.mark.parametrize("sense", ["right", "left"])
def test_an_elliptical_panel(tmp_path, sense):
    """Axial ratio of 3 dB beside the panel's own cross-polarization; truth from the closed-form far field of the simulated device."""
    ellipse = {"polarization": "elliptical", "sense": sense, "axial_ratio_db": 3.0}
    campaign = campaign_of(
        tmp_path, held={**GRID, **ellipse}, device=four_by_four(polarization=sense, axial_ratio_db=3.0)
    )
    truth = campaign_truth(campaign)[0]
    for seed in (11, 12):
        found = figures_of(campaign, seed=seed)
        for name in NAMES:
            assert found[name].lower <= truth[name].value <= found[name].upper, (seed, name)
        assert np.sign(found["axial_ratio_signed_db"].value) == (1.0 if sense == "right" else -1.0)
        # Both hands together are the total (IEEE Std 145).
        total = 10.0 * np.log10(sum(10.0 ** (found[name].value / 10.0) for name in NAMES[:2]))
        assert total == pytest.approx(found["peak_dbi"].value, abs=0.1)


def test_a_linear_device_shows_no_hands_unless_asked(tmp_path):
    campaign = campaign_of(tmp_path, held=GRID, device=four_by_four())
    assert not set(NAMES) & set(figures_of(campaign))


def test_one_offset_cannot_tell(tmp_path):
    device = four_by_four(polarization="right", axial_ratio_db=3.0)
    found = figures_of(campaign_of(tmp_path, held=GRID, device=device, offset="0"))
    assert all("one probe offset measured one component" in found[name].reason for name in NAMES)


def test_ripple_is_no_null(tmp_path):
    """A patch's broad beam has no null: what noise and echoes draw into its flank is not called one."""
    device = {"size_mm": [5.0, 5.0, 1.0], "offset_mm": [0.0, 0.0, 0.0], "expected_gain_dbi": 6.0, "elements": None}
    goal = {**band(24.1), "scheme": None, "step_deg": None, "scan": {"theta_deg": "-80:80:2", "phi_deg": [0.0]}}
    chamber = {"echo_level_db": -35}
    campaign = Campaign.load(
        Scenario(device=device, goal=goal, chamber=chamber, twin={"device": {"kind": "patch"}}).write(tmp_path)
    )
    for seed in (1, 2, 3):
        found = figures_of(campaign, seed=seed)
        for name in ("null_left_deg", "null_right_deg", "null_left_db", "null_right_db"):
            assert found[name].reason.startswith("cannot tell, because"), (name, found[name].value)


@pytest.mark.parametrize(("first_deg", "told"), [(-30.0, True), (0.0, False), (-6.0, True), (-3.0, False)])
def test_a_top_that_samples_show_from_one_side_only_has_no_angle(first_deg, told):
    """A beam at 0.3 deg, samples every 6 deg."""
    angle = np.arange(first_deg, 90.1, 6.0)
    lobes = lobes_of(curve_of(angle, (np.exp(-(((angle - 0.3) / 15.0) ** 2)).astype(complex),)), (3.0,))
    assert lobes.within_of_end(6.0) != told


def test_a_cut_that_begins_at_the_beam_states_no_squint(tmp_path):
    campaign = campaign_of(tmp_path, held=GRID, device=four_by_four(), theta="0:40:4")
    figures = figures_of(campaign, seed=11)
    assert "where the cut ends" in figures["peak_deg"].reason or "from the cut's end" in figures["peak_deg"].reason
