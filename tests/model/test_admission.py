"""Files made to do harm, written by the reference library for HDF5 itself, are refused with few seconds and little memory."""

from __future__ import annotations

import os
import resource
import shutil
import subprocess
import sys
import tomllib
import zlib

import h5py
import numpy as np
import pytest
import xarray as xr
from click.testing import CliRunner

from colure.app.cli import main
from colure.app.storage.begun import edits_since
from colure.app.storage.folders import run_folder
from colure.app.storage.kept_figures import kept_figures
from colure.app.storage.kept_report import kept_report
from colure.errors import InputError
from colure.model.admission import require_bounded, require_readable_apart
from colure.model.files import _add_checksum, attribute_of, open_dataset, save_dataset
from colure.model.lazy import open_lazily
from colure.model.loading import read_toml

SECRET = "secret.h5"


def external_link(file, folder):
    with h5py.File(folder / SECRET, "w") as other:
        other["trace"] = np.ones(3)
    file["trace"] = h5py.ExternalLink(SECRET, "/trace")


def external_link_below(file, folder):
    external_link(file.create_group("a/b"), folder)


def external_storage(file, folder):
    (folder / SECRET).write_bytes(b"\0" * 80)
    file.create_dataset("trace", shape=(10,), dtype="f8", external=[(str(folder / SECRET), 0, 80)])


def virtual(file, folder):
    with h5py.File(folder / SECRET, "w") as other:
        other["trace"] = np.ones(3)
    layout = h5py.VirtualLayout(shape=(3,), dtype="f8")
    layout[:] = h5py.VirtualSource(str(folder / SECRET), "trace", shape=(3,))
    file.create_virtual_dataset("trace", layout)


def never_written(file, _):
    file.create_dataset("trace", shape=(90_000_000, 11), dtype="c16", chunks=(1000, 11))


def large_chunk(file, _):
    file.create_dataset("trace", shape=(1 << 26,), maxshape=(None,), dtype="f8", chunks=(1 << 26,), compression="gzip")


BAD = {
    external_link: "links to another file", external_link_below: "links to another file", external_storage: "in other files",
    virtual: "in other files", never_written: "declares", large_chunk: "chunk of",
}  # fmt: skip


@pytest.mark.parametrize("own", [False, True], ids=["foreign", "with a checksum that fits"])
@pytest.mark.parametrize("make", BAD, ids=lambda make: make.__name__)
def test_a_file_that_leads_out_of_itself_or_declares_too_much_is_refused(tmp_path, make, own):
    path = tmp_path / "bad.nc"
    with h5py.File(path, "w") as file:
        make(file, tmp_path)
    if own:
        _add_checksum(path)
    with pytest.raises(InputError, match=BAD[make]):
        open_dataset(path)
    with pytest.raises(InputError, match=BAD[make]), open_lazily(str(path)):
        pass


def test_what_a_child_does_not_survive_is_refused(tmp_path, monkeypatch):
    """The limits hold: a file that needs more processor time or memory than allowed ends the child, not this process."""
    path, piece = tmp_path / "large.nc", zlib.compress(bytes(1 << 24), 9)
    with h5py.File(path, "w") as file:
        made = file.create_dataset("trace", shape=(128 << 24,), dtype="u1", chunks=(1 << 24,), compression="gzip")
        for first in range(0, 128 << 24, 1 << 24):
            made.id.write_direct_chunk((first,), piece)
    monkeypatch.setattr("colure.model.admission.CHILD_CPU_S", 1)
    with pytest.raises(InputError, match="damaged"):
        require_readable_apart(path, in_memory=True)


def test_good_files_of_others_are_read_once_in_a_child_and_keep_their_values(tmp_path, monkeypatch):
    run, children = subprocess.run, []
    monkeypatch.setattr(
        "colure.model.admission.subprocess.run", lambda *words, **more: children.append(words) or run(*words, **more)
    )
    path, values = tmp_path / "theirs.nc", np.random.default_rng(3).normal(size=(40, 7))
    xr.Dataset(
        {"a": (("x", "y"), values), "name": ("x", [f"n{k}" for k in range(40)])}, attrs={"note": "ok"}
    ).to_netcdf(path, engine="h5netcdf")
    assert np.array_equal(open_dataset(path)["a"].values, values)
    for _ in range(20):
        require_readable_apart(path, in_memory=True)
    assert len(children) == 1
    path.touch()  # another time of change: a file that may be another one
    require_readable_apart(path, in_memory=True)
    assert len(children) == 2


def test_a_packed_record_of_equal_values_is_not_taken_for_a_bomb(tmp_path):
    path = tmp_path / "equal.nc"
    save_dataset(xr.Dataset({"a": ("x", np.zeros(3_000_000))}), path)
    require_bounded(path, in_memory=True)
    with h5py.File(tmp_path / "packed.nc", "w") as file:
        file.create_dataset("a", data=np.zeros(20_000_000), chunks=(1_000_000,), compression="gzip", compression_opts=9)
    require_bounded(tmp_path / "packed.nc", in_memory=True)


READERS = {
    "open_dataset": open_dataset,
    "attribute_of": lambda path: attribute_of(path, "form", ""),
    "read_toml": read_toml,
}


@pytest.mark.skipif(os.name == "nt", reason="wants pipes and devices of POSIX")
@pytest.mark.parametrize("reader", READERS)
def test_pipes_devices_and_folders_are_refused_at_once(tmp_path, reader):
    os.mkfifo(tmp_path / "pipe")
    (tmp_path / "zero").symlink_to("/dev/zero")
    (tmp_path / "folder").mkdir()
    for name, words in (
        ("pipe", "is a pipe"),
        ("zero", "is a device"),
        ("folder", "is a folder"),
        ("none", "cannot be read"),
    ):
        with pytest.raises(InputError, match=words):
            READERS[reader](tmp_path / name)


