"""Transforms on several threads give what one thread gives, to the last bit."""

from __future__ import annotations

import numpy as np
import pytest

from colure.waves.threads import LEAST_WORK, threaded, threads, use_threads
from colure.waves.transform import adjoint_synthesis, analysis, synthesis

ORDER, FREQUENCIES = 40, 3


@pytest.fixture
def two_threads():
    use_threads(2)
    yield
    use_threads(1)


def transformed():
    random = np.random.default_rng(1)
    size = (FREQUENCIES, 2, ORDER * (ORDER + 2))
    waves, theta = random.normal(size=size) + 1j * random.normal(size=size), np.linspace(0.0, np.pi, ORDER + 3)
    field = synthesis(waves, theta, 2 * ORDER + 2)
    assert field.size * ORDER > LEAST_WORK
    return field, analysis(field, ORDER), adjoint_synthesis(field, ORDER, theta)


def test_two_threads_give_the_bits_of_one(request):
    alone = transformed()
    request.getfixturevalue("two_threads")
    assert threads() == 2
    for one, two in zip(alone, transformed(), strict=True):
        np.testing.assert_array_equal(one, two)


def test_a_small_task_stays_in_its_thread_and_a_large_one_does_not(two_threads):
    from threading import current_thread

    own = current_thread().name
    assert set(threaded(lambda _: current_thread().name, 4, LEAST_WORK - 1)) == {own}
    assert own not in threaded(lambda _: current_thread().name, 4, LEAST_WORK)
    assert threads(LEAST_WORK - 1) == 1
