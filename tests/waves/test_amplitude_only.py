"""Phase retrieval from amplitudes on two spheres: right where it says so, honest where it is not."""

from __future__ import annotations

import numpy as np
import pytest

from colure.geometry.conventions import mode_degrees
from colure.geometry.sphere import gauss_legendre
from colure.twin.antennas import PanelFlaws, panel
from colure.waves.amplitude_only import AmplitudeSphere, box_basis, retrieve
from colure.waves.radial import outgoing
from colure.waves.transform import synthesis
from tests.conftest import cluster_of, expansion_of

F = np.array([24.125e9])
FLAWED = panel(F, elements=4, centre_m=(0, 0, 0), flaws=PanelFlaws(None, ((0, 0), (0, 0)), 30.0))
DESIGN = panel(F, elements=4, centre_m=(0, 0, 0), flaws=PanelFlaws(None, None), seed=24)
K = float(FLAWED.k[0])
ORDER = 18
TRUTH = expansion_of(FLAWED, ORDER).coefficients[0]
BASIS = box_basis(ORDER, K, size=(0.026, 0.026, 0.004), centre=(0, 0, 0))


def spheres(radii=(0.05, 0.15), noise_db=None):
    random = np.random.default_rng(4)
    # An intensity has twice the order of its field: sampled for that.
    grid = gauss_legendre(rings=2 * ORDER + 2, phi_count=4 * ORDER + 3)
    out = []
    for radius in radii:
        functions = outgoing(ORDER, np.array(K * radius)).tangential()[:, mode_degrees(ORDER) - 1]
        field = synthesis(TRUTH * functions, grid.theta, grid.phi.size) / radius
        if noise_db is not None:
            raw = random.normal(size=(2, *field.shape)) / np.sqrt(2)
            field = field + 10 ** (noise_db / 20) * np.abs(field).max() * (raw[0] + 1j * raw[1])
        out.append(AmplitudeSphere(radius, grid.theta, np.abs(field)))
    return out


def worst_db(coefficients):
    scale = np.vdot(coefficients, TRUTH) / np.vdot(coefficients, coefficients)
    theta = np.linspace(0, np.pi, 91)
    error, true = (synthesis(c, theta, 180) for c in (scale * coefficients - TRUTH, TRUTH))
    return 10 * np.log10(np.sum(np.abs(error) ** 2, axis=0).max() / np.sum(np.abs(true) ** 2, axis=0).max())


def test_a_flawed_panel_is_found_from_its_design(nightly):
    """In the default run a circular patch is found by command (tests/app/services/test_amplitude_only.py)."""
    start = expansion_of(DESIGN, ORDER).coefficients[0]
    assert worst_db(start) > -25.0
    found = retrieve(spheres(), K, BASIS, start)
    print(found.words, f"{found.seconds:.1f} s, worst error {worst_db(found.coefficients):.1f} dB")
    assert found.trustworthy and worst_db(found.coefficients) <= -39.0


def test_with_noise(nightly):
    start = expansion_of(DESIGN, ORDER).coefficients[0]
    found = retrieve(spheres(noise_db=-60.0), K, BASIS, start, noise_db=-60.0)
    assert found.trustworthy and worst_db(found.coefficients) <= -39.0


def test_a_start_that_resembles_nothing_is_not_believed(request):
    if not request.config.getoption("--nightly"):
        pytest.skip("takes half a minute: for the nightly run")
    nothing = expansion_of(cluster_of(F, [0, 0, 0], [0, 0, 1]), ORDER).coefficients[0]
    found = retrieve(spheres(), K, BASIS, nothing)
    assert not found.trustworthy and "do not use" in found.words


def test_one_sphere_is_refused():
    with pytest.raises(ValueError, match="at least 2 of different radius"):
        retrieve(spheres(radii=(0.05,)), K, BASIS, TRUTH)
