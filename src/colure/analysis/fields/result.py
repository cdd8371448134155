"""A transformed field on its grid with what it may be wrong by, written beside it."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np

from colure.geometry.conventions import BoolArray, ComplexArray, FloatArray, amplitude_db, order_of_count
from colure.geometry.directions import fold, unit_vector
from colure.model.fields import FieldSamples
from colure.values import holds_arrays
from colure.waves.cells import Cells
from colure.waves.modes import resized

if TYPE_CHECKING:
    import xarray as xr

#: A direction counts as sampled within this many mean sample spacings.
SAMPLED = 0.75


def amplitude_words(ratio: float) -> str:
    """Return a ratio of amplitudes in dB for a sentence."""
    return f"{ratio_db(ratio):.1f} dB" if np.isfinite(ratio) else "unknown"


def ratio_db(ratio: float) -> float:
    return float(amplitude_db(ratio)) if ratio > 0.0 else -400.0


def folded(samples: FieldSamples) -> tuple[FloatArray, FloatArray, ComplexArray]:
    """Return samples with theta in 0..pi; both components change sign where theta was negative."""
    folded, sign = fold(theta=samples.theta, phi=samples.phi)
    return folded.theta, folded.phi, samples.field * sign


@dataclass(frozen=True)
@holds_arrays
class FieldResult:
    """One frequency's field on the grid with its errors.

    found
        (2, n(n+2)) waves about the coordinate origin, before they were moved or cut.
    position, probe
        The parts of `waves` by places and by the probe's pattern; None if none is declared.
    """

    field: ComplexArray
    bound: FloatArray
    inside: BoolArray
    found: ComplexArray
    waves: ComplexArray
    position: ComplexArray | None
    probe: ComplexArray | None
    contributions_db: dict[str, float]
    words: list[str]


def sampled_part(samples: FieldSamples, rings: int) -> BoolArray:
    """Return where samples lie on the result's grid: within a mean spacing (theta, phi)."""
    from scipy.spatial import cKDTree

    theta, phi, _ = folded(samples)
    columns = 2 * (rings - 1)
    t, p = np.meshgrid(np.linspace(0, np.pi, rings), np.arange(columns) * 2 * np.pi / columns, indexing="ij")
    points = unit_vector(theta=theta, phi=phi)
    distance, _ = cKDTree(points).query(unit_vector(theta=t, phi=p).reshape(-1, 3))
    area = Cells.of(theta, phi).solid_angles(1)
    return np.asarray(distance.reshape(t.shape) <= SAMPLED * np.sqrt(float(np.median(area))))


def with_errors(pattern: xr.Dataset, results: list[FieldResult]) -> xr.Dataset:
    """Write the errors beside the field."""
    dims = ("frequency", "theta", "phi")
    pattern["error_bound"] = (
        dims,
        np.stack([one.bound for one in results]),
        {"long_name": "error of the field vector, coverage factor 2", "units": pattern["e_theta"].attrs["units"]},
    )
    if not all(one.inside.all() for one in results):
        pattern["support"] = (
            dims,
            np.stack([one.inside.astype(float) for one in results]),
            {"long_name": "1 where the data determine the direction, 0 elsewhere"},
        )
    draws = min(len(one.waves) for one in results)
    order = max(order_of_count(one.waves.shape[-1]) for one in results)
    waves = np.stack([resized(one.waves[:draws], order) for one in results])
    pattern["error_waves"] = (
        ("frequency", "draw", "kind", "mode"),
        waves,
        {"long_name": "possible errors as far-field coefficients, grad and curl type, degree by degree"},
    )
    for name, by in (("position", "the places of the samples"), ("probe", "the probe's pattern")):
        some = [getattr(one, name) for one in results]
        if all(one is not None for one in some):
            pattern[f"{name}_waves"] = (
                ("frequency", "draw", "kind", "mode"),
                np.stack([resized(np.asarray(one)[:draws], order) for one in some]),
                {"long_name": f"part of error_waves by {by}, draw by draw"},
            )
    for name in ("noise", "truncation", "position", "probe"):
        levels = [one.contributions_db.get(name, np.nan) for one in results]
        pattern[f"{name}_db"] = ("frequency", np.array(levels), {"units": "dB", "long_name": f"{name}, rms, of peak"})
    return pattern
