"""The closed-form sources against textbook antennas and an independent solver."""

from __future__ import annotations

import numpy as np
import pytest

from colure.geometry.directions import unit_vector
from colure.geometry.kinematics import probe_to_lab
from colure.geometry.rotations import RigidMotion, about_axis
from colure.geometry.sphere import gauss_legendre
from colure.twin.antennas import horn, panel, probe_ports
from colure.twin.sources import transmission
from colure.waves.horn import horn_gain_dbi, near_loss_db
from tests.conftest import cluster_of

LIGHT = 299_792_458.0
F = 1e9
LAM = LIGHT / F


def gain(cluster, theta, phi=0.0):
    field = cluster.far_field(np.atleast_2d(unit_vector(theta=theta, phi=phi)))
    return np.sum(np.abs(field) ** 2, axis=-1)


def test_short_dipole_and_huygens_source():
    # Directivities 1.5 and 3 (standards sheet section 4).
    assert gain(cluster_of(F, [0, 0, 0], [0, 0, 1]), np.pi / 2) == pytest.approx(1.5, rel=1e-12)
    huygens = cluster_of(F, [0, 0, 0], [1, 0, 0], [0, 1, 0])
    assert gain(huygens, 0.0) == pytest.approx(3.0, rel=1e-12)
    assert gain(huygens, np.pi) == pytest.approx(0.0, abs=1e-12)


def test_half_wave_dipole_as_a_row_of_short_ones():
    # D = 1.64092 (2.1509 dBi): exact value of the standards sheet section 0.
    z, weights = np.polynomial.legendre.leggauss(60)
    z = z * LAM / 4
    cluster = cluster_of(
        F, np.stack([0 * z, 0 * z, z], -1), np.stack([0 * z, 0 * z, weights * np.cos(2 * np.pi * z / LAM)], -1)
    )
    assert gain(cluster, np.pi / 2) == pytest.approx(1.64092, abs=6e-6)


def test_closed_form_power_equals_the_integral_of_the_far_field():
    device = panel(np.array([24.0e9, 24.25e9]))
    grid = gauss_legendre(rings=60, phi_count=120)
    t, p = grid.directions()
    field = device.far_field(unit_vector(theta=t, phi=p).reshape(-1, 3)).reshape(2, *t.shape, 3)
    mean = grid.integrate(np.sum(np.abs(field) ** 2, axis=-1)) / (4 * np.pi)
    assert mean == pytest.approx(device.efficiency, rel=1e-12)


def test_sources_in_one_place_radiate_what_their_sum_does():
    # Power goes with the square of the moment (any text on the Hertzian dipole): split ones must not lose their common part.
    r = [[0, 0, 0], [0, 0, 0], [0.1, 0.02, 0], [0, 0, 1e-8]]
    p, m = [[1, 0, 0], [0.5j, 0.3, 0], [0.2, 0, 1], [1, 0, 0]], [[0, 1, 0], [0, 0.4, 1j], [0, 0, 0], [0, 0, 0]]
    split = cluster_of(F, r, p, m)
    one = cluster_of(F, [[0, 0, 0], r[2]], [[2 + 0.5j, 0.3, 0], p[2]], [[0, 1.4, 1j], m[2]])
    assert split.power() == pytest.approx(one.power(), rel=1e-7)
    grid = gauss_legendre(rings=30, phi_count=60)
    t, phi = grid.directions()
    field = split.far_field(unit_vector(theta=t, phi=phi).reshape(-1, 3)).reshape(1, *t.shape, 3)
    assert grid.integrate(np.sum(np.abs(field) ** 2, axis=-1)) / (4 * np.pi) == pytest.approx(1.0, rel=1e-7)


