"""Waves about a source far from the origin: where an expansion's sources are, and what such a source adds to every degree.

With the source on the z axis azimuthal orders stay apart: every one is a small matrix, whatever the size of the source.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

import numpy as np

from colure.geometry.conventions import (
    CURL,
    GRAD,
    ComplexArray,
    FloatArray,
    IntArray,
    mode_degrees,
    mode_index,
    order_of_count,
)
from colure.values import holds_arrays
from colure.waves.harmonics import harmonics_at
from colure.waves.radial import regular
from colure.waves.transform import scalar_synthesis, synthesis


@dataclass(frozen=True)
@holds_arrays
class OrderBlock:
    """One azimuthal order: `matrix` (wave, own wave) from waves about the source to waves about the origin.

    rows, columns
        Positions of these waves in a flat (2, N(N+2)) and (2, n(n+2)) array of coefficients.
    degree
        Degrees of the rows; `own` those of the columns.
    """

    matrix: ComplexArray
    rows: IntArray
    columns: IntArray
    degree: IntArray
    own: IntArray


def waves_from_z(distance_k: float, own: int, order: int) -> list[OrderBlock]:
    """Return the blocks, lowest azimuthal order first, of waves up to degree `own` about a point on z.

    distance_k
        Distance of the point from the origin times the wavenumber.
    """
    reach = abs(distance_k)
    nodes, weights, waves = _polar_waves(order, _nodes_for(own + order, reach))
    few = harmonics_at(own, np.arccos(nodes), np.zeros(nodes.size))
    area = np.repeat(2.0 * np.pi * weights, 2)
    turned = area * np.repeat(np.exp(1j * distance_k * nodes), 2)
    out = []
    for m in range(-own, own + 1):
        first = max(1, abs(m))
        n_out, n_own = np.arange(first, order + 1), np.arange(first, own + 1)
        there, here = mode_index(n_out, azimuthal=m), mode_index(n_own, azimuthal=m)
        to = waves[..., there].reshape(2 * nodes.size, -1)
        of = few[..., here].reshape(2 * nodes.size, -1)
        matrix = (to.conj().T * turned) @ of
        j_out, j_own = waves.shape[-1], few.shape[-1]
        out.append(
            OrderBlock(
                matrix,
                np.concatenate([there, there + j_out]),
                np.concatenate([here, here + j_own]),
                np.tile(n_out, 2),
                np.tile(n_own, 2),
            )
        )
    return out


def _nodes_for(degrees: int, reach: float) -> int:
    """Return how many polar angles integrate the product exactly; even steps let neighbours share one table."""
    need = 0.5 * (degrees + reach + 7.0 * max(reach, 1.0) ** (1 / 3)) + 8
    return int(16 * np.ceil(need / 16))


@lru_cache(maxsize=2)
def _polar_waves(order: int, count: int) -> tuple[FloatArray, FloatArray, ComplexArray]:
    nodes, weights = np.polynomial.legendre.leggauss(count)
    return nodes, weights, harmonics_at(order, np.arccos(nodes), np.zeros(count))


def focused(coefficients: ComplexArray, distance_k: float, theta: FloatArray, columns: int) -> FloatArray:
    """Return how strongly an expansion focuses at places on a sphere, (theta, column): |integral of F exp(-j k p.r) over directions|^2.

    The integral of a wave is the regular wave of the same kind there (derivable: plane waves in regular vector waves).
    """
    order = order_of_count(coefficients.shape[-1])
    degrees = mode_degrees(order)
    plain, sloped = (one[degrees - 1] for one in regular(order, distance_k))
    turn = (-1j) ** (degrees % 4)
    across = np.stack([1j * turn * sloped * coefficients[GRAD], turn * plain * coefficients[CURL]])
    along = 1j * turn * np.sqrt(degrees * (degrees + 1.0)) * plain / distance_k * coefficients[GRAD]
    tangential = synthesis(across, theta, columns)
    radial = scalar_synthesis(along, theta, columns)
    return np.asarray((4.0 * np.pi) ** 2 * (np.sum(np.abs(tangential) ** 2, axis=0) + np.abs(radial) ** 2))
