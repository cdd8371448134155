"""The report as a PDF, set by Typst from the same document."""

from __future__ import annotations

import tempfile
from pathlib import Path

from colure.report.document import Block, Cell, Chart, Document, Link, Paragraph, Ref, Side, Table

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
        f'#set text(lang: "{document.language}")',
        _page_footer(document),
        _head(document, folder),
    ]
    if document.answer:
        parts.append(
            '#block(fill: rgb("#eef4f7"), stroke: (left: 3pt + rgb("#0b5d7a")), inset: 9pt, width: 100%)['
            + "\n\n".join(_text(text) for text in document.answer)
            + "]"
        )
    drawn = _Pictures(folder)
    for section in document.sections:
        parts.append(f"= {_text(section.title)}")
        parts += [_block(block, drawn) for block in section.blocks]
    if document.ending:
        parts.append(f"#v(1em)#align(center)[#muted[{_text(document.ending)}]]")
    return "\n\n".join(parts)


def _page_footer(document: Document) -> str:
    """Return the rule that puts identification and page count at the foot of every page."""
    before, between, after = (_text(part) for part in document.page_words.replace("{pages}", "{page}").split("{page}"))
    return (
        "#set page(footer: context [#set text(size: 7.5pt)\n#muted["
        f'{_text(document.footer)} #h(1fr) {before}#counter(page).display("1"){between}#counter(page).final().first(){after}]])'
    )


def _head(document: Document, folder: Path) -> str:
    """Return title and subtitle, with the logo beside them if there is one."""
    title = f"#text(size: 19pt, weight: 700)[{_text(document.title)}]\n\n#muted[{_text(document.subtitle)}]"
    if document.logo is None:
        return title
    name = f"logo.{document.logo.kind}"
    (folder / name).write_bytes(document.logo.data)
    return f'#grid(columns: (1fr, 38mm), gutter: 6mm, [{title}], align(right)[#image("{name}", height: 16mm, width: 38mm, fit: "contain")])'


class _Pictures:
    """Writes pictures and their values into a folder, and counts them."""

    def __init__(self, folder: Path) -> None:
        self._folder, self._number = folder, 0

    def place(self, one: Chart) -> str:
        """Return the Typst text of a picture with its caption."""
        self._number += 1
        name, values, attached = f"chart{self._number}", "", ""
        (self._folder / f"{name}.{one.kind}").write_bytes(one.data)
        if one.values:
            (self._folder / f"{name}.csv").write_text(one.values, encoding="utf-8")
            values = f" ({name}.csv)"
            attached = f'#pdf.attach("{name}.csv", mime-type: "text/csv", description: {_quoted(one.caption[:80])})'
        return (
            f'{attached}#block(breakable: false)[#align(center)[#image("{name}.{one.kind}", width: {one.width_percent}%)]'
            f"#muted[#text(size: 8pt)[{_text(one.caption + values)}]]]"
        )


def _block(block: Block, drawn: _Pictures) -> str:
    if isinstance(block, Paragraph):
        return _text(block.text)
    if isinstance(block, Table):
        return _table(block)
    if isinstance(block, Link):
        return f"*{_text(block.name)}:* {_text(block.target)} \\ #muted[#text(size: 7.5pt)[{_text(block.note)}]]"
    if isinstance(block, Side):
        if not block.charts:
            return ""
        cells = ", ".join(f"[{drawn.place(one)}]" for one in block.charts)
        return f"#grid(columns: (1fr, 1fr), gutter: 5mm, {cells})"
    return drawn.place(block)


def _table(table: Table) -> str:
    columns = len(table.header)
    size = "6.6pt" if columns > MANY_COLUMNS else "8pt"
    if table.wide:
        widths = ["auto"] + ["1fr"] * (columns - 1)
        if columns > 3:  # the last column explains
            widths = ["auto"] * (columns - 1) + ["1fr"]
        align = "left"
    else:
        widths = ["1.6fr"] + ["1fr"] * (columns - 1)
        align = "(x, y) => if x == 0 { left } else { right }"
    if table.shares:
        widths = [f"{share:g}fr" for share in table.shares]
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
