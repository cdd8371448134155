"""chamber.toml edited after a run: results keep to what it began with, unless told otherwise (common practice, no source).

The figures before the edit are what the figures after it are held against.
"""

from __future__ import annotations

import json
from unittest.mock import Mock

import pytest
import xarray as xr
from click.testing import CliRunner

import colure
from colure.analysis.uncertainty import budget
from colure.app import services
from colure.app.cli import main
from colure.app.services import processing
from colure.app.services.rehearsal import record_of_rehearsal
from colure.app.services.starting import start_campaign
from colure.app.storage.begun import FILE, as_begun, campaign_of, changed_since, keep_begun
from colure.app.storage.folders import run_folder
from colure.app.web.views import explore, together
from colure.errors import InputError
from colure.model.campaign import Campaign
from colure.model.chamber import SimulatedChamber
from colure.model.files import save_dataset
from tests.endtoend.test_near_to_far import edited

GAIN = ("gain_dbi", 24.0e9)
LIMITS = """
name = "gain"
decision = "simple"

[[limits]]
figure = "gain_dbi"
at_least = -40.0
"""


@pytest.fixture
def measured(tiny_campaign):
    """A run of the small device, and the range length edited afterwards: 1.2 m became 0.6 m."""
    campaign, plan = services.make_plan(tiny_campaign)
    run = run_folder(tiny_campaign, "first")
    run.path.mkdir(parents=True)
    save_dataset(record_of_rehearsal(campaign, plan, truth=SimulatedChamber(seed=1)), run.record)
    keep_begun(run, campaign)
    before = figures(tiny_campaign)
    edited(tiny_campaign, "chamber.toml", ("range_length_m = 1.2 ", "range_length_m = 0.6 "))
    return tiny_campaign, before


def figures(folder, *options):
    done = CliRunner().invoke(main, ["evaluate", str(folder), "--json", *options])
    assert done.exit_code in (0, 1), done.output
    rows = json.loads(done.stdout)
    return {(row["name"], row["frequency_hz"]): row["value"] for row in rows}, done.stderr


def test_the_chamber_that_a_run_began_with_is_used_and_every_edit_is_told(measured):
    folder, (before, told) = measured
    assert "caution: chamber.toml" not in told
    after, told = figures(folder)
    assert after == before
    assert "chamber.toml: range_length_m = 0.6, was 1.2 when the run began; 1.2 is used" in told
    assert "--present-chamber" in told
    present, told = figures(folder, "--present-chamber")
    assert abs(present[GAIN] - before[GAIN]) > 0.05, "dB: the edit moves the gain"
    assert "range_length_m = 0.6, was 1.2 when the run began; 0.6 is used" in told
    # What was kept for one question does not answer the other.
    assert figures(folder)[0] == before


@pytest.mark.nightly
def test_verdict_report_batch_python_and_page_use_the_same_values(measured):
    folder, (before, _) = measured
    limits = folder / "limits.toml"
    limits.write_text(LIMITS, encoding="utf-8")

    def held(*options):
        done = CliRunner().invoke(main, ["verdict", str(folder), str(limits), "--json", *options])
        assert "range_length_m = 0.6, was 1.2" in done.stderr, done.output
        rows = json.loads(run_folder(folder, "first").figures.read_text(encoding="utf-8"))
        return next(row["value"] for row in rows if (row["name"], row["frequency_hz"]) == GAIN)

    assert abs(held("--present-chamber") - before[GAIN]) > 0.05
    assert held() == before[GAIN]
    campaign = colure.open_campaign(folder)
    run = campaign.run("first")
    assert [line for line in run.edited if "1.2 is used" in line]
    values = {(one.name, one.frequency_hz): one.value for one in run.evaluate()}
    assert values[GAIN] == before[GAIN]
    other = {(one.name, one.frequency_hz): one.value for one in campaign.run("first", present_chamber=True).evaluate()}
    assert abs(other[GAIN] - before[GAIN]) > 0.05
    # The page, where nothing is kept, and a batch.
    processed = explore.opened(folder, "first")
    assert processed.chamber is not None and processed.chamber.range_length_m == 1.2
    assert "1.2 is used" in " ".join(explore.overview(folder, "first", None, explore.PLAIN)["edited"])
    batch = ["evaluate", str(folder), "--run", "f*", "--scheduler", "threads", "--workers", "1", "--table"]
    for name, options in (("then.csv", []), ("now.csv", ["--present-chamber"])):
        done = CliRunner().invoke(main, [*batch, str(folder.parent / name), *options])
        assert done.exit_code == 0 and "range_length_m = 0.6 (1.2;" in done.stderr, done.output
    rows = {name: (folder.parent / name).read_text().splitlines() for name in ("then.csv", "now.csv")}
    shown = f"{before[GAIN]:.9g}"
    assert any(shown in row for row in rows["then.csv"]) and not any(shown in row for row in rows["now.csv"])