DEEP = {
    "a key of 20,000 parts": ".".join(["a"] * 20_000) + " = 1\n",
    "a quoted key of 20,000 parts": ".".join(["'#,'"] * 20_000) + " = 1\n",
    "a table's name of 20,000 parts": "[" + ".".join(["a"] * 20_000) + "]\n",
    "lists in lists": "x = " + "[" * 20_000 + "]" * 20_000 + "\n",
    "tables in tables": "x = " + "{a=" * 400 + "1" + "}" * 400 + "\n",
    "a few hundred lists": "x = " + "[" * 300 + "]" * 300 + "\n",
}


@pytest.mark.parametrize("name", DEEP)
def test_deep_campaign_files_are_refused_and_long_keys_before_the_parser_sees_them(tmp_path, name, monkeypatch):
    """The parser takes seconds over a key of 20,000 parts (measured); it must not be asked."""
    loads, parsed = tomllib.loads, []
    monkeypatch.setattr("colure.model.loading.tomllib.loads", lambda text: parsed.append(text) or loads(text))
    (tmp_path / "goal.toml").write_text(DEEP[name], encoding="utf-8")
    with pytest.raises(InputError, match=r"must be at most|not valid TOML"):
        read_toml(tmp_path / "goal.toml")
    assert len(parsed) == (0 if "20,000" in name else 1)


def test_long_lists_of_numbers_and_dotted_comments_are_no_deep_keys(tmp_path):
    text = "# " + "." * 500 + "\nx = [" + ", ".join(f"{k}.5" for k in range(500)) + "]  # " + "." * 300 + "\n"
    (tmp_path / "goal.toml").write_text(text, encoding="utf-8")
    assert len(read_toml(tmp_path / "goal.toml")["x"]) == 500


def spoil_pipe(folder):
    (folder / "goal.toml").unlink()
    os.mkfifo(folder / "goal.toml")


def spoil_device(folder):
    (folder / "chamber.toml").unlink()
    (folder / "chamber.toml").symlink_to("/dev/zero")


def spoil_key(folder):
    with (folder / "goal.toml").open("a", encoding="utf-8") as file:
        file.write("\n" + DEEP["a key of 20,000 parts"])


def spoil_points(folder):
    with (folder / "goal.toml").open("a", encoding="utf-8") as file:
        file.write('\n[scan]\ntheta_deg = "-90:90:0.02"\nphi_deg = "0:180:0.018"\n')


@pytest.mark.skipif(os.name == "nt", reason="wants pipes, devices and limits of POSIX")
@pytest.mark.parametrize("spoil", [spoil_pipe, spoil_device, spoil_key, spoil_points], ids=lambda one: one.__name__)
def test_a_campaign_that_would_hang_or_fill_the_memory_is_refused(campaign_folder, spoil, request):
    """1 GiB is allowed for the whole command, and two seconds of processor time, which the nightly run looks at."""
    spoil(campaign_folder)

    def limits():
        resource.setrlimit(resource.RLIMIT_DATA, (1 << 30, 1 << 30))
        resource.setrlimit(resource.RLIMIT_CPU, (60, 61))

    def busy_s():
        used = resource.getrusage(resource.RUSAGE_CHILDREN)
        return used.ru_utime + used.ru_stime

    before_s = busy_s()

    done = subprocess.run(
        [sys.executable, "-m", "colure", "plan", str(campaign_folder)], capture_output=True, text=True, timeout=60, check=False,
        preexec_fn=limits, env=os.environ | {"OPENBLAS_NUM_THREADS": "1"},
    )  # fmt: skip
    assert done.returncode == 2, done.stderr[-400:]
    assert "must be" in done.stderr and "Traceback" not in done.stderr
    if request.config.getoption("--nightly"):
        assert busy_s() - before_s < 2.0
    shutil.rmtree(campaign_folder)
    assert CliRunner().invoke(main, ["plan", str(campaign_folder)]).exit_code == 2


def a_pipe(path):
    os.mkfifo(path)


def a_device(path):
    path.symlink_to("/dev/zero")


def three_gigabytes(path):
    path.write_bytes(b'{"a": "')
    os.truncate(path, 3 << 30)  # holes: it takes no room on the disk


def brackets_in_brackets(path):
    path.write_text("[" * 200_000, encoding="utf-8")


def half_a_file(path):
    path.write_text('{"a": ', encoding="utf-8")


BAD_JSON = {
    a_pipe: "is a pipe", a_device: "is a device", three_gigabytes: "must be at most 20000000 bytes",
    brackets_in_brackets: "brackets in brackets", half_a_file: "cannot be read",
}  # fmt: skip


@pytest.mark.skipif(os.name == "nt", reason="wants pipes and devices of POSIX")
@pytest.mark.parametrize("make", BAD_JSON, ids=lambda make: make.__name__)
def test_a_file_of_a_run_that_would_hang_or_fill_the_memory_is_refused(tmp_path, make):
    """What a run keeps of its beginning is needed: without it the present chamber would be used without a word."""
    run = run_folder(tmp_path, "first")
    run.path.mkdir(parents=True)
    make(run.path / "begun.json")
    with pytest.raises(InputError, match=f"runs.first.begun.json: .*{BAD_JSON[make]}.*remove it"):
        edits_since(run, None)
    # Of what was only kept to save time nothing is left.
    make(run.path / "figures-kept.json")
    make(run.path / "report-kept.json")
    assert kept_figures(run, "key", []) is None and kept_report(run, "key") is None
