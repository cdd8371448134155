"""The half-wave dipole, measured at one wavelength and transformed.

The near field of a thin half-wave wire with a sinusoidal current is summed from 200 elementary dipoles on a sphere one wavelength
in radius, expanded in spherical waves and taken to infinity. The published far field is cos(pi/2 cos theta)/sin theta.
"""

from __future__ import annotations

import numpy as np

from colure.report.look import CO, INK, canvas, styled
from colure.twin import Cluster
from colure.waves import Expansion, analysis, ideal_response, remove_response

SOURCE = "C. A. Balanis, Antenna Theory, half-wave dipole; directivity 1.64092 (2.1509 dBi), section 4 of the standards sheet"
#: Largest difference of the curves, relative to the peak, and of the directivity in dB.
LIMIT = 1e-5
DIRECTIVITY_DBI, DIRECTIVITY_LIMIT_DB = 2.1509, 2e-3


def draw():
    """Return (figure, largest residual, words)."""
    frequency = np.array([3e9])
    lam = 299_792_458.0 / frequency[0]
    z = (np.arange(200) + 0.5) / 200 * 0.5 * lam - 0.25 * lam
    position = np.stack([0 * z, 0 * z, z], axis=-1)
    along = np.tile([0.0, 0.0, 1.0 + 0j], (z.size, 1))
    current = np.cos(2 * np.pi / lam * z).astype(complex)[None]
    wire = Cluster(frequency, position, along, 0 * along, current, np.ones(1))
    order, radius = 16, lam
    theta, phi = np.linspace(0, np.pi, 2 * order + 1), np.arange(2 * order + 2) * np.pi / (order + 1)
    near = near_field(wire, radius, theta, phi)
    response = ideal_response(order, wire.k, radius)
    far = Expansion(remove_response(analysis(near, order), response), wire.k)
    fine = np.linspace(1e-3, np.pi - 1e-3, 361)
    found = np.abs(far.far_field(fine, 4)[0, 0, :, 0])
    found /= np.abs(far.far_field(np.array([np.pi / 2]), 4)[0, 0, 0, 0])
    published = np.cos(0.5 * np.pi * np.cos(fine)) / np.sin(fine)
    residual = float(np.abs(found - published).max())
    peak = np.abs(far.far_field(np.array([np.pi / 2]), 4)[0, 0, 0, 0]) ** 2
    directivity = float(10 * np.log10(4 * np.pi * peak / far.power()[0]))
    with styled():
        figure = canvas(6.4, 3.0)
        ax = figure.subplots()
        ax.plot(np.rad2deg(fine), published, color=INK, linewidth=3.0, alpha=0.25)
        ax.plot(np.rad2deg(fine), found, color=CO, linewidth=1.2)
        ax.set_xlabel("theta / deg")
        ax.set_ylabel("field over its peak")
        ax.set_title("half-wave dipole: published (broad), transformed from one wavelength (thin)", fontsize=9)
    assert abs(directivity - DIRECTIVITY_DBI) < DIRECTIVITY_LIMIT_DB, directivity
    return (
        figure,
        residual,
        f"largest difference {residual:.1e} of the peak; directivity {directivity:.4f} dBi, published {DIRECTIVITY_DBI} dBi",
    )


def near_field(wire: Cluster, radius: float, theta, phi):
    """Return what an ideal probe reads of the wire on a sphere (frequency, 2, theta, phi)."""
    from colure.geometry.directions import phi_hat, theta_hat, unit_vector

    t, p = np.meshgrid(theta, phi, indexing="ij")
    place = radius * unit_vector(theta=t, phi=p)
    field = wire.field_at(place.reshape(-1, 3)).reshape(1, *t.shape, 3)
    pair = [np.sum(field * one(theta=t, phi=p), axis=-1) for one in (theta_hat, phi_hat)]
    # Relative to a wave from the middle, as sweeps are: exp(-jkr)/r removed.
    return np.stack(pair, axis=1) * radius * np.exp(1j * wire.k[0] * radius)
