"""Figures of devices that are not a panel facing +z, against closed-form truth and handbook values.

The analysis chain gets exact coefficients: the device's closed-form far field, expanded. Truth is worked out by code of
its own (`colure.twin.truth`), which shares no mathematics with the analysis.
"""

from __future__ import annotations

import numpy as np
import pytest
from scipy.spatial.transform import Rotation

from colure.analysis.figures.beams import Near, ellipse_tilt, unsteady_beam_reason
from colure.analysis.figures.cuts import FarField, e_plane
from colure.analysis.figures.evaluate import FigureSet
from colure.analysis.figures.phase_centre import phase_centre
from colure.geometry.conventions import SPEED_OF_LIGHT
from colure.geometry.directions import unit_vector
from colure.geometry.polarization import from_cartesian
from colure.geometry.rotations import RigidMotion
from colure.model.evaluation import Evaluation, Window
from colure.twin.antennas import horn, panel
from colure.twin.sources import Cluster
from colure.twin.true_field import TrueField
from colure.twin.truth import TrueFigure, TruthSettings, truth_of
from colure.waves.expansion import Expansion
from colure.waves.transform import analysis
from tests.conftest import cluster_of, expansion_of

F = 24e9
LAM = SPEED_OF_LIGHT / F


def wire(axis: tuple[float, float, float]) -> Cluster:
    """Half-wave dipole: sinusoidal current, 40 Gauss-Legendre pieces."""
    x, w = np.polynomial.legendre.leggauss(40)
    return cluster_of(F, np.outer(x * LAM / 4, axis), np.outer(w * np.cos(np.pi * x / 2), axis))


def sheet(side: int, *, steer_deg: float = 0.0, centre=(0.0, 0.0, 0.0), pitch: float = 0.5, rows: int = 0) -> Cluster:
    """Huygens sources polarized along x, their beam turned towards x."""
    across, up = ((np.arange(n) - (n - 1) / 2) * LAM * pitch for n in (side, rows or side))
    x, y = (g.ravel() for g in np.meshgrid(across, up, indexing="ij"))
    weights = np.exp(-2j * np.pi / LAM * x * np.sin(np.deg2rad(steer_deg)))
    ones = np.ones((x.size, 1))
    position = np.stack([x, y, 0 * x], -1) + np.asarray(centre)
    return cluster_of(F, position, ones * [1, 0, 0], ones * [0, 1, 0], weights[None])


def disc(wavelengths: float, z: float) -> Cluster:
    """Evenly lit round aperture of Huygens sources at a height."""
    count = int(wavelengths / 0.9) + 1
    a = np.arange(-count, count + 1) * 0.45 * LAM
    x, y = (g.ravel() for g in np.meshgrid(a, a, indexing="ij"))
    inside = np.hypot(x, y) <= wavelengths * LAM / 2
    ones = np.ones((int(inside.sum()), 1))
    return cluster_of(F, np.stack([x[inside], y[inside], z + 0 * x[inside]], -1), ones * [1, 0, 0], ones * [0, 1, 0])


