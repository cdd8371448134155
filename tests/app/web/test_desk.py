"""Workers of the page: one that dies is told to everybody who waited for it, and the next request has a new one."""

from __future__ import annotations

import asyncio
import os

import pytest

from colure.app.web.desk import Desk
from colure.errors import InputError
from tests.app.web.loops import in_a_loop


def test_a_worker_that_dies_is_told_to_all_who_waited_and_replaced():
    async def story() -> int:
        desk = Desk()
        try:
            ends = await asyncio.gather(*(desk.do(os._exit, 1) for _ in range(3)), return_exceptions=True)
            assert all(isinstance(one, InputError) and "worker ended" in str(one) for one in ends), ends
            return await desk.do(abs, -3)
        finally:
            desk.close()

    assert in_a_loop(asyncio.wait_for(story(), 60)) == 3


def test_bad_input_of_the_work_stays_bad_input():
    async def story() -> None:
        desk = Desk()
        try:
            await desk.do(_refuse)
        finally:
            desk.close()

    with pytest.raises(InputError, match="field = 3"):
        in_a_loop(asyncio.wait_for(story(), 60))


def _refuse() -> None:
    raise InputError(["field = 3: must be below 2"])
