"""Elementary electric and magnetic dipoles in closed form.

Units with eta = 1. A site carries an electric current moment p and a magnetic one m, both
scaled by one complex weight per frequency. With g = exp(-jkr)/(4 pi r) and u the unit vector
from source to observer,

    E = -jk g [a p - b u (u.p)] + (jk + 1/r) g u x m
    H = -jk g [a m - b u (u.m)] - (jk + 1/r) g u x p
    a = 1 + 1/(jkr) - 1/(kr)^2,   b = 1 + 3/(jkr) - 3/(kr)^2

(the exact field of a Hertzian dipole and its dual: any electromagnetics text, derivable).
Radiated power is the sum of what every current does on every field, self terms
k^2 |p|^2 / (12 pi); received waves follow from the reaction theorem.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import cached_property
from typing import Any

import numpy as np
from numpy.typing import ArrayLike, NDArray
from scipy.spatial import cKDTree

from colure.geometry.conventions import ComplexArray, FloatArray
from colure.geometry.rotations import RigidMotion
from colure.values import holds_arrays

#: Sources of which all pairs with the others are held at once; bounds the memory.
SITES_AT_ONCE = 200
#: Sources nearer to each other than this are in one place: closer by, the reaction's real part drowns in the imaginary one's rounding.
SAME_PLACE_M = 1e-6

#: Pairs of many placements that are worked out together.
PAIRS_AT_ONCE = 8192
#: Frequencies whose phases are products of the one before; 32 products keep 14 digits.
PRODUCTS_IN_A_ROW = 32


@dataclass(frozen=True)
@holds_arrays
class Cluster:
    """Dipole sites of an antenna in its own frame.

    position, electric, magnetic
        (..., sites, 3); metres and unit moments (complex allowed). Leading dimensions are
        placements of the same antenna.
    weights
        (frequency, sites) complex.
    frequency_hz
        (frequency,).
    efficiency
        (frequency,) radiated over accepted power.
    """

    frequency_hz: FloatArray
    position: FloatArray
    electric: ComplexArray
    magnetic: ComplexArray
    weights: ComplexArray
    efficiency: FloatArray

    @property
    def k(self) -> FloatArray:
        """Wavenumbers in rad/m, shape (frequency,)."""
        return np.asarray(2.0 * np.pi * self.frequency_hz / 299_792_458.0)

    def at(self, index: int) -> Cluster:
        """Return the cluster at one of its frequencies alone."""
        one = slice(index, index + 1)
        return replace(
            self, frequency_hz=self.frequency_hz[one], weights=self.weights[one], efficiency=self.efficiency[one]
        )

    def moved(self, motion: RigidMotion) -> Cluster:
        """Return the cluster (without leading dimensions) carried by rigid motions (...)."""
        return Cluster(
            self.frequency_hz,
            motion.points(self.position),
            np.asarray(self.electric @ np.swapaxes(motion.rotation, -1, -2)),
            np.asarray(self.magnetic @ np.swapaxes(motion.rotation, -1, -2)),
            self.weights,
            self.efficiency,
        )

    def _placements(self, some: slice) -> Cluster:
        """Return some of the placements; a cluster without leading dimensions as it is."""
        if self.position.ndim != 3:
            return self
        return replace(self, position=self.position[some], electric=self.electric[some], magnetic=self.magnetic[some])

    def mirrored(self, normal: ArrayLike, offset: float, reflection: complex) -> Cluster:
        """Return the image in the plane normal . x = offset, scaled by a reflection factor.

        Image of a conductor: tangential p and normal m change sign.
        """
        n = np.asarray(normal, float)
        flip = np.eye(3) - 2.0 * np.outer(n, n)
        position = self.position @ flip + 2.0 * offset * n
        return Cluster(
            self.frequency_hz,
            position,
            -(self.electric @ flip),
            self.magnetic @ flip,
            self.weights * reflection,
            self.efficiency,
        )

    def power(self) -> FloatArray:
        """Return the radiated power per frequency in closed form, shape (frequency,)."""
        return self._power

    @cached_property
    def _power(self) -> FloatArray:
        moments = np.sum(np.abs(self.electric) ** 2, axis=-1) + np.sum(np.abs(self.magnetic) ** 2, axis=-1)
        out = self.k**2 / (12.0 * np.pi) * (np.abs(self.weights) ** 2 @ moments + self._in_one_place())
        # The reaction of conjugated currents: p2 -> p*, m2 -> -m* turns p2.E - m2.H into p*.E + m*.H.
        for start in range(0, len(self.position), SITES_AT_ONCE):
            some = slice(start, start + SITES_AT_ONCE)
            pairs = PairGeometry.of(
                self.position[some],
                self.electric[some],
                self.magnetic[some],
                self.position,
                np.conj(self.electric),
                -np.conj(self.magnetic),
            )
            for index, (k, w) in enumerate(zip(self.k, self.weights, strict=True)):
                mutual = w[some] @ pairs.kernel(np.array([k]))[0] @ np.conj(w)
                out[index] -= 0.5 * mutual.real
        return np.asarray(out)

    def _in_one_place(self) -> FloatArray:
        """Return what sources in the very same place add to the sum of squared moments, shape (frequency,).

        There the general reaction has no finite imaginary part; the real part's limit is that of one source of the summed moment.
        """
        pairs = cKDTree(self.position).query_pairs(SAME_PLACE_M, output_type="ndarray")
        one, two = pairs[:, 0], pairs[:, 1]
        moments = sum(np.sum(part[one] * np.conj(part[two]), axis=-1) for part in (self.electric, self.magnetic))
        return np.asarray(2.0 * ((self.weights[:, one] * np.conj(self.weights[:, two])) @ moments).real)

    def far_field(self, direction: ArrayLike) -> ComplexArray:
        """Return Cartesian lim r e^{jkr} E normalized to gain, shape (frequency, count, 3).

        |.|^2 is the gain (radiated power divided by `efficiency` is the accepted power).
        `direction` (count, 3) holds unit vectors in the cluster's frame.
        """
        u = np.atleast_2d(np.asarray(direction, float))
        phase = np.exp(1j * self.k[:, None, None] * (u @ self.position.T)) * self.weights[:, None, :]
        sum_p = np.einsum("fds,sc->fdc", phase, self.electric)
        sum_m = np.einsum("fds,sc->fdc", phase, self.magnetic)
        across = sum_p - u * np.sum(sum_p * u, axis=-1, keepdims=True)
        field = (-1j * self.k[:, None, None] / (4.0 * np.pi)) * (across - np.cross(u, sum_m))
        scale = np.sqrt(2.0 * np.pi * self.efficiency / self.power())
        return np.asarray(field * scale[:, None, None])

    def field_at(self, points: ArrayLike) -> ComplexArray:
        """Return Cartesian E at points (count, 3) with the far field's normalization."""
        xyz = np.atleast_2d(np.asarray(points, float))
        out = np.empty((self.k.size, len(xyz), 3), complex)
        for start in range(0, len(xyz), 1000):  # a block of observers at a time bounds the memory
            block = xyz[start : start + 1000]
            for axis in range(3):
                unit = np.zeros((len(block), 3))
                unit[:, axis] = 1.0
                pairs = PairGeometry.of(
                    self.position,
                    self.electric,
                    self.magnetic,
                    block,
                    unit.astype(complex),
                    np.zeros_like(unit, complex),
                )
                kernel = pairs.kernel(self.k)
                out[:, start : start + 1000, axis] = np.einsum("fs,fso->fo", self.weights, kernel)
        scale = np.sqrt(2.0 * np.pi * self.efficiency / self.power())
        return out * scale[:, None, None]


