"""Goals instead of steps: the quickest plan, alternatives, overrides, and plain answers to what cannot be."""

from __future__ import annotations

import re
from dataclasses import replace

import pytest

from colure.app import services
from colure.errors import InputError
from colure.model.campaign import Campaign
from colure.planning.choose import BANDWIDTHS_HZ, best_power_dbm
from colure.planning.flight import smear_limit
from colure.planning.level import campaign_budget
from colure.planning.preflight import make_plan
from tests.endtoend.test_near_to_far import edited


def wishing(folder, *lines: str, wishes: str = "gain_dbi = 0.4\nbeamwidth_e_deg = 0.5\nside_lobe_e_db = 1.0"):
    with (folder / "goal.toml").open("a", encoding="utf-8") as out:
        out.write("\n".join(lines) + f"\n[want]\n{wishes}\n")
    return folder


def test_the_quickest_plan_comes_first_with_two_alternatives(campaign_folder):
    _, usual = services.make_plan(campaign_folder)
    campaign, plan = services.make_plan(wishing(campaign_folder))
    first, *others = plan.predicted["alternatives"]
    assert len(others) == 2 and {first["name"]} & {one["name"] for one in others} == set()
    assert first["duration_s"] == plan.predicted["duration_s"] <= min(one["duration_s"] for one in others)
    assert first["duration_s"] < 0.4 * usual.predicted["duration_s"]
    assert campaign.goal.style == "fly" and plan.settings["style"] == "fly"
    for one in (first, *others):
        assert one["why"] and one["data_bytes"] > 0 and one["points"] > 100
        for name, wish in campaign.goal.want.wishes.items():
            assert one["uncertainty"][name] <= wish
    assert others[0]["choices"]["style"] == "step"


def test_an_alternative_is_taken_by_writing_it_down(campaign_folder):
    _, plan = services.make_plan(wishing(campaign_folder))
    other = plan.predicted["alternatives"][1]
    edited(campaign_folder, "goal.toml", ("points = 11", "points = 11\n" + "\n".join(
        f'{k} = "{v}"' if isinstance(v, str) else f"{k} = {v!r}" for k, v in other["choices"].items())))  # fmt: skip
    _, taken = services.make_plan(campaign_folder)
    assert taken.predicted["duration_s"] == pytest.approx(other["duration_s"])
    assert taken.settings["style"] == other["choices"]["style"]


def test_what_is_set_by_hand_stays_and_is_checked_against_the_wishes(campaign_folder):
    _, plan = services.make_plan(wishing(campaign_folder, 'style = "step"', "if_bandwidth_hz = 5000", "step_deg = 5"))
    assert plan.settings["style"] == "step" and plan.settings["if_bandwidth_hz"] == 5000 and plan.step_deg == 5
    edited(campaign_folder, "goal.toml", ("if_bandwidth_hz = 5000", "if_bandwidth_hz = 5000000\npower_dbm = -50"))
    with pytest.raises(
        InputError, match=r"want\.gain_dbi = 0\.4: must be at least [\d.]+ dB here; (noise|drift residual) alone"
    ):
        services.make_plan(campaign_folder)


def test_a_wish_below_what_the_reference_allows_is_answered_with_the_cause(campaign_folder):
    with pytest.raises(
        InputError,
        match=r"want\.gain_dbi = 0\.2: must be at least 0\.25\d* dB here; reference gain alone gives 0\.25 dB",
    ):
        services.make_plan(wishing(campaign_folder, wishes="gain_dbi = 0.2"))


def test_figures_of_the_whole_sphere_need_it(campaign_folder):
    with pytest.raises(
        InputError, match=r"want\.directivity_dbi = 0\.2: needs the whole sphere, region_deg = 60 must be 180"
    ):
        services.make_plan(wishing(campaign_folder, "region_deg = 60", wishes="directivity_dbi = 0.2"))


@pytest.mark.parametrize(
    ("name", "pairs", "answer"),
    [
        # A theta axis that ends at 90 deg: what is missing, and what is possible.
        ("chamber.toml", (("min_deg = -185", "min_deg = -90"), ("max_deg = 185", "max_deg = 90")),
         r"axis azimuth target = 180: .* 90 deg of travel are missing\n(.*\n)*.*region_deg = 180: must be at most 8\d deg for that"),
        # A roll axis that ends at 170 deg.
        ("chamber.toml", (("max_deg = 190", "max_deg = 170"),), r"axis roll target = 174: .* 4 deg of travel are missing"),
        # One frequency and a gate.
        ("goal.toml", (("points = 11", "points = 1\ngate = true"), ("stop_ghz = 24.25", "stop_ghz = 24.0")),
         r"gate = true: .*declared|gate = true: one frequency"),
        # A device larger than the chamber.
        ("device.toml", (("[49.7, 49.7, 4.0]", "[600.0, 600.0, 4.0]"),), r"turning sphere must be at most 400 mm across"),
        # A probe that stands in the device's own waves.
        ("chamber.toml", (("range_length_m = 1.2 ", "range_length_m = 0.07 "),),
         r"range_length_m = 0\.07: must be at least 0\.0\d+ m for waves of order 34; 0\.0\d+ m are missing"),
    ],
)  # fmt: skip
def test_impossible_goals_get_a_plain_answer(campaign_folder, name, pairs, answer):
    edited(campaign_folder, name, *pairs)
    with pytest.raises(InputError, match=answer):
        services.make_plan(campaign_folder)


