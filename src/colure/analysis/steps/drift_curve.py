"""A drift as a smooth random function of time, told by readings that are noisy themselves.

The change of level and phase is a Gaussian process (Rasmussen and Williams, Gaussian Processes for Machine
Learning, MIT Press 2006, equations 2.23 to 2.26; from memory) whose size and correlation time are those that the
readings make most likely. Readings that are mostly noise then correct nothing: the estimate shrinks to no drift, and
what is not known of the drift stays in its variance. No estimate that is linear in the readings has a smaller error.

Between two sessions of a run anything may have changed while nothing was measured: each has a constant of its own.
"""

from __future__ import annotations

from dataclasses import dataclass, field, replace

import numpy as np

from colure.geometry.conventions import FloatArray, IntArray
from colure.values import holds_arrays

#: A constant that all readings share is not known beforehand: its standard deviation, nepers or radians.
OPEN = 3.0
#: Standard deviation of the logarithm of size and of correlation time about what is declared (a factor of 4.5).
VAGUE = 1.5
#: Correlation times and sizes that are tried.
LENGTHS, SIZES = 7, 25
#: So many readings choose size and correlation time; the estimate itself uses all of them.
ENOUGH = 300


@dataclass(frozen=True)
class Kernel:
    """Covariance of a drift: standard deviation, correlation time (s), and whether it is smooth or a random walk."""

    size: float
    length_s: float
    smooth: bool

    def between(self, one_s: FloatArray, other_s: FloatArray) -> FloatArray:
        """Return the covariance (one, other) of the drift at two sets of moments (Matern, nu = 5/2 or 1/2)."""
        return np.asarray(self.size**2 * _shape(np.abs(one_s[:, None] - other_s[None, :]) / self.length_s, self.smooth))


def _shape(apart: FloatArray, smooth: bool) -> FloatArray:
    if not smooth:
        return np.exp(-apart)
    x = np.sqrt(5.0) * apart
    return np.asarray((1.0 + x + x**2 / 3.0) * np.exp(-x))


@dataclass(frozen=True)
@holds_arrays
class DriftCurve:
    """A drift known from readings.

    time_s, variance (reading,): when, and how noisy each is. weights (reading, series): what every reading counts in
    every series. inflation: by how much the readings scatter more about their predictions than they should.
    breaks_s (break,): moments between sessions.
    """

    kernel: Kernel
    time_s: FloatArray
    variance: FloatArray
    weights: FloatArray
    inflation: float = 1.0
    breaks_s: FloatArray = field(default_factory=lambda: np.empty(0))

    def at(self, moments_s: FloatArray) -> FloatArray:
        """Return the drift (moment, series)."""
        return np.asarray(self._between(np.asarray(moments_s, float), self.time_s) @ self.weights)

    def covariance(self, moments_s: FloatArray) -> FloatArray:
        """Return the covariance (moment, moment) of the remainder, up to a constant that nobody can know."""
        from scipy.linalg import cho_factor, cho_solve

        moments = np.asarray(moments_s, float)
        own = self._between(moments, moments)
        if self.time_s.size == 0:
            return own
        inner = self._between(self.time_s, self.time_s) + np.diag(self.variance)
        cross = self._between(moments, self.time_s)
        left = own - cross @ cho_solve(cho_factor(inner, lower=True), cross.T)
        return np.asarray(left * self.inflation)

    def _between(self, one_s: FloatArray, other_s: FloatArray) -> FloatArray:
        return self.kernel.between(one_s, other_s) + OPEN**2 + _constants(one_s, other_s, self.breaks_s)

    def only(self, series: slice | IntArray) -> DriftCurve:
        """Return the curve of some of the series."""
        return replace(self, weights=self.weights[:, series])


def fit(
    time_s: FloatArray,
    readings: FloatArray,
    *,
    variance: FloatArray,
    size: float,
    length_s: float,
    breaks_s: FloatArray | None = None,
) -> DriftCurve:
    """Return the drift behind readings (reading, series) that share one covariance.

    Parameters
    ----------
    variance
        (reading,) of each reading's noise.
    size, length_s
        What is known beforehand of the drift: standard deviation, and correlation time in seconds.
    breaks_s
        Moments between sessions, of which each has a constant of its own.
    """
    breaks = np.empty(0) if breaks_s is None else breaks_s
    first = slice(ENOUGH)
    kernel = _likeliest(time_s[first], readings[first], variance[first], size, length_s, breaks)
    inner = kernel.between(time_s, time_s) + OPEN**2 + _constants(time_s, time_s, breaks) + np.diag(variance)
    inverse = np.linalg.inv(inner)
    weights = inverse @ readings
    inflation = 1.0
    if time_s.size >= 5:
        # What each reading misses when the others predict it, against what it should miss (leave one out, (5.12)).
        missed = weights / np.diag(inverse)[:, None]
        inflation = max(1.0, float(np.mean(missed**2 * np.diag(inverse)[:, None])))
    return DriftCurve(kernel, time_s, variance, weights, inflation, breaks)


def _constants(one_s: FloatArray, other_s: FloatArray, breaks_s: FloatArray) -> FloatArray:
    """Return the covariance (one, other) of the sessions' own constants: nothing where there is one session."""
    if breaks_s.size == 0:
        return np.zeros((one_s.size, other_s.size))
    same = np.searchsorted(breaks_s, one_s)[:, None] == np.searchsorted(breaks_s, other_s)[None, :]
    return np.asarray(OPEN**2 * same)


def _likeliest(
    time_s: FloatArray, readings: FloatArray, variance: FloatArray, size: float, length_s: float, breaks_s: FloatArray
) -> Kernel:
    """Return the covariance that the readings make most likely, whatever the constant of each session."""
    count, series = readings.shape
    best, best_likelihood = Kernel(size, length_s, smooth=True), -np.inf
    session = np.unique(np.searchsorted(breaks_s, time_s), return_inverse=True)[1].reshape(-1)
    constants = np.eye(session.max(initial=0) + 1)[session]
    spent = constants.shape[1]
    if count <= spent:
        return best
    # Orthonormal to the constants: the remainder says nothing of them (restricted likelihood).
    free = np.linalg.qr(constants, mode="complete")[0][:, spent:]
    data = free.T @ readings
    noise = free.T @ (variance[:, None] * free)
    white = np.linalg.cholesky(noise + 1e-18 * np.eye(count - spent))
    shortest = max(float(np.median(np.diff(np.sort(time_s)))), 1.0)
    longest = max(4.0 * float(np.ptp(time_s)), 2.0 * length_s)
    whitened = np.linalg.solve(white, data)
    for length in np.geomspace(shortest, max(longest, 2.0 * shortest), LENGTHS):
        for smooth in (True, False):
            own = free.T @ Kernel(1.0, float(length), smooth).between(time_s, time_s) @ free
            own = np.linalg.solve(white, np.linalg.solve(white, own).T)
            values, turned = np.linalg.eigh(0.5 * (own + own.T))
            power: FloatArray = np.clip(values, 0.0, None)
            energy = np.sum((turned.T @ whitened) ** 2, axis=1)
            for tried in size * np.geomspace(1e-3, 1e2, SIZES):
                total = 1.0 + tried**2 * power
                likelihood = -0.5 * float(np.sum(energy / total) + series * np.sum(np.log(total)))
                likelihood -= 0.5 * (np.log(tried / size) ** 2 + np.log(length / length_s) ** 2) / VAGUE**2
                if likelihood > best_likelihood:
                    best, best_likelihood = Kernel(float(tried), float(length), smooth), likelihood
    return best
