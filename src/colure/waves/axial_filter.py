"""Waves moved along z, cut to fewer degrees and moved back: one small matrix for every azimuthal order.

A move along z keeps azimuthal orders apart, so that many expansions at the same wavenumbers are filtered by matrix products.
"""

from __future__ import annotations

from functools import lru_cache

import numpy as np

from colure.geometry.conventions import ComplexArray, IntArray, mode_count, mode_index
from colure.waves.harmonics import harmonics_at


def axial_filter(
    coefficients: ComplexArray, k: tuple[float, ...], *, shift_m: float, order: int, keep_order: int
) -> ComplexArray:
    """Return coefficients (n, frequency, 2, J) moved by -shift along z, cut to `order`, and moved back, cut to `keep_order`."""
    count = coefficients.shape[-1]
    top = round(np.sqrt(count + 1)) - 1
    out = np.zeros((*coefficients.shape[:-1], mode_count(keep_order)), complex)
    for into, outof, matrices in _blocks(k, shift_m, top, order, keep_order):
        flat = np.moveaxis(coefficients[..., into].reshape(*coefficients.shape[:2], -1), 0, 1)
        found = np.moveaxis(flat @ np.swapaxes(matrices, 1, 2), 0, 1)
        out[..., outof] = found.reshape(*found.shape[:2], 2, -1)
    return out


@lru_cache(maxsize=2)
def _blocks(
    k: tuple[float, ...], shift_m: float, top: int, order: int, keep_order: int
) -> list[tuple[IntArray, IntArray, ComplexArray]]:
    """Return, for every azimuthal order, which modes come in, which go out, and the matrices (frequency, out, in)."""
    reach = max(k) * abs(shift_m)
    nodes, weights = np.polynomial.legendre.leggauss(
        max(top, keep_order) + int(np.ceil(reach + 7.0 * max(reach, 1.0) ** (1 / 3))) + 8
    )
    most = max(top, order, keep_order)
    waves = harmonics_at(most, np.arccos(nodes), np.zeros(nodes.size))
    turn = np.exp(-1j * np.array(k)[:, None] * shift_m * nodes)  # (frequency, node)
    out = []
    for m in range(-min(top, order, keep_order), min(top, order, keep_order) + 1):
        where = [mode_index(np.arange(max(1, abs(m)), n + 1), m) for n in (top, order, keep_order)]
        one, few, last = (waves[..., i].reshape(2 * nodes.size, -1) for i in where)
        area = np.repeat(2.0 * np.pi * weights, 2)
        phase = np.repeat(turn, 2, axis=1)
        down = (few.conj().T * area) @ (phase[:, :, None] * one)
        up = (last.conj().T * area) @ (phase.conj()[:, :, None] * few)
        out.append((where[0], where[2], up @ down))
    return out