@pytest.mark.nightly
def test_the_page_shows_no_figure_and_no_verdict_of_the_present_chamber_as_its_own(measured):
    folder, (before, _) = measured
    (folder / "limits.toml").write_text(LIMITS, encoding="utf-8")

    def shown():
        rows = explore.overview(folder, "first", None, explore.PLAIN)["figures"]
        return next(row for row in rows if (row["name"], row["frequency_hz"]) == GAIN)

    def current():
        verdicts = explore.verdicts(folder, "first", None)
        return verdicts is not None and verdicts["current"]

    judge = ["verdict", str(folder), str(folder / "limits.toml")]
    CliRunner().invoke(main, [*judge, "--present-chamber"])
    figures(folder, "--present-chamber")
    # Without its interval a value is not corrected for what errors add to it: 0.001 dB here, and 0.16 dB by the edit.
    assert abs(shown()["value"] - before[GAIN]) < 0.01 and shown()["upper"] is None and not current()
    CliRunner().invoke(main, judge)
    figures(folder)
    assert abs(shown()["value"] - before[GAIN]) < 1e-6 and current()


@pytest.fixture
def lengths(small_campaign, monkeypatch):
    """Tell with which range lengths (m) commands work runs out, without working them out: `second` began after the edit."""
    taken, stops = [], ["first"]

    def process(campaign, run, **_options):
        taken.append((run.path.name, campaign.chamber.range_length_m))
        if run.path.name == stops[-1]:
            raise InputError(["far enough"])
        return Mock()

    def of(*command, last="first"):
        taken.clear()
        stops.append(last)
        done = CliRunner().invoke(main, [str(part) for part in command])
        assert done.exit_code == 2 and "far enough" in done.stderr, done.output
        return taken

    for name in ("first", "second"):
        run = run_folder(small_campaign, name)
        run.path.mkdir(parents=True)
        save_dataset(xr.Dataset(attrs={"states": "", "kind": "sphere"}), run.record)
        keep_begun(run, Campaign.load(small_campaign))
        if name == "first":
            edited(small_campaign, "chamber.toml", ("range_length_m = 1.2 ", "range_length_m = 0.6 "))
    monkeypatch.setattr(processing, "process", process)
    monkeypatch.setattr(budget, "figures_with_budget", lambda _inputs: [])
    return small_campaign, of


@pytest.mark.parametrize(("kind", "name"), [("csv", "a.csv"), ("figures", "a.csv"), ("touchstone", "a.s2p")])
def test_an_export_uses_the_present_chamber_if_asked(lengths, tmp_path, kind, name):
    folder, of = lengths
    command = ("export", folder, kind, tmp_path / name)
    assert of(*command) == [("first", 1.2)]
    assert of(*command, "--present-chamber") == [("first", 0.6)]


@pytest.mark.parametrize("kind", [("cuts",), ("aperture", "--rows", 2, "--columns", 2, "--pitch-mm", 6.2)])
def test_a_picture_uses_the_present_chamber_if_asked(lengths, tmp_path, kind):
    folder, of = lengths
    command = ("plot", folder, tmp_path / "a.png", "--kind", *kind)
    assert of(*command) == [("first", 1.2)]
    assert of(*command, "--present-chamber") == [("first", 0.6)]


def test_each_of_two_compared_runs_has_the_chamber_that_it_began_with(lengths):
    folder, of = lengths
    each = [("first", 1.2), ("second", 0.6)]
    assert of("compare", folder, "second", last="second") == each
    # Edited once more: each of both began with something else than chamber.toml says now, and is named.
    edited(folder, "chamber.toml", ("range_length_m = 0.6 ", "range_length_m = 0.7 "))
    done = CliRunner().invoke(main, ["compare", str(folder), "second"])
    for name, then in (("first", "1.2"), ("second", "0.6")):
        words = f"caution: {folder.name}/{name}: chamber.toml: range_length_m = 0.7, was {then} when the run began; {then} is used"
        assert words in done.stderr
    edited(folder, "chamber.toml", ("range_length_m = 0.7 ", "range_length_m = 0.6 "))
    present = of("compare", folder, "second", "--present-chamber", last="second")
    assert present == [("first", 0.6), ("second", 0.6)]
    # In Python and on the page.
    campaign = colure.open_campaign(folder)
    for asked in (
        lambda: campaign.run("first").compare(campaign.run("second")),
        lambda: together.comparison(folder, "first", None, "second", []),
    ):
        present.clear()
        with pytest.raises(InputError, match="far enough"):
            asked()
        assert present == each


