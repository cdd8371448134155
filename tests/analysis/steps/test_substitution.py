"""Mismatch and adapters in the substitution, circular probes, readings as priors, doubtful sweeps after a jump."""

from __future__ import annotations

import numpy as np
import pytest
import skrf

from colure.analysis.pipeline.recipe import default_recipe, mismatch_db, process
from colure.analysis.steps.drift import correct, track
from colure.analysis.steps.gain import coverage_factor, gain_transfer, substitution_path
from colure.app import services
from colure.app.services.reference import probe_of
from colure.app.services.rehearsal import record_of_rehearsal
from colure.errors import InputError
from colure.model.campaign import Campaign
from colure.model.chamber import Chamber, SimulatedChamber
from colure.model.loading import load
from colure.model.record import Flag
from tests.endtoend.test_near_to_far import edited


def test_substitution_path_is_what_a_cascade_of_networks_says():
    """Against scikit-rf: generator, adapter and horn as networks, the horn's accepted wave through a lossless two-port."""
    rng = np.random.default_rng(7)
    source, horn, device = (0.3 * rng.random(5) * np.exp(2j * np.pi * rng.random(5)) for _ in range(3))
    adapter = rng.normal(size=(5, 2, 2, 2)) @ np.array([1.0, 1j]) * 0.25
    frequency = skrf.Frequency(24, 25, 5, unit="GHz")

    def two_port(s):
        return skrf.Network(frequency=frequency, s=s, z0=50)

    def radiator(g):
        """A lossless two-port from the connector to space: reflects g, lets sqrt(1 - |g|^2) through."""
        t = np.sqrt(1 - np.abs(g) ** 2)
        return two_port(np.stack([np.stack([g, t], -1), np.stack([t, -np.conj(g)], -1)], -2))

    def feed(g):
        """The cable's end: what comes out of it reflects by g on the right side."""
        return two_port(np.stack([np.stack([0 * g, 1 + 0 * g], -1), np.stack([1 + 0 * g, g], -1)], -2))

    reference = (feed(source) ** two_port(adapter) ** radiator(horn)).s[:, 1, 0]
    realized = (feed(source) ** radiator(device)).s[:, 1, 0] / np.sqrt(1 - np.abs(device) ** 2)
    found = substitution_path(source=source, horn=horn, device=device, adapter=adapter)
    assert found == pytest.approx(reference / realized, abs=1e-12)


def test_mismatch_limits_of_the_trade():
    """20 log(1 +- |G1 G2|): 0.1 and 0.1 give +0.0864 / -0.0873 dB; VSWR 3 loses 1.2494 dB (standards sheet, section 7)."""
    one, none = np.array([0.1 + 0j]), np.array([0j])
    worst = [20 * np.log10(abs(substitution_path(source=one, horn=none, device=s * one))).item() for s in (-1.0, 1.0)]
    assert worst == pytest.approx([0.0864, -0.0873], abs=5e-5)
    lost = substitution_path(source=none, horn=np.array([0.5 + 0j]), device=none)
    assert -20 * np.log10(abs(lost)).item() == pytest.approx(1.2494, abs=5e-5)


def test_files_of_reflections_move_the_gain_by_what_they_say(broader_campaign):
    frequency = skrf.Frequency(23, 25, 21, unit="GHz")
    for name, value in (("horn.s1p", 0.2), ("source.s1p", 0.1)):
        s = np.full((21, 1, 1), value, complex)
        skrf.Network(frequency=frequency, s=s).write_touchstone(name, dir=str(broader_campaign))
    campaign, plan = services.make_plan(broader_campaign)
    record = record_of_rehearsal(campaign, plan, truth=SimulatedChamber(noise=False))
    plain = gain_transfer(record, campaign.chamber)
    edited(broader_campaign, "chamber.toml",
           ('method = "switch"', 'method = "switch"\nreflection = "horn.s1p"\nsource_reflection = "source.s1p"'))  # fmt: skip
    from colure.app.services.reference import reference_of

    changed = Campaign.load(broader_campaign)
    known = reference_of(changed, plan.frequency_hz)
    found = gain_transfer(record, changed.chamber, known)
    assert found.factor / plain.factor == pytest.approx(np.sqrt(1 - 0.2**2) / (1 - 0.02), rel=1e-9)
    (broader_campaign / "horn.s1p").write_text("! nothing\n", encoding="utf-8")
    with pytest.raises(InputError, match=r"horn\.s1p"):
        reference_of(changed, plan.frequency_hz)


