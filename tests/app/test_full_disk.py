"""A disk that fills (here: a file that may not grow, POSIX `RLIMIT_FSIZE`, errno EFBIG) ends every command in one line and loses nothing.

What the lines must say is common practice, no source.
"""

from __future__ import annotations

import errno
import os
import shutil
import time
from concurrent.futures import ThreadPoolExecutor
from contextlib import contextmanager, suppress
from pathlib import Path

import numpy as np
import pytest
import xarray as xr
from click.testing import CliRunner

from colure.acquire.journal import Journal
from colure.acquire.outcome import Options
from colure.app import services
from colure.app.cli import main
from colure.app.services.starting import start_campaign
from colure.app.storage.file_edits import write_fields
from colure.app.storage.folders import run_folder
from colure.errors import InputError, system_fault
from colure.model.files import open_dataset, save_dataset
from colure.model.goal import Goal
from colure.model.whole import write_whole

resource = pytest.importorskip("resource", reason="limits of POSIX systems")


@contextmanager
def files_up_to(size_bytes: int):
    """Let no file of this process grow beyond a size."""
    before = resource.getrlimit(resource.RLIMIT_FSIZE)
    resource.setrlimit(resource.RLIMIT_FSIZE, (size_bytes, before[1]))
    try:
        yield
    finally:
        resource.setrlimit(resource.RLIMIT_FSIZE, before)


@pytest.fixture(scope="module")
def horn(tmp_path_factory):
    """A horn at 38 GHz with one measured and evaluated cut."""
    folder = tmp_path_factory.mktemp("full") / "horn"
    start_campaign(folder, kind="horn", band="37-40")
    goal = 'name = "cut"\nstart_ghz = 37.0\nstop_ghz = 40.0\npoints = 2\n[scan]\ntheta_deg = "-40:40:10"\nphi_deg = 0\n'
    (folder / "goal.toml").write_text(goal, encoding="utf-8")
    campaign, plan = services.make_plan(folder)
    services.acquire(campaign, plan, run_folder(folder, "first"))
    assert CliRunner().invoke(main, ["evaluate", str(folder)]).exit_code == 0
    return folder


COMMANDS = (
    ("evaluate", "{0}"),
    ("report", "{0}"),
    ("export", "{0}", "figures", "{0}/out.csv"),
    ("export", "{0}", "csv", "{0}/out.csv"),
    ("new", "{0}/another"),
)


def test_a_full_disk_ends_every_command_in_one_line_and_what_was_there_stays(horn, tmp_path):
    folder = tmp_path / "horn"
    shutil.copytree(horn, folder)
    for kept in folder.rglob("figures-kept.json"):
        kept.unlink()  # or nothing is worked out anew
    before = {path: path.read_bytes() for path in folder.rglob("*") if path.is_file()}
    for command in COMMANDS:
        with files_up_to(200):
            done = CliRunner().invoke(main, [word.format(folder) for word in command])
        assert done.exit_code == 2 and len(done.output.strip().splitlines()) == 1, (command, done.output)
        assert "File too large" in done.output and "nothing that was there is lost" in done.output
        after = {path: path.read_bytes() for path in folder.rglob("*") if path.is_file()}
        lost = [path.name for path in before if after.get(path) != before[path] and "journal" not in path.name]
        assert not lost and not [path.name for path in after if path.name.endswith(".part")], command


def test_fields_that_find_no_room_leave_the_file_and_nothing_beside_it(tiny_campaign):
    goal = tiny_campaign / "goal.toml"
    before = {path: path.read_bytes() for path in tiny_campaign.iterdir()}
    size_bytes = len(before[goal])
    # No room for the old text beside it, and none for the new text, which is longer.
    for limit, name in ((10, "goal.toml.now"), (size_bytes, "goal.toml")):
        with files_up_to(limit), pytest.raises(OSError) as failed:
            write_fields(goal, Goal, {"name": "n" * 60}, "now")
        assert Path(failed.value.filename).name == name
        assert {path: path.read_bytes() for path in tiny_campaign.iterdir()} == before
    # Two edits within a second keep both old texts.
    for name in ("one", "two"):
        write_fields(goal, Goal, {"name": name}, "now")
    kept = [(tiny_campaign / f"goal.toml.{end}").read_text(encoding="utf-8") for end in ("now", "now-2")]
    assert kept[0] == before[goal].decode() and 'name = "one"' in kept[1]


@pytest.mark.parametrize("how", [(), ("--device", "horn", "--band", "37-40")], ids=["demo", "kind"])
def test_a_new_campaign_is_whole_or_not_there(tmp_path, how):
    for size_bytes, file in ((200, "chamber.toml"), (8000, "probe.nc")):  # the first file, and the last
        with files_up_to(size_bytes):
            done = CliRunner().invoke(main, ["new", str(tmp_path / "deep" / "new"), *how])
        assert done.exit_code == 2 and f"{file}: File too large" in done.output, done.output
        assert len(done.output.strip().splitlines()) == 1 and not list(tmp_path.iterdir())
    (tmp_path / "kept").mkdir()
    with files_up_to(200):
        CliRunner().invoke(main, ["new", str(tmp_path / "kept"), *how])
    assert list(tmp_path.rglob("*")) == [tmp_path / "kept"]  # a folder that was there stays
    assert CliRunner().invoke(main, ["new", str(tmp_path / "kept"), *how]).exit_code == 0


