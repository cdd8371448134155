"""The journal keeps what it confirmed, notices every damage, and has one owner."""

from __future__ import annotations

import os
import re
import subprocess
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from threading import Timer

import apsw
import numpy as np
import pytest

from colure.acquire.chain import holds_root
from colure.acquire.glance import glance
from colure.acquire.journal import Journal, Row
from colure.app import services
from colure.errors import JournalError, system_fault


def row(index: int, value: complex = 1.0) -> Row:
    trace = np.full((3, 1), value * (index + 1), complex)
    axes = np.array([1.0 * index, 2.0])
    return Row(
        plan_index=index,
        role=0,
        state_index=-1,
        time_s=0.5 * index,
        wall_time=1e9 + index,
        monotonic_s=5.0 + index,
        commanded_deg=axes,
        readback_deg=axes + 1e-3,
        rate_deg_s=0.0 * axes,
        trace=trace,
        flags=0,
    )


@pytest.fixture
def journal(small_campaign, tmp_path):
    _, plan = services.make_plan(small_campaign)
    made = Journal.create(tmp_path / "journal.sqlite", plan, {"analyzer": "test"})
    yield made
    made.close()


def test_rows_come_back_bit_for_bit(journal):
    for index in range(5):
        journal.append(row(index, 0.1 + 0.7j))
    for index, back in enumerate(journal.rows()):
        assert back.encode() == row(index, 0.1 + 0.7j).encode()
    assert journal.measured() == set(range(5)) and journal.verify().whole


def test_durability_settings_are_in_force(journal):
    assert journal._db.execute("pragma journal_mode").fetchone()[0] == "wal"
    assert journal._db.execute("pragma synchronous").fetchone()[0] == 2  # FULL
    assert tuple(int(x) for x in apsw.sqlite_lib_version().split(".")) >= (3, 51, 3)


def test_every_flipped_byte_in_a_row_is_noticed(journal):
    for index in range(3):
        journal.append(row(index))
    body = bytearray(journal._db.execute("select body from point where seq = 2").fetchone()[0])
    for position in range(len(body)):
        damaged = bytearray(body)
        damaged[position] ^= 0x10
        journal._db.execute("update point set body = ? where seq = 2", (bytes(damaged),))
        found = journal.verify()
        assert not found.whole and "row 2" in found.damaged[0]
    journal._db.execute("update point set body = ? where seq = 2", (bytes(body),))
    assert journal.verify().whole


def test_a_row_replaced_with_a_matching_checksum_breaks_the_chain(journal):
    import zlib

    for index in range(3):
        journal.append(row(index))
    forged = row(1, 9.9).encode()
    journal._db.execute("update point set body = ?, crc = ? where seq = 2", (forged, zlib.crc32(forged)))
    assert any("chain broken" in line for line in journal.verify().damaged)


def test_a_removed_row_is_noticed(journal):
    for index in range(4):
        journal.append(row(index))
    journal._db.execute("delete from point where seq = 3")
    assert any("missing" in line for line in journal.verify().damaged)


def test_a_second_process_is_refused_and_told_the_owner(journal):
    code = (
        "import sys; from pathlib import Path; from colure.acquire.journal import Journal, JournalError\n"
        "try: Journal.resume(Path(sys.argv[1]))\n"
        "except JournalError as error: print(error); sys.exit(7)"
    )
    done = subprocess.run([sys.executable, "-c", code, str(journal.path)], capture_output=True, text=True, timeout=60)
    import os

    assert done.returncode == 7 and str(os.getpid()) in done.stdout


def test_an_existing_run_is_never_overwritten(journal):
    with pytest.raises(JournalError, match="exists already"):
        Journal.create(journal.path, journal.plan(), {})


def test_a_start_that_was_killed_halfway_is_started_again(journal, tmp_path):
    half = tmp_path / "half.sqlite"
    Journal(half).close()  # tables, but not a word about the run yet
    again = Journal.open(half, journal.plan(), {"analyzer": "test"})
    again.append(row(0))
    again.close()
    back = Journal.open(half, journal.plan(), {"analyzer": "other"})
    assert back.meta("identity") == {"analyzer": "test"} and back.measured() == {0}
    back.close()


def damaged_page(whole: bytes) -> bytes:
    return whole[:4096] + bytes(range(256)) * 16 + whole[8192:]


