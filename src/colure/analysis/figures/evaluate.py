"""Figures of one pattern at one frequency, from its expansion in spherical waves."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from colure.analysis.figures.definitions import NAMES
from colure.geometry.conventions import ComplexArray, FloatArray, order_of_count
from colure.geometry.directions import (
    azimuth_over_elevation,
    phi_hat,
    tangents,
    theta_hat,
    theta_phi,
    unit_vector,
)
from colure.geometry.polarization import Basis, ellipse, to_basis
from colure.waves.scattered import synthesis_at
from colure.waves.transform import synthesis

#: Samples of a cut per degree of the order: 0.1 deg at N = 40, finer for sharper beams.
CUT_STEP_TIMES_ORDER_DEG = 4.0
COARSE_STEPS_PER_ORDER = 2.6


@dataclass(frozen=True)
class Beam:
    """The peak of a pattern: direction (3,), co-polar vector there (3,), intensity |e|^2."""

    direction: FloatArray
    copolar: FloatArray
    intensity: float


@dataclass(frozen=True)
class Cut:
    """A co-polar and cross-polar great-circle cut through the peak; angle in degrees."""

    angle_deg: FloatArray
    co: ComplexArray
    cross: ComplexArray


def find_beam(coefficients: ComplexArray, *, slant: float, region: float = np.pi) -> Beam:
    """Return the peak of |e|^2 of one expansion (2, J) within `region` (radians) of +z, to about 1e-6 rad.

    A coarse grid finds the lobe, then a paraboloid fitted to ever smaller nine-point
    stencils finds its top.
    """
    rings = max(46, int(COARSE_STEPS_PER_ORDER * order_of_count(coefficients.shape[-1])))
    theta = np.linspace(0.0, np.pi, rings)
    columns = 2 * (rings - 1)
    field = synthesis(coefficients, theta, columns)
    power = np.sum(np.abs(field) ** 2, axis=0)[theta <= region + 1e-9]
    i, j = np.unravel_index(int(np.argmax(power)), power.shape)
    direction = unit_vector(theta=theta[i], phi=j * 2.0 * np.pi / columns)
    size = np.pi / (rings - 1)
    for _ in range(4):
        first, second = tangents(direction)
        a, b = (g.ravel() for g in np.meshgrid([-1.0, 0.0, 1.0], [-1.0, 0.0, 1.0], indexing="ij"))
        points = direction + size * (a[:, None] * first + b[:, None] * second)
        t, p = theta_phi(points)
        values = np.sum(np.abs(synthesis_at(coefficients, t, p)) ** 2, axis=0)
        step = np.clip(_paraboloid_top(a, b, values), -1.0, 1.0)
        direction = direction + size * (step[0] * first + step[1] * second)
        direction = direction / np.linalg.norm(direction)
        size *= 0.25
    t, p = theta_phi(direction)
    peak = synthesis_at(coefficients, t, p)[:, 0]
    vector = np.cos(slant - p) * theta_hat(theta=t, phi=p) + np.sin(slant - p) * phi_hat(theta=t, phi=p)
    return Beam(direction, np.asarray(vector), float(np.sum(np.abs(peak) ** 2)))


def _paraboloid_top(a: FloatArray, b: FloatArray, values: FloatArray) -> FloatArray:
    """Return where the paraboloid through nine stencil values has its top (stencil units)."""
    matrix = np.stack([np.ones_like(a), a, b, a * a, a * b, b * b], axis=-1)
    c = np.linalg.lstsq(matrix, values, rcond=None)[0]
    hessian = np.array([[2.0 * c[3], c[4]], [c[4], 2.0 * c[5]]])
    if np.linalg.det(hessian) <= 0.0:
        best = int(np.argmax(values))
        return np.array([a[best], b[best]])
    return np.asarray(-np.linalg.solve(hessian, c[1:3]))


def great_circle(beam: Beam, *, plane: str) -> FloatArray:
    """Return the tangent vector (3,) at the peak of the `E` or `H` plane's great circle."""
    return beam.copolar if plane == "E" else np.cross(beam.direction, beam.copolar)


def cut(
    coefficients: ComplexArray,
    beam: Beam,
    *,
    plane: str,
    slant: float,
    span_deg: float = 180.0,
    region: float = np.pi,
) -> Cut:
    """Return co- and cross-polar fields on a great circle through the peak, -span..span degrees.

    Beyond `region` (radians) of +z nothing is known: nan.
    """
    step_deg = min(0.5, CUT_STEP_TIMES_ORDER_DEG / order_of_count(coefficients.shape[-1]))
    count = int(np.ceil(span_deg / step_deg))
    step_deg = span_deg / count
    angle = np.asarray(np.arange(-count, count + 1) * step_deg, dtype=np.float64)
    a = np.deg2rad(angle)[:, None]
    points = np.cos(a) * beam.direction + np.sin(a) * great_circle(beam, plane=plane)
    t, p = theta_phi(points)
    e = synthesis_at(coefficients, t, p)
    co, cross = to_basis(e[0], e[1], Basis.LUDWIG_3, theta=t, phi=p, slant=slant)
    outside = t > region + 1e-9
    return Cut(angle, np.where(outside, np.nan, co), np.where(outside, np.nan, cross))


