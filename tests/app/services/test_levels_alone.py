"""A receiver without phase is planned, promised, checked and rehearsed as one: what levels cannot give is refused before anything moves."""

from __future__ import annotations

import numpy as np
import pytest
from click.testing import CliRunner

from colure.analysis.pipeline.power_between import Continuous
from colure.analysis.pipeline.power_budget import _moved_deg
from colure.analysis.pipeline.power_levels import PowerSphere
from colure.app import services
from colure.app.cli import main
from colure.app.services.plan_words import plan_rows
from colure.app.services.rehearsal import rehearse
from colure.app.web.views.plan import consequences, rehearsal_of
from colure.errors import InputError
from colure.geometry.directions import unit_vector
from colure.planning.power_forecast import POWER_FORECASTS
from tests.coverage.scenarios import AZIMUTH_OVER_ELEVATION, Scenario, band, four_by_four, sized

#: A half-wave dipole, alone, that transmits 12 dBm EIRP by itself: no source, no reference.
BY_ITSELF = {"analyzer": {"profile": "scpi-power", "noise_figure_db": 30}, "reference": {"method": "none"}}


def folder_of(tmp_path, *, goal=None, **chamber):
    device = {**sized(62.5, 6.0, 6.0, 2.0), "eirp_dbm": 12.0}
    wanted = band(2.4, **{"wanted_level_db": -20, **(goal or {})})
    made = Scenario(device=device, goal=wanted, chamber={**BY_ITSELF, **chamber}, twin={"device": {"kind": "dipole"}})
    return made.write(tmp_path)


@pytest.mark.parametrize(
    ("goal", "chamber", "message"),
    [
        ({"want": {"xpd_db": 1.0}}, {}, "want.xpd_db: analyzer.profile = 'scpi-power' .* must be one of gain_dbi, .*front_to_back_db"),
        ({"style": "fly"}, {}, "style = 'fly': .* must be 'step'"),
        ({}, {"positioner": AZIMUTH_OVER_ELEVATION}, "azimuth-over-elevation: .* must be roll-over-azimuth"),
    ],
)  # fmt: skip
def test_what_levels_cannot_give_is_refused_before_the_scan(tmp_path, goal, chamber, message):
    folder = folder_of(tmp_path, goal=goal, **chamber)
    with pytest.raises(InputError, match=message):
        services.make_plan(folder)
    with pytest.raises(InputError, match=message):  # the page plans by the same rules
        consequences(folder, {})


@pytest.mark.parametrize(
    ("goal", "words"),
    [
        ({"scheme": "one-pass", "region_deg": 60}, "levels of one polarization without phase, no figures"),
        (
            {"scan": {"theta_deg": "-90:90:10", "phi_deg": [0]}, "scheme": None},
            "levels of single directions without phase",
        ),
    ],
)
def test_what_is_measured_without_figures_is_said_beforehand(tmp_path, goal, words):
    _, plan = services.make_plan(folder_of(tmp_path, goal=goal))
    assert any(words in line for line in plan.predicted["missing"])


def test_a_wish_chooses_a_plan_that_such_a_receiver_can_carry_out(tmp_path):
    campaign, plan = services.make_plan(folder_of(tmp_path, goal={"want": {"directivity_dbi": 0.2}}))
    assert campaign.goal.style == "step"
    assert set(plan.predicted["forecast"]) <= set(POWER_FORECASTS)


def test_a_rehearsal_reads_levels_and_their_intervals_hold(tmp_path):
    """Directivity of a half-wave dipole: 2.15 dBi (C. A. Balanis, Antenna Theory, section 4.6, from memory)."""
    folder = folder_of(tmp_path)
    campaign, plan = services.make_plan(folder)
    one = rehearse(campaign, plan, seed=3)
    by_name = {each.figure.name: each for each in one.findings}
    assert not {"beamwidth_e_deg", "xpd_db", "gain_dbi"} & set(by_name)  # no phase, no reference
    directivity = by_name["directivity_dbi"]
    assert directivity.truth == pytest.approx(2.15, abs=0.01) and directivity.inside
    # The promise is what chamber and grid declare; the samples add what lies between them.
    rows = {row.term: row.expanded for row in directivity.figure.budget}
    promised = plan.predicted["forecast"]["directivity_dbi"]["causes"]
    assert [promised[name] for name in ("range echoes", "finite distance")] == pytest.approx(
        [rows[name] for name in ("range echoes", "finite distance")]
    )
    assert rows["sampling and truncation"] > 0.0
    assert any("what lies between the samples adds" in text for _, text in plan_rows(campaign, plan))
    shown = rehearsal_of(folder, {}, 3)
    assert len(shown["error_db"]) == len(shown["theta"]) * len(shown["phi"]) and max(shown["error_db"]) < -20.0


def test_a_check_holds_dbm_against_the_plan_and_does_not_switch_off_what_it_cannot(tmp_path):
    said = CliRunner().invoke(main, ["acquire", str(folder_of(tmp_path)), "--check"])
    assert said.exit_code == 0, said.output
    assert "the device transmits by itself, and goes on" in said.output
    assert "dBm along the beam" in said.output and "switched off again" not in said.output


