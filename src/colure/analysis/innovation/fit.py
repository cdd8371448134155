"""Elements' deviations from few readings: a linear fit with known covariances, and a search for the few that are faulty.

All is real: a complex quantity is its real and its imaginary part, so that angles and shifts, which are real, fit in. The
covariance of the readings is noise and a floor on its diagonal, and drawn causes (rooms, misalignment, cable) beside it;
it is applied through their few dimensions (matrix inversion lemma, any text on linear algebra).
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property

import numpy as np
from scipy.linalg import cho_factor, cho_solve, solve_triangular

from colure.geometry.conventions import ComplexArray, FloatArray, IntArray
from colure.values import holds_arrays

#: Standard deviation of each quadrature of a faulty element's relative deviation: none is stronger than about twice itself.
FAULTY = 0.7
#: More faults are not looked for: such a device is no reference with faults.
MOST_FAULTS = 8
#: A factor that is common to all readings of a frequency is free.
FREE = 10.0


def stacked(values: ComplexArray) -> FloatArray:
    """Return complex rows (..., n) as real ones (..., 2 n)."""
    return np.concatenate([values.real, values.imag], axis=-1)


@dataclass(frozen=True)
@holds_arrays
class Covariance:
    """Covariance of stacked readings: diag(sigma^2) + causes^T causes.

    sigma (row,), causes (cause, row): one standard deviation each.
    """

    sigma: FloatArray
    causes: FloatArray

    @cached_property
    def _root(self) -> FloatArray:
        scaled = self.causes / self.sigma
        return np.asarray(np.linalg.cholesky(np.eye(len(scaled)) + scaled @ scaled.T))

    def whiten(self, rows: FloatArray) -> tuple[FloatArray, FloatArray]:
        """Return (a, b) of vectors (n, row) such that x^T C^-1 y = a_x a_y - b_x b_y."""
        a = rows / self.sigma
        b = solve_triangular(self._root, (self.causes / self.sigma) @ a.T, lower=True).T
        return a, np.asarray(b)

    def solve(self, rows: FloatArray) -> FloatArray:
        """Return C^-1 of vectors (n, row)."""
        a, scaled = rows / self.sigma, self.causes / self.sigma
        inner = cho_solve((self._root, True), scaled @ a.T)
        return np.asarray((a - inner.T @ scaled) / self.sigma)

    def inverse_at(self, rows: IntArray) -> FloatArray:
        """Return the block (some rows, the same rows) of C^-1."""
        scaled = solve_triangular(self._root, self.causes[:, rows] / self.sigma[rows], lower=True) / self.sigma[rows]
        return np.asarray(np.diag(1.0 / self.sigma[rows] ** 2) - scaled.T @ scaled)


def product(one: tuple[FloatArray, FloatArray], other: tuple[FloatArray, FloatArray]) -> FloatArray:
    """Return the products (n, m) of whitened vectors."""
    return np.asarray(one[0] @ other[0].T - one[1] @ other[1].T)


@dataclass(frozen=True)
@holds_arrays
class Normal:
    """The fit's normal matrix: unknowns are free factors of every frequency first, then elements, then others, two rows each.

    usual (element + other,): by how much good units deviate, rms of the complex value.
    share_error (element,): the last unknowns are changes of the elements straight over the band; of a faulty element's deviation
    they are such a share. (0,) without such.
    """

    columns: tuple[FloatArray, FloatArray]
    matrix: FloatArray
    free: int
    elements: int
    usual: FloatArray
    share_error: FloatArray

    def unknowns_of(self, faults: Sequence[int]) -> IntArray:
        """Return which unknowns (fault, 1 or 2) are those of elements."""
        straight = self.free + len(self.usual) - self.elements
        both = (self.free, straight) if self.share_error.size else (self.free,)
        return np.asarray(np.array(faults, np.int64)[:, None] + np.array(both))

    @property
    def _of_faults(self) -> FloatArray:
        """Prior variances (unknown,) of faulty elements; others are left at one."""
        out = np.ones((self.free + len(self.usual), 2))
        out[self.free : self.free + self.elements] = FAULTY**2
        if self.share_error.size:
            out[-self.elements :] = (FAULTY * self.share_error[:, None]) ** 2
        return out.reshape(-1)

    def prior(self, faults: tuple[int, ...]) -> FloatArray:
        """Return the prior variances (unknown,): faulty elements may be anything, others as good units differ."""
        out = np.repeat(np.concatenate([np.full(self.free, 2.0 * FREE**2), self.usual**2])[:, None] / 2.0, 2, axis=1)
        at = self.unknowns_of(faults).reshape(-1)
        out[at] = self._of_faults.reshape(-1, 2)[at]
        return out.reshape(-1)

    @cached_property
    def _sound(self) -> FloatArray:
        return self.solver(())

    def evidence(self, right: FloatArray, sets: Sequence[tuple[int, ...]]) -> FloatArray:
        """Return the log likelihoods (set,) of readings with right side (unknown,) for sets of faults, above that of none.

        A fault changes the prior of few unknowns. What that does to determinant and inverse follows from their rows of the
        solver without faults (matrix determinant lemma, matrix inversion lemma): hundreds of sets share one solver.
        """
        estimate, usual, faulty = self._sound @ right, self.prior(()), self._of_faults
        change = 1.0 / faulty - 1.0 / usual
        out = np.zeros(len(sets))
        for size in {len(one) for one in sets} - {0}:
            these = [i for i, one in enumerate(sets) if len(one) == size]
            pairs = np.stack([self.unknowns_of(sets[i]).reshape(-1) for i in these])
            at = np.stack([2 * pairs, 2 * pairs + 1], axis=-1).reshape(len(these), -1)
            block = np.eye(at.shape[1]) + change[at][:, :, None] * self._sound[at[:, :, None], at[:, None, :]]
            moved = np.linalg.solve(block, (change * estimate)[at][..., None])[..., 0]
            spread = np.sum(np.log(usual[at] / faulty[at]), axis=-1) - np.linalg.slogdet(block)[1]
            out[these] = 0.5 * (spread - np.sum(estimate[at] * moved, axis=-1))
        return out

    def solver(self, faults: tuple[int, ...]) -> FloatArray:
        """Return the matrix (unknown, unknown) from right sides to estimates."""
        root = np.sqrt(self.prior(faults))
        inner = cho_factor(np.eye(root.size) + root[:, None] * self.matrix * root)
        return np.asarray(root[:, None] * cho_solve(inner, np.diag(root)))


def normal_of(
    covariance: Covariance, free: ComplexArray, new: ComplexArray, elements: int, usual: FloatArray,
    share_error: FloatArray,
) -> Normal:  # fmt: skip
    """Return the normal matrix of complex columns, rows not yet stacked: free (frequency, row), and what is new (n, row).

    Of the latter the first are elements; see `Normal` for the rest.
    """
    both = np.concatenate([free, new])
    rows = np.stack([stacked(both), stacked(1j * both)], axis=1).reshape(2 * len(both), -1)
    white = covariance.whiten(rows)
    return Normal(white, product(white, white), len(free), elements, usual, share_error)


@dataclass(frozen=True)
class Faulty:
    """The faulty elements, how sure each is (probability), and how sure it is that there is none besides."""

    elements: tuple[int, ...]
    sure: tuple[float, ...]
    complete: float


def faulty_elements(normal: Normal, right: FloatArray, share: float) -> Faulty:
    """Find the faulty elements by evidence: one more, one less, or one for another as long as that gains.

    share
        Of elements that are faulty before anything is measured.
    """
    odds = float(np.log(share / (1.0 - share)))
    now: tuple[int, ...] = ()
    while True:
        around = [now, *_neighbours(now, normal.elements)]
        worth = normal.evidence(right, around) + odds * np.array([len(one) for one in around])
        best = 1 + int(np.argmax(worth[1:]))
        if worth[best] <= worth[0] + 1e-9:
            break
        now = around[best]
    weight = np.exp(worth - worth[0])
    weight /= weight.sum()
    sure = tuple(float(sum(w for w, one in zip(weight, around, strict=True) if i in one)) for i in now)
    more = float(sum(w for w, one in zip(weight, around, strict=True) if set(one) - set(now)))
    return Faulty(now, sure, 1.0 - more)


def _neighbours(faults: tuple[int, ...], elements: int) -> list[tuple[int, ...]]:
    """Return the sets with one fault more, one less, or one at another element."""
    others = [i for i in range(elements) if i not in faults]
    out = [tuple(j for j in faults if j != i) for i in faults]
    if len(faults) < MOST_FAULTS:
        out += [tuple(sorted((*faults, j))) for j in others]
    out += [tuple(sorted((*(j for j in faults if j != i), new))) for i in faults for new in others]
    return out
