"""A child of this process that draws sections of a report beside it.

Pictures are drawn in Python, which uses one core of a process. The child holds the same code and gets the same numbers, so its
sections are those that this process would draw. What it does not bring back, this process draws itself.
"""

from __future__ import annotations

import importlib
import os
import pickle  # between this process and its own child only
import subprocess
import sys
from collections import deque
from collections.abc import Callable, Iterator, Mapping, Sequence
from concurrent.futures import Future, ThreadPoolExecutor
from concurrent.futures import TimeoutError as FutureTimeoutError
from contextlib import contextmanager, suppress
from typing import IO, TYPE_CHECKING, Any, Final, cast

from colure.report.spoken import pictures_in, speaking
from colure.report.translation import Translation

if TYPE_CHECKING:
    from colure.report.document import ReportSection
    from colure.report.source import Source

#: Sections with pictures, those that take longest first: two processes then end at nearly the same time.
SLOW: Final = ("sphere", "frequency", "cuts", "steps", "uncertainty", "elements", "verdict", "set-up", "room", "drift")
#: Those of them that show the processed run, its figures and verdict, and nothing that is read from them later.
EARLY: Final = ("sphere", "uncertainty", "verdict", "set-up", "drift")
#: A child that does not answer for so long after this process is ready is given up, s.
PATIENCE_S: Final = 60.0
START: Final = "from colure.report import content, second_core; second_core.serve(content.SECTIONS)"

Sections = dict[str, tuple["ReportSection", ...]]
_DrawnByChild = tuple[Sections, list[str]]
Drawers = Mapping[str, Callable[["Source"], tuple["ReportSection", ...]]]


class SecondCore:
    """The child: begins at once, and loads its libraries while this process works out what is to be drawn."""

    def __init__(self) -> None:
        environment = {**os.environ, "PYTHONPATH": os.pathsep.join(sys.path), "OPENBLAS_NUM_THREADS": "1"}
        self._child = subprocess.Popen(
            [sys.executable, "-c", START], stdin=subprocess.PIPE, stdout=subprocess.PIPE, stderr=subprocess.DEVNULL,
            env=environment,
        )  # fmt: skip
        # One thread talks to the child: what it is asked for is done in turn.
        self._talk = ThreadPoolExecutor(1)
        self._early: deque[str] = deque()
        self._given: set[str] = set()
        self._begun: Future[_DrawnByChild] | None = None

    def begin(self, source: Source, names: Sequence[str]) -> None:
        """Let the child draw sections of these names while this process still works out what the others show.

        source
            Everything that these sections show; other parts may be empty yet.
        """
        self._early, self._given = deque(names), set(names)
        language = source.particulars.settings.language
        self._begun = self._talk.submit(self._drawn_by_child, source, language, self._early)

    def sections(self, source: Source, names: Sequence[str], drawers: Drawers) -> Sections:
        """Return the sections of these names, each drawn by whichever process is free.

        drawers
            What draws each section here; the child has the same.
        """
        while self._early:
            with suppress(IndexError):
                self._given.discard(self._early.popleft())
        wanted = [name for name in dict.fromkeys(names) if name not in self._given]
        left = deque(sorted(wanted, key=lambda name: SLOW.index(name) if name in SLOW else len(SLOW)))
        waiting = self._talk.submit(self._drawn_by_child, source, source.particulars.settings.language, left)
        drawn = _worked_off(source, left, drawers)
        try:
            waiting.result(timeout=PATIENCE_S)
        except FutureTimeoutError:
            self._child.kill()
        for others in (self._begun, waiting):
            if others is not None:
                drawn_there, english = others.result()
                drawn.update(drawn_there)
                speak = speaking()
                if isinstance(speak, Translation):
                    speak.left.extend(english)
        missing = deque(name for name in dict.fromkeys(names) if name not in drawn)
        return {**drawn, **_worked_off(source, missing, drawers)}

    def _drawn_by_child(self, source: Source, language: str, left: deque[str]) -> _DrawnByChild:
        """Let the child draw what stands first in `left` until nothing is left, or it fails: sections, and texts left in English."""
        drawn: Sections = {}
        english: list[str] = []
        to, back = cast("IO[bytes]", self._child.stdin), cast("IO[bytes]", self._child.stdout)
        try:
            _send(to, (source, language))
            # The child answers once it has its libraries: until then this process draws all.
            pickle.load(back)
            while True:
                name = left.popleft()
                _send(to, name)
                drawn[name], more = pickle.load(back)
                english += more
        except (IndexError, EOFError, OSError, pickle.PickleError, TypeError, ValueError, AttributeError):
            return drawn, english

    def close(self) -> None:
        """End the child, whatever it does."""
        self._early.clear()
        self._child.terminate()
        self._talk.shutdown()
        for pipe in (self._child.stdin, self._child.stdout):
            with suppress(OSError):
                cast("IO[bytes]", pipe).close()
        try:
            self._child.wait(timeout=5.0)
        except subprocess.TimeoutExpired:
            self._child.kill()
            self._child.wait()


@contextmanager
def second_core() -> Iterator[SecondCore | None]:
    """Hold a child while the block runs; None where this process has one core only."""
    cores = len(os.sched_getaffinity(0)) if hasattr(os, "sched_getaffinity") else os.cpu_count() or 1
    if cores < 2 or not sys.executable:
        yield None
        return
    child = SecondCore()
    try:
        yield child
    finally:
        child.close()


def _worked_off(source: Source, left: deque[str], drawers: Drawers) -> Sections:
    drawn: Sections = {}
    with suppress(IndexError):
        while True:
            name = left.popleft()
            drawn[name] = drawers[name](source)
    return drawn


def _send(to: IO[bytes], thing: object) -> None:
    pickle.dump(thing, to, protocol=pickle.HIGHEST_PROTOCOL)
    to.flush()


def serve(drawers: Drawers) -> None:
    """Draw what is asked for on standard input until it ends: the child's whole life."""
    # Nothing that a library prints may come amid the answers.
    back = os.fdopen(os.dup(1), "wb")
    os.dup2(2, 1)
    for library in ("matplotlib.backends.backend_svg", "mpl_toolkits.mplot3d.art3d", "xarray"):
        importlib.import_module(library)  # before it is needed
    source: Any = None
    language = "en"
    with suppress(EOFError, BrokenPipeError):
        while True:
            asked = pickle.load(sys.stdin.buffer)
            if isinstance(asked, tuple):
                source, language = asked
                _send(back, "ready")
                continue
            if language == "en":
                _send(back, (drawers[asked](source), []))
                continue
            speak = Translation(language)
            with pictures_in(speak):
                drawn = drawers[asked](source)
            _send(back, (drawn, speak.left))
