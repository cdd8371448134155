"""The report as one self-contained HTML page: no scripts, no outside files."""

from __future__ import annotations

import base64
from html import escape
from pathlib import Path

from colure.report.document import Block, Chart, Document, Link, Paragraph, Table

STYLE = Path(__file__).parent / "templates" / "report.css"


def render_html(document: Document) -> str:
    """Return the whole page as text."""
    parts = [
        "<!doctype html><html lang='en'><head><meta charset='utf-8'>",
        "<meta name='viewport' content='width=device-width, initial-scale=1'>",
        "<meta http-equiv='Content-Security-Policy' content=\"default-src 'none'; style-src 'unsafe-inline'; img-src data:\">",
        f"<title>{escape(document.title)}</title><style>{STYLE.read_text(encoding='utf-8')}</style></head><body><main>",
        f"<header><h1>{escape(document.title)}</h1><p class='subtitle'>{escape(document.subtitle)}</p></header>",
        "<section class='answer'>" + "".join(f"<p>{escape(text)}</p>" for text in document.answer) + "</section>",
    ]
    links = " ".join(f"<a href='#s{i}'>{escape(s.title)}</a>" for i, s in enumerate(document.sections))
    parts.append(f"<nav>{links}</nav>")
    for index, section in enumerate(document.sections):
        blocks = "".join(_block(block) for block in section.blocks)
        parts.append(f"<section id='s{index}'><h2>{escape(section.title)}</h2>{blocks}</section>")
    parts.append("</main></body></html>")
    return "\n".join(parts)


def _block(block: Block) -> str:
    if isinstance(block, Paragraph):
        return f"<p>{escape(block.text)}</p>"
    if isinstance(block, Table):
        return _table(block)
    if isinstance(block, Link):
        target = escape(block.target, quote=True)
        return f"<p class='link'><a href='{target}'>{escape(block.name)}: {target}</a><br><small>{escape(block.note)}</small></p>"
    return _chart(block)


def _table(table: Table) -> str:
    head = "".join(f"<th>{escape(cell)}</th>" for cell in table.header)
    head = f"<thead><tr>{head}</tr></thead>" if any(table.header) else ""
    rows = "".join("<tr>" + "".join(f"<td>{escape(c)}</td>" for c in row) + "</tr>" for row in table.rows)
    caption = f"<caption>{escape(table.caption)}</caption>" if table.caption else ""
    kind = "wide" if table.wide else "numbers"
    return f"<div class='scroll'><table class='{kind}'>{caption}{head}<tbody>{rows}</tbody></table></div>"


def _chart(chart: Chart) -> str:
    mime = "image/svg+xml" if chart.kind == "svg" else "image/png"
    data = base64.b64encode(chart.data).decode("ascii")
    return (
        f"<figure style='width:{chart.width_percent}%'><img alt='{escape(chart.caption, quote=True)}' "
        f"src='data:{mime};base64,{data}'><figcaption>{escape(chart.caption)}</figcaption></figure>"
    )
