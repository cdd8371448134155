"""The moving cable: its phase and level against every axis' angle, from dedicated turns, taken out of every sweep.

A cable that bends changes its electrical length with the axis that bends it, and over a slice that
looks like a device that stands beside the axes' intersection. With its far end shorted nothing else can
change: what comes back has run through it twice. Each axis turns there and back, so that a steady
drift cancels in the mean of both ways; half their difference is what the correction does not know.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

import numpy as np

from colure.geometry.conventions import ComplexArray, FloatArray, IntArray
from colure.model.files import with_step
from colure.model.plan import Role
from colure.model.record import of_role
from colure.values import holds_arrays

if TYPE_CHECKING:
    import xarray as xr

#: Fewest angles of one axis that a curve can be drawn through.
LEAST_ANGLES = 4


@dataclass(frozen=True)
@holds_arrays
class AxisFlex:
    """What one axis does to the cable: readouts (angle,) in degrees, and the logarithm (angle, frequency) of one pass.

    Real part in nepers, imaginary part in radians, zero where the ties are measured.
    """

    axis: str
    readout_deg: FloatArray
    change: ComplexArray


@dataclass(frozen=True)
class CableFlex:
    """All axes, and the expanded uncertainty (k = 2) of a correction, relative: half of there against back."""

    axes: tuple[AxisFlex, ...]
    expanded: float

    def at(self, frequencies: slice | IntArray) -> CableFlex:
        """Return the flexing at some of its frequencies; the uncertainty is that of all together."""
        return replace(self, axes=tuple(replace(one, change=one.change[:, frequencies]) for one in self.axes))

    @property
    def largest_deg(self) -> float:
        """Largest phase change over the travel, degrees."""
        return float(np.rad2deg(max(np.ptp(one.change.imag, axis=0).max() for one in self.axes)))

    @property
    def largest_db(self) -> float:
        """Largest level change over the travel, dB."""
        return float(20.0 / np.log(10.0) * max(np.ptp(one.change.real, axis=0).max() for one in self.axes))


def has_turns(record: xr.Dataset) -> bool:
    """Tell whether a record holds dedicated turns of the cable."""
    return bool(of_role(record, Role.CABLE).sizes["point"])


def cable_flex(record: xr.Dataset, *, passes: int) -> CableFlex:
    """Read the cable's flexing from a record's dedicated turns.

    passes
        How often the wave ran through the cable in these turns (1 or 2).

    Raises
    ------
    ValueError
        If the record has no turns, or an axis stopped at too few angles.
    """
    turns, ties = of_role(record, Role.CABLE), of_role(record, Role.TIE)
    if turns.sizes["point"] == 0:
        raise ValueError("record: 0 cable sweeps, needs turns there and back (points); declare [cable] in chamber.toml")
    rest, places = ties["commanded_deg"].values[0], turns["commanded_deg"].values
    level = turns["trace"].values[:, :, 0]
    flexes, apart = [], []
    for index, name in enumerate(str(axis) for axis in record["axis"].values):
        others = np.delete(np.arange(rest.size), index)
        here = np.flatnonzero(np.all(np.abs(places[:, others] - rest[others]) < 1e-3, axis=1))
        if here.size == 0 or float(np.ptp(places[here, index])) < 1e-3:
            continue
        here = _own_turn(here, places[:, index])
        flex, half_difference = _of_axis(name, places[here, index], level[here], float(rest[index]), passes)
        flexes.append(flex)
        apart.append(half_difference)
    if not flexes:
        raise ValueError("record: the cable sweeps turn no axis (deg)")
    # The mean of two ways is sqrt 2 better known than one, and the two differ by sqrt 2 more.
    spread = np.sqrt(np.mean(np.concatenate([one.ravel() for one in apart]) ** 2))
    return CableFlex(tuple(flexes), float(2.0 * spread))


def _own_turn(rows: IntArray, values: FloatArray) -> IntArray:
    """Return the rows of one axis' own turn: the other axis' turn passes its resting place now and then.

    A turn begins and ends at its lowest readout.
    """
    blocks = np.split(rows, np.flatnonzero(np.diff(rows) != 1) + 1)
    own = max(blocks, key=lambda block: float(np.ptp(values[block])))
    lowest = np.flatnonzero(values[own] < values[own].min() + 1e-3)
    own = own[lowest[0] : lowest[-1] + 1]
    return own[: 2 * (own.size // 2)]


def _of_axis(
    name: str, readout: FloatArray, level: ComplexArray, rest: float, passes: int
) -> tuple[AxisFlex, FloatArray]:
    """Return one axis' curve and half the difference of both ways, in relative units (angle, frequency)."""
    from scipy.interpolate import CubicSpline

    half = readout.size // 2
    angle = readout[:half]
    if half < LEAST_ANGLES or not np.allclose(angle, readout[half:][::-1], atol=1e-3):
        raise ValueError(
            f"record: cable turn of axis {name} holds {readout.size} sweeps, needs at least {2 * LEAST_ANGLES}, the same "
            "there as back (sweeps)"
        )
    there, back = level[:half], level[half:][::-1]
    logs = [np.log(np.abs(way)) + 1j * np.unwrap(np.angle(way), axis=0) for way in (there, back)]
    logs[1] += 2j * np.pi * np.round((logs[0] - logs[1]).imag.mean(axis=0) / (2.0 * np.pi))
    mean, difference = 0.5 * (logs[0] + logs[1]) / passes, 0.5 * (logs[0] - logs[1]) / passes
    order = np.argsort(angle)
    at_rest = CubicSpline(angle[order], mean[order])(rest)
    # A common step between both ways is drift, and the mean holds none of it.
    return AxisFlex(name, angle[order], mean[order] - at_rest), np.abs(difference - difference.mean(axis=0))


def bend_shapes(angle: FloatArray, *, joints: bool) -> FloatArray:
    """Return the shapes (shape, ...) of a cable's bend over the angle (radians) that bends it: sin a, sin 2a, 1 - cos a.

    joints
        The angle is the polar one of a mount with joints, negative in the slices' other half. Whether joints go there by an arm
        that swings over or by half a turn of a turntable is not known: sin |a| and sin 2|a| as well, which the second way bends by.
    """
    shapes = [np.sin(angle), np.sin(2.0 * angle), 1.0 - np.cos(angle)]
    if joints:
        shapes += [np.sin(np.abs(angle)), np.sin(2.0 * np.abs(angle))]
    return np.stack(shapes)


def correct_cable(record: xr.Dataset, flex: CableFlex) -> xr.Dataset:
    """Divide every sweep through the cable by its change at the sweep's own readouts."""
    from scipy.interpolate import CubicSpline

    names = [str(axis) for axis in record["axis"].values]
    total = np.zeros((record.sizes["point"], record.sizes["frequency"]), complex)
    for one in flex.axes:
        here = record["commanded_deg"].values[:, names.index(one.axis)]
        inside = np.clip(here, one.readout_deg[0], one.readout_deg[-1])
        total += CubicSpline(one.readout_deg, one.change)(inside)
    changed = record.assign(
        trace=(record["trace"].dims, record["trace"].values * np.exp(-total)[:, :, None], record["trace"].attrs)
    )
    return with_step(
        changed,
        "cable",
        axes=[one.axis for one in flex.axes],
        largest_deg=round(flex.largest_deg, 3),
        largest_db=round(flex.largest_db, 4),
        expanded=flex.expanded,
    )
