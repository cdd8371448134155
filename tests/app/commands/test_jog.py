"""Axes and receiver by hand, over the whole command line: within limits, watched, braked; nothing moves unasked."""

from __future__ import annotations

import json

import numpy as np
import pytest
from click.testing import CliRunner

from colure.acquire.clocks import SystemClock
from colure.acquire.jogging import Jogger
from colure.acquire.locks import canonical
from colure.app import services
from colure.app.cli import main
from colure.app.services.bench_check import keep_check, require_passed_check
from colure.app.storage.folders import run_folder
from colure.errors import GuardError, InputError, InstrumentError
from colure.instruments.protocols import HeldError
from tests.world import world_of


def run(*words: str):
    return CliRunner().invoke(main, [str(word) for word in words])


def test_where_jog_goto_and_a_sweep(tiny_campaign):
    shown = run("jog", tiny_campaign)
    assert shown.exit_code == 0 and "azimuth" in shown.output and "limits -185 to 185 deg" in shown.output
    refused = run("jog", tiny_campaign, "--axis", "azimuth", "--by", "5")
    assert refused.exit_code == 2 and "must be acknowledged with --yes" in refused.output
    jogged = run("jog", tiny_campaign, "--axis", "azimuth", "--by", "5", "--yes", "--json")
    assert json.loads(jogged.stdout)["azimuth"] == pytest.approx(5.0, abs=0.01), jogged.output
    beyond = run("jog", tiny_campaign, "--axis", "azimuth", "--to", "400", "--yes")
    assert beyond.exit_code == 2 and "must be from -185 to 185 deg" in beyond.output
    # Roll over azimuth: d = (sin th cos ph, sin th sin ph, cos th); az 20, el 0 is theta 20, phi 0.
    there = run("goto", tiny_campaign, "--az", "20", "--el", "0", "--yes", "--json")
    assert json.loads(there.stdout)["azimuth"] == pytest.approx(20.0, abs=0.01), there.output
    swept = run("trace", tiny_campaign, "--count", "2", "--json")
    levels = [json.loads(line)["ports"][0]["middle_db"] for line in swept.stdout.splitlines()]
    assert len(levels) == 2 and np.all(np.abs(levels) < 120.0), swept.output


def test_wrong_options_are_told():
    assert "give --axis with --by or --to" in run("jog", ".", "--axis", "azimuth").output


@pytest.fixture
def hand(tiny_campaign):
    world, _ = world_of(tiny_campaign)
    axes = world.axes()
    yield Jogger(world.campaign.chamber, axes, world.clock), world
    axes.close()


def test_every_axis_is_proven_by_a_degree_and_stands_where_it_stood(hand):
    jogger, world = hand
    for name in jogger.limits():
        assert abs(jogger.prove(name)) == pytest.approx(1.0, abs=0.02)
    assert all(abs(value) < 0.01 for value in world.stage.positions().values())


def test_an_unknown_axis_and_a_keep_out_are_refused_before_anything_moves(hand):
    jogger, world = hand
    with pytest.raises(GuardError, match="axis 'tilt': must be one of"):
        jogger.to({"tilt": 1.0})
    with pytest.raises(GuardError, match="must be from"):
        jogger.to({"azimuth": 1000.0})
    assert all(value == 0.0 for value in world.stage.positions().values())


def test_whoever_asks_for_a_stop_on_the_way_gets_a_brake(tiny_campaign):
    world, _ = world_of(tiny_campaign)
    looks = iter(range(1000))

    def look() -> None:
        if next(looks) > 3:
            raise HeldError("operator")

    axes = world.axes()
    with pytest.raises(HeldError):
        Jogger(world.campaign.chamber, axes, world.clock, look=look).to({"azimuth": 90.0})
    assert world.stage.held.is_set() and 0.0 < world.stage.positions()["azimuth"] < 80.0
    axes.close()


def test_a_wrong_way_is_braked_and_told(tiny_campaign):
    (tiny_campaign / "twin.toml").write_text(
        'noise = false\n[[faults]]\nkind = "wrong-way"\nat = 1\n', encoding="utf-8"
    )
    world, _ = world_of(tiny_campaign)
    axes = world.axes()
    with pytest.raises(InstrumentError, match="runs the wrong way"):
        Jogger(world.campaign.chamber, axes, world.clock).prove("azimuth")
    assert world.stage.held.is_set() and SystemClock().real_time
    axes.close()


