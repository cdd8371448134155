"""The interval of a minimum that is no more than noise reaches down without end: what was met beside its place does not fill it."""

from __future__ import annotations

import numpy as np

from colure.app import services
from colure.app.services.rehearsal import rehearse
from tests.coverage.scenarios import HORN_5_8_GHZ, Scenario, band, sized

ALIGNED = {
    "theta_zero_deg": 0.0, "roll_axis_tilt_deg": 0.0, "axes_offset_mm": 0.0, "probe_roll_zero_deg": 0.0, "distance_mm": 0.0,
    "device_pose_deg": 0.0,
}  # fmt: skip
#: A patch on a range where nothing but noise is wrong; its E plane has true nulls, closed form below -150 dB.
QUIET = Scenario(
    device=sized(30.0, 30.0, 5.0, 7.0),
    goal=band(5.8),
    chamber={
        "reference": HORN_5_8_GHZ, "echo_level_db": -120, "cable_flex_deg": 0.0, "tie_drift_db": 0.001, "tie_drift_deg": 0.01,
        "analyzer": {"power_dbm": 12}, "alignment": ALIGNED,
    },
    twin={"device": {"kind": "patch"}},
)  # fmt: skip


def test_a_null_that_noise_fills_has_no_lower_end(tmp_path):
    campaign, plan = services.make_plan(QUIET.write(tmp_path / "c"))
    null = next(one for one in rehearse(campaign, plan, seed=1).findings if one.figure.name == "null_e_db")
    assert null.truth < -150.0 and null.figure.value < -60.0
    assert np.isneginf(null.figure.lower) and null.inside
    assert null.figure.upper > null.figure.value + 2.0, "nor a sharp upper one: half of it may be an accident"
