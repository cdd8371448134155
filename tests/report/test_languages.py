"""The full report in every language: no text of it is without its translation."""

from __future__ import annotations

import ast
import re
from pathlib import Path

import colure
from colure.report.content import SECTIONS, compose
from colure.report.document import Chart, Document, FileLink, Paragraph, ReportSection, Side, Table, chart
from colure.report.look import canvas
from colure.report.pdf import render_pdf
from colure.report.sections import _scheme_words
from colure.report.spoken import pictures_in
from colure.report.texts import LANGUAGES, Texts
from colure.report.translation import Translation, full_texts, has_words
from tests.printed import pages_of
from tests.report.test_laboratory import formed


def texts(section: ReportSection) -> list[tuple[str, str]]:
    """Return every text of a section with its place."""
    out = [("title", section.title)]
    for block in section.blocks:
        if isinstance(block, Paragraph):
            out.append(("text", block.text))
        elif isinstance(block, Table):
            out += [("header", str(getattr(one, "text", one))) for one in block.header] + [("caption", block.caption)]
            out += [("cells", str(getattr(one, "text", one))) for row in in_words(block) for one in row]
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


def in_words(block: Table) -> tuple[tuple[object, ...], ...]:
    """Return the rows of a table whose cells are words: not names of the program's steps and files."""
    return () if block.verbatim else block.rows


def nothing_is_left(whole: Document, german: Document) -> None:
    """Every text with words is another one in German, and page one says nothing of English."""
    assert len(whole.sections) == len(german.sections)
    for before, after in zip(whole.sections[3:], german.sections[3:], strict=True):
        same = {(place, text) for place, text in texts(after) if has_words(text) and (place, text) in texts(before)}
        assert {(place, text) for place, text in same if not identical_in_all(text)} == set(), before.title
    assert len(german.answer) == len(whole.answer)


def translated(whole: Document, language: str) -> tuple[Document, list[str]]:
    """Return a report in another language and what is left in English; numbers, units and symbols stay as they are."""
    speak = Translation(language)
    found = speak.document(whole, kept=frozenset(one.title for one in whole.sections[:3]))
    for before, after in zip(whole.sections, found.sections, strict=True):
        for (_, one), (_, other) in zip(texts(before), texts(after), strict=True):
            assert values(one) == values(other)
    return found, speak.left


def values(text: str) -> list[str]:
    """Return the decimal numbers of a text, written with a point."""
    return sorted(one.replace(",", ".") for one in re.findall(r"\d+[.,]\d+", text.replace("\u202f", "")))


#: What keeps its point in every language: clauses of standards and versions with several, names of files, editions of a standard.
WITH_POINTS = re.compile(
    r"\d+(?:\.\d+){2,}|[\w.-]+\.(?:nc|toml|json|sqlite|csv|pdf)\b|(?:JCGM|IEEE Std|ISO/IEC|3GPP TS|TR|ILAC-G8)[ :]?[\d.:/-]*(?:, \d+(?:\.\d+)*)?"
)


def pointed(text: str) -> list[str]:
    """Return what still stands with a decimal point, with its surroundings."""
    return [one[0] for one in re.finditer(r".{0,30}\d\.\d.{0,12}", WITH_POINTS.sub("", text))]


def points_left(document: Document) -> list[str]:
    """Return what still has a decimal point in a report's texts but the particulars: not in names of the program's steps and files."""
    every = [text for one in document.sections[3:] for _, text in texts(one)]
    return [found for text in (*every, *document.answer) for found in pointed(text)]


def test_every_picture_speaks_german(nightly, source):
    pictures = Translation("de")
    with pictures_in(pictures):
        for name in ("set-up", "cuts", "sphere", "frequency", "uncertainty", "room", "drift", "steps"):
            SECTIONS[name](source)
    assert pictures.left == []


def test_the_full_report_in_german_french_and_spanish(source, tmp_path):
    """One test, so that the report is worked out once: sections, page one as it is printed, and the other languages."""
    whole = english(source)
    others = [translated(whole, name) for name in ("de", "fr", "es")]
    assert [left for _, left in others] == [[], [], []]
    nothing_is_left(whole, others[0][0])
    assert len(points_left(whole)) > 200
    assert [points_left(one) for one, _ in others] == [[], [], []]
    few = ("particulars", "verdict", "figures", "measured", "checks", "definitions")
    german = compose(formed(source, language="de", sections=few))
    render_pdf(german, tmp_path / "report.pdf")
    page = " ".join(pages_of(tmp_path / "report.pdf")[0].split())
    assert "auf Englisch" not in page and "Bei 24," in page and "Geplant: " in page and "Alle Intervalle" in page
    assert "Halbwertsbreite, E-Ebene" in page
    printed = "\n".join(pages_of(tmp_path / "report.pdf"))
    assert pointed(printed) == [] and len(re.findall(r"\d,\d", printed)) > 100


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
    assert speak("5.2 mm") == "5,2 mm" and len(speak.left) == 2


