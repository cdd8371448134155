"""The short report: two pages, in the language that report.toml names."""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np

from colure.model.figure import LOOK, NOT_TO_BE_USED, Figure, format_value
from colure.report import charts
from colure.report.document import Document, Paragraph, ReportSection, Table, chart
from colure.report.figure_tables import against, sense_of
from colure.report.particulars import particulars_sections
from colure.report.translation import Translation

if TYPE_CHECKING:
    from colure.analysis.figures.cuts import GreatCircleCut
    from colure.report.source import Source
    from colure.report.texts import Texts

#: Figures of a short report that report.toml does not choose, in their order; those that exist are shown.
USUAL = ("gain_dbi", "directivity_dbi", "efficiency_db", "beam_azimuth_deg", "beam_elevation_deg", "beamwidth_e_deg",
         "beamwidth_h_deg",
         "side_lobe_e_db", "side_lobe_h_db", "side_lobe_highest_db", "front_to_back_db", "xpd_db", "axial_ratio_db",
         "eirp_dbm",
         "trp_dbm")  # fmt: skip


def compose_short(source: Source, not_included: tuple[str, ...]) -> Document:
    """Return the short report of a sphere.

    Raises
    ------
    ValueError
        If report.toml names a figure whose label the catalogue lacks in its language.
    """
    one, say = source.particulars, source.particulars.say
    f = source.processed.frequency_hz / 1e9
    band = say.band(f"{f[0]:.3f}", f"{f[-1]:.3f}", f.size)
    first, equipment, statements = particulars_sections(one, decision=source.decision, not_included=not_included)
    return one.framed(
        Document(
            title=f"{say('title')}: {source.device.name}",
            subtitle=say("measurement", band=band) + (f" \u2014 {say('demo')}" if source.demo else ""),
            answer=(_completeness(source),),
            sections=(first, equipment, statements, *_verdict(source), _results(source), _cuts(source)),
        )
    )


def _completeness(source: Source) -> str:
    completeness, say = source.processed.completeness, source.particulars.say
    if completeness is None:
        return say("completeness_unknown")
    if completeness.whole:
        return say("completeness_whole", points=sum(completeness.planned))
    return say("completeness_part", measured=sum(completeness.measured), planned=sum(completeness.planned))


def _results(source: Source) -> ReportSection:
    """Return the chosen figures at the middle frequency; undefined ones say so."""
    say, settings = source.particulars.say, source.particulars.settings
    by_name = {one.name: one for one in source.figures if one.frequency_hz == source.frequency}
    names = settings.figures or tuple(name for name in USUAL if name in by_name and not by_name[name].reason)
    if settings.language != "en":
        unknown = [name for name in settings.figures if not say.knows(name)]
        if unknown:
            raise ValueError(
                f"report.toml: figures: {', '.join(unknown)}: no label in language {settings.language!r}; leave out, or use 'en'"
            )
    speak = Translation(settings.language)
    rows = tuple(
        (
            _label(by_name[name], say),
            speak(value_text(by_name[name], say) + sense_of(by_name[name], source.figures)),
            by_name[name].unit,
        )
        for name in names
    )
    header = (say("figure"), say.numeral(f"{source.frequency / 1e9:.3f} GHz"), say("unit"))
    table = Table(header, rows, shares=(2.6, 2.2, 0.4))
    return ReportSection(say("results"), (table,))


def _label(one: Figure, say: Texts) -> str:
    """Return a figure's label; of a circular device the planes are the declared one and the one at right angles."""
    if "declared plane" in one.label or "plane at right angles" in one.label:
        return Translation(say.language)(one.label)
    return say.label(one.name, one.label)


def value_text(one: Figure, say: Texts) -> str:
    """Return a figure's value and interval, with every word in the catalogue's language."""
    if one.reason:
        return say("undefined")

    def written(value: float, uncertainty: float) -> str:
        return say.numeral(format_value(value, uncertainty=uncertainty))

    value = written(one.value, one.expanded_uncertainty)
    up, down = one.upper - one.value, one.value - one.lower
    if not np.isfinite(up) and not np.isfinite(down):
        text = f"{value} ({say('no_interval')})"
    elif not np.isfinite(up):
        text = f"{value} ({say('at_least', value=written(one.lower, down))})"
    elif not np.isfinite(down):
        text = f"{value} ({say('at_most', value=written(one.upper, up))})"
    else:
        text = f"{value} {say.numeral(one.interval_text())}"
    flag = {LOOK: "look", NOT_TO_BE_USED: "not_to_be_used"}.get(one.use)
    return text if flag is None else f"{text} ({say(flag)})"


def _verdict(source: Source) -> tuple[ReportSection, ...]:
    if source.judged is None:
        return ()
    say, judged = source.particulars.say, source.judged
    labels = {one.name: one.label for one in source.figures}
    rows = []
    for asked, one in zip(judged.asked, judged.rows, strict=True):
        requirement = (
            f"{say.label(asked.figure, labels.get(asked.figure, asked.figure))} {say.numeral(asked.bounds)}"
            if asked.figure
            else asked.bounds
        )
        margin = "" if not np.isfinite(one.margin) else say.numeral(f"{one.margin:+.2f} {one.unit}")
        rows.append((requirement, say(one.outcome.replace(" ", "_")), margin))
    outcome = say(judged.outcome.replace(" ", "_"))
    table = Table((say("requirement"), say("verdict"), say("margin")), tuple(rows), wide=True, shares=(2.6, 1.0, 1.0))
    return (ReportSection(f"{say('verdict')}: {outcome}", (table,)),)


def _cuts(source: Source) -> ReportSection:
    say, wanted = source.particulars.say, source.particulars.settings.planes
    planes: dict[str, GreatCircleCut] = {name: one for name, one in source.cuts.middle.items() if name in wanted}
    hand = source.device.hand
    drawn = charts.cuts_rectangular(planes, source.cuts.peak_dbi, source.levels, say, hand=hand)
    title = say("cuts", frequency=say.numeral(f"{source.frequency / 1e9:.3f}"))
    return ReportSection(
        title,
        (chart(drawn, say("chart_caption_hands" if hand else "chart_caption"), width_percent=72), *_objections(source)),
    )


def _objections(source: Source) -> tuple[Paragraph, ...]:
    """Return what the data say against the figures; what the catalogue lacks stays English, which is better than nothing."""
    said = Translation(source.particulars.settings.language)
    return tuple(Paragraph(said(words)) for words in against(source.figures))
