"""Whatever device can be planned for can be rehearsed: none of these is the demo's panel."""

from __future__ import annotations

import json

import numpy as np
import pytest
from click.testing import CliRunner

from colure.app import services
from colure.app.cli import main
from colure.app.scale.rehearsals import counts_by_figure, draws_of
from colure.app.services.rehearsal import FigureAgainstTruth, rehearse
from colure.model.figure import Figure
from tests.coverage.scenarios import AZIMUTH_OVER_ELEVATION, HORN_38_GHZ, SCENARIOS, Scenario, band, sized

ONE = band(24.1, wanted_level_db=-30)
HORN_5_GHZ = {"aperture_a_mm": 240.0, "aperture_b_mm": 190.0, "slant_e_mm": 430.0, "slant_h_mm": 480.0}
STATES = {"names": ["left", "ahead", "right"], "program": ["true"]}


def row(rows: int, columns: int, **more) -> dict:
    grid = {"rows": rows, "columns": columns, "pitch_mm": 6.213}
    return {**sized(6.2 * columns, 6.2 * rows, 2.0, 6.0 + 10 * np.log10(rows * columns)), "elements": grid, **more}


def held(**table) -> dict:
    return {"device": table}


MIXTURES = {
    "one element": Scenario(device=sized(6.2, 6.2, 2.0, 5.0), goal=ONE),
    "one row": Scenario(device=row(1, 3), goal=ONE),
    "one column, left-handed": Scenario(
        device=row(2, 1, polarization="left"), goal=ONE, twin=held(kind="panel", rows=2, columns=1)
    ),
    "dipole along z": SCENARIOS["dipole along z"],
    "dipole along z, part of the sphere": Scenario(
        device=sized(1.0, 1.0, 6.0, 2.1), goal={**ONE, "region_deg": 60}, twin=held(kind="dipole", axis="z")
    ),
    "turnstile on azimuth over elevation": Scenario(
        device=sized(6.0, 6.0, 1.0, 4.8, polarization="right"),
        goal=ONE,
        chamber={"positioner": AZIMUTH_OVER_ELEVATION},
        twin=held(kind="crossed-dipoles"),
    ),
    "elliptical": Scenario(
        device=sized(8.0, 8.0, 2.0, 7.0, polarization="elliptical", axial_ratio_db=6.0, slant_deg=30.0), goal=ONE
    ),
    "helix on the fly": Scenario(
        device=sized(4.2, 4.2, 6.0, 7.0, polarization="left"),
        goal={**band(24.0, 24.2, 2, wanted_level_db=-30), "style": "fly"},
        twin=held(kind="helix", turns=2),
    ),
    "beam behind": Scenario(
        device=row(1, 2), goal=ONE, twin=held(kind="panel", rows=1, columns=2, magnetic_ratio=0.05, steer_deg=[80.0,
        0.0])
    ),
    "null ahead": Scenario(
        device=row(1, 2), goal=ONE, twin=held(kind="panel", rows=1, columns=2, misfed=[[0, 0]], misfeed_deg=180.0)
    ),
    "offset 150 mm": Scenario(
        device=sized(6.0, 6.0, 3.0, 5.0, offset_mm=[0.0, 0.0, 150.0]),
        goal=band(5.0, wanted_level_db=-30),
        chamber={"reference": HORN_5_GHZ},
    ),
    "one pass": Scenario(
        device=row(2, 2), goal={**ONE, "scheme": "one-pass", "region_deg": 60}, chamber={"range_length_m": 2.5}
    ),
    "states of one element": Scenario(
        device=sized(6.2, 6.2, 2.0, 5.0, states=STATES), goal=ONE, twin={"state_steer_deg": [-30.0, 0.0, 30.0]}
    ),
}  # fmt: skip
LONG = {
    "horn at 38 GHz with flaws": Scenario(
        device=sized(20.0, 16.0, 1.0, 16.0),
        goal=band(38.0),
        chamber={"reference": HORN_38_GHZ},
        twin=held(
            kind="horn",
            aperture_a_mm=20,
            aperture_b_mm=16,
            slant_e_mm=40,
            slant_h_mm=44,
            lump_db=-25,
            bent_wall_mm=0.5,
            asymmetry=0.1,
            cross_polar_db=-30,
        ),
    ),
    "no transform": SCENARIOS["no transform"],
    "azimuth over elevation": SCENARIOS["azimuth over elevation"],
    "offset aside": Scenario(device=sized(12.2, 12.2, 3.0, 8.0, offset_mm=[40.0, 0.0, 0.0]), goal=band(10.0)),
    "patch at 2.45 GHz": SCENARIOS["2.4 GHz patch, 1 m"],
}


