"""What every sign, angle and unit means, as code.

Time factor ``exp(+j w t)``: an outgoing wave is ``exp(-j k r)``. Unsuffixed numbers are SI
(metres, radians, hertz, watts, linear ratios); everything else carries its unit as a suffix.

Frames
    Lab frame L: origin at the nominal crossing of the positioner's axes, ``z_L`` towards the
    probe, ``y_L`` up, ``x_L = y_L x z_L``. Device frame D coincides with L when all axes read
    zero. Theta counts from ``+z_D`` (nominal boresight), phi from ``+x_D`` towards ``+y_D``.

Spherical harmonics
    Orthonormal on the unit sphere with the Condon-Shortley phase. ``Psi_nm`` is
    ``r grad Y_nm / sqrt(n(n+1))`` (kind ``GRAD``), ``Phi_nm = r^ x Psi_nm`` (kind ``CURL``).
    Coefficient arrays have trailing dimensions ``(2, N(N+2))``: kind, then degree and order
    in the sequence n = 1, m = -1, 0, 1; n = 2, m = -2, ... (`mode_index`).
"""

from __future__ import annotations

from typing import Final, Literal

import numpy as np
from numpy.typing import ArrayLike, NDArray

SPEED_OF_LIGHT: Final = 299_792_458.0  # m/s, exact by the definition of the metre (SI)
GRAD: Final = 0
CURL: Final = 1

FloatArray = NDArray[np.float64]
ComplexArray = NDArray[np.complex128]
IntArray = NDArray[np.int64]
BoolArray = NDArray[np.bool_]

#: Sense of a circularly polarized wave (IEEE Std 145): +1 right-hand, -1 left-hand; 0 where it is not circular.
Handedness = Literal[-1, 0, 1]


def amplitude_db(ratio: ArrayLike, *, least: float | None = None) -> FloatArray:
    """Return 20 log10 |ratio|, of what is smaller than `least` that of `least`; zero gives minus infinity without a warning."""
    size = np.abs(np.asarray(ratio))
    with np.errstate(divide="ignore"):
        return np.asarray(20.0 * np.log10(size if least is None else np.maximum(size, least)), dtype=np.float64)


def power_db(ratio: ArrayLike, *, least: float | None = None) -> FloatArray:
    """Return 10 log10 ratio, of what is smaller than `least` that of `least`; zero gives minus infinity without a warning."""
    power = np.asarray(ratio, dtype=np.float64)
    with np.errstate(divide="ignore"):
        return np.asarray(10.0 * np.log10(power if least is None else np.maximum(power, least)), dtype=np.float64)


def amplitude_from_db(level_db: ArrayLike) -> FloatArray:
    """Return the linear amplitude ratio of a level in dB."""
    return np.asarray(10.0 ** (np.asarray(level_db, dtype=np.float64) / 20.0), dtype=np.float64)


def power_from_db(level_db: ArrayLike) -> FloatArray:
    """Return the linear power ratio of a level in dB."""
    return np.asarray(10.0 ** (np.asarray(level_db, dtype=np.float64) / 10.0), dtype=np.float64)


def wrapped(angle: ArrayLike) -> FloatArray:
    """Bring angles in radians to [-pi, pi)."""
    return np.asarray(np.mod(np.asarray(angle, dtype=np.float64) + np.pi, 2.0 * np.pi) - np.pi)


def wavenumber(frequency_hz: ArrayLike) -> FloatArray:
    """Return k = 2 pi f / c in rad/m."""
    return np.asarray(2.0 * np.pi * np.asarray(frequency_hz, dtype=np.float64) / SPEED_OF_LIGHT, dtype=np.float64)


def wavelength(frequency_hz: ArrayLike) -> FloatArray:
    """Return the free-space wavelength in metres."""
    return np.asarray(SPEED_OF_LIGHT / np.asarray(frequency_hz, dtype=np.float64), dtype=np.float64)


def order_within(kr: float, *, digits: float, least: float = 0.0) -> float:
    """Return the order that waves of sources within k r need for so many digits, not rounded; the excess is at least that of k r = `least`.

    N = k r + 1.8 d^(2/3) (k r)^(1/3) (Chew, Jin, Michielssen and Song (eds.), Fast and Efficient Algorithms in Computational
    Electromagnetics, 2001; from memory).
    """
    return float(kr + 1.8 * digits ** (2 / 3) * max(kr, least) ** (1 / 3))


def mode_count(order: int) -> int:
    """Return N(N+2), the number of (n, m) pairs of one kind up to degree `order`."""
    return order * (order + 2)


def mode_index(degree: ArrayLike, *, azimuthal: ArrayLike) -> IntArray:
    """Return the position of (n, m) in a coefficient array: n(n+1) + m - 1."""
    n = np.asarray(degree, dtype=np.int64)
    return np.asarray(n * (n + 1) + np.asarray(azimuthal, dtype=np.int64) - 1, dtype=np.int64)


def mode_degrees(order: int) -> IntArray:
    """Return n of every position in a coefficient array of degree `order`, shape (N(N+2),)."""
    return np.repeat(np.arange(1, order + 1), 2 * np.arange(1, order + 1) + 1).astype(np.int64)


def mode_orders(order: int) -> IntArray:
    """Return m of every position in a coefficient array of degree `order`, shape (N(N+2),)."""
    degrees = mode_degrees(order)
    return np.arange(degrees.size, dtype=np.int64) + 1 - degrees * (degrees + 1)


def order_of_count(count: int) -> int:
    """Return N for an array that holds N(N+2) modes.

    Raises
    ------
    ValueError
        If `count` is not N(N+2) for a whole number N >= 1.
    """
    order = round(float(np.sqrt(count + 1))) - 1
    if order < 1 or mode_count(order) != count:
        raise ValueError(f"{count} modes is not N(N+2) for any whole N >= 1")
    return order
