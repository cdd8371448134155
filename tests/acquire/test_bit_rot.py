"""Flip one bit anywhere in a closed journal: it is noticed, or what is read back is what was written."""

from __future__ import annotations

import os

import apsw
import numpy as np
import pytest

from colure.acquire.journal import Journal
from colure.app import services
from colure.app.storage.folders import run_folder
from colure.errors import InputError, JournalError
from tests.acquire.test_journal import row
from tests.crash.test_power_cut import fast_folder  # noqa: F401 - a fixture


def everything(journal: Journal) -> tuple:
    """Return all that anybody reads out of a journal."""
    return (
        [r.encode() for r in journal.rows()],
        journal.measured(),
        journal.plan().as_dict(),
        [journal.meta(key) for key in ("plan_hash", "identity", "format", "settings", "distrust", "stops")],
        journal.events(),
    )


def noticed(path, wanted) -> bool:
    """Tell whether a damaged journal is noticed; False if it reads exactly as it was written."""
    try:
        journal = Journal(path, vfs="unix")
    except JournalError:
        return True
    try:
        if not journal.verify().whole:
            return True
        assert everything(journal) == wanted, "SILENT: a flipped bit changed what is read"
    except (JournalError, InputError):
        return True
    finally:
        journal.close()
    return False


@pytest.mark.skipif(os.name == "nt", reason="POSIX file layer")
@pytest.mark.parametrize("part", [0, 1])
def test_no_flipped_bit_is_silent(tiny_campaign, fast_folder, part, request):  # noqa: F811
    _, plan = services.make_plan(tiny_campaign)
    path = fast_folder / "j.sqlite"
    journal = Journal.create(path, plan, {"analyzer": "test"})
    for index in range(40):
        journal.append(row(index, 0.3 - 0.4j))
    journal.note("state", "running", 1.7e9)
    journal.set_meta("settings", {"points": 2})
    journal.set_meta("stops", [{"reason": "fire drill"}])
    wanted = everything(journal)
    journal.close()
    clean = path.read_bytes()
    copy = fast_folder / "flipped.sqlite"
    random = np.random.default_rng((7, part))
    flips = 20_000 if request.config.getoption("--nightly") else 1000
    seen = 0
    for _ in range(flips):
        damaged = bytearray(clean)
        damaged[int(random.integers(len(clean)))] ^= 1 << int(random.integers(8))
        for name in (copy, copy.with_name("flipped.sqlite-wal"), copy.with_name("flipped.sqlite-shm")):
            name.unlink(missing_ok=True)
        copy.write_bytes(damaged)
        seen += noticed(copy, wanted)
    print(f"{flips} flips in {len(clean)} bytes, {seen} noticed, 0 silent")
    assert seen > 0.3 * flips


def test_damaged_points_are_named_given_up_and_measured_again(small_campaign):
    campaign, plan = services.make_plan(small_campaign)
    run = run_folder(small_campaign, "first")
    services.acquire(campaign, plan, run)
    whole = services.verify(run)
    db = apsw.Connection(str(run.journal))
    body = bytearray(db.execute("select body from point where plan_index = 100").fetchone()[0])
    body[-3] ^= 4
    db.execute("update point set body = ? where plan_index = 100", (bytes(body),))
    db.close()
    found = services.verify(run)
    assert not found.whole and any("(plan point 100): checksum differs" in text for text in found.damaged)
    with pytest.raises(InputError, match="`accept_damage`"):
        services.acquire(campaign, plan, run)
    told = []
    outcome = services.acquire(campaign, plan, run, accept_damage=True, listener=lambda event: told.append(event.text))
    assert outcome.state.value == "done" and any("plan point 100" in text and "measured anew" in text for text in told)
    again = services.verify(run)
    assert again.whole and again.rows == whole.rows + 2 and again.accepted  # the point, and the tie after the break
