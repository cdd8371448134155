"""Every figure read from waves against the simulated device's closed-form truth, worked out without any of that code."""

from __future__ import annotations

import numpy as np
import pytest

from colure.analysis.figures.evaluate import FigureSet
from colure.analysis.pipeline.recipe import process
from colure.app import services
from colure.app.services.rehearsal import record_of_rehearsal
from colure.model.chamber import SimulatedChamber
from colure.model.evaluation import Evaluation, Window
from colure.twin.antennas import panel
from colure.twin.truth import figures_of
from tests.conftest import cluster_of, expansion_of

TOLERANCE = {
    "null_e_db": 0.01,
    "null_h_db": 0.01,
    "phase_centre_x_mm": 0.002,
    "phase_centre_y_mm": 0.002,
    "phase_centre_z_mm": 0.01,
}


@pytest.mark.parametrize(("seed", "centre"), [(24, (0.0, 0.0, -0.03)), (7, (0.01, 0.02, 0.03))])
def test_all_figures(seed, centre):
    frequency = np.linspace(24e9, 24.25e9, 3)
    device = panel(frequency, seed=seed, centre_m=centre)
    true, figures = figures_of(device, 0.0), FigureSet(band=True)
    expansion = expansion_of(device, 52)
    values = figures.values(expansion)
    near = figures.values(expansion, near=figures.places(expansion))
    assert near == pytest.approx(values, abs=1e-3)
    assert set(figures.names) == set(true[0])
    for i, what in enumerate(figures.definitions):
        for f in range(3):
            assert what.display(float(values[f, i])) == pytest.approx(
                true[f][what.name], abs=TOLERANCE.get(what.name, 1e-4)
            ), what.name


def test_optional_figures_follow_their_definitions():
    """Commanded direction, sectors and planes of evaluation.toml against the field itself."""
    frequency = np.array([24e9])
    expansion = expansion_of(panel(frequency), 52)
    window = Window(name="front", azimuth_deg=(-3.0, 3.0), elevation_deg=(-2.0, 2.0))
    wanted = Evaluation(commanded_deg={"beam": (2.0, 0.0)}, sectors=(window,), cut_planes_deg=(90.0,), cone_deg=3.0)
    figures = FigureSet(wanted)
    found = dict(zip(figures.names, figures.values(expansion)[0], strict=True))
    apart = np.hypot(found["beam_azimuth_deg"] - 2.0, found["beam_elevation_deg"])
    assert found["pointing_error_deg"] == pytest.approx(apart, abs=1e-3)
    assert found["beamwidth_at_90_deg"] == pytest.approx(found["beamwidth_h_deg"], abs=1e-6)
    assert found["side_lobe_at_90_db"] == pytest.approx(found["side_lobe_h_db"], abs=1e-9)
    az, el = (
        np.deg2rad(x.ravel()) for x in np.meshgrid(np.linspace(-3, 3, 121), np.linspace(-2, 2, 81), indexing="ij")
    )
    d = np.stack([np.sin(az) * np.cos(el), np.sin(el), np.cos(az) * np.cos(el)], -1)
    theta, phi = np.arccos(d[:, 2]), np.arctan2(d[:, 1], d[:, 0])
    power = np.sum(np.abs(expansion.far_field_at(theta=theta, phi=phi)[0]) ** 2, axis=0)
    assert found["sector_front_min_dbi"] == pytest.approx(10 * np.log10(power.min()), abs=0.01)
    assert found["sector_front_mean_dbi"] == pytest.approx(
        10 * np.log10(np.average(power, weights=np.cos(el))), abs=0.01
    )
    assert found["xpd_worst_db"] >= found["xpd_db"] - 1e-12


def test_the_mean_over_a_sector_that_holds_a_null():
    """Short dipole along z, D = 1.5 sin^2 theta (Balanis, ch. 4): 1.5 (1 - <cos^2 az> <cos^2 el>) over the solid angle (derivable)."""
    frequency = np.array([2.4e9])
    device = cluster_of(frequency, [0, 0, 0], [0, 0, 1])
    a, b = np.deg2rad(30.0), np.deg2rad(20.0)
    figures = FigureSet(
        Evaluation(sectors=(Window(name="front", azimuth_deg=(-30.0, 30.0), elevation_deg=(-20.0, 20.0)),))
    )
    expansion = expansion_of(device, 4)
    scaled = expansion.with_coefficients(
        expansion.coefficients * np.sqrt(4.0 * np.pi / np.sum(np.abs(expansion.coefficients) ** 2))
    )
    found = dict(zip(figures.names, figures.values(scaled)[0], strict=True))
    mean = 1.5 * (1.0 - (0.5 + np.sin(2.0 * a) / (4.0 * a)) * (1.0 - np.sin(b) ** 2 / 3.0))
    assert found["sector_front_mean_dbi"] == pytest.approx(10.0 * np.log10(mean), abs=1e-6)
    assert found["sector_front_min_dbi"] < -70.0


def test_less_than_the_whole_sphere_says_less():
    figures = FigureSet(region=float(np.deg2rad(60.0)), one_polarization=True)
    assert not {"directivity_dbi", "front_to_back_db", "xpd_db", "upper_share_db", "phase_centre_x_mm"} & set(
        figures.names
    )
    assert {"gain_dbi", "beamwidth_e_deg", "side_lobe_h_db"} <= set(figures.names)


def test_principal_planes_from_the_measured_ellipse(small_campaign):
    """A panel mounted 8 deg round its axis: the measured planes are its own, the declared ones are not."""
    campaign, plan = services.make_plan(small_campaign)
    truth = SimulatedChamber(noise=False, device_pose_deg=(0.0, 0.0, 8.0), probe_cross_polar_db=-200.0)
    record = record_of_rehearsal(campaign, plan, truth=truth)
    found = {}
    for planes in ("declared", "measured"):
        done = process(record, campaign.chamber, campaign.device, evaluation=Evaluation(principal_planes=planes))
        figures = done.budget.figures
        found[planes] = dict(zip(figures.names, figures.values(done.expansion)[0], strict=True))
    assert found["declared"]["tilt_deg"] == pytest.approx(8.0, abs=0.1)
    assert found["measured"]["tilt_deg"] == pytest.approx(0.0, abs=0.1)
    assert np.rad2deg(done.budget.slant) == pytest.approx(8.0, abs=0.1)
    # Cross-polarization over co-polarization is the ellipse's own now.
    assert found["measured"]["xpd_db"] < 0.06 and found["declared"]["xpd_db"] > 0.13
