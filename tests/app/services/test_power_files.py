"""Tables of power without phase: figures in closed form, and what they cannot give."""

from __future__ import annotations

import json

import numpy as np
import pytest
from click.testing import CliRunner

from colure.app.cli import main
from colure.app.services.power_files import open_power


def table(path, power, names, step=15.0, top=180.0, scale=1.0):
    """Write a power (theta, phi radians) as levels; two columns share it evenly."""
    lines = [",".join(["frequency_hz", "theta_deg", "phi_deg", *names])]
    for t in np.arange(0.0, top + 1e-6, step):
        for p in np.arange(0.0, 360.0, step):
            level = 10 * np.log10(max(scale * power(np.deg2rad(t), np.deg2rad(p)) / len(names), 1e-12))
            lines.append(",".join([f"2.4e9,{t:g},{p:g}", *[f"{level:.12g}"] * len(names)]))
    path.write_text("\n".join(lines) + "\n", "utf-8")
    return path


def huygens(t, p):
    """(1 + cos t)^2 / 4: directivity 3, 4.7712 dBi; seven eighths upwards about z (sections 4 and 6 of the standards sheet)."""
    return (1 + np.cos(t)) ** 2 / 4


def figures(path):
    result = CliRunner().invoke(main, ["evaluate", str(path), "--json"])
    assert result.exit_code == 0, result.output
    return {row["name"]: row for row in json.loads(result.stdout)}


@pytest.mark.parametrize("names", [("power_db",), ("power_theta_db", "power_phi_db")])
def test_relative_power_of_the_whole_sphere_gives_directivity(tmp_path, names):
    found = figures(table(tmp_path / "h.csv", huygens, names, scale=0.02))
    assert found["directivity_dbi"]["value"] == pytest.approx(4.7712, abs=5e-3)
    assert "gain_dbi" not in found and "efficiency_db" not in found
    assert found["directivity_dbi"]["lower"] is None and "no errors" in found["directivity_dbi"]["not_included"][0]


def test_gain_and_eirp_give_their_own_figures(tmp_path):
    gain = figures(table(tmp_path / "g.csv", huygens, ("gain_dbi",), scale=1.5))
    assert gain["gain_dbi"]["value"] == pytest.approx(10 * np.log10(1.5), abs=5e-3)
    assert gain["efficiency_db"]["value"] == pytest.approx(10 * np.log10(0.5), abs=5e-3)
    eirp = figures(table(tmp_path / "e.csv", huygens, ("eirp_dbm",), scale=300.0))
    assert eirp["eirp_dbm"]["value"] == pytest.approx(10 * np.log10(300.0), abs=5e-3)
    assert eirp["trp_dbm"]["value"] == pytest.approx(20.0, abs=5e-3) and "gain_dbi" not in eirp


def test_half_a_sphere_gives_no_directivity_and_is_drawn(tmp_path):
    path = table(tmp_path / "half.csv", huygens, ("power_db",), top=90.0)
    assert "directivity_dbi" not in figures(path)
    assert CliRunner().invoke(main, ["plot", str(path), str(tmp_path / "a.png"), "--kind", "map"]).exit_code == 0
    refused = CliRunner().invoke(main, ["plot", str(path), str(tmp_path / "b.png"), "--kind", "aperture"])
    assert refused.exit_code == 2 and "power without phase" in refused.output


def test_a_verdict_needs_errors_for_a_guard_band(tmp_path):
    path = table(tmp_path / "h.csv", huygens, ("power_db",))
    limits = tmp_path / "limits.toml"
    for decision, low, outcome in (
        ("simple", 4.6, "pass"),
        ("simple", 4.9, "fail"),
        ("guard-band", 4.6, "not decidable"),
    ):
        limits.write_text(
            f'name = "n"\ndecision = "{decision}"\n[[limits]]\nfigure = "directivity_dbi"\nat_least = {low}\n', "utf-8"
        )
        result = CliRunner().invoke(main, ["verdict", str(path), str(limits), "--json"])
        assert result.exit_code in (0, 1) and json.loads(result.stdout)["outcome"] == outcome, result.output


def test_what_is_no_grid_of_power_is_named(tmp_path):
    path = table(tmp_path / "h.csv", huygens, ("power_db",))
    text = path.read_text("utf-8")
    lines = text.splitlines()
    for spoilt, words in (
        (lines[:-1], "every direction of one grid once"),
        ([*lines, lines[-1]], "every direction of one grid once"),
        ([lines[0], *(line.replace("2.4e9", "2400") for line in lines[1:])], "must be at least 1e+06 Hz"),
        ([*lines[:5], lines[5].rsplit(",", 1)[0] + ",loud", *lines[6:]], "power_db = 'loud'"),
    ):
        path.write_text("\n".join(spoilt) + "\n", "utf-8")
        result = CliRunner().invoke(main, ["evaluate", str(path)])
        assert result.exit_code == 2 and words in result.output and "Traceback" not in result.output, result.output


