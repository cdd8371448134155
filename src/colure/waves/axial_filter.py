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
    blocks = _blocks(k, shift_m, top, order, keep_order)
    # Waves of one azimuthal order lie side by side: sorted once, every product reads and writes one piece.
    into, back = _places(top, keep_order, len(blocks) // 2)
    sorted_in = np.take(coefficients.reshape(*coefficients.shape[:2], -1), into, axis=-1)
    made = np.empty((*coefficients.shape[:2], sum(one.shape[1] for one in blocks) + 1), complex)
    made[..., -1] = 0.0
    i = o = 0
    for matrices in blocks:
        rows, columns = matrices.shape[1:]
        part = np.moveaxis(sorted_in[..., i : i + columns], 0, 1) @ np.swapaxes(matrices, 1, 2)
        made[..., o : o + rows] = np.moveaxis(part, 0, 1)
        i, o = i + columns, o + rows
    return np.take(made, back, axis=-1).reshape(*coefficients.shape[:3], mode_count(keep_order))


@lru_cache(maxsize=4)
def _places(top: int, keep_order: int, most: int) -> tuple[IntArray, IntArray]:
    """Return where waves sorted by azimuthal order come from among (2, J), and where (2, J of `keep_order`) are found when sorted.

    Orders beyond `most` come from one place behind all others.
    """
    into: list[IntArray] = []
    outof: list[IntArray] = []
    for m in range(-most, most + 1):
        for n_max, places in ((top, into), (keep_order, outof)):
            where = mode_index(np.arange(max(1, abs(m)), n_max + 1), azimuthal=m)
            places += [where, where + mode_count(n_max)]
    order = np.concatenate(outof)
    back = np.full(2 * mode_count(keep_order), order.size)
    back[order] = np.arange(order.size)
    return np.concatenate(into), back


@lru_cache(maxsize=2)
def _blocks(k: tuple[float, ...], shift_m: float, top: int, order: int, keep_order: int) -> list[ComplexArray]:
    """Return the matrices (frequency, out, in) of every azimuthal order, lowest first; both kinds of waves one after the other."""
    reach = max(k) * abs(shift_m)
    nodes, weights = np.polynomial.legendre.leggauss(
        max(top, keep_order) + int(np.ceil(reach + 7.0 * max(reach, 1.0) ** (1 / 3))) + 8
    )
    most = max(top, order, keep_order)
    waves = harmonics_at(most, np.arccos(nodes), np.zeros(nodes.size))
    turn = np.exp(-1j * np.array(k)[:, None] * shift_m * nodes)  # (frequency, node)
    out = []
    for m in range(-min(top, order, keep_order), min(top, order, keep_order) + 1):
        where = [mode_index(np.arange(max(1, abs(m)), n + 1), azimuthal=m) for n in (top, order, keep_order)]
        one, few, last = (waves[..., i].reshape(2 * nodes.size, -1) for i in where)
        area = np.repeat(2.0 * np.pi * weights, 2)
        phase = np.repeat(turn, 2, axis=1)
        down = (few.conj().T * area) @ (phase[:, :, None] * one)
        up = (last.conj().T * area) @ (phase.conj()[:, :, None] * few)
        out.append(up @ down)
    return out
