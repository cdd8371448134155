"""Where the waves seem to come from: the point about which the main beam's phase is flat."""

from __future__ import annotations

from dataclasses import dataclass
from typing import NamedTuple

import numpy as np

from colure.analysis.figures.cuts import Beam, FarField, find_beam, ludwig_3
from colure.geometry.conventions import ComplexArray, FloatArray, order_of_count
from colure.geometry.directions import tangents

#: Rings and directions per ring of the cone that is looked at.
RINGS, COLUMNS = 10, 24
ROUNDS = 8


@dataclass(frozen=True)
class PhaseCentre:
    """Phase centre in the device frame, metres, and how flat the phase is about it.

    ripple_deg, ripple_before_deg
        Rms phase over the cone, power-weighted, about the centre found and about the origin.
    expanded_m
        (3,) expanded uncertainty (k = 2) by noise of the waves; zero if none was given.
    """

    position_m: FloatArray
    ripple_deg: float
    ripple_before_deg: float
    cone_deg: float
    expanded_m: FloatArray


def phase_centre(
    coefficients: ComplexArray,
    k: float,
    *,
    slant: float,
    cone_deg: float = 10.0,
    region: float = np.pi,
    noise: float = 0.0,
    near: Beam | None = None,
    start: FloatArray | None = None,
) -> PhaseCentre:
    """Find the phase centre of the co-polar field in a cone about the beam's peak.

    A source at d adds the phase k d . u in direction u; least squares on the unwrapped phase,
    weighted with power, the cone growing so that the phase never wraps (definition: IEEE Std 145,
    from memory).

    Parameters
    ----------
    coefficients
        Of one frequency, (2, N(N+2)).
    cone_deg
        Half angle of the cone.
    noise
        Standard deviation (complex modulus) of every coefficient.
    near, start
        The beam and the centre (3,), where they are known nearly: spare the search.

    Raises
    ------
    ValueError
        If the cone is not from 0.5 to 60 deg.
    """
    if not 0.5 <= cone_deg <= 60.0:
        raise ValueError(f"cone: {cone_deg:g}, must be from 0.5 to 60 deg")
    field = FarField(coefficients)
    beam = find_beam(field, slant=slant, region=region) if near is None else near
    cone = cone_of(beam.direction, cone_deg)
    u = cone.directions
    co, _ = ludwig_3(field.at(u), u, slant)
    found = centre_in(cone, co, k, start=start)
    weight = np.abs(co) ** 2 * cone.area
    return PhaseCentre(
        found,
        _ripple_deg(u, co, weight, k, found),
        _ripple_deg(u, co, weight, k, np.zeros(3)),
        cone_deg,
        _expanded(u, co, weight, k, noise=noise, order=order_of_count(coefficients.shape[-1])),
    )


class Cone(NamedTuple):
    """Directions (n, 3) in a cone about one, their angles from it (rad), and the relative solid angles they stand for."""

    directions: FloatArray
    away: FloatArray
    area: FloatArray


def cone_of(direction: FloatArray, cone_deg: float) -> Cone:
    """Return the directions in a cone about one that a phase centre is found from."""
    angle = np.deg2rad(cone_deg) * (np.arange(RINGS) + 1.0) / RINGS
    turn = np.arange(COLUMNS) * 2.0 * np.pi / COLUMNS
    first, second = tangents(direction)
    ring = np.cos(turn)[:, None] * first + np.sin(turn)[:, None] * second
    u = np.cos(angle)[:, None, None] * direction + np.sin(angle)[:, None, None] * ring
    away = np.concatenate([[0.0], np.repeat(angle, COLUMNS)])
    # Every ring stands for a solid angle that grows with its radius.
    area = np.concatenate([[0.1], np.repeat(np.sin(angle) / np.sin(angle[0]), COLUMNS)])
    return Cone(np.concatenate([direction[None], u.reshape(-1, 3)]), away, area)


def centre_in(cone: Cone, co: ComplexArray, k: float, *, start: FloatArray | None = None) -> FloatArray:
    """Return the phase centre (3,) from co-polar fields at the directions of a cone."""
    u, away, area = cone
    weight = np.abs(co) ** 2 * area
    found = np.zeros(3) if start is None else np.asarray(start)
    for angle in np.unique(away)[3:].repeat(2) if start is None else ():
        inside = away <= angle + 1e-12
        found = found + _step(u[inside], co[inside], weight[inside], k, found)
    for _ in range(ROUNDS if start is None else 2):
        found = found + _step(u, co, weight, k, found)
    return found


def _expanded(u: FloatArray, co: ComplexArray, weight: FloatArray, k: float, *, noise: float, order: int) -> FloatArray:
    """Return the expanded uncertainty (3,) that white noise of the waves leaves in the solution.

    White coefficients give a field whose correlation between directions falls off over pi/N: drawn as such
    by spreading independent waves over the cone (sum over n, m of the harmonics' products, by the addition
    theorem for the scalar harmonics, which is exact enough a few degrees from the peak).
    """
    if noise == 0.0:
        return np.zeros(3)
    degrees = np.arange(1, order + 1)
    apart = np.clip(u @ u.T, -1.0, 1.0)
    # Co-polar component: half the power of both kinds; P_n(cos) (2n + 1)/4 pi summed over the degrees.
    series = np.concatenate([[0.0], (2.0 * degrees + 1.0) / (4.0 * np.pi)])
    covariance = noise**2 * np.polynomial.legendre.legval(apart, series)
    # Noise across a strong field turns its phase by noise / (sqrt 2 |field|).
    phase_covariance = 0.5 * covariance / np.abs(co)[:, None] / np.abs(co)[None, :]
    root = np.sqrt(weight)
    matrix = np.concatenate([k * u, np.ones((len(u), 1))], axis=1) * root[:, None]
    solver = np.linalg.pinv(matrix, rcond=1e-9)[:3] * root
    return np.asarray(2.0 * np.sqrt(np.maximum(np.diag(solver @ phase_covariance @ solver.T), 0.0)))


def _flat(u: FloatArray, co: ComplexArray, weight: FloatArray, k: float, centre: FloatArray) -> FloatArray:
    """Return the phase about a centre, its weighted mean taken off, radians."""
    turned = co * np.exp(-1j * k * (u @ centre))
    mean = np.sum(weight * turned / np.maximum(np.abs(turned), 1e-300))
    return np.asarray(np.angle(turned * np.conj(mean)))


def _step(u: FloatArray, co: ComplexArray, weight: FloatArray, k: float, centre: FloatArray) -> FloatArray:
    phase = _flat(u, co, weight, k, centre)
    root = np.sqrt(weight)
    matrix = np.concatenate([k * u, np.ones((len(u), 1))], axis=1) * root[:, None]
    # Along the beam only the bend of the cone tells: small singular values are kept, but not noise.
    solution = np.linalg.lstsq(matrix, phase * root, rcond=1e-9)[0]
    return np.asarray(solution[:3])


def _ripple_deg(u: FloatArray, co: ComplexArray, weight: FloatArray, k: float, centre: FloatArray) -> float:
    phase = _flat(u, co, weight, k, centre)
    return float(np.rad2deg(np.sqrt(np.sum(weight * phase**2) / np.sum(weight))))
