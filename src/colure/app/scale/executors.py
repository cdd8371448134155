"""Where work is done: threads here, processes here, a Dask cluster of this computer, or one that runs already.

All of them take the same functions and give the same results. A worker that dies costs time: its work is done again by another,
and what kills two workers in a row is reported and left out.
"""

from __future__ import annotations

import multiprocessing
import os
from collections.abc import Callable, Iterator, Sequence
from concurrent.futures import Executor, Future, ProcessPoolExecutor, ThreadPoolExecutor, as_completed
from concurrent.futures.process import BrokenProcessPool
from contextlib import contextmanager
from typing import Any, TypeVar

from colure.app.scale.threads import ONE_THREAD
from colure.errors import InputError
from colure.model.loading import require_library

T = TypeVar("T")
R = TypeVar("R")
#: How often a Dask scheduler gives the same work to another worker after one died.
RETRIES = 3
#: Memory of one worker; a local cluster stops what needs more, and names it.
WORKER_BYTES = 2 << 30


class Failed(Exception):  # noqa: N818 - a result among others, not an error of the program
    """What became of work that could not be done, in words."""


class Workers:
    """Workers that are there for several rounds of work; see `workers_of`."""

    def __init__(self, executor: Executor | None, *, alone: bool, count: int) -> None:
        self._executor, self._alone, self._count = executor, alone, count

    def run(self, work: Callable[[T], R], tasks: Sequence[T]) -> Iterator[tuple[int, R | Failed]]:
        """Yield (index of the task, result) as they are done; a task that raises or kills its worker yields `Failed`.

        work
            A function at the top of a module; what it raises is told in words, faults of an `InputError` as they are.
        """
        if self._executor is None:
            yield from _in_processes(work, tasks, min(self._count, max(1, len(tasks))))
            return
        futures = {self._executor.submit(_told, work, task, self._alone): index for index, task in enumerate(tasks)}
        yield from ((futures[future], _result(future)) for future in as_completed(futures))


@contextmanager
def workers_of(scheduler: str, count: int | None = None, *, memory_bytes: int = WORKER_BYTES) -> Iterator[Workers]:
    """Hold workers while the block runs.

    Parameters
    ----------
    scheduler
        `threads`, `processes`, `local` (a Dask cluster of this computer), or the address of a Dask scheduler (tcp://, tls://).
    count
        How many at once; one per core if None. An existing scheduler has its own.
    memory_bytes
        What one worker of a local cluster may take.

    Raises
    ------
    InputError
        If the scheduler's name or address is wrong, it does not answer, or Dask is not installed.
    """
    many = count or os.cpu_count() or 1
    if scheduler == "processes":
        yield Workers(None, alone=True, count=many)
        return
    with _executor(scheduler, many, memory_bytes) as executor:
        yield Workers(executor, alone=scheduler != "threads", count=many)


def _told(work: Callable[[T], R], task: T, alone: bool) -> R | Failed:
    """Do work where it was sent; its faults come back as words."""
    if alone:
        from colure.waves.threads import use_threads

        use_threads(1)
    try:
        return work(task)
    except InputError as error:
        return Failed("; ".join(error.faults))
    except MemoryError:
        return Failed("memory: needs more than this worker has (GiB)")
    except Exception as error:
        return Failed(f"{type(error).__name__}: {error}")


def _result(future: Future[Any]) -> Any:
    """Return a result; what the worker could not say is said for it."""
    try:
        return future.result()
    except Exception as error:
        return Failed(f"the worker was lost with it: {type(error).__name__}: {error}")


def _in_processes(work: Callable[[T], R], tasks: Sequence[T], workers: int) -> Iterator[tuple[int, R | Failed]]:
    left = dict(enumerate(tasks))
    with _processes(workers) as pool:
        futures = {pool.submit(_told, work, task, True): index for index, task in left.items()}
        for future in as_completed(futures):
            if isinstance(future.exception(), BrokenProcessPool):
                continue
            left.pop(futures[future])
            yield futures[future], _result(future)
    # A worker that died took its neighbours' work along: each of them again, alone, so that the guilty one is known.
    for index, task in left.items():
        with _processes(1) as pool:
            yield index, _result(pool.submit(_told, work, task, True))


@contextmanager
def _processes(workers: int) -> Iterator[ProcessPoolExecutor]:
    # One thread for each worker's linear algebra: the workers share the cores.
    before = {name: os.environ.get(name) for name in ONE_THREAD}
    os.environ.update(dict.fromkeys(ONE_THREAD, "1"))
    try:
        with ProcessPoolExecutor(workers, mp_context=multiprocessing.get_context("spawn")) as pool:
            yield pool
    finally:
        for name, value in before.items():
            if value is None:
                os.environ.pop(name, None)
            else:
                os.environ[name] = value


@contextmanager
def _executor(scheduler: str, workers: int, memory_bytes: int) -> Iterator[Executor]:
    if scheduler == "threads":
        with ThreadPoolExecutor(workers) as pool:
            yield pool
        return
    if scheduler != "local" and not scheduler.startswith(("tcp://", "tls://")):
        raise InputError([
            f"scheduler = {scheduler!r}: must be threads, processes, local, or an address like tcp://10.0.0.5:8786"
        ])  # fmt: skip
    dask = require_library("distributed", "cluster")
    if scheduler == "local":
        with (
            dask.LocalCluster(n_workers=workers, threads_per_worker=1, memory_limit=memory_bytes, dashboard_address=None) as cluster,
            dask.Client(cluster) as client,
        ):  # fmt: skip
            yield client.get_executor(retries=RETRIES, pure=False)
        return
    try:
        client = dask.Client(scheduler, timeout="10s")
    except (OSError, ValueError) as error:
        raise InputError([f"scheduler = {scheduler}: does not answer: {error}"]) from None
    with client:
        yield client.get_executor(retries=RETRIES, pure=False)
