"""Gain of a pyramidal horn from its dimensions, with Fresnel integrals.

S. A. Schelkunoff's formula in the form of W. T. Slayton, NRL Report 4433 (1954):
G = 10 log(a b / lambda^2) + 10.08 - R_E - R_H; equal to Balanis, Antenna Theory, 3rd ed.,
eq. 13-52 (equation number from memory). Its stated accuracy is 0.25 to 0.3 dB (from memory).
"""

from __future__ import annotations

from functools import lru_cache

import numpy as np
from numpy.typing import ArrayLike
from scipy.special import fresnel

from colure.geometry.conventions import ComplexArray, FloatArray, amplitude_db, power_db, wavelength, wavenumber


@lru_cache(maxsize=4)
def _gauss(count: int) -> tuple[FloatArray, FloatArray]:
    """Return nodes and weights of Gauss's quadrature; a room after another asks for them."""
    nodes, weights = np.polynomial.legendre.leggauss(count)
    return nodes, weights


def e_plane_loss_db(b: ArrayLike, slant: ArrayLike, lam: ArrayLike) -> FloatArray:
    """Return R_E, the loss by quadratic phase along b (uniform field), all in one unit."""
    b_, slant_, lam_ = (np.asarray(x, float) for x in (b, slant, lam))
    w = b_ / np.sqrt(2.0 * lam_ * slant_)
    s, c = fresnel(w)
    return -power_db((c**2 + s**2) / w**2)


def h_plane_loss_db(a: ArrayLike, slant: ArrayLike, lam: ArrayLike) -> FloatArray:
    """Return R_H, the loss by quadratic phase along a (cosine field), all in one unit."""
    a_, slant_, lam_ = (np.asarray(x, float) for x in (a, slant, lam))
    root = np.sqrt(lam_ * slant_)
    s_u, c_u = fresnel((root / a_ + a_ / root) / np.sqrt(2.0))
    s_v, c_v = fresnel((root / a_ - a_ / root) / np.sqrt(2.0))
    total = (c_u - c_v) ** 2 + (s_u - s_v) ** 2
    # Without phase error the bracket tends to (8/pi^2)(a^2 / (lambda slant)) ... normalized to one.
    return -power_db(total * np.pi**2 * lam_ * slant_ / (8.0 * a_**2))


#: c of a short dipole whose amplitude falls as cos(angle) in one plane and not at all in the other: exp(-c angle^2) on average (derivable).
DIPOLE_BEAM = 0.25
#: Nodes of the aperture's quadrature along each side: good for apertures up to about 20 wavelengths.
_NODES = 96


def horn_gain_dbi(
    frequency_hz: ArrayLike, *, a: float, b: float, slant_e: float, slant_h: float, distance: float = np.inf
) -> FloatArray:
    """Return the gain in dBi of a lossless pyramidal horn.

    Parameters
    ----------
    a, b
        Aperture along the magnetic and the electric plane in metres.
    slant_e, slant_h
        Slant lengths of the two flares (apex to aperture edge's plane) in metres.
    distance
        From the aperture to where the field is observed on axis, metres: less by what the aperture loses there
        (`near_loss_db`). Finite-range formulas that only add the curvatures, 1/slant + 1/distance, agree with measurements
        within 0.15 dB (Das, Selvan and Rao, IEEE Trans. EMC 39(4):374, 1997); 3 mouths away they miss 0.1 dB.

    Raises
    ------
    ValueError
        If a dimension or frequency is not positive.
    """
    for name, value in (("a", a), ("b", b), ("slant_e", slant_e), ("slant_h", slant_h), ("distance", distance)):
        if not value > 0:
            raise ValueError(f"{name}: {value}, must be above 0 m")
    lam = wavelength(frequency_hz)
    flat = power_db(32.0 / np.pi * a * b / lam**2)  # 10 log(a b / lambda^2) + 10.080
    far = flat - e_plane_loss_db(b, slant_e, lam) - h_plane_loss_db(a, slant_h, lam)
    if not np.isfinite(distance):
        return np.asarray(far)
    near = near_loss_db(frequency_hz, a=a, b=b, slant_e=slant_e, slant_h=slant_h, distance=distance)
    return np.asarray(far - near.reshape(np.shape(far)))


