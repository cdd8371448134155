"""The report as a PDF, set by Typst from the same document."""

from __future__ import annotations

import json
import tempfile
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

from colure.report.document import Block, Cell, Chart, Document, Paragraph, Ref, Side, Table
from colure.report.paging import PAGE_MM, WIDTH_MM, BlockKind, PageBlock, placed

PREAMBLE = Path(__file__).parent / "templates" / "preamble.typ"
#: Tables with more columns than this are set smaller, so that nothing is cut off.
MANY_COLUMNS = 6
#: Type size of tables and space above and below their rows, pt: the usual, then denser ones.
ROWS = ((8.0, 3.4), (7.6, 2.7), (7.3, 2.1))
#: A last page that is filled less far than this is avoided if denser rows can, mm.
LEAST_LAST_MM = PAGE_MM / 3.0
#: Up to here the last page's predicted end is sure, mm; margin above a page's text in the template, mm.
SURE_MM = 0.8 * PAGE_MM
TOP_MM = 20.0
#: Tells where the report ends.
LAST_MARK = "#context [#metadata((page: here().page(), y: here().position().y.mm())) <last>]"


def render_pdf(document: Document, path: Path) -> None:
    """Write the document as a PDF file."""
    import typst

    with tempfile.TemporaryDirectory(prefix="colure-report-") as name:
        source = laid_out(document, Path(name))
        typst.compile(str(source), output=str(path), font_paths=font_paths())


def laid_out(document: Document, folder: Path) -> Path:
    """Write the document's Typst text and its pictures into a folder, pictures sized so that pages are full; return its address."""
    drawn = _Pictures(folder)
    items = _items(document, drawn)
    source = folder / "report.typ"
    # Denser rows save a last page that would hold next to nothing.
    for rows in ROWS:
        head = _opening(document, rows)
        heights_mm = _heights(document, items, head, source)
        pieces = [PageBlock("text", heights_mm[0]), PageBlock("text", heights_mm[1])]
        pieces += [PageBlock(one.kind, heights_mm[2 + 2 * i], heights_mm[3 + 2 * i]) for i, one in enumerate(items)]
        sizes, last_mm = placed(pieces)
        parts = [head, _head(document, folder), _answer_block(document)]
        parts += [one.text(scale) for one, scale in zip(items, sizes[2:], strict=True)]
        if document.ending:
            parts.append(f"#v(1em)#align(center)[#muted[{_text(document.ending)}]]")
        source.write_text("\n\n".join([*parts, LAST_MARK]), encoding="utf-8")
        # The heights tell the last page but for rows that move as a whole: near its edges Typst is asked.
        if LEAST_LAST_MM <= last_mm <= SURE_MM or not _last_page_is_bare(source):
            break
    return source


def _last_page_is_bare(source: Path) -> bool:
    """Tell whether the last of several pages is filled less far than `LEAST_LAST_MM`."""
    import typst

    mark = json.loads(typst.query(str(source), "<last>", field="value", font_paths=font_paths()))[0]
    return bool(mark["page"] > 1 and mark["y"] - TOP_MM < LEAST_LAST_MM)


def _heights(document: Document, items: list[_PaperBlock], head: str, source: Path) -> list[float]:
    """Return the heights in mm of the answer, the title, and every block with its caption, as Typst sets them."""
    import typst

    measured = "\n".join(
        f"#context [#metadata(measure(block(width: {WIDTH_MM}mm)[{text}]).height.mm()) <height>]"
        for text in [
            _answer_block(document),
            _head(document, source.parent),
            *(part for one in items for part in (one.bare(1.0), one.caption)),
        ]
    )
    source.write_text(head + "\n\n" + measured, encoding="utf-8")
    return [
        float(one) for one in json.loads(typst.query(str(source), "<height>", field="value", font_paths=font_paths()))
    ]


def font_paths() -> list[str]:
    """Return the folder of the fonts that matplotlib brings, so that no system font is needed."""
    fonts = _bundled_fonts()
    return [str(fonts)] if fonts else []


def _bundled_fonts() -> Path | None:
    """Return the folder of the fonts that matplotlib brings, so that no system font is needed."""
    import matplotlib as mpl

    folder = Path(mpl.get_data_path()) / "fonts" / "ttf"
    return folder if folder.is_dir() else None


def _opening(document: Document, rows: tuple[float, float]) -> str:
    """Return what stands before all content."""
    return "\n\n".join(
        (
            PREAMBLE.read_text(encoding="utf-8"),
            f"#let table-text = {rows[0]}pt\n#let row-gap = {rows[1]}pt",
            f"#set document(title: {_quoted(document.title)})",
            f'#set text(lang: "{document.language}")',
            _page_footer(document),
        )
    )


def _answer_block(document: Document) -> str:
    if not document.answer:
        return ""
    return (
        '#block(fill: rgb("#eef4f7"), stroke: (left: 3pt + rgb("#0b5d7a")), inset: 9pt, width: 100%)['
        + "\n\n".join(_text(text) for text in document.answer)
        + "]"
    )


@dataclass(frozen=True)
class _PaperBlock:
    """One block on paper.

    text, bare
        The Typst text at a size, as it stands in the report, and without links and attachments, to be measured.
    caption
        The part of `bare` that does not shrink.
    """

    kind: BlockKind
    text: Callable[[float], str]
    bare: Callable[[float], str]
    caption: str = ""


