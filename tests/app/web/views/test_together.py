"""Several runs on one page: what the page is told, beside what was declared of the simulated devices and what the commands say."""

from __future__ import annotations

import json

import numpy as np
import pytest
from click.testing import CliRunner

from colure.app import services
from colure.app.cli import main
from colure.app.services.rehearsal import _record, measured, record_of_rehearsal
from colure.app.storage.folders import run_folder
from colure.app.web.views.explore import PLAIN, overview
from colure.app.web.views.runs import runs_of
from colure.app.web.views.together import comparison, cuts_of, over_runs, two_set_ups
from colure.errors import InputError
from colure.model.chamber import SimulatedChamber
from colure.model.files import save_dataset
from colure.planning.preflight import make_plan
from tests.app.test_cuts import BOTH, ROLL, campaign


def kept(folder, name, **truth):
    own, plan = services.make_plan(folder)
    run = run_folder(folder, name)
    run.path.mkdir(parents=True)
    save_dataset(record_of_rehearsal(own, plan, truth=SimulatedChamber(noise=False, **truth)), run.record)


def test_the_page_is_told_what_the_command_says(tiny_campaign, request):
    """The second device stands askew by 0.5 deg: its figures change, and matching the turn takes some of it out."""
    if not request.config.getoption("--nightly"):
        pytest.skip("nightly")
    kept(tiny_campaign, "one")
    kept(tiny_campaign, "two", device_tilt_deg=0.5)
    found = comparison(tiny_campaign, "one", None, "two", ["frame"])
    plain = comparison(tiny_campaign, "one", None, "two", [])
    assert plain["difference_db"] > found["difference_db"] and np.linalg.norm(found["rotation_deg"]) > 0.05
    words = ["compare", str(tiny_campaign), "two", "--run", "one", "--match", "frame", "--json"]
    told = json.loads(CliRunner().invoke(main, words).output)
    assert [row["label"] for row in found["rows"]] == [row["label"] for row in told["figures"]]
    assert [row["change"] for row in found["rows"]] == [row["change"] for row in told["figures"]]
    assert found["rotation_deg"] == told["rotation_deg"] and found["agrees"] == told["agrees"]
    json.dumps([found, plain], allow_nan=False)  # the page's answers hold no nan


def test_what_cannot_be_laid_together_is_refused(tiny_campaign):
    with pytest.raises(InputError, match="the same run"):
        two_set_ups(tiny_campaign, "one", None, tiny_campaign, "one")
    with pytest.raises(InputError, match="run colure evaluate first"):
        over_runs(tiny_campaign, ["one", "two"], "one", None)
    with pytest.raises(InputError, match="run one: holds no record yet"):
        comparison(tiny_campaign, "one", None, "two", [])
    with pytest.raises(InputError, match="holds no cuts alone"):
        cuts_of(tiny_campaign, "one", None, None)


def files_of(folder):
    """Every file and folder below a folder, with size and time of its last change."""
    return {str(path.relative_to(folder)): (path.stat().st_size, path.stat().st_mtime_ns) for path in folder.rglob("*")}


def test_looking_writes_nothing(tmp_path, tiny_campaign):
    """A run that somebody opens only is as it was: no pattern, no table, no picture appears (common practice, no source)."""
    own, plan = make_plan(campaign(tmp_path / "c", "horn", "37-40", ROLL, 'theta_deg = "-60:60:10"\nphi_deg = 0\n'))
    run = run_folder(own.folder, "first")
    run.path.mkdir(parents=True)
    save_dataset(_record(plan, *measured(own, plan, seed=1)), run.record)
    kept(tiny_campaign, "one")
    before = files_of(own.folder), files_of(tiny_campaign)
    assert cuts_of(own.folder, "first", None, None)["cuts"]
    assert runs_of(own.folder)[0]["kind"] == "cuts"
    assert overview(tiny_campaign, "one", None, PLAIN)["figures"]
    assert runs_of(tiny_campaign)[0]["kind"] == "sphere"
    assert (files_of(own.folder), files_of(tiny_campaign)) == before


def test_a_run_of_cuts_has_charts_of_its_own(tmp_path, request):
    if not request.config.getoption("--nightly"):
        pytest.skip("nightly")
    own, plan = make_plan(
        campaign(tmp_path / "c", "horn", "37-40", ROLL, f'theta_deg = "-60:60:4"\nphi_deg = 0\n{BOTH}')
    )
    run = run_folder(own.folder, "first")
    run.path.mkdir(parents=True)
    save_dataset(_record(plan, *measured(own, plan, seed=1)), run.record)
    found = cuts_of(own.folder, "first", None, 1)
    (cut,) = found["cuts"]
    assert found["of"]["frequency_hz"] == 40e9 and cut["angle_deg"] == pytest.approx(np.arange(-60.0, 61.0, 4.0))
    # A horn on the roll axis is strongest on boresight, and its interval holds its level (common practice, no source).
    peak = int(np.argmax(cut["co"]))
    assert abs(cut["angle_deg"][peak]) <= 4.0 and cut["lower"][peak] < cut["co"][peak] < cut["upper"][peak]
    assert found["figures"] and all(one["text"] for one in found["figures"])
    json.dumps(found, allow_nan=False)
    with pytest.raises(InputError, match="must be from 0 to 1"):
        cuts_of(own.folder, "first", None, 2)