def test_a_far_field_file_has_no_present_chamber():
    for command in (("export", "far.nc", "csv", "o.csv"), ("plot", "far.nc", "o.png"), ("compare", "far.nc", "o.nc")):
        done = CliRunner().invoke(main, [*command, "--present-chamber"])
        assert done.exit_code == 2 and "--present-chamber: only for a run; far.nc is a far-field file" in done.stderr


def test_a_report_states_what_was_edited_and_which_values_it_uses(measured):
    folder, _ = measured
    page = folder / "runs" / "first" / "report.html"
    (folder / "report.toml").write_text('form = "short"\n', encoding="utf-8")
    for options, words in (([], "range_length_m = 1.2 (0.6)"), (["--present-chamber"], "range_length_m = 0.6 (1.2)")):
        done = CliRunner().invoke(main, ["report", str(folder), *options])
        assert done.exit_code == 0, done.output
        assert words in page.read_text(encoding="utf-8")
        assert "range_length_m = 0.6, was 1.2" in done.stderr


def test_a_device_that_was_corrected_and_a_room_that_was_learned_are_used_as_declared_now(measured):
    folder, _ = measured
    run = run_folder(folder, "first")
    edited(folder, "device.toml", ('name = "', 'name = "Other '))
    edited(folder, "chamber.toml", ("range_length_m = 0.6 ", 'room = "room.nc"\nrange_length_m = 1.2 '))
    campaign = campaign_of(folder, run)
    assert campaign.device.name.startswith("Other ") and campaign.chamber.room == "room.nc"
    lines = changed_since(run, campaign)
    assert len(lines) == 2 and "'room.nc' is used" in lines[0] and "'Other" in lines[1].rpartition(";")[2]


def test_a_run_that_kept_nothing_is_worked_out_as_declared_now_and_a_damaged_one_is_refused(measured):
    folder, _ = measured
    run, present = run_folder(folder, "first"), Campaign.load(folder)
    kept = json.loads((run.path / FILE).read_text(encoding="utf-8"))
    kept["chamber"]["range_length_m"] = -1.0
    (run.path / FILE).write_text(json.dumps(kept), encoding="utf-8")
    with pytest.raises(
        InputError, match=r"begun.json: as the run began: chamber.toml: range_length_m = -1.0.*as it is now"
    ):
        as_begun(run, present)
    assert as_begun(run, present, present=True) is present
    (run.path / FILE).unlink()
    assert as_begun(run, present) is present


@pytest.mark.parametrize("kind", ["patch", "dipole", "horn"])
def test_every_entry_of_a_chamber_comes_back_as_it_was_kept(tmp_path, kind):
    start_campaign(tmp_path / "c", kind=kind, band="37-39" if kind == "horn" else "5-5.5")
    campaign, run = Campaign.load(tmp_path / "c"), run_folder(tmp_path / "c", "first")
    run.path.mkdir(parents=True)
    keep_begun(run, campaign)
    edited(tmp_path / "c", "chamber.toml", ("tie_interval_s = ", "tie_interval_s = 1"))
    back = campaign_of(tmp_path / "c", run)
    assert back.chamber == campaign.chamber and back.chamber != Campaign.load(tmp_path / "c").chamber


def test_settings_that_the_goal_chooses_are_no_edits_of_the_chamber(small_campaign):
    goal = small_campaign / "goal.toml"
    goal.write_text("if_bandwidth_hz = 123\n" + goal.read_text(encoding="utf-8"), encoding="utf-8")
    run, present = run_folder(small_campaign, "first"), Campaign.load(small_campaign)
    run.path.mkdir(parents=True)
    keep_begun(run, services.make_plan(small_campaign)[0])
    assert json.loads((run.path / FILE).read_text(encoding="utf-8"))["chamber"]["analyzer"]["if_bandwidth_hz"] == 123
    assert changed_since(run, present) == [] and as_begun(run, present) is present
