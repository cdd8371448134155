"""Levels without a reference: a whole sphere is brought to directivity, part of one to its own peak."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

import numpy as np

from colure.analysis.pipeline.stages import Transformed
from colure.analysis.steps.gain import ReferenceData
from colure.geometry.conventions import FloatArray
from colure.model.pattern import Quantity
from colure.waves.expansion import Expansion

if TYPE_CHECKING:
    import xarray as xr


def quantity_of(transformed: Transformed, *, absolute: bool) -> Quantity:
    """Return what the square of the pattern's field is."""
    if absolute:
        return "realized_gain"
    return "directivity" if transformed.sphere.whole and not transformed.sphere.one_polarization else "relative"


def scale_of(transformed: Transformed) -> FloatArray:
    """Return (frequency,) what makes a directivity of a whole sphere's field, or a strongest sample of 1 of any other."""
    if quantity_of(transformed, absolute=False) == "directivity":
        return np.asarray(np.sqrt(4.0 * np.pi / transformed.expansion.power()))
    top = np.sqrt(np.max(np.sum(np.abs(transformed.sphere.field) ** 2, axis=1), axis=(-2, -1)))
    return np.asarray(1.0 / np.maximum(top, 1e-300))


def brought_to_scale(transformed: Transformed, known: ReferenceData | None) -> tuple[Transformed, ReferenceData]:
    """Return what was transformed in its own scale, and what repeats the steps in it."""
    scale = scale_of(transformed)
    first = _own_scale(transformed)
    grid = scale[:, None, None, None]
    transfer = replace(
        transformed.sweep_stages.transfer, factor=transformed.sweep_stages.transfer.factor * scale[:, None]
    )
    stages = replace(
        transformed.sweep_stages,
        transfer=transfer,
        calibrated=_times(transformed.sweep_stages.calibrated, scale),
        sphere=replace(transformed.sweep_stages.sphere, field=transformed.sweep_stages.sphere.field * grid),
    )
    scaled = replace(
        transformed,
        sweep_stages=stages,
        sphere=replace(transformed.sphere, field=transformed.sphere.field * grid),
        noise=transformed.noise * scale,
        expansion=Expansion(transformed.expansion.coefficients * scale[:, None, None], transformed.expansion.k),
    )
    old = ReferenceData(None, None, None) if known is None else known
    return scaled, replace(old, scale=first * scale)


def _own_scale(transformed: Transformed) -> FloatArray:
    """Return (frequency,) what the factors of port 1 already hold: those of a relative record are real and positive."""
    return np.asarray(np.abs(transformed.sweep_stages.transfer.factor[:, 0]))


def _times(record: xr.Dataset, scale: FloatArray) -> xr.Dataset:
    return record.assign(
        trace=(record["trace"].dims, record["trace"].values * scale[None, :, None], record["trace"].attrs)
    )
