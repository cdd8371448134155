"""Speed profiles of one move: trapezoidal, or with limited jerk, from standstill to standstill.

A move ramps up, cruises and ramps down. A ramp to speed v lasts v/a where the jerk j is
unlimited, a/j + v/a where the acceleration a is reached, and 2 sqrt(v/j) where it is not; it
covers v times half its duration (derivable; any text on motion control).
"""

from __future__ import annotations

import numpy as np
from numpy.typing import ArrayLike

from colure.geometry.conventions import FloatArray


def ramp_time(speed: ArrayLike, acceleration: ArrayLike, jerk: ArrayLike = np.inf) -> FloatArray:
    """Return the time in seconds from standstill to `speed`; any consistent units."""
    v, a, j = (np.asarray(x, float) for x in (speed, acceleration, jerk))
    with np.errstate(divide="ignore", invalid="ignore"):
        gentle = 2.0 * np.sqrt(v / j)
        return np.asarray(np.where(v * j < a**2, gentle, a / j + v / a))


def peak_speed(way: ArrayLike, speed: ArrayLike, acceleration: ArrayLike, jerk: ArrayLike = np.inf) -> FloatArray:
    """Return the highest speed of a move: the cruising speed, or less on a short way."""
    d, v, a, j = (np.asarray(x, float) for x in (way, speed, acceleration, jerk))
    with np.errstate(divide="ignore", invalid="ignore"):
        # v (a/j + v/a) = d where the acceleration is reached; 2 v sqrt(v/j) = d where it is not.
        delay = a / j
        reached = 0.5 * a * (np.sqrt(delay**2 + 4.0 * d / a) - delay)
        unreached = np.cbrt(0.25 * j * d**2)
        alone = np.where(np.isfinite(j) & (unreached * j < a**2), unreached, reached)
    return np.asarray(np.minimum(v, alone))


def move_time(way: ArrayLike, speed: ArrayLike, acceleration: ArrayLike, jerk: ArrayLike = np.inf) -> FloatArray:
    """Return the time in seconds of a move over `way` >= 0, without settling."""
    d = np.asarray(way, float)
    top = peak_speed(d, speed, acceleration, jerk)
    with np.errstate(divide="ignore", invalid="ignore"):
        return np.asarray(np.where(d > 0.0, d / top + ramp_time(top, acceleration, jerk), 0.0))


def coordinated_time(ways: ArrayLike, speeds: ArrayLike, accelerations: ArrayLike, jerks: ArrayLike) -> FloatArray:
    """Return the time in seconds of moves (..., axis) whose axes share one profile, limits (axis,).

    All axes start and end together: over the whole move the slowest speed, ramp and jerk decide.
    """
    d = np.abs(np.asarray(ways, float))
    with np.errstate(divide="ignore"):
        v, a, j = (np.min(np.asarray(x, float) / d, axis=-1) for x in (speeds, accelerations, jerks))
    still = ~np.isfinite(v)
    v, a, j = np.where(still, 1.0, v), np.where(still, 1.0, a), np.where(still, np.inf, j)
    return np.asarray(np.where(still, 0.0, move_time(np.ones(v.shape), v, a, j)))


def travelled(elapsed_s: float, way: float, speed: float, acceleration: float, jerk: float = np.inf) -> float:
    """Return how far a move has come after a time."""
    total = float(move_time(way, speed, acceleration, jerk))
    if elapsed_s <= 0.0 or way <= 0.0:
        return 0.0
    if elapsed_s >= total:
        return way
    if elapsed_s > 0.5 * total:
        return way - travelled(total - elapsed_s, way, speed, acceleration, jerk)
    top = float(peak_speed(way, speed, acceleration, jerk))
    ramp = float(ramp_time(top, acceleration, jerk))
    if elapsed_s >= ramp:
        return top * (elapsed_s - 0.5 * ramp)
    bend = min(acceleration / jerk, 0.5 * ramp)
    if bend == 0.0:
        return 0.5 * acceleration * elapsed_s**2
    steepest = jerk * bend
    if elapsed_s < bend:
        return jerk * elapsed_s**3 / 6.0
    if elapsed_s <= ramp - bend:
        into = elapsed_s - bend
        return jerk * bend**3 / 6.0 + 0.5 * steepest * bend * into + 0.5 * steepest * into**2
    left = ramp - elapsed_s
    return 0.5 * top * ramp - (top * left - jerk * left**3 / 6.0)
