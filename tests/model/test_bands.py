"""Frequencies in bands and lists: what they stand for, what is refused and how, and which steps are gaps."""

from __future__ import annotations

import numpy as np
import pytest

from colure.errors import InputError
from colure.model.bands import (
    GoalBand,
    as_settings,
    bands_said,
    moments_s,
    of_segments,
    read_list,
    relative_noise,
    segments_of,
    stretches,
    with_list,
)
from colure.model.goal import Goal
from colure.model.loading import validate

GOAL = {"name": "x"}


def goal(*bands, **more) -> Goal:
    return validate(Goal, {**GOAL, "band": list(bands), **more}, source="goal.toml")


LOW = {"start_ghz": 5.75, "stop_ghz": 5.85, "step_mhz": 25}
HIGH = {"start_ghz": 24, "stop_ghz": 24.25, "points": 3, "if_bandwidth_hz": 100, "power_dbm": -3}


def test_bands_give_their_frequencies_in_rising_order():
    made = goal(LOW, HIGH)
    np.testing.assert_allclose(made.frequency_hz / 1e9, [5.75, 5.775, 5.8, 5.825, 5.85, 24, 24.125, 24.25])
    assert (made.start_ghz, made.stop_ghz, made.points) == (5.75, 24.25, 8)
    # What a plan keeps of its goal reads as the same goal.
    assert (
        validate(Goal, made.model_dump(mode="json"), source="plan").frequency_hz.tolist() == made.frequency_hz.tolist()
    )


@pytest.mark.parametrize(
    ("bands", "more", "words"),
    [
        ([HIGH, LOW], {}, r"band 2 starts at 5.75 GHz: must be above 24.25 GHz, where band 1 ends"),
        ([LOW, {**LOW, "start_ghz": 5.8}], {}, "band 2 starts at 5.8 GHz"),
        ([{**LOW, "points": 5}], {}, "one of points and step_mhz"),
        ([{**LOW, "step_mhz": 30}], {}, "step_mhz = 30: does not end at 5.85 GHz; stop at 5.84 or 5.87 GHz"),
        ([{"frequencies_ghz": [38, 37]}], {}, "37 GHz comes after 38 GHz: must rise"),
        ([{"frequencies_ghz": [37, 37]}], {}, "37 GHz comes twice"),
        ([{"frequencies_ghz": [37], "points": 2}], {}, "frequencies_ghz stands alone: leave points out"),
        ([{"start_ghz": 5, "stop_ghz": 5, "points": 2}], {}, "points = 2: must be 1"),
        ([{**LOW, "if_bandwidth_hz": 0.1}], {}, "if_bandwidth_hz = 0.1: must be a number from 1 to 1e.07 Hz"),
        ([LOW, HIGH], {"start_ghz": 5}, r"start_ghz = 5: must be left out with \[\[band\]\]"),
        ([LOW], {"monitor_ghz": 7}, "monitor_ghz = 7: must be from"),
    ],
)  # fmt: skip
def test_a_wrong_band_is_refused_by_name_value_limit_and_unit(bands, more, words):
    with pytest.raises(InputError, match=words):
        goal(*bands, **more)


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("frequency_hz\n37100\n38000\n", r"line 2: frequency_hz = 37100 .* is the column frequency_mhz\?"),
        ("frequency_ghz\n38\n37\n", "line 3: 37 GHz comes after 38 GHz: must rise; sort the list"),
        ("frequency_ghz\n37\n37\n", "line 3: 37 GHz comes twice"),
        ("ghz\n37\n", "must hold one of frequency_ghz, frequency_mhz, frequency_hz"),
        ("frequency_ghz\n", "0 rows"),
        ("frequency_ghz,power_dbm\n37,50\n", "line 2: power_dbm = 50: must be from -60 to 30 dBm"),
        ("frequency_ghz,phase\n37,50\n", "column 'phase': unknown"),
        ("frequency_ghz\nfive\n", "line 2: frequency_ghz = 'five': must be a finite number"),
    ],
)
def test_a_wrong_list_is_refused_by_its_line(tmp_path, text, words):
    (tmp_path / "list.csv").write_text(text)
    with pytest.raises(InputError, match=words):
        read_list(tmp_path / "list.csv")


