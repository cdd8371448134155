"""The order of points: slices, polarization passes, ties, reference sweeps."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from colure.geometry.conventions import FloatArray, IntArray
from colure.geometry.kinematics import Geometry
from colure.model.chamber import Axis, Chamber
from colure.model.goal import Goal
from colure.model.loading import InputError
from colure.model.plan import ROLES, Role
from colure.planning.duration import point_times, sweep_time


@dataclass(frozen=True)
class Path:
    """Points in measuring order: convention angles are already controller readouts (degrees)."""

    axes: tuple[str, ...]
    targets_deg: FloatArray
    role: IntArray
    slice_index: IntArray
    pass_index: IntArray
    time_s: FloatArray


def polarization_scheme(goal: Goal, chamber: Chamber) -> str:
    """Return `two-pass` or `dual-port`, resolving `auto`."""
    if goal.scheme != "auto":
        return goal.scheme
    return "dual-port" if chamber.probe.ports == 2 else "two-pass"


def scan_angles(geometry: Geometry, step_deg: float) -> tuple[FloatArray, FloatArray]:
    """Return (swept angles, slice angles) in degrees that cover the whole sphere once.

    Roll over azimuth: theta over a full turn in every great-circle slice, phi over a half
    turn. Azimuth/elevation: azimuth over a full turn in every ring, elevation pole to pole
    (or the other way round where elevation is carried on azimuth).
    """
    n = round(180.0 / step_deg)
    full = (np.arange(2 * n) - n + 1) * step_deg
    if geometry is Geometry.ROLL_OVER_AZIMUTH:
        return np.asarray(full), np.asarray(np.arange(n) * step_deg)
    return np.asarray(full), np.asarray((np.arange(n + 1) - n / 2) * step_deg)


def build_path(goal: Goal, chamber: Chamber, step_deg: float) -> Path:
    """Lay out the whole run: reference, ties, and every slice of every polarization pass.

    Raises
    ------
    InputError
        If an axis would leave its limits anywhere; the message names axis, value and limit.
    """
    geometry = chamber.positioner.geometry
    swept, slices = scan_angles(geometry, step_deg)
    scheme = polarization_scheme(goal, chamber)
    offsets = (0.0, 90.0) if scheme == "two-pass" else (0.0,)
    follow = geometry is Geometry.ROLL_OVER_AZIMUTH and scheme == "two-pass"
    blocks: list[FloatArray] = []
    for offset in offsets:
        for number, angle in enumerate(slices):
            line = swept if number % 2 == 0 else swept[::-1]
            first, second = line, np.full(line.size, angle)
            if geometry is Geometry.ELEVATION_OVER_AZIMUTH:
                first, second = second, line
            probe = offset - second if follow else np.full(line.size, offset)
            blocks.append(np.stack([first, second, probe], axis=-1))
    table = chamber.axis_table
    axes = tuple(table)
    angles = np.concatenate(blocks)[:, : len(axes)]
    maps = [axis.map for axis in table.values()]
    scan = np.stack([m.readout_deg(angles[:, i]) for i, m in enumerate(maps)], axis=-1)
    slice_index = np.tile(np.repeat(np.arange(slices.size), swept.size), len(offsets))
    pass_index = np.repeat(np.arange(len(offsets)), slices.size * swept.size)
    check_limits(axes, scan, list(table.values()))
    return _with_ties(chamber, goal, axes, scan, slice_index, pass_index, scheme)


def check_limits(axes: tuple[str, ...], targets_deg: FloatArray, tables: list[Axis]) -> None:
    """Raise `InputError` naming every axis that a list of targets would drive past a limit."""
    faults = []
    for index, (name, axis) in enumerate(zip(axes, tables, strict=True)):
        low, high = float(targets_deg[:, index].min()), float(targets_deg[:, index].max())
        for value, bad in ((low, low < axis.min_deg - 1e-9), (high, high > axis.max_deg + 1e-9)):
            if bad:
                faults.append(
                    f"plan: axis {name} target = {value:g}: must be from {axis.min_deg:g} to {axis.max_deg:g} deg"
                )
    if faults:
        raise InputError(faults)


def reference_targets(chamber: Chamber, scheme: str) -> list[tuple[float, float, float]]:
    """Return the (first, second, probe) angles at which the reference horn is seen by each port.

    The horn is polarized along x_D. Port 1 meets it at home; port 2 of a dual probe meets it
    with the probe turned by -90 deg or, without a probe axis, with the horn rolled by 90 deg.
    """
    if scheme == "two-pass":
        return [(0.0, 0.0, 0.0)]
    if chamber.probe.roll is not None:
        return [(0.0, 0.0, 0.0), (0.0, 0.0, -90.0)]
    if chamber.positioner.geometry is Geometry.ROLL_OVER_AZIMUTH:
        return [(0.0, 0.0, 0.0), (0.0, 90.0, 0.0)]
    raise InputError(
        ["chamber.toml: probe.roll: missing; port 2 of a dual probe on this geometry needs it to meet the horn (deg)"]
    )


def _with_ties(
    chamber: Chamber,
    goal: Goal,
    axes: tuple[str, ...],
    scan: FloatArray,
    slice_index: IntArray,
    pass_index: IntArray,
    scheme: str,
) -> Path:
    tables = [chamber.axis_table[name] for name in axes]
    sweep = sweep_time(goal.points, chamber.analyzer)
    home = _readouts(tables, (0.0, 0.0, 0.0))
    rows: list[tuple[FloatArray, Role, int, int]] = []
    for target in reference_targets(chamber, scheme):
        rows += [(_readouts(tables, target), Role.REFERENCE, -1, -1)] * chamber.reference.sweeps
    rows.append((home, Role.TIE, -1, -1))
    elapsed, busy = 0.0, point_times(scan, home, tables, sweep)
    for index, target in enumerate(scan):
        elapsed += float(busy[index])
        rows.append((target, Role.SCAN, int(slice_index[index]), int(pass_index[index])))
        if elapsed >= chamber.tie_interval_s:
            rows.append((home, Role.TIE, -1, -1))
            elapsed = 0.0
    if rows[-1][1] is not Role.TIE:
        rows.append((home, Role.TIE, -1, -1))
    targets = np.stack([row[0] for row in rows])
    check_limits(axes, targets, tables)
    return Path(
        axes,
        targets,
        np.array([ROLES.index(row[1]) for row in rows]),
        np.array([row[2] for row in rows]),
        np.array([row[3] for row in rows]),
        point_times(targets, np.array([t.home_deg for t in tables]), tables, sweep),
    )


def _readouts(tables: list[Axis], angles_deg: tuple[float, float, float]) -> FloatArray:
    return np.array([float(axis.map.readout_deg(a)) for axis, a in zip(tables, angles_deg, strict=False)])
