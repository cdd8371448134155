"""`colure demo` as a user runs it."""

from __future__ import annotations

import json
import os
import re
import signal
import subprocess
import sys
import time

import pytest

from colure.model.definitions import BAND_DEFINITIONS
from tests.crash.test_kill import committed
from tests.printed import pages_of

EVERY = {what.name for what in BAND_DEFINITIONS}


@pytest.fixture(scope="module")
def demo(tmp_path_factory, testrun_uid):
    """One demo for all processes of a test run: who comes first runs it, the others wait for it."""
    folder = tmp_path_factory.getbasetemp().parent / f"demo-{testrun_uid}"
    result = folder / "result.json"
    try:
        folder.mkdir()
    except FileExistsError:
        for _ in range(3000):
            if result.exists():
                break
            time.sleep(0.1)
        return folder, json.loads(result.read_text("utf-8"))
    done = subprocess.run(
        [sys.executable, "-m", "colure", "demo", "--json"], cwd=folder, capture_output=True, text=True, timeout=300
    )
    whole = folder / "part.json"
    whole.write_text(done.stdout if done.returncode == 0 else json.dumps({"failed": done.stderr[-2000:]}), "utf-8")
    whole.replace(result)
    assert done.returncode == 0, done.stderr + done.stdout[-2000:]
    return folder, json.loads(done.stdout)


def test_every_figure_is_inside_its_interval(demo):
    _, result = demo
    assert result["inside"] == result["total"] == 11 * len(EVERY)
    assert "invented" in result["note"]
    by_name = {}
    for row in result["figures"]:
        by_name.setdefault(row["name"], []).append(row)
    assert set(by_name) == EVERY
    # Intervals that always hold because they are wide prove nothing: these are upper limits.
    for name, limit in {"gain_dbi": 0.35, "directivity_dbi": 0.06, "beamwidth_e_deg": 0.2, "beam_azimuth_deg": 0.15,
                        "side_lobe_e_db": 0.5, "front_to_back_db": 4.5, "xpd_db": 0.8}.items():  # fmt: skip
        assert max(row["expanded_uncertainty"] for row in by_name[name]) < limit, name


def test_files_exist_and_open(demo):
    folder, result = demo
    for path in result["files"].values():
        assert (folder / path).stat().st_size > 1000
    import h5py

    with h5py.File(folder / result["files"]["record"]) as record:
        assert record["trace"].shape == (4361, 11, 1)


def test_budget_has_its_rows(demo):
    folder, result = demo
    figures = json.loads((folder / result["files"]["figures"]).read_text(encoding="utf-8"))
    terms = {row["term"] for row in figures[0]["budget"]}
    assert {"noise", "drift residual", "reference gain", "range echoes", "alignment: device pose"} <= terms


def test_html_is_self_contained_and_says_it_is_invented(demo):
    folder, result = demo
    text = (folder / result["files"]["report_html"]).read_text(encoding="utf-8")
    assert "invented demo data" in text and "record.nc" in text and "<script" not in text
    assert not re.search(r"(src|href)=['\"](https?:)?//", text)
    assert text.count("<img ") >= 8


def test_pdf_text_is_complete(demo):
    folder, result = demo
    pages = pages_of(folder / result["files"]["report_pdf"])
    text = "\n".join(pages)
    for word in (
        "Set-up and plan",
        "Uncertainty budget",
        "reference gain",
        "Drift",
        "Definitions",
        "root hash",
        "24.250",
    ):
        assert word in text, word


def test_the_journal_proves_itself_whole(demo):
    folder, result = demo
    done = subprocess.run(
        [sys.executable, "-m", "colure", "acquire", result["campaign"], "--verify", "--json"],
        cwd=folder, capture_output=True, text=True, timeout=60,
    )  # fmt: skip
    assert done.returncode == 0 and json.loads(done.stdout)["whole"] is True


@pytest.mark.skipif(os.name == "nt", reason="sends SIGINT to a console process")
def test_ctrl_c_stops_safely_and_resumes(small_campaign):
    command = [sys.executable, "-m", "colure", "acquire", str(small_campaign), "--yes", "--json"]
    child = subprocess.Popen(command, stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True, start_new_session=True)
    journal = small_campaign / "runs" / "first" / "journal.sqlite"
    while len(committed(journal)) < 20:
        time.sleep(0.005)
    os.killpg(child.pid, signal.SIGINT)  # as a terminal does: the simulated chamber gets it too
    out, err = child.communicate(timeout=60)
    assert child.returncode == 3, err
    stopped = json.loads(out)
    assert stopped["reason"] == "operator pressed Ctrl-C" and 20 <= stopped["measured"] < stopped["total"]
    result = json.loads(subprocess.run(command, capture_output=True, text=True, timeout=60).stdout)
    assert result["state"] == "done" and result["measured"] == result["total"]


def test_a_missed_truth_is_told_by_the_exit_code(small_campaign, tmp_path, monkeypatch, capsys, request):
    """A device declared far too small is undersampled: the figures miss, and the demo says so."""
    if not request.config.getoption("--nightly"):
        pytest.skip("another whole demo: for the nightly run")
    from colure.app.commands import demo as demo_module
    from colure.app.services import starting

    limits = small_campaign / "limits.toml"
    limits.write_text(limits.read_text("utf-8").replace("band_ghz = [24.12, 24.13]\n", ""), "utf-8")
    monkeypatch.setattr(starting, "DEMO_FOLDER", small_campaign)
    assert demo_module.run_demo(tmp_path / "wrong", as_json=True) == 1
    result = json.loads(capsys.readouterr().out)
    assert result["inside"] < result["total"] and not all(row["inside"] for row in result["figures"])
