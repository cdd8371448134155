"""Every kind of simulated device against published values of its textbook antenna.

Values of the standards sheet's section 4 unless said; lengths in wavelengths.
"""

from __future__ import annotations

import numpy as np
import pytest
from scipy.optimize import brentq

from colure.errors import InputError
from colure.geometry.directions import unit_vector
from colure.model.campaign import Campaign
from colure.model.chamber import SimulatedChamber
from colure.model.device import Device
from colure.model.loading import validate
from colure.twin.antennas import panel
from colure.twin.devices import device_of, maker_of
from colure.twin.states import steered
from colure.waves.horn import horn_gain_dbi

F = np.array([24e9])
LAM = 299_792_458.0 / 24e9 * 1e3  # mm
DEVICE = {"name": "d", "size_mm": [10.0, 10.0, 1.0], "expected_gain_dbi": 10.0}
AHEAD = np.array([[0.0, 0.0, 1.0]])
IDEAL = {"magnetic_ratio": 1.0}


def made(table=None, *, frequency=F, folder=None, **device):
    truth = validate(SimulatedChamber, {} if table is None else {"device": table}, source="twin.toml")
    return device_of(truth, Device.model_validate({**DEVICE, **device}), frequency, band_hz=frequency, folder=folder)


def power(cluster, theta, phi=0.0):
    field = cluster.far_field(np.atleast_2d(unit_vector(theta=np.asarray(theta), phi=np.asarray(phi))))
    return np.sum(np.abs(field[0]) ** 2, axis=-1)


def dbi(cluster, theta=0.0, phi=0.0):
    return float(10.0 * np.log10(power(cluster, theta, phi)[0]))


def width_deg(cluster, phi, *, about=0.0):
    """Half-power width of a cut through a beam that is symmetrical about its direction, degrees."""
    top = power(cluster, about, phi)[0]
    edge = brentq(lambda t: power(cluster, about + t, phi)[0] - 0.5 * top, 1e-6, 1.4)
    return 2.0 * np.rad2deg(edge)


def side_lobe_db(cluster, phi):
    theta = np.deg2rad(np.arange(0.0, 60.0, 0.02))
    level = power(cluster, theta, np.full(theta.size, phi))
    inner = np.flatnonzero((level[1:-1] > level[:-2]) & (level[1:-1] > level[2:])) + 1
    return float(10.0 * np.log10(level[inner].max() / level[0]))


def senses(cluster, direction):
    """(right, left) amplitude towards +z or along x."""
    e = cluster.far_field([direction])[0, 0]
    return abs(e[0] + 1j * e[1]), abs(e[0] - 1j * e[1])


@pytest.mark.parametrize(
    ("length", "directivity", "width"),
    # Elementary and half-wave: sheet. Full wavelength: 2.411 (3.82 dB), 47.8 deg: Balanis, Antenna Theory, ch. 4.
    [(0.0, 1.5, 90.0), (0.5, 1.64092, 78.078), (1.0, 2.411, 47.8)],
)
def test_dipoles(length, directivity, width):
    for axis, side in (("x", (0.0, 0.0)), ("z", (np.pi / 2, 0.3))):
        cluster = made({"kind": "dipole", "axis": axis, "length_mm": length * LAM})
        assert power(cluster, *side)[0] == pytest.approx(directivity, abs=5e-6 if length < 1.0 else 5e-4)
    along_z = made({"kind": "dipole", "axis": "z", "length_mm": length * LAM})
    assert width_deg(along_z, 0.0, about=np.pi / 2) == pytest.approx(width, abs=6e-3 if length < 1.0 else 0.06)


def test_a_turnstile_is_round_in_its_plane_and_circular_on_its_axis():
    """Elementary crossed dipoles: (1 + cos^2 theta) 3/4, exactly; half-wave ones ripple by 0.94 dB (both derivable)."""
    theta = np.linspace(0.0, np.pi, 13)
    cluster = made({"kind": "crossed-dipoles", "length_mm": 0.0}, polarization="right")
    for phi in (0.0, 0.7, 1.9):
        assert power(cluster, theta, np.full(13, phi)) == pytest.approx(0.75 * (1.0 + np.cos(theta) ** 2), rel=1e-12)
    assert senses(cluster, [0, 0, 1])[1] == pytest.approx(0.0, abs=1e-12)
    other = made({"kind": "crossed-dipoles", "length_mm": 0.0, "polarization": "left"})
    assert senses(other, [0, 0, 1])[0] == pytest.approx(0.0, abs=1e-12)
    ring = np.linspace(0.0, 2 * np.pi, 360)
    upright = made({"kind": "crossed-dipoles", "normal": "y"})
    half = 10 * np.log10(power(upright, ring % np.pi, np.where(ring < np.pi, 0.0, np.pi)))
    # cos(pi/2 cos a)^2 / sin(a)^2 of both: 1 at 0 deg, 2 x 0.394^2 / 0.5 = ... at 45 deg.
    at_45 = 2.0 * (np.cos(np.pi / 2 * np.sqrt(0.5)) / np.sqrt(0.5)) ** 2
    assert np.ptp(half) == pytest.approx(abs(10 * np.log10(at_45)), abs=1e-3)


