"""An answer that does not come is given up after a few times what such answers take, whatever the line's longest time-out."""

from __future__ import annotations

import itertools
import time
from concurrent.futures import ThreadPoolExecutor
from contextlib import contextmanager
from functools import partial

import pytest

from colure.acquire.clocks import SystemClock
from colure.instruments.gcode_axes import GcodeAxes
from colure.instruments.line_axes import LineAxes
from colure.instruments.line_profile import LineProfile
from colure.instruments.patience import Patience
from colure.instruments.profile import axes_profile
from colure.instruments.protocols import HeldError, LostError, unwatched
from tests.instruments import languages
from tests.instruments.peers import AXES, Tcp, later
from tests.instruments.test_languages import profile_from
from tests.world import Inline, world_of


def test_a_limit_follows_from_what_a_question_has_taken():
    patience = Patience(60.0)
    assert patience.limit_s("WHERE") == 60.0  # never answered: nobody knows
    patience.took("WHERE", 0.01)
    assert patience.limit_s("WHERE") == 2.0 and patience.limit_s("STATE") == 60.0
    patience.took("WHERE", 0.5)
    assert patience.limit_s("WHERE") == 3.0
    patience.took("WHERE", 20.0)
    assert patience.limit_s("WHERE") == 60.0
    for _ in range(400):
        patience.took("WHERE", 0.01)
    assert patience.limit_s("WHERE") == 2.0  # the slowest of late counts


def test_a_dropped_answer_of_a_line_is_lost_soon_and_the_next_question_is_answered(monkeypatch):
    """The line's time-out is 60 s; a status of this peer takes milliseconds."""
    motors, make = languages.shared(languages.Talker)
    server = Tcp(make)
    axes = LineAxes(server.resource, profile_from(languages.Talker.PROFILE), AXES, timeout_s=60.0, timer=SystemClock())
    try:
        for _ in range(3):
            axes.status()
        answer, dropped = languages.Talker.answer, []

        def once(self, line):
            if line == "REPORT" and not dropped:
                dropped.append(line)
                return []
            return answer(self, line)

        monkeypatch.setattr(languages.Talker, "answer", once)
        with pytest.raises(LostError, match=r"no answer to 'REPORT' within 2 s"):
            axes.status()
        assert axes.status().positions_deg == pytest.approx(dict.fromkeys(AXES, 0.0))
        assert len(dropped) == 1 and not motors.moving()
    finally:
        axes.close()
        server.close()


@pytest.mark.parametrize("words", ["move", "timed"])
def test_a_dropped_answer_to_a_queued_move_is_lost_soon(tiny_campaign, words):
    (tiny_campaign / "twin.toml").write_text('noise = false\n[[faults]]\nkind = "axes-hang"\nat = 1\n')
    world, _ = world_of(tiny_campaign, kind="gcode")
    names = tuple(world.campaign.chamber.axis_table)
    axes = GcodeAxes("axes", axes_profile("gcode-axes"), names, timeout_s=60.0, opener=world.opener(), executor=Inline)
    begin = world.clock.monotonic()
    with pytest.raises(LostError):
        axes.begin(dict.fromkeys(names, 1.0), per_s=None if words == "move" else 0.5)
    assert world.clock.monotonic() - begin < 3.0
    axes.close()


@pytest.mark.parametrize(
    ("profile", "told"), [("stepper-rack", "`identity` was not answered"), ("gcode-axes", "`identity` = 'M115'")]
)
def test_a_controller_of_another_language_is_given_up_soon_and_the_word_is_named(monkeypatch, profile, told):
    """The counter answers neither; the time-out is 60 s."""
    monkeypatch.setattr("colure.instruments.line_axes.MEETING_S", 0.02)
    monkeypatch.setattr("colure.instruments.gcode_axes.MEETING_S", 0.1)
    _, make = languages.shared(languages.Counter)
    server = Tcp(make)
    words = axes_profile(profile)
    with pytest.raises(LostError, match=told):
        if isinstance(words, LineProfile):
            LineAxes(server.resource, words, AXES, timeout_s=60.0, timer=SystemClock())
        else:
            GcodeAxes(server.resource, words, tuple(AXES), timeout_s=60.0)
    server.close()


class Arriver(languages.Talker):
    """Says DONE when the axes stand, although the profile says that it is asked for that."""

    def took(self, data):
        for line in self.lines(data, b"\r\n", b"\x1b"):
            if not line.startswith("TURN"):
                super().took((line + ("" if line == "\x1b" else "\r\n")).encode())
                continue
            self.say(line + "\r\n")
            later(partial(self.say_at_end, "".join(f"{text}\r\n" for text in self.answer(line))))

    def say_at_end(self, text):
        self.motors.wait()
        if not self.motors.held:
            self.say(text)


@contextmanager
def arriver(speed_deg_s: float):
    motors, make = languages.shared(Arriver, speed_deg_s)
    server = Tcp(make)
    table = {name: axis.model_copy(update={"speed_deg_s": speed_deg_s}) for name, axis in AXES.items()}
    axes = LineAxes(server.resource, profile_from(Arriver.PROFILE), table, timeout_s=1.0, timer=SystemClock())
    try:
        yield motors, axes
    finally:
        axes.close()
        server.close()


def test_the_answer_at_the_end_of_a_move_is_waited_for_as_long_as_the_move_takes(monkeypatch):
    """After a short move a long one: 6 times the short one's answer, and the line's time-out, would give it up on its way."""
    monkeypatch.setattr("colure.instruments.patience.LEAST_S", 0.05)
    signs: list[float] = []
    with arriver(100.0) as (motors, axes):
        axes.heard = lambda: signs.append(time.monotonic())
        for target in (22.0, -150.0):
            wanted = dict.fromkeys(AXES, 0.0) | {"azimuth": target}
            axes.begin(wanted)
            axes.finish(0.0, unwatched, limit_s=5.0)
            assert motors.at("azimuth") == target and not motors.moving()
    # The watchdog waits for half a second.
    assert max(two - one for one, two in itertools.pairwise(signs)) < 0.45


def test_a_hold_ends_the_wait_for_the_end_of_a_move():
    with arriver(20.0) as (motors, axes), ThreadPoolExecutor(1) as beside:
        told = beside.submit(axes.begin, dict.fromkeys(AXES, 0.0) | {"azimuth": 150.0})
        time.sleep(0.2)
        assert motors.moving()
        axes.hold()
        with pytest.raises(HeldError):
            told.result(timeout=3.0)
        assert not motors.moving() and motors.at("azimuth") < 20.0


def test_a_controller_that_answers_at_once_is_not_waited_for_as_long_as_its_moves_take():
    patience = Patience(60.0)
    patience.took("TURN", 0.03, way_s=1.0)
    assert not patience.at_end("TURN") and patience.limit_s("TURN", way_s=20.0) == pytest.approx(
        2.0 + 2.0 * 0.03 * 20.0
    )
    patience.took("GO", 0.9, way_s=1.0)
    assert patience.at_end("GO") and patience.limit_s("GO", way_s=20.0) == pytest.approx(38.0)
    assert patience.limit_s("NEW", way_s=40.0) == 80.0
