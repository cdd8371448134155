"""Devices that are not what was declared: the data are clean, and only the declaration shows it."""

from __future__ import annotations

import json

import numpy as np
import pytest
from click.testing import CliRunner

from colure.analysis.findings.declared import against_declaration
from colure.analysis.findings.sanity import marked, most_directivity_dbi, sanity, worst
from colure.analysis.findings.self_check import self_check
from colure.analysis.pipeline.recipe import process
from colure.analysis.uncertainty.budget import figures_with_budget
from colure.app import services
from colure.app.cli import main
from colure.app.services.reference import probe_of
from colure.app.services.rehearsal import record_of_rehearsal
from colure.app.storage.folders import run_folder
from colure.errors import InputError
from colure.model.device import Device
from colure.model.figure import NOT_TO_BE_USED
from tests.coverage.scenarios import HORN_38_GHZ, ONE, SCENARIOS, Scenario, band, sized


def processed(folder, scenario, seed=1):
    campaign, plan = services.make_plan(scenario.write(folder))
    record = record_of_rehearsal(campaign, plan, seed=seed)
    done = process(record, campaign.chamber, campaign.device, probe=probe_of(campaign, plan.frequency_hz))
    return done, figures_with_budget(done.budget)


@pytest.mark.parametrize(("radius_wavelengths", "expected_dbi"), [(0.05, 4.77), (1.0, 17.15)])
def test_the_most_that_a_sphere_gives(radius_wavelengths, expected_dbi):
    """N^2 + 2 N: 3 for N = 1, the Huygens source (4.77 dBi); N = k r0 = 2 pi gives 52.04 (Harrington 1961, from memory)."""
    wave_mm = 299.792458 / 10.0
    side = 2.0 * radius_wavelengths * wave_mm / np.sqrt(3.0)
    device = Device(name="cube", size_mm=(side, side, side), expected_gain_dbi=0.0)
    assert most_directivity_dbi(device, 10e9) == pytest.approx(expected_dbi, abs=0.02)


@pytest.mark.parametrize("elements", [8])
def test_a_panel_declared_as_8_by_8_mm_is_not_to_be_used(tmp_path, elements):
    """7 dBi declared, 16 to 21 dBi measured: beyond the sphere and beyond the declaration."""
    panel = {"device": {"kind": "panel", "rows": elements, "columns": elements, "pitch_mm": 6.213}}
    done, figures = processed(tmp_path / "c", Scenario(device=sized(8, 8, 2, 7.0), goal=ONE, twin=panel))
    found = sanity(done, figures)
    bad = {one.topic for one in found if one.severity == NOT_TO_BE_USED}
    assert {"size", "level"} <= bad
    told = marked(figures, found)
    assert worst(told) == NOT_TO_BE_USED
    assert all(one.use == NOT_TO_BE_USED and one.cautions for one in told if not one.reason)


def test_a_horn_that_reads_far_less_than_the_plan_promised_is_not_to_be_used(tmp_path):
    scenario = Scenario(device=sized(20, 20, 30, 18.0), goal=band(38.0), chamber={"reference": HORN_38_GHZ},
                        twin={"device": {"kind": "dipole", "axis": "x"}})  # fmt: skip
    done, figures = processed(tmp_path / "c", scenario)
    bad = {one.topic: one.text for one in sanity(done, figures) if one.severity == NOT_TO_BE_USED}
    assert {"level", "gain"} <= set(bad) and "the plan promised" in bad["level"]


def test_a_horn_declared_as_a_patch_is_not_to_be_used(tmp_path):
    """20 x 16 mm at 38 GHz have some 17 dBi; nothing within 4 x 4 x 1 mm has more than 10 dBi (N^2 + 2 N, N = k r0 = 2.3)."""
    horn = {"kind": "horn", "aperture_a_mm": 20.0, "aperture_b_mm": 16.0, "slant_e_mm": 35.0, "slant_h_mm": 40.0}
    scenario = Scenario(
        device=sized(4, 4, 1, 7.0), goal=band(38.0), chamber={"reference": HORN_38_GHZ}, twin={"device": horn}
    )
    done, figures = processed(tmp_path / "c", scenario)
    found = sanity(done, figures)
    assert "size" in {one.topic for one in found if one.severity == NOT_TO_BE_USED}
    assert worst(marked(figures, found)) == NOT_TO_BE_USED


