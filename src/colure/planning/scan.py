"""From order and region to a scan grid, whatever steps the goal sets itself."""

from __future__ import annotations

import numpy as np

from colure.errors import InputError
from colure.geometry.kinematics import Geometry
from colure.model.campaign import Campaign
from colure.model.chamber import Chamber
from colure.model.device import Device
from colure.model.goal import Goal
from colure.model.plan import ScanGrid
from colure.planning.duration import sweep_time
from colure.planning.flight import DUTY, swept_axis
from colure.planning.sampling import azimuthal_order_for, order_for, order_of_step, region_margin_deg, step_for

#: Sweeps at the edge of a region come about this close, degrees: lines then end where they must.
EDGE_DEG = 1.0
#: Orders beyond the device's own that what surrounds it brings along a slice.
SURROUNDINGS = 10
#: Orders more that rings in azimuth and elevation must carry over a region: at its edge they end, and the last wave of a grid that just
#: carries the whole sphere takes up what lies beyond (a row of elements over 42 deg read 0.29 dB and 0.14 deg too much).
BEYOND_THE_EDGE = 3


def order_of(campaign: Campaign) -> int:
    """Return the order of the device's waves at the highest frequency and the level wanted."""
    return _order_at(campaign.goal, campaign.device)


def _order_at(goal: Goal, device: Device) -> int:
    return order_for(reach_m=device.reach_m, frequency_hz=float(goal.frequency_hz[-1]), level_db=goal.wanted_level_db)


def most_sweeps(campaign: Campaign, step_deg: float) -> int:
    """Return how many sweeps a slice's step can hold without slowing the swept axis down."""
    axis = campaign.chamber.axis_table[swept_axis(campaign.chamber.positioner.geometry)]
    least = axis.speed_deg_s * sweep_time(campaign.goal, campaign.chamber.analyzer) / DUTY
    return max(1, int(step_deg / least + 1e-9))


def slice_order(campaign: Campaign, order: int) -> int:
    """Return the order that the slices must resolve: about the boresight where slices meet there, else all, over a region more."""
    goal = campaign.goal
    geometry = campaign.chamber.positioner.geometry
    if geometry in (Geometry.AZIMUTH_OVER_ELEVATION, Geometry.ELEVATION_OVER_AZIMUTH):
        whole = goal.region_deg >= 180.0 or goal.scheme == "one-pass"
        return order if whole else order + BEYOND_THE_EDGE
    if geometry is not Geometry.ROLL_OVER_AZIMUTH:
        return order
    about = azimuthal_order_for(
        lateral_m=campaign.device.lateral_m,
        frequency_hz=float(goal.frequency_hz[-1]),
        level_db=goal.wanted_level_db,
        reach_deg=goal.region_deg,
    )
    return min(order, about)


def _default_swept(campaign: Campaign, order: int, step_deg: float, along_deg: float) -> float:
    """Return the step along a slice if nobody sets it.

    Step by step as coarse as the waves allow; on the fly never coarser than slices are apart, and
    about a degree where a region ends.
    """
    goal = campaign.goal
    if goal.style == "step":
        return along_deg
    if goal.pulse_each == "frequency":
        # Frequencies are read up to a step from their places: what the step does not resolve would go wrong there.
        resolved = step_for(order + SURROUNDINGS)
        along_deg = min(along_deg, resolved)
    needed = max(1, int(np.ceil(step_deg / along_deg - 1e-9)))
    if goal.region_deg >= 180.0:
        return step_deg / needed
    return step_deg / max(needed, min(most_sweeps(campaign, step_deg), int(np.ceil(step_deg / EDGE_DEG))))


def scan_grid(campaign: Campaign, order: int) -> ScanGrid:
    """Return the grid that carries waves of an order over the region wanted, as the goal's own steps say.

    Raises
    ------
    InputError
        If a step set by hand is too coarse or does not divide 180 deg.
    """
    goal, device = campaign.goal, campaign.device
    across = slice_order(campaign, order)
    # A slice that is flown costs seconds: not one more than the waves need, however its angle reads.
    # (A progressive order wants counts with many divisors, which the readable ones have.)
    readable = goal.style == "step" or goal.progressive
    enough = step_for(across, oversampling=goal.oversampling, readable=readable)
    step = enough if goal.step_deg is None else goal.step_deg
    along = step_for(order, oversampling=goal.oversampling) if goal.step_deg is None else goal.step_deg
    swept = _default_swept(campaign, order, step, along) if goal.swept_step_deg is None else goal.swept_step_deg
    top_hz = float(goal.frequency_hz[-1])
    # A step along a slice that nobody set follows step_deg: that is the entry to mend.
    along_name = "step_deg" if goal.swept_step_deg is None and goal.step_deg is not None else "swept_step_deg"
    for name, value, needed in (("step_deg", step, across), (along_name, swept, order)):
        if not np.isclose(180.0 / value, round(180.0 / value)):
            raise InputError([f"goal.toml: {name} = {value:g}: must divide 180 deg without remainder"])
        if order_of_step(value) < needed:
            raise InputError(
                [
                    f"goal.toml: {name} = {value:g}: must be at most {step_for(needed):g} deg for order {needed} "
                    f"(turning radius {1e3 * device.reach_m:.1f} mm at {top_hz / 1e9:g} GHz)"
                ]
            )
    if goal.region_deg >= 180.0:
        return ScanGrid(step_deg=step, swept_step_deg=swept)
    reach = goal.region_deg + edge_margin_deg(
        goal, campaign.chamber, device, swept_step_deg=swept, one_pass=goal.scheme == "one-pass"
    )
    reach = float(np.ceil(reach / swept - 1e-9)) * swept
    return ScanGrid(step_deg=step, swept_step_deg=swept, reach_deg=180.0 if reach > 180.0 - swept else reach)


def edge_margin_deg(goal: Goal, chamber: Chamber, device: Device, *, swept_step_deg: float, one_pass: bool) -> float:
    """Return how far beyond a region the scan must reach for sound results inside it, degrees."""
    # Without a transform directions stay apart. With one the edge of the fit is as wide as what the waves resolve, however close the
    # sweeps of a slice that is flown.
    spread = 0.0 if one_pass else device.reach_m
    edge = swept_step_deg if one_pass else max(swept_step_deg, step_for(_order_at(goal, device)))
    out = region_margin_deg(spread, chamber.range_length_m, edge)
    if goal.style == "fly":
        # Frequencies are read on the way: the last one of a backward slice lies this much further in.
        axis = chamber.axis_table[swept_axis(chamber.positioner.geometry)]
        each = goal.pulse_each == "frequency"
        out += swept_step_deg if each else axis.speed_deg_s * sweep_time(goal, chamber.analyzer)
    return out