PATCH = cluster_of(
    F, [[0.002, 0, 0], [-0.002, 0, 0], [0, 0.002, 0], [0, -0.002, 0]], [[1, 1j, 0]] * 4,
    0.85 * np.array([[-1j, 1, 0]] * 4),
)  # fmt: skip
#: The device, and an order that holds it.
DEVICES = {
    "dipole along x": (cluster_of(F, [0, 0, 0], [1, 0, 0]), 8),
    "dipole along y": (cluster_of(F, [0, 0, 0], [0, 1, 0]), 8),
    "dipole along z": (cluster_of(F, [0, 0, 0], [0, 0, 1]), 8),
    "dipole along a diagonal": (cluster_of(F, [0, 0, 0], [1, 0.3, 1]), 8),
    "half-wave dipole along z": (wire((0.0, 0.0, 1.0)), 16),
    "half-wave dipole along x": (wire((1.0, 0.0, 0.0)), 16),
    "turnstile": (cluster_of(F, [0, 0, 0], [1, 1j, 0]), 8),
    "crossed dipoles in phase": (cluster_of(F, [0, 0, 0], [1, 1, 0]), 8),
    "Huygens source": (cluster_of(F, [0, 0, 0], [1, 0, 0], [0, 1, 0]), 8),
    "Huygens source facing -z": (cluster_of(F, [0, 0, 0], [1, 0, 0], [0, -1, 0]), 8),
    "circular patch": (PATCH, 16),
    "circular ring of maxima": (cluster_of(F, [0, 0, 0], [0, 0, 1], [0, 0, 1j]), 8),
    "horn at 38 GHz": (horn(np.array([38e9]), a_m=0.03, b_m=0.024, slant_e_m=0.05, slant_h_m=0.055), 50),
    "8 x 8 steered to 45 deg": (sheet(8, steer_deg=45.0), 52),
    "4 x 4, 150 mm off": (sheet(4, centre=(0.15, 0.0, 0.0)), 110),
    "flawed panel": (panel(np.array([F])), 52),
}
TOLERANCE = {"phase_centre_x_mm": 0.002, "phase_centre_y_mm": 0.002, "phase_centre_z_mm": 0.01}
#: Figures that are depths: below this, in amplitude, what is left is rounding.
DEEP = 1e-3


def shown(figures: FigureSet, values: np.ndarray) -> dict[str, float]:
    return {
        d.name: float("nan") if np.isnan(v) else d.display(float(v))
        for d, v in zip(figures.definitions, values, strict=True)
    }


def agree(found: float, true: TrueFigure, name: str) -> bool:
    if np.isnan(found) or np.isnan(true.value):
        return bool(np.isnan(found) and np.isnan(true.value))
    if name.endswith("_db") and min(abs(found), abs(true.value)) > -20 * np.log10(DEEP):
        return bool(np.sign(found) == np.sign(true.value))
    off = found - true.value
    if name == "beam_azimuth_deg":
        off = (off + 180.0) % 360.0 - 180.0
    return abs(off) < TOLERANCE.get(name, 1e-3)


@pytest.mark.parametrize("name", DEVICES)
def test_every_figure_is_the_true_one_or_undefined_in_both(name):
    device, order = DEVICES[name]
    (true,) = truth_of(device, TruthSettings())
    figures, expansion = FigureSet(), expansion_of(device, order)
    (near,) = figures.places(expansion)
    found = shown(figures, figures.values(expansion)[0])
    again = shown(figures, figures.values(expansion, near=[near])[0])
    wrong = {n: (found[n], true[n]) for n in figures.names if not agree(found[n], true[n], n)}
    assert not wrong
    wrong = {n: (again[n], true[n]) for n in figures.names if not agree(again[n], true[n], n)}
    assert not wrong, "with the places known"
    assert {n for n in figures.names if np.isnan(found[n])} == set(near.reasons)
    assert all(one.reason for one in true.values() if np.isnan(one.value))
    assert all(reason.startswith(("undefined: ", "omnidirectional")) for reason in near.reasons.values())


def of(name: str) -> tuple[dict[str, float], Near]:
    device, order = DEVICES[name]
    figures, expansion = FigureSet(), expansion_of(device, order)
    return shown(figures, figures.values(expansion)[0]), figures.places(expansion)[0]


