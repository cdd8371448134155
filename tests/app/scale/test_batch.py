"""Many runs at once: found, done, kept by content, told where they fail, and put into one table."""

from __future__ import annotations

import csv
import json
import os
import shutil
import signal
from pathlib import Path

import pandas
import pytest
from click.testing import CliRunner

from colure.app import services
from colure.app.cli import main
from colure.app.scale.batch import COLUMNS, find_items, run_batch, write_table
from colure.app.scale.executors import Failed, workers_of
from colure.app.services.rehearsal import record_of_rehearsal
from colure.app.storage.folders import run_folder
from colure.errors import InputError
from colure.model.chamber import SimulatedChamber
from colure.model.files import save_dataset


def dies(task: int) -> int:
    """Kill its own worker for one of its tasks."""
    if task == 2:
        os.kill(os.getpid(), signal.SIGKILL)
    return 10 * task


def dies_once(task: tuple[str, int]) -> int:
    """Kill its own worker the first time that the third task is tried."""
    flag, number = task
    if number == 2 and not Path(flag).exists():
        Path(flag).touch()
        os.kill(os.getpid(), signal.SIGKILL)
    return 10 * number


def complains(task: str) -> str:
    """Fail in the ways that work can."""
    if task == "input":
        raise InputError(["field = 3: must be at most 2 (mm)"])
    if task == "bug":
        raise RuntimeError("oh")
    return task


@pytest.fixture
def house(tiny_campaign):
    """One campaign with three runs, one of them damaged."""
    # So small a device has no 21 dBi: declared as what it is, its figures may decide a limit.
    device = tiny_campaign / "device.toml"
    text = device.read_text(encoding="utf-8").split("[elements]")[0]
    device.write_text(text.replace("expected_gain_dbi = 21.0", "expected_gain_dbi = 5.0"), encoding="utf-8")
    record = record_of_rehearsal(*services.make_plan(tiny_campaign), truth=SimulatedChamber(noise=False))
    for name in ("a", "b", "c"):
        run = run_folder(tiny_campaign, name)
        run.path.mkdir(parents=True)
        save_dataset(record, run.record)
    run_folder(tiny_campaign, "c").record.write_bytes(b"no record at all")
    return tiny_campaign


def test_sources_are_found_once_and_nothing_is_passed_over(house, tmp_path):
    everything = [(house.resolve(), name) for name in ("a", "b", "c")]
    listed = tmp_path / "list.txt"
    listed.write_text(f"# runs\n{house}/runs/b\n{house}/runs/a/record.nc\n", encoding="utf-8")

    def names(*sources: str, pattern: str = "*"):
        return [(item.folder.resolve(), item.run) for item in find_items(sources, pattern)]

    assert names(str(house)) == everything
    assert names(str(house.parent)) == everything
    assert names(f"{house}/runs/*", str(house)) == everything
    assert names(f"@{listed}") == [everything[1], everything[0]]
    assert names(str(house), pattern="[ab]") == everything[:2]
    with pytest.raises(InputError) as caught:
        find_items([str(house), str(tmp_path / "nothing"), f"{house}/*.csv"])
    assert len(caught.value.faults) == 2


