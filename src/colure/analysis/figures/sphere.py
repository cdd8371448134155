"""Figures over all directions: lobes anywhere, partial powers, coverage."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

import numpy as np

from colure.analysis.figures.cuts import FarField, finer, local_maxima
from colure.geometry.conventions import ComplexArray, FloatArray
from colure.geometry.directions import tangents, unit_vector
from colure.values import holds_arrays
from colure.waves.transform import synthesis

#: Frames whose z axis is an axis of the device: rows are the new axes.
UP = {"z": np.eye(3), "y": np.array([[0.0, 0.0, 1.0], [1.0, 0.0, 0.0], [0.0, 1.0, 0.0]]),
      "x": np.array([[0.0, 1.0, 0.0], [0.0, 0.0, 1.0], [1.0, 0.0, 0.0]])}  # fmt: skip


#: The edge of a sector is drawn so much finer than its waves ask for; a parabola does the rest.
RIM_TIMES = 8


@dataclass(frozen=True)
@holds_arrays
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

    def lobes(self, *, region: float = np.pi) -> tuple[FloatArray, FloatArray]:
        """Return directions (n, 3) near the local maxima of |e|^2 and their estimated levels (n,), the highest first."""
        i, j, level = local_maxima(self.power, self.theta <= region + 1e-9)
        return np.asarray(_grid_directions(self.theta.size, self.phi.size)[i, j]), level

    def lobes_within(self, axis: FloatArray, half_angle: float) -> FloatArray:
        """Return directions (n, 3), at most 6, near the highest local maxima within a cone (radians) about an axis (3,)."""
        i, j, _ = local_maxima(self.power, np.ones(self.theta.size, bool))
        places = _grid_directions(self.theta.size, self.phi.size)[i, j]
        within = places @ axis
        inside = within >= np.cos(half_angle)
        near = ~inside & (within >= np.cos(min(half_angle + 1.5 * self.step, np.pi)))
        return np.concatenate([places[inside][:4], places[near][:2]])

    def largest_beyond(self, axis: FloatArray, angle: float, *, region: float = np.pi) -> float:
        """Return the largest sample farther than an angle (radians) from an axis (3,), within a region about +z; 0 if none."""
        away = _grid_directions(self.theta.size, self.phi.size) @ axis < np.cos(angle)
        away &= (self.theta <= region + 1e-9)[:, None]
        largest: float = np.where(away, self.power, 0.0).max()
        return float(largest)

    @property
    def step(self) -> float:
        """Between two rings, radians."""
        return float(self.theta[1])

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

    def side_weights(self, axis: str) -> FloatArray:
        """Return weights (theta, phi) with which samples of |e|^2 add up to `power_on_one_side`."""
        if axis == "z":
            return self.belt_weights(0.0, 0.5 * np.pi)
        columns = self.phi.size
        odd = np.arange(1, columns // 2 + 1, 2)
        turned = np.exp(-1j * odd[:, None] * (self.phi + (0.5 * np.pi if axis == "x" else 0.0)))
        half = np.sum(-4.0 * turned.imag / odd[:, None], axis=0) / columns
        uneven = np.pi / (self.theta.size - 1) * np.sin(self.theta)[:, None] * half
        return np.asarray(0.5 * self.belt_weights(0.0, np.pi) + uneven)

    def belt_weights(self, low: float, high: float) -> FloatArray:
        """Return weights (theta, phi) with which samples of |e|^2 add up to `power_between`."""
        by_ring = 2.0 * np.pi / self.phi.size * belt_weights(self.theta.size, round(low, 9), round(high, 9))
        return np.asarray(np.broadcast_to(by_ring[:, None], self.power.shape))

    def power_between(self, low: float, high: float) -> float:
        """Return the power radiated between two polar angles from +z, radians: exact for the sampled waves."""
        by_ring = self.power.mean(axis=1) * 2.0 * np.pi
        return float(belt_weights(self.theta.size, round(low, 9), round(high, 9)) @ by_ring)


def rim(order: int, axis: FloatArray, half_angle: float) -> FloatArray:
    """Return the directions (sample, 3) on the edge of a cone (radians) about an axis (3,) that hold waves up to an order."""
    samples = 2 * order + 4
    turn = (np.arange(samples) * 2.0 * np.pi / samples)[:, None]
    first, second = tangents(axis)
    return np.asarray(np.cos(half_angle) * axis + np.sin(half_angle) * (np.cos(turn) * first + np.sin(turn) * second))


def rim_peak(fields: ComplexArray) -> float:
    """Return the largest |e|^2 on a circle from the fields (1, sample, 3) that hold it."""
    power = np.sum(np.abs(finer(fields, RIM_TIMES * fields.shape[1])[0]) ** 2, axis=-1)
    i = int(np.argmax(power))
    left, middle, right = power[i - 1], power[i], power[(i + 1) % power.size]
    bend = left - 2.0 * middle + right
    return float(middle - (right - left) ** 2 / (8.0 * bend)) if bend < 0.0 else float(middle)


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


def _with_rings_between(power: FloatArray, theta: FloatArray) -> tuple[FloatArray, FloatArray]:
    """Return power (theta, phi) and rings with one more ring between any two; as they are where rings do not run from pole to pole.

    Along a meridian and back on the other side a power is a trigonometric polynomial of twice the waves' degree: its Fourier series tells
    the rings between exactly.
    """
    rings, columns = power.shape
    if columns % 2 or not (np.isclose(theta[0], 0.0) and np.isclose(theta[-1], np.pi)):
        return power, theta
    around = np.concatenate([power, np.roll(power[-2:0:-1], columns // 2, axis=1)])
    spectrum = np.fft.rfft(around, axis=0)
    # The highest order of an even count stands for both signs.
    spectrum[-1] *= 0.5
    finer = 2.0 * np.fft.irfft(spectrum, n=4 * (rings - 1), axis=0)[: 2 * rings - 1]
    return np.maximum(finer, 0.0), np.linspace(0.0, np.pi, 2 * rings - 1)


def coverage(power: FloatArray, theta: FloatArray, percent: tuple[float, ...]) -> FloatArray:
    """Return the values that `percent` of all solid angles do not exceed.

    Parameters
    ----------
    power
        (theta, phi) on equidistant rings, linear. A best-of envelope over states is their largest value.
    theta
        Rings in radians; a part of the sphere counts as the whole.
    """
    if not percent:
        return np.empty(0)
    power, theta = _with_rings_between(power, theta)
    # Between two rings the amplitude runs from one to the other: rings of equal level, as a dipole's, would make steps of a whole ring, and
    # chords of the power lie above it beside every null.
    amplitude = np.sqrt(power)
    ends = np.sort(np.stack([amplitude[:-1], amplitude[1:]]).reshape(2, -1), axis=0)
    peak = float(amplitude.max())
    # A level that stays is spread over a width of no account.
    wide = np.maximum(ends[1] - ends[0], 1e-9 * peak)
    area = np.broadcast_to((np.cos(theta[:-1]) - np.cos(theta[1:]))[:, None], power[:-1].shape).ravel()
    density = area / wide
    level = np.concatenate([ends[0], ends[0] + wide])
    order = np.argsort(level)
    level = level[order]
    slope = np.cumsum(np.concatenate([density, -density])[order])[:-1]
    share = np.concatenate([[0.0], np.cumsum(slope * np.diff(level))])
    return np.asarray(np.interp(np.asarray(percent) / 100.0, share / share[-1], level) ** 2)
