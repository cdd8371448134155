"""Every disk call fails once, or from then on: the journal says so, writes nothing more, and keeps its promises."""

from __future__ import annotations

import os

import pytest

from colure.acquire.journal import JOURNAL_FORMAT, Journal
from colure.acquire.states import State
from colure.app import services
from colure.errors import JournalError
from tests.acquire.test_journal import row
from tests.crash.disk import FailingDisk
from tests.crash.test_power_cut import fast_folder  # noqa: F401 - a fixture
from tests.world import world_of

# SQLite swallows some errors on purpose (while it closes); Python then reports them as unraisable.
pytestmark = pytest.mark.filterwarnings("ignore::pytest.PytestUnraisableExceptionWarning")
KINDS = ("eio", "enospc", "short", "fsync")


@pytest.fixture
def disk():
    name = f"failing-{os.getpid()}"
    made = FailingDisk(name)
    made.label = name
    yield made
    made.unregister()


def write(plan, path, label) -> tuple[list[int], str]:
    """Write a short run; returns the points promised and the error met, if any."""
    promised: list[int] = []
    journal = None
    try:
        journal = Journal.create(path, plan, {"analyzer": "test"}, vfs=label)
        for index in range(6):
            journal.append(row(index))
            promised.append(index)
        journal.note("warning", "something", 1e9)
        journal.close()
    except JournalError as error:
        if journal is not None:
            # A journal that failed once takes nothing more, even if the disk has recovered.
            with pytest.raises(JournalError, match="failed before"):
                journal.append(row(99))
        return promised, str(error)
    finally:
        if journal is not None:
            journal.close()
    return promised, ""


def require_kept(path, promised: list[int]) -> None:
    """Open on a sound disk: everything promised is there, nothing is damaged."""
    journal = Journal(path, vfs="unix")
    try:
        if journal.meta("format") != JOURNAL_FORMAT:
            assert not promised
            return
        found = journal.verify()
        assert found.whole, found.damaged
        assert set(promised) <= journal.measured() <= set(range(len(promised) + 1))
    finally:
        journal.close()


@pytest.mark.skipif(os.name == "nt", reason="POSIX file layer")
@pytest.mark.parametrize("persistent", [False, True])
def test_every_call_fails(small_campaign, fast_folder, disk, persistent):  # noqa: F811
    _, plan = services.make_plan(small_campaign)
    disk.arm(0, "eio", persistent=False)
    write(plan, fast_folder / "count.sqlite", disk.label)
    total = disk.calls
    runs = told = 0
    for kind in KINDS:
        for at in range(1, total + 1):
            path = fast_folder / f"{kind}{at}.sqlite"
            disk.arm(at, kind, persistent=persistent)
            promised, error = write(plan, path, disk.label)
            runs, told = runs + 1, told + bool(error)
            disk.arm(0, "eio", persistent=False)
            require_kept(path, promised)
    print(f"{runs} runs over {total} calls, {told} told of the fault")
    assert runs == len(KINDS) * total and told > 0.4 * runs


@pytest.mark.skipif(os.name == "nt", reason="POSIX file layer")
@pytest.mark.parametrize("kind", KINDS)
def test_the_engine_stops_safely_when_the_disk_fails(tiny_campaign, fast_folder, disk, kind):  # noqa: F811
    for number, at in enumerate((60, 133, 207, 291)):
        world, plan = world_of(tiny_campaign, kind="gcode")
        path = fast_folder / f"run{number}.sqlite"
        journal = Journal.create(path, plan, {}, vfs=disk.label)
        announced = []
        engine = world.engine(plan, journal, listener=lambda event, to=announced: to.append(event.data.get("index")))
        disk.arm(at, kind, persistent=True)
        world.log_wire = True
        outcome = engine.run()
        journal.close()
        disk.arm(0, "eio", persistent=False)
        assert outcome.state is State.FAULTED and "saved" in outcome.reason
        assert ("analyzer", b"OUTP OFF\n") in world.wire[-6:] and world.stage.held.is_set()
        promised = [index for index in announced if index is not None and index >= 0]
        require_kept(path, promised)