def test_near_field_obeys_the_wave_equation():
    device = cluster_of(F, [[0, 0, 0], [0.1, 0.05, 0]], [[1, 0.2j, 0], [0, 1, 1]], [[0, 0, 1], [0.3, 0, 0]])
    point, h = np.array([0.3, -0.2, 0.4]), 2e-3
    offsets = np.concatenate([[[0, 0, 0]], h * np.eye(3), -h * np.eye(3)])
    e = device.field_at(point + offsets)[0]
    laplacian = (e[1:].sum(axis=0) - 6 * e[0]) / h**2
    divergence = sum((e[1 + i, i] - e[4 + i, i]) / (2 * h) for i in range(3))
    k = device.k[0]
    assert laplacian == pytest.approx(-(k**2) * e[0], abs=2e-4 * k**2 * np.abs(e[0]).max())
    assert abs(divergence) < 2e-3 * k * np.abs(e[0]).max()


def test_transmission_far_away_is_friis():
    # H. T. Friis, Proc. IRE 34:254, 1946.
    f = np.array([24.0e9, 24.25e9])
    device, probe = panel(f, centre_m=(0, 0, 0)), probe_ports(f)[0]
    distance = 400.0
    s21 = transmission(
        device, probe.moved(probe_to_lab(distance=distance, roll=0.0)),
        source_power=device.power(), receiver_power=probe.power(),
    )  # fmt: skip
    x_only = np.abs(device.far_field([[0, 0, 1.0]])[:, 0, 0]) ** 2
    co = np.abs(probe.far_field([[0, 0, 1.0]])[:, 0, 0]) ** 2
    friis = x_only * co * (LIGHT / (4 * np.pi * distance * f)) ** 2
    assert np.abs(s21) ** 2 == pytest.approx(friis, rel=0.03)


def test_horn_agrees_with_the_dimension_formula_within_its_stated_accuracy():
    # Slayton, NRL Report 4433: 0.25 to 0.3 dB (from memory).
    f = np.array([24.0e9, 24.25e9])
    size = {"a": 0.050, "b": 0.040, "slant_e": 0.090, "slant_h": 0.100}
    simulated = horn(f, a_m=0.050, b_m=0.040, slant_e_m=0.090, slant_h_m=0.100)
    found = 10 * np.log10(gain(simulated, 0.0)[:, 0])
    assert found == pytest.approx(horn_gain_dbi(f, **size), abs=0.25)


@pytest.mark.parametrize(
    ("ghz", "side", "distance"),
    [(24.0, 0.05, 0.3), (24.0, 0.05, 0.5), (24.0, 0.05, 1.2), (24.25, 0.05, 2.5), (2.45, 0.25, 0.6), (2.45, 0.25, 1.0)],
)
def test_horn_loses_gain_at_finite_distance_as_its_formula_says(ghz, side, distance):
    """The closed form sums dipoles over the mouth; 0.002 dB is seen, two mouths away too (curvatures alone miss 0.1 dB there)."""
    f = np.array([1e9 * ghz])
    size = {"a": side, "b": 0.8 * side, "slant_e": 1.8 * side, "slant_h": 2.0 * side}
    many_across = side / 24.0 * f[0] / LIGHT
    simulated = horn(
        f, a_m=side, b_m=size["b"], slant_e_m=size["slant_e"], slant_h_m=size["slant_h"], spacing=many_across
    )
    near = 20 * np.log10(np.abs(simulated.field_at([[0.0, 0.0, distance]])[:, 0, 0]) * distance)
    loss = 10 * np.log10(gain(simulated, 0.0)[:, 0]) - near
    assert loss == pytest.approx(horn_gain_dbi(f, **size) - horn_gain_dbi(f, **size, distance=distance), abs=0.004)
    assert np.all(loss > 0.02)


