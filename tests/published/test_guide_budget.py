"""The budget's own combination against the worked examples of the Guide (JCGM 100:2008, JCGM 101:2008) and by counting."""

from __future__ import annotations

import numpy as np
import pytest
from scipy.stats import ncx2

from colure.analysis.steps.repetition import students_factor
from colure.analysis.uncertainty.budget import corrected
from colure.analysis.uncertainty.combination import (
    Contribution,
    correlation,
    covariance,
    effective_dof,
    half_width,
    joint_draws,
    joint_half_width,
)
from colure.analysis.uncertainty.modulus import modulus_interval

#: JCGM 100:2008, table H.2: five simultaneous sets of voltage (V), current (A) and phase (rad).
VOLTAGE = np.array([5.007, 4.994, 5.005, 4.990, 4.999])
CURRENT = 1e-3 * np.array([19.663, 19.639, 19.640, 19.685, 19.678])
PHASE = np.array([1.0456, 1.0438, 1.0468, 1.0428, 1.0433])


def test_resistance_and_reactance_of_the_guides_example():
    """H.2: R 127.732(71), X 219.847(295), Z 254.260(236) ohm, r(R, X) = -0.588 (values from memory, tables H.3 and H.4)."""
    size = VOLTAGE / CURRENT
    sets = np.stack([size * np.cos(PHASE), size * np.sin(PHASE), size], axis=1)
    # The second approach of the example: the mean of five sets, whose scatter over sqrt 5 is its standard uncertainty.
    one = Contribution(sets / np.sqrt(5.0), "Monte Carlo")
    assert sets.mean(axis=0) == pytest.approx([127.732, 219.847, 254.260], abs=5e-4)
    assert np.round(one.standard, 3) == pytest.approx([0.071, 0.295, 0.236], abs=1e-9)
    assert correlation([one])[0, 1] == pytest.approx(-0.588, abs=5e-4)
    assert np.sqrt(np.diag(covariance([one]))) == pytest.approx(one.standard)
    assert one.degrees_of_freedom == 4


def test_comparison_loss_of_the_supplements_example():
    """JCGM 101:2008, 9.4: x1 = 0.010, u = 0.005 each: the mean of x1^2 + x2^2 is 150e-6, its standard uncertainty 112e-6 (from memory)."""
    inputs = [Contribution(np.array([[0.010, 0.0]]), "normal"), Contribution(np.array([[0.0, 0.010]]), "normal")]
    assert inputs[0].standard[0] == pytest.approx(0.005)  # expanded, k = 2
    drawn = joint_draws(inputs, draws=200_000)
    loss = (0.010 + drawn[:, 0]) ** 2 + drawn[:, 1] ** 2
    assert loss.mean() == pytest.approx(150e-6, abs=1e-6)
    assert loss.std() == pytest.approx(112e-6, abs=1e-6)


def test_effective_degrees_of_freedom_of_the_guides_example():
    """JCGM 100:2008, G.4.1 example: 0.25, 0.57, 0.82 % with 9, 4, 14 degrees of freedom make 19.0, and 2.09 the factor (from memory)."""
    dof = effective_dof(np.array([[0.25], [0.57], [0.82]]), np.array([9.0, 4.0, 14.0]))
    assert float(dof[0]) == pytest.approx(19.0, abs=0.05)
    assert students_factor(19.0) == pytest.approx(2.09, abs=0.005)


@pytest.mark.parametrize(
    ("distribution", "divisor", "factor"),
    [
        # Of an arcsine distribution 95 % lie within sin(0.475 pi) of its half width, of a rectangular one within 0.95 (derivable).
        ("U-shaped", np.sqrt(2.0), np.sin(0.475 * np.pi)),
        ("rectangular", np.sqrt(3.0), 0.95),
        ("triangular", np.sqrt(6.0), 1.0 - np.sqrt(0.05)),
        ("normal", 2.0, 0.98),
    ],
)
def test_ends_of_one_contribution_alone(distribution, divisor, factor):
    one = Contribution(np.array([[0.3]]), distribution)
    assert one.standard[0] == pytest.approx(0.3 / divisor)
    assert half_width(joint_draws([one], draws=40_000))[0] == pytest.approx(0.3 * factor, rel=0.02)