@pytest.mark.parametrize(
    ("taper", "efficiency_db", "width", "lobe"), [(0.0, 0.0, 50.758, -13.261), (1.0, -2 * 0.912, 68.123, -22.999)]
)
def test_rectangular_apertures(taper, efficiency_db, width, lobe):
    """Even and cosine lines of 12 wavelengths: widths, lobes; the directivity 4 pi A / wavelength^2 x efficiency."""
    side = 12.0
    table = {"kind": "aperture", "width_mm": side * LAM, "height_mm": side * LAM, "taper": taper}
    cluster = made({**table, **IDEAL})
    assert dbi(cluster) == pytest.approx(10 * np.log10(4 * np.pi * side**2) + efficiency_db, abs=0.02)
    # Widths are printed for sin(u) ~ u; the element's own pattern narrows a beam of 4 deg by less than 0.1 %.
    wanted = 2 * np.rad2deg(np.arcsin(np.deg2rad(width) / 2 / side))
    assert width_deg(cluster, 0.0) == pytest.approx(wanted, rel=2e-3)
    assert side_lobe_db(cluster, 0.0) == pytest.approx(lobe, abs=0.15)


@pytest.mark.parametrize(
    ("taper", "efficiency_db", "width", "lobe"), [(0.0, 0.0, 58.957, -17.570), (1.0, -1.249, 72.748, -24.639)]
)
def test_round_apertures(taper, efficiency_db, width, lobe):
    across = 12.0
    cluster = made({"kind": "aperture", "shape": "circular", "diameter_mm": across * LAM, "taper": taper, **IDEAL})
    assert dbi(cluster) == pytest.approx(20 * np.log10(np.pi * across) + efficiency_db, abs=0.03)
    wanted = 2 * np.rad2deg(np.arcsin(np.deg2rad(width) / 2 / across))
    assert width_deg(cluster, 0.4) == pytest.approx(wanted, rel=3e-3)
    assert side_lobe_db(cluster, 0.4) == pytest.approx(lobe, abs=0.25)


def test_no_direction_shows_a_grating_lobe_of_the_sampling():
    """Steered to 50 deg, no lobe but the main one is above the even line's -13.26 dB, the sources' own pattern taken off."""
    table = {"kind": "aperture", "width_mm": 8 * LAM, "height_mm": 2 * LAM, "steer_deg": [50.0, 0.0], **IDEAL}
    cluster = made(table)
    theta = np.deg2rad(np.arange(-180.0, 180.0, 0.25))
    level = 10 * np.log10(power(cluster, np.abs(theta), np.where(theta < 0, np.pi, 0.0)) + 1e-12)
    own = 20 * np.log10(0.5 * (1.0 + np.cos(theta)) + 1e-9)
    top = np.rad2deg(theta[int(np.argmax(level))])
    assert top == pytest.approx(50.0, abs=0.8)  # the element's pattern pulls it inwards a little
    outside = np.abs(np.rad2deg(theta) - 50.0) > 14.0
    front = np.abs(theta) < np.deg2rad(110.0)
    bare = level - own
    assert (bare[outside & front] - bare[np.argmax(level)]).max() == pytest.approx(-13.26, abs=0.35)


def test_a_rough_aperture_loses_what_ruze_says():
    """Rms phase 45 deg (surface error wavelength / 16): -2.68 dB (J. Ruze, Proc. IEEE 54:633, 1966), the mean of many."""
    table = {"kind": "aperture", "shape": "circular", "diameter_mm": 10 * LAM, "correlation_mm": 0.4 * LAM, **IDEAL}
    smooth = made(table).weights.sum()  # the field ahead
    rough = [made({**table, "random_phase_deg": 45.0, "seed": seed}).weights.sum() for seed in range(60)]
    assert 20 * np.log10(abs(np.mean(rough)) / abs(smooth)) == pytest.approx(-2.68, abs=0.2)


