"""Antennas that outside solvers made: parts of a sphere and a time gate.

A 7-element array of thin wires by NEC-2 (through PyNEC), and two dielectric spheres by treams (T-matrices). Neither shares
code with this project. Element lengths: common practice, no source.
"""

from __future__ import annotations

import numpy as np
import pytest

from colure.analysis.steps.time_gate import gated, propose
from colure.geometry.conventions import SPEED_OF_LIGHT, mode_degrees
from colure.geometry.directions import unit_vector
from colure.geometry.polarization import from_cartesian
from colure.waves.radial import outgoing
from colure.waves.scattered import synthesis_at
from colure.waves.scattered_fit import Samples, fit_scattered
from tests.waves.test_part_of_sphere import (
    GRID_P,
    GRID_T,
    REGIONS,
    K,
    db,
    judged,
    judged_fit,
    length,
    spiral,
    with_noise,
)

#: Place along z and half length of reflector, driven element and five directors, metres at a wavelength of 1 m.
YAGI = [(-0.25, 0.2475), (0.0, 0.2375), *((0.2 + 0.25 * i, 0.2235 - 0.0015 * i) for i in range(5))]
WAVE_1_M_MHZ = 299.792458
#: Radians per degree in NEC-2 (its constant TA, ten digits): 3.2e-12 too large, which moves fields by -200 dB of the peak.
#: Found by fitting the whole sphere: -236 dB of the data are left with pi / 180, -255 with this.
SOLVER_DEGREE = 0.01745329252


def far_field(elements, mhz, theta_deg, phi_deg):
    """Return the solver's (e_theta, e_phi) with exp(-jkr)/r removed, (2, theta, phi), fed at the second wire."""
    nec = pytest.importorskip("PyNEC")
    context = nec.nec_context()
    geometry = context.get_geometry()
    for tag, (z, half) in enumerate(elements, start=1):
        geometry.wire(tag, 21, 0.0, -half, z, 0.0, half, z, 1e-3, 1.0, 1.0)
    context.geometry_complete(0)
    context.fr_card(0, 1, mhz, 0)
    context.ex_card(0, min(2, len(elements)), 11, 0, 1.0, 0, 0, 0, 0, 0)
    steps = (theta_deg[1] - theta_deg[0], phi_deg[1] - phi_deg[0])
    context.rp_card(0, theta_deg.size, phi_deg.size, 0, 5, 0, 0, theta_deg[0], phi_deg[0], *steps, 0, 0)
    found = context.get_radiation_pattern(0)
    shape = phi_deg.size, theta_deg.size  # theta runs fastest
    return np.stack([np.asarray(x).reshape(shape).T for x in (found.get_e_theta(), found.get_e_phi())])


def with_a_cap_and_a_window_missing(noise_db, cap, tilt_deg=0.0):
    """Return what `judged` says of the wire array on a 6 deg grid, fitted up to degree `cap`."""
    region, random = "cap and window", np.random.default_rng(3)
    theta_deg, phi_deg = np.arange(0.0, 181.0, 6.0), tilt_deg + np.arange(0.0, 360.0, 6.0)
    t, p = (a.ravel() for a in np.meshgrid(theta_deg, phi_deg, indexing="ij"))
    keep = REGIONS[region](t, p)
    data = far_field(YAGI, WAVE_1_M_MHZ, theta_deg, phi_deg).reshape(2, -1)[:, keep]
    truth = far_field(YAGI, WAVE_1_M_MHZ, GRID_T / SOLVER_DEGREE, GRID_P / SOLVER_DEGREE).reshape(2, -1)
    place = np.minimum(t[keep] * SOLVER_DEGREE, np.pi), p[keep] * SOLVER_DEGREE
    loss, worst, inside = judged([judged_fit(*place, with_noise(data, noise_db, random), truth, region, cap)])
    print(
        f"noise {noise_db}, cap {cap}: loss {loss[0]:.2f} dB, worst {db(worst[0]):.1f} dB where determined, "
        f"inside {inside[0]:.3f}"
    )
    return loss[0], db(worst[0]), inside[0]


@pytest.mark.parametrize(
    ("noise_db", "cap", "tilt_deg"),
    [pytest.param(None, 26, 0.0, marks=pytest.mark.nightly), pytest.param(None, 26, 2.5, marks=pytest.mark.nightly),
     (-60.0, 20, 0.0)],
    ids=["clean", "clean, grid turned", "noise -60 dB"],
)  # fmt: skip
def test_a_wire_array_with_a_cap_and_a_window_missing(noise_db, cap, tilt_deg, request):
    """No more than 3 dB worse than plain least squares at its best order; the bound holds in 95 % of directions."""
    if noise_db is None and not request.config.getoption("--nightly"):
        pytest.skip("least squares of every order up to 26: nightly only")
    loss, worst_db, inside = with_a_cap_and_a_window_missing(noise_db, cap, tilt_deg)
    assert loss <= 3.0 and inside >= 0.95
    assert worst_db <= (-100.0 if noise_db is None else -35.0)


