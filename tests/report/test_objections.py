"""What the data say against figures: each sentence once, with the figures that it concerns, in the report's language."""

from __future__ import annotations

from colure.model.figure import Figure, objections
from colure.report.figure_tables import against
from colure.report.translation import Translation

BAD = "not to be used: the beam is too weak"


def _figure(label: str, *cautions: str, reason: str = "") -> Figure:
    return Figure(
        name=label, label=label, value=float("nan") if reason else 1.0, unit="dB", frequency_hz=24e9, lower=0.0, upper=2.0,
        definition="", source="", cautions=cautions, reason=reason,
    )  # fmt: skip


def test_page_one_names_the_figures_that_are_not_to_be_used():
    figures = [_figure("Beam azimuth", BAD), _figure("Peak gain"), _figure("Beam azimuth", BAD)]
    assert against(figures) == ["Not to be used: the beam is too weak.", "It concerns: Beam azimuth."]
    german = Translation("de")
    assert german(against(figures)[1]) == "Das betrifft: Azimut der Hauptkeule." and not german.left


def test_a_lopsided_interval_has_minus_signs_in_a_sentence_too():
    assert Translation("de")("At 24.000 GHz: first side lobe, E plane -22.8 +2.4/-3.8 dB.").endswith(
        "\u221222,8 +2,4/\u22123,8 dB."
    )


def test_a_figure_without_a_value_is_not_counted_as_usable():
    figures = [_figure("Beam azimuth", BAD), _figure("Null", reason="there is none")]
    assert objections(figures)[0].all_figures
    assert against(figures)[1] == "It concerns all figures."
