"""A journal whose last rows are gone: noticed before any record was made, never measured on over, and older journals stay readable.

What must hold is common practice, no source: a row is confirmed or it is not, and what was confirmed does not vanish unseen.
"""

from __future__ import annotations

import shutil
from contextlib import closing

import apsw
import pytest

from colure.acquire.journal import Journal
from colure.app import services
from colure.app.storage.folders import run_folder
from colure.errors import InputError
from tests.acquire.test_journal import row


def cut(path, statement: str) -> None:
    """Take rows away with the database's own means, as anybody could."""
    with closing(apsw.Connection(str(path))) as database:
        database.execute(statement)


@pytest.fixture
def path(small_campaign, tmp_path):
    """A journal of six points and two events, closed; no record was made from it."""
    _, plan = services.make_plan(small_campaign)
    made = Journal.create(tmp_path / "journal.sqlite", plan, {"analyzer": "test"})
    for index in range(6):
        made.append(row(index))
        if index % 3 == 0:
            made.note("state", "running", 1e9 + index)
    made.close()
    return made.path


def faults(path) -> tuple[str, ...]:
    with closing(Journal.resume(path)) as journal:
        return journal.verify().damaged


@pytest.mark.parametrize(
    ("statement", "words"),
    [("delete from point where seq = 6", "6 points were confirmed"), ("delete from point where seq > 2", "6 points"),
     ("delete from point", "6 points"), ("delete from event where seq = 2", "2 events were confirmed"),
     ("delete from event", "2 events")],
)  # fmt: skip
def test_an_end_that_was_cut_is_named_without_any_record(path, statement, words):
    assert faults(path) == ()
    cut(path, statement)
    (fault,) = faults(path)
    assert fault.startswith(f"end: {words}") and "not all of them are here" in fault


def test_a_cut_end_is_accepted_one_time_and_the_next_cut_is_noticed_again(path):
    cut(path, "delete from point where seq > 4")
    with closing(Journal.resume(path)) as journal:
        assert "6 points" in journal.accept_damage()[0]
        assert journal.verify().whole and "6 points" in journal.verify().accepted[0]
        assert journal.measured() == {0, 1, 2, 3}
        journal.append(row(4))
    assert faults(path) == ()
    cut(path, "delete from point where seq = 5")
    assert "5 points were confirmed" in faults(path)[0]


def test_a_journal_without_the_entry_stays_readable_and_gets_it_with_the_next_point(path):
    cut(path, "delete from meta where key = 'confirmed'")
    with closing(Journal.resume(path)) as older:
        assert older.verify().whole and older.measured() == set(range(6))
        older.append(row(6))
    cut(path, "delete from point where seq = 7")
    assert "7 points were confirmed" in faults(path)[0]


def test_points_that_an_older_program_added_are_no_fault(path):
    whole = path.with_name("whole.sqlite")
    shutil.copyfile(path, whole)
    with closing(Journal.resume(path)) as journal:
        before = journal.meta("confirmed")
        journal.append(row(6))
        journal.set_meta("confirmed", before)
    assert faults(path) == () == faults(whole)


def test_a_run_that_was_stopped_and_cut_is_not_gone_on_with_unless_told(tiny_campaign):
    campaign, plan = services.make_plan(tiny_campaign)
    run = run_folder(tiny_campaign, "first")
    services.acquire(campaign, plan, run)
    # As a run that stopped: no record beside the journal, and nothing noted of one.
    run.record.unlink()
    cut(run.journal, "delete from meta where key = 'sealed'")
    before = services.verify(run)
    assert before.whole
    cut(run.journal, f"delete from point where seq > {before.rows - 5}")
    assert f"{before.rows} points were confirmed" in services.verify(run).damaged[0]
    with pytest.raises(InputError, match=f"{before.rows} points were confirmed"):
        services.acquire(campaign, plan, run)
    assert services.acquire(campaign, plan, run, accept_damage=True).state.value == "done"
    assert services.verify(run).whole
