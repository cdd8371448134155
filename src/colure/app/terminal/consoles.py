"""The console that every table and progress bar is drawn on: texts of foreign files and answers of instruments stay plain texts on it."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any

from rich.console import Console, ConsoleOptions, RenderableType
from rich.segment import Segment
from rich.text import Text

from colure.values import printable

#: Off a terminal, tables keep this width rather than being cut to 80 columns.
PLAIN_WIDTH = 110


class PlainConsole(Console):
    """Takes no words in brackets for styles, and draws control characters and marks that turn the writing as `?`."""

    def render_str(self, text: str, **options: Any) -> Text:
        """Make a text of a string: before it is measured, or a column would be too narrow for it."""
        return super().render_str(printable(text), **options)

    def render(self, renderable: RenderableType, options: ConsoleOptions | None = None) -> Iterable[Segment]:
        """Draw something; the console's own control codes pass."""
        for segment in super().render(renderable, options):
            yield segment if segment.control else Segment(printable(segment.text), segment.style)


def console(*, stderr: bool = False) -> Console:
    """Return a console that never cuts a table when its output is piped."""
    screen = PlainConsole(stderr=stderr, highlight=False, markup=False, emoji=False)
    if screen.is_terminal:
        return screen
    return PlainConsole(stderr=stderr, highlight=False, markup=False, emoji=False, width=PLAIN_WIDTH)
