"""Records and patterns on disk: one netCDF-4 file each, with their whole history."""

from __future__ import annotations

import errno
import hashlib
import io
import json
import os
import shutil
import threading
from pathlib import Path
from typing import TYPE_CHECKING, Any, BinaryIO, Final

from colure.errors import InputError
from colure.model.admission import require_bounded, require_readable_apart, require_regular
from colure.model.whole import replacing

if TYPE_CHECKING:
    import xarray as xr

ENGINE: Final = "h5netcdf"
#: Behind the last byte that the format knows of stands the SHA-256 of everything before it; the attribute says that it must.
CHECKSUM, MARK = "file_checksum", b"\ncolure-file-sha256:"
TRAILER_BYTES = len(MARK) + 64 + 1
BLOCK_BYTES = 1 << 22
#: Up to this size a file is made in memory first.
LARGEST_IMAGE_BYTES = 1 << 28
#: A report opens one record five times, and the library for the format takes 50 ms each time: what was read last is kept by its
#: checksum, which is verified every time. So many files, each up to this size, copies for whoever asks.
MOST_KEPT, LARGEST_KEPT_BYTES = 4, 16 << 20
_READ: dict[str, xr.Dataset] = {}
_READ_LOCK = threading.Lock()
REMEDY = "a record is made anew from the run's journal by colure acquire FOLDER --run NAME --rebuild, a pattern by processing again"


def save_dataset(dataset: xr.Dataset, path: Path) -> None:
    """Write a dataset with its own checksum through a temporary file, fsync and atomic replace.

    Raises
    ------
    OSError
        If the folder cannot be written; an existing file is then left untouched.
    """
    path = Path(path)
    with replacing(path) as temporary:
        marked: Any = dataset.drop_attrs(deep=False).assign_attrs(
            _own_attrs(dataset) | {CHECKSUM: "sha256, behind the data"}
        )
        if marked.chunks or marked.nbytes > LARGEST_IMAGE_BYTES:
            _require_room(marked.nbytes, path.parent)
            _write(marked, temporary)
            _add_checksum(temporary)
            with temporary.open("rb+") as written:
                os.fsync(written.fileno())
        else:
            _write_image(marked, temporary)
    sync_folder(path.parent)


def _require_room(needed_bytes: int, folder: Path) -> None:
    """Raise `OSError` if a disk has less free: the library for the format may crash where a disk fills under it."""
    free = shutil.disk_usage(folder).free
    if free < needed_bytes:
        words = f"{os.strerror(errno.ENOSPC)} ({free / 1e6:.0f} MB free, up to {needed_bytes / 1e6:.0f} MB needed)"
        raise OSError(errno.ENOSPC, words, str(folder))


def _write_image(dataset: xr.Dataset, path: Path) -> None:
    """Make the file in memory and put it on the disk by ourselves: a full disk is then an error, and no crash of the library."""
    image = io.BytesIO()
    _write(dataset, image)
    data = image.getbuffer()
    with path.open("xb") as file:
        file.write(data)
        file.write(MARK + hashlib.sha256(data).hexdigest().encode("ascii") + b"\n")
        file.flush()
        os.fsync(file.fileno())


def _write(dataset: xr.Dataset, path: Path | io.BytesIO) -> None:
    """Write netCDF-4; of an array in memory nobody asks the cluster's scheduler, whose import takes half a second."""
    from xarray.backends import H5NetCDFStore
    from xarray.backends.locks import HDF5_LOCK

    if dataset.chunks:
        dataset.to_netcdf(path, engine=ENGINE)
        return
    store = H5NetCDFStore.open(path, mode="w", lock=HDF5_LOCK)
    try:
        dataset.dump_to_store(store)
    finally:
        store.close()


def _own_attrs(dataset: xr.Dataset) -> dict[Any, Any]:
    return {name: value for name, value in dataset.attrs.items() if name != CHECKSUM}


def _add_checksum(path: Path) -> None:
    """Append the SHA-256 of a file to it: readers of the format do not look behind its end."""
    digest = file_hash(path)
    with path.open("ab") as file:
        file.write(MARK + digest.encode("ascii") + b"\n")


def require_unchanged(path: Path) -> bool:
    """Compare a file with the checksum it carries; False if it carries none (others' files).

    Raises
    ------
    InputError
        If any bit of it has changed since it was written, or it cannot be read.
    """
    return bool(_verified(path))


def _verified(path: Path) -> str:
    """Return the checksum that a file carries and fits; empty if it carries none. Raises as `require_unchanged` does."""
    path = Path(path)
    size = require_regular(path) - TRAILER_BYTES
    try:
        with path.open("rb") as file:
            file.seek(max(size, 0))
            trailer = file.read()
            if len(trailer) != TRAILER_BYTES or not trailer.startswith(MARK):
                return ""
            file.seek(0)
            digest = _digest(file, size)
    except OSError as error:
        raise InputError([f"{path.name}: cannot be read: {error.strerror}"]) from None
    if trailer != MARK + digest.encode("ascii") + b"\n":
        raise InputError([f"{path.name}: damaged: its content does not fit its own checksum (SHA-256); {REMEDY}"])
    return digest


