"""The beam's peak, and cuts on great circles through it.

A field on a great circle, in fixed Cartesian components, is a trigonometric polynomial of degree
N + 1: some 2 N + 4 samples hold the whole cut, and a Fourier transform draws it as finely as wanted.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Literal

import numpy as np

from colure.geometry.conventions import (
    BoolArray,
    ComplexArray,
    FloatArray,
    Handedness,
    IntArray,
    amplitude_from_db,
    power_db,
)
from colure.geometry.directions import cross, phi_hat, tangents, theta_hat, theta_phi, unit_vector
from colure.geometry.polarization import from_cartesian
from colure.values import holds_arrays
from colure.waves.scattered import Sampler
from colure.waves.transform import synthesis

#: Samples of a cut per degree of the order: 0.1 deg at N = 40, finer for sharper beams.
CUT_STEP_TIMES_ORDER_DEG = 4.0
COARSE_STEPS_PER_ORDER = 2.6
#: The nine-point stencils about a maximum shrink by this, to the last of so many sizes; a climb takes so many steps at most.
SHRINK, ROUNDS, MOST_ROUNDS = 0.25, 4, 16
#: Steps of the peak's own climb at most: a fan beam's ridge is long.
PEAK_ROUNDS = 200
#: A lobe this near to the highest, as far as a paraboloid through nine samples tells, may be the highest; so many are climbed.
MAY_BE_HIGHEST, MOST_CANDIDATES = 0.9, 4
#: First stencil in steps of the samples: the top lies within half a step, and a wider one would look into the next lobe.
FIRST_STENCIL = 0.5
#: A direction more than 90 deg from the peak within 1 dB of it: a ring of maxima, or beams back to back.
OMNIDIRECTIONAL = 10.0**-0.1
#: A wave whose ellipse is longer than this over its width has an E plane (IEEE Std 145: linearly polarized antennas only).
LINEAR_DB = 10.0
#: A wave with an axial ratio below this is drawn as a circular one (common practice, no source).
CIRCULAR_BELOW_DB = 3.0
#: The declared co-polar vector is the E plane's while the ellipse lies this near to it and the beam this near to +z.
TILT_DEG, FORWARD_DEG = 15.0, 60.0
#: First stencil along the edge of a region, as a share of what the waves resolve, and how often it is looked there.
EDGE_STENCIL, EDGE_ROUNDS = 0.5, 10
#: 1 + cos theta this small is -z itself, where Ludwig's third vectors are not defined.
BEHIND = 1e-12
#: Beyond this polar angle Ludwig's third vectors turn so fast about -z that they name no plane.
BEHIND_DEG = 120.0

Component = Literal["intensity", "co"]
#: Where the E plane comes from: the declared co-polar vector, or the ellipse's major axis.
CutPlanes = Literal["declared", "ellipse"]
#: A maximum that bends by less than this share of its other direction is a ridge: nothing moves along it.
FLAT = 1e-4
#: Figures need no more digits than this of the compiled transform.
ACCURACY = 1e-10


@dataclass(frozen=True)
@holds_arrays
class Beam:
    """The peak of a pattern: direction (3,), the E plane's tangent there (3,), intensity |e|^2.

    plane
        Where the tangent comes from: see `e_plane`.
    """

    direction: FloatArray
    tangent: FloatArray
    intensity: float
    plane: CutPlanes = "declared"


@dataclass(frozen=True)
@holds_arrays
class GreatCircleCut:
    """A co-polar and cross-polar great-circle cut through the peak; angle in degrees.

    of
        What widths, lobes and nulls are read from: the radiation intensity of both components, or the co-polar one's.
    cos_theta
        Cosine (angle,) of every direction's angle from +z; None where nobody worked it out.
    """

    angle_deg: FloatArray
    co: ComplexArray
    cross: ComplexArray
    of: Component = "intensity"
    cos_theta: FloatArray | None = None

    @property
    def amplitude(self) -> FloatArray:
        """Amplitudes (angle,) that widths, lobes and nulls are read from."""
        return np.asarray(np.abs(self.co) if self.of == "co" else np.hypot(np.abs(self.co), np.abs(self.cross)))


def in_hand(co: ComplexArray, cross: ComplexArray, hand: Handedness) -> tuple[ComplexArray, ComplexArray]:
    """Return the component of this hand and the other one, from a right-handed pair (co, cross, d); that pair itself for `hand` 0.

    |x + j y| / sqrt(2) is the right-hand component of (theta, phi) as of the Ludwig-3 pair (IEEE Std 145, exp(+jwt)).
    """
    if not hand:
        return co, cross
    half = np.sqrt(0.5)
    return half * (co + 1j * hand * cross), half * (co - 1j * hand * cross)


def cuts_in_hand(cuts: dict[str, GreatCircleCut], hand: Handedness) -> dict[str, GreatCircleCut]:
    """Return Ludwig-3 cuts with `co` the component of this hand and `cross` the other one, as `in_hand`: defined at -z too."""
    if not hand:
        return cuts
    pairs = {name: in_hand(one.co, one.cross, hand) for name, one in cuts.items()}
    return {name: replace(one, co=pairs[name][0], cross=pairs[name][1], cos_theta=None) for name, one in cuts.items()}


def hand_of(cuts: dict[str, GreatCircleCut]) -> Handedness:
    """Return the stronger hand at the peak (angle 0) of Ludwig-3 cuts where the axial ratio is below `CIRCULAR_BELOW_DB`; else 0."""
    hand: Handedness = 0
    for one in cuts_in_hand(cuts, 1).values():
        peak = int(np.argmin(np.abs(one.angle_deg)))
        right, left = float(np.abs(one.co[peak])), float(np.abs(one.cross[peak]))
        if not right + left < amplitude_from_db(CIRCULAR_BELOW_DB) * abs(right - left):
            return 0
        hand = 1 if right > left else -1
    return hand


class FarField:
    """The far field of one expansion (2, J), as Cartesian vectors in any directions."""

    def __init__(self, coefficients: ComplexArray) -> None:
        self.coefficients = coefficients
        self._sampler = Sampler(coefficients)
        self.order = self._sampler.order

    def at(self, directions: FloatArray) -> ComplexArray:
        """Return fields (count, 3) in unit directions (count, 3)."""
        x, y, z = directions.T
        across = np.hypot(x, y)
        safe = np.where(across > 0.0, across, 1.0)
        cp, sp = np.where(across > 0.0, x / safe, 1.0), np.where(across > 0.0, y / safe, 0.0)
        theta, phi = np.arctan2(across, z), np.arctan2(sp, cp)
        e = self._sampler.at(theta, phi, accuracy=ACCURACY)
        ct, st = np.cos(theta), np.sin(theta)
        return np.stack([e[0] * ct * cp - e[1] * sp, e[0] * ct * sp + e[1] * cp, -e[0] * st], axis=-1)

    def at_each(self, *groups: FloatArray) -> list[ComplexArray]:
        """Return the fields of several groups (..., 3) of directions from one evaluation."""
        every = self.at(np.concatenate([one.reshape(-1, 3) for one in groups]))
        ends = np.cumsum([one.size // 3 for one in groups])[:-1]
        return [part.reshape(one.shape) for part, one in zip(np.split(every, ends), groups, strict=True)]

    def power_at(self, directions: FloatArray) -> FloatArray:
        """Return |e|^2 (count,) in unit directions (count, 3)."""
        e = self.at(directions)
        return np.asarray(np.sum(e.real**2 + e.imag**2, axis=-1))


def ludwig_3(vectors: ComplexArray, directions: FloatArray, slant: float) -> tuple[ComplexArray, ComplexArray]:
    """Return (co, cross) of Cartesian fields (..., 3): the reference in the x-y plane carried from +z without turning.

    e . (s - (s.d)(d + z)/(1 + d.z)), and e . d = 0. At -z what is carried there depends on the meridian: it is the one of `theta_phi`,
    as wherever components along theta and phi are turned into this pair.
    """
    below = 1.0 + directions[..., 2]
    if np.any(below <= BEHIND):
        theta, phi = theta_phi(directions)
        along_theta, along_phi = from_cartesian(vectors, theta=theta, phi=phi)
        c, s = np.cos(slant - phi), np.sin(slant - phi)
        return c * along_theta + s * along_phi, c * along_phi - s * along_theta
    share = vectors[..., 2] / below
    out = []
    for angle in (slant, slant + 0.5 * np.pi):
        c, s = np.cos(angle), np.sin(angle)
        along = c * directions[..., 0] + s * directions[..., 1]
        out.append(c * vectors[..., 0] + s * vectors[..., 1] - along * share)
    return out[0], out[1]


def components(
    vectors: ComplexArray, directions: FloatArray, slant: float, hand: Handedness
) -> tuple[ComplexArray, ComplexArray]:
    """Return co- and cross-polar parts of Cartesian fields (..., 3): the Ludwig-3 pair, or a hand and the other one (`in_hand`)."""
    if not hand:
        return ludwig_3(vectors, directions, slant)
    theta, phi = theta_phi(directions)
    return in_hand(*from_cartesian(vectors, theta=theta, phi=phi), hand)


def find_beam(
    coefficients: ComplexArray | FarField, *, slant: float, region: float = np.pi, plane: CutPlanes | None = None
) -> Beam:
    """Return the peak of |e|^2 of one expansion (2, J) within `region` (radians) of +z, to about 1e-6 rad.

    A coarse grid finds the lobes, then a paraboloid fitted to ever smaller nine-point stencils finds the top of those that
    may be the highest.
    """
    field = coefficients if isinstance(coefficients, FarField) else FarField(coefficients)
    rings = max(46, int(COARSE_STEPS_PER_ORDER * field.order))
    theta = np.linspace(0.0, np.pi, rings)
    columns = 2 * (rings - 1)
    power = np.sum(np.abs(synthesis(field.coefficients, theta, columns)) ** 2, axis=0)
    i, j, level = local_maxima(power, theta <= region + 1e-9)
    high = level >= MAY_BE_HIGHEST * level[0]
    starts = unit_vector(theta=theta[i[high]], phi=j[high] * 2.0 * np.pi / columns)[:MOST_CANDIDATES]
    size = FIRST_STENCIL * np.pi / (rings - 1)
    tops, _ = climbs(field, starts, np.full(len(starts), size), region=region, rounds=PEAK_ROUNDS)
    vectors = field.at(tops)
    best = int(np.argmax(np.sum(np.abs(vectors) ** 2, axis=-1)))
    grid = unit_vector(theta=theta[:, None], phi=np.arange(columns) * 2.0 * np.pi / columns)
    behind = (grid @ tops[best] < 0.0) & (theta <= region + 1e-9)[:, None]
    several = bool(np.max(power, where=behind, initial=0.0) >= OMNIDIRECTIONAL * power.max())
    return beam_at(tops[best], vectors[best], slant, plane=plane, several=several)


def local_maxima(power: FloatArray, known: BoolArray) -> tuple[IntArray, IntArray, FloatArray]:
    """Return ring, column and estimated height of the local maxima of samples (theta, phi) on rings with poles, the highest first.

    Heights are those of a paraboloid through the nine samples about each.

    known
        (theta,) rings that count; what lies beyond them is taken to be lower.
    """
    p = np.where(known[:, None], power, -1.0)
    beside = np.maximum(np.maximum(p, np.roll(p, 1, axis=1)), np.roll(p, -1, axis=1))
    top = (p >= beside) & known[:, None]
    top[1:] &= p[1:] >= beside[:-1]
    top[:-1] &= p[:-1] >= beside[1:]
    for pole, next_to in ((0, 1), (-1, -2)):
        top[pole] = False
        top[pole, 0] = known[pole] and bool(p[pole, 0] >= p[next_to].max())
    i, j = np.nonzero(top)
    about = power[np.clip(i[:, None] + _A.astype(int), 0, len(p) - 1), (j[:, None] + _B.astype(int)) % p.shape[1]]
    _, g, h, a, b, c = _STENCIL @ about.T
    bend = 4.0 * a * c - b * b
    inner = (i > 0) & (i < len(p) - 1) & (a < 0.0) & (bend > 0.0)
    rise = np.where(inner, (b * g * h - c * g * g - a * h * h) / np.where(inner, bend, 1.0), 0.0)
    level = p[i, j] + np.clip(rise, 0.0, p[i, j])
    ranked = np.argsort(-level, kind="stable")
    return np.asarray(i[ranked]), np.asarray(j[ranked]), np.asarray(level[ranked])


def beam_at(
    direction: FloatArray, vector: ComplexArray, slant: float, *, plane: CutPlanes | None = None, several: bool = False
) -> Beam:
    """Return the beam whose peak (3,) and field there (3,) are known; see `e_plane`."""
    tangent, origin = e_plane(direction, vector, slant, plane=plane, several=several)
    return Beam(direction, tangent, float(np.sum(np.abs(vector) ** 2)), origin)


def e_plane(
    direction: FloatArray, vector: ComplexArray, slant: float, *, plane: CutPlanes | None = None, several: bool = False
) -> tuple[FloatArray, CutPlanes]:
    """Return the tangent (3,) of the E plane at a peak (3,) with the field (3,), and where it comes from.

    The E plane of a linearly polarized antenna holds its field vector (IEEE Std 145, from memory). The declared co-polar
    vector stands for that as long as the ellipse agrees with it; the ellipse's own major axis does for beams far from +z, for
    fields that lie across the declaration and for patterns without a single beam. A circularly polarized wave has no E plane: the declared vector names one.

    plane
        Which of the two, where that was decided before.
    several
        True: there is no single beam, so that which peak was found says nothing of the declaration.
    """
    declared = declared_vector(direction, slant)
    # Far behind, references projected for two slants would not be at right angles.
    across = cross(direction, declared)
    co, x = complex(vector @ declared), complex(vector @ across)
    tilt = 0.5 * float(np.arctan2(2.0 * (co * np.conj(x)).real, abs(co) ** 2 - abs(x) ** 2))
    if plane is None:
        size = max(abs(co) ** 2 + abs(x) ** 2, 1e-300)
        ratio = abs(np.tan(0.5 * np.arcsin(np.clip(2.0 * (co * np.conj(x)).imag / size, -1.0, 1.0))))
        linear = ratio < 10.0 ** (-LINEAR_DB / 20.0)
        agrees = not several and abs(tilt) <= np.deg2rad(TILT_DEG) and direction[2] >= np.cos(np.deg2rad(FORWARD_DEG))
        plane = "ellipse" if linear and not agrees else "declared"
    if plane == "declared":
        return declared, plane
    return np.asarray(np.cos(tilt) * declared + np.sin(tilt) * across), plane


def declared_vector(direction: FloatArray, slant: float) -> FloatArray:
    """Return the declared co-polar vector (3,) in a direction (3,): Ludwig's third; far behind, the reference itself, projected."""
    if direction[2] < np.cos(np.deg2rad(BEHIND_DEG)):
        flat = np.array([np.cos(slant), np.sin(slant), 0.0])
        flat = flat - (flat @ direction) * direction
        return np.asarray(flat / np.linalg.norm(flat))
    t, p = theta_phi(direction)
    return np.asarray(np.cos(slant - p) * theta_hat(theta=t, phi=p) + np.sin(slant - p) * phi_hat(theta=t, phi=p))


