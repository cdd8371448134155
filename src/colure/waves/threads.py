"""How many threads the transforms may use: all cores of a desk, one in a worker beside others."""

from __future__ import annotations

import os
import threading
from collections.abc import Callable
from concurrent.futures import ThreadPoolExecutor
from functools import lru_cache
from typing import TypeVar

T = TypeVar("T")
POOL = "colure-waves"
#: Threads of this process unless `use_threads` says otherwise.
MOST = 8

_count = max(1, min(MOST, os.cpu_count() or 1))


def threads() -> int:
    """Return how many threads the transforms use."""
    return _count


def use_threads(count: int) -> None:
    """Let the transforms of this process use `count` threads (1 to 8)."""
    global _count  # noqa: PLW0603 - a setting of the whole process
    if not 1 <= count <= MOST:
        raise ValueError(f"threads: {count}, must be from 1 to {MOST} (threads)")
    _count = count


def threaded(task: Callable[[int], T], count: int) -> list[T]:
    """Return [task(0), ..., task(count - 1)], worked out on `threads()` threads."""
    # A task that asks for threads itself would wait for its own: it works alone.
    if _count == 1 or count < 2 or threading.current_thread().name.startswith(POOL):
        return [task(index) for index in range(count)]
    return list(_pool(os.getpid(), _count).map(task, range(count)))


@lru_cache(maxsize=1)
def _pool(process: int, count: int) -> ThreadPoolExecutor:
    """Return the threads of this process: starting them anew costs as much as a small transform; a fork has none."""
    return ThreadPoolExecutor(count, thread_name_prefix=POOL)
