"""Fields on circles of constant polar angle, as short Fourier series in both angles: made once, read at many polar angles by a product.

A wave of azimuthal order m and degree n runs along a meridian as a series of cosines (m odd) or sines (m even) of up to n
periods in a turn, because the meridian goes on behind the pole with the sign (-1)^(m+1) of a vector's components (derivable).
"""

from __future__ import annotations

import ducc0
import numpy as np

from colure.geometry.conventions import ComplexArray, FloatArray, IntArray, order_of_count
from colure.waves.modes import to_half_sets


class Circles:
    """Coefficients (..., 2, N(N+2)) made ready to give the azimuthal spectra of their fields at any polar angle.

    orders (N+1,)
        Azimuthal orders in the sequence in which `at` returns them: the odd ones first.
    """

    def __init__(self, coefficients: ComplexArray) -> None:
        self._order = order = order_of_count(coefficients.shape[-1])
        self._odd, self._even = np.arange(1, order + 1, 2), np.arange(0, order + 1, 2)
        self.orders: IntArray = np.concatenate([self._odd, self._even])
        half = to_half_sets(coefficients)
        real, imaginary = half[..., 0, :, :], half[..., 1, :, :]
        # Orders m >= 0, and the conjugates of m <= 0.
        both = np.stack([real + 1j * imaginary, real - 1j * imaginary], axis=-3)
        # One step fewer than the series has terms would do; the last term is nought then.
        steps = order + 1
        theta = np.pi * np.arange(steps + 1) / steps
        flat = np.ascontiguousarray(both.reshape(-1, *both.shape[-2:]))
        spectra = np.empty((len(flat), 2, len(theta), order + 1), complex)
        for alm, leg in zip(flat, spectra, strict=True):
            ducc0.sht.alm2leg(alm=alm, lmax=order, theta=theta, spin=1, leg=leg, nthreads=1)
        self._lead = both.shape[:-2]
        terms = np.arange(steps + 1)[:, None] * theta
        ends = np.where((np.arange(steps + 1) % steps) == 0, 0.5, 1.0)
        cosines, sines = 2.0 / steps * ends[:, None] * ends * np.cos(terms), 2.0 / steps * np.sin(terms)
        along = np.moveaxis(spectra, 2, 0)  # ring, set, component, order
        self._series = [
            np.tensordot(rows, along[..., which], axes=1).reshape(steps + 1, -1).astype(np.complex64)
            for rows, which in ((cosines, self._odd), (sines, self._even))
        ]

    def at(self, theta: FloatArray) -> list[ComplexArray]:
        """Return spectra (ring, ..., 2, 2, order) in single precision, of odd and of even azimuthal orders, at angles in radians.

        Axis -3: orders m >= 0, then the conjugates of the field's Fourier coefficients of orders -m. Axis -2: theta, phi.
        """
        turns = np.asarray(theta)[:, None] * np.arange(self._order + 2)
        spectra: list[ComplexArray] = []
        for rows, series, which in zip(
            (np.cos(turns), np.sin(turns)), self._series, (self._odd, self._even), strict=True
        ):
            made = (rows.astype(np.float32) @ series.view(np.float32)).view(np.complex64)
            spectra.append(np.asarray(made.reshape(len(turns), *self._lead, 2, which.size)))
        return spectra
