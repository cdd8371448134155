"""How long a list of moves and sweeps takes."""

from __future__ import annotations

import numpy as np

from colure.geometry import move_times
from colure.geometry.conventions import FloatArray
from colure.model.bands import Segment, segments_of
from colure.model.chamber import Analyzer, Axis
from colure.model.goal import Goal


def move_time(distance_deg: FloatArray, axis: Axis) -> FloatArray:
    """Return the time in seconds of moves of one axis, without settling."""
    distance = np.abs(np.asarray(distance_deg, float))
    return move_times.move_time(distance, axis.speed_deg_s, axis.acceleration_deg_s2, axis.jerk)


def segments(goal: Goal, analyzer: Analyzer) -> tuple[Segment, ...]:
    """Return the segments of one sweep: one for an even sweep, else those of the bands, each with its bandwidth and power."""
    width, power = analyzer.if_bandwidth_hz, analyzer.power_dbm
    if goal.band:
        return segments_of(goal.band, if_bandwidth_hz=width, power_dbm=power)
    every = goal.frequency_hz
    return (
        Segment(
            start_hz=float(every[0]),
            stop_hz=float(every[-1]),
            points=every.size,
            if_bandwidth_hz=width,
            power_dbm=power,
        ),
    )


def trace_time(goal: Goal, analyzer: Analyzer) -> float:
    """Return the time in seconds from the first to the last frequency of one sweep: points / IF bandwidth, segment by segment."""
    return sum(one.points * analyzer.averages / one.if_bandwidth_hz for one in segments(goal, analyzer))


def narrowest_bandwidth(goal: Goal, analyzer: Analyzer) -> float:
    """Return the smallest IF bandwidth of a sweep's segments, hertz: it integrates longest."""
    return min(one.if_bandwidth_hz for one in segments(goal, analyzer))


def sweep_time(goal: Goal, analyzer: Analyzer) -> float:
    """Return the time of one sweep in seconds: that of its frequencies plus the fixed overhead."""
    return trace_time(goal, analyzer) + analyzer.sweep_overhead_s


def coordinated_time(ways_deg: FloatArray, axes: list[Axis]) -> FloatArray:
    """Return the time in seconds of moves (move, axis) whose axes share one profile.

    All axes start and end together: over the whole move the slowest speed, ramp and jerk
    decide. With one moving axis this is `move_time`.
    """
    return move_times.coordinated_time(
        ways_deg,
        [axis.speed_deg_s for axis in axes],
        [axis.acceleration_deg_s2 for axis in axes],
        [axis.jerk for axis in axes],
    )


def approached_time(
    targets_deg: FloatArray, before_deg: FloatArray, axes: list[Axis], *, run_up: int | None = None
) -> FloatArray:
    """Return the time in seconds of moves between (move, axis) positions, without settling.

    An axis with `approach_deg` that comes from above goes that far below its target first and
    then up to it, which is a second move. The axis `run_up` runs on from there and needs none.
    """
    way = targets_deg - before_deg
    approach = [0.0 if index == run_up else axis.approach_deg for index, axis in enumerate(axes)]
    below = np.where(way < -1e-9, approach, 0.0)
    return coordinated_time(way - below, axes) + coordinated_time(below, axes)


def point_times(targets_deg: FloatArray, start_deg: FloatArray, axes: list[Axis], sweep_s: float) -> FloatArray:
    """Return the time each point takes: move and approach, longest settling of a moved axis, sweep.

    targets_deg (point, axis), start_deg (axis,) in readout degrees.
    """
    before = np.vstack([start_deg, targets_deg[:-1]])
    settle = np.where(np.abs(targets_deg - before) > 1e-9, [axis.settle_s for axis in axes], 0.0)
    return np.asarray(approached_time(targets_deg, before, axes) + settle.max(axis=1) + sweep_s)


def line_time(length_deg: float, speed_deg_s: float, axis: Axis) -> float:
    """Return the time in seconds of one line at constant speed, both ramps included."""
    return length_deg / speed_deg_s + float(move_times.ramp_time(speed_deg_s, axis.acceleration_deg_s2, axis.jerk))
