"""Several runs on one page: what the page is told, beside what was declared of the simulated devices and what the commands say."""

from __future__ import annotations

import json

import numpy as np
import pytest
from click.testing import CliRunner

from colure.app import services
from colure.app.cli import main
from colure.app.services.rehearsal import _record, measured, record_of_rehearsal
from colure.app.services.starting import start_campaign
from colure.app.storage.folders import run_folder
from colure.app.web.views.aligning import beam_words
from colure.app.web.views.explore import PLAIN, cut, overview
from colure.app.web.views.runs import runs_of
from colure.app.web.views.together import comparison, cuts_of, over_runs, two_set_ups
from colure.errors import InputError
from colure.model.chamber import SimulatedChamber
from colure.model.files import save_dataset
from colure.planning.preflight import make_plan
from tests.app.test_cuts import BOTH, ROLL, campaign
from tests.endtoend.test_near_to_far import edited


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
    with pytest.raises(InputError, match="run one: does not exist; there are no runs here yet"):
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


def test_one_ring_of_maxima_has_no_side_lobe(tmp_path):
    """A half-wave dipole is omnidirectional across its axis: what lies opposite its peak is the same lobe, no side lobe (IEEE Std 145)."""
    start_campaign(tmp_path / "d", kind="dipole", band="2.4-2.5")
    edited(tmp_path / "d", "goal.toml", ("points = 5", "points = 1"), ("stop_ghz = 2.5", "stop_ghz = 2.4"))
    own, plan = services.make_plan(tmp_path / "d")
    run = run_folder(own.folder, "one")
    run.path.mkdir(parents=True)
    save_dataset(
        record_of_rehearsal(own, plan, truth=own.simulated().model_copy(update={"noise": False, "echoes": ()})),
        run.record,
    )
    found = cut(tmp_path / "d", "one", None, PLAIN, 0, 0.0, "ludwig-3")
    assert found["side_lobe_db"] is None and "no single beam" in found["why"]
    # 78 deg is the half-power beamwidth of a half-wave dipole (IEEE handbook value, from memory).
    assert found["beamwidth_deg"] == pytest.approx(78.0, abs=1.5)
    rows = overview(tmp_path / "d", "one", None, PLAIN)["figures"]
    lobe = next(row for row in rows if row["name"] == "side_lobe_e_db")
    assert lobe["value"] is None and "no single beam" in lobe["text"] and lobe["unit"] == ""


@pytest.mark.nightly
@pytest.mark.usefixtures("nightly")
def test_a_beam_search_is_laid_out_as_maps(tmp_path):
    """The strongest cell of both looks holds the declared boresight of a horn (common practice, no source)."""
    own = campaign(tmp_path / "c", "horn", "37-40", ROLL, 'theta_deg = "-60:60:10"\nphi_deg = 0\n')
    assert CliRunner().invoke(main, ["beam", str(own.folder), "--yes"]).exit_code == 0
    found = beam_words(own.folder, "beam")
    assert [one["stage"] for one in found["maps"]] == ["coarse", "fine"]
    for one in found["maps"]:
        level = np.array([np.nan if v is None else v for v in one["level_db"]]).reshape(len(one["elevation_deg"]), -1)
        row, column = np.unravel_index(np.nanargmax(level), level.shape)
        assert abs(one["elevation_deg"][row]) <= 10.0 and abs(one["azimuth_deg"][column]) <= 10.0
    assert found["beam_deg"] is not None and np.abs(found["beam_deg"]).max() < 1.0
