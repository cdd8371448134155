"""Fields at arbitrary directions: non-uniform synthesis and its adjoint."""

from __future__ import annotations

import ducc0
import numpy as np
from numpy.typing import ArrayLike

from colure.geometry.conventions import ComplexArray, FloatArray, order_of_count
from colure.waves.modes import from_half_sets, half_set_size, to_half_sets
from colure.waves.threads import threads

#: Below this many directions one transform is faster on one thread (measured: 0.5 against 1.5 ms).
SMALL = 20_000

#: Accuracy asked of the non-uniform transform; its floor for doubles is 2e-13.
ACCURACY = 1e-12


def locations(theta: ArrayLike, phi: ArrayLike) -> FloatArray:
    """Return directions as the (count, 2) array that the compiled transform reads."""
    t, p = np.broadcast_arrays(np.asarray(theta, float), np.asarray(phi, float))
    return np.ascontiguousarray(
        np.stack([np.clip(t.reshape(-1), 0.0, np.pi), np.mod(p.reshape(-1), 2.0 * np.pi)], axis=-1)
    )


def synthesis_at(
    coefficients: ComplexArray, *, theta: ArrayLike, phi: ArrayLike, spin: int = 1, accuracy: float = ACCURACY
) -> ComplexArray:
    """Return the field at arbitrary directions, shape (..., 2, count) (spin 0: (..., 1, count)).

    Parameters
    ----------
    coefficients
        (..., 2, N(N+2)) for spin 1, (..., 1, N(N+2)) for spin 0.
    theta, phi
        Radians, flattened to `count` directions.
    """
    return Sampler(coefficients).at(theta, phi, spin=spin, accuracy=accuracy)


class Sampler:
    """Coefficients made ready once, to be evaluated at arbitrary directions many times."""

    def __init__(self, coefficients: ComplexArray) -> None:
        self.order = order_of_count(coefficients.shape[-1])
        self._kinds = coefficients.shape[-2]
        self._half = to_half_sets(coefficients)

    def at(self, theta: ArrayLike, phi: ArrayLike, *, spin: int = 1, accuracy: float = ACCURACY) -> ComplexArray:
        """Return what `synthesis_at` returns."""
        return _evaluated(self._half, self._kinds, self.order, locations(theta, phi), spin=spin, accuracy=accuracy)


def _evaluated(
    half: ComplexArray, kinds: int, order: int, where: FloatArray, *, spin: int, accuracy: float
) -> ComplexArray:
    flat = half.reshape(-1, kinds, half.shape[-1])
    out = np.empty((len(flat), kinds, len(where)))
    for index, alm in enumerate(flat):
        ducc0.sht.synthesis_general(
            alm=np.ascontiguousarray(alm),
            spin=spin,
            lmax=order,
            loc=where,
            epsilon=accuracy,
            nthreads=1 if len(where) < SMALL else threads(),
            map=out[index],
        )
    maps = out.reshape(*half.shape[:-3], 2, kinds, len(where))
    return np.asarray(maps[..., 0, :, :] + 1j * maps[..., 1, :, :])


def adjoint_at(
    field: ComplexArray, order: int, *, theta: ArrayLike, phi: ArrayLike, spin: int = 1, accuracy: float = ACCURACY
) -> ComplexArray:
    """Return the adjoint of `synthesis_at` under the plain complex inner product.

    field (..., 2, count), or (..., 1, count) for spin 0; result (..., 2 or 1, N(N+2)).
    """
    where = locations(theta, phi)
    lead, kinds = field.shape[:-2], field.shape[-2]
    flat = field.reshape(-1, kinds, field.shape[-1])
    out = np.empty((len(flat), 2, kinds, half_set_size(order)), complex)
    for index, one in enumerate(flat):
        for which, real in enumerate((one.real, one.imag)):
            ducc0.sht.adjoint_synthesis_general(
                map=np.ascontiguousarray(real),
                spin=spin,
                lmax=order,
                loc=where,
                epsilon=accuracy,
                nthreads=1 if len(where) < SMALL else threads(),
                alm=out[index, which],
            )
    return from_half_sets(out, order).reshape(*lead, kinds, -1)