def test_a_circular_probe_measures_what_a_linear_one_does(broader_campaign):
    """Both senses together, each impure by 30 dB and the ports unequal: the same pattern within -50 dB."""
    edited(broader_campaign, "chamber.toml", ("ports = 1", "ports = 2"))
    edited(broader_campaign, "goal.toml", ('"two-pass"', '"dual-port"'))
    found = {}
    for name in ("linear", "circular"):
        if name == "circular":
            edited(broader_campaign, "chamber.toml", ("ports = 2", 'ports = 2\npolarization = "circular"'))
        campaign, plan = services.make_plan(broader_campaign)
        truth = SimulatedChamber(noise=False, probe_cross_polar_db=-30.0, port2_db=0.7, port2_deg=25.0)
        record = record_of_rehearsal(campaign, plan, truth=truth)
        done = process(record, campaign.chamber, campaign.device, probe=probe_of(campaign, plan.frequency_hz))
        found[name] = done.expansion.coefficients
    rest = np.sum(np.abs(found["circular"] - found["linear"]) ** 2) / np.sum(np.abs(found["linear"]) ** 2)
    print(f"{10 * np.log10(rest):.1f} dB")
    assert 10 * np.log10(rest) < -50.0


def test_one_sense_alone_is_refused(broader_campaign):
    edited(broader_campaign, "chamber.toml", ("ports = 1", 'ports = 1\npolarization = "circular"'))
    with pytest.raises(InputError, match=r"probe\.ports = 1: must be 2"):
        load(Chamber, broader_campaign / "chamber.toml")


@pytest.mark.parametrize("scheme", ["two-pass", "one-pass"])
def test_a_circular_probe_is_not_read_by_one_port(broader_campaign, scheme):
    """One port reads one sense, rolled or not: a two-pass rehearsal of a patch read gains of 30 dBi."""
    circular = 'ports = 2\npolarization = "circular"'
    edited(broader_campaign, "chamber.toml", ("ports = 1", circular))
    edited(broader_campaign, "goal.toml", ('"two-pass"', f'"{scheme}"'))
    with pytest.raises(InputError, match=f"scheme = '{scheme}': must be 'dual-port' or 'auto' with probe"):
        Campaign.load(broader_campaign)


def test_a_level_reading_starts_the_alignment(broader_campaign):
    """A tilt that the small device hardly shows: with the level's reading it is known as well as the level knows it."""
    tilt = 0.31
    truth = SimulatedChamber(seed=5, roll_axis_tilt_deg=tilt, crosstalk_db=-200)
    edited(broader_campaign, "goal.toml", ("wanted_level_db = -20", "wanted_level_db = -50"), ("step_deg = 15\n", ""))
    found = {}
    for name, text in (("unread", "[alignment]"), ("read", (
        "[alignment.readings]\nroll_axis_tilt = {value = 0.32, expanded = 0.02}\n[alignment]"))):  # fmt: skip
        if name == "read":
            edited(broader_campaign, "chamber.toml", ("[alignment]", text))
        campaign, plan = services.make_plan(broader_campaign)
        noisy = type(plan)(**{**plan.__dict__, "settings": {**plan.settings, "if_bandwidth_hz": 3e5}})
        record = record_of_rehearsal(campaign, noisy, truth=truth)
        probe = probe_of(campaign, plan.frequency_hz)
        found[name] = process(record, campaign.chamber, campaign.device, probe=probe, grid_step_deg=30).alignment
    off = {name: np.rad2deg(one.values["roll_axis_tilt"]) - tilt for name, one in found.items()}
    wide = {name: np.rad2deg(one.expanded["roll_axis_tilt"]) for name, one in found.items()}
    print(off, wide)
    assert abs(off["read"]) <= wide["read"] <= 0.021


