"""What the sensors said during a run: spans of every quantity, and how much of it was lost."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np

from colure.errors import InputError
from colure.geometry.conventions import FloatArray

if TYPE_CHECKING:
    import xarray as xr

KELVIN_C = 273.15
#: Quantities that are temperatures, and what turns them into degrees Celsius.
CELSIUS_LESS = {"temperature_c": 0.0, "temperature_k": -KELVIN_C}


@dataclass(frozen=True, kw_only=True)
class ConditionSpan:
    """Least and most of one quantity over a run's points, and the share of points at which it was lost.

    name
        Sensor and quantity, the unit at its end: `air.temperature_c`.
    low, high
        `nan` where every value was lost.
    """

    name: str
    low: float
    high: float
    lost: float


def spans_of(record: xr.Dataset) -> list[ConditionSpan]:
    """Return the span of every quantity of a record; none where no sensor was logged."""
    if "conditions" not in record:
        return []
    out = []
    for name, values in zip(record["sensor"].values, record["conditions"].values.T, strict=True):
        there = np.isfinite(values)
        low, high = (float(values[there].min()), float(values[there].max())) if there.any() else (np.nan, np.nan)
        out.append(ConditionSpan(name=str(name), low=low, high=high, lost=float(1.0 - there.mean())))
    return out


def celsius(spans: list[ConditionSpan]) -> tuple[float, float] | None:
    """Return the least and most temperature that any sensor said, degrees Celsius; None if there is none."""
    return _together([(one, CELSIUS_LESS.get(one.name.split(".")[-1])) for one in spans])


def kelvins(record: xr.Dataset, name: str = "") -> FloatArray:
    """Return what one sensor of temperature said at every point, kelvin; what was lost is read between its neighbours.

    name
        Sensor and quantity; empty: the only temperature of the record.

    Raises
    ------
    InputError
        If the record holds no such temperature, several and none is named, or none that was read.
    """
    known = {} if "conditions" not in record else {
        str(one): record["conditions"].values[:, k] for k, one in enumerate(record["sensor"].values)
        if str(one).split(".")[-1] in CELSIUS_LESS
    }  # fmt: skip
    chosen = [one for one in known if name in ("", one)]
    if len(chosen) != 1:
        there = ", ".join(known) or "none"
        raise InputError(
            [
                f"temperature.sensor = {name!r}: must be one temperature of the run's sensors, logged here: {there}; without one declare the "
                "swing instead: temperature.level_db, phase_deg, period_s, and level_db_per_k = phase_deg_per_k = 0"
            ]
        )
    values, moments = known[chosen[0]], record["time_s"].values
    there = np.isfinite(values)
    if not there.any():
        raise InputError(
            [
                f"temperature.sensor: {chosen[0]} was lost at every point of the run; declare the swing instead: level_db, period_s (dB)"
            ]
        )
    order = np.argsort(moments[there])
    return np.asarray(np.interp(moments, moments[there][order], values[there][order]))


def humidity_percent(spans: list[ConditionSpan]) -> tuple[float, float] | None:
    """Return the least and most relative humidity that any sensor said, percent; None if there is none."""
    return _together([(one, 0.0 if one.name.endswith(".humidity_percent") else None) for one in spans])


def _together(spans: list[tuple[ConditionSpan, float | None]]) -> tuple[float, float] | None:
    ends = [
        (one.low + offset, one.high + offset) for one, offset in spans if offset is not None and np.isfinite(one.low)
    ]
    return (min(low for low, _ in ends), max(high for _, high in ends)) if ends else None