@dataclass(frozen=True)
@holds_arrays
class PairGeometry:
    """Everything about (source, observer) pairs that does not depend on frequency, all over 4 pi r.

    With A = p1.p2 - m1.m2, R = (u.p1)(u.p2) - (u.m1)(u.m2) and C = p2.(u x m1) + m2.(u x p1) the reaction of a pair is
    exp(-jkr) (jk far + near + nearest / (jk)): far = (R + C - A) / (4 pi r), near = (3 R + C - A) / (4 pi r^2),
    nearest = (3 R - A) / (4 pi r^3).
    """

    distance: FloatArray
    far: ComplexArray
    near: ComplexArray
    nearest: ComplexArray

    @classmethod
    def of(
        cls, r1: FloatArray, p1: ComplexArray, m1: ComplexArray, r2: FloatArray, p2: ComplexArray, m2: ComplexArray
    ) -> PairGeometry:
        """Build from source places/moments (..., s, 3) and observer places/moments (..., o, 3)."""
        squared = (r2[..., None, :, 0] - r1[..., :, None, 0]) ** 2
        for axis in (1, 2):
            squared += (r2[..., None, :, axis] - r1[..., :, None, axis]) ** 2
        same = squared < SAME_PLACE_M**2
        safe = np.sqrt(np.where(same, 1.0, squared))
        # u.p is (r2 - r1).p / r, and p2.(r x m1) = (p2 x r2).m1 - p2.(r1 x m1): products of small matrices throughout.
        aligned = _products((p1, -m1), (p2, m2))
        up1, um1 = (x @ _across(r2) - _dots(x, r1) for x in (p1, m1))
        up2, um2 = (_across(_dots(x, r2)) - r1 @ _across(x) for x in (p2, m2))
        crossed = _products((m1, _cross(m1, r1), p1, _cross(p1, r1)), (_cross(p2, r2), p2, _cross(m2, r2), m2))
        scale = ~same / (4.0 * np.pi * safe)
        radial = (up1 * up2 - um1 * um2) * (scale / safe**2)
        aligned *= scale
        rest = crossed * (scale / safe) - aligned
        return cls(safe, radial + rest, (3.0 * radial + rest) / safe, (3.0 * radial - aligned) / safe**2)

    def kernel(self, k: FloatArray) -> ComplexArray:
        """Return the reaction of each pair, shape (..., frequency, s, o)."""
        wave = k[:, None, None]
        shown = [part[..., None, :, :] for part in (self.distance, self.far, self.near, self.nearest)]
        distance, far, near, nearest = shown
        return np.asarray(np.exp(-1j * wave * distance) * (1j * wave * far + near + nearest / (1j * wave)))

    def reaction(self, k: FloatArray, source_weights: ComplexArray, observer_weights: ComplexArray) -> ComplexArray:
        """Return the weighted sum over all pairs, shape (..., frequency), of weights (frequency, s) and (frequency, o).

        From one frequency to the next the phase grows by the same step on an equidistant grid: a product instead of an
        exponential, begun anew every `PRODUCTS_IN_A_ROW` frequencies.
        """
        steps = np.diff(k)
        even = k.size > 2 and bool(np.ptp(steps) <= 1e-9 * abs(steps[0]))
        step = np.exp(-1j * steps[0] * self.distance) if even else None
        out = np.empty((*self.distance.shape[:-2], k.size), complex)
        wave = np.empty(0)
        for index, one in enumerate(k):
            if step is None or index % PRODUCTS_IN_A_ROW == 0:
                wave = np.exp(-1j * one * self.distance)
            else:
                wave *= step
            part = self.far * (1j * one)
            part += self.near
            part += self.nearest * (-1j / one)
            part *= wave
            seen = part @ observer_weights[index]
            out[..., index] = seen @ source_weights[index]
        return out


