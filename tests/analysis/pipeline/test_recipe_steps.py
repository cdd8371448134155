"""Alignment, mode filter and the recipe: corrupt, correct, recover, with the simulated chamber's truth."""

from __future__ import annotations

import numpy as np
import pytest

from colure.analysis.pipeline.recipe import default_recipe, process
from colure.analysis.steps.alignment import DEG, MM, estimate
from colure.analysis.steps.alignment_fit import Disturbances
from colure.app import services
from colure.app.services.reference import probe_of
from colure.app.services.rehearsal import record_of_rehearsal
from colure.errors import InputError
from colure.model.chamber import EchoTable, SimulatedChamber
from colure.model.loading import load
from colure.model.recipe import Recipe
from tests.conftest import expansion_of
from tests.endtoend.test_near_to_far import edited

PERFECT = {"noise": False, "crosstalk_db": -200.0, "probe_cross_polar_db": -200.0}


@pytest.fixture
def planned(campaign_folder):
    """The demo panel on the crossing at one frequency: (campaign, plan)."""
    edited(campaign_folder, "goal.toml", ("points = 11", "points = 1"), ("stop_ghz = 24.25", "stop_ghz = 24.0"))
    edited(campaign_folder, "device.toml", ("[0.0, 0.0, -30.0]", "[0.0, 0.0, 0.0]"))
    return services.make_plan(campaign_folder)


@pytest.fixture
def planned_band(campaign_folder):
    """The same at three frequencies."""
    edited(campaign_folder, "goal.toml", ("points = 11", "points = 3"))
    edited(campaign_folder, "device.toml", ("[0.0, 0.0, -30.0]", "[0.0, 0.0, 0.0]"))
    return services.make_plan(campaign_folder)


def run(planned, truth, recipe=None):
    campaign, plan = planned
    record = record_of_rehearsal(campaign, plan, truth=truth)
    probe = probe_of(campaign, plan.frequency_hz)
    return record, process(record, campaign.chamber, campaign.device, probe=probe, recipe=recipe)


def without(planned, *names):
    campaign, plan = planned
    record = record_of_rehearsal(campaign, plan, truth=SimulatedChamber(**PERFECT))
    recipe = default_recipe(record, campaign.chamber, campaign.device)
    for name in names:
        recipe = recipe.without(name)
    return recipe


@pytest.mark.parametrize("seed", range(3))
def test_half_a_degree_and_a_millimetre_are_found_and_taken_out(planned_band, seed):
    """50 dB of signal-to-noise: theta zero within 0.02 deg, the axes' offset within 0.03 mm, inside what is stated."""
    campaign, plan = planned_band
    rng = np.random.default_rng((seed, 9))
    true = {
        "theta_zero": rng.uniform(-0.5, 0.5),
        "roll_axis_tilt": rng.uniform(-0.5, 0.5),
        "axes_offset_x": rng.uniform(-1, 1),
    }
    peak_db = plan.predicted["level"]["snr_peak_db"]
    truth = SimulatedChamber(
        seed=seed, crosstalk_db=-200, probe_cross_polar_db=-200, theta_zero_deg=true["theta_zero"],
        roll_axis_tilt_deg=true["roll_axis_tilt"], axes_offset_mm=(true["axes_offset_x"], 0.0, 0.0),
    )  # fmt: skip
    settings = {**plan.settings, "if_bandwidth_hz": 1000.0 * 10 ** ((peak_db - 50.0) / 10)}
    noisy = type(plan)(**{**plan.__dict__, "settings": settings})
    record = record_of_rehearsal(campaign, noisy, truth=truth)
    recipe = default_recipe(record, campaign.chamber, campaign.device).without("alignment")
    done = process(
        record, campaign.chamber, campaign.device, probe=probe_of(campaign, plan.frequency_hz), recipe=recipe
    )
    found = estimate(done.sphere, done.step, campaign.chamber.range_length_m, prior={"axes_offset_y": 0.1 / MM},
                     disturbances=Disturbances(slice_error=done.drift.residual))  # fmt: skip
    off = {
        name: {"d": DEG, "m": MM}["m" if "offset" in name else "d"] * found.values[name] - value
        for name, value in true.items()
    }
    print({name: f"{value:+.4f}" for name, value in off.items()}, found.sentences()[0])
    assert abs(off["theta_zero"]) < 0.02 and abs(off["axes_offset_x"]) < 0.03
    assert abs(off["roll_axis_tilt"]) < 1.5 * DEG * found.expanded["roll_axis_tilt"]
    assert not found.seen["probe_roll_zero"] or found.expanded["probe_roll_zero"] > 0.05 / DEG
    assert "not seen" in " ".join(found.sentences()) or found.seen["probe_roll_zero"]


