"""Published masks, coverage percentiles, partial powers and error levels: values as printed in the standards sheet."""

from __future__ import annotations

import numpy as np
import pytest

from colure.analysis.compare.match import normalized_error
from colure.analysis.figures.evaluate import FigureSet
from colure.analysis.figures.sphere import Sky, coverage
from colure.analysis.verdict import masks
from colure.errors import InputError
from colure.geometry.sphere import equiangular
from colure.model.evaluation import Evaluation
from colure.model.specification import Mask
from tests.conftest import cluster_of, expansion_of


def test_fcc_25_209():
    """47 CFR 25.209(a)(1), section 11: 24.598, 7.873, 7.905 and -10.03 dBi at the corners."""
    found = masks.fcc_25_209(np.array([1.5, 7.0, 9.2 + 1e-9, 48.0, 48.1, 8.0, 1.0]))
    assert found[:4] == pytest.approx([24.598, 7.873, 7.905, -10.03], abs=5e-3)
    assert found[4:6] == pytest.approx([-10.0, 8.0]) and np.isnan(found[6])


def test_f_699_small_reflector():
    """Unit test of an open ITU-R sharing simulator, section 11: D = 0.3 m, 27.25 GHz, 40 dBi; atol 0.01 as there."""
    found = masks.itu_r_f_699(
        np.array([0, 0.5, 1, 2, 3, 4, 5, 10, 100.0]), d_over_lambda=0.3 * 27.25e9 / 299_792_458.0, peak_gain_dbi=40.0
    )
    assert found == pytest.approx([40, 39.53, 38.14, 32.57, 23.53, 22.59, 20.17, 12.64, -4.35], abs=0.01)


def test_f_699_large_reflector():
    """Section 11 (agrees with pycraf 2.1.0 there): D/lambda 150, 51.2218 dBi."""
    found = masks.itu_r_f_699(np.array([0.3, 0.5, 1, 2, 10, 20.0]), d_over_lambda=150.0, peak_gain_dbi=51.2218)
    assert found == pytest.approx([46.1593, 37.1593, 32, 24.4743, 7, -0.5257], abs=1e-4)


def test_ra_1631():
    """Section 11 (agrees with pycraf 2.1.0 there): 100 m at 0.21 m."""
    found = masks.itu_r_ra_1631(np.array([0.0, 1, 10, 20]), d_over_lambda=100 / 0.21)
    assert found == pytest.approx([63.4986, 29, 4, -5.0309], abs=1e-4)


def test_s_465_and_s_580():
    """S.465: 32 - 25 log, silent nearer than max(1 deg, 100 lambda/D); S.580: 3 dB below it to 20 deg (section 11)."""
    far = masks.itu_r_s_465(np.array([0.9, 2.0, 10.0, 60.0]), d_over_lambda=100.0)
    near = masks.itu_r_s_580(np.array([2.0, 10.0, 60.0]), d_over_lambda=100.0)
    assert np.isnan(far[0]) and far[1:] == pytest.approx([24.474, 7.0, -10.0], abs=1e-3)
    assert near == pytest.approx([21.474, 4.0, -10.0], abs=1e-3)


@pytest.mark.parametrize("rings", [91, 181])
def test_coverage_of_many_lobes_on_few_rings(rings):
    """cos^2(5 pi cos(theta)): cos(theta) is even over the sphere, so that the level of p is sin^2(pi p/2) (derivable).

    Chords of the power between 91 rings, about six of them a lobe, read 1.3 dB too high at 20 % of the sphere.
    """
    grid = equiangular(theta_intervals=rings - 1, phi_count=8)
    power = np.broadcast_to(np.cos(5.0 * np.pi * np.cos(grid.theta))[:, None] ** 2, (rings, 8))
    share = np.array([0.2, 0.5, 0.8])
    found = 10 * np.log10(coverage(power, grid.theta, tuple(100.0 * share)))
    assert found == pytest.approx(20 * np.log10(np.sin(0.5 * np.pi * share)), abs=0.06)


