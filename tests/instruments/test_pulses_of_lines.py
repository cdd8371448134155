"""Sweeps started by the position-compare output of a controller that a line profile adapts, and that nobody of the drivers' side
wrote: in counts, with positions stored in another unit; and a whole campaign flown with it from the command line."""

from __future__ import annotations

import tomllib
from contextlib import contextmanager

import pytest

from colure.acquire.clocks import SystemClock
from colure.acquire.journal import Journal
from colure.app.storage.folders import run_folder
from colure.errors import InputError, InstrumentError
from colure.instruments.line_axes import LineAxes
from colure.instruments.line_profile import LineProfile
from colure.instruments.protocols import latch_of, unwatched
from colure.model.loading import validate
from tests.acquire.test_faults import with_faults
from tests.acquire.test_pulses import to_every_frequency
from tests.instruments import pulsing
from tests.instruments.peers import AXES, Tcp
from tests.instruments.range_beside import require_measured_beside


@contextmanager
def controller(speed_deg_s: float = 400.0):
    motors = pulsing.PulsedMotors(speed_deg_s)
    server = Tcp(lambda: pulsing.Marker(motors))
    try:
        yield motors, server
    finally:
        server.close()


def test_pulses_are_set_in_counts_and_read_back_in_the_encoders_unit():
    words = validate(LineProfile, tomllib.loads(pulsing.PROFILE), source="mine.toml")
    with controller() as (motors, server):
        axes = LineAxes(server.resource, words, AXES, timeout_s=1.0, timer=SystemClock())
        try:
            latch = latch_of(axes, "roll")
            assert latch is not None
            axes.pulses("roll", start_deg=40.0, step_deg=-20.0, count=5)
            assert motors.heard[-2:] == ["MARK Y FROM -4000 EVERY 2000", "MARK TIMES 5"]
            with pytest.raises(
                InstrumentError, match="set as 1: the last of 400 would come 1.2000 deg off, limit 0.0032 deg"
            ):
                axes.pulses("roll", start_deg=2.6, step_deg=-0.013, count=400)
            assert motors.heard[-1] == "MARK TIMES 5", "nothing was set"
            axes.begin({"azimuth": 0.0, "roll": 50.0, "probe": 0.0})
            axes.finish(0.0, unwatched, limit_s=5.0)
            assert latch.latched("roll", 5) == pytest.approx([40.0, 20.0, 0.0], abs=1e-3), "pulses of the way there"
            axes.begin({"azimuth": 0.0, "roll": -50.0, "probe": 0.0}, per_s=10.0)
            axes.finish(0.0, unwatched, limit_s=5.0)
            assert latch.latched("roll", 5) == pytest.approx([40.0, 20.0, 0.0, -20.0, -40.0], abs=1e-3)
        finally:
            axes.close()


@pytest.mark.parametrize(
    ("old", "new"),
    [("latched_pattern", "# "), ("latched =", "# "), ("^M (?P<value>", "^M (?P<place>")],
)
def test_positions_that_are_asked_for_and_not_read_are_refused(old, new):
    text = pulsing.PROFILE.replace(old, new + old) if new == "# " else pulsing.PROFILE.replace(old, new)
    assert text != pulsing.PROFILE
    with pytest.raises(InputError, match="`latched` and `latched_pattern` belong together"):
        validate(LineProfile, tomllib.loads(text), source="mine.toml")


def fly(folder, motors, server, more: str) -> None:
    """Fly a small campaign with the controller, from the command line, and require every trace to be right."""
    goal = folder / "goal.toml"
    goal.write_text('style = "fly"\n' + more + goal.read_text(encoding="utf-8"), encoding="utf-8")
    (folder / "marking-machine.toml").write_text(pulsing.PROFILE, encoding="utf-8")
    with_faults(folder)
    places = lambda: {name: motors.at(name) for name in ("azimuth", "roll", "probe")}  # noqa: E731
    # Motors without ramps: as stiff as may be declared. Home is where they stand.
    require_measured_beside(folder, server.resource, "marking-machine", places, stage=pulsing.watched(motors), twin="gcode",
                            speed_deg_s=100.0, acceleration_deg_s2=5000.0, settle_s=0.0)  # fmt: skip


@pytest.mark.nightly
@pytest.mark.parametrize("more", ["", "buffered = true\n"], ids=["read one by one", "kept"])
def test_a_campaign_is_flown_by_the_pulses_of_a_line_controller(tiny_campaign, more):
    # As fast as is declared: quicker ones, looked at late by a busy computer, are seen to jump.
    with controller(100.0) as (motors, server):
        # One pulse is not given on the first flight, one position is stored wrong on the fourth: both are flown again.
        motors.lost, motors.off = {1: {4}}, {4: {7}}
        fly(tiny_campaign, motors, server, more)
        # A sweep whose answer comes late on a loaded computer leaves a point to be flown again too.
        assert motors.settings == 13 + 2 if more else motors.settings >= 13 + 2
    journal = Journal(run_folder(tiny_campaign, "first").journal)
    told = [text for _, kind, text in journal.events() if kind == "warning"]
    journal.close()
    assert sum("must be 12" in text or "kept 11 sweeps of 12 pulses" in text for text in told) == 1
    assert sum("pulse 8 of 12 was latched at" in text for text in told) == 1


#: Two bands of their own bandwidth and power, instead of the goal's even frequencies.
BANDS = """
[[band]]
start_ghz = 24.0
stop_ghz = 24.05
points = 2

[[band]]
start_ghz = 24.1
stop_ghz = 24.2
points = 2
if_bandwidth_hz = 300
power_dbm = -3
"""


@pytest.mark.nightly
@pytest.mark.parametrize("bands", [False, True], ids=["even", "bands"])
def test_every_frequency_is_started_by_a_pulse_of_a_line_controller(tiny_campaign, bands):
    """One frequency's pulse is lost on the first flight, one position is stored wrong on the fourth: both are flown again."""
    to_every_frequency(tiny_campaign)
    goal = tiny_campaign / "goal.toml"
    text = goal.read_text(encoding="utf-8")
    if bands:
        for line in ("start_ghz = 24.0", "stop_ghz = 24.1", "points = 3"):
            assert f"\n{line}\n" in text
            text = text.replace(f"{line}\n", "")
        goal.write_text(text + BANDS, encoding="utf-8")
    pulses = 12 * (4 if bands else 3)
    with controller(100.0) as (motors, server):
        motors.lost, motors.off = {1: {4}}, {4: {7}}
        fly(tiny_campaign, motors, server, 'buffered = true\npulse_each = "frequency"\n')
        assert motors.settings == 13 + 2
    journal = Journal(run_folder(tiny_campaign, "first").journal)
    told = [text for _, kind, text in journal.events() if kind == "warning"]
    journal.close()
    assert sum(f"kept 11 sweeps of {pulses} pulses" in text for text in told) == 1, told
    assert sum(f"pulse 8 of {pulses} was latched at" in text for text in told) == 1, told
