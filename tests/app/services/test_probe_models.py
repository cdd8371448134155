"""Probes from their dimensions, and probes of much gain: the file that is written is the probe that a campaign reads."""

from __future__ import annotations

import json

import numpy as np
import pytest
from click.testing import CliRunner

from colure.analysis.steps.far_field import load_probe, pattern_grid, probe_from
from colure.app.cli import main
from colure.geometry.conventions import power_db, wavenumber
from colure.model.pattern import build_pattern
from colure.waves.probe import first_order_response
from colure.waves.probe_models import pyramidal_horn


def call(*words):
    return CliRunner().invoke(main, ["probe-model", *map(str, words)])


def test_a_guide_has_the_gain_that_is_published_for_open_ends(tmp_path):
    """M. Kanda, R. D. Orr, IEEE Trans. Antennas Propag. 35(1):33-40, 1987: 21.6 f a (GHz, m) for guides of 2 to 1, within
    about 0.5 dB (from memory). Its first-order shape: Yaghjian 1984."""
    target = tmp_path / "probe.nc"
    found = call("waveguide", target, "--band", "8.5-12.1", "--a-mm", 22.86, "--b-mm", 10.16, "--json")
    assert found.exit_code == 0, found.output
    said = json.loads(found.stdout)
    assert said["directivity_dbi"] == pytest.approx(float(power_db(21.6 * 10.3 * 0.02286)), abs=0.7)
    assert said["beyond_first_order_db"] < -100.0
    probe = load_probe(target, np.array([9e9, 10.3e9]))
    front = np.sum(np.abs(probe.far_field(np.zeros(1), 1)) ** 2, axis=(1, 2, 3))
    assert power_db(4.0 * np.pi * front / probe.power())[1] == pytest.approx(said["directivity_dbi"], abs=0.01)


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (("waveguide", "--a-mm", 10.7), "--b-mm: missing; a waveguide needs a_mm, b_mm (mm)"),
        (("dipole", "--a-mm", 10.7), "--a-mm = 10.7: a dipole has no such dimension"),
        (("waveguide", "--a-mm", 4, "--b-mm", 2), "must be above 6.25 mm for TE10 to propagate"),
        (("horn", "--a-mm", 400, "--b-mm", 300, "--slant-e-mm", 900, "--slant-h-mm", 900), "must be at most 80"),
        (("waveguide", "--a-mm", -1, "--b-mm", 2), "--a-mm = -1: must be above 0"),
    ],
)
def test_what_is_no_probe_is_refused_by_name(tmp_path, words, said):
    found = call(words[0], tmp_path / "probe.nc", "--band", "24-24.1", *words[1:])
    assert found.exit_code == 2 and said in found.output.replace("\n", " "), found.output
    assert not (tmp_path / "probe.nc").exists()


def test_nothing_is_overwritten(tmp_path):
    (tmp_path / "probe.nc").write_text("mine")
    found = call("dipole", tmp_path / "probe.nc", "--band", "24")
    assert found.exit_code == 2 and (tmp_path / "probe.nc").read_text() == "mine"


@pytest.mark.parametrize(("wide_mm", "high_mm", "slant_mm"), [(45.0, 35.0, 90.0), (90.0, 70.0, 250.0)])
@pytest.mark.parametrize("noise_db", [None, -50.0])
def test_a_horn_of_much_gain_is_read_with_all_its_waves(wide_mm, high_mm, slant_mm, noise_db):
    """20 and 25 dBi at 24 GHz: cut at order 20 the second one was wrong by -22 dB on its axis."""
    frequency = np.array([24e9])
    size = {"a": wide_mm, "b": high_mm, "slant_e": slant_mm, "slant_h": slant_mm}
    true = pyramidal_horn(wavenumber(frequency), **{name: 1e-3 * value for name, value in size.items()})
    theta, phi, field = pattern_grid(true, 2.0)
    if noise_db is not None:
        random = np.random.default_rng(3)
        noise = random.normal(size=field.shape) + 1j * random.normal(size=field.shape)
        field = field + 10 ** (noise_db / 20) * np.abs(field).max() / np.sqrt(2.0) * noise
    read = probe_from(
        build_pattern(field, frequency_hz=frequency, theta=theta, phi=phi, quantity="relative"), "probe.nc", frequency
    )
    wanted, found = (first_order_response(one, 30, 1.5).grad for one in (true, read))
    assert np.max(np.abs(found - wanted)) < (1e-3 if noise_db is not None else 2e-4) * np.max(np.abs(wanted))


def test_a_grid_too_coarse_for_a_probe_is_refused():
    frequency = np.array([24e9])
    true = pyramidal_horn(wavenumber(frequency), a=0.13, b=0.1, slant_e=0.4, slant_h=0.4)
    theta, phi, field = pattern_grid(true, 5.0)
    with pytest.raises(ValueError, match=r"probe.nc: waves above order 27 carry -1\d dB of its power.*finer grid"):
        probe_from(
            build_pattern(field, frequency_hz=frequency, theta=theta, phi=phi, quantity="relative"),
            "probe.nc",
            frequency,
        )


def test_a_probe_that_looks_away_from_the_device_is_refused():
    """Theta counted from the back: a patch of 7.1 dBi read a directivity of 4.40 +- 0.03, and nothing was said."""
    frequency = np.array([24e9])
    true = pyramidal_horn(wavenumber(frequency), a=0.03, b=0.02, slant_e=0.05, slant_h=0.05)
    theta, phi, field = pattern_grid(true, 5.0)
    turned = np.stack([field[:, 0, ::-1], -field[:, 1, ::-1]], axis=1)
    with pytest.raises(
        ValueError, match=r"probe.nc: the field at theta = 0 lies \d+ dB below the strongest, at theta = 180 deg"
    ):
        probe_from(
            build_pattern(turned, frequency_hz=frequency, theta=theta, phi=phi, quantity="relative"),
            "probe.nc",
            frequency,
        )


@pytest.mark.parametrize("spoil", [
    lambda field: field[:, ::-1],
    lambda field: field * np.array([1.0, -1.0])[:, None, None],
    lambda field: np.roll(field[..., ::-1], 1, axis=-1),
], ids=["e_theta and e_phi exchanged", "e_phi with the other sign", "phi mirrored"])  # fmt: skip
def test_a_probe_whose_columns_contradict_each_other_ahead_is_refused(spoil):
    """A patch of 7.0 dBi read a directivity of 4.37 +- 0.01 with such a file, and nothing was said."""
    frequency = np.array([24e9])
    true = pyramidal_horn(wavenumber(frequency), a=0.03, b=0.02, slant_e=0.05, slant_h=0.05)
    theta, phi, field = pattern_grid(true, 5.0)
    file = build_pattern(spoil(field), frequency_hz=frequency, theta=theta, phi=phi, quantity="relative")
    with pytest.raises(
        ValueError, match=r"probe.nc: e_theta, e_phi at theta_deg = 0, .* they agree if e_theta and e_phi are exchanged"
    ):
        probe_from(file, "probe.nc", frequency)
