"""From bearings to readouts and back, on every positioner."""

from __future__ import annotations

import json
import subprocess
import sys

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from colure.errors import InputError
from colure.geometry.kinematics import Geometry, sighting
from colure.model.campaign import Campaign
from colure.planning.aim import aims, bearing_at, bearing_from, read_targets, slant_at

#: Section 2 of the standards sheet (derived, round trip 4e-15): theta, phi; az, el; alpha, epsilon.
TABLE = [
    (30, 45, 22.2077, 20.7048, 20.7048, 22.2077),
    (60, 45, 50.7685, 37.7612, 37.7612, 50.7685),
    (80, 30, 78.4916, 29.4987, 58.5251, 70.5746),
]


@pytest.mark.parametrize("row", TABLE)
def test_readouts_are_those_of_the_table(row):
    theta, phi, az, el, alpha, epsilon = row
    bearing = bearing_from(azimuth_deg=az, elevation_deg=el, theta_deg=None, phi_deg=None)
    wanted = {
        Geometry.ROLL_OVER_AZIMUTH: {"azimuth": theta, "roll": phi},
        Geometry.AZIMUTH_OVER_ELEVATION: {"azimuth": az, "elevation": el},
        Geometry.ELEVATION_OVER_AZIMUTH: {"azimuth": alpha, "elevation": epsilon},
    }
    for geometry, readouts in wanted.items():
        ways = aims(bearing, geometry)
        assert len(ways) >= 2 and not any(way.fault for way in ways)
        assert ways[0].readouts_deg == pytest.approx(readouts, abs=1e-4)


angles = st.floats(-179.0, 179.0)


@given(az=angles, el=st.floats(-89.0, 89.0), geometry=st.sampled_from(list(Geometry)))
def test_every_solution_shows_the_bearing_and_the_way_back_agrees(az, el, geometry):
    bearing = bearing_from(azimuth_deg=az, elevation_deg=el, theta_deg=None, phi_deg=None)
    ways = aims(bearing, geometry)
    assert ways
    for way in ways:
        back, slant = bearing_at(way.readouts_deg, geometry)
        np.testing.assert_allclose(back.direction, bearing.direction, atol=1e-9)
        assert np.isclose(np.cos(np.deg2rad(slant - way.slant_deg)), 1.0, atol=1e-9)


@given(theta=st.floats(1.0, 179.0), phi=st.floats(-179.0, 179.0))
def test_on_a_roll_positioner_the_polarization_turns_by_the_roll(theta, phi):
    """conventions: chi = psi - phi measures slant psi at every theta, so roll 0 receives slant phi."""
    slant = slant_at(Geometry.ROLL_OVER_AZIMUTH, first=np.deg2rad(theta), second=np.deg2rad(phi))
    assert np.isclose(np.cos(np.deg2rad(slant - phi)), 1.0, atol=1e-9)


@given(az=angles, el=st.floats(-89.0, 89.0), geometry=st.sampled_from(list(Geometry)))
def test_the_probe_roll_given_receives_slant_zero(az, el, geometry):
    bearing = bearing_from(azimuth_deg=az, elevation_deg=el, theta_deg=None, phi_deg=None)
    way = aims(bearing, geometry)[0]
    first, second = (np.deg2rad(way.readouts_deg[name]) for name in geometry.axis_names)
    seen = sighting(geometry, first=first, second=second)
    chi = np.deg2rad(way.probe_roll_deg)
    received = np.cos(chi) * seen.first_vector + np.sin(chi) * seen.second_vector
    theta, phi = np.deg2rad(bearing.theta_deg), np.deg2rad(bearing.phi_deg)
    # Ludwig's third definition, co-polar vector for reference x.
    theta_hat = np.array([np.cos(theta) * np.cos(phi), np.cos(theta) * np.sin(phi), -np.sin(theta)])
    phi_hat = np.array([-np.sin(phi), np.cos(phi), 0.0])
    np.testing.assert_allclose(received, np.cos(phi) * theta_hat - np.sin(phi) * phi_hat, atol=1e-8)


def test_limits_senses_and_zeros_of_a_chamber_count(campaign_folder):
    text = (campaign_folder / "chamber.toml").read_text(encoding="utf-8")
    head, rest = text.split("[positioner.roll]", 1)
    (campaign_folder / "chamber.toml").write_text(
        head + "[positioner.roll]\nsense = -1\nzero_deg = 30" + rest.replace("min_deg = -10", "min_deg = -160", 1),
        encoding="utf-8",
    )
    chamber = Campaign.load(campaign_folder).chamber
    bearing = bearing_from(azimuth_deg=None, elevation_deg=None, theta_deg=20.0, phi_deg=40.0)
    best = aims(bearing, Geometry.ROLL_OVER_AZIMUTH, chamber)[0]
    assert best.readouts_deg == pytest.approx({"azimuth": 20.0, "roll": -10.0}) and not best.fault
    narrow = chamber.model_copy(update={"positioner": chamber.positioner.model_copy(update={
        "azimuth": chamber.positioner.azimuth.model_copy(update={"min_deg": -5.0, "max_deg": 5.0})})})  # fmt: skip
    ways = aims(bearing, Geometry.ROLL_OVER_AZIMUTH, narrow)
    assert all("out of reach" in way.fault and "must be from -5 to 5 deg" in way.fault for way in ways)


def test_targets_from_a_file_and_their_faults(tmp_path):
    good = tmp_path / "targets.csv"
    good.write_text("name,az_deg,el_deg\nmast,20,5\nbridge,-35,-2.5\n", encoding="utf-8")
    assert [b.name for b in read_targets(good)] == ["mast", "bridge"]
    bad = tmp_path / "bad.csv"
    bad.write_text("name,az_deg,el_deg\nmast,20,95\nbridge,x,0\n", encoding="utf-8")
    with pytest.raises(InputError) as error:
        read_targets(bad)
    assert "line 2: el = 95: must be from -90 to 90 deg" in str(error.value)
    assert "line 3: az_deg, el_deg: must be two numbers" in str(error.value)


def run(*words):
    return subprocess.run([sys.executable, "-m", "colure", "aim", *words], capture_output=True, text=True, timeout=60)


def test_the_command(tmp_path):
    done = run("--az", "20", "--el", "5", "--geometry", "roll")
    assert done.returncode == 0 and "20.591" in done.stdout and "sin th cos ph" in done.stdout
    back = run("--readout", "azimuth=20.5908,roll=14.3491", "--geometry", "roll", "--json")
    bearing = json.loads(back.stdout)[0]["bearing"]
    assert bearing["azimuth_deg"] == pytest.approx(20.0, abs=2e-3) and bearing["elevation_deg"] == pytest.approx(
        5.0, abs=2e-3
    )
    assert run("--az", "20").returncode == 2