def test_a_list_gives_a_band_for_each_bandwidth_and_power(tmp_path):
    (tmp_path / "l.csv").write_text("# of the horn\nfrequency_mhz;if_bandwidth_hz\n37100,5;1000\n38000;1000\n39700;\n")
    table = with_list(tmp_path, {**GOAL, "frequency_list": "l.csv"})
    made = validate(Goal, table, source="goal.toml")
    np.testing.assert_allclose(made.frequency_hz, [37.1005e9, 38e9, 39.7e9])
    assert [band.if_bandwidth_hz for band in made.band] == [1000.0, None]
    with pytest.raises(InputError, match=r"must be left out with \[\[band\]\]"):
        with_list(tmp_path, {**GOAL, "frequency_list": "l.csv", "band": [LOW]})


def test_words_of_the_command_line_are_bands():
    said = [GoalBand.model_validate(one) for one in bands_said("5.8,24:24.25:0.125,38,39.7")]
    assert [one.frequency_hz.size for one in said] == [1, 3, 2]
    with pytest.raises(ValueError, match="must be a frequency or start:stop:step"):
        bands_said("24..25")


def test_segments_are_evenly_spaced_and_keep_every_frequency():
    bands = goal({"frequencies_ghz": [37, 37.1, 37.2, 38, 39.7]}, {**HIGH, "start_ghz": 40, "stop_ghz": 40.2}).band
    found = segments_of(bands, if_bandwidth_hz=1000.0, power_dbm=0.0)
    assert [(one.points, one.if_bandwidth_hz, one.power_dbm) for one in found] == [
        (3, 1000.0, 0.0), (1, 1000.0, 0.0), (1, 1000.0, 0.0), (3, 100.0, -3.0)
    ]  # fmt: skip
    every = np.concatenate([one.frequency_hz for one in found])
    np.testing.assert_allclose(every, np.concatenate([band.frequency_hz for band in bands]))


def test_noise_and_moments_follow_each_segment():
    """Noise power goes with bandwidth over power, time with 1 / bandwidth (derivable)."""
    segments = segments_of(goal(LOW, HIGH).band, if_bandwidth_hz=1000.0, power_dbm=0.0)
    attributes = {"segments": as_settings(segments), "trace_s": 5e-3 + 3e-2}
    frequency = np.concatenate([one.frequency_hz for one in segments])
    noise = relative_noise(attributes, frequency)
    assert noise[0] / noise[-1] == pytest.approx(10.0 / 10**0.3)
    assert relative_noise(attributes, frequency[[0, 7]])[1] / relative_noise(attributes, frequency[[0, 7]])[0] == pytest.approx(10**0.3 / 10)  # fmt: skip
    np.testing.assert_allclose(np.diff(moments_s(attributes, 8)), [1e-3] * 4 + [5.5e-3] + [1e-2] * 2)
    np.testing.assert_allclose(of_segments(attributes, frequency[[4, 5]], "power_dbm", 9.0), [0.0, -3.0])
    np.testing.assert_allclose(of_segments({}, frequency, "power_dbm", 9.0), 9.0)


@pytest.mark.parametrize(
    ("ghz", "sizes"),
    [([24.0], [1]), ([5.8, 24.1], [1, 1]), ([37.0, 40.0], [2]), ([37, 38, 39.7], [3]), ([1, 2, 3, 4], [4]),
     ([5.75, 5.8, 5.85, 24, 24.1, 24.2], [3, 3]), ([5.8, 24, 24.1, 24.2], [1, 3]),
     ([24, 24.025, 24.05, 24.15, 24.175, 24.2], [3, 3]), ([37, 37.25, 37.5, 39, 39.5, 40], [3, 3]), ([30, 31, 32, 34, 35, 36], [6])],
)  # fmt: skip
def test_gaps_part_the_bands(ghz, sizes):
    assert [one.stop - one.start for one in stretches(1e9 * np.array(ghz, float))] == sizes