@pytest.mark.parametrize("power_dbm", [pytest.param(-55, marks=pytest.mark.nightly), -58])
def test_noise_near_the_peak_is_said(tmp_path, power_dbm):
    scenario = Scenario(
        device=SCENARIOS["4 x 4 panel"].device, goal=ONE, chamber={"analyzer": {"power_dbm": power_dbm}}
    )
    done, figures = processed(tmp_path / "c", scenario)
    found = {one.topic: one.severity for one in sanity(done, figures)}
    assert found["signal to noise"] == NOT_TO_BE_USED


@pytest.mark.parametrize("name", ["dipole along x", "circular, 1 dB"])
def test_what_is_as_declared_is_not_spoken_against(tmp_path, name):
    done, figures = processed(tmp_path / "c", SCENARIOS[name], seed=2)
    assert [one.text for one in sanity(done, figures) if one.severity == NOT_TO_BE_USED] == []
    assert [one.text for one in against_declaration(done) if one.severity != "information"] == []


def test_evaluate_says_it_and_leaves_with_one(tmp_path):
    """Through the command line: exit code 1, the reason, and figures.json holds it."""
    folder = Scenario(device=sized(8, 8, 2, 7.0), goal=ONE,
                      twin={"device": {"kind": "panel", "rows": 4, "columns": 4, "pitch_mm": 6.213}}).write(tmp_path / "c")  # fmt: skip
    from colure.model.files import save_dataset

    campaign, plan = services.make_plan(folder)
    run = run_folder(folder, "first")
    run.path.mkdir(parents=True)
    save_dataset(record_of_rehearsal(campaign, plan), run.record)
    found = CliRunner().invoke(main, ["evaluate", str(folder), "--run", "first"])
    assert found.exit_code == 1, found.output
    assert "NOT TO BE USED" in found.output and "size_mm" in found.output
    kept = json.loads(run.figures.read_text("utf-8"))
    assert {one["use"] for one in kept if not one["reason"]} == {NOT_TO_BE_USED}
    assert any("not to be used: " in text for text in kept[0]["cautions"])


@pytest.mark.parametrize(("beam_deg", "weak"), [([90.0, 0.0], False), ([0.0, 0.0], True)])
def test_ties_look_along_the_declared_beam_and_weak_ones_are_told(tmp_path, beam_deg, weak):
    """A dipole along z has a null at the boresight: ties there are mostly noise, correct nothing, and the findings say so."""
    tables = {**SCENARIOS["dipole along z"].device, "beam_deg": beam_deg}
    scenario = Scenario(device=tables, goal=ONE, twin=SCENARIOS["dipole along z"].twin)
    campaign, plan = services.make_plan(scenario.write(tmp_path / "c"))
    record = record_of_rehearsal(campaign, plan)
    done = process(record, campaign.chamber, campaign.device, probe=probe_of(campaign, plan.frequency_hz))
    told = {one.topic: one for one in self_check(done, campaign.chamber, campaign.device.slant_deg)}
    print(f"ties {done.tie_below_peak_db:.1f} dB below the strongest sweep, {100 * done.drift.between:.2f} % left")
    if weak:
        assert done.tie_below_peak_db > 30.0 and "beam_deg" in told["ties"].text and told["ties"].severity == "look"
        assert np.ptp(np.abs(done.drift.log_gain(record["time_s"].values))) == 0.0
    else:
        assert abs(done.tie_below_peak_db) < 0.5 and "ties" not in told
        assert done.drift.between < 0.003


def test_a_beam_that_no_axis_reaches_is_refused(tmp_path):
    scenario = Scenario(device={**SCENARIOS["4 x 4 panel"].device, "beam_deg": [170.0, 0.0]}, goal={**ONE, "region_deg": 40.0},
                        chamber={"positioner": {"azimuth": {"min_deg": -100, "max_deg": 100}}})  # fmt: skip
    with pytest.raises(InputError, match=r"beam_deg = \[170, 0\]: ties cannot look there"):
        services.make_plan(scenario.write(tmp_path / "c"))
