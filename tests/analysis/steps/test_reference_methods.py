"""A horn beside the axes' intersection, a run without a reference, a stored calibration: each on devices that are not the demo's."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from scipy.integrate import quad

from colure.analysis.pipeline.recipe import process
from colure.analysis.uncertainty.budget import figures_with_budget
from colure.app.services.rehearsal import carry_out, record_of_rehearsal, rehearse
from colure.errors import InputError
from colure.model.campaign import Campaign
from colure.model.chamber import SimulatedChamber
from colure.planning.preflight import make_plan
from tests.coverage.scenarios import HORN_2_4_GHZ, HORN_38_GHZ, Scenario, band, four_by_four, sized

GRID = {"kind": "panel", "rows": 4, "columns": 4, "pitch_mm": 6.213}
#: Both ports at once, as a dual probe reads them.
DUAL = {"probe": {"ports": 2, "imbalance_db": 0.0}}
#: An ideal chamber: only the reference may be wrong.
IDEAL = {"noise": False, "probe_cross_polar_db": -200, "crosstalk_db": -200}


def campaign_of(folder, **more) -> Campaign:
    chamber = {"echo_level_db": -80, "cable_flex_deg": 0.0, **more.pop("chamber", {})}
    return Campaign.load(
        Scenario(**{"device": four_by_four(), "goal": band(24.1), "chamber": chamber, **more}).write(folder)
    )


def gain_of(campaign: Campaign, truth: SimulatedChamber) -> float:
    from colure.analysis.pipeline.recipe import process
    from colure.app.services.reference import probe_of, reference_of

    _, plan = make_plan(campaign)
    record = record_of_rehearsal(campaign, plan, truth=truth)
    f = record["frequency"].values
    done = process(
        record, campaign.chamber, campaign.device, probe=probe_of(campaign, f), reference=reference_of(campaign, f)
    )
    return float(done.budget.figures.values(done.expansion)[0, done.budget.figures.names.index("gain_dbi")])


def e_plane_db(angle: float, *, frequency_hz: float, b: float, slant: float, distance: float) -> float:
    """Fall of a horn's field in its E plane: uniform aperture, quadratic phase of flare and distance (C. A. Balanis, Antenna
    Theory, chapter 13, from memory), Huygens factor (1 + cos)/2; integrated numerically."""
    k = 2.0 * np.pi * frequency_hz / 299_792_458.0
    bend = 0.5 * k * (1.0 / slant + 1.0 / distance)

    def seen(u: float) -> complex:
        parts = [quad(lambda x, f=f: f(k * x * u - bend * x * x), -b / 2.0, b / 2.0)[0] for f in (np.cos, np.sin)]
        return complex(*parts)

    return 20.0 * np.log10(abs(seen(np.sin(angle)) / seen(0.0)) * 0.5 * (1.0 + np.cos(angle)))


def test_a_horn_100_mm_beside_that_nobody_accounts_for_costs_what_its_pattern_says(tmp_path):
    campaign = campaign_of(tmp_path, twin={**IDEAL, "device": GRID})
    at, horn = 0.1, campaign.chamber.reference
    right = gain_of(campaign, campaign.simulated())
    beside = gain_of(campaign, campaign.simulated().model_copy(update={"reference_offset_mm": (1e3 * at, 0.0, 0.0)}))
    distance = campaign.chamber.range_length_m
    angle = np.arctan(at / distance)
    lost = e_plane_db(
        angle, frequency_hz=24.1e9, b=horn.sides_m[1], slant=horn.sides_m[2], distance=np.hypot(at, distance)
    )
    lost += 20.0 * np.log10(np.cos(angle))  # 1/r
    # The probe's own fall is small: 7 dBi at this angle, exp(-c a^2) with gain 8 c (common practice, no source).
    lost -= 20.0 / np.log(10.0) * 10.0**0.7 / 8.0 * angle**2
    assert beside - right == pytest.approx(-lost, abs=0.12)
    assert 0.6 < beside - right < 1.6


@pytest.mark.parametrize("place", [(100.0, 0.0, 0.0), (0.0, 120.0, 20.0), (-140.0, 60.0, -30.0)])
@pytest.mark.parametrize(("chamber", "scheme"), [({}, "two-pass"), (DUAL, "dual-port")], ids=["one port", "two ports"])
def test_a_stated_place_is_corrected(tmp_path, place, chamber, scheme):
    goal = band(24.1, scheme=scheme)
    said = {**chamber, "reference": {"offset_mm": list(place), "offset_uncertainty_mm": 2.0}}
    right = campaign_of(tmp_path / "right", goal=goal, chamber=chamber, twin={**IDEAL, "device": GRID})
    moved = campaign_of(tmp_path / "moved", goal=goal, chamber=said, twin={**IDEAL, "device": GRID})
    away = gain_of(moved, moved.simulated()) - gain_of(right, right.simulated())
    assert abs(away) < 0.05


@pytest.mark.parametrize("metres", [0.6, 6.0])
def test_what_the_probe_hears_less_of_a_near_horn_has_a_row(tmp_path, metres):
    """Of a mouth of 250 mm at 0.6 m a probe of 7 dBi hears less of the rim than a point does: the device's gain rises by as much as the row says."""
    campaign = campaign_of(
        tmp_path, device=sized(6.0, 1.0, 1.0, 2.1), goal=band(5.0), twin={"device": {"kind": "dipole", "axis": "x"}},
        chamber={"reference": HORN_2_4_GHZ, "range_length_m": metres, "largest_device_m": 0.5, "probe": {"pattern": None}},
    )  # fmt: skip
    ideal = campaign.simulated().model_copy(update=IDEAL)
    point, beam = (ideal.model_copy(update={"probe_ring_mm": ring}) for ring in (0.5, 12.5))
    rises = gain_of(campaign, beam) - gain_of(campaign, point)
    _, plan = make_plan(campaign)
    record = record_of_rehearsal(campaign, plan, truth=beam)
    budget = process(record, campaign.chamber, campaign.device, probe=None).budget
    gain = next(one for one in figures_with_budget(budget) if one.name == "gain_dbi")
    rows = {row.term: row for row in gain.budget}
    if metres > 1.0:
        assert "near horn" not in rows and abs(rises) < 2e-3
    else:
        assert rows["near horn"].size == pytest.approx(rises, rel=0.2) and rises > 0.02


