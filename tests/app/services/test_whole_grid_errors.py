"""What a transformed whole sphere says of its own errors: symmetric antennas and grids that just hold the device's waves."""

from __future__ import annotations

import numpy as np
import pytest

from colure.analysis.fields.errors import COVERAGE_FACTOR, spread_of
from colure.analysis.fields.expand import expand, floor_noise
from colure.geometry.conventions import SPEED_OF_LIGHT
from colure.model.fields import FieldSamples
from colure.waves.expansion import Expansion
from tests.app.services.test_field_probe import K, far

#: Two dipoles along y in a line along z: symmetric about two planes, so that most waves are empty.
LINE = np.array([[0.0, 0.0, 0.5], [0.0, 0.0, -0.3]]), np.array([[0.0, 1.0, 0.0], [0.0, 0.6j, 0.0]])


def sampled(step_deg, digits):
    """The far field in closed form as a table with so many decimals of its peak holds it."""
    theta, phi = np.arange(0.0, 180.1, step_deg), np.arange(0.0, 360.0, step_deg)
    t, p = (a.ravel() for a in np.meshgrid(np.deg2rad(theta), np.deg2rad(phi), indexing="ij"))
    field = far(LINE, t, p)
    unit = np.abs(field).max() * 10.0**-digits
    written = unit * (np.round(field.real / unit) + 1j * np.round(field.imag / unit))
    return FieldSamples(SPEED_OF_LIGHT, t, p, written, None, np.ones(t.size))


@pytest.mark.parametrize("step_deg", [6.0, 10.0, 15.0])
@pytest.mark.parametrize("digits", [3, 5])
def test_the_stated_error_holds_what_rounding_did(step_deg, digits):
    """Rounding of a symmetric antenna is symmetric too; at 15 deg hardly a degree is left above its waves to tell the noise."""
    found = expand(sampled(step_deg, digits))
    theta = np.deg2rad(np.arange(1.0, 180.0, 4.0))
    ours = Expansion(found.coefficients, np.array(K)).far_field(theta, 36)
    t, p = np.meshgrid(theta, np.arange(36) * 2 * np.pi / 36, indexing="ij")
    error = np.sqrt(np.sum(np.abs(ours - far(LINE, t, p)) ** 2, axis=0))
    draws = Expansion(found.errors.noise, np.full(len(found.errors.noise), K)).far_field(theta, 36)
    bound = COVERAGE_FACTOR * np.hypot(spread_of(draws), found.errors.truncation)
    print(
        f"{step_deg:g} deg, {digits} digits: order {found.order}, noise {found.noise:.1e}, inside {np.mean(error <= bound):.3f}"
    )
    assert np.mean(error <= bound) >= 0.95
    # Of the size of the rounding: uniform steps of 10^-digits, real and imaginary part (JCGM 100:2008, 4.3.7).
    assert found.noise == pytest.approx(10.0**-digits * np.sqrt(2.0 / 12.0), rel=0.2) or step_deg == 15.0


def test_noise_is_known_where_no_degree_lies_above_the_order():
    """Of white noise alone the last three degrees tell its size, whatever order was asked for."""
    random = np.random.default_rng(2)
    top, samples = 20, 1000
    waves = random.normal(size=(2, 2, top * (top + 2))) * np.sqrt(0.5 * 4.0 * np.pi / samples)
    for order in (5, 18, 20):
        assert floor_noise(waves[0] + 1j * waves[1], order, samples) == pytest.approx(1.0, rel=0.15)
