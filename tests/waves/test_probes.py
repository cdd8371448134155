"""Probes: models against printed values, and the general path against closed-form clusters."""

from __future__ import annotations

import numpy as np
import pytest

from colure.geometry.kinematics import Geometry, device_to_lab, probe_to_lab
from colure.geometry.rotations import RigidMotion, about_axis
from colure.twin.antennas import panel
from colure.twin.sources import transmission
from colure.waves import probe_models
from colure.waves.horn import horn_gain_dbi
from colure.waves.probe import first_order_response, ideal_response, remove_response
from colure.waves.probe_fit import ProbeOperator, ProbeSamples, fit_probe_samples
from colure.waves.transform import analysis
from tests.conftest import cluster_of, expansion_of

F = np.array([24.125e9])
DEVICE = panel(F, elements=4, centre_m=(0, 0, -0.01))
K = DEVICE.k
TRUTH = expansion_of(DEVICE, 25).coefficients[0]


def directivity(expansion):
    return 4 * np.pi * np.abs(expansion.far_field_at(theta=0.0, phi=0.0)[0, 0, 0]) ** 2 / expansion.power()[0]


def test_dipole_model():
    assert directivity(probe_models.dipole(K)) == pytest.approx(1.5, rel=1e-12)


def test_te11_aperture_efficiency():
    # Aperture efficiency of a TE11 disc 0.83683 (standards sheet section 4) is the limit of large discs;
    # the finite disc's edge adds a part that falls as 1/(k a), so two sizes give the limit.
    k, sizes = np.array([100.0]), (0.25, 0.5)
    small, large = (directivity(probe_models.conical_horn(k, radius=a, slant=1e9)) / (100.0 * a) ** 2 for a in sizes)
    assert 2.0 * large - small == pytest.approx(0.83683, abs=3e-4)


def test_pyramidal_horn_model_agrees_with_the_gain_formula():
    size = {"a": 0.050, "b": 0.040, "slant_e": 0.090, "slant_h": 0.100}
    found = 10 * np.log10(directivity(probe_models.pyramidal_horn(K, **size)))
    assert found == pytest.approx(horn_gain_dbi(F, **size)[0], abs=0.25)  # stated accuracy of the formula


def test_open_waveguide_is_first_order_and_needs_propagation():
    guide = probe_models.open_waveguide(K, a=0.0107, b=0.0043)
    assert 1.0 - first_order_response(guide, 20, 0.5).first_order_share[0] < 1e-12
    assert 5.0 < 10 * np.log10(directivity(guide)) < 8.0  # common practice, no source
    with pytest.raises(ValueError, match="TE10"):
        probe_models.open_waveguide(K, a=0.005, b=0.002)


def test_conical_horn_is_first_order_pyramidal_is_not_quite():
    cone = probe_models.conical_horn(K, radius=0.02, slant=0.06)
    pyramid = probe_models.pyramidal_horn(K, a=0.05, b=0.04, slant_e=0.09, slant_h=0.1)
    assert 1.0 - first_order_response(cone, 20, 0.3).first_order_share[0] < 1e-12
    assert 1e-7 < 1.0 - first_order_response(pyramid, 20, 0.3).first_order_share[0] < 1e-2


def awkward_probe():
    random = np.random.default_rng(1)
    electric = np.tile([1, 0.1, 0], (5, 1)) + 0.2 * random.normal(size=(5, 3))
    return cluster_of(
        F, random.uniform(-1, 1, (5, 3)) * [0.006, 0.006, 0.001], electric, np.tile([0, 1, 0], (5, 1)),
        weights=1 + 0.3 * random.normal(size=(1, 5)),
    )  # fmt: skip


def places(count=1800, distance=0.15):
    random = np.random.default_rng(2)
    i = np.arange(count)
    theta = np.clip(np.arccos(1 - (2 * i + 1) / count) + 0.01 * random.normal(size=count), 0.01, 3.13)
    phi = i * np.pi * (3 - np.sqrt(5)) % (2 * np.pi)
    roll = np.concatenate([random.uniform(0, 6, count)] * 2) + np.repeat([0, np.pi / 2], count)
    radius = distance + 2 * np.pi / K[0] * random.uniform(-0.05, 0.05, 2 * count)
    return np.tile(theta, 2), np.tile(phi, 2), roll, radius


def received(ports, which, theta, phi, roll, radius):
    """Closed-form reception at every place by the port that was connected there."""
    power = DEVICE.power()
    powers = [port.power() for port in ports]
    out = np.empty(theta.size, complex)
    for i in range(theta.size):
        device = DEVICE.moved(device_to_lab(Geometry.ROLL_OVER_AZIMUTH, first=theta[i], second=phi[i]))
        port = ports[which[i]].moved(probe_to_lab(distance=radius[i], roll=roll[i]))
        out[i] = transmission(device, port, source_power=power, receiver_power=powers[which[i]])[0]
    return out


