"""Gains of both hands, circular cross-polar discrimination, axial ratio with its sense, partial gains: closed forms and campaigns."""

from __future__ import annotations

import numpy as np
import pytest

from colure.analysis.figures.evaluate import FigureSet
from colure.model.campaign import Campaign
from colure.model.evaluation import Evaluation
from colure.planning.preflight import make_plan
from tests.conftest import cluster_of, expansion_of
from tests.coverage.scenarios import SCENARIOS, Scenario, band, circular, four_by_four

ALL = Evaluation(components=("circular", "theta-phi", "ludwig-2"), gain_units=("dBd", "linear"))


def figures_of(electric, magnetic=None, *, slant=0.0, position=(0.0, 0.0, 0.0), settings=ALL):
    waves = expansion_of(cluster_of(10e9, position, electric, magnetic), 12)
    figures = FigureSet(settings, slant=slant)
    values = figures.values(waves)[0]
    near = figures.places(waves)[0]
    return {d.name: d.display(float(v)) for d, v in zip(figures.definitions, values, strict=True)}, near.reasons


@pytest.mark.parametrize(("sense", "sign"), [("right", -1j), ("left", 1j)])
@pytest.mark.parametrize("ratio_db", [0.5, 3.0, 12.0])
def test_an_elliptical_huygens_source(sense, sign, ratio_db):
    """A Huygens source has 3 (4.7712 dBi); a right-handed wave has e_phi = -j e_theta (IEEE Std 145), XPD = (r + 1)/(r - 1)
    (C. A. Balanis, Antenna Theory, section 2.12, from memory)."""
    r = 10.0 ** (ratio_db / 20.0)
    minor = sign / np.hypot(1.0, r)
    major = r / np.hypot(1.0, r)
    electric, magnetic = [major, minor, 0.0], [-minor, major, 0.0]
    found, _ = figures_of(electric, magnetic)
    strong, weak = (1.0 + r) ** 2 / (2.0 * (1.0 + r * r)), (r - 1.0) ** 2 / (2.0 * (1.0 + r * r))
    hands = ("gain_right_dbic", "gain_left_dbic") if sense == "right" else ("gain_left_dbic", "gain_right_dbic")
    assert found[hands[0]] == pytest.approx(4.7712 + 10.0 * np.log10(strong), abs=1e-3)
    assert found[hands[1]] == pytest.approx(4.7712 + 10.0 * np.log10(weak), abs=1e-3)
    assert found["xpd_circular_db"] == pytest.approx(20.0 * np.log10((r + 1.0) / (r - 1.0)), abs=1e-3)
    assert found["axial_ratio_signed_db"] == pytest.approx(ratio_db if sense == "right" else -ratio_db, abs=1e-3)
    assert found["gain_dbd"] == pytest.approx(4.7712 - 2.15, abs=1e-3)
    assert found["gain_linear"] == pytest.approx(3.0, rel=1e-4)


def test_components_of_a_dipole_off_the_poles():
    """A short dipole along y seen along x: 1.5 (1.7609 dBi), along phi alone; a grid with its pole at y calls that elevation."""
    pattern, reasons = figures_of([0.0, 1.0, 0.0], slant=0.5 * np.pi)
    assert pattern["gain_dbi"] == pytest.approx(1.7609, abs=1e-3) and reasons
    # A tilted end-fire pair has its beam off both poles.
    angle = np.deg2rad(40.0)
    lean = [np.cos(angle), 0.0, -np.sin(angle)]
    found, why = figures_of(lean, [0.0, 1.0, 0.0])
    assert not {"gain_theta_dbi", "gain_azimuth_dbi"} & set(why)
    # The beam lies in the xz plane: its field is e_theta, and e_azimuth of a grid about y.
    assert found["gain_theta_dbi"] == pytest.approx(found["gain_dbi"], abs=1e-3)
    assert found["gain_azimuth_dbi"] == pytest.approx(found["gain_dbi"], abs=1e-3)
    assert found["gain_phi_dbi"] < found["gain_dbi"] - 60.0 and found["gain_elevation_dbi"] < found["gain_dbi"] - 60.0


