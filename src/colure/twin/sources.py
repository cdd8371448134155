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

from dataclasses import dataclass
from functools import cached_property

import numpy as np
from numpy.typing import ArrayLike

from colure.geometry.conventions import ComplexArray, FloatArray
from colure.geometry.rotations import RigidMotion

#: Sources of which all pairs with the others are held at once; bounds the memory.
SITES_AT_ONCE = 200


@dataclass(frozen=True)
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
        out = self.k**2 / (12.0 * np.pi) * (np.abs(self.weights) ** 2 @ moments)
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
class PairGeometry:
    """Everything about (source, observer) pairs that does not depend on frequency."""

    distance: FloatArray
    aligned: ComplexArray
    radial: ComplexArray
    crossed: ComplexArray

    @classmethod
    def of(
        cls, r1: FloatArray, p1: ComplexArray, m1: ComplexArray, r2: FloatArray, p2: ComplexArray, m2: ComplexArray
    ) -> PairGeometry:
        """Build from source places/moments (..., s, 3) and observer places/moments (..., o, 3)."""
        apart = r2[..., None, :, :] - r1[..., :, None, :]
        distance = np.sqrt(np.einsum("...c,...c->...", apart, apart))
        same = distance < 1e-12
        safe = np.where(same, 1.0, distance)
        u = apart / safe[..., None]
        up1, up2 = np.einsum("...soc,...sc->...so", u, p1), np.einsum("...soc,...oc->...so", u, p2)
        um1, um2 = np.einsum("...soc,...sc->...so", u, m1), np.einsum("...soc,...oc->...so", u, m2)
        crossed = _triple(u, m1, p2) + _triple(u, p1, m2)
        keep = ~same
        aligned = p1 @ np.swapaxes(p2, -1, -2) - m1 @ np.swapaxes(m2, -1, -2)
        return cls(safe, aligned * keep, (up1 * up2 - um1 * um2) * keep, crossed * keep)

    def kernel(self, k: FloatArray) -> ComplexArray:
        """Return the reaction of each pair, shape (..., frequency, s, o)."""
        distance, wave = self.distance[..., None, :, :], k[:, None, None]
        kr = wave * distance
        inverse = 1.0 / kr
        g = np.exp(-1j * kr) / (4.0 * np.pi * distance)
        a = 1.0 - inverse * (1j + inverse)
        b = 1.0 - 3.0 * inverse * (1j + inverse)
        jk = 1j * wave
        along = a * self.aligned[..., None, :, :] - b * self.radial[..., None, :, :]
        return np.asarray(g * (-jk * along + (jk + 1.0 / distance) * self.crossed[..., None, :, :]))


def _triple(u: FloatArray, first: ComplexArray, second: ComplexArray) -> ComplexArray:
    """Return second . (u x first) for every pair."""
    # second . (u x first) = u . (first x second)
    return np.asarray(np.einsum("...c,...c->...", u, np.cross(first[..., :, None, :], second[..., None, :, :])))


def transmission(
    source: Cluster, receiver: Cluster, *, source_power: FloatArray, receiver_power: FloatArray
) -> ComplexArray:
    """Return S21 between two clusters in one frame, shape (..., frequency).

    Reaction theorem with power waves: S21 = reaction / (4 sqrt(P1 P2)), losses included
    through both efficiencies. Far apart, |S21|^2 is Friis' G1 G2 (lambda / 4 pi R)^2.
    `source_power` and `receiver_power` are `Cluster.power()` of the two, computed once.
    """
    pairs = PairGeometry.of(
        source.position, source.electric, source.magnetic, receiver.position, receiver.electric, receiver.magnetic
    )
    total = np.einsum("fs,...fso,fo->...f", source.weights, pairs.kernel(source.k), receiver.weights)
    scale = np.sqrt(source.efficiency * receiver.efficiency / (source_power * receiver_power))
    return np.asarray(-0.25 * total * scale)
