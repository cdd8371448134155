"""Near field to far field on mounts that are no stack of two axes, against the twin's own closed-form far field.

The bound of -80 dB is common practice for a noise-free transform, no source.
"""

from __future__ import annotations

import numpy as np
import pytest

from colure.analysis.pipeline.recipe import process
from colure.app.services.reference import probe_of
from colure.model.campaign import Campaign
from colure.planning.preflight import make_plan
from tests.endtoend.test_near_to_far import PERFECT, edited, rms_error_db, simulated_record
from tests.mounts import on_mount, six_axes, swinging_arm

MOUNTS = {
    "swinging arm": lambda: swinging_arm(300),
    "swinging arm over one side": lambda: swinging_arm(300, arm="[-2, 182]"),
    "two joints, dual probe": lambda: swinging_arm(300, arm="[-2, 182]", roll=False),
    "six axes": lambda: six_axes(300),
}


@pytest.mark.parametrize("name", MOUNTS)
def test_a_noise_free_panel_comes_out_right(campaign_folder, name):
    ports = 2 if "dual" in name else 1
    edited(campaign_folder, "goal.toml", ("points = 11", "points = 2"), ("= -50 ", "= -95 "), ('"two-pass"', '"auto"'))
    edited(campaign_folder, "device.toml", ("-30.0]", "-10.0]"))
    on_mount(campaign_folder, MOUNTS[name](), range_m=0.3, ports=ports)
    campaign, plan = make_plan(Campaign.load(campaign_folder))
    record = simulated_record(campaign, plan, PERFECT)
    assert list(record["axis"].values) == ["azimuth", "roll", "probe"][: 3 if ports == 1 else 2]
    assert np.allclose(record["readback_deg"], record["commanded_deg"], atol=1e-6)
    done = process(
        record, campaign.chamber, campaign.device, probe=probe_of(campaign, plan.frequency_hz), grid_step_deg=3
    )
    error = rms_error_db(campaign, done.pattern)
    print(f"{name}: {error:.1f} dB rms relative to the peak, {len(plan)} points")
    assert error <= -80.0
