"""What a file of fields must look like before anything is worked out from it: variables, dimensions, types, sizes."""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np

from colure.errors import InputError
from colure.geometry.conventions import order_of_count

if TYPE_CHECKING:
    import xarray as xr

FIELDS, ANGLES = ("e_theta", "e_phi"), ("theta", "phi")
GRID, SCATTERED = ("frequency", "theta", "phi"), ("frequency", "direction")
ERRORS = ("frequency", "draw", "kind", "mode")
#: Possible errors of a field as waves, and the part of them by places.
ERROR_WAVES = ("error_waves", "position_waves")
#: No antenna has a higher frequency, Hz; beyond it squares overflow in the end.
MOST_HZ = 1e15
#: Fields beyond these sizes cannot be squared in double precision.
LARGEST_FIELD, SMALLEST_FIELD = 1e100, 1e-100
LEAST_DRAWS = 2


def laid_out(dataset: xr.Dataset, source: str) -> xr.Dataset:
    """Return fields with their dimensions in order and frequencies rising; a lone frequency becomes a dimension.

    Raises
    ------
    InputError
        Naming file, variable, what it is and what it must be.
    """
    missing = [name for name in (*FIELDS, "frequency", *ANGLES) if name not in dataset.variables]
    if missing:
        raise InputError(
            [f"{source}: {', '.join(missing)}: missing; needs fields e_theta, e_phi over frequency and angles"]
        )
    if "frequency" in dataset.coords and dataset["frequency"].ndim == 0:
        dataset = dataset.expand_dims("frequency")
    grid = {"theta", "phi"} <= set(dataset.sizes)
    wanted = GRID if grid else SCATTERED
    faults = [
        *_types(dataset), *_shapes(dataset, wanted, {"theta": ("theta",), "phi": ("phi",)} if grid else dict.fromkeys(ANGLES, wanted)),
    ]  # fmt: skip
    if not faults:
        faults = [*_values(dataset), *_support(dataset), *_errors(dataset)]
    if faults:
        raise InputError([f"{source}: {fault}" for fault in faults[:20]])
    dataset = dataset.sortby("frequency").transpose(*wanted, ...)
    return dataset.assign({name: dataset[name].transpose(*ERRORS) for name in ERROR_WAVES if name in dataset})


def _types(dataset: xr.Dataset) -> list[str]:
    faults = [
        f"{name}: holds {dataset[name].dtype} values, must be complex (amplitude and phase)"
        for name in FIELDS
        if dataset[name].dtype.kind != "c"
    ]
    return faults + [
        f"{name}: holds {dataset[name].dtype} values, must be numbers ({'Hz' if name == 'frequency' else 'deg'})"
        for name in ("frequency", *ANGLES)
        if dataset[name].dtype.kind not in "fiu"
    ]


def _shapes(dataset: xr.Dataset, wanted: tuple[str, ...], angles: dict[str, tuple[str, ...]]) -> list[str]:
    faults = []
    for name, dims in {**dict.fromkeys(FIELDS, wanted), "frequency": ("frequency",), **angles}.items():
        own = dataset[name].dims
        if set(own) != set(dims):
            faults.append(f"{name}: over ({', '.join(map(str, own))}), must be over ({', '.join(dims)})")
    return faults + [f"{name}: 0 values, must be at least 1" for name in wanted if dataset.sizes.get(name) == 0]


def _values(dataset: xr.Dataset) -> list[str]:
    faults = []
    for name in ("frequency", *ANGLES):
        values = np.asarray(dataset[name].values, float)
        if not np.isfinite(values).all():
            faults.append(f"{name}: holds {values[~np.isfinite(values)][0]:g}, must be finite numbers")
    frequency = np.sort(np.asarray(dataset["frequency"].values, float))
    if frequency[0] <= 0.0:
        faults.append(f"frequency: {frequency[0]:g}: must be above 0 Hz")
    if frequency[-1] > MOST_HZ:
        faults.append(f"frequency: {frequency[-1]:g}: must be at most {MOST_HZ:g} Hz, which is light already")
    twice = np.flatnonzero(np.diff(frequency) == 0.0)
    if twice.size:
        faults.append(f"frequency: {frequency[twice[0]]:g} Hz is given twice; must be distinct (Hz)")
    for name in FIELDS:
        size = np.abs(dataset[name].values)
        known = np.nan_to_num(size, nan=0.0, posinf=np.inf)
        if known.max() > LARGEST_FIELD:
            faults.append(f"{name}: reaches {known.max():g}, must be at most {LARGEST_FIELD:g}; nan says not measured")
    radius = dataset.attrs.get("radius_m")
    if radius is not None and not (isinstance(radius, int | float | np.number) and np.isfinite(radius) and radius > 0):
        faults.append(f"radius_m: {radius!r}: must be a number above 0 (m)")
    return faults


def _support(dataset: xr.Dataset) -> list[str]:
    if "support" not in dataset:
        return []
    own = set(dataset["support"].dims)
    if own not in ({"theta", "phi"}, set(GRID)):
        return [
            f"support: over ({', '.join(map(str, dataset['support'].dims))}), must be over theta, phi and may be over frequency"
        ]
    values = dataset["support"].values
    if values.dtype.kind not in "fiub" or not np.isfinite(values.astype(float)).all():
        return ["support: must be numbers, 1 where the direction is determined and 0 elsewhere"]
    return []


def _errors(dataset: xr.Dataset) -> list[str]:
    faults = [fault for name in ERROR_WAVES if name in dataset for fault in _waves_faults(dataset[name], name)]
    if not faults and "position_waves" in dataset:
        whole = dataset["error_waves"].sizes if "error_waves" in dataset else None
        if whole is None or dict(dataset["position_waves"].sizes) != dict(whole):
            faults.append("position_waves: must be part of error_waves, draw by draw and mode by mode")
    return faults


def _waves_faults(waves: xr.DataArray, name: str) -> list[str]:
    if set(waves.dims) != set(ERRORS):
        return [f"{name}: over ({', '.join(map(str, waves.dims))}), must be over ({', '.join(ERRORS)})"]
    modes = waves.sizes["mode"]
    if (
        waves.sizes["kind"] != 2
        or waves.sizes["draw"] < LEAST_DRAWS
        or modes < 3
        or round((modes + 1) ** 0.5) ** 2 != modes + 1
    ):
        return [f"{name}: {dict(waves.sizes)}: needs 2 kinds, at least {LEAST_DRAWS} draws, and n(n+2) modes"]
    assert order_of_count(modes) >= 1
    if waves.dtype.kind != "c" or not np.isfinite(waves.values).all() or np.abs(waves.values).max() > LARGEST_FIELD:
        return [f"{name}: must be finite complex numbers"]
    return []
