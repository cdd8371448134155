"""Range, level, exposure and horn formulas against printed values (standards sheet 3, 4, 7, 8, 9)."""

from __future__ import annotations

import numpy as np
import pytest

from colure.geometry.conventions import SPEED_OF_LIGHT
from colure.planning.exposure import assess_exposure, local_limits_w_m2, whole_body_limits_w_m2
from colure.planning.level import THERMAL_DBM_HZ, free_space_loss_db, link_budget, noise_error_db
from colure.planning.reach import assess, taper_db
from colure.planning.sampling import order_for, power_grids, unique_directions
from colure.waves.horn import e_plane_loss_db, h_plane_loss_db, horn_gain_dbi


@pytest.mark.parametrize(
    ("ghz", "metres", "loss"),
    [(28, 1, 61.3909), (39, 1, 64.2691), (60, 1, 68.0108), (3.5, 1, 43.3291), (2.45, 3, 49.7735), (10, 10, 72.4478)],
)
def test_free_space_loss(ghz, metres, loss):
    # H. T. Friis, Proc. IRE 34:254, 1946.
    assert free_space_loss_db(frequency_hz=ghz * 1e9, distance_m=metres) == pytest.approx(loss, abs=5e-5)


def test_far_field_distance_means_a_sixteenth_of_a_wavelength():
    lam = SPEED_OF_LIGHT / 10e9
    size = 100 * lam
    found = assess(range_length_m=2 * size**2 / lam, reach_m=size / 2, largest_m=size, frequency_hz=10e9)
    assert found.far_field_m == pytest.approx(2 * size**2 / lam)
    assert found.edge_phase_deg == pytest.approx(22.5, abs=0.01)  # derivable


def test_distances_of_the_worked_example():
    # D = 0.3 m at 28 GHz: 16.81 m and 0.985 m (Balanis sec. 4.4 bound, from memory).
    found = assess(range_length_m=5.0, reach_m=0.15, largest_m=0.3, frequency_hz=28e9)
    assert found.far_field_m == pytest.approx(16.81, abs=5e-3)
    assert found.reactive_m == pytest.approx(0.985, abs=5e-4)


def test_level_of_an_off_centre_source():
    # +-0.10 m at 3 m: +0.285 / -0.294 dB (derived).
    span = assess(range_length_m=3.0, reach_m=0.1, largest_m=0.1, frequency_hz=1e9).level_span_db
    assert span == pytest.approx(0.294 + 0.285, abs=1e-3)


@pytest.mark.parametrize(("snr", "sigma"), [(20, 0.614), (30, 0.194), (40, 0.0614), (50, 0.0194), (60, 0.0061)])
def test_noise_in_db(snr, sigma):
    assert noise_error_db(snr) == pytest.approx(sigma, abs=5.5e-4 if snr < 40 else 5.5e-5)


def test_thermal_noise():
    # k T0 = -173.975 dBm/Hz; 1 kHz: -143.975 dBm plus the noise figure.
    assert 10 * np.log10(1.380649e-23 * 290 * 1e3) == pytest.approx(THERMAL_DBM_HZ, abs=5e-4)
    budget = link_budget(
        frequency_hz=28e9, distance_m=1.0, power_dbm=0, device_gain_dbi=20, probe_gain_dbi=7, cable_loss_db=0,
        noise_figure_db=0, if_bandwidth_hz=1000, wanted_level_db=-30,
    )  # fmt: skip
    assert budget.noise_dbm == pytest.approx(-143.975, abs=1e-9)
    assert budget.snr_peak_db == pytest.approx(27 - 61.3909 + 143.975, abs=1e-4)


@pytest.mark.parametrize(
    ("ghz", "occupational", "public"), [(10, 182.95, 36.59), (28, 152.47, 30.49), (60, 133.23, 26.65)]
)
def test_icnirp_2020_local_levels(ghz, occupational, public):
    # ICNIRP, Health Phys. 118:483-524, 2020, Table 6.
    assert local_limits_w_m2(ghz * 1e9) == (pytest.approx(occupational, abs=6e-3), pytest.approx(public, abs=6e-3))


def test_distance_of_43_dbm():
    # sqrt(EIRP / 4 pi S): the sheet prints 0.399 m for "43 dBm" at 10 W/m^2, which is 20 W exactly.
    found = assess_exposure(power_dbm=10 * np.log10(20e3) - 20, gain_dbi=20, distance_m=2, frequency_hz=24e9)
    assert found.public_distance_m == pytest.approx(0.399, abs=5e-4)


@pytest.mark.parametrize("border_ghz", [0.4, 2.0, 6.0])
def test_exposure_limits_meet_at_their_borders(border_ghz):
    """Limits quoted from memory below 2 GHz join the tabled ones above (ICNIRP 2020, Tables 5 and 6)."""
    for limits in (local_limits_w_m2, whole_body_limits_w_m2):
        below, above = limits(border_ghz * 1e9 * (1 - 1e-6)), limits(border_ghz * 1e9 * (1 + 1e-6))
        assert above == pytest.approx(below, rel=5e-3)