@pytest.mark.parametrize(
    ("name", "directivity", "width"),
    [
        # Handbook values, derivable: short dipole 1.7609 dBi and 90 deg; half-wave dipole 2.1509 dBi and 78.078 deg.
        ("dipole along x", 1.7609, 90.0),
        ("dipole along y", 1.7609, 90.0),
        ("dipole along z", 1.7609, 90.0),
        ("dipole along a diagonal", 1.7609, 90.0),
        ("crossed dipoles in phase", 1.7609, 90.0),
        ("half-wave dipole along x", 2.1509, 78.078),
        ("half-wave dipole along z", 2.1509, 78.078),
    ],
)
def test_dipoles_however_they_lie(name, directivity, width):
    found, near = of(name)
    assert found["directivity_dbi"] == pytest.approx(directivity, abs=5e-5)
    assert found["beamwidth_e_deg"] == pytest.approx(width, abs=1e-3)
    assert "omnidirectional" in near.reasons["beamwidth_h_deg"]
    assert "no single beam" in near.reasons["beam_azimuth_deg"]
    assert found["null_e_db"] < -100.0


def test_a_turnstile_has_two_beams_and_no_half_power_width():
    # Intensity 1 + cos^2 theta (derivable): 1.7609 dBi along +-z, exactly half of that at the horizon and never less.
    found, near = of("turnstile")
    assert found["directivity_dbi"] == pytest.approx(1.7609, abs=5e-5)
    for plane in "eh":
        assert "omnidirectional" in near.reasons[f"beamwidth_{plane}_deg"]
    assert "no single beam" in near.reasons["beam_elevation_deg"]


def test_a_huygens_source_facing_backwards_is_as_wide():
    found, near = of("Huygens source facing -z")
    for plane in "eh":
        assert found[f"beamwidth_{plane}_deg"] == pytest.approx(
            131.06, abs=6e-3
        )  # (1 + cos)^2 at half power, derivable
    assert abs(found["beam_azimuth_deg"]) == pytest.approx(180.0, abs=1e-4)
    assert "Ludwig" in near.reasons["xpd_db"]


def test_a_circular_ring_of_maxima_has_no_e_plane():
    _, near = of("circular ring of maxima")
    assert "neither an E plane" in near.reasons["beamwidth_e_deg"]


def test_cuts_of_one_component_where_it_is_asked_for():
    """A slanted panel: the co-polar component alone is narrower where cross-polarization grows."""
    device = panel(np.array([F]))
    for kind in ("intensity", "co"):
        wanted = Evaluation(cuts_of=kind)
        figures = FigureSet(wanted)
        found = shown(figures, figures.values(expansion_of(device, 52))[0])
        (true,) = truth_of(device, TruthSettings(settings=wanted))
        for name in ("beamwidth_e_deg", "beamwidth_h_deg", "side_lobe_e_db", "side_lobe_h_db", "null_h_db"):
            assert found[name] == pytest.approx(true[name].value, abs=1e-3), (kind, name)


def test_settings_region_and_one_polarization_are_the_same_in_both():
    window = Window(name="front", azimuth_deg=(-20.0, 10.0), elevation_deg=(-5.0, 30.0))
    wanted = Evaluation(
        beamwidth_levels_db=(3.0, 6.0), cut_planes_deg=(30.0,), rear_sector_deg=45.0, horizon_bands_deg=(20.0,), up="z",
        coverage_percent=(50.0, 95.0), transmit_power_dbm=10.0, sensitivity_dbm=-90.0, sectors=(window,),
        commanded_deg={"beam": (2.0, -1.0)}, cone_deg=5.0,
    )  # fmt: skip
    device = panel(np.array([F]), seed=5)
    expansion = expansion_of(device, 52)
    for region in (180.0, 60.0):
        figures = FigureSet(wanted, region=float(np.deg2rad(region)))
        found = shown(figures, figures.values(expansion)[0])
        (true,) = truth_of(device, TruthSettings(settings=wanted, region_deg=region))
        for name in figures.names:
            # Coverage and sectors are counted on grids: a tenth of a dB between two of them.
            off = 0.1 if name.startswith(("coverage", "sector")) else TOLERANCE.get(name, 1e-3)
            assert found[name] == pytest.approx(true[name].value, abs=off), (region, name)
        assert {n for n, one in true.items() if one.reason} == set(true) - set(figures.names)


