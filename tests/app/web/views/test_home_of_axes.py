"""Homes of the axes as the page writes them: every axis in its own table, limits kept, nothing unknown."""

from __future__ import annotations

import pytest

from colure.app.web.views import plan as page
from colure.errors import InputError
from colure.model.campaign import Campaign


def test_readouts_become_homes_in_the_table_of_each_axis(campaign_folder):
    wanted = {"azimuth": 7.5, "roll": -3.0, "probe": 12.25}
    assert page.save_home(campaign_folder, wanted, "stamp") == ["chamber.toml"]
    axes = Campaign.load(campaign_folder).chamber.axis_table
    assert {name: axes[name].home_deg for name in wanted} == wanted


def test_a_home_beyond_the_limits_is_refused_and_nothing_is_written(campaign_folder):
    before = (campaign_folder / "chamber.toml").read_text("utf-8")
    assert "probe" in Campaign.load(campaign_folder).chamber.axis_table
    for wrong, words in (({"azimuth": 500.0}, "home_deg = 500"), ({"mast": 1.0}, "axis = 'mast': must be one of")):
        with pytest.raises(InputError, match=words):
            page.save_home(campaign_folder, wrong, "stamp")
    assert (campaign_folder / "chamber.toml").read_text("utf-8") == before
