"""A record: what was measured, as it was measured. Any path, any grid, missing points allowed."""

from __future__ import annotations

import json
from collections.abc import Mapping
from enum import IntFlag
from typing import TYPE_CHECKING, Any

import numpy as np

from colure.geometry.conventions import ComplexArray, FloatArray, IntArray
from colure.model.plan import ROLES, Plan, Role, ScanGrid

if TYPE_CHECKING:
    import xarray as xr


#: What a record keeps of the distances at which its scan was repeated.
DISTANCES = ("distance_steps_mm", "distance_moves", "distance_expanded_mm", "points_per_distance")


class Flag(IntFlag):
    """What the receiver complained about, or the recipe; a flagged point is never taken for a clean one."""

    OVERLOAD = 1
    UNLEVELLED = 2
    UNLOCKED = 4
    OTHER = 8
    UNDECIDED = 16


def build_record(
    plan: Plan,
    *,
    plan_index: IntArray,
    role: IntArray,
    state_index: IntArray,
    trace: ComplexArray,
    commanded_deg: FloatArray,
    readback_deg: FloatArray,
    rate_deg_s: FloatArray,
    time_s: FloatArray,
    wall_time: FloatArray,
    monotonic_s: FloatArray,
    flags: IntArray,
    sensors: tuple[str, ...] = (),
    conditions: FloatArray | None = None,
) -> xr.Dataset:
    """Assemble a record.

    Parameters
    ----------
    plan_index
        (point,) which point of the plan this is.
    state_index
        (point,) device state, -1 if the device has none.
    trace
        (point, frequency, port) complex wave ratio; of a power-only receiver the square root
        of the power in milliwatts, without phase.
    commanded_deg, readback_deg, rate_deg_s
        (point, axis) readouts in degrees at the start of the sweep, and how fast they change
        during it (0 for step and settle): frequency i of n is read (i + 1/2) / n of the
        attribute `trace_s` later; over segments every frequency takes its own 1 / IF bandwidth of it. With the attribute
        `point_step_deg` every frequency was started by a pulse of its own, so far from the one before.
    time_s, wall_time, monotonic_s
        (point,) instrument clock in seconds (it goes on over restarts and midnights), seconds since 1970, the computer's
        monotonic clock.
    flags
        (point,) bits of `Flag`: what the analyzer complained about during the sweep.
    On a mount with joints the positions come as the joints' readouts and leave as coordinates; `joint_commanded` and
    `joint_readback` (point, joint) keep the readouts, and sweeps of a probe half a turn round change their sign.

    sensors, conditions
        Quantities, their unit at the end of the name, and (point, sensor) what they were; `nan` where a sensor was lost.
    """
    import xarray as xr

    names, shown = plan.axes, None
    if plan.coordinates_deg is not None:
        from colure.model.joint_record import in_coordinates

        shown = (commanded_deg, readback_deg)
        coordinates = in_coordinates(
            plan, plan_index=plan_index, role=role, commanded_deg=commanded_deg, readback_deg=readback_deg
        )
        names, commanded_deg, readback_deg = plan.in_coordinates[0], coordinates.commanded_deg, coordinates.readback_deg
        # A probe turned by half a turn reads the same with the other sign; the record says what the coordinates would show.
        trace = np.where(coordinates.turned[:, None, None], -trace, trace)
        rate_deg_s = np.zeros_like(commanded_deg)

    def of_plan(column: IntArray) -> IntArray:
        return np.where(plan_index < 0, -1, column[plan_index])

    dataset = xr.Dataset(
        {
            "trace": (("point", "frequency", "port"), trace, {"units": "1", "long_name": "received wave ratio"}),
            "commanded_deg": (("point", "axis"), commanded_deg, {"units": "deg"}),
            "readback_deg": (("point", "axis"), readback_deg, {"units": "deg"}),
            "rate_deg_s": (("point", "axis"), rate_deg_s, {"units": "deg s-1"}),
            "time_s": (("point",), time_s, {"units": "s"}),
            "wall_time": (("point",), wall_time, {"units": "s", "long_name": "seconds since 1970-01-01 UTC"}),
            "monotonic_s": (("point",), monotonic_s, {"units": "s"}),
            "role": (("point",), role, {"meaning": ", ".join(f"{i} {r.value}" for i, r in enumerate(ROLES))}),
            "plan_index": (("point",), plan_index),
            "slice_index": (("point",), of_plan(plan.slice_index)),
            "pass_index": (("point",), of_plan(plan.pass_index)),
            "line_index": (("point",), of_plan(plan.line_index)),
            "state_index": (("point",), state_index, {"meaning": ", ".join(plan.states) or "no states"}),
            "flags": (("point",), flags, {"meaning": ", ".join(f"{f.value} {str(f.name).lower()}" for f in Flag)}),
        },
        coords={
            "frequency": ("frequency", plan.frequency_hz, {"units": "Hz"}),
            "port": ("port", np.asarray(plan.ports)),
            "axis": ("axis", np.asarray(names)),
        },
        attrs={
            "title": "Colure record",
            "plan_hash": plan.hash,
            "scheme": plan.scheme,
            "order": plan.order,
            "step_deg": plan.step_deg,
            "swept_step_deg": plan.grid.swept_step_deg,
            "reach_deg": plan.grid.reach_deg,
            "region_deg": float(plan.settings.get("region_deg", 180.0)),
            "style": plan.settings.get("style", "step"),
            "trace_s": float(plan.settings.get("trace_s", 0.0)),
            "states": ",".join(plan.states),
            **{
                name: str(plan.settings[name])
                for name in ("form", "scan_json", "reference_method", "offsets_deg")
                if name in plan.settings
            },
            **(
                {"distance_steps": json.dumps({name: plan.settings[name] for name in DISTANCES})}
                if "distance_steps_mm" in plan.settings
                else {}
            ),
            **({"segments": json.dumps(plan.settings["segments"])} if "segments" in plan.settings else {}),
            **{
                name: float(plan.settings[name])
                for name in ("power_dbm", "if_bandwidth_hz", "averages", "point_step_deg")
                if name in plan.settings
            },
        },
    )
    if shown is not None:
        for name, values in zip(("joint_commanded", "joint_readback"), shown, strict=True):
            dataset[name] = (("point", "joint"), values, {"units": "deg, or mm of a prismatic joint"})
        dataset["half_turned"] = (
            "point",
            coordinates.turned,
            {"long_name": "sweep stored with the other sign: probe half a turn round"},
        )
        dataset = dataset.assign_coords(joint=("joint", np.asarray(plan.axes)))
    if conditions is not None and sensors:
        dataset["conditions"] = (
            ("point", "sensor"), conditions, {"long_name": "what the sensors said; nan: lost"},
        )  # fmt: skip
        dataset = dataset.assign_coords(sensor=("sensor", np.asarray(sensors)))
    return dataset


