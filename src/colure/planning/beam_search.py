"""Where the beam is, before anything long is measured: a coarse look around, then a fine one where it was strongest."""

from __future__ import annotations

from dataclasses import replace

import numpy as np

from colure.errors import InputError
from colure.geometry.conventions import FloatArray
from colure.geometry.directions import from_azimuth_over_elevation
from colure.model.campaign import Campaign
from colure.model.plan import Plan, Role, ScanGrid
from colure.model.scan import Scan
from colure.planning.aim import Bearing, aims
from colure.planning.answers import exposure_of
from colure.planning.choose import with_analyzer
from colure.planning.flip import as_directions, probe_within
from colure.planning.joint_path import in_reach
from colure.planning.path import PlannedSlice, build_runs
from colure.planning.preflight import settings_of
from colure.planning.scan import order_of

#: The coarse look goes this far from the boresight; the fine one covers this many beamwidths to every side.
COARSE_DEG, FINE_WIDTHS = 60.0, 0.75
#: Steps in beamwidths: two looks a beam cannot be missed with, then enough for its top.
COARSE_STEP, FINE_STEP = 0.5, 0.2
NARROWEST_DEG, WIDEST_DEG = 3.0, 40.0


def expected_beamwidth_deg(gain_dbi: float) -> float:
    """Return the beamwidth that a gain goes with, both planes alike: G = 32400/width^2 (J. D. Kraus, from memory)."""
    return float(np.clip(np.sqrt(32400.0 / 10.0 ** (gain_dbi / 10.0)), NARROWEST_DEG, WIDEST_DEG))


def search_plan(campaign: Campaign, centre_deg: tuple[float, float] | None = None) -> Plan:
    """Return the plan of one look: coarse over the front, or fine about an azimuth and elevation (degrees).

    Raises
    ------
    InputError
        If no direction of it is within the axes' limits.
    """
    campaign = with_analyzer(campaign)
    goal, chamber, device = campaign.goal, campaign.chamber, campaign.device
    width = expected_beamwidth_deg(device.expected_gain_dbi)
    step, reach = (COARSE_STEP * width, COARSE_DEG) if centre_deg is None else (FINE_STEP * width, FINE_WIDTHS * width)
    rows, looks = _targets(campaign, centre_deg or (0.0, 0.0), step, reach)
    dual = chamber.probe.ports == 2
    look = goal.model_copy(
        update={"scheme": "dual-port" if dual else "one-pass", "style": "step", "region_deg": 90.0, "want": None}
    )
    runs = [
        PlannedSlice(targets, Role.SCAN, number, 0, np.full(len(targets), -1, np.int64), line=False)
        for number, targets in rows.items()
    ]
    path = build_runs(look, chamber, device.model_copy(update={"states": None}), runs)
    resolved = replace(campaign, goal=look)
    return Plan(
        **path.columns(),
        frequency_hz=goal.frequency_hz,
        ports=(1, 2) if dual else (1,),
        scheme=look.scheme,
        order=order_of(campaign),
        step_deg=step,
        settings=settings_of(resolved, None, ScanGrid(step_deg=step, swept_step_deg=step, reach_deg=min(90.0, reach)))
        | as_directions(looks.model_copy(update={"offset_deg": (device.slant_deg,)})),
        predicted={"duration_s": float(path.time_s.sum()), "exposure": exposure_of(campaign).__dict__},
        inputs={"test": "beam search", "centre_deg": list(centre_deg or ())} | _mount_of(campaign),
    )


def _mount_of(campaign: Campaign) -> dict[str, object]:
    """Return what a record of a mount with joints must know to say where it looked."""
    if not campaign.chamber.positioner.joints:
        return {}
    return {"chamber": campaign.chamber.model_dump(mode="json"), "device": campaign.device.model_dump(mode="json")}


def _targets(
    campaign: Campaign, centre_deg: tuple[float, float], step: float, reach: float
) -> tuple[dict[int, FloatArray], Scan]:
    """Return readouts (point, axis) of a grid of directions about a centre by row, every other one backwards; and the grid.

    Rows of the grid out of reach are left out.
    """
    chamber = campaign.chamber
    geometry = chamber.positioner.geometry
    count = int(np.ceil(reach / step))
    across, down = (tuple(float(c + i * step) for i in range(-count, count + 1)) for c in centre_deg)
    down = tuple(x for x in down if abs(x) < 90.0)
    rows = dict[int, FloatArray]()
    for number, elevation in enumerate(down):
        line = [one for azimuth in across if (one := _readouts(campaign, azimuth, elevation)) is not None]
        if line:
            rows[number] = np.array(line if number % 2 == 0 else line[::-1])
    if chamber.positioner.joints and rows:
        free = in_reach(chamber, campaign.device, np.concatenate(list(rows.values())))
        ends = np.cumsum([len(line) for line in rows.values()])[:-1]
        kept = zip(rows.items(), np.split(free, ends), strict=True)
        rows = {number: line[here] for (number, line), here in kept if here.any()}
    if not rows:
        if chamber.positioner.joints:
            raise InputError(
                [f"beam search: no direction about azimuth {centre_deg[0]:g}, elevation {centre_deg[1]:g} deg is in reach of the joints "
                 "(chamber.toml positioner.joints)"]
            )  # fmt: skip
        limits = ", ".join(
            f"{n} {chamber.axis_table[n].map.min_deg:g} to {chamber.axis_table[n].map.max_deg:g}"
            for n in geometry.axis_names
        )
        raise InputError(
            [
                f"beam search: no direction about azimuth {centre_deg[0]:g}, elevation {centre_deg[1]:g} is in reach ({limits} deg)"
            ]
        )
    return rows, Scan(azimuth_deg=across, elevation_deg=down, sweep="first")


def _readouts(campaign: Campaign, azimuth_deg: float, elevation_deg: float) -> list[float] | None:
    """Return every axis' readout for a direction, the probe along the device's polarization; None out of reach."""
    chamber = campaign.chamber
    direction = from_azimuth_over_elevation(azimuth=np.deg2rad(azimuth_deg), elevation=np.deg2rad(elevation_deg))
    aim = aims(Bearing.of(direction), chamber.positioner.geometry, chamber)[0]
    if aim.fault:
        return None
    readouts_deg = dict(aim.readouts_deg)
    if "probe" in chamber.axis_table:
        axis = chamber.axis_table["probe"].map
        roll = (campaign.device.slant_deg - aim.slant_deg + 180.0) % 360.0 - 180.0
        readouts_deg["probe"] = float(axis.readout_deg(probe_within(axis, roll)))
    return [readouts_deg[name] for name in chamber.axis_table]