def carried(tangent: FloatArray, peak: FloatArray, directions: FloatArray) -> FloatArray:
    """Return a tangent vector (3,) at the peak (3,) carried along great circles to directions (n, 3), without turning."""
    along = directions @ tangent
    below = np.maximum(1.0 + directions @ peak, 1e-12)
    return np.asarray(tangent - (along / below)[:, None] * (directions + peak))


def climbed(field: FarField, direction: FloatArray, size: float) -> FloatArray:
    """Return the local maximum of |e|^2 near a direction (3,), by paraboloids on shrinking stencils (radians)."""
    top, _ = climbs(field, direction[None], np.array([size]), rounds=PEAK_ROUNDS)
    return np.asarray(top[0])


def climbed_together(
    field: FarField, directions: FloatArray, sizes: FloatArray, *, region: float = np.pi
) -> FloatArray:
    """Return where `climbs` from several directions (n, 3) lead, (n, 3)."""
    return climbs(field, directions, sizes, region=region)[0]


def climbs(
    field: FarField, directions: FloatArray, sizes: FloatArray, *, region: float = np.pi, rounds: int = MOST_ROUNDS
) -> tuple[FloatArray, BoolArray]:
    """Climb from several directions (n, 3) at once, each with its own first stencil (n,); return where, and who arrived.

    Newton's steps on paraboloids through nine samples, which shrink; no step is longer than what has led upwards before.
    Whoever does not arrive walks along a ridge: there is no lobe where it began. Who climbs out of the region (radians about +z)
    is taken back to its edge: what lies beyond is not known.
    """
    here, size, reach = np.array(directions), np.array(sizes), np.array(sizes)
    smallest = sizes * SHRINK ** (ROUNDS - 1)
    before, level = here.copy(), np.full(len(here), -1.0)
    walking = np.ones(len(here), bool)
    for _ in range(rounds):
        at = np.flatnonzero(walking)
        if at.size == 0:
            break
        frames = np.array([tangents(d) for d in here[at]])  # (n, 2, 3)
        offset = size[at, None, None] * (_A[:, None] * frames[:, None, 0] + _B[:, None] * frames[:, None, 1])
        points = here[at, None] + offset
        points = points / np.sqrt(np.sum(points**2, axis=-1, keepdims=True))
        power = field.power_at(points.reshape(-1, 3)).reshape(at.size, 9)
        lower = power[:, 4] < level[at]
        # The last step went too far: back, and half as far next time.
        here[at[lower]] = before[at[lower]]
        reach[at[lower]] *= 0.5
        up = at[~lower]
        step = _paraboloid_tops(power[~lower])
        far = np.abs(step).max(axis=1) * size[up]
        length = np.minimum(1.0, reach[up] / np.maximum(far, 1e-300))[:, None] * step * size[up, None]
        before[up], level[up] = here[up], power[~lower, 4]
        moved = here[up] + length[:, :1] * frames[~lower, 0] + length[:, 1:] * frames[~lower, 1]
        here[up] = moved / np.sqrt(np.sum(moved**2, axis=-1, keepdims=True))
        walking[up] = (size[up] > 1.01 * smallest[up]) | (far > size[up])
        reach[up] = np.minimum(np.where(far > reach[up], 1.5, 1.0) * reach[up], 4.0 * sizes[up])
        size[up] = np.maximum(SHRINK * size[up], smallest[up])
    return to_the_edge(field, here, region), ~walking