def test_components_at_a_pole_have_no_direction():
    _, reasons = figures_of([1.0, 0.0, 0.0], [0.0, 1.0, 0.0])
    assert "beam points along z" in reasons["gain_theta_dbi"] and "gain_azimuth_dbi" not in reasons


def counted(tmp_path, scenario, evaluation, seeds):
    folder = scenario.write(tmp_path)
    (folder / "evaluation.toml").write_text(evaluation)
    campaign = Campaign.load(folder)
    _, plan = make_plan(campaign)
    from colure.analysis.pipeline.recipe import process
    from colure.analysis.uncertainty.budget import figures_with_budget
    from colure.app.services.reference import probe_of
    from colure.app.services.rehearsal import _record, measured
    from colure.twin.campaign_truth import asked_of
    from colure.twin.truth import truth_of

    rows = []
    for seed in seeds:
        done, moments = measured(campaign, plan, seed=seed)
        record = _record(plan, done, moments)
        settings = campaign.evaluation()
        found = process(
            record, campaign.chamber, campaign.device, probe=probe_of(campaign, plan.frequency_hz), evaluation=settings
        )
        truth = truth_of(done.device, asked_of(campaign, settings))[0]
        rows += [(one, truth[one.name].value) for one in figures_with_budget(found.budget) if one.name in NEW]
    return rows


NEW = ("gain_right_dbic", "gain_left_dbic", "xpd_circular_db", "axial_ratio_signed_db", "gain_theta_dbi", "gain_phi_dbi",
       "gain_azimuth_dbi", "gain_elevation_dbi", "gain_dbd", "gain_linear")  # fmt: skip


@pytest.mark.parametrize(("name", "scenario"), [
    ("3 dB", circular(3.0)),
    ("steered, slant", Scenario(device=four_by_four(beam_deg=[30.0, 15.0], slant_deg=30.0), goal=band(24.1),
     twin={"device": {"kind": "panel", "rows": 4, "columns": 4, "pitch_mm": 6.213, "steer_deg": [30.0, 15.0], "slant_deg": 30.0}})),
])  # fmt: skip
def test_intervals_hold_the_truth(tmp_path, request, name, scenario):
    count = 40 if request.config.getoption("--nightly") else 1
    rows = counted(tmp_path, scenario, 'components = ["circular", "theta-phi", "ludwig-2"]\ngain_units = ["dBd", "linear"]\n',
                   range(51, 51 + count))  # fmt: skip
    known = [(one, true) for one, true in rows if not one.reason]
    assert len(known) >= 6 * count
    inside = [one.contains(true) for one, true in known]
    assert np.mean(inside) >= 0.9, [
        (one.name, one.value, true, one.lower, one.upper) for one, true in known if not one.contains(true)
    ]


def test_a_linear_device_has_no_sense(tmp_path):
    rows = counted(tmp_path, SCENARIOS["38 GHz horn"], 'components = ["circular"]', [3])
    one = next(one for one, _ in rows if one.name == "axial_ratio_signed_db")
    assert "cannot tell the sense, because the wave is linear within its errors" in one.reason
    right = next(one for one, _ in rows if one.name == "gain_right_dbic")
    left = next(one for one, _ in rows if one.name == "gain_left_dbic")
    # A linear wave is half of each hand (IEEE Std 145).
    assert right.value == pytest.approx(left.value, abs=0.3)


def test_the_truth_of_a_campaign_holds_both_hands_of_a_device_that_is_declared_circular(tmp_path):
    from colure.twin.campaign_truth import campaign_truth

    truth = campaign_truth(Campaign.load(circular(3.0).write(tmp_path)))[0]
    assert {"gain_right_dbic", "gain_left_dbic", "xpd_circular_db", "axial_ratio_signed_db"} <= set(truth)
    assert truth["gain_right_dbic"].unit == "dBic" and truth["axial_ratio_signed_db"].value > 0.0
