"""Finite range, frequency grid and load against printed values (sections 3 and 8 of the standards sheet)."""

from __future__ import annotations

from types import SimpleNamespace

import numpy as np
import pytest
from scipy.signal.windows import taylor

from colure.analysis.cuts.distance import distance_error
from colure.analysis.cuts.reader import CutReader
from colure.geometry.conventions import wavelength
from colure.planning.frequency_grid import frequency_grid, gate_verdict
from colure.planning.reach import (
    axial_loss_db,
    distance_for_edge_phase,
    distance_for_side_lobe,
    first_side_lobe_db,
    line_pattern,
    taylor_weights,
)

UNIFORM = np.ones(2001)


@pytest.mark.parametrize(
    ("ratio", "side_lobe", "null"),
    [(0.5, -12.04, -15.86), (1.0, -12.94, -21.96), (2.0, -13.18, -28.0), (4.0, -13.24, -34.0)],
)
def test_uniform_line_at_finite_range(ratio, side_lobe, null):
    """First side lobe, and the level to which the first null is filled, at ratio x 2 D^2/lambda (derived)."""
    assert first_side_lobe_db(UNIFORM, ratio) == pytest.approx(side_lobe, abs=0.006)
    filled = line_pattern(UNIFORM, np.array([0.0, 1.0]), ratio)
    assert 20 * np.log10(filled[1] / filled[0]) == pytest.approx(null, abs=0.03)


def test_far_away_the_uniform_line_has_its_classic_side_lobe():
    assert first_side_lobe_db(UNIFORM, np.inf) == pytest.approx(-13.261, abs=0.001)


def test_loss_on_axis_at_two_d_squared_over_lambda():
    assert axial_loss_db(1.0) == pytest.approx(0.0596, abs=5e-5)
    assert axial_loss_db(1.0, dimensions=2) == pytest.approx(0.119, abs=5e-4)
    # It falls with the square of the distance.
    assert axial_loss_db(4.0) / axial_loss_db(8.0) == pytest.approx(4.0, rel=0.01)


@pytest.mark.parametrize(("phase", "multiple"), [(22.5, 2.0), (45.0, 1.0), (11.25, 4.0)])
def test_edge_phase_and_distance(phase, multiple):
    """2 D^2/lambda <-> lambda/16 = 22.5 deg; D^2/lambda 45 deg; 4 D^2/lambda 11.25 deg (derived; Hansen 1984)."""
    lam = float(wavelength(24e9))
    found = distance_for_edge_phase(largest_m=0.2, frequency_hz=24e9, edge_phase_deg=phase)
    assert found == pytest.approx(multiple * 0.2**2 / lam, rel=2e-3)
    assert (np.hypot(found, 0.1) - found) / lam * 360.0 == pytest.approx(phase, rel=1e-9)


@pytest.mark.parametrize("level", [-20.0, -25.0, -30.0, -40.0])
def test_taylor_weights_agree_with_an_independent_library(level):
    """SciPy samples at the middle of 401 intervals, we at their ends: compared at the same places."""
    nbar = max(3, int(np.ceil(-level / 5.0)))
    other = taylor(401, nbar=nbar, sll=-level, norm=False)
    middle = (np.arange(401) - 200) / 401 * 2
    ours = np.interp(middle, np.linspace(-1, 1, 20001), taylor_weights(20001, level))
    np.testing.assert_allclose(ours, other / other.max(), atol=2e-7)
    assert first_side_lobe_db(taylor_weights(401, level), np.inf) == pytest.approx(level, abs=0.6)


def test_low_side_lobes_need_a_longer_range():
    """More than 2 D^2/lambda for -25 dB and about 6 D^2/lambda for 1 dB at -40 dB (Hansen 1984: from memory)."""
    lam = float(wavelength(24e9))
    multiples = [
        distance_for_side_lobe(largest_m=0.1, frequency_hz=24e9, side_lobe_db=level, error_db=1.0) / (0.1**2 / lam)
        for level in (-20.0, -30.0, -40.0)
    ]
    assert multiples[0] < multiples[1] < multiples[2] and multiples[2] == pytest.approx(6.0, rel=0.05)
    with pytest.raises(ValueError, match="must be from -60 to -13.3 dB"):
        distance_for_side_lobe(largest_m=0.1, frequency_hz=24e9, side_lobe_db=-10.0, error_db=1.0)


def test_two_gigahertz_in_25_points():
    """Df 83.333 MHz, 12.0 ns = 3.5975 m one way, 0.5 ns = 0.1499 m (section 8, derived)."""
    grid = frequency_grid(np.linspace(23e9, 25e9, 25))
    assert grid.step_hz == pytest.approx(83.333e6, rel=1e-5)
    assert grid.alias_free_s == pytest.approx(12.0e-9) and grid.alias_free_m == pytest.approx(3.5975, abs=5e-5)
    assert grid.resolution_s == pytest.approx(0.5e-9) and grid.resolution_m == pytest.approx(0.1499, abs=5e-5)


@pytest.mark.parametrize(("span", "metres"), [(0.5e9, 0.5996), (1e9, 0.2998), (5e9, 0.0600), (10e9, 0.0300)])
def test_resolution_of_a_span(span, metres):
    assert frequency_grid(np.linspace(20e9, 20e9 + span, 11)).resolution_m == pytest.approx(metres, abs=5e-5)


def test_a_gate_that_cannot_be_is_refused_with_numbers():
    assert gate_verdict(np.array([24e9]), (1.0,)) == "one frequency: no time gate is possible"
    assert frequency_grid(np.array([24e9])) is None
    narrow = gate_verdict(np.linspace(24e9, 24.25e9, 11), (0.6, 9.0))
    assert "needs 1.00 GHz of span, 0.25 GHz are planned" in narrow
    assert "needs steps of 16.7 MHz at most (17 points), 25.0 MHz are planned" in narrow
    assert gate_verdict(np.linspace(23e9, 25e9, 201), (0.6, 9.0)) == "gating possible"


def test_a_cut_that_nobody_transforms_holds_what_its_distance_costs():
    """At 2 D^2/lambda an evenly lit square reads 0.119 dB low (derived): the truth lies above the reading, inside the interval."""
    side, lam = 0.1, float(wavelength(24e9))
    known = distance_error(
        along_m=side, across_m=side, distance_m=2.0 * side**2 / lam, frequency_hz=24e9, levels_db=(3.0103,)
    )
    bare = SimpleNamespace(
        name=str,
        cut=SimpleNamespace(cut=SimpleNamespace(label="cut")),
        frequency=24e9,
        left_out=tuple,
    )
    figure = CutReader.figure(bare, "peak_dbi", "peak gain", "dBi", 20.0, {}, "", bias=known.peak_db)
    assert figure.lower <= 20.0 + 0.119 <= figure.upper
    one_sided = CutReader.figure(bare, "peak_dbi", "peak gain", "dBi", 20.0, {"noise": 0.01}, "", bias=(-0.119, 0.0))
    assert (one_sided.lower, one_sided.upper) == pytest.approx((19.99, 20.129))
