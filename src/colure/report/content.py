"""The report of a sphere: its first page, and its sections in their order."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from typing import TYPE_CHECKING, Final

from colure.report import sections
from colure.report.budget import budget_section
from colure.report.document import Document, ReportSection
from colure.report.doors import sections_of_others
from colure.report.figure_tables import against, figures_section, zero_by_definition
from colure.report.measured import measured_section, where
from colure.report.particulars import particulars_sections, photographs_section
from colure.report.short import compose_short
from colure.report.steps import room_section, steps_section
from colure.report.translation import composed_in

if TYPE_CHECKING:
    from colure.analysis.pipeline.recipe import Processed
    from colure.model.figure import Figure
    from colure.report.second_core import SecondCore
    from colure.report.source import Source

#: What the report answers first, of the figures that exist.
ANSWERED = ("gain_dbi", "beamwidth_e_deg", "beamwidth_h_deg", "side_lobe_e_db", "side_lobe_h_db")


def _particulars(source: Source) -> tuple[ReportSection, ...]:
    return particulars_sections(source.particulars, decision=source.decision, not_included=not_included(source.figures))


def _budget(source: Source) -> tuple[ReportSection, ...]:
    known = [one for one in source.here if not one.reason and not zero_by_definition(one)]
    return (budget_section(known, source.frequency),) if known else ()


#: Every section by the name that report.toml calls it by, in the order in which a full report shows them.
SECTIONS: Final[Mapping[str, Callable[[Source], tuple[ReportSection, ...]]]] = {
    "particulars": _particulars,
    "verdict": lambda source: sections.verdict_section(source.judged),
    "figures": lambda source: (figures_section(source.here, source.frequency),),
    "set-up": sections.set_up_section,
    "photographs": lambda source: photographs_section(source.particulars),
    "measured": measured_section,
    "cuts": sections.cuts_section,
    "sphere": sections.sphere_section,
    "elements": sections.face_section,
    "frequency": sections.frequency_section,
    "uncertainty": _budget,
    "checks": sections.findings_section,
    "room": lambda source: room_section(source.room),
    "drift": sections.drift_section,
    "steps": lambda source: (steps_section(source.diagnoses),),
    "traceability": sections.trace_section,
    "definitions": lambda source: (sections.definitions_section(source.here),),
    "extensions": sections_of_others,
}


def compose(source: Source, beside: SecondCore | None = None) -> Document:
    """Return the whole report, or the sections of it that report.toml names.

    beside
        Draws sections on another core.

    Raises
    ------
    ValueError
        If report.toml names a section or a figure that there is none of.
    """
    if source.particulars.settings.form == "short":
        return compose_short(source, not_included(source.figures))
    wanted = source.particulars.settings.sections or tuple(SECTIONS)
    for name in wanted:
        if name not in SECTIONS:
            raise ValueError(f"report.toml: sections: {name!r}: must be one of {', '.join(SECTIONS)}")
    return composed_in(source.particulars, lambda: _whole(source, wanted, beside))


def _whole(source: Source, wanted: Sequence[str], beside: SecondCore | None) -> Document:
    say = source.particulars.say
    f = source.processed.frequency_hz / 1e9
    band = say.band(f"{f[0]:.3f}", f"{f[-1]:.3f}", f.size)
    drawn = (
        {name: SECTIONS[name](source) for name in wanted}
        if beside is None
        else beside.sections(source, wanted, SECTIONS)
    )
    return Document(
        title=source.device.name,
        subtitle=say("measurement", band=band) + (f" \u2014 {say('demo')}" if source.demo else ""),
        answer=_answer(source),
        sections=tuple(section for name in wanted for section in drawn[name]),
    )


def not_included(figures: list[Figure]) -> tuple[str, ...]:
    """Return the terms that no interval holds, because nobody declared them."""
    return tuple(dict.fromkeys(term for one in figures for term in one.not_included))


def _answer(source: Source) -> tuple[str, ...]:
    frequency = source.frequency
    here = [one for one in source.figures if one.frequency_hz == frequency]
    by_name = {figure.name: figure for figure in here}
    gain = by_name["gain_dbi"]
    first = [by_name[name] for name in ANSWERED if name in by_name and not by_name[name].reason]
    groups = gain.groups()
    biggest = max(groups, key=lambda name: groups[name], default="")
    points = source.plan.predicted["points"]
    good = "No specification was given to hold it against."
    if source.judged is not None:
        good = source.judged.sentence
    told, measured = against(source.figures), _measured(source.processed)
    if any(measured in one for one in told):
        measured = "not all of them were measured, as said above"
    return (
        f"At {frequency / 1e9:.3f} GHz: "
        + "; ".join(f"{one.label[0].lower()}{one.label[1:]} {one.text_with_unit()}" for one in first)
        + ".",
        *told,
        good,
        f"Planned: {points['scan']} points over {where(source.plan)} ({source.plan.scheme} scheme, slices every "
        f"{source.plan.step_deg:.3g} deg, order {source.plan.order}); {measured}.",
        "All intervals are expanded uncertainties, about 95 %."
        + (f" The gain's largest contribution is {biggest} (\u00b1{groups[biggest]:.2f} dB)." if biggest else "")
        + (f" Not included, no data given: {', '.join(gain.not_included)}." if gain.not_included else ""),
    )


def _measured(processed: Processed) -> str:
    """Say whether the scan is complete, and on what the pattern rests."""
    return (
        "how many of them were measured is not known" if processed.completeness is None else processed.completeness.text
    )