def test_two_beams_are_no_single_beam_and_their_levels_decide():
    """Two equal lobes 40 deg apart (x-z plane), then one of them 1 dB lower."""
    for weaker, one in ((1.0, False), (10.0 ** (-1.0 / 20.0), True)):
        left, right = sheet(8, steer_deg=-20.0), sheet(8, steer_deg=20.0)
        both = cluster_of(F, left.position, left.electric, left.magnetic, weaker * left.weights + right.weights)
        figures, expansion = FigureSet(), expansion_of(both, 52)
        (near,) = figures.places(expansion)
        assert ("beam_azimuth_deg" not in near.reasons) == one
        if not one:
            assert "equal" in near.reasons["beam_azimuth_deg"]
        (true,) = truth_of(both, TruthSettings())
        assert np.isfinite(true["beam_azimuth_deg"].value) == one


def test_a_perturbed_pattern_is_searched_as_widely_as_the_peak_can_move():
    """The stronger of two lobes changes: the peak known before does not hold the new one back."""
    left, right = sheet(8, steer_deg=-20.0), sheet(8, steer_deg=20.0)

    def of_both(a: float, b: float):
        return expansion_of(
            cluster_of(F, left.position, left.electric, left.magnetic, a * left.weights + b * right.weights), 52
        )

    figures = FigureSet()
    near = figures.places(of_both(1.0, 0.9))
    column = figures.names.index("beam_azimuth_deg")
    assert figures.values(of_both(1.0, 0.9), near=near)[0, column] == pytest.approx(-19.5, abs=1.0)
    assert figures.values(of_both(0.9, 1.0), near=near)[0, column] == pytest.approx(19.5, abs=1.0)


def test_a_direction_that_errors_move_by_half_its_beam_is_not_defined():
    near = Near(np.array([0.0, 0.0, 1.0]), None, widths_deg=(40.0, 50.0))
    assert unsteady_beam_reason(near, azimuth_deg=3.0, elevation_deg=4.0) == ""
    assert "no single beam" in unsteady_beam_reason(near, azimuth_deg=20.0, elevation_deg=0.0)


def test_front_to_rear_does_not_jump_at_the_sectors_edge():
    """A lobe crosses the edge of the sector: the ratio moves as little as the edge does, and is the true one."""
    device = sheet(4, rows=2)
    expansion = expansion_of(device, 26)

    def found(sector: float) -> float:
        one = FigureSet(Evaluation(rear_sector_deg=sector))
        return shown(one, one.values(expansion)[0])["front_to_rear_db"]

    for sector in (20.0, 35.0, 65.0):
        (true,) = truth_of(device, TruthSettings(settings=Evaluation(rear_sector_deg=sector)))
        assert found(sector) == pytest.approx(true["front_to_rear_db"].value, abs=1e-3)
    for sector in np.linspace(20.0, 65.0, 16):
        assert abs(found(float(sector) + 0.01) - found(float(sector))) < 0.05


def expanded(device: Cluster, order: int) -> Expansion:
    """Expand as `expansion_of` does, by the quicker sums of the truth."""
    theta, columns = np.linspace(0.0, np.pi, order + 3), 2 * order + 2
    t, p = np.meshgrid(theta, np.arange(columns) * 2 * np.pi / columns, indexing="ij")
    vectors = TrueField(device).at(unit_vector(theta=t, phi=p).reshape(-1, 3)).reshape(*t.shape, 3)
    return Expansion(analysis(np.stack(from_cartesian(vectors, theta=t, phi=p))[None], order), device.k)


@pytest.mark.parametrize("wavelengths", [8.5, 10.0, 20.0, 40.0])
def test_phase_centre_of_round_apertures_of_any_size(wavelengths, request):
    """An evenly lit flat aperture has its phase centre in its plane (derivable); a cone over its nulls says anything."""
    if wavelengths > 20.0 and not request.config.getoption("--nightly"):
        pytest.skip("the widest takes four seconds: nightly")
    expansion = expanded(disc(wavelengths, 0.010), int(np.pi * np.hypot(wavelengths, 1.6)) + 30)
    found = phase_centre(expansion.coefficients[0], float(expansion.k[0]), slant=0.0)
    assert 1e3 * found.position_m == pytest.approx([0.0, 0.0, 10.0], abs=1e-3)
    assert found.ripple_deg < 0.01


