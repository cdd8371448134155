"""No term of the trade is used without standing in the glossary: terms are found in pages, report, plans and findings themselves."""

from __future__ import annotations

import re

from tests.docs.glossary import GLOSSARY, abbreviations, causes, defined, figures, glossary, headed, texts, undefined


def test_no_text_uses_a_term_that_the_glossary_lacks():
    found = texts()
    assert len(found) > 30 and sum(map(len, found.values())) > 100_000
    assert undefined(found, glossary()) == {}


def test_every_figure_and_every_cause_of_a_budget_is_in_the_glossary():
    known = glossary()
    assert [one for one in sorted(figures()) if not headed(one, known)] == []
    assert [one for one in sorted(causes()) if not defined(one, known)] == []


def test_a_term_without_an_entry_is_found():
    """The look-up itself: an unknown abbreviation, a term of the standard, a figure and a cause without an entry."""
    poor = "|directivity|noise|"
    text = {"page": "The QZR of a beam, its axial ratios and its directivity; PDF files."}
    assert undefined(text, poor) == {"page": {"QZR", "axial ratio"}}
    assert not headed("Group delay at peak", poor) and headed("Peak directivity", poor)
    assert not defined("range echoes", poor) and defined("noise", poor)
    assert abbreviations("S11 and R12, EIRP at 24 GHz; `IDN` stays out of prose") == {"EIRP", "IDN"}
    # Without one of its rows the real glossary fails.
    whole = glossary()
    for term in ("axial ratio", "cdf", "drift residual"):
        assert not defined(term, whole.replace(f"|{term}|", "|"))


def test_the_glossary_is_sorted_and_says_each_term_once():
    terms = re.findall(r"^\| ([^|]+) \|", GLOSSARY.read_text(encoding="utf-8"), re.MULTILINE)[1:]
    terms = [one.strip().lower() for one in terms if not one.startswith("-")]
    assert terms == sorted(terms) and len(set(terms)) == len(terms)
