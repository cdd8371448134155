"""Journals cut or exchanged at every kind of place, beside records of every kind: no start loses what was measured."""

from __future__ import annotations

import itertools
import os
import random
import shutil

import pytest
from click.testing import CliRunner

from colure.acquire.journal import Journal
from colure.app import services
from colure.app.cli import main
from colure.app.storage.folders import RunFolder, run_folder
from colure.errors import ColureError, InputError, JournalError
from colure.model.files import open_dataset

#: A SQLite page, and the header at the beginning of a database file (the file format's description at sqlite.org, section 1.3).
PAGE, HEADER = 4096, 100


def measured(record) -> set[tuple]:
    """What was measured, told apart by the moments of both clocks."""
    return set(zip(record.wall_time.values.tolist(), record.monotonic_s.values.tolist(), strict=True))


def on_disk(run: RunFolder) -> set[tuple]:
    """Every point that a person could still get at: records under any name, the journal with its log."""
    out: set[tuple] = set()
    for path in run.path.glob("record*"):
        try:
            out |= measured(open_dataset(path))
        except InputError:
            continue
    try:
        journal = Journal.resume(run.journal)
    except JournalError:
        return out
    try:
        return out | {(row.wall_time, row.monotonic_s) for row in journal.rows()}
    except JournalError:  # a row is damaged: nothing of it is counted here, and nothing may begin
        return out
    finally:
        journal.close()


@pytest.fixture
def measure(tiny_campaign):
    """Measure so many points more of a run of the smallest campaign."""
    campaign, plan = services.make_plan(tiny_campaign)

    def go(run: RunFolder, more: int = 6, then=lambda: None):
        engines, seen = [], []

        def listen(event):
            seen.append(event.kind)
            if seen.count("point") >= more:
                then()
                engines[0].stop("enough")

        return services.acquire(campaign, plan, run, on_engine=engines.append, listener=listen)

    go.campaign, go.plan = campaign, plan
    return go


@pytest.fixture
def stock(measure, tiny_campaign):
    """Two runs under one plan, stopped early; and the first one's journal and record as they were before its last points."""
    first, other, early = (run_folder(tiny_campaign, name) for name in ("first", "other", "early"))
    measure(first)
    shutil.copytree(first.path, early.path)
    measure(first)
    measure(other)
    assert len(on_disk(early)) < len(on_disk(first)) and not on_disk(first) & on_disk(other)
    return {"first": first, "other": other, "early": early}


def journals(measure, stock, draw: random.Random) -> dict[str, bytes | None]:
    whole = stock["first"].journal.read_bytes()
    bare = stock["first"].path / "bare.sqlite"
    Journal(bare).close()
    only_plan = stock["first"].path / "only-plan.sqlite"
    Journal.create(only_plan, measure.plan, identity_of(stock["first"])).close()
    cuts = [
        1,
        HEADER - 1,
        HEADER,
        PAGE - 1,
        PAGE,
        2 * PAGE,
        len(whole) - PAGE,
        *(draw.randrange(len(whole)) for _ in range(5)),
    ]
    out = {f"cut at {at}": whole[:at] for at in cuts}
    out |= {
        "gone": None,
        "empty": b"",
        "tables only": bare.read_bytes(),
        "plan only": only_plan.read_bytes(),
        "whole": whole,
    }
    out |= {"some points": stock["early"].journal.read_bytes(), "of another run": stock["other"].journal.read_bytes()}
    bare.unlink(), only_plan.unlink()
    return out


def identity_of(run: RunFolder) -> dict:
    journal = Journal.resume(run.journal)
    try:
        return journal.meta("identity")
    finally:
        journal.close()


@pytest.mark.parametrize("tried", [10, pytest.param(None, marks=pytest.mark.nightly)])
def test_no_start_loses_what_was_measured(measure, stock, tiny_campaign, tried):
    draw = random.Random(20)
    records = {name: run.record.read_bytes() for name, run in stock.items()} | {"none": None}
    damaged = bytearray(records["first"])
    damaged[len(damaged) // 2] ^= 4
    records["damaged"] = bytes(damaged)
    cases = list(itertools.product(journals(measure, stock, draw).items(), records.items(), (False, True)))
    # In the light form those that once lost something come first, and others at random.
    cases.sort(key=lambda case: (case[0][0] not in ("plan only", "some points", "of another run"), draw.random()))
    outcomes = {try_to_begin(measure, tiny_campaign, *case) for case in cases[:tried]}
    assert outcomes == {"refused", "begun"}, "both must be seen"


def try_to_begin(measure, folder, journal, record, rebuild: bool) -> str:
    """Lay a journal and a record into a run's folder, begin, and see that every point is still there."""
    run = run_folder(folder, "tried")
    shutil.rmtree(run.path, ignore_errors=True)
    run.path.mkdir()
    for path, (_, content) in ((run.journal, journal), (run.record, record)):
        if content is not None:
            path.write_bytes(content)
    before, name = on_disk(run), f"journal {journal[0]}, record {record[0]}, rebuild {rebuild}"
    outcome = "begun"
    try:
        services.rebuild(run) if rebuild else measure(run, 1)
    except ColureError as error:
        outcome = "refused"
        named = (run.journal.name, run.record.name, f"run {run.path.name}: does not exist")
        assert any(one in str(error) for one in named), f"{name}: {error}"
        assert record[1] is None or run.record.read_bytes() == record[1], name
    assert before <= on_disk(run), name
    return outcome


def test_a_log_whose_journal_was_emptied_is_not_thrown_away(measure, tiny_campaign):
    """SQLite removes the log of an empty file (sqlite.org, "Write-Ahead Logging"): confirmed points would go with it."""
    run = run_folder(tiny_campaign, "first")
    run.path.mkdir(parents=True)
    log = run.journal.with_name(run.journal.name + "-wal")
    log.write_bytes(b"frames with points")
    for left in (None, b""):
        if left is not None:
            run.journal.write_bytes(left)
        with pytest.raises(JournalError, match=r"confirmed points may lie in journal.sqlite-wal \(18 bytes\)"):
            measure(run)
        assert log.read_bytes() == b"frames with points"


def test_a_folder_that_is_renamed_during_a_run_ends_it_in_one_line_and_loses_nothing(measure, tiny_campaign):
    run, moved = run_folder(tiny_campaign, "first"), run_folder(tiny_campaign, "moved")
    with pytest.raises(InputError, match="its folder was moved or removed; every point is in journal.sqlite"):
        measure(run, 4, then=lambda: run.path.rename(moved.path) if run.path.exists() else None)
    assert services.rebuild(moved) == (len(on_disk(moved)), "") and len(on_disk(moved)) >= 4


def test_a_folder_that_cannot_be_written_is_refused_before_the_cautions(measure, tiny_campaign, monkeypatch):
    """Root may write everywhere but to a disk that is mounted so: the system's answer is planted."""
    monkeypatch.setattr("os.access", lambda path, mode, **_: not mode & os.W_OK)
    result = CliRunner().invoke(main, ["acquire", str(tiny_campaign)])
    assert result.exit_code == 2 and "cannot be written, and a run is kept there" in " ".join(result.output.split())
    assert "caution" not in result.output.lower() and not (tiny_campaign / "runs").exists()