def test_levels_of_a_device_off_the_axes_are_those_from_its_place(tmp_path):
    """A panel 30 mm behind the axes' intersection at 0.6 m reads 0.42 dB less ahead than behind (1/R^2): that is taken out."""
    device, chamber = (
        four_by_four(offset_mm=[0.0, 0.0, -30.0]),
        {"analyzer": {"profile": "scpi-power"}, "range_length_m": 0.6},
    )
    campaign, plan = services.make_plan(Scenario(device=device, goal=band(24.0), chamber=chamber).write(tmp_path))
    by_name = {each.figure.name: each for each in rehearse(campaign, plan, seed=2).findings}
    directivity, back = by_name["directivity_dbi"], by_name["front_to_back_db"]
    assert abs(directivity.error) < 0.15 and directivity.inside and back.inside
    assert "device place" in directivity.figure.not_included
    # A level where a sample lies is that sample's: the harmonics alone had read the back 6 dB too low.
    assert abs(back.error) < 3.0
    rows = {row.term: row.expanded for row in by_name["beam_elevation_deg"].figure.budget}
    assert 0.0 < rows["noise"] < rows["range echoes"] < 90.0


@pytest.mark.parametrize("place", ["[0.0, 0.0, 150.0]", "[90.0, -100.0, 60.0]"])
def test_a_device_nearer_to_the_probe_is_not_louder_in_its_figures(tmp_path, place):
    """A dipole 150 mm before the axes' intersection at 0.8 m reads 20 log 800/650 = 1.80 dB too much ahead (1/R^2, derivable)."""
    folder = folder_of(tmp_path, range_length_m=0.8)
    text = (folder / "device.toml").read_text("utf-8")
    assert "offset_mm = [0.0, 0.0, 0.0]" in text
    (folder / "device.toml").write_text(text.replace("offset_mm = [0.0, 0.0, 0.0]", f"offset_mm = {place}"), "utf-8")
    campaign, plan = services.make_plan(folder)
    assert any(campaign.device.offset_mm)
    (directivity,) = (
        each for each in rehearse(campaign, plan, seed=2).findings if each.figure.name == "directivity_dbi"
    )
    assert abs(directivity.error) < 0.2 and directivity.inside
    assert directivity.figure.upper - directivity.figure.lower < 0.5  # it was 3.9 dB wide


def test_echoes_move_the_broad_beam_of_a_short_device_farther(tmp_path):
    """1/(D/lambda)^2 (the bend of a uniform line's peak, derivable): a row of one by four elements points worse across the row."""
    device = {**sized(24.9, 6.2, 4.0, 10.5), "elements": {"rows": 1, "columns": 4, "pitch_mm": 6.213}}
    chamber = {"analyzer": {"profile": "scpi-power"}}
    campaign, plan = services.make_plan(Scenario(device=device, goal=band(24.0), chamber=chamber).write(tmp_path))
    by_name = {each.figure.name: each.figure for each in rehearse(campaign, plan, seed=2).findings}
    along, across = (
        next(row.expanded for row in by_name[f"beam_{name}_deg"].budget if row.term == "range echoes")
        for name in ("azimuth", "elevation")
    )
    assert across > 3.0 * along > 0.0


def test_a_back_lobe_counts_as_its_sample_was_read():
    theta, phi = np.linspace(0.0, np.pi, 13), np.arange(24) * np.pi / 12.0
    gain = (
        np.exp(-40.0 * (1.0 - np.cos(theta)))[:, None] * (1.0 + 0.3 * np.cos(2.0 * phi) * np.sin(theta)[:, None] ** 2)
        + 0.01
    )
    t, p = np.meshgrid(theta, phi, indexing="ij")
    read = Continuous(gain).sampled_at(t.ravel(), p.ravel()).reshape(gain.shape)
    np.testing.assert_allclose(read, gain, atol=1e-6)


@pytest.mark.parametrize("ahead", [1.0, -1.0])
@pytest.mark.parametrize("slant_deg", [0.0, 45.0])
def test_a_flat_top_lets_errors_move_the_beam_farther(slant_deg, ahead):
    """A Gaussian beam of bends 40 and 2 per rad^2: a slope of 0.01 of ln power moves it 0.01 / bend (derivable)."""
    theta, phi = np.linspace(0.0, np.pi, 37), np.arange(72) * np.pi / 36.0
    d = unit_vector(theta=theta[:, None], phi=phi[None, :])
    turn = np.deg2rad(slant_deg)
    a, b = np.cos(turn) * d[..., 0] + np.sin(turn) * d[..., 1], np.cos(turn) * d[..., 1] - np.sin(turn) * d[..., 0]
    gain = np.where(ahead * d[..., 2] > 0.0, np.exp(-20.0 * a**2 - b**2), 1e-4)[None]
    sphere = PowerSphere(
        frequency_hz=np.array([1e9]), theta=theta, phi=phi, gain=gain, noise_db=0.0, drift_db=0.0, tied_db=0.0
    )
    moved = _moved_deg(sphere, gain[0], np.array([0.0, 0.0, ahead]), (0.01, 0.0))
    along = {"beam_azimuth_deg": (np.cos(turn), -np.sin(turn)), "beam_elevation_deg": (np.sin(turn), np.cos(turn))}
    for name, (x, y) in along.items():
        true = np.rad2deg(0.01 * np.hypot(x / 40.0, y / 2.0))
        assert moved[name][0] == pytest.approx(true, rel=0.25)
