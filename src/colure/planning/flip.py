"""The quick flip test: one cut, seen from both sides, tells theta zero and whether the axes cross.

Roll over azimuth: (theta, roll 0) and (-theta, roll 180 deg) look in the same direction. On a
perfect positioner both give the same; a theta zero shifts them apart, axes that do not cross tilt
their phases apart. Two cuts take minutes.
"""

from __future__ import annotations

from dataclasses import replace

import numpy as np

from colure.errors import InputError
from colure.geometry.kinematics import AxisMap, Geometry
from colure.model.campaign import Campaign
from colure.model.plan import Plan, Role, ScanGrid
from colure.model.scan import Scan
from colure.planning.answers import exposure_of
from colure.planning.choose import with_analyzer
from colure.planning.path import PlannedSlice, build_runs
from colure.planning.preflight import settings_of
from colure.planning.sampling import step_for
from colure.planning.scan import order_of
from colure.planning.visits import readouts_of

#: Cuts reach this far from the boresight, and are sampled this much finer than the waves need.
REACH_DEG, FINER = 60.0, 2.0


def flip_plan(campaign: Campaign) -> Plan:
    """Return the plan of a flip test: theta over `REACH_DEG` on both sides, at roll 0 and 180 deg.

    Raises
    ------
    InputError
        If the positioner is not roll over azimuth, or an axis cannot reach both rolls.
    """
    campaign = with_analyzer(campaign)
    goal, chamber, device = campaign.goal, campaign.chamber, campaign.device
    if chamber.positioner.geometry is not Geometry.ROLL_OVER_AZIMUTH:
        raise InputError(["chamber.toml: positioner.geometry: must be 'roll-over-azimuth' for a flip test"])
    if chamber.positioner.joints:
        raise InputError(
            ["chamber.toml: positioner.joints: a flip test turns azimuth and roll against each other, which this mount does not have; "
             "state each joint's zero_error_deg, tilt_error_deg, offset_error_mm and axial_error_mm instead"]
        )  # fmt: skip
    if "probe" not in chamber.axis_table:
        raise InputError(["chamber.toml: probe.roll: missing; a flip test turns the probe with the device (deg)"])
    order = order_of(campaign)
    step = step_for(order, oversampling=FINER)
    theta = np.arange(-int(REACH_DEG / step), int(REACH_DEG / step) + 1) * step
    one_pass = goal.model_copy(update={"scheme": "one-pass", "style": "step", "region_deg": REACH_DEG, "want": None})
    simple = device.model_copy(update={"states": None})
    state = np.full(theta.size, -1, np.int64)
    runs = []
    for number, (roll, line) in enumerate(((0.0, theta), (180.0, theta[::-1]))):
        turned = probe_within(chamber.axis_table["probe"].map, device.slant_deg - roll)
        angles = np.stack([line, np.full(line.size, roll), np.full(line.size, turned)], axis=-1)
        runs.append(PlannedSlice(readouts_of(chamber, angles), Role.SCAN, number, 0, state, line=False))
    path = build_runs(one_pass, chamber, simple, runs)
    grid = ScanGrid(step_deg=step, swept_step_deg=step, reach_deg=float(theta.max()))
    resolved = replace(campaign, goal=one_pass)
    return Plan(
        **path.columns(),
        frequency_hz=goal.frequency_hz,
        ports=(1,),
        scheme="one-pass",
        order=order,
        step_deg=step,
        settings=settings_of(resolved, None, grid)
        | as_directions(Scan(theta_deg=tuple(theta.tolist()), phi_deg=(0.0, 180.0), offset_deg=(device.slant_deg,))),
        predicted={"duration_s": float(path.time_s.sum()), "exposure": exposure_of(campaign).__dict__},
        inputs={"test": "flip"},
    )


def as_directions(scan: Scan) -> dict[str, object]:
    """Return the settings that let a short run be read, drawn and exported as the cuts it holds."""
    return {"form": "directions", "scan_json": scan.model_dump_json()}


def probe_within(axis: AxisMap, angle_deg: float) -> float:
    """Return an angle of the probe's roll, whole turns added, that lies inside its limits."""
    readouts_deg = axis.readouts_within(angle_deg)
    if not readouts_deg:
        raise InputError(
            [f"chamber.toml: probe.roll: {angle_deg:g} deg lies outside {axis.min_deg:g} to {axis.max_deg:g} deg (deg)"]
        )
    return float(axis.angle_deg(min(readouts_deg, key=abs)))
