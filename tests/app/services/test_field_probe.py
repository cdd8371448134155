"""A probe that is no first-order one behind a field file, by the reaction of elementary dipoles in closed form.

Reciprocity: what a probe receives is the sum over its currents of moment times the device's field there
(any electromagnetics text); neither device nor probe is expanded in waves here.
"""

from __future__ import annotations

import numpy as np
import pytest
from click.testing import CliRunner

from colure.analysis.fields.errors import Declared
from colure.analysis.fields.expand import expand
from colure.analysis.fields.near_to_far import far_field
from colure.analysis.fields.probe import FieldProbe, expand_behind_probe
from colure.app.cli import main
from colure.app.services.converting import partial_probe
from colure.geometry.conventions import SPEED_OF_LIGHT
from colure.geometry.directions import phi_hat, theta_hat, unit_vector
from colure.model.fields import FieldSamples, grid_dataset, samples_of
from colure.model.files import open_dataset, save_dataset
from colure.waves.scattered import synthesis_at

K, FREQUENCY, DISTANCE = 2.0 * np.pi, SPEED_OF_LIGHT, 3.0
RANDOM = np.random.default_rng(3)
DEVICE = RANDOM.uniform(-0.35, 0.35, (6, 3)), RANDOM.normal(size=(6, 3)) + 1j * RANDOM.normal(size=(6, 3))
PROBE = RANDOM.uniform(-0.25, 0.25, (12, 3)), 0.4 * RANDOM.normal(size=(12, 3)) + np.array([1.0, 0.0, 0.0])
THETA_DEG, PHI_DEG = np.arange(0.0, 180.1, 9.0), np.arange(0.0, 360.0, 9.0)
LOOK_T, LOOK_P = (a.ravel() for a in np.meshgrid(np.deg2rad(np.arange(0, 181, 12)), np.deg2rad(np.arange(0, 360, 12))))


def places():
    return tuple(a.ravel() for a in np.meshgrid(np.deg2rad(THETA_DEG), np.deg2rad(PHI_DEG), indexing="ij"))


def field_of(antenna, points):
    """Exact E of elementary electric dipoles, k^2 / (4 pi eps) taken out."""
    place, moment = antenna
    away = points[..., None, :] - place
    r = np.linalg.norm(away, axis=-1, keepdims=True)
    u = away / r
    along = np.sum(moment * u, axis=-1, keepdims=True)
    near = 1.0 / (K * r) ** 2 + 1j / (K * r)
    return np.sum(np.exp(-1j * K * r) / r * (moment - u * along + (3.0 * u * along - moment) * near), axis=-2)


def far(antenna, theta, phi):
    place, moment = antenna
    total = np.exp(1j * K * unit_vector(theta=theta, phi=phi) @ place.T) @ moment
    return np.stack([np.sum(total * of(theta=theta, phi=phi), axis=-1) for of in (theta_hat, phi_hat)])


def received(probe, theta, phi, roll):
    """What the probe receives with its x axis turned by `roll` from theta^ towards phi^, over its boresight field."""
    x = np.cos(roll) * theta_hat(theta=theta, phi=phi) + np.sin(roll) * phi_hat(theta=theta, phi=phi)
    z = -unit_vector(theta=theta, phi=phi)
    frame = np.stack([x, np.cross(z, x), z], axis=-1)
    place, moment = probe
    total = sum(
        np.sum(field_of(DEVICE, -DISTANCE * z + frame @ a) * (frame @ m), axis=-1)
        for a, m in zip(place, moment, strict=True)
    )
    return total / np.sum(moment[:, 0] * np.exp(1j * K * place[:, 2]))


