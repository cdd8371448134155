"""What the sensors said during a run: spans of every quantity, and how much of it was lost."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np

if TYPE_CHECKING:
    import xarray as xr

KELVIN_C = 273.15


@dataclass(frozen=True)
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
        out.append(ConditionSpan(str(name), low, high, float(1.0 - there.mean())))
    return out


def celsius(spans: list[ConditionSpan]) -> tuple[float, float] | None:
    """Return the least and most temperature that any sensor said, degrees Celsius; None if there is none."""
    offsets = {"temperature_c": 0.0, "temperature_k": -KELVIN_C}
    return _together([(one, offsets.get(one.name.split(".")[-1])) for one in spans])


def humidity_percent(spans: list[ConditionSpan]) -> tuple[float, float] | None:
    """Return the least and most relative humidity that any sensor said, percent; None if there is none."""
    return _together([(one, 0.0 if one.name.endswith(".humidity_percent") else None) for one in spans])


def _together(found: list[tuple[ConditionSpan, float | None]]) -> tuple[float, float] | None:
    ends = [
        (one.low + offset, one.high + offset) for one, offset in found if offset is not None and np.isfinite(one.low)
    ]
    return (min(low for low, _ in ends), max(high for _, high in ends)) if ends else None
