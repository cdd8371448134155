"""What a user does by hand from Python, on a dipole: another recipe for once, and the analysis without a probe."""

from __future__ import annotations

import json

import colure
from colure.analysis import default_recipe, process, self_check
from colure.app.services.rehearsal import record_of_rehearsal
from colure.app.services.starting import start_campaign
from colure.app.storage.folders import run_folder
from colure.model.campaign import Campaign
from colure.model.files import save_dataset
from colure.planning.preflight import make_plan

UNCORRECTED = "no probe correction was made"


def test_another_recipe_leaves_the_saved_pattern_and_a_missing_probe_is_said(tmp_path, nightly):
    start_campaign(tmp_path / "c", kind="dipole", band="2.4-2.5")
    goal = (tmp_path / "c" / "goal.toml").read_text(encoding="utf-8").splitlines()
    goal = ["points = 2" if line.startswith("points") else line for line in goal]
    (tmp_path / "c" / "goal.toml").write_text("\n".join(goal), encoding="utf-8")
    campaign, plan = make_plan(Campaign.load(tmp_path / "c"))
    files = run_folder(tmp_path / "c", "first")
    files.path.mkdir(parents=True)
    save_dataset(record_of_rehearsal(campaign, plan), files.record)
    run = colure.open_campaign(tmp_path / "c").run("first")
    record = run.record.data

    saved = run.process()
    assert saved == run.process()  # processed once, then read: equal by value
    before = {path.name: path.read_bytes() for path in files.path.iterdir()}
    other = run.process(recipe=default_recipe(record, campaign.chamber, campaign.device).without("drift"))
    assert "drift" in saved.steps and "drift" not in other.steps and other != saved
    assert {path.name: path.read_bytes() for path in files.path.iterdir()} == before

    assert UNCORRECTED not in saved.data.attrs["history_json"]
    assert not any(UNCORRECTED in one.text for one in run.findings())
    plain = process(record, campaign.chamber, campaign.device)
    assert UNCORRECTED in json.loads(plain.pattern.attrs["history_json"])[-1]["parameters"]["probe"]
    assert any(UNCORRECTED in one.text for one in self_check(plain, campaign.chamber, campaign.device.slant_deg))
