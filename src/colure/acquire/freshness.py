"""Whether a trace belongs to the sweep that was asked for: an analyzer that hands over an older one is found, bit for bit."""

from __future__ import annotations

from collections.abc import Callable
from contextlib import contextmanager
from typing import TYPE_CHECKING

import numpy as np

from colure.errors import InstrumentError
from colure.geometry.conventions import ComplexArray
from colure.instruments.protocols import AnalyzerDriver

if TYPE_CHECKING:
    from collections.abc import Iterator

#: What a sweep looks at: positions of the axes, channel of the switch, state of the device. `UNKNOWN` equals no view.
SweptView = tuple[float | int | str | None, ...]
UNKNOWN: SweptView = ("unknown",)
#: So many equal readings of a power-only receiver, which reads few digits, from as many views are a frozen one.
SAME_POWERS = 20
#: So many sweeps that equal a trace of an unknown place are refused; the next is taken, and flagged.
SAME_UNKNOWN = 2
#: An instrument that fails to say what it holds is asked so often, and then no more.
ATTEMPTS = 2


class Freshness:
    """Remembers the trace that the analyzer still holds, and what it was taken of.

    A sweep that could not be read, or one before this session, leaves a trace that nobody has seen: it is read, without another
    sweep, before something else is looked at (`AnalyzerDriver.held`, where a driver has it).
    """

    def __init__(self, analyzer: AnalyzerDriver) -> None:
        self._analyzer = analyzer
        self._trace: ComplexArray | None = None
        self._view: SweptView = UNKNOWN
        self._unread: SweptView | None = None
        self._same = self._failed = 0

    def resumed(self, trace: ComplexArray, view: SweptView) -> None:
        """Take over the newest trace of an earlier session; what the analyzer holds now may be another one."""
        self._trace, self._view, self._unread = trace.copy(), view, UNKNOWN

    @contextmanager
    def sweeping(self, view: SweptView) -> Iterator[None]:
        """Know what an unread trace was taken of, if the sweep fails or is given up."""
        self._unread = view
        yield
        self._unread = None

    def look_back(
        self, view: SweptView, patiently: Callable[[Callable[[], ComplexArray | None]], ComplexArray | None]
    ) -> None:
        """Read what the analyzer holds, if nobody has seen it and something else is to be swept now.

        Raises
        ------
        InstrumentError
            If the analyzer does not answer; after `ATTEMPTS` it is not asked any more.
        """
        unread, reader = self._unread, getattr(self._analyzer, "held", None)
        if unread is None or unread == view:
            return
        self._failed += 1
        if reader is None or self._failed > ATTEMPTS:
            self._unread, self._failed = None, 0
            return
        held = patiently(reader)
        self._unread, self._failed = None, 0
        if held is None or (self._trace is not None and np.array_equal(held, self._trace)):
            return
        self._trace, self._view = held, unread

    def require(self, trace: ComplexArray, view: SweptView) -> bool:
        """Raise `InstrumentError` if a trace equals the one before, bit for bit, although something else is looked at.

        Returns
        -------
        Whether it is undecided: several sweeps gave the trace that was held before this session, of a place that nobody knows. A
        frozen analyzer does that, and so does a receiver without noise at the same place; the next place tells which.
        """
        before, undecided = self._trace, False
        if before is not None and (view != self._view):
            self._same = self._same + 1 if np.array_equal(before, trace) else 0
            undecided = self._view == UNKNOWN and self._same > SAME_UNKNOWN
            if not undecided and self._same >= (SAME_POWERS if self._analyzer.receiver == "power" else 1):
                raise InstrumentError("frozen trace: bit for bit the one before, although axes or switch have moved")
            self._same = 0 if undecided else self._same
        self._trace, self._view = trace.copy(), view
        return undecided