def test_a_batch_goes_on_and_does_again_only_what_changed(house, tmp_path):
    items = find_items([str(house)])
    first = {one.item.run: one for one in run_batch(items, "evaluate", scheduler="threads", workers=2)}
    assert [first[name].status for name in "abc"] == ["done", "done", "failed"]
    assert "cannot be read as netCDF-4" in first["c"].reason
    again = {one.item.run: one for one in run_batch(items, "evaluate", scheduler="threads", workers=2)}
    assert [again[name].status for name in "abc"] == ["kept", "kept", "failed"]
    assert again["a"].rows == first["a"].rows
    # A result that was touched is made anew; so is everything once a file of the campaign changed.
    figures = run_folder(house, "a").figures
    figures.write_text("[]", encoding="utf-8")
    third = {one.item.run: one.status for one in run_batch(items[:2], "evaluate", scheduler="threads")}
    assert third == {"a": "done", "b": "kept"}
    assert json.loads(figures.read_text(encoding="utf-8"))[0]["name"] == "gain_dbi"
    (house / "evaluation.toml").write_text("beamwidth_levels_db = [6]\n", encoding="utf-8")
    (fourth,) = run_batch(items[1:2], "evaluate", scheduler="threads")
    assert fourth.status == "done" and any(row["name"] == "beamwidth_e_6db_deg" for row in fourth.rows)

    target = tmp_path / "table.csv"
    write_table([*first.values()], target)
    rows = list(csv.DictReader(target.read_text(encoding="utf-8").splitlines()))
    assert tuple(rows[0]) == COLUMNS
    assert {row["kind"] for row in rows} == {"figure", "failure"}
    write_table([*first.values()], tmp_path / "table.parquet")
    frame = pandas.read_parquet(tmp_path / "table.parquet")
    gain = frame[(frame.name == "gain_dbi") & (frame.run == "a")].iloc[0]
    assert gain.lower < gain.value < gain.upper and len(frame) == len(rows)


def test_the_command_says_what_became_of_every_run(house, tmp_path):
    (tmp_path / "limits.toml").write_text(
        'name = "n"\ndocument = "invented"\n[[limits]]\nfigure = "gain_dbi"\nat_least = -50\n', encoding="utf-8"
    )
    table = tmp_path / "t.csv"
    words = [
        "evaluate",
        str(house),
        "--run",
        "*",
        "--scheduler",
        "threads",
        "--specification",
        str(tmp_path / "limits.toml"),
    ]
    outcome = CliRunner().invoke(main, [*words, "--table", str(table), "--json"])
    assert outcome.exit_code == 1
    found = {one["run"]: one for one in json.loads(outcome.stdout)}
    assert found["a"]["verdict"] == "pass" and found["c"]["status"] == "failed" and found["c"]["reason"]
    assert {
        row["outcome"]
        for row in csv.DictReader(table.read_text(encoding="utf-8").splitlines())
        if row["kind"] == "verdict"
    } == {"pass"}
    refused = CliRunner().invoke(main, [*words, "--table", str(table)])
    assert refused.exit_code == 2 and "exists already" in refused.stderr
    shutil.rmtree(house / "runs" / "c")
    whole = CliRunner().invoke(main, [*words])
    assert whole.exit_code == 0 and "2 unchanged and kept" in whole.stdout and "verdicts: 2 pass" in whole.stdout


@pytest.mark.skipif(os.name != "posix", reason="kills processes")
def test_a_worker_that_dies_takes_only_its_own_task_along():
    with workers_of("processes", 2) as many:
        found = dict(many.run(dies, list(range(5))))
    assert {index: value for index, value in found.items() if not isinstance(value, Failed)} == {
        0: 0,
        1: 10,
        3: 30,
        4: 40,
    }
    assert isinstance(found[2], Failed) and "worker was lost" in str(found[2])


@pytest.mark.nightly
@pytest.mark.skipif(os.name != "posix", reason="kills processes")
def test_a_cluster_does_again_what_a_dead_worker_had(tmp_path):
    with workers_of("local", 2) as many:
        found = dict(many.run(dies_once, [(str(tmp_path / "died"), number) for number in range(6)]))
    assert found == {number: 10 * number for number in range(6)}
    assert (tmp_path / "died").exists()


def test_faults_come_back_in_words():
    with workers_of("threads", 2) as many:
        found = dict(many.run(complains, ["fine", "input", "bug"]))
    assert found[0] == "fine"
    assert str(found[1]) == "field = 3: must be at most 2 (mm)" and str(found[2]) == "RuntimeError: oh"
    with pytest.raises(InputError, match="must be threads, processes, local"), workers_of("moon"):
        pass
