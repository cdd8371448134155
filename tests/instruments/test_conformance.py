"""The conformance kit against peers that fit and peers that do not, and drivers that other packages bring."""

from __future__ import annotations

import json
import os
from importlib.metadata import EntryPoint

import pytest
from click.testing import CliRunner

from colure.acquire.clocks import SystemClock
from colure.app.cli import main
from colure.instruments import plugins
from colure.instruments.conformance import analyzer_conformance, axes_conformance
from colure.instruments.connect import connect_analyzer, connect_axes
from colure.instruments.protocols import InstrumentError
from colure.model.chamber import Analyzer, AxisController
from tests.instruments import languages
from tests.instruments.peers import AXES, Motors, Tcp, Terminal
from tests.instruments.strict import SocketServer, Strict
from tests.instruments.test_languages import profile_from
from tests.instruments.test_strict_analyzer import SETTINGS, profile

pytestmark = pytest.mark.skipif(os.name == "nt", reason="pseudo-terminals")


def axes_kit(kind, text: str, move_deg: float, speed_deg_s: float = 60.0):
    motors = Motors(speed_deg_s)
    server = Tcp(lambda: kind(motors))
    try:
        return axes_conformance(
            profile_from(text), server.resource, timeout_s=1.0, timer=SystemClock(), move_deg=move_deg
        ), motors
    finally:
        server.close()


def test_a_controller_that_fits_passes_and_what_it_lacks_is_named():
    answers, motors = axes_kit(languages.Talker, languages.Talker.PROFILE, 10.0)
    assert not [answer for answer in answers if answer.good is False]
    assert {"move of azimuth", "move of roll", "hold and release at rest"} <= {a.what for a in answers if a.good}
    assert "`pulses`" in {a.what for a in answers if a.good is None}
    assert all(abs(motors.at(name)) < 0.01 for name in AXES), "everything is back where it was"


SHIPPED = {"gcode-waiting": languages.WaitingGcode, "gcode-queued": languages.QueuedGcode}


def shipped_kit(name: str, kind, move_deg: float, speed_deg_s: float):
    from colure.instruments.profile import axes_profile

    motors = Motors(speed_deg_s)
    server = Terminal(lambda: kind(motors))
    try:
        return axes_conformance(
            axes_profile(name), server.resource, timeout_s=1.0, timer=SystemClock(), move_deg=move_deg, axes=tuple(AXES)
        ), motors
    finally:
        server.close()


@pytest.mark.parametrize("speed_deg_s", [10.0, 60.0])
@pytest.mark.parametrize("name", SHIPPED)
def test_shipped_profiles_pass_every_time(name, speed_deg_s):
    """A controller that answers at the end of a move cannot be asked on its way: its answer would be taken for another."""
    for _ in range(3):
        answers, motors = shipped_kit(name, SHIPPED[name], 0.2 * speed_deg_s, speed_deg_s)
        assert not [one for one in answers if one.good is False], answers
        moves = [one for one in answers if one.what.startswith("move of")]
        assert [one.good for one in moves] == [True] * 3 and all("held after +" in one.observed for one in moves), moves
        assert all(abs(motors.at(axis)) < 0.01 for axis in AXES)


class Deaf(languages.WaitingGcode):
    """Acknowledges the stop word and goes on."""

    def answer(self, line):
        self.say("ok\n") if line.startswith("M410") else super().answer(line)


def test_a_hold_that_is_acknowledged_but_not_obeyed_is_found():
    answers, _ = shipped_kit("gcode-waiting", Deaf, 30.0, 40.0)
    assert any(one.good is False and "reached its target in spite of a hold" in one.observed for one in answers), (
        answers
    )


def test_a_move_too_quick_for_a_hold_leaves_the_question_open_and_comes_back():
    answers, motors = shipped_kit("gcode-waiting", languages.WaitingGcode, 2.0, 20000.0)
    moves = [one for one in answers if one.what.startswith("move of")]
    assert [one.good for one in moves] == [None] * 3 and all("cannot tell" in one.observed for one in moves), moves
    assert all(abs(motors.at(axis)) < 0.01 for axis in AXES)


def test_nothing_moves_unless_asked():
    _, motors = axes_kit(languages.Talker, languages.Talker.PROFILE, 0.0)
    assert motors.log == []


