"""The check before a run holds one sweep against what the plan promises; nothing moves."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from colure.acquire.check import check_bench
from colure.instruments.profile import analyzer_profile
from colure.instruments.protocols import LostError
from colure.instruments.scpi_analyzer import ScpiAnalyzer
from colure.model.faults import FaultKind
from tests.acquire.test_faults import with_faults
from tests.coverage.scenarios import HORN_38_GHZ, ONE, SCENARIOS, Scenario, band, sized
from tests.world import world_of

WRONG = Scenario(device=sized(20, 20, 30, 18.0), goal=band(38.0), chamber={"reference": HORN_38_GHZ},
                 twin={"device": {"kind": "dipole", "axis": "x"}})  # fmt: skip


#: An 8 x 8 panel of some 21 dBi declared as a device of 8 x 8 mm and 7 dBi, and a 38 GHz horn declared as a patch.
LARGER = Scenario(device=sized(8, 8, 2, 7.0), goal=ONE,
                  twin={"device": {"kind": "panel", "rows": 8, "columns": 8, "pitch_mm": 6.213}})  # fmt: skip
HORN = Scenario(device=sized(4, 4, 1, 7.0), goal=band(38.0), chamber={"reference": HORN_38_GHZ},
                twin={"device": {"kind": "horn", "aperture_a_mm": 20.0, "aperture_b_mm": 16.0, "slant_e_mm": 35.0, "slant_h_mm": 40.0}})  # fmt: skip


@pytest.mark.parametrize(
    ("scenario", "good"),
    [
        (SCENARIOS["4 x 4 panel"], True),
        (SCENARIOS["turnstile"], True),
        (SCENARIOS["steered 45 deg"], False),
        (WRONG, False),
        (LARGER, False),
        (HORN, False),
    ],
)
def test_a_level_far_from_the_plan_is_a_fault(tmp_path, scenario, good):
    """As declared: a 16.5 dBi panel, a circular turnstile. Not: a dipole declared as an 18 dBi horn at 38 GHz (12.5 dB too weak), a panel
    that is steered away without a word (beam_deg), devices that are declared far too small."""
    world, plan = world_of(scenario.write(tmp_path / "c"))
    analyzer = ScpiAnalyzer("analyzer", analyzer_profile("scpi-analyzer"), timeout_s=1.0, opener=world.opener())
    lines = check_bench(plan, world.campaign.chamber, analyzer, world.axes(), states=None, clock=world.clock)
    found = {what: (fine, words) for what, fine, words in lines}
    assert found["level"][0] is good and "the plan promises" in found["level"][1]
    assert all(fine for what, (fine, _) in found.items() if what != "level")


@pytest.mark.parametrize(("power_dbm", "good"), [(0.0, True), (-47.0, False)])
def test_noise_near_the_peak_is_a_fault_before_anything_moves(tmp_path, power_dbm, good):
    """A 16.5 dBi panel with 47 dB less power than usual: some 15 dB of signal to noise are left, all figures would be marked."""
    scenario = Scenario(
        device=SCENARIOS["4 x 4 panel"].device, goal=ONE, chamber={"analyzer": {"power_dbm": power_dbm}}
    )
    world, plan = world_of(scenario.write(tmp_path / "c"))
    analyzer = ScpiAnalyzer("analyzer", analyzer_profile("scpi-analyzer"), timeout_s=1.0, opener=world.opener())
    lines = check_bench(plan, world.campaign.chamber, analyzer, world.axes(), states=None, clock=world.clock)
    found = {what: (fine, words) for what, fine, words in lines}
    print(found["signal to noise"])
    assert found["signal to noise"][0] is good
    assert good or "if_bandwidth_hz" in found["signal to noise"][1]


class TurnedRound(ScpiAnalyzer):
    """Reads what a wrong profile makes of traces: `turn` says how."""

    turn = staticmethod(np.conj)

    def sweep(self):
        sweep = super().sweep()
        return replace(sweep, trace=self.turn(sweep.trace))


@pytest.mark.parametrize(
    ("turn", "good", "told"),
    [
        (lambda trace: trace, True, "the wave took 17.3 ns, 1.2 m alone take 4.0 ns"),
        (np.conj, False, "it arrived before it was sent"),
        (lambda trace: 1j * np.conj(trace), False, "Imaginary parts are read before real ones"),
        (lambda trace: trace[::-1], False, "frequencies run from stop to start"),
        (lambda trace: np.abs(trace).astype(complex), True, "cannot tell"),
    ],
    ids=["right", "conjugate", "imaginary part first", "from stop to start", "no phase at all"],
)
def test_a_wave_that_arrives_before_it_was_sent_is_a_fault(tmp_path, turn, good, told):
    """The simulated chamber has 1.2 m of range and 4 m of cables: 5.2 m / c = 17.35 ns. The receiver is set up for the plan again."""
    scenario = Scenario(device=SCENARIOS["turnstile"].device, goal=ONE, twin=SCENARIOS["turnstile"].twin)
    world, plan = world_of(scenario.write(tmp_path / "c"))
    analyzer = TurnedRound("analyzer", analyzer_profile("scpi-analyzer"), timeout_s=1.0, opener=world.opener())
    analyzer.turn = turn
    lines = check_bench(plan, world.campaign.chamber, analyzer, world.axes(), states=None, clock=world.clock)
    asked = {what: (fine, words) for what, fine, words in lines}
    assert asked["delay"][0] is good and told in asked["delay"][1]
    assert world.scpi._settings["points"] == len(plan.frequency_hz)


def test_settings_are_said_in_words_with_their_units():
    from colure.acquire.check import _in_words

    read = {"start_hz": 3.7e10, "stop_hz": 24.125e9, "points": 3.0, "if_bandwidth_hz": 1000.0, "power_dbm": -3.0}
    said = "from 37 GHz, to 24.125 GHz, 3 frequencies, bandwidth 1000 Hz, power -3 dBm"
    assert ", ".join(_in_words(*one) for one in read.items()) == said


@pytest.mark.parametrize(
    ("changes", "named"),
    [
        ({"sweep": "INIT"}, "no answer to 'INIT' within 10 s"),
        ({"trace": "TRAC{port}?"}, "no whole block after 'TRAC1?' within 10 s; it says: -113"),
        ({"frequency_list": "FREQ:LIST?"}, "no answer to 'FREQ:LIST?' within 10 s; it says: -113"),
        ({"confirm": {"points": "POINTS?"}}, "no answer to 'POINTS?' within 10 s; it says: -113"),
        ({"clock": "TIME?"}, "no answer to 'TIME?' within 10 s; it says: -113"),
        ({"error": "ERR?"}, "no answer to 'ERR?' within 10 s"),
        ({"error": "*IDN?"}, "40 times, never by `error_none`"),
        ({"number_format": "ascii"}, "is `number_format` of the profile the instrument's?"),
    ],
)
def test_a_wrong_word_of_the_analyzers_profile_is_named_by_one_line_and_waited_for_once(tiny_campaign, changes, named):
    world, plan = world_of(tiny_campaign)
    words = analyzer_profile("scpi-analyzer").model_copy(update=changes)
    analyzer = ScpiAnalyzer("analyzer", words, timeout_s=10.0, opener=world.opener())
    begin = world.clock.monotonic()
    lines = check_bench(plan, world.campaign.chamber, analyzer, world.axes(), states=None, clock=world.clock)
    wrong = [words for _, fine, words in lines if not fine]
    assert named in wrong[0] and (len(wrong) == 1 or changes == {"error": "*IDN?"}), wrong
    assert world.clock.monotonic() - begin < 13.0


def test_an_analyzer_that_does_not_say_who_it_is_is_given_up_soon_and_the_word_is_named(tiny_campaign):
    world, _ = world_of(tiny_campaign)
    words = analyzer_profile("scpi-analyzer").model_copy(update={"identity": "ID?"})
    with pytest.raises(LostError, match=r"no answer to 'ID\?' within 5 s; it says: -113.*`identity`"):
        ScpiAnalyzer("analyzer", words, timeout_s=600.0, opener=world.opener())
    assert world.clock.monotonic() < 8.0


@pytest.mark.parametrize(
    ("more", "words", "faults", "good", "told"),
    [
        ("buffered = true\n", {}, (), True, "waits for a pulse, and sweeps again"),
        ("", {}, (), True, "waits for a pulse, and sweeps again"),
        ("", {"ready_sweep": ""}, (), True, "cannot tell: the profile has no words for it"),
        ("buffered = true\n", {}, ((FaultKind.NEVER_READY, 1),), False, "not ready for pulses after 1 s"),
        ("", {}, ((FaultKind.NEVER_READY, 1),), False, "not ready for pulses after 1 s"),
        ("", {"ready_end": ("STOP",)}, (), False, "-113"),
        ("buffered = true\n", {"buffer_end": ("STOP",)}, (), False, "-113"),
    ],
)
def test_the_analyzer_is_let_wait_for_a_pulse_and_released(tiny_campaign, more, words, faults, good, told):
    goal = tiny_campaign / "goal.toml"
    goal.write_text('style = "fly"\n' + more + goal.read_text(encoding="utf-8"), encoding="utf-8")
    with_faults(tiny_campaign, *faults)
    world, plan = world_of(tiny_campaign, kind="gcode")
    profile = analyzer_profile("scpi-analyzer").model_copy(update=words)
    analyzer = ScpiAnalyzer("analyzer", profile, timeout_s=1.0, opener=world.opener())
    lines = check_bench(plan, world.campaign.chamber, analyzer, world.axes(), states=None, clock=world.clock)
    asked = {what: (fine, found) for what, fine, found in lines}
    assert asked["ready for pulses"][0] is good and told in asked["ready for pulses"][1], asked["ready for pulses"]
    assert (
        world.scpi._slice.traces == [] and not world.scpi._slice.waits and world.scpi._waiting_s is None
    ) or not good


KEEP_OUT = '\n[[keep_out]]\nname = "mast"\nroll = [{low}, 190]\n'


def look_at_axes(folder, exchange_s: float) -> tuple[bool, str]:
    """Return what the check says of looks at the axes on a line whose exchanges take so long."""
    world, plan = world_of(folder, kind="gcode")
    analyzer, axes = (
        ScpiAnalyzer("analyzer", analyzer_profile("scpi-analyzer"), timeout_s=1.0, opener=world.opener()),
        world.axes(),
    )
    look = axes.status
    axes.status = lambda: (world.clock.sleep(exchange_s), look())[1]
    lines = check_bench(plan, world.campaign.chamber, analyzer, axes, states=None, clock=world.clock)
    return next((fine, words) for what, fine, words in lines if what == "look at the axes")


def test_a_fast_line_is_never_told_to_go_slower(tiny_campaign):
    with (tiny_campaign / "chamber.toml").open("a", encoding="utf-8") as out:
        out.write(KEEP_OUT.format(low=150.5))  # half a degree from the plan: braking alone takes 7.5 deg
    assert look_at_axes(tiny_campaign, 0.01) == (True, "10 ms a look; probe runs 0.60 deg meanwhile")


def test_a_slow_line_is_refused_near_a_limit_with_the_speed_that_is_slow_enough(tiny_campaign):
    """Azimuth scans to 180 deg, 5 deg before its limit: at 20 deg/s it runs 1.6 deg in 80 ms and 5 deg while it brakes at 40 deg/s2.

    6 deg (the room and one) = v * 0.08 s + v^2 / (2 * 40 deg/s2) gives 18.94 deg/s.
    """
    good, words = look_at_axes(tiny_campaign, 0.08)
    assert not good and words.startswith("80 ms a look; probe runs 4.80 deg meanwhile: ")
    assert (
        "azimuth could come 1.6 deg beyond its limit of 185 before it is seen and braked, 1 deg at most: 18.94 deg/s at most"
        in words
    )
    chamber = tiny_campaign / "chamber.toml"
    text = chamber.read_text(encoding="utf-8")
    chamber.write_text(text.replace("speed_deg_s = 20", "speed_deg_s = 18.9"), encoding="utf-8")
    good, words = look_at_axes(tiny_campaign, 0.08)
    assert (
        good and "seen so much later" in words and "this plan leaves more than that" in words and "12.5 deg/s" in words
    )
    # Roll scans to 150 deg, runs 2.4 deg in a look at 30 deg/s, and 7.5 deg while it brakes at 60 deg/s2: a sector 9.9 deg away is far.
    slower = text.replace("speed_deg_s = 20", "speed_deg_s = 18.9")
    chamber.write_text(slower + KEEP_OUT.format(low=159.0), encoding="utf-8")
    assert look_at_axes(tiny_campaign, 0.08)[0]
    chamber.write_text(slower + KEEP_OUT.format(low=152.0), encoding="utf-8")
    good, words = look_at_axes(tiny_campaign, 0.08)
    # 3 deg = v * 0.08 s + v^2 / (2 * 60 deg/s2)
    assert (
        not good and "roll could come 7.9 deg into keep-out sector 'mast'" in words and ": 14.76 deg/s at most" in words
    )
