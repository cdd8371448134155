"""Half widths that are read from a few drawn inputs, held against inputs that were not among them; invented distributions."""

from __future__ import annotations

import numpy as np
import pytest

from colure.analysis.uncertainty.combination import Contribution, joint_half_width

OUTPUTS = 3000


def rooms(random: np.random.Generator, count: int) -> np.ndarray:
    """Return what inputs do (input, output), complex: one in ten is four times as strong as the others."""
    size = np.where(random.random((count, OUTPUTS)) < 0.1, 4.0, 1.0)
    return size * (random.normal(size=size.shape) + 1j * random.normal(size=size.shape))


def drawn(effects: np.ndarray) -> Contribution:
    """Return inputs (input, output) as the budget draws them: each in phase and in quadrature."""
    both = np.stack([effects.real, -effects.imag], axis=1)
    return Contribution(both.reshape(-1, effects.shape[1]), "as drawn", centred=False)


@pytest.mark.parametrize(("count", "noise"), [(16, 0.0), (40, 0.0), (16, 2.0)])
def test_95_of_100_inputs_that_were_not_drawn_are_inside(count, noise):
    """JCGM 100:2008, 6.2: of the next room, not of the very rooms that the interval was read from (93 of 100 with 16 of them)."""
    random = np.random.default_rng(7)
    parts = [drawn(rooms(random, count))]
    error = rooms(random, 1)[0].real
    if noise:
        parts.append(Contribution(np.full((1, OUTPUTS), 2.0 * noise), "normal"))
        error = error + noise * random.normal(size=OUTPUTS)
    # Of 3000 the share scatters by 0.4 %.
    assert np.mean(np.abs(error) <= joint_half_width(parts)) == pytest.approx(0.95, abs=0.009)


def test_inputs_that_do_the_same_leave_the_half_width_as_it_is():
    """Of an arcsine distribution 95 % lie within sin(0.95 pi/2) of its amplitude (derivable); more such inputs tell nothing new."""
    same = drawn(np.full((16, 1), 0.7 + 0.2j))
    assert joint_half_width([same], draws=40_000)[0] == pytest.approx(abs(0.7 + 0.2j) * np.sin(0.475 * np.pi), rel=2e-3)


def test_what_is_drawn_no_input_stands_as_before():
    one = Contribution(np.array([[0.6, 0.0]]), "normal")
    half = joint_half_width([one], draws=40_000)
    assert half[0] == pytest.approx(0.3 * 1.96, rel=0.02) and half[1] == 0.0
