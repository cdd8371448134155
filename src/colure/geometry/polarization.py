"""Polarization bases and the polarization ellipse.

Every two-component basis is a 2 x 2 matrix that takes (e_theta, e_phi) to (first, second).
Ludwig's three definitions: A. C. Ludwig, "The definition of cross polarization", IEEE Trans.
Antennas Propag. 21(1):116-119, 1973. Senses follow IEEE Std 145 for exp(+j w t).
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

import numpy as np
from numpy.typing import ArrayLike

from colure.geometry.conventions import ComplexArray, FloatArray
from colure.geometry.directions import phi_hat, theta_hat
from colure.values import holds_arrays

#: Sine of the angle from the roll axis within which the roll is free.
POLE = 1e-6
#: A polarization that turns by no more than this over a cut is one, degrees: 0.0007 dB of its level (cosine of half of it).
MOST_TURNED_DEG = 1.5


class Basis(StrEnum):
    """Names of the two-component polarization bases."""

    THETA_PHI = "theta-phi"
    LUDWIG_2_AZIMUTH_OVER_ELEVATION = "ludwig-2-az-over-el"
    LUDWIG_2_ELEVATION_OVER_AZIMUTH = "ludwig-2-el-over-az"
    LUDWIG_3 = "ludwig-3"
    CIRCULAR = "circular"

    @property
    def component_names(self) -> tuple[str, str]:
        """Names of the two components, first then second."""
        return {
            Basis.THETA_PHI: ("theta", "phi"),
            Basis.LUDWIG_2_AZIMUTH_OVER_ELEVATION: ("azimuth", "elevation"),
            Basis.LUDWIG_2_ELEVATION_OVER_AZIMUTH: ("azimuth", "elevation"),
            Basis.LUDWIG_3: ("co (x3)", "cross (y3)"),
            Basis.CIRCULAR: ("right-hand", "left-hand"),
        }[self]


def basis_matrix(basis: Basis, *, theta: ArrayLike, phi: ArrayLike, slant: float = 0.0) -> ComplexArray:
    """Return the matrix from (e_theta, e_phi) to a basis, shape (..., 2, 2), unitary.

    Parameters
    ----------
    theta, phi
        Direction in radians, broadcast to shape (...).
    slant
        Radians; turns the reference of Ludwig-3 from x towards y. Only used there.

    Notes
    -----
    The Ludwig-2 pairs are undefined on the grid's own poles (+-y, +-x); the limit taken
    along phi = 0 (or theta = 0) is returned there.
    """
    t, p = np.broadcast_arrays(np.asarray(theta, float), np.asarray(phi, float))
    one, zero = np.ones_like(t), np.zeros_like(t)
    cos_t, cos_p, sin_p = np.cos(t), np.cos(p), np.sin(p)
    if basis is Basis.THETA_PHI:
        return _stack(one, zero, zero, one)
    if basis is Basis.CIRCULAR:
        return np.asarray(_stack(one, 1j * one, one, -1j * one) / np.sqrt(2.0))
    if basis is Basis.LUDWIG_3:
        # x3 turned by the slant: cos(psi) x3 + sin(psi) y3 = cos(phi - psi) th - sin(phi - psi) ph
        co, cross = np.cos(p - slant), np.sin(p - slant)
        return _stack(co, -cross, cross, co)
    if basis is Basis.LUDWIG_2_AZIMUTH_OVER_ELEVATION:
        first, second = cos_p, cos_t * sin_p  # az^ = (cos p th - cos t sin p ph) / norm
        norm = np.hypot(first, second)
        first, second = _unit(first, second, norm)
        return _stack(first, -second, second, first)
    first, second = cos_t * cos_p, sin_p  # az^ = (cos t cos p th - sin p ph) / norm
    norm = np.hypot(first, second)
    first, second = _unit(first, second, norm)
    return _stack(first, -second, second, first)


def _unit(first: FloatArray, second: FloatArray, norm: FloatArray) -> tuple[FloatArray, FloatArray]:
    on_pole = norm < 1e-15
    safe = np.where(on_pole, 1.0, norm)
    return np.where(on_pole, 1.0, first / safe), np.where(on_pole, 0.0, second / safe)


def _stack(a: ArrayLike, b: ArrayLike, c: ArrayLike, d: ArrayLike) -> ComplexArray:
    rows = [np.stack(np.broadcast_arrays(*pair), axis=-1) for pair in ((a, b), (c, d))]
    return np.stack(rows, axis=-2).astype(np.complex128)


def to_basis(
    e_theta: ArrayLike, e_phi: ArrayLike, basis: Basis, *, theta: ArrayLike, phi: ArrayLike, slant: float = 0.0
) -> tuple[ComplexArray, ComplexArray]:
    """Return the two components of a field in a basis (see `Basis.component_names`)."""
    m = basis_matrix(basis, theta=theta, phi=phi, slant=slant)
    a, b = np.asarray(e_theta, complex), np.asarray(e_phi, complex)
    return m[..., 0, 0] * a + m[..., 0, 1] * b, m[..., 1, 0] * a + m[..., 1, 1] * b


def from_basis(
    first: ArrayLike, second: ArrayLike, basis: Basis, *, theta: ArrayLike, phi: ArrayLike, slant: float = 0.0
) -> tuple[ComplexArray, ComplexArray]:
    """Return (e_theta, e_phi) from the two components in a basis; inverse of `to_basis`."""
    m = basis_matrix(basis, theta=theta, phi=phi, slant=slant).conj()
    a, b = np.asarray(first, complex), np.asarray(second, complex)
    return m[..., 0, 0] * a + m[..., 1, 0] * b, m[..., 0, 1] * a + m[..., 1, 1] * b


def to_ludwig_1(e_theta: ArrayLike, e_phi: ArrayLike, *, theta: ArrayLike, phi: ArrayLike) -> ComplexArray:
    """Return the Cartesian components (x, y, z), Ludwig's first definition, shape (..., 3)."""
    a, b = np.asarray(e_theta, complex)[..., None], np.asarray(e_phi, complex)[..., None]
    return np.asarray(a * theta_hat(theta=theta, phi=phi) + b * phi_hat(theta=theta, phi=phi))


