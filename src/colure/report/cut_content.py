"""The report of a run of cuts; every number comes from elsewhere."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

from colure.model.bands import segment_words
from colure.report.cut_charts import cuts_chart, each_cut
from colure.report.document import Document, Paragraph, ReportSection, Table, chart
from colure.report.figure_tables import tables_over_frequency
from colure.report.particulars import particulars_sections, photographs_section
from colure.report.translation import composed_in

if TYPE_CHECKING:
    from colure.analysis.cuts.levels import CutLevel
    from colure.analysis.cuts.scan import CutScan
    from colure.model.chamber import Chamber
    from colure.model.device import Device
    from colure.model.figure import Figure
    from colure.report.particulars import Particulars

#: Contributions below this share of the largest one are not listed.
LEAST_SHARE = 0.05
#: With more columns than this their names stand upright.
MOST_FLAT = 3
#: Figures over frequency, of all cuts together; of more than that those that end like `FIRST`.
MOST_LISTED = 12
FIRST = ("_peak_dbi", "_width_3_deg")


@dataclass(frozen=True)
class CutSource:
    """Everything the report of cuts shows.

    measured
        What was measured of what was planned, as rows.
    particulars
        Who measured what for whom, when and with what.
    """

    chamber: Chamber
    device: Device
    scan: CutScan
    levels: list[CutLevel]
    figures: list[Figure]
    shown: int
    components: tuple[str, str]
    record_attrs: dict[str, Any]
    record_file: str
    record_sha256: str
    demo: bool
    limits: tuple[str, ...]
    particulars: Particulars
    measured: tuple[tuple[str, str], ...] = ()


def compose_cuts(source: CutSource) -> Document:
    """Return the whole report of a run of cuts."""
    return composed_in(source.particulars, lambda: _whole(source))


def _whole(source: CutSource) -> Document:
    one, say = source.particulars, source.particulars.say
    frequency = _shown_hz(source)
    here = [one for one in source.figures if one.frequency_hz == frequency]
    known = [one for one in here if not one.reason]
    first = [one for one in known if one.name.endswith(FIRST)]
    answer = (
        (
            f"At {frequency / 1e9:.3f} GHz: {'; '.join(f'{one.label} {one.text_with_unit()}' for one in first)}.",
            "All intervals are expanded uncertainties, about 95 %.",
        )
        if first
        else ()
    )
    f = source.scan.frequency_hz / 1e9
    terms = tuple(dict.fromkeys(term for figure in here for term in figure.not_included))
    return Document(
        title=source.device.name,
        subtitle=f"{say('cuts_at_range')}, {say.band(f'{f[0]:.3f}', f'{f[-1]:.3f}', f.size)}"
        + (f" \u2014 {say('demo')}" if source.demo else ""),
        answer=answer or ("No figure could be read from these directions; the levels are in the table of the run.",),
        sections=(
            *particulars_sections(one, not_included=terms, undeclared=False),
            *(_short_sections if one.settings.form == "short" else _full_sections)(source, here, known),
        ),
    )


def _short_sections(source: CutSource, here: list[Figure], known: list[Figure]) -> tuple[ReportSection, ...]:
    """Return what two pages hold: figures at one frequency (of many cuts peak and width) and the cuts."""
    listed = here if len(known) <= MOST_LISTED else [one for one in here if one.name.endswith(FIRST)]
    return (_figures_section(listed, _shown_hz(source)), _cuts_section(source))


def _shown_hz(source: CutSource) -> float:
    return float(source.scan.frequency_hz[source.shown])


def _cuts_section(source: CutSource) -> ReportSection:
    frequency = _shown_hz(source)
    short = source.particulars.settings.form == "short"
    asked = source.levels, frequency, source.components
    words = f"Levels at {frequency / 1e9:.3f} GHz; band: 95 % interval of the co-polar level."
    return ReportSection(
        "Cuts", tuple(chart(one, words) for one in ([cuts_chart(*asked)] if short else each_cut(*asked)))
    )


def _full_sections(source: CutSource, here: list[Figure], known: list[Figure]) -> tuple[ReportSection, ...]:
    return (
        _figures_section(here, _shown_hz(source)),
        *((ReportSection("What was measured", (Table(("", ""), source.measured, wide=True, shares=(1.0, 4.0)),)),)
          if source.measured else ()),
        *photographs_section(source.particulars),
        _cuts_section(source),
        *_over_frequency(source.figures, known),
        ReportSection("What these directions do not give", tuple(Paragraph(text) for text in source.limits)),
        *_budget_section(known),
        _set_up(source),
        _definitions(known),
    )  # fmt: skip


def _figures_section(here: list[Figure], frequency: float) -> ReportSection:
    rows = tuple((one.label, one.text(), one.unit) for one in here if not one.reason)
    why: dict[str, list[str]] = {}
    for one in here:
        if one.reason:
            why.setdefault(one.reason, []).append(one.label)
    words = tuple(Paragraph(f"{'; '.join(labels)}: {reason}.") for reason, labels in why.items())
    return ReportSection("Figures", (Table(("Figure", f"{frequency / 1e9:.3f} GHz", "unit"), rows), *words))


def _over_frequency(every: list[Figure], known: list[Figure]) -> tuple[ReportSection, ...]:
    """Return the figures at all frequencies; nothing where one was measured."""
    if len({one.frequency_hz for one in every}) < 2 or not known:
        return ()
    # Of many cuts the peak and the width: all figures of all cuts would fill pages with narrow columns.
    shown = known if len(known) <= MOST_LISTED else [one for one in known if one.name.endswith(FIRST)]
    return (ReportSection("Over frequency", tuple(tables_over_frequency(every, shown, linked=False))),)


def _budget_section(known: list[Figure]) -> tuple[ReportSection, ...]:
    """Return the contributions, a row a figure and a column a cause; then what every cause is known from."""
    causes = {row.term: f"{row.kind}: {row.basis}" for one in known for row in one.budget}
    if not causes:
        return ()
    # A column without a number says nothing: such causes stand in one line below.
    shown = [cause for cause in causes if any(_share(one, cause) != "-" for one in known)]
    small = ", ".join(cause for cause in causes if cause not in shown)
    rows = tuple(
        (f"{one.label} / {one.unit}", *(_share(one, cause) for cause in shown), one.interval_text()) for one in known
    )
    return (ReportSection("Uncertainty", (
        Paragraph("Each error adds to the field at an angle. Its effect follows from level, slope and curvature of the measured "
                  "cut. Independent contributions add by root sum of squares (JCGM 100:2008), k = 2. The finite distance moves "
                  "all readings of a kind alike: its extremes are added to the ends of the interval."),
        Table(("Figure", *shown, "interval"), rows,
        caption="Contributions (k = 2) in the figure's own unit; a dash: below "
              f"{100 * LEAST_SHARE:.0f} % of the largest." + (f" Below it everywhere: {small}." if small else ""),
              shares=(3.4, *(1.0,) * len(shown), 1.6), upright=len(shown) > MOST_FLAT),
        Table(("Cause", "Known from"), tuple(causes.items()), wide=True, shares=(1.0, 4.0)),
    )),)  # fmt: skip


def _share(one: Figure, cause: str) -> str:
    largest = max((row.expanded for row in one.budget), default=0.0)
    contributions = [row.expanded for row in one.budget if row.term == cause and row.expanded > LEAST_SHARE * largest]
    return f"{max(contributions):.2g}" if contributions else "-"


def _definitions(known: list[Figure]) -> ReportSection:
    """Return what every figure means; of several cuts each meaning stands once."""
    rows = dict.fromkeys((one.label.split(": ", 1)[-1], one.definition, one.source) for one in known)
    return ReportSection(
        "Definitions", (Table(("Figure", "Meaning", "Source"), tuple(rows), wide=True, shares=(1.2, 2.4, 2.0)),)
    )


def _set_up(source: CutSource) -> ReportSection:
    attrs, scan = source.record_attrs, source.scan
    rows = (
        ("Positioner", source.chamber.positioner.geometry.value),
        ("Range length", f"{source.chamber.range_length_m:g} m"),
        ("Device",
        f"{' x '.join(f'{x:g}' for x in source.device.size_mm)} mm, offset {', '.join(f'{x:g}' for x in source.device.offset_mm)} mm"),
        ("Cuts",
        "; ".join(one.cut.label for one in scan.cuts[:8]) + (f"; {len(scan.cuts)} cuts" if len(scan.cuts) > 8 else "")),
        ("Polarization",
        f"{source.components[0]}; offsets {', '.join(f'{x:g}' for x in scan.scan.offsets_deg)} deg, probe {scan.scan.probe}"),
        ("Repeats", str(scan.scan.repeats)),
        ("Power, bandwidth", "; ".join(segment_words(attrs))),
        ("Record", f"{source.record_file}, SHA-256 {source.record_sha256}"),
        ("Plan", str(attrs.get("plan_hash", ""))),
        ("Journal root", str(attrs.get("journal_root_hash", ""))),
    )  # fmt: skip
    return ReportSection("Set-up", (Table(("", ""), rows, wide=True),))
