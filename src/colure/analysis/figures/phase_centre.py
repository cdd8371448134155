"""Where the waves seem to come from: the point about which the main beam's phase is flat."""

from __future__ import annotations

from dataclasses import dataclass
from typing import NamedTuple

import numpy as np

from colure.analysis.figures.cuts import Beam, FarField, GreatCircleCut, carried, cuts, find_beam, tangent_at
from colure.analysis.figures.lobes import edges_deg
from colure.geometry.conventions import ComplexArray, FloatArray, order_of_count
from colure.geometry.directions import tangents
from colure.values import holds_arrays

#: Rings and directions per ring of the cone that is looked at.
RINGS, COLUMNS = 8, 24
#: Finer rings from which the phase is followed outwards without wrapping, as shares of the innermost ring; directions on each.
INNER, INNER_COLUMNS = (0.035, 0.08, 0.19, 0.43), 8
ROUNDS = 8
#: The cone ends where the beam, in the narrowest of its planes, has fallen so far: no null lies inside.
CONTOUR_DB = 10.0
PLANES = 8
SMALLEST_DEG, LARGEST_DEG = 0.01, 60.0
#: A phase that is no flatter than this (rms, 1/36 of a turn) has no centre.
RIPPLE_LIMIT_DEG = 10.0


@dataclass(frozen=True, kw_only=True)
@holds_arrays
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

    @property
    def reason(self) -> str:
        """Why it does not count, empty if it does."""
        return ripple_reason(self.ripple_deg, self.cone_deg)


def ripple_reason(ripple_deg: float, cone_deg: float) -> str:
    """Return why a phase has no centre, empty if it has one."""
    if ripple_deg <= RIPPLE_LIMIT_DEG:
        return ""
    return (
        f"undefined: the phase within {cone_deg:.3g} deg of the peak ripples by {ripple_deg:.0f} deg rms about the best point "
        f"(limit {RIPPLE_LIMIT_DEG:g} deg)"
    )


def phase_centre(
    coefficients: ComplexArray,
    k: float,
    *,
    slant: float,
    cone_deg: float | None = None,
    region: float = np.pi,
    noise: float = 0.0,
) -> PhaseCentre:
    """Find the phase centre of the co-polar field in a cone about the beam's peak.

    A source at d adds the phase k d . u in direction u; least squares on the unwrapped phase,
    weighted with power, the cone growing so that the phase never wraps (definition: IEEE Std 145,
    from memory). The co-polar vector is the E plane's at the peak, carried along great circles.

    Parameters
    ----------
    coefficients
        Of one frequency, (2, N(N+2)).
    cone_deg
        Half angle of the cone; `beam_cone_deg` if left out.
    noise
        Standard deviation (complex modulus) of every coefficient.

    Raises
    ------
    ValueError
        If the cone is not from 0.01 to 60 deg.
    """
    if cone_deg is not None and not SMALLEST_DEG <= cone_deg <= LARGEST_DEG:
        raise ValueError(f"cone: {cone_deg:g}, must be from {SMALLEST_DEG:g} to {LARGEST_DEG:g} deg")
    field = FarField(coefficients)
    beam = find_beam(field, slant=slant, region=region)
    if cone_deg is None:
        planes = [tangent_at(beam, 180.0 * i / PLANES) for i in range(PLANES)]
        cone_deg = beam_cone_deg(cuts(field, beam, planes, slant=slant, region=region), beam.direction, region=region)
    grown, cone = (cone_of(beam.direction, cone_deg, grown=how) for how in (True, False))
    co = copolar(field.at(grown.directions), beam, grown.directions)
    centre_m = centre_in(cone, co[-len(cone.directions) :], k, grown=(grown, co))
    u, co = cone.directions, co[-len(cone.directions) :]
    weight = np.abs(co) ** 2 * cone.area
    return PhaseCentre(
        position_m=centre_m,
        ripple_deg=_ripple_deg(u, co, weight, k, centre_m),
        ripple_before_deg=_ripple_deg(u, co, weight, k, np.zeros(3)),
        cone_deg=cone_deg,
        expanded_m=_expanded(u, co, weight, k, noise=noise, order=order_of_count(coefficients.shape[-1])),
    )


def copolar(vectors: ComplexArray, beam: Beam, directions: FloatArray) -> ComplexArray:
    """Return fields (n, 3) along the E plane's tangent at the peak, carried to their directions (n, 3)."""
    return np.asarray(np.sum(vectors * carried(beam.tangent, beam.direction, directions), axis=-1))


def beam_cone_deg(planes: list[GreatCircleCut], peak: FloatArray, *, region: float = np.pi) -> float:
    """Return the half angle of the cone that ends on the -10 dB contour of the narrowest of some cuts, inside the region."""
    edges = [side for one in planes for side in edges_deg(one, CONTOUR_DB)]
    inside = [side for side in edges if np.isfinite(side)]
    known = 180.0 if region >= np.pi - 1e-9 else float(np.rad2deg(region - np.arccos(np.clip(peak[2], -1.0, 1.0))))
    return float(np.clip(min([*inside, LARGEST_DEG, known]), SMALLEST_DEG, LARGEST_DEG))


class Cone(NamedTuple):
    """Directions (n, 3) in a cone about one, their angles from it (rad), and the relative solid angles they stand for."""

    directions: FloatArray
    away: FloatArray
    area: FloatArray


