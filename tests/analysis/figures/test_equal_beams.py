"""Patterns whose strongest direction is one of several: no figure depends on which of them the search returns.

Half-power widths of an elementary dipole: 90 deg in planes through its axis, none around it (derivable, sin(theta)).
"""

from __future__ import annotations

import numpy as np
import pytest

from colure.analysis.figures.evaluate import FigureSet
from colure.geometry.directions import phi_hat, theta_hat, unit_vector
from colure.model.evaluation import Evaluation
from colure.waves.expansion import Expansion
from colure.waves.transform import analysis

ORDER, K = 16, np.array([100.0])
THETA, COLUMNS = np.linspace(0.0, np.pi, 2 * ORDER + 5), 4 * ORDER + 8
T, P = np.meshgrid(THETA, np.arange(COLUMNS) * 2.0 * np.pi / COLUMNS, indexing="ij")
D, E, F = unit_vector(theta=T, phi=P), theta_hat(theta=T, phi=P), phi_hat(theta=T, phi=P)


def waves(vector: np.ndarray) -> Expansion:
    """Return the waves of a field along vectors (theta, phi, 3), made transverse."""
    field = np.stack([np.sum(vector * E, axis=-1), np.sum(vector * F, axis=-1)])
    return Expansion(analysis(field[None].astype(complex), ORDER), K)


def two_beams(raised: float, other: tuple[float, float], slant_deg: float = 0.0) -> Expansion:
    """Return beams at azimuth 35 and -35 deg, the second stronger by `raised`; how sharp each is along x and y."""
    total = np.zeros(T.shape)
    for sign, size, sharp in ((1.0, 1.0, (4.0, 4.0)), (-1.0, 1.0 + raised, other)):
        u = D[..., 0] * np.cos(np.deg2rad(35.0)) - sign * D[..., 2] * np.sin(np.deg2rad(35.0))
        front = D[..., 2] * np.cos(np.deg2rad(35.0)) + sign * D[..., 0] * np.sin(np.deg2rad(35.0))
        total += size * np.exp(-sharp[0] * u**2 - sharp[1] * D[..., 1] ** 2 + 2.0 * (front - 1.0))
    slant = np.deg2rad(slant_deg)
    return waves(total[..., None] * np.array([-np.sin(slant), np.cos(slant), 0.0]))


def read(device: Expansion, planes: str, slant_deg: float = 0.0) -> tuple[dict[str, float], dict[str, str]]:
    figures = FigureSet(settings=Evaluation(principal_planes=planes), slant=np.deg2rad(slant_deg))
    values, (near,) = figures.read(device)
    return dict(zip(figures.names, values[0], strict=True)), near.reasons


@pytest.mark.parametrize("planes", ["auto", "declared"])
def test_two_equal_beams_of_unlike_widths_have_no_width(planes):
    """Whichever was picked, a width was read that is not the other's (29.0 deg before)."""
    for raised in (1e-6, -1e-6):
        values, reasons = read(two_beams(raised, (4.0, 10.0)), planes, 90.0)
        assert "as strong as the peak" in reasons["beamwidth_e_deg"]
        assert np.isnan(values["beamwidth_e_deg"])
        assert np.isnan(values["null_e_db"])


@pytest.mark.parametrize("planes", ["auto", "declared"])
def test_two_equal_beams_that_mirror_each_other_keep_their_width(planes):
    widths = []
    for raised in (1e-6, -1e-6):
        values, reasons = read(two_beams(raised, (4.0, 4.0)), planes, 90.0)
        assert reasons["beam_azimuth_deg"].startswith("undefined: no single beam (two lobes")
        assert "beamwidth_e_deg" not in reasons
        widths.append([values["beamwidth_e_deg"], values["beamwidth_h_deg"]])
    assert widths[0] == pytest.approx(widths[1], rel=1e-3)


@pytest.mark.parametrize("turn_deg", [0.0, 50.0, 140.0])
def test_the_declared_plane_of_a_ring_of_maxima_is_another_at_each_of_them(turn_deg):
    """A dipole along z, its ring raised by a hair towards some azimuth: the ellipse's plane holds the axis, the declared one only
    there by chance (90.0 deg, none, 133.6 deg before)."""
    along_z = (
        np.broadcast_to([0.0, 0.0, 1.0], D.shape)
        * (1.0 + 1e-5 * np.cos(P - np.deg2rad(turn_deg)) * np.sin(T))[..., None]
    )
    values, _ = read(waves(along_z), "auto")
    assert values["beamwidth_e_deg"] == pytest.approx(90.0, abs=0.05)
    values, reasons = read(waves(along_z), "declared")
    assert "as strong as the peak" in reasons["beamwidth_e_deg"]
    assert np.isnan(values["beamwidth_e_deg"])


def test_a_declared_vector_that_names_one_plane_on_the_whole_ring_is_kept():
    values, reasons = read(waves(np.broadcast_to([1.0, 0.0, 0.0], D.shape)), "declared")
    assert "beamwidth_e_deg" not in reasons
    assert values["beamwidth_e_deg"] == pytest.approx(90.0, abs=0.05)