@pytest.mark.parametrize("cap", [16, 20])
def test_an_order_that_is_forced_too_low_is_told_by_the_bound(cap):
    """Clean data hold degrees up to 27: what a lower order leaves out lies within the stated bound, in the hole too."""
    _, worst_db, inside = with_a_cap_and_a_window_missing(None, cap)
    assert inside >= 0.95 and worst_db <= {16: -45.0, 20: -75.0}[cap]


def sweeps_of(elements, band_hz):
    """Return the solver's field straight ahead over frequency, its middle level 1."""
    look = np.array([0.0, 10.0]), np.array([90.0, 100.0])
    sweep = np.array([far_field(elements, 1e-6 * f, *look)[0, 0, 0] for f in band_hz])
    return sweep / np.sqrt(np.mean(np.abs(sweep) ** 2))


@pytest.mark.parametrize("excess_m", [2.0, 3.0, 4.0, 6.0])
def test_a_response_that_outlasts_the_gate_is_told(excess_m):
    """The lossless array rings on: -4 to -9 dB of its power come later than these path lengths. A gate there needs a caution."""
    band = np.linspace(200e6, 400e6, 101)
    own = sweeps_of(YAGI, band)
    sweep = own + 0.1 * np.mean(np.abs(own)) * np.exp(-2j * np.pi * band * excess_m / SPEED_OF_LIGHT)
    gate = propose(sweep, band, (excess_m,))
    error = db(np.linalg.norm(gated(sweep, band, gate) - own) / np.linalg.norm(own))
    print(f"{excess_m} m: response {gate.response_db:.1f} dB, gated error {error:.1f} dB; {gate.caution}")
    assert gate.caution and error > -30.0


def test_a_short_wire_needs_no_caution():
    """A wire of a twentieth of a wavelength answers at once: no caution, and the echo goes."""
    band = np.linspace(200e6, 400e6, 101)
    own = sweeps_of([(0.0, 0.025)], band)
    sweep = own + 0.1 * np.exp(-2j * np.pi * band * 6.0 / SPEED_OF_LIGHT)
    gate = propose(sweep, band, (6.0,))
    error = db(np.linalg.norm(gated(sweep, band, gate) - own) / np.linalg.norm(own))
    assert not gate.caution and error <= -45.0


def spheres_near(points):
    """Return the field (point, xyz) that two dielectric spheres scatter of a plane wave, exp(+jwt)."""
    treams = pytest.importorskip("treams")
    one = treams.TMatrix.sphere(7, K, [0.25], [treams.Material(2.5), treams.Material(1.0)])
    both = treams.TMatrix.cluster([one, one], [[0.3, 0.0, 0.1], [-0.3, 0.1, -0.1]]).interaction.solve()
    wave = treams.plane_wave([0, 0, 1], pol=[1, 0, 0], k0=K, material=1)
    return np.conj(np.asarray((both @ wave.expand(both.basis)).efield(points)))


@pytest.mark.nightly
def test_two_spheres_near_by_become_their_own_field_farther_out(request):
    """Samples at 1.2 wavelengths with a cap missing; the solver's own field at 3 wavelengths is the truth."""
    if not request.config.getoption("--nightly"):
        pytest.skip("2,000 fields of a cluster: nightly only")
    random = np.random.default_rng(8)
    theta, phi = spiral(1000, random)
    keep = REGIONS["cap"](np.rad2deg(theta), np.rad2deg(phi))
    theta, phi = theta[keep], phi[keep]
    field = np.stack(from_cartesian(spheres_near(1.2 * unit_vector(theta=theta, phi=phi)), theta=theta, phi=phi))
    fit = fit_scattered(Samples.of(theta=theta, phi=phi, field=field, radius=1.2), 18, K)
    t, p = (a.ravel() for a in np.meshgrid(np.deg2rad(np.arange(2.0, 180, 8)), np.deg2rad(np.arange(0, 360.0, 12))))
    truth = np.stack(from_cartesian(spheres_near(3.0 * unit_vector(theta=t, phi=p)), theta=t, phi=p))

    def out(coefficients):
        order = int(np.sqrt(coefficients.shape[-1] + 1)) - 1
        functions = outgoing(order, np.array(K * 3.0)).tangential()[:, mode_degrees(order) - 1]
        return synthesis_at(coefficients * functions, theta=t, phi=p) * np.exp(-1j * K * 3.0) / 3.0

    error, peak = length(out(fit.coefficients) - truth), length(truth).max()
    bound = 2.0 * np.sqrt(np.mean(length(out(fit.error_draws())) ** 2, axis=0) + (fit.truncation() / 3.0) ** 2)
    seen = REGIONS["cap"](np.rad2deg(t), np.rad2deg(p))
    inside = float(np.mean(error <= bound + 1e-10 * peak))
    print(
        f"worst seen {db(error[seen].max() / peak):.1f} dB, stated {db(bound[seen].max() / peak):.1f}, inside {inside:.3f}"
    )
    assert db(error[seen].max() / peak) <= -80.0 and inside >= 0.95
