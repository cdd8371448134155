"""A report as data: one list of sections that every renderer shows alike."""

from __future__ import annotations

import csv
import io
from dataclasses import dataclass, field
from itertools import zip_longest
from typing import TYPE_CHECKING, Any

import numpy as np

from colure.model.exports import safe_text
from colure.report.spoken import translate_picture

if TYPE_CHECKING:
    from matplotlib.figure import Figure as Canvas

    from colure.geometry.conventions import FloatArray
    from colure.report.drawing import Panels


@dataclass(frozen=True)
class Paragraph:
    """Plain text."""

    text: str


@dataclass(frozen=True)
class Ref:
    """Text that leads to a row elsewhere in the report."""

    text: str
    anchor: str


Cell = str | Ref


@dataclass(frozen=True)
class Table:
    """Rows of text; the first column is left-aligned, the others right-aligned unless `wide`.

    anchors
        Names of the rows, where references lead to them.
    shares
        Relative widths of the columns on paper, where the usual ones do not suit.
    upright
        On paper the columns' names but the first stand upright: many narrow columns.
    small
        Set in small type on paper, however many columns there are: tables that belong together look alike.
    verbatim
        The rows hold names of the program and of files, which are the same in every language.
    """

    header: tuple[Cell, ...]
    rows: tuple[tuple[Cell, ...], ...]
    caption: str = ""
    wide: bool = False
    anchors: tuple[str, ...] = ()
    shares: tuple[float, ...] = ()
    upright: bool = False
    small: bool = False
    verbatim: bool = False


@dataclass(frozen=True)
class Chart:
    """A picture with its caption: SVG text, PNG bytes for dense ones, or JPEG bytes (`jpg`) for photographs.

    values
        The lines that are drawn, as CSV text; empty for maps, whose data are the pattern's file.
    """

    data: bytes
    kind: str
    caption: str
    width_percent: int = 100
    values: str = ""


@dataclass(frozen=True)
class FileLink:
    """The way back to a file beside the report."""

    name: str
    target: str
    note: str


@dataclass(frozen=True)
class Side:
    """Pictures beside each other; one alone takes the width of one."""

    charts: tuple[Chart, ...]


Block = Paragraph | Table | Chart | FileLink | Side


#: Dots per inch of pictures.
DENSE_DPI = 170.0
#: Effort of packing a picture, 0 to 9: more takes longer and saves little.
PNG_EFFORT = 6


@dataclass(frozen=True)
class ReportSection:
    """A titled list of blocks."""

    title: str
    blocks: tuple[Block, ...]


@dataclass(frozen=True)
class Logo:
    """A picture at the head of the first page: bytes of a `png` or an `svg`."""

    data: bytes
    kind: str


@dataclass(frozen=True)
class Document:
    """Title, a short answer first, then sections.

    footer
        Unique identification of the report, at the foot of every page and at the head of the HTML page.
    page_words
        How pages are counted, with `{page}` and `{pages}`.
    ending
        The line that ends the report.
    language
        Language of the texts, as HTML names it.
    """

    title: str
    subtitle: str
    answer: tuple[str, ...]
    sections: tuple[ReportSection, ...] = field(default=())
    footer: str = ""
    page_words: str = "page {page} of {pages}"
    ending: str = ""
    language: str = "en"
    logo: Logo | None = None


def chart(drawn: Canvas | Panels, caption: str, *, dense: bool = False, width_percent: int = 100) -> Chart:
    """Draw a matplotlib figure, or the one of a picture's axes, into a chart block; vector graphics unless `dense`."""
    from matplotlib.backends.backend_agg import FigureCanvasAgg
    from matplotlib.backends.backend_svg import FigureCanvasSVG
    from PIL import Image

    figure = drawn.figure
    translate_picture(figure)
    buffer = io.BytesIO()
    if dense:
        figure.set_dpi(DENSE_DPI)
    # `savefig` draws all of it once more, only to find the layout.
    layout = figure.get_layout_engine()
    if layout is not None:
        layout.execute(figure)
        figure.set_layout_engine("none")
    shown: Any = FigureCanvasAgg(figure) if dense else FigureCanvasSVG(figure)
    if dense:
        shown.draw()
        # 256 colours of the picture's own: smooth maps take a third of the room and look the same.
        pixels = Image.fromarray(np.asarray(shown.buffer_rgba())).convert("RGB")
        packed = pixels.quantize(256, method=Image.Quantize.MEDIANCUT, dither=Image.Dither.NONE)
        packed.save(buffer, "PNG", compress_level=PNG_EFFORT, dpi=(DENSE_DPI, DENSE_DPI))
        return Chart(buffer.getvalue(), "png", caption, width_percent)
    shown.print_svg(buffer, metadata={"Date": None})
    return Chart(buffer.getvalue(), "svg", caption, width_percent, drawn_values(figure))


def drawn_values(figure: Canvas) -> str:
    """Return every line of a figure as CSV: a column a line under its panel, name and axis; lines over the same x share its column.

    Rows at which none of the lines is drawn are left out.
    """
    columns: list[tuple[str, FloatArray]] = []
    held: dict[bytes, list[tuple[str, FloatArray]]] = {}
    heads: dict[bytes, tuple[str, FloatArray]] = {}
    for number, ax in enumerate(figure.axes):
        panel = ax.get_title(loc="left") or ax.get_title() or f"panel {number + 1}"
        x_label, y_label = (" ".join(text.split()) for text in (ax.get_xlabel(), ax.get_ylabel()))
        for index, line in enumerate(ax.lines):
            x, y = (np.asarray(one, float) for one in (line.get_xdata(), line.get_ydata()))
            label = str(line.get_label())
            name = f"line {index + 1}" if label.startswith("_") else label
            heads.setdefault(x.tobytes(), (x_label or "x", x))
            if heads[x.tobytes()][0] == "x" and x_label:
                heads[x.tobytes()] = x_label, x
            held.setdefault(x.tobytes(), []).append((f"{panel}: {name}" + (f", {y_label}" if y_label else ""), y))
    for key, lines in held.items():
        drawn = np.any([np.isfinite(y) for _, y in lines], axis=0)
        columns += [(name, values[drawn]) for name, values in (heads[key], *lines)]
    if not columns:
        return ""
    out = io.StringIO()
    writer = csv.writer(out, lineterminator="\n")
    writer.writerow([safe_text(name) for name, _ in columns])
    cells = ([f"{v:.6g}" if np.isfinite(v) else "" for v in values] for _, values in columns)
    writer.writerows(zip_longest(*cells, fillvalue=""))
    return out.getvalue()


def anchor(name: str) -> str:
    """Return the place of a figure's definition on the page."""
    return "def-" + name.replace(".", "-")