def test_a_misaligned_scan_gives_the_pattern_of_an_aligned_one(planned):
    truth = SimulatedChamber(**PERFECT, theta_zero_deg=0.4, axes_offset_mm=(0.8, 0.0, 0.0))
    campaign = planned[0]
    tolerance = campaign.chamber.alignment.model_copy(update={"theta_zero_deg": 1.0, "axes_offset_mm": 2.0})
    loose = campaign.chamber.model_copy(update={"alignment": tolerance})
    planned = (type(campaign)(campaign.folder, campaign.goal, loose, campaign.device), planned[1])
    _, corrected = run(planned, truth)
    _, plain = run(planned, truth, without(planned, "alignment"))
    errors = [rms_error_of(planned, done) for done in (corrected, plain)]
    print(f"misaligned {errors[1]:.1f} dB, corrected {errors[0]:.1f} dB rms")
    assert errors[0] < -70.0 and errors[1] > -45.0
    left = corrected.budget.chamber.alignment
    assert left.theta_zero_deg < 0.02 and left.axes_offset_mm < 0.05


def rms_error_of(planned, done) -> float:
    """Against the stand-in's own expansion, level and phase free, rms of the peak."""
    from colure.twin.declared import stand_in

    campaign, plan = planned
    device = stand_in(campaign.device, plan.frequency_hz, band_hz=plan.frequency_hz, seed=1)
    true = expansion_of(device, done.expansion.order).coefficients[0]
    found = done.expansion.coefficients[0]
    rest = found * np.vdot(found, true) / np.vdot(found, found) - true
    peak = np.abs(device.far_field([[0.0, 0.0, 1.0]])).max()
    return float(10 * np.log10(np.sum(np.abs(rest) ** 2) / (4 * np.pi) / peak**2))


def test_the_mode_filter_takes_a_walls_echo_out(campaign_folder):
    """The panel 300 mm in front of the crossing beside a -30 dB wall: the wall's share falls by at least 15 dB.

    Seen from its own centre the turning panel has few waves; its mirror image in a fixed wall moves
    along another way and cannot have as few.
    """
    edited(campaign_folder, "goal.toml", ("points = 11", "points = 1"), ("stop_ghz = 24.25", "stop_ghz = 24.0"))
    edited(campaign_folder, "chamber.toml", ("largest_device_m = 0.4", "largest_device_m = 0.8"))
    edited(campaign_folder, "device.toml", ("[0.0, 0.0, -30.0]", "[0.0, 0.0, 300.0]"))
    made = services.make_plan(campaign_folder)
    campaign, plan = made
    wall = EchoTable(normal=(1.0, 0.0, 0.0), distance_m=0.6, level_db=-12.0, phase_deg=40.0)
    probe, found = probe_of(campaign, plan.frequency_hz), {}
    for name, echoes in (("clean", ()), ("dirty", (wall,))):
        record = record_of_rehearsal(campaign, plan, truth=SimulatedChamber(**PERFECT, echoes=echoes))
        recipe = default_recipe(record, campaign.chamber, campaign.device).without("alignment")
        for step in ("with", "without"):
            used = recipe if step == "with" else recipe.without("mode-filter")
            done = process(record, campaign.chamber, campaign.device, probe=probe, recipe=used, grid_step_deg=10)
            found[name, step] = done.expansion.coefficients
    power = {step: np.sum(np.abs(found["dirty", step] - found["clean", step]) ** 2) for step in ("with", "without")}
    peak = np.abs(done.expansion.far_field_at([0.0], [0.0])).max()
    level = 10 * np.log10(power["without"] / (4 * np.pi)) - 20 * np.log10(peak)
    lost = np.sum(np.abs(found["clean", "with"] - found["clean", "without"]) ** 2) / np.sum(
        np.abs(found["clean", "with"]) ** 2
    )
    reduction = 10 * np.log10(power["without"] / power["with"])
    print(
        f"wall {level:.1f} dB rms below the peak, {reduction:.1f} dB down; the panel loses {10 * np.log10(lost):.1f} dB"
    )
    assert reduction >= 15.0
    assert 10 * np.log10(lost) < -50.0