@pytest.mark.parametrize(
    ("spoil", "says"),
    [
        (lambda whole: whole[: len(whole) // 2 + 77], "pages of it are damaged or missing"),
        (damaged_page, "pages of it are damaged or missing"),
        (lambda whole: bytes(len(whole)), "it is no journal"),
        (lambda whole: b"", "the file is empty or was cut"),
    ],
)
def test_a_journal_that_cannot_be_read_is_named_with_what_to_do_and_left_as_it_is(journal, tmp_path, spoil, says):
    for index in range(40):
        journal.append(row(index))
    journal.close()
    folder = tmp_path / "copy"
    folder.mkdir()
    spoilt = folder / "journal.sqlite"
    spoilt.write_bytes(spoil(journal.path.read_bytes()))
    before = spoilt.read_bytes()
    with pytest.raises(JournalError) as caught:
        Journal.resume(spoilt)
    assert str(spoilt) in str(caught.value) and says in str(caught.value) and "another run name" in str(caught.value)
    if before:
        assert spoilt.read_bytes() == before
    # The lock is given up: the whole file put back opens at once.
    spoilt.write_bytes(journal.path.read_bytes())
    again = Journal.resume(spoilt)
    assert again.verify().whole and again.count == 40
    again.close()


@pytest.mark.skipif(not Path("/dev/zero").exists(), reason="needs a file whose reads fail")
def test_a_disk_that_fails_is_named_instead_of_an_error_number(tmp_path):
    (tmp_path / "journal.sqlite").symlink_to("/dev/zero")
    with pytest.raises(
        JournalError, match=r"journal\.sqlite: cannot be read .*check disk, cable, free space and permissions"
    ):
        Journal.resume(tmp_path / "journal.sqlite")


@pytest.mark.parametrize(
    ("statement", "says"),
    [
        ("delete from point where seq = 4", "end: the record was made from 4 points"),
        ("delete from point", "end: the record was made from 4 points"),
        ("delete from event where seq = 2", "end: the record was made beside 2 events"),
        ("delete from meta where key = 'identity'", "entry identity: is gone"),
        ("insert into superseded values(2)", r"row 2 \(put aside\): no fault of it was accepted"),
    ],
)
def test_a_cut_end_and_points_put_aside_are_noticed(journal, statement, says):
    """A chain alone does not show that its end is missing: what the record was made from is written down beside it."""
    for index in range(4):
        journal.append(row(index))
    journal.note("state", "running", 1.0)
    journal.note("stop", "enough", 2.0)
    journal.note_end()
    assert journal.verify().whole
    journal._db.execute(statement)
    (fault, *_) = journal.verify().damaged
    assert re.search(says, fault), fault


def test_a_run_that_goes_on_and_accepted_damage_are_no_cut_end(journal):
    for index in range(3):
        journal.append(row(index))
    journal.note_end()
    journal.append(row(3))
    assert journal.verify().whole
    journal._db.execute("update point set crc = crc + 1 where seq = 2")
    assert journal.accept_damage()
    assert journal.verify().whole and journal.measured() == {0, 2, 3}


@pytest.fixture
def files_left():
    """Let this process open so many files more, and no others."""
    resource = pytest.importorskip("resource")
    limits, opened = resource.getrlimit(resource.RLIMIT_NOFILE), []

    def leave(count: int) -> None:
        resource.setrlimit(resource.RLIMIT_NOFILE, (min(256, limits[1]), limits[1]))
        try:
            while True:
                opened.append(os.open(os.devnull, os.O_RDONLY))
        except OSError:
            for _ in range(count):
                os.close(opened.pop())

    yield leave
    for number in opened:
        os.close(number)
    resource.setrlimit(resource.RLIMIT_NOFILE, limits)


@pytest.mark.parametrize("left", [1, 2, 3])
def test_a_journal_for_which_too_few_files_may_be_open_does_not_blame_the_disk(journal, files_left, left):
    path = journal.path
    journal.append(row(0))
    journal.close()
    files_left(left)
    with pytest.raises((JournalError, OSError)) as told:
        Journal(path)
    said = str(told.value) if isinstance(told.value, JournalError) else system_fault(told.value)
    assert "ulimit -n" in said and "may open too few files" in said and "disk" not in said


def test_what_is_measured_again_replaces_and_keeps_the_first_reading(journal):
    for index in range(4):
        journal.append(row(index))
    journal.ask_again({1, 2}, "slices", 0.0)
    assert journal.measured() == {0, 3} and len(journal.rows()) == 4, "used until there is a new one"
    journal.append(row(2, 5.0))
    assert journal.measured() == {0, 2, 3} and journal.pending().keys() == {1}
    assert [one.trace[0, 0] for one in journal.rows()] == [1.0, 2.0, 4.0, 15.0]
    check = journal.verify()
    assert check.whole and check.rows == 5 and check.again == 1
    journal.ask_again({1, 2}, "slices", 1.0)
    assert len(journal.meta("again")) == 1, "what was broken off goes on"
    # Neither may a first reading come back into use, nor may one be put aside that nothing replaces.
    journal._db.execute("delete from superseded")
    assert journal.verify().damaged == ("row 3: its point was measured again, and it is not put aside",)
    journal._db.execute("insert into superseded values (3), (2)")
    assert journal.verify().damaged == ("row 2 (put aside): no fault of it was accepted",)


@contextmanager
def held_by_another_reader(path: Path, seconds: float) -> Iterator[None]:
    """Keep others out of a journal, as a program does that opens it after a crash, or is the last to close it."""
    database = apsw.Connection(str(path))
    database.execute("pragma locking_mode=exclusive")
    database.execute("begin immediate")
    database.execute("create table if not exists held(x)")
    database.execute("commit")
    ends = Timer(seconds, database.close)
    ends.start()
    try:
        yield
    finally:
        ends.join()


def test_a_journal_that_somebody_opens_at_this_moment_is_waited_for(journal, monkeypatch):
    """A start was refused with "the record was not made from this journal", a page said "damaged", both of a sound one."""
    for index in range(3):
        journal.append(row(index))
    path, root = journal.path, journal.verify().root_hash
    journal.close()
    with held_by_another_reader(path, 0.15):
        assert holds_root(path, root) is True
    with held_by_another_reader(path, 0.15):
        seen = glance(path)
    assert seen is not None and seen.measured == 3
    monkeypatch.setattr("colure.acquire.chain.BUSY_MS", 1)
    with held_by_another_reader(path, 0.1):
        assert holds_root(path, root) is None
    assert holds_root(path, "0" * 64) is False and holds_root(path, "no root") is False
