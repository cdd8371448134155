"""What is said of a run goes along: pictures, exports, the list of runs; and a verdict on a run of cuts."""

from __future__ import annotations

import csv
import json

import pytest
from click.testing import CliRunner

from colure.app.cli import main
from colure.app.storage.folders import run_folder
from colure.app.storage.run_identity import identity_of, keep_identity, list_runs
from colure.errors import InputError
from colure.model.identity import RunIdentity
from tests.app.test_cuts import measured_cuts, run_colure  # noqa: F401

PNG = b"\x89PNG\r\n\x1a\n" + b"0" * 64


def test_photographs_are_copied_named_and_found(tmp_path):
    run, picture = run_folder(tmp_path, "one"), tmp_path / "front.png"
    picture.write_bytes(PNG)
    keep_identity(run, RunIdentity(serial="7"), [picture])
    keep_identity(run, RunIdentity(tag="again"))
    assert identity_of(run).said == {"serial": "7", "tag": "again", "photographs": "front.png"}
    assert (run.path / "photographs" / "front.png").read_bytes() == PNG
    run.journal.write_bytes(b"")
    assert [one.name for one in list_runs(tmp_path) if one.matches("front 7")] == ["one"]
    picture.write_bytes(PNG + b"1")
    with pytest.raises(InputError, match="another picture front.png is kept"):
        keep_identity(run, RunIdentity(), [picture])
    with pytest.raises(InputError, match="must end in one of"):
        keep_identity(run, RunIdentity(), [tmp_path / "notes.txt"])


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
