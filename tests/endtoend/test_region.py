"""Part of the sphere, one polarization, jerk and approach: planned, measured in virtual time, compared with closed form."""

from __future__ import annotations

import numpy as np
import pytest

from colure.analysis.pipeline.recipe import process
from colure.analysis.uncertainty.budget import figures_with_budget
from colure.app import services
from colure.app.services.reference import probe_of
from colure.geometry.polarization import Basis, to_basis
from colure.model.pattern import field_of
from colure.twin.chamber import SimulatedRange
from colure.twin.devices import maker_of
from tests.endtoend.test_near_to_far import edited, rms_error_db
from tests.endtoend.test_on_the_fly import centred, measured


def processed(world, record):
    campaign = world.campaign
    probe = probe_of(campaign, record["frequency"].values)
    return process(record, campaign.chamber, campaign.device, probe=probe, grid_step_deg=3)


@pytest.mark.parametrize("style", ["step", "fly"])
def test_a_region_is_as_right_as_the_whole_sphere(campaign_folder, tmp_path, style, request):
    """A cap of 40 deg of the demo panel in a perfect chamber, transformed from 1.2 m: well below its echoes."""
    if style == "fly" and not request.config.getoption("--nightly"):
        pytest.skip("on the fly in the nightly run")
    folder = centred(campaign_folder, f'style = "{style}"\nregion_deg = 40\n')
    world, plan, record = measured(folder, tmp_path)
    assert np.abs(plan.targets_deg[plan.role == 0, 0]).max() < 60
    done = processed(world, record)
    error = rms_error_db(world.campaign, done.pattern)
    print(f"{style}: {error:.1f} dB rms inside 40 deg, {world.time.now():.0f} s")
    assert error < (-60.0 if style == "step" else -75.0)
    assert np.all(np.isnan(done.pattern["e_theta"].sel(theta=42).values.real))
    assert float(done.pattern["support"].sel(theta=39).min()) == 1.0
    stated = {figure.name for figure in figures_with_budget(done.budget)}
    assert "gain_dbi" in stated and not stated & {"directivity_dbi", "efficiency_db", "front_to_back_db"}
    assert world.time.now() == pytest.approx(plan.predicted["duration_s"], rel=0.03)


@pytest.mark.nightly
def test_one_polarization_is_what_the_probe_sees_at_the_range_length(campaign_folder, tmp_path):
    """Against the noiseless simulated chamber on a finer grid, along the device's co-polar direction."""
    folder = centred(campaign_folder, 'style = "fly"\nregion_deg = 40\n')
    edited(folder, "goal.toml", ('scheme = "two-pass"', 'scheme = "one-pass"'))
    world, plan, record = measured(folder, tmp_path)
    assert any("one polarization cannot be transformed" in line for line in plan.predicted["missing"])
    done = processed(world, record)
    chamber, truth = world.campaign.chamber, world.campaign.simulated()
    room = SimulatedRange(chamber, truth, maker_of(world.campaign))
    room.set_frequencies(record["frequency"].values)
    t, p = np.meshgrid(np.arange(0.0, 40.0, 3.0), np.arange(0.0, 360.0, 30.0), indexing="ij")
    seen = room.received({"azimuth": t.ravel(), "roll": p.ravel(), "probe": -p.ravel()}, 1)[:, 0].reshape(t.shape)
    pattern = done.pattern.sel(theta=t[:, 0], phi=p[0])
    e = field_of(pattern)[0]
    co, cross = to_basis(e[0], e[1], Basis.LUDWIG_3, theta=np.deg2rad(t), phi=np.deg2rad(p))
    factor = np.vdot(co, seen) / np.vdot(co, co)
    assert np.abs(co * factor - seen).max() < 2e-4 * np.abs(seen).max()
    assert np.abs(cross).max() < 2e-4 * np.abs(co).max()
    stated = {figure.name for figure in figures_with_budget(done.budget)}
    assert "side_lobe_e_db" in stated and not stated & {"xpd_db", "axial_ratio_db", "directivity_dbi"}


@pytest.mark.parametrize("style", ["step", "fly"])
def test_jerk_limits_and_approaches_are_forecast(small_campaign, tmp_path, style, request):
    """Axes that change their acceleration slowly and come from below: the forecast holds within 3 %."""
    if style == "fly" and not request.config.getoption("--nightly"):
        pytest.skip("on the fly in the nightly run")
    with (small_campaign / "goal.toml").open("a", encoding="utf-8") as out:
        out.write(f'style = "{style}"\nregion_deg = 60\npath = "one-way"\n')
    edited(small_campaign, "chamber.toml", ("min_deg = -185", "jerk_deg_s3 = 80\napproach_deg = 2\nmin_deg = -185"))
    world, plan, record = measured(small_campaign, tmp_path)
    assert world.time.now() == pytest.approx(plan.predicted["duration_s"], rel=0.03)
    scan = record["role"].values == 0
    swept = (
        record["commanded_deg"]
        .values[scan, 0]
        .reshape(-1, int(np.sum(scan)) // len(np.unique(plan.targets_deg[:, 1])) // 2)
    )
    assert np.all(np.diff(swept, axis=1) > 0.0)  # one-way: every slice rises
    processed(world, record)


def test_an_offset_device_needs_no_more_slices(campaign_folder):
    """300 mm in front of the crossing: a larger sphere, finer sweeps along the slices, as many slices (derivable)."""
    edited(campaign_folder, "chamber.toml", ("largest_device_m = 0.4", "largest_device_m = 0.8"))
    _, near = services.make_plan(campaign_folder)
    edited(campaign_folder, "device.toml", ("[0.0, 0.0, -30.0]", "[0.0, 0.0, -300.0]"))
    _, far = services.make_plan(campaign_folder)
    assert far.order > 2 * near.order and far.grid.swept_step_deg < 0.5 * near.grid.swept_step_deg
    assert far.grid.slices_planned == near.grid.slices_planned


def test_waves_about_the_boresight_end_with_the_lateral_radius():
    """Power beyond the order that the planner takes, of sources on a cylinder's rim: below the level asked for."""
    from colure.planning.sampling import azimuthal_order_for, order_for
    from tests.conftest import cluster_of, expansion_of

    frequency, lateral, depth = 24e9, 0.03, 0.06
    cluster = cluster_of(frequency, [[lateral, 0.0, depth], [0.0, -lateral, depth]], [[1, 0, 0], [0, 1j, 0.5]])
    order = order_for(reach_m=float(np.hypot(lateral, depth)), frequency_hz=frequency, level_db=-80)
    expansion = expansion_of(cluster, order)
    m = np.concatenate([np.arange(-n, n + 1) for n in range(1, order + 1)])
    power = np.sum(np.abs(expansion.coefficients[0]) ** 2, axis=0)
    for level in (-30, -40, -60):
        top = azimuthal_order_for(lateral_m=lateral, frequency_hz=frequency, level_db=level)
        assert top < 0.7 * order
        beyond = 10 * np.log10(power[np.abs(m) > top].sum() / power.sum())
        assert beyond < level, (level, top, beyond)
