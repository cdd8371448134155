"""Squint from a stated axis (IEEE Std 145-2013, worded from memory), and the front-to-back ratio about it."""

from __future__ import annotations

from types import SimpleNamespace

import numpy as np
import pytest

from colure.analysis.figures.evaluate import FigureSet
from colure.app.services.reporting import _about_the_axis
from colure.geometry.directions import from_azimuth_over_elevation
from colure.geometry.sphere import equiangular
from colure.model.evaluation import Evaluation
from colure.twin.antennas import panel
from colure.twin.truth import TruthSettings, truth_of
from colure.waves.transform import synthesis
from tests.conftest import cluster_of, expansion_of

NAMES = ("squint_axis_deg", "front_to_back_axis_db")


def huygens(azimuth_deg: float, elevation_deg: float):
    """A Huygens source, intensity (1 + cos gamma)^2 about its axis (derivable), turned to an azimuth and elevation."""
    az, el = np.deg2rad((azimuth_deg, elevation_deg))
    across = np.array([np.cos(az), 0.0, -np.sin(az)])
    axis = from_azimuth_over_elevation(azimuth=az, elevation=el)
    return expansion_of(cluster_of(1e9, [0, 0, 0], across, np.cross(axis, across)), 6)


def figures(expansion, axis_deg: tuple[float, float]) -> dict[str, float]:
    wanted = FigureSet(Evaluation(reference_axis_deg=axis_deg))
    values = wanted.values(expansion)[0]
    return {what.name: what.display(float(v)) for what, v in zip(wanted.definitions, values, strict=True)}


@pytest.mark.parametrize(("source", "axis", "apart"), [
    ((30.0, 0.0), (0.0, 0.0), 30.0),
    ((100.0, 0.0), (60.0, 0.0), 40.0),
    ((20.0, 25.0), (20.0, -10.0), 35.0),
])  # fmt: skip
def test_a_device_whose_axis_is_not_z(source, axis, apart):
    # Derivable: the field opposite to an axis `apart` from the source's is (1 - cos apart) / 2 of the peak's.
    found = figures(huygens(*source), axis)
    assert found["squint_axis_deg"] == pytest.approx(apart, abs=1e-4)
    down = -20.0 * np.log10(0.5 * (1.0 - np.cos(np.deg2rad(apart))))
    assert found["front_to_back_axis_db"] == pytest.approx(down, abs=1e-6)


def test_the_axis_is_named_and_nothing_is_given_without_one():
    assert not set(NAMES) & set(FigureSet(Evaluation()).names)
    labels = {d.name: d.label for d in FigureSet(Evaluation(reference_axis_deg=(0.0, 0.0))).definitions}
    assert labels["squint_axis_deg"] == "Squint from the mechanical boresight"
    labels = {d.name: d.label for d in FigureSet(Evaluation(reference_axis_deg=(3.0, -2.0))).definitions}
    assert labels["front_to_back_axis_db"] == "Front-to-back ratio about the axis at azimuth 3, elevation -2 deg"


def test_a_panel_against_its_closed_form_truth():
    frequency = np.array([24e9])
    device, wanted = panel(frequency, seed=7, centre_m=(0.01, 0.02, 0.03)), Evaluation(reference_axis_deg=(4.0, -3.0))
    true = truth_of(device, TruthSettings(0.0, settings=wanted))[0]
    found = figures(expansion_of(device, 52), (4.0, -3.0))
    for name in NAMES:
        assert found[name] == pytest.approx(true[name].value, abs=1e-3), name


def test_cuts_about_the_mechanical_boresight_of_a_device_that_looks_elsewhere():
    """Angles count from z, not from the peak: a Huygens source turned by 30 deg peaks at +30 deg, co-polar (1 + cos)/2."""
    turned = huygens(30.0, 0.0)
    grid = equiangular(theta_intervals=18, phi_count=24)
    field = synthesis(turned.coefficients, grid.theta, grid.phi.size)
    sphere = SimpleNamespace(polar_to_device=np.eye(3), field=field, theta=grid.theta, phi=grid.phi)
    done = SimpleNamespace(budget=SimpleNamespace(slant=0.0), sphere=sphere, expansion=turned)
    planes, as_read = _about_the_axis(done, np.pi, 0)  # type: ignore[arg-type]
    assert list(planes) == ["phi = 0 deg", "phi = 90 deg"]
    one = planes["phi = 0 deg"]
    front = np.abs(one.angle_deg) < 150.0
    level = np.abs(one.co[front])
    assert one.angle_deg[front][int(np.argmax(level))] == pytest.approx(30.0, abs=0.2)
    law = 0.5 * (1.0 + np.cos(np.deg2rad(one.angle_deg[front] - 30.0)))
    assert level / level.max() == pytest.approx(law, abs=1e-4)
    angle, amplitude = as_read["phi = 0 deg"]
    law = 0.5 * (1.0 + np.cos(np.deg2rad(angle - 30.0)))
    assert amplitude / amplitude.max() == pytest.approx(law, abs=1e-6)


def test_no_reading_is_shown_where_no_column_lies():
    turned = huygens(30.0, 0.0)
    grid = equiangular(theta_intervals=18, phi_count=15)  # no column at 90 nor at 180 deg
    field = synthesis(turned.coefficients, grid.theta, grid.phi.size)
    sphere = SimpleNamespace(polar_to_device=np.eye(3), field=field, theta=grid.theta, phi=grid.phi)
    done = SimpleNamespace(budget=SimpleNamespace(slant=0.0), sphere=sphere, expansion=turned)
    assert _about_the_axis(done, np.pi, 0)[1] == {}  # type: ignore[arg-type]
