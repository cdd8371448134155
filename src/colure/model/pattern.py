"""A pattern: complex (e_theta, e_phi) on directions, with what its square means."""

from __future__ import annotations

from typing import TYPE_CHECKING, Literal

import numpy as np

from colure.errors import InputError
from colure.geometry.conventions import ComplexArray, FloatArray

if TYPE_CHECKING:
    import xarray as xr

Quantity = Literal["relative", "directivity", "gain", "realized_gain", "eirp"]
QUANTITIES = ("relative", "directivity", "gain", "realized_gain", "eirp")


def build_pattern(
    field: ComplexArray,
    *,
    frequency_hz: FloatArray,
    theta: FloatArray,
    phi: FloatArray,
    quantity: Quantity,
    phase_reference: str = "device-frame origin",
) -> xr.Dataset:
    """Assemble a pattern from a field (frequency, 2, theta, phi) on a regular grid (radians).

    Raises
    ------
    ValueError
        If shapes do not match or the quantity is unknown.
    """
    import xarray as xr

    shape = (frequency_hz.size, 2, theta.size, phi.size)
    if field.shape != shape:
        raise ValueError(f"field: shape {field.shape}, must be {shape} (frequency, component, theta, phi)")
    if quantity not in QUANTITIES:
        raise ValueError(f"quantity: {quantity!r}, must be one of {', '.join(QUANTITIES)}")
    units = "sqrt(W)" if quantity == "eirp" else "1"
    dims = ("frequency", "theta", "phi")
    return xr.Dataset(
        {
            "e_theta": (dims, field[:, 0], {"units": units}),
            "e_phi": (dims, field[:, 1], {"units": units}),
        },
        coords={
            "frequency": ("frequency", frequency_hz, {"units": "Hz"}),
            "theta": ("theta", np.round(np.rad2deg(theta), 9), {"units": "deg"}),
            "phi": ("phi", np.round(np.rad2deg(phi), 9), {"units": "deg"}),
        },
        attrs={
            "title": "Colure pattern",
            "quantity": quantity,
            "phase_reference": phase_reference,
            "time_convention": "exp(+j w t), exp(-j k r)/r removed",
        },
    )


def field_of(pattern: xr.Dataset) -> ComplexArray:
    """Return the field of a pattern as an array (frequency, 2, theta, phi)."""
    return np.stack([pattern["e_theta"].values, pattern["e_phi"].values], axis=1)


def index_of(frequency_hz: FloatArray, frequency_ghz: float | None) -> int:
    """Return which of the frequencies is meant; the middle one if None.

    Raises
    ------
    InputError
        If there is no such frequency; all are named.
    """
    f = frequency_hz / 1e9
    if frequency_ghz is None:
        return f.size // 2
    nearest = int(abs(f - frequency_ghz).argmin())
    if abs(f[nearest] - frequency_ghz) > 1e-6 * frequency_ghz:
        raise InputError(
            [f"frequency_ghz = {frequency_ghz:g}: must be one of {', '.join(f'{one:.6g}' for one in f)} GHz"]
        )
    return nearest
