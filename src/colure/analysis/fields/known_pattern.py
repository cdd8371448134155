"""A pattern from a file back to waves: somebody's simulation, or an earlier measurement."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np

from colure.analysis.fields.expand import signal_order, whole_sphere
from colure.geometry.conventions import ComplexArray, FloatArray, wavenumber
from colure.model.fields import FieldGrid, FieldSamples, recognize_grid, samples_of
from colure.values import holds_arrays
from colure.waves.expansion import Expansion
from colure.waves.rings import RingFit
from colure.waves.transform import analysis

if TYPE_CHECKING:
    import xarray as xr

#: Waves of so many degrees more than the other pattern's are kept: a finer one shows where it differs.
MORE_DEGREES = 6
#: Fewer directions say nothing of a pattern.
LEAST_SAMPLES = 8
#: Fourier orders of a ring above this share of the largest count.
HELD = 1e-3


@dataclass(frozen=True)
@holds_arrays
class KnownPattern:
    """A far field as waves (frequency, 2, J), and the polar angle from +z (radians) up to which it is known."""

    frequency_hz: FloatArray
    expansion: Expansion
    region: float


def known_pattern(dataset: xr.Dataset, order: int) -> KnownPattern:
    """Expand a far-field dataset (`colure convert FILE.csv FILE.nc --far-field`, or a pattern of ours).

    Parameters
    ----------
    order
        Order of the pattern it will be compared with.

    Raises
    ------
    ValueError
        If it is no far field, or its directions are neither a whole-sphere grid nor full rings about +z.
    """
    samples = samples_of(dataset)
    if any(one.radius_m is not None for one in samples):
        raise ValueError("pattern: it holds a near field (radius_m), needs a far field: process it first (m)")
    expansions = [_expanded(one, order + MORE_DEGREES) for one in samples]
    frequency = np.array([one.frequency_hz for one in samples])
    highest = min(c.shape[-1] for c, _ in expansions)
    coefficients = np.stack([c[:, :highest] for c, _ in expansions])
    return KnownPattern(
        frequency, Expansion(coefficients, wavenumber(frequency)), min(region for _, region in expansions)
    )


def opened_pattern(dataset: xr.Dataset) -> KnownPattern:
    """Expand a far-field dataset as high as its own data ask for.

    A whole-sphere grid is cut where its spectrum has sunk into its noise; part of a sphere goes as high as its rings' Fourier
    orders do.

    Raises
    ------
    ValueError
        If it is no far field, or its directions are neither a whole-sphere grid nor full rings about +z.
    """
    order = MORE_DEGREES
    for one in samples_of(dataset):
        if one.radius_m is not None:
            raise ValueError("pattern: it holds a near field (radius_m), needs a far field: process it first (m)")
        if one.theta.size < LEAST_SAMPLES or not np.any(np.abs(one.field) > 0.0):
            raise ValueError(
                f"pattern: {one.theta.size} directions with a field, needs at least {LEAST_SAMPLES} (directions)"
            )
        grid = _grid_of(one)
        whole = whole_sphere(grid)
        if whole is not None:
            top = whole.highest_order
            order = max(order, signal_order(analysis(whole.field, top, layout=whole.layout, phi_start=whole.phi_start)))
        else:
            order = max(order, _ring_order(grid.field))
    return known_pattern(dataset, max(1, order - MORE_DEGREES))


def _grid_of(one: FieldSamples) -> FieldGrid:
    """Return samples as a grid; raises `ValueError` that says what is wrong with their directions."""
    grid = recognize_grid(whole_rings(one))
    if grid is not None:
        return grid
    for name, shown in (("phi_deg", one.phi), ("theta_deg", one.theta)):
        levels = np.unique(np.round(np.rad2deg(shown), 6))
        if levels.size == 1:
            raise ValueError(
                f"{name}: {levels[0]:g} deg alone, {one.theta.size} directions on one circle (a cut): a far field needs rings of phi "
                "over full turns, from theta 0 deg on"
            )
    raise ValueError(
        f"pattern: its {one.theta.size} directions are no grid of theta and phi in even steps (deg); scattered near fields with a "
        "`radius_m` become one by colure process"
    )


def _ring_order(field: ComplexArray) -> int:
    """Return the highest Fourier order over phi that a field (2, theta, phi) holds, and a few more."""
    columns = field.shape[-1]
    spectrum = np.abs(np.fft.fft(field, axis=-1)).max(axis=(0, 1))
    orders = np.abs(np.fft.fftfreq(columns, 1.0 / columns)).astype(int)
    held = orders[spectrum > HELD * spectrum.max()]
    return int(min(held.max() + 2 + MORE_DEGREES, (columns - 1) // 2))


def whole_rings(one: FieldSamples) -> FieldSamples:
    """Return the rings about +z up to the first that has gaps: what lies beyond is not known all round.

    Samples that are no gridded rings from +z are returned as they are.
    """
    theta = np.round(np.rad2deg(one.theta), 5)
    levels, ring, counts = np.unique(theta, return_inverse=True, return_counts=True)
    turn = int(counts.max())
    full = (counts == turn) | np.isin(levels, (0.0, 180.0))
    if full.all() or not full[0]:
        return one
    kept = ring.reshape(-1) < int(np.argmin(full))
    radius = None if one.radius_m is None else one.radius_m[kept]
    return FieldSamples(one.frequency_hz, one.theta[kept], one.phi[kept], one.field[:, kept], radius, one.weight[kept])


def _expanded(one: FieldSamples, order: int) -> tuple[ComplexArray, float]:
    known = np.all(np.isfinite(one.field), axis=0)
    kept = FieldSamples(
        one.frequency_hz, one.theta[known], one.phi[known], one.field[:, known], None, one.weight[known]
    )
    grid = _grid_of(kept)
    whole = whole_sphere(grid)
    if whole is not None:
        top = min(order, whole.highest_order)
        return analysis(whole.field, top, layout=whole.layout, phi_start=whole.phi_start), float(np.pi)
    step = float(grid.phi[1] - grid.phi[0])
    if not np.isclose(step * grid.phi.size, 2.0 * np.pi, atol=1e-6) or grid.theta[0] < -1e-9:
        raise ValueError("pattern: its rings are no full turns of phi; part of a sphere needs rings about +z (deg)")
    top = min(order, (grid.phi.size - 1) // 2)
    fit = RingFit(grid.theta, top)
    return fit.analysis(grid.field, phi_start=float(grid.phi[0])), float(grid.theta[-1])


def at_frequencies(pattern: KnownPattern, frequency_hz: FloatArray) -> Expansion:
    """Return the pattern at other frequencies, its waves interpolated straight in between.

    Raises
    ------
    ValueError
        If they lie outside its band; both are named.
    """
    known = pattern.frequency_hz
    if known.size == 1 and abs(known[0] - frequency_hz[0]) < 1e3 and frequency_hz.size == 1:
        return Expansion(pattern.expansion.coefficients, wavenumber(frequency_hz))
    if frequency_hz.min() < known.min() - 1e3 or frequency_hz.max() > known.max() + 1e3:
        raise ValueError(
            f"pattern: covers {known.min() / 1e9:.6g} to {known.max() / 1e9:.6g} GHz, the other one needs "
            f"{frequency_hz.min() / 1e9:.6g} to {frequency_hz.max() / 1e9:.6g} GHz"
        )
    index = np.clip(np.searchsorted(known, frequency_hz) - 1, 0, max(known.size - 2, 0))
    after = np.minimum(index + 1, known.size - 1)
    width = np.where(after > index, known[after] - known[index], 1.0)
    share = np.clip((frequency_hz - known[index]) / width, 0.0, 1.0)[:, None, None]
    c = pattern.expansion.coefficients
    return Expansion(c[index] * (1.0 - share) + c[after] * share, wavenumber(frequency_hz))