def near_loss_db(
    frequency_hz: ArrayLike,
    *,
    a: float,
    b: float,
    slant_e: float,
    slant_h: float,
    distance: float,
    beam: float = DIPOLE_BEAM,
) -> FloatArray:
    """Return by how much less than its far field a horn lays on its axis at a distance, dB (frequency,).

    Huygens sources over the aperture, each with its own distance, direction and share along the horn's field: beside the phase of
    the longer path, the rim's field is weaker by 1/r and by its direction (derivable). So near, that counts as much as the phase's
    higher terms: the loss of phase alone is too small by about <rho^2> / distance^2.

    The field is heard as by a short dipole, which is what "near" means in a gain. A probe with a beam hears less of the rim.

    Parameters
    ----------
    beam
        c of a probe whose amplitude falls as exp(-c angle^2) off its axis, both planes on average.
    """
    every = tuple(np.atleast_1d(np.asarray(frequency_hz, float)).tolist())
    return _near_loss_db(every, a, b, slant_e, slant_h, distance, beam).copy()


@lru_cache(maxsize=64)
def _near_loss_db(
    frequency_hz: tuple[float, ...], a: float, b: float, slant_e: float, slant_h: float, distance: float, beam: float
) -> FloatArray:
    """Carry out `near_loss_db`, once for a horn and a distance: a run's recipe, budget and rooms all ask for it."""
    nodes, weights = _gauss(_NODES)
    # A quarter of the mouth stands for all of it.
    nodes, weights = nodes[nodes > 0.0], weights[nodes > 0.0]
    k = wavenumber(np.array(frequency_hz))[:, None, None]
    x, y = 0.5 * b * nodes[:, None], 0.5 * a * nodes
    lit = weights[:, None] * weights * np.cos(np.pi * y / a) * np.exp(-0.5j * k * (x**2 / slant_e + y**2 / slant_h))
    r = np.sqrt(distance**2 + x**2 + y**2)
    ahead = distance / r
    share = 0.5 * (1.0 + ahead - (x / r) ** 2)  # along x of a Huygens source's field
    heard = np.exp((DIPOLE_BEAM - beam) * np.arccos(ahead) ** 2)
    near = np.sum(lit * np.exp(-1j * k * (r - distance)) * ahead * share * heard, axis=(1, 2))
    return np.asarray(-amplitude_db(np.abs(near / np.sum(lit, axis=(1, 2)))))


def horn_aside(
    frequency_hz: ArrayLike, directions: FloatArray, *, a: float, b: float, slant_e: float, slant_h: float
) -> ComplexArray:
    """Return the far field of a pyramidal horn (frequency, n, 3) over what it lays on its axis.

    The horn looks along z with its field along x: Huygens sources over the aperture, cos(pi y/a) with the quadratic
    phase of both flares (C. A. Balanis, Antenna Theory, chapter 13, from memory). What runs around the rim is left out.

    Parameters
    ----------
    directions
        (n, 3) unit vectors.
    """
    d = np.asarray(directions, float)
    k = np.atleast_1d(2.0 * np.pi / wavelength(frequency_hz))[:, None]
    nodes, weights = _gauss(_NODES)

    def along(size: float, slant: float, taper: FloatArray, cosine: FloatArray) -> ComplexArray:
        at = 0.5 * size * nodes
        lit = weights * taper * np.exp(-0.5j * k * at**2 / slant)  # frequency, node
        return np.asarray(
            np.einsum("fq,fnq->fn", lit, np.exp(1j * k[..., None] * cosine[:, None] * at)) / lit.sum(axis=1)[:, None]
        )

    shape = along(b, slant_e, np.ones(_NODES), d[:, 0]) * along(a, slant_h, np.cos(0.5 * np.pi * nodes), d[:, 1])
    huygens = np.stack([1.0 + d[:, 2] - d[:, 0] ** 2, -d[:, 0] * d[:, 1], -d[:, 0] * (1.0 + d[:, 2])], axis=-1) / 2.0
    return np.asarray(shape[..., None] * huygens)