def from_cartesian(vector: ArrayLike, *, theta: ArrayLike, phi: ArrayLike) -> tuple[ComplexArray, ComplexArray]:
    """Return the tangential components (e_theta, e_phi) of Cartesian vectors (..., 3)."""
    v = np.asarray(vector, complex)
    along_theta = np.sum(v * theta_hat(theta=theta, phi=phi), axis=-1)
    return along_theta, np.sum(v * phi_hat(theta=theta, phi=phi), axis=-1)


@dataclass(frozen=True)
@holds_arrays
class Ellipse:
    """Polarization ellipse of an outgoing wave.

    axial_ratio
        Major over minor axis, linear, >= 1; infinite for linear polarization.
    inverse_axial_ratio
        Minor over major axis with the sense as sign: + right-handed, - left-handed.
    tilt
        Radians in (-pi/2, pi/2], from the first (theta) towards the second (phi) unit
        vector: the right-hand rule with the thumb along the propagation (IEEE Std 145).
    """

    axial_ratio: FloatArray
    inverse_axial_ratio: FloatArray
    tilt: FloatArray


def ellipse(*, e_theta: ArrayLike, e_phi: ArrayLike) -> Ellipse:
    """Return the polarization ellipse of (e_theta, e_phi).

    Axial ratio = (|R| + |L|) / ||R| - |L||; tilt from the phase between R and L.
    """
    a, b = np.asarray(e_theta, complex), np.asarray(e_phi, complex)
    right, left = (a + 1j * b) / np.sqrt(2.0), (a - 1j * b) / np.sqrt(2.0)
    total = np.abs(right) + np.abs(left)
    with np.errstate(divide="ignore", invalid="ignore"):
        inverse = np.where(total > 0.0, (np.abs(right) - np.abs(left)) / total, np.nan)
        axial_ratio = 1.0 / np.abs(inverse)
    # E_L = |E_L| e^{j(s - tilt)}, E_R = |E_R| e^{j(s + tilt)}: half the phase difference is the tilt.
    tilt = 0.5 * np.angle(right * np.conj(left))
    return Ellipse(np.asarray(axial_ratio), np.asarray(inverse), np.asarray(tilt))


def noise_factor(angles: FloatArray) -> float:
    """Return how much more noise (rms) a component of the vector has than a reading, from readings at probe angles (n,) in radians.

    1 for two readings at right angles; 1/|sin d| for two that are d apart; inf where all see one polarization (derivable).
    """
    seen = np.stack([np.cos(angles), np.sin(angles)], axis=-1)
    normal = seen.T @ seen
    determinant = float(np.linalg.det(normal))
    return float("inf") if determinant < 1e-12 else float(np.sqrt(0.5 * np.trace(normal) / determinant))


def turned_by_roll_deg(directions: FloatArray) -> float:
    """Return by how much the polarization that a probe at rest reads of a rolling device turns over directions (n, 3), degrees.

    What it reads at phi is the slant psi = chi + phi of Ludwig's third definition, and an axis of polarization is the same after half
    a turn. Straight ahead and behind the roll is free.
    """
    x, y = directions[..., 0], directions[..., 1]
    twice = 2.0 * np.arctan2(y, x)[np.hypot(x, y) > POLE]
    if not twice.size:
        return 0.0
    middle = np.exp(-1j * np.angle(np.mean(np.exp(1j * twice))))
    off = 0.5 * np.angle(np.exp(1j * twice) * middle)
    return float(np.rad2deg(off.max() - off.min()))
