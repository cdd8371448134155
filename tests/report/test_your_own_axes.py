"""Pictures on axes of the user's own, side by side: of a dipole's file, half a sphere, a run of cuts."""

from __future__ import annotations

import matplotlib.figure
import numpy as np
import pytest

import colure
from colure.app.services.rehearsal import record_of_rehearsal
from colure.app.services.starting import start_campaign
from colure.app.storage.folders import run_folder
from colure.model.campaign import Campaign
from colure.model.files import save_dataset
from colure.model.pattern import build_pattern
from colure.planning.preflight import make_plan
from tests.test_public_objects import dipole_pattern


def half_sphere(folder):
    """A Huygens source, known to 90 deg from +z (closed form: (1 + cos theta) / 2 in amplitude)."""
    theta, phi = np.deg2rad(np.arange(0.0, 91.0, 10.0)), np.deg2rad(np.arange(0.0, 360.0, 10.0))
    size = np.sqrt(3.0) * 0.5 * (1.0 + np.cos(theta))[:, None]
    field = np.stack([size * np.cos(phi), -size * np.sin(phi)]).astype(complex)
    made = build_pattern(field[None], frequency_hz=np.array([3e9]), theta=theta, phi=phi, quantity="realized_gain")
    save_dataset(made, folder / "half.nc")
    return colure.open_pattern(folder / "half.nc")


def lines_of(ax):
    return {line.get_linestyle(): line.get_data() for line in ax.get_lines()}


def test_a_dipole_and_half_a_sphere_stand_side_by_side_in_one_figure(tmp_path):
    """The dipole: 1.5 cos^2 in the E plane, 1.5 = 1.76 dBi in the H plane (Balanis, Antenna Theory, 4th ed., eq. 4-31)."""
    figure = matplotlib.figure.Figure(figsize=(9, 6))
    axes = figure.subplots(2, 2)
    dipole, half = dipole_pattern(tmp_path), half_sphere(tmp_path)
    assert tuple(dipole.plot("cuts", ax=axes[0])) == tuple(axes[0])
    assert dipole.plot("map", ax=axes[1, 0])[0] is axes[1, 0]
    half.plot("cuts", planes=["E"], ax=axes[1, 1])
    assert len(figure.axes) == 5  # four of the user's and the map's colour bar
    angle, level = lines_of(axes[0, 0])["-"]
    here = (np.abs(np.cos(np.deg2rad(angle))) > 0.1) & np.isfinite(
        level
    )  # Ludwig 3 has no direction opposite to the boresight
    assert here.sum() > 600
    assert level[here] == pytest.approx(10 * np.log10(1.5 * np.cos(np.deg2rad(angle[here])) ** 2), abs=0.01)
    level = lines_of(axes[0, 1])["-"][1]
    assert level[np.isfinite(level)] == pytest.approx(1.761, abs=0.001)
    angle, level = lines_of(axes[1, 1])["-"]
    assert np.nanmax(np.abs(angle[np.isfinite(level)])) <= 91.0
    assert np.nanmax(level) == pytest.approx(10 * np.log10(3.0), abs=0.01)
    # What they show is named on the user's axes only.
    assert axes[0, 0].get_ylabel() == "directivity / dBi" and axes[1, 1].get_ylabel() == "gain / dBi"
    figure.savefig(tmp_path / "both.png")


def test_polar_and_solid_need_axes_of_their_kind(tmp_path):
    dipole = dipole_pattern(tmp_path)
    figure = matplotlib.figure.Figure()
    flat, polar, space = (
        figure.add_subplot(1, 3, n, projection=name) for n, name in ((1, None), (2, "polar"), (3, "3d"))
    )
    dipole.plot("polar", planes=("H",), ax=polar)
    dipole.plot("solid", ax=space)
    assert polar.get_lines() and space.collections
    for kind, ax, words in (
        ("polar", flat, "rectilinear axes: must be polar axes: make them with subplot_kw="), ("solid", flat, "must be 3d axes"),
        ("map", polar, "must be rectilinear"), ("cuts", flat, "1 axes: must be 2 .axes., one for each of E plane, H plane"),
        ("front", [flat], "must be 3"), ("map", "ax", "str: must be matplotlib axes"),
    ):  # fmt: skip
        with pytest.raises(colure.InputError, match=words):
            dipole.plot(kind, ax=ax, planes=("E",) if kind == "polar" else ("E", "H"))
    with pytest.raises(colure.InputError, match="planes = D: must be one or more of E, H"):
        dipole.plot("cuts", planes=("D",))
    assert not flat.get_lines()  # nothing was drawn of what was refused


def test_figures_draw_on_given_axes_and_a_new_figure_shows_itself(tmp_path):
    figures = dipole_pattern(tmp_path).evaluate()
    figure = matplotlib.figure.Figure()
    left, right = figure.subplots(1, 2)
    assert tuple(figures.plot_over_frequency("directivity_dbi", ax=left)) == (left,)
    assert lines_of(left)["-"][1] == pytest.approx(1.761, abs=0.001) and not right.get_lines()
    drawn = figures.plot_over_frequency("directivity_dbi", "beamwidth_e_deg")
    assert len(drawn) == 2 and drawn.figure is not figure and drawn._repr_png_().startswith(b"\x89PNG")


def test_a_run_of_cuts_is_drawn_on_given_axes(tmp_path):
    start_campaign(tmp_path / "c", kind="dipole", band="2.4-2.5")
    (tmp_path / "c" / "goal.toml").write_text(
        'name = "Cuts"\nstart_ghz = 2.4\nstop_ghz = 2.5\npoints = 2\n[scan]\ntheta_deg = "-90:90:10"\nphi_deg = [0, 90]\n'
    )
    resolved, plan = make_plan(Campaign.load(tmp_path / "c"))
    files = run_folder(tmp_path / "c", "first")
    files.path.mkdir(parents=True)
    save_dataset(record_of_rehearsal(resolved, plan), files.record)
    run = colure.open_campaign(tmp_path / "c").run("first")
    figure = matplotlib.figure.Figure()
    both = figure.subplots(2, 1)
    assert tuple(run.plot_cuts(frequency_ghz=2.4, ax=both)) == tuple(both)
    assert "2.400 GHz" in both[0].get_title(loc="left") and lines_of(both[0])["-"][0].size == 19
    with pytest.raises(colure.InputError, match="1 axes: must be 2"):
        run.plot_cuts(ax=both[0])
