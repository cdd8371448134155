"""What a run can do, a far-field file can: figures, pictures, nothing shown where nothing was measured."""

from __future__ import annotations

import json

import numpy as np
import pytest
from click.testing import CliRunner

import colure
from colure.app.cli import main
from colure.geometry.directions import unit_vector
from colure.geometry.polarization import from_cartesian
from colure.model.exchange import write_csv
from colure.model.files import save_dataset
from colure.model.pattern import build_pattern
from tests.conftest import cluster_of

F = np.array([2.4e9, 2.5e9])
#: Short dipole along x with a crossed magnetic one: Huygens source.
HUYGENS = ([1, 0, 0], [0, 1, 0])
SHORT = ([0, 0, 1], None)


def field(moments, top_deg=180.0, step_deg=10.0, quantity="relative"):
    theta = np.deg2rad(np.arange(0.0, top_deg + 1e-6, step_deg))
    phi = np.deg2rad(np.arange(0.0, 360.0, step_deg))
    t, p = np.meshgrid(theta, phi, indexing="ij")
    device = cluster_of(F, [0, 0, 0], *moments)
    vectors = device.far_field(unit_vector(theta=t, phi=p).reshape(-1, 3)).reshape(-1, *t.shape, 3)
    pair = np.stack(from_cartesian(vectors, theta=t, phi=p), axis=1)
    return build_pattern(pair, frequency_hz=F, theta=theta, phi=phi, quantity=quantity)


def figures(path):
    result = CliRunner().invoke(main, ["evaluate", str(path), "--json"])
    assert result.exit_code == 0, result.output
    return {row["name"]: row for row in json.loads(result.output) if row["frequency_hz"] == F[0]}


@pytest.mark.parametrize("ending", ["nc", "csv"])
def test_figures_of_a_file_are_those_of_the_handbook(tmp_path, ending):
    """Huygens source 4.7712 dBi, 131.06 deg, 7/8 upwards; short dipole 1.7609 dBi (sections 4 and 6 of the standards sheet)."""
    save = save_dataset if ending == "nc" else write_csv
    save(field(HUYGENS), tmp_path / f"huygens.{ending}")
    save(field(SHORT), tmp_path / f"dipole.{ending}")
    found = figures(tmp_path / f"huygens.{ending}")
    assert found["directivity_dbi"]["value"] == pytest.approx(4.7712, abs=1e-3)
    assert found["beamwidth_e_deg"]["value"] == pytest.approx(131.06, abs=0.02)
    assert found["directivity_dbi"]["lower"] is None and "gain_dbi" not in found  # relative, and no errors stated
    assert figures(tmp_path / f"dipole.{ending}")["directivity_dbi"]["value"] == pytest.approx(1.7609, abs=1e-3)


@pytest.mark.nightly
def test_errors_that_the_file_states_become_intervals(tmp_path):
    """Near field of a short array with -50 dB noise: the far field's figures hold the noiseless truth in 95 % of cases or more."""
    from colure.analysis.fields.near_to_far import far_field
    from colure.model.fields import grid_dataset

    theta, phi = np.deg2rad(np.arange(0.0, 181.0, 10.0)), np.deg2rad(np.arange(0.0, 360.0, 10.0))
    t, p = np.meshgrid(theta, phi, indexing="ij")
    place = np.array([[x, 0, 0] for x in (-0.06, 0.0, 0.06)])
    device = cluster_of(F, place, np.tile([1, 0, 0], (3, 1)), np.tile([0, 1, 0], (3, 1)))
    d = unit_vector(theta=t, phi=p).reshape(-1, 3)
    pair = np.stack(from_cartesian(device.field_at(0.5 * d).reshape(-1, *t.shape, 3), theta=t, phi=p), axis=1)
    random, held = np.random.default_rng(4), []
    names = ("directivity_dbi", "beamwidth_e_deg", "beam_azimuth_deg", "front_to_back_db")
    true = None
    for case in range(6):
        noise = (
            10 ** (-50 / 20)
            * np.abs(pair).max()
            * (random.normal(size=(2, *pair.shape)).T @ [1.0, 1j]).T
            / np.sqrt(2.0)
        )
        near = grid_dataset(
            F, np.rad2deg(theta), np.rad2deg(phi), pair + (noise if case else 0.0), radius_m=0.5, source="test"
        )
        path = tmp_path / f"far-{case}.nc"
        save_dataset(far_field(near, step_deg=5.0)[0], path)
        found = figures(path)
        if case == 0:
            true = {name: found[name]["value"] for name in names}
            continue
        held += [found[n]["lower"] - 1e-9 <= true[n] <= (found[n]["upper"] or np.inf) + 1e-9 for n in names]
    print(f"{np.mean(held):.2f} of {len(held)}")
    assert np.mean(held) >= 0.9


