"""The Voronoi cells of scattered directions: what solid angle a sample stands for, and where samples leave holes."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from scipy.spatial import SphericalVoronoi, cKDTree

from colure.geometry.conventions import FloatArray
from colure.geometry.directions import unit_vector
from colure.values import holds_arrays

#: A hole is a direction farther from every sample than this many half wavelengths of the highest degree.
HOLE = 1.2


@dataclass(frozen=True)
@holds_arrays
class Cells:
    """Cells of directions, worked out once for all orders.

    area
        (count,) steradians of the cell of each sample's direction, shared equally by samples at one direction.
    median
        Median area of a cell, steradians.
    widest
        Largest distance, as a chord of the unit sphere, of any direction from its nearest sample; nan with fewer than 5.
    """

    area: FloatArray
    median: float
    shared: FloatArray
    widest: float

    @classmethod
    def of(cls, theta: FloatArray, phi: FloatArray) -> Cells:
        """Return the cells of directions (count,), radians."""
        points = np.round(unit_vector(theta=theta, phi=phi), 9)
        unique, inverse, counts = np.unique(points, axis=0, return_inverse=True, return_counts=True)
        inverse = inverse.reshape(-1)
        if len(unique) < 5:
            even = 4.0 * np.pi / theta.size
            return cls(np.full(theta.size, even), even, np.ones(theta.size), float("nan"))
        unique = unique / np.linalg.norm(unique, axis=1, keepdims=True)
        hull = SphericalVoronoi(unique)
        area = hull.calculate_areas()
        nearest, _ = cKDTree(unique).query(hull.vertices)
        shared = counts[inverse].astype(float)
        return cls(area[inverse] / shared, float(np.median(area)), shared, float(np.max(nearest)))

    def solid_angles(self, order: int) -> FloatArray:
        """Return the solid angle that each sample stands for, in steradians, shape (count,).

        Cells at the rim of a partial sphere, which would reach into the unsampled part, are cut to twice
        the area that a sample of degree `order` may stand for.
        """
        largest = max(2.0 * self.median, 2.0 * np.pi / (order + 1) ** 2)
        return np.asarray(np.minimum(self.area, largest / self.shared))

    def has_holes(self, order: int) -> bool:
        """Tell whether samples leave a part of the sphere out that waves of degree `order` need."""
        return bool(np.isnan(self.widest) or self.widest > HOLE * np.pi / order)