@pytest.mark.parametrize(
    ("ghz", "side", "distance", "ring"),
    [(5.0, 0.25, 0.6, 12.5e-3), (11.0, 0.109, 0.8, 5.7e-3), (24.0, 0.05, 0.3, 2.6e-3)],
)
def test_a_probe_with_a_beam_hears_less_of_a_near_horn_as_its_formula_says(ghz, side, distance, ring):
    """Of a point it would hear the same: what a short dipole hears of a near horn is what the probe does, but for the mouth's rim."""
    f = np.array([1e9 * ghz])
    size = {"a": side, "b": 0.8 * side, "slant_e": 1.8 * side, "slant_h": 2.0 * side}
    simulated = horn(f, a_m=side, b_m=size["b"], slant_e_m=size["slant_e"], slant_h_m=size["slant_h"], spacing=0.2)
    probe, dipole = probe_ports(f, ring_m=ring, cross_polar_db=-200.0)[0], cluster_of(f[0], [0, 0, 0], [1, 0, 0])

    def loss(heard):
        near, far = (
            np.abs(transmission(simulated, heard.moved(probe_to_lab(distance=r, roll=0.0)),
                   source_power=simulated.power(), receiver_power=heard.power())) * r
            for r in (distance, 300.0 * distance)
        )  # fmt: skip
        return 20.0 * np.log10(far / near)

    seen = np.linalg.norm(
        probe.far_field(unit_vector(theta=np.deg2rad([0, 10, 10]), phi=np.deg2rad([0, 0, 90])))[0], axis=-1
    )
    beam = -np.log(np.mean(seen[1:]) / seen[0]) / np.deg2rad(10.0) ** 2
    told = near_loss_db(f, **size, distance=distance, beam=beam) - near_loss_db(f, **size, distance=distance)
    assert loss(probe) - loss(dipole) == pytest.approx(told, rel=0.15)
    assert told > 0.005


def test_a_small_horn_is_no_smaller_by_its_few_sources():
    """The second moment of a mouth of n sources across is 1 - 1/n^2 of the whole one's (midpoints; derivable)."""
    f = np.array([2.45e9])
    sides = {"a_m": 0.25, "b_m": 0.19, "slant_e_m": 0.30, "slant_h_m": 0.33}
    coarse, fine = horn(f, **sides), horn(f, **sides, spacing=0.1)
    levels = [
        20 * np.log10(np.abs(one.field_at([[0.0, 0.0, 0.6]])[:, 0, 0]) * 0.6) - 10 * np.log10(gain(one, 0.0)[:, 0])
        for one in (coarse, fine)
    ]
    assert levels[0] == pytest.approx(levels[1], abs=0.015)


def test_wall_image_equals_an_explicit_mirror_dipole():
    device = cluster_of(F, [0.1, 0.2, 0.3], [1, 2, 3], [0.5, 0, -1])
    image = device.mirrored([1.0, 0.0, 0.0], 0.8, -0.5)
    assert image.position == pytest.approx(np.array([[1.5, 0.2, 0.3]]))
    # Conductor: tangential electric and normal magnetic moments change sign; the wall's own factor follows.
    assert image.electric.real == pytest.approx(np.array([[1, -2, -3]]))
    assert image.magnetic.real == pytest.approx(np.array([[-0.5, 0, -1]]))
    assert image.weights == pytest.approx(np.array([[-0.5]]))


def test_on_a_conducting_plane_the_tangential_field_vanishes():
    device = cluster_of(F, [0.1, 0.2, 0.3], [1, 2, 3], [0.5, 0, -1])
    image = device.mirrored([1.0, 0.0, 0.0], 0.8, 1.0)
    points = np.array([[0.8, 0.5, 0.1], [0.8, -0.4, 0.9]])
    total = device.field_at(points) + image.field_at(points)
    assert np.abs(total[..., 1:]).max() < 1e-12 * np.abs(total).max()


def test_a_sweep_on_the_move_is_every_frequency_where_it_was_taken():
    """All frequencies' own placements at once, against one frequency after the other."""
    f = np.array([24.0e9, 24.1e9, 24.25e9])
    device, (port, *_) = panel(f), probe_ports(f, ring_m=0.01, cross_polar_db=-40.0)
    probe = probe_to_lab(distance=1.2, roll=np.full(3, 0.3))
    turns = [about_axis("y", angle) for angle in (0.1, 0.12, 0.15)]
    placed = device.moved(RigidMotion(np.stack(turns), np.zeros((3, 3))))
    power = {"source_power": device.power(), "receiver_power": port.power()}
    together = transmission(placed, port.moved(probe), moving=True, **power)
    each = transmission(placed, port.moved(probe), **power)  # placement, frequency
    assert together == pytest.approx(np.diagonal(each), rel=1e-12)
