"""Whether solids on a mount stay apart while its joints move: everywhere on the way, not only at its ends."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from colure.geometry.conventions import BoolArray, FloatArray, IntArray
from colure.geometry.joints import JointChain, JointKind
from colure.geometry.rotations import RigidMotion
from colure.geometry.solids import Solid, SolidContact, distance

#: Solids count as touching where they come this near, metres.
NEAR = 1e-3
#: A way is halved at most so often.
MOST_HALVINGS = 24
#: As many joint positions are worked out together.
BLOCK = 4096


class Clearance:
    """Distances of pairs of solids over joint values (..., joint), radians or metres."""

    def __init__(self, chain: JointChain, pairs: Sequence[tuple[Solid, Solid]]) -> None:
        self._chain, self.pairs = chain, list(pairs)
        self._reach = np.array([self._moves(one) + self._moves(other) for one, other in pairs]).reshape(
            len(self.pairs), len(chain.joints)
        )

    def _moves(self, solid: Solid) -> FloatArray:
        """Return how far a solid's points move at most with each joint, metres per radian or metre.

        Points of joints' lines keep their distances along a chain: the sum of them bounds the arm of every joint.
        """
        joints, out = self._chain.joints, np.zeros(len(self._chain.joints))
        if solid.body < 0:
            return out
        carried = [n for n in self._chain.carrying(joints[solid.body].carries) if n <= solid.body]
        place, arm = None, 0.0
        for number in reversed(carried):
            point = np.asarray(joints[number].point, float)
            if joints[number].kind is JointKind.PRISMATIC:
                out[number] = 1.0
                continue
            arm += (
                float(np.linalg.norm(solid.shape.farthest - point, axis=1).max())
                if place is None
                else float(np.linalg.norm(place - point))
            )
            place, out[number] = point, arm
        return out

    def gaps(self, values: FloatArray, wanted: BoolArray | None = None) -> FloatArray:
        """Return how far every pair is apart, (position, pair), metres; infinity where it is not `wanted` (position, pair)."""
        out = np.full((len(values), len(self.pairs)), np.inf)
        for begin in range(0, len(values), BLOCK):
            part = values[begin : begin + BLOCK]
            links, still = self._chain.links(part), RigidMotion.none((len(part),))
            for column, (one, other) in enumerate(self.pairs):
                asked = np.ones(len(part), bool) if wanted is None else wanted[begin : begin + BLOCK, column]
                rows = np.flatnonzero(asked)
                if not rows.size:
                    continue
                there, others = (_some(still if s.body < 0 else links[s.body], rows) for s in (one, other))
                out[begin : begin + BLOCK, column][rows] = distance(one.shape, there, other.shape, others)
        return out

    def first_contact(self, starts: FloatArray, ends: FloatArray) -> tuple[int, SolidContact] | None:
        """Return the first move (move, joint) that touches anything, and what; None if all stay clear.

        All joints of a move start and end together. A way is clear where both its ends are further from touching than the
        solids can move in between; else it is halved.
        """
        if not self.pairs or not len(starts):
            return None
        moves = np.arange(len(starts))
        low, high = np.zeros(len(starts)), np.ones(len(starts))
        gap_low, gap_high = self.gaps(starts), self.gaps(ends)
        worst: tuple[int, SolidContact] | None = None
        for _ in range(MOST_HALVINGS):
            for share, gap in ((low, gap_low), (high, gap_high)):
                worst = _earlier(worst, self._touching(moves, share, gap))
            span = np.abs(ends - starts)[moves] * (high - low)[:, None] @ self._reach.T
            unsure = gap_low + gap_high - 2.0 * NEAR < span
            open_ = np.any(unsure, axis=1)
            if worst is not None:
                open_ &= moves < worst[0]
            if not open_.any():
                return worst
            moves, low, high, gap_low, gap_high = moves[open_], low[open_], high[open_], gap_low[open_], gap_high[open_]
            middle = 0.5 * (low + high)
            # A pair that is clear on the whole way is not asked again.
            gap = self.gaps(starts[moves] + middle[:, None] * (ends - starts)[moves], unsure[open_])
            moves, low, high = np.tile(moves, 2), np.concatenate([low, middle]), np.concatenate([middle, high])
            gap_low, gap_high = np.concatenate([gap_low, gap]), np.concatenate([gap, gap_high])
        return worst

    def _touching(self, moves: IntArray, share: FloatArray, gap: FloatArray) -> tuple[int, SolidContact] | None:
        rows, columns = np.nonzero(gap < NEAR)
        if not rows.size:
            return None
        first = int(np.lexsort((share[rows], moves[rows]))[0])
        row, (one, other) = rows[first], self.pairs[columns[first]]
        return int(moves[row]), SolidContact(one.name, other.name, float(gap[row, columns[first]]), float(share[row]))


def _some(motion: RigidMotion, rows: IntArray) -> RigidMotion:
    return RigidMotion(motion.rotation[rows], motion.translation[rows])


def _earlier(
    one: tuple[int, SolidContact] | None, other: tuple[int, SolidContact] | None
) -> tuple[int, SolidContact] | None:
    if one is None or other is None:
        return one or other
    return min(one, other, key=lambda contact: (contact[0], contact[1].share))
