"""The report of a far field that came as a file: what it holds, and in plain words what it does not."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING, Any

from colure.report.budget import contributions
from colure.report.content import ANSWERED
from colure.report.document import Chart, Document, FileLink, Paragraph, ReportSection, Side, Table, chart
from colure.report.figure_tables import figures_section, tables_over_frequency, without_interval, zero_by_definition
from colure.report.particulars import particulars_sections
from colure.report.sections import OVER_FREQUENCY, definitions_section, side_lobe_tables, steps_of, verdict_section
from colure.report.texts import Texts
from colure.report.translation import composed_in, written_in

if TYPE_CHECKING:
    from colure.model.figure import Figure
    from colure.report.drawing import Drawing, Panels
    from colure.report.particulars import Particulars
    from colure.report.source import Verdicts


@dataclass(frozen=True)
class Picture:
    """A drawing with its caption; `dense` ones are stored as pixels."""

    drawing: Drawing | Panels
    caption: str
    dense: bool = False


@dataclass(frozen=True)
class FileSource:
    """Everything the report of a file shows.

    shown_hz
        The frequency of tables and pictures.
    holds
        What the file holds, as rows (name, value).
    unknown
        What the file does not say, one sentence each.
    cuts, sphere
        Pictures of the two sections, at `shown_hz`.
    side_lobes
        (angle in degrees, dB re the peak) by plane; empty if unknown.
    made
        The file's history, step by step.
    particulars
        Who measured what for whom; None for a file that says nothing of it.
    language
        Of the report of a file without particulars.
    """

    name: str
    figures: list[Figure]
    shown_hz: float
    holds: tuple[tuple[str, str], ...]
    unknown: tuple[str, ...]
    cuts: tuple[Picture, ...]
    sphere: tuple[Picture, ...]
    over_frequency: Picture | None
    side_lobes: dict[str, list[tuple[float, float]]]
    made: list[dict[str, Any]]
    file: str
    sha256: str
    judged: Verdicts | None = None
    particulars: Particulars | None = None
    language: str = "en"

    @property
    def kind(self) -> str:
        """What the figures are read from, in a word."""
        return "file" if self.particulars is None else "run"


def compose_file(source: FileSource) -> Document:
    """Return the whole report of a file or of a power-only run, in its language."""
    if source.particulars is None:
        return written_in(source.language, lambda: _whole(source))
    return composed_in(source.particulars, lambda: _whole(source))


def _whole(source: FileSource) -> Document:
    here = [one for one in source.figures if one.frequency_hz == source.shown_hz]
    known = [one for one in here if not one.reason]
    frequencies = sorted({one.frequency_hz for one in source.figures})
    stated, origin = (
        source.particulars,
        "from_file" if source.particulars is None else "power_only",
    )
    say = Texts.of(source.language) if stated is None else stated.say
    decided = None if source.judged is None else source.judged.applied
    first = (
        ()
        if stated is None
        else particulars_sections(stated, decision=decided, not_included=_left_out(known), undeclared=False)
    )
    if stated is not None and stated.settings.form == "short":
        sections = _short_sections(source, here, first)
    else:
        sections = _full_sections(source, here, known, first)
    return Document(
        title=source.name,
        subtitle=f"{say(origin)}, {_band(frequencies, say)}",
        answer=_answer(source, known),
        sections=sections,
        page_words=say("page_of", page="{page}", pages="{pages}"),
        language=say.language,
    )


def _short_sections(
    source: FileSource, here: list[Figure], first: tuple[ReportSection, ...]
) -> tuple[ReportSection, ...]:
    """Return what two pages hold: who and how, the verdict, figures at one frequency, the cuts."""
    wanted = () if source.particulars is None else source.particulars.settings.figures
    listed = [one for one in here if one.name in wanted] if wanted else here
    return (
        *first, *(_without_pictures(one) for one in verdict_section(source.judged)),
        figures_section(listed, source.shown_hz, linked=False), _unknown_section(source),
        ReportSection("Cuts", _drawn(source.cuts[:1])),
    )  # fmt: skip


def _without_pictures(section: ReportSection) -> ReportSection:
    return replace(section, blocks=tuple(one for one in section.blocks if isinstance(one, (Table, Paragraph))))


def _unknown_section(source: FileSource) -> ReportSection:
    return ReportSection("What is not known", tuple(Paragraph(text) for text in source.unknown))


def _full_sections(
    source: FileSource, here: list[Figure], known: list[Figure], first: tuple[ReportSection, ...]
) -> tuple[ReportSection, ...]:
    return (
        *first,
        *verdict_section(source.judged),
        figures_section(here, source.shown_hz),
        _unknown_section(source),
        ReportSection("Cuts", (*_drawn(source.cuts), *side_lobe_tables(source.side_lobes))),
        ReportSection("The sphere", (*_drawn(source.sphere[:-1]), Side(_drawn(source.sphere[-1:])))),
        *_frequency_section(source, here),
        _budget_section([one for one in known if not zero_by_definition(one)], source.shown_hz, source.kind),
        ReportSection(f"The {source.kind}", (
            Table(("", ""), source.holds, wide=True),
            *((Table(("Step", "Parameters"), steps_of(source.made), wide=True, verbatim=True),) if source.made else ()),
            FileLink("File", source.file, f"SHA-256 {source.sha256}"),
        )),
        definitions_section(here),
    )  # fmt: skip


def _band(frequencies_hz: list[float], say: Texts) -> str:
    low, high = (f"{one / 1e9:.6g}" for one in (frequencies_hz[0], frequencies_hz[-1]))
    return say.band(low, high, len(frequencies_hz))


def _left_out(known: list[Figure]) -> tuple[str, ...]:
    """Return the terms that no interval holds, each by itself."""
    return tuple(dict.fromkeys(term for figure in known for term in figure.not_included))


def _answer(source: FileSource, known: list[Figure]) -> tuple[str, ...]:
    first = [one for one in known if one.name in (*ANSWERED, "directivity_dbi", "eirp_dbm")]
    told = "; ".join(f"{one.label[0].lower()}{one.label[1:]} {_with_unit(one)}" for one in first)
    good = (
        "No specification was given to hold it against." if source.judged is None else source.judged.sentence
    )  # fmt: skip
    return (
        f"At {source.shown_hz / 1e9:.6g} GHz: {told}." if told else f"No figure can be read from this {source.kind}.",
        good,
        *source.unknown[:2],
    )


def _with_unit(one: Figure) -> str:
    bare = without_interval(one)
    return f"{bare} {one.unit}" if bare else one.text_with_unit()


def _drawn(pictures: tuple[Picture, ...]) -> tuple[Chart, ...]:
    return tuple(chart(one.drawing, one.caption, dense=one.dense) for one in pictures)


def _frequency_section(source: FileSource, here: list[Figure]) -> tuple[ReportSection, ...]:
    if source.over_frequency is None:
        return (ReportSection("Over frequency", (Paragraph(f"The {source.kind} holds one frequency."),)),)
    return (ReportSection("Over frequency", (*_drawn((source.over_frequency,)), *tables_over_frequency(source.figures,
        here))),)  # fmt: skip


def _budget_section(known: list[Figure], frequency: float, kind: str) -> ReportSection:
    if not known or not known[0].budget:
        return ReportSection(
            "Uncertainty budget",
            (Paragraph("None: the file states no errors of its field, so no figure has an interval."),),
        )
    causes = {
        "file": "Every cause is a set of drawn errors of the field; a figure's standard uncertainty is their rms change of it.",
        "run": "Every cause states what it changes of the level; what fewer samples change stands for the sampling.",
    }
    words = Paragraph(
        f"{causes[kind]} They add by root sum of squares; k is Student's factor for the effective degrees of freedom "
        "(JCGM 100:2008, G.4)."
    )
    return ReportSection(
        "Uncertainty budget",
        (words, *contributions(known, frequency, f"colure export {kind.upper()} figures writes all")),
    )


def pictured_over_frequency(figures: list[Figure]) -> list[tuple[str, list[Figure]]]:
    """Return (title, figures) of what is drawn over frequency: those that exist everywhere."""
    groups = []
    for name in OVER_FREQUENCY:
        curve = [one for one in figures if one.name == name and not one.reason]
        if curve:
            groups.append((curve[0].label, curve))
    return groups
