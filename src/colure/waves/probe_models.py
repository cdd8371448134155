"""Far fields of the probes that ranges use, as expansions in the probe's own frame.

z points out of the aperture, x is the polarization of port 1. Levels are relative; only the
shape matters to a probe correction.
"""

from __future__ import annotations

from collections.abc import Callable

import numpy as np
from numpy.typing import ArrayLike
from scipy.special import jv

from colure.geometry.conventions import ComplexArray, FloatArray, order_within
from colure.geometry.directions import unit_vector
from colure.waves.expansion import Expansion
from colure.waves.transform import analysis

TE11_ROOT = 1.8411837813406593  # first zero of J1', any table of Bessel functions


ProbePattern = Callable[[FloatArray, FloatArray, float], tuple[ArrayLike, ArrayLike]]


def from_pattern(k: FloatArray, order: int, pattern: ProbePattern) -> Expansion:
    """Expand a function pattern(theta, phi, k) -> (e_theta, e_phi) sampled on a grid with poles.

    `theta` and `phi` are arrays (theta, phi) in radians, `k` one wavenumber; result leading
    dimension (frequency,).
    """
    wavenumbers = np.atleast_1d(np.asarray(k, float))
    rings, columns = order + 6, 2 * order + 8
    t, p = np.meshgrid(np.linspace(0, np.pi, rings), np.arange(columns) * 2 * np.pi / columns, indexing="ij")
    field = np.stack([np.stack(pattern(t, p, float(one))) for one in wavenumbers]).astype(complex)
    return Expansion(analysis(field, order), wavenumbers)


def dipole(k: FloatArray) -> Expansion:
    """Return an elementary electric dipole along x."""
    return from_pattern(k, 1, lambda t, p, _: (np.cos(t) * np.cos(p), -np.sin(p)))


def tapered_source(k: FloatArray, *, bends: tuple[float, float]) -> Expansion:
    """Return a Huygens source along x (obliquity (1 + cos theta) / 2) whose field falls by exp(-b theta^2) besides, b for E and H plane.

    Of first order: cos(phi) and sin(phi) only, as any probe of a TE11-like mode.
    """
    order = int(np.ceil(np.sqrt(80.0 * max(*bends, 0.5)))) + 8

    def pattern(t: FloatArray, p: FloatArray, _: float) -> tuple[FloatArray, FloatArray]:
        e, h = ((1.0 + np.cos(t)) / 2.0 * np.exp(-b * t**2) for b in bends)
        return e * np.cos(p), -h * np.sin(p)

    return from_pattern(k, order, pattern)


def open_waveguide(k: FloatArray, *, a: float, b: float, order: int = 14, reflection: complex = 0.0) -> Expansion:
    """Return an open-ended rectangular waveguide, broad side `a` along y, narrow `b` along x (metres).

    A. D. Yaghjian, IEEE Trans. Antennas Propag. 32(4):378-384, 1984: E plane with the wave
    impedance of TE10, H plane of the cosine aperture (from memory). First order by construction.

    Raises
    ------
    ValueError
        If TE10 does not propagate at some wavenumber.
    """
    lowest = float(np.min(k))
    if lowest * a <= np.pi:
        raise ValueError(f"a: {1e3 * a:.3g} mm, must be above {1e3 * np.pi / lowest:.3g} mm for TE10 to propagate")

    def pattern(t: FloatArray, p: FloatArray, one: float) -> tuple[FloatArray, FloatArray]:
        beta = np.sqrt(1.0 - (np.pi / (one * a)) ** 2)
        norm = 1.0 + beta + reflection * (1.0 - beta)
        x, y = one * b / 2.0 * np.sin(t), one * a / 2.0 * np.sin(t)
        e_plane = (1.0 + beta * np.cos(t) + reflection * (1.0 - beta * np.cos(t))) / norm * np.sinc(x / np.pi)
        edge = (np.pi / 2.0) ** 2 * _cosine_edge(y)
        h_plane = (np.cos(t) + beta + reflection * (np.cos(t) - beta)) / norm * edge
        return e_plane * np.cos(p), -h_plane * np.sin(p)

    return from_pattern(k, order, pattern)


def _cosine_edge(y: FloatArray) -> FloatArray:
    """cos(y) / ((pi/2)^2 - y^2), finite at y = pi/2."""
    gap = (np.pi / 2.0) ** 2 - y**2
    close = np.abs(gap) < 1e-9
    return np.where(close, 1.0 / np.pi, np.cos(y) / np.where(close, 1.0, gap))


