"""Charts of the recipe's steps, and the map of the room."""

from __future__ import annotations

import textwrap
from typing import TYPE_CHECKING

import numpy as np

from colure.geometry.directions import azimuth_over_elevation
from colure.report.look import ACCENT, CO, CROSS, FIELD_MAP, INK, MUTED, canvas, styled

if TYPE_CHECKING:
    from colure.analysis.findings.diagnosis import Diagnosis
    from colure.analysis.stray.echo_map import EchoMap
    from colure.report.drawing import Drawing

#: Words over a map stand on paper.
PAPER = {"facecolor": "white", "alpha": 0.85, "edgecolor": "none", "pad": 1.5}
FOUND = (CROSS, ACCENT, MUTED)
LEFT = (CO, ACCENT, INK)


def step_chart(what: Diagnosis) -> Drawing:
    """Draw one diagnosis: what the step found dashed, what it left solid, named in their own colours above."""
    with styled():
        figure = canvas(4.6, 2.7)
        ax = figure.subplots()
        names = []
        counts = {True: 0, False: 0}
        for curve in what.curves:
            colours = LEFT if curve.after else FOUND
            colour = colours[min(counts[curve.after], len(colours) - 1)]
            counts[curve.after] += 1
            ax.plot(curve.x, curve.y, color=colour, linestyle="-" if curve.after else (0, (4, 2)),
                    marker="o" if curve.x.size <= 12 else None, markersize=3)  # fmt: skip
            names.append((("\u2014 " if curve.after else "- - ") + curve.name, colour))
        ax.set_xlabel(what.x_label)
        ax.set_ylabel("\n".join(textwrap.wrap(what.y_label, 26)))
        ax.margins(x=0.01)
        _names_above(figure, ax, names)
        return figure


def _names_above(figure: Drawing, ax: object, names: list[tuple[str, str]]) -> None:
    """Name the lines above the axes, in a row, so that they never cover the data."""
    place = 0.0
    for name, colour in names:
        ax.text(place, 1.03, name, transform=ax.transAxes, color=colour, va="bottom", fontsize=8)  # type: ignore[attr-defined]
        place += 0.03 + 0.0185 * len(name)


def room_chart(echo_map: EchoMap) -> Drawing:
    """Draw which directions of the room explain what does not fit the device, the echoes named."""
    with styled():
        figure = canvas(7.2, 3.4)
        ax = figure.subplots()
        azimuth, elevation = (np.rad2deg(v) for v in azimuth_over_elevation(echo_map.directions))
        share = 100.0 * np.maximum(echo_map.share, 0.0)
        dots = ax.scatter(azimuth, elevation, c=share, s=26.0, cmap=FIELD_MAP, vmin=0.0, marker="s", linewidths=0)
        ax.plot([0.0], [0.0], marker="+", markersize=11, color=INK)
        ax.text(5.0, -4.0, "probe", color=INK, fontsize=8, va="top", bbox=PAPER)
        for echo in echo_map.echoes:
            ax.plot([echo.azimuth_deg], [echo.elevation_deg], marker="o", markersize=13, fillstyle="none", color=CROSS)
            right = echo.azimuth_deg > 90.0
            ax.annotate(f"{echo.place}, {echo.level_db:.0f} dB", (echo.azimuth_deg, echo.elevation_deg),
                        xytext=(-10 if right else 10, 9), textcoords="offset points", color=CROSS, fontsize=8,
                        ha="right" if right else "left", bbox=PAPER)  # fmt: skip
        ax.set_xlim(-185, 185)
        ax.set_ylim(-95, 95)
        ax.set_xticks(range(-180, 181, 45))
        ax.set_yticks(range(-90, 91, 30))
        ax.set_xlabel("azimuth in the room / deg (0: probe, + right, \u00b1180: behind the device)")
        ax.set_ylabel("elevation / deg")
        ax.grid(visible=False)
        figure.colorbar(dots, ax=ax, label="share explained / %", pad=0.02)
        return figure