def short(folder, geometry, azimuth, elevation=0):
    """Let azimuth end at +-`azimuth` deg, and elevation likewise."""
    edited(folder, "chamber.toml", ('geometry = "roll-over-azimuth"', f'geometry = "{geometry}"'),
           ("min_deg = -185", f"min_deg = -{azimuth}"), ("max_deg = 185", f"max_deg = {azimuth}"))  # fmt: skip
    if elevation:
        edited(folder, "chamber.toml", ("[positioner.roll]", "[positioner.elevation]"),
               ("min_deg = -10\n", f"min_deg = -{elevation}\n"), ("max_deg = 190", f"max_deg = {elevation}"))  # fmt: skip
    return Campaign.load(folder)


def plan_of(campaign, **goal):
    return make_plan(replace(campaign, goal=campaign.goal.model_copy(update={"step_deg": 5.0, **goal})))[1]


@pytest.mark.parametrize("style", ["step", "fly"])
@pytest.mark.parametrize(
    ("geometry", "azimuth", "elevation"), [("roll-over-azimuth", 90, 0), ("azimuth-over-elevation", 195, 55)]
)
def test_the_region_that_short_axes_allow_is_named_and_is_the_largest(
    tiny_campaign, geometry, azimuth, elevation, style
):
    """An elevation axis of +-55 deg is an everyday one, and so is an azimuth that a cable ends at +-90 deg."""
    campaign = short(tiny_campaign, geometry, azimuth, elevation)
    with pytest.raises(InputError) as refused:
        plan_of(campaign, style=style)
    told = int(re.search(r"region_deg = 180: must be at most (\d+) deg", str(refused.value))[1])
    assert plan_of(campaign, style=style, region_deg=float(told)).settings["region_deg"] == told
    with pytest.raises(InputError):
        plan_of(campaign, style=style, region_deg=told + 1.0)


@pytest.mark.parametrize("geometry", ["azimuth-over-elevation", "elevation-over-azimuth"])
def test_where_no_region_fits_a_rectangle_is_named(tiny_campaign, geometry):
    campaign = short(tiny_campaign, geometry, 90, 55)
    with pytest.raises(
        InputError, match=r"a rectangle within the limits .*\[scan\] with azimuth_deg and elevation_deg"
    ):
        plan_of(campaign)


def test_a_gate_needs_a_band(campaign_folder):
    edited(campaign_folder, "chamber.toml", ("door_distance_m", "echo_excess_m = [0.8]\ndoor_distance_m"))
    edited(
        campaign_folder,
        "goal.toml",
        ("points = 11", "points = 1\ngate = true"),
        ("stop_ghz = 24.25", "stop_ghz = 24.0"),
    )
    with pytest.raises(InputError, match="gate = true: one frequency: no time gate is possible"):
        services.make_plan(campaign_folder)


def test_side_lobes_below_the_noise_are_said_with_what_would_help(campaign_folder):
    edited(campaign_folder, "goal.toml", ("points = 11", "points = 11\npower_dbm = -20"))
    _, plan = services.make_plan(campaign_folder)
    (line,) = plan.predicted["missing"]
    snr = plan.predicted["level"]["snr_wanted_db"]
    assert f"{10 - snr:.1f} dB are missing" in line and "Hz instead of 1000 Hz" in line


def test_hidden_directions_are_said(campaign_folder):
    edited(campaign_folder, "chamber.toml", ("load_limit_kg = 5", "load_limit_kg = 5\nbracket_half_angle_deg = 30"))
    _, plan = services.make_plan(campaign_folder)
    assert "hides everything beyond 150 deg; 30 deg of the region are missing" in plan.predicted["missing"][0]


def test_power_is_limited_by_source_device_or_receiver(campaign_folder):
    campaign = Campaign.load(campaign_folder)
    level, analyzer = campaign_budget(campaign), campaign.chamber.analyzer
    assert best_power_dbm(analyzer, level, 15.0) == (0.0, "the source")
    strong = analyzer.model_copy(update={"max_power_dbm": 20.0})
    assert best_power_dbm(strong, level, 15.0) == (15.0, "the device's input")
    weak = strong.model_copy(update={"receiver_limit_dbm": -40.0})
    power, limit = best_power_dbm(weak, level, 15.0)
    assert limit == "the receiver" and level.received_dbm + power == pytest.approx(-40.0)
    edited(campaign_folder, "goal.toml", ("points = 11", "points = 11\npower_dbm = 3"))
    with pytest.raises(
        InputError, match=r"power_dbm = 3: must be at most 0 dBm \(chamber\.toml analyzer\.max_power_dbm\)"
    ):
        services.make_plan(campaign_folder)


def test_smear_within_the_bandwidth_by_hand():
    """sin(x)/x with x = n w / 2B: at the limit the wave of order n has lost 1 % (-40 dB) to first order."""
    from math import pi, radians, sin

    n, bandwidth = 30, 100.0
    x = n * radians(smear_limit(order=n, if_bandwidth_hz=bandwidth, level_db=-40)) / (2 * bandwidth)
    assert 1 - sin(x) / x == pytest.approx(0.01, rel=0.01)
    assert pi > x  # far from the first zero


def test_usual_bandwidths_rise():
    assert list(BANDWIDTHS_HZ) == sorted(set(BANDWIDTHS_HZ))
