"""Figures over all directions: lobes anywhere, partial powers, coverage."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

import numpy as np

from colure.analysis.figures.cuts import FarField
from colure.geometry.conventions import ComplexArray, FloatArray
from colure.geometry.directions import unit_vector
from colure.waves.transform import synthesis

#: Frames whose z axis is an axis of the device: rows are the new axes.
UP = {"z": np.eye(3), "y": np.array([[0.0, 0.0, 1.0], [1.0, 0.0, 0.0], [0.0, 1.0, 0.0]]),
      "x": np.array([[0.0, 1.0, 0.0], [0.0, 0.0, 1.0], [1.0, 0.0, 0.0]])}  # fmt: skip


@dataclass(frozen=True)
class Sky:
    """Total power |e|^2 (theta, phi) of one expansion on rings fine enough for its square."""

    field: FarField
    theta: FloatArray
    phi: FloatArray
    power: FloatArray

    @classmethod
    def of(cls, coefficients: ComplexArray | FarField, *, least_rings: int = 0) -> Sky:
        """Sample an expansion (2, J): |e|^2 has twice its degree. More rings where levels are counted, not integrated."""
        field = coefficients if isinstance(coefficients, FarField) else FarField(coefficients)
        order = field.order
        rings = max(2 * order + 3, least_rings)
        columns = 2 * (rings - 1)
        theta = np.linspace(0.0, np.pi, rings)
        phi = np.arange(columns) * 2.0 * np.pi / columns
        e = synthesis(field.coefficients, theta, columns)
        return cls(field, theta, phi, np.sum(e.real**2 + e.imag**2, axis=0))

    def other_lobes(self, peak: FloatArray, *, region: float = np.pi) -> FloatArray:
        """Return directions (n, 3), at most 3, near the largest local maxima of |e|^2 besides the peak (3,)."""
        p = self.power
        inner = p[1:-1]
        beside = np.maximum(np.maximum(p, np.roll(p, 1, axis=1)), np.roll(p, -1, axis=1))
        top = (inner >= np.maximum(beside[:-2], beside[2:])) & (inner >= beside[1:-1])
        top &= (self.theta[1:-1] <= region + 1e-9)[:, None]
        i, j = np.nonzero(top)
        places = _grid_directions(self.theta.size, self.phi.size)[1:-1][i, j]
        other = np.flatnonzero(places @ peak < np.cos(2.5 * self.step))
        ranked = other[np.argsort(-inner[i, j][other])][:3]
        # What lies between the samples does not matter where a lobe is so much lower.
        level = inner[i, j][ranked]
        return np.asarray(places[ranked[level >= 0.8 * level.max(initial=0.0)]])

    @property
    def step(self) -> float:
        """Between two rings, radians."""
        return float(self.theta[1])

    def largest_within(self, axis: FloatArray, half_angle: float) -> FloatArray:
        """Return the direction (3,) of the largest sample within a cone (radians) about an axis (3,)."""
        directions = _grid_directions(self.theta.size, self.phi.size)
        inside = directions @ axis >= np.cos(half_angle)
        index = np.unravel_index(int(np.argmax(np.where(inside, self.power, -1.0))), self.power.shape)
        return np.asarray(directions[index])

    def power_on_one_side(self, axis: str) -> float:
        """Return the power radiated into the hemisphere about +x or +y: exact for the sampled waves.

        Over half a turn a Fourier order m of the power integrates to pi (m = 0), 2j/m (m odd) or nothing. Orders that are
        odd are sine series over theta, of which sin(theta) picks the first (orthogonality).
        """
        if axis == "z":
            return self.power_between(0.0, 0.5 * np.pi)
        spectrum = np.fft.rfft(self.power, axis=1) / self.phi.size
        odd = np.arange(1, spectrum.shape[1], 2)
        # y > 0 is phi from 0 to pi; for x > 0 the half turn begins a quarter earlier.
        turned = spectrum[:, odd] * (np.exp(-0.5j * np.pi * odd) if axis == "x" else 1.0)
        half = np.sum(-4.0 * turned.imag / odd, axis=1)
        rings = self.theta.size - 1
        uneven = np.pi / rings * float(np.sum(half * np.sin(self.theta)))
        return 0.5 * self.power_between(0.0, np.pi) + uneven

    def power_between(self, low: float, high: float) -> float:
        """Return the power radiated between two polar angles from +z, radians: exact for the sampled waves."""
        by_ring = self.power.mean(axis=1) * 2.0 * np.pi
        return float(belt_weights(self.theta.size, round(low, 9), round(high, 9)) @ by_ring)


@lru_cache(maxsize=4)
def _grid_directions(rings: int, columns: int) -> FloatArray:
    """Return unit vectors (theta, phi, 3) of a regular grid with poles."""
    theta, phi = np.linspace(0.0, np.pi, rings), np.arange(columns) * 2.0 * np.pi / columns
    return unit_vector(theta=theta[:, None], phi=phi[None, :])


@lru_cache(maxsize=64)
def belt_weights(rings: int, low: float, high: float) -> FloatArray:
    """Return weights for int_low^high f sin(theta) dtheta of cosine polynomials sampled at `rings` rings with poles.

    f runs as a cosine series over theta (a mean over all phi is even at both poles); each cosine is
    integrated in closed form.
    """
    n = rings - 1
    k = np.arange(n + 1)
    theta = np.linspace(0.0, np.pi, rings)
    ends = np.where((k == 0) | (k == n), 0.5, 1.0)
    to_series = 2.0 / n * ends[:, None] * np.cos(np.outer(k, theta)) * ends[None, :]
    with np.errstate(divide="ignore", invalid="ignore"):
        moment = [
            np.where(
                k == 1, 0.5 * np.sin(t) ** 2, -0.5 * (np.cos((1 + k) * t) / (1 + k) + np.cos((1 - k) * t) / (1 - k))
            )
            for t in (low, high)
        ]
    return np.asarray((moment[1] - moment[0]) @ to_series)


def coverage(power: FloatArray, theta: FloatArray, percent: tuple[float, ...]) -> FloatArray:
    """Return the values that `percent` of all solid angles do not exceed.

    Parameters
    ----------
    power
        (theta, phi) on equidistant rings, linear. A best-of envelope over states is their largest value.
    theta
        Rings in radians; a part of the sphere counts as the whole.
    """
    weight = np.broadcast_to(_ring_areas(theta)[:, None], power.shape).ravel()
    peak = float(power.max())
    # Equal levels (a whole ring, say) are one step of the distribution, passed through at its middle.
    levels, which = np.unique(np.round(power.ravel() / peak, 9), return_inverse=True)
    area = np.bincount(which, weights=weight)
    ranked = np.cumsum(area)
    share = (ranked - 0.5 * area) / ranked[-1]
    return np.asarray(peak * np.interp(np.asarray(percent) / 100.0, share, levels))


def _ring_areas(theta: FloatArray) -> FloatArray:
    """Return the solid angle of every ring: from half way to its neighbours."""
    middle = 0.5 * (theta[1:] + theta[:-1])
    low, high = np.concatenate([theta[:1], middle]), np.concatenate([middle, theta[-1:]])
    return np.asarray(np.cos(low) - np.cos(high))
