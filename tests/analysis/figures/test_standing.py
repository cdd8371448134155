"""Side lobes that stand above what noise may add: the dip beside them is deeper by more than the expanded uncertainty."""

from __future__ import annotations

import numpy as np
import pytest

from colure.analysis.figures.cuts import GreatCircleCut
from colure.analysis.figures.lobes import side_lobes, standing

ANGLE = np.linspace(-30.0, 30.0, 1201)
#: Uniform line of 20 wavelengths: lobes at 13.26, 17.83, 20.79 dB below the peak (textbook values of sin(x)/x).
LINE = np.sinc(20.0 * np.sin(np.deg2rad(ANGLE)))
LOBES_DB = (-13.26, -17.83, -20.79)


def lobes_of(field: np.ndarray) -> list[tuple[float, float]]:
    return side_lobes(GreatCircleCut(ANGLE, field.astype(complex), np.zeros(ANGLE.size)))


def test_lobes_of_a_uniform_line_stand_above_a_small_uncertainty():
    found = lobes_of(LINE)
    kept = standing(found, ANGLE, np.abs(LINE), np.full(ANGLE.size, 0.01))
    right = [level for angle, level in kept if angle > 0.0][:3]
    assert right == pytest.approx(LOBES_DB, abs=0.01)


@pytest.mark.parametrize(("expanded", "count"), [(0.05, 10), (0.1, 4), (0.15, 2), (0.25, 0)])
def test_a_lobe_stands_only_above_its_own_uncertainty(expanded, count):
    # Every dip reaches zero: exactly the lobes stand whose amplitude (1 / 4.6, 1 / 7.8, ...) is larger than the uncertainty.
    kept = standing(lobes_of(LINE), ANGLE, np.abs(LINE), np.full(ANGLE.size, expanded))
    assert all(10.0 ** (level / 20.0) > expanded for _, level in kept)
    assert len(kept) == count == sum(10.0 ** (level / 20.0) > expanded for _, level in lobes_of(LINE))


def test_a_ripple_of_noise_on_a_slope_is_no_lobe():
    """A ripple of 0.01 beside dips of nearly its own height does not stand above 0.02, however high it lies itself."""
    slope = np.cos(np.deg2rad(2.0 * ANGLE)) + 0.01 * np.sin(np.deg2rad(180.0 * ANGLE))
    beam = np.where(np.abs(ANGLE) < 2.0, 2.0 * np.cos(np.deg2rad(40.0 * ANGLE)), slope)
    # The rim of the main lobe itself, at 4 deg, is a step and no ripple.
    rippled = [one for one in lobes_of(beam) if abs(one[0]) > 6.0]
    assert len(rippled) >= 10
    assert standing(rippled, ANGLE, beam, np.full(ANGLE.size, 0.021)) == []
    assert len(standing(rippled, ANGLE, beam, np.full(ANGLE.size, 0.001))) >= 10


def test_the_higher_of_both_dips_decides():
    """A lobe on the shoulder of a higher one has one dip hardly below it: it stands out by that dip alone."""
    amplitude = np.interp(ANGLE, [-30.0, 0.0, 5.0, 10.0, 12.0, 20.0, 30.0], [0.0, 1.0, 0.0, 0.3, 0.28, 0.32, 0.0])
    top = [(10.0, 20.0 * np.log10(0.3))]
    assert standing(top, ANGLE, amplitude, np.full(ANGLE.size, 0.03)) == []
    assert standing(top, ANGLE, amplitude, np.full(ANGLE.size, 0.01)) == top