def test_coverage_of_a_short_dipole_is_weighted_with_solid_angle():
    """Section 6: -5.567/-4.437/-1.249/-0.757/-0.099 dB at 15/20/50/60/85 %; unweighted the median would be -3.010."""
    grid = equiangular(theta_intervals=180, phi_count=36)
    power = np.broadcast_to(np.sin(grid.theta)[:, None] ** 2, (181, 36))
    found = 10 * np.log10(coverage(power, grid.theta, (15.0, 20.0, 50.0, 60.0, 85.0)))
    assert found == pytest.approx([-5.567, -4.437, -1.249, -0.757, -0.099], abs=2e-3)
    # Levels of a ring that differ by noise, on few rings: no ring may count as one step of the distribution.
    coarse = equiangular(theta_intervals=60, phi_count=36)
    noisy = np.sin(coarse.theta)[:, None] ** 2 * (1.0 + 1e-4 * np.random.default_rng(1).normal(size=(61, 36)))
    found = 10 * np.log10(coverage(noisy, coarse.theta, (15.0, 20.0, 50.0, 60.0, 85.0)))
    assert found == pytest.approx([-5.567, -4.437, -1.249, -0.757, -0.099], abs=6e-3)


def test_partial_powers():
    """Section 6: isotropic .70711/.5/.38268 within 45/30/22.5 deg of the horizon; a Huygens source sends 7/8 upwards."""
    from colure.analysis.figures.sphere import belt_weights

    bands = [float(belt_weights(31, np.pi / 2 - b, np.pi / 2 + b).sum()) / 2 for b in np.deg2rad([45, 30, 22.5])]
    assert bands == pytest.approx([0.70711, 0.5, 0.38268], abs=5e-6)
    huygens = expansion_of(cluster_of([1e9], [0, 0, 0], [1, 0, 0], [0, 1, 0]), 4)
    sky, total = Sky.of(huygens.coefficients[0]), float(np.sum(np.abs(huygens.coefficients[0]) ** 2))
    assert sky.power_between(0.0, np.pi / 2) / total == pytest.approx(7 / 8, abs=1e-9)
    for axis, share in (("z", 7 / 8), ("y", 1 / 2), ("x", 1 / 2)):
        assert sky.power_on_one_side(axis) / total == pytest.approx(share, abs=1e-9)
    # A Huygens source that looks to +y or +x sends as much there.
    for axis, electric, magnetic in (("y", [0, 0, 1], [1, 0, 0]), ("x", [0, 1, 0], [0, 0, 1])):
        turned = expansion_of(cluster_of([1e9], [0, 0, 0], electric, magnetic), 4).coefficients[0]
        share = Sky.of(turned).power_on_one_side(axis) / float(np.sum(np.abs(turned) ** 2))
        assert share == pytest.approx(7 / 8, abs=1e-9)


def test_power_figures_of_a_dipole():
    """10 dBm into a lossless half-wave-like short dipole: TRP 10 dBm, EIRP 11.761 dBm (section 4: 1.7609 dBi), TIS the sensitivity."""
    dipole = expansion_of(cluster_of([1e9], [0, 0, 0], [0, 0, 1]), 3)
    wanted = Evaluation(
        transmit_power_dbm=10.0, sensitivity_dbm=-100.0, horizon_bands_deg=(45.0,), coverage_percent=(50.0,), up="z"
    )
    figures = FigureSet(wanted)
    found = dict(zip(figures.names, figures.values(dipole)[0], strict=True))
    assert found["trp_dbm"] == pytest.approx(10.0, abs=1e-6) and found["eirp_dbm"] == pytest.approx(11.7609, abs=1e-3)
    assert found["tis_dbm"] == pytest.approx(-100.0, abs=1e-6) and found["eis_dbm"] == pytest.approx(
        -101.7609, abs=1e-3
    )
    assert found["coverage_50_dbi"] == pytest.approx(1.7609 - 1.249, abs=0.02)
    # sin^3 over the band: (3/4)(2 s - 2 s^3/3) with s = sin 45 deg, derivable.
    s = np.sqrt(0.5)
    assert found["horizon_45_db"] == pytest.approx(0.75 * (2 * s - 2 * s**3 / 3), abs=1e-9)


