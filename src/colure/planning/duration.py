"""How long a list of moves and sweeps takes."""

from __future__ import annotations

import numpy as np

from colure.geometry.conventions import FloatArray
from colure.model.chamber import Analyzer, Axis


def move_time(distance_deg: FloatArray, axis: Axis) -> FloatArray:
    """Return the time in seconds of trapezoidal (or triangular) moves, without settling."""
    distance = np.abs(np.asarray(distance_deg, float))
    ramp = axis.speed_deg_s**2 / axis.acceleration_deg_s2
    cruise = distance / axis.speed_deg_s + axis.speed_deg_s / axis.acceleration_deg_s2
    return np.asarray(np.where(distance < ramp, 2.0 * np.sqrt(distance / axis.acceleration_deg_s2), cruise))


def trace_time(points: int, analyzer: Analyzer) -> float:
    """Return the time in seconds from the first to the last frequency of one sweep: points / IF bandwidth."""
    return points * analyzer.averages / analyzer.if_bandwidth_hz


def sweep_time(points: int, analyzer: Analyzer) -> float:
    """Return the time of one sweep in seconds: points / IF bandwidth plus the fixed overhead."""
    return trace_time(points, analyzer) + analyzer.sweep_overhead_s


def coordinated_time(ways_deg: FloatArray, axes: list[Axis]) -> FloatArray:
    """Return the time in seconds of moves (move, axis) whose axes share one trapezoidal profile.

    All axes start and end together: over the whole move the slowest speed and the slowest ramp
    decide. With one moving axis this is `move_time`.
    """
    ways = np.abs(np.asarray(ways_deg, float))
    with np.errstate(divide="ignore"):
        speed = np.min([axis.speed_deg_s / ways[:, i] for i, axis in enumerate(axes)], axis=0)
        ramp = np.min([axis.acceleration_deg_s2 / ways[:, i] for i, axis in enumerate(axes)], axis=0)
    still = ~np.isfinite(speed)
    speed, ramp = np.where(still, 1.0, speed), np.where(still, 1.0, ramp)
    moving = np.where(ramp < speed**2, 2.0 / np.sqrt(ramp), 1.0 / speed + speed / ramp)
    return np.asarray(np.where(still, 0.0, moving))


def point_times(targets_deg: FloatArray, start_deg: FloatArray, axes: list[Axis], sweep_s: float) -> FloatArray:
    """Return the time each point takes: coordinated move, longest settling of a moved axis, sweep.

    targets_deg (point, axis), start_deg (axis,) in readout degrees.
    """
    moved = np.abs(np.diff(np.vstack([start_deg, targets_deg]), axis=0))
    settle = np.where(moved > 1e-9, [axis.settle_s for axis in axes], 0.0)
    return np.asarray(coordinated_time(moved, axes) + settle.max(axis=1) + sweep_s)


def line_time(length_deg: float, speed_deg_s: float, axis: Axis) -> float:
    """Return the time in seconds of one line at constant speed, both ramps included."""
    return length_deg / speed_deg_s + speed_deg_s / axis.acceleration_deg_s2
