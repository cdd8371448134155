"""The full report in every language: what the catalogue lacks stands where page one says that English is left."""

from __future__ import annotations

import re

import pypdf

from colure.report.content import SECTIONS, compose
from colure.report.document import Chart, Document, FileLink, Paragraph, ReportSection, Side, Table
from colure.report.pdf import render_pdf
from colure.report.texts import LANGUAGES
from colure.report.translation import Translation, full_texts, has_words
from tests.report.test_laboratory import formed

#: Where English may be left, by the section's English title: `cells` of tables, `captions` of pictures, `text`.
LEFT = {
    "Verdict": "cells",  # why each requirement is met or not
    "Figures": "text",  # why a figure does not exist
    "What was measured": "cells",  # what stopped the run
    "Uncertainty budget": "cells",  # bases, and published lists of error terms
    "Self-consistency checks": "cells",
    "What each step found and did": "captions",
    "Traceability to the raw data": "cells",  # names and parameters of steps
    "Definitions": "cells",  # meanings and sources
}


def texts(section: ReportSection) -> list[tuple[str, str]]:
    """Return every text of a section with its place."""
    out = [("title", section.title)]
    for block in section.blocks:
        if isinstance(block, Paragraph):
            out.append(("text", block.text))
        elif isinstance(block, Table):
            out += [("header", str(getattr(one, "text", one))) for one in block.header] + [("caption", block.caption)]
            out += [("cells", str(getattr(one, "text", one))) for row in block.rows for one in row]
        elif isinstance(block, FileLink):
            out += [("text", block.name), ("text", block.note)]
        elif isinstance(block, (Chart, Side)):
            out += [("captions", one.caption) for one in (block.charts if isinstance(block, Side) else (block,))]
    return out


def english(source) -> Document:
    """Return the English report with every picture left out: texts alone are compared."""
    from unittest.mock import patch

    from colure.report import budget, sections, steps

    def bare(figure, caption, **_):
        return Chart(b"", "png", caption)

    with patch.object(sections, "chart", bare), patch.object(steps, "chart", bare), patch.object(budget, "chart", bare):
        return compose(formed(source, language="en"))


def identical_in_all(text: str) -> bool:
    """Tell whether a text is the same in English and German, as the catalogue says."""
    speak = Translation("de")
    return speak(text) == text and not speak.left


def nothing_else_is_left(whole: Document, german: Document) -> None:
    """Every text outside the places where English may be left is another one in German."""
    assert len(whole.sections) == len(german.sections)
    for before, after in zip(whole.sections[3:], german.sections[3:], strict=True):
        same = {(place, text) for place, text in texts(after) if has_words(text) and (place, text) in texts(before)}
        same = {(place, text) for place, text in same if not identical_in_all(text)}
        assert {place for place, _ in same} <= {LEFT.get(before.title, "nothing")}, (before.title, same)
    told = german.answer[-1]
    assert told.startswith("In diesem Bericht auf Englisch: ")
    for before, after in zip(whole.sections[3:], german.sections[3:], strict=True):
        assert before.title in LEFT or after.title not in told


def leaves_the_same(whole: Document, language: str) -> list[str]:
    """Translate a report and return what is left in English; numbers, units and symbols stay as they are."""
    speak = Translation(language)
    found = speak.document(whole, kept=frozenset(one.title for one in whole.sections[:3]))
    for before, after in zip(whole.sections, found.sections, strict=True):
        for (_, one), (_, other) in zip(texts(before), texts(after), strict=True):
            assert sorted(re.findall(r"\d+\.\d+", one)) == sorted(re.findall(r"\d+\.\d+", other))
    return speak.left


def test_the_full_report_in_german_french_and_spanish(source, tmp_path):
    """One test, so that the report is drawn once: pictures, sections, page one as it is printed, and the other languages."""
    from colure.report.spoken import pictures_in

    pictures = Translation("de")
    with pictures_in(pictures):
        for name in ("set-up", "cuts", "sphere", "frequency", "uncertainty", "room", "drift", "steps"):
            SECTIONS[name](source)
    assert pictures.left == []
    whole = english(source)
    kept = frozenset(one.title for one in whole.sections[:3])
    nothing_else_is_left(whole, Translation("de").document(whole, kept=kept))
    assert leaves_the_same(whole, "de") == leaves_the_same(whole, "fr") == leaves_the_same(whole, "es")
    few = ("particulars", "verdict", "figures", "measured", "checks", "definitions")
    german = compose(formed(source, language="de", sections=few))
    render_pdf(german, tmp_path / "report.pdf")
    page = " ".join(pypdf.PdfReader(tmp_path / "report.pdf").pages[0].extract_text().split())
    assert (
        "In diesem Bericht auf Englisch:" in page
        and "Bei 24." in page
        and "Geplant: " in page
        and "Alle Intervalle" in page
    )
    assert "Halbwertsbreite, E-Ebene" in page


def test_every_text_has_the_same_fields_in_every_language():
    for one in full_texts():
        assert set(one) == set(LANGUAGES)
        fields = [sorted(re.findall(r"\{(\w+)\}", one[name])) for name in LANGUAGES]
        assert all(found == fields[0] for found in fields), one["en"]
        digits = [
            sorted(re.findall(r"JCGM \d+:\d+|\d+ dB|\bdBi\b|\bGHz\b|\bmm\b|/ deg", one[name])) for name in LANGUAGES
        ]
        assert all(found == digits[0] for found in digits), one["en"]


def test_a_text_that_nobody_wrote_down_is_left_and_counted():
    speak = Translation("fr")
    assert speak("Nobody wrote this sentence.") == "Nobody wrote this sentence."
    assert speak.left == ["Nobody wrote this sentence."]
    # A sentence of the catalogue with an unknown word in one of its fields is not half translated.
    assert speak("Decision rule: by the weather.") == "Decision rule: by the weather."
    assert speak("5.2 mm") == "5.2 mm" and len(speak.left) == 2


def test_small_words_count_too_and_units_do_not():
    assert Translation("de")("30 of 30") == "30 von 30"
    assert not has_words("21.21 \u00b1 0.25 dBi") and not has_words("record.nc") and has_words("every slice")