def test_names_along_an_axis_are_translated_too():
    figure = canvas(3.0, 2.0)
    ax = figure.subplots()
    ax.set_yticks([0, 1], ["Peak directivity  \u00b1 0.017 dBi", "7"])
    with pictures_in(Translation("es")):
        chart(figure, "Bars.")
    assert [one.get_text() for one in ax.get_yticklabels()] == ["Directividad m\u00e1xima \u00b1 0,017 dBi", "7"]


def test_a_mount_of_joints_has_no_roll_axis_and_one_frequency_is_one():
    for scheme in ("two-pass", "one-pass"):
        text = _scheme_words(scheme, joints=True)
        assert "roll axis" not in text and "roll axis" in _scheme_words(scheme)
        for language, word in (("de", "gegen phi"), ("fr", "de phi"), ("es", "a phi")):
            assert word in Translation(language)(text)
    assert Texts.of("en").band("38.000", "38.000", 1) == "38.000 GHz, one frequency"
    assert Texts.of("de").band("24.000", "24.250", 2) == "24,000 bis 24,250 GHz, 2 Frequenzen"


def test_small_words_count_too_and_units_do_not():
    assert Translation("de")("30 of 30") == "30 von 30"
    assert not has_words("21.21 \u00b1 0.25 dBi") and not has_words("record.nc") and has_words("every slice")


#: Modules whose sentences a report shows: findings, steps, causes, figures and why some do not exist.
SPEAKING = ("analysis/findings", "analysis/steps/alignment.py", "analysis/cuts", "analysis/pipeline/completeness.py", "report/terms.py",
            "analysis/uncertainty/causes.py", "analysis/uncertainty/alignment_causes.py", "analysis/uncertainty/probe_causes.py",
            "analysis/uncertainty/receiver_causes.py", "analysis/uncertainty/slice_causes.py", "model/definitions.py")  # fmt: skip
#: Literals whose fields hold words of a given form; the reports of this folder's campaigns hold them whole.
OTHERWISE = ("7: not seen by this scan", "7 is MORE than what is declared", "an echo from 7", "the scan is INCOMPLETE", "declared stray level",
             "7 \u00b17 mm across", "tilt of the roll axis against", "angle between the axes")  # fmt: skip
#: A literal with so many words is a sentence, or most of one.
SENTENCE_WORDS = 6


def spoken(module: Path) -> list[str]:
    """Return the sentences of a module's literals, a number in place of every field; not docstrings, errors, or what begins amid a sentence."""
    tree, silent = ast.parse(module.read_text(encoding="utf-8")), set()
    for node in ast.walk(tree):
        if isinstance(node, (ast.Raise, ast.Expr)):
            silent |= {id(one) for one in ast.walk(node) if not isinstance(node, ast.Expr) or one is node.value}
        if isinstance(node, ast.JoinedStr):
            silent |= {id(one) for one in ast.walk(node) if one is not node and isinstance(one, ast.Constant)}
        if isinstance(node, ast.Call) and ast.unparse(node.func) in ("Cause", "Need", "_cause"):
            silent |= {id(one) for one in ast.walk(node)}  # says in the documentation what a cause is
    out = []
    for node in ast.walk(tree):
        if id(node) in silent:
            continue
        if isinstance(node, ast.JoinedStr):
            text = "".join(one.value if isinstance(one, ast.Constant) else "7" for one in node.values)
        elif isinstance(node, ast.Constant) and isinstance(node.value, str):
            text = node.value
        else:
            continue
        if len(re.findall(r"[A-Za-z]{2,}", text)) >= SENTENCE_WORDS and text[0] not in " ,;":
            out.append(text.replace("`", ""))
    return out


def test_every_sentence_of_findings_steps_and_causes_is_in_the_catalogue():
    """Those too that no run of the tests brings up: read from the source, with a number in place of every field."""
    root, speak = Path(colure.__file__).parent, Translation("fr")
    modules = [
        one
        for name in SPEAKING
        for one in (sorted((root / name).glob("*.py")) if (root / name).is_dir() else [root / name])
    ]
    every = [text for module in modules for text in spoken(module)]
    every = [text for text in every if not text.startswith(OTHERWISE)]
    assert len(every) > 120
    for text in every:
        speak(text)
    assert speak.left == []


def test_requirements_and_bounds_of_every_form_are_in_the_catalogue():
    """As verdicts name them: limits with and without a band, masks of every component and plane, of cuts too; both decision rules."""
    speak = Translation("es")
    for text in (
        "Peak gain (realized) at least 5 dBi",
        "Half-power beamwidth, E plane at most 14.5 deg, 24.1 to 24.2 GHz",
        "mask all round (table), total, E plane",
        "mask all round (table), co, plane at 30 deg, 24.1 to 24.2 GHz",
        "mask all round (table), cross, planes every 15 deg",
        "phi = 0 deg: peak gain at least 5 dBi",
        "phi = 0 deg: peak partial gain at least 5 dBi",
        "(at least 44)",
        "51 (at least 44)",
        "Front-to-back ratio  (at least 44) dB",
        "(no bound: some of its errors leave no such figure)",
        "Against first article: NOT DECIDABLE; 1 of 2 requirements pass (simple acceptance).",
        "Decision rule: guard band of the expanded uncertainty. The intervals do not hold: mismatch, leakage.",
    ):
        assert speak(text) != text
    assert speak.left == []
