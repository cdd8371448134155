"""On-the-fly slices back onto their planned places: every frequency was read a little further on.

A field along a full turn of the swept axis is a trigonometric polynomial of no higher degree
than the order of the waves, so a few coefficients per slice describe it exactly; they are
fitted to where the axis really was and evaluated where the plan wanted it.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np

from colure.geometry.conventions import ComplexArray, FloatArray, IntArray
from colure.model.files import with_step
from colure.model.plan import ROLES, Role

if TYPE_CHECKING:
    import xarray as xr


@dataclass(frozen=True)
class Lag:
    """How far the true position runs ahead of the reported one, in the direction of motion.

    shift_deg
        speed x latency - backlash / 2; negative where backlash wins.
    uncertainty_deg
        Standard uncertainty from what the two directions do not agree on.
    """

    shift_deg: float
    uncertainty_deg: float


@dataclass(frozen=True)
class Line:
    """One flown slice: places (point,) and step per frequency (frequency,) in radians, trace (point, frequency, port)."""

    at: FloatArray
    on: FloatArray
    wanted: FloatArray
    trace: ComplexArray
    direction: float

    @property
    def orders(self) -> IntArray:
        """Trigonometric orders that the points determine."""
        half = (self.at.size - 1) // 2
        return np.arange(-half, half + 1)

    def coefficients(self, shift: float = 0.0) -> ComplexArray:
        """Return (order, frequency, port) coefficients of the field over the true position."""
        places = self.at + self.direction * shift
        matrix = np.exp(1j * places[:, None] * self.orders)
        flat = np.linalg.lstsq(matrix, self.trace.reshape(places.size, -1), rcond=None)[0]
        fitted = flat.reshape(self.orders.size, *self.trace.shape[1:])
        # At frequency f the axis was `on[f]` further: taking that off is a phase per order.
        return np.asarray(fitted * np.exp(-1j * self.orders[:, None] * self.on)[:, :, None])

    def at_wanted(self, shift: float) -> ComplexArray:
        """Return the trace (point, frequency, port) at the planned places."""
        matrix = np.exp(1j * self.wanted[:, None] * self.orders)
        return np.asarray(np.einsum("pm,mfc->pfc", matrix, self.coefficients(shift)))


def to_planned_places(record: xr.Dataset) -> xr.Dataset:
    """Return the record with every flown slice evaluated where the plan wanted it.

    Latency and backlash are taken out with the slice that was flown both ways (role `turn`).
    A record measured step by step comes back as it is.

    Raises
    ------
    ValueError
        If a flown slice lacks points or does not span a full turn.
    """
    if record.attrs.get("style") != "fly":
        return record
    lag = lag_of(record)
    trace = record["trace"].values.copy()
    lines = record["line_index"].values
    for number in np.unique(lines[lines >= 0]):
        rows = np.flatnonzero(lines == number)
        trace[rows] = _line(record, rows).at_wanted(np.deg2rad(lag.shift_deg))
    moved = record.assign(trace=(record["trace"].dims, trace, record["trace"].attrs))
    return with_step(
        moved,
        "on-the-fly places",
        lag_deg=lag.shift_deg,
        lag_uncertainty_deg=lag.uncertainty_deg,
        method="trigonometric fit along every slice; lag from one slice flown both ways",
    )


def lag_of(record: xr.Dataset) -> Lag:
    """Estimate the lag from the slice flown both ways.

    If F and B are its coefficients forward and backward over the reported position, then
    F_m = g B_m exp(2 j m shift), with one complex g per frequency and port for drift between.

    Raises
    ------
    ValueError
        If the record holds no slice that was flown both ways.
    """
    from scipy.optimize import minimize_scalar

    turns = np.flatnonzero(record["role"].values == ROLES.index(Role.TURN))
    lines = record["line_index"].values
    numbers = np.unique(lines[turns])
    if numbers.size != 2:
        raise ValueError(f"record: {numbers.size} complete turn slices, needs 2: one slice flown both ways (slices)")
    one, two = (_line(record, np.flatnonzero(lines == number)) for number in numbers)
    if one.direction < two.direction:
        one, two = two, one
    ahead, back, orders = one.coefficients(), two.coefficients(), one.orders

    def apart(shift: float) -> float:
        turned = back * np.exp(2j * orders * shift)[:, None, None]
        overlap = np.abs(np.sum(np.conj(turned) * ahead, axis=0))
        return float(np.sum(np.abs(ahead) ** 2) + np.sum(np.abs(back) ** 2) - 2.0 * np.sum(overlap))

    # The finest ripple has the highest order: a grid finer than its half wave cannot miss the valley.
    reach = np.pi / 8.0
    grid = np.linspace(-reach, reach, 8 * orders.size + 1)
    start = grid[int(np.argmin([apart(shift) for shift in grid]))]
    width = grid[1] - grid[0]
    found = minimize_scalar(apart, bounds=(start - width, start + width), method="bounded", options={"xatol": 1e-12})
    shift = float(found.x)
    steepness = 4.0 * float(np.sum(orders[:, None, None] ** 2 * np.abs(ahead) ** 2))
    noise = max(0.0, apart(shift)) / ahead.size
    return Lag(float(np.rad2deg(shift)), float(np.rad2deg(np.sqrt(noise / (2.0 * steepness)))))


def _line(record: xr.Dataset, rows: IntArray) -> Line:
    rate = record["rate_deg_s"].values[rows]
    axis = int(np.argmax(np.abs(rate).max(axis=0)))
    speed = float(np.median(rate[:, axis]))
    wanted = np.deg2rad(record["commanded_deg"].values[rows, axis])
    step = float(np.median(np.abs(np.diff(wanted)))) if rows.size > 1 else 2.0 * np.pi
    if abs(rows.size * step - 2.0 * np.pi) > 0.5 * step:
        raise ValueError(
            f"record: slice of {rows.size} points at {np.rad2deg(step):g} deg, needs {round(2 * np.pi / step)} "
            "for a full turn (points)"
        )
    count = record.sizes["frequency"]
    moments = (np.arange(count) + 0.5) / count * float(record.attrs["trace_s"])
    return Line(
        np.deg2rad(record["readback_deg"].values[rows, axis]),
        np.deg2rad(speed * moments),
        wanted,
        record["trace"].values[rows],
        float(np.sign(speed)),
    )
