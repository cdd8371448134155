"""A power-only run is drawn, exported, judged and reported as a table of power is; each of three beams shows its own."""

from __future__ import annotations

import json

import numpy as np
import pytest
from click.testing import CliRunner

from colure.analysis.pipeline import power_only
from colure.app import services
from colure.app.cli import main
from colure.app.services.power_files import open_power
from colure.app.services.power_runs import PowerRun
from colure.app.services.rehearsal import record_of_rehearsal
from colure.app.storage.folders import run_folder
from colure.model.chamber import SimulatedChamber
from colure.model.files import save_dataset
from tests.app.services.test_states_coverage import STATES
from tests.endtoend.test_near_to_far import edited
from tests.printed import pages_of

STATE_NAMES = ("left", "broadside", "right")
LIMITS = """name = "total power"
decision = "simple"
limits = [{ figure = "gain_dbi", at_least = 5.0 }]
[[masks]]
name = "all round"
plane = "E"
relative = true
component = "total"
points = [[0, 1], [180, 1]]
"""


def told(*words, code=0):
    result = CliRunner().invoke(main, [str(word) for word in words])
    assert result.exit_code == code, result.output
    return result.stdout if code == 0 else result.stderr


def levels_of(record):
    """Return a record as a receiver without phase would have read it."""
    levels = record["trace"].dims, np.abs(record["trace"].values).astype(complex)
    return record.assign(trace=levels).assign_attrs(receiver="power")


@pytest.fixture
def beams(broader_campaign):
    """A small panel with three beams 3 m away, every 7.5 deg: once with phase (`vector`), once without (`power`)."""
    edited(broader_campaign, "chamber.toml", ("range_length_m = 1.2 ", "range_length_m = 3.0 "))
    narrower = ("points = 2", "points = 1"), ("stop_ghz = 24.1", "stop_ghz = 24.0"), ("step_deg = 15", "step_deg = 7.5")
    edited(broader_campaign, "goal.toml", *narrower)
    device = broader_campaign / "device.toml"
    device.write_text(device.read_text("utf-8").split("[elements]")[0] + STATES, "utf-8")
    campaign, plan = services.make_plan(broader_campaign)
    record = record_of_rehearsal(campaign, plan, truth=SimulatedChamber(state_steer_deg=(-40.0, 0.0, 40.0)))
    for name, content in (("vector", record), ("power", levels_of(record))):
        run = run_folder(broader_campaign, name)
        run.path.mkdir(parents=True)
        save_dataset(content, run.record)
    return broader_campaign


@pytest.mark.nightly
def test_each_beam_without_phase_is_drawn_exported_judged_and_reported(beams):
    of_run = beams, "--run", "power", "--state", "right"
    rows = {row["name"]: row for row in json.loads(told("evaluate", *of_run, "--json"))}
    assert rows["beam_azimuth_deg"]["value"] > 20.0
    drawn = beams / "cuts.png"
    told("plot", beams, drawn, *of_run[1:])
    assert drawn.read_bytes().startswith(b"\x89PNG")
    assert "needs phase" in told("export", beams, "netcdf", beams / "far.nc", *of_run[1:], code=2)
    table = beams / "right.csv"
    told("export", beams, "csv", table, *of_run[1:])
    again = {one.name: one for one in open_power(table).evaluate()}
    for name in ("gain_dbi", "beam_azimuth_deg", "efficiency_db"):
        assert again[name].value == pytest.approx(rows[name]["value"], abs=1e-6)
    limits = beams / "limits.toml"
    limits.write_text(LIMITS, "utf-8")
    assert json.loads(told("verdict", beams, limits, *of_run[1:], "--json"))["outcome"] == "pass"
    (beams / "report.toml").write_text('language = "de"\n', "utf-8")
    told("report", *of_run, "--specification", limits)
    page = (beams / "runs" / "power" / "report-right.html").read_text("utf-8")
    for words in (
        "Leistung ohne Phase, ohne Umrechnung",
        "Anforderungen",
        "nicht angegeben",
        "Leistung ohne Phase zeigt keine Polarisation",
    ):
        assert words in page, words
    # Nothing is left in English: page one would name it.
    assert "auf Englisch" not in page and "range length" not in page
    (beams / "report.toml").write_text('language = "de"\nform = "short"\n', "utf-8")
    told("report", *of_run, "--specification", limits)
    short = pages_of(beams / "runs" / "power" / "report-right.pdf")
    words = " ".join(short)
    assert len(short) == 2 and "Anforderungen" in words and "Definitionen" not in words
    # Power has twice the bandwidth of the field: 7.5 deg are too coarse for the lower levels of this panel.
    assert "below what the samples tell" in told("coverage", beams, "--run", "power", code=2)
    (beams / "evaluation.toml").write_text("coverage_percent = [15]\n", "utf-8")
    assert "below what the samples tell" in told("coverage", beams, "--run", "power", code=2)
    rows = {row["name"]: row for row in json.loads(told("evaluate", beams, "--run", "power", "--json"))}
    assert rows["coverage_15_dbi"]["value"] is None and "smaller step" in rows["coverage_15_dbi"]["reason"]


