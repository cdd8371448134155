"""The operator's own scans, carried out on simulated chambers of every geometry and held against the closed-form truth."""

from __future__ import annotations

import re
import shutil

import numpy as np
import pytest
import xarray as xr
from click.testing import CliRunner

from colure.analysis.cuts.figures import cut_figures, evaluated
from colure.analysis.cuts.scan import read_cuts
from colure.app.cli import main
from colure.app.services import cuts as cutting
from colure.app.services.reference import reference_of
from colure.app.services.rehearsal import _record, measured
from colure.app.services.starting import start_campaign
from colure.app.storage.folders import run_folder
from colure.errors import InputError
from colure.model.campaign import Campaign
from colure.model.files import save_dataset
from colure.model.plan import ROLES, Role
from colure.planning.preflight import make_plan
from tests.analysis.true_cuts import true_cut
from tests.coverage.scenarios import Scenario, band, four_by_four
from tests.printed import pages_of

ROLL, AZ_EL, EL_AZ = "roll-over-azimuth", "azimuth-over-elevation", "elevation-over-azimuth"
BOTH = "offset_deg = [0, 90]\n"
#: kind, band, geometry, scan, offset of the device.
CASES = {
    "horn, two cuts, both components": ("horn", "37-40", ROLL, f'theta_deg = "-90:90:1"\nphi_deg = [0, 90]\n{BOTH}', None),
    "horn on az/el": ("horn", "37-40", AZ_EL, 'azimuth_deg = "-90:90:1"\nelevation_deg = 0\n', None),
    "horn on el/az, unequal offsets": ("horn", "37-40", EL_AZ, 'theta_deg = "-90:90:1"\nphi_deg = 45\noffset_deg = [0, 45]\n', None),
    "horn 150 mm in front of the crossing": ("horn", "37-40", AZ_EL, 'azimuth_deg = "-90:90:1"\nelevation_deg = 0\n', [0.0, 0.0, 150.0]),
    "patch": ("patch", "5-5.5", ROLL, f'theta_deg = "-120:120:3"\nphi_deg = [0, 90]\n{BOTH}', None),
    "dipole, whole turns": ("dipole", "2.4-2.5", AZ_EL, f'theta_deg = "-180:180:5"\nphi_deg = [0, 90]\n{BOTH}', None),
    "horn on az/el, a rectangle": ("horn", "37-40", AZ_EL, 'azimuth_deg = "-36:36:4"\nelevation_deg = "-36:36:4"\n', None),
    "horn on a roll, a rectangle, probe fixed": ("horn", "37-40", ROLL, f'azimuth_deg = "-30:30:6"\nelevation_deg = "-30:30:6"\nprobe = "fixed"\n{BOTH}', None),
    "skew circles": ("horn", "37-40", ROLL, "great_circles_deg = [0, 45]\nthrough_deg = [10, 5]\n", None),
}  # fmt: skip


def campaign(folder, kind, band, geometry, scan, offset=None):
    """Write a starting campaign on another positioner, with a scan and a device beside the crossing."""
    start_campaign(folder, kind=kind, band=band)
    chamber = (folder / "chamber.toml").read_text().replace("largest_device_m = 0.4", "largest_device_m = 0.6")
    if geometry != ROLL:
        for old, new in (
            (f'"{ROLL}"', f'"{geometry}"'), ("[positioner.roll]", "[positioner.elevation]"),
            ("min_deg = -10\nmax_deg = 190", "min_deg = -185\nmax_deg = 185"),
        ):  # fmt: skip
            chamber = chamber.replace(old, new)
        chamber = re.sub(r"roll_axis_tilt_deg.*\n", "elevation_zero_deg = 0.06\n", chamber)
        (folder / "twin.toml").write_text(re.sub(r"roll_axis_tilt_deg.*\n", "", (folder / "twin.toml").read_text()))
    (folder / "chamber.toml").write_text(chamber)
    if offset:
        device = (folder / "device.toml").read_text()
        (folder / "device.toml").write_text(re.sub(r"offset_mm.*\n", f"offset_mm = {offset}\n", device))
    low, high = band.split("-")
    goal = f'name = "Cuts"\nstart_ghz = {low}\nstop_ghz = {high}\npoints = 2\n[scan]\n{scan}'
    (folder / "goal.toml").write_text(goal)
    return Campaign.load(folder)


