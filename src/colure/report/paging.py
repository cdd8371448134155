"""How pictures are sized so that pages are full: a picture that misses the end of a page by little is drawn smaller, not moved.

A picture that did not fit would leave the rest of its page blank. So heights are measured first, pages are filled in order, and
a picture takes the rest of its page if that is not much less than it wants.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final, Literal

#: Text area of a page (A4 with the margins of the template) and the space between blocks, mm.
PAGE_MM: Final = 258.0
WIDTH_MM: Final = 174.0
BETWEEN_MM: Final = 3.8
#: What a title keeps free above itself beyond that; at the head of a page nothing.
ABOVE_TITLE_MM: Final = 3.6
#: A picture is never drawn smaller than this share of its size.
LEAST_SCALE: Final = 0.62
#: What the heights may be wrong by on a page: rows that move to the next page as a whole.
SPARE_MM: Final = 6.0
#: Height of one row of a table that starts below a title.
ROW_MM: Final = 12.0

BlockKind = Literal["heading", "text", "table", "chart"]


@dataclass(frozen=True)
class PageBlock:
    """One block of a report on paper.

    height_mm
        At full size; of a table its whole height, which may run over several pages.
    fixed_mm
        Part of the height that does not shrink with a picture: its caption.
    """

    kind: BlockKind
    height_mm: float
    fixed_mm: float = 0.0


def scales(pieces: Sequence[PageBlock]) -> list[float]:
    """Return the size of every piece as a share of its full size: below 1 for pictures that end a page."""
    return placed(pieces)[0]


def placed(pieces: Sequence[PageBlock]) -> tuple[list[float], float]:
    """Return (size of every piece as a share of its full size, height in mm that the last page is filled to)."""
    out, y, titles = [], 0.0, 0.0
    for piece in pieces:
        scale = 1.0
        if piece.kind == "heading":
            # A title stays with what follows.
            titles += piece.height_mm + (ABOVE_TITLE_MM if y + titles > 0.0 else 0.0) + BETWEEN_MM
        elif piece.kind == "chart":
            scale, y = _placed(piece, y, titles)
            titles = 0.0
        else:
            first = min(piece.height_mm, ROW_MM)
            y = _flowed((y if y + titles + first <= PAGE_MM else 0.0) + titles, piece.height_mm)
            titles = 0.0
        out.append(scale)
    return out, y


def _placed(piece: PageBlock, y: float, titles: float) -> tuple[float, float]:
    """Return (scale of a picture, where it ends) below `y` with its titles."""
    wanted = titles + piece.height_mm
    if y + wanted + SPARE_MM <= PAGE_MM:
        return 1.0, y + wanted + BETWEEN_MM
    picture = piece.height_mm - piece.fixed_mm
    scale = (PAGE_MM - SPARE_MM - y - titles - piece.fixed_mm) / picture
    if scale >= LEAST_SCALE:
        return scale, PAGE_MM
    # On a new page; one that is larger than a page shrinks to it.
    scale = min(1.0, (PAGE_MM - SPARE_MM - titles - piece.fixed_mm) / picture)
    return scale, titles + piece.fixed_mm + scale * picture + BETWEEN_MM


def _flowed(y: float, height_mm: float) -> float:
    """Return where text or a table ends that begins at `y` and runs on to further pages."""
    end = y + height_mm + BETWEEN_MM
    while end > PAGE_MM:
        # The head is repeated, and a row that does not fit moves as a whole.
        end += SPARE_MM - PAGE_MM
    return end