@pytest.mark.parametrize(("difference_db", "level_db"), [(0.1, -38.73), (0.5, -24.55), (1.0, -18.27)])
def test_equivalent_error_levels(difference_db, level_db):
    """Section 7: differences of 0.1/0.5/1 dB at the peak are fields of -38.73/-24.55/-18.27 dB."""
    from colure.analysis.compare.match import Freedom, levels_of, match

    one = expansion_of(cluster_of([1e9], [0, 0, 0], [1, 0, 0], [0, 1, 0]), 6)
    other = one.with_coefficients(one.coefficients * 10 ** (difference_db / 20))
    found = levels_of(match(one, other, freedom=Freedom(frame=False, origin=False, level=False)), 0)
    assert found[0].worst_db == pytest.approx(level_db, abs=0.01)


def test_normalized_error_against_gtc():
    """The difference of two independent values over its expanded uncertainty, with a GUM library as the outside reference."""
    gtc = pytest.importorskip("GTC")
    one, other = gtc.ureal(21.2, 0.125), gtc.ureal(20.9, 0.1)
    difference = one - other
    assert normalized_error(one=21.2, expanded_one=0.25, other=20.9, expanded_other=0.2) == pytest.approx(
        difference.x / (2 * difference.u), rel=1e-12
    )
    assert normalized_error(one=1.0, expanded_one=0.0, other=1.0, expanded_other=0.0) == 0.0 and np.isinf(
        normalized_error(one=1.0, expanded_one=0.0, other=2.0, expanded_other=0.0)
    )


@pytest.mark.parametrize(
    ("formula", "ghz", "holds"),
    [("itu-r-f.1336-sector-azimuth", 24.0, True), ("itu-r-f.1336-sector-elevation", 3.5, True),
     ("itu-r-f.1336-sector-elevation", 0.3, False), ("itu-r-f.1336-omni", 24.0, True), ("itu-r-f.1336-omni", 77.0, False),
     ("itu-r-f.1336-sector-azimuth", 77.0, False)],
)  # fmt: skip
def test_f_1336_is_refused_outside_its_band(formula, ghz, holds):
    """400 MHz to about 70 GHz (title of F.1336-4 [R])."""
    mask = Mask(name="sector", formula=formula, beamwidth_deg=65.0)
    angle = np.linspace(-90.0, 90.0, 73)
    if holds:
        assert np.all(np.isfinite(masks.level_of(mask, angle, frequency_hz=1e9 * ghz, peak_gain_dbi=16.0)))
        return
    with pytest.raises(InputError, match=rf"at {ghz:g} GHz: holds from 0\.4 to"):
        masks.level_of(mask, angle, frequency_hz=1e9 * ghz, peak_gain_dbi=16.0)


def test_f_1336_sector_has_another_form_above_6_ghz():
    """F.1336-5 recommends 3.2.1: -12 x^2 to x = 1, then -12 - 15 log x (as a public implementation has it [R])."""
    mask = Mask(name="sector", formula="itu-r-f.1336-sector-azimuth", beamwidth_deg=30.0)
    found = masks.level_of(mask, np.array([0.0, 15.0, 30.0, 60.0, -90.0, 91.0]), frequency_hz=26e9, peak_gain_dbi=18.0)
    assert found[:5] == pytest.approx([18.0, 15.0, 6.0, 6.0 - 15.0 * np.log10(2.0), 6.0 - 15.0 * np.log10(3.0)])
    assert np.isnan(found[5])  # not read in the text: silent, never a guess
    low = masks.level_of(mask, np.array([180.0]), frequency_hz=3.5e9, peak_gain_dbi=18.0)
    # Recommends 3.3 (formula printed in the documentation of pycraf [R]): 31000 x 10^-1.8 / 30 = 16.377 deg in elevation.
    assert low == pytest.approx([18.0 - 12.0 + 10 * np.log10(6.6) - 15 * np.log10(180.0 / 16.3771)], abs=1e-3)