def pyramidal_horn(
    k: FloatArray, *, a: float, b: float, slant_e: float, slant_h: float, order: int | None = None
) -> Expansion:
    """Return a pyramidal horn: cosine along y (a), uniform along x (b), quadratic phases; metres.

    Aperture integration with the obliquity (1 + cos theta) / 2; not exactly a first-order probe.
    """
    (x, wx), (y, wy) = _gauss(b, k), _gauss(a, k)
    xx, yy = (g.ravel() for g in np.meshgrid(x, y, indexing="ij"))
    weight = np.outer(wx, wy * np.cos(np.pi * y / a)).ravel()
    path = xx**2 / (2.0 * slant_e) + yy**2 / (2.0 * slant_h)
    reach = float(np.hypot(a, b) / 2.0)
    return _aperture(k, _order(k, reach, order), np.stack([xx, yy], -1), weight, 0.0 * weight, path)


def conical_horn(k: FloatArray, *, radius: float, slant: float, order: int | None = None) -> Expansion:
    """Return a conical horn with a TE11 aperture field and quadratic phase; metres. First order.

    E_x = J0(u) + J2(u) cos 2 phi, E_y = J2(u) sin 2 phi, u = 1.8412 rho / radius, polarized
    along x (dominant mode of the circular guide, any text).
    """
    rho, wr = _gauss(radius, k, centre=radius / 2.0)
    count = 4 * len(rho)
    phi = np.arange(count) * 2.0 * np.pi / count
    r, f = (g.ravel() for g in np.meshgrid(rho, phi, indexing="ij"))
    weight = np.repeat(rho * wr, count)
    u = TE11_ROOT * r / radius
    # With these signs E_phi = -sin(phi) (J0 - J2) = -2 sin(phi) J1' vanishes at the wall.
    e_x, e_y = jv(0, u) + jv(2, u) * np.cos(2 * f), jv(2, u) * np.sin(2 * f)
    place = np.stack([r * np.cos(f), r * np.sin(f)], -1)
    return _aperture(k, _order(k, radius, order), place, weight * e_x, weight * e_y, r**2 / (2.0 * slant))


def _order(k: FloatArray, reach: float, order: int | None) -> int:
    return order_of_reach(float(np.max(k)), reach) if order is None else order


def order_of_reach(k: float, reach: float) -> int:
    """Return the order that the waves of an aperture within `reach` of its centre (metres) hold at wavenumber k, to about -80 dB."""
    return int(np.ceil(order_within(k * reach, digits=4.0, least=1.0)))


def _gauss(length: float, k: FloatArray, *, centre: float = 0.0) -> tuple[FloatArray, FloatArray]:
    """Return Gauss-Legendre nodes and weights over a length about a centre, dense enough for k."""
    count = int(np.ceil(float(np.max(k)) * length / 2.0)) + 12
    nodes, weights = np.polynomial.legendre.leggauss(count)
    return np.asarray(centre + nodes * length / 2.0), np.asarray(weights * length / 2.0)


def _aperture(
    k: FloatArray, order: int, place: FloatArray, e_x: FloatArray, e_y: FloatArray, path: FloatArray
) -> Expansion:
    """Return the far field of an aperture field sampled at places (count, 2) in the plane z = 0."""

    def pattern(t: FloatArray, p: FloatArray, one: float) -> tuple[ComplexArray, ComplexArray]:
        u = unit_vector(theta=t, phi=p)[..., :2].reshape(-1, 2)
        both = np.stack([e_x, e_y], axis=-1)
        parts = [np.exp(1j * one * (some @ place.T - path)) @ both for some in np.array_split(u, 1 + len(u) // 500)]
        f_x, f_y = (column.reshape(t.shape) for column in np.concatenate(parts).T)
        obliquity = (1.0 + np.cos(t)) / 2.0
        return obliquity * (f_x * np.cos(p) + f_y * np.sin(p)), obliquity * (f_y * np.cos(p) - f_x * np.sin(p))

    return from_pattern(k, order, pattern)


def mounted(probe: Expansion, *, offset: FloatArray, tilt: FloatArray | None = None) -> Expansion:
    """Return a probe that sits off its nominal place: moved (metres) and turned in its own frame.

    Use with the straight probe's boresight field as `boresight` of `mode_response`.
    """
    turned = probe if tilt is None else probe.rotated(tilt)
    return turned.translated(offset) if np.any(np.asarray(offset)) else turned


def impure(probe: Expansion, *, leak: complex, gain: complex = 1.0) -> Expansion:
    """Return a port with finite purity and its own gain: gain (co + leak times the port turned by 90 deg)."""
    from colure.geometry.rotations import about_axis

    turned = probe.rotated(about_axis("z", np.pi / 2.0))
    return probe.with_coefficients(gain * (probe.coefficients + leak * turned.coefficients))