def scattered(path, seed, step=15.0, top=180.0, off=0.0):
    """A Huygens source's gain with 0.3 dB of scatter and a common error of 0.4 dB (k = 2) stated beside every level."""
    random = np.random.default_rng(seed)
    common, lines = (
        off + 0.2 * random.normal(),
        ["frequency_hz,theta_deg,phi_deg,gain_dbi,common_uncertainty_db,scatter_db"],
    )
    for t in np.arange(0.0, top + 1e-6, step):
        for p in np.arange(0.0, 360.0, step):
            level = 10 * np.log10(3.0 * huygens(np.deg2rad(t), p) + 1e-3) + common + 0.3 * random.normal()
            lines.append(f"2.4e9,{t:g},{p:g},{level:.6g},0.4,0.3")
    path.write_text("\n".join(lines) + "\n", "utf-8")
    return path


def test_stated_errors_become_intervals_that_hold(tmp_path, request):
    """Huygens source, 4.7712 dBi, half of its power above any plane through its axis: counted over noisy tables."""
    count = 40 if request.config.getoption("--nightly") else 3
    true = {"gain_dbi": 4.7712, "directivity_dbi": 4.7712, "efficiency_db": 0.0, "upper_share_db": -3.0103}
    inside = []
    for seed in range(count):
        found = {f.name: f for f in open_power(scattered(tmp_path / "s.csv", seed)).evaluate()}
        inside += [found[name].lower <= value <= found[name].upper for name, value in true.items()]
        assert found["gain_dbi"].expanded_uncertainty < 0.7
    assert np.mean(inside) >= (0.92 if count > 10 else 0.8)


def test_masks_comparison_and_report_of_power(tmp_path):
    one, two = scattered(tmp_path / "one.csv", 1), scattered(tmp_path / "two.csv", 2)
    other = scattered(tmp_path / "other.csv", 3, off=4.0)
    spec = tmp_path / "limits.toml"
    mask = '[[masks]]\nname = "m"\nplane = "E"\nrelative = true\ncomponent = "{}"\npoints = [[0, {}], [180, {}]]\n'
    head = 'name = "limits"\ndecision = "guard-band"\n'

    def run(*arguments):
        return CliRunner().invoke(main, [str(one) for one in arguments])

    spec.write_text(head + mask.format("total", 3, 3), "utf-8")
    assert run("verdict", one, spec).exit_code == 0
    spec.write_text(head + mask.format("total", -3, -3), "utf-8")
    assert json.loads(run("verdict", one, spec, "--json").stdout)["outcome"] == "fail"
    spec.write_text(head + mask.format("co", 3, 3), "utf-8")
    refused = run("verdict", one, spec)
    assert refused.exit_code == 2 and "component = 'co'" in refused.output
    found = json.loads(run("compare", one, two, "--json").stdout)
    gain = {row["name"]: row for row in found["figures"]}["gain_dbi"]
    assert abs(gain["e_n"]) <= 1.0 and gain["expanded"] > 0.4
    apart = run("compare", one, other, "--json")
    assert apart.exit_code == 1 and not json.loads(apart.stdout)["agrees"]
    assert "needs phase" in run("compare", one, two, "--match", "level").output
    assert run("report", one).exit_code == 0
    text = (tmp_path / "one-report.html").read_text("utf-8")
    assert "Power without phase tells no polarization" in text and "level of the table" in text


def test_half_a_sphere_has_cuts_up_to_its_rim(tmp_path):
    """(1 + cos t)^2 / 4 is -6.0206 dB at 90 deg and -2.4988 dB at 60 deg (closed form)."""
    power = open_power(table(tmp_path / "half.csv", huygens, ("power_db",), step=10.0, top=90.0))
    (cut,) = power.cuts((0.0,))[2.4e9]
    level = 20 * np.log10(cut.amplitude["total"])
    at = {round(a): level[i] for i, a in enumerate(cut.angle_deg)}
    assert at[60] == pytest.approx(-2.4988, abs=0.02) and at[0] == pytest.approx(0.0, abs=0.01)
    assert np.isnan(at[100]) and not np.isfinite(cut.expanded["total"]).any()