def test_horns():
    """Balanis, Antenna Theory, ch. 13: a1 = 5.5, b1 = 2.75, flares 6 wavelengths: 18.78 dB (from tables, within 0.06)."""
    table = {"kind": "horn", "aperture_a_mm": 5.5 * LAM, "aperture_b_mm": 2.75 * LAM, "slant_e_mm": 6 * LAM}
    horn = made({**table, "slant_h_mm": 6 * LAM, **IDEAL})
    assert dbi(horn) == pytest.approx(18.78, abs=0.12)  # the book leaves the apertures' rims out
    # R_E and R_H of the gain formula, s = 0.25 and t = 0.375: 0.9674 and 1.0074 dB.
    a, b = 6.0, 6.0
    flat = {"kind": "horn", "aperture_a_mm": a * LAM, "aperture_b_mm": b * LAM, **IDEAL}
    straight = made({**flat, "slant_e_mm": 1e6, "slant_h_mm": 1e6})
    assert dbi(straight) == pytest.approx(10 * np.log10(a * b) + 10.08, abs=0.04)
    bent_e = made({**flat, "slant_e_mm": b**2 / (8 * 0.25) * LAM, "slant_h_mm": 1e6})
    bent_h = made({**flat, "slant_e_mm": 1e6, "slant_h_mm": a**2 / (8 * 0.375) * LAM})
    assert dbi(straight) - dbi(bent_e) == pytest.approx(0.9674, abs=0.03)
    assert dbi(straight) - dbi(bent_h) == pytest.approx(1.0074, abs=0.03)
    assert horn_gain_dbi(F, a=5.5e-3 * LAM, b=2.75e-3 * LAM, slant_e=6e-3 * LAM, slant_h=6e-3 * LAM) == pytest.approx(
        dbi(horn), abs=0.08
    )


def test_flaws_of_a_horn_do_what_they_say():
    table = {"kind": "horn", "aperture_a_mm": 3 * LAM, "aperture_b_mm": 3 * LAM, "slant_e_mm": 8 * LAM}
    table["slant_h_mm"] = 8 * LAM
    sound, tapered = made(table), made({**table, "edge_db": -12.0})
    assert side_lobe_db(tapered, 0.0) < side_lobe_db(sound, 0.0) - 5.0
    angle = np.deg2rad(np.arange(-10.0, 10.0, 0.1))
    for flaw in ({"asymmetry": 0.4, "bent_wall_mm": 0.2 * LAM}, {"bent_wall_mm": 0.2 * LAM}):
        level = power(made({**table, **flaw}), np.abs(angle), np.where(angle < 0, np.pi, 0.0))
        assert abs(np.rad2deg(angle[int(np.argmax(level))])) > 0.5  # a longer path on one side turns the beam
    lumped = made({**table, "lump_db": -20.0, "lump_mm": [LAM, 0.0]})
    difference = lumped.far_field(AHEAD) * np.sqrt(lumped.power()) - sound.far_field(AHEAD) * np.sqrt(sound.power())
    whole = sound.far_field(AHEAD) * np.sqrt(sound.power())
    ratio = 20 * np.log10(np.abs(difference[0, 0, 0]) / np.abs(whole[0, 0, 0]))
    # -20 dB of the electric moment; the sound horn's magnetic moments add 0.94 of the same; flares cost 0.5 dB.
    assert ratio == pytest.approx(-20.0 - 20 * np.log10(1.94), abs=0.7)


def test_a_patch_has_the_two_slot_patterns():
    """Balanis ch. 14: cos(k L sin / 2) and sinc(k W sin / 2), times the sources' (1 + r cos) here."""
    length, width, ratio = 0.35, 0.45, 0.85
    cluster = made({"kind": "patch", "length_mm": length * LAM, "width_mm": width * LAM, "magnetic_ratio": ratio})
    theta = np.deg2rad(np.arange(0.0, 90.0, 5.0))
    own_e, own_h = (np.cos(theta) + ratio) / (1 + ratio), (1 + ratio * np.cos(theta)) / (1 + ratio)
    e_plane = np.cos(np.pi * length * np.sin(theta)) * own_e
    h_plane = np.sinc(width * np.sin(theta)) * own_h
    for phi, wanted in ((0.0, e_plane), (np.pi / 2, h_plane)):
        found = power(cluster, theta, np.full(theta.size, phi)) / power(cluster, 0.0)[0]
        assert found == pytest.approx(wanted**2, abs=1e-6)
    assert 6.5 < dbi(cluster) < 7.5  # a patch has about 7 dBi (common practice, no source)
    assert dbi(cluster) - dbi(cluster, np.pi) == pytest.approx(20 * np.log10((1 + ratio) / (1 - ratio)), abs=1e-6)


