"""The largest region that the axes' limits allow: what a plan that would leave them answers."""

from __future__ import annotations

from bisect import bisect_left
from dataclasses import replace

from colure.errors import InputError
from colure.geometry.kinematics import Geometry
from colure.model.campaign import Campaign
from colure.planning.path import SMALLEST_REGION_DEG, within_limits
from colure.planning.scan import order_of, scan_grid


def what_fits(campaign: Campaign) -> list[str]:
    """Say what the axes still take up: the largest region_deg in whole degrees, or the operator's own rectangle.

    Every region is laid out as it would be measured: its steps and how far a scan goes beyond it depend on it. A region of azimuth
    and elevation is a belt all around; a rectangle is what an azimuth without a full turn can do.
    """
    if campaign.chamber.positioner.turntable:
        return [
            "goal.toml: a turntable measures cuts: [scan] with theta_deg, such as '-90:90:2', and phi_deg = 0 (deg); colure cut does it at once"
        ]
    wanted = campaign.goal.region_deg
    regions = range(int(SMALLEST_REGION_DEG), int(wanted))
    count = bisect_left(regions, True, key=lambda region: not _fits(campaign, float(region)))
    if count:
        return [
            f"goal.toml: region_deg = {wanted:g}: must be at most {regions[count - 1]} deg for that (a scan goes beyond its region), or the "
            f"axes must reach further"
        ]
    if campaign.chamber.positioner.geometry is Geometry.ROLL_OVER_AZIMUTH:
        return []
    return [
        "goal.toml: a region of azimuth and elevation goes all around; a rectangle within the limits can be measured as it is, without a "
        "transform: [scan] with azimuth_deg and elevation_deg, such as '-60:60:3' (deg)"
    ]


def _fits(campaign: Campaign, region_deg: float) -> bool:
    """Tell whether the axes take up a region."""
    smaller = replace(campaign, goal=campaign.goal.model_copy(update={"region_deg": region_deg}))
    try:
        grid = scan_grid(smaller, order_of(smaller))
        within_limits(smaller.goal, smaller.chamber, smaller.device, grid)
    except InputError:
        return False
    return True
