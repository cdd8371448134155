"""What a scan or a reference cannot give is refused before anything is measured."""

from __future__ import annotations

import pytest

from colure.app import services
from colure.app.services.exporting import export
from colure.app.services.rehearsal import record_of_rehearsal
from colure.app.storage.folders import run_folder
from colure.errors import InputError
from colure.model.files import save_dataset
from tests.coverage.scenarios import Scenario, band, four_by_four, sized

NONE = {"reference": {"method": "none"}}


def folder_of(tmp_path, evaluation="", **more):
    scenario = {"device": four_by_four(), "goal": band(24.1), **more}
    folder = Scenario(**scenario).write(tmp_path)
    if evaluation:
        (folder / "evaluation.toml").write_text(evaluation)
    return folder


@pytest.mark.parametrize(
    ("evaluation", "more", "message"),
    [
        (
            "coverage_percent = [50]",
            {"goal": band(24.1, region_deg=60)},
            "coverage_percent: must be read on the whole sphere",
        ),
        (
            "horizon_bands_deg = [10]",
            {"goal": band(24.1, region_deg=60)},
            "horizon_bands_deg: must be read on the whole",
        ),
        ("", {"goal": band(24.1, want={"gain_dbi": 0.3}), "chamber": NONE}, r"want.gain_dbi: needs a reference"),
        ("transmit_power_dbm = 10", {"chamber": NONE}, r"transmit_power_dbm: needs a reference"),
    ],
)
def test_it_is_refused_before_the_scan(tmp_path, evaluation, more, message):
    with pytest.raises(InputError, match=message):
        services.make_plan(folder_of(tmp_path, evaluation, **more))


def test_what_is_left_of_a_power_on_part_of_a_sphere_is_said(tmp_path):
    folder = folder_of(tmp_path, "transmit_power_dbm = 10", goal=band(24.1, region_deg=60))
    _, plan = services.make_plan(folder)
    assert any("total radiated power: needs the whole sphere" in line for line in plan.predicted["missing"])


def test_a_run_without_a_reference_end_to_end(tmp_path):
    """A short dipole: 1.76 dBi and 90 deg (C. A. Balanis, Antenna Theory, section 4.2, from memory)."""
    held = {"kind": "dipole", "length_mm": 0.5, "axis": "x"}
    folder = folder_of(tmp_path, device=sized(1.0, 1.0, 1.0, 1.8), goal=band(24.1, wanted_level_db=-20), chamber=NONE,
                       twin={"device": held})  # fmt: skip
    campaign, plan = services.make_plan(folder)
    run = run_folder(folder, "first")
    run.path.mkdir(parents=True)
    save_dataset(record_of_rehearsal(campaign, plan, truth=campaign.simulated()), run.record)
    found = services.read_figures(campaign, run)
    figures = {one.name: one for one in found}
    assert figures["directivity_dbi"].contains(1.76)
    assert figures["beamwidth_e_deg"].contains(90.0)
    assert "needs a reference" in figures["gain_dbi"].reason
    services.write_report(campaign, plan, run, services.process(campaign, run), found)
    assert "levels are relative" in run.report_html.read_text(encoding="utf-8")
    with pytest.raises(InputError, match="export nsma: needs a reference"):
        export(campaign, run, "nsma", folder / "out.txt")
