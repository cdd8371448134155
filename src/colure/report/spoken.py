"""The language that pictures are drawn in: every text of a picture passes here before it is laid out."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from contextlib import contextmanager
from contextvars import ContextVar
from functools import partial
from typing import Any

_SPOKEN: ContextVar[Callable[[str], str] | None] = ContextVar("texts of pictures", default=None)


@contextmanager
def pictures_in(speak: Callable[[str], str]) -> Iterator[None]:
    """Pass every text of every picture through `speak` while this lasts."""
    token = _SPOKEN.set(speak)
    try:
        yield
    finally:
        _SPOKEN.reset(token)


def speaking() -> Callable[[str], str] | None:
    """Return what every text of a picture passes through now; None where pictures stay as they are."""
    return _SPOKEN.get()


def translate_picture(figure: Any) -> None:
    """Put the texts of a matplotlib figure into the language that pictures are drawn in, before it is laid out."""
    from matplotlib.text import Text
    from matplotlib.ticker import FixedFormatter

    from colure.report.tick_numbers import speak_ticks

    speak = _SPOKEN.get()
    if speak is None:
        return
    ticks = {id(label) for ax in figure.axes for axis in (ax.xaxis, ax.yaxis) for label in axis.get_ticklabels()}
    for one in figure.findobj(Text):
        if one.get_text() and id(one) not in ticks:
            one.set_text(speak(one.get_text()))
    # Names along an axis are written anew from its formatter whenever it is drawn.
    for axis in (one for ax in figure.axes for one in (ax.xaxis, ax.yaxis)):
        formatter = axis.get_major_formatter()
        if isinstance(formatter, FixedFormatter):
            formatter.seq = [speak(str(one)) for one in formatter.seq]
        speak_ticks(axis, speak)
        named = _names_by_place(formatter)
        named.update({place: speak(name) for place, name in named.items()})


def _names_by_place(formatter: Any) -> dict[float, str]:
    """Return the names that `set_yticks(places, names)` gave, by place, as matplotlib keeps them; empty where none were given."""
    func = getattr(formatter, "func", None)
    held = func.args[0] if isinstance(func, partial) and func.args else None
    return held if isinstance(held, dict) else {}
