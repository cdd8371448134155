"""Real vector harmonics at scattered directions, as a matrix: for small problems that are solved directly.

Rows of real numbers cost a quarter of complex ones. Real harmonics sqrt(2) Q cos(m phi), sqrt(2) Q sin(m phi)
span the same space as exp(+-j m phi), degree by degree, and the change between them is unitary.
"""

from __future__ import annotations

from functools import lru_cache

import numpy as np

from colure.geometry.conventions import ComplexArray, FloatArray, IntArray, mode_count, mode_index


def matrix_at(theta: FloatArray, phi: FloatArray, order: int) -> FloatArray:
    """Return (2, count, 2 N(N+2)): (e_theta, e_phi) of every real harmonic, degree by degree.

    Within a degree all gradient types come first, then all curl types; within a type m = 0, then
    cosine and sine of m = 1, 2, ... (`degrees_of_columns`, `to_modes`). Angles in radians.
    """
    q = _legendre(theta, order + 1)
    sine_over = _over_sine(q, order)
    slope = _slopes(q, order)
    out = np.empty((2, theta.size, 2 * mode_count(order)), order="F")
    cosines = np.sqrt(2.0) * np.cos(np.arange(order + 1)[:, None] * phi)
    sines = np.sqrt(2.0) * np.sin(np.arange(order + 1)[:, None] * phi)
    column = 0
    for n in range(1, order + 1):
        size = 1.0 / np.sqrt(n * (n + 1.0))
        width = 2 * n + 1
        for at, (along, across) in enumerate(_one_degree(slope[n], sine_over[n], cosines, sines, n)):
            out[0, :, column + at], out[1, :, column + at] = size * along, size * across
            out[0, :, column + width + at], out[1, :, column + width + at] = -size * across, size * along
        column += 2 * width
    return out


def _one_degree(
    slope: FloatArray, over: FloatArray, cosines: FloatArray, sines: FloatArray, n: int
) -> list[tuple[FloatArray, FloatArray]]:
    harmonics = [(slope[0], np.zeros_like(slope[0]))]
    for m in range(1, n + 1):
        harmonics += [(slope[m] * cosines[m], -over[m] * sines[m]), (slope[m] * sines[m], over[m] * cosines[m])]
    return harmonics


def degrees_of_columns(order: int) -> IntArray:
    """Return the degree of every column of `matrix_at`."""
    n = np.arange(1, order + 1)
    return np.repeat(n, 2 * (2 * n + 1)).astype(np.int64)


def to_modes(columns: ComplexArray, order: int) -> ComplexArray:
    """Turn coefficients of `matrix_at`'s columns (..., 2 N(N+2)) into (..., 2, N(N+2))."""
    zero, plus, minus, cosine, sine, sign = _places(order)
    out = np.empty((*columns.shape[:-1], 2, mode_count(order)), complex)
    half = np.sqrt(0.5)
    for kind in (0, 1):
        out[..., kind, zero[0]] = columns[..., zero[1][kind]]
        c, s = columns[..., cosine[kind]], columns[..., sine[kind]]
        out[..., kind, plus] = half * (c - 1j * s)
        out[..., kind, minus] = half * sign * (c + 1j * s)
    return out


def mode_of_columns(order: int) -> IntArray:
    """Return the kind of every column: 0 gradient type, 1 curl type."""
    kinds = [np.repeat([0, 1], 2 * n + 1) for n in range(1, order + 1)]
    return np.concatenate(kinds).astype(np.int64)


def orders_of_columns(order: int) -> IntArray:
    """Return |m| of every column."""
    one = [np.concatenate([[0], np.repeat(np.arange(1, n + 1), 2)]) for n in range(1, order + 1)]
    return np.concatenate([np.tile(m, 2) for m in one]).astype(np.int64)


@lru_cache(maxsize=16)
def _places(
    order: int,
) -> tuple[tuple[IntArray, list[IntArray]], IntArray, IntArray, list[IntArray], list[IntArray], FloatArray]:
    start = {n: 2 * mode_count(n - 1) if n > 1 else 0 for n in range(1, order + 1)}
    pairs = [(n, m) for n in range(1, order + 1) for m in range(1, n + 1)]
    n, m = (np.array([pair[i] for pair in pairs], dtype=np.int64) for i in (0, 1))
    first = np.array([start[int(i)] for i in n], dtype=np.int64)
    every = np.arange(1, order + 1)
    starts = np.array([start[int(i)] for i in every], dtype=np.int64)
    zero = [starts, starts + 2 * every + 1]
    cosine = [first + kind * (2 * n + 1) + 2 * m - 1 for kind in (0, 1)]
    sine = [one + 1 for one in cosine]
    sign = np.where(m % 2 == 0, 1.0, -1.0)
    return (
        (mode_index(every, azimuthal=0), zero),
        mode_index(n, azimuthal=m),
        mode_index(n, azimuthal=-m),
        cosine,
        sine,
        sign,
    )


def _legendre(theta: FloatArray, order: int) -> FloatArray:
    """Return Q_n^m (n, m, count), orthonormal with the Condon-Shortley phase, m = 0..order."""
    cosine, sine = np.cos(theta), np.sin(theta)
    q = np.zeros((order + 1, order + 2, theta.size))
    q[0, 0] = np.sqrt(1.0 / (4.0 * np.pi))
    for m in range(order + 1):
        if m:
            q[m, m] = -np.sqrt((2.0 * m + 1.0) / (2.0 * m)) * sine * q[m - 1, m - 1]
        for n in range(m + 1, order + 1):
            a = np.sqrt((4.0 * n * n - 1.0) / (n * n - m * m))
            b = np.sqrt(((n - 1.0) ** 2 - m * m) / (4.0 * (n - 1.0) ** 2 - 1.0))
            q[n, m] = a * (cosine * q[n - 1, m] - (b * q[n - 2, m] if n >= m + 2 else 0.0))
    return q


def _slopes(q: FloatArray, order: int) -> FloatArray:
    """Return dQ/dtheta (n, m, count) by the raising and lowering of m, which needs no division."""
    out = np.zeros((order + 1, order + 1, q.shape[-1]))
    for n in range(1, order + 1):
        out[n, 0] = np.sqrt(n * (n + 1.0)) * q[n, 1]
        m = np.arange(1, n + 1)[:, None]
        out[n, 1 : n + 1] = 0.5 * np.sqrt((n - m) * (n + m + 1.0)) * q[n, 2 : n + 2]
        out[n, 1 : n + 1] -= 0.5 * np.sqrt((n + m) * (n - m + 1.0)) * q[n, :n]
    return out


def _over_sine(q: FloatArray, order: int) -> FloatArray:
    """Return m Q / sin(theta) (n, m, count), finite at the poles."""
    out = np.zeros((order + 1, order + 1, q.shape[-1]))
    for n in range(1, order + 1):
        m = np.arange(1, n + 1)[:, None]
        part = np.sqrt((n - m) * np.maximum(n - m - 1.0, 0.0)) * q[n - 1, 2 : n + 2]
        part += np.sqrt((n + m) * (n + m - 1.0)) * q[n - 1, :n]
        out[n, 1 : n + 1] = -0.5 * np.sqrt((2.0 * n + 1.0) / (2.0 * n - 1.0)) * part
    return out
