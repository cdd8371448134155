"""Cuts in which something went wrong are told, right ones are not accused.

The records are those of a right run, spoilt as a connector, a receiver's range or a rotary joint spoils them.
"""

from __future__ import annotations

import numpy as np
import pytest
from click.testing import CliRunner

from colure.analysis.findings.cut_fit import turned_findings
from colure.app.cli import main
from colure.app.services.cuts import figures_of
from colure.app.services.evaluation import findings
from colure.app.services.rehearsal import record_of_rehearsal
from colure.app.storage.folders import run_folder
from colure.model.chamber import SimulatedChamber
from colure.model.figure import LOOK, NOT_TO_BE_USED, USABLE
from colure.model.files import save_dataset
from colure.model.plan import ROLES, Role
from colure.planning.preflight import make_plan
from colure.report.translation import Translation
from tests.app.test_cuts import AZ_EL, BOTH, ROLL, campaign

CUTS = {
    "two of a patch": ("patch", "5-5.5", ROLL, f'theta_deg = "-120:120:6"\nphi_deg = [0, 90]\n{BOTH}'),
    "one of a horn": ("horn", "37-40", AZ_EL, 'azimuth_deg = "-90:90:2"\nelevation_deg = 0\n'),
}


@pytest.fixture(scope="module")
def measured(tmp_path_factory):
    runs = {}
    for name, case in CUTS.items():
        held, plan = make_plan(campaign(tmp_path_factory.mktemp("cut") / "c", *case))
        runs[name] = held, record_of_rehearsal(held, plan, seed=1)
    return runs


def told(measured, name, spoil):
    """Return every stated figure of a record that `spoil` has changed, given (record, rows of the scan)."""
    held, record = measured[name]
    record = record.copy(deep=True)
    spoil(record, np.flatnonzero(record["role"].values == ROLES.index(Role.SCAN)))
    return [one for one in figures_of(held, record).figures if not one.reason]


@pytest.mark.parametrize("name", CUTS)
def test_right_cuts_are_not_accused(measured, name):
    figures = told(measured, name, lambda record, scan: None)
    assert figures and all(one.use == USABLE for one in figures)


