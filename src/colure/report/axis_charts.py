"""Pictures about the device's own axes: cuts through the mechanical boresight, and the signs of the angles."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

import numpy as np

from colure.geometry.conventions import FloatArray, amplitude_db
from colure.report.look import CO, CROSS, INK, MUTED, canvas, styled

if TYPE_CHECKING:
    from colure.analysis.figures.cuts import GreatCircleCut
    from colure.report.drawing import Drawing

FLOOR_DB = -50.0


def axis_cuts(
    cuts: dict[str, GreatCircleCut], as_read: dict[str, tuple[FloatArray, FloatArray]], peak_dbi: float
) -> Drawing:
    """Draw cuts over the angle from the mechanical boresight; dashed what was read before correction, (angle, amplitude)."""
    with styled():
        figure = canvas(7.2, 2.5)
        panels = figure.subplots(1, len(cuts), sharey=True, squeeze=False)[0]
        for ax, (name, one) in zip(panels, cuts.items(), strict=True):
            level = amplitude_db(one.amplitude)
            known = one.angle_deg[np.isfinite(level)]
            if name in as_read:
                angle, amplitude = as_read[name]
                read = amplitude_db(np.maximum(amplitude, 1e-12))
                top = float(np.nanmax(level[np.isfinite(level)]))
                ax.plot(
                    angle, read - read.max() + top, color=CROSS, linestyle=(0, (4, 2)), linewidth=1.0, label="as read"
                )
            ax.plot(one.angle_deg, level, color=CO, label="result")
            ax.axvline(0.0, color=INK, linewidth=0.6, linestyle=(0, (2, 3)))
            ax.set_xlim(known.min(), known.max())
            ax.set_title(name)
            ax.set_xlabel("angle from the mechanical boresight / deg")
        panels[0].set_ylim(peak_dbi + FLOOR_DB, peak_dbi + 4)
        panels[0].set_ylabel("gain / dBi")
        return figure


def signs_sketch() -> Drawing:
    """Draw the signs of azimuth, elevation and phi from both sides of the device."""
    with styled():
        figure = canvas(7.2, 2.0)
        behind, front = figure.subplots(1, 2)
        _view(behind, "from the device, looking out", x=-1.0)
        _arrow(behind, (-0.28, -0.42), (-0.95, -0.42), "azimuth +", (-0.62, -0.6), CO)
        _arrow(behind, (0.42, 0.1), (0.42, 0.8), "elevation +", (0.5, 0.45), CO)
        _view(front, "from the probe, looking at the device", x=1.0)
        turn = np.deg2rad(np.linspace(8.0, 72.0, 40))
        front.plot(0.62 * np.cos(turn), 0.62 * np.sin(turn), color=CO)
        _arrow(front, (0.62 * np.cos(turn[-2]), 0.62 * np.sin(turn[-2])), (0.62 * np.cos(turn[-1]), 0.62 * np.sin(turn[-1])),
               "phi +", (0.55, 0.5), CO)  # fmt: skip
        return figure


def _view(ax: Any, title: str, *, x: float) -> None:
    """Draw the device's face with its x and y axes; `x` the side to which x points."""
    ax.add_patch(_face())
    for (right, up), name in (((x, 0.0), "x"), ((0.0, 0.9), "y")):
        ax.annotate("", (right, up), (0.0, 0.0), arrowprops={"arrowstyle": "->", "color": INK})
        ax.text(1.12 * right, 1.1 * up, name, ha="center", va="center")
    ax.set_title(title)
    ax.set_xlim(-1.7, 1.7)
    ax.set_ylim(-0.75, 1.1)
    ax.set_aspect("equal")
    ax.set_axis_off()


def _face() -> Any:
    from matplotlib.patches import Rectangle

    return Rectangle((-0.25, -0.25), 0.5, 0.5, facecolor="none", edgecolor=MUTED)


def _arrow(
    ax: Any, start: tuple[float, float], end: tuple[float, float], words: str, at: tuple[float, float], colour: str
) -> None:
    ax.annotate("", end, start, arrowprops={"arrowstyle": "->", "color": colour, "linewidth": 1.4})
    ax.text(*at, words, color=colour, ha="center" if at[0] < 0 else "left", va="center")