def test_the_same_recipe_gives_the_same_bits(planned):
    truth = SimulatedChamber(seed=4)
    record, one = run(planned, truth)
    before = record["trace"].values.copy()
    campaign, plan = planned
    two = process(record, campaign.chamber, campaign.device, probe=probe_of(campaign, plan.frequency_hz))
    assert np.array_equal(one.expansion.coefficients, two.expansion.coefficients)
    assert np.array_equal(record["trace"].values, before)


RECIPE = """
[[steps]]
step = "drift"
[[steps]]
step = "gain"
[[steps]]
step = "assemble"
[[steps]]
step = "alignment"
on = false
[[steps]]
step = "far-field"
"""


def test_a_recipe_file_is_obeyed_and_its_faults_are_named(planned, tmp_path):
    path = tmp_path / "recipe.toml"
    path.write_text(RECIPE, encoding="utf-8")
    recipe = load(Recipe, path)
    _, done = run(planned, SimulatedChamber(**PERFECT), recipe)
    assert done.alignment is None and '"left out"' in done.pattern.attrs["history_json"]
    path.write_text(RECIPE.replace('step = "gain"', 'step = "gain"\non = false'), encoding="utf-8")
    with pytest.raises(InputError, match="'gain': must be there and on"):
        load(Recipe, path)
    path.write_text(RECIPE.replace('"drift"', '"far-field"').replace('step = "far-field"\n"""', ""), encoding="utf-8")
    with pytest.raises(InputError, match="must come once each and in the order"):
        load(Recipe, path)
    path.write_text(RECIPE.replace('"drift"', '"drifts"'), encoding="utf-8")
    with pytest.raises(InputError, match="drifts.*drift"):
        load(Recipe, path)


def test_without_the_transform_the_range_shows(planned):
    """1.2 m is 1.5 times 2 D^2 / lambda: the untransformed pattern is off where the transformed one is not."""
    truth = SimulatedChamber(**PERFECT)
    _, whole = run(planned, truth)
    _, direct = run(planned, truth, without(planned, "far-field"))
    assert rms_error_of(planned, whole) < -70.0 < -55.0 < rms_error_of(planned, direct)


