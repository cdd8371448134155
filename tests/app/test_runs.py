"""What a run is kept and found by: it decides nothing that is measured, and changing it does not forbid resuming."""

from __future__ import annotations

import json
from dataclasses import replace

import pytest
from click.testing import CliRunner

from colure.app.cli import main
from colure.app.services import cuts
from colure.app.services.starting import start_campaign
from colure.app.storage.folders import run_folder
from colure.app.storage.run_identity import identity_of, keep_identity
from colure.errors import InputError
from colure.model.campaign import Campaign
from colure.model.identity import RunIdentity
from colure.planning.preflight import make_plan


@pytest.fixture
def folder(tmp_path):
    start_campaign(tmp_path / "c", kind="patch", band="5-5.5")
    return tmp_path / "c"


def colure(*words):
    return CliRunner().invoke(main, [str(word) for word in words])


def test_what_is_said_is_kept_and_found(folder):
    done = colure(
        "cut",
        folder,
        "--theta",
        "-20:20:10",
        "--phi",
        "0",
        "--run",
        "one",
        "--yes",
        "--tag",
        "lot 7",
        "--serial",
        "A-12",
    )
    assert done.exit_code == 0, done.output
    # A run that is there is read: nothing is asked and nothing moves.
    read = colure("cut", folder, "--theta", "-20:20:10", "--phi", "0", "--run", "one", "--json")
    assert read.exit_code == 0 and "figures" in read.output, read.output
    assert colure("cut", folder, "--theta", "-20:20:5", "--phi", "0", "--run", "one").exit_code == 2
    made = run_folder(folder, "one")
    assert identity_of(made).said == {"tag": "lot 7", "serial": "A-12"}
    keep_identity(made, RunIdentity(operator="day shift"))
    assert identity_of(made).said == {"tag": "lot 7", "serial": "A-12", "operator": "day shift"}
    found = json.loads(colure("runs", folder, "--filter", "LOT a-12", "--json").output)
    assert [one["name"] for one in found] == ["one"]
    assert found[0]["holds"] == "cuts"
    assert json.loads(colure("runs", folder, "--filter", "lot 8", "--json").output) == []
    assert "lot 7" in colure("runs", folder, "--sort", "serial").output
    cuts.write_report(Campaign.load(folder), made)
    assert "A-12" in made.report_html.read_text(encoding="utf-8")


def test_names_do_not_make_another_plan(folder):
    campaign = Campaign.load(folder)
    first = make_plan(campaign)[1].hash
    goal = campaign.goal.model_copy(update={"name": "Another name", "run": RunIdentity(tag="x"), "monitor_ghz": 5.2})
    renamed = replace(
        campaign,
        goal=goal,
        device=campaign.device.model_copy(update={"name": "Renamed", "note": "n"}),
        chamber=campaign.chamber.model_copy(update={"name": "Hall 2"}),
    )
    assert make_plan(renamed)[1].hash == first
    wider = replace(campaign, goal=campaign.goal.model_copy(update={"wanted_level_db": -30.0}))
    assert make_plan(wider)[1].hash != first


def test_an_identity_that_is_none_is_refused(folder):
    made = run_folder(folder, "one")
    made.path.mkdir(parents=True)
    (made.path / "identity.json").write_text('{"owner": "x"}')
    with pytest.raises(InputError, match="unknown field"):
        identity_of(made)
    assert colure("cut", folder, "--phi", "0", "--run", "two", "--yes", "--tag", "t" * 201).exit_code == 2


WRONGLY_NAMED = (
    ("process", "{}"), ("evaluate", "{}"), ("findings", "{}"), ("effects", "{}"), ("report", "{}"), ("look", "{}"),
    ("coverage", "{}"), ("calibrate", "{}"), ("acquire", "{}", "--verify"), ("acquire", "{}", "--rebuild"),
    ("plot", "{}", "o.png"), ("pattern", "{}", "o.csv"), ("export", "{}", "csv", "o.csv"), ("export", "{}", "reflection", "o.s1p"),
)  # fmt: skip


@pytest.mark.parametrize("words", WRONGLY_NAMED, ids=" ".join)
def test_a_wrong_name_of_a_run_lists_those_that_exist(tiny_campaign, words):
    for name in ("one", "two"):
        (tiny_campaign / "runs" / name).mkdir(parents=True)
        (tiny_campaign / "runs" / name / "record.nc").touch()
    said = colure(*[word.replace("{}", str(tiny_campaign)) for word in words], "--run", "tow")
    assert said.exit_code == 2
    assert "run tow: does not exist; runs here: one, two" in " ".join(said.output.split())
