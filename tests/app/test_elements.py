"""Excitations of a 4 x 4 array of short dipoles with known moments, one of them dead, read from its far field."""

from __future__ import annotations

import json

import numpy as np
import pytest
from click.testing import CliRunner

from colure.analysis.figures.face import face_at, tiles
from colure.app.cli import main
from colure.app.services.pattern_files import waves_of_file
from colure.geometry.conventions import SPEED_OF_LIGHT
from colure.geometry.directions import unit_vector
from colure.geometry.polarization import from_cartesian
from colure.model.device import Elements
from colure.model.files import save_dataset
from colure.model.pattern import build_pattern
from tests.conftest import cluster_of

F = 5.8e9
PITCH_M = 0.5 * SPEED_OF_LIGHT / F
DEAD, LATE, WEAK = 6, 9, 12


@pytest.fixture(scope="module")
def array(tmp_path_factory):
    """File of the far field and the moments; rows along y, columns along x."""
    side = (np.arange(4) - 1.5) * PITCH_M
    yy, xx = np.meshgrid(side, side, indexing="ij")
    moments = np.ones(16, complex)
    moments[DEAD], moments[LATE], moments[WEAK] = 0.0, np.exp(1j * np.pi / 3), 10 ** (-3 / 20)
    place = np.stack([xx.ravel(), yy.ravel(), 0 * xx.ravel()], -1)
    device = cluster_of([F], place, np.tile([1, 0, 0], (16, 1)), weights=moments[None])
    theta, phi = np.deg2rad(np.arange(0.0, 181.0, 6.0)), np.deg2rad(np.arange(0.0, 360.0, 6.0))
    t, p = np.meshgrid(theta, phi, indexing="ij")
    vectors = device.far_field(unit_vector(theta=t, phi=p).reshape(-1, 3)).reshape(-1, *t.shape, 3)
    pair = np.stack(from_cartesian(vectors, theta=t, phi=p), axis=1)
    path = tmp_path_factory.mktemp("array") / "array.nc"
    save_dataset(build_pattern(pair, frequency_hz=np.array([F]), theta=theta, phi=phi, quantity="relative"), path)
    return path, moments


def elements(path, *more):
    result = CliRunner().invoke(main, ["elements", str(path), *more])
    assert result.exit_code == 0, result.output
    return result.stdout


DECLARED = ("--rows", "4", "--columns", "4", "--pitch-mm", f"{1e3 * PITCH_M:.9g}")


def test_excitations_are_the_moments_and_the_dead_element_lies_in_the_floor(array, tmp_path):
    path, moments = array
    found = json.loads(elements(path, *DECLARED, "--json", "--plot", str(tmp_path / "a.png")))
    level = np.array(found["level_db"]).ravel()
    live = np.arange(16) != DEAD
    assert level[live] == pytest.approx(20 * np.log10(np.abs(moments[live])), abs=0.05)
    phase = np.array([np.nan if v is None else v for row in found["phase_deg"] for v in row])
    wanted = np.rad2deg(np.angle(moments * np.exp(-1j * np.angle(np.sum(moments * np.abs(moments))))))
    assert phase[live] == pytest.approx(wanted[live], abs=0.5)
    assert level[DEAD] <= max(-60.0, found["floor_db"]) and found["floor_db"] < -50.0
    assert {(one["row"], one["column"], one["verdict"]) for one in found["suspects"]} >= {(1, 2, "dead or weak")}
    assert (tmp_path / "a.png").read_bytes().startswith(b"\x89PNG")
    said = elements(path, *DECLARED)
    assert "cannot be told from nothing" in said
    # Below the floor nothing is known but the floor: no phase, and no level further down.
    dead = next(one for one in found["suspects"] if (one["row"], one["column"]) == (1, 2))
    assert dead["phase_error_deg"] is None and dead["relative_level_db"] == pytest.approx(found["floor_db"], abs=3.0)
    assert f"row 1, column 2: dead or weak (\u2264 {dead['relative_level_db']:+.1f} dB)" in said


def test_a_declared_pattern_that_is_not_the_elements_own_raises_the_floor(array):
    """A short dipole's pattern is not (1 + cos t)/2: the floor must say that the fit is worse."""
    own, panel = (json.loads(elements(array[0], *DECLARED, "--pattern", p, "--json")) for p in ("estimated", "panel"))
    assert panel["floor_db"] > own["floor_db"] + 20.0 and panel["residual_db"] > own["residual_db"] + 20.0


def test_a_tile_does_not_smear_a_dead_element(array):
    """The field on the face lies within 12 dB of its peak over the dead element; its tile lies in the floor."""
    waves = waves_of_file(array[0])
    grid = Elements(rows=4, columns=4, pitch_mm=1e3 * PITCH_M)
    face = face_at(waves.expansion, grid, index=0, slant=0.0, centre_m=np.zeros(3), size_m=np.full(2, 4 * PITCH_M))
    x, y = face.positions_m[DEAD, :2]
    there = np.ix_(np.abs(face.y_m - y) < 0.45 * PITCH_M, np.abs(face.x_m - x) < 0.45 * PITCH_M)
    smeared = np.abs(face.field[there]).max() / np.abs(face.field).max()
    tile = np.abs(tiles(face)[there]).max() / np.abs(tiles(face)).max()
    print(f"field {20 * np.log10(smeared):.1f} dB, tile {20 * np.log10(max(tile, 1e-10)):.1f} dB")
    assert 20 * np.log10(smeared) > -12.0 and 20 * np.log10(max(tile, 1e-10)) < -55.0
    assert tiles(face)[0, 0] == 0.0  # beside the elements there is nothing


def test_what_is_not_declared_is_asked_for(array, tmp_path):
    for more, words in (
        ((), "--rows, --columns"),
        (("--rows", "4"), "all three or none"),
        ((*DECLARED, "--frequency-ghz", "3"), "5.8"),
    ):
        result = CliRunner().invoke(main, ["elements", str(array[0]), *more])
        assert result.exit_code == 2 and words in result.output, result.output


def test_the_aperture_of_a_file_is_drawn_element_by_element_where_they_are_declared(array, tmp_path):
    path, _ = array

    def plot(*more):
        return CliRunner().invoke(main, ["plot", str(path), str(tmp_path / f"{len(more)}.png"), *more])

    drawn = plot("--kind", "aperture", *DECLARED)
    assert drawn.exit_code == 0 and "none can be told from nothing" in drawn.output, drawn.output
    assert "Pattern array" in plot("--kind", "aperture").output
    refused = plot(*DECLARED)
    assert refused.exit_code != 0 and "only for --kind aperture" in refused.output


@pytest.mark.parametrize(
    ("declared", "words"),
    [
        (
            ("--rows", "1", "--columns", "16", "--pitch-mm", "25.8"),
            "dB of the field unexplained, must be at most -6 dB",
        ),
        (("--rows", "4", "--columns", "4", "--pitch-mm", "2.58"), "cannot tell elements apart below 10.3 mm"),
    ],
)
def test_elements_that_are_not_there_are_refused(array, declared, words):
    """Sixteen in one row, and a pitch in the wrong unit: no element is called dead for it."""
    result = CliRunner().invoke(main, ["elements", str(array[0]), *declared])
    assert result.exit_code == 2 and words in result.output, result.output
