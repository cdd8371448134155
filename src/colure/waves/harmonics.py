"""The vector harmonics themselves at a few directions: a matrix, where many expansions are asked about the same places."""

from __future__ import annotations

from functools import lru_cache
from typing import Any

import numpy as np
from numpy.typing import NDArray

from colure.geometry.conventions import CURL, GRAD, ComplexArray, FloatArray, IntArray, mode_count, mode_index

#: Nearer to a pole than this the quotients by sin(theta) would lose digits.
LEAST_SINE = 1e-7


def harmonics_at(order: int, theta: FloatArray, phi: FloatArray, *, single: bool = False) -> ComplexArray:
    """Return the fields (direction, 2, 2, N(N+2)) of all waves of unit coefficient: component (theta, phi), then kind.

    Orthonormal harmonics with the Condon-Shortley phase; the recurrence over the degree is the stable one (derivable).
    `single` keeps them in single precision; they are worked out in double precision all the same.
    """
    sine = np.maximum(np.sin(theta), LEAST_SINE)
    cosine = np.cos(theta)
    m = np.arange(order + 1)[:, None]
    turn = np.exp(1j * m * phi)
    out = np.zeros(
        (2, 2, mode_count(order), theta.size), np.complex64 if single else complex
    )  # component, kind, mode, direction
    before, last = np.zeros((order + 1, theta.size)), np.zeros((order + 1, theta.size))
    last[0] = np.sqrt(0.25 / np.pi)
    for n in range(1, order + 1):
        now = _next_degree(n, before, last, sine, cosine)
        k = m[: n + 1]
        slope = (
            n * cosine * now[: n + 1] - np.sqrt((n * n - k * k) * (2 * n + 1) / (2 * n - 1)) * last[: n + 1]
        ) / sine
        scale = 1.0 / np.sqrt(n * (n + 1.0))
        along, across = scale * slope * turn[: n + 1], 1j * scale * k * now[: n + 1] / sine * turn[: n + 1]
        orders = np.arange(n + 1)
        sign = np.where(orders % 2 == 0, 1.0, -1.0)[:, None]
        for where, one, two in (
            (mode_index(n, azimuthal=orders), along, across),
            # Y of order -m is the conjugate times (-1)^m.
            (mode_index(n, azimuthal=-orders), sign * along.conj(), sign * across.conj()),
        ):
            out[0, GRAD, where], out[1, GRAD, where] = one, two
            out[0, CURL, where], out[1, CURL, where] = -two, one
        before, last = last, now
    return np.ascontiguousarray(np.moveaxis(out, -1, 0))


def scalars_at(order: int, theta: FloatArray) -> FloatArray:
    """Return the scalar harmonics (wave, direction) of degrees 1 to N at azimuth 0, as `harmonics_at` normalizes them."""
    sine, cosine = np.maximum(np.sin(theta), LEAST_SINE), np.cos(theta)
    before, last = np.zeros((order + 1, theta.size)), np.zeros((order + 1, theta.size))
    last[0] = np.sqrt(0.25 / np.pi)
    out = np.empty((mode_count(order), theta.size))
    for n in range(1, order + 1):
        now, m = _next_degree(n, before, last, sine, cosine), np.arange(n + 1)
        out[mode_index(n, azimuthal=m)] = now[: n + 1]
        out[mode_index(n, azimuthal=-m)] = np.where(m % 2 == 0, 1.0, -1.0)[:, None] * now[: n + 1]
        before, last = last, now
    return out


