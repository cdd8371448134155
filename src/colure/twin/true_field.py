"""The closed-form far field of a simulated device at one frequency, and searches in it.

Dense evaluation and plain searches only: no spherical waves, no grids of the analysis.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np
from numpy.polynomial.chebyshev import Chebyshev, chebfit

from colure.geometry.conventions import BoolArray, ComplexArray, FloatArray
from colure.twin.sources import Cluster

#: Lobes are bounded by regions of relatively weak radiation (IEEE Std 145); taken as 1 dB below the lower one's own top.
WEAKER = 10.0**-0.1
#: Directions that are evaluated together: bounds the memory.
BLOCK = 4096
#: Largest steps of the dense search and of the cuts, radians, and the same times the device's size in wavelengths.
SKY_STEP, SKY_STEP_TIMES_SIZE = float(np.deg2rad(3.0)), 0.3
CUT_STEP, CUT_STEP_TIMES_SIZE = float(np.deg2rad(0.5)), 0.04
#: Points to a side of the little grids that close in on a maximum, how much each is smaller than the last, how many, and how often
#: they move before.
SIDE, SHRINK, ROUNDS, MOST_MOVES = 7, 0.36, 18, 60
#: Directions of a cut that are looked at together; sources from which on power is integrated instead of summed over all pairs.
CHUNK, MANY_SOURCES = 128, 1000
#: Points that a cut's square is known by between two of its samples.
NODES = 12
#: A level is passed where the amplitude is lower by this share: what only touches it stays above.
PASSES = 5e-5

LevelOver = Callable[[float | FloatArray], FloatArray]


@dataclass(frozen=True)
class _Lattice:
    """Sources on a lattice of few x, y and z: source strengths (kind, z, x, y), of which many kinds may be absent."""

    axes: tuple[FloatArray, FloatArray, FloatArray]
    kinds: tuple[int, ...]
    strength: ComplexArray

    def sums(self, u: FloatArray, k: float) -> ComplexArray:
        """Return sum of strength x exp(jk u . r) of every kind, (direction, 6)."""
        x, y, z = (np.exp(1j * k * u[:, axis, None] * self.axes[axis]) for axis in range(3))
        x, y = x.astype(self.strength.dtype), y.astype(self.strength.dtype)
        out = np.zeros((len(u), 6), complex)
        for kind, planes in zip(self.kinds, self.strength, strict=True):
            for height, plane in enumerate(planes):
                out[:, kind] += z[:, height] * np.sum((x @ plane) * y, axis=1)
        return out

    def coarse(self) -> _Lattice:
        """Return the same with half the digits, for searches."""
        return _Lattice(self.axes, self.kinds, self.strength.astype(np.complex64))


class TrueField:
    """One device at one frequency: fields in any direction, sqrt(gain)."""

    def __init__(self, device: Cluster, *, only: Callable[[FloatArray], FloatArray] | None = None) -> None:
        self.k = float(device.k[0])
        self.efficiency = float(device.efficiency[0])
        self._only = only
        moments = np.concatenate([device.electric, device.magnetic], axis=-1) * device.weights[0][:, None]
        lit = np.any(np.abs(moments) > 0.0, axis=1)
        self._position, self._moments = device.position[lit], moments[lit]
        strong = np.sum(np.abs(self._moments) ** 2, axis=1)
        self.middle = np.average(self._position, axis=0, weights=strong)
        self.size = 2.0 * float(np.max(np.linalg.norm(self._position - self.middle, axis=1)))
        self._lattice = _on_lattice(self._position, self._moments)
        self._scale = self.k / (4.0 * np.pi)
        power = self._integrated_power() if len(self._position) > MANY_SOURCES else float(device.power()[0])
        self._scale *= float(np.sqrt(2.0 * np.pi * self.efficiency / power))
        across = max(self.size * self.k / (2.0 * np.pi), 1e-9)
        self.sky_step = min(SKY_STEP, SKY_STEP_TIMES_SIZE / across)
        self.cut_step = min(CUT_STEP, CUT_STEP_TIMES_SIZE / across)

    def _integrated_power(self) -> float:
        """Return the radiated power, integrated exactly over the sphere (eta = 1)."""
        only, self._only = self._only, None
        nodes, weights = np.polynomial.legendre.leggauss(self.degree // 2 + 1)
        turn = np.arange(self.degree + 1) * 2.0 * np.pi / (self.degree + 1)
        z, t = np.meshgrid(nodes, turn, indexing="ij")
        flat = np.sqrt(1.0 - z**2)
        u = np.stack([flat * np.cos(t), flat * np.sin(t), z], axis=-1).reshape(-1, 3)
        mean = self.intensity(u).reshape(z.shape).mean(axis=1)
        self._only = only
        return float(weights @ mean) * np.pi

    def at(self, direction: FloatArray, *, coarse: bool = False) -> ComplexArray:
        """Return Cartesian far fields (count, 3) in unit directions (count, 3)."""
        u = np.atleast_2d(direction)
        lattice = self._lattice.coarse() if coarse and self._lattice is not None else self._lattice
        return np.concatenate([self._block(u[i : i + BLOCK], lattice) for i in range(0, max(len(u), 1), BLOCK)])

    def _block(self, u: FloatArray, lattice: _Lattice | None) -> ComplexArray:
        if lattice is not None:
            sums = lattice.sums(u, self.k)
        else:
            sums = np.exp(1j * self.k * (u @ self._position.T)) @ self._moments
        p, m = sums[:, :3], sums[:, 3:]
        (x, y, z), (a, b, c) = u.T, m.T
        turned = np.stack([y * c - z * b, z * a - x * c, x * b - y * a], axis=-1)
        field = -1j * self._scale * (p - u * np.sum(p * u, axis=-1, keepdims=True) - turned)
        if self._only is None:
            return np.asarray(field)
        vector = self._only(u)
        return np.asarray(np.sum(field * vector, axis=-1, keepdims=True) * vector)

    def intensity(self, direction: FloatArray, *, coarse: bool = False) -> FloatArray:
        """Return |e|^2 (count,) in unit directions (count, 3)."""
        e = self.at(direction, coarse=coarse)
        return np.asarray(np.sum(e.real**2 + e.imag**2, axis=-1))

    @property
    def degree(self) -> int:
        """Degree of |e|^2 over directions, beyond which nothing is left to 1e-12."""
        across = self.k * self.size
        return int(np.ceil(across + 6.0 * across ** (1.0 / 3.0) + 16.0))

    def local_maxima(self, region: float) -> tuple[FloatArray, FloatArray]:
        """Return directions (n, 3) and levels (n,) of the local maxima of |e|^2 within a region about +z, the highest first."""
        rings = int(np.ceil(np.pi / self.sky_step))
        theta = (np.arange(rings) + 0.5) * np.pi / rings
        columns = 2 * rings
        phi = np.arange(columns) * 2.0 * np.pi / columns
        t, p = np.meshgrid(theta[theta <= region + self.sky_step], phi, indexing="ij")
        d = np.stack([np.sin(t) * np.cos(p), np.sin(t) * np.sin(p), np.cos(t)], axis=-1)
        power = self.intensity(d.reshape(-1, 3), coarse=True).reshape(t.shape)
        power[t[:, 0] > region] = -1.0
        over = np.concatenate(
            [np.roll(power[:1], columns // 2, axis=1), power, np.roll(power[-1:], columns // 2, axis=1)]
        )
        if len(t) < rings:
            over[-1] = -1.0
        top = power >= 0.0
        for down in (0, 1, 2):
            for side in (-1, 0, 1):
                top &= power >= np.roll(over[down : down + len(t)], side, axis=1)
        places, level = d[top], power[top]
        order = np.argsort(-level, kind="stable")
        return places[order], level[order]

    def climb(self, starts: FloatArray, *, region: float = np.pi) -> FloatArray:
        """Return the maxima (n, 3) of |e|^2 near directions (n, 3), on little grids that close in on each; at the region's edge at most."""
        line = np.linspace(-1.0, 1.0, SIDE)
        a, b = (grid.ravel()[None, :, None] for grid in np.meshgrid(line, line, indexing="ij"))
        # The top lies within half a step of the highest sample; a wider grid would look into the next lobe.
        here, half = np.array(starts).reshape(-1, 3), np.full(len(starts), 0.75 * self.sky_step)
        last = 0.75 * self.sky_step * SHRINK**ROUNDS
        for _ in range(ROUNDS + MOST_MOVES):
            active = np.flatnonzero(half > last)
            if active.size == 0:
                break
            one, two = across(here[active])
            size = half[active, None, None]
            d = here[active, None] + size * (a * one[:, None] + b * two[:, None])
            d = within((d / np.linalg.norm(d, axis=-1, keepdims=True)).reshape(-1, 3), region).reshape(d.shape)
            best = np.argmax(self.intensity(d.reshape(-1, 3)).reshape(d.shape[:2]), axis=1)
            here[active] = d[np.arange(len(active)), best]
            # Along a ridge the top may be far: the grid goes there before it shrinks.
            at_border = np.maximum(np.abs(a), np.abs(b))[0, best, 0] > 0.99
            half[active] *= np.where(at_border, 1.0, SHRINK)
        return here

    def apart(self, peak: FloatArray, top: FloatArray, intensity: float) -> bool:
        """Return whether the intensity falls well below that of a top on the great circle between it and the peak: another lobe."""
        normal = np.cross(peak, top)
        if np.linalg.norm(normal) < 1e-9:
            normal = np.cross(peak, np.eye(3)[int(np.argmin(np.abs(peak)))])
        aside = np.cross(normal / np.linalg.norm(normal), peak)
        between = float(np.arccos(np.clip(top @ peak, -1.0, 1.0)))
        angle = np.arange(0.0, between, self.cut_step)[:, None]
        return bool(np.min(self.intensity(np.cos(angle) * peak + np.sin(angle) * aside)) < WEAKER * intensity)

    def edge(self, level: LevelOver, share: float, sign: float) -> float:
        """Return the angle at which the main lobe of a cut has fallen to a share of its amplitude, radians; nan if nowhere.

        A cut may leave the region and come back on its other side: where it leaves, nothing is known of the lobe any more.
        """
        wanted = float(level(0.0)[0]) * share
        angle = np.arange(0.0, np.pi, self.cut_step)
        values = np.empty(0)
        while values.size < angle.size:
            values = np.concatenate([values, level(sign * angle[values.size : values.size + CHUNK])])
            below = np.flatnonzero(np.isnan(values) | (values < wanted * (1.0 - PASSES)))
            if below.size:
                if np.isnan(values[below[0]]):
                    return float("nan")
                last = int(np.flatnonzero(values[: below[0]] >= wanted)[-1])
                return _crossing(lambda a: level(sign * a), float(angle[last]), float(angle[below[0]]), wanted)
        return float("nan")

    def lobe_and_null(self, level: LevelOver) -> tuple[float, float]:
        """Return (higher first side lobe, shallower first null) of a cut, in amplitude re its centre; nan where there is none."""
        lobes, nulls = [], []
        for sign in (1.0, -1.0):
            angle = np.arange(0.0, np.pi + np.deg2rad(2.0), self.cut_step)
            values = level(sign * angle)
            inner = np.arange(1, angle.size - 1)
            dips = inner[(values[inner] < values[inner - 1]) & (values[inner] <= values[inner + 1])]
            dips = dips[values[dips] < 0.7 * values[0]]
            if dips.size == 0:
                continue
            nulls.append(_extreme(level, sign, angle[dips[0] - 1], angle[dips[0] + 1], 1.0))
            tops = inner[(inner > dips[0]) & (values[inner] > values[inner - 1]) & (values[inner] >= values[inner + 1])]
            if tops.size:
                lobes.append(_extreme(level, sign, angle[tops[0] - 1], angle[tops[0] + 1], -1.0))
        centre = float(level(0.0)[0])
        lobe, null = (max(extremes) / centre if extremes else float("nan") for extremes in (lobes, nulls))
        return lobe, null

    def largest_on_rim(self, axis: FloatArray, half_angle: float) -> float:
        """Return the largest |e|^2 on the edge of a cone (radians) about an axis (3,)."""
        one, two = across(axis)

        def at(turn: float | FloatArray) -> FloatArray:
            t = np.atleast_1d(turn)[:, None]
            return self.intensity(np.cos(half_angle) * axis + np.sin(half_angle) * (np.cos(t) * one + np.sin(t) * two))

        turn = np.arange(8 * self.degree) * 2.0 * np.pi / (8 * self.degree)
        best = turn[int(np.argmax(at(turn)))]
        return _least(at, float(best - turn[1]), float(best + turn[1]), down=-1.0)

    def share_about(self, axis: str, low: float, high: float) -> float:
        """Return the share of the radiated power whose sine of elevation above the plane at right angles to an axis is from low to high."""
        nodes, weights = np.polynomial.legendre.leggauss(self.degree // 2 + 1)
        v = 0.5 * (high - low) * (nodes + 1.0) + low
        columns = self.degree + 1
        turn = (np.arange(columns) + 0.5) * 2.0 * np.pi / columns
        height, t = np.meshgrid(v, turn, indexing="ij")
        flat = np.sqrt(1.0 - height**2)
        parts = {"z": (0, 1, 2), "x": (1, 2, 0), "y": (2, 0, 1)}[axis]
        u = np.empty((*height.shape, 3))
        for where, values in zip(parts, (flat * np.cos(t), flat * np.sin(t), height), strict=True):
            u[..., where] = values
        ring = self.intensity(u.reshape(-1, 3)).reshape(height.shape).mean(axis=1)
        return float(0.5 * (high - low) * (weights @ ring) / (2.0 * self.efficiency))

    def exceeded(self, percent: float) -> float:
        """Return |e|^2 that a share of all solid angles does not exceed: from evenly spread directions."""
        count = int(np.clip(16.0 * np.pi / self.sky_step**2, 20_000, 400_000))
        i = np.arange(count) + 0.5
        z, turn = 1.0 - 2.0 * i / count, np.pi * (1.0 + np.sqrt(5.0)) * i
        flat = np.sqrt(1.0 - z**2)
        level = self.intensity(np.stack([flat * np.cos(turn), flat * np.sin(turn), z], axis=-1))
        return float(np.quantile(level, percent / 100.0))


def across(direction: FloatArray) -> tuple[FloatArray, FloatArray]:
    """Return two unit vectors (..., 3) at right angles to directions (..., 3) and to each other."""
    x, y, z = direction[..., 0], direction[..., 1], direction[..., 2]
    nothing = np.zeros_like(x)
    # The direction times x, or times y where it runs along x.
    one = np.where(np.abs(x)[..., None] < 0.7, np.stack([nothing, z, -y], axis=-1), np.stack([-z, nothing, x], axis=-1))
    one = one / np.linalg.norm(one, axis=-1, keepdims=True)
    a, b, c = one[..., 0], one[..., 1], one[..., 2]
    return one, np.stack([y * c - z * b, z * a - x * c, x * b - y * a], axis=-1)


def within(direction: FloatArray, region: float) -> FloatArray:
    """Return directions (n, 3) with those outside a region about +z (radians) brought to its edge."""
    if region >= np.pi - 1e-9:
        return direction
    outside: BoolArray = direction[:, 2] < np.cos(region)
    flat = np.maximum(np.hypot(direction[:, 0], direction[:, 1]), 1e-300)
    edge = np.stack(
        [
            direction[:, 0] / flat * np.sin(region),
            direction[:, 1] / flat * np.sin(region),
            np.full(len(flat), np.cos(region)),
        ],
        axis=-1,
    )
    return np.where(outside[:, None], edge, direction)


def _on_lattice(position: FloatArray, moments: ComplexArray) -> _Lattice | None:
    """Return the sources as a lattice, where that is no more than four times as many places; None where it is."""
    axes, index = [], []
    for axis in range(3):
        values, which = np.unique(np.round(position[:, axis], 10), return_inverse=True)
        axes.append(values)
        index.append(which.ravel())
    count = axes[0].size * axes[1].size * axes[2].size
    if len(position) < 32 or count > 4 * len(position):
        return None
    kinds = tuple(int(kind) for kind in np.flatnonzero(np.any(np.abs(moments) > 0.0, axis=0)))
    strength = np.zeros((len(kinds), axes[2].size, axes[0].size, axes[1].size), complex)
    for row, kind in enumerate(kinds):
        np.add.at(strength[row], (index[2], index[0], index[1]), moments[:, kind])
    return _Lattice((axes[0], axes[1], axes[2]), kinds, strength)


def _smooth(value: Callable[[FloatArray], FloatArray], low: float, high: float) -> Chebyshev:
    """Return a polynomial for a function between two angles, by values at Chebyshev points.

    Between two samples of a cut or a rim |e|^2 is a sum of few low trigonometric terms: the polynomial is exact to rounding.
    """
    half, middle = 0.5 * (high - low), 0.5 * (high + low)
    nodes = np.cos(np.pi * (np.arange(NODES) + 0.5) / NODES)
    return Chebyshev(chebfit(nodes, value(middle + half * nodes), NODES - 1), domain=[low, high])


def _inside(roots: ComplexArray, low: float, high: float) -> FloatArray:
    """Return the real ones of complex roots that lie between two angles."""
    room = 1e-9 * (high - low)
    real = roots.real[np.abs(roots.imag) < 1e-6 * (high - low)]
    return np.asarray(np.clip(real[(real > low - room) & (real < high + room)], low, high))


def _crossing(level: LevelOver, low: float, high: float, wanted: float) -> float:
    """Return the first angle between two at which an amplitude falls through a value."""
    square = _smooth(lambda a: level(a) ** 2, low, high)
    crossings = _inside(np.asarray((square - wanted**2).roots(), complex), low, high)
    if np.all(np.isfinite(square.coef)) and crossings.size:
        return float(crossings.min())
    from scipy.optimize import brentq  # seldom needed, slow to load

    return float(brentq(lambda a: float(level(a)[0]) - wanted, low, high, xtol=1e-12))


def _extreme(level: LevelOver, sign: float, low: float, high: float, down: float) -> float:
    """Return the least (down = 1) or largest (-1) amplitude between two angles."""
    return float(np.sqrt(max(_least(lambda a: level(sign * a) ** 2, float(low), float(high), down=down), 0.0)))


def _least(value: Callable[[FloatArray], FloatArray], low: float, high: float, *, down: float) -> float:
    """Return the least (down = 1) or largest (-1) value between two angles."""
    smooth = _smooth(value, low, high)
    if not np.all(np.isfinite(smooth.coef)):
        from scipy.optimize import minimize_scalar

        minimum = minimize_scalar(lambda a: down * float(value(np.array([a]))[0]), bounds=(low, high), method="bounded",
                                options={"xatol": 1e-10})  # fmt: skip
        return down * float(minimum.fun)
    turns = _inside(np.asarray(smooth.deriv().roots(), complex), low, high)
    # The function itself where the polynomial turns: the rest of its own rounding does not matter there.
    return float(down * np.min(down * value(np.concatenate([turns, [low, high]]))))
