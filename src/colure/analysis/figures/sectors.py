"""Mean and smallest intensity in a sector of directions."""

from __future__ import annotations

import numpy as np

from colure.analysis.figures.sphere import Sky
from colure.geometry.conventions import FloatArray
from colure.geometry.directions import azimuth_over_elevation, from_azimuth_over_elevation
from colure.model.evaluation import Window

#: Lowest samples of a sector about which its smallest value is looked for.
MINIMA = 8
#: Nodes of a sector's mean beyond half of the periods that fit into it.
SPARE_NODES = 12


def sector(sky: Sky, window: Window) -> tuple[float, float]:
    """Return (mean over solid angle, smallest) of |e|^2 in a sector, on a grid as fine as the lobes ask for."""
    mean = _mean_within(sky, window)
    step = float(np.rad2deg(sky.theta[1])) / 2.0
    (a, b), (c, d) = window.azimuth_deg, window.elevation_deg
    az = np.deg2rad(np.linspace(a, b, max(3, int(np.ceil((b - a) / step)) + 1)))
    el = np.deg2rad(np.linspace(c, d, max(3, int(np.ceil((d - c) / step)) + 1)))
    z, y = np.meshgrid(az, el, indexing="ij")
    places = from_azimuth_over_elevation(azimuth=z, elevation=y)
    power = sky.field.power_at(places.reshape(-1, 3)).reshape(z.shape)
    least = _least_within(sky, window, places.reshape(-1, 3)[np.argsort(power.ravel())[:MINIMA]])
    return mean, min(float(power.min()), least)


def _mean_within(sky: Sky, window: Window) -> float:
    """Return the mean of |e|^2 over the solid angle of a sector, by the rule of Gauss and Legendre in both angles.

    A field of degree n turns with at most 2 n periods a turn in |e|^2: with half of these over the sector and `SPARE_NODES` more the
    rule is at rounding level. Even samples and their trapezoids miss a null inside by tenths of a decibel.
    """
    low, high = np.deg2rad(np.transpose([window.azimuth_deg, window.elevation_deg]))
    counts = np.ceil(sky.field.order * (high - low)).astype(int) + SPARE_NODES
    (x, u), (y, v) = (np.polynomial.legendre.leggauss(int(count)) for count in counts)
    az, el = 0.5 * (
        (high - low)[:, None, None] * np.stack(np.meshgrid(x, y, indexing="ij")) + (high + low)[:, None, None]
    )
    weight = u[:, None] * v[None, :] * np.cos(el)
    power = sky.field.power_at(from_azimuth_over_elevation(azimuth=az, elevation=el).reshape(-1, 3)).reshape(az.shape)
    return float(np.sum(power * weight) / np.sum(weight))


def _least_within(sky: Sky, window: Window, starts: FloatArray) -> float:
    """Return the smallest |e|^2 near some directions (n, 3) of a sector, on little grids that close in on it."""
    low, high = np.deg2rad(np.transpose([window.azimuth_deg, window.elevation_deg]))
    here = np.stack(azimuth_over_elevation(starts), axis=-1)
    here[:, 0] = low[0] + np.mod(here[:, 0] - low[0], 2.0 * np.pi)
    line = np.linspace(-1.0, 1.0, 5)
    grid = np.stack(np.meshgrid(line, line, indexing="ij"), axis=-1).reshape(-1, 2)
    size, least = 0.5 * float(sky.theta[1]), np.inf
    for _ in range(6):
        at = np.clip(here[:, None] + size * grid, low, high)
        power = sky.field.power_at(
            from_azimuth_over_elevation(azimuth=at[..., 0], elevation=at[..., 1]).reshape(-1, 3)
        ).reshape(at.shape[:2])
        here = at[np.arange(len(at)), np.argmin(power, axis=1)]
        size, least = 0.4 * size, min(least, float(power.min()))
    return least