@pytest.mark.parametrize("name", CASES)
def test_every_figure_of_a_cut_holds_the_truth(tmp_path, name):
    """At least 95 % of the figures that are stated; truth from the closed-form far field, not from the analysis."""
    resolved, plan = make_plan(campaign(tmp_path / "c", *CASES[name]))
    inside, stated = 0, 0
    for seed in (1, 2):
        rehearsed, moments = measured(resolved, plan, seed=seed)
        scan = read_cuts(
            _record(plan, rehearsed, moments),
            resolved.chamber,
            resolved.device,
            reference_of(resolved, plan.frequency_hz),
        )
        assert scan.missing == 0  # also where a whole turn ends at the direction with which it began
        figures = cut_figures(scan, resolved.chamber, resolved.device, resolved.evaluation(), order=plan.order)
        if "rectangle" in name:
            # Swept along azimuth; the plane across is in the rectangle, too.
            assert {"el_0_width_3_deg", "az_0_width_3_deg"} <= {one.name for one in figures if not one.reason}
        truth = {
            f"{cut.cut.name}_{key}": value
            for cut in evaluated(scan, resolved.device)
            for key, value in true_cut(
                rehearsed.device, 1, cut.cut, slant_deg=0.0, vector=cut.cross is not None
            ).items()
        }
        for figure in figures:
            if figure.frequency_hz == plan.frequency_hz[1] and not figure.reason and figure.name in truth:
                stated += 1
                inside += figure.lower <= truth[figure.name] <= figure.upper
                assert (
                    figure.name.startswith("phi_90")
                    or np.isfinite(figure.expanded_uncertainty)
                    or "null" in figure.name
                    or "xpd" in figure.name
                )
    assert stated >= 6
    assert inside >= 0.95 * stated


def test_unequal_offsets_give_the_same_vector_as_orthogonal_ones(tmp_path):
    """Without noise or imperfections 0/45 deg and 0/90 deg must agree: the vector does not depend on how it was sampled.

    Crosstalk inside the analyzer is the same at every offset, and no vector: it is switched off too.
    """
    from colure.model.chamber import SimulatedChamber

    fields = []
    for offsets in ("[0, 90]", "[0, 45]", "[0, 30, 75]"):
        folder = tmp_path / offsets.replace(" ", "").strip("[]").replace(",", "-")
        made = campaign(
            folder, "patch", "5-5.5", AZ_EL, f'theta_deg = "-60:60:10"\nphi_deg = 30\noffset_deg = {offsets}\n'
        )
        resolved, plan = make_plan(made)
        quiet = SimulatedChamber(
            noise=False,
            crosstalk_db=-200.0,
            probe_cross_polar_db=-200.0,
            device=made.simulated().device,
            probe_ring_mm=made.simulated().probe_ring_mm,
        )
        rehearsed, moments = measured(resolved, plan, truth=quiet)
        scan = read_cuts(_record(plan, rehearsed, moments), resolved.chamber, resolved.device)
        fields.append((scan.cuts[0].co, scan.cuts[0].cross))
    for co, cross in fields[1:]:
        assert np.abs(co - fields[0][0]).max() < 1e-6 * np.abs(fields[0][0]).max()
        assert np.abs(cross - fields[0][1]).max() < 1e-6 * np.abs(fields[0][0]).max()


def test_the_habitual_scan_is_eight_lines_and_is_planned(tmp_path):
    """91 x 91 points, 25 frequencies, offset 0, and a frequency to watch."""
    start_campaign(tmp_path / "c", kind="horn", band="37-40")
    goal = (
        'name = "Daily scan"\nstart_ghz = 37\nstop_ghz = 40\npoints = 25\nmonitor_ghz = 38.5\n'
        'scan = { theta_deg = "-90:90:2", phi_deg = "0:180:2", offset_deg = 0 }\n'
    )
    assert len(goal.splitlines()) <= 8
    (tmp_path / "c" / "goal.toml").write_text(goal)
    resolved, plan = make_plan(Campaign.load(tmp_path / "c"))
    # The last slice is the first one backwards: it is left out, and that is said.
    assert plan.predicted["points"]["scan"] == 90 * 91
    assert "phi = 180 deg is the slice of phi = 0 deg once more" in plan.predicted["notes"][0]
    assert (resolved.goal.scheme, plan.grid.reach_deg, plan.settings["offsets_deg"]) == ("one-pass", 90.0, "0")
    assert plan.frequency_hz.size == 25
    assert resolved.goal.monitor_index == 12
    assert any("TRP" in line for line in plan.predicted["missing"])


def test_coarse_steps_and_one_offset_are_done_with_a_warning(tmp_path):
    made = campaign(tmp_path / "c", "horn", "37-40", ROLL, 'theta_deg = "-90:90:15"\nphi_deg = 0\n')
    _, plan = make_plan(made)
    words = " ".join(plan.predicted["missing"])
    assert "steps of 15 deg are coarser than" in words
    assert "no cross-polar" in words


