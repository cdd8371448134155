"""What echoes do to a peak that many directions share: told from draws on top of the record's own."""

from __future__ import annotations

import numpy as np
import pytest

from colure.analysis.uncertainty.trial import _as_first

DIRECTIONS, RECORDS, DRAWS = 40, 200, 80


@pytest.mark.parametrize("size", [0.01, 0.1])
def test_the_mean_of_further_draws_becomes_that_of_the_first(size):
    """The largest of like numbers: the mean error of the first draw against what further draws tell of it, within 10 %."""
    random = np.random.default_rng(5)
    own = size * random.normal(size=(RECORDS, DIRECTIONS))
    more = own[:, None] + size * random.normal(size=(RECORDS, DRAWS, DIRECTIONS))
    effects = more.max(axis=-1) - own.max(axis=-1)[:, None]
    told = np.array([_as_first(one[:, None, None]).mean() for one in effects])
    assert told.mean() == pytest.approx(own.max(axis=-1).mean(), rel=0.1)
    assert effects.mean() < 0.5 * own.max(axis=-1).mean()


def test_effects_without_a_mean_stay_and_vanished_figures_stay_unbounded():
    random = np.random.default_rng(6)
    even = random.normal(size=(DRAWS, 1, 1))
    even = np.concatenate([even, -even])
    assert np.array_equal(_as_first(even), even)
    even[3] = np.inf
    assert np.array_equal(_as_first(even), even)
