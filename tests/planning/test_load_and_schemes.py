"""Load on every axis, and positioners side by side as the trade knows them."""

from __future__ import annotations

import re

import numpy as np
import pytest

from colure.app import services
from colure.errors import InputError
from colure.geometry.kinematics import Geometry
from colure.model.campaign import Campaign
from colure.planning.load import assess_load
from colure.planning.schemes import blocked_share, compare, is_blocked
from tests.endtoend.test_near_to_far import edited


def heavy(folder, offset="[0.0, 0.0, -200.0]", cog="[0.0, 0.0, 0.0]"):
    edited(folder, "device.toml", ("mass_kg = 0.4", f"mass_kg = 4.0\ncentre_of_gravity_mm = {cog}"),
           ("[0.0, 0.0, -30.0]", offset))  # fmt: skip
    edited(folder, "chamber.toml", ("largest_device_m = 0.4", "largest_device_m = 0.6"))
    return folder


def test_roll_over_azimuth_holds_a_balanced_device_without_torque(campaign_folder):
    """A weight on the roll axis turns nothing; on an elevation axis its arm counts (m g l, derivable)."""
    campaign = Campaign.load(heavy(campaign_folder))
    torque = {
        geometry: {
            name: load.gravity_nm
            for name, load in assess_load(campaign.device, campaign.chamber, geometry).axes.items()
        }
        for geometry in Geometry
    }
    assert torque[Geometry.ROLL_OVER_AZIMUTH] == {"azimuth": 0.0, "roll": 0.0}
    assert torque[Geometry.AZIMUTH_OVER_ELEVATION]["elevation"] == pytest.approx(4.0 * 9.80665 * 0.2)
    assert torque[Geometry.ELEVATION_OVER_AZIMUTH] == {"azimuth": 0.0, "elevation": pytest.approx(4.0 * 9.80665 * 0.2)}


def test_off_balance_on_the_roll_axis_counts(campaign_folder):
    campaign = Campaign.load(heavy(campaign_folder, cog="[30.0, 40.0, 0.0]"))
    load = assess_load(campaign.device, campaign.chamber).axes["roll"]
    assert load.gravity_nm == pytest.approx(4.0 * 9.80665 * 0.05)
    assert load.inertia_kg_m2 > 4.0 * 0.05**2


def test_a_weak_axis_is_refused_with_the_acceleration_it_bears(campaign_folder):
    heavy(campaign_folder, cog="[30.0, 40.0, 0.0]")
    edited(campaign_folder, "chamber.toml", ("min_deg = -10\n", "torque_nm = 1.97\nmin_deg = -10\n"))
    with pytest.raises(InputError, match=r"acceleration_deg_s2 = 60: must be at most \d+\.\d deg/s\^2 for 1\.97 N m"):
        services.make_plan(campaign_folder)
    edited(campaign_folder, "chamber.toml", ("torque_nm = 1.97", "torque_nm = 1.5"))
    with pytest.raises(InputError, match=r"roll by gravity alone = 1\.96: must be below 1\.5 N m; balance"):
        services.make_plan(campaign_folder)


def test_tilt_under_load_follows_the_stiffness(campaign_folder):
    heavy(campaign_folder)
    edited(campaign_folder, "chamber.toml", ("load_limit_kg = 5", "load_limit_kg = 5\nstiffness_nm_deg = 100"))
    _campaign, plan = services.make_plan(campaign_folder)
    assert plan.predicted["tilt_deg"] == pytest.approx(4.0 * 9.80665 * 0.2 / 100.0)


def test_the_table_says_what_the_trade_knows(campaign_folder):
    """Common practice, no source: slices of a roll positioner meet at boresight, grids elsewhere; one pass halves the time."""
    campaign, plan = services.make_plan(campaign_folder)
    choices = compare(campaign, plan)
    assert [choice.geometry for choice in choices[:2]] == [campaign.chamber.positioner.geometry] * 2
    roll = [choice for choice in choices if choice.geometry is Geometry.ROLL_OVER_AZIMUTH]
    others = [choice for choice in choices if choice.geometry is not Geometry.ROLL_OVER_AZIMUTH]
    assert min(choice.near_boresight for choice in roll) > 10 * max(choice.near_boresight for choice in others)
    assert "boresight" in roll[0].pole and "heavy" in roll[0].suits and "bearings" in others[-1].suits
    assert roll[0].duration_s == pytest.approx(plan.predicted["duration_s"])
    for two, one in zip(choices[::2], choices[1::2], strict=True):
        assert one.duration_s == pytest.approx(0.5 * two.duration_s, rel=0.05) and not one.fault


