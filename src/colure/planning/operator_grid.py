"""An operator's rectangle of angles that is a regular grid of the positioner: planned and transformed like any grid."""

from __future__ import annotations

from dataclasses import replace
from typing import Literal

import numpy as np

from colure.errors import InputError
from colure.geometry.conventions import FloatArray
from colure.geometry.kinematics import Geometry
from colure.model.campaign import ONE_PASS_REGION_DEG, Campaign
from colure.model.goal import Goal
from colure.model.plan import LEAST_SLICES
from colure.model.scan import Scan, angles_of
from colure.planning.choose import Proposal, propose, with_analyzer
from colure.planning.scan import edge_margin_deg

#: Smallest region that a goal may name, degrees.
SMALLEST_DEG = 5.0


def grid_proposal(campaign: Campaign) -> Proposal | str:
    """Return the plan of a [scan] that is a regular grid, or why its directions are read one by one.

    An empty text means that nothing in [scan] looks like a grid: cuts, circles, lists.
    """
    scan = campaign.goal.scan
    assert scan is not None  # only asked of campaigns that have one
    grid = _grid_of(scan, campaign.chamber.positioner.geometry)
    if isinstance(grid, str):
        return grid
    scheme = _scheme(campaign, scan)
    if scheme not in ("two-pass", "dual-port", "one-pass"):
        return scheme
    across, along, reach = grid
    tuned = with_analyzer(campaign)
    region = (
        180.0
        if reach >= 180.0
        else reach
        - edge_margin_deg(tuned.goal, tuned.chamber, tuned.device, swept_step_deg=along, one_pass=scheme == "one-pass")
    )
    if scheme == "one-pass" and region > ONE_PASS_REGION_DEG:
        return f"one offset beyond {ONE_PASS_REGION_DEG:g} deg: the co-polar direction is undefined at the back"
    if region < SMALLEST_DEG:
        return f"its edge at {reach:g} deg leaves no region that a grid gives"
    update: dict[str, object] = {
        "scan": None, "scheme": scheme, "step_deg": across, "swept_step_deg": along, "region_deg": region,
        "offset_deg": tuple(scan.offsets_deg.tolist()), "dwell_s": scan.dwell_s,
        "probe": "fixed" if campaign.chamber.positioner.geometry is not Geometry.ROLL_OVER_AZIMUTH else scan.probe,
    }  # fmt: skip
    goal: Goal = tuned.goal.model_copy(update=update)
    try:
        return propose(replace(tuned, goal=goal), "as set", "[scan] sets everything")
    except InputError as error:
        return error.faults[0]


def _grid_of(scan: Scan, geometry: Geometry) -> tuple[float, float, float] | str:
    """Return (step between slices, step along them, reach) in degrees, or why it is no grid."""
    if geometry is Geometry.ROLL_OVER_AZIMUTH and scan.theta_deg is not None and scan.phi_deg is not None:
        grid = _slices(angles_of(scan.theta_deg), angles_of(scan.phi_deg))
    elif (
        geometry is Geometry.AZIMUTH_OVER_ELEVATION and scan.azimuth_deg is not None and scan.elevation_deg is not None
    ):
        grid = _belts(angles_of(scan.azimuth_deg), angles_of(scan.elevation_deg))
    else:
        return ""
    if isinstance(grid, str):
        return grid
    if not scan.double_sided:
        return "double_sided = false: a grid's slices run through the boresight"
    if scan.repeats > 1:
        return f"repeats = {scan.repeats}: every direction is measured by itself"
    return "sweep = 'second': a grid's slices run along the first angle" if scan.sweep == "second" else grid


def _slices(theta: FloatArray, phi: FloatArray) -> tuple[float, float, float] | str:
    """Return the grid of great circles through the boresight that theta and phi name."""
    along, across = _step(theta), _step(phi)
    if phi.size < LEAST_SLICES or along is None or across is None:
        return ""
    low, high = float(theta.min()), float(theta.max())
    closed = bool(np.isclose(high - low + along, 360.0)) and bool(np.isclose(max(high, -low), 180.0))
    both = closed or np.isclose(low, -high)
    if not both and not np.isclose(low, 0.0):
        return f"theta from {low:g} to {high:g} deg: must run to the same angle on both sides, or from 0 deg"
    turn = 180.0 if both else 360.0
    if not _divides(across, turn) or not _same(phi, turn, across) or not np.any(np.isclose(theta, 0.0)):
        return f"phi must run over {turn:g} deg from a multiple of its step, and theta through 0 deg"
    return (
        (across, along, max(high, -low))
        if _divides(along, 180.0) and _divides(across, 180.0)
        else "steps must divide 180 deg"
    )


