"""The beam's peak, and cuts on great circles through it.

A field on a great circle, in fixed Cartesian components, is a trigonometric polynomial of degree
N + 1: some 2 N + 4 samples hold the whole cut, and a Fourier transform draws it as finely as wanted.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from colure.geometry.conventions import ComplexArray, FloatArray
from colure.geometry.directions import cross, phi_hat, tangents, theta_hat, theta_phi, unit_vector
from colure.waves.scattered import Sampler
from colure.waves.transform import synthesis

#: Samples of a cut per degree of the order: 0.1 deg at N = 40, finer for sharper beams.
CUT_STEP_TIMES_ORDER_DEG = 4.0
COARSE_STEPS_PER_ORDER = 2.6
#: The nine-point stencils about the peak shrink by this, and begin finer where the peak is known nearly.
SHRINK, NEAR = 0.25, 0.25
#: Figures need no more digits than this of the compiled transform.
ACCURACY = 1e-10


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

    e . (s - (s.d)(d + z)/(1 + d.z)), and e . d = 0. At -z the carried vector is not defined; s is taken there.
    """
    below = 1.0 + directions[..., 2]
    share = np.where(below > 1e-12, 1.0 / np.maximum(below, 1e-12), 0.0) * vectors[..., 2]
    out = []
    for angle in (slant, slant + 0.5 * np.pi):
        c, s = np.cos(angle), np.sin(angle)
        along = c * directions[..., 0] + s * directions[..., 1]
        out.append(c * vectors[..., 0] + s * vectors[..., 1] - along * share)
    return out[0], out[1]


def find_beam(
    coefficients: ComplexArray | FarField, *, slant: float, region: float = np.pi, near: FloatArray | None = None
) -> Beam:
    """Return the peak of |e|^2 of one expansion (2, J) within `region` (radians) of +z, to about 1e-6 rad.

    A coarse grid finds the lobe (or `near`, a direction (3,), says where it is), then a paraboloid
    fitted to ever smaller nine-point stencils finds its top.
    """
    field = coefficients if isinstance(coefficients, FarField) else FarField(coefficients)
    rings = max(46, int(COARSE_STEPS_PER_ORDER * field.order))
    size = np.pi / (rings - 1)
    if near is None:
        theta = np.linspace(0.0, np.pi, rings)
        columns = 2 * (rings - 1)
        power = np.sum(np.abs(synthesis(field.coefficients, theta, columns)) ** 2, axis=0)[theta <= region + 1e-9]
        i, j = np.unravel_index(int(np.argmax(power)), power.shape)
        direction, rounds = unit_vector(theta=theta[i], phi=j * 2.0 * np.pi / columns), 4
    else:
        direction, size, rounds = np.asarray(near), NEAR * size, 2
    direction = climbed(field, direction, size, rounds)
    return beam_at(direction, slant, float(field.power_at(direction[None])[0]))


def beam_at(direction: FloatArray, slant: float, intensity: float) -> Beam:
    """Return the beam whose peak is known."""
    t, p = theta_phi(direction)
    along = np.cos(slant - p) * theta_hat(theta=t, phi=p) + np.sin(slant - p) * phi_hat(theta=t, phi=p)
    return Beam(direction, np.asarray(along), intensity)


def climbed(field: FarField, direction: FloatArray, size: float, rounds: int = 4) -> FloatArray:
    """Return the local maximum of |e|^2 near a direction (3,), by paraboloids on shrinking stencils (radians)."""
    return np.asarray(climbed_together(field, direction[None], np.array([size]), rounds)[0])


def climbed_together(field: FarField, directions: FloatArray, sizes: FloatArray, rounds: int) -> FloatArray:
    """Climb from several directions (n, 3) at once, each with its own first stencil (n,)."""
    here = np.array(directions)
    for _ in range(rounds):
        frames = np.array([tangents(d) for d in here])  # (n, 2, 3)
        offset = sizes[:, None, None] * (_A[:, None] * frames[:, None, 0] + _B[:, None] * frames[:, None, 1])
        points = here[:, None] + offset
        points = points / np.sqrt(np.sum(points**2, axis=-1, keepdims=True))
        power = field.power_at(points.reshape(-1, 3)).reshape(len(here), 9)
        step = sizes[:, None] * np.clip([_paraboloid_top(one) for one in power], -1.0, 1.0)
        here = here + step[:, :1] * frames[:, 0] + step[:, 1:] * frames[:, 1]
        here = here / np.sqrt(np.sum(here**2, axis=-1, keepdims=True))
        sizes = SHRINK * sizes
    return np.asarray(here)


#: Monomials of the nine-point stencil, inverted once.
_A, _B = (g.ravel() for g in np.meshgrid([-1.0, 0.0, 1.0], [-1.0, 0.0, 1.0], indexing="ij"))
_STENCIL = np.linalg.pinv(np.stack([np.ones(9), _A, _B, _A * _A, _A * _B, _B * _B], axis=-1))


