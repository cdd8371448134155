"""Rings over part of the sphere to coefficients: least squares, one azimuthal order at a time.

Full turns in azimuth keep the azimuthal orders apart, whatever part of the polar range was
measured. Each order is then a small least-squares problem over the rings. With rows weighted
by the solid angle of their rings, a mode that lies wholly inside the measured belt has
singular value 1 and one that lies outside has 0; damping takes out what the data do not say.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property

import numpy as np

from colure.geometry.conventions import ComplexArray, FloatArray, mode_count, mode_index
from colure.values import holds_arrays
from colure.waves.transform import synthesis

#: Damping (relative to a fully measured mode) that only keeps the arithmetic finite.
LEAST_DAMPING = 1e-7


@dataclass(frozen=True)
@holds_arrays
class RingFit:
    """Least squares of degree `order` on rings at `theta` (radians, rising), full turns in azimuth.

    damping
        Error of a coefficient over its expected size (iterated Tikhonov). Small values keep more of
        what lies near the edge of the measured part, and more of the noise there.
    highest_m
        Highest azimuthal order, if lower than `order`.
    """

    theta: FloatArray
    order: int
    damping: float = LEAST_DAMPING
    highest_m: int | None = None

    @property
    def top(self) -> int:
        """Highest azimuthal order of the fit."""
        return self.order if self.highest_m is None else min(self.order, self.highest_m)

    def __post_init__(self) -> None:
        if self.theta.size < 3 or np.any(np.diff(self.theta) <= 0.0):
            raise ValueError(f"rings: {self.theta.size} at rising angles, must be at least 3 and rising (rad)")
        if self.theta[0] < -1e-9 or self.theta[-1] > np.pi + 1e-9:
            raise ValueError(
                f"rings: {np.rad2deg(self.theta[0]):g} to {np.rad2deg(self.theta[-1]):g}, must be 0 to 180 deg"
            )

    @cached_property
    def solid_angle(self) -> FloatArray:
        """Solid angle of every ring: from half way to its neighbours, or to the same width beyond the last."""
        middle = 0.5 * (self.theta[1:] + self.theta[:-1])
        low = np.concatenate([[2.0 * self.theta[0] - middle[0]], middle])
        high = np.concatenate([middle, [2.0 * self.theta[-1] - middle[-1]]])
        low, high = np.clip(low, 0.0, np.pi), np.clip(high, 0.0, np.pi)
        return np.asarray(2.0 * np.pi * (np.cos(low) - np.cos(high)))

    @cached_property
    def _inverse(self) -> list[ComplexArray]:
        """For m = -top..top: the damped inverse from weighted ring values to (grad, curl) of n = max(1, |m|)..N."""
        out = []
        for matrix in self._matrices():
            u, s, vh = np.linalg.svd(matrix, full_matrices=False)
            left = max(self.damping, LEAST_DAMPING) ** 2
            # Three rounds of the damped solution on the remainder: the bias is the cube of one round's.
            taken = 1.0 - (left / (s**2 + left)) ** 3
            with np.errstate(divide="ignore", invalid="ignore"):
                scale = np.where(s > 1e-12, taken / s, 0.0)
            out.append((vh.conj().T * scale) @ u.conj().T)
        return out

    def _matrices(self) -> list[ComplexArray]:
        """For every m: the field on weighted rings of every mode of that order, ((2, ring), (2, n))."""
        order, top, rings = self.order, self.top, self.theta.size
        columns = 2 * order + 2
        weight = np.sqrt(self.solid_angle)
        lines = [np.empty((2, rings, 2, order + 1 - max(1, abs(m))), complex) for m in range(-top, top + 1)]
        for n in range(1, order + 1):
            # One degree with all its orders at once; the columns of the rings part them.
            wave = np.zeros((2, 2, mode_count(order)), complex)
            m = np.arange(-n, n + 1)
            for kind in (0, 1):
                wave[kind, kind, mode_index(n, azimuthal=m)] = 1.0
            field = synthesis(wave, self.theta, columns)
            by_order = np.fft.fft(field, axis=-1) / columns
            for one in range(-min(n, top), min(n, top) + 1):
                lines[one + top][:, :, :, n - max(1, abs(one))] = np.moveaxis(by_order[..., one], 0, -1)
        return [(line * weight[None, :, None, None]).reshape(2 * rings, -1) for line in lines]

    def analysis(self, field: ComplexArray, *, phi_start: float = 0.0) -> ComplexArray:
        """Return coefficients (..., 2, N(N+2)) of a field (..., 2, ring, column).

        Raises
        ------
        ValueError
            If the columns cannot tell the azimuthal orders apart.
        """
        rings, columns = field.shape[-2:]
        if rings != self.theta.size or columns < 2 * self.top + 1:
            raise ValueError(
                f"field: {rings} rings x {columns} columns, must be {self.theta.size} x at least "
                f"{2 * self.top + 1} for order {self.top}"
            )
        by_order = np.fft.fft(field, axis=-1) / columns
        weighted = by_order * np.sqrt(self.solid_angle)[:, None]
        out = np.zeros((*field.shape[:-3], 2, mode_count(self.order)), complex)
        for m, inverse in zip(range(-self.top, self.top + 1), self._inverse, strict=True):
            n = np.arange(max(1, abs(m)), self.order + 1)
            rows = weighted[..., m].reshape(*field.shape[:-3], 2 * rings)
            coefficients = rows @ inverse.T * np.exp(-1j * m * phi_start)
            out[..., mode_index(n, azimuthal=m)] = coefficients.reshape(*field.shape[:-3], 2, n.size)
        return out
