"""Directions on the sphere and the coordinate pairs the trade uses for them.

All identities are those of `docs/explanation` and are derivable; the test values are the
worked table in section 2 of the standards sheet (derived, round trip to 4e-15).
"""

from __future__ import annotations

from typing import NamedTuple

import numpy as np
from numpy.typing import ArrayLike

from colure.geometry.conventions import FloatArray, wrapped


class ThetaPhi(NamedTuple):
    """Polar angle and azimuth in radians, theta in [0, pi], phi in [0, 2 pi)."""

    theta: FloatArray
    phi: FloatArray


class AzimuthElevation(NamedTuple):
    """A pair of positioner-like angles in radians."""

    azimuth: FloatArray
    elevation: FloatArray


def unit_vector(*, theta: ArrayLike, phi: ArrayLike) -> FloatArray:
    """Return the Cartesian unit vector of a direction, shape (..., 3); angles in radians."""
    t, p = np.broadcast_arrays(np.asarray(theta, float), np.asarray(phi, float))
    sin_t = np.sin(t)
    return np.stack([sin_t * np.cos(p), sin_t * np.sin(p), np.cos(t)], axis=-1)


def theta_hat(*, theta: ArrayLike, phi: ArrayLike) -> FloatArray:
    """Return the unit vector of growing theta, shape (..., 3); angles in radians."""
    t, p = np.broadcast_arrays(np.asarray(theta, float), np.asarray(phi, float))
    cos_t = np.cos(t)
    return np.stack([cos_t * np.cos(p), cos_t * np.sin(p), -np.sin(t)], axis=-1)


def phi_hat(*, theta: ArrayLike, phi: ArrayLike) -> FloatArray:
    """Return the unit vector of growing phi, shape (..., 3); angles in radians."""
    t, p = np.broadcast_arrays(np.asarray(theta, float), np.asarray(phi, float))
    return np.stack([-np.sin(p), np.cos(p), np.zeros_like(t)], axis=-1)


def tangents(direction: FloatArray) -> tuple[FloatArray, FloatArray]:
    """Return two unit vectors (3,) at right angles to a direction (3,) and to each other, without a preferred turn."""
    least = np.zeros(3)
    least[int(np.argmin(np.abs(direction)))] = 1.0
    first = cross(direction, least)
    first = first / np.sqrt(first @ first)
    return first, cross(direction, first)


def cross(a: FloatArray, b: FloatArray) -> FloatArray:
    """Return the cross product of two single vectors (3,), without the cost of the general one."""
    (x, y, z), (u, v, w) = a.tolist(), b.tolist()
    return np.array([y * w - z * v, z * u - x * w, x * v - y * u])


def theta_phi(vector: ArrayLike) -> ThetaPhi:
    """Return (theta, phi) of Cartesian vectors of shape (..., 3); length does not matter."""
    v = np.asarray(vector, dtype=np.float64)
    # atan2 keeps full precision near the poles, where acos loses half the digits.
    theta = np.arctan2(np.hypot(v[..., 0], v[..., 1]), v[..., 2])
    return ThetaPhi(theta, np.mod(np.arctan2(v[..., 1], v[..., 0]), 2.0 * np.pi))


def fold(*, theta: ArrayLike, phi: ArrayLike) -> tuple[ThetaPhi, FloatArray]:
    """Bring a readout with negative theta (or beyond pi) to theta in [0, pi].

    Returns the direction and a sign (+1 or -1): both unit vectors theta^ and phi^ of the
    readout equal `sign` times those of the folded direction.
    """
    t, p = np.broadcast_arrays(np.asarray(theta, float), np.asarray(phi, float))
    folded_t = wrapped(t)
    # -180 deg and +180 deg are one readout; keep theta = +180 deg unflipped.
    folded_t = np.where(folded_t == -np.pi, np.pi, folded_t)
    negative = folded_t < 0.0
    folded = ThetaPhi(np.abs(folded_t), np.mod(np.where(negative, p + np.pi, p), 2.0 * np.pi))
    return folded, np.where(negative, -1.0, 1.0)


def direction_cosines(*, theta: ArrayLike, phi: ArrayLike) -> tuple[FloatArray, FloatArray]:
    """Return (u, v) = (sin theta cos phi, sin theta sin phi)."""
    vector = unit_vector(theta=theta, phi=phi)
    return vector[..., 0], vector[..., 1]


def from_direction_cosines(*, u: ArrayLike, v: ArrayLike, front: bool = True) -> ThetaPhi:
    """Return the direction with cosines (u, v) in the front (or back) half space.

    Raises
    ------
    ValueError
        If u^2 + v^2 exceeds 1 anywhere: no real direction has such cosines.
    """
    u_, v_ = np.broadcast_arrays(np.asarray(u, float), np.asarray(v, float))
    rest = 1.0 - u_**2 - v_**2
    if np.any(rest < -1e-12):
        raise ValueError(f"direction cosines: u^2 + v^2 = {float(np.max(u_**2 + v_**2)):.6g}, limit 1 (no unit)")
    w = np.sqrt(np.clip(rest, 0.0, None)) * (1.0 if front else -1.0)
    return theta_phi(np.stack([u_, v_, w], axis=-1))


def azimuth_over_elevation(vector: ArrayLike) -> AzimuthElevation:
    """Return (az, el) with d = (sin az cos el, sin el, cos az cos el); the pole is +-y."""
    v = np.asarray(vector, dtype=np.float64)
    azimuth = np.arctan2(v[..., 0], v[..., 2])
    return AzimuthElevation(azimuth, np.arctan2(v[..., 1], np.hypot(v[..., 0], v[..., 2])))


def from_azimuth_over_elevation(*, azimuth: ArrayLike, elevation: ArrayLike) -> FloatArray:
    """Return unit vectors (..., 3) of azimuth and elevation in radians; the pole is +-y."""
    a, e = np.broadcast_arrays(np.asarray(azimuth, float), np.asarray(elevation, float))
    return np.stack([np.sin(a) * np.cos(e), np.sin(e), np.cos(a) * np.cos(e)], axis=-1)


def elevation_over_azimuth(vector: ArrayLike) -> AzimuthElevation:
    """Return (az, el) with d = (sin az, cos az sin el, cos az cos el); the pole is +-x."""
    v = np.asarray(vector, dtype=np.float64)
    azimuth = np.arctan2(v[..., 0], np.hypot(v[..., 1], v[..., 2]))
    return AzimuthElevation(azimuth, np.arctan2(v[..., 1], v[..., 2]))


def angle_between(first: ArrayLike, second: ArrayLike) -> FloatArray:
    """Return the angle between vectors of shape (..., 3) in radians, exact for small angles."""
    a, b = np.asarray(first, float), np.asarray(second, float)
    cross = np.linalg.norm(np.cross(a, b), axis=-1)
    return np.asarray(np.arctan2(cross, np.sum(a * b, axis=-1)), dtype=np.float64)