def carries_checksum(path: Path) -> bool:
    """Tell whether a file ends like one of ours, without reading the rest; raises `InputError` if it cannot be read."""
    size = require_regular(path) - TRAILER_BYTES
    try:
        with Path(path).open("rb") as file:
            file.seek(max(size, 0))
            trailer = file.read(TRAILER_BYTES)
    except OSError as error:
        raise InputError([f"{Path(path).name}: cannot be read: {error.strerror}"]) from None
    return len(trailer) == TRAILER_BYTES and trailer.startswith(MARK)


def sync_folder(folder: Path) -> None:
    """Make a rename durable where the system allows a folder to be synced."""
    if os.name != "posix":
        return
    descriptor = os.open(folder, os.O_RDONLY)
    try:
        os.fsync(descriptor)
    finally:
        os.close(descriptor)


def open_dataset(path: Path) -> xr.Dataset:
    """Read a dataset into memory; complex values come back complex.

    Raises
    ------
    InputError
        If the file is missing, is not netCDF-4, was damaged since it was written, leads to other files, or declares more than
        it can hold (see `colure.model.admission`).
    """
    import xarray as xr

    # Before the library for the format sees it: a damaged file can make that hang or crash.
    checked = _verified(path)
    if (kept := _READ.get(checked)) is not None:
        return kept.copy(deep=True)
    if not checked:
        require_readable_apart(path, in_memory=True)
    try:
        if checked:
            require_bounded(path, in_memory=True)
        with xr.open_dataset(path, engine=ENGINE) as dataset:
            loaded = dataset.load()
    except (OSError, ValueError, KeyError, RuntimeError) as error:
        raise InputError([f"{Path(path).name}: cannot be read as netCDF-4: {error}"]) from None
    if CHECKSUM in loaded.attrs and not checked:
        raise InputError([f"{Path(path).name}: damaged: its checksum is gone; {REMEDY}"])
    own: xr.Dataset = loaded.drop_attrs(deep=False).assign_attrs(_own_attrs(loaded))
    if checked and own.nbytes <= LARGEST_KEPT_BYTES:
        _keep_read(checked, own.copy(deep=True))
    return own


def _keep_read(checksum: str, dataset: xr.Dataset) -> None:
    """Keep what a file of this checksum holds, instead of the file that was read first of those that are kept."""
    with _READ_LOCK:
        _READ[checksum] = dataset
        while len(_READ) > MOST_KEPT:
            del _READ[next(iter(_READ))]


def attribute_of(path: Path, name: str, default: str) -> str:
    """Return an attribute of a dataset file as text without reading anything else; `default` if it has no such one.

    Raises
    ------
    InputError
        If the file is missing or is not netCDF-4.
    """
    import h5py
    import numpy as np

    require_regular(path)
    try:
        with h5py.File(path, "r") as file:
            attribute = file.attrs.get(name, default)
    except (OSError, ValueError, KeyError) as error:
        raise InputError([f"{Path(path).name}: cannot be read as netCDF-4: {error}"]) from None
    if isinstance(attribute, np.ndarray) and attribute.size == 1:
        attribute = attribute.item()  # numbers are written as lists of one
    return attribute.decode() if isinstance(attribute, bytes) else str(attribute)


def file_hash(path: Path) -> str:
    """Return the SHA-256 of a file."""
    with Path(path).open("rb") as source:
        return _digest(source)


def _digest(source: BinaryIO, count: int | None = None) -> str:
    """Return the SHA-256 of the next `count` bytes; of all that come if None."""
    digest, left = hashlib.sha256(), count
    while block := source.read(BLOCK_BYTES if left is None else min(BLOCK_BYTES, left)):
        digest.update(block)
        left = None if left is None else left - len(block)
    return digest.hexdigest()


def history(dataset: xr.Dataset) -> list[dict[str, Any]]:
    """Return the recorded steps that led to a dataset, oldest first."""
    return list(json.loads(dataset.attrs.get("history_json", "[]")))


def cautions(history_json: str) -> list[str]:
    """Return what the steps of a history warn of, in plain words, oldest first."""
    steps = json.loads(history_json)
    return [f"{one['step']}: {one['parameters']['caution']}" for one in steps if one["parameters"].get("caution")]


def with_step(dataset: xr.Dataset, step: str, **parameters: Any) -> xr.Dataset:
    """Return the dataset with one more step in its history."""
    from colure import __version__

    steps = [*history(dataset), {"step": step, "version": __version__, "parameters": parameters}]
    return dataset.assign_attrs(history_json=json.dumps(steps))
