"""Figures against handbook values (standards sheet section 4; derived and recomputed there)."""

from __future__ import annotations

import numpy as np
import pytest

from colure.analysis.figures.cuts import GreatCircleCut
from colure.analysis.figures.evaluate import evaluate
from colure.analysis.figures.lobes import beamwidth_deg, first_side_lobe
from colure.geometry.conventions import SPEED_OF_LIGHT
from colure.geometry.sphere import equiangular
from colure.model.definitions import NAMES
from colure.waves.expansion import Expansion
from colure.waves.transform import analysis
from tests.conftest import cluster_of, expansion_of

F = 1e9
LAM = SPEED_OF_LIGHT / F


def figures(expansion: Expansion, slant: float = 0.0) -> dict[str, float]:
    return dict(zip(NAMES, evaluate(expansion.coefficients[0], slant=slant), strict=True))


def test_short_dipole():
    # D = 1.5 (1.7609 dBi), beamwidth 90 deg. Dipole along x: its peak ring holds +z.
    found = figures(expansion_of(cluster_of(F, [0, 0, 0], [1, 0, 0]), 6))
    assert found["directivity_dbi"] == pytest.approx(1.7609, abs=5e-5)
    cut = GreatCircleCut(
        np.arange(-900, 901) * 0.1, np.cos(np.deg2rad(np.arange(-900, 901) * 0.1)).astype(complex), np.zeros(1801)
    )
    assert beamwidth_deg(cut) == pytest.approx(90.0, abs=1e-4)


def test_half_wave_dipole():
    # D = 1.64092 (2.1509 dBi), HPBW 78.078 deg; along x, so that a peak lies on +z.
    x, w = np.polynomial.legendre.leggauss(60)
    current = w * np.cos(np.pi * x / 2)
    cluster = cluster_of(F, np.outer(x * LAM / 4, [1, 0, 0]), np.outer(current, [1, 0, 0]))
    expansion = expansion_of(cluster, 16)
    assert figures(expansion)["directivity_dbi"] == pytest.approx(2.1509, abs=5e-5)
    from colure.analysis.figures.cuts import Beam, cut

    beam = Beam(np.array([0.0, 0.0, 1.0]), np.array([1.0, 0.0, 0.0]), 1.64092)
    assert beamwidth_deg(cut(expansion.coefficients[0], beam, plane="E", slant=0.0, span_deg=89.0)) == pytest.approx(
        78.078, abs=5e-4
    )


def test_huygens_source():
    # D = 3 (4.7712 dBi), HPBW 131.06 deg, no cross-polarization, nothing backwards.
    found = figures(expansion_of(cluster_of(F, [0, 0, 0], [1, 0, 0], [0, 1, 0]), 6))
    assert found["directivity_dbi"] == pytest.approx(4.7712, abs=5e-5)
    for plane in "eh":
        assert found[f"beamwidth_{plane}_deg"] == pytest.approx(131.06, abs=6e-3)
    assert found["xpd_db"] < 1e-9 and found["axial_ratio_db"] < 1e-9 and found["front_to_back_db"] < 1e-9


def scalar_cut(pattern, span_deg: float = 90.0, step_deg: float = 0.01) -> GreatCircleCut:
    angle = np.arange(-round(span_deg / step_deg), round(span_deg / step_deg) + 1) * step_deg
    return GreatCircleCut(angle, pattern(np.deg2rad(angle)).astype(complex), np.zeros(angle.size))


@pytest.mark.parametrize(("count", "width", "lobe"), [(4, 26.32, -11.30), (8, 12.80, -12.80), (10, 10.21, -12.97)])
def test_row_of_isotropes_half_a_wavelength_apart(count, width, lobe):
    def factor(a):
        x = np.pi / 2 * np.sin(a)
        with np.errstate(invalid="ignore"):
            return np.where(np.abs(np.sin(x)) < 1e-12, 1.0, np.sin(count * x) / (count * np.sin(x)))

    one = scalar_cut(factor)
    assert beamwidth_deg(one) == pytest.approx(width, abs=5e-3)
    assert 20 * np.log10(first_side_lobe(one)) == pytest.approx(lobe, abs=5e-3)
    # Directivity of the row is exactly `count`; theta counts from the row's axis.
    grid = equiangular(theta_intervals=8 * count, phi_count=1)
    power = factor(np.pi / 2 - grid.theta) ** 2
    assert 4 * np.pi / grid.integrate(power[:, None]) == pytest.approx(count, rel=1e-10)


