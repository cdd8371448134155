"""How far an axis runs on before a fault of its motion is seen and braked, beside what limits, keep-out sectors and solids leave it."""

from __future__ import annotations

import numpy as np

from colure.acquire.flying import flight_of
from colure.acquire.guard import Guard
from colure.acquire.station import Station
from colure.errors import InstrumentError
from colure.geometry.conventions import FloatArray
from colure.geometry.move_times import ramp_time
from colure.model.chamber import Axis

#: What an axis may run, and how long, until something wrong with its motion is seen: degrees, seconds (common practice, no source).
#: So far it may also stand behind a limit, in a keep-out sector, or past where solids meet, once it was braked.
SEEN_WITHIN_DEG, SEEN_WITHIN_S = 1.0, 0.2
#: Speeds are said to this share of themselves, rounded down.
SPEED_STEP = 0.01


def looks_at(guard: Guard, path_deg: FloatArray, look_s: float) -> str:
    """Say how far the fastest axis runs between two looks that take `look_s`, on the moves of a path (position, axis).

    Raises
    ------
    InstrumentError
        If an axis runs further than a degree until the next look, and could come more than a degree behind a limit, into a
        keep-out sector or past where solids meet before it is braked: with the speed that keeps it within that.
    """
    name, axis = max(guard.axes.items(), key=lambda item: item[1].speed_deg_s)
    way = axis.speed_deg_s * look_s
    words = f"{1e3 * look_s:.0f} ms a look; {name} runs {way:.2f} {axis.unit} meanwhile"
    if too_far := _too_far(guard, path_deg, look_s):
        raise InstrumentError(
            f"{words}: {'; '.join(too_far)} (speed_deg_s in chamber.toml and in the controller), a faster line, or a plan that stays so much further away"
        )
    if way <= SEEN_WITHIN_DEG and look_s <= SEEN_WITHIN_S:
        return words
    return (
        f"{words}: a wrong way, a limit passed or a keep-out entered is seen so much later, {SEEN_WITHIN_DEG:g} {axis.unit} are wanted "
        f"({SEEN_WITHIN_DEG / look_s:.3g} {axis.unit}/s, or a faster line); this plan leaves more than that to every limit, keep-out sector and solid"
    )


def _too_far(guard: Guard, path_deg: FloatArray, look_s: float) -> list[str]:
    """Say of every axis that is not seen in time what it could run into, how far, and the speed that keeps it within a degree."""
    out = []
    for place, (name, axis) in enumerate(guard.axes.items()):
        if axis.speed_deg_s * look_s <= SEEN_WITHIN_DEG:
            continue
        reach = runs_on(axis, axis.speed_deg_s, look_s)
        gap, what = guard.gap(path_deg, place, reach)
        if reach <= gap + SEEN_WITHIN_DEG:
            continue
        # At a degree a look it runs on no further than on a fast line.
        slow, fast = SEEN_WITHIN_DEG / look_s, axis.speed_deg_s
        while slow < (middle := 0.5 * (slow + fast)) < fast:
            slow, fast = (middle, fast) if runs_on(axis, middle, look_s) <= gap + SEEN_WITHIN_DEG else (slow, middle)
        most = float(np.floor(slow / SPEED_STEP + 1e-6)) * SPEED_STEP
        out.append(
            f"{name} could come {reach - gap:.1f} {axis.unit} {what} before it is seen and braked, {SEEN_WITHIN_DEG:g} {axis.unit} at most: "
            f"{most:g} {axis.unit}/s at most"
        )
    return out


def runs_on(axis: Axis, speed_deg_s: float, look_s: float) -> float:
    """Return how far an axis runs from the look before a fault until it was braked."""
    return speed_deg_s * (look_s + 0.5 * float(ramp_time(speed_deg_s, axis.acceleration_deg_s2, axis.jerk)))


def way_of(station: Station) -> FloatArray:
    """Return every position that a whole plan visits from where the axes stand, run-up and run-out of flown lines included."""
    plan, here = station.plan, station.guard.last_deg
    way = [] if here is None else [here[None, :]]
    begin, lines = 0, plan.line_index
    while begin < len(plan):
        end = begin + 1
        while lines[begin] >= 0 and end < len(plan) and lines[end] == lines[begin]:
            end += 1
        line = np.arange(begin, end)
        way.append(plan.targets_deg[line])
        if lines[begin] >= 0:
            flight = flight_of(station, line, line)
            way[-1] = np.stack([flight.from_deg, flight.to_deg])
        begin = end
    return np.concatenate(way)