def to_the_edge(field: FarField, directions: FloatArray, region: float) -> FloatArray:
    """Return directions (n, 3) with those outside a region (radians about +z) moved to the local maximum on its edge.

    Along their meridian to the edge, and along it by parabolas through three samples, which shrink.
    """
    if region >= np.pi - 1e-9:
        return np.asarray(directions)
    outside = directions[:, 2] < np.cos(region + 1e-9)
    if not outside.any():
        return np.asarray(directions)
    _, phi = theta_phi(directions[outside])
    size = np.full(len(phi), EDGE_STENCIL * np.pi / field.order / max(np.sin(region), 0.1))
    for _ in range(EDGE_ROUNDS):
        turned = phi + size * np.array([[-1.0], [0.0], [1.0]])
        low, here, high = field.power_at(unit_vector(theta=region, phi=turned).reshape(-1, 3)).reshape(3, -1)
        bend = low - 2.0 * here + high
        step = np.where(bend < 0.0, 0.5 * (low - high) / np.where(bend < 0.0, bend, -1.0), np.sign(high - low))
        phi = phi + size * np.clip(step, -1.0, 1.0)
        size = np.where(np.abs(step) < 1.0, SHRINK * size, size)
    out = directions.copy()
    out[outside] = unit_vector(theta=region, phi=phi)
    return out


