"""A report as data: one list of sections that every renderer shows alike."""

from __future__ import annotations

import io
from dataclasses import dataclass, field
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from matplotlib.figure import Figure as Canvas


@dataclass(frozen=True)
class Paragraph:
    """Plain text."""

    text: str


@dataclass(frozen=True)
class Table:
    """Rows of text; the first column is left-aligned, the others right-aligned unless `wide`."""

    header: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]
    caption: str = ""
    wide: bool = False


@dataclass(frozen=True)
class Chart:
    """A picture with its caption: SVG text, or PNG bytes for dense ones."""

    data: bytes
    kind: str
    caption: str
    width_percent: int = 100


@dataclass(frozen=True)
class Link:
    """The way back to a file beside the report."""

    name: str
    target: str
    note: str


Block = Paragraph | Table | Chart | Link


@dataclass(frozen=True)
class Section:
    """A titled list of blocks."""

    title: str
    blocks: tuple[Block, ...]
    new_page: bool = False


@dataclass(frozen=True)
class Document:
    """Title, a short answer first, then sections."""

    title: str
    subtitle: str
    answer: tuple[str, ...]
    sections: tuple[Section, ...] = field(default=())


def chart(figure: Canvas, caption: str, *, dense: bool = False, width_percent: int = 100) -> Chart:
    """Draw a matplotlib figure into a chart block; vector graphics unless `dense`."""
    buffer = io.BytesIO()
    if dense:
        figure.savefig(buffer, format="png", dpi=170)
        return Chart(buffer.getvalue(), "png", caption, width_percent)
    figure.savefig(buffer, format="svg", metadata={"Date": None})
    return Chart(buffer.getvalue(), "svg", caption, width_percent)
