"""Verdicts, comparisons, series and exports by command, on a small run measured over real sockets."""

from __future__ import annotations

import csv
import json

import numpy as np
import pytest
import skrf
from click.testing import CliRunner
from scipy.io import loadmat

from colure.app import services
from colure.app.cli import main
from colure.app.services.pattern_object import open_pattern
from colure.app.services.rehearsal import record_of_rehearsal
from colure.app.storage.folders import run_folder
from colure.errors import InputError
from colure.model.chamber import SimulatedChamber
from colure.model.exports import TextCut, nsma_text, read_nsma, safe_text
from colure.model.files import open_dataset, save_dataset

SPEC = """
name = "first article"
[[limits]]
figure = "gain_dbi"
at_least = 5
[[masks]]
name = "wide"
plane = "E"
relative = true
points = [[0, 1], [180, 1]]
"""

#: Records of the runs by name, as they were written for the first test.
KEPT: dict[str, bytes] = {}


@pytest.fixture
def measured(broader_campaign):
    """Two runs of the small device: `first` and `second`, the second in a slightly misaligned chamber; rehearsed for the first test only."""
    device = broader_campaign / "device.toml"
    device.write_text(device.read_text("utf-8").split("[elements]")[0], "utf-8")
    goal = broader_campaign / "goal.toml"
    goal.write_text(goal.read_text("utf-8").replace("step_deg = 15\n", ""), "utf-8")
    campaign, plan = services.make_plan(broader_campaign)
    for name, truth in (("first", SimulatedChamber(seed=1)), ("second", SimulatedChamber(seed=1, device_tilt_deg=0.5))):
        run = run_folder(broader_campaign, name)
        run.path.mkdir(parents=True)
        if name not in KEPT:
            save_dataset(record_of_rehearsal(campaign, plan, truth=truth), run.record)
            KEPT[name] = run.record.read_bytes()
        run.record.write_bytes(KEPT[name])
    return broader_campaign


def run(*arguments: object):
    return CliRunner().invoke(main, [str(a) for a in arguments])


def test_a_verdict_says_pass_or_fail_and_the_exit_code_too(measured, tmp_path):
    spec = tmp_path / "limits.toml"
    spec.write_text(SPEC, encoding="utf-8")
    good = run("verdict", measured, spec)
    assert good.exit_code == 0 and "all together: pass" in good.output and "guard band" in good.output
    spec.write_text(SPEC.replace("at_least = 5", "at_least = 30"), encoding="utf-8")
    bad = run("verdict", measured, spec, "--json")
    assert bad.exit_code == 1 and json.loads(bad.output)["outcome"] == "fail"
    saved = json.loads((measured / "runs" / "first" / "verdicts.json").read_text("utf-8"))
    assert saved["outcome"] == "fail" and saved["decision"] == "guard-band"
    spec.write_text(SPEC.replace("gain_dbi", "gain_dbd"), encoding="utf-8")
    unknown = run("verdict", measured, spec)
    assert unknown.exit_code == 2 and "gain_dbd" in unknown.stderr and "gain_dbi" in unknown.stderr


def test_two_runs_are_compared_pose_first(measured):
    found = json.loads(run("compare", measured, "second", "--json", "--match", "frame,origin,level").output)
    # The simulated mount tilted the second device by 0.5 deg about x.
    assert found["rotation_deg"][0] == pytest.approx(-0.5, abs=0.05) and max(found["difference_db"]) < -40.0
    beam = {row["name"]: row for row in found["figures"]}["beam_elevation_deg"]
    assert abs(beam["e_n"]) > 1.0 and not found["agrees"]
    shown = run("compare", measured, "second", "--match", "frame")
    assert shown.exit_code == 1 and "matched: turn" in shown.output and "E_n" in shown.output
    drawn = measured / "difference.svg"
    assert run("compare", measured, "second", "--plot", drawn).exit_code == 1
    assert "<svg" in drawn.read_text("utf-8")
    again = run("compare", measured, "second", "--plot", drawn)
    assert again.exit_code == 2 and "exists already" in again.stderr
    assert "must end in" in run("compare", measured, "second", "--plot", measured / "x.bmp").stderr


def test_a_run_agrees_with_its_own_export(measured, tmp_path):
    for name in ("far.csv", "far.nc"):
        kind = "csv" if name.endswith("csv") else "netcdf"
        assert run("export", measured, kind, tmp_path / name).exit_code == 0
        found = run("compare", measured, tmp_path / name, "--json")
        assert found.exit_code == 0, found.output[-300:]
        assert max(json.loads(found.output)["difference_db"]) < -100.0
    refused = run("compare", measured, tmp_path / "no.nc")
    assert refused.exit_code == 2 and "no.nc" in refused.stderr