def test_a_half_sphere_shows_and_says_half(tmp_path):
    save_dataset(field(HUYGENS, top_deg=90.0), tmp_path / "half.nc")
    opened = colure.open_pattern(tmp_path / "half.nc")
    assert np.rad2deg(opened.waves.region) == pytest.approx(90.0) and "known to 90 deg" in repr(opened)
    assert not any(f.name == "directivity_dbi" for f in opened.evaluate())
    drawn = opened.plot("map")[0]
    assert drawn.get_ylim() == (90.0, 0.0)
    for line in opened.plot("cuts")[0].get_lines():
        x, y = line.get_data()
        assert np.all(np.isnan(y[np.abs(x) > 91.0])) or np.abs(x).max() <= 91.0


@pytest.mark.parametrize("ending", ["png", "svg", "pdf", "html"])
def test_pictures_in_every_format_and_nothing_overwritten(tmp_path, ending):
    save_dataset(field(HUYGENS), tmp_path / "far.nc")
    kind = {"png": "map", "svg": "cuts", "pdf": "solid", "html": "polar"}[ending]
    arguments = ["plot", str(tmp_path / "far.nc"), str(tmp_path / f"a.{ending}"), "--kind", kind]
    assert CliRunner().invoke(main, arguments).exit_code == 0
    start = (tmp_path / f"a.{ending}").read_bytes()[:60]
    assert {"png": b"\x89PNG", "svg": b"<?xml", "pdf": b"%PDF", "html": b"<!doctype html>"}[ending] in start
    assert CliRunner().invoke(main, arguments).exit_code == 2


@pytest.mark.parametrize("kind", ["front", "frequency", "aperture"])
def test_every_other_picture_is_drawn(tmp_path, kind):
    save_dataset(field(HUYGENS), tmp_path / "far.nc")
    assert colure.open_pattern(tmp_path / "far.nc").plot(kind)


def test_what_is_no_far_field_is_refused(tmp_path):
    for arguments in (["evaluate", "none.nc"], ["plot", "none.nc", "a.png"]):
        assert (
            CliRunner().invoke(main, [str(tmp_path / a) if a.endswith("nc") else a for a in arguments]).exit_code == 2
        )
    save_dataset(field(HUYGENS).isel(theta=[9]), tmp_path / "cut.nc")
    result = CliRunner().invoke(main, ["plot", str(tmp_path / "cut.nc"), str(tmp_path / "a.png")])
    assert result.exit_code == 2 and "36 directions on one circle (a cut)" in result.stderr


def test_what_hardly_can_be_meant_is_refused_with_the_command_that_says_it_is_right(tmp_path, monkeypatch):
    """Megahertz in the column of hertz: refused, kept as meant by `convert --accept`, then read."""
    monkeypatch.chdir(tmp_path)
    write_csv(field(HUYGENS).assign_coords(frequency=F / 1e6), tmp_path / "odd.csv")
    refused = CliRunner().invoke(main, ["evaluate", "odd.csv"])
    assert refused.exit_code == 2, refused.output
    way = "colure convert odd.csv checked.nc --far-field --accept frequency"
    assert way in refused.output and "2400 MHz is 2.4e+09" in refused.output
    assert CliRunner().invoke(main, way.split()[1:]).exit_code == 0
    read = CliRunner().invoke(main, ["evaluate", "checked.nc", "--json"])
    assert read.exit_code == 0, read.output
    found = {row["name"]: row["value"] for row in json.loads(read.output) if row["frequency_hz"] == 2400.0}
    assert found["directivity_dbi"] == pytest.approx(4.7712, abs=1e-3)


def test_a_pattern_file_of_megahertz_is_told_a_way_that_works(tmp_path, monkeypatch):
    """The way out that a refusal names must be one for a netCDF file too."""
    monkeypatch.chdir(tmp_path)
    save_dataset(field(HUYGENS).assign_coords(frequency=F / 1e6), tmp_path / "odd.nc")
    refused = CliRunner().invoke(main, ["plot", "odd.nc", "cuts.png"])
    way = "colure convert odd.nc checked.nc --far-field --accept frequency"
    assert refused.exit_code == 2 and way in refused.output
    assert CliRunner().invoke(main, way.split()[1:]).exit_code == 0
    assert CliRunner().invoke(main, ["plot", "checked.nc", "cuts.png"]).exit_code == 0


