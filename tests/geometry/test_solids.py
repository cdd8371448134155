"""Distances of simple solids against points sampled on them, and ways that are clear or not."""

from __future__ import annotations

import numpy as np
import pytest
from scipy.optimize import minimize
from scipy.spatial.transform import Rotation

from colure.geometry.clearance import Clearance
from colure.geometry.joints import Carried, Joint, JointChain
from colure.geometry.rotations import RigidMotion
from colure.geometry.solids import Box, Capsule, Solid, distance

SHAPES = [
    Capsule((0, 0, 0), (0, 0, 0), 0.1),
    Capsule((-0.3, 0, 0), (0.2, 0.1, 0.4), 0.05),
    Box((0.1, 0, -0.1), (0.2, 0.1, 0.3)),
]


def points(shape: Capsule | Box, p: np.ndarray) -> np.ndarray:
    """Return a point of the solid's core for parameters in a cube."""
    if isinstance(shape, Capsule):
        return np.asarray(shape.start) + 0.5 * (1 + p[0]) * (np.asarray(shape.end) - np.asarray(shape.start))
    return np.asarray(shape.centre) + p * np.asarray(shape.half)


@pytest.mark.parametrize("one", SHAPES)
@pytest.mark.parametrize("other", SHAPES)
def test_distance_is_the_least_of_all_points(one, other):
    """The least distance found by a general minimizer; between boxes the answer may be below it, never above."""
    random = np.random.default_rng(2)
    for turn in Rotation.random(6, rng=random):
        there = RigidMotion(turn.as_matrix(), random.normal(0, 0.8, 3))
        still = RigidMotion.of()

        def apart(p, there=there):
            return np.linalg.norm(points(one, p[:3]) - there.points([points(other, p[3:])])[0])

        starts = [np.zeros(6), *random.uniform(-1, 1, (4, 6))]
        least = min(minimize(apart, s, bounds=[(-1, 1)] * 6, method="L-BFGS-B").fun for s in starts)
        least -= one.radius + other.radius
        found = float(distance(one, still, other, there))
        boxes = isinstance(one, Box) and isinstance(other, Box)
        assert found <= max(least, 0.0) + 1e-5
        if least > 1e-3:
            assert found > 0.0 if boxes else abs(found - least) < 1e-5


def test_a_way_through_a_post_is_found_although_both_ends_are_clear():
    """An arm of 1 m that swings by 90 deg past a thin post at 45 deg: it meets the post halfway (derivable)."""
    chain = JointChain((Joint("table", Carried.DEVICE, (0, 0, 1)), Joint("arm", Carried.PROBE, (0, 1, 0))), 1.0)
    arm = Solid("arm", 1, Capsule((0, 0, 0.2), (0, 0, 1.0), 0.02))
    post = Solid("post", -1, Capsule((0.6, 0, 0.6), (0.6, 0, 0.62), 0.01))
    clear = Clearance(chain, [(arm, post)])
    starts, ends = np.array([[0.0, 0.0], [0.0, 0.0]]), np.array([[1.0, 0.0], [0.0, 0.5 * np.pi]])
    assert np.all(clear.gaps(np.concatenate([starts, ends])) > 0.3)
    found = clear.first_contact(starts, ends)
    assert found is not None and found[0] == 1 and abs(found[1].share - 0.5) < 0.1
    assert clear.first_contact(starts, np.array([[3.0, 0.0], [0.0, 0.5]])) is None


def test_no_way_that_is_called_clear_touches_anywhere():
    random = np.random.default_rng(7)
    chain = JointChain(
        (Joint("table", Carried.DEVICE, (0, 0, 1)), Joint("arm", Carried.PROBE, (0, 1, 0)), Joint("hand", Carried.PROBE, (1, 0, 0), (0, 0, 0.6))),
        1.0,
    )  # fmt: skip
    pairs = [
        (
            Solid("hand", 2, Box((0, 0, 0.9), (0.05, 0.1, 0.2))),
            Solid("post", -1, Capsule((0.6, 0.1, 0.5), (0.7, 0.3, 0.4), 0.05)),
        ),
        (
            Solid("hand", 2, Capsule((0, 0, 0.6), (0, 0, 1.1), 0.03)),
            Solid("mast", 0, Box((0.2, 0, -0.3), (0.1, 0.1, 0.5))),
        ),
    ]
    clear, seen = Clearance(chain, pairs), {True: 0, False: 0}
    for starts, ends in random.uniform(-2, 2, (24, 2, 1, 3)):
        found = clear.first_contact(starts, ends)
        way = starts + np.linspace(0, 1, 400)[:, None] * (ends - starts)
        touched = bool((clear.gaps(way) <= 0.0).any())
        seen[touched] += 1
        assert not touched or found is not None
    assert min(seen.values()) > 3
