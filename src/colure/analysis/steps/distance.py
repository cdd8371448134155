"""A device off the axes' intersection comes nearer and goes farther as it turns: its level and phase at one distance."""

from __future__ import annotations

import numpy as np

from colure.analysis.steps.assemble import MeasuredSphere
from colure.geometry.conventions import ComplexArray, wavenumber
from colure.geometry.directions import unit_vector
from colure.model.device import Device


def at_even_distance(sphere: MeasuredSphere, device: Device, distance_m: float) -> ComplexArray:
    """Return the field as if the device's centre were always `distance_m` from the probe."""
    return np.asarray(sphere.field * even_distance_factor(sphere, device, distance_m)[:, None])


def even_distance_factor(sphere: MeasuredSphere, device: Device, distance_m: float) -> ComplexArray:
    """Return what brings the device's centre to one distance from the probe, (frequency, theta, phi).

    A device off the axes' intersection comes nearer and goes farther as it turns: its level follows 1/r and
    its phase k r (section 3 of the standards sheet gives +-0.3 dB for 0.1 m at 3 m). What bends
    within the device itself is left; only a transform takes that out.
    """
    centre = sphere.polar_to_device.T @ (1e-3 * np.asarray(device.offset_mm, float))
    d = unit_vector(theta=sphere.theta[:, None], phi=sphere.phi[None, :])
    along = d @ centre
    r = np.sqrt(distance_m**2 + float(centre @ centre) - 2.0 * distance_m * along)
    k = wavenumber(sphere.frequency_hz)[:, None, None]
    # Phase is referred to the axes' intersection again, where a far probe would see it.
    return np.asarray(r / distance_m * np.exp(1j * k * (r - distance_m + along)))
