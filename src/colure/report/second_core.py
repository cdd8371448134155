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
from concurrent.futures import ThreadPoolExecutor
from concurrent.futures import TimeoutError as FutureTimeoutError
from contextlib import contextmanager, suppress
from typing import IO, TYPE_CHECKING, Final, cast

from colure.report.spoken import pictures_in, speaking
from colure.report.translation import Translation

if TYPE_CHECKING:
    from colure.report.document import ReportSection
    from colure.report.source import Source

#: Sections with pictures, those that take longest first: two processes then end at nearly the same time.
SLOW: Final = ("sphere", "frequency", "cuts", "steps", "uncertainty", "elements", "verdict", "set-up", "room", "drift")
#: A child that does not answer for so long after this process is ready is given up, s.
PATIENCE_S: Final = 60.0
START: Final = "from colure.report import content, second_core; second_core.serve(content.SECTIONS)"

Sections = dict[str, tuple["ReportSection", ...]]
Drawers = Mapping[str, Callable[["Source"], tuple["ReportSection", ...]]]


class SecondCore:
    """The child: begins at once, and loads its libraries while this process works out what is to be drawn."""

    def __init__(self) -> None:
        environment = {**os.environ, "PYTHONPATH": os.pathsep.join(sys.path), "OPENBLAS_NUM_THREADS": "1"}
        self._child = subprocess.Popen(
            [sys.executable, "-c", START], stdin=subprocess.PIPE, stdout=subprocess.PIPE, stderr=subprocess.DEVNULL, env=environment,
        )  # fmt: skip

    def sections(self, source: Source, names: Sequence[str], drawers: Drawers) -> Sections:
        """Return the sections of these names, each drawn by whichever process is free.

        drawers
            What draws each section here; the child has the same.
        """
        left = deque(sorted(names, key=lambda name: SLOW.index(name) if name in SLOW else len(SLOW)))
        with ThreadPoolExecutor(1) as pool:
            waiting = pool.submit(self._drawn_by_child, source, speaking(), left)
            own = _worked_off(source, left, drawers)
            try:
                others = waiting.result(timeout=PATIENCE_S)
            except FutureTimeoutError:
                self._child.kill()
                others = waiting.result()
        missing = deque(name for name in names if name not in own and name not in others)
        return {**own, **others, **_worked_off(source, missing, drawers)}

    def _drawn_by_child(self, source: Source, speak: object, left: deque[str]) -> Sections:
        """Let the child draw what stands first in `left` until nothing is left, or it fails."""
        drawn: Sections = {}
        said = speak if isinstance(speak, Translation) else None
        to, back = cast("IO[bytes]", self._child.stdin), cast("IO[bytes]", self._child.stdout)
        try:
            _send(to, (source, None if said is None else said.language))
            # The child answers once it has its libraries: until then this process draws all.
            pickle.load(back)
            while True:
                name = left.popleft()
                _send(to, name)
                drawn[name], english = pickle.load(back)
                if said is not None:
                    said.left.extend(english)
        except (IndexError, EOFError, OSError, pickle.PickleError, TypeError, ValueError, AttributeError):
            return drawn

    def close(self) -> None:
        """End the child."""
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
    with suppress(EOFError, BrokenPipeError):
        source, language = pickle.load(sys.stdin.buffer)
        _send(back, "ready")
        while True:
            name = pickle.load(sys.stdin.buffer)
            if language is None:
                _send(back, (drawers[name](source), []))
                continue
            speak = Translation(language)
            with pictures_in(speak):
                drawn = drawers[name](source)
            _send(back, (drawn, speak.left))