def _paraboloid_top(values: FloatArray) -> FloatArray:
    """Return where the paraboloid through nine stencil values has its top (stencil units)."""
    c = _STENCIL @ values
    hessian = np.array([[2.0 * c[3], c[4]], [c[4], 2.0 * c[5]]])
    if np.linalg.det(hessian) <= 0.0 or c[3] >= 0.0:
        best = int(np.argmax(values))
        return np.array([_A[best], _B[best]])
    return np.asarray(-np.linalg.solve(hessian, c[1:3]))


def great_circle(beam: Beam, *, plane: str) -> FloatArray:
    """Return the tangent vector (3,) at the peak of the `E` or `H` plane's great circle."""
    return beam.copolar if plane == "E" else cross(beam.direction, beam.copolar)


def tangent_at(beam: Beam, angle_deg: float) -> FloatArray:
    """Return the tangent vector (3,) of the plane that lies `angle_deg` from E towards H."""
    a = np.deg2rad(angle_deg)
    return np.asarray(np.cos(a) * beam.copolar + np.sin(a) * cross(beam.direction, beam.copolar))


def circles(order: int, beam: Beam, tangents_: Sequence[FloatArray]) -> FloatArray:
    """Return the directions (circle, sample, 3) that hold whole cuts of waves up to an order."""
    samples = 2 * order + 4
    turn = (np.arange(samples) * 2.0 * np.pi / samples)[:, None]
    return np.cos(turn) * beam.direction + np.sin(turn) * np.stack(tangents_)[:, None]


def cuts(
    coefficients: ComplexArray | FarField,
    beam: Beam,
    tangents_: Sequence[FloatArray],
    *,
    slant: float,
    span_deg: float = 180.0,
    region: float = np.pi,
    step_deg: float | None = None,
) -> list[Cut]:
    """Return cuts on several great circles through the peak, each with a tangent (3,) there, -span..span degrees.

    Beyond `region` (radians) of +z nothing is known: nan. `step_deg` at most 0.5; fine enough for nulls if None.
    """
    field = coefficients if isinstance(coefficients, FarField) else FarField(coefficients)
    few = field.at_each(circles(field.order, beam, tangents_))[0]
    return cuts_of(few, beam, tangents_, slant=slant, span_deg=span_deg, region=region, step_deg=step_deg)


def cuts_of(
    few: ComplexArray,
    beam: Beam,
    tangents_: Sequence[FloatArray],
    *,
    slant: float,
    span_deg: float,
    region: float = np.pi,
    step_deg: float | None = None,
) -> list[Cut]:
    """Return cuts as finely as wanted from the fields (circle, sample, 3) at the directions of `circles`."""
    samples = few.shape[1]
    step = min(0.5, CUT_STEP_TIMES_ORDER_DEG / (samples // 2 - 2) if step_deg is None else step_deg)
    fine = 720 * int(np.ceil(0.5 / step))
    spectrum = np.fft.fft(few, axis=1)
    padded = np.zeros((len(few), fine, 3), complex)
    half = samples // 2
    padded[:, :half], padded[:, -half + 1 :] = spectrum[:, :half], spectrum[:, -half + 1 :]
    whole = np.fft.ifft(padded, axis=1) * (fine / samples)
    count = round(span_deg * fine / 360.0)
    index = np.arange(-count, count + 1)
    angle = index * 360.0 / fine
    a = np.deg2rad(angle)[:, None]
    out = []
    for tangent, values in zip(tangents_, whole, strict=True):
        directions = np.cos(a) * beam.direction + np.sin(a) * tangent
        co, x = ludwig_3(values[index % fine], directions, slant)
        outside = directions[:, 2] < np.cos(min(region + 1e-9, np.pi)) - 1e-12
        out.append(Cut(angle, np.where(outside, np.nan, co), np.where(outside, np.nan, x)))
    return out


def cut(
    coefficients: ComplexArray,
    beam: Beam,
    *,
    plane: str,
    slant: float,
    span_deg: float = 180.0,
    region: float = np.pi,
) -> Cut:
    """Return co- and cross-polar fields on the `E` or `H` plane's great circle through the peak, -span..span degrees."""
    tangent = great_circle(beam, plane=plane)
    return cuts(coefficients, beam, [tangent], slant=slant, span_deg=span_deg, region=region)[0]


def principal_cuts(coefficients: ComplexArray, *, slant: float, region: float = np.pi) -> tuple[dict[str, Cut], float]:
    """Return the cuts in both principal planes through the peak, by plane, and the peak's gain in dBi."""
    beam = find_beam(coefficients, slant=slant, region=region)
    planes = {plane: cut(coefficients, beam, plane=plane, slant=slant, region=region) for plane in ("E", "H")}
    return planes, float(10.0 * np.log10(beam.intensity))
