"""`colure process --amplitude-only` on a circular patch: found from its design, or nothing is written."""

from __future__ import annotations

import json
import shutil

import numpy as np
import pytest
from click.testing import CliRunner

from colure.app.cli import main
from colure.geometry.directions import unit_vector
from colure.geometry.polarization import from_cartesian
from colure.model.chamber import SimulatedChamber
from colure.model.device import Device
from colure.model.fields import grid_dataset
from colure.model.files import open_dataset, save_dataset
from colure.model.loading import validate
from colure.twin.devices import device_of

F = np.array([10.0e9, 10.2e9])
DEVICE = {"name": "patch", "size_mm": [14.0, 14.0, 2.0], "offset_mm": [0.0, 0.0, 0.0], "expected_gain_dbi": 7.0}
BOX = ["--size-mm", "12,14,0.5"]


def patch(**table):
    """A patch of 10 by 12 mm; 0.6 dB axial ratio as designed, 3 dB and another shape as built."""
    made = {"kind": "patch", "polarization": "right", "length_mm": 10.0, "width_mm": 12.0, "axial_ratio_db": 0.6}
    truth = validate(SimulatedChamber, {"device": {**made, **table}}, source="twin.toml")
    return device_of(truth, Device.model_validate(DEVICE), F, band_hz=F)


BUILT = {"length_mm": 9.0, "width_mm": 13.0, "axial_ratio_db": 3.0, "tilt_deg": 25.0}


def on_grid(cluster, radius_m, step_deg=6.0):
    """Exact near field of the sources at a radius, or their far field."""
    theta, phi = np.arange(0.0, 180.1, step_deg), np.arange(0.0, 360.0, step_deg)
    t, p = np.meshgrid(np.deg2rad(theta), np.deg2rad(phi), indexing="ij")
    directions = unit_vector(theta=t, phi=p).reshape(-1, 3)
    vectors = cluster.far_field(directions) if radius_m is None else cluster.field_at(radius_m * directions)
    field = np.stack(from_cartesian(vectors.reshape(-1, *t.shape, 3), theta=t, phi=p), axis=1)
    return theta, phi, field


def write(path, cluster, radius_m, *, phaseless=False):
    theta, phi, field = on_grid(cluster, radius_m)
    field = np.abs(field) + 0j if phaseless else field
    save_dataset(grid_dataset(F, theta, phi, field, radius_m=radius_m, source="test"), path)


@pytest.fixture(scope="module")
def files(tmp_path_factory):
    made = tmp_path_factory.mktemp("amplitudes")
    for name, radius in (("near-1.nc", 0.03), ("near-2.nc", 0.12)):
        write(made / name, patch(**BUILT), radius, phaseless=True)
    write(made / "design.nc", patch(), None)
    return made


@pytest.fixture
def folder(files, tmp_path, monkeypatch):
    monkeypatch.chdir(shutil.copytree(files, tmp_path / "here"))
    return tmp_path / "here"


def process(*words):
    return CliRunner().invoke(main, ["process", "--amplitude-only", *words])


def worst_db(found, true):
    scale = np.vdot(found, true) / np.vdot(found, found)
    error = np.sum(np.abs(scale * found - true) ** 2, axis=0)
    return 10 * np.log10(error.max() / np.sum(np.abs(true) ** 2, axis=0).max())


def test_a_circular_patch_is_found_from_its_design(folder):
    outcome = process("near-1.nc", "near-2.nc", "far.nc", "--start", "design.nc", *BOX, "--step-deg", "6", "--json")
    assert outcome.exit_code == 0, outcome.output
    assert json.loads(outcome.output)["pattern"] == "far.nc"
    found = open_dataset(folder / "far.nc")
    _, _, design = on_grid(patch(), None)
    _, _, true = on_grid(patch(**BUILT), None)
    for index in range(F.size):
        far = np.stack([found[name].values[index] for name in ("e_theta", "e_phi")])
        assert worst_db(design[index], true[index]) > -20.0  # the start is far away
        assert worst_db(far, true[index]) < -45.0
    # What it cannot give is not pretended: no error of the field, hence no intervals.
    assert "error_bound" not in found
    figures = json.loads(CliRunner().invoke(main, ["evaluate", "far.nc", "--json"]).output)
    axial = next(row for row in figures if row["name"] == "axial_ratio_db")
    assert axial["value"] == pytest.approx(3.0, abs=0.1) and axial["lower"] is None


def test_what_does_not_prove_itself_is_not_written(folder):
    """A box that does not hold the sources: no field in it agrees with the amplitudes."""
    outcome = process("near-1.nc", "near-2.nc", "far.nc", "--start", "design.nc", "--size-mm", "2,2,0.5")
    assert outcome.exit_code == 1 and "NOT converged" in outcome.output and "nothing written" in outcome.output
    assert not (folder / "far.nc").exists()


@pytest.mark.parametrize(
    ("words", "told"),
    [
        (["near-1.nc", "far.nc", "--start", "design.nc", *BOX], "near fields on two spheres and the result"),
        (["near-1.nc", "near-1.nc", "far.nc", "--start", "design.nc", *BOX], "at least 2 of different radius"),
        (["near-1.nc", "near-2.nc", "far.nc", *BOX], "needs --start"),
        (["near-1.nc", "near-2.nc", "far.nc", "--start", "design.nc", "--size-mm", "1,2"], "three numbers x,y,z"),
        (["near-1.nc", "near-2.nc", "far.nc", "--start", "design.nc", "--size-mm", "40,40,40"], "beyond the box's corner"),
        (["near-1.nc", "design.nc", "far.nc", "--start", "design.nc", *BOX], "must be a near field with radius_m"),
        (["near-1.nc", "near-2.nc", "far.nc", "--start", "design.nc", *BOX, "--order", "40"], "at most 4.5 deg for order 40"),
        (["near-1.nc", "near-2.nc", "design.nc", "--start", "design.nc", *BOX], "design.nc"),
    ],
)  # fmt: skip
def test_bad_input_is_named_and_writes_nothing(folder, words, told):
    before = (folder / "design.nc").read_bytes()
    outcome = process(*words)
    assert outcome.exit_code == 2 and told in outcome.output, outcome.output
    assert not (folder / "far.nc").exists() and (folder / "design.nc").read_bytes() == before
