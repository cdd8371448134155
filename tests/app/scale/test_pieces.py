"""One large record in pieces: the same numbers as in one process, whatever the cut, the file and the interruption."""

from __future__ import annotations

import json
import subprocess
import sys

import numpy as np
import pytest
from click.testing import CliRunner

from colure.app import services
from colure.app.cli import main
from colure.app.scale import pieces as scale_out
from colure.app.scale.pieces import process_large
from colure.app.services.rehearsal import record_of_rehearsal
from colure.app.storage.folders import run_folder
from colure.errors import InputError
from colure.model.campaign import Campaign
from colure.model.files import save_dataset
from colure.model.lazy import lay_out, open_lazily, read_array, read_rows, rows_of_state, write_part
from colure.model.plan import ROLES, Role
from colure.model.record import of_state
from tests.endtoend.test_near_to_far import edited

STATES = ("left", "right")


@pytest.fixture(scope="module")
def made(tmp_path_factory):
    """A small campaign with two states and seven frequencies, in a chamber that drifts and is misaligned."""
    folder = tmp_path_factory.mktemp("large") / "campaign"
    services.new_campaign(folder)
    edited(
        folder,
        "device.toml",
        ("[49.7, 49.7, 4.0]", "[18.6, 18.6, 4.0]"),
        ("rows = 8", "rows = 3"),
        ("columns = 8", "columns = 3"),
    )
    edited(folder, "goal.toml", ("points = 11", "points = 7"), ("wanted_level_db = -50", "wanted_level_db = -20"))
    record = record_of_rehearsal(*services.make_plan(folder), seed=4)
    scan = record["role"].values == ROLES.index(Role.SCAN)
    rows = np.sort(np.concatenate([np.arange(scan.size), np.flatnonzero(scan)]), kind="stable")
    state = np.where(scan[rows], np.arange(rows.size), -1)
    state[scan[rows]] = np.tile([0, 1], scan.sum())
    both = record.isel(point=rows).assign(state_index=("point", state)).assign_attrs(states=",".join(STATES))
    trace = both["trace"].values
    trace[state == 1] *= np.exp(1j * np.linspace(0, 1, 7))[None, :, None]
    run = run_folder(folder, "first")
    run.path.mkdir(parents=True)
    save_dataset(both, run.record)
    return folder, both


def waves(folder, name):
    return read_array(str(run_folder(folder, name).waves), "waves")


def test_pieces_are_what_one_process_finds(made, monkeypatch):
    folder, record = made
    campaign = Campaign.load(folder)
    source = str(run_folder(folder, "first").record)
    whole = process_large(folder, "whole", record=source, scheduler="threads", workers=2)
    assert (whole.layout.pieces, whole.completed, whole.faults) == (2, 2, ())
    # A worker with little memory gets blocks of frequencies.
    per_frequency = (whole.layout.piece_bytes - scale_out.IDLE_BYTES) / 7
    little = int(scale_out.IDLE_BYTES + 3.2 * per_frequency)
    cut = process_large(folder, "cut", record=source, scheduler="threads", workers=2, memory_bytes=little)
    assert cut.layout.blocks == ((0, 3), (3, 5), (5, 7)) and cut.layout.pieces == 6 and cut.layout.piece_bytes <= little
    # Sums over more frequencies at once are taken in another order: the last digits.
    largest = np.abs(waves(folder, "whole")).max()
    np.testing.assert_allclose(waves(folder, "cut"), waves(folder, "whole"), rtol=0.0, atol=1e-11 * largest)
    for index in range(2):
        alone = services.processed(campaign, of_state(record, index), campaign.recipe()).expansion.coefficients
        np.testing.assert_allclose(waves(folder, "whole")[index], alone, rtol=0.0, atol=1e-11 * largest)
    with pytest.raises(InputError, match="^memory_gib: .* one frequency needs"):
        process_large(folder, "no", record=source, memory_bytes=scale_out.IDLE_BYTES + 10)


def test_an_interrupted_one_goes_on_and_another_record_is_refused(made):
    folder, _ = made
    source = str(run_folder(folder, "first").record)
    process_large(folder, "again", record=source)
    before = waves(folder, "again")
    target = str(run_folder(folder, "again").waves)
    write_part(target, "done", (1, 0), 0)
    write_part(target, "waves", (1,), 0.0)
    told = []
    found = process_large(folder, "again", record=source, told=lambda done, total: told.append((done, total)))
    assert (found.completed, found.before) == (1, 1) and told == [(1, 2), (2, 2)]
    np.testing.assert_array_equal(waves(folder, "again"), before)
    with pytest.raises(InputError, match="was made from another record, campaign or cut"):
        process_large(folder, "again", record=source, step_deg=5.0)


def test_a_record_is_the_same_wherever_it_lies(made, tmp_path):
    """Laid out by state as Zarr, through a URL, or as netCDF through a file object."""
    folder, record = made
    source = str(run_folder(folder, "first").record)
    with open_lazily(source) as lazy:
        lay_out(lazy, str(tmp_path / "record.zarr"))
        with pytest.raises(InputError, match="exists already"):
            lay_out(lazy, str(tmp_path / "record.zarr"))
        lay_out(lazy, "memory://colure-test/record.zarr")
    for url in (
        str(tmp_path / "record.zarr"),
        f"file://{tmp_path}/record.zarr",
        "memory://colure-test/record.zarr",
        f"file://{source}",
    ):
        with open_lazily(url) as lazy:
            part = read_rows(lazy, rows_of_state(lazy, 1), slice(2, 5))
        wanted = of_state(record, 1).isel(frequency=slice(2, 5))
        np.testing.assert_array_equal(part["trace"].values, wanted["trace"].values)
        for name in ("time_s", "role", "commanded_deg", "axis"):
            np.testing.assert_array_equal(part[name].values, wanted[name].values)
    with pytest.raises(InputError, match="cannot be read"), open_lazily(str(tmp_path / "nothing.nc")):
        pass


LEFT_OPEN = """
import atexit, sys
import h5py
atexit.register(lambda: print(h5py.h5f.get_obj_count(h5py.h5f.OBJ_ALL, h5py.h5f.OBJ_FILE)))
from pathlib import Path
from colure.app.scale.pieces import process_large
assert process_large(Path(sys.argv[1]), "again", record=sys.argv[2]).faults == ()
"""


@pytest.mark.nightly
def test_the_record_is_closed_before_the_interpreter_takes_its_libraries_apart(made):
    """What is registered first is called last: by then no file may be open, and nothing is said on the error stream."""
    folder, _ = made
    target = run_folder(folder, "again").waves
    if target.exists():
        write_part(str(target), "done", (1, 0), 0)
    source = str(run_folder(folder, "first").record)
    done = subprocess.run(
        [sys.executable, "-c", LEFT_OPEN, str(folder), source], capture_output=True, text=True, check=False
    )
    assert (done.returncode, done.stdout.strip(), done.stderr) == (0, "0", "")


def test_the_command_tells_pieces_memory_and_faults(made):
    folder, _ = made
    outcome = CliRunner().invoke(main, ["process", str(folder), "--run", "first", "--scheduler", "threads", "--json"])
    assert outcome.exit_code == 0, outcome.output
    found = json.loads(outcome.stdout)
    assert (found["states"], found["frequencies"], found["done"], found["failed"]) == (2, 7, 2, [])
