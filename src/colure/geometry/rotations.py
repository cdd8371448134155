"""Rotation matrices and rigid motions, vectorized over leading dimensions."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike

from colure.geometry.conventions import FloatArray
from colure.values import holds_arrays


def about_axis(axis: str, angle: ArrayLike) -> FloatArray:
    """Return right-handed rotation matrices by `angle` (radians) about 'x', 'y' or 'z'.

    Shape (..., 3, 3) for an angle of shape (...).
    """
    a = np.asarray(angle, dtype=np.float64)
    fixed = "xyz".index(axis)
    one, two = (fixed + 1) % 3, (fixed + 2) % 3
    matrix = np.zeros((*a.shape, 3, 3))
    matrix[..., fixed, fixed] = 1.0
    matrix[..., one, one] = matrix[..., two, two] = np.cos(a)
    matrix[..., two, one] = np.sin(a)
    matrix[..., one, two] = -matrix[..., two, one]
    return matrix


def from_rotation_vector(vector: ArrayLike) -> FloatArray:
    """Return the rotation matrices (..., 3, 3) of rotation vectors (..., 3): axis times angle, radians."""
    from scipy.spatial.transform import Rotation

    given = np.asarray(vector, dtype=np.float64)
    matrices = Rotation.from_rotvec(given.reshape(-1, 3)).as_matrix()
    return np.asarray(matrices, dtype=np.float64).reshape(*given.shape, 3)


@dataclass(frozen=True)
@holds_arrays
class RigidMotion:
    """x -> rotation x + translation; rotation (..., 3, 3), translation (..., 3) in metres."""

    rotation: FloatArray
    translation: FloatArray

    @classmethod
    def of(cls, *, rotation: ArrayLike | None = None, shift: ArrayLike = (0.0, 0.0, 0.0)) -> RigidMotion:
        """Build a motion from a rotation matrix (default: none) and a shift in metres."""
        matrix = np.eye(3) if rotation is None else np.asarray(rotation, dtype=np.float64)
        return cls(matrix, np.asarray(shift, dtype=np.float64))

    @classmethod
    def none(cls, shape: tuple[int, ...]) -> RigidMotion:
        """Return the motion that leaves everything where it is, for every entry of a shape."""
        return cls(np.broadcast_to(np.eye(3), (*shape, 3, 3)), np.zeros((*shape, 3)))

    def then(self, outer: RigidMotion) -> RigidMotion:
        """Return the motion that applies this one first and `outer` after it."""
        shift = (outer.rotation @ self.translation[..., None])[..., 0] + outer.translation
        return RigidMotion(outer.rotation @ self.rotation, shift)

    def points(self, xyz: ArrayLike) -> FloatArray:
        """Move points of shape (count, 3); returns (..., count, 3)."""
        turned = self.vectors(xyz)
        return np.asarray(turned + self.translation[..., None, :], dtype=np.float64)

    def vectors(self, xyz: ArrayLike) -> FloatArray:
        """Turn free vectors of shape (count, 3); returns (..., count, 3)."""
        v = np.asarray(xyz)
        return np.asarray(np.einsum("...ij,nj->...ni", self.rotation, v))

    def inverse(self) -> RigidMotion:
        """Return the motion that undoes this one."""
        back = np.swapaxes(self.rotation, -1, -2)
        return RigidMotion(back, -(back @ self.translation[..., None])[..., 0])
