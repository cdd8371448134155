"""Total radiated power from too few directions: the sin-theta rule against Clenshaw-Curtis weights.

How wrong a 30 and a 15 deg grid are for beams of growing sharpness. The published errors are those of the handset test plans'
sum; with Clenshaw-Curtis weights the same samples say more.
"""

from __future__ import annotations

import numpy as np

from colure.geometry import equiangular
from colure.report.look import CO, CROSS, canvas, styled

SOURCE = "sum of TR 25.914 / TS 38.521-2 annex M; errors of section 6 of the standards sheet (derived there)"
LIMIT = 1e-3
#: (n, step in deg): error in dB of the sin-theta rule and of Clenshaw-Curtis weights for a cos^n theta beam (power).
PRINTED = {
    (4, 30): (-0.565, 0.0),
    (4, 15): (-0.128, 0.0),
    (16, 30): (-3.51, -0.371),
    (16, 15): (-0.474, -0.0002),
    (64, 15): (-3.19, -0.351),
}


def errors(n: int, step: float) -> tuple[float, float]:
    """Return the errors in dB of both rules for intensity cos^n theta over the front half."""
    intervals = round(180.0 / step)
    grid = equiangular(theta_intervals=intervals, phi_count=2 * intervals)
    beam = np.where(grid.theta < np.pi / 2, np.cos(grid.theta) ** n, 0.0)[:, None] * np.ones(grid.phi.size)
    true = 2.0 * np.pi / (n + 1)
    plain = (np.pi / intervals) ** 2 * np.sum(beam * np.sin(grid.theta)[:, None])
    return float(10 * np.log10(plain / true)), float(10 * np.log10(grid.integrate(beam) / true))


def draw():
    """Return (figure, largest residual in dB, words)."""
    worst = 0.0
    for (n, step), printed in PRINTED.items():
        found = errors(n, step)
        worst = max(worst, abs(found[0] - printed[0]), abs(found[1] - printed[1]))
    with styled():
        figure = canvas(6.4, 3.0)
        ax = figure.subplots()
        sharp = np.array([2, 4, 6, 8, 12, 16, 24, 32, 48, 64])
        for step, style in ((30, "--"), (15, "-")):
            both = np.array([errors(int(n), step) for n in sharp])
            for which, colour in ((0, CROSS), (1, CO)):
                ax.plot(sharp, both[:, which], style, color=colour, linewidth=1.3)
        for (n, step), printed in PRINTED.items():
            for value, colour in zip(printed, (CROSS, CO), strict=True):
                ax.plot(n, value, "o" if step == 15 else "s", color=colour, fillstyle="none", markersize=5)
        ax.set_ylim(-6, 1.5)
        ax.set_xscale("log", base=2)
        ax.set_xlabel("n of a cos\u207f\u03b8 beam")
        ax.set_ylabel("error of the power / dB")
        ax.text(2.1, -4.6, "sin-theta rule", color=CROSS, fontsize=9)
        ax.text(2.1, -5.3, "Clenshaw-Curtis", color=CO, fontsize=9)
        ax.set_title("dashed, squares: 30 deg; solid, rings: 15 deg; marks are the published values", fontsize=9)
    return figure, worst, f"largest difference to the published errors {worst:.1e} dB (they have three digits)"
