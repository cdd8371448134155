"""Simple solids that move with a mount, and how far they stay apart: spheres, capsules and boxes.

Distances are never overstated. Between spheres, between capsules, and between a capsule and a box they are exact. Between boxes the
largest gap along the fifteen separating axes is taken (S. Gottschalk et al., "OBBTree", 1996): exact face to face, a lower bound at
edges and corners.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from colure.geometry.conventions import FloatArray
from colure.geometry.kinematics import Vector3
from colure.geometry.rotations import RigidMotion


@dataclass(frozen=True)
class Capsule:
    """All points within `radius` of the segment from `start` to `end`, metres; one point twice: a sphere."""

    start: Vector3
    end: Vector3
    radius: float

    @property
    def farthest(self) -> FloatArray:
        """Points (2, 3) whose largest motion, with the radius, bounds that of the whole solid."""
        return np.array([self.start, self.end])


@dataclass(frozen=True)
class Box:
    """A box with its sides along the lab's axes in the reference position: centre and half sides, metres."""

    centre: Vector3
    half: Vector3
    radius: float = 0.0

    @property
    def farthest(self) -> FloatArray:
        """The eight corners (8, 3)."""
        signs = np.array(np.meshgrid([-1, 1], [-1, 1], [-1, 1], indexing="ij")).reshape(3, 8).T
        return np.asarray(np.asarray(self.centre) + signs * np.asarray(self.half))


Shape = Capsule | Box


@dataclass(frozen=True)
class Solid:
    """A named shape on a body: -1 the room, else the number of the joint that carries it."""

    name: str
    body: int
    shape: Shape


def distance(one: Shape, there: RigidMotion, other: Shape, other_there: RigidMotion) -> FloatArray:
    """Return how far two solids are apart (...,), metres; not above zero where they touch or overlap."""
    if isinstance(one, Capsule) and isinstance(other, Capsule):
        a, b = there.points(one.farthest), other_there.points(other.farthest)
        return np.asarray(_between_segments(a, b) - one.radius - other.radius)
    if isinstance(one, Box) and isinstance(other, Capsule):
        return _capsule_to_box(other, other_there, one, there)
    if isinstance(one, Capsule) and isinstance(other, Box):
        return _capsule_to_box(one, there, other, other_there)
    assert isinstance(one, Box) and isinstance(other, Box)
    return _between_boxes(one, there, other, other_there)


def _between_segments(one: FloatArray, other: FloatArray) -> FloatArray:
    """Return the distance of segments (..., 2, 3): the nearest of the lines' foot and the four ends."""
    one, other = np.broadcast_arrays(one, other)
    p, d = one[..., 0, :], one[..., 1, :] - one[..., 0, :]
    q, e = other[..., 0, :], other[..., 1, :] - other[..., 0, :]
    r = p - q
    a, b, c = (np.sum(u * v, axis=-1) for u, v in ((d, d), (d, e), (e, e)))
    f, g = np.sum(d * r, axis=-1), np.sum(e * r, axis=-1)
    bent = a * c - b * b
    s = np.where(bent > 1e-14, np.clip((b * g - c * f) / np.where(bent > 1e-14, bent, 1.0), 0.0, 1.0), 0.0)
    tries = [(s, _clipped(b * s + g, c))]
    for end in (0.0, 1.0):
        tries.append((np.full_like(a, end), _clipped(b * end + g, c)))
        tries.append((_clipped(b * end - f, a), np.full_like(a, end)))
    tries.append((_clipped(b * tries[0][1] - f, a), tries[0][1]))
    ways = [np.linalg.norm(r + s_[..., None] * d - t_[..., None] * e, axis=-1) for s_, t_ in tries]
    return np.asarray(np.minimum.reduce(ways))


def _clipped(top: FloatArray, bottom: FloatArray) -> FloatArray:
    return np.clip(top / np.where(bottom > 1e-14, bottom, 1.0), 0.0, 1.0) * (bottom > 1e-14)


def _capsule_to_box(capsule: Capsule, there: RigidMotion, box: Box, box_there: RigidMotion) -> FloatArray:
    """Along the segment the squared distance is convex and, between the planes of the box's sides, a parabola.

    Its slope is a rising polyline whose corners lie in those planes: the least distance is where the slope passes zero.
    """
    inside = there.then(box_there.inverse())
    ends, half = inside.points(capsule.farthest) - np.asarray(box.centre), np.asarray(box.half)
    start, way = ends[..., 0, :], ends[..., 1, :] - ends[..., 0, :]

    def beyond(share: FloatArray) -> FloatArray:
        place = start[..., None, :] + share[..., None] * way[..., None, :]
        return np.asarray(place - np.clip(place, -half, half))

    moving = np.abs(way) > 1e-14
    planes = np.stack([side * half - start for side in (-1.0, 1.0)], axis=-1) / np.where(moving, way, 1.0)[..., None]
    planes = np.clip(np.where(moving[..., None], planes, 0.0), 0.0, 1.0).reshape(*start.shape[:-1], 6)
    tips = np.broadcast_to([0.0, 1.0], (*start.shape[:-1], 2))
    corners = np.sort(np.concatenate([planes, tips], axis=-1), axis=-1)
    slope = np.sum(beyond(corners) * way[..., None, :], axis=-1)
    after = np.clip(np.sum(slope < 0.0, axis=-1), 1, corners.shape[-1] - 1)[..., None]
    low, high = (np.take_along_axis(corners, after - one, axis=-1) for one in (1, 0))
    falls, rises = (np.take_along_axis(slope, after - one, axis=-1) for one in (1, 0))
    rate = rises - falls
    share = low + (high - low) * np.clip(-falls / np.where(rate > 0.0, rate, 1.0), 0.0, 1.0)
    return np.asarray(np.linalg.norm(beyond(share)[..., 0, :], axis=-1) - capsule.radius)


def _between_boxes(one: Box, there: RigidMotion, other: Box, other_there: RigidMotion) -> FloatArray:
    a, b = there.rotation, other_there.rotation
    apart = other_there.points([other.centre])[..., 0, :] - there.points([one.centre])[..., 0, :]
    a, b = np.broadcast_to(a, (*apart.shape, 3)), np.broadcast_to(b, (*apart.shape, 3))
    own = [a[..., :, i] for i in range(3)] + [b[..., :, i] for i in range(3)]
    axes = np.stack(own + [np.cross(a[..., :, i], b[..., :, j]) for i in range(3) for j in range(3)], axis=-2)
    size = np.linalg.norm(axes, axis=-1)
    axes = axes / np.maximum(size, 1e-9)[..., None]
    reach = np.zeros(size.shape)
    for turn, half in ((a, one.half), (b, other.half)):
        reach = reach + np.abs(axes @ turn) @ np.asarray(half)
    gap = np.abs(np.einsum("...ki,...i->...k", axes, apart)) - reach
    return np.asarray(np.where(size > 1e-9, gap, -np.inf).max(axis=-1))


@dataclass(frozen=True)
class SolidContact:
    """Two solids that come too near to each other: names, how near (m), and where on the way (0 to 1)."""

    one: str
    other: str
    gap: float
    share: float


def pairs_of(solids: Sequence[Solid], allowed: Sequence[tuple[str, str]]) -> list[tuple[Solid, Solid]]:
    """Return the pairs that can meet: on different bodies, and not allowed to touch."""
    free = {frozenset(pair) for pair in allowed}
    return [
        (one, other)
        for number, one in enumerate(solids)
        for other in solids[number + 1 :]
        if one.body != other.body and frozenset((one.name, other.name)) not in free
    ]
