"""Sampled fields: near fields on a sphere or scattered, and far fields, as one kind of dataset.

A grid has dims (frequency, theta, phi); scattered samples have dims (frequency, direction)
with `theta`, `phi` (degrees), `weight` and, for near fields, `radius_m` of the same dims.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np

from colure.geometry.conventions import ComplexArray, FloatArray
from colure.model.field_layout import laid_out
from colure.values import holds_arrays

if TYPE_CHECKING:
    import xarray as xr

NEAR, FAR = "near field", "far field"
#: Directions of a grid whose support is lower than this are not determined by what was measured.
LEAST_SUPPORT = 0.8
#: Angles closer than this are the same reading, degrees.
SAME_ANGLE_DEG = 1e-5


@dataclass(frozen=True)
@holds_arrays
class FieldSamples:
    """Samples of one frequency: angles in radians, field (2, count), radius None for far fields."""

    frequency_hz: float
    theta: FloatArray
    phi: FloatArray
    field: ComplexArray
    radius_m: FloatArray | None
    weight: FloatArray


@dataclass(frozen=True)
@holds_arrays
class FieldGrid:
    """A regular grid of one radius: theta and phi in radians as read, field (2, theta, phi)."""

    theta: FloatArray
    phi: FloatArray
    field: ComplexArray


def scattered_dataset(samples: list[FieldSamples], source: str) -> xr.Dataset:
    """Bundle samples of several frequencies; shorter sets are filled up with weight 0."""
    import xarray as xr

    longest = max(one.theta.size for one in samples)

    def padded(values: list[np.ndarray], fill: float) -> np.ndarray:
        out = np.full((len(values), longest), fill, dtype=values[0].dtype)
        for row, value in zip(out, values, strict=True):
            row[: value.size] = value
        return out

    dims = ("frequency", "direction")
    near = samples[0].radius_m is not None
    data = {
        "e_theta": (dims, padded([one.field[0] for one in samples], 0.0)),
        "e_phi": (dims, padded([one.field[1] for one in samples], 0.0)),
        "weight": (dims, padded([one.weight for one in samples], 0.0)),
    }
    if near:
        data["radius_m"] = (dims, padded([np.asarray(one.radius_m) for one in samples], 1.0), {"units": "m"})  # type: ignore[assignment]
    return xr.Dataset(
        data,
        coords={
            "frequency": ("frequency", np.array([one.frequency_hz for one in samples]), {"units": "Hz"}),
            "theta": (dims, np.rad2deg(padded([one.theta for one in samples], 0.0)), {"units": "deg"}),
            "phi": (dims, np.rad2deg(padded([one.phi for one in samples], 0.0)), {"units": "deg"}),
        },
        attrs=_attributes(NEAR if near else FAR, source),
    )


def grid_dataset(
    frequency_hz: FloatArray,
    theta_deg: FloatArray,
    phi_deg: FloatArray,
    field: ComplexArray,
    *,
    radius_m: float | None,
    source: str,
) -> xr.Dataset:
    """Bundle fields (frequency, 2, theta, phi) on one grid."""
    import xarray as xr

    dims = ("frequency", "theta", "phi")
    attrs = _attributes(FAR if radius_m is None else NEAR, source)
    if radius_m is not None:
        attrs["radius_m"] = radius_m
    return xr.Dataset(
        {"e_theta": (dims, field[:, 0]), "e_phi": (dims, field[:, 1])},
        coords={
            "frequency": ("frequency", frequency_hz, {"units": "Hz"}),
            "theta": ("theta", theta_deg, {"units": "deg"}),
            "phi": ("phi", phi_deg, {"units": "deg"}),
        },
        attrs=attrs,
    )


def _attributes(kind: str, source: str) -> dict[str, str | float]:
    return {
        "title": f"Colure {kind}",
        "field": kind,
        "source": source,
        "time_convention": "exp(+j w t)" + (", exp(-j k r)/r removed" if kind == FAR else ""),
    }


def is_grid(dataset: xr.Dataset) -> bool:
    """Tell whether a dataset is on a grid."""
    return {"theta", "phi"} <= set(dataset.sizes)


def samples_of(dataset: xr.Dataset) -> list[FieldSamples]:
    """Return the samples of every frequency, whatever the dataset's layout; without directions lacking support.

    Raises
    ------
    InputError
        If the dataset does not hold fields.
    """
    dataset = laid_out(dataset, str(dataset.attrs.get("source") or "file"))
    grid = is_grid(dataset)
    out = []
    for index, frequency in enumerate(np.atleast_1d(dataset["frequency"].values)):
        field = np.stack([dataset[name].values[index].ravel() for name in ("e_theta", "e_phi")])
        if grid:
            t, p = (a.ravel() for a in np.meshgrid(dataset["theta"].values, dataset["phi"].values, indexing="ij"))
            weight = np.ones(t.size)
            radius = np.full(t.size, float(dataset.attrs["radius_m"])) if "radius_m" in dataset.attrs else None
        else:
            t, p = dataset["theta"].values[index], dataset["phi"].values[index]
            weight = dataset["weight"].values[index] if "weight" in dataset else np.ones(t.size)
            radius = dataset["radius_m"].values[index] if "radius_m" in dataset else None
        keep = np.isfinite(field).all(axis=0) & (weight > 0.0)
        if grid and "support" in dataset:
            support = dataset["support"]
            support = support.isel(frequency=index) if "frequency" in support.dims else support
            keep &= support.transpose("theta", "phi").values.ravel() >= LEAST_SUPPORT
        out.append(
            FieldSamples(
                float(frequency), np.deg2rad(t[keep]), np.deg2rad(p[keep]), field[:, keep],
                None if radius is None else radius[keep], weight[keep],
            )
        )  # fmt: skip
    return out


def recognize_grid(samples: FieldSamples) -> FieldGrid | None:
    """Return the regular grid behind samples, or None if they are scattered.

    A grid has every pair of its theta and phi values once (a pole may be given once for all
    phi), one radius and one weight. Columns at 0 and 360 deg are one column.
    """
    if samples.radius_m is not None and np.ptp(samples.radius_m) > 1e-9 * np.max(samples.radius_m):
        return None
    if np.ptp(samples.weight) > 0.0:
        return None
    theta, row = _levels(np.rad2deg(samples.theta))
    phi, column = _levels(np.rad2deg(samples.phi))
    if samples.theta.size < (theta.size - 2) * phi.size:  # the two poles may be given once
        return None
    table = np.full((theta.size, phi.size), -1)
    if np.any(np.bincount(row * phi.size + column) > 1):
        return None
    table[row, column] = np.arange(row.size)
    field = np.where(table >= 0, samples.field[:, table], np.nan)
    for ring in np.flatnonzero(np.isclose(np.abs(np.mod(theta, 180.0)), 0.0, atol=1e-6)):
        _fill_pole(field, table, int(ring), np.deg2rad(theta[ring]), np.deg2rad(phi))
    if np.any(np.isnan(field)) or theta.size < 3 or phi.size < 3:
        return None
    if np.isclose(phi[-1] - phi[0], 360.0, atol=1e-6):
        if not np.allclose(field[..., 0], field[..., -1], rtol=1e-6, atol=1e-9 * np.abs(field).max()):
            return None
        phi, field = phi[:-1], field[..., :-1]
    if not np.allclose(np.diff(phi), phi[1] - phi[0], atol=1e-5):
        return None
    return FieldGrid(np.deg2rad(theta), np.deg2rad(phi), field)


def _levels(angles_deg: FloatArray) -> tuple[FloatArray, np.ndarray]:
    """Return the distinct angles in rising order, and which one each sample has."""
    order = np.argsort(angles_deg, kind="stable")
    steps = np.concatenate([[0], np.cumsum(np.diff(angles_deg[order]) > SAME_ANGLE_DEG)])
    index = np.empty(angles_deg.size, dtype=np.int64)
    index[order] = steps
    sums = np.bincount(index, weights=angles_deg)
    return np.asarray(sums / np.bincount(index)), index


def _fill_pole(field: ComplexArray, table: np.ndarray, ring: int, theta: float, phi: FloatArray) -> None:
    """Give a pole that was sampled once to every column, turned into each column's vectors."""
    known = np.flatnonzero(table[ring] >= 0)
    if known.size != 1:
        return
    cosine, at = np.cos(theta), phi[known[0]]
    e_theta, e_phi = field[0, ring, known[0]], field[1, ring, known[0]]
    along_x = cosine * np.cos(at) * e_theta - np.sin(at) * e_phi
    along_y = cosine * np.sin(at) * e_theta + np.cos(at) * e_phi
    field[0, ring] = cosine * (np.cos(phi) * along_x + np.sin(phi) * along_y)
    field[1, ring] = -np.sin(phi) * along_x + np.cos(phi) * along_y
