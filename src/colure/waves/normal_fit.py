"""Larger fits by their normal equations: what a factorization would take too long for, down to noise of -114 dB.

The products of the columns hold all that least squares needs, at a tenth of the cost of a factorization of the rows;
they lose half of the digits. So noise below `LEAST_NOISE` of the data counts as that much, in the damping and in the stated error.
"""

from __future__ import annotations

from dataclasses import replace

import numpy as np
from scipy.linalg import get_blas_funcs, get_lapack_funcs, solve_triangular

from colure.geometry.conventions import ComplexArray, mode_count
from colure.waves.direct_fit import SILENT_DEGREES, DirectSolution, FitRows, Squares, order_of, weighed

#: Orders tried one after the other until the data show no more.
ORDERS = (24, 38, 52, 64)
#: Smallest noise, relative to the rms of the data, that the products of columns still tell from their own rounding.
LEAST_NOISE = 2e-6
#: Part of the mean square of a column added to every one, so that rounding leaves the products positive.
RIDGE = 1e-12
#: Most products of numbers (several seconds on one core).
MOST_PRODUCTS = 6e11
#: Samples whose rows are made at a time.
CHUNK = 1500


def solve_by_squares(rows: FitRows, cap: int, *, seed: int = 11) -> tuple[DirectSolution | None, bool]:
    """Return the fit, None where it would take too long, and whether its noise is larger than the rounding's."""
    count = rows.data.shape[-1]
    size = float(np.sqrt(np.mean(np.abs(rows.data) ** 2)))
    power = float(np.sum(np.abs(rows.data) ** 2))
    if size == 0.0:
        return None, False
    for step in ORDERS:
        order = min(cap, step)
        if products_of(rows, order) > MOST_PRODUCTS:
            return None, False
        squares, right = _squares(rows, order)
        triangle = _triangle(squares)
        rotated = np.asarray(solve_triangular(triangle, right, trans="C", check_finite=False))
        left = max(power - float(np.sum(np.abs(rotated) ** 2)), 0.0)
        last, noise = order_of(rotated, left, order, 2 * count)
        if order == cap or last + SILENT_DEGREES <= order:
            break
    else:
        return None, False
    clear = noise > 2.0 * LEAST_NOISE * size
    order = min(order, last + SILENT_DEGREES)
    columns = 2 * mode_count(order)
    left += float(np.sum(np.abs(rotated[columns:]) ** 2))
    known = Squares(squares[:columns, :columns], right[:columns], LEAST_NOISE * size)
    noise = max(noise, known.least_noise)
    try:
        solution = weighed(
            triangle[:columns, :columns], rotated[:columns], left, order, rows, last, noise, seed, squares=known
        )
    except ArithmeticError:
        return None, False  # on a tiny part of the sphere rounding outweighs the noise: products tell nothing there
    return replace(solution, noise=max(solution.noise, known.least_noise)), clear


def products_of(rows: FitRows, order: int) -> float:
    """Return how many products of numbers a fit of an order takes."""
    columns = 2.0 * mode_count(order)
    kind = 1.0 if len(rows.scales) == 1 else 4.0
    return float(kind * columns**2 * (2.0 * rows.data.shape[-1] + 4.0 * columns))


def _squares(rows: FitRows, order: int) -> tuple[np.ndarray, ComplexArray]:
    """Return the upper half of A^H A, and A^H d."""
    columns, total = 2 * mode_count(order), rows.data.shape[-1]
    real = len(rows.scales) == 1
    squares = np.zeros((columns, columns), float if real else complex, order="F")
    right = np.zeros(columns, complex)
    (product,) = get_blas_funcs(("syrk" if real else "herk",), (squares,))
    for start in range(0, total, CHUNK):
        some = rows.some(slice(start, start + CHUNK))
        matrix = np.asfortranarray(some.matrix(order))
        squares = product(1.0, matrix, beta=1.0, c=squares, trans=1 if real else 2, overwrite_c=1)
        right += matrix.conj().T @ some.data.ravel()
    return squares, right


def _triangle(squares: np.ndarray) -> np.ndarray:
    """Return the upper triangle U of U^H U = squares + ridge."""
    whole = squares.copy(order="F")
    whole[np.diag_indices(len(whole))] += RIDGE * float(np.mean(np.diag(squares).real))
    (factor,) = get_lapack_funcs(("potrf",), (whole,))
    upper, failed = factor(whole, lower=0, clean=1, overwrite_a=1)
    if failed:
        raise ArithmeticError(f"normal equations: column {failed} depends on the ones before")
    return np.asarray(upper)
