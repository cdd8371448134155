"""The vector harmonics themselves at a few directions: a matrix, where many expansions are asked about the same places."""

from __future__ import annotations

import numpy as np

from colure.geometry.conventions import CURL, GRAD, ComplexArray, FloatArray, mode_count, mode_index

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
            (mode_index(n, orders), along, across),
            # Y of order -m is the conjugate times (-1)^m.
            (mode_index(n, -orders), sign * along.conj(), sign * across.conj()),
        ):
            out[0, GRAD, where], out[1, GRAD, where] = one, two
            out[0, CURL, where], out[1, CURL, where] = -two, one
        before, last = last, now
    return np.ascontiguousarray(np.moveaxis(out, -1, 0))


def _next_degree(n: int, before: FloatArray, last: FloatArray, sine: FloatArray, cosine: FloatArray) -> FloatArray:
    """Return the normalized Legendre functions (order, direction) of degree n from those of n - 2 and n - 1."""
    now = np.zeros_like(last)
    m = np.arange(n)[:, None]
    a = np.sqrt((4.0 * n * n - 1.0) / (n * n - m * m))
    b = np.sqrt(np.maximum((n - 1.0) ** 2 - m * m, 0.0) / (4.0 * (n - 1.0) ** 2 - 1.0))
    now[:n] = a * (cosine * last[:n] - b * before[:n])
    now[n] = -np.sqrt((2.0 * n + 1.0) / (2.0 * n)) * sine * last[n - 1]
    return now