@pytest.mark.nightly
def test_coverage_works_out_the_one_frequency_that_it_tells(broader_campaign, monkeypatch):
    """Two frequencies were measured; what the middle one says alone is what it says among all."""
    edited(broader_campaign, "chamber.toml", ("range_length_m = 1.2 ", "range_length_m = 3.0 "))
    device = broader_campaign / "device.toml"
    device.write_text(device.read_text("utf-8").split("[elements]")[0] + STATES, "utf-8")
    campaign, plan = services.make_plan(broader_campaign)
    run = run_folder(broader_campaign, "power")
    run.path.mkdir(parents=True)
    truth = SimulatedChamber(state_steer_deg=(-40.0, 0.0, 40.0))
    save_dataset(levels_of(record_of_rehearsal(campaign, plan, truth=truth)), run.record)
    at, own = [], power_only.native_values
    monkeypatch.setattr(
        power_only, "native_values", lambda sphere, f, s: at.append(sphere.frequency_hz[f]) or own(sphere, f, s)
    )
    (broader_campaign / "evaluation.toml").write_text("coverage_percent = [97]\n", "utf-8")
    found = json.loads(told("coverage", broader_campaign, "--run", "power", "--json"))
    assert len(plan.frequency_hz) == 2 and set(at) == {found["frequency_hz"]}
    for name in STATE_NAMES:
        measured = PowerRun(campaign, run.state(name))
        every = [one for one in measured.evaluate() if one.frequency_hz == plan.frequency_hz[1]]
        alone = measured.evaluate(index=1)
        assert [(a.name, a.value, a.lower, a.upper) for a in alone] == [
            (b.name, b.value, b.lower, b.upper) for b in every
        ]


@pytest.mark.nightly
def test_coverage_without_phase_is_that_with_phase_within_its_interval(beams, nightly):
    (beams / "evaluation.toml").write_text("coverage_percent = [95, 97]\n", "utf-8")
    with_phase, without = (json.loads(told("coverage", beams, "--run", name, "--json")) for name in ("vector", "power"))
    kept = [with_phase["percent"].index(p) for p in without["percent"]]
    for name, row in without["states"].items():
        assert row == pytest.approx([with_phase["states"][name][i] for i in kept], abs=without["expanded_db"])


def test_levels_lie_within_what_they_state(beams, nightly):
    """Against the same sweeps without noise, counted: the ties of a beam turned away stand 34 dB below its peak, and are noisy."""
    campaign, plan = services.make_plan(beams)
    inside = []
    for seed in range(1, 9):
        tables = []
        for noise in (True, False):
            truth = SimulatedChamber(state_steer_deg=(-40.0, 0.0, 40.0), noise=noise, seed=seed)
            run = run_folder(beams, f"{seed}-{noise}")
            run.path.mkdir(parents=True)
            save_dataset(levels_of(record_of_rehearsal(campaign, plan, truth=truth)), run.record)
            tables.append(PowerRun(campaign, run.state("left")).table)
        measured, true = tables
        apart = 10.0 * np.log10(measured.power / true.power)
        inside.append(np.mean(np.abs(apart) <= np.hypot(2.0 * measured.scatter_db, measured.common_db)))
    print(np.round(inside, 3))
    assert np.mean(inside) >= 0.9