def _bessel_pattern(u, order_shape):
    from scipy.special import jv

    safe = np.where(np.abs(u) < 1e-9, 1e-9, u)
    if order_shape == "uniform":
        return 2 * jv(1, safe) / safe
    return 8 * jv(2, safe) / safe**2


# Large apertures: width in degrees times size in wavelengths, first side lobe in dB.
@pytest.mark.parametrize(
    ("name", "width", "lobe"),
    [
        ("line", 50.758, -13.261),
        ("cosine", 68.123, -22.999),
        ("circle", 58.957, -17.570),
        ("parabolic", 72.748, -24.639),
    ],
)
def test_large_apertures(name, width, lobe):
    size = 400.0

    def pattern(a):
        u = np.pi * size * np.sin(a)
        if name == "line":
            return np.sinc(u / np.pi)
        if name == "cosine":
            return np.cos(u) / (1 - (2 * u / np.pi) ** 2 + 1e-300)
        return _bessel_pattern(u, "uniform" if name == "circle" else "parabolic")

    one = scalar_cut(pattern, span_deg=1.2, step_deg=0.0005)
    assert beamwidth_deg(one) * size == pytest.approx(width, abs=1e-3)
    assert 20 * np.log10(first_side_lobe(one)) == pytest.approx(lobe, abs=5e-4)


def test_uniform_rectangle_radiates_four_pi_a_over_lambda_squared():
    # 4 pi A / lambda^2 for a large uniform aperture: a dense sheet of Huygens sources, 8 x 6 wavelengths.
    nx, ny, step = 32, 24, 0.25
    x, y = np.meshgrid((np.arange(nx) - (nx - 1) / 2) * step * LAM, (np.arange(ny) - (ny - 1) / 2) * step * LAM)
    position = np.stack([x.ravel(), y.ravel(), 0 * x.ravel()], -1)
    ones = np.ones((nx * ny, 1))
    cluster = cluster_of(F, position, ones * [1, 0, 0], ones * [0, 1, 0])
    found = figures(expansion_of(cluster, 50))
    # 4 pi A / lambda^2 is the limit of large apertures; at 8 x 6 wavelengths the edges still add 0.08 dB.
    assert found["directivity_dbi"] == pytest.approx(10 * np.log10(4 * np.pi * 48), abs=0.1)
    assert 20 * np.log10(found["side_lobe_e_db"]) == pytest.approx(-13.261, abs=0.1)


def test_3gpp_element_directivity():
    # TR 38.901 table 7.3-1: 65 deg / 65 deg, 30 dB, 8 dBi; the pattern's directivity is 9.8257 dBi.
    grid = equiangular(theta_intervals=720, phi_count=1440)
    theta, phi = np.rad2deg(grid.theta)[:, None], (np.rad2deg(grid.phi)[None, :] + 180) % 360 - 180
    vertical = np.minimum(12 * ((theta - 90) / 65) ** 2, 30)
    horizontal = np.minimum(12 * (phi / 65) ** 2, 30)
    power = 10 ** (-np.minimum(vertical + horizontal, 30) / 10)
    assert 10 * np.log10(4 * np.pi / grid.integrate(power)) == pytest.approx(9.8257, abs=5e-4)


def test_beam_of_a_turned_device_is_found_where_it_points():
    from colure.geometry.rotations import about_axis

    nx = 16
    x, y = np.meshgrid((np.arange(nx) - (nx - 1) / 2) * LAM / 2, (np.arange(nx) - (nx - 1) / 2) * LAM / 2)
    ones = np.ones((nx * nx, 1))
    cluster = cluster_of(F, np.stack([x.ravel(), y.ravel(), 0 * x.ravel()], -1), ones * [1, 0, 0], ones * [0, 1, 0])
    turned = expansion_of(cluster, 50).rotated(about_axis("y", np.deg2rad(20.123)))
    found = figures(turned)
    assert found["beam_azimuth_deg"] == pytest.approx(20.123, abs=1e-4)
    assert found["beam_elevation_deg"] == pytest.approx(0.0, abs=1e-4)


def test_analysis_of_an_empty_sphere_gives_nothing():
    assert np.all(analysis(np.zeros((1, 2, 12, 24), complex), 5) == 0)
