"""Moments of a run go on over restarts, midnights and changes of the hour: ties of two sessions must not be mixed."""

from __future__ import annotations

import pytest

from colure.acquire.run_time import RunTime


class Dated:
    """A computer that knows its date; `rate` instrument seconds pass per real second (0: virtual)."""

    def __init__(self, rate: float = 1.0) -> None:
        self.date_s, self._rate, self.real_time = 1.7e9, rate, rate > 0.0

    def wall(self) -> float:
        return self.date_s

    def of_real(self, seconds: float) -> float:
        return seconds * self._rate


@pytest.mark.parametrize(
    ("last_s", "shown_s", "pause_s", "expected_s"),
    [
        (90000.0, 40.0, 600.0, 90600.0),  # the computer was started anew; its clock counts from there
        (86390.0, 20.0, 30.0, 86420.0),  # midnight between two sessions
        (400.0, 5000.0, 40000.0, 40400.0),  # started anew, and on for longer than before
        (30000.0, 33660.0, 60.0, 30060.0),  # summer time began
        (70000.0, 3600.0 * 21, 92000.0, 162000.0),  # the next day, later
        (500.0, 40.0, -1.6e9, 501.0),  # the date is lost as well
        (1000.0, 1605.0, 600.0, 1605.0),  # both agree: the instrument's own is kept
    ],
)
def test_a_new_session_goes_on_where_the_last_one_ended(last_s, shown_s, pause_s, expected_s):
    computer = Dated()
    time = RunTime(computer)
    time.resumed(last_s, computer.date_s)
    computer.date_s += pause_s
    assert time.of(shown_s) == pytest.approx(expected_s, abs=1e-6)
    assert len(time.news()) == (expected_s != shown_s) and time.news() == []
    computer.date_s += 7.0
    assert time.of(shown_s + 7.0) == pytest.approx(expected_s + 7.0, abs=1e-6), (
        "and from there by the instrument's clock"
    )


def test_a_clock_that_begins_anew_within_a_session_is_put_right():
    computer = Dated()
    time = RunTime(computer)
    assert time.of(72000.0) == 72000.0
    computer.date_s += 14 * 3600.0  # a person came back in the morning: no midnight was seen
    assert time.of(36000.0) == pytest.approx(72000.0 + 14 * 3600.0)
    computer.date_s += 3600.0  # the computer's date is put forward: the instrument's clock knows better
    assert time.of(36002.0) == pytest.approx(72002.0 + 14 * 3600.0)
    assert len(time.news()) == 1


def test_simulated_time_follows_on_whatever_the_date_says():
    computer = Dated(rate=0.0)
    time = RunTime(computer)
    time.resumed(1234.0, computer.date_s)
    computer.date_s += 9e5
    assert time.of(2.0) == 1235.0 and time.of(5.0) == 1238.0
