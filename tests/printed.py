"""What stands on the pages of a PDF, read as a person's viewer reads it."""

from __future__ import annotations

from pathlib import Path

import pypdfium2


def pages_of(path: Path) -> list[str]:
    """Return the text of every page of a PDF, in the order in which it was set."""
    # Pages of charts hold megabytes of curves: pypdf needs a second for what this reads in 50 ms.
    with pypdfium2.PdfDocument(path) as document:
        texts = []
        for page in document:
            text = page.get_textpage()
            texts.append(text.get_text_bounded())
            text.close()
            page.close()
        return texts
