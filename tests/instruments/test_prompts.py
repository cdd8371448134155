"""A controller that greets, echoes, and says its prompt without a line end before whatever it says next; it answers in two lines,
tells positions in thousandths of a degree and its state by bits in hexadecimal digits."""

from __future__ import annotations

import tomllib
from contextlib import contextmanager

import pytest

from colure.acquire.clocks import SystemClock
from colure.errors import InputError
from colure.instruments.line_axes import LineAxes
from colure.instruments.line_profile import LineProfile
from colure.instruments.profile import profile_path
from colure.instruments.protocols import HeldError, InstrumentError, unwatched
from colure.model.loading import validate
from tests.acquire.test_faults import with_faults
from tests.instruments.peers import AXES, Motors, Peer, Tcp
from tests.instruments.range_beside import require_measured_beside

NAMES = {"1": "azimuth", "2": "roll", "3": "probe"}
PROFILE = r"""
kind = "line-axes"
identity = { send = "ID", answers = 2 }
move = { send = "G {axis} {value}", answers = 2, expect = "^ACCEPTED" }
acknowledge = ""
busy = { send = "F {axis}", answers = 2 }
busy_pattern = '0x[0-9A-F]{3}[13579BDF]$'
position = { send = "P {axis}", answers = 2 }
position_pattern = '= (?P<value>-?\d+) mdeg'
status = { send = "F 1", answers = 2 }
held = '0x[0-9A-F]{3}[2367ABEF]$'
fault = "^REFUSED"
home = { send = "ORG {axis}", answers = 2, expect = "^ACCEPTED" }
hold = "BRK"
hold_answer = "^BRAKED"
release = { send = "REL", answers = 2, expect = "^RELEASED" }
[line]
read_end = "\r\n"
write_end = "\r"
echo = true
prompt = ">"
greeting = 'DRIVE UNIT|type \?'
[axes]
azimuth = { name = "1", units_per_deg = 1000, decimals = 0 }
roll = { name = "2", units_per_deg = 1000, decimals = 0 }
probe = { name = "3", units_per_deg = 1000, decimals = 0 }
"""


class Prompter(Peer):
    def greeted(self):
        self.say("\r\n*** DRIVE UNIT 7 ***\r\ntype ? for help\r\n> ")

    def took(self, data):
        for line in self.lines(data, b"\r"):
            self.say(f"{line}\r\n{self.answer(line.split())}\r\n> ")

    def answer(self, words):
        motors = self.motors
        match words:
            case ["ID"]:
                return "UNIT 7\r\nSERIAL 0042"
            case ["P", axis]:
                return f"AXIS {axis}\r\n= {1000.0 * motors.at(NAMES[axis]):.0f} mdeg"
            case ["F", axis]:
                return f"FLAGS\r\n0x{0x40 | motors.moving(NAMES[axis]) | 2 * motors.held:04X}"
            case ["G", axis, value] if not motors.held:
                motors.go(NAMES[axis], float(value) / 1000.0)
                return "ACCEPTED\r\nG"
            case ["ORG", axis] if not motors.held:
                motors.go(NAMES[axis], 0.0)
                return "ACCEPTED\r\nORG"
            case ["BRK"]:
                motors.hold()
                return "BRAKED\r\nBRK"
            case ["REL"]:
                motors.held = False
                return "RELEASED\r\nREL"
        return "REFUSED\r\n" + " ".join(words)


@contextmanager
def controller(speed_deg_s: float):
    motors = Motors(speed_deg_s)
    server = Tcp(lambda: Prompter(motors))
    try:
        yield motors, server
    finally:
        server.close()


def connect(server, text: str = PROFILE) -> LineAxes:
    words = validate(LineProfile, tomllib.loads(text), source="mine.toml")
    return LineAxes(server.resource, words, AXES, timeout_s=1.0, timer=SystemClock())


def test_a_prompt_without_a_line_end_is_no_part_of_an_answer():
    wanted = {"azimuth": 12.345, "roll": -20.0, "probe": 7.5}
    with controller(100.0) as (motors, server):
        axes = connect(server)
        try:
            axes.begin(wanted, from_deg=dict.fromkeys(AXES, 0.0))
            assert axes.finish(0.0, unwatched, limit_s=5.0).positions_deg == pytest.approx(wanted, abs=1e-9)
            axes.begin({**wanted, "roll": 100.0}, from_deg=wanted)
            axes.hold()
            with pytest.raises(HeldError):
                axes.finish(0.0, unwatched, limit_s=5.0)
            assert axes.status().held and motors.at("roll") < 99.0
            axes.release()
            assert not axes.status().held
        finally:
            axes.close()


def test_without_the_word_nothing_is_taken_for_a_position():
    with controller(100.0) as (_, server):
        axes = connect(server, PROFILE.replace('prompt = ">"\n', ""))
        try:
            with pytest.raises(InstrumentError, match="is no position"):
                axes.status()
        finally:
            axes.close()


def test_the_name_of_a_profile_is_told_without_its_ending(tmp_path):
    with pytest.raises(InputError, match="leave `.toml` out: 'odd'"):
        profile_path("odd.toml", tmp_path)


@pytest.mark.nightly
def test_a_campaign_is_measured_with_a_controller_that_prompts(tiny_campaign):
    with controller(100.0) as (motors, server):
        with_faults(tiny_campaign)
        (tiny_campaign / "drive-unit.toml").write_text(PROFILE, encoding="utf-8")
        places = lambda: {name: motors.at(name) for name in AXES}  # noqa: E731
        require_measured_beside(tiny_campaign, server.resource, "drive-unit", places, speed_deg_s=100.0,
                                acceleration_deg_s2=5000.0, settle_s=0.0)  # fmt: skip
