"""Numbers along the axes of pictures, in the language that pictures are drawn in."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from matplotlib.ticker import FixedFormatter, Formatter, FuncFormatter, NullFormatter


class SpokenTicks(Formatter):
    """Another formatter whose numbers pass through `speak`."""

    def __init__(self, inner: Formatter, speak: Callable[[str], str]) -> None:
        self._inner, self._speak = inner, speak

    def _said(self, text: str) -> str:
        # Powers are set as mathematics; they hold whole numbers.
        return text if "$" in text else self._speak(text)

    def __call__(self, x: float, pos: int | None = None) -> str:
        """Return the label of one place."""
        return self._said(self._inner(x, pos))

    def format_ticks(self, values: Any) -> list[str]:
        """Return the labels of all places."""
        return [self._said(text) for text in self._inner.format_ticks(values)]

    def get_offset(self) -> str:
        """Return what stands at the end of the axis."""
        return self._said(self._inner.get_offset())

    def set_locs(self, locs: Any) -> None:
        """Take the places that are labelled."""
        self._inner.set_locs(locs)


def speak_ticks(axis: Any, speak: Callable[[str], str]) -> None:
    """Put the numbers along an axis into the language that `speak` speaks; names along it are not touched."""
    for get, put in (
        (axis.get_major_formatter, axis.set_major_formatter),
        (axis.get_minor_formatter, axis.set_minor_formatter),
    ):
        inner = get()
        if not isinstance(inner, (FixedFormatter, FuncFormatter, NullFormatter, SpokenTicks)):
            put(SpokenTicks(inner, speak))
