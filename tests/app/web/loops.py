"""Event loops of tests that need one of their own."""

from __future__ import annotations

import asyncio
from collections.abc import Coroutine
from concurrent.futures import ThreadPoolExecutor
from typing import Any, TypeVar

T = TypeVar("T")


def in_a_loop(story: Coroutine[Any, Any, T]) -> T:
    """Run a coroutine in a thread of its own: a browser that an earlier test opened keeps the loop of this one."""
    with ThreadPoolExecutor(1) as pool:
        return pool.submit(asyncio.run, story).result()