@pytest.mark.parametrize("name", [*MIXTURES, *LONG])
def test_any_device_is_rehearsed(tmp_path, name, request):
    """No exception, and powers near the truth."""
    if name in LONG and not request.config.getoption("--nightly"):
        pytest.skip("larger ones: for the nightly run")
    folder = {**MIXTURES, **LONG}[name].write(tmp_path / "campaign")
    campaign, plan = services.make_plan(folder)
    found = rehearse(campaign, plan, seed=1)
    assert found.findings and all(np.isfinite(found.rehearsed.trace.view(float)).ravel())
    errors = {one.figure.name: one.error for one in found.findings if one.counts}
    print(name, f"{found.share_inside:.2f} inside", {k: round(v, 3) for k, v in errors.items() if k.endswith("dbi")})
    assert abs(errors.get("directivity_dbi", 0.0)) < 0.2
    if campaign.device.polarization == "linear" or campaign.goal.scheme != "one-pass":
        assert abs(errors.get("gain_dbi", 0.0)) < 0.5
    assert found.share_inside > 0.6  # of one invented chamber; intervals are counted in tests/coverage


def test_many_draws_are_counted_by_figure(tmp_path):
    folder = MIXTURES["one element"].write(tmp_path / "campaign")
    campaign, plan = services.make_plan(folder)
    draws, failed = draws_of(campaign, plan, [1, 2])
    assert failed == {} and [one.seed for one in draws] == [1, 2]
    counted = {one.name: one for one in counts_by_figure(draws)}
    assert counted["gain_dbi"].cases == 2 and 0.0 <= counted["gain_dbi"].share_inside <= 1.0
    whole = sum(one.cases * one.share_inside for one in counted.values()) / sum(one.cases for one in counted.values())
    per_draw = [sum(f.inside for f in d.findings if f.counts) for d in draws]
    assert whole == pytest.approx(sum(per_draw) / sum(sum(f.counts for f in d.findings) for d in draws))


def test_the_command_shares_many_draws(tmp_path, request):
    if not request.config.getoption("--nightly"):
        pytest.skip("starts two processes: for the nightly run")
    folder = MIXTURES["dipole along z"].write(tmp_path / "campaign")
    done = CliRunner().invoke(main, ["rehearse", str(folder), "--draws", "4", "--seed", "5", "--json"])
    content = json.loads(done.output)
    assert [draw["seed"] for draw in content["draws"]] == [5, 6, 7, 8] and content["failed"] == []
    assert content["note"] == "invented chamber, device of twin.toml"
    assert {"name", "label", "cases", "share_inside", "median_ratio"} == set(content["by_figure"][0])


def test_angles_are_compared_whole_turns_away():
    """A tilt measured as 89.8 deg of an ellipse whose tilt is -89.9 deg is off by -0.3 deg (derivable)."""
    figure = Figure(
        name="tilt_deg",
        label="Tilt",
        value=89.8,
        unit="deg",
        frequency_hz=1e9,
        lower=89.4,
        upper=90.2,
        definition="",
        source="",
    )
    found = FigureAgainstTruth(figure, -89.9)
    assert found.error == pytest.approx(-0.3) and found.inside and found.ratio == pytest.approx(0.75)