def samples(probe, noise_db=None):
    theta, phi = places()
    data = np.stack([received(probe, theta, phi, 0.0), received(probe, theta, phi, np.pi / 2)])
    if noise_db is not None:
        raw = np.random.default_rng(1).normal(size=(2, *data.shape)) * np.sqrt(0.5)
        data = data + 10 ** (noise_db / 20) * np.abs(data).max() * (raw[0] + 1j * raw[1])
    return FieldSamples(FREQUENCY, theta, phi, data, np.full(theta.size, DISTANCE), np.ones(theta.size))


def probe_file(probe):
    theta, phi = places()
    return FieldProbe(([FieldSamples(FREQUENCY, theta, phi, far(probe, theta, phi), None, np.ones(theta.size))],))


def worst_db(coefficients):
    truth = far(DEVICE, LOOK_T, LOOK_P)
    error = np.sqrt(np.sum(np.abs(synthesis_at(coefficients, theta=LOOK_T, phi=LOOK_P) - truth) ** 2, axis=0))
    return 20 * np.log10(error.max() / np.sqrt(np.max(np.sum(np.abs(truth) ** 2, axis=0))))


def test_the_closed_form_reaches_its_own_far_field():
    theta, phi = np.array([0.7]), np.array([0.3])
    r = 1e5
    e = field_of(DEVICE, r * unit_vector(theta=theta, phi=phi))[0] * r * np.exp(1j * K * r)
    assert e @ theta_hat(theta=theta, phi=phi)[0] == pytest.approx(far(DEVICE, theta, phi)[0, 0], rel=1e-4)


def test_a_general_probe_is_corrected_where_first_order_would_lose_more_than_the_noise():
    data = samples(PROBE)
    assert worst_db(expand(data).coefficients) > -25.0
    found = expand_behind_probe(data, probe_file(PROBE), order=None, cap=None, declared=Declared())
    assert "first order would lose" in found.words and worst_db(found.coefficients) < -80.0
    # These data hold no noise: what stands in the highest degrees is only the most that it can be.
    assert "the highest degrees hold as noise at most" in found.words


def test_a_probe_beside_its_origin_needs_the_general_correction(monkeypatch):
    """12 dipoles 0.245 wavelengths beside the probe's origin: worst error without, with first order and with the general correction."""
    random = np.random.default_rng(12)
    beside = (
        random.uniform(-0.05, 0.05, (12, 3)) + np.array([0.245, 0.0, 0.0]),
        0.4 * random.normal(size=(12, 3))
        + [
            1.0,
            0.0,
            0.0,
        ],
    )
    data, probe = samples(beside), probe_file(beside)
    asked = {"order": None, "cap": None, "declared": Declared()}
    bare, general = expand(data), expand_behind_probe(data, probe, **asked)
    monkeypatch.setattr("colure.analysis.fields.probe.EXACT", 10.0)  # accepts first order whatever it loses
    first = expand_behind_probe(data, probe, **asked)
    errors = [worst_db(one.coefficients) for one in (bare, first, general)]
    print("without {:.1f} dB, first order {:.1f} dB, general {:.1f} dB".format(*errors))
    assert "probe of first order" in first.words and "first order would lose" in general.words
    assert errors[0] > -25.0 and errors[1] > -25.0 and errors[2] <= -130.0


def test_first_order_is_kept_where_it_loses_less_than_the_noise():
    point = (np.zeros((1, 3)), np.array([[1.0, 0.0, 0.0]]))
    found = expand_behind_probe(samples(point, -50.0), probe_file(point), order=None, cap=None, declared=Declared())
    assert "probe of first order" in found.words and worst_db(found.coefficients) < -45.0


def run_refused(*files):
    """Return what the command says where it refuses."""
    result = CliRunner().invoke(main, ["process", *files])
    assert result.exit_code == 2, result.output
    return result.output


def test_a_probe_of_half_a_sphere_is_told():
    theta, phi = places()
    front = theta <= np.pi / 2 + 1e-9
    whole, half = (
        FieldProbe(([FieldSamples(FREQUENCY, theta[m], phi[m], far(PROBE, theta[m], phi[m]), None, np.ones(m.sum()))],))
        for m in (np.ones(theta.size, bool), front)
    )
    assert partial_probe(whole) == [] and "no sample within 90 deg" in partial_probe(half)[0]


