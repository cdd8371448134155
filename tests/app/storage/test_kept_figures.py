"""Figures kept by content: known answers come at once, and nothing that changed is answered from memory."""

from __future__ import annotations

import json

import pytest

from colure.app import services
from colure.app.storage.folders import RunFolder
from colure.app.storage.kept_figures import keep_figures, kept_figures, key_of
from colure.model.campaign import Campaign
from colure.model.figure import BudgetRow, Figure

FIGURE = Figure(name="gain_dbi", label="Peak gain", value=16.0, unit="dBi", frequency_hz=24e9, lower=15.8,
                upper=float("inf"), definition="what", source="where", coverage_factor=1.97,
                budget=(BudgetRow(term="noise", expanded=0.02, basis="sweeps", dof=15.0),), not_included=("leakage",),
                cautions=("look: the beam lies aside",))  # fmt: skip


@pytest.fixture
def run(campaign_folder):
    found = RunFolder(campaign_folder / "runs" / "first")
    found.path.mkdir(parents=True)
    for one in (found.record, found.figures, found.correlations, found.pattern):
        one.write_text("as it was", encoding="utf-8")
    return found


def test_a_known_answer_is_given_again_without_processing(campaign_folder, run):
    campaign = Campaign.load(campaign_folder)
    written = [run.figures, run.correlations]
    keep_figures(run, key_of(campaign, run), written, [FIGURE])

    def never():
        raise AssertionError("processed again")

    assert services.known_figures(campaign, run, never) == [FIGURE]


def test_the_same_folder_named_from_elsewhere_is_the_same_question(campaign_folder, run, monkeypatch):
    key = key_of(Campaign.load(campaign_folder), run)
    monkeypatch.chdir(campaign_folder.parent)
    near = RunFolder(run.path.relative_to(campaign_folder.parent))
    assert key_of(Campaign.load(near.path.parent.parent), near) == key


@pytest.mark.parametrize("changed", ["record", "figures", "correlations", "chamber", "recipe", "pattern"])
def test_whatever_changed_is_worked_out_anew(campaign_folder, run, changed):
    campaign = Campaign.load(campaign_folder)
    written = [run.figures, run.correlations]
    keep_figures(run, key_of(campaign, run), written, [FIGURE])
    if changed == "chamber":
        file = campaign_folder / "chamber.toml"
        file.write_text(file.read_text(encoding="utf-8") + "# measured anew\n", encoding="utf-8")
    elif changed == "recipe":
        (campaign_folder / "recipe.toml").write_text("", encoding="utf-8")
    elif changed == "pattern":
        run.pattern.unlink()
    else:
        getattr(run, changed).write_text("another", encoding="utf-8")

    class Asked(Exception):
        pass

    def processed():
        raise Asked

    with pytest.raises(Asked):
        services.known_figures(campaign, run, processed)


def test_a_damaged_memory_is_no_answer(campaign_folder, run):
    key = "k"
    keep_figures(run, key, [run.figures], [FIGURE])
    place = run.path / "figures-kept.json"
    content = json.loads(place.read_text(encoding="utf-8"))
    del content["figures"][0]["value"]
    place.write_text(json.dumps(content), encoding="utf-8")
    assert kept_figures(run, key, [run.figures]) is None
    place.write_text("{", encoding="utf-8")
    assert kept_figures(run, key, [run.figures]) is None
