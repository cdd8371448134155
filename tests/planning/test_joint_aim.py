"""Aiming a mount with joints, against what its drawing says and against the simulated mount's own kinematics."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from colure.errors import InputError
from colure.geometry.directions import unit_vector
from colure.geometry.kinematics import Geometry
from colure.model.campaign import Campaign
from colure.model.chamber import SimulatedChamber
from colure.planning.aim import bearing_from
from colure.planning.beam_search import search_plan
from colure.planning.flip import flip_plan
from colure.planning.joint_aim import bearing_of_readouts, ways_to
from colure.planning.load import assess_load
from colure.planning.preflight import make_plan
from colure.planning.schemes import compare
from colure.twin.linkage import Linkage
from tests.mounts import joint, six_axes, swinging_arm, telescope
from tests.planning.test_joint_path import small
from tests.twin.test_linkage import dipole_on

ROLL = Geometry.ROLL_OVER_AZIMUTH


def campaign_on(folder, joints: str, range_m: float) -> Campaign:
    return Campaign.load(dipole_on(joints, range_m).write(folder / "c"))


def bearing(theta: float, phi: float):
    return bearing_from(azimuth_deg=None, elevation_deg=None, theta_deg=theta, phi_deg=phi)


def test_an_arm_over_a_turntable_reads_theta_and_phi(tmp_path):
    """The turntable's readout grows as phi does and the arm's is theta (derivable); the other way round the arm swings over."""
    chamber = campaign_on(tmp_path, swinging_arm(800), 0.8).chamber
    ways = ways_to(bearing(40, 30), ROLL, chamber)
    shown = [way.readouts_deg for way in ways]
    assert shown[0] == pytest.approx({"turntable": 30.0, "arm": 40.0, "rotary": 0.0}, abs=1e-6)
    assert any(one == pytest.approx({"turntable": 210.0, "arm": -40.0, "rotary": 0.0}, abs=1e-6) for one in shown)
    assert ways[0].slant_deg == pytest.approx(30.0, abs=1e-6)  # chi = psi - phi with the probe at roll 0


@pytest.mark.parametrize(("joints", "range_m"), [(six_axes(600), 0.6), (telescope(800), 0.8)])
def test_the_simulated_mount_looks_where_it_was_aimed(tmp_path, joints, range_m):
    """Readouts go through the twin's own matrices: the probe stands at the bearing, at the range length, and looks back."""
    chamber = campaign_on(tmp_path, joints, range_m).chamber
    linkage = Linkage(chamber, SimulatedChamber(noise=False))
    for theta, phi in ((0.0, 0.0), (35.0, 10.0), (70.0, 200.0), (-50.0, 95.0)):
        for way in ways_to(bearing(theta, phi), ROLL, chamber)[:3]:
            assert not way.fault
            device, probe = linkage.frames({name: np.array(value) for name, value in way.readouts_deg.items()})
            place = probe.points([(0.0, 0.0, range_m)])[0] - device.translation
            wanted = unit_vector(theta=np.deg2rad(theta), phi=np.deg2rad(phi))
            assert np.allclose(device.rotation.T @ place, range_m * wanted, rtol=0, atol=1e-6)
            assert np.allclose(probe.rotation[:, 2], place / range_m, rtol=0, atol=1e-6)
            back, slant = bearing_of_readouts(way.readouts_deg, ROLL, chamber)
            assert np.allclose(back.direction, wanted, rtol=0, atol=1e-6)
            assert slant == pytest.approx(way.slant_deg)


def test_what_no_joint_reaches_is_named(tmp_path, campaign_folder):
    chamber = campaign_on(tmp_path, swinging_arm(800, arm="[-2, 150]"), 0.8).chamber
    (way,) = ways_to(bearing(170, 0), ROLL, chamber)
    assert "joint arm = 170: must be from -2 to 150 deg" in way.fault
    with pytest.raises(InputError, match="names azimuth, roll: must be turntable, arm, rotary"):
        bearing_of_readouts({"azimuth": 1.0, "roll": 2.0}, ROLL, chamber)
    small(campaign_folder, "swinging arm", region=90)
    solid = Campaign.load(campaign_folder)
    (way,) = ways_to(bearing(178, 0), ROLL, solid.chamber, solid.device)
    assert "post would touch" in way.fault


def test_a_beam_search_leaves_out_what_is_out_of_reach(tmp_path):
    """Every direction kept stands within the arm's 35 deg of travel, and some beyond it were asked for."""
    joints = swinging_arm(800, arm="[-35, 35]")
    plan = search_plan(campaign_on(tmp_path, joints, 0.8))
    names, shown = plan.in_coordinates
    assert plan.axes == ("turntable", "arm", "rotary") and names == ("azimuth", "roll", "probe")
    assert np.abs(plan.targets_deg[:, 1]).max() <= 35.0
    assert 20.0 < np.abs(shown[:, 0]).max() <= 35.0
    assert plan.inputs["chamber"]["positioner"]["joints"][1]["name"] == "arm"


