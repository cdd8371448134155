"""Slices of a finished run that are measured again: what was read first is kept, and the level between both sessions is known."""

from __future__ import annotations

import os
import shutil
import tempfile
from dataclasses import replace
from types import SimpleNamespace

import numpy as np
import pytest
from click.testing import CliRunner

from colure.acquire.journal import Journal
from colure.acquire.outcome import Options
from colure.acquire.rows import Row
from colure.acquire.station import Station
from colure.analysis.steps.drift import correct, track
from colure.app import services
from colure.app.cli import main
from colure.app.services.bench_check import keep_check
from colure.app.services.measuring_again import again_plan, slice_points
from colure.app.services.particulars import again_of
from colure.app.storage.folders import run_folder
from colure.app.web.scan.before import before, held, require_startable
from colure.app.web.scan.child import carry_out
from colure.app.web.scan.layout import layout_for
from colure.app.web.scan.live import LiveScan
from colure.errors import InputError, JournalError
from colure.model.files import attribute_of, open_dataset
from colure.model.plan import ROLES, Role
from colure.report.translation import Translation
from tests.conftest import tiny
from tests.ranges import range_campaign

#: What spoils the slice in the first session, and what a cable that was fastened since changes of everything.
SPOILT, FASTENED = 0.3 * np.exp(0.7j), 0.95 * np.exp(0.4j)


def disturb(patch, plan, *, slices=(), reference=False, everything=1.0):
    """Multiply what is read of some slices, or of the reference, and of everything."""
    of_right = Station.row

    def row(station, index, role, moment, target, shown, sweep, rate=None):
        bad = (role is Role.SCAN and plan.slice_index[index] in slices) or (reference and role is Role.REFERENCE)
        trace = sweep.trace * everything * (SPOILT if bad else 1.0)
        return of_right(station, index, role, moment, target, shown, replace(sweep, trace=trace), rate)

    patch.setattr(Station, "row", row)


@pytest.fixture(scope="module")
def spoilt(demo_campaign, tmp_path_factory):
    """The smallest run, finished; slice 1 of its two passes went wrong."""
    folder = tiny(shutil.copytree(demo_campaign, tmp_path_factory.mktemp("again") / "campaign"))
    campaign, plan = services.make_plan(folder)
    with pytest.MonkeyPatch.context() as patch:
        disturb(patch, plan, slices=(1,), reference=True)
        services.acquire(campaign, plan, run_folder(folder, "first"))
    return folder


@pytest.fixture
def folder(spoilt, tmp_path):
    return shutil.copytree(spoilt, tmp_path / "campaign")


def measure_again(folder, said, patch, *, listener=lambda event: None, on_engine=lambda engine: None):
    run = run_folder(folder, "first")
    campaign, plan, part = again_plan(folder, run, said)
    disturb(patch, plan, everything=FASTENED)
    options = Options(again=part.points, said=said)
    return services.acquire(campaign, plan, run, options=options, listener=listener, on_engine=on_engine)


def bodies(run):
    """Every row of a journal in measured order, put aside or not."""
    journal = Journal.resume(run.journal)
    try:
        return [Row.decode(body) for (body,) in journal._db.execute("select body from point order by seq")]
    finally:
        journal.close()


def test_slices_and_reference_are_measured_again_and_fit_the_rest(folder, monkeypatch):
    run = run_folder(folder, "first")
    before = bodies(run)
    outcome = measure_again(folder, "1,reference", monkeypatch)
    assert outcome.state.value == "done" and attribute_of(run.record, "complete", "") == "1"
    after = bodies(run)
    said = again_of(open_dataset(run.record))
    assert len(said) == 1 and "UTC: slices 1,reference, " in said[0]
    assert "Neu gemessen" in Translation("de")("Measured again") and "Scheiben 1,reference" in Translation("de")(
        said[0]
    )
    assert [row.encode() for row in after[: len(before)]] == [row.encode() for row in before], (
        "nothing measured is lost"
    )
    own = [ROLES[row.role] for row in after[len(before) :]]
    assert own[0] is Role.RESUME and own[-1] is Role.TIE, "ties on both sides of what was measured"
    check = services.verify(run)
    record = open_dataset(run.record)
    wrong = (record["role"].values == ROLES.index(Role.REFERENCE)) | (record["slice_index"].values == 1)
    assert check.whole and check.again == wrong.sum() > 20
    # Without noise or drift what was read first is the truth, spoilt; everything stands at the first session's level.
    first = {row.plan_index: row.trace for row in before}
    drift = track(record)
    right = correct(record, drift)["trace"].values
    truth = np.stack([first[int(n)] if n >= 0 else right[i] for i, n in enumerate(record["plan_index"].values)])
    truth[wrong] /= SPOILT
    assert np.abs(right - truth).max() < 1e-5 * np.abs(truth).max()
    assert drift.breaks_s.size == 1 and not drift.jumps and drift.between < 1e-3