def test_stated_uncertainties_hold_what_was_injected(small_campaign, request):
    """Random misalignments and noise on the small device: at least 93 % inside the stated intervals (k = 2)."""
    # Waves that the plan leaves out would count as misalignment: the order must hold them all.
    edited(small_campaign, "goal.toml", ("wanted_level_db = -20", "wanted_level_db = -60"), ("step_deg = 15\n", ""))
    campaign, plan = services.make_plan(small_campaign)
    probe = probe_of(campaign, plan.frequency_hz)
    inside, sizes = [], []
    for seed in range(200 if request.config.getoption("--nightly") else 15):
        rng = np.random.default_rng((seed, 31))
        true = {
            "theta_zero": rng.normal(0, 0.2),
            "roll_axis_tilt": rng.normal(0, 0.2),
            "axes_offset_x": rng.normal(0, 0.4),
        }
        truth = SimulatedChamber(
            seed=seed, crosstalk_db=-200, probe_cross_polar_db=-200, theta_zero_deg=true["theta_zero"],
            roll_axis_tilt_deg=true["roll_axis_tilt"], axes_offset_mm=(true["axes_offset_x"], rng.normal(0, 0.1), 0.0),
        )  # fmt: skip
        noisy = type(plan)(**{**plan.__dict__, "settings": {**plan.settings, "if_bandwidth_hz": 30000.0}})
        record = record_of_rehearsal(campaign, noisy, truth=truth)
        recipe = default_recipe(record, campaign.chamber, campaign.device).without("alignment")
        done = process(record, campaign.chamber, campaign.device, probe=probe, recipe=recipe, grid_step_deg=30)
        prior = {"theta_zero": 0.2 / DEG, "roll_axis_tilt": 0.2 / DEG, "axes_offset_x": 0.4 / MM, "axes_offset_y": 0.1 / MM,
                 "probe_roll_zero": 1e-6}  # fmt: skip
        found = estimate(
            done.sphere,
            done.step,
            campaign.chamber.range_length_m,
            prior=prior,
            disturbances=Disturbances(slice_error=done.drift.residual),
        )
        for name, value in true.items():
            unit = MM if "offset" in name else DEG
            error, expanded = unit * found.values[name] - value, unit * found.expanded[name]
            inside.append(abs(error) <= expanded)
            sizes.append(error / expanded)
    print(
        f"{len(inside)} values: {100 * np.mean(inside):.1f} % inside, rms {np.sqrt(np.mean(np.square(sizes))):.2f} of the interval"
    )
    assert np.mean(inside) >= 0.93
    assert np.sqrt(np.mean(np.square(sizes))) > 0.2


def test_a_direct_scan_of_an_offset_device_is_brought_to_one_distance(campaign_folder):
    """60 mm in front of the crossing at 6 m: the level near the beam is off by 0.09 dB without the step, 0.01 dB with it."""
    edited(campaign_folder, "goal.toml", ("points = 11", "points = 1"), ("stop_ghz = 24.25", "stop_ghz = 24.0"),
           ('"two-pass"', '"one-pass"\nregion_deg = 60\nswept_step_deg = 2'))  # fmt: skip
    edited(campaign_folder, "device.toml", ("[0.0, 0.0, -30.0]", "[0.0, 0.0, 60.0]"))
    edited(campaign_folder, "chamber.toml", ("range_length_m = 1.2 ", "range_length_m = 6.0 "))
    campaign, plan = services.make_plan(campaign_folder)
    record = record_of_rehearsal(campaign, plan, truth=SimulatedChamber(**PERFECT))
    from colure.twin.declared import stand_in

    device = stand_in(campaign.device, plan.frequency_hz, band_hz=plan.frequency_hz, seed=1)
    theta = np.deg2rad([0.0, 25.0, 45.0])
    u = np.stack([np.sin(theta), 0 * theta, np.cos(theta)], axis=-1)
    far = device.far_field(u)[0]
    true = np.sum(far * np.stack([np.cos(theta), 0 * theta, -np.sin(theta)], axis=-1), axis=-1)
    recipe = default_recipe(record, campaign.chamber, campaign.device)
    off = {}
    for name, used in (("with", recipe), ("without", recipe.without("distance"))):
        done = process(record, campaign.chamber, campaign.device, recipe=used, grid_step_deg=10)
        found = done.expansion.far_field_at(theta, 0 * theta)[0, 0]
        level = 20 * np.log10(np.abs(found / true))
        phase = np.rad2deg(np.angle(found / true))
        off[name] = (level[0], float(np.ptp(phase[:2])))
    print(off)
    assert recipe.runs("distance")
    assert off["without"][0] - off["with"][0] == pytest.approx(20 * np.log10(6.0 / 5.94), abs=1e-3)
    assert off["with"][1] < 0.4 * off["without"][1]  # the rest bends within the device
