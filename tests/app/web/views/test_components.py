"""Components on a cut beside the directions where their unit vectors are undefined; truth is a closed-form dipole along x."""

from __future__ import annotations

import numpy as np
import pytest

from colure.app.web.views import components
from colure.geometry.directions import theta_phi
from colure.geometry.polarization import Basis, from_cartesian, to_basis

ANGLE = np.arange(-180.0, 180.01, 0.5)


def cut_beside(pole, apart_deg, plane_deg, kind):
    """Cut a short dipole's ring through a maximum so many degrees beside a pole: directions, linear components, drawn levels."""
    pole = np.asarray(pole, float)
    aside = np.array([0.0, 1.0, 0.0]) if pole[2] else np.array([0.0, 0.0, 1.0])
    peak = np.cos(np.deg2rad(apart_deg)) * pole + np.sin(np.deg2rad(apart_deg)) * aside
    along = np.cross(aside, pole)
    tangent = np.cos(np.deg2rad(plane_deg)) * along + np.sin(np.deg2rad(plane_deg)) * np.cross(peak, along)
    a = np.deg2rad(ANGLE)[:, None]
    d = np.cos(a) * peak + np.sin(a) * tangent
    # The field of a short dipole along x: the part of x that lies across the direction (from memory, any antenna text).
    field = np.array([1.0, 0.0, 0.0]) - d[:, :1] * d
    theta, phi = theta_phi(d)
    pair = to_basis(*from_cartesian(field, theta=theta, phi=phi), kind, theta=theta, phi=phi)
    clear = components.clear_along(kind, d)
    levels = components.drawn(pair, known=np.ones(len(d), bool), clear=clear)
    return d, levels, clear


def linear(level):
    return 10.0 ** (np.array([np.nan if v is None else v for v in level]) / 20.0)


@pytest.mark.parametrize("plane_deg", [0, 45, 90, 120])
@pytest.mark.parametrize("apart_deg", [0.0, 0.3, 1.0, 1.5, 3.0, 6.0])
def test_no_spikes_beside_minus_z(apart_deg, plane_deg):
    d, levels, clear = cut_beside((0, 0, -1), apart_deg, plane_deg, Basis.LUDWIG_3)
    first, second, total = (linear(one) for one in levels)
    # Two neighbours differ by what a turn of 10 deg makes, and by what a short dipole falls within half a degree.
    most = np.sin(np.deg2rad(components.MOST_TURN_DEG)) + np.sin(np.deg2rad(0.5))
    assert np.nanmax(np.abs(np.diff(first))) <= most and np.nanmax(np.abs(np.diff(second))) <= most
    # The gap is narrow, and the total has none.
    assert 0.5 * np.count_nonzero(~clear) <= 14.0 and np.isfinite(total).all()
    both = np.hypot(first, second)
    assert np.allclose(both[clear], total[clear], rtol=0, atol=2e-4)
    said = components.said_of(Basis.LUDWIG_3, ANGLE, d, total_db=levels[2], clear=clear)
    assert " at -z (" in said and ("not drawn" in said) == bool(np.any(~clear))


@pytest.mark.parametrize(
    ("kind", "pole"),
    [
        (Basis.THETA_PHI, (0, 0, 1)),
        (Basis.LUDWIG_2_AZIMUTH_OVER_ELEVATION, (0, -1, 0)),
    ],
)
def test_other_components_have_their_own_poles(kind, pole):
    d, levels, clear = cut_beside(pole, 1.0, 0, kind)
    most = np.sin(np.deg2rad(components.MOST_TURN_DEG)) + np.sin(np.deg2rad(0.5))
    assert np.nanmax(np.abs(np.diff(linear(levels[0])))) <= most and not clear.all()
    assert components.said_of(kind, ANGLE, d, total_db=levels[2], clear=clear)
    # The same cut in circular components has no such direction.
    assert components.clear_along(Basis.CIRCULAR, d).all()
    assert not components.said_of(Basis.CIRCULAR, ANGLE, d, total_db=levels[2], clear=np.ones(len(d), bool))


def test_a_beam_to_the_front_is_cut_whole():
    """A cut through +z has no gap in Ludwig 3; where the field behind is weak nothing is said of -z."""
    d, levels, clear = cut_beside((0, 0, 1), 0.4, 0, Basis.LUDWIG_3)
    assert clear[np.abs(ANGLE) < 170.0].all()
    front = [v if abs(a) < 90.0 else -60.0 for v, a in zip(levels[2], ANGLE, strict=True)]
    assert not components.said_of(Basis.LUDWIG_3, ANGLE, d, total_db=front, clear=clear)
    # A straight way through a pole turns nothing: only the pole itself is left out.
    _, _, through = cut_beside((0, 0, 1), 0.0, 0, Basis.THETA_PHI)
    assert np.abs(ANGLE[~through & (np.abs(ANGLE) < 90.0)]).max() <= 1.0
