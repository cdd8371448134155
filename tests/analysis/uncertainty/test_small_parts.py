"""Formulas of single steps of the budget against values worked out by hand."""

from __future__ import annotations

import numpy as np
import pytest

from colure.analysis.steps.probe_beam import beam_of
from colure.analysis.uncertainty.budget import _of_least
from colure.analysis.uncertainty.effects import _of_ellipse
from colure.analysis.uncertainty.field_figures import FieldCause, cuts_of_field
from colure.waves.probe_models import dipole


def test_an_error_of_a_tenth_of_the_least_amplitude_is_added_to_the_amplitude():
    """20 log10(0.9) = -0.915 dB, 20 log10(1.1) = 0.828 dB; an error as large as the amplitude may fill a null wholly."""
    tenth = 0.1 * 20.0 / np.log(10.0)
    ends = _of_least(-30.0, tenth)
    assert (ends.low, ends.high) == (pytest.approx(-30.915, abs=1e-3), pytest.approx(-29.172, abs=1e-3))
    ends = _of_least(-30.0, 12.0 * tenth)
    assert ends.low == -np.inf and ends.high == pytest.approx(-30.0 + 20.0 * np.log10(2.2), abs=1e-9)


def test_ellipse_of_two_circular_components():
    """Weaker over stronger 0.5: axial ratio 3, circularity 2 AR / (1 + AR^2) = 0.6 (Stokes V / I; IEEE Std 145-2013)."""
    found = _of_ellipse(0.5, 0.5, -1.0)
    assert found["circularity"].low == found["circularity"].high == pytest.approx(-0.6)
    assert found["axial_ratio_db"].low == pytest.approx(1.0 / 3.0)
    found = _of_ellipse(0.5, 1.0, 1.0)
    assert (found["circularity"].low, found["circularity"].high) == (pytest.approx(0.0), pytest.approx(0.6))
    assert (found["axial_ratio_db"].low, found["axial_ratio_db"].high) == (pytest.approx(0.0), pytest.approx(1.0 / 3.0))


def test_uncertainty_of_a_cut_grows_with_its_causes():
    """Root sum of squares: k = 2 times the spread of one cause, sqrt(2) times as much for two alike (JCGM 100:2008, 5.1.2)."""
    waves = dipole(np.array([50.0]))
    seed = np.random.default_rng(4)
    draws = 1e-4 * seed.standard_normal((1, 400, 1, 1)) * waves.coefficients[0]
    one = FieldCause("level", draws, "declared")

    def expanded(*causes):
        cut = cuts_of_field(waves, np.array([2.4e9]), causes, (0.0,), slant=0.0, region=np.pi)[2.4e9][0]
        return cut, cut.expanded["co"][cut.angle_deg == 0.0][0]

    cut, single = expanded(one)
    assert np.diff(cut.angle_deg) == pytest.approx(1.0) and cut.angle_deg[[0, -1]].tolist() == [-180.0, 180.0]
    peak = cut.amplitude["co"][cut.angle_deg == 0.0][0]
    assert single == pytest.approx(2.0 * 1e-4 * peak, rel=0.12)
    twice = FieldCause("more", 2.0 * draws, "declared")
    assert expanded(twice)[1] == pytest.approx(2.0 * single, rel=0.01)
    assert expanded(one, FieldCause("other", draws, "declared"))[1] == pytest.approx(np.sqrt(2.0) * single, rel=0.02)


def test_the_bend_of_a_dipole_as_a_probe_is_a_quarter():
    """Amplitude cos a in the E plane and 1 in the H plane: exp(-c a^2) with c = 1/4 on average, 0.2503 from 10 deg (worked out by hand)."""
    assert beam_of(dipole(np.array([500.0])), gain_dbi=0.0) == pytest.approx(0.2503, abs=1e-4)