@pytest.mark.parametrize("kind", ["panel", "horn", "aperture", "patch"])
def test_polarizations(kind):
    """Sense, axial ratio and tilt towards +z are as declared (IEEE Std 145: right-handed has e_phi = -j e_theta)."""
    own = {
        "panel": {"rows": 2, "columns": 3, "error": 0.0, "cross_error": 0.0, "cross_polar_db": -200.0},
        "horn": {"aperture_a_mm": 20, "aperture_b_mm": 20, "slant_e_mm": 50, "slant_h_mm": 50},
        "aperture": {"width_mm": 20, "height_mm": 15},
        "patch": {"length_mm": 5, "width_mm": 5},
    }[kind]
    for sense in ("right", "left"):
        right, left = senses(made({"kind": kind, **own, "polarization": sense}), [0, 0, 1])
        assert (left < 1e-9 * right) if sense == "right" else (right < 1e-9 * left)
        declared = senses(made({"kind": kind, **own}, polarization=sense), [0, 0, 1])
        assert declared == pytest.approx((right, left), abs=1e-9)
        ellipse = {"polarization": "elliptical", "sense": sense, "axial_ratio_db": 3.0, "tilt_deg": 25.0}
        e = made({"kind": kind, **own, **ellipse}).far_field(AHEAD)[0, 0]
        time = np.linspace(0, 2 * np.pi, 7200)
        path = (e[:2, None] * np.exp(1j * time)).real
        radius = np.linalg.norm(path, axis=0)
        assert 20 * np.log10(radius.max() / radius.min()) == pytest.approx(3.0, abs=1e-3)
        major = path[:, int(np.argmax(radius))]
        assert np.rad2deg(np.arctan2(major[1], major[0])) % 180.0 == pytest.approx(25.0, abs=0.1)
    e = made({"kind": kind, **own, "slant_deg": 30.0}).far_field(AHEAD)[0, 0]
    assert abs(e[1] / e[0]) == pytest.approx(np.tan(np.deg2rad(30.0)), rel=1e-9)
    e = made({"kind": kind, **own, "cross_polar_db": -20.0}).far_field(AHEAD)[0, 0]
    assert 20 * np.log10(abs(e[1] / e[0])) == pytest.approx(-20.0, abs=1e-6)


@pytest.mark.parametrize(("turns", "spacing"), [(4, 0.225), (8, 0.225)])
def test_a_helix_radiates_circularly_along_its_axis(turns, spacing):
    """Kraus, Antennas, ch. 7: axial ratio (2 n + 1) / (2 n), width 52 / (C sqrt(n S)) deg (an empirical fit), sense of
    the winding; D about 12 C^2 n S, his later value."""
    cluster = made({"kind": "helix-like", "turns": turns, "circumference_mm": LAM, "spacing_mm": spacing * LAM})
    right, left = senses(cluster, [0, 0, 1])
    ratio = (right + left) / abs(right - left)
    assert right > 10.0 * left and ratio == pytest.approx((2 * turns + 1) / (2 * turns), abs=0.03)
    assert width_deg(cluster, 0.0) == pytest.approx(52.0 / np.sqrt(turns * spacing), rel=0.12)
    assert dbi(cluster) == pytest.approx(10 * np.log10(12 * turns * spacing), abs=1.0)
    assert dbi(cluster) - dbi(cluster, np.pi) > 8.0


def test_eight_by_eight_elements_have_the_gain_of_their_area():
    """4 pi A / wavelength^2 for 64 half-wave cells: 23.03 dBi (derivable); a row of 10 isotropes has 10.21 deg."""
    even = {"kind": "panel", "taper": 0.0, "error": 0.0, "cross_error": 0.0, "cross_polar_db": -200.0}
    assert dbi(made({**even, "rows": 8, "columns": 8})) == pytest.approx(23.03, abs=0.15)
    # Across the row the H plane's element pattern 1 + r cos theta leaves the array factor's width within 1 %.
    row = made({**even, "rows": 10, "columns": 1})
    assert width_deg(row, np.pi / 2) == pytest.approx(10.21, rel=0.01)
    one = made({**even, "rows": 1, "columns": 1, "magnetic_ratio": 1.0})
    assert dbi(one) == pytest.approx(4.7712, abs=1e-4)