def test_a_lost_sweep_is_told_at_the_figures_of_its_cut_alone(measured):
    def spoil(record, scan):
        record["trace"].values[scan[scan.size // 8]] *= 0.1

    figures = told(measured, "two of a patch", spoil)
    marked = {
        one.name.split("_peak")[0] for one in figures if any("does not fit a cut" in word for word in one.cautions)
    }
    names = {
        one.name.rsplit("_", 1)[0][:6] for one in figures if any("does not fit a cut" in word for word in one.cautions)
    }
    assert marked and (all(one.startswith("phi_0") for one in names) or all(one.startswith("phi_90") for one in names))
    # The other cut fits the device: the slice of this one is named, as the command takes it.
    record = measured["two of a patch"][1]
    scan = np.flatnonzero(record["role"].values == ROLES.index(Role.SCAN))
    own = int(record["slice_index"].values[scan[scan.size // 8]])
    said = {word for one in figures for word in one.cautions if "does not fit a cut" in word}
    assert len(said) == 1 and said.pop().endswith(f"colure acquire --again {own} is enough")


def test_a_level_that_jumps_within_a_cut_is_told(measured):
    """By 2 dB at the peak: it moved by 3 deg +- 0.5, the beamwidth read 15.6 deg of 20.8 +- 0.6, and nothing was said."""

    def spoil(record, scan):
        record["trace"].values[scan[scan.size // 2 :]] *= 10.0**0.1

    figures = told(measured, "one of a horn", spoil)
    assert figures and all(one.use == LOOK and "the level jumped" in one.cautions[0] for one in figures)
    assert not any("--again" in one.cautions[0] for one in figures), "no other cut shows that the device is as declared"


@pytest.mark.parametrize("ratio", [10.0**0.1, -1.0])
def test_a_probe_that_reads_otherwise_at_another_roll_is_told_where_cuts_cross(measured, ratio):
    """By 2 dB: a peak of 6.1 dBi read 8.1 +- 0.4."""

    def spoil(record, scan):
        roll = record["commanded_deg"].values[scan, list(record["axis"].values).index("probe")]
        record["trace"].values[scan[np.abs(roll) < 1.0]] *= ratio

    figures = told(measured, "two of a patch", spoil)
    assert figures and all(
        one.use == NOT_TO_BE_USED and "cuts that cross disagree" in one.cautions[0] for one in figures
    )


def test_findings_of_a_run_of_cuts_are_listed_the_worst_first(measured, tmp_path):
    """As for a sphere; of a right run the command says that nothing speaks against it."""
    held, record = measured["two of a patch"]
    record = record.copy(deep=True)
    run = run_folder(held.folder, "one")
    run.path.mkdir(parents=True)
    save_dataset(record, run.record)
    said = CliRunner().invoke(main, ["findings", str(held.folder), "--run", "one"])
    assert said.exit_code == 0 and "nothing speaks against these cuts" in said.output, said.output
    scan = np.flatnonzero(record["role"].values == ROLES.index(Role.SCAN))
    record["trace"].values[scan[scan.size // 8]] *= 0.1
    run.record.unlink()
    save_dataset(record, run.record)
    told = findings(held, run)
    assert [one.rank for one in told] == sorted(one.rank for one in told)
    named = next(one.text for one in told if "--again" in one.text)
    ways = {language: Translation(language)(named) for language in ("de", "fr", "es")}
    assert all("--again" in text and "other cuts" not in text.lower() for text in ways.values()), ways


LINES = {
    "azimuth": 'azimuth_deg = "-30:30:10"\nelevation_deg = {at}\n',
    "circle": 'great_circles_deg = 0\nthrough_deg = [0, {at}]\nalong_deg = "-30:30:10"\n',
}


def of_line(folder, form, at, rest):
    held, plan = make_plan(campaign(folder, "patch", "5-5.5", ROLL, LINES[form].format(at=at) + rest))
    return plan, figures_of(held, record_of_rehearsal(held, plan, truth=SimulatedChamber(noise=False))).scan, held


@pytest.mark.parametrize("form", LINES)
def test_a_probe_at_rest_reads_no_one_polarization_of_a_device_that_rolls(form, tmp_path):
    """One offset: a peak of a horn read -0.2 dBi of 6; two offsets give what a probe that follows reads."""
    plan, scan, held = of_line(tmp_path / "one", form, 20, 'probe = "fixed"\n')
    told = turned_findings(scan, held.chamber, [f"{scan.cuts[0].cut.name}_peak_dbi"])
    assert [one.severity for one in told] == [NOT_TO_BE_USED] and told[0].figures
    assert "Sonde" in Translation("de")(told[0].text) and any(
        "stands still" in line for line in plan.predicted["missing"]
    )
    # From phi = atan2(sin el, cos el sin az) at azimuths of 30 and -30 deg by hand: 36.05 to 143.95 deg.
    if form == "azimuth":
        assert "over 108 deg" in told[0].text
    _, ahead, _ = of_line(tmp_path / "ahead", form, 0, 'probe = "fixed"\n')
    assert not turned_findings(ahead, held.chamber, [])
    _, still, _ = of_line(tmp_path / "both", form, 20, f'probe = "fixed"\n{BOTH}')
    _, follows, _ = of_line(tmp_path / "follows", form, 20, BOTH)
    assert not turned_findings(still, held.chamber, [])
    for one, other in ((still.cuts[0].co, follows.cuts[0].co), (still.cuts[0].cross, follows.cuts[0].cross)):
        assert np.abs(np.abs(one) - np.abs(other)).max() < 0.01 * np.abs(follows.cuts[0].co).max()