@pytest.mark.parametrize(
    ("tilt_deg", "slant_deg", "words", "xpd_db"),
    [(0, 0, "", 100.0), (90, 90, "co-polar along y", 100.0), (60, 90, "caution: the wave at the peak lies 60 deg", 4.7712),
     (25, 0, "caution: the wave at the peak lies 25 deg", 6.6269)],
)  # fmt: skip
def test_a_file_that_says_no_polarization_is_read_along_its_stronger_axis(tmp_path, tilt_deg, slant_deg, words, xpd_db):
    """A Huygens source has no cross-polar field (Ludwig's third definition; IEEE Std 145); turned, 20 log(cot) dB (derivable)."""
    c, s = np.cos(np.deg2rad(tilt_deg)), np.sin(np.deg2rad(tilt_deg))
    save_dataset(field(([c, s, 0.0], [-s, c, 0.0])), tmp_path / "far.nc")
    opened = colure.open_pattern(tmp_path / "far.nc")
    assert np.rad2deg(opened.waves.slant) == pytest.approx(slant_deg)
    assert opened.copolar.startswith(words) and bool(opened.copolar) == bool(words)
    found = opened.evaluate()["xpd_db"].value
    assert found > 100.0 if xpd_db == 100.0 else found == pytest.approx(xpd_db, abs=1e-3)
    said = CliRunner().invoke(main, ["evaluate", str(tmp_path / "far.nc")])
    assert (words in said.output) and said.exit_code == 0
    its_own = colure.open_pattern(tmp_path / "far.nc", slant_deg=tilt_deg)
    assert its_own.copolar == "" and its_own.evaluate()["xpd_db"].value > 100.0


def test_a_circular_wave_has_no_stronger_axis(tmp_path):
    save_dataset(field(([1, -1j, 0], [1j, 1, 0])), tmp_path / "far.nc")
    opened = colure.open_pattern(tmp_path / "far.nc")
    assert opened.waves.slant == 0.0 and opened.copolar == ""


def test_near_fields_as_csv_are_transformed_without_a_detour(tmp_path):
    """The far field equals that of the same file converted first; gigahertz in the column of hertz are told with the line."""
    near = field(HUYGENS).assign_attrs(kind="near")
    write_csv(near, tmp_path / "plain.csv")
    lines = (tmp_path / "plain.csv").read_text(encoding="utf-8").splitlines()
    rows = [f"{lines[0]},radius_m", *(f"{line},50" for line in lines[1:])]
    (tmp_path / "near.csv").write_text("\n".join(rows), encoding="utf-8")
    for command in (["process", "near.csv", "a.nc", "--to", "far-field", "--accept", "radius"],
                    ["convert", "near.csv", "near.nc", "--accept", "radius"], ["process", "near.nc", "b.nc"]):  # fmt: skip
        said = CliRunner().invoke(main, [str(tmp_path / one) if "." in one else one for one in command])
        assert said.exit_code == 0, said.output
    a, b = (colure.open_pattern(tmp_path / name).waves.expansion.coefficients for name in ("a.nc", "b.nc"))
    assert np.array_equal(a, b)
    wrong = "\n".join([rows[0], *(f"2.4,{row.split(',', 1)[1]}" for row in rows[1:650])])
    (tmp_path / "ghz.csv").write_text(wrong, encoding="utf-8")
    said = CliRunner().invoke(main, ["process", str(tmp_path / "ghz.csv"), str(tmp_path / "c.nc"), "--to", "far-field"])
    assert said.exit_code == 2 and "if that is right: --accept frequency" in said.output


def test_a_comparison_says_what_neither_file_has(tmp_path):
    save_dataset(field(SHORT), tmp_path / "one.nc")
    said = CliRunner().invoke(main, ["compare", str(tmp_path / "one.nc"), str(tmp_path / "one.nc")])
    assert said.exit_code == 0 and "Undefined in both: Beam azimuth" in said.output and "nan" not in said.output
    assert "one.nc and one.nc hold the same bytes; that they agree says nothing" in said.stderr


def test_columns_that_nobody_reads_are_named(tmp_path):
    """Our own CSV states the error of every direction; read back, it gives no intervals, and says where they are."""
    write_csv(field(HUYGENS), tmp_path / "far.csv")
    lines = (tmp_path / "far.csv").read_text(encoding="utf-8").splitlines()
    rows = [f"{lines[0]},error_bound,snr_db", *(f"{line},0.001,60" for line in lines[1:])]
    (tmp_path / "more.csv").write_text("\n".join(rows), encoding="utf-8")
    said = CliRunner().invoke(main, ["evaluate", str(tmp_path / "more.csv")])
    assert said.exit_code == 0 and "error_bound is not read back: intervals of figures need the .nc" in said.output
    assert "columns that are not read: snr_db" in said.output


