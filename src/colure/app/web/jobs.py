"""Work that takes longer than a person waits for: one after the other, every session in its turn, each can be given up."""

from __future__ import annotations

import asyncio
import time
from collections.abc import Callable
from contextlib import suppress
from dataclasses import dataclass, field
from typing import Any, Literal

from colure.app.web.desk import Desk
from colure.app.web.views.answers import JobState
from colure.errors import InputError, system_fault

#: Work that may wait, and results that are kept for who asks.
MOST_JOBS, MOST_KEPT = 8, 32

JobStage = Literal["waiting", "at work", "done", "failed", "given up"]


@dataclass
class Job:
    """One piece of work; times are of the monotonic clock, seconds.

    usual_s
        How long the same kind of work took last; None before it was ever done.
    """

    key: str
    name: str
    words: str
    owner: str
    work: Callable[..., Any]
    arguments: tuple[Any, ...]
    asked: float
    usual_s: float | None = None
    state: JobStage = "waiting"
    began: float | None = None
    ended: float | None = None
    result: Any = None
    faults: list[str] = field(default_factory=list)

    @property
    def over(self) -> bool:
        """Tell whether nothing more happens to it."""
        return self.state not in ("waiting", "at work")


class Jobs:
    """The line before the worker for long work. Lives in the server's one thread."""

    def __init__(self, desk: Desk, shown: Callable[[str], str] = str) -> None:
        """Take what a page may be told of a text (`shown`)."""
        self._desk, self._shown = desk, shown
        self._jobs: dict[str, Job] = {}
        self._begun = 0
        self._served: dict[str, int] = {}
        self._usual: dict[str, float] = {}
        self._task: asyncio.Task[Any] | None = None
        self._runner: asyncio.Task[None] | None = None

    def begin(self, name: str, words: str, owner: str, work: Callable[..., Any], *arguments: Any) -> str:
        """Put work into the line and return its id.

        Raises
        ------
        InputError
            If too much waits already.
        """
        waiting = sum(not job.over for job in self._jobs.values())
        if waiting >= MOST_JOBS:
            raise InputError([f"{waiting} pieces of work wait already: at most {MOST_JOBS} do (jobs)"])
        while len(self._jobs) >= MOST_KEPT:
            self._jobs.pop(next(key for key, job in self._jobs.items() if job.over))
        self._begun += 1
        key = f"{name}-{self._begun}"
        now = time.monotonic()
        self._jobs[key] = Job(key, name, words, owner, work, arguments, now, self._usual.get(name))
        if self._runner is None or self._runner.done():
            self._runner = asyncio.create_task(self._run())
        return key

    def cancel(self, key: str) -> None:
        """Give work up, whether it waits or is at work; raises `InputError` if it is over or was never begun."""
        job = self.find(key)
        if job.over:
            raise InputError([f"job {key}: is over already ({job.state})"])
        at_work = job.state == "at work"
        job.state, job.ended = "given up", time.monotonic()
        if at_work:
            if self._task is not None:
                self._task.cancel()
            self._desk.end("long")

    def find(self, key: str) -> Job:
        """Return a piece of work; raises `InputError` if there is none of that name."""
        if key not in self._jobs:
            raise InputError([f"job = {key!r}: was never begun, or is forgotten"])
        return self._jobs[key]

    def told(self, job: Job, asks: str) -> JobState:
        """Return how a piece of work stands, for a session of this name."""
        now = time.monotonic()
        line = self._line()
        return {
            "id": job.key, "name": job.name, "words": job.words, "by": job.owner, "mine": job.owner == asks, "state": job.state,
            "place": line.index(job) + 1 if job in line else 0,
            "for_s": round((job.ended or now) - (job.began or job.asked), 1), "usual_s": job.usual_s, "faults": job.faults,
        }  # fmt: skip

    def all(self) -> list[Job]:
        """Return everything that is known, the newest first."""
        return list(reversed(self._jobs.values()))

    def close(self) -> None:
        """Let everything go."""
        for task in (self._task, self._runner):
            if task is not None:
                task.cancel()

    def _line(self) -> list[Job]:
        """Return what waits, in the order in which it will be done: who was served longest ago comes first."""
        waiting = [job for job in self._jobs.values() if job.state == "waiting"]
        seen: dict[str, int] = {}
        places = {}
        for job in waiting:
            # The n-th piece of one session comes after the n-th of every other.
            seen[job.owner] = seen.get(job.owner, 0) + 1
            places[job.key] = (seen[job.owner], self._served.get(job.owner, 0), job.asked)
        return sorted(waiting, key=lambda job: places[job.key])

    async def _run(self) -> None:
        while line := self._line():
            job = line[0]
            self._served[job.owner] = max(self._served.values(), default=0) + 1
            job.state, job.began = "at work", time.monotonic()
            self._task = asyncio.create_task(self._desk.do(job.work, *job.arguments, kind="long"))
            # A piece of work that was given up ends with its task; the next one begins.
            with suppress(asyncio.CancelledError):
                await asyncio.wait({self._task})
                self._end(job, self._task)

    def _end(self, job: Job, task: asyncio.Task[Any]) -> None:
        if job.state == "given up" or task.cancelled():
            return
        job.ended = time.monotonic()
        error = task.exception()
        if error is None:
            job.state, job.result = "done", task.result()
            self._usual[job.name] = round(job.ended - (job.began or job.asked), 1)
            return
        job.state = "failed"
        job.faults = [self._shown(one) for one in _faults_of(error)]


def _faults_of(error: BaseException) -> list[str]:
    """Return why work failed, a line each; what the system refused as every other request says it."""
    if isinstance(error, InputError):
        return error.faults
    refused = system_fault(error, whole_path=False) if isinstance(error, OSError) else None
    return [refused or f"{type(error).__name__}: {error}"]
