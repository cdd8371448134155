"""A run of a plan that no check has passed starts, and says so: before the start, in the journal, the record and the report."""

from __future__ import annotations

import json

from click.testing import CliRunner

from colure.acquire.journal import Journal
from colure.acquire.outcome import Outcome
from colure.acquire.states import State
from colure.app import services
from colure.app.cli import main
from colure.app.services.bench_check import keep_check, mark_of, unchecked
from colure.app.services.cautions import cautions_of
from colure.app.services.particulars import checks_of
from colure.app.storage.folders import run_folder
from colure.model.campaign import Campaign
from colure.model.files import open_dataset
from colure.report.translation import Translation

NOTHING = "not checked before: instruments, level and hold (no check of this plan passed)"
SENSES = "not checked before: which way the axes turn (no check with `senses` passed)"


def at_real_addresses(folder) -> Campaign:
    """The campaign with instruments of its own; nothing is connected here."""
    path = folder / "chamber.toml"
    text = path.read_text(encoding="utf-8").replace('resource = "twin"', 'resource = "TCPIP::192.0.2.7::5025::SOCKET"')
    path.write_text(text, encoding="utf-8")
    return Campaign.load(folder)


def test_what_was_not_checked_is_said_until_it_was(tiny_campaign):
    simulated, plan = services.make_plan(tiny_campaign)
    assert unchecked(simulated, plan) == [], "nothing real moves"
    real = at_real_addresses(tiny_campaign)
    assert unchecked(real, plan) == [NOTHING, SENSES]
    assert cautions_of(real, plan)[:2] == [f"N{text[1:]}." for text in (NOTHING, SENSES)]
    keep_check(tiny_campaign, plan.hash, ["level: 20 dB too low"], None, under=mark_of(real))
    assert unchecked(real, plan) == [NOTHING, SENSES], "a check that failed is none"
    keep_check(tiny_campaign, "another", [], None, under=mark_of(real))
    (told, senses) = unchecked(real, plan)
    assert told.startswith("not checked before: this plan (its instruments passed with another plan, 20")
    assert senses == SENSES
    keep_check(tiny_campaign, plan.hash, [], [], under=mark_of(real))
    assert unchecked(real, plan) == []
    keep_check(tiny_campaign, plan.hash, [], None, under=mark_of(real))
    assert unchecked(real, plan) == [], "axes that turned the right way still do"
    path = tiny_campaign / "chamber.toml"
    path.write_text(path.read_text(encoding="utf-8").replace("min_deg = -185", "min_deg = -184", 1), encoding="utf-8")
    changed = Campaign.load(tiny_campaign)
    assert changed.chamber != real.chamber
    assert [text.split(" (")[0] for text in unchecked(changed, plan)] == [
        "not checked before: words, limits or geometry as they are now", SENSES.split(" (", maxsplit=1)[0]
    ]  # fmt: skip
    keep_check(tiny_campaign, plan.hash, [], ["roll turned the wrong way"], under=mark_of(changed))
    assert unchecked(changed, plan) == [SENSES]


def test_a_run_begins_unchecked_and_keeps_that_it_did(tiny_campaign, monkeypatch):
    """The simulated chamber counts as real here."""
    monkeypatch.setattr("colure.app.services.bench_check.SIMULATED", "none")
    campaign, plan = services.make_plan(tiny_campaign)
    run, events, engines = run_folder(tiny_campaign, "first"), [], []

    def listen(event) -> None:
        events.append(event)
        if event.kind == "point":
            engines[0].stop("enough")

    for _ in range(2):
        services.acquire(campaign, plan, run, listener=listen, on_engine=engines.append)
        engines.clear()
    assert [event.text for event in events if event.kind == "warning"][:2] == [NOTHING, SENSES]
    journal = Journal.resume(run.journal)
    assert [text for _, kind, text in journal.events() if kind == "warning"].count(NOTHING) == 2, "each session says it"
    journal.close()
    told = checks_of(open_dataset(run.record))
    assert [text.split("UTC, ")[1] for text in told] == [NOTHING, SENSES], "kept one time"
    for language in ("de", "fr", "es"):
        speak = Translation(language)
        assert all(speak(text) != text for text in told) and not speak.left, language


def test_a_run_in_spite_of_a_check_says_of_which(tiny_campaign, monkeypatch):
    campaign, plan = services.make_plan(tiny_campaign)
    keep_check(tiny_campaign, plan.hash, ["level: 20 dB too low"], None)
    run, engines = run_folder(tiny_campaign, "told"), []
    services.acquire(
        campaign, plan, run, despite_check=True, on_engine=engines.append,
        listener=lambda event: engines[0].stop("enough") if event.kind == "point" else None,
    )  # fmt: skip
    (told,) = checks_of(open_dataset(run.record))
    assert "begun in spite of it: check of 20" in told and told.endswith("did not pass: level: 20 dB too low")
    outcome = Outcome(state=State.STOPPED, reason="enough", measured=1, total=len(plan), flagged=0)
    monkeypatch.setattr("colure.app.cli.run_engine", lambda *given, **options: outcome)
    words = ["acquire", str(tiny_campaign), "--run", "told", "--yes", "--json", "--despite-check"]
    (told,) = json.loads(CliRunner().invoke(main, words).stdout)["checks"]
    assert told.startswith("begun in spite of it: check of 20")


def test_a_driver_that_is_not_installed_is_a_fault_of_the_check_and_keeps_no_caution_back(tiny_campaign):
    _, plan = services.make_plan(at_real_addresses(tiny_campaign).folder)
    path = tiny_campaign / "chamber.toml"
    text = path.read_text(encoding="utf-8").replace('profile = "gcode-axes"', 'profile = "driver:nobody"')
    path.write_text(text.replace("192.0.2.7::5025", "127.0.0.1::9"), encoding="utf-8")
    campaign = Campaign.load(tiny_campaign)
    assert unchecked(campaign, plan) == [NOTHING, SENSES] and len(cautions_of(campaign, plan)) > 2
    wrong = [one for one in services.check_instruments(campaign, plan) if not one.good]
    assert [one.what for one in wrong] == ["connection"] and "no package brings it" in wrong[0].answer