#: Monomials of the nine-point stencil, inverted once.
_A, _B = (g.ravel() for g in np.meshgrid([-1.0, 0.0, 1.0], [-1.0, 0.0, 1.0], indexing="ij"))
_STENCIL = np.linalg.pinv(np.stack([np.ones(9), _A, _B, _A * _A, _A * _B, _B * _B], axis=-1))


def _paraboloid_tops(values: FloatArray) -> FloatArray:
    """Return where paraboloids through nine stencil values (n, 9) have their tops (n, 2), stencil units; across a ridge, the ridge."""
    c = values @ _STENCIL.T
    hessian = np.empty((len(c), 2, 2))
    hessian[:, 0, 0], hessian[:, 1, 1] = 2.0 * c[:, 3], 2.0 * c[:, 5]
    hessian[:, 0, 1] = hessian[:, 1, 0] = c[:, 4]
    bends, axes = np.linalg.eigh(hessian)
    flat = FLAT * np.abs(bends[:, :1])
    along = np.einsum("nij,ni->nj", axes, c[:, 1:3])
    steps = np.where(bends < -flat, -along / np.where(bends < -flat, bends, 1.0), 0.0)
    top = np.einsum("nij,nj->ni", axes, steps)
    best = np.argmax(values, axis=1)
    no_top = (bends[:, :1] >= 0.0) | (bends[:, 1:] > flat)
    return np.where(no_top, np.stack([_A[best], _B[best]], axis=-1), top)


