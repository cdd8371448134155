"""Directions and polarization ellipses of the truth: written without the geometry that the analysis uses."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from colure.geometry.conventions import ComplexArray, FloatArray

#: Nearer than this to its pole a grid's components have no direction of their own, degrees.
NEAR_POLE_DEG = 2.0


def from_azimuth_elevation(azimuth: float, elevation: float) -> FloatArray:
    """Return the unit vector (3,) of an azimuth and elevation, radians: 0, 0 is +z, azimuth turns towards +x."""
    return np.array([np.sin(azimuth) * np.cos(elevation), np.sin(elevation), np.cos(azimuth) * np.cos(elevation)])


def azimuth_elevation_deg(direction: FloatArray) -> tuple[float, float]:
    """Return azimuth and elevation, degrees, of a unit vector (3,)."""
    x, y, z = (float(v) for v in direction)
    return float(np.rad2deg(np.arctan2(x, z))), float(np.rad2deg(np.arcsin(np.clip(y, -1.0, 1.0))))


def ludwig3(direction: FloatArray, slant: float) -> FloatArray:
    """Ludwig-3 co-polar vectors of unit directions (..., 3): parallel transport of the z-pole's frame."""
    d = np.asarray(direction)
    reference = np.array([np.cos(slant), np.sin(slant), 0.0])
    along = np.sum(d * reference, axis=-1, keepdims=True)
    # Rotate the reference from +z onto d about z x d: r - d.r (d + z) / (1 + d.z).
    return np.asarray(reference - along / np.maximum(1.0 + d[..., 2:], 1e-12) * (d + np.array([0.0, 0.0, 1.0])))


def coherency(co: complex, cross: complex) -> FloatArray:
    """Return the real coherency matrix (2, 2) of two orthogonal components of a field."""
    mixed = (co * np.conj(cross)).real
    return np.array([[abs(co) ** 2, mixed], [mixed, abs(cross) ** 2]])


def axial_ratio_db(co: complex, cross: complex) -> float:
    """Return the axial ratio, dB, from the eigenvalues of the coherency matrix: squares of the ellipse's axes."""
    small, large = np.linalg.eigvalsh(coherency(co, cross))
    return down_db(float(np.sqrt(max(small, 0.0))), float(np.sqrt(large)))


def down_db(small: float, large: float) -> float:
    """Return how far one amplitude lies below another, dB; infinite for nothing."""
    with np.errstate(divide="ignore"):
        return float(20.0 * (np.log10(large) - np.log10(small)))


def amplitude_db(ratio: float) -> float:
    """Return a ratio of amplitudes in dB; nan where there is none."""
    with np.errstate(divide="ignore"):
        return float(20.0 * np.log10(max(ratio, 0.0))) if np.isfinite(ratio) else float("nan")


def along_grids(vector: ComplexArray, direction: FloatArray, components: Sequence[str]) -> dict[str, float]:
    """Return partial gains in dBi of a field (3,) in a direction (3,): along theta and phi (pole z), azimuth and elevation (pole y)."""
    grids = (
        ("theta-phi", np.array([0.0, 0.0, 1.0]), 1.0, ("gain_theta_dbi", "gain_phi_dbi")),
        ("ludwig-2", np.array([0.0, 1.0, 0.0]), -1.0, ("gain_elevation_dbi", "gain_azimuth_dbi")),
    )
    gains_dbi: dict[str, float] = {}
    for basis, axis, sense, names in grids:
        round_it = np.cross(axis, direction)
        length = float(np.linalg.norm(round_it))
        if basis not in components:
            continue
        if length < np.sin(np.deg2rad(NEAR_POLE_DEG)):
            gains_dbi |= dict.fromkeys(names, float("nan"))
            continue
        # Growing theta leads away from z; growing elevation leads towards y.
        along = sense * np.cross(round_it / length, direction)
        for name, one in zip(names, (along, round_it / length), strict=True):
            gains_dbi[name] = 20.0 * np.log10(max(abs(complex(vector @ one)), 1e-15))
    return gains_dbi
