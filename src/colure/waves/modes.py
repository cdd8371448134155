"""Conversions between our mode order and the one of the compiled transform.

The compiled transform (ducc0) works on real maps and keeps m >= 0 only, ordered by m. A
complex field is two real maps, so one complex coefficient array is two such sets.
"""

from __future__ import annotations

from functools import lru_cache

import numpy as np

from colure.geometry.conventions import (
    CURL,
    GRAD,
    ComplexArray,
    FloatArray,
    IntArray,
    mode_count,
    mode_degrees,
    mode_index,
    mode_orders,
    order_of_count,
)


@lru_cache(maxsize=64)
def _tables(order: int) -> tuple[IntArray, IntArray, IntArray, FloatArray]:
    """Return (half-set position of (n, |m|), position of (n, m), of (n, -m), (-1)^m), m >= 0."""
    n, m = mode_degrees(order), mode_orders(order)
    keep = m >= 0
    n, m = n[keep], m[keep]
    half = m * (2 * order + 1 - m) // 2 + n
    sign = np.where(m % 2 == 0, 1.0, -1.0)
    return half, mode_index(n, azimuthal=m), mode_index(n, azimuthal=-m), sign


@lru_cache(maxsize=16)
def _join_tables(order: int) -> tuple[IntArray, FloatArray]:
    """Return, per mode, its place in (half set, mirrored half set) laid end to end, and its sign."""
    n, m = mode_degrees(order), mode_orders(order)
    half = np.abs(m) * (2 * order + 1 - np.abs(m)) // 2 + n
    sign = np.where((m < 0) & (m % 2 != 0), -1.0, 1.0)
    return np.where(m >= 0, half, half + half_set_size(order)), sign


def half_set_size(order: int) -> int:
    """Return the number of (n >= 0, m >= 0) entries of the compiled transform."""
    return (order + 1) * (order + 2) // 2


def to_half_sets(coefficients: ComplexArray) -> ComplexArray:
    """Split complex-field coefficients (..., K, N(N+2)) into half sets (..., 2, K, half).

    Axis -3 of the result is (real map, imaginary map).
    """
    order = order_of_count(coefficients.shape[-1])
    half, positive, negative, sign = _tables(order)
    plus = coefficients[..., positive]
    minus = sign * np.conj(coefficients[..., negative])
    out = np.zeros((*coefficients.shape[:-2], 2, coefficients.shape[-2], half_set_size(order)), complex)
    out[..., 0, :, half] = np.moveaxis(0.5 * (plus + minus), -1, 0)
    out[..., 1, :, half] = np.moveaxis(-0.5j * (plus - minus), -1, 0)
    return out


def from_half_sets(half_sets: ComplexArray, order: int) -> ComplexArray:
    """Join half sets (..., 2, K, half) of the two real maps into (..., K, N(N+2))."""
    place, sign = _join_tables(order)
    real, imaginary = half_sets[..., 0, :, :], half_sets[..., 1, :, :]
    # Field = real map + j imaginary map; for negative m the conjugate halves with the sign (-1)^m.
    both = np.empty((*real.shape[:-1], 2 * real.shape[-1]), complex)
    size = real.shape[-1]
    both.real[..., :size] = real.real - imaginary.imag
    both.imag[..., :size] = real.imag + imaginary.real
    both.real[..., size:] = real.real + imaginary.imag
    both.imag[..., size:] = imaginary.real - real.imag
    joined = np.take(both, place, axis=-1)
    joined *= sign
    return joined


def resized(coefficients: ComplexArray, order: int) -> ComplexArray:
    """Cut coefficients (..., N(N+2)) to a lower order, or fill up with zeros to a higher one."""
    count = mode_count(order)
    if coefficients.shape[-1] >= count:
        return coefficients[..., :count]
    out = np.zeros((*coefficients.shape[:-1], count), complex)
    out[..., : coefficients.shape[-1]] = coefficients
    return out


def to_power_normalized(coefficients: ComplexArray) -> ComplexArray:
    """Return Q_smn of the literature (P = 1/2 sum |Q|^2, exp(-i w t)) of a gain-like expansion.

    Input (..., 2, N(N+2)) normalized so that sum |a|^2 / (4 pi) is the radiated power in
    watts (`eirp` patterns); output the same shape with s = 1 (curl type) first, s = 2 second.

    Source of the target: J. E. Hansen (ed.), Spherical Near-Field Antenna Measurements, 1988
    (equation numbers from memory). His far-field functions for outgoing waves are
    K_1mn = sqrt(2/(n(n+1))) (-m/|m|)^m e^{im phi} (-i)^{n+1} {i m P/sin th^ - dP/dth ph^} and
    K_2mn with (-i)^n {dP/dth th^ + i m P/sin ph^}; the conjugate of his time factor turns
    exp(-i w t) fields into ours, m into -m, and leaves Phi with a minus sign.
    """
    n = mode_degrees(order_of_count(coefficients.shape[-1]))
    m = mode_orders(order_of_count(coefficients.shape[-1]))
    flipped = mode_index(n, azimuthal=-m)
    # conj(sum a Psi_nm) = sum conj(a_{n,-m}) (-1)^m Psi_nm.
    mirrored = np.conj(coefficients[..., flipped]) * np.where(m % 2 == 0, 1.0, -1.0)
    scale = 1.0 / np.sqrt(2.0 * np.pi)
    out = np.empty_like(mirrored)
    out[..., 0, :] = -mirrored[..., CURL, :] * scale * (1j) ** (n + 1)
    out[..., 1, :] = mirrored[..., GRAD, :] * scale * (1j) ** n
    return out


def from_power_normalized(q: ComplexArray) -> ComplexArray:
    """Inverse of `to_power_normalized`."""
    n = mode_degrees(order_of_count(q.shape[-1]))
    m = mode_orders(order_of_count(q.shape[-1]))
    mirrored = np.empty_like(q)
    mirrored[..., CURL, :] = -q[..., 0, :] / (1j) ** (n + 1)
    mirrored[..., GRAD, :] = q[..., 1, :] / (1j) ** n
    mirrored = mirrored * np.sqrt(2.0 * np.pi) * np.where(m % 2 == 0, 1.0, -1.0)
    return np.asarray(np.conj(mirrored[..., mode_index(n, azimuthal=-m)]))
