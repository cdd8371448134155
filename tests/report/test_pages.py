"""Pages on paper: full as far as their content allows, no picture lost, no column's name over another's."""

from __future__ import annotations

import io

import numpy as np
import pytest
import typst
from matplotlib.image import imread

from colure.report.document import Document, Paragraph, ReportSection, Side, Table, chart
from colure.report.look import canvas
from colure.report.paging import LEAST_SCALE, PAGE_MM, PageBlock, scales
from colure.report.pdf import font_paths, laid_out, render_pdf
from tests.printed import pages_of

#: A page that is less full than this needs a cause; the last one has one.
FULL = 2.0 / 3.0
#: Upper edge of the text and height of it on a page, mm of 297 (margins of the template).
TOP_MM, HEIGHT_MM = 20.0, PAGE_MM


def filled(document, folder):
    """Return the share of every page's height that is used, down to the lowest mark above the foot."""
    pages = typst.compile(str(laid_out(document, folder)), format="png", ppi=40.0, font_paths=font_paths())
    out = []
    for page in pages if isinstance(pages, list) else [pages]:
        dark = imread(io.BytesIO(page))[..., :3].min(axis=2) < 0.97
        rows = np.flatnonzero(dark.any(axis=1)) * 297.0 / dark.shape[0] - TOP_MM
        out.append(float(rows[rows < HEIGHT_MM].max()) / HEIGHT_MM)
    return out


@pytest.mark.parametrize("lines", [5, 30, 38, 42])
def test_pictures_fill_the_page_behind_text_of_any_length(tmp_path, lines):
    drawn = []
    for height in (3.0, 5.0, 2.0, 4.0):
        figure = canvas(7.2, height)
        figure.subplots().plot([0, 1], [0, 1])
        drawn.append(chart(figure, "A line."))
    table = Table(("a", "b"), tuple((str(i), "1") for i in range(lines)))
    document = Document("T", "s", ("short",), (
        ReportSection("First", (table, drawn[0], drawn[1])), ReportSection("Second", (drawn[2], Side((drawn[0], drawn[3])), Paragraph("end"))),
    ))  # fmt: skip
    shares = filled(document, tmp_path)
    assert min(shares[:-1]) >= FULL, shares


def test_a_line_that_announces_a_table_stays_with_it(tmp_path):
    """Lists of 60 lines and upwards: where the line would end a page, it moves to the next one with the table."""
    table = Table(("a", "b"), (("first", "1"), ("second", "2")))
    parted = 0
    for lines in range(46, 54):
        document = Document("T", "s", (), (ReportSection("S", (
            *(Paragraph(f"Line {i}.") for i in range(lines - 12)), Paragraph("Published lists:"), table)),))  # fmt: skip
        render_pdf(document, tmp_path / "report.pdf")
        pages = pages_of(tmp_path / "report.pdf")
        (last,) = (one for one in pages if "Published lists" in one)
        assert "first" in last, lines
        parted += len(pages) > 1 and last == pages[1]
    assert 0 < parted < 8


def test_a_picture_shrinks_to_the_rest_of_its_page_and_no_further():
    """Heights worked out by hand: 180 mm of text leave 258 - 180 - 3.8 = 74.2 mm."""
    near = scales([PageBlock("text", 180.0), PageBlock("chart", 80.0, 10.0)])
    assert LEAST_SCALE < near[1] < (74.2 - 10.0) / 70.0
    assert scales([PageBlock("text", 220.0), PageBlock("chart", 80.0, 10.0)])[1] == 1.0
    assert scales([PageBlock("chart", 400.0, 10.0)])[0] < PAGE_MM / 400.0
