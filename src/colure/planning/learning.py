"""The real axes, learned from a run: speeds, accelerations and overhead fitted to when every point was measured."""

from __future__ import annotations

import json
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

import numpy as np

from colure.errors import InputError
from colure.geometry.conventions import FloatArray
from colure.model.chamber import Axis, Chamber
from colure.model.loading import Section, load, number
from colure.model.whole import write_whole
from colure.planning.duration import coordinated_time
from colure.values import holds_arrays

if TYPE_CHECKING:
    import xarray as xr

FILE = "learned.toml"
#: Weight of what chamber.toml declares: decides only what the run says nothing about.
PRIOR_WEIGHT = 0.01
#: Points later than this share of the quickest explanation were held up by something else.
HELD_UP = 3.0


class LearnedAxis(Section):
    """What one axis really does."""

    speed_deg_s: float = number("deg/s", 0.001, 10000)
    acceleration_deg_s2: float = number("deg/s^2", 0.001, 100000)


class Learned(Section):
    """What a run taught: axes by name, and the time of a point beyond motion, settling and trace."""

    run: str
    overhead_s: float = number("s", -10, 100)
    residual_s: float = number("s", 0, 1000)
    points: int
    axes: dict[str, LearnedAxis]

    def tables(self, chamber: Chamber) -> dict[str, Axis]:
        """Return the chamber's axes with what was learned put in."""
        return {
            name: axis.model_copy(update=self.axes[name].model_dump()) if name in self.axes else axis
            for name, axis in chamber.driven_table.items()
        }


@dataclass(frozen=True)
@holds_arrays
class Intervals:
    """Time from one point's sweep to the next one's: ways (interval, axis), settling and seconds."""

    ways_deg: FloatArray
    settle_s: FloatArray
    seconds: FloatArray


def _read(record: xr.Dataset) -> tuple[list[str], FloatArray]:
    """Return the names of the axes that a controller reads, and their readouts (point, axis)."""
    axis, read = ("joint", "joint_readback") if "joint" in record.dims else ("axis", "readback_deg")
    return [str(name) for name in record[axis].values], record[read].values


def intervals(record: xr.Dataset, chamber: Chamber) -> Intervals:
    """Collect the intervals between points measured step by step, in the order they were measured.

    Raises
    ------
    InputError
        If the record holds fewer than 20 such intervals.
    """
    names, read = _read(record)
    order = np.argsort(record["time_s"].values, kind="stable")
    steps = record["line_index"].values[order] < 0
    place = read[order]
    seconds = np.diff(record["time_s"].values[order])
    usable = steps[1:] & steps[:-1] & (seconds > 0.0)
    ways = np.abs(np.diff(place, axis=0))
    ways[ways < 0.01] = 0.0
    settle = np.where(ways > 0.0, [chamber.driven_table[name].settle_s for name in names], 0.0).max(axis=1)
    if int(usable.sum()) < 20:
        raise InputError(
            [f"record: {int(usable.sum())} intervals between step points: must be at least 20 (intervals)"]
        )
    return Intervals(ways[usable], settle[usable], seconds[usable])


def learn(record: xr.Dataset, chamber: Chamber, run: str) -> Learned:
    """Fit speeds, accelerations and one overhead to a run; intervals with pauses or retries are left out.

    Robust least squares of coordinated trapezoidal moves; a weak prior keeps what the run does
    not determine (an axis that made only short moves never shows its speed).
    """
    from scipy.optimize import least_squares

    names, _ = _read(record)
    data = intervals(record, chamber)
    trace_s = float(record.attrs["trace_s"])
    declared = [chamber.driven_table[name] for name in names]
    start = np.log([v for axis in declared for v in (axis.speed_deg_s, axis.acceleration_deg_s2)])

    def axes_of(logs: FloatArray) -> list[Axis]:
        pairs = np.exp(logs).reshape(-1, 2)
        return [
            axis.model_copy(update={"speed_deg_s": float(v), "acceleration_deg_s2": float(a)})
            for axis, (v, a) in zip(declared, pairs, strict=True)
        ]

    # Equal ways take equal time: the median of each kind of move says it all, and leaves out retries.
    kinds, inverse = np.unique(np.round(data.ways_deg, 2), axis=0, return_inverse=True)
    inverse = inverse.reshape(-1)
    median = np.array([np.median(data.seconds[inverse == kind]) for kind in range(len(kinds))])
    count = np.bincount(inverse)
    settle = np.array([data.settle_s[inverse == kind][0] for kind in range(len(kinds))])

    def misfit(x: FloatArray) -> FloatArray:
        predicted = coordinated_time(kinds, axes_of(x[:-1])) + settle + trace_s + x[-1]
        return np.concatenate([(predicted - median) * np.sqrt(np.minimum(count, 50)), PRIOR_WEIGHT * (x[:-1] - start)])

    first = np.concatenate([start, [float(np.median(data.seconds)) * 0.01]])
    fit = least_squares(misfit, first, loss="soft_l1", f_scale=0.05)
    axes = axes_of(fit.x[:-1])
    explained = coordinated_time(data.ways_deg, axes) + data.settle_s + trace_s + fit.x[-1]
    clean = data.seconds < HELD_UP * explained
    residual = float(np.sqrt(np.mean((data.seconds - explained)[clean] ** 2)))
    return Learned(
        run=run,
        overhead_s=float(fit.x[-1]),
        residual_s=residual,
        points=int(clean.sum()),
        axes={
            name: LearnedAxis(speed_deg_s=axis.speed_deg_s, acceleration_deg_s2=axis.acceleration_deg_s2)
            for name, axis in zip(names, axes, strict=True)
        },
    )


def save(learned: Learned, folder: Path) -> Path:
    """Write what was learned beside chamber.toml; the next forecast reads it."""
    lines = [
        "# Learned from a run by `colure plan --learn`; used for forecasts only. Delete to forget.",
        f"run = {json.dumps(learned.run)}",
        f"overhead_s = {learned.overhead_s:.6g}",
        f"residual_s = {learned.residual_s:.6g}",
        f"points = {learned.points}",
    ]
    for name, axis in learned.axes.items():
        lines += ["", f"[axes.{name}]", f"speed_deg_s = {axis.speed_deg_s:.6g}",
                  f"acceleration_deg_s2 = {axis.acceleration_deg_s2:.6g}"]  # fmt: skip
    path = folder / FILE
    write_whole(path, "\n".join(lines) + "\n")
    return path


def recall(folder: Path) -> Learned | None:
    """Return what an earlier run taught, or None."""
    path = folder / FILE
    return load(Learned, path) if path.exists() else None