def test_intervals_hold_the_truth_with_a_horn_beside_the_device(tmp_path, request):
    count = 40 if request.config.getoption("--nightly") else 2
    # Drawn chambers, the horn's true place among them.
    reference = {
        **HORN_38_GHZ,
        "offset_mm": [120.0, 0.0, 0.0],
        "offset_uncertainty_mm": 4.0,
        "gain_uncertainty_db": 0.05,
    }
    campaign = campaign_of(
        tmp_path, device=sized(21.0, 27.0, 5.0, 18.0), goal=band(38.0), chamber={"reference": reference},
        twin={"device": {"kind": "horn", "aperture_a_mm": 27.0, "aperture_b_mm": 21.0, "slant_e_mm": 45.0, "slant_h_mm": 45.0}},
    )  # fmt: skip
    _, plan = make_plan(campaign)
    found = [rehearse(campaign, plan, seed=seed) for seed in range(302, 302 + count)]
    gain = [next(f for f in one.findings if f.figure.name == "gain_dbi") for one in found]
    assert sum(one.inside for one in gain) >= 0.9 * count - 0.5
    rows = {row.term: row.expanded for row in gain[0].figure.budget}
    assert 0.1 < rows["reference place"] < 1.0


def test_without_a_reference_everything_but_gain_is_given(tmp_path):
    reference = {"method": "none", **dict.fromkeys(("aperture_a_mm", "aperture_b_mm", "slant_e_mm", "slant_h_mm"))}
    campaign = campaign_of(
        tmp_path,
        device=sized(6.0, 1.0, 1.0, 2.1),
        chamber={"reference": reference},
        twin={"device": {"kind": "dipole", "axis": "x"}},
    )
    _, plan = make_plan(campaign)
    done = carry_out(campaign, plan, seed=5)
    from colure.analysis.uncertainty.budget import figures_with_budget

    figures = {one.name: one for one in figures_with_budget(done.processed.budget)}
    refused = {name for name, one in figures.items() if "needs a reference" in one.reason}
    assert {"gain_dbi", "efficiency_db"} <= refused
    assert not {"directivity_dbi", "beamwidth_e_deg"} & refused
    # A half-wave dipole: 2.15 dBi, 78.08 deg (C. A. Balanis, Antenna Theory, section 4.6, from memory).
    assert figures["directivity_dbi"].value == pytest.approx(2.15, abs=0.1)
    assert done.processed.pattern.attrs["quantity"] == "directivity"
    top = done.processed.pattern
    peak = float((abs(top["e_theta"]) ** 2 + abs(top["e_phi"]) ** 2).max())
    assert 10.0 * np.log10(peak) == pytest.approx(figures["directivity_dbi"].value, abs=0.02)
    assert not any(row.term in ("reference gain", "reconnection") for row in figures["directivity_dbi"].budget)


@pytest.mark.parametrize("port2", [(-1.5, 40.0), (2.0, -70.0)])
def test_without_a_reference_two_ports_are_held_against_each_other_on_the_device(tmp_path, port2):
    # What port 2 reads more would otherwise be taken for an ellipse.
    twin = {**IDEAL, "port2_db": port2[0], "port2_deg": port2[1], "device": {**GRID, "polarization": "linear"}}
    device = four_by_four(slant_deg=45.0)
    twin["device"] = {**GRID, "slant_deg": 45.0}
    goal = band(24.1, scheme="dual-port")
    campaign = campaign_of(
        tmp_path, device=device, goal=goal, chamber={**DUAL, "reference": {"method": "none"}}, twin=twin
    )
    _, plan = make_plan(campaign)
    record = record_of_rehearsal(campaign, plan, truth=campaign.simulated())
    from colure.analysis.steps.gain import gain_transfer

    found = gain_transfer(record, campaign.chamber)
    true = 10.0 ** (port2[0] / 20.0) * np.exp(1j * np.deg2rad(port2[1]))
    assert found.imbalance[0] == pytest.approx(true, rel=2e-3)


