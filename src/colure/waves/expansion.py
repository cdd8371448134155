"""An expansion in outgoing vector waves: the continuous pattern behind every figure."""

from __future__ import annotations

from dataclasses import dataclass

import ducc0
import numpy as np
from numpy.typing import ArrayLike

from colure.geometry.conventions import CURL, GRAD, ComplexArray, FloatArray, mode_degrees, order_of_count
from colure.geometry.directions import theta_phi, unit_vector
from colure.geometry.polarization import from_cartesian, to_ludwig_1
from colure.values import holds_arrays
from colure.waves.modes import from_half_sets, resized, to_half_sets
from colure.waves.radial import outgoing
from colure.waves.scattered import synthesis_at
from colure.waves.threads import threads
from colure.waves.transform import analysis, scalar_synthesis, synthesis


@dataclass(frozen=True)
@holds_arrays
class Expansion:
    """Outgoing waves about an origin: sum (g_nm Psi_nm + c_nm Phi_nm) in the far field.

    coefficients
        (..., 2, N(N+2)) complex: grad then curl type, any leading dimensions.
    k
        Wavenumber in rad/m, shape broadcastable to the leading dimensions.
    """

    coefficients: ComplexArray
    k: FloatArray

    def __post_init__(self) -> None:
        if self.coefficients.ndim < 2 or self.coefficients.shape[-2] != 2:
            raise ValueError(f"coefficients: shape {self.coefficients.shape}, must end in (2, N(N+2))")
        order_of_count(self.coefficients.shape[-1])
        lead = self.coefficients.shape[:-2]
        object.__setattr__(self, "k", np.broadcast_to(np.asarray(self.k, float), lead))

    @property
    def order(self) -> int:
        """Highest degree N."""
        return order_of_count(self.coefficients.shape[-1])

    def with_coefficients(self, coefficients: ComplexArray) -> Expansion:
        """Return an expansion at the same wavenumbers with other coefficients."""
        return Expansion(coefficients, self.k)

    def at_frequency(self, index: int) -> Expansion:
        """Return one of several frequencies, the first dimension kept."""
        one = slice(index, index + 1)
        return Expansion(self.coefficients[one], self.k[one])

    def power(self) -> FloatArray:
        """Return the integral of |e|^2 over the sphere (Parseval), shape (...)."""
        return np.asarray(np.sum(np.abs(self.coefficients) ** 2, axis=(-2, -1)))

    def mode_power(self) -> FloatArray:
        """Return the power in each degree n = 1..N, both kinds together, shape (..., N)."""
        per_mode = np.sum(np.abs(self.coefficients) ** 2, axis=-2)
        starts = np.arange(1, self.order + 1) ** 2 - 1
        return np.asarray(np.add.reduceat(per_mode, starts, axis=-1))

    def truncated(self, order: int) -> Expansion:
        """Return the expansion cut (or filled with zeros) to another order."""
        return self.with_coefficients(resized(self.coefficients, order))

    def far_field(self, theta: ArrayLike, phi_count: int, *, phi_start: ArrayLike = 0.0) -> ComplexArray:
        """Return (e_theta, e_phi) on rings, shape (..., 2, theta, phi); angles in radians."""
        return synthesis(self.coefficients, theta, phi_count, phi_start=phi_start)

    def far_field_at(self, *, theta: ArrayLike, phi: ArrayLike) -> ComplexArray:
        """Return (e_theta, e_phi) at arbitrary directions, shape (..., 2, count)."""
        return synthesis_at(self.coefficients, theta=theta, phi=phi)

    def magnetic(self) -> Expansion:
        """Return the expansion of eta H, whose far field is r^ x E."""
        g, c = self.coefficients[..., GRAD, :], self.coefficients[..., CURL, :]
        return self.with_coefficients(np.stack([-c, g], axis=-2))

    def near_field(self, radius: float, theta: ArrayLike, phi_count: int) -> ComplexArray:
        """Return (E_r, E_theta, E_phi) on rings at one radius in metres, exp(-jkr)/r included.

        Shape (..., 3, theta, phi). Exact at any radius outside the sources.
        """
        tangential, radial, common = self._at_radius(radius)
        across = synthesis(tangential, theta, phi_count)
        along = scalar_synthesis(radial, theta, phi_count)[..., None, :, :]
        return np.asarray(np.concatenate([along, across], axis=-3) * common[..., None, None, None])

    def near_field_at(self, points: ArrayLike) -> ComplexArray:
        """Return Cartesian E at arbitrary points (count, 3) in metres, shape (..., count, 3).

        Points of equal radius are evaluated together; each distinct radius costs one transform.
        """
        xyz = np.asarray(points, dtype=np.float64)
        radii = np.round(np.linalg.norm(xyz, axis=-1), 12)
        out = np.empty((*self.coefficients.shape[:-2], len(xyz), 3), complex)
        for radius in np.unique(radii):
            chosen = np.flatnonzero(radii == radius)
            theta, phi = theta_phi(xyz[chosen])
            tangential, radial, common = self._at_radius(float(radius))
            across = synthesis_at(tangential, theta=theta, phi=phi)
            along = synthesis_at(radial[..., None, :], theta=theta, phi=phi, spin=0)[..., 0, :]
            vector = to_ludwig_1(across[..., 0, :], across[..., 1, :], theta=theta, phi=phi)
            vector = vector + along[..., None] * unit_vector(theta=theta, phi=phi)
            out[..., chosen, :] = vector * common[..., None, None]
        return out

    def _at_radius(self, radius: float) -> tuple[ComplexArray, ComplexArray, ComplexArray]:
        """Return tangential (..., 2, J), radial (..., J) coefficients and exp(-jkr)/r."""
        functions = outgoing(self.order, self.k * radius)
        degrees = mode_degrees(self.order) - 1
        tangential = self.coefficients * functions.tangential()[..., degrees]
        radial = self.coefficients[..., GRAD, :] * functions.radial_values()[..., degrees]
        return tangential, radial, np.exp(-1j * self.k * radius) / radius

    def rotated(self, matrix: ArrayLike) -> Expansion:
        """Return the expansion of the device turned rigidly by a 3 x 3 rotation matrix.

        F'(R d) = R F(d): exact, degree by degree, through the compiled Wigner rotation.
        """
        first, second, third = _euler_zyz(np.asarray(matrix, float))
        half = to_half_sets(self.coefficients)
        flat = half.reshape(-1, half.shape[-1])
        out = np.empty_like(flat)
        for index, alm in enumerate(flat):
            out[index] = ducc0.sht.rotate_alm(
                alm=np.ascontiguousarray(alm),
                lmax=self.order,
                psi=third,
                theta=second,
                phi=first,
                nthreads=threads(self.order**3),
            )
        return self.with_coefficients(from_half_sets(out.reshape(half.shape), self.order))

    def translated(self, shift: ArrayLike, *, order: int | None = None) -> Expansion:
        """Return the expansion of the device moved by `shift` (3,) metres, about the same origin.

        The far field gains exp(+j k d . shift). `order` defaults to N plus what the shift
        needs for 1e-13; a smaller one truncates.
        """
        d = np.asarray(shift, dtype=np.float64)
        reach = float(np.max(self.k)) * float(np.linalg.norm(d))
        wanted = self.order + int(np.ceil(reach + 7.0 * max(reach, 1.0) ** (1 / 3) + 6)) if order is None else order
        work = max(wanted, self.order) + int(np.ceil(reach)) + 2
        theta = np.linspace(0.0, np.pi, work + 3)
        columns = 2 * work + 2
        field = self.far_field(theta, columns)
        phi = np.arange(columns) * 2.0 * np.pi / columns
        along = unit_vector(theta=theta[:, None], phi=phi[None, :]) @ d
        moved = field * np.exp(1j * self.k[..., None, None, None] * along)
        return self.with_coefficients(resized(analysis(moved, work), wanted))


def _euler_zyz(r: FloatArray) -> tuple[float, float, float]:
    """Return (a, b, c) with R = Rz(a) Ry(b) Rz(c); where b is 0 or pi, c is taken as 0."""
    b = float(np.arctan2(np.hypot(r[0, 2], r[1, 2]), r[2, 2]))
    if np.hypot(r[0, 2], r[1, 2]) < 1e-14:
        sign = 1.0 if r[2, 2] > 0 else -1.0
        return float(np.arctan2(sign * r[1, 0], sign * r[0, 0])), b, 0.0
    return float(np.arctan2(r[1, 2], r[0, 2])), b, float(np.arctan2(r[2, 1], -r[2, 0]))


def from_cartesian_field(field: ArrayLike, *, theta: ArrayLike, phi: ArrayLike) -> ComplexArray:
    """Return tangential components (..., 2, theta, phi) of Cartesian fields (..., theta, phi, 3)."""
    t, p = np.meshgrid(np.asarray(theta, float), np.asarray(phi, float), indexing="ij")
    return np.stack(from_cartesian(field, theta=t, phi=p), axis=-3)
