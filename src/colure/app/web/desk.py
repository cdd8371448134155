"""Work that takes time is done by processes of its own, so that stop is heard at once whatever else goes on."""

from __future__ import annotations

import asyncio
import multiprocessing
import os
import sys
import threading
from collections.abc import Callable
from concurrent.futures import ProcessPoolExecutor
from concurrent.futures.process import BrokenProcessPool
from contextlib import suppress
from typing import Any, Literal, TypeVar

from colure.errors import InputError

#: Memory that a worker may take; what does not fit ends the worker, never the scan.
LARGEST_MEMORY_BYTES = 12 << 30
#: quick: answers while somebody types; view: pictures of a run; long: what takes longer than a person waits for.
WorkKind = Literal["quick", "view", "long"]
LIMIT_S: dict[WorkKind, float] = {"quick": 30.0, "view": 120.0, "long": 1800.0}
T = TypeVar("T")


def _prepare() -> None:
    """Bound a worker's memory where the system knows how, leave signals to the server, and do not outlive it."""
    import signal

    signal.signal(signal.SIGINT, signal.SIG_IGN)
    threading.Thread(target=_end_with_parent, daemon=True).start()
    if sys.platform != "win32":
        import resource

        resource.setrlimit(resource.RLIMIT_AS, (LARGEST_MEMORY_BYTES, LARGEST_MEMORY_BYTES))
    # What every answer needs; the first one is as quick as the rest.
    import colure.app.services.campaigns
    import colure.app.services.processing
    import colure.app.services.starting
    import colure.planning.preflight  # noqa: F401


def _end_with_parent() -> None:
    """A server that was killed cannot end its workers: they notice by themselves."""
    parent = multiprocessing.parent_process()
    if parent is not None:
        parent.join()
        os._exit(0)


def _done(work: Callable[..., Any], arguments: tuple[Any, ...]) -> tuple[Any, list[str]]:
    """Run in the worker: a result, or faults in words."""
    try:
        return work(*arguments), []
    except InputError as error:
        return None, error.faults
    except MemoryError:
        return None, [f"memory: needs more than {LARGEST_MEMORY_BYTES >> 30} GiB (GiB)"]


def _soon(loop: asyncio.AbstractEventLoop, action: Callable[..., None], *arguments: Any) -> None:
    """Have the loop do something, unless it ended meanwhile."""
    with suppress(RuntimeError):
        loop.call_soon_threadsafe(action, *arguments)


class Desk:
    """Three workers, so that a view never waits behind a rehearsal, nor typing behind a view."""

    def __init__(self) -> None:
        self._pools: dict[WorkKind, ProcessPoolExecutor] = {}
        self._closed = False

    def open(self, kinds: tuple[WorkKind, ...] = ("quick", "view", "long")) -> None:
        """Start the workers, so that the first question finds them ready: one after the other, for a stop must be heard meanwhile."""
        if kinds and not self._closed:
            begun = self._pool(kinds[0]).submit(int)
            loop = asyncio.get_running_loop()
            begun.add_done_callback(lambda _: _soon(loop, self.open, kinds[1:]))

    async def do(self, work: Callable[..., T], *arguments: Any, kind: WorkKind = "quick") -> T:
        """Have work done and return its result.

        Raises
        ------
        InputError
            What the work raised, or that it broke its worker or took too long.
        """
        loop = asyncio.get_running_loop()
        limit = LIMIT_S[kind]
        try:
            future = loop.run_in_executor(self._pool(kind), _done, work, arguments)
            answer: tuple[T, list[str]] = await asyncio.wait_for(future, limit)
            result, faults = answer
        except BrokenProcessPool:
            # Others that waited for the same workers may have taken the pool away already.
            if (broken := self._pools.pop(kind, None)) is not None:
                broken.shutdown(wait=False)
            raise InputError(["the worker ended in the middle of this; a new one is started"]) from None
        except TimeoutError:
            self.end(kind)
            raise InputError([f"this took longer than {limit:g} s and was given up"]) from None
        if faults:
            raise InputError(faults)
        return result

    def _pool(self, kind: WorkKind) -> ProcessPoolExecutor:
        if kind not in self._pools:
            self._pools[kind] = ProcessPoolExecutor(1, multiprocessing.get_context("spawn"), initializer=_prepare)
        return self._pools[kind]

    def end(self, kind: WorkKind) -> None:
        """End a worker in the middle of what it does; the next request starts a new one."""
        pool = self._pools.pop(kind, None)
        if pool is None:
            return
        for process in list(getattr(pool, "_processes", {}).values()):
            process.kill()
        pool.shutdown(wait=True, cancel_futures=True)

    def close(self) -> None:
        """End the workers."""
        self._closed = True
        for kind in list(self._pools):
            self.end(kind)