def test_series_against_a_golden_unit(measured):
    for name in ("first", "second"):
        assert run("evaluate", measured, "--run", name).exit_code == 0
    rows = {row["name"]: row for row in json.loads(run("series", measured, "first", "second", "--json").output)}
    beam = rows["beam_elevation_deg"]
    assert beam["e_n"][0] == 0.0 and abs(beam["e_n"][1]) > 1.0
    assert beam["spread"] == pytest.approx(abs(beam["values"][1] - beam["values"][0]) / 2**0.5)
    drawn = measured / "series.pdf"
    assert "golden unit first" in run("series", measured, "first", "second", "--plot", drawn).output
    assert drawn.read_bytes().startswith(b"%PDF")
    missing = run("series", measured, "first", "third")
    assert missing.exit_code == 2 and "third" in missing.stderr
    kept = json.loads((measured / "runs" / "first" / "correlations.json").read_text("utf-8"))
    matrix = np.array(kept["correlation"])
    assert matrix.shape[1:] == (len(kept["names"]),) * 2 and np.allclose(matrix, np.swapaxes(matrix, 1, 2))
    gain, eff = kept["names"].index("gain_dbi"), kept["names"].index("efficiency_db")
    assert matrix[0, gain, eff] > 0.9  # one reference moves both


def test_exports_come_back_as_they_were(measured, tmp_path):

    pattern = open_dataset(_processed(measured))
    assert run("export", measured, "matlab", tmp_path / "p.mat").exit_code == 0
    mat = loadmat(tmp_path / "p.mat")
    assert np.array_equal(mat["e_theta"], pattern["e_theta"].values) and mat["theta_deg"].ravel()[-1] == 180.0
    assert run("export", measured, "touchstone", tmp_path / "b.s2p").exit_code == 0
    network = skrf.Network(str(tmp_path / "b.s2p"))
    boresight = pattern["e_theta"].sel(theta=0.0, phi=0.0).values
    assert network.s[:, 1, 0] == pytest.approx(boresight, rel=1e-6) and np.all(network.s[:, 0, 0] == 0)
    assert run("export", measured, "nsma", tmp_path / "c.txt").exit_code == 0
    fields, cuts = read_nsma((tmp_path / "c.txt").read_text("ascii"))
    assert fields["NUMCUT"] == "4" and [(c.plane, c.polarization) for c in cuts] == [
        ("AZ", "H/H"), ("AZ", "H/V"), ("EL", "H/H"), ("EL", "H/V")]  # fmt: skip
    assert max(float(c.level_db.max()) for c in cuts) == pytest.approx(0.0, abs=0.1)
    assert run("export", measured, "figures", tmp_path / "f.csv").exit_code == 0
    rows = list(csv.DictReader((tmp_path / "f.csv").read_text("utf-8").splitlines()))
    assert {row["name"] for row in rows} >= {"gain_dbi", "xpd_db"} and float(rows[0]["value"]) > 0
    again = run("export", measured, "figures", tmp_path / "f.csv")
    assert again.exit_code == 2 and "exists already" in again.stderr
    assert run("export", measured, "matlab", tmp_path / "p.csv").exit_code == 2


def test_every_export_says_which_bands_were_measured(measured, tmp_path):
    """Six frequencies in two bands: what a reader might draw through the gap between them, each file warns of."""
    said = "37 to 37.5, 39 to 40 GHz; nothing measured in between"
    ghz = np.array([37.0, 37.25, 37.5, 39.0, 39.5, 40.0])
    far, two = tmp_path / "far.nc", tmp_path / "two.nc"
    assert run("export", measured, "netcdf", far).exit_code == 0
    one = open_dataset(far).load()
    assert "bands" not in one.attrs
    thinned = one.isel(frequency=[0] * 6, theta=slice(None, None, 6), phi=slice(None, None, 6))
    save_dataset(thinned.assign_coords(frequency=1e9 * ghz), two)
    made = {kind: tmp_path / f"out{ending}" for kind, ending in {"netcdf": ".nc", "matlab": ".mat", "touchstone": ".s2p", "nsma": ".txt", "csv": ".csv"}.items()}  # fmt: skip
    words = {kind: run("export", two, kind, target) for kind, target in made.items()}
    assert {one.exit_code for one in words.values()} == {0}
    assert open_dataset(made["netcdf"]).attrs["bands"] == said
    assert loadmat(made["matlab"])["bands"][0] == said
    assert said in made["touchstone"].read_text().splitlines()[0]
    assert np.array_equal(skrf.Network(str(made["touchstone"])).f, 1e9 * ghz)
    fields, _ = read_nsma(made["nsma"].read_text("ascii"))
    assert fields["DESCR3"] == f"bands {said}".replace(",", " ")[:60]
    assert fields["DESCR2"] == "cuts and widths at 39000.000 MHz" and "at 39 GHz" in words["nsma"].output
    assert said in " ".join(words["csv"].output.split())


