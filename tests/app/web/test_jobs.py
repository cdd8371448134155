"""Long work: every session in its turn, and whoever gives work up frees the worker for the next."""

from __future__ import annotations

import asyncio
import errno

import pytest

from colure.app.web.jobs import MOST_JOBS, Jobs
from colure.errors import InputError
from tests.app.web.loops import in_a_loop


class HandDesk:
    """A worker that ends what it does when the test says so."""

    def __init__(self) -> None:
        self.begun: list[str] = []
        self.ended: list[str] = []
        self.work: asyncio.Future[str] | None = None

    async def do(self, work, *arguments, kind):
        assert kind == "long"
        self.begun.append(arguments[0])
        self.work = asyncio.get_running_loop().create_future()
        return await self.work

    def end(self, kind):
        self.ended.append(kind)


async def a_moment():
    for _ in range(8):
        await asyncio.sleep(0)


async def finish(desk):
    desk.work.set_result("good")
    await a_moment()


def test_one_who_asks_once_does_not_wait_behind_one_who_asks_four_times():
    async def story():
        desk = HandDesk()
        jobs = Jobs(desk)
        for i in range(4):
            jobs.begin("report", f"a{i}", "anna", print, f"a{i}")
        await a_moment()
        last = jobs.begin("report", "b0", "ben", print, "b0")
        # The one at work is not taken away; of those that wait, the one who was never served comes first.
        assert jobs.told(jobs.find(last), "ben")["place"] == 1
        for _ in range(5):
            await finish(desk)
        assert desk.begun == ["a0", "b0", "a1", "a2", "a3"]
        assert all(job.state == "done" and job.result == "good" for job in jobs.all())
        jobs.close()

    in_a_loop(story())


def test_what_is_given_up_frees_the_worker():
    async def story():
        desk = HandDesk()
        jobs = Jobs(desk)
        keys = [jobs.begin("rehearse", name, "anna", print, name) for name in ("first", "second", "third")]
        await a_moment()
        jobs.cancel(keys[1])  # waits: it is never begun
        assert desk.ended == []
        jobs.cancel(keys[0])  # at work: its process ends, and the next begins
        await a_moment()
        assert desk.ended == ["long"] and desk.begun == ["first", "third"]
        await finish(desk)
        assert [jobs.find(key).state for key in keys] == ["given up", "given up", "done"]
        with pytest.raises(InputError, match="is over already"):
            jobs.cancel(keys[0])
        with pytest.raises(InputError, match="never begun"):
            jobs.cancel("rehearse-99")
        jobs.close()

    in_a_loop(story())


def test_the_line_is_bounded():
    async def story():
        jobs = Jobs(HandDesk())
        for i in range(MOST_JOBS):
            jobs.begin("report", str(i), "anna", print, str(i))
        with pytest.raises(InputError, match=f"at most {MOST_JOBS} do"):
            jobs.begin("report", "one more", "anna", print, "one more")
        jobs.close()
        await a_moment()

    in_a_loop(story())


def test_work_that_finds_no_room_on_the_disk_says_so_as_every_request_does():
    """Without the folders of the server; common practice, no source."""

    async def story():
        desk = HandDesk()
        jobs = Jobs(desk)
        key = jobs.begin("report", "report", "anna", print, "report")
        await a_moment()
        desk.work.set_exception(OSError(errno.ENOSPC, "No space left on device", "/secret/runs/first/figures.json"))
        await a_moment()
        assert jobs.told(jobs.find(key), "anna")["faults"] == [
            "figures.json: No space left on device; nothing that was there is lost; free the disk, then repeat the command"
        ]
        jobs.close()

    in_a_loop(story())
