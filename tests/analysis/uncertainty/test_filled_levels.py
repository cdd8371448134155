"""A room that is drawn on a record raises its low levels by less than the room did that the record holds already."""

from types import SimpleNamespace

import numpy as np
import pytest

from colure.analysis.uncertainty.budget import _even_in_power, _less_power
from colure.analysis.uncertainty.effects import FIRST_OVER_SECOND, CauseEffects


def raised(true, size, times, random):
    """Mean rise in dB of the lowest fifth of levels by so many rooms, each on top of the others."""
    levels, field = [], true + np.zeros((300, 1))
    for _ in range(times + 1):
        levels.append(np.quantile(20.0 * np.log10(np.abs(field)), 0.2, axis=1).mean())
        raw = random.normal(size=(2, *field.shape)) / np.sqrt(2.0)
        field = field + size * (raw[0] + 1j * raw[1])
    return np.diff(levels)


def test_the_first_room_fills_minima_more_than_the_second():
    """Drawn: levels from nothing to seven times the echoes. By amplitude alone it is sqrt 1 against sqrt 2 - sqrt 1 (derivable)."""
    first, second = raised(0.21 * np.linspace(0.05, 1.0, 400)[:, None].T ** 2, 0.03, 2, np.random.default_rng(11))
    assert first > FIRST_OVER_SECOND * second > 0.0
    assert 1.0 < FIRST_OVER_SECOND < 1.0 + np.sqrt(2.0)


def test_only_what_stands_for_a_bound_and_raises_is_widened():
    def cause(distribution, known):
        return SimpleNamespace(
            cause=SimpleNamespace(distribution=distribution, known_mean=known), changes=np.zeros((2, 1))
        )

    every = [cause("as drawn", False), cause("Monte Carlo", True), cause("normal", False)]
    effects = np.full((6, 1, 3), 0.1)
    effects[:, :, 2] = -0.1
    before = effects.copy()
    CauseEffects._as_the_record_was_filled(SimpleNamespace(_every=every), effects, [1, 2])
    assert effects[:2, 0, 1] == pytest.approx(0.1 * FIRST_OVER_SECOND)
    effects[:2, :, 1] = before[:2, :, 1]
    assert effects == pytest.approx(before)


@pytest.mark.parametrize("noise_over_level", [0.01, 1.0, 20.0])
def test_noise_is_taken_off_a_filled_level_as_power(noise_over_level):
    """Powers of what is not correlated add: a level t that reads t + N, and t + 2 N with as much noise once more, was t (derivable)."""
    read, again = 1.0 + noise_over_level, 1.0 + 2.0 * noise_over_level
    raised = 10.0 * np.log10(again / read)
    assert _less_power(10.0 * np.log10(read), raised) == pytest.approx(0.0, abs=1e-9)


def test_an_interval_of_a_filled_level_is_even_in_power_and_may_be_open():
    """Small: as in dB. Half of the power: -3.01 and +1.76 dB. All of it, or of what is left of it: no lower end (derivable)."""
    per_db = 10.0 / np.log(10.0)
    small = _even_in_power(-20.0, 0.01, -20.0)
    assert small.low == pytest.approx(-20.01, abs=1e-4) and small.high == pytest.approx(-19.99, abs=1e-4)
    half = _even_in_power(-20.0, 0.5 * per_db, -20.0)
    assert half.low == pytest.approx(-23.0103, abs=1e-4) and half.high == pytest.approx(-18.2391, abs=1e-4)
    assert _even_in_power(-20.0, per_db, -20.0).low == -np.inf
    # Half of what was measured is all of what is left of it after noise was taken off.
    assert _even_in_power(-23.0103, 0.5 * per_db, -20.0).low < -60.0
