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
#: Transforms of fewer samples times degrees than this take longer on several threads than on one (measured: 116 thousand 1.2 times
#: as long on two, 1.9 million 0.7 times).
LEAST_WORK = 600_000

_count = max(1, min(MOST, os.cpu_count() or 1))


def threads(work: int = LEAST_WORK) -> int:
    """Return how many threads a transform of so many samples times degrees uses."""
    return _count if work >= LEAST_WORK else 1


def use_threads(count: int) -> None:
    """Let the transforms of this process use `count` threads (1 to 8)."""
    global _count  # noqa: PLW0603 - a setting of the whole process
    if not 1 <= count <= MOST:
        raise ValueError(f"threads: {count}, must be from 1 to {MOST} (threads)")
    _count = count


def threaded(task: Callable[[int], T], count: int, work: int = LEAST_WORK) -> list[T]:
    """Return [task(0), ..., task(count - 1)], worked out on `threads(work)` threads."""
    # A task that asks for threads itself would wait for its own: it works alone.
    if threads(work) == 1 or count < 2 or threading.current_thread().name.startswith(POOL):
        return [task(index) for index in range(count)]
    return list(_pool(os.getpid(), _count).map(task, range(count)))


@lru_cache(maxsize=1)
def _pool(process: int, count: int) -> ThreadPoolExecutor:
    """Return the threads of this process: starting them anew costs as much as a small transform; a fork has none."""
    return ThreadPoolExecutor(count, thread_name_prefix=POOL)
