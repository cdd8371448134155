"""Part of a sphere: what lies beyond it is a row of the budget, and devices cut to regions stay inside their intervals."""

from __future__ import annotations

import numpy as np
import pytest

from colure.analysis.pipeline.recipe import default_recipe, process
from colure.analysis.uncertainty.budget import budget_of
from colure.app import services
from colure.app.services.reference import probe_of
from colure.app.services.rehearsal import carry_out, record_of_rehearsal
from colure.model.chamber import SimulatedChamber
from tests.coverage.scenarios import Scenario, band, four_by_four, sized

PERFECT = {"noise": False, "crosstalk_db": -200.0, "probe_cross_polar_db": -200.0}
DEVICES = {
    "panel 30 mm behind": {"device": four_by_four(offset_mm=[0.0, 0.0, -30.0])},
    "dipole": {"device": sized(6.0, 1.0, 1.0, 2.1), "twin": {"device": {"kind": "dipole", "axis": "x"}}},
}


LIGHT = (("panel 30 mm behind", 30), ("panel 30 mm behind", 60), ("dipole", 30))


@pytest.mark.parametrize("region", [30, 60, 90, 120])
@pytest.mark.parametrize("name", DEVICES)
def test_a_device_cut_to_a_region_stays_inside_its_interval(tmp_path, name, region, request):
    """In a perfect chamber, where truncation alone acts; the closed form of the device is the judge."""
    if (name, region) not in LIGHT and not request.config.getoption("--nightly"):
        pytest.skip("every region of every device: --nightly")
    folder = Scenario(goal=band(24.1, region_deg=region), **DEVICES[name]).write(tmp_path / "campaign")
    campaign, plan = services.make_plan(folder)
    truth = SimulatedChamber(**PERFECT, device=campaign.simulated().device)
    record = record_of_rehearsal(campaign, plan, truth=truth)
    done = process(record, campaign.chamber, campaign.device, probe=probe_of(campaign, plan.frequency_hz))
    assert not done.recipe.runs("mode-filter")
    true = carry_out(campaign, plan, seed=1).truth[0]
    rows = {}
    for figure in budget_of(done.budget).figures:
        if not np.isfinite(true.get(figure.name, np.nan)) or not np.isfinite(figure.value):
            continue
        (row,) = (one for one in figure.budget if one.term == "region truncation")
        rows[figure.name] = (figure.value - true[figure.name], row.expanded)
        assert figure.contains(true[figure.name]), (figure.name, figure.value, true[figure.name])
    print({n: f"{e:+.4f} in {u:.4f}" for n, (e, u) in rows.items()})
    if "phase_centre_z_mm" in rows:
        assert abs(rows["phase_centre_z_mm"][0]) < 0.05
    # A dipole's pattern has no beam in a wide region: all its figures there are said to be undefined.
    assert rows or name == "dipole"


def test_the_less_of_a_sphere_the_longer_the_row(tmp_path):
    """What 30 deg leave open of the beam's direction, 90 deg do not."""
    sizes = {}
    for region in (30, 90):
        folder = Scenario(goal=band(24.1, region_deg=region), device=four_by_four()).write(tmp_path / str(region))
        campaign, plan = services.make_plan(folder)
        record = record_of_rehearsal(campaign, plan, truth=SimulatedChamber(**PERFECT))
        assert not default_recipe(record, campaign.chamber, campaign.device).runs("mode-filter")
        done = process(record, campaign.chamber, campaign.device, probe=probe_of(campaign, plan.frequency_hz))
        for figure in budget_of(done.budget).figures:
            if figure.name == "beam_azimuth_deg":
                (sizes[region],) = (one.expanded for one in figure.budget if one.term == "region truncation")
    print(sizes)
    assert sizes[30] > 3.0 * sizes[90] > 0.0
