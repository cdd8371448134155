"""Probe patterns that other packages bring, entry points `colure.probes`: `pattern = "probe:NAME"` in chamber.toml."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final, Protocol

import numpy as np

from colure.geometry.conventions import ComplexArray, FloatArray
from colure.model.doors import named
from colure.model.pattern import build_pattern

if TYPE_CHECKING:
    import xarray as xr

PREFIX: Final = "probe:"
#: Step of the grid that a probe is asked on.
STEP_DEG = 5.0


class ProbeDoor(Protocol):
    """What an object behind `colure.probes` must have."""

    def pattern(self, frequency_hz: FloatArray, theta: FloatArray, phi: FloatArray) -> ComplexArray:
        """Return e_theta and e_phi, complex (frequency, 2, theta, phi), on a grid of radians.

        In the probe's frame (z out of the aperture, x along port 1), with exp(-jkr)/r removed and the phase about the probe's
        reference point; squared it is the gain.
        """
        ...


def probe_pattern(name: str, frequency_hz: FloatArray) -> xr.Dataset:
    """Return the pattern of a probe `probe:NAME` on the whole sphere.

    Raises
    ------
    InputError
        If no package brings it, or what it returns has another shape or holds no numbers; the package is named.
    """
    one = named("colure.probes", name.removeprefix(PREFIX))
    theta = np.deg2rad(np.arange(0.0, 180.0 + STEP_DEG / 2.0, STEP_DEG))
    phi = np.deg2rad(np.arange(0.0, 360.0 - STEP_DEG / 2.0, STEP_DEG))
    frequency = np.asarray(frequency_hz, float)
    field = one.call(np.ndarray, one.thing.pattern, frequency, theta, phi)
    wanted = (frequency.size, 2, theta.size, phi.size)
    if field.shape != wanted:
        raise one.refusal(f"pattern has the shape {field.shape}, must have {wanted} (frequency, component, theta, phi)")
    if not np.all(np.isfinite(field)) or not np.any(field):
        raise one.refusal("pattern holds values that are not finite, or nothing but zeros")
    return build_pattern(
        np.asarray(field, complex),
        frequency_hz=frequency,
        theta=theta,
        phi=phi,
        quantity="gain",
        phase_reference="probe reference point",
    ).assign_attrs(source=one.package)
