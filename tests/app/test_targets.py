"""Where results go: a folder that is not there is named before anything is worked out, never with a traceback."""

from __future__ import annotations

import numpy as np
import pytest
from click.testing import CliRunner

from colure.app.cli import main
from colure.geometry.conventions import SPEED_OF_LIGHT

BAND = np.linspace(23e9, 25e9, 5)
HEADER = "frequency_hz,theta_deg,phi_deg,e_theta_re,e_theta_im,e_phi_re,e_phi_im\n"


def told(*words, code):
    result = CliRunner().invoke(main, [str(word) for word in words])
    assert result.exit_code == code, result.output
    return result.output


def pattern(path, phi_deg):
    rows = [f"24e9,{t},{p},{np.cos(np.deg2rad(t / 2)):.6f},0,0,0" for t in range(0, 181, 20) for p in phi_deg]
    path.write_text(HEADER + "\n".join(rows) + "\n", encoding="utf-8")
    return path


@pytest.mark.parametrize(
    "words",
    [("elements", "far.csv", "--rows", 2, "--columns", 2, "--pitch-mm", 6, "--plot"), ("compare", "far.csv", "far.csv", "--plot"),
     ("probe-model", "dipole", "--band", "24")],
)  # fmt: skip
def test_a_folder_that_is_not_there_is_named(words, tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    pattern(tmp_path / "far.csv", range(0, 360, 20))
    target = "nowhere/x.nc" if words[0] == "probe-model" else "nowhere/x.png"
    last = (words[0], words[1], target, *words[2:]) if words[0] == "probe-model" else (*words, target)
    assert f"{target}: folder nowhere does not exist" in told(*last, code=2)


def test_a_file_where_a_folder_is_wanted_is_no_traceback(tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    (tmp_path / "taken").write_text("", encoding="utf-8")
    assert "taken" in told("new", "taken/campaign", code=2)


def test_gain_tables_of_three_antennas_go_into_a_new_folder(tmp_path, monkeypatch):
    """Gains of 20, 15 and 10 dBi that were put in by the transmission formula (H. T. Friis, Proc. IRE 34:254, 1946)."""
    monkeypatch.chdir(tmp_path)
    for name, sum_db in (("ab", 35.0), ("ac", 30.0), ("bc", 25.0)):
        through = 10.0 ** (sum_db / 20.0) * SPEED_OF_LIGHT / BAND / (4.0 * np.pi * 3.0)
        lines = [f"{f:.0f} 0 0 {s:.9g} 0 {s:.9g} 0 0 0" for f, s in zip(BAND, through, strict=True)]
        (tmp_path / f"{name}.s2p").write_text("# HZ S RI R 50\n" + "\n".join(lines) + "\n", encoding="utf-8")
    told(
        "three-antenna",
        "ab.s2p",
        "ac.s2p",
        "bc.s2p",
        "--range-m",
        3,
        "--uncertainty-db",
        0.2,
        "--folder",
        "new/tables",
        code=0,
    )
    for number, gain in ((1, 20.0), (2, 15.0), (3, 10.0)):
        table = np.genfromtxt(tmp_path / "new" / "tables" / f"antenna-{number}.csv", delimiter=",", skip_header=1)
        np.testing.assert_allclose(table[:, 1], gain, atol=1e-4)


def test_a_range_that_the_phase_contradicts_is_asked_about(tmp_path, monkeypatch):
    """Pairs 2.5 m apart whose S21 turns as over 2.6 m: 25 m and 0.025 m are asked about, 2.5 m is not (Friis, free space)."""
    monkeypatch.chdir(tmp_path)
    band = np.linspace(37e9, 39e9, 401)
    for name, sum_db in (("ab", 35.0), ("ac", 30.0), ("bc", 25.0)):
        through = 10.0 ** (sum_db / 20.0) * SPEED_OF_LIGHT / band / (4.0 * np.pi * 2.5)
        s = through * np.exp(-2j * np.pi * band * 2.6 / SPEED_OF_LIGHT)
        lines = [f"{f:.0f} 0 0 {x.real:.9g} {x.imag:.9g} 0 0 0 0" for f, x in zip(band, s, strict=True)]
        (tmp_path / f"{name}.s2p").write_text("# HZ S RI R 50\n" + "\n".join(lines) + "\n", encoding="utf-8")
    command = ["three-antenna", "ab.s2p", "ac.s2p", "bc.s2p", "--uncertainty-db", 0.2]
    for wrong in (25, 0.025):
        said = told(*command, "--range-m", wrong, "--folder", "wrong", code=2)
        assert "turns over frequency as over 2.6 m" in said and not (tmp_path / "wrong").exists()
    told(*command, "--range-m", 25, "--accept", "radius", "--folder", "meant", code=0)
    told(*command, "--range-m", 2.5, "--folder", "right", code=0)


def test_options_of_a_field_file_are_not_left_unread_with_a_run(tmp_path):
    said = told("process", tmp_path, "--noise-db", -40, "--probe", "probe.nc", code=2)
    assert "--noise-db = -40" in said and "--probe = probe.nc" in said and "goes with a field file" in said


def test_one_cut_is_named_as_one(tmp_path):
    said = told("evaluate", pattern(tmp_path / "cut.csv", [0]), code=2)
    assert "phi_deg: 0 deg alone, 10 directions on one circle (a cut)" in said and "full turns" in said


def test_a_separator_that_is_not_read_is_told(tmp_path):
    path = pattern(tmp_path / "bars.csv", range(0, 360, 20))
    path.write_text(path.read_text("utf-8").replace(",", "|"), encoding="utf-8")
    assert "columns must be separated by comma, semicolon or tab" in told("evaluate", path, code=2)
