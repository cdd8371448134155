"""The base-station element of 3GPP TR 38.901, as spherical waves.

The element's power pattern has corners (its floor at 30 dB); its cut, its directivity, and what a band limit of order 40 makes of it.
"""

from __future__ import annotations

import numpy as np

from colure.geometry import equiangular
from colure.report.look import CO, INK, canvas, styled
from colure.waves import Expansion, analysis

SOURCE = "3GPP TR 38.901 table 7.3-1; directivity 9.8257 dBi, section 4 of the standards sheet"
#: The directivity in dB.
LIMIT = 1e-3
DIRECTIVITY_DBI = 9.8257


def element_db(theta, phi):
    """Return the element's level below its peak, dB; theta from the zenith, phi from the beam, radians."""
    vertical = np.minimum(12.0 * ((np.rad2deg(theta) - 90.0) / 65.0) ** 2, 30.0)
    across = np.rad2deg((phi + np.pi) % (2 * np.pi) - np.pi)
    horizontal = np.minimum(12.0 * (across / 65.0) ** 2, 30.0)
    return -np.minimum(vertical + horizontal, 30.0)


def draw():
    """Return (figure, residual of the directivity in dB, words)."""
    grid = equiangular(theta_intervals=180, phi_count=360)
    theta, phi = grid.theta[:, None], grid.phi[None, :]
    field = 10.0 ** (element_db(theta, phi) / 20.0)
    waves = Expansion(analysis(np.stack([field, 0 * field]).astype(complex), 40), np.array(500.0))
    peak = np.abs(waves.far_field(np.array([np.pi / 2]), 360)[0, 0, 0]) ** 2
    directivity = float(10 * np.log10(4 * np.pi * peak / waves.power()))
    with styled():
        figure = canvas(6.4, 3.0)
        ax = figure.subplots()
        cut = np.abs(waves.far_field(np.array([np.pi / 2]), 720)[0, 0]) ** 2
        angle = (np.arange(720) / 2 + 180) % 360 - 180
        order = np.argsort(angle)
        ax.plot(angle[order], element_db(np.pi / 2, np.deg2rad(angle))[order], color=INK, linewidth=3.0, alpha=0.25)
        ax.plot(angle[order], 10 * np.log10(cut / peak)[order], color=CO, linewidth=1.2)
        ax.set_ylim(-34, 2)
        ax.set_xlim(-180, 180)
        ax.set_xlabel("azimuth / deg")
        ax.set_ylabel("level / dB")
        ax.set_title("horizontal cut: published (broad), from waves up to degree 40 (thin)", fontsize=9)
    residual = abs(directivity - DIRECTIVITY_DBI)
    return (
        figure,
        residual,
        f"directivity {directivity:.4f} dBi, published {DIRECTIVITY_DBI} dBi; the corner at 30 dB is rounded by the band limit",
    )
