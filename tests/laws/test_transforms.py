"""Transforms by law: round trip, adjoint, rotation, translation, Parseval."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.spatial.transform import Rotation

from colure.geometry.conventions import mode_count
from colure.geometry.directions import theta_phi, unit_vector
from colure.geometry.polarization import to_ludwig_1
from colure.geometry.sphere import equiangular, gauss_legendre
from colure.waves import transform
from colure.waves.expansion import Expansion
from colure.waves.probe import FirstOrderResponse, apply_response, remove_response, unobservable
from colure.waves.scattered import adjoint_at, synthesis_at

seeds = st.integers(0, 2**31)
orders = st.integers(1, 25)


def random_coefficients(seed: int, order: int, *lead: int) -> np.ndarray:
    rng = np.random.default_rng(seed)
    shape = (*lead, 2, mode_count(order))
    return rng.normal(size=shape) + 1j * rng.normal(size=shape)


def cartesian(expansion: Expansion, d: np.ndarray) -> np.ndarray:
    t, p = theta_phi(d)
    e = expansion.far_field_at(theta=t, phi=p)
    return to_ludwig_1(e[..., 0, :], e[..., 1, :], theta=t, phi=p)


@pytest.mark.parametrize("order", [1, 36, 180, 500])
@pytest.mark.parametrize("layout", ["with-poles", "without-poles", "gauss-legendre"])
def test_round_trip(order, layout):
    a = random_coefficients(order, order)
    rings = order + 2 if layout == "with-poles" else order + 1
    theta = {
        "with-poles": np.linspace(0, np.pi, rings),
        "without-poles": (np.arange(rings) + 0.5) * np.pi / rings,
        "gauss-legendre": gauss_legendre(rings=rings, phi_count=1).theta,
    }[layout]
    field = transform.synthesis(a, theta, 2 * order + 1, phi_start=0.3)
    back = transform.analysis(field, order, layout=layout, phi_start=0.3)
    assert np.abs(back - a).max() / np.abs(a).max() < 1e-12


@given(seeds, orders)
def test_adjoint_inner_product_on_rings(seed, order):
    a, b = random_coefficients(seed, order, 2)
    rng = np.random.default_rng(seed + 1)
    theta, start = np.sort(rng.uniform(0.01, 3.1, 7)), rng.uniform(0, 6, 7)
    field = transform.synthesis(b, theta, 9, phi_start=start)
    left = np.vdot(transform.adjoint_synthesis(field, order, theta, phi_start=start), a)
    assert left == pytest.approx(np.vdot(field, transform.synthesis(a, theta, 9, phi_start=start)), rel=1e-10)


@given(seeds, orders)
def test_adjoint_inner_product_at_points(seed, order):
    a, b = random_coefficients(seed, order, 2)
    rng = np.random.default_rng(seed)
    t, p = rng.uniform(0, np.pi, 40), rng.uniform(0, 6.28, 40)
    field = synthesis_at(b, theta=t, phi=p)
    assert np.vdot(adjoint_at(field, order, theta=t, phi=p), a) == pytest.approx(
        np.vdot(field, synthesis_at(a, theta=t, phi=p)), rel=1e-9
    )


@given(seeds, orders)
def test_scattered_and_ring_synthesis_agree(seed, order):
    a = random_coefficients(seed, order, 2)
    theta = np.linspace(0, np.pi, 5)
    t, p = np.meshgrid(theta, np.arange(6) * np.pi / 3, indexing="ij")
    rings = transform.synthesis(a, theta, 6)
    points = synthesis_at(a, theta=t, phi=p).reshape(rings.shape)
    assert points == pytest.approx(rings, abs=1e-10 * np.abs(a).max() * order)


@given(seeds, orders)
def test_parseval(seed, order):
    expansion = Expansion(random_coefficients(seed, order), np.array(100.0))
    grid = equiangular(theta_intervals=2 * order + 2, phi_count=4 * order + 2)
    field = expansion.far_field(grid.theta, grid.phi.size)
    assert grid.integrate(np.sum(np.abs(field) ** 2, axis=0)) == pytest.approx(expansion.power(), rel=1e-11)
    assert expansion.mode_power().sum() == pytest.approx(expansion.power(), rel=1e-13)


@given(seeds, orders)
def test_rotation_turns_the_field_rigidly_and_back(seed, order):
    expansion = Expansion(random_coefficients(seed, order), np.array(100.0))
    rng = np.random.default_rng(seed)
    matrix = Rotation.random(random_state=rng).as_matrix()
    d = unit_vector(theta=rng.uniform(0, np.pi, 9), phi=rng.uniform(0, 6, 9))
    turned = expansion.rotated(matrix)
    assert cartesian(turned, d @ matrix.T) == pytest.approx(
        cartesian(expansion, d) @ matrix.T, abs=1e-10 * np.sqrt(expansion.power())
    )
    back = turned.rotated(matrix.T).coefficients
    assert np.abs(back - expansion.coefficients).max() < 1e-11 * np.abs(expansion.coefficients).max()


@pytest.mark.parametrize("angle", [0.0, 0.3, np.pi])
@pytest.mark.parametrize("axis", ["x", "y", "z"])
def test_rotation_about_the_frame_axes(axis, angle):
    expansion = Expansion(random_coefficients(3, 4), np.array(10.0))
    matrix = Rotation.from_euler(axis, angle).as_matrix()
    d = unit_vector(theta=np.array([0.2, 1.0, 2.5]), phi=np.array([0.1, 2.0, 5.0]))
    assert cartesian(expansion.rotated(matrix), d @ matrix.T) == pytest.approx(
        cartesian(expansion, d) @ matrix.T, abs=1e-11
    )


@settings(max_examples=20)
@given(seeds, st.integers(1, 12))
def test_translation_adds_the_path_and_comes_back(seed, order):
    rng = np.random.default_rng(seed)
    expansion = Expansion(random_coefficients(seed, order), np.array(500.0))
    shift = rng.uniform(-0.02, 0.02, 3)
    moved = expansion.translated(shift)
    d = unit_vector(theta=rng.uniform(0, np.pi, 9), phi=rng.uniform(0, 6, 9))
    phase = np.exp(1j * 500.0 * (d @ shift))[:, None]
    assert cartesian(moved, d) == pytest.approx(cartesian(expansion, d) * phase, abs=1e-10 * np.sqrt(expansion.power()))
    back = moved.translated(-shift, order=moved.order).truncated(order)
    assert np.abs(back.coefficients - expansion.coefficients).max() < 1e-10 * np.abs(expansion.coefficients).max()


@given(seeds, orders)
def test_double_sided_slices_fold_to_the_single_sided_grid(seed, order):
    count = order + 2
    a = random_coefficients(seed, order)
    single = transform.synthesis(a, np.linspace(0, np.pi, count + 1), 2 * count)
    theta = (np.arange(2 * count) - count + 1) * np.pi / count
    field = np.empty((2, 2 * count, count), complex)
    for i, t in enumerate(theta):
        if t >= 0:
            field[:, i] = single[:, round(t * count / np.pi), :count]
        else:  # negative theta: the other half turn of phi, both unit vectors reversed
            field[:, i] = -single[:, round(-t * count / np.pi), count:]
    folded = transform.fold_double_sided(field, theta)
    assert folded == pytest.approx(single, abs=1e-11 * np.abs(single).max())


def test_analysis_refuses_an_order_the_grid_cannot_carry():
    with pytest.raises(ValueError, match="must be 1 to 8"):
        transform.analysis(np.zeros((2, 10, 40), complex), 9)


def test_response_is_removed_and_hidden_degrees_are_named_not_divided_by():
    rng = np.random.default_rng(0)
    shape = (3, 2, 6)
    factors = [1.0 + 0.2 * (rng.normal(size=shape) + 1j * rng.normal(size=shape)) for _ in range(2)]
    factors[0][..., 3] = factors[1][..., 3] = 0.0
    response = FirstOrderResponse(factors[0], factors[1], np.ones(3))
    a = random_coefficients(1, 6, 3)
    back = remove_response(apply_response(a, response), response)
    hidden = unobservable(response)
    assert hidden.tolist() == [[False, False, False, True, False, False]] * 3
    seen = np.ones(mode_count(6), bool)
    seen[15:24] = False
    assert np.abs(back[..., seen] - a[..., seen]).max() < 1e-12
    assert np.all(back[..., ~seen] == 0.0)