def test_sweeps_that_a_jump_leaves_undecided_are_flagged(broader_campaign):
    edited(broader_campaign, "chamber.toml", ("tie_interval_s = 180", "tie_interval_s = 60"))
    campaign, plan = services.make_plan(broader_campaign)
    clean = record_of_rehearsal(campaign, plan, truth=SimulatedChamber(noise=False))
    times = clean["time_s"].values
    moment = float(times[times.size // 2])
    slipped = np.where(times > moment, 0.9 * np.exp(0.3j), 1.0)[:, None, None]
    record = clean.assign(trace=(clean["trace"].dims, clean["trace"].values * slipped))
    found = track(record)
    flags = correct(record, found)["flags"].values
    (jump,) = found.jumps
    doubtful = (times > jump.after_s) & (times < jump.before_s)
    assert doubtful.any() and np.array_equal(flags & Flag.UNDECIDED > 0, doubtful)
    done = process(
        record, campaign.chamber, campaign.device, recipe=default_recipe(record, campaign.chamber, campaign.device)
    )
    assert f'"flagged_points": {int(doubtful.sum())}' in done.pattern.attrs["history_json"]


def test_transfer_intervals_hold_what_was_injected(broader_campaign, request):
    """200 draws of receiver noise: factor, imbalance and leak inside their stated intervals in at least 93 %."""
    edited(broader_campaign, "chamber.toml", ("ports = 1", "ports = 2"))
    edited(broader_campaign, "goal.toml", ('"two-pass"', '"dual-port"'))
    campaign, plan = services.make_plan(broader_campaign)
    clean = record_of_rehearsal(campaign, plan, truth=SimulatedChamber(noise=False, port2_db=1.0, port2_deg=10.0))
    true, rng, inside = gain_transfer(clean, campaign.chamber), np.random.default_rng(8), []
    size = np.abs(clean["trace"].values).max() * 1e-3
    for _ in range(200):
        shape = clean["trace"].shape
        noise = size * (rng.normal(size=shape) + 1j * rng.normal(size=shape))
        noisy = clean.assign(trace=(clean["trace"].dims, clean["trace"].values + noise))
        found = gain_transfer(noisy, campaign.chamber)
        off = np.log(found.factor / true.factor)
        inside += [np.abs(off.real) <= found.expanded, np.abs(off.imag) <= found.expanded]
        ratio = np.log(found.imbalance / true.imbalance)
        both = np.linalg.norm(found.expanded, axis=1)
        inside += [np.stack([np.abs(ratio.real) <= both, np.abs(ratio.imag) <= both], -1)]
        leak = found.response[:, 1, 0] - true.response[:, 1, 0]
        inside += [np.stack([np.abs(leak.real) <= both, np.abs(leak.imag) <= both], -1)]
    share = np.mean(np.stack(inside))
    print(f"{100 * share:.2f} % inside")
    assert 0.93 <= share <= 0.985


def test_coverage_factors_are_those_of_the_guide():
    """JCGM 100:2008, table G.2, 95.45 %: 2.28 for 10 degrees of freedom, 2.13 for 20, 4.53 for 2."""
    assert [round(coverage_factor(n), 2) for n in (6, 11, 2)] == [2.28, 2.13, 4.53]


def test_a_known_reflection_of_the_device_tells_its_mismatch_from_its_losses(broader_campaign):
    """Gain over accepted power is the realized gain over 1 - |reflection|^2 (IEEE Std 145): 0.4 costs 0.757 dB."""
    s = np.full((21, 1, 1), 0.4, complex)
    skrf.Network(frequency=skrf.Frequency(23, 25, 21, unit="GHz"), s=s).write_touchstone(
        "panel.s1p", dir=str(broader_campaign)
    )
    edited(broader_campaign, "device.toml", ("slant_deg", 'reflection = "panel.s1p"\nslant_deg'))
    campaign, plan = services.make_plan(broader_campaign)
    record = record_of_rehearsal(campaign, plan, truth=SimulatedChamber(noise=False))
    from colure.app.services.reference import reference_of

    known = reference_of(campaign, plan.frequency_hz)
    done = process(record, campaign.chamber, campaign.device, reference=known)
    figures = done.budget.figures
    (row, _) = figures.values(done.expansion)
    value = dict(zip(figures.names, row, strict=True))
    assert value["gain_accepted_dbi"] - value["gain_dbi"] == pytest.approx(0.7572, abs=1e-4)
    assert value["radiation_efficiency_db"] == pytest.approx(value["gain_accepted_dbi"] - value["directivity_dbi"])
    assert "gain_accepted_dbi" in done.budget.only(0).figures.names


def test_reflections_of_unknown_phase_are_a_u_shaped_interval(broader_campaign):
    """0.1 and 0.1 move the level by at most 0.0864 dB (standards sheet, section 7); over sqrt 2, times 2 (JCGM 100:2008, 4.4.5)."""
    edited(broader_campaign, "chamber.toml", ('method = "switch"', 'method = "switch"\nmatch_db = -20'),
           ("[analyzer]", "[analyzer]\nsource_match_db = -20"))  # fmt: skip
    campaign = Campaign.load(broader_campaign)
    alone = mismatch_db(campaign.chamber, campaign.device, None)
    assert alone == pytest.approx(2.0 * 0.0864 / np.sqrt(2.0), abs=1e-4)
    both = mismatch_db(campaign.chamber, campaign.device.model_copy(update={"match_db": -20.0}), None)
    assert both == pytest.approx(2.0 * 0.0864, abs=1e-4)
