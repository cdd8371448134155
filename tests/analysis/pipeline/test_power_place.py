"""Levels of a device beside the axes' intersection, against closed forms: 1/r^2 and the direction from the device (derivable)."""

from __future__ import annotations

import numpy as np
import pytest

from colure.analysis.pipeline.power_place import _heard, seen_from_the_centre
from colure.analysis.steps.distance import away
from colure.analysis.steps.horn_place import _response
from colure.geometry.conventions import power_db
from colure.geometry.directions import unit_vector
from colure.waves.probe_models import open_waveguide

RANGE_M = 0.8


def pattern(u):
    """Return a power that three axes tell apart, of second order."""
    return 1.0 + 0.6 * u[..., 2] + 0.3 * u[..., 0] + 0.2 * u[..., 0] * u[..., 1] + 0.1 * u[..., 1]


def grid(last_deg: float):
    theta = np.deg2rad(np.arange(0.0, last_deg + 0.1, 5.0))
    phi = np.arange(72) * np.pi / 36.0
    return theta, phi, unit_vector(theta=theta[:, None], phi=phi[None, :])


@pytest.mark.parametrize("offset_mm", [(0, 0, 150), (0, 0, -150), (150, 0, 0), (0, -150, 0), (80, -90, 70)])
@pytest.mark.parametrize("last_deg", [180.0, 90.0])
def test_levels_and_directions_from_the_centre(offset_mm, last_deg):
    theta, phi, d = grid(last_deg)
    offset = 1e-3 * np.array(offset_mm)
    way = RANGE_M * d - offset
    r = np.linalg.norm(way, axis=-1)
    # What the range reads, times (r/R)^2: a level of the direction that the centre sees the probe in.
    read = pattern(way / r[..., None])[None]
    kept, level = seen_from_the_centre(theta, phi, read, offset_m=offset, distance_m=RANGE_M)
    true = pattern(d[: kept.size])
    assert 60.0 <= np.rad2deg(kept[-1]) <= last_deg and (last_deg < 180.0 or kept.size == theta.size)
    np.testing.assert_allclose(power_db(level[0]), power_db(true), atol=0.01)


def test_the_probe_is_as_far_as_its_place_says():
    offset = np.array([0.08, -0.09, 0.07])
    u = unit_vector(theta=np.array([0.3, 1.2, 2.9]), phi=np.array([0.1, 2.0, 5.0]))
    r = RANGE_M * away(u, offset_m=offset, distance_m=RANGE_M)
    np.testing.assert_allclose(np.linalg.norm(offset + r[:, None] * u, axis=1), RANGE_M)


def test_the_probe_hears_a_device_beside_its_axis_as_it_hears_the_reference_there():
    """`horn_place` works the same response out one direction at a time; an open guide's planes differ by 0.4 dB here."""
    probe = open_waveguide(np.array([500.0, 520.0]), a=0.0107, b=0.0043)
    way = np.array([[0.15, 0.05, 0.7], [-0.1, 0.12, 0.9], [0.0, -0.15, 0.65], [0.0, 0.0, 0.8]])
    travel, chi = way / np.linalg.norm(way, axis=1)[:, None], np.array([0.0, 0.7, np.pi / 2, 2.0])
    heard = _heard(probe, 7.0, travel, chi)
    for row, one, turn in zip(heard, travel, chi, strict=True):
        response = _response(probe, 7.0, one, float(turn))
        np.testing.assert_allclose(row, np.sum(np.abs(response) ** 2, axis=-1), rtol=1e-9)
    across = _heard(probe, 7.0, travel, chi + np.pi / 2.0)
    assert np.max(np.abs(np.log(heard / across))) > 0.05


def test_a_probe_without_a_pattern_hears_as_a_beam_of_its_gain():
    """exp(-G a^2 / 4): half power 2 sqrt(ln 2 / G) off the axis, a Gaussian beam of gain G = 16 ln 2 / beamwidth^2 (derivable)."""
    gain = 10.0**0.7
    half = 2.0 * np.sqrt(np.log(2.0) / gain)
    travel = unit_vector(theta=np.array([half, 0.0]), phi=np.array([1.0, 0.0]))
    np.testing.assert_allclose(_heard(None, 7.0, travel, np.zeros(2))[:, 0], [0.5, 1.0], rtol=1e-9)
