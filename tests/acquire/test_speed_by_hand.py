"""Moves by hand at a set speed, by the words of the controller's own language; refused where it has none."""

from __future__ import annotations

import json
import re

import pytest
from click.testing import CliRunner

from colure.acquire.jogging import Jogger
from colure.app.cli import main
from colure.errors import GuardError, InstrumentError, MotionError
from colure.instruments.many_axes import Controller, ManyAxes
from colure.model.campaign import Campaign
from tests.instruments.languages import NAMES
from tests.instruments.peers import Motors, Peer, Tcp
from tests.ranges import range_campaign
from tests.world import world_of

WORDS = r"""
kind = "line-axes"
identity = "ID"
speed = "V{axis} {speed}"
move = "M{axis} {value}"
acknowledge = "^k"
completion = "position"
poll_s = 0.01
position = "P{axis}"
position_pattern = '^p(?P<value>\S+)'
hold = "S"
release = "R"
fault = "^no"
axes.azimuth = { name = "0", units_per_deg = -100, decimals = 0 }
axes.roll = { name = "1", units_per_deg = 10, decimals = 2 }
axes.probe = { name = "2" }
"""
SCALES = (-100.0, 10.0, 1.0)


class Paced(Peer):
    """Every axis has a speed of its own, in its own units per second; `ways` keeps how long every move was given."""

    def __init__(self, motors: Motors) -> None:
        super().__init__(motors)
        self.speeds = dict.fromkeys(NAMES, 0.0)
        self.ways: list[tuple[str, float, float]] = []

    def took(self, data):
        for line in self.lines(data, b"\n"):
            self.say(self.answer(line) + "\n")

    def answer(self, line):
        motors = self.motors
        if line in ("ID", "S", "R"):
            motors.held = line == "S" or (motors.held and line != "R")
            return "paced" if line == "ID" else "k"
        number = int(line[1])
        name, scale = NAMES[number], SCALES[number]
        if line[0] == "V":
            self.speeds[name] = float(line[3:]) / abs(scale)
        elif line[0] == "M":
            motors.speed = self.speeds[name]
            self.ways.append((name, motors.at(name), self.speeds[name]))
            motors.go(name, float(line[3:]) / scale)
        else:
            return f"p{motors.at(name) * scale:.4f}"
        return "k"


@pytest.fixture
def paced(tmp_path):
    """A range whose controller speaks the language above, and the controller."""
    peer = Paced(Motors())
    tcp = Tcp(lambda: peer)
    one = f'[[instruments]]\nrole = "receiver"\n[[instruments]]\nrole = "axis-controller"\nprofile = "paced"\nresource = "{tcp.resource}"\n'
    folder = range_campaign(tmp_path / "c", one)
    (folder / "paced.toml").write_text(WORDS, encoding="utf-8")
    yield folder, peer
    tcp.close()


def run(*words: object):
    return CliRunner().invoke(main, [str(word) for word in words])


def test_a_speed_reaches_the_controller_in_its_own_units_and_is_taken_back(paced):
    folder, peer = paced
    shown = run("jog", folder)
    assert "at most 150 deg/s" in shown.output, shown.output
    moved = run("jog", folder, "--axis", "azimuth", "--by", "3", "--speed", "12.5", "--yes", "--json")
    assert json.loads(moved.stdout)["azimuth"] == pytest.approx(3.0, abs=0.01), moved.output
    assert peer.ways == [("azimuth", 0.0, 12.5)]
    assert peer.motors.heard.count("V0 1250") == 1 and peer.speeds == dict.fromkeys(NAMES, 150.0)
    there = run("goto", folder, "--az", "5", "--el", "0", "--speed", "30", "--yes", "--json")
    assert there.exit_code == 0, there.output
    assert peer.ways[1:] == [("azimuth", 3.0, 30.0)]
    for words, told in (
        (("--speed", "151"), r"axis azimuth speed = 151: must be from 0\.01 to 150 deg/s"),
        (("--speed", "0"), "0.01"),
        (("--speed", "nan"), "nan"),
    ):
        refused = run("jog", folder, "--axis", "azimuth", "--by", "3", *words, "--yes")
        assert refused.exit_code == 2 and re.search(told, refused.output), refused.output
    assert "--speed: goes with --axis" in run("jog", folder, "--home", "--speed", "3", "--yes").output
    assert len(peer.ways) == 2