def test_f_1336_sector_level_behind_follows_the_elevation_beamwidth():
    """65 x 8 deg, 18 dBi, typical k_h = 0.8, k_v = k_p = 0.7: worked by hand from F.1336-5 recommends 3.1.1 [R, as implemented publicly]."""
    mask = Mask(name="s", formula="itu-r-f.1336-sector-azimuth", beamwidth_deg=65.0, elevation_beamwidth_deg=8.0)
    angle = np.array([0.0, 32.5, 65.0, 180.0])
    found = masks.level_of(mask, angle, frequency_hz=3.5e9, peak_gain_dbi=18.0)
    hand = [18.0, 15.0, 18.0 - 12.0 - 3.0 * (1.0 - 0.5**-0.8), 18.0 - 12.0 + 8.19544 - 15.0 * 1.352183]
    assert found == pytest.approx(hand, abs=1e-4)
    relative = mask.model_copy(update={"relative": True})
    assert masks.level_of(relative, angle, frequency_hz=3.5e9, peak_gain_dbi=18.0) == pytest.approx(found - 18.0)
    with pytest.raises(ValueError, match="elevation_beamwidth_deg: missing"):
        Mask(name="s", formula="itu-r-f.1336-sector-azimuth", beamwidth_deg=130.0)


@pytest.mark.parametrize(
    ("formula", "more"),
    [("fcc-25.209", {}), ("itu-r-f.699", {"diameter_mm": 300.0}), ("itu-r-ra.1631", {"diameter_mm": 300.0}),
     ("itu-r-s.465", {"diameter_mm": 900.0}), ("itu-r-s.580", {"diameter_mm": 900.0}), ("itu-r-f.1336-omni", {})],
)  # fmt: skip
def test_a_relative_mask_takes_the_gain_off_a_published_curve(formula, more):
    """Published curves are in dBi; 40 dBi were 40 dB too lax where a relative mask forgot them (from the definition)."""
    angle = np.array([5.0, 30.0, 120.0])
    one = Mask(name="m", formula=formula, **more)
    level = masks.level_of(one, angle, frequency_hz=27.25e9, peak_gain_dbi=40.0)
    two = one.model_copy(update={"relative": True})
    assert masks.level_of(two, angle, frequency_hz=27.25e9, peak_gain_dbi=40.0) == pytest.approx(level - 40.0)
    with pytest.raises(InputError, match="peak_gain_dbi: missing"):
        masks.level_of(two, angle, frequency_hz=27.25e9, peak_gain_dbi=np.nan)


def test_f_1336_sector_is_continuous_and_half_power_wide():
    """Half of the beamwidth is -3 dB by definition; branches meet, and the elevation ends at G180 (from memory)."""
    for azimuth in (True, False):

        def at(x, azimuth=azimuth):
            return masks.itu_r_f_1336_sector(
                x, peak_gain_dbi=18.0, beamwidth_deg=8.0, elevation_beamwidth_deg=8.0, azimuth=azimuth
            )

        assert at(4.0) == pytest.approx(15.0)
        a = np.linspace(0.0, 180.0, 36001)
        levels = at(a)
        # Its own corner in elevation, sqrt(1 - 0.36 k), steps by 0.13 dB.
        assert np.max(np.abs(np.diff(levels))) < 0.15 and np.all(np.diff(levels) < 1e-9)
        floor = 18.0 - 12.0 + 10 * np.log10(6.6) - 15 * np.log10(180.0 / 8.0)
        assert levels[-1] == pytest.approx(floor) and levels.min() == pytest.approx(floor)
