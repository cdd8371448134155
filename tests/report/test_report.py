"""The report as people get it: verdict first, links that lead somewhere, values attached, nothing that a script could abuse."""

from __future__ import annotations

import base64
import csv
import re

import pypdf
import pytest

from colure.app import services
from colure.app.services import reporting
from colure.app.services.rehearsal import record_of_rehearsal
from colure.app.services.verdicts import judge
from colure.app.storage.folders import run_folder
from colure.model.campaign import Campaign
from colure.model.chamber import SimulatedChamber
from colure.model.files import save_dataset
from colure.model.loading import load
from colure.model.specification import Specification
from tests.endtoend.test_near_to_far import edited
from tests.printed import pages_of


def small_campaign(folder):
    """A 3 x 3 panel at two frequencies with the demo's limits, measured: (campaign, plan, run)."""
    services.new_campaign(folder)
    edited(folder, "device.toml", ("[49.7, 49.7, 4.0]", "[18.6, 18.6, 4.0]"), ("rows = 8", "rows = 3"),
           ("columns = 8", "columns = 3"), ("Printed 8 x 8 panel, 24 GHz", "<script>alert(1)</script> & Sons"))  # fmt: skip
    edited(folder, "goal.toml", ("points = 11", "points = 2"), ("wanted_level_db = -50", "wanted_level_db = -30"))
    (folder / "limits.toml").write_text(
        (folder / "limits.toml").read_text("utf-8").replace("band_ghz = [24.12, 24.13]", "band_ghz = [24.2, 24.3]"),
        "utf-8",
    )
    campaign, plan = services.make_plan(folder)
    run = run_folder(folder, "first")
    run.path.mkdir(parents=True)
    save_dataset(
        record_of_rehearsal(campaign, plan, truth=SimulatedChamber(seed=1, drift_db=0.2, drift_deg=5)), run.record
    )
    return campaign, plan, run


def written(folder):
    """The report of a small campaign: (html text, pdf reader, texts of its pages, verdicts)."""
    campaign, plan, run = small_campaign(folder)
    done = services.process(campaign, run)
    figures = services.evaluate(done, run)
    judged = judge(done, figures, load(Specification, folder / "limits.toml"))
    key = reporting.key_of_report(Campaign.load(folder), run, folder / "limits.toml")
    services.write_report(campaign, plan, run, done, figures, judged, key=key)
    return run.report_html.read_text("utf-8"), pypdf.PdfReader(run.report_pdf), pages_of(run.report_pdf), judged


def the_first_page_answers_the_three_questions(written):
    _, _, pages, judged = written
    first = " ".join(pages[0].split())
    assert "peak gain (realized)" in first and "expanded uncertainties" in first
    assert f"River-level panel, first article: {judged.outcome.upper()}" in first
    assert "Statements" in first and "Verdict" in " ".join(pages[1].split())


def every_reference_leads_somewhere(written):
    html, _, _, _ = written
    targets = set(re.findall(r"href='#([^']+)'", html))
    assert len(targets) > 20
    for name in targets:
        assert f"id='{name}'" in html, name


def every_line_chart_brings_its_values(written):
    html, pdf, _, _ = written
    found = re.findall(r"download='chart.csv' href='data:text/csv;base64,([^']+)'", html)
    assert len(found) >= 10
    for one in found:
        rows = base64.b64decode(one).decode("utf-8").splitlines()
        assert len(rows) > 2 and {len(row) for row in csv.reader(rows)} == {len(next(csv.reader(rows)))}
    assert len(pdf.attachments) == len(found)


def names_are_text_and_nothing_comes_from_outside(written):
    html, _, _, _ = written
    assert "<script" not in html and "&lt;script&gt;" in html
    assert not re.search(r"(src|href)=['\"](https?:)?//", html) and "default-src 'none'" in html


def the_budget_names_kinds_distributions_and_the_trades_terms(written):
    _, _, pages, _ = written
    text = " ".join("\n".join(pages).split())
    for words in ("Known from", "U-shaped", "Monte Carlo", "alignment: device pose", "room scattering", "quality of the quiet zone",
                  "What each step found and did", "Where stray signals come from", "Spherical coverage", "What was measured"):  # fmt: skip
        assert words in text, words


def it_is_written_again_for_another_customer_and_nothing_is_worked_out(folder, report, monkeypatch):
    """The pages of last time with new particulars; what a result depends on is never answered from last time."""

    def never(*_):
        raise AssertionError("processed again")

    monkeypatch.setattr(reporting, "process", never)
    run, limits = run_folder(folder, "first"), folder / "limits.toml"
    (folder / "report.toml").write_text(
        'issue = 2\nchanges = "customer named"\n[customer]\nname = "Customer A & B"\n', "utf-8"
    )
    reporting.report_run(folder, run, limits)
    before, after = report[2], pages_of(run.report_pdf)
    assert "Customer A & B" in after[0] and "Customer A & B" not in "".join(before) and "issue 2" in after[-1]
    text = run.report_html.read_text("utf-8")
    assert (
        text.partition("<h2>Verdict</h2>")[2].partition("</main>")[0].replace("issue 2", "issue 1")
        == (report[0].partition("<h2>Verdict</h2>")[2].partition("</main>")[0])
    )
    for change in (
        lambda: limits.write_text(limits.read_text("utf-8") + "\n", "utf-8"),
        lambda: (folder / "report.toml").write_text('language = "fr"\n', "utf-8"),
        lambda: run.pattern.write_bytes(run.pattern.read_bytes() + b"0"),
    ):
        change()
        with pytest.raises(AssertionError, match="processed again"):
            reporting.report_run(folder, run, limits)


def test_the_report_as_people_get_it(tmp_path, monkeypatch):
    """One report, six looks at it: making it is what costs."""
    report = written(tmp_path / "c")
    the_first_page_answers_the_three_questions(report)
    every_reference_leads_somewhere(report)
    every_line_chart_brings_its_values(report)
    names_are_text_and_nothing_comes_from_outside(report)
    the_budget_names_kinds_distributions_and_the_trades_terms(report)
    it_is_written_again_for_another_customer_and_nothing_is_worked_out(tmp_path / "c", report, monkeypatch)
