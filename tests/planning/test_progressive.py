"""The order of a progressive scan: which even sets are complete when it is stopped, counted slice by slice."""

from __future__ import annotations

import pytest

from colure.planning.progressive import progressive_order

LEAST = 4


def complete(order: list[int], measured: int) -> int:
    """Return how many slices the largest evenly spaced set has that is complete; 0 where there is none of four or more."""
    have, count = set(order[:measured]), len(order)
    steps = [step for step in range(1, count + 1) if count % step == 0 and count // step >= LEAST]
    return max((count // step for step in steps if have.issuperset(range(0, count, step))), default=0)


@pytest.mark.parametrize(
    ("count", "sets"),
    [
        (12, {4: 4, 8: 6}),
        (16, {4: 4, 8: 8}),
        (18, {6: 6, 12: 9}),
        (20, {5: 5, 10: 10}),
        (24, {4: 4, 8: 6, 12: 12}),
        (36, {6: 6, 12: 9, 18: 18}),
        (7, {}),
    ],
)
def test_even_sets_come_early_and_often(count, sets):
    """`sets`: slices measured, and how many even ones are then complete (derivable: the sets' union)."""
    order = progressive_order(count)
    assert sorted(order) == list(range(count))
    largest = [complete(order, measured) for measured in range(count)]
    assert {n: now for n, now in enumerate(largest) if n and now > largest[n - 1]} == sets


@pytest.mark.parametrize("count", [9, 27, 81])
def test_the_first_nine_of_a_verification_come_in_threes(count):
    assert [one * 180 // count for one in progressive_order(count)[:9]] == [0, 60, 120, 20, 80, 140, 40, 100, 160]
