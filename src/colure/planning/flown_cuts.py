"""Cuts on the fly: which axis runs, how fast, and how far beyond the cut's ends it is read."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from colure.errors import InputError
from colure.geometry.conventions import FloatArray
from colure.geometry.directions import from_azimuth_over_elevation
from colure.model.campaign import Campaign
from colure.model.chamber import Chamber
from colure.model.scan import Cut
from colure.planning.duration import narrowest_bandwidth, sweep_time
from colure.planning.flight import FlightSpeed, PulseEach, flight_speed, smear_limit
from colure.values import holds_arrays

#: Sweeps read beyond each end of a cut, besides those that the frequencies of a sweep need: the axis may run ahead or behind by so many.
MORE_SWEEPS = 2
#: Cuts with fewer directions than these are no line.
LEAST_POINTS = 5


@dataclass(frozen=True)
@holds_arrays
class FlownLines:
    """Lines that hold cuts: angles of both axes (n, 2) of every line in degrees, the flown axis, its speed, the strongest cut."""

    angles_deg: list[FloatArray]
    axis: str
    speed: FlightSpeed
    strongest: int


def flown_lines(campaign: Campaign, cuts: list[Cut], angles_deg: list[FloatArray], *, order: int) -> FlownLines:
    """Return the lines that are flown for cuts whose axes stand at `angles_deg` (cut: (n, 2)).

    Raises
    ------
    InputError
        If a cut is no even motion of one axis, or states, averages or room forbid a flight.
    """
    chamber, device, goal = campaign.chamber, campaign.device, campaign.goal
    if device.states is not None and device.states.loop == "inner":
        raise InputError(["device.toml: states.loop = 'inner': must be 'outer' on the fly (goal.toml style)"])
    if chamber.analyzer.averages > 1:
        raise InputError(
            [f"chamber.toml: analyzer.averages = {chamber.analyzer.averages}: must be 1 on the fly (sweeps)"]
        )
    moving = [_moving(cut, angles) for cut, angles in zip(cuts, angles_deg, strict=True)]
    columns, steps = {column for column, _ in moving}, {round(step, 6) for _, step in moving}
    if len(columns) > 1 or len(steps) > 1:
        raise InputError(
            ["goal.toml: style = 'fly': all cuts of [scan] must be motions of the same axis with the same step (deg)"]
        )
    column, step = moving[0]
    name = chamber.positioner.geometry.axis_names[column]
    axis, sweep_s = chamber.axis_table[name], sweep_time(goal, chamber.analyzer)
    smear = smear_limit(
        order=order, if_bandwidth_hz=narrowest_bandwidth(goal, chamber.analyzer), level_db=goal.wanted_level_db
    )
    # A sweep takes at most a step on the way: the frequencies of the first and last direction need one sweep more.
    lines = [_longer(angles, column, 1 + MORE_SWEEPS) for angles in angles_deg]
    shown = np.concatenate([axis.map.readout_deg(line[:, column]) for line in lines])
    speed = flight_speed(
        name, axis, step_deg=step, sweep_s=sweep_s, low_deg=float(shown.min()), high_deg=float(shown.max()),
        settle_s=max(one.settle_s for one in chamber.axis_table.values()), smear_deg_s=smear,
        each=PulseEach.of(goal, chamber.analyzer),
    )  # fmt: skip
    azimuth, elevation = np.deg2rad(device.beam_deg)
    beam = from_azimuth_over_elevation(azimuth=np.array([azimuth]), elevation=np.array([elevation]))[0]
    strongest = int(np.argmax([float((cut.directions @ beam).max()) for cut in cuts]))
    return FlownLines(lines, name, speed, strongest)


def _moving(cut: Cut, angles_deg: FloatArray) -> tuple[int, float]:
    """Return which axis runs along a cut, and its step in degrees."""
    ways = np.abs(np.diff(angles_deg, axis=0))
    columns = np.flatnonzero(ways.max(axis=0) > 1e-6) if len(ways) else np.array([])
    if len(angles_deg) < LEAST_POINTS or columns.size != 1:
        raise InputError(
            [f"goal.toml: style = 'fly': scan, {cut.label}: must be a line of at least {LEAST_POINTS} directions that one axis of the "
             "positioner runs through; style = 'step' measures any directions"]
        )  # fmt: skip
    step = np.diff(angles_deg[:, columns[0]])
    if not np.allclose(step, step[0], atol=1e-6):
        raise InputError([f"goal.toml: style = 'fly': scan, {cut.label}: steps must be even on the fly (deg)"])
    return int(columns[0]), float(abs(step[0]))


def _longer(angles_deg: FloatArray, column: int, more: int) -> FloatArray:
    """Return a line with some sweeps more at both ends."""
    step = angles_deg[1] - angles_deg[0]
    before = angles_deg[0] - step * np.arange(more, 0, -1)[:, None]
    after = angles_deg[-1] + step * np.arange(1, more + 1)[:, None]
    return np.concatenate([before, angles_deg, after])


def require_still(chamber: Chamber, targets_deg: FloatArray, lines: FlownLines) -> None:
    """Raise `InputError` if another axis than the flown one moves along a line (point, axis)."""
    for index, name in enumerate(chamber.axis_table):
        if name != lines.axis and np.ptp(targets_deg[:, index]) > 1e-6:
            raise InputError(
                [f"goal.toml: style = 'fly': axis {name} would have to move by {np.ptp(targets_deg[:, index]):g} deg along a cut: "
                 "probe = 'fixed' in [scan] keeps it still, or style = 'step'"]
            )  # fmt: skip
