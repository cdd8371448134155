"""The filter along z as matrices, against moving by the compiled transform."""

from __future__ import annotations

import numpy as np

from colure.analysis.steps.mode_filter import OwnWaves
from colure.geometry.conventions import mode_count
from colure.waves.expansion import Expansion


def test_many_expansions_are_filtered_as_each_alone():
    random = np.random.default_rng(4)
    k = np.array([500.0, 510.0])
    raw = random.normal(size=(2, 5, 2, 2, mode_count(24)))
    waves = Expansion(raw[0] + 1j * raw[1], np.broadcast_to(k, (5, 2)))
    own = OwnWaves(np.array([0.0, 0.0, -0.017]), 0.01, 22)
    assert own.order(510.0) < 22
    together = own.of(waves).coefficients
    for one, found in zip(waves.coefficients, together, strict=True):
        # Every move with all the degrees that it needs, cut afterwards.
        down = Expansion(one, k).translated(-own.centre_m).truncated(own.order(510.0))
        assert np.abs(down.translated(own.centre_m).truncated(22).coefficients - found).max() < 1e-10
