"""A record: what was measured, as it was measured. Any path, any grid, missing points allowed."""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np

from colure.geometry.conventions import ComplexArray, FloatArray, IntArray
from colure.model.plan import ROLES, Plan, Role

if TYPE_CHECKING:
    import xarray as xr


def build_record(
    plan: Plan,
    *,
    plan_index: IntArray,
    role: IntArray,
    trace: ComplexArray,
    commanded_deg: FloatArray,
    readback_deg: FloatArray,
    time_s: FloatArray,
    wall_time: FloatArray,
    flags: IntArray,
) -> xr.Dataset:
    """Assemble a record.

    Parameters
    ----------
    plan_index
        (point,) which point of the plan this is.
    trace
        (point, frequency, port) complex wave ratio.
    commanded_deg, readback_deg
        (point, axis) readouts in degrees.
    time_s, wall_time
        (point,) instrument clock in seconds, and seconds since 1970.
    """
    import xarray as xr

    dataset = xr.Dataset(
        {
            "trace": (("point", "frequency", "port"), trace, {"units": "1", "long_name": "received wave ratio"}),
            "commanded_deg": (("point", "axis"), commanded_deg, {"units": "deg"}),
            "readback_deg": (("point", "axis"), readback_deg, {"units": "deg"}),
            "time_s": (("point",), time_s, {"units": "s"}),
            "wall_time": (("point",), wall_time, {"units": "s", "long_name": "seconds since 1970-01-01 UTC"}),
            "role": (("point",), role, {"meaning": ", ".join(f"{i} {r.value}" for i, r in enumerate(ROLES))}),
            "plan_index": (("point",), plan_index),
            "slice_index": (("point",), np.where(plan_index < 0, -1, plan.slice_index[plan_index])),
            "pass_index": (("point",), np.where(plan_index < 0, -1, plan.pass_index[plan_index])),
            "flags": (("point",), flags),
        },
        coords={
            "frequency": ("frequency", plan.frequency_hz, {"units": "Hz"}),
            "port": ("port", np.asarray(plan.ports)),
            "axis": ("axis", np.asarray(plan.axes)),
        },
        attrs={"title": "Colure record", "plan_hash": plan.hash, "scheme": plan.scheme, "order": plan.order},
    )
    return dataset


def of_role(record: xr.Dataset, *roles: Role) -> xr.Dataset:
    """Return the points of a record that have one of the roles, in measured order."""
    codes = [ROLES.index(role) for role in roles]
    return record.isel(point=np.flatnonzero(np.isin(record["role"].values, codes)))