def test_two_ports_that_nothing_compares_are_refused(tmp_path):
    chamber = {"reference": {"method": "none"}, "probe": {"ports": 2, "roll": None}}
    campaign = campaign_of(tmp_path, goal=band(24.1, scheme="dual-port"), chamber=chamber)
    with pytest.raises(InputError, match="imbalance_db = 0: must be above 0 dB"):
        make_plan(campaign)


@pytest.mark.parametrize(
    ("table", "message"),
    [
        ({"method": "swap"}, "needs reconnect_db above 0"),
        ({"method": "stored"}, "needs calibration"),
        ({"method": "stored", "calibration": "range.json"}, "needs drift_db_day above 0"),
        ({"offset_mm": [100.0, 0.0, 0.0]}, "needs offset_uncertainty_mm above 0"),
        ({"aperture_a_mm": None}, "reference.aperture_a_mm: missing; needs a number from 1 to 10000 mm"),
    ],
)
def test_what_a_method_needs_is_named(tmp_path, table, message):
    with pytest.raises(InputError, match=message):
        campaign_of(tmp_path, chamber={"reference": table})


def test_a_record_without_horn_sweeps_gives_no_gain_in_silence(tmp_path):
    campaign = campaign_of(tmp_path, chamber={"reference": {"method": "none"}})
    _, plan = make_plan(campaign)
    record = record_of_rehearsal(campaign, plan, truth=campaign.simulated())
    reference = campaign.chamber.reference.model_copy(update={"method": "switch"})
    other = replace(campaign, chamber=campaign.chamber.model_copy(update={"reference": reference}))
    from colure.analysis.pipeline.recipe import process

    with pytest.raises(ValueError, match="measured without a reference horn"):
        process(record, other.chamber, other.device)


def test_a_stored_calibration_ages(tmp_path):
    """A run calibrates the range; ten days later the path reads 0.2 dB more: declared, the interval holds it."""
    import json

    from colure.app import services
    from colure.app.services import range_calibration, reference
    from colure.app.storage.folders import run_folder
    from colure.model.files import save_dataset

    first = campaign_of(tmp_path / "first", twin={"device": GRID})
    _, plan = make_plan(first)
    before = gain_of(first, first.simulated())
    run = run_folder(first.folder, "morning")
    run.path.mkdir(parents=True)
    record = record_of_rehearsal(first, plan, truth=first.simulated())
    day = 1.7e9
    save_dataset(record.assign(wall_time=record["wall_time"] + day), run.record)
    range_calibration.calibrate(first, run, first.folder / "range.json")
    with pytest.raises(InputError, match="already"):
        range_calibration.calibrate(first, run, first.folder / "range.json")

    table = {"method": "stored", "calibration": "range.json", "drift_db_day": 0.04, "valid_days": 30}
    later = campaign_of(tmp_path / "later", chamber={"reference": table}, twin={"device": GRID})
    (later.folder / "range.json").write_bytes((first.folder / "range.json").read_bytes())
    _, plan = make_plan(later)
    truth = later.simulated().model_copy(update={"since_calibration_db": 0.2, "seed": 9})
    found = record_of_rehearsal(later, plan, truth=truth)
    assert not np.any(np.abs(found["trace"].values[found["role"].values == 2]) == 0.0)

    def measured(days: float):
        from colure.analysis.pipeline.recipe import process
        from colure.analysis.uncertainty.budget import figures_with_budget

        aged = found.assign(wall_time=found["wall_time"] + day + 86400.0 * days)
        known = reference.reference_of(later, found["frequency"].values)
        probe = reference.probe_of(later, found["frequency"].values)
        done = process(aged, later.chamber, later.device, probe=probe, reference=known)
        return next(one for one in figures_with_budget(done.budget) if one.name == "gain_dbi")

    old = measured(10.0)
    assert old.value - before == pytest.approx(0.2, abs=0.02)
    rows = {row.term: row.expanded for row in old.budget}
    assert rows["drift since calibration"] == pytest.approx(0.4, rel=0.1)
    assert old.contains(before)
    with pytest.raises(ValueError, match=r"31.0 days old when the run began: must be at most 30 days"):
        measured(31.0)
    with pytest.raises(ValueError, match="after the run began"):
        measured(-1.0)
    with pytest.raises(InputError, match=r"range.json: 40.0 days old: must be at most 30 days"):
        from colure.app.services.stored_calibration import require_valid

        require_valid(later, day + 40.0 * 86400.0)
    content = json.loads((later.folder / "range.json").read_text())
    (later.folder / "range.json").write_text(json.dumps({**content, "frequency_hz": [23e9]}))
    with pytest.raises(InputError, match=r"holds no 24.100000 GHz"):
        reference.reference_of(later, found["frequency"].values)
    (later.folder / "range.json").write_text("{}")
    with pytest.raises(InputError, match="cannot be read as a calibration"):
        reference.reference_of(later, found["frequency"].values)
    assert services  # the front of the room loads