@pytest.mark.parametrize(
    ("one", "other"),
    [("127.0.0.1:5000", "TCPIP::localhost::5000::SOCKET"), ("COM3", "ASRL3::INSTR"),
     ("socket://localhost:5000", "tcpip0::127.0.0.1::5000::socket"), ("/dev/ttyS9", "ASRL/dev/ttyS9::INSTR"),
     ("rfc2217://localhost:4000", "rfc2217://127.0.0.1:4000")],
)  # fmt: skip
def test_one_line_has_one_lock_whichever_way_it_is_spelt(one, other):
    assert canonical(one) == canonical(other)


def test_an_axis_is_held_on_its_way_released_and_brought_back(hand):
    jogger, world = hand
    for name in jogger.limits():
        assert "rested when released" in jogger.prove_hold(name)
    assert all(abs(value) < 0.01 for value in world.stage.positions().values()) and not world.stage.held.is_set()


class Person:
    """Somebody who sees every axis but the roll turn the way its readout says."""

    def clear(self, what: str) -> None:
        assert "until it is braked" in what

    def right(self, axis: str, made_deg: float) -> bool:
        return axis != "roll"


def test_a_check_that_failed_refuses_the_next_run_until_one_passes_or_somebody_says_so(tiny_campaign):
    campaign, made = services.make_plan(tiny_campaign)
    lines = services.check_instruments(campaign, made, confirm=Person())
    wrong = [one for one in lines if not one.good]
    assert [one.what for one in wrong] == ["direction of roll"] and "change the sign" in wrong[0].answer, lines
    assert any(one.what == "hold and release of azimuth" and one.good for one in lines)
    # A check without motion passes, but says nothing about the roll.
    assert all(one.good for one in services.check_instruments(campaign, made))
    refused = run("acquire", tiny_campaign, "--run", "first", "--yes")
    assert refused.exit_code == 2 and "direction of roll" in refused.output and "--check --senses" in refused.output
    with pytest.raises(InputError, match="direction of roll"):
        services.acquire(campaign, made, run_folder(tiny_campaign, "first"))
    assert not (tiny_campaign / "runs" / "first").exists()
    assert services.acquire(campaign, made, run_folder(tiny_campaign, "told"), despite_check=True).state.value == "done"
    checked = run("acquire", tiny_campaign, "--check", "--senses", "--yes")
    assert "in the words of profile gcode-axes (at most 20 s)" in checked.output
    assert checked.exit_code == 0 and "nobody looked which way" in checked.output.replace("\n", " "), checked.output
    require_passed_check(tiny_campaign)


def test_senses_without_check_are_told_and_a_spoilt_check_is_named(tiny_campaign):
    assert "--senses: goes with --check" in run("acquire", tiny_campaign, "--senses").output
    (tiny_campaign / "check.json").write_text("[", encoding="utf-8")
    with pytest.raises(InputError, match=r"check\.json: cannot be read"):
        require_passed_check(tiny_campaign)


def test_a_hold_that_is_not_heard_is_a_fault(tiny_campaign):
    world, _ = world_of(tiny_campaign)
    axes = world.axes()
    deaf = Jogger(world.campaign.chamber, axes, world.clock)
    with pytest.MonkeyPatch.context() as patch, pytest.raises(InstrumentError, match="in spite of a hold"):
        patch.setattr(axes, "hold", lambda: None)
        deaf.prove_hold("azimuth")
    axes.close()


def test_a_check_that_failed_for_one_plan_is_not_forgotten_when_another_plan_passes(tmp_path):
    keep_check(tmp_path, "a" * 64, ["level: 20 dB too low"], None)
    with pytest.raises(InputError, match="level: 20 dB too low"):
        require_passed_check(tmp_path, "b" * 64)  # nothing is known of another plan but that the bench was wrong
    keep_check(tmp_path, "b" * 64, [], [])
    require_passed_check(tmp_path, "b" * 64)
    with pytest.raises(InputError, match="earlier check of this plan did not pass: level: 20 dB too low"):
        require_passed_check(tmp_path, "a" * 64)
    keep_check(tmp_path, "a" * 64, [], None)
    require_passed_check(tmp_path, "a" * 64)
