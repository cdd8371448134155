"""Small pictures and levels as read: of a pattern, a record, a journal alone, a cut, levels without phase."""

from __future__ import annotations

import numpy as np
import pytest

from colure.app import services
from colure.app.services.rehearsal import record_of_rehearsal
from colure.app.storage.folders import run_folder
from colure.app.web.views import as_read, power
from colure.app.web.views.runs import runs_of
from colure.errors import InputError
from colure.model.chamber import SimulatedChamber
from colure.model.files import save_dataset
from colure.model.plan import ROLES, Role
from tests.app.services.test_power_runs import levels_of
from tests.app.test_looking import begun


def rehearsed(folder, name, change=lambda record: record):
    campaign, plan = services.make_plan(folder)
    run = run_folder(folder, name)
    run.path.mkdir(parents=True, exist_ok=True)
    save_dataset(change(record_of_rehearsal(campaign, plan, truth=SimulatedChamber(noise=False))), run.record)
    return campaign, run


def shades(found):
    return np.array(found["shades"]).reshape(as_read.THUMB_ROWS, as_read.THUMB_COLUMNS)


def test_every_run_has_a_small_picture_before_anybody_read_its_figures(tiny_campaign):
    """The device looks along +z: the first row of theta is the brightest, before and after the pattern is there."""
    campaign, run = rehearsed(tiny_campaign, "one")
    before = as_read.thumb(tiny_campaign, "one")
    assert before["what"] == "as read" and not run.pattern.exists()
    assert shades(before)[0].mean() == shades(before).mean(axis=1).max() > 200
    services.process(campaign, run)
    after = as_read.thumb(tiny_campaign, "one")
    assert after["what"] == "pattern" and shades(after)[0].mean() > 200
    assert as_read.thumb(tiny_campaign, "none")["what"] == ""


def test_a_picture_is_drawn_once_for_a_files_content(tiny_campaign, monkeypatch):
    rehearsed(tiny_campaign, "two")
    count = []
    real = as_read._record
    monkeypatch.setattr(as_read, "_record", lambda run: count.append(run) or real(run))
    as_read.thumb(tiny_campaign, "two")
    as_read.thumb(tiny_campaign, "two")
    assert len(count) == 1
    rehearsed(tiny_campaign, "two", lambda record: record.assign(trace=record["trace"] * 0.5).assign_attrs(tag="again"))
    as_read.thumb(tiny_campaign, "two")
    assert len(count) == 2


def test_levels_without_phase_are_a_view_of_their_own(tiny_campaign):
    rehearsed(tiny_campaign, "power", levels_of)
    rehearsed(tiny_campaign, "vector")
    assert {one["name"]: one["kind"] for one in runs_of(tiny_campaign)} == {"power": "power", "vector": "sphere"}
    found = power.levels_of(tiny_campaign, "power", None, None)
    level = np.array(found["total"], float).reshape(len(found["rows"]), len(found["columns"]))
    gain = next(one for one in found["figures"] if one["name"] == "gain_dbi")
    assert found["unit"] == "dBi" and gain["lower"] < np.nanmax(level) < gain["upper"]
    assert found["of"]["run"] == "power"
    with pytest.raises(InputError, match="is no run of levels without phase"):
        power.levels_of(tiny_campaign, "vector", None, None)
    with pytest.raises(InputError, match="frequency = 99: must be from 0"):
        power.levels_of(tiny_campaign, "power", None, 99)


def test_a_run_that_another_process_measures_shows_what_it_has(tmp_path):
    """Only its journal is there: as many directions as it holds, levels those of the sweeps themselves, nothing written."""
    resolved, run, journal, rehearsed = begun(tmp_path / "c", 0.3)
    before = run.journal.read_bytes()
    found = as_read.as_read(tmp_path / "c", "first")
    assert 0 < found["measured"] < found["total"] and len(found["directions"]) == 3 * len(found["level_db"])
    _, plan = services.make_plan(tmp_path / "c")
    scans = np.flatnonzero(plan.role[: int(0.3 * len(plan))] == ROLES.index(Role.SCAN))
    shown = resolved.goal.shown_index(plan.frequency_hz)
    power = np.sum(np.abs(rehearsed.trace[scans, shown]) ** 2, axis=-1)
    assert max(found["level_db"]) == pytest.approx(10.0 * np.log10(power.max()), abs=0.01)
    seen = as_read.thumb(tmp_path / "c", "first")
    assert seen["what"] == "as read" and -1 in seen["shades"] and max(seen["shades"]) > 200
    assert (run.journal.read_bytes(), run.record.exists()) == (before, False)
    journal.close()


def test_a_journal_that_cannot_be_read_is_named_without_the_servers_path(tmp_path):
    _, run, journal, _ = begun(tmp_path / "c", 0.1)
    journal.close()
    for beside in ("-wal", "-shm"):
        run.journal.with_name(run.journal.name + beside).unlink(missing_ok=True)
    run.journal.write_bytes(bytes(8192))
    with pytest.raises(InputError, match="run first: journal.sqlite: cannot be read as a journal") as caught:
        as_read.as_read(tmp_path / "c", "first")
    assert str(tmp_path) not in str(caught.value) and as_read.thumb(tmp_path / "c", "first")["what"] == ""