def great_circle(beam: Beam, *, plane: str) -> FloatArray:
    """Return the tangent vector (3,) at the peak of the `E` or `H` plane's great circle."""
    return beam.tangent if plane == "E" else cross(beam.direction, beam.tangent)


def tangent_at(beam: Beam, angle_deg: float) -> FloatArray:
    """Return the tangent vector (3,) of the plane that lies `angle_deg` from E towards H."""
    a = np.deg2rad(angle_deg)
    return np.asarray(np.cos(a) * beam.tangent + np.sin(a) * cross(beam.direction, beam.tangent))


def circles(order: int, beam: Beam, tangents_: Sequence[FloatArray]) -> FloatArray:
    """Return the directions (circle, sample, 3) that hold whole cuts of waves up to an order."""
    samples = 2 * order + 4
    turn = (np.arange(samples) * 2.0 * np.pi / samples)[:, None]
    return np.cos(turn) * beam.direction + np.sin(turn) * np.stack(tangents_)[:, None]


def finer(few: ComplexArray, count: int) -> ComplexArray:
    """Return fields (circle, count, 3) of whole circles from the fewest samples (circle, sample, 3) that hold them."""
    samples = few.shape[1]
    spectrum = np.fft.fft(few, axis=1)
    padded = np.zeros((len(few), count, 3), complex)
    half = samples // 2
    padded[:, :half], padded[:, -half + 1 :] = spectrum[:, :half], spectrum[:, -half + 1 :]
    return np.asarray(np.fft.ifft(padded, axis=1) * (count / samples))


