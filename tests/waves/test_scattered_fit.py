"""Scattered samples: irregular, partial, noisy, repeated, moving; against the closed-form panel."""

from __future__ import annotations

from dataclasses import replace
from types import SimpleNamespace

import numpy as np
import pytest

from colure.geometry.directions import fold, unit_vector
from colure.twin.antennas import panel
from colure.waves.expansion import Expansion
from colure.waves.least_squares import LeastSquaresFit
from colure.waves.scattered_fit import Samples, ScatteredOperator, fit_scattered, radial_nodes
from tests.conftest import expansion_of

F = np.array([24.125e9])
DEVICE = panel(F)
K = float(DEVICE.k[0])
TRUTH = expansion_of(DEVICE, 60)


def near_samples(theta, phi, radius, noise_db=None, seed=0):
    """Closed form checked below: fields of the panel's expansion at scattered places."""
    empty = Samples.of(theta=theta, phi=phi, field=np.zeros((2, np.size(theta))), radius=radius)
    operator = ScatteredOperator(empty, 60, K)
    field = operator.forward(TRUTH.coefficients[0] * operator.reference) / operator.row_weight * operator.common
    if noise_db is not None:
        random = np.random.default_rng(seed)
        raw = random.normal(size=(2, *field.shape)) / np.sqrt(2.0)
        field = field + 10 ** (noise_db / 20) * np.abs(field).max() * (raw[0] + 1j * raw[1])
    return Samples.of(theta=theta, phi=phi, field=field, radius=radius)


def rms_db(coefficients, within_deg=180.0):
    """Rms of the complex vector difference on a 1 deg grid, relative to the peak."""
    theta = np.deg2rad(np.arange(0.0, within_deg + 0.5))
    found = Expansion(coefficients[None], np.array([K])).far_field(theta, 360)[0]
    true = TRUTH.far_field(theta, 360)[0]
    weight = np.sin(theta)[:, None]
    error = np.sum(np.sum(np.abs(found - true) ** 2, axis=0) * weight) / (weight.sum() * 360)
    return 10 * np.log10(error / np.sum(np.abs(true) ** 2, axis=0).max())


def jittered(count, seed=1):
    random = np.random.default_rng(seed)
    i = np.arange(count)
    theta = np.arccos(1 - (2 * i + 1) / count) + random.normal(size=count) * 0.01
    phi = np.mod(i * np.pi * (3 - np.sqrt(5)) + random.normal(size=count) * 0.01, 2 * np.pi)
    wave = 2 * np.pi / K
    return np.clip(theta, 1e-6, np.pi - 1e-6), phi, 1.2 + wave * random.uniform(-0.05, 0.05, count)


def test_the_samples_are_the_closed_form_near_field():
    theta, phi, radius = (a[:6] for a in jittered(6000))
    from colure.geometry.polarization import from_cartesian

    exact = DEVICE.field_at(radius[:, None] * unit_vector(theta=theta, phi=phi))[0]
    expected = np.stack(from_cartesian(exact, theta=theta, phi=phi))
    assert near_samples(theta, phi, radius).field == pytest.approx(expected, abs=1e-9 * np.abs(expected).max())


@pytest.mark.parametrize("order", [36, 40, 45])
def test_irregular_directions_and_radii(order):
    """6,000 jittered directions, +-0.05 wavelength radius scatter: <= -60 dB, with noise <= noise + 3 dB."""
    places = jittered(6000)
    clean = fit_scattered(near_samples(*places), order, K)
    assert clean.converged and rms_db(clean.coefficients) <= -60.0
    noisy = fit_scattered(near_samples(*places, noise_db=-45.0), order, K)
    assert rms_db(noisy.coefficients) <= -45.0 + 3.0
    assert 20 * np.log10(noisy.noise) == pytest.approx(-45.0, abs=0.5)  # the residual tells the noise


def half_sphere(step):
    a, b = np.meshgrid(np.deg2rad(np.arange(-90, 90.1, step)), np.deg2rad(np.arange(0, 180, step)), indexing="ij")
    folded, _ = fold(theta=a.ravel(), phi=b.ravel())
    return folded.theta, folded.phi


@pytest.mark.parametrize("order", [34, 36, 40])
def test_half_sphere_at_five_degrees_with_noise(order):
    """45 dB signal-to-noise reproduces the 1 deg truth at <= -44 dB rms within 75 deg of boresight."""
    theta, phi = half_sphere(5.0)
    fit = fit_scattered(near_samples(theta, phi, 1.2, noise_db=-45.0), order, K)
    assert rms_db(fit.coefficients, 75.0) <= -44.0


def test_iterative_and_dense_solutions_agree():
    random = np.random.default_rng(3)
    theta, phi = np.arccos(random.uniform(-1, 1, 700)), random.uniform(0, 2 * np.pi, 700)
    samples = near_samples(theta, phi, 0.5 + random.uniform(-1e-4, 1e-4, 700))
    iterative = fit_scattered(samples, 12, K, damping=1e-3, tolerance=1e-13)
    dense = fit_scattered(samples, 12, K, damping=1e-3, dense=True)
    scale = np.abs(dense.coefficients).max()
    assert np.abs(iterative.coefficients - dense.coefficients).max() < 1e-8 * scale


