"""Directions of constant density: charged particles that repel each other on the unit sphere.

Standards of over-the-air tests offer such grids beside constant steps (3GPP TS 38.521-2, annex M.1); every sample then stands
for the area around it (M.4.3: ideally that of its Voronoi cell).
"""

from __future__ import annotations

import numpy as np
from scipy.optimize import minimize
from scipy.spatial import SphericalVoronoi

from colure.geometry.conventions import FloatArray
from colure.geometry.sphere import DirectionSet, fibonacci_lattice

MOST = 3000


def charged_particles(count: int, *, rounds: int = 500) -> DirectionSet:
    """Return `count` directions at a minimum of the energy of equal charges, weighted with their Voronoi cells.

    The minimum is the one next to the Fibonacci lattice: of many minima of nearly equal energy (the Thomson problem) any one
    serves. The same count gives the same directions.

    Parameters
    ----------
    count
        4 to 3000 (every pair repels: time goes with the square).

    Raises
    ------
    ValueError
        If `count` is outside its limits.
    """
    if not 4 <= count <= MOST:
        raise ValueError(f"count: {count}, must be 4 to {MOST} (directions)")
    theta, phi = fibonacci_lattice(count)
    start = np.stack([np.sin(theta) * np.cos(phi), np.sin(theta) * np.sin(phi), np.cos(theta)], axis=-1)
    minimum = minimize(
        _energy_and_slope, start.ravel(), jac=True, method="L-BFGS-B", options={"maxiter": rounds, "gtol": 1e-9,
        "ftol": 1e-14}
    )  # fmt: skip
    places = _on_sphere(minimum.x)
    weights = SphericalVoronoi(places).calculate_areas()
    return DirectionSet(
        np.arccos(np.clip(places[:, 2], -1.0, 1.0)),
        np.mod(np.arctan2(places[:, 1], places[:, 0]), 2.0 * np.pi),
        np.asarray(weights),
        0,
    )


def energy(theta: FloatArray, phi: FloatArray) -> float:
    """Return the sum of 1/distance over all pairs of directions (radians) on the unit sphere."""
    places = np.stack([np.sin(theta) * np.cos(phi), np.sin(theta) * np.sin(phi), np.cos(theta)], axis=-1)
    return float(_energy_and_slope(places.ravel())[0])


def _on_sphere(flat: FloatArray) -> FloatArray:
    places = np.asarray(flat).reshape(-1, 3)
    return np.asarray(places / np.linalg.norm(places, axis=1, keepdims=True))


def _energy_and_slope(flat: FloatArray) -> tuple[float, FloatArray]:
    """Return the energy of the projected points and its gradient with respect to the unprojected ones."""
    length = np.linalg.norm(np.asarray(flat).reshape(-1, 3), axis=1, keepdims=True)
    places = _on_sphere(flat)
    squared = np.maximum(2.0 - 2.0 * places @ places.T, 1e-300)
    np.fill_diagonal(squared, np.inf)
    inverse = 1.0 / np.sqrt(squared)
    cubed = inverse**3
    slope = -(cubed.sum(axis=1, keepdims=True) * places - cubed @ places)
    # Only what lies along the sphere counts, shortened by the projection.
    along = slope - np.sum(slope * places, axis=1, keepdims=True) * places
    return 0.5 * float(inverse.sum()), (along / length).ravel()