def test_what_joints_do_not_do_is_refused_before_anything_moves(tmp_path):
    campaign = campaign_on(tmp_path, swinging_arm(800), 0.8)
    with pytest.raises(InputError, match=r"positioner.joints: a flip test turns azimuth and roll"):
        flip_plan(campaign)
    _, plan = make_plan(campaign)
    with pytest.raises(InputError, match=r"positioner.joints: this mount is not set beside other positioners"):
        compare(campaign, plan)
    assert "not worked out" in assess_load(campaign.device, campaign.chamber).words


@pytest.mark.parametrize(
    ("file", "old", "new", "words"),
    [
        (
            "chamber.toml",
            'letter = "B"',
            'letter = "B"\nposition_error_deg = 0.1',
            "position_error_deg = 0.1: remove it",
        ),
        ("chamber.toml", 'letter = "B"', 'letter = "B"\ntorque_nm = 5', "torque_nm = 5: remove it"),
        (
            "chamber.toml",
            "load_limit_kg = 5",
            "load_limit_kg = 5\ncarried_mass_kg = 3",
            "carried_mass_kg = 3: remove it",
        ),
        ("chamber.toml", "range_length_m", "echo_excess_m = [1.0]\nrange_length_m", "echo_excess_m: remove it"),
        ("goal.toml", "points = 2", "points = 2\ngate = true", "gate = true: must be false"),
    ],
)
def test_entries_that_joints_do_not_heed_are_refused_by_name(campaign_folder, file, old, new, words):
    small(campaign_folder, "swinging arm", region=90)
    path = campaign_folder / file
    path.write_text(path.read_text(encoding="utf-8").replace(old, new, 1), encoding="utf-8")
    with pytest.raises(InputError, match=words):
        Campaign.load(campaign_folder)


def test_a_probe_that_no_joint_rolls_needs_two_ports(campaign_folder):
    """Four joints in one plane move and tip the probe and never roll it."""
    small(campaign_folder, "swinging arm", region=90)
    path = campaign_folder / "chamber.toml"
    text = path.read_text(encoding="utf-8")
    rotary = joint("rotary", "U", "probe", "[0, 0, 1]", "[0, 0, 1000]", "[-200, 200]")
    assert rotary in text
    path.write_text(text.replace(rotary, joint("tilt", "A", "probe", "[0, 1, 0]", "[0, 0, 1000]")), encoding="utf-8")
    with pytest.raises(InputError, match="no joint rolls the probe"):
        Campaign.load(campaign_folder)


@pytest.mark.parametrize(
    ("joints", "swings"),
    [
        (swinging_arm(800, roll=False), True),  # one joint carries the probe, and carries it around
        (swinging_arm(800), True),
        (
            joint("azimuth-table", "A", "device", "[0, -1, 0]")
            + joint("roll-table", "B", "device", "[0, 0, -1]")
            + joint("rotary", "U", "probe", "[0, 0, 1]", "[0, 0, 800]"),
            False,
        ),
    ],
)
def test_a_probe_swings_wherever_a_joint_does_more_than_roll_it(tmp_path, joints, swings):
    scenario = dipole_on(joints, 0.8)
    chamber = {**scenario.chamber, "probe": {**scenario.chamber["probe"], "ports": 2}}
    two = replace(scenario, chamber=chamber, goal={**scenario.goal, "scheme": "auto"})
    campaign = Campaign.load(two.write(tmp_path / "c"))
    assert campaign.chamber.swings_probe is swings


def test_a_ring_beam_on_a_swung_probe_is_forecast_with_the_echoes_that_its_peak_picks(tmp_path):
    """Nine drawn ranges of a dipole on an arm stated 0.22 to 0.31 dB of directivity, where 0.125 dB were promised."""

    def forecast(name, joints, front_to_back_db):
        campaign = campaign_on(tmp_path / name, joints, 0.8)
        device = campaign.device.model_copy(update={"expected_front_to_back_db": front_to_back_db})
        return make_plan(replace(campaign, device=device))[1].predicted["forecast"]

    # What has one beam meets the echoes of one direction.
    ring, beam = forecast("ring", swinging_arm(800), 1.0), forecast("beam", swinging_arm(800), 20.0)
    for name in ("gain_dbi", "directivity_dbi", "beamwidth_e_deg"):
        assert ring[name]["expanded"] > beam[name]["expanded"], name
    assert ring["directivity_dbi"]["expanded"] > 2.2 * beam["directivity_dbi"]["expanded"]