def test_operator_and_adjoint_match():
    theta, phi, radius = jittered(300)
    operator = ScatteredOperator(near_samples(theta, phi, radius), 9, K)
    random = np.random.default_rng(0)
    b = random.normal(size=(2, 99)) + 1j * random.normal(size=(2, 99))
    rows = random.normal(size=(2, 300)) + 1j * random.normal(size=(2, 300))
    assert np.vdot(rows, operator.forward(b)) == pytest.approx(np.vdot(operator.adjoint(rows), b), rel=1e-10)


def test_missing_repeated_and_weightless_points():
    theta, phi, radius = jittered(6000)
    random = np.random.default_rng(5)
    keep = np.sort(random.permutation(6000)[:5200])
    again = np.concatenate([keep, keep[:400]])
    samples = near_samples(theta[again], phi[again], radius[again])
    spoiled = samples.field.copy()
    spoiled[:, :50] = 1e3
    weight = np.ones(again.size)
    weight[:50] = 0.0
    fit = fit_scattered(
        Samples.of(theta=theta[again], phi=phi[again], field=spoiled, radius=radius[again], weight=weight), 40, K
    )
    assert rms_db(fit.coefficients) <= -60.0


def test_far_field_samples_need_no_radius():
    theta, phi, _ = jittered(6000)
    field = TRUTH.far_field_at(theta=theta, phi=phi)[0]
    fit = fit_scattered(Samples.of(theta=theta, phi=phi, field=field), 40, K)
    assert rms_db(fit.coefficients) <= -100.0


@pytest.mark.parametrize(
    ("change", "words"),
    [({"field": np.full((2, 50), np.nan)}, "not finite"), ({"weight": np.zeros(50)}, "every weight is 0"),
     ({"radius": np.full(50, -1.0)}, "radius <= 0"), ({"field": np.zeros((2, 49))}, "must be")],
)  # fmt: skip
def test_bad_samples_are_refused(change, words):
    good = {"field": np.ones((2, 50)), "weight": np.ones(50), "radius": np.ones(50)}
    with pytest.raises(ValueError, match=words):
        given = {**good, **change}
        Samples.of(
            theta=np.ones(50), phi=np.ones(50), field=given["field"], radius=given["radius"], weight=given["weight"]
        )


def test_too_few_samples_for_the_order():
    with pytest.raises(ValueError, match="lower the order"):
        fit_scattered(Samples.of(theta=np.ones(50), phi=np.ones(50), field=np.ones((2, 50))), 40, K)


def test_radii_that_spread_too_far_are_refused_with_numbers():
    with pytest.raises(ValueError, match="split the data by radius"):
        radial_nodes(np.array([0.02, 5.0]), 60, K)


def test_rings_with_their_own_offsets():
    from colure.waves import transform

    random = np.random.default_rng(2)
    a = random.normal(size=(2, 120)) + 1j * random.normal(size=(2, 120))
    start = random.uniform(0, 6, 12)
    theta = np.linspace(0, np.pi, 12)
    field = transform.synthesis(a, theta, 23, phi_start=start)
    assert transform.analysis(field, 10, phi_start=start) == pytest.approx(a, abs=1e-12)


@pytest.mark.parametrize(("fall", "hidden"), [(0.2, False), (0.7, True)])
def test_what_lies_above_the_order_is_the_rest_of_a_geometric_series(fall, hidden):
    """A degree has 2 (2n + 1) modes (Hansen 1988: 2N(N + 2) up to N); powers that fall by `fall` a degree leave the series' rest.

    More than twice the noise's power in one component, two of them, would have shown in the residual.
    """
    degrees = np.arange(1, 21)
    modes, power = 2 * (2 * degrees + 1), fall**degrees
    noise = np.sqrt(power[-2:].sum() / 2.2 / modes[-1])  # the last degrees just stand out of it
    operator = SimpleNamespace(
        reference_by_degree=lambda: np.full(20, 2.0), data=lambda: np.ones((2, 9)), row_weight=np.ones(9)
    )
    found = LeastSquaresFit(
        coefficients=np.zeros((2, 440), complex),
        residual=noise,
        noise=noise,
        freedom=0.0,
        iterations=1,
        converged=True,
        damping=np.zeros(20),
        signal=np.sqrt(power / modes),
        operator=operator,
    )
    rest = np.sum(fall ** np.arange(21.0, 2000.0)) / (4.0 * np.pi)  # mean over the sphere
    assert (rest > 2.0 * noise**2) == hidden
    assert found.truncation() == pytest.approx(np.sqrt(min(rest, 2.0 * noise**2)) / 2.0, rel=1e-9)
    assert replace(found, noise=1.1 * noise).truncation() == 0.0