def _items(document: Document, drawn: _Pictures) -> list[_PaperBlock]:
    blocks = []
    for section in document.sections:
        title = f"= {_text(section.title)}"
        blocks.append(_PaperBlock("heading", _always(title), _always(title)))
        blocks += [_item(block, drawn) for block in section.blocks if block != Side(())]
    return blocks


def _always(text: str) -> Callable[[float], str]:
    return lambda _: text


def _item(block: Block, drawn: _Pictures) -> _PaperBlock:
    if isinstance(block, Table):
        return _PaperBlock("table", _always(_table(block)), _always(_table(block, bare=True)))
    if isinstance(block, (Chart, Side)):
        charts = block.charts if isinstance(block, Side) else (block,)
        names = [drawn.kept(one) for one in charts]
        # Beside each other the longest caption counts.
        columns = "1fr, 1fr" if isinstance(block, Side) else "1fr"
        captions = ", ".join(f"[{drawn.caption(one, name)}]" for one, name in zip(charts, names, strict=True))

        def text(scale: float, *, bare: bool = False) -> str:
            placed = [drawn.place(one, name, scale, bare=bare) for one, name in zip(charts, names, strict=True)]
            if not isinstance(block, Side):
                return placed[0]
            return f"#grid(columns: (1fr, 1fr), gutter: 5mm, {', '.join(f'[{one}]' for one in placed)})"

        return _PaperBlock(
            "chart", text, lambda scale: text(scale, bare=True), f"#grid(columns: ({columns}), gutter: 5mm, {captions})"
        )
    plain = _paragraph(block.text) if isinstance(block, Paragraph) else (
        f"*{_text(block.name)}:* {_text(block.target)} \\ #muted[#text(size: 7.5pt)[{_text(block.note)}]]")  # fmt: skip
    return _PaperBlock("text", _always(plain), _always(plain))


def _paragraph(text: str) -> str:
    """Return a paragraph; one that announces what follows stays with it."""
    return f"#block(sticky: true)[{_text(text)}]" if text.endswith(":") else _text(text)


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

    def kept(self, one: Chart) -> str:
        """Write a picture and its values; return its name."""
        self._number += 1
        name = f"chart{self._number}"
        (self._folder / f"{name}.{one.kind}").write_bytes(one.data)
        if one.values:
            (self._folder / f"{name}.csv").write_text(one.values, encoding="utf-8")
        return name

    def caption(self, one: Chart, name: str) -> str:
        """Return the Typst text of a picture's caption."""
        values = f" ({name}.csv)" if one.values else ""
        return f"#muted[#text(size: 8pt)[{_text(one.caption + values)}]]"

    def place(self, one: Chart, name: str, scale: float, *, bare: bool) -> str:
        """Return the Typst text of a picture with its caption."""
        attached = ""
        if one.values and not bare:
            attached = f'#pdf.attach("{name}.csv", mime-type: "text/csv", description: {_quoted(one.caption[:80])})'
        return (
            f'{attached}#block(breakable: false)[#align(center)[#image("{name}.{one.kind}", width: {scale * one.width_percent:.2f}%)]'
            f"{self.caption(one, name)}]"
        )


def _table(table: Table, *, bare: bool = False) -> str:
    columns = len(table.header)
    size = "6.6pt" if table.small or columns > MANY_COLUMNS else "table-text"
    if table.wide:
        widths = ["auto"] + ["1fr"] * (columns - 1)
        if columns > 3:  # the last column explains
            widths = ["auto"] * (columns - 1) + ["1fr"]
        align = "left"
    else:
        widths = ["1.6fr"] + ["1fr"] * (columns - 1)
        align = "(x, y) => if x == 0 { left } else { right }"
    if table.upright:
        align = "(x, y) => if y == 0 and x > 0 { center + bottom } else if x == 0 { left + bottom } else { right }"
    if table.shares:
        widths = [f"{share:g}fr" for share in table.shares]
    cells = []
    if any(table.header):
        heads = [f"#text(hyphenate: true)[#muted[*{_cell(cell, bare=bare)}*]]" for cell in table.header]
        if table.upright:
            # Turned, so that many narrow columns keep their names apart.
            heads[1:] = [f"#rotate(-90deg, reflow: true)[{one}]" for one in heads[1:]]
        cells.append(f"table.header({', '.join(f'[{one}]' for one in heads)})")
    names = table.anchors or ("",) * len(table.rows)
    for name, row in zip(names, table.rows, strict=True):
        first = _cell(row[0], bare=bare)
        first = f"#text(hyphenate: true)[{first}]"
        first = f"[#[{first}] <{name}>]" if name and not bare else f"[{first}]"
        cells += [first, *(f"[{_cell(cell, bare=bare)}]" for cell in row[1:])]
    caption = f"#muted[#text(size: 8pt)[{_text(table.caption)}]]" if table.caption else ""
    return (
        f"#text(size: {size})[#table(columns: ({', '.join(widths)}), align: {align}, inset: (x: 3pt, y: row-gap), "
        f'stroke: (x, y) => (bottom: 0.4pt + rgb("#d5dce1")), {", ".join(cells)})]{caption}'
    )


def _cell(cell: Cell, *, bare: bool) -> str:
    if isinstance(cell, Ref):
        return _text(cell.text) if bare else f"#link(<{cell.anchor}>)[{_text(cell.text)}]"
    return _text(cell)


def _text(text: str) -> str:
    """Escape everything that Typst would read as markup."""
    return "".join(f"\\{c}" if c in "\\#*_`$[]<>@=~/-+'\"" else c for c in text)


def _quoted(text: str) -> str:
    return '"' + text.replace("\\", "\\\\").replace('"', '\\"') + '"'