@pytest.mark.parametrize(
    ("geometry", "scan", "words"),
    [
        (ROLL, 'theta_deg = "-90:90:1"\nphi_deg = "0:300:10"\n', "must be from -10 to 190 deg"),
        (ROLL, 'directions = "nowhere.csv"\n', "nowhere.csv: cannot be read: No such file or directory"),
        (ROLL, "theta_deg = 0\nphi_deg = 0\nprobe = 'fixed'\noffset_deg = 270\n", None),
    ],
)
def test_what_is_out_of_reach_is_refused_before_anything_moves(tmp_path, geometry, scan, words):
    made = campaign(tmp_path / "c", "horn", "37-40", geometry, scan)
    if words is None:
        # Half a turn of the probe is the same polarization.
        assert make_plan(made)[1].targets_deg[:, 2].max() <= 200.0
        return
    with pytest.raises(InputError) as error:
        make_plan(made)
    assert words in str(error.value)


@pytest.fixture(scope="module")
def measured_cuts(tmp_path_factory):
    """A campaign with two measured runs of one cut."""
    folder = tmp_path_factory.mktemp("cuts") / "c"
    start_campaign(folder, kind="horn", band="37-40")
    for name, phi in (("one", "0"), ("two", "0,90")):
        resolved, plan = cutting.cut_plan(folder, {"theta_deg": "-90:90:2", "phi_deg": phi})
        run = run_folder(folder, name)
        run.path.mkdir(parents=True)
        save_dataset(_record(plan, *measured(resolved, plan, seed=3)), run.record)
    return folder


def run_colure(*words):
    return CliRunner().invoke(main, [str(word) for word in words])


def test_a_run_of_cuts_is_a_run_like_any_other(measured_cuts, tmp_path):
    (measured_cuts / "report.toml").write_text('language = "es"\n', encoding="utf-8")
    for words in (
        ("evaluate", measured_cuts, "--run", "one"),
        ("report", measured_cuts, "--run", "two"),
        ("export", measured_cuts, "csv", tmp_path / "cuts.csv", "--run", "two"),
        ("export", measured_cuts, "figures", tmp_path / "figures.csv", "--run", "two"),
        ("compare", measured_cuts, "two", "--run", "one", "--plot", tmp_path / "both.png", "--json"),
    ):
        found = run_colure(*words)
        assert found.exit_code == 0, f"{words}: {found.output}"
        if words[0] == "evaluate":
            assert "peak partial gain" in found.output and "peak gain" not in found.output  # one offset, one component
    made = measured_cuts / "runs" / "two"
    assert all(
        (made / name).stat().st_size > 1000
        for name in ("cuts.png", "cuts.csv", "report.html", "report.pdf", "figures.json")
    )
    (measured_cuts / "report.toml").unlink()
    page = (made / "report.html").read_text(encoding="utf-8")
    # A picture for each cut: pages take them one by one, and none is left half empty.
    assert page.count("download='chart.csv'") == 2
    # Nothing is left in English: page one would name it.
    assert "sin transformaci\u00f3n" in page and "ingl\u00e9s" not in page and "range length" not in page


def test_the_short_report_of_cuts_has_two_pages(measured_cuts):
    (measured_cuts / "report.toml").write_text('form = "short"\n', encoding="utf-8")
    found = run_colure("report", measured_cuts, "--run", "two")
    (measured_cuts / "report.toml").unlink()
    assert found.exit_code == 0, found.output
    pages = pages_of(measured_cuts / "runs" / "two" / "report.pdf")
    assert len(pages) == 2 and "Figures" in pages[0] + pages[1] and "Definitions" not in pages[0] + pages[1]


@pytest.mark.parametrize(
    "words",
    [
        ("effects",), ("coverage",), ("verdict", "limits.toml"), ("export", "matlab", "x.mat"), ("plot", "x.png", "--kind", "map"),
        ("pattern", "x.csv"),
    ],
)  # fmt: skip
def test_what_needs_a_sphere_says_so(measured_cuts, tmp_path, words):
    (tmp_path / "limits.toml").write_text('name = "Limits"\n[[limits]]\nfigure = "gain_dbi"\nat_least = 10\n')
    command, *more = words
    found = run_colure(command, measured_cuts, *[tmp_path / w if "." in w else w for w in more], "--run", "one")
    assert found.exit_code == 2, found.output
    assert "no sphere" in found.output or "needs" in found.output


