"""An operator's rectangle of angles: a grid that is transformed where it is one, directions read one by one where not."""

from __future__ import annotations

import numpy as np
import pytest

from colure.app.services.rehearsal import carry_out
from colure.errors import InputError
from colure.geometry.polarization import noise_factor
from colure.model.campaign import Campaign
from colure.planning.preflight import make_plan
from tests.app.test_cuts import AZ_EL, BOTH, EL_AZ, ROLL, campaign


def planned(folder, scan, geometry=ROLL, goal=""):
    made = campaign(folder, "horn", "37-40", geometry, scan)
    text = (folder / "goal.toml").read_text().replace("[scan]", f"wanted_level_db = -40\n{goal}\n[scan]")
    (folder / "goal.toml").write_text(text)
    return make_plan(Campaign.load(made.folder))


@pytest.mark.parametrize(
    ("geometry", "scan", "scheme", "slices", "reach"),
    [
        (ROLL, f'theta_deg = "-180:180:6"\nphi_deg = "0:174:6"\n{BOTH}', "two-pass", 30, 180.0),
        (ROLL, 'theta_deg = "0:180:6"\nphi_deg = "0:354:6"\noffset_deg = [20, 65]\n', "two-pass", 30, 180.0),
        (ROLL, 'theta_deg = "-60:60:6"\nphi_deg = "-90:90:5"\n', "one-pass", 36, 60.0),
        (
            AZ_EL,
            f'azimuth_deg = "-174:180:6"\nelevation_deg = "-90:90:6"\nprobe = "fixed"\n{BOTH}',
            "two-pass",
            31,
            180.0,
        ),
    ],
)
def test_a_regular_rectangle_is_planned_as_the_grid_that_it_is(tmp_path, geometry, scan, scheme, slices, reach):
    resolved, plan = planned(tmp_path / "c", scan, geometry)
    assert resolved.goal.scan is None
    assert (plan.scheme, plan.grid.reach_deg) == (scheme, reach)
    assert np.unique(plan.slice_index[plan.slice_index >= 0]).size == slices


@pytest.mark.parametrize(
    ("geometry", "scan", "why"),
    [
        (ROLL, f'theta_deg = "-90:90:6"\nphi_deg = "0:150:30"\n{BOTH}', "step_deg = 30: must be at most"),
        (ROLL, f'theta_deg = "-90:60:6"\nphi_deg = "0:174:6"\n{BOTH}', "must run to the same angle on both sides"),
        (ROLL, f'theta_deg = "-90:90:6"\nphi_deg = "0:90:6"\n{BOTH}', "phi must run over 180 deg"),
        (
            AZ_EL,
            'azimuth_deg = "-174:180:6"\nelevation_deg = "-90:90:6"\nprobe = "fixed"\n',
            "one offset of a fixed probe",
        ),
        (EL_AZ, f'theta_deg = "-90:90:6"\nphi_deg = "0:174:6"\n{BOTH}', ""),
    ],
)
def test_other_rectangles_are_read_direction_by_direction_and_say_why(tmp_path, geometry, scan, why):
    resolved, plan = planned(tmp_path / "c", scan, geometry)
    assert resolved.goal.scan is not None
    assert not why or why in " ".join(plan.predicted["missing"])


def test_figures_are_in_the_co_and_cross_of_the_first_offset(tmp_path):
    """A horn along x seen at 30 deg: cross over co is tan 30 deg (derivable: Ludwig's third definition turned by the slant)."""
    resolved, plan = planned(tmp_path / "c", 'theta_deg = "-180:174:6"\nphi_deg = "0:174:6"\noffset_deg = [30, 75]\n')
    done = carry_out(resolved, plan, seed=3)
    chosen = done.processed.budget.figures
    values = dict(zip([d.name for d in chosen.definitions], chosen.values(done.processed.expansion)[0], strict=True))
    shown = {d.name: d.display(float(values[d.name])) for d in chosen.definitions}
    assert done.truth[0]["xpd_db"] == pytest.approx(-20.0 * np.log10(np.tan(np.deg2rad(30.0))), abs=0.4)
    assert shown["xpd_db"] == pytest.approx(done.truth[0]["xpd_db"], abs=0.4)


def test_passes_that_are_no_vector_are_refused(tmp_path):
    campaign(tmp_path / "c", "horn", "37-40", ROLL, "theta_deg = 0\nphi_deg = 0\n")
    goal = 'name = "x"\nstart_ghz = 37\nstop_ghz = 40\npoints = 2\n'
    for text, words in (
        ("offset_deg = [0, 180]\n", "must differ by at least 10 deg"),
        ('scheme = "one-pass"\nregion_deg = 90\noffset_deg = [0, 90]\n', "must be one angle"),
        ('scheme = "one-pass"\nregion_deg = 90\nprobe = "fixed"\n', "must be 'follows' in one pass"),
        ("offset_deg = 500\n", "must be 1 to 8 angles"),
    ):
        (tmp_path / "c" / "goal.toml").write_text(goal + text)
        with pytest.raises(InputError, match=words):
            make_plan(Campaign.load(tmp_path / "c"))


def test_noise_of_oblique_passes_is_that_of_drawn_readings():
    """Readings at two probe angles with unit noise, solved for the vector: rms of a component, drawn 40000 times."""
    for angles in (np.deg2rad([0.0, 30.0]), np.deg2rad([10.0, 70.0, 130.0])):
        rows = np.stack([np.cos(angles), np.sin(angles)], axis=-1)
        noise = np.random.default_rng(5).normal(size=(40_000, angles.size))
        solved = noise @ np.linalg.pinv(rows).T
        assert noise_factor(angles) == pytest.approx(np.sqrt(np.mean(solved**2)), rel=0.02)


@pytest.mark.parametrize(
    ("geometry", "scan", "words"),
    [
        (ROLL, 'theta_deg = "-60:60:1"\nphi_deg = [0, 90]\n', ""),
        (AZ_EL, 'azimuth_deg = "-60:60:1"\nelevation_deg = [-5, 0, 5]\nprobe = "fixed"\n', ""),
        (AZ_EL, 'theta_deg = "-60:60:1"\nphi_deg = [0, 90]\n', "motions of the same axis"),
        (ROLL, "theta_deg = [0, 1, 3, 7, 9]\nphi_deg = 0\n", "steps must be even on the fly"),
        (ROLL, "great_circles_deg = 45\nthrough_deg = [10, 5]\n", "one axis of the"),
        (ROLL, 'theta_deg = "-60:60:1"\nphi_deg = 0\ndwell_s = 1\n', "dwell_s: must be 0 s on the fly"),
    ],
)
def test_cuts_fly_where_one_axis_runs_through_them(tmp_path, geometry, scan, words):
    if words:
        with pytest.raises(InputError, match=words):
            planned(tmp_path / "c", scan, geometry, 'style = "fly"')
        return
    _, plan = planned(tmp_path / "c", scan, geometry, 'style = "fly"')
    assert plan.settings["style"] == "fly"
    assert plan.predicted["points"]["turn"] > 2 * 121
