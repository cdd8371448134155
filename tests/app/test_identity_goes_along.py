"""What is said of a run goes along: pictures, exports, the list of runs; and a verdict on a run of cuts."""

from __future__ import annotations

import base64
import csv
import io
import json
import re

import numpy as np
import pytest
from click.testing import CliRunner
from PIL import Image

from colure.app.cli import main
from colure.app.storage.folders import run_folder
from colure.app.storage.pictures import LARGEST_BYTES
from colure.app.storage.run_identity import identity_of, keep_identity, list_runs
from colure.errors import InputError
from colure.model.identity import RunIdentity
from tests.app.test_cuts import measured_cuts, run_colure  # noqa: F401


def picture_of(kind="PNG", size=(40, 30), **more):
    out = io.BytesIO()
    shade = np.linspace(0, 255, size[0] * size[1] * 3).reshape(size[1], size[0], 3).astype(np.uint8)
    Image.fromarray(shade).save(out, kind, **more)
    return out.getvalue()


PNG = picture_of()


def test_photographs_are_copied_named_and_found(tmp_path):
    run, picture = run_folder(tmp_path, "one"), tmp_path / "front.png"
    picture.write_bytes(PNG)
    keep_identity(run, RunIdentity(serial="7"), [picture])
    keep_identity(run, RunIdentity(tag="again"))
    assert identity_of(run).said == {"serial": "7", "tag": "again", "photographs": "front.png"}
    assert (run.path / "photographs" / "front.png").read_bytes() == PNG
    run.journal.write_bytes(b"")
    assert [one.name for one in list_runs(tmp_path) if one.matches("front 7")] == ["one"]
    picture.write_bytes(picture_of(size=(41, 30)))
    with pytest.raises(InputError, match="another picture front.png is kept"):
        keep_identity(run, RunIdentity(), [picture])
    with pytest.raises(InputError, match="must end in one of"):
        keep_identity(run, RunIdentity(), [tmp_path / "notes.txt"])
    (tmp_path / "half.png").write_bytes(PNG[:-30])
    (tmp_path / "text.jpg").write_text("no picture")
    for name in ("half.png", "text.jpg"):
        with pytest.raises(InputError, match=rf"{name}: is no whole picture \((?!.*0x)"):
            keep_identity(run, RunIdentity(), [tmp_path / name])
        assert not (run.path / "photographs" / name).exists()


def test_a_report_shows_photographs_small_upright_and_without_the_cameras_notes(measured_cuts, tmp_path):  # noqa: F811
    """Orientation 6 of Exif 2.3 (table of tag 274) says that the picture's right side is up: width and height change places."""
    notes = Image.Exif()
    notes[274], notes[271] = 6, "A camera's maker"
    camera = tmp_path / "front.jpg"
    camera.write_bytes(picture_of("JPEG", (3000, 2000), exif=notes))
    assert b"A camera's maker" in camera.read_bytes()
    run = run_folder(measured_cuts, "one")
    keep_identity(run, RunIdentity(), [camera])
    assert run_colure("report", measured_cuts, "--run", "one").exit_code == 0
    page = (run.path / "report.html").read_text()
    shown = base64.b64decode(re.search(r"alt='front.jpg' src='data:image/jpeg;base64,([^']*)'", page)[1])
    assert len(shown) <= LARGEST_BYTES
    assert b"A camera's maker" not in shown
    found = Image.open(io.BytesIO(shown))
    assert (found.size, dict(found.getexif())) == ((933, 1400), {})
    (run.path / "photographs" / "front.jpg").write_bytes(camera.read_bytes()[:900])
    broken = run_colure("report", measured_cuts, "--run", "one")
    assert broken.exit_code == 2
    assert "photograph = front.jpg: is no whole picture" in broken.output


def test_identity_stands_in_the_exports_of_cuts(measured_cuts, tmp_path):  # noqa: F811
    keep_identity(run_folder(measured_cuts, "one"), RunIdentity(tag="lot 3", serial="=7"))
    for kind, name in (("figures", "f.csv"), ("csv", "c.csv")):
        found = run_colure("export", measured_cuts, kind, tmp_path / name, "--run", "one")
        assert found.exit_code == 0, found.output
    row = next(csv.DictReader((tmp_path / "f.csv").read_text().splitlines()))
    assert (row["run"], row["tag"], row["serial"]) == ("one", "lot 3", "'=7")
    assert json.loads((tmp_path / "c-identity.json").read_text())["tag"] == "lot 3"


def test_a_run_of_cuts_is_held_against_limits_on_its_figures(measured_cuts, tmp_path):  # noqa: F811
    """The horn of the starting files has about 17.7 dBi (its own declaration); masks need a sphere and say so."""
    limits = tmp_path / "limits.toml"
    outcomes = []
    for least in (10, 25):
        limits.write_text(f'name = "L"\n[[limits]]\nfigure = "phi_0_peak_dbi"\nat_least = {least}\n')
        found = CliRunner().invoke(main, ["verdict", str(measured_cuts), str(limits), "--run", "one", "--json"])
        outcomes.append((found.exit_code, json.loads(found.output)["outcome"]))
    assert outcomes == [(0, "pass"), (1, "fail")]
    limits.write_text('name = "L"\n[[limits]]\nfigure = "gain_dbi"\nat_least = 10\n')
    found = CliRunner().invoke(main, ["verdict", str(measured_cuts), str(limits), "--run", "one"])
    assert found.exit_code == 2
    assert "phi_0_" in found.output
