"""The picture on the device's face: plane fields and element excitations from an expansion.

A far field holds plane waves of the visible region only (u^2 + v^2 <= 1), so a plane field is
sharp to half a wavelength and no better. An element grid is prior knowledge that goes further:
fitting one complex excitation per element is well posed down to spacings of half a wavelength.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike

from colure.geometry.conventions import ComplexArray, FloatArray, amplitude_db
from colure.geometry.directions import theta_phi
from colure.geometry.polarization import to_ludwig_1
from colure.waves.expansion import Expansion
from colure.waves.scattered import synthesis_at

#: Sharpest detail of a picture made of visible plane waves, in wavelengths.
RESOLUTION_WAVELENGTHS = 0.5


def plane_field(expansion: Expansion, x: ArrayLike, y: ArrayLike, z: float, *, taper: float = 0.0) -> ComplexArray:
    """Return (E_x, E_y) on a plane z = const in front of or in the device, visible waves only.

    Parameters
    ----------
    expansion
        Without leading dimensions or with (frequency,).
    x, y
        1-D coordinates of the picture in metres.
    z
        Height of the plane in the device frame, metres.
    taper
        0 keeps the visible region whole (sharpest, some ringing); 1 weighs it with cos^2.

    Returns
    -------
    (..., 2, y, x) complex, in sqrt(W)/m-like units of the pattern divided by the wavelength;
    only relative values mean anything for gain patterns.

    Notes
    -----
    The spectrum of a plane field is A(kx, ky) = far field / (j 2 pi k cos theta) (stationary phase,
    any text on planar near fields); the field is its inverse Fourier transform over
    kx^2 + ky^2 <= k^2. Polar quadrature in theta makes the weight k^2 sin theta cos theta finite.
    """
    xs, ys = np.asarray(x, float).ravel(), np.asarray(y, float).ravel()
    lead = expansion.coefficients.shape[:-2]
    flat = expansion.coefficients.reshape(-1, *expansion.coefficients.shape[-2:])
    ks = expansion.k.reshape(-1)
    reach = float(np.max(np.abs(np.concatenate([xs, ys]))))
    out = np.empty((len(flat), 2, ys.size, xs.size), complex)
    for index, (coefficients, k) in enumerate(zip(flat, ks, strict=True)):
        u, v, w, weight = visible_region(int(np.ceil(float(k) * reach * 1.5)) + expansion.order + 8)
        theta, phi = theta_phi(np.stack([u, v, w], axis=-1))
        e = synthesis_at(coefficients, theta=theta, phi=phi)
        vector = to_ludwig_1(e[0], e[1], theta=theta, phi=phi)[:, :2]
        window = 1.0 - taper + taper * w**2
        spectrum = vector * (weight * window / w * np.exp(-1j * k * w * z))[:, None] * (-1j * k / (2.0 * np.pi))
        out[index] = _separable_sum(spectrum, np.exp(-1j * k * np.outer(u, xs)), np.exp(-1j * k * np.outer(v, ys)))
    return out.reshape(*lead, 2, ys.size, xs.size) if lead else out[0]


def visible_region(order: int) -> tuple[FloatArray, FloatArray, FloatArray, FloatArray]:
    """Return (u, v, w, du dv weight) of a quadrature over the front half space."""
    nodes, weights = np.polynomial.legendre.leggauss(order)
    theta = 0.25 * np.pi * (nodes + 1.0)
    count = 2 * order + 1
    phi = np.arange(count) * 2.0 * np.pi / count
    t, p = (g.ravel() for g in np.meshgrid(theta, phi, indexing="ij"))
    weight = np.repeat(weights * 0.25 * np.pi * np.sin(theta) * np.cos(theta), count) * 2.0 * np.pi / count
    return np.sin(t) * np.cos(p), np.sin(t) * np.sin(p), np.cos(t), weight


def _separable_sum(spectrum: ComplexArray, ex: ComplexArray, ey: ComplexArray) -> ComplexArray:
    """Return sum_d spectrum[d, c] ey[d, y] ex[d, x] as (c, y, x)."""
    return np.stack([(ey * spectrum[:, c, None]).T @ ex for c in range(spectrum.shape[1])])


@dataclass(frozen=True, kw_only=True)
class Suspect:
    """An element that does not do what its neighbours do.

    relative_level_db, phase_error_deg
        Against the smooth illumination. No phase (None) where the element lies below the floor: its level is at most this.
    """

    row: int
    column: int
    relative_level_db: float
    phase_error_deg: float | None
    verdict: str

    @property
    def level_words(self) -> str:
        """Return its level, or the level that it does not exceed."""
        return ("\u2264 " if self.phase_error_deg is None else "") + f"{self.relative_level_db:+.1f} dB"

    @property
    def words(self) -> str:
        """Return how far it stands out."""
        return self.level_words + ("" if self.phase_error_deg is None else f", {self.phase_error_deg:+.0f} deg")


def suspicious_elements(
    excitation: ComplexArray,
    rows: int,
    columns: int,
    *,
    floor: float = 0.0,
    level_db: float = -6.0,
    phase_deg: float = 35.0,
) -> list[Suspect]:
    """Name the elements of a rows x columns grid that stand out from a smooth illumination.

    Parameters
    ----------
    excitation
        (rows * columns,) or (frequency, rows * columns), rows along y, columns along x.
    floor
        Amplitude over the strongest element below which an element cannot be told from nothing.
    level_db, phase_deg
        How far below the smooth taper, or off the smooth phase front, an element must be.

    Notes
    -----
    The smooth illumination is a separable quadratic in level and a plane plus quadratic in
    phase, fitted with Huber weights so that bad elements do not pull it. Over frequency the
    median of the deviations counts.
    """
    table = np.atleast_2d(excitation).reshape(-1, rows, columns)
    y, x = np.meshgrid(np.linspace(-1, 1, rows), np.linspace(-1, 1, columns), indexing="ij")
    basis = np.stack([np.ones_like(x), x, y, x**2, y**2, x**2 * y**2], axis=-1).reshape(-1, 6)
    level, phase = [], []
    size = np.abs(table).reshape(len(table), -1)
    size = size / size.max(axis=-1, keepdims=True)
    hidden = np.median(size, axis=0) <= floor
    for one, seen in zip(table, np.maximum(size, floor), strict=True):
        log_level = amplitude_db(seen, least=1e-6)
        level.append(log_level - basis @ _robust_fit(basis, np.maximum(log_level, -30.0), np.ones(log_level.size)))
        strength = np.abs(one).ravel()
        turn = np.angle(one * np.exp(-1j * np.angle(np.sum(one * np.abs(one))))).ravel()
        smooth = basis[:, :5] @ _robust_fit(basis[:, :5], turn, strength)
        phase.append(np.rad2deg(np.angle(np.exp(1j * (turn - smooth)))))
    level_off, phase_off = np.median(level, axis=0), np.median(phase, axis=0)
    suspects = []
    for index in range(rows * columns):
        low, turned = level_off[index] < level_db, abs(phase_off[index]) > phase_deg and not hidden[index]
        if low or turned:
            # The phase of an element that hardly radiates means nothing.
            verdict = "dead or weak" if low else "feed phase error"
            suspects.append(
                Suspect(
                    row=index // columns,
                    column=index % columns,
                    relative_level_db=float(level_off[index]),
                    phase_error_deg=None if hidden[index] else float(phase_off[index]),
                    verdict=verdict,
                )
            )
    return suspects


def _robust_fit(basis: FloatArray, values: FloatArray, weights: FloatArray) -> FloatArray:
    """Least squares with Huber weights about the median absolute deviation, ten rounds."""
    w = np.array(weights)
    coefficients: FloatArray = np.zeros(basis.shape[1])
    for _ in range(10):
        root = np.sqrt(w)
        coefficients = np.asarray(np.linalg.lstsq(basis * root[:, None], values * root, rcond=None)[0])
        off = values - basis @ coefficients
        scale = 1.4826 * float(np.median(np.abs(off))) + 1e-9
        w = weights * np.minimum(1.0, 1.5 * scale / np.maximum(np.abs(off), 1e-12)) ** 2
    return np.asarray(coefficients)
