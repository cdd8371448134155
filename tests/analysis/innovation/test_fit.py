"""The fit of few deviations: its evidence against the density of a normal vector, faults found, noise and elements told apart."""

from __future__ import annotations

import numpy as np
import pytest
from scipy.stats import multivariate_normal

from colure.analysis.innovation.estimate import wider
from colure.analysis.innovation.fit import (
    FAULTY,
    FREE,
    Covariance,
    faulty_elements,
    normal_of,
    product,
    stacked,
)
from colure.analysis.innovation.held_out import averaged, missed, rows_of_slices
from colure.analysis.innovation.readings import noise_over_band
from colure.geometry.conventions import wavenumber
from colure.waves.elements import element_excitations, element_waves
from colure.waves.expansion import Expansion

ELEMENTS, ROWS = 8, 40


@pytest.fixture(scope="module")
def problem():
    random = np.random.default_rng(3)
    columns = random.normal(size=(2, ELEMENTS + 1, ROWS)) @ np.eye(ROWS)
    columns = columns[0] + 1j * columns[1]
    sigma = random.uniform(0.02, 0.05, 2 * ROWS)
    causes = 0.1 * random.normal(size=(5, 2 * ROWS))
    covariance = Covariance(sigma, causes)
    normal = normal_of(covariance, columns[:1], columns[1:], ELEMENTS, np.full(ELEMENTS, 0.02), np.zeros(0))
    return covariance, columns, normal


def density(covariance, columns, faults, value):
    """The log density of the readings (scipy), with every unknown integrated over its prior."""
    variance = np.full(ELEMENTS + 1, 0.5 * 0.02**2)
    variance[0] = FREE**2
    variance[[1 + i for i in faults]] = FAULTY**2
    rows = np.concatenate([stacked(columns), stacked(1j * columns)])
    every = np.diag(covariance.sigma**2) + covariance.causes.T @ covariance.causes
    every = every + rows.T @ (np.tile(variance, 2)[:, None] * rows)
    return multivariate_normal.logpdf(stacked(value), cov=every)


def right_side(covariance, normal, value):
    return product(normal.columns, covariance.whiten(stacked(value)[None]))[:, 0]


def test_evidence_is_the_density_of_a_normal_vector(problem):
    covariance, columns, normal = problem
    value = columns[3] * (-0.8 + 0.3j) + 0.05 * columns[1]
    right = right_side(covariance, normal, value)
    sets = [(2,), (), (2, 5), (1,), (7,), (0, 2, 6)]
    known = np.array([density(covariance, columns, one, value) for one in sets])
    np.testing.assert_allclose(normal.evidence(right, sets), known - known[1], rtol=1e-6)


def test_a_fault_may_change_over_the_band_by_the_error_of_its_share(problem):
    """Evidence by the density of a normal vector (scipy): the last unknowns belong to the faults, each by its own share."""
    covariance, columns, _ = problem
    share, x = np.linspace(0.05, 0.3, ELEMENTS), np.linspace(-1.0, 1.0, ROWS)
    new = np.concatenate([columns[1:], x * columns[1:]])
    usual = 0.02 * np.concatenate([np.ones(ELEMENTS), share])
    normal = normal_of(covariance, columns[:1], new, ELEMENTS, usual, share)
    value = columns[3] * (-0.8 + 0.3j) * (1.0 + 0.2 * x)
    sets, known = [(), (2,), (2, 5)], []
    for one in sets:
        variance = np.concatenate([[FREE**2], 0.5 * usual**2])
        for i in one:
            variance[[1 + i, 1 + ELEMENTS + i]] = FAULTY**2, (FAULTY * share[i]) ** 2
        both = np.concatenate([columns[:1], new])
        rows = np.concatenate([stacked(both), stacked(1j * both)])
        every = np.diag(covariance.sigma**2) + covariance.causes.T @ covariance.causes
        every = every + rows.T @ (np.tile(variance, 2)[:, None] * rows)
        known.append(multivariate_normal.logpdf(stacked(value), cov=every))
    right = right_side(covariance, normal, value)
    np.testing.assert_allclose(normal.evidence(right, sets), np.array(known) - known[0], rtol=1e-6)
    estimate = (normal.solver((2,)) @ right).reshape(-1, 2) @ np.array([1.0, 1j])
    assert estimate[[3, 11]] == pytest.approx(np.array([1.0, 0.2]) * (-0.8 + 0.3j), abs=0.05)


def test_solutions_are_those_of_the_whole_covariance(problem):
    covariance, columns, normal = problem
    value = columns[3] * (-0.8 + 0.3j)
    rows = np.stack([stacked(columns), stacked(1j * columns)], axis=1).reshape(-1, 2 * ROWS)
    inverse = np.linalg.inv(np.diag(covariance.sigma**2) + covariance.causes.T @ covariance.causes)
    prior = np.diag(1.0 / normal.prior((2,)))
    known = np.linalg.solve(rows @ inverse @ rows.T + prior, rows @ inverse @ stacked(value))
    found = normal.solver((2,)) @ right_side(covariance, normal, value)
    np.testing.assert_allclose(found, known, atol=1e-8)
    np.testing.assert_allclose(covariance.solve(rows), rows @ inverse, rtol=1e-6, atol=1e-6)