def error_db(coefficients):
    scale = np.vdot(coefficients, TRUTH) / np.vdot(coefficients, coefficients)
    return 20 * np.log10(np.linalg.norm(scale * coefficients - TRUTH) / np.linalg.norm(TRUTH))


def test_any_probe_any_roll_scattered_radius():
    probe, where = awkward_probe(), places()
    port = np.zeros(where[0].size, int)
    value = received([probe], port, *where)
    samples = ProbeSamples(*where, port, value, np.ones(value.size))
    model = [expansion_of(probe, 14)]
    assert error_db(fit_probe_samples(samples, 25, model, highest_mu=6).coefficients) <= -80.0
    # The first-order assumption would not do for this probe: the general path is needed.
    assert error_db(fit_probe_samples(samples, 25, model, highest_mu=1).coefficients) > -50.0


def test_an_elliptical_first_order_probe_is_taken_out_exactly():
    """Its two senses weigh unlike, so that degrees mix the kinds of waves: a sign there is seen. Closed-form reception."""
    probe = cluster_of(F, np.zeros((2, 3)), [[1, 0.4j, 0], [0, 0.1, 0]], [[0, 1, 0], [0.2j, 0, 0]])
    theta, phi = np.linspace(0.0, np.pi, 28), np.arange(54) * 2 * np.pi / 54
    where = [np.tile(x.ravel(), 2) for x in np.meshgrid(theta, phi, indexing="ij")]
    roll = np.repeat([0.0, np.pi / 2], theta.size * phi.size)
    value = received([probe], np.zeros(roll.size, int), *where, roll, np.full(roll.size, 0.15))
    measured = analysis(value.reshape(2, theta.size, phi.size), 25)
    response = first_order_response(expansion_of(probe, 6), 25, 0.15).at(0)
    assert error_db(remove_response(measured, response)) <= -120.0
    ideal = ideal_response(25, DEVICE.k, 0.15).at(0)
    assert error_db(remove_response(measured, ideal)) > -30.0


def test_imbalanced_impure_ports_of_a_tilted_shifted_probe(nightly):
    """Two ports, the second weaker, turned and leaky; the whole probe shifted and tilted on its mount."""
    co = cluster_of(F, [0, 0, 0], [1, 0, 0], [0, 1, 0])
    cross = cluster_of(F, [0, 0, 0], [0.05j, -1, 0], [1, 0.05j, 0])
    tilt, shift = about_axis("y", 0.06) @ about_axis("x", -0.04), np.array([4e-4, -3e-4, 1e-3])
    mount = RigidMotion.of(rotation=tilt, shift=shift)
    where = places()
    port = np.tile([0, 1], where[0].size // 2)
    value = received([co.moved(mount), cross.moved(mount)], port, *where)
    imbalance = 0.8 * np.exp(0.4j)
    value = np.where(port == 1, imbalance * value, value)
    straight = [expansion_of(one, 4) for one in (co, cross)]
    level = complex(straight[0].far_field_at(theta=0.0, phi=0.0)[0, 0, 0])
    models = [probe_models.mounted(one, offset=shift, tilt=tilt) for one in straight]
    models[1] = models[1].with_coefficients(imbalance * models[1].coefficients)
    samples = ProbeSamples(*where, port, value, np.ones(value.size))
    assert error_db(fit_probe_samples(samples, 25, models, boresight=level).coefficients) <= -80.0
    assert error_db(fit_probe_samples(samples, 25, straight, boresight=level).coefficients) > -40.0


def test_impure_port_is_the_port_plus_its_quarter_turn():
    leaky = probe_models.impure(probe_models.dipole(K), leak=0.1j, gain=2.0)
    e = leaky.far_field_at(theta=0.0, phi=0.0)[0, :, 0]
    assert e == pytest.approx(
        2.0 * probe_models.dipole(K).far_field_at(theta=0.0, phi=0.0)[0, 0, 0] * np.array([1.0, 0.1j])
    )


def test_general_operator_and_adjoint_match():
    theta, phi, roll, radius = (a[:400] for a in places())
    samples = ProbeSamples(theta, phi, roll, radius, np.zeros(400, int), np.ones(400, complex), np.ones(400))
    operator = ProbeOperator(samples, 7, float(K[0]), [expansion_of(awkward_probe(), 8)], highest_mu=4, boresight=1.0)
    random = np.random.default_rng(0)
    b = random.normal(size=(2, 63)) + 1j * random.normal(size=(2, 63))
    rows = random.normal(size=(1, 400)) + 1j * random.normal(size=(1, 400))
    assert np.vdot(rows, operator.forward(b)) == pytest.approx(np.vdot(operator.adjoint(rows), b), rel=1e-10)
