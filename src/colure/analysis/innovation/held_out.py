"""Each slice predicted from all others, and compared with what it read: a model that explains a slice only by fitting it shows here."""

from __future__ import annotations

import numpy as np
from scipy.linalg import cho_factor, cho_solve

from colure.analysis.innovation.fit import Covariance
from colure.geometry.conventions import ComplexArray, FloatArray, IntArray


def missed(
    told: FloatArray, told_columns: FloatArray, solver: FloatArray, covariance: Covariance, rows: list[IntArray]
) -> list[tuple[FloatArray, FloatArray]]:
    """Return what the prediction of each group of rows by all other rows misses (n, row), and its misfit (n,) by its covariance.

    With K the covariance of all readings, causes and unknowns in it, a group's error is (K^-1 of the group)^-1 times the
    group's rows of K^-1 readings: no fit is made anew (blocks of an inverse, any text on linear algebra).

    Parameters
    ----------
    told
        (n, row) K^-1 of readings.
    told_columns
        (unknown, row) C^-1 of the fit's columns, C the covariance without unknowns.
    solver
        (unknown, unknown) from right sides to estimates.
    """
    out = []
    for group in rows:
        own, columns = told[:, group], told_columns[:, group]
        inverse = covariance.inverse_at(group) - columns.T @ solver @ columns
        error = cho_solve(cho_factor(inverse), own.T).T
        out.append((error, np.asarray(np.sum(own * error, axis=1))))
    return out


def rows_of_slices(slices: IntArray, frequencies: int) -> list[IntArray]:
    """Return the rows of every slice (point,) among stacked readings of so many frequencies: real parts, then imaginary ones."""
    count = frequencies * slices.size
    on = np.tile(slices, frequencies)
    return [np.concatenate([at, at + count]) for at in (np.flatnonzero(on == one) for one in np.unique(slices))]


def averaged(error: FloatArray, frequencies: int) -> ComplexArray:
    """Return the mean over the band (n, point) of a slice's errors (n, 2 frequency point)."""
    real, imaginary = np.split(error, 2, axis=-1)
    return np.asarray((real + 1j * imaginary).reshape(len(error), frequencies, -1).mean(axis=1))