def test_the_hidden_cone_is_counted_and_found():
    """Solid angle of a cone: (1 - cos a) / 2 of the sphere (derivable)."""
    assert blocked_share(60.0) == pytest.approx(0.25)
    random = np.random.default_rng(3).normal(size=(200_000, 3))
    d = random / np.linalg.norm(random, axis=1, keepdims=True)
    for geometry in Geometry:
        assert is_blocked(d, geometry, 60.0).mean() == pytest.approx(0.25, abs=0.004)
    assert is_blocked(np.array([0.0, 0.0, -1.0]), Geometry.ROLL_OVER_AZIMUTH, 10.0)
    assert not is_blocked(np.array([0.0, 0.0, 1.0]), Geometry.ROLL_OVER_AZIMUTH, 10.0)


def test_above_300_ghz_the_guidelines_last_value_counts():
    """ICNIRP 2020 ends at 300 GHz; a plan beyond it does not stop, and takes the value there."""
    from colure.planning.exposure import assess_exposure

    below, above = (
        assess_exposure(power_dbm=0.0, gain_dbi=20.0, distance_m=2.0, frequency_hz=f) for f in (300e9, 330e9)
    )
    assert above == below


def test_an_arm_that_carries_mass_counts_in_every_geometry(campaign_folder):
    """3 kg at 150 mm: m l^2 = 0.0675 kg m^2 about the axis that carries it, and m g l = 4.41 N m where that axis lifts (derivable)."""
    bare = Campaign.load(campaign_folder)
    edited(campaign_folder, "chamber.toml", ("load_limit_kg = 5", "load_limit_kg = 5\ncarried_mass_kg = 3\ncarried_arm_mm = 150"))  # fmt: skip
    loaded = Campaign.load(campaign_folder)
    for geometry in Geometry:
        carrier = "elevation" if geometry is Geometry.AZIMUTH_OVER_ELEVATION else "azimuth"
        before, after = (assess_load(one.device, one.chamber, geometry).axes[carrier] for one in (bare, loaded))
        assert after.inertia_kg_m2 - before.inertia_kg_m2 == pytest.approx(3.0 * 0.15**2)
        lifted = 3.0 * 9.80665 * 0.15 if carrier == "elevation" else 0.0
        assert after.gravity_nm - before.gravity_nm == pytest.approx(lifted)


def test_a_probe_pattern_of_another_band_is_refused_before_anything_moves(campaign_folder):
    goal = campaign_folder / "goal.toml"
    goal.write_text(re.sub(r"start_ghz = .*", "start_ghz = 20.0", goal.read_text()))
    with pytest.raises(InputError, match=r"probe\.pattern = 'probe\.nc': covers .* narrow the band, or leave"):
        services.make_plan(campaign_folder)
    # Of a driver that another package brings too, whose words nobody here can read.
    chamber = campaign_folder / "chamber.toml"
    text = chamber.read_text(encoding="utf-8")
    chamber.write_text(re.sub(r'(?s)(\[analyzer\].*?profile = )"[^"]*"', r'\1"driver:rack"', text), encoding="utf-8")
    assert Campaign.load(campaign_folder).chamber.analyzer.profile == "driver:rack"
    with pytest.raises(InputError, match=r"probe\.pattern = 'probe\.nc': covers .* narrow the band, or leave"):
        services.make_plan(campaign_folder)


def test_the_step_that_is_refused_is_the_one_that_was_set(campaign_folder):
    edited(campaign_folder, "goal.toml", ("start_ghz", "step_deg = 4.5\nstart_ghz"))
    edited(campaign_folder, "device.toml", ("[0.0, 0.0, -30.0]", "[0.0, 0.0, -150.0]"))
    with pytest.raises(InputError, match=r"goal\.toml: step_deg = 4\.5: must be at most"):
        services.make_plan(campaign_folder)
