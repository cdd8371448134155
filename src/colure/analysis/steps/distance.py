"""A device off the axes' intersection comes nearer and goes farther as it turns: its level and phase at one distance."""

from __future__ import annotations

import numpy as np

from colure.analysis.steps.assemble import MeasuredSphere
from colure.geometry.conventions import ComplexArray, FloatArray, wavenumber
from colure.geometry.directions import theta_phi, unit_vector
from colure.model.device import Device
from colure.waves.expansion import Expansion


def at_even_distance(sphere: MeasuredSphere, device: Device, distance_m: float) -> ComplexArray:
    """Return the field as if the device's centre were always `distance_m` from the probe."""
    return np.asarray(sphere.field * even_distance_factor(sphere, device, distance_m)[:, None])


def even_distance_factor(sphere: MeasuredSphere, device: Device, distance_m: float) -> ComplexArray:
    """Return what brings the device's centre to one distance from the probe, (frequency, theta, phi).

    A device off the axes' intersection comes nearer and goes farther as it turns: its level follows 1/r and
    its phase k r (section 3 of the standards sheet gives +-0.3 dB for 0.1 m at 3 m). What bends
    within the device itself is left; only a transform takes that out.
    """
    centre = _centre_of(sphere, device)
    d = unit_vector(theta=sphere.theta[:, None], phi=sphere.phi[None, :])
    along = d @ centre
    r = np.sqrt(distance_m**2 + float(centre @ centre) - 2.0 * distance_m * along)
    k = wavenumber(sphere.frequency_hz)[:, None, None]
    # Phase is referred to the axes' intersection again, where a far probe would see it.
    return np.asarray(r / distance_m * np.exp(1j * k * (r - distance_m + along)))


def away(directions: FloatArray, *, offset_m: FloatArray, distance_m: float) -> FloatArray:
    """Return how far the probe is from the device's centre (...) where it stands in directions (..., 3) from there, over the range length.

    The probe stands where the ray from the centre meets the sphere of the range length.
    """
    along = directions @ offset_m
    return np.asarray((np.sqrt(along**2 + distance_m**2 - offset_m @ offset_m) - along) / distance_m)


def seen_from_the_centre(
    sphere: MeasuredSphere, waves: Expansion, device: Device, distance_m: float, *, slant: float
) -> ComplexArray:
    """Return the one polarization (frequency, 2, theta, phi) about the device's centre, from its waves about the axes.

    At a finite distance the probe stands in another direction for the device than for the axes: by 2 deg for 70 mm across 2 m.
    The field read at R u' = c + r u belongs to the direction u; its phase is referred to the device's centre.
    """
    centre = _centre_of(sphere, device)
    u = unit_vector(theta=sphere.theta[:, None], phi=sphere.phi[None, :])
    read_at = centre / distance_m + away(u, offset_m=centre, distance_m=distance_m)[..., None] * u
    theta, phi = theta_phi(read_at)
    e = _in_polar_frame(sphere, waves, theta, phi)
    read = e[:, 0] * np.cos(slant - phi) + e[:, 1] * np.sin(slant - phi)
    read = read * np.exp(-1j * wavenumber(sphere.frequency_hz)[:, None, None] * (read_at @ centre))
    here = slant - sphere.phi
    return np.stack([read * np.cos(here), read * np.sin(here)], axis=1)


def about_the_axes(sphere: MeasuredSphere, waves: Expansion, device: Device) -> ComplexArray:
    """Return the far field (frequency, 2, theta, phi) of waves about the device's centre, its phase referred to the axes' intersection."""
    centre = _centre_of(sphere, device)
    theta, phi = np.meshgrid(sphere.theta, sphere.phi, indexing="ij")
    along = unit_vector(theta=theta, phi=phi) @ centre
    turn = np.exp(1j * wavenumber(sphere.frequency_hz)[:, None, None] * along)
    return np.asarray(_in_polar_frame(sphere, waves, theta, phi) * turn[:, None])


def _centre_of(sphere: MeasuredSphere, device: Device) -> FloatArray:
    """Return the device's centre from the axes' intersection (3,), metres, in the frame of the measured sphere."""
    return np.asarray(sphere.polar_to_device.T @ (1e-3 * np.asarray(device.offset_mm, float)))


def _in_polar_frame(sphere: MeasuredSphere, waves: Expansion, theta: FloatArray, phi: FloatArray) -> ComplexArray:
    """Return the far field (frequency, 2, theta, phi) of the device's waves at directions (theta, phi) of the measured sphere."""
    polar = waves if np.array_equal(sphere.polar_to_device, np.eye(3)) else waves.rotated(sphere.polar_to_device.T)
    return polar.far_field_at(theta=theta.ravel(), phi=phi.ravel()).reshape(-1, 2, *theta.shape)
