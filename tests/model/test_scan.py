"""Scans in the operator's words: what they expand to, and what is refused with field, value, limit and unit."""

from __future__ import annotations

import numpy as np
import pytest

from colure.errors import InputError
from colure.model.goal import Goal
from colure.model.loading import validate
from colure.model.scan import Scan, angles_of

GOAL = {"name": "Daily scan", "start_ghz": 37.0, "stop_ghz": 40.0, "points": 25}


def test_ranges_lists_and_numbers_are_read():
    assert angles_of("-90:90:1").size == 181
    assert list(angles_of("0,45,90")) == [0.0, 45.0, 90.0]
    assert list(angles_of("10:-10:-5")) == [10.0, 5.0, 0.0, -5.0, -10.0]
    assert list(angles_of((0.0, 22.5))) == [0.0, 22.5]


def test_a_rectangle_is_one_cut_for_every_angle_that_is_not_swept():
    cuts = Scan(theta_deg="-90:90:2", phi_deg="0:180:2").cuts()
    assert len(cuts) == 91
    assert sum(len(cut.directions) for cut in cuts) == 91 * 91
    ring = Scan(theta_deg=30, phi_deg="0:350:10").cuts()
    assert [cut.name for cut in ring] == ["theta_30"]
    assert not ring[0].great_circle


def test_directions_are_those_of_the_conventions():
    """(-theta, phi) is (theta, phi + 180 deg); d = (sin az cos el, sin el, cos az cos el). Source: conventions of the project."""
    one = Scan(theta_deg=[-30.0], phi_deg=[20.0]).cuts()[0].directions[0]
    two = Scan(theta_deg=[30.0], phi_deg=[200.0]).cuts()[0].directions[0]
    assert np.allclose(one, two, atol=1e-15)
    az, el = np.deg2rad(25.0), np.deg2rad(-10.0)
    found = Scan(azimuth_deg=25, elevation_deg=-10).cuts()[0].directions[0]
    assert np.allclose(found, [np.sin(az) * np.cos(el), np.sin(el), np.cos(az) * np.cos(el)], atol=1e-15)


def test_great_circles_pass_their_direction_and_are_planes():
    for cut in Scan(great_circles_deg=[0.0, 45.0], through_deg=(20.0, 5.0), along_deg="-60:60:5").cuts():
        centre = cut.directions[12]
        az, el = np.rad2deg(np.arctan2(centre[0], centre[2])), np.rad2deg(np.arcsin(centre[1]))
        assert (az, el) == pytest.approx((20.0, 5.0))
        assert cut.great_circle
        assert cut.step_deg == pytest.approx(5.0)


@pytest.mark.parametrize(
    ("scan", "words"),
    [
        ({"theta_deg": "-90:90:7", "phi_deg": 0}, "stop at 85 or 92 deg"),
        ({"theta_deg": "-90:90", "phi_deg": 0}, "start:stop:step"),
        ({"theta_deg": "-90:90:-1", "phi_deg": 0}, "step = -1"),
        ({"theta_deg": "0:200:1", "phi_deg": 0}, "from -180 to 180 deg"),
        ({"theta_deg": "0:10:1"}, "theta_deg and phi_deg go together"),
        ({}, "exactly one of"),
        ({"theta_deg": 0, "phi_deg": 0, "directions": "a.csv"}, "exactly one of"),
        ({"theta_deg": [0, 0], "phi_deg": 0}, "must come once"),
        ({"theta_deg": "a", "phi_deg": 0}, "must be an angle"),
        ({"theta_deg": True, "phi_deg": 0}, "must be an angle"),
        ({"theta_deg": "0:180:0.01", "phi_deg": "0:359:0.1"}, "must be at most 200000 (directions)"),
        ({"theta_deg": 0, "phi_deg": 0, "repeats": 0}, "from 1 to 50 times"),
        ({"theta_deg": 0, "phi_deg": 0, "dwell_s": -1}, "from 0 to 600 s"),
        ({"theta_deg": 0, "phi_deg": 0, "offset_deg": 400}, "from -360 to 360 deg"),
        ({"theta_deg": 0, "phi_deg": 0, "thetas": 1}, "unknown field"),
    ],
)
def test_bad_entries_are_refused_with_the_way_out(scan, words):
    with pytest.raises(InputError) as error:
        validate(Goal, {**GOAL, "scan": scan}, source="goal.toml")
    assert words in str(error.value)
    assert "goal.toml: scan" in str(error.value)


@pytest.mark.parametrize(
    ("beside", "words"),
    [({"region_deg": 90.0}, "[scan] decides region_deg"), ({"offset_deg": 45}, "[scan] decides offset_deg"),
     ({"monitor_ghz": 36.0}, "from start_ghz = 37 to stop_ghz = 40 GHz")],
)  # fmt: skip
def test_what_contradicts_a_scan_is_refused(beside, words):
    with pytest.raises(InputError, match=None) as error:
        validate(Goal, {**GOAL, "scan": {"theta_deg": 0, "phi_deg": 0}, **beside}, source="goal.toml")
    assert words in str(error.value)
