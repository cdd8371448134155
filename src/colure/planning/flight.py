"""On the fly: how fast the swept axis may run, and how much room it needs before and after."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from colure.errors import InputError
from colure.geometry.kinematics import Geometry
from colure.geometry.move_times import ramp_time
from colure.model.chamber import Analyzer, Axis
from colure.model.goal import Goal
from colure.planning.duration import narrowest_bandwidth

#: Share of the time between two sweeps that the sweep may take; the rest re-arms the analyzer.
DUTY = 0.8
#: Time at constant speed before the first and after the last sweep, seconds.
CALM_S = 0.05


class BeyondLimitsError(InputError):
    """Targets, or the room that a flight needs beyond them, lie outside the limits of an axis."""


@dataclass(frozen=True, kw_only=True)
class FlightSpeed:
    """Speed of the swept axis in deg/s, and the run-up and run-out it needs in degrees.

    entry_settle_s
        Rest before the run-up: what settling of any axis lasts longer than the run-up itself.
    point_step_deg
        Way from pulse to pulse where every frequency has one of its own; 0 where a pulse starts a whole sweep.
    """

    axis: str
    speed_deg_s: float
    run_up_deg: float
    limited_by: str
    entry_settle_s: float = 0.0
    point_step_deg: float = 0.0


@dataclass(frozen=True)
class PulseEach:
    """A pulse for every frequency: how many there are to a step, and the least time between two of them, seconds."""

    points: int
    least_s: float

    @classmethod
    def of(cls, goal: Goal, analyzer: Analyzer) -> PulseEach | None:
        """Return what the goal asks for; None where a pulse starts a whole sweep.

        After its last frequency a sweep takes what is declared as its overhead, and pulses do not wait: each leaves time for that.
        """
        if goal.pulse_each == "sweep":
            return None
        return cls(goal.points, 1.0 / narrowest_bandwidth(goal, analyzer) + analyzer.sweep_overhead_s)


def swept_axis(geometry: Geometry) -> str:
    """Return the axis that runs through every slice."""
    return "elevation" if geometry is Geometry.ELEVATION_OVER_AZIMUTH else "azimuth"


def smear_limit(*, order: int, if_bandwidth_hz: float, level_db: float) -> float:
    """Return the speed in deg/s at which a wave of `order` loses 10^(level/20) of itself.

    A receiver of bandwidth B integrates over about 1/B; at a rate w a wave of order n then shrinks by
    sin(x)/x with x = n w / (2 B), that is by n^2 w^2 / (24 B^2) (derivable).
    """
    return float(np.rad2deg(np.sqrt(24.0 * 10.0 ** (level_db / 20.0)) * if_bandwidth_hz / order))


def flight_speed(
    name: str,
    axis: Axis,
    *,
    step_deg: float,
    sweep_s: float,
    low_deg: float,
    high_deg: float,
    settle_s: float = 0.0,
    smear_deg_s: float = np.inf,
    each: PulseEach | None = None,
) -> FlightSpeed:
    """Return the highest speed that sampling, axis and room allow.

    Parameters
    ----------
    low_deg, high_deg
        Readouts between which sweeps are wanted.
    settle_s
        Longest settling of all axes; the run-up counts towards it.
    smear_deg_s
        Speed at which the receiver's own integration time blurs the pattern too much, see `smear_limit`.
    each
        Given where every frequency has a pulse of its own: a sweep is then as long as a step.

    Raises
    ------
    InputError
        If the axis has no room for run-up and run-out inside its limits.
    """
    room = min(low_deg - axis.min_deg, axis.max_deg - high_deg)
    if axis.wrap_budget_deg is not None:
        room = min(room, axis.zero_deg + axis.wrap_budget_deg - high_deg,
                   low_deg - axis.zero_deg + axis.wrap_budget_deg)  # fmt: skip
    calm, more_deg = (sweep_s + CALM_S, 0.0) if each is None else (each.least_s + CALM_S, step_deg)
    by_room = _fastest_in(max(0.0, room - more_deg), calm, axis)
    pace = ("sampling", sweep_s) if each is None else ("a pulse for every frequency", each.points * each.least_s)
    choices = {pace[0]: DUTY * step_deg / pace[1], "the axis": axis.speed_deg_s,
               "room for the run-up": by_room, "angle smear within the IF bandwidth": smear_deg_s}  # fmt: skip
    limit = min(choices, key=lambda key: choices[key])
    speed = choices[limit]
    if speed < 0.02 * axis.speed_deg_s or speed <= 0.0:
        why = f"; with pulse_each = 'frequency' a sweep is as long as a step of {step_deg:g} deg, a finer swept_step_deg needs less"
        raise BeyondLimitsError(
            [
                f"goal.toml: style = 'fly': axis {name} scans {low_deg:g} to {high_deg:g} deg and has {room:g} deg left "
                f"to its limits {axis.min_deg:g} to {axis.max_deg:g} deg: run-up and run-out need more (deg)"
                + ("" if each is None else why)
            ]
        )
    ramp_s = float(ramp_time(speed, axis.acceleration_deg_s2, axis.jerk))
    run_up_deg = speed * (0.5 * ramp_s + calm) + more_deg
    return FlightSpeed(
        axis=name,
        speed_deg_s=speed,
        run_up_deg=run_up_deg,
        limited_by=limit,
        entry_settle_s=max(0.0, settle_s - ramp_s - calm),
        point_step_deg=0.0 if each is None else step_deg / each.points,
    )


def _fastest_in(room_deg: float, calm_s: float, axis: Axis) -> float:
    """Return the highest speed whose ramp and calm run fit into a room, by halving the interval."""
    low, high = 0.0, axis.speed_deg_s
    for _ in range(60):
        middle = 0.5 * (low + high)
        needs = middle * (0.5 * float(ramp_time(middle, axis.acceleration_deg_s2, axis.jerk)) + calm_s)
        low, high = (middle, high) if needs <= room_deg else (low, middle)
    return high