def test_a_disk_that_fills_in_the_middle_of_a_run_stops_it_and_it_goes_on_later(horn, tmp_path):
    folder = tmp_path / "horn"
    shutil.copytree(horn, folder, ignore=shutil.ignore_patterns("runs"))
    campaign, plan = services.make_plan(folder)
    run, seen = run_folder(folder, "a"), []

    def listen(event):
        if event.kind == "point":
            seen.append(event)
            if len(seen) == 5:
                size = max(path.stat().st_size for path in run.path.iterdir())
                resource.setrlimit(resource.RLIMIT_FSIZE, (size, limits[1]))

    limits = resource.getrlimit(resource.RLIMIT_FSIZE)
    try:
        outcome = services.acquire(campaign, plan, run, listener=listen, options=Options(pause_limit_s=1.0))
        reason, saved = outcome.reason, outcome.measured
    except InputError as error:  # the record does not find room either
        reason, saved = str(error), len(seen)
    finally:
        resource.setrlimit(resource.RLIMIT_FSIZE, limits)
    assert "disk" in reason and 5 <= saved < len(plan) and "\n" not in reason, reason
    journal = Journal.resume(run.journal)
    assert len(journal.rows()) >= len(seen) and not journal.verify().damaged
    journal.close()
    assert services.acquire(campaign, plan, run).measured == len(plan)
    assert open_dataset(run.record).sizes["point"] >= len(plan)


def test_a_record_that_finds_no_room_leaves_the_old_one_whole(tmp_path):
    path = tmp_path / "a.nc"
    old = xr.Dataset({"x": ("n", np.arange(9.0))})
    save_dataset(old, path)
    with files_up_to(2000), pytest.raises(OSError) as failed:
        save_dataset(xr.Dataset({"x": ("n", np.random.default_rng(1).normal(size=5000))}), path)
    assert failed.value.errno == errno.EFBIG and str(path) in system_fault(failed.value)
    assert open_dataset(path).identical(old) and [one.name for one in tmp_path.iterdir()] == ["a.nc"]


def test_a_text_goes_through_a_link_to_what_it_names_and_into_a_device(tmp_path):
    (tmp_path / "real.txt").write_text("old", encoding="utf-8")
    (tmp_path / "link.txt").symlink_to(tmp_path / "real.txt")
    write_whole(tmp_path / "link.txt", "new")
    assert (tmp_path / "link.txt").is_symlink() and (tmp_path / "real.txt").read_text(encoding="utf-8") == "new"
    write_whole(Path("/dev/null"), "gone")
    assert Path("/dev/null").is_char_device()


def test_a_pipe_in_the_place_of_a_result_is_not_waited_for_and_one_with_a_reader_is_written_into(tmp_path):
    pipe = tmp_path / "figures-kept.json"
    os.mkfifo(pipe)
    with pytest.raises(OSError) as failed:
        write_whole(pipe, "new")
    assert system_fault(failed.value, whole_path=False) == (
        "figures-kept.json: No such device or address; nothing that was there is lost; a pipe that nobody reads: remove it, then repeat "
        "the command"
    )
    with ThreadPoolExecutor(1) as beside:
        read = beside.submit(pipe.read_text, encoding="utf-8")
        for _ in range(100):  # until its reader is there
            with suppress(OSError):
                write_whole(pipe, "new")
                break
            time.sleep(0.02)
        assert read.result() == "new"


def test_what_the_library_says_of_a_full_disk_becomes_one_line():
    long = OSError(
        28,
        "Can't close file (file write failed: time = Mon\n, filename = '/a/b/.record.nc.22.efc3cb9f.part', errno = 28)",
    )
    assert system_fault(long) == (
        "/a/b/record.nc: No space left on device; nothing that was there is lost; free the disk, then repeat the command"
    )
    assert system_fault(long, whole_path=False).startswith("record.nc: No space")
    assert system_fault(OSError("something else")) is None and system_fault(BrokenPipeError(32, "Broken pipe")) is None


def test_a_check_that_cannot_be_kept_says_so_as_a_fault_of_its_own(tiny_campaign):
    campaign, plan = services.make_plan(tiny_campaign)
    with files_up_to(10):
        lines = services.check_instruments(campaign, plan)
    assert [one.what for one in lines if not one.good] == ["kept"]
    assert "check.json: File too large: what this check found is not kept" in lines[-1].answer
    assert not list(tiny_campaign.glob("*check.json*"))
