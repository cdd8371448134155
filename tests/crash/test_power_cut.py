"""The power goes after any disk operation, unsynced writes lost, kept, torn or reordered: no corruption, and
every point that was promised is there. With synchronous=NORMAL the same harness must see points lost."""

from __future__ import annotations

import os
import shutil
import tempfile
from itertools import islice
from pathlib import Path

import pytest

from colure.acquire.journal import JOURNAL_FORMAT, Journal
from colure.app import services
from colure.errors import JournalError
from tests.acquire.test_journal import row
from tests.crash.disk import Operation, RecordingDisk, crashes

POINTS = 60
FAST = Path("/dev/shm")


@pytest.fixture
def fast_folder():
    """Memory instead of a disk: the cuts are simulated, so nothing real needs syncing."""
    folder = Path(tempfile.mkdtemp(dir=FAST if FAST.is_dir() and os.access(FAST, os.W_OK) else None))
    yield folder
    shutil.rmtree(folder, ignore_errors=True)


def recorded(plan, folder: Path, pragma: str = "", points: int = POINTS) -> list[Operation]:
    """Write a journal on a recording disk and return everything that was done, promises included."""
    disk = RecordingDisk(f"recording-{os.getpid()}")
    try:
        journal = Journal.create(folder / "journal.sqlite", plan, {"analyzer": "test"}, vfs=f"recording-{os.getpid()}")
        journal._db.execute("pragma wal_autocheckpoint=25")  # checkpoints shall happen within the record
        if pragma:
            journal._db.execute(pragma)
        disk.log.append(Operation("ack", "begun"))
        for index in range(points):
            journal.append(row(index))
            disk.log.append(Operation("ack", str(index)))
            if index % 10 == 5:
                journal.note("warning", f"something at {index}", 1e9)
                journal.set_meta("settings", {"n": index})
        journal.close()
        return disk.log
    finally:
        disk.unregister()


def judge(promises: list[str], files: dict[str, bytes], folder: Path) -> str:
    """Open what the platter holds as a fresh process would; returns what is wrong, or nothing."""
    for name in ("journal.sqlite", "journal.sqlite-wal", "journal.sqlite-shm"):
        (folder / name).unlink(missing_ok=True)
        if name in files:
            (folder / name).write_bytes(files[name])
    points = {int(name) for name in promises if name != "begun"}
    try:
        journal = Journal(folder / "journal.sqlite", vfs="unix")
    except JournalError as error:
        return f"cannot be opened: {error}"
    try:
        begun = journal.meta("format") == JOURNAL_FORMAT
        if not begun:
            return "lost its beginning" if "begun" in promises else ""
        found = journal.verify()
        if not found.whole:
            return f"damaged: {found.damaged[0]}"
        done = journal.measured()
        if not points <= done:
            return f"lost {sorted(points - done)[:5]}"
        return "" if done == set(range(len(done))) and len(done) <= len(points) + 1 else "points from nowhere"
    finally:
        journal.close()


@pytest.mark.skipif(os.name == "nt", reason="the harness replays on a POSIX file layer")
@pytest.mark.parametrize("seed", [1, 2])
def test_nothing_promised_is_lost(small_campaign, fast_folder, seed, request):
    if seed == 2 and not request.config.getoption("--nightly"):
        pytest.skip("a second seed is for the nightly run")
    _, plan = services.make_plan(small_campaign)
    (fast_folder / "live").mkdir()
    log = recorded(plan, fast_folder / "live")
    rounds, share = (55, 1) if request.config.getoption("--nightly") else (1, 3)
    states, wrong = 0, []
    for promises, files in islice(crashes(log, rounds=rounds, seed=seed), None, None, share):
        states += 1
        fault = judge(promises, files, fast_folder)
        if fault:
            wrong.append(fault)
    print(f"{states} crash states from {len(log)} operations, {len(wrong)} wrong")
    assert states >= 900 * rounds // share and not wrong, wrong[:5]


@pytest.mark.skipif(os.name == "nt", reason="the harness replays on a POSIX file layer")
def test_the_harness_sees_what_normal_synchronization_loses(small_campaign, fast_folder):
    _, plan = services.make_plan(small_campaign)
    (fast_folder / "live").mkdir()
    log = recorded(plan, fast_folder / "live", "pragma synchronous=normal", points=25)
    faults = [judge(promises, files, fast_folder) for promises, files in crashes(log, rounds=1, seed=3)]
    lost = sum(fault.startswith("lost") for fault in faults)
    damaged = sum(bool(fault) and not fault.startswith("lost") for fault in faults)
    print(f"synchronous=NORMAL: {lost} of {len(faults)} states lost promised points, {damaged} damaged")
    assert lost > len(faults) // 20
