"""Fields on regular grids to coefficients and back, through the compiled transform.

Shapes: coefficients (..., 2, N(N+2)); fields (..., 2, theta, phi) with axis -3 being
(e_theta, e_phi). Leading dimensions (frequency, state) are free; threads work across them.
"""

from __future__ import annotations

import ducc0
import numpy as np
from numpy.typing import ArrayLike

from colure.geometry.conventions import ComplexArray, FloatArray, mode_count, order_of_count
from colure.waves.many_fields import analysis_of_many, pays
from colure.waves.modes import from_half_sets, half_set_size, to_half_sets
from colure.waves.threads import threaded, threads

#: Names of the regular ring layouts and the compiled transform's names for them.
LAYOUTS = {"with-poles": "CC", "without-poles": "F1", "gauss-legendre": "GL"}


def highest_order(layout: str, *, rings: int, phi_count: int) -> int:
    """Return the highest degree that a regular grid determines without aliasing."""
    by_rings = rings - 2 if layout == "with-poles" else rings - 1
    return max(0, min(by_rings, (phi_count - 1) // 2))


def analysis(
    field: ComplexArray, order: int, *, layout: str = "with-poles", phi_start: ArrayLike = 0.0
) -> ComplexArray:
    """Return the coefficients of a field on a whole-sphere regular grid.

    Parameters
    ----------
    field
        (..., 2, theta, phi) complex, rings as `layout` says, phi over the full turn.
    order
        Highest degree N wanted.
    phi_start
        Azimuth of the first column in radians, one for all rings or one per ring.

    Raises
    ------
    ValueError
        If the grid is too coarse for `order`.
    """
    rings, columns = field.shape[-2:]
    limit = highest_order(layout, rings=rings, phi_count=columns)
    if not 1 <= order <= limit:
        raise ValueError(
            f"order: {order}, must be 1 to {limit} (degree) on {rings} rings x {columns} columns, {layout}"
        )
    lead = field.shape[:-3]
    start = np.asarray(phi_start, dtype=np.float64)
    common = 0.0
    if start.ndim:
        field = _aligned(field, np.broadcast_to(start, (rings,)))
    else:
        common = float(start)
    flat = field.reshape(-1, 2, rings, columns)
    if pays(len(flat), rings=rings, order=order):
        return analysis_of_many(flat, order, LAYOUTS[layout], common).reshape(*lead, 2, -1)
    out = np.empty((len(flat), 2, 2, half_set_size(order)), complex)
    joined = np.empty((len(flat), 2, mode_count(order)), complex)

    def one(index: int) -> None:
        part, which = divmod(index, 2)
        real = np.ascontiguousarray(flat[part].imag if which else flat[part].real)
        ducc0.sht.analysis_2d(
            map=real, spin=1, lmax=order, geometry=LAYOUTS[layout], phi0=common, alm=out[part, which], nthreads=1
        )

    def whole(part: int) -> None:
        # A thread does a whole frequency, the joining of its two real maps included.
        one(2 * part)
        one(2 * part + 1)
        joined[part] = from_half_sets(out[part], order)

    work = flat.size * order
    if len(flat) >= 2 * threads(work):
        threaded(whole, len(flat), work)
        return joined.reshape(*lead, 2, -1)
    threaded(one, 2 * len(flat), work)
    return from_half_sets(out, order).reshape(*lead, 2, -1)


def _aligned(field: ComplexArray, start: FloatArray) -> ComplexArray:
    """Shift every ring by its own offset, exactly for fields that the columns resolve."""
    columns = field.shape[-1]
    m = np.fft.fftfreq(columns, 1.0 / columns)
    if columns % 2 == 0:
        m[columns // 2] = 0.0  # the highest wave of an even count has no side to turn to
    shifted = np.fft.ifft(np.fft.fft(field, axis=-1) * np.exp(-1j * m * start[:, None]), axis=-1)
    return np.asarray(shifted)


def synthesis(
    coefficients: ComplexArray, theta: ArrayLike, phi_count: int, *, phi_start: ArrayLike = 0.0
) -> ComplexArray:
    """Return the field on rings at any `theta` (radians), `phi_count` columns per ring.

    `phi_start` may be one azimuth or one per ring (radians). Result (..., 2, theta, phi).
    """
    return _rings(coefficients, theta, phi_count, phi_start, spin=1)


def scalar_synthesis(coefficients: ComplexArray, theta: ArrayLike, phi_count: int) -> ComplexArray:
    """Return sum a_nm Y_nm on rings, coefficients (..., N(N+2)), result (..., theta, phi)."""
    return _rings(coefficients[..., None, :], theta, phi_count, 0.0, spin=0)[..., 0, :, :]


def _rings(
    coefficients: ComplexArray, theta: ArrayLike, phi_count: int, phi_start: ArrayLike, *, spin: int
) -> ComplexArray:
    order = order_of_count(coefficients.shape[-1])
    t = np.ascontiguousarray(theta, dtype=np.float64)
    rings = t.size
    half = to_half_sets(coefficients)
    lead = half.shape[:-3]
    kinds = coefficients.shape[-2]
    maps = ducc0.sht.synthesis(
        alm=np.ascontiguousarray(half.reshape(-1, kinds, half.shape[-1])),
        theta=t,
        lmax=order,
        nphi=np.full(rings, phi_count, dtype=np.uint64),
        phi0=np.ascontiguousarray(np.broadcast_to(np.asarray(phi_start, float), t.shape)),
        ringstart=np.arange(rings, dtype=np.uint64) * phi_count,
        spin=spin,
        nthreads=threads(half.size // half.shape[-1] * rings * phi_count * order),
    ).reshape(*lead, 2, kinds, rings, phi_count)
    return np.asarray(maps[..., 0, :, :, :] + 1j * maps[..., 1, :, :, :])


def adjoint_synthesis(field: ComplexArray, order: int, theta: ArrayLike, *, phi_start: ArrayLike = 0.0) -> ComplexArray:
    """Return the adjoint of `synthesis` under the plain complex inner product."""
    t = np.ascontiguousarray(theta, dtype=np.float64)
    rings, columns = field.shape[-2:]
    lead = field.shape[:-3]
    flat = field.reshape(-1, 2, rings * columns)
    both = np.ascontiguousarray(np.stack([flat.real, flat.imag], axis=1).reshape(-1, 2, rings * columns))
    half = ducc0.sht.adjoint_synthesis(
        map=both,
        theta=t,
        lmax=order,
        nphi=np.full(rings, columns, dtype=np.uint64),
        phi0=np.ascontiguousarray(np.broadcast_to(np.asarray(phi_start, float), t.shape)),
        ringstart=np.arange(rings, dtype=np.uint64) * columns,
        spin=1,
        nthreads=threads(field.size * order),
    )
    return from_half_sets(half.reshape(-1, 2, 2, half.shape[-1]), order).reshape(*lead, 2, -1)


def fold_double_sided(field: ComplexArray, theta: FloatArray) -> ComplexArray:
    """Turn great-circle slices into rings over a full turn.

    Parameters
    ----------
    field
        (..., 2, theta, phi): phi over a half turn.
    theta
        Readouts in radians, equidistant: the 2 K values from -pi + step to pi, or as far on both
        sides of zero.

    Returns
    -------
    (..., 2, rings, 2 phi): rings from 0. At each pole the slices' samples, which must agree in
    a fixed frame, are averaged in that frame and written back to all columns.
    """
    zero = int(np.argmin(np.abs(theta)))
    positive = field[..., zero:, :]
    negative = -field[..., :zero, :][..., ::-1, :]
    columns, last = field.shape[-1], positive.shape[-2] - 1
    out = np.empty((*field.shape[:-2], last + 1, 2 * columns), complex)
    out[..., :columns] = positive
    out[..., 1 : zero + 1, columns:] = negative
    average_poles(out, [(0, 1.0)] if zero == last else [(0, 1.0), (last, -1.0)])
    return out


def average_poles(out: ComplexArray, poles: list[tuple[int, float]]) -> None:
    """Average the samples of great-circle slices at the poles in a fixed frame, in place.

    Parameters
    ----------
    out
        (..., 2, rings, 2 slices) components of rings over a full turn, the first half of them as they were measured at the poles.
    poles
        Rings that are poles, and the cosine of their polar angle.
    """
    columns = out.shape[-1] // 2
    phi = np.arange(columns) * np.pi / columns
    phi_all = np.arange(2 * columns) * np.pi / columns
    for ring, cosine in poles:
        e_theta, e_phi = out[..., 0, ring, :columns], out[..., 1, ring, :columns]
        along_x = np.mean(cosine * np.cos(phi) * e_theta - np.sin(phi) * e_phi, axis=-1)[..., None]
        along_y = np.mean(cosine * np.sin(phi) * e_theta + np.cos(phi) * e_phi, axis=-1)[..., None]
        out[..., 0, ring, :] = cosine * (np.cos(phi_all) * along_x + np.sin(phi_all) * along_y)
        out[..., 1, ring, :] = -np.sin(phi_all) * along_x + np.cos(phi_all) * along_y
