"""How good a grid of directions is for a device: errors of radiated power, levels and peak over random orientations.

The standards of over-the-air tests fix their grids that way (3GPP TS 38.521-2, annex M): a pattern turned at random, and for
every grid the mean and the standard deviation of the error of the total radiated power.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np
from scipy.spatial.transform import Rotation

from colure.geometry.constant_density import charged_particles
from colure.geometry.conventions import FloatArray, power_db
from colure.geometry.directions import theta_phi, unit_vector
from colure.geometry.sphere import clenshaw_curtis_weights, fibonacci, fibonacci_lattice
from colure.values import holds_arrays

#: Power (count,) at directions in radians.
Power = Callable[[FloatArray, FloatArray], FloatArray]
#: Directions over which the true levels are counted.
FINE_COUNT = 20_000


@dataclass(frozen=True)
@holds_arrays
class StudyGrid:
    """Directions (count, 3), and what each of them weighs in a mean over the sphere; the sum is 1 if nothing is biased."""

    name: str
    directions: FloatArray
    weights: FloatArray


@dataclass(frozen=True, kw_only=True)
class GridErrors:
    """Errors of one grid over all orientations, dB.

    trp_mean, trp_std: of the total radiated power. level_std: of each level that a share of all directions does not exceed,
    by its percentage. peak_mean, peak_worst: of the largest sample against the true peak, negative.
    """

    name: str
    count: int
    trp_mean: float
    trp_std: float
    trp_worst: float
    level_mean: dict[float, float]
    level_std: dict[float, float]
    peak_mean: float
    peak_worst: float


def constant_step(step_deg: float) -> list[StudyGrid]:
    """Return the grid of constant steps with the weights of the test plans (sin theta) and with Clenshaw-Curtis weights.

    Raises
    ------
    ValueError
        If the step does not divide 180 deg, or is not between 1 and 45 deg.
    """
    steps = round(180.0 / step_deg)
    if not 1.0 <= step_deg <= 45.0 or abs(180.0 / step_deg - steps) > 1e-9:
        raise ValueError(f"step: {step_deg:g} deg, must divide 180 deg and be from 1 to 45 deg")
    theta = np.arange(1, steps) * np.pi / steps
    phi = np.arange(2 * steps) * np.pi / steps
    t, p = (one.ravel() for one in np.meshgrid(theta, phi, indexing="ij"))
    places = np.concatenate([unit_vector(theta=t, phi=p), [[0.0, 0.0, 1.0], [0.0, 0.0, -1.0]]])
    sine = np.concatenate([np.sin(t) * np.pi / (4.0 * steps * steps), [0.0, 0.0]])
    exact = clenshaw_curtis_weights(steps) / 2.0
    even = np.concatenate([np.repeat(exact[1:-1] / phi.size, phi.size), exact[[0, -1]]])
    name = f"constant step {step_deg:g} deg"
    return [StudyGrid(f"{name}, sin theta", places, sine), StudyGrid(f"{name}, Clenshaw-Curtis", places, even)]


def constant_density(count: int) -> list[StudyGrid]:
    """Return grids of constant density: charged particles (equal weights, Voronoi cells) and the Fibonacci lattice.

    Raises
    ------
    ValueError
        If the count is not 4 to 3000.
    """
    charged, exact = charged_particles(count), fibonacci(count)
    particles = unit_vector(theta=charged.theta, phi=charged.phi)
    spiral = unit_vector(theta=exact.theta, phi=exact.phi)
    equal = np.full(count, 1.0 / count)
    return [
        StudyGrid(f"charged particles {count}, equal weights", particles, equal),
        StudyGrid(f"charged particles {count}, Voronoi cells", particles, charged.weights / (4.0 * np.pi)),
        StudyGrid(f"Fibonacci {count}, equal weights", spiral, equal),
        StudyGrid(f"Fibonacci {count}, exact weights", spiral, exact.weights / (4.0 * np.pi)),
    ]


def study(
    power: Power,
    grids: list[StudyGrid],
    *,
    mean: float,
    peak: float,
    orientations: int,
    percent: tuple[float, ...] = (50.0,),
    seed: int = 1,
) -> list[GridErrors]:
    """Return the errors of grids for a pattern turned at random.

    Parameters
    ----------
    power
        The pattern's power at any direction, linear.
    mean, peak
        Its true mean over the sphere and its true peak.
    orientations
        How many random orientations; the same for every grid.
    percent
        Levels that so many percent of all directions do not exceed.
    """
    turns = Rotation.random(orientations, rng=np.random.default_rng(seed)).as_matrix()
    theta, phi = fibonacci_lattice(FINE_COUNT)
    true = np.percentile(power(theta, phi), percent)
    return [_errors(power, grid, turns, mean, peak, percent, np.asarray(true)) for grid in grids]


def _errors(
    power: Power,
    grid: StudyGrid,
    turns: FloatArray,
    mean: float,
    peak: float,
    percent: tuple[float, ...],
    true: FloatArray,
) -> GridErrors:
    turned = np.einsum("dj,ojk->odk", grid.directions, turns)
    theta, phi = theta_phi(turned.reshape(-1, 3))
    samples = power(theta, phi).reshape(len(turns), -1)
    trp = power_db(samples @ grid.weights / mean)
    levels = np.array([_percentiles(one, grid.weights, percent) for one in samples])
    off = power_db(np.maximum(levels, 1e-30) / np.maximum(true, 1e-30))
    top = power_db(samples.max(axis=1) / peak)
    return GridErrors(
        name=grid.name, count=len(grid.weights), trp_mean=float(trp.mean()), trp_std=float(trp.std(ddof=1)),
        trp_worst=float(np.abs(trp).max()),
        level_mean=dict(zip(percent, off.mean(axis=0).tolist(), strict=True)), level_std=dict(zip(percent,
        off.std(axis=0, ddof=1).tolist(), strict=True)),
        peak_mean=float(top.mean()), peak_worst=float(top.min()),
    )  # fmt: skip


def _percentiles(samples: FloatArray, weights: FloatArray, percent: tuple[float, ...]) -> FloatArray:
    """Return the levels that shares of the solid angle do not exceed."""
    order = np.argsort(samples)
    area = np.maximum(weights[order], 0.0)
    share = (np.cumsum(area) - 0.5 * area) / area.sum()
    return np.asarray(np.interp(np.asarray(percent) / 100.0, share, samples[order]))
