"""Which slices of a scan a finding speaks of, by the numbers of its plan: what `colure acquire --again` takes."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import TYPE_CHECKING

import numpy as np

from colure.geometry.conventions import FloatArray, IntArray
from colure.geometry.kinematics import Geometry
from colure.model.plan import Role
from colure.model.record import of_role

if TYPE_CHECKING:
    import xarray as xr

    from colure.model.chamber import Chamber

#: Slices that are this much farther than the nearest one, in degrees, hold the direction as well.
AS_NEAR_DEG = 0.01


def slices_through(
    record: xr.Dataset, chamber: Chamber, directions_deg: Sequence[tuple[float, float]]
) -> tuple[int, ...]:
    """Return the numbers of the slices that hold directions (theta, phi) of the geometry's polar frame, degrees.

    Between two slices stands what was worked out from both.
    """
    scan, geometry = of_role(record, Role.SCAN), chamber.positioner.geometry
    name = geometry.axis_names[0 if geometry is Geometry.ELEVATION_OVER_AZIMUTH else 1]
    shown = scan["commanded_deg"].values[:, list(scan["axis"].values).index(name)]
    angle, number = chamber.axis_table[name].map.angle_deg(shown), scan["slice_index"].values
    out: set[int] = set()
    for theta, phi in directions_deg:
        if geometry is Geometry.ROLL_OVER_AZIMUTH:
            off: FloatArray = np.abs((angle - phi + 90.0) % 180.0 - 90.0)
        else:
            off = np.abs(angle - (90.0 - theta))
        out |= set(number[off <= off.min() + AS_NEAR_DEG].tolist())
    return tuple(sorted(out))


def slices_within(record: xr.Dataset, after_s: float, before_s: float) -> tuple[int, ...]:
    """Return the numbers of the slices of which something was measured between two moments."""
    scan = of_role(record, Role.SCAN)
    moments, number = scan["time_s"].values, scan["slice_index"].values
    inside: IntArray = number[(moments > after_s) & (moments < before_s)]
    return tuple(sorted(set(inside.tolist())))


def as_ranges(slices: Iterable[int]) -> str:
    """Return numbers as the option takes them: neighbours as a range."""
    runs: list[list[int]] = []
    for one in sorted(slices):
        if runs and one == runs[-1][-1] + 1:
            runs[-1].append(one)
        else:
            runs.append([one])
    return ",".join(f"{run[0]}" if len(run) == 1 else f"{run[0]}-{run[-1]}" for run in runs)
