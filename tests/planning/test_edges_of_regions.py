"""How far and how finely a grid in azimuth and elevation goes over a part of the sphere, so that what lies beyond stays outside."""

from __future__ import annotations

import numpy as np
import pytest

from colure.app import services
from colure.app.services.rehearsal import rehearse
from colure.errors import InputError
from colure.planning.sampling import step_for
from colure.planning.scan import BEYOND_THE_EDGE, order_of
from tests.coverage.scenarios import AZIMUTH_OVER_ELEVATION, ONE, Scenario, four_by_four, sized


def over(region_deg: float, folder, device=None, **goal):
    """Write a campaign in azimuth and elevation over a region."""
    scenario = Scenario(
        device=device or four_by_four(),
        goal={**ONE, "region_deg": region_deg, **goal},
        chamber={"positioner": AZIMUTH_OVER_ELEVATION},
    )
    return scenario.write(folder / "campaign")


def test_sweeps_close_together_need_no_narrower_edge(tmp_path):
    """The edge of the fit is as wide as what the waves resolve, on the fly (sweeps 1 deg apart) as step by step; it was 1 deg."""
    campaign, plan = services.make_plan(over(42.0, tmp_path, style="fly"))
    assert plan.settings["swept_step_deg"] < 2.0
    assert plan.settings["reach_deg"] >= 42.0 + step_for(order_of(campaign))


def test_slices_over_a_region_carry_more_than_those_of_the_sphere(tmp_path):
    """Where rings end at an edge, a step that just carries the sphere reads what lies beyond it as the device's."""
    campaign, plan = services.make_plan(over(42.0, tmp_path / "a", style="fly"))
    elevation = np.unique(np.round(plan.in_coordinates[1][:, 1], 6))
    assert np.min(np.diff(elevation)) <= 180.0 / (order_of(campaign) + 1 + BEYOND_THE_EDGE) + 1e-6
    just = 180.0 / (order_of(campaign) + 1)
    with pytest.raises(InputError, match="step_deg = .*: must be at most"):
        services.make_plan(over(42.0, tmp_path / "b", step_deg=just))
    services.make_plan(over(180.0, tmp_path / "c", step_deg=just))


@pytest.mark.nightly
def test_a_row_over_42_deg_on_the_fly_holds_its_truth(tmp_path):
    """A row of eight elements, whose ridge leaves the region at -1.5 dB: beamwidth 0.14 deg and gain 0.29 dB too much before."""
    device = sized(38.7, 4.8, 1.9, 12.3, elements={"rows": 1, "columns": 8, "pitch_mm": 4.84})
    campaign, plan = services.make_plan(over(42.0, tmp_path, device, start_ghz=31.0, stop_ghz=31.0, style="fly"))
    rows = [row for seed in (1, 2, 3) for row in rehearse(campaign, plan, seed=seed).findings]
    known = [row for row in rows if np.isfinite(row.truth) and np.isfinite(row.figure.value)]
    assert len(known) >= 9 and sum(row.inside for row in known) >= len(known) - 1