def test_a_slice_is_predicted_by_the_others_as_by_a_fit_without_it(problem):
    """The error of a prediction and its covariance, by a fit of the other rows (normal vector, conditional mean)."""
    covariance, columns, normal = problem
    value = stacked(np.stack([columns[3] * (-0.8 + 0.3j), columns[1] * 0.3j + columns[5]]))
    slices = np.repeat([4, 0, 9], [3, 4, 3])  # of 4 frequencies
    solver, rows = normal.solver((2,)), rows_of_slices(slices, 4)
    design = np.stack([stacked(columns), stacked(1j * columns)], axis=1).reshape(-1, 2 * ROWS)
    told_columns = covariance.solve(design)
    right = product(normal.columns, covariance.whiten(value))
    told = covariance.solve(value) - (solver @ right).T @ told_columns
    every = np.diag(covariance.sigma**2) + covariance.causes.T @ covariance.causes
    every = every + design.T @ (normal.prior((2,))[:, None] * design)
    assert sorted(np.concatenate(rows)) == list(range(2 * ROWS))
    for group, (error, size) in zip(rows, missed(told, told_columns, solver, covariance, rows), strict=True):
        others = np.setdiff1d(np.arange(2 * ROWS), group)
        gain = np.linalg.solve(every[np.ix_(others, others)], every[np.ix_(others, group)])
        known = value[:, group] - value[:, others] @ gain
        left = every[np.ix_(group, group)] - every[np.ix_(group, others)] @ gain
        np.testing.assert_allclose(error, known, rtol=1e-5, atol=1e-6)
        np.testing.assert_allclose(size, np.sum(known * np.linalg.solve(left, known.T).T, axis=1), rtol=1e-5)
        parts = group[: group.size // 2].reshape(4, -1)
        mean = known[:, : group.size // 2].reshape(2, 4, -1).mean(axis=1)
        np.testing.assert_allclose(averaged(error, 4).real, mean, rtol=1e-5, atol=1e-6)
        assert np.unique(slices[parts % slices.size]).size == 1


@pytest.mark.parametrize("planted", [(), (4,), (0, 6), (1, 2, 5)])
def test_faults_are_found_and_no_others(problem, planted):
    covariance, columns, normal = problem
    random = np.random.default_rng(7)
    deviation = 0.02 * (random.normal(size=ELEMENTS) + 1j * random.normal(size=ELEMENTS)) / np.sqrt(2.0)
    deviation[list(planted)] = [(-1.0, 0.5j, -0.6 + 0.4j)[n] for n in range(len(planted))]
    real, imaginary = np.split(
        random.normal(size=5) @ covariance.causes + random.normal(size=2 * ROWS) * covariance.sigma, 2
    )
    value = deviation @ columns[1:] + real + 1j * imaginary
    found = faulty_elements(normal, right_side(covariance, normal, value), 0.02)
    assert found.elements == planted
    assert all(sure > 0.95 for sure in found.sure)


def test_noise_is_told_from_what_changes_slowly_over_the_band():
    random = np.random.default_rng(1)
    frequency, places = np.linspace(-1.0, 1.0, 21)[:, None], np.linspace(0.0, 3.0, 400)[None]
    signal = np.exp(1j * places**2) * np.exp(0.7j * frequency * (1 + 0.1 * places))
    noise = 1e-3 * (random.normal(size=(21, 400)) + 1j * random.normal(size=(21, 400))) / np.sqrt(2.0)
    found = noise_over_band(signal + noise)
    assert found is not None
    assert found.mean() == pytest.approx(1e-3, rel=0.05)
    assert noise_over_band((signal + noise)[:5]) is None


def test_waves_of_elements_add_up_to_the_pattern():
    # Short dipoles along x: e(d) = x - (x.d) d, closed form; their waves are of degree one.
    k, pitch = wavenumber(np.array([5.8e9])), 0.026
    x, y = (g.ravel() for g in np.meshgrid((np.arange(4) - 1.5) * pitch, (np.arange(4) - 1.5) * pitch))
    places = np.stack([x, y, np.zeros(16)], axis=-1)
    weight = 1.0 + 0.2j * np.arange(16) / 16.0
    one = np.zeros((1, 2, 3), complex)
    one[0, 0] = [1.0, 0.0, -1.0]  # of grad type, m = -1 and +1: along x
    parts = [Expansion(one * w, k).translated(p, order=14).coefficients for w, p in zip(weight, places, strict=True)]
    pattern = Expansion(np.sum(parts, axis=0), k)
    found = element_excitations(pattern, places)
    own = Expansion(element_waves(pattern, places, found.weight), k)
    again = [own.translated(p, order=14).coefficients * found.weight[0, i] for i, p in enumerate(places)]
    left = np.linalg.norm(np.sum(again, axis=0) - pattern.coefficients) / np.linalg.norm(pattern.coefficients)
    assert left < 1e-3


def test_errors_count_more_where_readings_differ_more_than_usual_and_never_less():
    usual = np.array([[1.0, 4.0], [2.0, 5.0], [3.0, 6.0]])  # medians 2 and 5
    assert wider(np.array([4.0, 5.0]), usual) == pytest.approx(np.sqrt(2.0))
    assert wider(np.array([1.0, 20.0]), usual) == pytest.approx(2.0)
    assert wider(np.array([0.5, 0.5]), usual) == 1.0