def test_steering_turns_any_array():
    for table in (
        {"kind": "panel", "rows": 8, "columns": 8},
        {"kind": "panel", "rows": 1, "columns": 8},
        {"kind": "aperture", "width_mm": 50, "height_mm": 50},
    ):
        azimuth = np.deg2rad(np.arange(0.0, 60.0, 0.25))
        level = power(steered(made(table), np.deg2rad(30.0)), azimuth)
        assert np.rad2deg(azimuth[int(np.argmax(level))]) == pytest.approx(30.0, abs=2.0)
    tilted = made({"kind": "panel", "rows": 8, "columns": 8, "steer_deg": [20.0, 35.0]})
    az, el = np.deg2rad(20.0), np.deg2rad(35.0)
    towards = [[np.sin(az) * np.cos(el), np.sin(el), np.cos(az) * np.cos(el)]]
    there = np.sum(np.abs(tilted.far_field(towards)[0]) ** 2)
    # cos of the scan angle (39.7 deg) of what it has ahead: 1.14 dB (IEEE Std 145: the projected area).
    ahead = power(made({"kind": "panel", "rows": 8, "columns": 8}), 0.0)[0]
    assert 10 * np.log10(there / ahead) == pytest.approx(10 * np.log10(np.cos(az) * np.cos(el)), abs=0.3)


def test_efficiency_reflection_and_position():
    base = {"kind": "patch"}
    lossless, lossy = made(base), made({**base, "efficiency_db": -3.0, "reflection_db": -10.0})
    # 10 log10(1 - 0.1) = -0.4576 dB of mismatch.
    assert dbi(lossy) - dbi(lossless) == pytest.approx(-3.4576, abs=1e-4)
    aside = made(base, offset_mm=(0.0, 0.0, 150.0))
    assert aside.position[:, 2] == pytest.approx(0.150)
    assert made({**base, "position_mm": [1.0, 2.0, 3.0]}, offset_mm=(0.0, 0.0, 150.0)).position.mean(0) == (
        pytest.approx([1e-3, 2e-3, 3e-3])
    )


HEADER = "x_mm,y_mm,z_mm,p_x_re,p_x_im,p_y_re,p_y_im,p_z_re,p_z_im"
MAGNETIC = ",m_x_re,m_x_im,m_y_re,m_y_im,m_z_re,m_z_im"


def test_elementary_sources_from_a_file(tmp_path):
    """A dipole has 1.5; with a magnetic moment eta times as large beside it, a Huygens source's 3 (both derivable)."""
    device = {"kind": "dipoles", "file": "d.csv"}
    (tmp_path / "d.csv").write_text(f"{HEADER}\n0,0,5,0,0,0,0,1e-3,0\n", "utf-8")
    assert power(made(device, folder=tmp_path), np.pi / 2)[0] == pytest.approx(1.5, rel=1e-12)
    (tmp_path / "d.csv").write_text(f"{HEADER}{MAGNETIC}\n0,0,5,1e-3,0,0,0,0,0,0,0,0.376730313668,0,0,0\n", "utf-8")
    cluster = made({**device, "efficiency_db": -2.0}, folder=tmp_path, offset_mm=(0.0, 0.0, 40.0))
    assert dbi(cluster) == pytest.approx(10 * np.log10(3.0) - 2.0, abs=1e-9)
    assert cluster.position[0] == pytest.approx([0.0, 0.0, 5e-3])  # places count from the axes' intersection


def test_elementary_sources_follow_the_frequency(tmp_path):
    rows = ["0,0,0,1,0,0,0,0,0,24e9", "3,0,0,1,0,0,0,0,0,24e9", "0,0,0,1,0,0,0,0,0,25e9", "3,0,0,0,1,0,0,0,0,25e9"]
    (tmp_path / "d.csv").write_text("\n".join([f"{HEADER},frequency_hz", *rows]), "utf-8")
    device = {"kind": "dipoles", "file": "d.csv"}
    cluster = made(device, frequency=np.array([24e9, 24.5e9, 25e9]), folder=tmp_path)
    assert cluster.weights[:, 1] / cluster.weights[0, 0] == pytest.approx([1.0, 0.5 + 0.5j, 1j])
    with pytest.raises(InputError, match="covers 24 to 25 GHz, asked for 26"):
        made(device, frequency=np.array([26e9]), folder=tmp_path)