def cone_of(direction: FloatArray, cone_deg: float, *, grown: bool = False) -> Cone:
    """Return the directions in a cone about one that a phase centre is found from.

    Rings at the nodes of Gauss and Legendre's quadrature over solid angle.

    grown
        With finer rings inside, before the others, from which the phase is followed outwards.
    """
    nodes, weights = np.polynomial.legendre.leggauss(RINGS)
    rise = 1.0 - np.cos(np.deg2rad(cone_deg))
    angle = 2.0 * np.arcsin(np.sqrt(0.25 * rise * (nodes + 1.0)))
    rings = [(a, COLUMNS, w / COLUMNS) for a, w in zip(angle, weights, strict=True)]
    if grown:
        rings = [(share * angle[0], INNER_COLUMNS, share**2 * weights[0] / INNER_COLUMNS) for share in INNER] + rings
    first, second = tangents(direction)
    directions, away, area = [], [], []
    for a, columns, w in rings:
        turn = (np.arange(columns) * 2.0 * np.pi / columns)[:, None]
        directions.append(np.cos(a) * direction + np.sin(a) * (np.cos(turn) * first + np.sin(turn) * second))
        away.append(np.full(columns, a))
        area.append(np.full(columns, w))
    return Cone(np.concatenate(directions), np.concatenate(away), np.concatenate(area))


def centre_in(
    cone: Cone,
    co: ComplexArray,
    k: float,
    *,
    start: FloatArray | None = None,
    grown: tuple[Cone, ComplexArray] | None = None,
) -> FloatArray:
    """Return the phase centre (3,) from co-polar fields at the directions of a cone.

    start
        The centre, nearly; or else `grown`, a cone with finer rings and the fields on it, says where to begin.
    """
    centre_m = np.zeros(3) if start is None else np.asarray(start)
    if start is None and grown is not None:
        (u, away, area), fields = grown
        weight = np.abs(fields) ** 2 * area
        for angle in np.unique(away)[1:]:
            inside = away <= angle + 1e-12
            centre_m = _led(u[inside], fields[inside], weight[inside], k, centre_m, rounds=2)
    weight = np.abs(co) ** 2 * cone.area
    return _led(cone.directions, co, weight, k, centre_m, rounds=ROUNDS if start is None else 2)


def centre_rows(cone: Cone, co: ComplexArray, k: float) -> FloatArray:
    """Return rows (3, n) that turn changes of the phase (n,) at a cone's directions into the change of its phase centre, metres."""
    weight = np.abs(co) ** 2 * cone.area
    matrix, back = _design(cone.directions, weight, k)
    return np.asarray(back @ np.linalg.pinv(matrix, rcond=1e-9)[:3] * np.sqrt(weight))


def ripple_deg(cone: Cone, co: ComplexArray, k: float, centre: FloatArray) -> float:
    """Return the rms phase over a cone about a centre (3,), power-weighted, degrees."""
    return _ripple_deg(cone.directions, co, np.abs(co) ** 2 * cone.area, k, centre)


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
    matrix, back = _design(u, weight, k)
    solver = back @ np.linalg.pinv(matrix, rcond=1e-9)[:3] * np.sqrt(weight)
    return np.asarray(2.0 * np.sqrt(np.maximum(np.diag(solver @ phase_covariance @ solver.T), 0.0)))


def _flat(u: FloatArray, co: ComplexArray, weight: FloatArray, k: float, centre: FloatArray) -> FloatArray:
    """Return the phase about a centre, its weighted mean taken off, radians."""
    turned = co * np.exp(-1j * k * (u @ centre))
    mean = np.sum(weight * turned / np.maximum(np.abs(turned), 1e-300))
    return np.asarray(np.angle(turned * np.conj(mean)))


def _led(
    u: FloatArray, co: ComplexArray, weight: FloatArray, k: float, centre: FloatArray, *, rounds: int
) -> FloatArray:
    """Return a centre (3,) after so many rounds of least squares of the phase about it; their matrix is the same in every one."""
    matrix, back = _design(u, weight, k)
    solver = back @ np.linalg.pinv(matrix, rcond=1e-9)[:3] * np.sqrt(weight)
    for _ in range(rounds):
        centre = centre + solver @ _flat(u, co, weight, k, centre)
    return centre


def _design(u: FloatArray, weight: FloatArray, k: float) -> tuple[FloatArray, FloatArray]:
    """Return the weighted matrix (n, 4) of least squares, its columns of one length, and the matrix (3, 3) back to x, y, z.

    Along the beam only the bend of a narrow cone tells, 1 - cos of its angle, which k u . d would drown.
    """
    root = np.sqrt(weight)
    axis = np.sum(u * weight[:, None], axis=0)
    axis = axis / np.linalg.norm(axis)
    first, second = tangents(axis)
    # 1 - cos = half the squared distance of two unit vectors: no digits are lost.
    columns = np.stack(
        [k * (u @ first), k * (u @ second), -0.5 * k * np.sum((u - axis) ** 2, axis=1), np.ones(len(u))], axis=1
    )
    matrix = columns * root[:, None]
    length = np.sqrt(np.sum(matrix**2, axis=0))
    return matrix / length, np.stack([first, second, axis], axis=1) / length[:3]


def _ripple_deg(u: FloatArray, co: ComplexArray, weight: FloatArray, k: float, centre: FloatArray) -> float:
    phase = _flat(u, co, weight, k, centre)
    return float(np.rad2deg(np.sqrt(np.sum(weight * phase**2) / np.sum(weight))))
