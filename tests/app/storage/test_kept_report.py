"""Reports kept by content: a document comes back as it was, and nothing that is damaged or foreign is shown."""

from __future__ import annotations

import json

import pytest

from colure.app.storage import kept_report
from colure.app.storage.folders import RunFolder
from colure.app.storage.kept_report import KeptReport, keep_report, report_key
from colure.model.campaign import Campaign
from colure.model.report_settings import Party, ReportSettings
from colure.report.document import Chart, Document, FileLink, Paragraph, Ref, ReportSection, Side, Table
from colure.report.particulars import Decision

DRAWN = Chart(b"\x89PNG\xff\x00", "png", "A picture.", 80, "x,y\n1,2\n")
PAGES = Document(
    "Horn, 38 GHz", "from a test", ("short",),
    (ReportSection("All kinds", (
        Paragraph("Text \u00b1 1 dB"), DRAWN, Side((DRAWN, DRAWN)), FileLink("Record", "record.nc", "sum"),
        Table(("a", Ref("b", "def-b")), (("1", Ref("2", "def-c")),), "c", True, ("row",), (1.0, 2.5), True, True, True),
    )),),
    footer="f", ending="e", language="de",
)  # fmt: skip
KEPT = KeptReport(PAGES, ("method_plain",), Decision("simple", "limits"), ("leakage",))


@pytest.fixture
def run(campaign_folder):
    found = RunFolder(campaign_folder / "runs" / "first")
    found.path.mkdir(parents=True)
    for one in (found.record, found.figures, found.correlations, found.pattern):
        one.write_text("as it was", encoding="utf-8")
    return found


def test_every_part_of_a_document_comes_back_as_it_was(run):
    keep_report(run, "key", KEPT)
    assert kept_report.kept_report(run, "key") == KEPT
    keep_report(run, "key", KeptReport(PAGES, (), None, ()))
    assert kept_report.kept_report(run, "key") == KeptReport(PAGES, (), None, ())


def test_another_key_a_changed_result_and_a_damaged_file_give_nothing(run):
    keep_report(run, "key", KEPT)
    assert kept_report.kept_report(run, "another") is None
    place = run.path / "report-kept.json"
    whole = place.read_text("utf-8")
    foreign = json.loads(whole)
    foreign["document"] = {"is": "Path", "args": ["/"]}
    for text in (whole.replace("1 dB", "7 dB"), whole[:-40], "[]", json.dumps(foreign)):
        place.write_text(text, "utf-8")
        assert kept_report.kept_report(run, "key") is None
    place.write_text(whole, "utf-8")
    assert kept_report.kept_report(run, "key") == KEPT
    run.figures.write_text("changed by hand", "utf-8")
    assert kept_report.kept_report(run, "key") is None


def test_pages_depend_on_all_that_they_show_and_not_on_the_customer(campaign_folder, run):
    limits = campaign_folder.parent / "elsewhere.toml"
    limits.write_text("a", "utf-8")
    plain = ReportSettings()

    def key(settings=plain, specification=limits):
        return report_key(Campaign.load(campaign_folder), run, settings, specification)

    first = key()
    assert key(plain.model_copy(update={"customer": Party(name="C"), "issue": 2, "changes": "c"})) == first
    found = {
        first,
        key(plain.model_copy(update={"language": "de"})),
        key(plain.model_copy(update={"planes": ("E",)})),
        key(specification=None),
    }
    for path, text in (
        (limits, "b"),
        (run.tie_direction, "{}"),
        (run.until, "{}"),
        (run.record, "other"),
        (campaign_folder / "new.toml", ""),
    ):
        path.write_text(text, "utf-8")
        found.add(key())
    assert len(found) == 9


def test_pages_with_sections_of_other_packages_are_not_kept(campaign_folder, run, monkeypatch):
    monkeypatch.setattr(kept_report, "brought", lambda group: (group,))
    assert report_key(Campaign.load(campaign_folder), run, ReportSettings(), None) is None