@pytest.mark.parametrize(
    ("text", "fault"),
    [
        ("x,y\n1,2\n", "header must be x_mm,y_mm,z_mm,p_x_re"),
        (f"{HEADER}\n", "needs at least 1 row"),
        (f"{HEADER}\n0,0,0,0,0,0,0,0,0\n", "every moment is 0"),
        (f"{HEADER}\n0,0,0,1,0,0,0,0\n", "line 2: 8 cells, must be 9"),
        (f"{HEADER}\n0,0,0,1,0,0,0,0,a\n", "line 2: p_z_im = 'a': must be a finite number"),
        (f"{HEADER}\n0,0,0,1,0,nan,0,0,0\n", "line 2: p_y_re = 'nan': must be a finite number"),
        (f"{HEADER},frequency_hz\n0,0,0,1,0,0,0,0,0,1e9\n1,0,0,1,0,0,0,0,0,2e9\n", "2 GHz lists other places"),
    ],
)
def test_bad_source_files_are_refused(tmp_path, text, fault):
    (tmp_path / "d.csv").write_text(text, "utf-8")
    with pytest.raises(InputError, match=fault):
        made({"kind": "dipoles", "file": "d.csv"}, folder=tmp_path)
    with pytest.raises(InputError, match=r"none\.csv: cannot be read from"):
        made({"kind": "dipoles", "file": "none.csv"}, folder=tmp_path)


@pytest.mark.parametrize(
    ("table", "fault"),
    [
        ({"kind": "sphere"}, "device.kind = 'sphere'; must be one of panel, horn"),
        ({"rows": 3}, "device.kind: missing"),
        ({"kind": "panel", "rows": 0, "columns": 2}, "device.rows = 0: must be a whole number from 1 to 200"),
        ({"kind": "horn", "aperture_a_mm": 5}, "device.aperture_b_mm: missing"),
        ({"kind": "panel", "rows": 2, "columns": 2, "dead": [[2, 0]]}, "must be below rows = 2"),
        ({"kind": "aperture", "diameter_mm": 5}, "needs width_mm and height_mm"),
        ({"kind": "patch", "polarization": "elliptical"}, "needs axial_ratio_db"),
        ({"kind": "patch", "lenght_mm": 5}, "did you mean length_mm"),
    ],
)
def test_faults_name_the_field(table, fault):
    with pytest.raises(InputError, match=fault):
        made(table)


def test_the_demo_holds_its_own_panel(campaign_folder):
    """The demo's twin.toml describes the built-in panel, to the last bit."""
    campaign = Campaign.load(campaign_folder)
    frequency = campaign.goal.frequency_hz
    found, wanted = maker_of(campaign)(frequency), panel(frequency, centre_m=(0.0, 0.0, -0.030))
    for name in ("position", "electric", "magnetic", "weights", "efficiency"):
        assert np.array_equal(getattr(found, name), getattr(wanted, name)), name


@pytest.mark.parametrize(
    ("size", "gain", "expected"),
    [
        ((6.0, 1.0, 1.0), 2.1, 2.1),  # a dipole
        ((6.2, 6.2, 1.0), 7.0, 7.0),  # a patch
        ((24.9, 24.9, 4.0), 16.5, 16.5),
        ((49.7, 49.7, 4.0), 21.0, 21.0),
        ((49.7, 49.7, 4.0), 12.0, 12.0),
        ((2.0, 2.0, 1.0), 20.0, 4.77),  # nothing of that size has 20 dBi: what it can have
    ],
)
def test_without_a_table_the_device_is_what_device_toml_declares(size, gain, expected):
    declared = {"expected_front_to_back_db": 26.0, "expected_xpd_db": 30.0, "offset_mm": (0.0, 0.0, 20.0)}
    cluster = made(size_mm=size, expected_gain_dbi=gain, **declared)
    assert dbi(cluster) == pytest.approx(expected, abs=0.15)
    half = np.abs(cluster.position - [0.0, 0.0, 0.02]).max(axis=0)
    assert np.all(half <= 0.5e-3 * np.asarray(size) + 1e-9)
    e = cluster.far_field(AHEAD)[0, 0]
    assert 20 * np.log10(abs(e[0] / e[1])) == pytest.approx(30.0, abs=5.0)
    if gain > 5.0:
        assert dbi(cluster) - dbi(cluster, np.pi) == pytest.approx(26.0, abs=1.0)
    right = made(size_mm=size, expected_gain_dbi=gain, polarization="right", **declared)
    strong, weak = senses(right, [0, 0, 1])
    assert strong > 10.0 * weak
