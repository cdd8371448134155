"""Exact radial functions of outgoing waves, stable to order 2000 and far above kr.

With the common factor exp(-j x)/x taken out (x = k r), an outgoing harmonic of degree n is

    curl type   C_n(x) = h_n(x) / (j^{n+1} e^{-jx}/x)
    grad type   G_n(x) = (x h_n)'(x)/x / (j^n e^{-jx}/x)
    radial part L_n(x) = sqrt(n(n+1)) h_n(x)/x / (j^n e^{-jx}/x)

with h_n = h_n^(2). C_n and G_n tend to 1 and L_n to 0 as x grows: the far field is the limit.
Values grow like (2n/x)^n where n exceeds x, so they are kept as mantissa times 2^exponent.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike

from colure.geometry.conventions import ComplexArray, FloatArray, IntArray
from colure.values import holds_arrays


@dataclass(frozen=True)
@holds_arrays
class Outgoing:
    """Radial functions of degrees 1..N: mantissas (..., N) and a common power of two (..., N)."""

    grad: ComplexArray
    curl: ComplexArray
    radial: ComplexArray
    exponent: IntArray

    def tangential(self) -> ComplexArray:
        """Return plain values (..., 2, N), grad then curl; infinite where beyond a double."""
        with np.errstate(over="ignore", invalid="ignore"):
            scale = np.ldexp(1.0, np.clip(self.exponent, -2000, 2000).astype(np.int32))
            both = np.stack([self.grad, self.curl], axis=-2)
            return np.where(both == 0.0, 0.0, both * scale[..., None, :])

    def radial_values(self) -> ComplexArray:
        """Return plain values of the radial part, shape (..., N)."""
        with np.errstate(over="ignore", invalid="ignore"):
            return self.radial * np.ldexp(1.0, np.clip(self.exponent, -2000, 2000).astype(np.int32))

    def ratio_to(self, other: Outgoing) -> ComplexArray:
        """Return tangential values of this radius over those at another, shape (..., 2, N).

        Exponents are subtracted before they are applied, so two radii far below n stay finite.
        """
        step = np.ldexp(1.0, np.clip(self.exponent - other.exponent, -2000, 1023).astype(np.int32))
        mine = np.stack([self.grad, self.curl], axis=-2)
        theirs = np.stack([other.grad, other.curl], axis=-2)
        return np.asarray(mine / theirs * step[..., None, :])


def outgoing(order: int, x: ArrayLike) -> Outgoing:
    """Return the radial functions of degrees 1..order at x = k r > 0 of shape (...).

    The three-term recurrence is run upwards, where h_n is the dominant solution: relative
    accuracy stays near 1e-13 (checked against mpmath to order 2000).

    Raises
    ------
    ValueError
        If any x is not positive or `order` is below 1.
    """
    x_ = np.asarray(x, dtype=np.float64)
    if order < 1:
        raise ValueError(f"order: {order}, must be at least 1 (degree)")
    if not np.all(x_ > 0.0):
        raise ValueError(f"k r: {float(np.min(x_)):g}, must be above 0 rad")
    curl = np.empty((*x_.shape, order + 1), complex)
    exponent = np.zeros((*x_.shape, order + 1), np.int64)
    previous, current = np.ones_like(x_, dtype=complex), 1.0 - 1j / x_
    shift_previous = np.zeros_like(x_, dtype=np.int64)
    shift = np.zeros_like(x_, dtype=np.int64)
    curl[..., 0] = previous
    grad = np.empty_like(curl)
    for n in range(1, order + 1):
        curl[..., n], exponent[..., n] = current, shift
        below = previous * np.ldexp(1.0, np.clip(shift_previous - shift, -2000, 0).astype(np.int32))
        grad[..., n] = below - 1j * n / x_ * current
        following = -1j * (2 * n + 1) / x_ * current + below
        _, size = np.frexp(np.abs(following))
        jump = np.where(size > 200, size, 0).astype(np.int32)
        previous, shift_previous = current, shift
        current, shift = following * np.ldexp(1.0, -jump), shift + jump
    n_all = np.arange(1, order + 1)
    radial = 1j * np.sqrt(n_all * (n_all + 1.0)) / x_[..., None] * curl[..., 1:]
    return Outgoing(grad[..., 1:], curl[..., 1:], radial, exponent[..., 1:])


def regular(order: int, x: ArrayLike) -> tuple[FloatArray, FloatArray]:
    """Return (j_n(x), (x j_n)'(x)/x) for n = 1..order, each of shape (..., order)."""
    from scipy.special import spherical_jn

    x_ = np.asarray(x, dtype=np.float64)[..., None]
    n = np.arange(1, order + 1)
    values = spherical_jn(n, x_)
    return values, spherical_jn(n - 1, x_) - n / x_ * values