def test_a_phase_that_is_not_flat_has_no_centre():
    """Saddle-shaped phase errors: the two planes have their centres far apart, in front and behind, and no point suits both."""
    device = sheet(8)
    x, y = device.position[:, 0] / (3.5 * LAM / 2), device.position[:, 1] / (3.5 * LAM / 2)
    saddle = cluster_of(F, device.position, device.electric, device.magnetic, np.exp(1.6j * (x**2 - y**2))[None])
    figures = FigureSet()
    (near,) = figures.places(expansion_of(saddle, 52))
    (true,) = truth_of(saddle, TruthSettings())
    for axis in "xyz":
        assert "ripples by" in near.reasons[f"phase_centre_{axis}_mm"]
        assert "ripples by" in true[f"phase_centre_{axis}_mm"].reason


def test_a_peak_at_the_edge_of_the_region_is_no_peak():
    device = sheet(8, steer_deg=45.0)
    figures = FigureSet(region=float(np.deg2rad(40.0)))
    (near,) = figures.places(expansion_of(device, 52))
    (true,) = truth_of(device, TruthSettings(region_deg=40.0))
    for name in ("gain_dbi", "beam_azimuth_deg", "beamwidth_e_deg", "side_lobe_e_db"):
        assert "edge of the measured region" in near.reasons[name]
        assert "edge of the region" in true[name].reason


def test_a_ring_of_maxima_that_leaves_the_region_has_a_truth():
    """A dipole along x, looked at 103 deg about +z: its ring about x goes out of the region and comes back; a rehearsal crashed on it."""
    dipole = cluster_of(F, [0, 0, 0], [1, 0, 0])
    (true,) = truth_of(dipole, TruthSettings(region_deg=103.0))
    assert "edge of the region" in true["gain_dbi"].reason and "edge of the region" in true["xpd_worst_db"].reason


def test_one_polarization_gives_partial_gains():
    """IEEE Std 145: a partial gain is that for a given polarization; the label says which it is."""
    labels = {d.name: d.label for d in FigureSet(one_polarization=True).definitions}
    assert labels["gain_dbi"] == "Peak partial gain (realized)"
    assert not any(label.startswith(("Peak gain", "Total gain")) for label in labels.values())
    # A dipole that lies 60 deg from the measured polarization: a quarter of its gain is in it (Malus, derivable).
    slanted = cluster_of(
        F, [0, 0, 0], [np.cos(np.pi / 3), np.sin(np.pi / 3), 0], [-np.sin(np.pi / 3), np.cos(np.pi / 3), 0]
    )
    (true,) = truth_of(slanted, TruthSettings(one_polarization=True, region_deg=60.0))
    assert true["gain_dbi"].value == pytest.approx(10 * np.log10(3.0 / 4.0), abs=1e-6)
    assert "both polarizations" in true["xpd_db"].reason and "whole sphere" in true["directivity_dbi"].reason


def test_the_measured_ellipse_has_an_axis_unless_it_is_round():
    """A dipole 25 deg from x towards y (derivable), a ring of maxima or not; a circular patch has no axis to measure."""
    turn = np.deg2rad(25.0)
    slanted = cluster_of(F, [0, 0, 0], [np.cos(turn), np.sin(turn), 0], [-np.sin(turn), np.cos(turn), 0])
    assert ellipse_tilt(expansion_of(slanted, 8).coefficients[0], slant=0.0) == pytest.approx(turn, abs=1e-6)
    assert ellipse_tilt(expansion_of(PATCH, 16).coefficients[0], slant=0.0) is None