def names_of_states(attribute: str) -> list[str]:
    """Return the names of the device states in a record's attribute `states`; empty if the device has one."""
    return [name for name in attribute.split(",") if name]


def holds_cuts(record_attrs: Mapping[Any, Any]) -> bool:
    """Tell whether a record holds the operator's own directions instead of a sphere's grid."""
    return str(record_attrs.get("form", "sphere")) == "directions"


def offsets_of(record: xr.Dataset) -> FloatArray | None:
    """Return the polarization offsets of a grid's passes in degrees; None if nobody set them."""
    told = str(record.attrs.get("offsets_deg", ""))
    return np.array([float(word) for word in told.split(",")]) if told else None


def of_state(record: xr.Dataset, state: int) -> xr.Dataset:
    """Return the scan points of one device state together with everything that belongs to no state."""
    own = record["state_index"].values
    return record.isel(point=np.flatnonzero((own == state) | (own < 0)))


def of_role(record: xr.Dataset, *roles: Role) -> xr.Dataset:
    """Return the points of a record that have one of the roles, in measured order."""
    codes = [ROLES.index(role) for role in roles]
    return record.isel(point=np.flatnonzero(np.isin(record["role"].values, codes)))


def grid_of(record: xr.Dataset) -> ScanGrid:
    """Return where a record's scan looked; records older than these attributes cover the whole sphere."""
    step = float(record.attrs["step_deg"])
    return ScanGrid(
        step_deg=step,
        swept_step_deg=float(record.attrs.get("swept_step_deg", step)),
        reach_deg=float(record.attrs.get("reach_deg", 180.0)),
    )
