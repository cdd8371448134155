"""Files that were edited after a run began: a resumed run says what changed, and whoever reads the run is told (common practice, no source)."""

from __future__ import annotations

import pytest
from click.testing import CliRunner

from colure.app import services
from colure.app.cli import main
from colure.app.storage.begun import FILE, changed_since
from colure.app.storage.folders import run_folder
from colure.errors import InputError
from colure.model.campaign import Campaign
from tests.ranges import TWO, range_campaign, wired


def edited(folder, file, old, new):
    text = (folder / file).read_text(encoding="utf-8")
    assert old in text
    (folder / file).write_text(text.replace(old, new, 1), encoding="utf-8")


def test_a_run_tells_what_changed_since_it_began_and_is_not_resumed_under_other_limits(tmp_path):
    folder = range_campaign(tmp_path / "c", TWO)
    run = run_folder(folder, "a")
    with wired(folder) as (campaign, _):
        _, plan = services.make_plan(folder)
        services.acquire(campaign, plan, run)
    assert changed_since(run, Campaign.load(folder)) == [], "addresses do not count"
    edited(folder, "chamber.toml", "max_deg = 200", "max_deg = 190")
    edited(folder, "device.toml", 'name = "', 'name = "Other ')
    lines = changed_since(run, Campaign.load(folder))
    assert len(lines) == 2 and "chamber.toml: probe.roll.max_deg = 190.0, was 200.0" in lines[0], lines
    assert "device.toml: name = 'Other " in lines[1]
    done = CliRunner().invoke(main, ["verdict", str(folder), str(folder / "limits.toml"), "--run", "a"])
    assert "caution: chamber.toml: probe.roll.max_deg = 190.0, was 200.0" in done.output
    with wired(folder) as (campaign, _):
        _, plan = services.make_plan(folder)
        with pytest.raises(InputError, match=r"axes.probe.max_deg = 190.0: must be 200.0 to resume"):
            services.acquire(campaign, plan, run)
    (run.path / FILE).write_text("[1", encoding="utf-8")
    with pytest.raises(InputError, match="begun.json: cannot be read"):
        changed_since(run, Campaign.load(folder))
    (run.path / FILE).unlink()
    assert changed_since(run, Campaign.load(folder)) == []


def test_verdict_names_a_run_that_is_not_there_before_a_file_of_limits_that_is_not(campaign_folder):
    done = CliRunner().invoke(main, ["verdict", str(campaign_folder), "nothing.toml", "--run", "other"])
    assert done.exit_code == 2 and "run other: does not exist" in done.output and "nothing.toml" not in done.output