def cuts(
    coefficients: ComplexArray | FarField,
    beam: Beam,
    tangents_: Sequence[FloatArray],
    *,
    slant: float,
    span_deg: float = 180.0,
    region: float = np.pi,
    step_deg: float | None = None,
    of: Component = "intensity",
) -> list[GreatCircleCut]:
    """Return cuts on several great circles through the peak, each with a tangent (3,) there, -span..span degrees.

    Beyond `region` (radians) of +z nothing is known: nan. `step_deg` at most 0.5; fine enough for nulls if None.
    """
    field = coefficients if isinstance(coefficients, FarField) else FarField(coefficients)
    few = field.at_each(circles(field.order, beam, tangents_))[0]
    return cuts_of(few, beam, tangents_, slant=slant, span_deg=span_deg, region=region, step_deg=step_deg, of=of)


def cuts_of(
    few: ComplexArray,
    beam: Beam,
    tangents_: Sequence[FloatArray],
    *,
    slant: float,
    span_deg: float,
    region: float = np.pi,
    step_deg: float | None = None,
    of: Component = "intensity",
) -> list[GreatCircleCut]:
    """Return cuts as finely as wanted from the fields (circle, sample, 3) at the directions of `circles`."""
    samples = few.shape[1]
    step = min(0.5, CUT_STEP_TIMES_ORDER_DEG / (samples // 2 - 2) if step_deg is None else step_deg)
    fine = 720 * int(np.ceil(0.5 / step))
    whole = finer(few, fine)
    count = round(span_deg * fine / 360.0)
    index = np.arange(-count, count + 1)
    angle = index * 360.0 / fine
    a = np.deg2rad(angle)[:, None]
    out = []
    for tangent, values in zip(tangents_, whole, strict=True):
        directions = np.cos(a) * beam.direction + np.sin(a) * tangent
        co, x = ludwig_3(values[index % fine], directions, slant)
        outside = directions[:, 2] < np.cos(min(region + 1e-9, np.pi)) - 1e-12
        out.append(
            GreatCircleCut(angle, np.where(outside, np.nan, co), np.where(outside, np.nan, x), of, directions[:, 2])
        )
    return out


def cut(
    coefficients: ComplexArray,
    beam: Beam,
    *,
    plane: str,
    slant: float,
    span_deg: float = 180.0,
    region: float = np.pi,
) -> GreatCircleCut:
    """Return co- and cross-polar fields on the `E` or `H` plane's great circle through the peak, -span..span degrees."""
    tangent = great_circle(beam, plane=plane)
    return cuts(coefficients, beam, [tangent], slant=slant, span_deg=span_deg, region=region)[0]


def principal_cuts(
    coefficients: ComplexArray, *, slant: float, region: float = np.pi
) -> tuple[dict[str, GreatCircleCut], float]:
    """Return the cuts in both principal planes through the peak, by plane, and the peak's gain in dBi."""
    beam = find_beam(coefficients, slant=slant, region=region)
    planes = {plane: cut(coefficients, beam, plane=plane, slant=slant, region=region) for plane in ("E", "H")}
    return planes, float(power_db(beam.intensity))
