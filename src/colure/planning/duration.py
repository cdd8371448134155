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


def sweep_time(points: int, analyzer: Analyzer) -> float:
    """Return the time of one sweep in seconds: points / IF bandwidth plus the fixed overhead."""
    return points / analyzer.if_bandwidth_hz + analyzer.sweep_overhead_s


def point_times(targets_deg: FloatArray, start_deg: FloatArray, axes: list[Axis], sweep_s: float) -> FloatArray:
    """Return the time each point takes: slowest axis, longest settling of a moved axis, sweep.

    targets_deg (point, axis), start_deg (axis,) in readout degrees.
    """
    moved = np.abs(np.diff(np.vstack([start_deg, targets_deg]), axis=0))
    travel = np.stack([move_time(moved[:, i], axis) for i, axis in enumerate(axes)], axis=-1)
    settle = np.where(moved > 1e-9, [axis.settle_s for axis in axes], 0.0)
    return np.asarray(travel.max(axis=1) + settle.max(axis=1) + sweep_s)
