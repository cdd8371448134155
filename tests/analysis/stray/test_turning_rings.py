"""Stray fields ring by ring against the same fields asked for at every direction, and rooms in blocks against one by one."""

from __future__ import annotations

import numpy as np
import pytest

from colure.analysis.steps.assemble import MeasuredSphere, polar_frame
from colure.analysis.steps.far_field import far_field_step
from colure.analysis.stray import mirrors as mirrors_of_the_room
from colure.analysis.stray.mirrors import Wall
from colure.geometry.conventions import mode_count, wavenumber
from colure.geometry.kinematics import Geometry
from colure.waves.expansion import Expansion

FREQUENCY_HZ = np.array([9.9e9, 10.0e9, 10.1e9])


def _sphere(slices: int, columns: int, geometry: Geometry) -> MeasuredSphere:
    rings = 21
    theta = np.linspace(0.0, np.pi, rings)
    phi = np.arange(columns) * 2.0 * np.pi / columns
    return MeasuredSphere(
        frequency_hz=FREQUENCY_HZ,
        theta=theta,
        phi=phi,
        field=np.ones((3, 2, rings, columns), complex),
        polar_to_device=polar_frame(geometry),
        readout_sign=np.ones(columns),
        slices_used=slices,
    )


@pytest.mark.parametrize(
    ("slices", "columns", "geometry"),
    [
        (20, 40, Geometry.ROLL_OVER_AZIMUTH),
        (16, 44, Geometry.ROLL_OVER_AZIMUTH),
        (20, 40, Geometry.AZIMUTH_OVER_ELEVATION),
        (20, 40, Geometry.ELEVATION_OVER_AZIMUTH),
    ],
)
def test_ring_by_ring_is_direction_by_direction(
    slices: int, columns: int, geometry: Geometry, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The general transform at every direction is the independent way (derivable: the same sum of harmonics)."""
    monkeypatch.setattr(mirrors_of_the_room, "ACCURACY", 1e-11)
    random = np.random.default_rng(3)
    sphere = _sphere(slices, columns, geometry)
    step = far_field_step(sphere, distance_m=1.0, keep_order=12)
    raw = random.normal(size=(2, 3, 2, mode_count(12)))
    device = Expansion(raw[0] + 1j * raw[1], wavenumber(FREQUENCY_HZ))
    directions = random.normal(size=(4, 3))
    directions[0] = [0.0, 0.0, -1.0]  # along the axis itself
    directions /= np.linalg.norm(directions, axis=1, keepdims=True)
    mirrors = random.normal(size=(2, 3, 4, 2, 2)) + 1j * random.normal(size=(2, 3, 4, 2, 2))
    wall = Wall(sphere, step, device, geometry)
    assert wall.rings is not None
    found = wall.through_mirrors(directions, mirrors)
    monkeypatch.setattr(wall, "rings", None)
    wanted = wall.through_mirrors(directions, mirrors)
    assert np.abs(found - wanted).max() < 1e-6 * np.abs(wanted).max()