def _cross(one: NDArray[np.inexact[Any]], two: NDArray[np.inexact[Any]]) -> ComplexArray:
    """Return cross products of rows (..., count, 3), complex; several times as quick as the general one for few rows."""
    a, b, c = one[..., 0], one[..., 1], one[..., 2]
    x, y, z = two[..., 0], two[..., 1], two[..., 2]
    out = np.empty((*np.broadcast_shapes(a.shape, x.shape), 3), complex)
    out[..., 0] = b * z - c * y
    out[..., 1] = c * x - a * z
    out[..., 2] = a * y - b * x
    return out


def _dots(one: ComplexArray, two: FloatArray) -> ComplexArray:
    """Return the dot products (..., count, 1) of rows."""
    return np.asarray(np.einsum("...c,...c->...", one, two)[..., None])


def _across(rows: NDArray[np.inexact[Any]]) -> ComplexArray:
    """Return rows (..., count, n) as columns (..., n, count), complex."""
    return np.asarray(np.swapaxes(rows, -1, -2), complex)


def _products(one: tuple[ComplexArray, ...], two: tuple[ComplexArray, ...]) -> ComplexArray:
    """Return sums of dot products of every source's rows with every observer's, (..., s, o)."""
    total = one[0] @ _across(two[0])
    for left, right in zip(one[1:], two[1:], strict=True):
        total += left @ _across(right)
    return np.asarray(total)


