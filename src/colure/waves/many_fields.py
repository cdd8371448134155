"""Many fields on one regular grid to coefficients: what the compiled transform makes of single rings, kept as a matrix for every order.

Azimuthal orders do not meet, and of one order theta + j phi meets only functions of one spin, theta - j phi those of the other. So
fields of one grid need two real matrices an order, and the transform itself tells them: of a field that is zero but in one sample of
a ring it returns a column of all of them (derivable).
"""

from __future__ import annotations

from functools import lru_cache

import ducc0
import numpy as np

from colure.geometry.conventions import CURL, GRAD, ComplexArray, FloatArray, IntArray, mode_count, mode_index
from colure.waves.modes import half_set_size
from colure.waves.threads import threaded

#: Fields that are done together: what comes up on the way stays in the processor's cache.
TOGETHER = 16
#: Matrices of higher orders would take too much memory.
HIGHEST = 128


def pays(fields: int, *, rings: int, order: int) -> bool:
    """Tell whether so many fields are worth making the matrices of their grid, which takes as long as half as many fields as rings."""
    return order <= HIGHEST and 2 * fields >= rings


def analysis_of_many(field: ComplexArray, order: int, geometry: str, phi_start: float) -> ComplexArray:
    """Return coefficients (n, 2, N(N+2)) of fields (n, 2, theta, phi) on a whole-sphere grid, as `transform.analysis` does.

    geometry
        The compiled transform's name of the ring layout.
    """
    rings, columns = field.shape[-2:]
    matrices, where = _matrices(order, geometry, rings), _places(order)
    m = np.arange(order + 1)
    above = np.exp(-1j * phi_start * m)[:, None, None] / columns
    # Of a real field coefficients of order -m are the conjugate times (-1)^m.
    below = np.where(m % 2 == 0, 1.0, -1.0)[:, None, None] * above.conj()
    out = np.empty((len(field), 2, mode_count(order)), complex)

    def some(index: int) -> None:
        part = slice(index * TOGETHER, (index + 1) * TOGETHER)
        spectra = np.fft.fft(field[part], axis=-1).transpose(3, 1, 2, 0)  # order, component, ring, field
        across = 1j * spectra[:, 1]
        plus, minus = spectra[:, 0] + across, spectra[:, 0] - across
        first = np.stack([plus[m] * above, minus[-m] * below], axis=2)
        second = np.stack([minus[m] * above, plus[-m] * below], axis=2)
        one, other = _products(matrices, first, second)
        out[part, GRAD], out[part, CURL] = (one + other)[where].T, (1j * (other - one))[where].T

    threaded(some, -(-len(field) // TOGETHER), field.size * order)
    return out


def _products(
    matrices: list[FloatArray], first: ComplexArray, second: ComplexArray
) -> tuple[ComplexArray, ComplexArray]:
    """Return (grad + j curl) / 2 and (grad - j curl) / 2, both (wave, field), waves as `_places` tells.

    first, second (order, ring, side, field)
        What the two matrices of an order are multiplied by: theta + j phi of order m and theta - j phi of -m, and the two exchanged.
    """
    fields, rings = first.shape[-1], first.shape[1]
    one, other = (np.empty((2, sum(rows.shape[1] for rows in matrices), fields), complex) for _ in range(2))
    begin = 0
    for rows, over, under in zip(matrices, first, second, strict=True):
        here = slice(begin, begin + rows.shape[1])
        made = [
            (row @ side.reshape(rings, -1).view(float)).view(complex).reshape(-1, 2, fields)
            for row, side in zip(rows, (over, under), strict=True)
        ]
        one[0, here], other[1, here] = made[0][:, 0], made[0][:, 1]
        other[0, here], one[1, here] = made[1][:, 0], made[1][:, 1]
        begin = here.stop
    return one.reshape(-1, fields), other.reshape(-1, fields)


@lru_cache(maxsize=8)
def _places(order: int) -> IntArray:
    """Return where every wave of (N(N+2),) lies among those that `_products` returns: orders m >= 0, then -m, each degree by degree."""
    n = np.concatenate([np.arange(max(1, m), order + 1) for m in range(order + 1)])
    m = np.concatenate([np.full(order + 1 - max(1, m), m) for m in range(order + 1)])
    out = np.empty(mode_count(order), np.intp)
    out[mode_index(n, azimuthal=-m)] = n.size + np.arange(n.size)
    out[mode_index(n, azimuthal=m)] = np.arange(n.size)
    return out


@lru_cache(maxsize=4)
def _matrices(order: int, geometry: str, rings: int) -> list[FloatArray]:
    """Return the two matrices (2, degree, ring) of every order m >= 0, for the mean over a ring's columns."""
    columns = 2 * order + 2
    alm = np.empty((rings, 2, half_set_size(order)), complex)
    sample = np.zeros((2, rings, columns))
    for ring in range(rings):
        sample[0, ring, 0] = 1.0
        ducc0.sht.analysis_2d(map=sample, spin=1, lmax=order, geometry=geometry, alm=alm[ring], nthreads=1)
        sample[0, ring, 0] = 0.0
    # Of a sample of theta the grad-type part is real, the curl-type part imaginary; of phi -curl and grad.
    grad, curl = alm[:, 0].real.T, alm[:, 1].imag.T
    out = []
    for m in range(order + 1):
        begin = m * (2 * order + 1 - m) // 2
        where = slice(begin + max(1, m), begin + order + 1)
        out.append(0.5 * columns * np.stack([grad[where] - curl[where], grad[where] + curl[where]]))
    return out