def test_a_bound_of_unknown_phase_counts_once_in_phase_and_in_quadrature():
    both = Contribution(np.array([[0.3, 0.0], [0.0, 0.3]]), "U-shaped")
    drawn = joint_draws([both], draws=4000)
    assert np.hypot(*drawn.T) == pytest.approx(np.full(4000, 0.3))


def test_known_bias_is_taken_off_and_a_bound_is_not():
    """What errors add on average is subtracted (JCGM 100:2008, 3.2.4); draws that stand for a bound lengthen the interval instead."""
    random = np.random.default_rng(1)
    draws = random.normal(0.3, 0.1, (400, 1))
    known, bound = Contribution(draws, "Monte Carlo", centred=True), Contribution(draws, "as drawn", centred=False)
    assert corrected(np.array([10.3]), [known])[0] == pytest.approx(10.0, abs=0.02)
    assert corrected(np.array([10.3]), [bound])[0] == 10.3
    assert half_width(joint_draws([known]))[0] == pytest.approx(0.196, abs=0.02)
    assert joint_half_width([known])[0] == pytest.approx(0.196, abs=0.02)
    assert bound.standard[0] == pytest.approx(float(np.sqrt(np.mean(draws**2))))


def test_a_bias_that_stays_in_the_value_lies_inside_the_interval():
    """F.2.4.5: the half width holds it, and the other contributions beside it."""
    bias = Contribution(np.array([[0.5]]), "bias")
    other = Contribution(np.array([[0.1]]), "normal")
    half = float(half_width(joint_draws([bias, other]))[0])
    # |bias| and 1.64 standard uncertainties of both: one end alone can be crossed.
    assert half == pytest.approx(0.5 + 1.645 * np.hypot(0.5 * 0.25, 0.05), rel=0.03)


@pytest.mark.parametrize("true", [0.0, 0.5, 1.5, 4.0])
def test_moduli_are_held_as_often_as_the_distribution_of_rice_says(true):
    """Counted over 400 measured moduli, errors of one standard deviation in each quadrature."""
    random = np.random.default_rng(5)

    def errors(count):
        return random.normal(size=(count, 1, 1)) + 1j * random.normal(size=(count, 1, 1))

    inside = []
    for measured in true + errors(400):
        low, high = modulus_interval(measured, errors(600))
        inside.append(low <= true <= high)
    assert 0.92 <= np.mean(inside) <= 1.0


def test_ends_of_a_modulus_are_those_of_the_noncentral_distribution():
    """Far from zero both ends are the 2.5 % points of a non-central chi-square with two degrees of freedom (Rice)."""
    random = np.random.default_rng(3)
    errors = random.normal(size=(20_000, 1, 1)) + 1j * random.normal(size=(20_000, 1, 1))
    low, high = modulus_interval(np.array([[5.0 + 0j]]), errors)
    assert ncx2.sf(25.0, 2, low**2) == pytest.approx(0.025, abs=0.005)
    assert ncx2.cdf(25.0, 2, high**2) == pytest.approx(0.025, abs=0.005)


def test_a_modulus_whose_two_components_are_not_equally_sure():
    """Counted: co is known four times worse than cross; the truth lies above the interval in at most about 2.5 % of all cases."""
    random = np.random.default_rng(21)
    sizes = np.array([5.5, 1.5])

    def errors(count):
        return sizes * (random.normal(size=(count, 1, 2)) + 1j * random.normal(size=(count, 1, 2)))

    true, above, inside = np.array([[10.0, 3.0j]]), [], []
    for measured in true + errors(300):
        low, high = modulus_interval(measured, errors(500))
        above.append(np.linalg.norm(true) > high)
        inside.append(low <= np.linalg.norm(true) <= high)
    assert np.mean(above) <= 0.035
    assert np.mean(inside) >= 0.93


def test_the_largest_of_many_equal_lobes_is_mostly_one_that_errors_raised():
    """Counted: the true largest of twelve lobes lies inside; perturbing the measured ones alone would hold it far less often."""
    random = np.random.default_rng(8)

    def errors(count):
        return random.normal(size=(count, 12, 1)) + 1j * random.normal(size=(count, 12, 1))

    true = 3.0 * np.exp(2j * np.pi * random.random((12, 1)))
    ends = [modulus_interval(true + e, errors(500)) for e in errors(150)]
    assert np.mean([low <= 3.0 <= high for low, high in ends]) >= 0.9
