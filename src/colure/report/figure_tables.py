"""Tables of figures: at one frequency, over frequency, and why some figures do not exist."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

import numpy as np

from colure.model.figure import format_value, objections, undefined_words
from colure.report.document import Block, Cell, Paragraph, Ref, ReportSection, Table, anchor

if TYPE_CHECKING:
    from colure.model.figure import Figure

#: Figures beside each other in one table.
COLUMNS = 6
#: Figures that compare with the middle frequency, where they are zero by definition.
ZERO_AT_MIDDLE = ("squint_deg", "phase_centre_wander_mm")


def zero_by_definition(figure: Figure) -> bool:
    """Tell whether a figure is zero whatever the device does: at the middle frequency, or without any other one to differ from."""
    return figure.name in ZERO_AT_MIDDLE or figure.zero_by_definition


def figures_section(figures: Sequence[Figure], frequency: float, *, linked: bool = True) -> ReportSection:
    """Return the table of figures of one frequency, and why some do not exist; those that are zero by definition are left out.

    linked
        Names lead to the definitions; False where the report has none.
    """
    here = [one for one in figures if not zero_by_definition(one)]
    topics = list(dict.fromkeys(figure.topic for figure in here))
    rows: list[tuple[Cell, ...]] = [
        (
            _named(figure) if linked else figure.label,
            without_interval(figure) or figure.text() + sense_of(figure, here),
            figure.unit,
        )
        for topic in topics
        for figure in here
        if figure.topic == topic and not figure.reason
    ]
    bare = ("No figure has an interval: errors unknown.",) if any(map(without_interval, here)) else ()
    why = tuple(Paragraph(text) for text in (*bare, *undefined_words(here)))
    return ReportSection("Figures", (Table(("Figure", f"{frequency / 1e9:.3f} GHz", "unit"), tuple(rows)), *why))


def without_interval(figure: Figure) -> str:
    """Return a figure's value alone where nothing is known of its errors: the report says so once. Empty for all others."""
    unknown = not figure.reason and np.isnan(figure.lower) and np.isnan(figure.upper)
    return format_value(figure.value, uncertainty=0.0) if unknown else ""


def sense_of(figure: Figure, here: Sequence[Figure]) -> str:
    """Return the sense of rotation beside an axial ratio, as the sign of the circularity and its interval tell it."""
    circularities = [
        one for one in here if one.name == "circularity" and not one.reason and one.frequency_hz == figure.frequency_hz
    ]
    if figure.name != "axial_ratio_db" or not circularities:
        return ""
    if circularities[0].lower > 0.0:
        return ", right-hand (+)"
    return ", left-hand (-)" if circularities[0].upper < 0.0 else ", sense undecided"


def tables_over_frequency(
    figures: Sequence[Figure], here: Sequence[Figure], wanted_ghz: Sequence[float] = (), *, linked: bool = True
) -> list[Block]:
    """Return the figures named by `here` at every frequency, as many beside each other as a page holds.

    wanted_ghz
        Frequencies to list; all of them if it names none that was measured.
    linked
        True: the columns' names lead to the rows of the definitions.
    """
    at = {(figure.name, figure.frequency_hz): figure for figure in figures}
    every = sorted({one.frequency_hz for one in figures})
    listed = [f for f in every if any(abs(f - 1e9 * one) < 0.5e6 for one in wanted_ghz)] or every
    known = {one.name for one in figures if not one.reason}
    chosen = [figure for figure in here if figure.name in known]
    columns = -(-len(chosen) // max(1, -(-len(chosen) // COLUMNS))) if chosen else 1
    blocks: list[Block] = []
    for some in (chosen[i : i + columns] for i in range(0, len(chosen), columns)):
        heads = ((f"{one.label} / {one.unit}", anchor(one.name)) for one in some)
        header: tuple[Cell, ...] = ("GHz", *(Ref(*head) if linked else head[0] for head in heads))
        rows = tuple((f"{f / 1e9:.3f}", *(_short_text(at[one.name, f]) for one in some)) for f in listed)
        blocks.append(Table(header, rows, shares=(0.7, *(1.0,) * len(some)), small=True))
    return blocks


def _short_text(figure: Figure) -> str:
    """Return value and uncertainty for a narrow column; why a figure does not exist is said elsewhere."""
    if figure.reason:
        return "undefined"
    return "0" if figure.zero_by_definition else without_interval(figure) or figure.text()


def _named(figure: Figure) -> Ref:
    """Return a figure's name, leading to its definition."""
    return Ref(figure.label, anchor(figure.name))


def against(figures: list[Figure]) -> list[str]:
    """Say on page one what the data say against the figures, and against which."""
    told = []
    for one in objections(figures):
        told.append(f"{one.words[0].upper()}{one.words[1:]}.".replace("`", ""))
        told.append("It concerns all figures." if one.all_figures else f"It concerns: {'; '.join(one.labels)}.")
    return told
