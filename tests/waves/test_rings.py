"""Least squares on rings over part of the sphere: exact on the whole, honest on a part."""

import numpy as np
import pytest

from colure.geometry.conventions import mode_count
from colure.waves.rings import RingFit
from colure.waves.transform import analysis, synthesis


def coefficients(order: int, seed: int = 0) -> np.ndarray:
    rng = np.random.default_rng(seed)
    return rng.normal(size=(2, mode_count(order))) + 1j * rng.normal(size=(2, mode_count(order)))


def relative_db(error: np.ndarray, field: np.ndarray) -> float:
    return float(20 * np.log10(np.sqrt(np.mean(np.abs(error) ** 2) / np.mean(np.abs(field) ** 2))))


def test_the_whole_sphere_gives_what_the_transform_gives():
    order = 12
    a = coefficients(order)
    theta = np.linspace(0.0, np.pi, order + 3)
    field = synthesis(a, theta, 2 * order + 2, phi_start=0.3)
    fit = RingFit(theta, order)
    assert fit.solid_angle.sum() == pytest.approx(4 * np.pi)
    assert fit.analysis(field, phi_start=0.3) == pytest.approx(a, abs=1e-11)
    assert fit.analysis(field, phi_start=0.3) == pytest.approx(analysis(field, order, phi_start=0.3), abs=1e-11)


@pytest.mark.parametrize(("low", "high"), [(0.0, 70.0), (40.0, 140.0)])
def test_a_cap_or_belt_gives_the_field_inside_it(low, high):
    """Waves of order 20 within the measured rings to -100 dB, without any noise."""
    order, a = 20, coefficients(20)
    theta = np.deg2rad(np.arange(low, high + 0.1, 2.0))
    fit = RingFit(theta, order, damping=1e-5)
    got = fit.analysis(synthesis(a, theta, 2 * order + 2))
    inner = np.deg2rad(np.arange(low + (3 if low else 0), high - 3, 0.7))
    true = synthesis(a, inner, 90)
    assert relative_db(synthesis(got, inner, 90) - true, true) < -100.0


def test_noise_inside_a_cap_is_averaged_not_amplified():
    order, a = 14, coefficients(14)
    theta = np.deg2rad(np.arange(0.0, 80.1, 1.0))
    field = synthesis(a, theta, 2 * order + 2)
    rng = np.random.default_rng(1)
    sigma = 1e-3 * np.sqrt(np.mean(np.abs(field) ** 2))
    noise = sigma * (rng.normal(size=field.shape) + 1j * rng.normal(size=field.shape)) / np.sqrt(2)
    inner = np.deg2rad(np.arange(0.0, 75.1, 0.7))
    true = synthesis(a, inner, 90)
    got = synthesis(RingFit(theta, order, damping=3e-4).analysis(field + noise), inner, 90)
    assert relative_db(got - true, true) < -60.0 - 6.0  # a dozen rings to every wave along theta


def test_too_few_columns_or_rings_are_refused_by_name():
    theta = np.deg2rad(np.arange(0.0, 60.1, 5.0))
    with pytest.raises(ValueError, match="at least 17 for order 8"):
        RingFit(theta, 8).analysis(np.zeros((2, theta.size, 16), complex))
    with pytest.raises(ValueError, match="at least 3 and rising"):
        RingFit(theta[:2], 8)