def beamwidth_deg(one: Cut, level_db: float = 10.0 * np.log10(2.0)) -> float:
    """Return the width of the main lobe `level_db` below the cut's centre; NaN if it never falls so far."""
    power = np.abs(one.co) ** 2
    centre = power.size // 2
    threshold = power[centre] * 10.0 ** (-level_db / 10.0)
    ends = []
    for side in (power[centre:], power[centre::-1]):
        below = np.flatnonzero(side < threshold)
        if below.size == 0:
            return float("nan")
        i = int(below[0])
        ends.append(_crossing(side, i, threshold))
    return float((ends[0] + ends[1]) * (one.angle_deg[1] - one.angle_deg[0]))


def _crossing(values: FloatArray, i: int, threshold: float) -> float:
    """Return the fractional index at which falling values pass a threshold between i - 1 and i.

    Inverse cubic interpolation through the four neighbours where they fall steadily.
    """
    first = min(max(i - 2, 0), values.size - 4)
    near = values[first : first + 4]
    if not np.all(np.diff(near) < 0.0):
        return float(i - 1 + (values[i - 1] - threshold) / (values[i - 1] - values[i]))
    weights = [np.prod([(threshold - near[j]) / (near[m] - near[j]) for j in range(4) if j != m]) for m in range(4)]
    return float(first + np.dot(weights, np.arange(4)))


def first_side_lobe(one: Cut) -> float:
    """Return the higher first side lobe as an amplitude ratio to the cut's centre; NaN if none."""
    level = np.abs(one.co)
    centre = level.size // 2
    found = []
    for side in (level[centre:], level[centre::-1]):
        inner = np.arange(1, side.size - 1)
        dips = inner[(side[inner] < side[inner - 1]) & (side[inner] <= side[inner + 1])]
        dips = dips[side[dips] < 0.7 * side[0]]
        if dips.size == 0:
            continue
        tops = inner[(inner > dips[0]) & (side[inner] > side[inner - 1]) & (side[inner] >= side[inner + 1])]
        if tops.size:
            found.append(_vertex(side, int(tops[0])))
    return max(found) / float(level[centre]) if found else float("nan")


def _vertex(values: FloatArray, i: int) -> float:
    """Height of the parabola through three neighbours of a maximum."""
    left, middle, right = values[i - 1 : i + 2]
    bend = left - 2.0 * middle + right
    return float(middle - (right - left) ** 2 / (8.0 * bend)) if bend < 0 else float(middle)


def evaluate(coefficients: ComplexArray, *, slant: float, region: float = np.pi) -> FloatArray:
    """Return the native values of all figures of one expansion (2, J), in the order of `NAMES`.

    Within `region` (radians) of +z; figures that need the whole sphere mean nothing with less.
    """
    beam = find_beam(coefficients, slant=slant, region=region)
    t, p = theta_phi(beam.direction)
    opposite = theta_phi(-beam.direction)
    e = synthesis_at(coefficients, np.array([t, opposite.theta]), np.array([p, opposite.phi]))
    co, cross = to_basis(e[0, 0], e[1, 0], Basis.LUDWIG_3, theta=t, phi=p, slant=slant)
    e_cut, h_cut = (
        cut(coefficients, beam, plane=plane, slant=slant, span_deg=90.0, region=region) for plane in ("E", "H")
    )
    az, el = azimuth_over_elevation(beam.direction)
    power = float(np.sum(np.abs(coefficients) ** 2))
    gain = 10.0 * np.log10(beam.intensity)
    directivity = 10.0 * np.log10(4.0 * np.pi * beam.intensity / power)
    back = np.sqrt(np.sum(np.abs(e[:, 1]) ** 2) / beam.intensity)
    values = {
        "gain_dbi": gain,
        "directivity_dbi": directivity,
        "efficiency_db": gain - directivity,
        "beam_azimuth_deg": np.rad2deg(az),
        "beam_elevation_deg": np.rad2deg(el),
        "beamwidth_e_deg": beamwidth_deg(e_cut),
        "beamwidth_h_deg": beamwidth_deg(h_cut),
        "side_lobe_e_db": first_side_lobe(e_cut),
        "side_lobe_h_db": first_side_lobe(h_cut),
        "xpd_db": np.abs(cross) / np.abs(co),
        "axial_ratio_db": np.abs(ellipse(e[0, 0], e[1, 0]).inverse_axial_ratio),
        "front_to_back_db": back,
    }
    return np.array([float(values[name]) for name in NAMES])