def test_home_is_set_where_the_axes_stand_and_the_file_as_it_was_stays(paced):
    folder, _ = paced
    before = (folder / "chamber.toml").read_text(encoding="utf-8")
    kept = run("jog", folder, "--axis", "probe", "--to", "7.5", "--set-home", "--yes")
    assert kept.exit_code == 0 and "probe: home at 7.5000 deg now (before: 0)" in kept.output, kept.output
    assert Campaign.load(folder).chamber.driven_table["probe"].home_deg == 7.5
    (old,) = folder.glob("chamber.toml.*")
    assert old.read_text(encoding="utf-8") == before
    back = run("goto", folder, "--home", "--yes", "--json")
    assert json.loads(back.stdout)["probe"] == pytest.approx(7.5)


def test_a_controller_without_a_word_for_speed_says_so_and_nothing_moves(paced):
    folder, peer = paced
    (folder / "paced.toml").write_text(WORDS.replace("speed =", "# speed ="), encoding="utf-8")
    refused = run("jog", folder, "--axis", "azimuth", "--by", "3", "--speed", "12.5", "--yes")
    assert refused.exit_code == 3 and "neither speed nor timed has words" in refused.output, refused.output
    assert not peer.ways


def test_a_timed_word_does_where_there_is_no_word_for_speed(paced):
    folder, peer = paced
    words = WORDS.replace("speed =", 'timed = ["V{axis} {speed}", "M{axis} {value}"]\n# speed =')
    (folder / "paced.toml").write_text(words, encoding="utf-8")
    moved = run("jog", folder, "--axis", "roll", "--to", "4", "--speed", "20", "--yes", "--json")
    assert moved.exit_code == 0 and peer.ways == [("roll", 0.0, 20.0)], moved.output


@pytest.mark.parametrize("kind", ["line", "gcode"])
def test_simulated_axes_go_at_the_speed_that_is_set(tiny_campaign, kind):
    world, _ = world_of(tiny_campaign, kind=kind)
    axes = world.axes()
    hand = Jogger(world.campaign.chamber, axes, world.clock)
    took_s = []
    for target, speed in ((20.0, None), (0.0, 4.0), (20.0, 2.0)):
        begin = world.clock.monotonic()
        hand.to({"azimuth": target}, speed_deg_s=speed)
        took_s.append(world.clock.monotonic() - begin)
    # 20 deg at 4 and 2 deg/s: 5 and 10 s, and the same ramps and settling on top.
    assert took_s[0] < 5.0 < took_s[1] < 6.5 and 10.0 < took_s[2] < 11.5, took_s
    assert hand.speeds()["azimuth"] == world.campaign.chamber.driven_table["azimuth"].speed_deg_s
    with pytest.raises(GuardError, match="azimuth speed = nan"):
        hand.to({"azimuth": 0.0}, speed_deg_s=float("nan"))
    axes.close()


def test_a_driver_that_cannot_be_told_is_named(tiny_campaign):
    world, _ = world_of(tiny_campaign)
    axes = world.axes()

    class Plain:
        def __getattr__(self, name):
            if name == "set_speeds":
                raise AttributeError(name)
            return getattr(axes, name)

    names = tuple(world.campaign.chamber.driven_table)
    many = ManyAxes([Controller("floor", Plain(), names)], timer=world.clock)  # type: ignore[arg-type]
    hand = Jogger(world.campaign.chamber, many, world.clock)
    with pytest.raises(InstrumentError, match="floor: the driver lacks `set_speeds`"):
        hand.to({"azimuth": 5.0}, speed_deg_s=2.0)
    assert hand.to({"azimuth": 5.0})["azimuth"] == pytest.approx(5.0, abs=0.02)
    many.close()


def test_an_axis_that_does_not_keep_a_slow_speed_is_watched_at_that_speed(tiny_campaign):
    """Once a slow move is over, by a fault too, the watch expects the declared speed anew."""
    (tiny_campaign / "twin.toml").write_text('noise = false\n[[faults]]\nkind = "wrong-way"\nat = 1\n')
    world, _ = world_of(tiny_campaign)
    axes = world.axes()
    hand = Jogger(world.campaign.chamber, axes, world.clock)
    with pytest.raises(MotionError, match="wrong way"):
        hand.to({"azimuth": 10.0}, speed_deg_s=2.0)
    assert hand.speeds()["azimuth"] == world.campaign.chamber.driven_table["azimuth"].speed_deg_s
    axes.close()
