"""The report as one self-contained HTML page: no scripts, no outside files."""

from __future__ import annotations

import base64
from html import escape
from pathlib import Path

from colure.report.document import Block, Cell, Chart, Document, FileLink, Paragraph, Ref, Side, Table

STYLE = Path(__file__).parent / "templates" / "report.css"


def render_html(document: Document) -> str:
    """Return the whole page as text."""
    parts = [
        f"<!doctype html><html lang='{escape(document.language, quote=True)}'><head><meta charset='utf-8'>",
        "<meta name='viewport' content='width=device-width, initial-scale=1'>",
        "<meta http-equiv='Content-Security-Policy' content=\"default-src 'none'; style-src 'unsafe-inline'; img-src data:\">",
        f"<title>{escape(document.title)}</title><style>{STYLE.read_text(encoding='utf-8')}</style></head><body><main>",
        f"<header>{_logo(document)}<p class='subtitle'>{escape(document.footer)}</p><h1>{escape(document.title)}</h1>"
        f"<p class='subtitle'>{escape(document.subtitle)}</p></header>",
    ]
    if document.answer:
        parts.append(
            "<section class='answer'>" + "".join(f"<p>{escape(text)}</p>" for text in document.answer) + "</section>"
        )
    links = " ".join(f"<a href='#s{i}'>{escape(s.title)}</a>" for i, s in enumerate(document.sections))
    parts.append(f"<nav>{links}</nav>")
    for index, section in enumerate(document.sections):
        blocks = "".join(_block(block) for block in section.blocks)
        parts.append(f"<section id='s{index}'><h2>{escape(section.title)}</h2>{blocks}</section>")
    parts.append(f"<p class='subtitle'>{escape(document.ending)}</p></main></body></html>")
    return "\n".join(parts)


def _logo(document: Document) -> str:
    """Return the logo as a picture that the page holds itself."""
    if document.logo is None:
        return ""
    return f"<img class='logo' alt='' src='data:{_mime(document.logo.kind)};base64,{base64.b64encode(document.logo.data).decode('ascii')}'>"


def _mime(kind: str) -> str:
    return {"svg": "image/svg+xml", "jpg": "image/jpeg"}.get(kind, "image/png")


def _block(block: Block) -> str:
    if isinstance(block, Paragraph):
        return f"<p>{escape(block.text)}</p>"
    if isinstance(block, Table):
        return _table(block)
    if isinstance(block, FileLink):
        target = escape(block.target, quote=True)
        return f"<p class='link'><a href='{target}'>{escape(block.name)}: {target}</a><br><small>{escape(block.note)}</small></p>"
    if isinstance(block, Side):
        return "<div class='side'>" + "".join(_chart(one) for one in block.charts) + "</div>"
    return _chart(block)


def _table(table: Table) -> str:
    head = "".join(f"<th>{_cell(cell)}</th>" for cell in table.header)
    head = f"<thead><tr>{head}</tr></thead>" if any(table.header) else ""
    names = table.anchors or ("",) * len(table.rows)
    rows = "".join(
        (f"<tr id='{escape(name, quote=True)}'>" if name else "<tr>")
        + "".join(f"<td>{_cell(c)}</td>" for c in row)
        + "</tr>"
        for name, row in zip(names, table.rows, strict=True)
    )
    caption = f"<caption>{escape(table.caption)}</caption>" if table.caption else ""
    kind = "wide" if table.wide else "numbers"
    return f"<div class='scroll'><table class='{kind}'>{caption}{head}<tbody>{rows}</tbody></table></div>"


def _cell(cell: Cell) -> str:
    if isinstance(cell, Ref):
        return f"<a class='ref' href='#{escape(cell.anchor, quote=True)}'>{escape(cell.text)}</a>"
    return escape(cell)


def _chart(chart: Chart) -> str:
    mime = _mime(chart.kind)
    data = base64.b64encode(chart.data).decode("ascii")
    return (
        f"<figure style='width:{chart.width_percent}%'><img alt='{escape(chart.caption, quote=True)}' "
        f"src='data:{mime};base64,{data}'><figcaption>{escape(chart.caption)}{_values(chart)}</figcaption></figure>"
    )


def _values(chart: Chart) -> str:
    """Return a link that saves the drawn values; a map's are the pattern's file."""
    if not chart.values:
        return ""
    data = base64.b64encode(chart.values.encode("utf-8")).decode("ascii")
    return f" <a class='ref' download='chart.csv' href='data:text/csv;base64,{data}'>values</a>"