class FieldsAt:
    """A few directions, ready to give the fields of many expansions there by one product of real numbers.

    A wave of order -m is the conjugate of the one of order m, but for a sign: sums and differences of their coefficients
    meet the real and the imaginary part of one harmonic (derivable).

    Parameters
    ----------
    order
        Highest degree N.
    theta, phi
        (direction,) radians.
    exact
        So many of the first directions are worked out in double precision, the others in single.
    """

    def __init__(self, order: int, theta: FloatArray, phi: FloatArray, *, exact: int = 0) -> None:
        along, across = _halves(order, theta)
        m = np.concatenate([np.arange(n + 1) for n in range(1, order + 1)])
        turn = np.exp(1j * np.arange(order + 1)[:, None] * phi)[m]
        self._order, self._count, self._exact = order, theta.size, exact
        parts = (along, turn.real), (along, turn.imag), (across, -turn.imag), (across, turn.real)

        def rows(where: slice, kind: type[np.floating[Any]]) -> NDArray[Any]:
            size = len(range(theta.size)[where])
            out = np.empty((2, m.size, 2, size), kind)  # part, wave, product with `along` or `across`, direction
            for number, (one, two) in enumerate(parts):
                np.multiply(one[:, where], two[:, where], out=out[number % 2, :, number // 2], casting="same_kind")
            return out.reshape(2 * m.size, -1)

        self._few, self._many = rows(slice(0, exact), np.float64), rows(slice(exact, None), np.float32)

    def of(self, coefficients: ComplexArray) -> ComplexArray:
        """Return the fields (n, direction, 2), components along theta and phi, of coefficients (n, 2, N(N+2))."""
        plus, minus, sign = _pairs(self._order)
        one, two = coefficients[..., plus], sign * coefficients[..., minus]
        total, rest = (one + two).reshape(-1, plus.size), (one - two).reshape(-1, plus.size)
        rows = np.concatenate([np.hstack([total.real, -rest.imag]), np.hstack([total.imag, rest.real])])
        out = np.empty((len(coefficients), self._count, 2), complex)
        for matrix, where in ((self._few, slice(0, self._exact)), (self._many, slice(self._exact, None))):
            made = (rows.astype(matrix.dtype) @ matrix).reshape(2, len(coefficients), 2, 2, -1)
            grad, curl = np.moveaxis(made[0] + 1j * made[1], 1, 0)  # expansion, product, direction
            out[:, where, 0], out[:, where, 1] = grad[:, 0] - curl[:, 1], grad[:, 1] + curl[:, 0]
        return out


@lru_cache(maxsize=8)
def _pairs(order: int) -> tuple[IntArray, IntArray, FloatArray]:
    """Return where waves of orders m and -m are, degree by degree from m = 0, and (-1)^m; 0 where both are one."""
    n = np.concatenate([np.full(n + 1, n) for n in range(1, order + 1)])
    m = np.concatenate([np.arange(n + 1) for n in range(1, order + 1)])
    return (
        mode_index(n, azimuthal=m),
        mode_index(n, azimuthal=-m),
        np.where(m == 0, 0.0, np.where(m % 2 == 0, 1.0, -1.0)),
    )


def _halves(order: int, theta: FloatArray) -> tuple[FloatArray, FloatArray]:
    """Return (dQ/dtheta, m Q / sin(theta)) over sqrt(n(n+1)), each (wave of m >= 0 degree by degree, direction)."""
    sine, cosine = np.maximum(np.sin(theta), LEAST_SINE), np.cos(theta)
    before, last = np.zeros((order + 1, theta.size)), np.zeros((order + 1, theta.size))
    last[0] = np.sqrt(0.25 / np.pi)
    out = np.empty((2, (order + 1) * (order + 2) // 2 - 1, theta.size))
    begin = 0
    for n in range(1, order + 1):
        now = _next_degree(n, before, last, sine, cosine)
        k = np.arange(n + 1)[:, None]
        fall = np.sqrt((n * n - k * k) * (2 * n + 1) / (2 * n - 1)) * last[: n + 1]
        scale = 1.0 / np.sqrt(n * (n + 1.0)) / sine
        out[0, begin : begin + n + 1] = scale * (n * cosine * now[: n + 1] - fall)
        out[1, begin : begin + n + 1] = scale * k * now[: n + 1]
        begin += n + 1
        before, last = last, now
    return out[0], out[1]


def _next_degree(n: int, before: FloatArray, last: FloatArray, sine: FloatArray, cosine: FloatArray) -> FloatArray:
    """Return the normalized Legendre functions (order, direction) of degree n from those of n - 2 and n - 1."""
    now = np.zeros_like(last)
    m = np.arange(n)[:, None]
    a = np.sqrt((4.0 * n * n - 1.0) / (n * n - m * m))
    b = np.sqrt(np.maximum((n - 1.0) ** 2 - m * m, 0.0) / (4.0 * (n - 1.0) ** 2 - 1.0))
    now[:n] = a * (cosine * last[:n] - b * before[:n])
    now[n] = -np.sqrt((2.0 * n + 1.0) / (2.0 * n)) * sine * last[n - 1]
    return now