def test_a_wrong_name_lists_the_runs_that_exist(measured_cuts):
    found = run_colure("evaluate", measured_cuts, "--run", "three")
    assert found.exit_code == 2
    assert "runs here: one, two" in found.output


def test_a_cut_ties_where_the_signal_is_known_to_be_strongest(tmp_path):
    folder = Scenario(device=four_by_four(), goal=band(24.1)).write(tmp_path)
    (folder / "evaluation.toml").write_text("[commanded_deg]\nbeam = [30.0, 0.0]\n")
    for scan in ({"theta_deg": "-60:60:10", "phi_deg": [0.0]}, {"great_circles_deg": [0.0], "along_deg": "-40:40:10"}):
        campaign, plan = cutting.cut_plan(folder, scan)
        tie = plan.targets_deg[plan.role == ROLES.index(Role.TIE)][0]
        assert abs(campaign.chamber.positioner.azimuth.map.angle_deg(tie[0])) == pytest.approx(30.0)
        assert "commanded_deg" in plan.predicted["ties"]["source"]
    # Great circles still go through the declared beam, the boresight here.
    assert resolved_through(campaign) == (0.0, 0.0)


def resolved_through(campaign):
    scan = campaign.goal.scan
    return tuple(scan.through_deg)


def test_an_elevation_axis_is_no_alarm(tmp_path):
    """The G-code controller reports elevation under the letter A (RS-274's word for the rotary axis about x)."""
    folder = campaign(tmp_path / "c", "horn", "37-40", AZ_EL, 'azimuth_deg = "-10:10:10"\nelevation_deg = 5\n').folder
    found = run_colure("acquire", folder, "--yes")
    assert found.exit_code == 0 and "plan completed" in found.output, found.output


@pytest.mark.nightly
@pytest.mark.usefixtures("nightly")
def test_a_flip_test_and_a_beam_search_can_be_drawn_and_exported(measured_cuts, tmp_path):
    """Both are runs of directions: two sides of one cut, and rows of elevation."""
    assert run_colure("flip", measured_cuts, "--yes").exit_code == 0
    assert run_colure("beam", measured_cuts, "--yes").exit_code == 0
    for name, first in (("flip", "phi_0"), ("beam-fine", "el_")):
        found = run_colure("plot", measured_cuts, tmp_path / f"{name}.png", "--run", name)
        assert found.exit_code == 0, found.output
        assert run_colure("export", measured_cuts, "csv", tmp_path / f"{name}.csv", "--run", name).exit_code == 0
        lines = (tmp_path / f"{name}.csv").read_text().splitlines()
        assert lines[1].startswith(first)


def test_a_sphere_and_cuts_are_not_compared_and_both_runs_are_named(measured_cuts, tmp_path):
    """Whichever comes first; a wrong name says which runs there are."""
    folder = tmp_path / "c"
    shutil.copytree(measured_cuts, folder)
    sphere = folder / "runs" / "sphere"
    sphere.mkdir()
    xr.Dataset(attrs={"form": "sphere"}).to_netcdf(sphere / "record.nc")
    for one, other in (("one", "sphere"), ("sphere", "one")):
        refused = run_colure("compare", folder, one, "--run", other)
        assert refused.exit_code == 2 and "run one holds cuts, run sphere a sphere" in refused.output, refused.output
    refused = run_colure("compare", folder, "nosuch", "--run", "one")
    assert refused.exit_code == 2 and "runs here: one, sphere, two" in refused.output, refused.output


def test_figures_of_other_components_are_no_change(measured_cuts, tmp_path):
    """One component against both is refused; where co-polar is another direction, cross-polar levels are not compared."""
    folder = tmp_path / "c"
    shutil.copytree(measured_cuts, folder)
    for name, offsets in (("both", "0,90"), ("turned", "45,135")):
        plan = {"theta_deg": "-20:20:4", "phi_deg": "0", "offset_deg": offsets}
        resolved, laid = cutting.cut_plan(folder, plan)
        (folder / "runs" / name).mkdir()
        save_dataset(_record(laid, *measured(resolved, laid, seed=3)), run_folder(folder, name).record)
    refused = run_colure("compare", folder, "one", "--run", "both")
    assert (
        refused.exit_code == 2
        and "run both holds both components (offset 0, 90 deg), run one holds one" in refused.output
    )
    # A linear device read at 45 deg is as strong in both: its cross-polar level went up by some 35 dB, and nothing changed.
    told = run_colure("compare", folder, "turned", "--run", "both")
    assert told.exit_code == 0, told.output
    assert (
        "cross-polar level: not compared, because the runs count co-polar from offsets that are 45 deg apart"
        in told.output
    )
