"""Homes and zeros of the axes as the page writes them: every axis in its own table, limits kept, nothing unknown."""

from __future__ import annotations

import pytest

from colure.app.web.views import plan as page
from colure.errors import InputError
from colure.model.campaign import Campaign
from tests.app.web.views.test_mount_with_joints import dipole_on
from tests.mounts import six_axes, swinging_arm, table_on_swing, telescope


def test_readouts_become_homes_in_the_table_of_each_axis(campaign_folder):
    wanted = {"azimuth": 7.5, "roll": -3.0, "probe": 12.25}
    assert page.save_readouts(campaign_folder, "home", wanted, "stamp") == ["chamber.toml"]
    axes = Campaign.load(campaign_folder).chamber.axis_table
    assert {name: axes[name].home_deg for name in wanted} == wanted


def test_a_home_beyond_the_limits_is_refused_and_nothing_is_written(campaign_folder):
    before = (campaign_folder / "chamber.toml").read_text("utf-8")
    assert "probe" in Campaign.load(campaign_folder).chamber.axis_table
    for wrong, words in (({"azimuth": 500.0}, "home_deg = 500"), ({"mast": 1.0}, "axis = 'mast': must be one of")):
        with pytest.raises(InputError, match=words):
            page.save_readouts(campaign_folder, "home", wrong, "stamp")
    assert (campaign_folder / "chamber.toml").read_text("utf-8") == before


@pytest.mark.parametrize(
    ("joints", "range_m", "wanted"),
    [
        (six_axes(600), 0.6, {"shoulder": 1.25, "flange": -0.5}),
        (swinging_arm(800), 0.8, {"arm": 0.75}),
        (table_on_swing(800), 0.8, {"swing": -0.3, "table": 0.2}),
        (telescope(800), 0.8, {"telescope": -12.5, "tilt": 0.1}),
    ],
    ids=["six axes", "arm", "swing", "telescope"],
)
def test_readouts_become_zeros_of_joints(tmp_path, joints, range_m, wanted):
    """The readout of a joint that is zeroed is angle 0 (or 0 mm) from then on; other joints, limits and homes stay."""
    folder = dipole_on(joints, range_m).write(tmp_path / "c")
    before = {one.name: one for one in Campaign.load(folder).chamber.positioner.joints}
    assert page.save_readouts(folder, "zero", wanted, "stamp") == ["chamber.toml"]
    after = {one.name: one for one in Campaign.load(folder).chamber.positioner.joints}
    for name, readout in wanted.items():
        assert float(after[name].map.angle_deg(readout)) == pytest.approx(0.0, abs=1e-9)
        assert float(after[name].map.angle_deg(readout + 2.0)) == pytest.approx(2.0 * before[name].sense)
    assert {n: (j.min_deg, j.max_deg, j.home_deg) for n, j in after.items()} == {
        n: (j.min_deg, j.max_deg, j.home_deg) for n, j in before.items()
    }
    assert {n: j for n, j in after.items() if n not in wanted} == {n: j for n, j in before.items() if n not in wanted}
    assert (folder / "chamber.toml.stamp").exists()


def test_zeros_of_axes_and_what_no_axis_reads(campaign_folder):
    assert page.save_readouts(campaign_folder, "zero", {"azimuth": 1.5, "probe": -0.25}, "one") == ["chamber.toml"]
    axes = Campaign.load(campaign_folder).chamber.axis_table
    assert (axes["azimuth"].zero_deg, axes["probe"].zero_deg, axes["roll"].zero_deg) == (1.5, -0.25, 0.0)
    before = (campaign_folder / "chamber.toml").read_text("utf-8")
    with pytest.raises(InputError, match="azimuth: readout 900 must be from"):
        page.save_readouts(campaign_folder, "zero", {"azimuth": 900.0}, "two")
    assert (campaign_folder / "chamber.toml").read_text("utf-8") == before
