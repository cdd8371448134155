"""A record is sorted onto its own grid, or refused in words."""

from __future__ import annotations

import pytest

from colure.analysis.pipeline.recipe import process
from colure.app import services
from colure.app.services.reference import probe_of
from colure.app.services.rehearsal import record_of_rehearsal


def test_readouts_of_the_other_sign_are_no_grid_of_the_plan(tiny_campaign):
    campaign, plan = services.make_plan(tiny_campaign)
    record = record_of_rehearsal(campaign, plan, seed=1)
    turned = record["commanded_deg"].values * [-1.0 if axis == "azimuth" else 1.0 for axis in record["axis"].values]
    record["commanded_deg"] = (record["commanded_deg"].dims, turned)
    with pytest.raises(ValueError, match=r"swept axis goes from -180 to .* readouts and plan do not belong together"):
        process(
            record,
            campaign.chamber,
            campaign.device,
            probe=probe_of(campaign, plan.frequency_hz),
            recipe=campaign.recipe(),
        )