def test_the_command_reads_a_probe_file_and_states_the_errors(tmp_path):
    shape = (2, THETA_DEG.size, PHI_DEG.size)
    near = samples(PROBE, -50.0).field.reshape(shape)
    frequency = np.array([FREQUENCY])
    save_dataset(grid_dataset(frequency, THETA_DEG, PHI_DEG, near[None], radius_m=DISTANCE, source="test"), tmp_path / "near.nc")  # fmt: skip
    own = far(PROBE, *places()).reshape(shape)
    save_dataset(grid_dataset(frequency, THETA_DEG, PHI_DEG, own[None], radius_m=None, source="test"), tmp_path / "probe.nc")  # fmt: skip
    files = [str(tmp_path / name) for name in ("near.nc", "far.nc")]
    result = CliRunner().invoke(main, ["process", *files, "--probe", str(tmp_path / "probe.nc"), "--step-deg", "12", "--position-mm", "0.1"])  # fmt: skip
    assert result.exit_code == 0, result.output
    pattern = open_dataset(tmp_path / "far.nc")
    truth = far(
        DEVICE, *(a.ravel() for a in np.meshgrid(np.deg2rad(pattern.theta), np.deg2rad(pattern.phi), indexing="ij"))
    )
    found = np.stack([pattern[name].values[0].ravel() for name in ("e_theta", "e_phi")])
    error = np.sqrt(np.sum(np.abs(found - truth) ** 2, axis=0))
    assert np.mean(error <= pattern["error_bound"].values[0].ravel()) >= 0.95
    assert "caution" not in result.output and "caution" not in pattern.attrs
    table = run_refused(files[0], str(tmp_path / "far.csv"))
    assert "far.csv: must end in .nc" in table and not (tmp_path / "far.csv").exists()
    assert float(pattern["noise_db"][0]) < -50.0 and np.isfinite(float(pattern["position_db"][0]))


@pytest.mark.parametrize("noise_db", [-30.0, -60.0])
def test_stated_errors_of_a_whole_sphere_contain_the_true_ones(noise_db):
    """Noise found from the spectrum's floor; positions of 5 mm at 1 m wavelength declared and drawn anew."""
    theta, phi = places()
    random = np.random.default_rng(9)
    moved = unit_vector(theta=theta, phi=phi) * DISTANCE + 5e-3 * random.normal(size=(theta.size, 3))
    e = field_of(DEVICE, moved)
    data = np.stack([np.sum(e * of(theta=theta, phi=phi), axis=-1) for of in (theta_hat, phi_hat)])
    raw = random.normal(size=(2, *data.shape)) * np.sqrt(0.5)
    data = data + 10 ** (noise_db / 20) * np.abs(data).max() * (raw[0] + 1j * raw[1])
    dataset = grid_dataset(
        np.array([FREQUENCY]), THETA_DEG, PHI_DEG, data.reshape(1, 2, THETA_DEG.size, PHI_DEG.size), radius_m=DISTANCE,
        source="test",
    )  # fmt: skip
    assert len(samples_of(dataset)) == 1
    pattern, _ = far_field(dataset, step_deg=12.0, declared=Declared(noise_db=noise_db, position_m=5e-3))
    truth = far(
        DEVICE, *(a.ravel() for a in np.meshgrid(np.deg2rad(pattern.theta), np.deg2rad(pattern.phi), indexing="ij"))
    )
    found = np.stack([pattern[name].values[0].ravel() for name in ("e_theta", "e_phi")])
    error, bound = np.sqrt(np.sum(np.abs(found - truth) ** 2, axis=0)), pattern["error_bound"].values[0].ravel()
    assert np.mean(error <= bound) >= 0.95
    assert np.median(bound) < 6.0 * np.median(error)
