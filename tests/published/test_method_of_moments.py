"""A general-purpose method-of-moments solver (NEC-2 through PyNEC): its near field in, its far field out."""

from __future__ import annotations

import numpy as np
import pytest

from colure.analysis.fields.expand import expand
from colure.geometry.conventions import wavenumber
from colure.geometry.polarization import from_cartesian
from colure.model.fields import FieldSamples
from colure.waves.expansion import Expansion

PyNEC = pytest.importorskip("PyNEC")

MHZ = 299.792458  # wavelength 1 m
STEP = 10.0


def solver(wires, feed):
    """Run the solver; wires are (tag, segments, start, end, radius), feed (tag, segment)."""
    context = PyNEC.nec_context()
    geometry = context.get_geometry()
    for tag, segments, start, end, radius in wires:
        geometry.wire(tag, segments, *start, *end, radius, 1.0, 1.0)
    context.geometry_complete(0)
    context.fr_card(0, 1, MHZ, 0)
    context.ex_card(0, *feed, 0, 1.0, 0, 0, 0, 0, 0)
    return context


def near_field(context, radius, theta, phi):
    """Return tangential E on a grid of degrees, shape (2, theta, phi)."""
    step_t, step_p = theta[1] - theta[0], phi[1] - phi[0]
    context.ne_card(1, 1, phi.size, theta.size, radius, phi[0], theta[0], 0.0, step_p, step_t)
    found = context.get_near_field_pattern(0)
    shape = (theta.size, phi.size)
    place = np.stack([found.get_x(), found.get_y(), found.get_z()], axis=-1).reshape(*shape, 3)
    field = np.stack([found.get_field_x(), found.get_field_y(), found.get_field_z()], axis=-1).reshape(*shape, 3)
    t, p = np.meshgrid(np.deg2rad(theta), np.deg2rad(phi), indexing="ij")
    expected = radius * np.stack([np.sin(t) * np.cos(p), np.sin(t) * np.sin(p), np.cos(t)], axis=-1)
    assert np.allclose(place, expected, atol=1e-9)
    return np.stack(from_cartesian(field, theta=t, phi=p))


def far_field(context, theta, phi, index):
    """Return (e_theta, e_phi) with exp(-jkr)/r removed, and the gains in dBi."""
    context.rp_card(0, theta.size, phi.size, 0, 5, 0, 0, theta[0], phi[0], theta[1] - theta[0], phi[1] - phi[0], 0, 0)
    found = context.get_radiation_pattern(index)
    # The solver lists theta fastest.
    e = np.stack([np.asarray(x).reshape(phi.size, theta.size).T for x in (found.get_e_theta(), found.get_e_phi())])
    return e, np.asarray(found.get_gain())


DIPOLE = ([(1, 21, (0.3, 0.1, -0.25), (0.3, 0.1, 0.25), 1e-4)], (1, 11))
YAGI = (
    [(1, 21, (0.0, -0.25, -0.2), (0.0, 0.25, -0.2), 1e-3), (2, 21, (0.0, -0.235, 0.0), (0.0, 0.235, 0.0), 1e-3),
     (3, 21, (0.0, -0.22, 0.2), (0.0, 0.22, 0.2), 1e-3)],
    (2, 11),
)  # fmt: skip


@pytest.mark.parametrize(("wires", "feed"), [DIPOLE, YAGI], ids=["dipole off centre", "yagi"])
def test_near_field_becomes_the_solvers_own_far_field(wires, feed):
    context = solver(wires, feed)
    theta, phi = np.arange(0.0, 181.0, STEP), np.arange(0.0, 360.0, STEP)
    near = near_field(context, 1.5, theta, phi)
    truth, gains = far_field(context, theta, phi, 0)
    t, p = (a.ravel() for a in np.meshgrid(np.deg2rad(theta), np.deg2rad(phi), indexing="ij"))
    f = MHZ * 1e6
    samples = FieldSamples(f, t, p, near.reshape(2, -1), np.full(t.size, 1.5), np.ones(t.size))
    found = expand(samples)
    expansion = Expansion(found.coefficients, np.array(float(wavenumber(f))))
    ours = expansion.far_field(np.deg2rad(theta), phi.size)
    weight = np.sin(np.deg2rad(theta))[:, None]
    error = np.sum(np.sum(np.abs(ours - truth) ** 2, axis=0) * weight) / (weight.sum() * phi.size)
    peak = np.max(np.sum(np.abs(truth) ** 2, axis=0))
    error_db = 10 * np.log10(error / peak)
    directivity = 10 * np.log10(4 * np.pi * np.max(np.sum(np.abs(ours) ** 2, axis=0)) / expansion.power())
    print(
        f"order {found.order}: {error_db:.1f} dB rms, directivity {directivity:.4f} dBi, solver {gains.max():.4f} dBi"
    )
    assert error_db <= -60.0
    # Lossless wires: the solver's gain is its directivity, as far as its own power balance closes.
    assert directivity == pytest.approx(gains.max(), abs=0.02)
