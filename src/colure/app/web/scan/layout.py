"""Where a plan's points lie on the page: one grid of cells for the map and the surface, one cell for every point."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path
from typing import Literal

import numpy as np

from colure.app.storage.folders import RunFolder
from colure.geometry.conventions import FloatArray, IntArray
from colure.geometry.directions import azimuth_over_elevation, from_azimuth_over_elevation
from colure.geometry.kinematics import AxisMap, Geometry, sighting
from colure.model.campaign import Campaign
from colure.model.chamber import Chamber
from colure.model.joint_record import shown_coordinates
from colure.model.plan import ROLES, Plan, Role
from colure.planning.level import segment_budgets
from colure.values import holds_arrays

#: What a room can start.
Kind = Literal["scan", "flip", "beam-coarse", "beam-fine"]


@dataclass(frozen=True)
@holds_arrays
class Layout:
    """A plan as the page draws it.

    rows_deg, columns_deg, row_name, column_name
        The grid: theta and phi under roll over azimuth, else elevation and azimuth.
    cell
        (point,) index into the raveled grid, -1 for ties and references.
    directions
        (row x column, 3) unit vectors in the device frame.
    time_s
        (point,) predicted time of each point.
    axes, targets_deg
        Names and (point, axis) readouts; on a mount with joints the coordinates that they come to.
    noise_db
        Level of the noise that the plan expects, as a wave ratio (S21).
    state_index, states
        (point,) device state of each point, -1 if the device has none; their names.
    mount
        The chamber of a mount with joints, whose readouts are shown as coordinates; None for others.
    """

    rows_deg: FloatArray
    columns_deg: FloatArray
    row_name: str
    column_name: str
    cell: IntArray
    directions: FloatArray
    role: IntArray
    pass_index: IntArray
    slice_index: IntArray
    targets_deg: FloatArray
    axes: tuple[str, ...]
    time_s: FloatArray
    hash: str
    passes: int
    maps: tuple[AxisMap, ...]
    noise_db: float
    state_index: IntArray
    states: tuple[str, ...]
    mount: Chamber | None = None

    def angles_deg(self, readouts_deg: list[float]) -> list[float]:
        """Return the angles of the conventions that readouts show, by axis."""
        shown = self.shown_deg(readouts_deg)
        return [round(float(one.angle_deg(v)), 3) for one, v in zip(self.maps, shown, strict=False)]

    def shown_deg(self, readouts_deg: list[float]) -> list[float]:
        """Return readouts as the page shows them, by axis: on a mount with joints the coordinates that they come to."""
        if self.mount is None or not readouts_deg:
            return readouts_deg
        near = np.zeros((1, len(self.axes)))
        return [round(float(v), 3) for v in shown_coordinates(self.mount, np.array([readouts_deg]), near)[0]]

    def joint_values(self, readouts_deg: list[float]) -> list[float]:
        """Return what joint readouts come to, degrees and millimetres, by joint; nothing on a mount without joints."""
        if self.mount is None or not readouts_deg:
            return []
        shown = zip(self.mount.positioner.joints, readouts_deg, strict=True)
        return [round(float(one.map.angle_deg(v)), 3) for one, v in shown]

    @property
    def shape(self) -> tuple[int, int]:
        """Rows and columns."""
        return self.rows_deg.size, self.columns_deg.size


def layout_of(campaign: Campaign, plan: Plan, time_s: FloatArray) -> Layout:
    """Lay a plan's scan points out on a grid of directions."""
    geometry = campaign.chamber.positioner.geometry
    tables = campaign.chamber.axis_table
    axes, targets = plan.in_coordinates
    first, second = (tables[n].map.angle_deg(targets[:, axes.index(n)]) for n in geometry.axis_names)
    seen = sighting(geometry, first=np.deg2rad(first), second=np.deg2rad(second)).direction
    looks = plan.inputs.get("test") == "beam search"
    if looks:
        azimuth, elevation = azimuth_over_elevation(seen)
        column, row = (np.asarray(np.round(np.rad2deg(v), 3), float) for v in (azimuth, elevation))
        names = ("elevation", "azimuth")
    elif geometry is Geometry.ROLL_OVER_AZIMUTH:
        # One slice covers theta on both sides of the pole: phi, and phi + 180 deg.
        row = np.abs(np.round(first, 6))
        column = np.round(np.where(first < -1e-9, second + 180.0, second) % 360.0, 6) % 360.0
        names = ("theta", "phi")
    else:
        row, column = np.round(second, 6), np.round(first, 6)
        names = ("elevation", "azimuth")
    scan = plan.role == ROLES.index(Role.SCAN)
    rows, at_row = np.unique(row[scan], return_inverse=True)
    columns, at_column = np.unique(column[scan], return_inverse=True)
    cell = np.full(len(plan), -1)
    cell[scan] = at_row * columns.size + at_column
    r, c = (np.deg2rad(x) for x in np.meshgrid(rows, columns, indexing="ij"))
    one, two = (r, c) if geometry is Geometry.ROLL_OVER_AZIMUTH else (c, r)
    if looks:
        directions = from_azimuth_over_elevation(azimuth=c.ravel(), elevation=r.ravel())
    else:
        directions = sighting(geometry, first=one.ravel(), second=two.ravel()).direction
    watched = float(plan.frequency_hz[campaign.goal.shown_index(plan.frequency_hz)])
    link = next(level for one, level in segment_budgets(campaign) if one.stop_hz >= watched - 1.0)
    return Layout(
        rows, columns, *names, cell, np.asarray(directions), plan.role, plan.pass_index, plan.slice_index,
        targets, axes, time_s, plan.hash,
        int(plan.pass_index.max()) + 1, tuple(tables[name].map for name in axes), link.noise_dbm - link.power_dbm,
        plan.state_index, plan.states,
        campaign.chamber if campaign.chamber.positioner.joints else None,
    )  # fmt: skip


def planned(folder: Path, run_name: str, kind: Kind) -> tuple[Campaign, Plan, RunFolder]:
    """Plan what a room can start, and name the run that holds it.

    Raises
    ------
    InputError
        If it cannot be planned, as a fine look before the coarse one.
    """
    from colure.app import services
    from colure.app.services import beam_search
    from colure.app.storage.folders import run_folder

    if kind in ("scan", "flip"):
        run = run_folder(folder, run_name)
        campaign, plan = services.flip_plan(folder) if kind == "flip" else services.make_plan(folder, run)
        return campaign, plan, run
    stage: beam_search.SearchStage = "coarse" if kind == "beam-coarse" else "fine"
    campaign, plan = beam_search.stage_plan(folder, run_name, stage)
    return campaign, plan, beam_search.stage_run(folder, run_name, stage)


def layout_for(folder: Path, run_name: str = "first", kind: Kind = "scan", again: str = "") -> Layout:
    """Plan what a room can start, and lay it out; slices that are measured `again` lie in the run's own plan."""
    from colure.app.services.measuring_again import again_plan
    from colure.app.storage.folders import run_folder
    from colure.planning.path import build_path

    if again:
        campaign, plan, _ = again_plan(folder, run_folder(folder, run_name), again)
    else:
        campaign, plan, _ = planned(folder, run_name, kind)
    if kind == "scan" and not again:
        time_s = build_path(campaign.goal, campaign.chamber, campaign.device, plan.grid).time_s
    else:
        time_s = np.full(len(plan), float(plan.predicted["duration_s"]) / len(plan))
    return layout_of(campaign, plan, time_s)
