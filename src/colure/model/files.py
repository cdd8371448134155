"""Records and patterns on disk: one netCDF-4 file each, with their whole history."""

from __future__ import annotations

import hashlib
import json
import os
import uuid
from pathlib import Path
from typing import TYPE_CHECKING, Any

from colure.model.loading import InputError

if TYPE_CHECKING:
    import xarray as xr

ENGINE = "h5netcdf"


def save_dataset(dataset: xr.Dataset, path: Path) -> None:
    """Write a dataset through a temporary file, fsync and atomic replace.

    Raises
    ------
    OSError
        If the folder cannot be written; an existing file is then left untouched.
    """
    path = Path(path)
    temporary = path.with_name(f".{path.name}.{os.getpid()}.{uuid.uuid4().hex[:8]}.part")
    try:
        dataset.to_netcdf(temporary, engine="h5netcdf")
        with temporary.open("rb+") as written:
            os.fsync(written.fileno())
        temporary.replace(path)
    finally:
        temporary.unlink(missing_ok=True)
    sync_folder(path.parent)


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
        If the file is missing or is not netCDF-4.
    """
    import xarray as xr

    try:
        with xr.open_dataset(path, engine=ENGINE) as dataset:
            return dataset.load()
    except (OSError, ValueError, KeyError) as error:
        raise InputError([f"{Path(path).name}: cannot be read as netCDF-4: {error}"]) from None


def attribute_of(path: Path, name: str, default: str) -> str:
    """Return a text attribute of a dataset file without reading anything else; `default` if it has no such one.

    Raises
    ------
    InputError
        If the file is missing or is not netCDF-4.
    """
    import h5py

    try:
        with h5py.File(path, "r") as file:
            found = file.attrs.get(name, default)
    except (OSError, ValueError, KeyError) as error:
        raise InputError([f"{Path(path).name}: cannot be read as netCDF-4: {error}"]) from None
    return found.decode() if isinstance(found, bytes) else str(found)


def file_hash(path: Path) -> str:
    """Return the SHA-256 of a file."""
    digest = hashlib.sha256()
    with Path(path).open("rb") as source:
        while block := source.read(1 << 20):
            digest.update(block)
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
