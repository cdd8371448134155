"""Numbers as German, French and Spanish write them; names, dates, versions and clauses of standards stay.

Decimal comma and groups of three apart by a small space: ISO 80000-1:2009, 7.3 (from memory); U+202F and U+2212: Unicode 15.
"""

from __future__ import annotations

import re

import numpy as np
import pytest

from colure.report.document import chart
from colure.report.look import canvas
from colure.report.numerals import numerals
from colure.report.spoken import pictures_in
from colure.report.translation import Translation

WRITTEN = {
    "21.21 \u00b1 0.25 dBi": "21,21 \u00b1 0,25 dBi",
    "-0.5 dB": "\u22120,5 dB",
    "+0.21/-0.30": "+0,21/\u22120,30",
    "(-34.5 dB)": "(\u221234,5 dB)",
    "-12.5 dB at +7.5\u00b0, -3 dB": "\u221212,5 dB at +7,5\u00b0, \u22123 dB",
    "24.1-24.2 GHz": "24,1-24,2 GHz",
    "16471": "16\u202f471",
    "1234567.5 m": "1\u202f234\u202f567,5 m",
    "2026": "2026",
    "<0.001": "<0,001",
    "1.2e-05": "1,2e-05",
}  # fmt: skip
#: A date, a time, versions, clauses, names with digits in them, hashes.
KEPT = ("2026-03-04", "12:30:15.5", "0.1.0", "JCGM 100:2008, 4.3", "ISO/IEC 17025:2017, 7.8.2.1", "IEEE Std 149-2021, 8.2", "S-20261",
        "a12345.5", "#12345", "01234567", "limits-2.5x.toml", "1,234567")  # fmt: skip


@pytest.mark.parametrize("language", ["de", "fr", "es"])
def test_numbers_are_written_with_a_comma_thin_spaces_and_a_minus(language):
    for text, wanted in WRITTEN.items():
        assert numerals(text, language) == wanted
        assert numerals(wanted, language) == wanted
        assert numerals(text, "en") == text
    for text in KEPT:
        assert numerals(text, language) == text


def test_values_in_sentences_are_written_so_too_and_clauses_in_the_wording_stay():
    speak = Translation("de")
    assert speak("Decision rule: guard band of the expanded uncertainty.") != ""
    assert speak("Peak gain (realized) at least 5.5 dBi").endswith("mindestens 5,5 dBi")
    assert "6.2.1" in speak("3GPP TS 38.101-2, 6.2.1 (spherical coverage), weighted with solid angle")
    assert speak.left == []


def ticks(figure):
    return [
        one.get_text()
        for ax in figure.axes for axis in (ax.xaxis, ax.yaxis) for one in axis.get_ticklabels()
    ]  # fmt: skip


def test_ticks_and_legends_of_pictures_are_written_so_too():
    """Linear axes that share ticks, a colour bar, names by place, and levels written on contours; English keeps its points."""

    def drawn():
        figure = canvas(5.0, 4.0)
        above, below = figure.subplots(2, 1, sharex=True)
        above.plot([0, 0.4], [-0.5, 0.5], label="24.125 GHz")
        above.legend()
        mesh = below.pcolormesh(np.linspace(0, 0.4, 5), np.linspace(0, 1, 5), np.eye(5) * 0.5)
        figure.colorbar(mesh, ax=below)
        above.set_yticks([-0.5, 0.5], ["-0.5", "0.5"])
        return figure

    english, german = drawn(), drawn()
    chart(english, "A picture.")
    with pictures_in(Translation("de")):
        block = chart(german, "A picture.")
    said = [text for text in ticks(german) if text]
    assert len([text for text in said if "," in text]) >= 8 and not any(re.search(r"\d\.\d", text) for text in said)
    assert "\u22120,5" in said and german.axes[0].get_legend().get_texts()[0].get_text() == "24,125 GHz"
    assert [text.replace(",", ".").replace("\u2212", "-") for text in said] == [
        text.replace("\u2212", "-") for text in ticks(english) if text
    ]
    # The values beside a picture are a file: they keep their points.
    assert "0.4,0.5" in block.values