def transmission(
    source: Cluster,
    receiver: Cluster,
    *,
    source_power: FloatArray,
    receiver_power: FloatArray,
    moving: bool = False,
) -> ComplexArray:
    """Return S21 between two clusters in one frame, shape (..., frequency).

    Reaction theorem with power waves: S21 = reaction / (4 sqrt(P1 P2)), losses included
    through both efficiencies. Far apart, |S21|^2 is Friis' G1 G2 (lambda / 4 pi R)^2.
    `source_power` and `receiver_power` are `Cluster.power()` of the two, computed once.
    `moving`: the placements are those at each frequency's own moment; shape (frequency,).
    """
    total = _reaction_moving(source, receiver) if moving else _reaction(source, receiver)
    scale = np.sqrt(source.efficiency * receiver.efficiency / (source_power * receiver_power))
    return np.asarray(-0.25 * total * scale)


def _reaction(source: Cluster, receiver: Cluster) -> ComplexArray:
    """Return the reaction (..., frequency) of two clusters, so many placements at once as the processor's cache holds."""
    rows = max(1, PAIRS_AT_ONCE // (source.position.shape[-2] * receiver.position.shape[-2]))
    places = [part.shape[0] for part in (source.position, receiver.position) if part.ndim == 3]
    if not places or places[0] <= rows:
        return _pairs(source, receiver).reaction(source.k, source.weights, receiver.weights)
    parts = []
    for start in range(0, places[0], rows):
        one, two = (part._placements(slice(start, start + rows)) for part in (source, receiver))
        parts.append(_pairs(one, two).reaction(source.k, source.weights, receiver.weights))
    return np.concatenate(parts)


def _reaction_moving(source: Cluster, receiver: Cluster) -> ComplexArray:
    """Return the reaction (frequency,) of two clusters of which every frequency has its own placement."""
    rows = max(1, PAIRS_AT_ONCE // (source.position.shape[-2] * receiver.position.shape[-2]))
    out = np.empty(source.k.size, complex)
    for start in range(0, source.k.size, rows):
        some = slice(start, start + rows)
        pairs = _pairs(source._placements(some), receiver._placements(some))
        wave = source.k[some, None, None]
        kernel = pairs.far * (1j * wave) + pairs.near + pairs.nearest / (1j * wave)
        kernel *= np.exp(-1j * wave * pairs.distance)
        seen = kernel @ receiver.weights[some, :, None]
        out[some] = (source.weights[some, None, :] @ seen)[:, 0, 0]
    return out


def _pairs(source: Cluster, receiver: Cluster) -> PairGeometry:
    return PairGeometry.of(
        source.position, source.electric, source.magnetic, receiver.position, receiver.electric, receiver.magnetic
    )
