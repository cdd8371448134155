"""The report as a PDF, set by Typst from the same document."""

from __future__ import annotations

import tempfile
from pathlib import Path

from colure.report.document import Block, Cell, Chart, Document, Link, Paragraph, Ref, Table

PREAMBLE = Path(__file__).parent / "templates" / "preamble.typ"
#: Tables with more columns than this are set smaller, so that nothing is cut off.
MANY_COLUMNS = 6


def render_pdf(document: Document, path: Path) -> None:
    """Write the document as a PDF file."""
    import typst

    with tempfile.TemporaryDirectory(prefix="colure-report-") as name:
        folder = Path(name)
        source = folder / "report.typ"
        source.write_text(typst_source(document, folder), encoding="utf-8")
        fonts = _bundled_fonts()
        typst.compile(str(source), output=str(path), font_paths=[str(fonts)] if fonts else [])


def _bundled_fonts() -> Path | None:
    """Return the folder of the fonts that matplotlib brings, so that no system font is needed."""
    import matplotlib as mpl

    folder = Path(mpl.get_data_path()) / "fonts" / "ttf"
    return folder if folder.is_dir() else None


def typst_source(document: Document, folder: Path) -> str:
    """Return the Typst text; pictures are written into `folder`."""
    parts = [
        PREAMBLE.read_text(encoding="utf-8"),
        f"#set document(title: {_quoted(document.title)})",
        f"#text(size: 19pt, weight: 700)[{_text(document.title)}]\n",
        f"#muted[{_text(document.subtitle)}]\n",
        '#block(fill: rgb("#eef4f7"), stroke: (left: 3pt + rgb("#0b5d7a")), inset: 9pt, width: 100%)['
        + "\n\n".join(_text(text) for text in document.answer)
        + "]",
    ]
    number = 0
    for section in document.sections:
        if section.new_page:
            parts.append("#pagebreak(weak: true)")
        parts.append(f"= {_text(section.title)}")
        for block in section.blocks:
            if isinstance(block, Chart):
                number += 1
                (folder / f"chart{number}.{block.kind}").write_bytes(block.data)
                if block.values:
                    (folder / f"chart{number}.csv").write_text(block.values, encoding="utf-8")
            parts.append(_block(block, number))
    return "\n\n".join(parts)


def _block(block: Block, number: int) -> str:
    if isinstance(block, Paragraph):
        return _text(block.text)
    if isinstance(block, Table):
        return _table(block)
    if isinstance(block, Link):
        return f"*{_text(block.name)}:* {_text(block.target)} \\ #muted[#text(size: 7.5pt)[{_text(block.note)}]]"
    values, attached = "", ""
    if block.values:
        values = f" Values: attached as chart{number}.csv."
        attached = (
            f'#pdf.attach("chart{number}.csv", mime-type: "text/csv", description: {_quoted(block.caption[:80])})'
        )
    return (
        f'{attached}#block(breakable: false)[#align(center)[#image("chart{number}.{block.kind}", width: {block.width_percent}%)]'
        f"#muted[#text(size: 8pt)[{_text(block.caption + values)}]]]"
    )


def _table(table: Table) -> str:
    columns = len(table.header)
    size = "6.6pt" if columns > MANY_COLUMNS else "8pt"
    if table.wide:
        widths = ["auto"] + ["1fr"] * (columns - 1)
        if columns > 3:  # the last column explains
            widths = ["auto"] * (columns - 1) + ["1fr"]
        if table.shares:
            widths = [f"{share:g}fr" for share in table.shares]
        align = "left"
    else:
        widths = ["1.6fr"] + ["1fr"] * (columns - 1)
        align = "(x, y) => if x == 0 { left } else { right }"
    cells = []
    if any(table.header):
        head = ", ".join(f"[#muted[*{_cell(cell)}*]]" for cell in table.header)
        cells.append(f"table.header({head})")
    names = table.anchors or ("",) * len(table.rows)
    for name, row in zip(names, table.rows, strict=True):
        first = f"[#[{_cell(row[0])}] <{name}>]" if name else f"[{_cell(row[0])}]"
        cells += [first, *(f"[{_cell(cell)}]" for cell in row[1:])]
    caption = f"#muted[#text(size: 8pt)[{_text(table.caption)}]]" if table.caption else ""
    return (
        f"#text(size: {size})[#table(columns: ({', '.join(widths)}), align: {align}, inset: (x: 3pt, y: 3.4pt), "
        f'stroke: (x, y) => (bottom: 0.4pt + rgb("#d5dce1")), {", ".join(cells)})]{caption}'
    )


def _cell(cell: Cell) -> str:
    if isinstance(cell, Ref):
        return f"#link(<{cell.anchor}>)[{_text(cell.text)}]"
    return _text(cell)


def _text(text: str) -> str:
    """Escape everything that Typst would read as markup."""
    return "".join(f"\\{c}" if c in "\\#*_`$[]<>@=~/-+'\"" else c for c in text)


def _quoted(text: str) -> str:
    return '"' + text.replace("\\", "\\\\").replace('"', '\\"') + '"'
