"""The states of a record place by place, and records of sums of states."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np

from colure.geometry.conventions import ComplexArray, FloatArray, IntArray
from colure.model.plan import ROLES, Role
from colure.values import holds_arrays

if TYPE_CHECKING:
    import xarray as xr

#: Share of the places at which the states must follow each other directly.
LEAST_TOGETHER = 0.9


@dataclass(frozen=True)
@holds_arrays
class StatePlaces:
    """Where every state was measured.

    rows (state, place)
        Rows of the record: the same place in every state.
    left_out
        Places that lack a state.
    """

    rows: IntArray
    left_out: int

    def sweeps(self, record: xr.Dataset) -> ComplexArray:
        """Return the sweeps as (state, place * frequency * port)."""
        trace = record["trace"].values[self.rows]
        return np.asarray(trace.reshape(len(self.rows), -1))


def places_of(record: xr.Dataset, states: int) -> StatePlaces:
    """Return where all states of a record were measured, in measured order.

    Raises
    ------
    ValueError
        If no place has all states, or they were not measured one after the other at each place: drift would come between them.
    """
    scan = np.flatnonzero(record["role"].values == ROLES.index(Role.SCAN))
    own = record["state_index"].values[scan]
    columns = [record[name].values[scan] for name in ("slice_index", "pass_index", "line_index")]
    key = np.column_stack([*columns, np.round(record["commanded_deg"].values[scan], 6)])
    _, place = np.unique(key, axis=0, return_inverse=True)
    place = _with_repeats(place.reshape(-1), own)
    table = np.full((states, int(place.max()) + 1 if place.size else 0), -1, np.int64)
    table[own, place] = np.arange(scan.size)
    whole = np.all(table >= 0, axis=0)
    if not whole.any():
        raise ValueError(f"record: no place was measured in all {states} states (states)")
    ranks = table[:, whole]
    together = np.mean(np.ptp(ranks, axis=0) == states - 1)
    if together < LEAST_TOGETHER:
        raise ValueError(
            "record: the states were not measured one after the other at each place, so drift came between them; "
            'measure with states.loop = "inner" (device.toml)'
        )
    return StatePlaces(scan[ranks[:, np.argsort(ranks.min(axis=0))]], int(np.count_nonzero(~whole)))


def _with_repeats(place: IntArray, state: IntArray) -> IntArray:
    """Return places of which each holds a state once: what a state repeats at a place becomes a place of its own."""
    order = np.lexsort((np.arange(place.size), state, place))
    new = np.diff(np.stack([place[order], state[order]]), prepend=-1).any(axis=0)
    start = np.maximum.accumulate(np.where(new, np.arange(place.size), 0))
    count = np.empty(place.size, np.int64)
    count[order] = np.arange(place.size) - start
    return np.asarray(place + count * (int(place.max(initial=0)) + 1))


def summed(record: xr.Dataset, places: StatePlaces, weights: ComplexArray, name: str) -> xr.Dataset:
    """Return the record of one sum of states: as if the device had one state, with its ties, reference and cable sweeps.

    weights (state,). The attribute `noise_factor` says how much noisier its sweeps are than one that was read.
    """
    rest = np.flatnonzero(record["state_index"].values < 0)
    first = places.rows[0]
    rows = np.concatenate([rest, first])
    order = np.argsort(rows, kind="stable")
    out = record.isel(point=rows[order])
    added = np.tensordot(weights, record["trace"].values[places.rows], axes=1)
    flags = np.bitwise_or.reduce(record["flags"].values[places.rows], axis=0)
    moments = {one: record[one].values[places.rows].mean(axis=0) for one in ("time_s", "wall_time", "monotonic_s")}

    def put(
        field: str, values: FloatArray | ComplexArray | IntArray
    ) -> tuple[tuple[str, ...], object, dict[str, object]]:
        old = record[field]
        whole = np.concatenate([old.values[rest], values])[order]
        return tuple(str(d) for d in old.dims), whole, dict(old.attrs)

    changed = {"trace": put("trace", added), "flags": put("flags", flags)}
    changed |= {one: put(one, values) for one, values in moments.items()}
    changed["state_index"] = put("state_index", np.full(first.size, -1))
    factor = float(np.linalg.norm(weights))
    return out.assign(changed).assign_attrs(states="", state=name, noise_factor=factor)


def rows_of(summed_record: xr.Dataset) -> IntArray:
    """Return the rows of the scan in a summed record, in the order of `StatePlaces`."""
    return np.flatnonzero(summed_record["role"].values == ROLES.index(Role.SCAN))
