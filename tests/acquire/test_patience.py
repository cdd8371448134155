"""Waiting beside a blocking call: whatever the moment at which it ends, its own answer counts."""

from __future__ import annotations

from concurrent.futures import Future
from types import SimpleNamespace

import pytest

from colure.acquire.station import Station


class EndsBetween(Future):
    """Not done when it is asked for its result the first time, done when it is looked at after that."""

    def __init__(self, answer):
        super().__init__()
        self.answer = answer

    def result(self, timeout=None):
        if not self.done():
            if isinstance(self.answer, Exception):
                self.set_exception(self.answer)
            else:
                self.set_result(self.answer)
            raise TimeoutError
        return super().result(timeout)


def waiting(answer):
    worker = SimpleNamespace(submit=lambda action: EndsBetween(answer))
    return Station.patiently(SimpleNamespace(_worker=worker, alive=lambda: None), lambda: None)


def test_a_call_that_ends_just_after_a_look_hands_its_answer_over():
    assert waiting("a sweep") == "a sweep"


def test_a_time_out_of_the_call_itself_is_raised():
    with pytest.raises(TimeoutError, match="the program of the device's states"):
        waiting(TimeoutError("the program of the device's states"))