def _belts(azimuth: FloatArray, elevation: FloatArray) -> tuple[float, float, float] | str:
    """Return the grid of full turns of azimuth at even elevations."""
    along, across = _step(azimuth), _step(elevation)
    if elevation.size < LEAST_SLICES or along is None or across is None:
        return ""
    if not _divides(along, 180.0) or not _divides(across, 180.0) or not _same(azimuth, 360.0, along):
        return "azimuth must run over a full turn, and both steps must divide 180 deg"
    high = float(elevation.max())
    if not np.isclose(high, -float(elevation.min())) or not _divides(across, 2.0 * high):
        return "elevation must run to the same angle above and below 0 deg"
    if (round(180.0 / across) % 2 == 0) != bool(np.any(np.isclose(elevation, 0.0))):
        return "elevations must lie on the grid that ends at the poles"
    return across, along, 180.0 if np.isclose(high, 90.0) else high


def _step(angles: FloatArray) -> float | None:
    """Return the even step of a list of angles; None if there is none."""
    ways = np.diff(np.sort(angles))
    return float(ways[0]) if ways.size and np.allclose(ways, ways[0], atol=1e-6) else None


def _divides(step: float, turn: float) -> bool:
    return bool(np.isclose(turn / step, round(turn / step)))


def _same(angles: FloatArray, turn: float, step: float) -> bool:
    """Tell whether angles are the multiples of a step over a turn, each at least once; a last one may repeat the first."""
    numbers = np.round(angles / step, 6)
    whole = bool(np.allclose(numbers, np.round(numbers)))
    return whole and np.unique(np.mod(np.round(numbers), round(turn / step))).size == round(turn / step)


def _scheme(campaign: Campaign, scan: Scan) -> str:
    """Return the polarization scheme of a scan as a grid, or why it has none."""
    follows = scan.probe == "follows"
    if campaign.chamber.probe.ports == 2:
        return "dual-port" if scan.offsets_deg.size == 1 else "the probe has two ports: one offset is enough for a grid"
    if (
        campaign.chamber.positioner.geometry is not Geometry.ROLL_OVER_AZIMUTH
        and follows
        and "probe" in scan.model_fields_set
    ):
        return "probe = 'follows': a grid of azimuth and elevation keeps the probe fixed"
    if scan.offsets_deg.size > 1:
        return "two-pass"
    roll = campaign.chamber.positioner.geometry is Geometry.ROLL_OVER_AZIMUTH
    return "one-pass" if follows and roll else "one offset of a fixed probe is no polarization of the device"


def grid_warnings(goal: Goal, scan: Scan) -> list[str]:
    """Return in plain words what cannot be computed from an operator's grid."""
    out = []
    if goal.region_deg < 180.0:
        out.append(
            f"sphere: the grid covers theta to {goal.region_deg:.4g} deg: directivity, efficiency and TRP need the whole sphere and cannot be computed"
        )
    if goal.scheme == "one-pass":
        first = float(scan.offsets_deg[0])
        out.append(
            "polarization: one offset gives one component at the range length: no transform, no cross-polar, no axial ratio, no total gain; "
            f"offset_deg = [{first:g}, {first + 90.0:g}] gives both"
        )
    return out


def repeated_words(scan: Scan) -> list[str]:
    """Return in words which of the angles asked for are a direction that another one gives already."""
    if scan.phi_deg is None or scan.theta_deg is None:
        return []
    theta, phi = angles_of(scan.theta_deg), angles_of(scan.phi_deg)
    turn: Literal[180, 360] = 180 if theta.min() < 0.0 else 360
    last, first = float(phi.max()), float(phi.min())
    if phi.size > 1 and np.isclose(last - first, turn):
        return [f"phi = {last:g} deg is the slice of phi = {first:g} deg once more and is left out"]
    return []