def test_a_stop_keeps_the_first_readings_of_what_is_left(folder, monkeypatch):
    run, engines, points = run_folder(folder, "first"), [], []

    def listen(event):
        points.append(event.data["index"]) if event.kind == "point" else None
        if len(points) == 5:
            engines[0].stop("enough for now")

    outcome = measure_again(folder, "1", monkeypatch, listener=listen, on_engine=engines.append)
    assert outcome.state.value == "stopped" and attribute_of(run.record, "complete", "") == "0"
    record = open_dataset(run.record)
    assert set(range(163)) - set(record["plan_index"].values.tolist()) == set(), "the first readings are still in use"
    assert services.verify(run).again == 5 and services.verify(run).whole
    measured = len(bodies(run))
    campaign, plan = services.make_plan(folder, run)
    assert services.acquire(campaign, plan, run).state.value == "done"
    again = [row.plan_index for row in bodies(run)[measured:] if row.plan_index >= 0]
    assert len(again) == np.sum(plan.slice_index == 1) - 5 and not set(again) & set(points[:5])
    assert attribute_of(run.record, "complete", "") == "1" and services.verify(run).whole


def test_single_directions_are_one_slice_and_the_refusal_says_so(tmp_path):
    folder = range_campaign(tmp_path / "c", "", scan="theta_deg = [0, 10, 20]\nphi_deg = 0")
    campaign, plan = services.make_plan(folder)
    with pytest.raises(
        InputError, match=r"again = '1': must be 0, the only slice of this run, which holds all 3 directions"
    ):
        slice_points(plan, "1")
    assert campaign.goal.scan is not None


def test_a_run_on_a_disk_that_cannot_be_written_is_refused_before_anything_is_opened(spoilt, monkeypatch):
    monkeypatch.setattr("os.access", lambda path, mode, **_: not mode & os.W_OK)
    said = CliRunner().invoke(main, ["acquire", str(spoilt), "--again", "1", "--yes"])
    assert said.exit_code == 2 and "cannot be written, and a run is kept there" in said.output


@pytest.mark.parametrize(
    ("said", "says"),
    [
        ("9", "again = '9': must be slices from 0 to 5 of this run"),
        ("2-1", "again = '2-1': must be slices from 0 to 5"),
        ("1,x", "again = 'x': must be numbers of slices such as 3,7-9, or reference"),
    ],
)
def test_slices_that_the_run_does_not_hold_are_refused(spoilt, said, says):
    with pytest.raises(InputError, match=says):
        again_plan(spoilt, run_folder(spoilt, "first"), said)


def test_what_changed_since_the_run_began_is_refused(folder, monkeypatch):
    chamber = (folder / "chamber.toml").read_text(encoding="utf-8")
    (folder / "chamber.toml").write_text(chamber.replace("speed_deg_s = 20", "speed_deg_s = 19"), encoding="utf-8")
    before = len(bodies(run_folder(folder, "first")))
    with pytest.raises(InputError, match=r"speed_deg_s = 19\.0: must be 20\.0 to resume"):
        measure_again(folder, "1", monkeypatch)
    assert len(bodies(run_folder(folder, "first"))) == before


def test_a_tie_that_changed_too_much_leaves_the_run_finished(folder, monkeypatch):
    run = run_folder(folder, "first")
    _, plan, _ = again_plan(folder, run, "1")
    monkeypatch.setattr("tests.app.test_measuring_again.FASTENED", 0.5)
    outcome = measure_again(folder, "1", monkeypatch)
    assert outcome.state.value == "faulted" and "tie point changed by" in outcome.reason
    journal = Journal.resume(run.journal)
    assert journal.measured() == set(range(len(plan))) and not journal.pending()
    journal.close()


def test_a_run_that_was_stopped_is_finished_first(folder):
    run = run_folder(folder, "stopped")
    campaign, plan = services.make_plan(folder, run)
    engines = []
    services.acquire(campaign, plan, run, on_engine=engines.append,
                     listener=lambda event: engines[0].stop("x") if event.kind == "point" else None)  # fmt: skip
    with pytest.raises(InputError, match="of 163 points and was not finished: go on with it first"):
        again_plan(folder, run, "1")


