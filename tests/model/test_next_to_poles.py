"""A field that is not read at the poles still shows next to them whether its components are what their names say."""

from __future__ import annotations

import numpy as np
import pytest

from colure.model.fields import FieldSamples
from colure.model.plausible import pole_fault

STEP_DEG, K = 6.0, 60.0


def samples(field_of, *, first_deg=3.0):
    """Return samples of a pattern (theta, phi) -> (e_theta, e_phi) on rings without poles."""
    theta = np.deg2rad(np.arange(first_deg, 180.0, STEP_DEG))
    t, p = (x.ravel() for x in np.meshgrid(theta, np.deg2rad(np.arange(0.0, 360.0, STEP_DEG)), indexing="ij"))
    return FieldSamples(1e10, t, p, np.stack(field_of(t, p)).astype(complex), None, np.ones(t.size))


def huygens(t, p):
    """A Huygens source along x, 80 mm beside the axis."""
    level = (1.0 + np.cos(t)) * np.exp(1j * K * 0.08 * np.sin(t) * np.cos(p))
    return level * np.cos(p), -level * np.sin(p)


def backwards(t, p):
    """The same turned by half a turn about x: both unit vectors change their sign."""
    a, b = huygens(np.pi - t, -p)
    return -a, -b


def right_handed(t, p):
    level = (1.0 + np.cos(t)) * np.exp(-1j * p)  # x - jy
    return level, -1j * level


def dipole_along_z(t, p):
    return np.sin(t) + 0.0 * p, 0.0 * t


MISTAKES = {
    "exchanged": lambda t, p, e: (e[1], e[0]),
    "sign": lambda t, p, e: (e[0], -e[1]),
}
RIGHT = [huygens, backwards, right_handed, dipole_along_z]


@pytest.mark.parametrize("first_deg", [3.0, 6.0])
@pytest.mark.parametrize("right", RIGHT)
def test_right_fields_without_poles_are_let_pass(right, first_deg):
    assert pole_fault([samples(right, first_deg=first_deg)]) == ""


@pytest.mark.parametrize("first_deg", [3.0, 6.0])
@pytest.mark.parametrize("mistake", MISTAKES)
@pytest.mark.parametrize("right", RIGHT[:3])
def test_components_that_are_not_what_they_are_called_are_refused(right, mistake, first_deg):
    wrong = samples(lambda t, p: MISTAKES[mistake](t, p, right(t, p)), first_deg=first_deg)
    assert "they agree if e_theta and e_phi are exchanged" in pole_fault([wrong])


def test_phi_that_turns_the_other_way_and_theta_from_the_other_end_are_refused():
    for turned in (lambda t, p: huygens(t, -p), lambda t, p: huygens(np.pi - t, p)):
        assert "turns over a turn of phi_deg" in pole_fault([samples(turned)])


def test_a_null_at_the_pole_tells_nothing():
    """A dipole along z becomes a small loop: both exist."""
    assert pole_fault([samples(lambda t, p: dipole_along_z(t, p)[::-1])]) == ""
