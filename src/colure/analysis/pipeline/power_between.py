"""Power between its samples: of a whole sphere, of a part of it, and the peak of either."""

from __future__ import annotations

import ducc0
import numpy as np
from scipy.ndimage import map_coordinates, spline_filter

from colure.analysis.pipeline.power_levels import PowerSphere
from colure.geometry.conventions import FloatArray
from colure.geometry.directions import tangents, theta_phi, unit_vector

#: Samples about the highest one that a paraboloid is laid through.
NEIGHBOURS = 9
#: Between two samples of the continuous pattern before its spline, at most.
FINE_STEP_DEG = 2.0
#: Rounds in which the highest power is looked for, each on a finer grid.
PEAK_ROUNDS = 4
#: The top of a lobe: so many dB, and at most so many radians to each side.
TOP_DB = 1.0
MOST_REACH = 0.5
#: Columns that a part of a sphere repeats at either end of its turn, for splines that go on through it.
OVERLAP = 6


class Continuous:
    """Power between its samples: the scalar spherical harmonics through a whole grid with poles, as many as its samples tell apart.

    A polynomial over theta and phi alone would leave every column free near the poles, where they lie close together.
    """

    def __init__(self, gain: FloatArray) -> None:
        rings, columns = gain.shape
        order = rings - 2
        across = min(order, (columns - 1) // 2)
        coefficients = ducc0.sht.analysis_2d(
            map=np.ascontiguousarray(gain[None]), spin=0, lmax=order, mmax=across, geometry="CC"
        )
        finer = _finer(2 * order), _finer(columns)
        fine = ducc0.sht.synthesis_2d(
            alm=coefficients, spin=0, lmax=order, mmax=across, ntheta=finer[0] // 2 + 1, nphi=finer[1], geometry="CC"
        )[0]
        # Rings go on through the poles, where phi is half a turn further.
        self._table = np.concatenate([fine, np.roll(fine[-2:0:-1], finer[1] // 2, axis=1)])
        self._spline = spline_filter(self._table, order=5, mode="grid-wrap")
        told = ducc0.sht.synthesis_2d(
            alm=coefficients, spin=0, lmax=order, mmax=across, ntheta=rings, nphi=columns, geometry="CC"
        )[0]
        #: What the harmonics leave of the samples: noise, or lobes too narrow for them.
        self._left = np.pad(gain - told, ((0, 0), (0, 1)), mode="wrap")

    @property
    def least_told(self) -> float:
        """The lowest power that its samples tell: twice as deep as they make it pass below zero between them."""
        return 2.0 * max(0.0, -float(self._table.min()))

    def at(self, theta: FloatArray, phi: FloatArray) -> FloatArray:
        """Return the power (count,) at directions in radians, never below 0."""
        return np.asarray(np.maximum(self._between(theta, phi), 0.0), np.float64)

    def _between(self, theta: FloatArray, phi: FloatArray) -> FloatArray:
        rows, columns = self._table.shape
        where = np.stack([theta * rows / (2.0 * np.pi), phi * columns / (2.0 * np.pi)])
        return np.asarray(map_coordinates(self._spline, where, order=5, mode="grid-wrap", prefilter=False), np.float64)

    def sampled_at(self, theta: FloatArray, phi: FloatArray) -> FloatArray:
        """Return the power (count,) as the samples about each direction read it: their noise counts, and so do their narrow lobes."""
        rows, columns = (size - 1 for size in self._left.shape)
        left = map_coordinates(self._left, np.stack([theta * rows / np.pi, phi * columns / (2.0 * np.pi)]), order=1)
        return np.asarray(np.maximum(self._between(theta, phi) + left, 0.0), np.float64)

    def peak(self, gain: FloatArray) -> tuple[FloatArray, float]:
        """Return (direction (3,), value) of the highest power, looked for about the samples (theta, phi) it began with."""
        theta = np.linspace(0.0, np.pi, gain.shape[0])
        phi = np.arange(gain.shape[1]) * 2.0 * np.pi / gain.shape[1]
        every = unit_vector(theta=theta[:, None], phi=phi[None, :]).reshape(-1, 3)
        best, top, reach = every[int(np.argmax(gain))], float(gain.max()), float(theta[1])
        steps = np.linspace(-1.0, 1.0, 2 * NEIGHBOURS + 1)
        a, b = (one.ravel() for one in np.meshgrid(steps, steps))
        for _ in range(PEAK_ROUNDS):
            first, second = tangents(best)
            near = best + reach * (a[:, None] * first + b[:, None] * second)
            near /= np.linalg.norm(near, axis=1, keepdims=True)
            level = self.at(*theta_phi(near))
            best, top = near[int(np.argmax(level))], float(level.max())
            reach *= 2.0 / NEIGHBOURS
        # Noise moves a flat top far: a paraboloid over everything within 1 dB of it holds still.
        first, second = tangents(best)
        reach = float(theta[1])
        for _ in range(PEAK_ROUNDS):
            near = best + reach * (a[:, None] * first + b[:, None] * second)
            near /= np.linalg.norm(near, axis=1, keepdims=True)
            level = self.at(*theta_phi(near))
            inside = level > 10.0 ** (-TOP_DB / 10.0) * top
            reach *= float(np.clip(2.0 * np.sqrt(inside.mean()), 0.3, 1.5))
            reach = min(reach, MOST_REACH)
        direction, _ = _top_of(near[inside], level[inside], best, top)
        return direction, float(self.at(*theta_phi(direction[None]))[0])

    def sky(self, frame: FloatArray, *, least_rings: int) -> tuple[FloatArray, FloatArray]:
        """Return (theta, power (theta, phi)) on a grid with poles about the z axis of a frame (rows: its axes)."""
        theta = np.linspace(0.0, np.pi, least_rings)
        phi = np.arange(2 * (least_rings - 1)) * np.pi / (least_rings - 1)
        d = unit_vector(theta=theta[:, None], phi=phi[None, :]) @ frame
        t, p = theta_phi(d)
        return theta, self.at(t.ravel(), p.ravel()).reshape(theta.size, phi.size)


class PowerOfRegion:
    """Power between the samples of a part of the sphere about the front pole, rings and columns over a full turn."""

    def __init__(self, theta: FloatArray, gain: FloatArray) -> None:
        self._columns, self._step, self._last = gain.shape[1], float(theta[1]), float(theta[-1])
        # Rings go on through the front pole, where phi is half a turn further.
        through = np.concatenate([np.roll(gain[:0:-1], self._columns // 2, axis=1), gain])
        self._pole = len(gain) - 1.0
        self._around = np.pad(through, ((0, 0), (OVERLAP, OVERLAP)), mode="wrap")

    def at(self, theta: FloatArray, phi: FloatArray) -> FloatArray:
        """Return the power (count,) at directions in radians, never below 0; nan beyond the last ring."""
        turn = np.mod(phi, 2.0 * np.pi) * self._columns / (2.0 * np.pi)
        where = np.stack([theta / self._step + self._pole, turn + OVERLAP])
        power = map_coordinates(self._around, where, order=3, mode="nearest")
        return np.where(theta <= self._last + 1e-9, np.maximum(power, 0.0), np.nan)


def _finer(count: int) -> int:
    """Return a multiple of a number of samples over a full turn that leaves at most `FINE_STEP_DEG` between two."""
    return count * max(1, int(np.ceil(360.0 / FINE_STEP_DEG / count)))


def sampled_peak(sphere: PowerSphere, gain: FloatArray) -> tuple[FloatArray, float]:
    """Return (direction (3,), value) of the top of a paraboloid through the highest sample and its nearest ones, in dB."""
    directions = unit_vector(theta=sphere.theta[:, None], phi=sphere.phi[None, :]).reshape(-1, 3)
    flat = gain.ravel()
    top = directions[int(np.argmax(flat))]
    # A pole is sampled by every column: one of them is enough.
    _, once = np.unique(np.round(directions, 7), axis=0, return_index=True)
    near = once[np.argsort(-(directions[once] @ top))[: 2 * NEIGHBOURS]]
    return _top_of(directions[near], flat[near], top, float(flat.max()))


def _top_of(near: FloatArray, power: FloatArray, best: FloatArray, highest: float) -> tuple[FloatArray, float]:
    """Return (direction (3,), value) of the paraboloid's top through powers at directions (n, 3), in dB; `best` if it has none."""
    first, second = tangents(best)
    a, b = near @ first, near @ second
    level = np.log(np.maximum(power, 1e-300))
    c = np.linalg.lstsq(np.stack([np.ones_like(a), a, b, a * a, a * b, b * b], axis=-1), level, rcond=None)[0]
    hessian = np.array([[2.0 * c[3], c[4]], [c[4], 2.0 * c[5]]])
    if np.linalg.det(hessian) <= 0.0 or c[3] >= 0.0:
        return best, highest
    at = -np.linalg.solve(hessian, c[1:3])
    if float(np.hypot(*at)) > float(np.hypot(a, b).max()):
        return best, highest
    direction = best + at[0] * first + at[1] * second
    return direction / np.linalg.norm(direction), float(np.exp(c[0] + 0.5 * c[1:3] @ at))
