"""On-the-fly slices back onto their planned places: every frequency was read a little further on.

A field along a full turn of the swept axis is a trigonometric polynomial of no higher degree
than the order of the waves, so a few coefficients per slice describe it exactly; they are
fitted to where the axis really was and evaluated where the plan wanted it. On part of a turn
the same polynomials fit with many sets of coefficients; the smallest is taken, and only the
field on the slice itself is used.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np

from colure.geometry.conventions import ComplexArray, FloatArray, IntArray
from colure.model.bands import ways_deg
from colure.model.files import with_step
from colure.model.plan import ROLES, Role
from colure.model.record import grid_of, holds_cuts
from colure.values import holds_arrays

if TYPE_CHECKING:
    import xarray as xr


#: Part of a turn: singular values below this share are combinations that the slice hardly shows.
LEAST_SINGULAR = 1e-9
#: Orders of the fit beyond those of the device's waves.
MORE_ORDERS = 10
#: Largest lag looked for, degrees, and as a share of a slice that is part of a turn.
LARGEST_LAG_DEG, LARGEST_LAG_SHARE = 22.5, 0.05


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
@holds_arrays
class FlownSlice:
    """One flown slice: places (point,) and step per frequency (frequency,) in radians, trace (point, frequency, port).

    highest
        Trigonometric order of the fit: what a full turn of points determines, or less.
    """

    at: FloatArray
    on: FloatArray
    wanted: FloatArray
    trace: ComplexArray
    direction: float
    highest: int

    @property
    def orders(self) -> IntArray:
        """Trigonometric orders that the points determine."""
        return np.arange(-self.highest, self.highest + 1)

    @property
    def full_turn(self) -> bool:
        """Tell whether the slice closes on itself."""
        return bool(abs(np.ptp(self.wanted) + self._step - 2.0 * np.pi) < 0.5 * self._step)

    @property
    def travel(self) -> float:
        """How far the axis moves from the planned place to the last frequency, radians; no less than to it."""
        return float(np.max(np.abs(self.on)) + np.max(np.abs(self.at - self.wanted)))

    @property
    def _step(self) -> float:
        return float(np.median(np.abs(np.diff(self.wanted))))

    def coefficients(self, shift: float = 0.0) -> ComplexArray:
        """Return (order, frequency, port) coefficients of the field over the true position."""
        places = self.at + self.direction * shift
        matrix = np.exp(1j * places[:, None] * self.orders)
        flat = np.linalg.lstsq(matrix, self.trace.reshape(places.size, -1), rcond=LEAST_SINGULAR)[0]
        fitted = flat.reshape(self.orders.size, *self.trace.shape[1:])
        # At frequency f the axis was `on[f]` further: taking that off is a phase per order.
        return np.asarray(fitted * np.exp(-1j * self.orders[:, None] * self.on)[:, :, None])

    def at_wanted(self, shift: float) -> ComplexArray:
        """Return the trace (point, frequency, port) at the planned places."""
        return evaluated(self.coefficients(shift), self.orders, self.wanted)


def evaluated(coefficients: ComplexArray, orders: IntArray, places: FloatArray) -> ComplexArray:
    """Return trigonometric polynomials (order, frequency, port) at places, (place, frequency, port)."""
    flat = np.exp(1j * places[:, None] * orders) @ coefficients.reshape(orders.size, -1)
    return np.asarray(flat.reshape(places.size, *coefficients.shape[1:]))


def to_planned_places(record: xr.Dataset) -> xr.Dataset:
    """Return the record with every flown slice evaluated where the plan wanted it.

    Latency and backlash are taken out with the slice that was flown both ways (role `turn`). A
    slice that lacks points, where a run was stopped, is left out.
    A record measured step by step comes back as it is.

    Raises
    ------
    ValueError
        If no slice was flown both ways.
    """
    if record.attrs.get("style") != "fly":
        return record
    lag = lag_of(record)
    lines = record["line_index"].values
    torn = np.isin(lines, [number for number in np.unique(lines[lines >= 0]) if not _complete(record, lines == number)])
    record = record.isel(point=np.flatnonzero(~torn))
    trace, travel = record["trace"].values.copy(), 0.0
    lines = record["line_index"].values
    for number in np.unique(lines[lines >= 0]):
        rows = np.flatnonzero(lines == number)
        line = _line(record, rows)
        trace[rows] = line.at_wanted(np.deg2rad(lag.shift_deg))
        travel = max(travel, line.travel)
    moved = record.assign(trace=(record["trace"].dims, trace, record["trace"].attrs))
    # A slice that is part of a turn says nothing beyond where the last frequency was read.
    moved.attrs["usable_deg"] = grid_of(record).reach_deg - float(np.rad2deg(travel)) - abs(lag.shift_deg)
    return with_step(
        moved,
        "on-the-fly places",
        lag_deg=lag.shift_deg,
        lag_uncertainty_deg=lag.uncertainty_deg,
        method="trigonometric fit along every slice; lag from one slice flown both ways",
    )


def lag_of(record: xr.Dataset) -> Lag:
    """Estimate the lag from the slice flown both ways.

    If F and B are its fields forward and backward over the reported position x, then
    F(x - shift) = g B(x + shift), with one complex g per frequency and port for drift between.

    Raises
    ------
    ValueError
        If the record holds no slice that was flown both ways, or nothing was read there.
    """
    from scipy.optimize import minimize_scalar

    one, two = flown_both_ways(record)
    ahead, back, orders = one.coefficients(), two.coefficients(), one.orders
    reach, (low, high) = np.deg2rad(LARGEST_LAG_DEG), (float(one.wanted.min()), float(one.wanted.max()))
    if not one.full_turn:
        reach = min(reach, LARGEST_LAG_SHARE * (high - low))
        edge = reach + max(one.travel, two.travel)
        low, high = low + edge, high - edge
    places = np.linspace(low, high, min(one.wanted.size, 4 * orders.size))

    def apart(shift: float) -> float:
        f, b = evaluated(ahead, orders, places - shift), evaluated(back, orders, places + shift)
        overlap = np.abs(np.sum(np.conj(b) * f, axis=0))
        return float(np.sum(np.abs(f) ** 2) + np.sum(np.abs(b) ** 2) - 2.0 * np.sum(overlap))

    # The finest ripple has the highest order: a grid finer than its half wave cannot miss the valley.
    finest = int(np.ceil(8 * orders.size * reach / (np.pi / 8.0)))
    grid = np.linspace(-reach, reach, finest + 1)
    start = grid[int(np.argmin([apart(shift) for shift in grid]))]
    width = grid[1] - grid[0]
    minimum = minimize_scalar(apart, bounds=(start - width, start + width), method="bounded", options={"xatol": 1e-12})
    shift = float(minimum.x)
    slope = evaluated(1j * orders[:, None, None] * ahead, orders, places)
    steepness = 4.0 * float(np.sum(np.abs(slope) ** 2))
    if not steepness:
        raise ValueError(
            "record: the slice flown both ways reads zero everywhere, so that the lag of its places is not known: look at receiver, "
            "source and cable, and measure again"
        )
    noise = max(0.0, apart(shift)) / slope.size
    return Lag(float(np.rad2deg(shift)), float(np.rad2deg(np.sqrt(noise / (2.0 * steepness)))))


def flown_both_ways(record: xr.Dataset) -> tuple[FlownSlice, FlownSlice]:
    """Return the slice that was flown both ways: with growing readout, and back.

    Raises
    ------
    ValueError
        If the record holds none.
    """
    one, two = (_line(record, rows) for rows in _both_ways(record))
    return (two, one) if one.direction < two.direction else (one, two)


def _both_ways(record: xr.Dataset) -> tuple[IntArray, IntArray]:
    """Return the points of the slice flown both ways: two turn slices, or one and its scan."""
    role, lines = record["role"].values, record["line_index"].values
    numbers = np.unique(lines[role == ROLES.index(Role.TURN)])
    rows = [np.flatnonzero(lines == number) for number in numbers]
    if len(rows) == 1:
        alike = (role == ROLES.index(Role.SCAN)) & (record["pass_index"].values == 0)
        alike &= record["slice_index"].values == record["slice_index"].values[rows[0][0]]
        if alike.any():
            rows.append(np.flatnonzero(alike))
    if len(rows) != 2:
        raise ValueError(f"record: {len(rows)} complete turn slices, needs 2: one slice flown both ways (slices)")
    return rows[0], rows[1]


def _line(record: xr.Dataset, rows: IntArray) -> FlownSlice:
    rate = record["rate_deg_s"].values[rows]
    axis = int(np.argmax(np.abs(rate).max(axis=0)))
    speed = float(np.median(rate[:, axis]))
    wanted = np.deg2rad(record["commanded_deg"].values[rows, axis])
    step = float(np.median(np.abs(np.diff(wanted)))) if rows.size > 1 else 2.0 * np.pi
    full = round(2.0 * np.pi / step)
    # More orders than the device and its surroundings have would only follow the noise.
    highest = min((full - 1) // 2, int(record.attrs["order"]) + MORE_ORDERS)
    return FlownSlice(
        np.deg2rad(record["readback_deg"].values[rows, axis]),
        np.deg2rad(ways_deg(record.attrs, record.sizes["frequency"], speed)),
        wanted,
        record["trace"].values[rows],
        float(np.sign(speed)),
        highest,
    )


def _complete(record: xr.Dataset, rows: np.ndarray) -> bool:
    """Tell whether a slice holds all its points: a full turn, or both sides as far as the grid reaches."""
    count = int(rows.sum())
    if holds_cuts(record.attrs):
        numbers = record["line_index"].values
        own = record["slice_index"].values == record["slice_index"].values[np.flatnonzero(rows)[0]]
        # All lines of a cut are alike, and the cut that was flown both ways is a whole one.
        return count == max(int(np.sum(numbers == number)) for number in np.unique(numbers[own & (numbers >= 0)]))
    grid = grid_of(record)
    full = round(360.0 / grid.swept_step_deg)
    # Azimuth/elevation positioners fly full turns whatever part of the sphere is wanted.
    return count == full or (not grid.whole and count == 2 * round(grid.reach_deg / grid.swept_step_deg) + 1)