def test_co_polar_of_a_circular_wave_is_its_hand(measured, tmp_path):
    """A linear panel, and the same turned by 90 deg and late by 90 deg: right-handed (IEEE Std 145), on axis E_x + j E_y."""
    far, both = tmp_path / "far.nc", tmp_path / "right.nc"
    assert run("export", measured, "netcdf", far).exit_code == 0
    one = open_dataset(far).load()
    phi = one["phi"].values
    quarter = int(np.argmin(np.abs(phi - 90.0)))
    assert phi[quarter] == 90.0 and phi[-1] < 360.0
    turned = {
        name: (one[name] - 1j * one[name].roll(phi=quarter, roll_coords=False)) / np.sqrt(2)
        for name in ("e_theta", "e_phi")
    }
    save_dataset(one.assign(turned), both)
    said = run("export", both, "touchstone", tmp_path / "b.s2p")
    assert said.exit_code == 0 and "right-hand field at boresight" in said.output
    on_axis = one.sel(theta=0.0, phi=0.0)
    true = on_axis["e_theta"].values + 1j * on_axis["e_phi"].values
    assert skrf.Network(str(tmp_path / "b.s2p")).s[:, 1, 0] == pytest.approx(true, rel=1e-3)
    assert run("export", both, "nsma", tmp_path / "c.txt").exit_code == 0
    _, cuts = read_nsma((tmp_path / "c.txt").read_text("ascii"))
    assert [(c.plane, c.polarization) for c in cuts[:2]] == [("AZ", "RCP/RCP"), ("AZ", "RCP/LCP")]
    co, cross = (c.level_db[c.angle_deg == 0.0][0] for c in cuts[:2])
    assert co == pytest.approx(0.0, abs=0.2) and cross < -25.0


def _processed(folder):
    assert run("process", folder).exit_code == 0
    return folder / "runs" / "first" / "pattern.nc"


def test_text_is_safe_and_round_trips():
    import datetime

    for bad in ("=1+1", "+cmd", "-2", "@x", "\tq"):
        assert safe_text(bad) == "'" + bad
    assert safe_text("First null") == "First null"
    cut = TextCut("AZ", "H/H", np.array([-1.0, 0.0, 1.0]), np.array([-0.5, 0.0, -0.5]))
    text = nsma_text(name="a,b:c", note="x", date=datetime.date(2026, 1, 2), frequency_hz=np.array([1e9, 2e9, 3e9]),
                     gain_dbi=np.array([1.0, 2.0, 3.0]), beamwidths_deg=(4.0, 5.0), cuts=[cut])  # fmt: skip
    fields, (back,) = read_nsma(text)
    assert fields["MODNUM"] == "a b c" and fields["DTDATA"] == "20260102" and fields["MDGAIN"] == "2.00"
    assert np.array_equal(back.level_db, cut.level_db)
    with pytest.raises(InputError, match="ENDFIL"):
        read_nsma(text.replace("ENDFIL", "ENDFOO"))


@pytest.mark.nightly
def test_a_files_own_errors_count_against_a_run(measured, tmp_path):
    """A file that states the errors of its field: every change holds them, as `evaluate` states them of the file alone."""
    far, stated = tmp_path / "far.nc", tmp_path / "stated.nc"
    assert run("export", measured, "netcdf", far).exit_code == 0
    waves = open_pattern(far).waves.expansion.coefficients
    random = np.random.default_rng(3)
    size = 0.03 * np.sqrt(np.mean(np.abs(waves) ** 2))
    drawn = size * random.normal(size=(12, 2, *waves.shape)) / np.sqrt(2.0)
    errors = np.moveaxis(drawn[:, 0] + 1j * drawn[:, 1], 0, 1)
    save_dataset(open_dataset(far).assign(error_waves=(("frequency", "draw", "kind", "mode"), errors)).load(), stated)
    of_file = {f.name: f.expanded_uncertainty for f in open_pattern(stated).evaluate().at()}
    plain, known = (json.loads(run("compare", measured, name, "--json").output)["figures"] for name in (far, stated))
    row = {one["name"]: one for one in known}["gain_dbi"]
    assert row["other_expanded"] == pytest.approx(of_file["gain_dbi"], rel=1e-6) and row["other_expanded"] > 0.01
    assert {one["name"]: one for one in plain}["gain_dbi"]["other_expanded"] == 0.0
    drawing = tmp_path / "both.svg"
    assert run("compare", measured, stated, "--plot", drawing).exit_code == 0 and drawing.is_file()
