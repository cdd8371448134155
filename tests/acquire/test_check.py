"""The check before a run holds one sweep against what the plan promises; nothing moves."""

from __future__ import annotations

import pytest

from colure.acquire.check import check_bench
from colure.instruments.profile import analyzer_profile
from colure.instruments.scpi_analyzer import ScpiAnalyzer
from tests.coverage.scenarios import HORN_38_GHZ, SCENARIOS, Scenario, band, sized
from tests.world import world_of

WRONG = Scenario(device=sized(20, 20, 30, 18.0), goal=band(38.0), chamber={"reference": HORN_38_GHZ},
                 twin={"device": {"kind": "dipole", "axis": "x"}})  # fmt: skip


@pytest.mark.parametrize(("scenario", "good"), [(SCENARIOS["4 x 4 panel"], True), (WRONG, False)])
def test_a_level_far_from_the_plan_is_a_fault(tmp_path, scenario, good):
    """A 16.5 dBi panel as declared, and a dipole declared as an 18 dBi horn at 38 GHz: 12.5 dB too weak."""
    world, plan = world_of(scenario.write(tmp_path / "c"))
    analyzer = ScpiAnalyzer("analyzer", analyzer_profile("scpi-analyzer"), timeout_s=1.0, opener=world.opener())
    lines = check_bench(plan, world.campaign.chamber, analyzer, world.axes(), states=None, clock=world.clock)
    found = {what: (fine, words) for what, fine, words in lines}
    assert found["level"][0] is good and "the plan promises" in found["level"][1]
    assert all(fine for what, (fine, _) in found.items() if what != "level")
