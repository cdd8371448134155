"""Records larger than the memory: opened without being read, and read piece by piece; netCDF-4 or Zarr, here or at any URL.

A record in the order of time holds the points of one state all over the file. `lay_out` writes it anew as Zarr with every state's
points together, so that a worker reads what it needs and nothing else.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from contextlib import ExitStack, contextmanager
from pathlib import Path
from typing import TYPE_CHECKING, Any

import numpy as np

from colure.errors import InputError
from colure.geometry.conventions import ComplexArray, IntArray
from colure.model.admission import require_bounded, require_readable_apart
from colure.model.files import ENGINE, carries_checksum
from colure.model.loading import require_library

if TYPE_CHECKING:
    import xarray as xr

#: Bytes that one reading takes at most, beside its result.
WINDOW_BYTES = 64 << 20
#: Bytes of one Zarr chunk, about: large enough for a network, small enough for a worker.
CHUNK_BYTES = 8 << 20


@contextmanager
def open_lazily(url: str) -> Iterator[xr.Dataset]:
    """Open a record (a path, or a URL that fsspec knows) without reading its traces; all other variables are read.

    Raises
    ------
    InputError
        If it cannot be opened, is no record, or a library for it is missing.
    """
    with ExitStack() as stack:
        try:
            dataset = _entered(url, stack)
        except InputError:
            raise
        except (OSError, ValueError, KeyError, RuntimeError) as error:
            raise InputError([f"{url}: cannot be read: {error}"]) from None
        # What fails from here on, while it is open, is no fault of the file.
        if "trace" not in dataset or "point" not in dataset["trace"].dims:
            raise InputError([f"{url}: holds no variable 'trace' over points: it is no record"])
        rest = {name: dataset[name].load() for name in dataset.variables if name != "trace"}
        whole = dataset.assign({name: value for name, value in rest.items() if name not in dataset.coords})
        if "axis_names" in whole.attrs:
            names = np.array(str(whole.attrs.pop("axis_names")).split(","))
            whole = whole.assign_coords(axis=("axis", names))
        yield whole


def _entered(url: str, stack: ExitStack) -> xr.Dataset:
    import xarray as xr

    opened: xr.Dataset
    if url.rstrip("/").endswith(".zarr"):
        require_library("zarr", "cluster")
        opened = xr.open_zarr(url, chunks=None, consolidated=False)
    elif "://" in url:
        source = stack.enter_context(require_library("fsspec", "cluster").open(url, "rb"))
        opened = xr.open_dataset(source, engine=ENGINE, chunks=None)
    else:
        if carries_checksum(Path(url)):
            require_bounded(Path(url), in_memory=False)
        else:
            require_readable_apart(Path(url), in_memory=False)
        opened = xr.open_dataset(url, engine=ENGINE, chunks=None)
    return stack.enter_context(opened)


def rows_of_state(record: xr.Dataset, state: int | None) -> IntArray:
    """Return the rows of one device state and of everything that belongs to none, in the order they were measured."""
    own = record["state_index"].values
    rows = np.arange(own.size) if state is None else np.flatnonzero((own == state) | (own < 0))
    if "measured_row" not in record:
        return rows
    return np.asarray(rows[np.argsort(record["measured_row"].values[rows], kind="stable")])


def read_rows(record: xr.Dataset, rows: IntArray, frequencies: slice | IntArray) -> xr.Dataset:
    """Return some rows of a lazy record at some of its frequencies, in memory, rows in the order asked for.

    Reads windows of at most `WINDOW_BYTES`, each of them only if it holds a row that is wanted.
    """
    narrow = record["trace"].isel(frequency=frequencies)
    trace: ComplexArray = np.empty((rows.size, *narrow.shape[1:]), narrow.dtype)
    per_row = max(1, int(np.prod(narrow.shape[1:])) * narrow.dtype.itemsize)
    most = max(1, WINDOW_BYTES // per_row)
    order = np.argsort(rows, kind="stable")
    wanted = rows[order]
    completed = 0
    while completed < wanted.size:
        begin = int(wanted[completed])
        last = int(np.searchsorted(wanted, begin + most))
        end = int(wanted[last - 1]) + 1
        window = narrow.isel(point=slice(begin, end)).values
        trace[order[completed:last]] = window[wanted[completed:last] - begin]
        completed = last
    rest = record.drop_vars("trace").isel(point=rows, frequency=frequencies)
    return rest.assign(trace=(record["trace"].dims, trace, record["trace"].attrs)).drop_vars(
        "measured_row", errors="ignore"
    )


def lay_out(record: xr.Dataset, target: str, *, told: Callable[[float], None] | None = None) -> None:
    """Write a lazy record as Zarr with every state's points together; the memory holds a few chunks at a time.

    Parameters
    ----------
    target
        Path or URL that ends in .zarr; it must not exist.
    told
        Called with the share that is done.

    Raises
    ------
    InputError
        If the target exists, its name does not end in .zarr, or Zarr is not installed.
    """
    if not target.rstrip("/").endswith(".zarr"):
        raise InputError([f"{target}: must end in .zarr"])
    require_library("zarr", "cluster")  # xarray writes with it
    system, path = require_library("fsspec", "cluster").url_to_fs(target)
    if system.exists(path):
        raise InputError([f"{target}: exists already; choose another name or remove it first"])
    order = np.argsort(record["state_index"].values, kind="stable")
    points, count, ports = record["trace"].shape
    size = record["trace"].dtype.itemsize * ports
    # One state's points or fewer in a chunk, and as many frequencies as fit.
    states = np.unique(record["state_index"].values)
    together = max(1, min(points // max(1, states.size), CHUNK_BYTES // size))
    some = int(np.clip(CHUNK_BYTES // (size * together), 1, count))
    moved = record.drop_vars("trace").isel(point=order).assign(measured_row=("point", order))
    # Zarr has no agreed form for arrays of text yet.
    moved = moved.drop_vars("axis").assign_attrs(
        laid_out="by state", axis_names=",".join(str(name) for name in record["axis"].values)
    )
    moved.to_zarr(target, mode="w-", consolidated=False, zarr_format=3)
    _make_trace(target, record, (together, some, ports))
    at_once = max(some, int(4 * WINDOW_BYTES // (size * points)) // some * some)
    for begin in range(0, count, at_once):
        part = slice(begin, min(begin + at_once, count))
        write_part(target, "trace", (slice(None), part), read_rows(record, order, part)["trace"].values)
        if told is not None:
            told(part.stop / count)


def _make_trace(target: str, record: xr.Dataset, chunks: tuple[int, int, int]) -> None:
    import zarr

    group = zarr.open_group(target, mode="r+")
    trace = record["trace"]
    made = group.create_array(
        "trace",
        shape=trace.shape,
        chunks=chunks,
        dtype=trace.dtype,
        compressors=None,
        dimension_names=[str(dim) for dim in trace.dims],
    )
    made.attrs.update({name: value for name, value in trace.attrs.items() if isinstance(value, (str, int, float))})


def write_part(target: str, name: str, where: tuple[int | slice, ...], values: Any) -> None:
    """Write a part of an array of a Zarr store."""
    import zarr

    array: Any = zarr.open_group(target, mode="r+")[name]
    array[where] = values


def read_array(target: str, name: str) -> Any:
    """Return an array of a Zarr store, all of it."""
    import zarr

    array: Any = zarr.open_group(target, mode="r")[name]
    return np.asarray(array[...])