@pytest.mark.parametrize("beam_deg", [(125.0, 40.0), (140.0, 100.0), (165.0, 250.0)])
@pytest.mark.parametrize("slant_deg", [0.0, 30.0])
def test_the_e_plane_of_a_beam_far_behind_holds_its_field(beam_deg, slant_deg):
    """Huygens source turned away from +z, polarized along a wire: the E plane holds the field vector at the peak (IEEE Std 145)."""
    peak = unit_vector(theta=np.deg2rad(beam_deg[0]), phi=np.deg2rad(beam_deg[1]))
    wire_axis = np.array([1.0, 0.1, 0.05])
    along = wire_axis - (wire_axis @ peak) * peak
    along /= np.linalg.norm(along)
    source = cluster_of(F, [0, 0, 0], list(along), list(np.cross(peak, along)))
    field_ = FarField(expansion_of(source, 8).coefficients[0])
    tangent, plane = e_plane(peak, field_.at(peak[None])[0], np.deg2rad(slant_deg))
    assert plane == "ellipse"
    assert tangent @ tangent == pytest.approx(1.0, abs=1e-9)
    assert abs(tangent @ along) == pytest.approx(1.0, abs=1e-9)


@pytest.mark.parametrize(("name", "turn"), [("circular patch", 5), ("circular patch", 28), ("Huygens source", 15)])
@pytest.mark.parametrize("slant_deg", [0.0, -50.0])
def test_figures_of_a_device_turned_anyhow(name, turn, slant_deg):
    """A device on its mount the wrong way round: its beam more than 120 deg from +z."""
    device, order = DEVICES[name]
    rotation = Rotation.random(rng=turn).as_matrix()
    turned = device.moved(RigidMotion(rotation, np.zeros(3)))
    (true,) = truth_of(turned, TruthSettings(slant_deg=slant_deg))
    figures, expansion = FigureSet(slant=float(np.deg2rad(slant_deg))), expansion_of(turned, order)
    found = shown(figures, figures.values(expansion)[0])
    wrong = {n: (found[n], true[n]) for n in figures.names if not agree(found[n], true[n], n)}
    assert not wrong
    # A sense does not change when the device is turned (a rotation is no mirror).
    assert found["circularity"] == pytest.approx(of(name)[0]["circularity"], abs=1e-6, nan_ok=True)


@pytest.mark.parametrize("seed", [6, 8])
def test_the_highest_lobe_may_stand_at_the_regions_edge(seed):
    """Three sources of any strength, half a sphere: the highest lobe is that of many samples, those on the rim included."""
    random = np.random.default_rng(seed)
    device = cluster_of(
        F, random.normal(size=(3, 3)) * 0.5 * LAM, random.normal(size=(3, 3)), random.normal(size=(3, 3))
    )
    figures, expansion = FigureSet(region=np.pi / 2), expansion_of(device, 26)
    found = shown(figures, figures.values(expansion)[0])["side_lobe_highest_db"]
    t, p = np.meshgrid(np.deg2rad(np.arange(0.0, 90.1, 0.5)), np.deg2rad(np.arange(0.0, 360.0, 0.5)), indexing="ij")
    places = unit_vector(theta=t, phi=p)
    power = np.sum(np.abs(device.far_field(places.reshape(-1, 3))) ** 2, axis=-1).reshape(t.shape)
    other = places @ places[np.unravel_index(np.argmax(power), power.shape)] < np.cos(np.deg2rad(10.0))
    below = np.vstack([power[1:], np.zeros((1, p.shape[1]))])  # beyond the rim nothing is known
    beside = np.maximum(np.roll(power, 1, axis=1), np.roll(power, -1, axis=1))
    tops = other[1:] & (power[1:] >= power[:-1]) & (power[1:] >= below[1:]) & (power[1:] >= beside[1:])
    assert found == pytest.approx(10.0 * np.log10(power[1:][tops].max() / power.max()), abs=1e-3)