def test_exposure_at_900_mhz():
    # ICNIRP 2020 (from memory): whole body f/200 = 4.5 W/m^2 for the public, f/40 = 22.5 for workers.
    assert whole_body_limits_w_m2(0.9e9) == pytest.approx((22.5, 4.5))
    assert local_limits_w_m2(0.9e9)[1] == pytest.approx(20.14, abs=0.01)


def test_exposure_refuses_frequencies_without_a_known_limit():
    with pytest.raises(ValueError, match=r"0\.03 to 300 GHz"):
        local_limits_w_m2(1e7)


def test_probe_taper_and_parallax():
    """A Gaussian beam of 10 dBi is 3 dB down at sqrt(4 ln 2 / 10) rad: 30.2 deg (derivable)."""
    assert taper_db(10.0, np.deg2rad(30.17)) == pytest.approx(3.01, abs=2e-3)
    found = assess(range_length_m=1.0, reach_m=0.5, largest_m=0.3, frequency_hz=24e9, probe_gain_dbi=7.0)
    assert found.parallax_deg == pytest.approx(30.0)


def test_verdict_goes_from_transform_to_direct_with_distance():
    """A 50 mm panel, 30 mm off the crossing, at 24 GHz (2 D^2 / lambda = 0.8 m)."""
    verdicts = [
        assess(range_length_m=r, reach_m=0.047, largest_m=0.07, frequency_hz=24e9, wanted_level_db=-20).verdict
        for r in (0.7, 3.0, 30.0)
    ]
    assert verdicts == ["near field to far field transform", "direct with distance correction", "direct"]


@pytest.mark.parametrize(("step", "count"), [(30, 62), (15, 266), (7.5, 1106), (3.6, 4902), (3, 7082), (2.5, 10226)])
def test_grids_of_power_figures_hold_the_published_counts(step, count):
    # 3GPP TS 38.521-2, M.1, M.2.1, M.4.5 (section 6 of the standards sheet).
    assert unique_directions(step) == count


def test_reference_step_of_power_figures():
    # 3GPP TS 37.145-2 Annex F (from memory): lambda / D; 0.5 m at 28 GHz: 1.227 deg.
    grids = power_grids(largest_m=0.5, frequency_hz=28e9, step_deg=2.0)
    assert grids.reference_step_deg == pytest.approx(1.227, abs=5e-4)
    assert not grids.enough and grids.sparsity == pytest.approx(2.0 / 1.2269, abs=1e-3)


@pytest.mark.parametrize(("s", "loss"), [(0.05, 0.0381), (0.1, 0.1528), (0.2, 0.6157), (0.25, 0.9674), (0.3, 1.4025)])
def test_horn_e_plane_loss(s, loss):
    # s = b^2 / (8 lambda rho_e); W. T. Slayton, NRL Report 4433, 1954 (values recomputed exactly).
    assert e_plane_loss_db(np.sqrt(8 * s * 6), 6, 1) == pytest.approx(loss, abs=5e-5)


@pytest.mark.parametrize(("t", "loss"), [(0.1, 0.0733), (0.2, 0.2919), (0.3, 0.6511), (0.375, 1.0074), (0.5, 1.7481)])
def test_horn_h_plane_loss(t, loss):
    assert h_plane_loss_db(np.sqrt(8 * t * 6), 6, 1) == pytest.approx(loss, abs=5e-5)


def test_horn_of_the_worked_examples():
    # Balanis, Antenna Theory, 3rd ed., ex. 13.6: dimensions give 22.623 dB; ex. 13.5: 18.828 dB (exact).
    lam = 3e10 / 11e9 * 1e-2
    found = horn_gain_dbi(SPEED_OF_LIGHT / lam, a=0.16370, b=0.12859, slant_e=0.30316, slant_h=0.32753)
    assert found == pytest.approx(22.623, abs=1e-3)
    assert horn_gain_dbi(SPEED_OF_LIGHT, a=5.5, b=2.75, slant_e=6, slant_h=6) == pytest.approx(18.828, abs=6e-4)
    assert 10 * np.log10(32 / np.pi) == pytest.approx(10.0800, abs=5e-5)


@pytest.mark.parametrize("size", [{"a": 0.0}, {"slant_e": -1.0}])
def test_horn_refuses_impossible_sizes(size):
    with pytest.raises(ValueError, match="must be above 0 m"):
        horn_gain_dbi(1e9, **{"a": 1.0, "b": 1.0, "slant_e": 3.0, "slant_h": 3.0, **size})


def test_orders_of_the_worked_examples():
    # r0 = 0.15 m at 28 GHz: k r0 = 88.025; r0 = 0.5 m at 10 GHz: 104.79 (the common rule adds 10).
    for r0, f, kr in ((0.15, 28e9, 88.025), (0.5, 10e9, 104.79)):
        assert 2 * np.pi * f / SPEED_OF_LIGHT * r0 == pytest.approx(kr, abs=6e-3)
        order = order_for(reach_m=r0, frequency_hz=f, level_db=-40)
        assert order == int(np.ceil(kr + 1.8 * 2 ** (2 / 3) * kr ** (1 / 3)))