@pytest.mark.parametrize(
    ("moments", "words"),
    [(([1, -1j, 0], [1j, 1, 0]), "right-hand"), (([1, -0.2j, 0], [0.2j, 1, 0]), "co-polar")],
    ids=["circular", "nearly linear"],
)
def test_polar_diagrams_of_a_circular_wave_show_both_hands(tmp_path, moments, words):
    """Two Huygens sources in quadrature: x - j y along +z is the right hand with exp(+jwt) (IEEE Std 145)."""
    save_dataset(field(moments), tmp_path / "far.nc")
    drawn = colure.open_pattern(tmp_path / "far.nc").plot("polar")
    (said,) = {text.get_text() for text in drawn.figure.texts}
    assert said.startswith(f"solid: {words}")
    if words == "right-hand":
        for ax in drawn:
            right, left = (line.get_ydata() for line in ax.lines[:2])
            ahead = int(np.argmin(np.abs(ax.lines[0].get_xdata())))
            assert right[ahead] == pytest.approx(0.0, abs=0.05) and left[ahead] < -35.0


@pytest.mark.parametrize(("sense", "name"), [(1, "right-hand"), (-1, "left-hand")])
def test_cuts_and_maps_of_a_circular_wave_are_of_its_hand(tmp_path, sense, name):
    """A turnstile is (1 + cos theta)/2 in its own hand and (1 - cos theta)/2 in the other (crossed dipoles in quadrature; C. A. Balanis,
    Antenna Theory, 4th ed., 2.12 and 4.2); half a magnetic one behind it makes that 1 : 1/3. Ludwig-3 components would say -3 dB ahead.
    """
    save_dataset(field(([1, -1j * sense, 0], [0.5j * sense, 0.5, 0])), tmp_path / "far.nc")
    opened = colure.open_pattern(tmp_path / "far.nc")
    (cut,) = opened.cuts((0.0,))[float(opened.frequency_hz[0])]
    ct, top = np.cos(np.deg2rad(cut.angle_deg)), cut.amplitude["total"].max()
    np.testing.assert_allclose(cut.amplitude["co"] / top, (1.0 + ct) / 2.0, atol=2e-3)
    np.testing.assert_allclose(cut.amplitude["cross"] / top, (1.0 - ct) / 6.0, atol=2e-3)
    drawn = opened.plot("cuts")[0]
    assert name in drawn.texts[0].get_text() and opened.hand == sense
    # Behind, the other hand is drawn up to -z itself, 9.5 dB down (1/3).
    own, other = (line.get_ydata() for line in drawn.lines[:2])
    assert other[0] - np.max(own) == pytest.approx(20.0 * np.log10(1.0 / 3.0), abs=0.03)
    said = {one.get_xlabel() for one in opened.plot("front").figure.axes}
    assert f"{name} / dB re peak" in said


@pytest.mark.parametrize(("limit_dbi", "outcome"), [(4.0, "fail"), (5.0, "pass")])
def test_a_mask_on_a_circular_wave_is_held_against_its_hand(tmp_path, limit_dbi, outcome):
    """Two Huygens sources in quadrature have 3 (4.77 dBi, section 4 of the standards sheet) in one hand; Ludwig-3 components of them 1.76 dBi."""
    electric, magnetic = np.array([1, -1j, 0]), np.array([1j, 1, 0])
    at_most = float(
        np.hypot(*(np.abs(field((electric, magnetic))[name]).values.max() for name in ("e_theta", "e_phi")))
    )
    scale = np.sqrt(3.0) / at_most
    save_dataset(field((scale * electric, scale * magnetic), quantity="realized_gain"), tmp_path / "far.nc")
    (tmp_path / "limits.toml").write_text(
        f'name = "limits"\ndecision = "simple"\n[[masks]]\nname = "top"\nplane = "E"\npoints = [[0, {limit_dbi}], [180, {limit_dbi}]]\n',
        encoding="utf-8",
    )
    said = CliRunner().invoke(main, ["verdict", str(tmp_path / "far.nc"), str(tmp_path / "limits.toml"), "--json"])
    assert json.loads(said.stdout)["outcome"] == outcome, said.output
