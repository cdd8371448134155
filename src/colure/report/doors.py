"""Sections of other packages, entry points `colure.report_sections`: at the end of a run's report."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING, Protocol

from colure.model.doors import brought
from colure.report.document import Block, Chart, FileLink, Paragraph, ReportSection, Table

if TYPE_CHECKING:
    from colure.report.source import Source


class SectionDoor(Protocol):
    """What an object behind `colure.report_sections` must have.

    title
        Heading of the section.
    """

    title: str

    def blocks(self, source: Source) -> Sequence[Block]:
        """Return paragraphs, tables and charts (`colure.report.document`); none leaves the section out."""
        ...


def sections_of_others(source: Source) -> tuple[ReportSection, ...]:
    """Return the sections that other packages bring.

    Raises
    ------
    InputError
        If one raises or returns something else than blocks; the package is named.
    """
    out = []
    for one in brought("colure.report_sections"):
        blocks = one.call(Sequence, one.thing.blocks, source)  # type: ignore[type-abstract]
        for block in blocks:
            if not isinstance(block, Paragraph | Table | Chart | FileLink):
                raise one.refusal(f"blocks returned {type(block).__name__}, must be a block of colure.report.document")
        if blocks:
            out.append(ReportSection(f"{one.thing.title} ({one.package})", tuple(blocks)))
    return tuple(out)
