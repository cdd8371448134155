"""Devices whose wave is not the one that device.toml declares: gain is right, levels of the components are of another wave.

The Stokes parameter V/I of an ellipse with axial ratio r is 2 r / (1 + r^2) (IEEE Std 145, sign by the sense; from memory).
"""

from __future__ import annotations

import numpy as np
import pytest

from colure.analysis.findings.wave_at_peak import NEEDED, pair_findings, turn_findings, wave_findings
from colure.app.services.verdicts import judge
from colure.model.device import Device
from colure.model.figure import NOT_TO_BE_USED
from colure.model.specification import Mask, Specification
from tests.analysis.findings.test_sanity import processed
from tests.coverage.scenarios import ONE, SCENARIOS, Scenario

AHEAD = (0.0, 0.0)


def told(device, *waves, by=wave_findings):
    """Findings of waves, one a frequency: axial ratio with its sense in dB, tilt in degrees, azimuth and elevation of the beam."""
    rows = []
    for ratio_db, tilt, (azimuth, elevation) in waves:
        r = 10.0 ** (-abs(ratio_db) / 20.0)
        rows.append((np.copysign(2.0 * r / (1.0 + r * r), ratio_db), tilt, azimuth, elevation))
    read = {
        name: [(1e9 * (24 + i), row[column], 1.0) for i, row in enumerate(rows)] for column, name in enumerate(NEEDED)
    }
    return by(read, Device(name="x", size_mm=(9, 9, 3), expected_gain_dbi=6.0, **device))


LINEAR, RIGHT = {}, {"polarization": "right"}


@pytest.mark.parametrize(
    ("device", "wave", "words"),
    [
        (LINEAR, (2.0, 10.0, AHEAD), "right-hand circular (axial ratio 2.0 dB"),
        (LINEAR, (-1.0, 10.0, AHEAD), "Set polarization = 'left'"),
        (LINEAR, (40.0, 90.0, AHEAD), "+90.0 deg from slant_deg = 0"),
        ({"slant_deg": 45.0}, (40.0, -25.0, AHEAD), "-25.0 deg from slant_deg = 45"),
        (RIGHT, (-2.0, 0.0, AHEAD), "left-hand (axial ratio 2.0 dB"),
        (RIGHT, (40.0, 0.0, AHEAD), "is linear (axial ratio 40.0 dB"),
    ],
)
def test_another_wave_is_told(device, wave, words):
    (one,) = told(device, wave)
    assert words in one.text
    assert one.severity == (NOT_TO_BE_USED if device is RIGHT else "look")


@pytest.mark.parametrize(
    ("device", "waves"),
    [
        (LINEAR, [(30.0, 10.0, AHEAD)]),
        (LINEAR, [(30.0, 15.5, AHEAD)]),  # 15 deg lie within its interval
        (RIGHT, [(8.0, 70.0, AHEAD)]),  # a poor one is still circular
        (RIGHT, [(2.0, 0.0, AHEAD), (-2.0, 0.0, AHEAD)]),  # as declared at one frequency of its band
        (RIGHT, [(-2.0, 0.0, (180.0, 0.0))]),  # a turnstile's other side
        (LINEAR, [(40.0, 80.0, (90.0, 0.0))]),  # a dipole along z, seen from the side
        ({"polarization": "elliptical", "axial_ratio_db": 2.5}, [(2.0, 60.0, AHEAD)]),
    ],
)
def test_what_may_be_as_declared_is_not_spoken_against(device, waves):
    assert told(device, *waves) == []


@pytest.mark.parametrize(("polarization", "doubted"), [("left", True), ("linear", False)])
def test_a_mask_on_co_polar_levels_does_not_pass_another_wave(tmp_path, polarization, doubted):
    """Each linear part of a circular wave lies 3 dB below it: a limit 1.5 dB below the device's gain would be kept."""
    scenario = Scenario(device=SCENARIOS["4 x 4 panel"].device, goal=ONE, twin={
        "device": {"kind": "panel", "rows": 4, "columns": 4, "pitch_mm": 6.2, "polarization": polarization}})  # fmt: skip
    run, figures = processed(tmp_path / "c", scenario)
    gain = next(one.value for one in figures if one.name == "gain_dbi")
    masks = [Mask(name=kind, component=kind, plane="E", points=((0.0, gain + lift), (180.0, gain + lift)))
             for kind, lift in (("co", -1.5), ("total", 1.5))]  # fmt: skip
    co, total = judge(run, figures, Specification(name="limits", masks=tuple(masks))).verdicts
    assert total.outcome == "pass"
    assert co.outcome == ("not decidable" if doubted else "fail")
    assert ("left-hand circular" in co.text) is doubted


@pytest.mark.parametrize(
    ("polarization", "pair", "told"),
    [
        ("linear", (1.0, 0.0), ()),
        ("linear", (1.0, -1j), ("phi_0_cross_peak_db", "phi_0_xpd_db")),  # e_R = (co + j cross) / sqrt 2: right-hand
        ("right", (1.0, -1j), ()),
        ("left", (1.0, -1j), ("phi_0_gain_left_dbic", "phi_0_xpd_circular_db")),
        ("right", (1.0, 1.0), ("phi_0_gain_left_dbic", "phi_0_xpd_circular_db")),
        ("linear", (0.0, 1.0), ()),  # along another offset of the probe
    ],
)
def test_single_cuts_tell_the_sense_of_rotation(polarization, pair, told):
    names = [
        "phi_0_beamwidth_deg",
        "phi_0_cross_peak_db",
        "phi_0_gain_left_dbic",
        "phi_0_xpd_circular_db",
        "phi_0_xpd_db",
    ]
    device = Device(name="x", size_mm=(9, 9, 3), expected_gain_dbi=6.0, polarization=polarization)
    found = pair_findings([(24e9, *pair), (25e9, *pair)], device, names)
    assert tuple(name for one in found for name in one.figures) == told


def test_a_turn_that_is_the_same_at_every_frequency_is_looked_at():
    """A device that turned by 3 deg between two passes: XPD 25.5 +- 0.6 dB of a patch without any, and nothing was said."""
    (one,) = told(LINEAR, (40.0, 3.0, AHEAD), (45.0, 3.2, AHEAD), (42.0, 2.9, AHEAD), by=turn_findings)
    assert "a turn by +3.0 deg" in one.text and one.severity == "look"
    assert set(one.figures) == {"xpd_db", "xpd_worst_db", "tilt_deg"}


@pytest.mark.parametrize(
    ("device", "waves"),
    [
        (LINEAR, [(40.0, 3.0, AHEAD)] * 2),  # too few frequencies
        (LINEAR, [(40.0, 2.4, AHEAD)] * 3),  # its interval reaches below 1.5 deg
        (LINEAR, [(27.0, 3.0, AHEAD)] * 3),  # out of phase as well: an impurity
        (LINEAR, [(40.0, 3.0, AHEAD), (40.0, 4.0, AHEAD), (40.0, 3.4, AHEAD)]),  # another one at each frequency
        (LINEAR, [(40.0, 90.0, AHEAD)] * 3),  # said otherwise
        (RIGHT, [(40.0, 3.0, AHEAD)] * 3),
    ],
)
def test_what_is_no_turn_is_not_called_one(device, waves):
    assert told(device, *waves, by=turn_findings) == []