def test_of_a_run_that_ended_by_itself_nothing_else_is_measured(folder, monkeypatch):
    run, engines, points = run_folder(folder, "first"), [], []
    shutil.rmtree(run.path)
    campaign, plan = services.make_plan(folder, run)
    enough = int(np.flatnonzero(plan.slice_index == 1)[0])  # slice 0 of the first pass is measured

    def listen(event):
        points.append(event.data["index"]) if event.kind == "point" else None
        if points and points[-1] == enough:
            engines[0].finish("known well enough")

    assert services.acquire(campaign, plan, run, on_engine=engines.append, listener=listen).state.value == "done"
    with pytest.raises(InputError, match="was not finished"):
        again_plan(folder, run, "0")  # its second pass is missing
    before = len(bodies(run))
    assert measure_again(folder, "reference", monkeypatch).state.value == "done"
    own = [ROLES[row.role] for row in bodies(run)[before:]]
    assert set(own) == {Role.RESUME, Role.REFERENCE, Role.TIE}


def test_the_command_asks_for_nothing_else(spoilt):
    said = CliRunner().invoke(main, ["acquire", str(spoilt), "--again", "1", "--phi", "0", "--operator", "A. N."])
    assert (
        said.exit_code == 2
        and "--again: takes the run's own plan and words: leave out --phi, --operator" in said.output
    )


def test_the_page_says_what_it_takes_and_refuses_as_the_terminal_does(folder, monkeypatch):
    said = before(folder, "first", "scan", "1")
    _, plan, part = again_plan(folder, run_folder(folder, "first"), "1")
    assert said["to_measure"] == len(part.points) and said["points"] == len(plan) == said["on_disk"]["measured"]
    assert said["duration_s"] == part.duration_s and said["fault"] == "" and said["cautions"]
    with pytest.raises(InputError, match="must be slices from 0 to 5"):
        require_startable(folder, "first", "scan", again="9")
    with pytest.raises(InputError, match="again: kind = 'flip': must be 'scan'"):
        require_startable(folder, "first", "flip", again="1")
    keep_check(folder, plan.hash, ["axis roll: does not answer"], None)
    with pytest.raises(InputError, match="axis roll: does not answer"):
        require_startable(folder, "first", "scan", again="1")
    require_startable(folder, "first", "scan", again="1", despite_check=True)
    monkeypatch.setattr("os.access", lambda path, mode, **_: not mode & os.W_OK)
    with pytest.raises(InputError, match="cannot be written, and a run is kept there"):
        before(folder, "first", "scan", "1")


def test_the_page_counts_what_is_measured_again_and_after_a_stop_what_is_left(folder, monkeypatch):
    """The picture keeps the first readings; share and count are of the points that were asked for."""
    lines, engines = [], []
    teller = SimpleNamespace(tell=lambda content, may_drop=False: lines.append(content))

    def attach(engine):
        engines.append(engine)

    def stop(content, may_drop=False):
        lines.append(content)
        if sum(one["kind"] == "point" for one in lines) == 5:
            engines[0].stop("enough for now")

    def carry(tell):
        return carry_out(folder, "first", kind="scan", home=False, despite_check=False, again="1", teller=SimpleNamespace(tell=tell),
                         remote=SimpleNamespace(attach=attach))  # fmt: skip

    count = len(again_plan(folder, run_folder(folder, "first"), "1")[2].points)
    layout = layout_for(folder, "first", "scan", "1")
    for tell, measured, code in ((stop, 5, 3), (teller.tell, count - 5, 0)):
        lines.clear()
        engines.clear()
        assert carry(tell) == code
        scan = LiveScan("c", "first", layout)
        for line in lines:
            scan.hear(line)
        status = scan.status()
        assert (status["measured"], status["total"]) == (measured, count if code else count - 5)
        assert np.isfinite(np.frombuffer(scan.frame(), "<f4")).all()
        assert held(run_folder(folder, "first"))["state"] == ("stopped" if code else "complete")


def test_a_journal_is_verified_where_nothing_can_be_written(folder, monkeypatch):
    run = run_folder(folder, "first")
    usual = services.verify(run)
    before = {one.name: (one.read_bytes(), one.stat().st_mtime_ns) for one in run.path.iterdir()}
    monkeypatch.setattr("os.access", lambda path, mode, **_: not mode & os.W_OK)
    monkeypatch.setattr(tempfile, "tempdir", str(folder))
    assert services.verify(run) == usual and usual.whole
    assert {
        one.name: (one.read_bytes(), one.stat().st_mtime_ns) for one in run.path.iterdir() if one.suffix != ".pid"
    } == {name: seen for name, seen in before.items() if not name.endswith(".pid")}
    assert not list(folder.glob("colure-*")), "the copy is gone"
    journal = Journal.resume(run.journal)
    with pytest.raises(JournalError, match="in use by process"):
        services.verify(run)
    journal.close()
