"""What a horn's flare costs: loss by the quadratic phase over its aperture.

Slayton's curves for the electric and the magnetic plane, which every gain standard is computed with, here from exact Fresnel
integrals against the printed values.
"""

from __future__ import annotations

import numpy as np

from colure.report.look import CO, CROSS, canvas, styled
from colure.waves.horn import e_plane_loss_db, h_plane_loss_db

SOURCE = "W. T. Slayton, NRL Report 4433, 1954; values of section 4 of the standards sheet"
LIMIT = 1e-4
#: s = b^2/(8 lambda rho_e) and t = a^2/(8 lambda rho_h), loss in dB.
E_PLANE = {0.05: 0.0381, 0.1: 0.1528, 0.2: 0.6157, 0.25: 0.9674, 0.3: 1.4025}
H_PLANE = {0.1: 0.0733, 0.2: 0.2919, 0.3: 0.6511, 0.375: 1.0074, 0.5: 1.7481}


def draw():
    """Return (figure, largest residual in dB, words)."""
    fine = np.linspace(0.01, 0.55, 200)
    curves = {}
    for name, loss in (("E", e_plane_loss_db), ("H", h_plane_loss_db)):
        curves[name] = lambda share, loss=loss: loss(np.sqrt(8.0 * np.asarray(share)), 1.0, 1.0)
    with styled():
        figure = canvas(6.4, 3.0)
        ax = figure.subplots()
        worst = 0.0
        for name, printed, colour in (("E", E_PLANE, CO), ("H", H_PLANE, CROSS)):
            ax.plot(fine, curves[name](fine), color=colour, linewidth=1.3)
            shares, values = np.array(list(printed)), np.array(list(printed.values()))
            ax.plot(shares, values, "o", color=colour, markersize=5, fillstyle="none")
            worst = max(worst, float(np.abs(curves[name](shares) - values).max()))
            ax.text(fine[-1], float(curves[name](fine[-1])), f" {name} plane", color=colour, va="center", fontsize=9)
        ax.set_xlim(0, 0.62)
        ax.set_ylim(0, 3.2)
        ax.set_xlabel("largest phase error over the aperture / wavelengths")
        ax.set_ylabel("loss / dB")
        ax.set_title("lines: computed; rings: printed", fontsize=9)
    return figure, worst, f"largest difference to the ten printed values {worst:.1e} dB (they have four digits)"
