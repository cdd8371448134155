"""Frames, coordinates and polarization bases of a pattern, against Ludwig's sources and closed form."""

from __future__ import annotations

import numpy as np
import pytest

from colure.analysis.figures.evaluate import evaluate
from colure.analysis.figures.frames import (
    Coordinates,
    boresight_of,
    direction_of,
    grid_of,
    rotation_to,
    turned_to,
    view,
)
from colure.errors import InputError
from colure.geometry.polarization import Basis
from colure.model.definitions import NAMES
from tests.conftest import cluster_of, expansion_of

X_DIPOLE = expansion_of(cluster_of(10e9, [[0, 0, 0]], [[1, 0, 0]]), 6)


@pytest.mark.parametrize(("theta", "level"), [(30, -22.878), (45, -15.311), (60, -9.542), (80, -3.047)])
def test_cross_polarization_of_a_dipole_in_the_third_definition(theta, level):
    # 20 log tan^2(theta/2) at phi = 45 deg (section 1 of the standards sheet; A. C. Ludwig, 1973).
    seen = view(X_DIPOLE, Coordinates.THETA_PHI, Basis.LUDWIG_3, step_deg=5.0, slant=0.0)
    here = np.flatnonzero((seen.first == theta) & (seen.second == 45))[0]
    co, cross = np.abs(seen.field[0, :, here])
    assert 20 * np.log10(cross / co) == pytest.approx(level, abs=5e-4)


def test_a_dipole_along_x_has_no_cross_polarization_about_the_x_pole():
    # Ludwig's second definition with pole x (section 1 of the standards sheet).
    seen = view(X_DIPOLE, Coordinates.ALPHA_EPSILON, Basis.LUDWIG_2_ELEVATION_OVER_AZIMUTH, step_deg=15.0, slant=0.0)
    away = np.abs(seen.first) < 89
    assert np.abs(seen.field[0, 1, away]).max() < 1e-9 * np.abs(seen.field).max()


@pytest.mark.parametrize("coordinates", list(Coordinates))
@pytest.mark.parametrize("basis", list(Basis))
def test_every_way_of_looking_shows_the_same_power(coordinates, basis):
    seen = view(X_DIPOLE, coordinates, basis, step_deg=20.0, slant=0.3)
    d = direction_of(coordinates, seen.first, seen.second)
    # A dipole along x: 1.5 sin^2 of the angle to x.
    assert np.sum(np.abs(seen.field[0]) ** 2, axis=0) == pytest.approx(1.5 * (1 - d[:, 0] ** 2), abs=1e-9)


def test_directions_of_the_published_table():
    # theta 60, phi 45: az 50.7685, el 37.7612; alpha 37.7612, epsilon 50.7685 (section 2 of the standards sheet).
    want = direction_of(Coordinates.THETA_PHI, np.array([60.0]), np.array([45.0]))
    for coordinates, pair in (
        (Coordinates.AZIMUTH_ELEVATION, (50.7685, 37.7612)),
        (Coordinates.ALPHA_EPSILON, (37.7612, 50.7685)),
        (Coordinates.U_V, (0.612372, 0.612372)),
    ):
        assert direction_of(coordinates, np.array([pair[0]]), np.array([pair[1]])) == pytest.approx(want, abs=2e-6)


@pytest.mark.parametrize("bearing", ["12,-7", "-40,30", "0,0"])
def test_a_turned_frame_looks_where_it_was_told(bearing):
    from colure.twin.antennas import panel

    device = panel(np.array([24e9]), centre_m=(0.0, 0.0, 0.0))
    expansion = expansion_of(device, 30)
    aim = boresight_of(bearing, expansion.coefficients[0], slant=0.0)
    assert rotation_to(aim) @ aim == pytest.approx([0, 0, 1], abs=1e-12)
    turned = turned_to(expansion, aim)
    back = turned_to(turned, rotation_to(aim) @ np.array([0.0, 0.0, 1.0]))
    peak = turned_to(expansion, boresight_of("peak", expansion.coefficients[0], slant=0.0))
    values = dict(zip(NAMES, evaluate(peak.coefficients[0], slant=0.0), strict=True))
    assert values["beam_azimuth_deg"] == pytest.approx(0.0, abs=1e-3)
    assert values["beam_elevation_deg"] == pytest.approx(0.0, abs=1e-3)
    # A turn there and back, and the gain unchanged by any.
    assert np.sum(np.abs(back.coefficients) ** 2) == pytest.approx(np.sum(np.abs(expansion.coefficients) ** 2))
    assert values["gain_dbi"] == pytest.approx(evaluate(expansion.coefficients[0], slant=0.0)[0], abs=1e-6)


def test_a_boresight_that_cannot_be_read_is_refused():
    with pytest.raises(InputError, match="boresight = 'left': must be device, peak, or AZ,EL"):
        boresight_of("left", X_DIPOLE.coefficients[0], slant=0.0)
    first, second = grid_of(Coordinates.U_V, 10.0)
    assert np.all(first**2 + second**2 <= 1.0)