def test_a_release_that_lets_a_held_move_go_on_is_found():
    """Resuming by `~` alone carries on to the old target: the profile must forget the move first."""
    from colure.instruments.profile import axes_profile

    words = axes_profile("gcode-queued")
    careless = words.model_copy(update={"release": (words.hold[0].model_copy(update={"send": "~", "answers": 0}),)})
    motors = Motors(60.0)
    server = Terminal(lambda: languages.QueuedGcode(motors))
    table = {name: words.axes[name] for name in ("azimuth", "roll", "probe")}
    careless = careless.model_copy(update={"axes": table})
    answers = axes_conformance(careless, server.resource, timeout_s=1.0, timer=SystemClock(), move_deg=20.0)
    server.close()
    assert any(a.good is False and "goes on after `release`" in a.observed for a in answers), answers


def test_a_controller_with_fewer_axes_than_the_shipped_profile_is_asked_for_its_own():
    """The profile lists four axes, the controller turns three: told how to name them, and fit when they are named."""
    motors = Motors(60.0)
    server = Terminal(lambda: languages.QueuedGcode(motors))
    command = ["conformance", "gcode-queued", "--resource", server.resource, "--json"]
    runs = [
        CliRunner().invoke(main, [*command, *more])
        for more in ((), ("--axes", "azimuth,roll,probe"), ("--axes", "tilt"))
    ]
    server.close()
    assert [run.exit_code for run in runs] == [1, 0, 2], [run.output for run in runs]
    assert any(one["what"] == "`--axes`" for one in json.loads(runs[0].stdout))
    assert "must be axes of the profile" in runs[2].output


def test_a_wrong_pattern_is_found_before_anything_moves():
    text = languages.Talker.PROFILE.replace(r"(?P<axis>\w+) at (?P<value>\S+)", r"(?P<axis>\w+) is (?P<value>\S+)")
    answers, motors = axes_kit(languages.Talker, text, 10.0)
    assert next(a for a in answers if a.good is False).what == "positions" and motors.log == []


def test_an_analyzer_that_fits_and_one_that_swallows_errors():
    server = SocketServer(Strict().answer)
    good = analyzer_conformance(profile(), server.resource, SETTINGS, timeout_s=1.0)
    assert not [answer for answer in good if answer.good is False], good
    server.close()

    class Silent(Strict):
        def answer(self, message: str) -> bytes:
            self.errors.clear()
            return super().answer(message)

    server = SocketServer(Silent().answer)
    bad = analyzer_conformance(profile(), server.resource, SETTINGS, timeout_s=1.0)
    server.close()
    assert any(a.good is False and "an unknown word left no error" in a.observed for a in bad)


def test_the_command_prints_and_exits(tmp_path):
    (tmp_path / "mine.toml").write_text(languages.Chatterer.PROFILE, encoding="utf-8")
    motors = Motors()
    server = Tcp(lambda: languages.Chatterer(motors))
    done = CliRunner().invoke(
        main, ["conformance", "mine", "--folder", str(tmp_path), "--resource", server.resource, "--json"]
    )
    server.close()
    assert done.exit_code == 0, done.output
    assert any(answer["what"] == "time of an exchange" for answer in json.loads(done.stdout))


class Half:
    """A driver that lacks most of what a run needs."""

    receiver = "vector"

    def __init__(self, resource: str, *, timeout_s: float, folder: object) -> None:
        self.resource = resource


def broken(*_: object, **__: object) -> None:
    raise ZeroDivisionError("division by zero")


def test_drivers_of_other_packages_are_found_by_name_and_looked_at(monkeypatch):
    points = [EntryPoint("half", "tests.instruments.test_conformance:Half", "colure.receivers"),
              EntryPoint("broken", "tests.instruments.test_conformance:broken", "colure.axes")]  # fmt: skip
    monkeypatch.setattr(plugins, "entry_points", lambda group: [p for p in points if p.group == group])
    with pytest.raises(InstrumentError, match="driver:half: lacks identity, configure"):
        connect_analyzer(Analyzer(profile="driver:half"), "host:1", None)
    with pytest.raises(InstrumentError, match=r"no package brings it; drivers in colure\.receivers: half"):
        connect_analyzer(Analyzer(profile="driver:other"), "host:1", None)
    with pytest.raises(InstrumentError, match="driver:broken: cannot be made: ZeroDivisionError: division by zero"):
        connect_axes(AxisController(profile="driver:broken"), "host:1", AXES, None, timer=SystemClock())
