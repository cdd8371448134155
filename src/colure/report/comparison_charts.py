"""Charts of patterns and devices against each other."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING, Any, Protocol

import numpy as np

from colure.geometry.conventions import SPEED_OF_LIGHT, FloatArray, amplitude_db
from colure.report.look import ACCENT, BAND, CO, CROSS, FIELD_MAP, INK, MUTED, canvas, styled

if TYPE_CHECKING:
    from colure.analysis.compare.match import LevelError, Match
    from colure.report.drawing import Drawing

#: Cuts are drawn down to so far below the highest level.
LOWEST_DB = 50.0
#: The difference is drawn over this range below its own largest value.
RANGE_DB = 40.0


class Overlay(Protocol):
    """One cut of two patterns along the same directions: levels (n,) and their 95 % ends, dB, of the first and the second."""

    @property
    def plane(self) -> str:
        """Name of the plane."""
        ...

    @property
    def angle_deg(self) -> FloatArray:
        """(n,) angle from the first one's peak."""
        ...

    @property
    def level(self) -> tuple[FloatArray, FloatArray]:
        """Levels of both."""
        ...

    @property
    def lower(self) -> tuple[FloatArray, FloatArray]:
        """Lower ends of both; nan where no errors are known."""
        ...

    @property
    def upper(self) -> tuple[FloatArray, FloatArray]:
        """Upper ends of both."""
        ...


def comparison_chart(
    matched: Match, index: int, levels: Sequence[LevelError], overlaid: Sequence[Overlay], names: tuple[str, str]
) -> Drawing:
    """Draw two patterns at one frequency: cuts of both over each other with their intervals, and what differs between them.

    overlaid
        The same directions of both; none are drawn where there are none.
    """
    frequency_hz = float(matched.expansion.k[index]) * SPEED_OF_LIGHT / (2.0 * np.pi)
    difference = np.sqrt(np.sum(np.abs(matched.second[index] - matched.first[index]) ** 2, axis=0))
    peak = np.sqrt(np.max(np.sum(np.abs(matched.first[index]) ** 2, axis=0)))
    level = amplitude_db(difference / peak, least=1e-9)
    with styled():
        rows = 2 if overlaid else 1
        figure = canvas(7.2, 3.0 * rows)
        panels = np.atleast_2d(figure.subplots(rows, 2, width_ratios=(1.25, 1.0)))
        for ax, one in zip(panels[0], overlaid, strict=False):
            _overlay(ax, one, names)
        left, right = panels[-1]
        top = 5.0 * float(np.ceil(level.max() / 5.0))
        mesh = left.pcolormesh(np.rad2deg(matched.phi), np.rad2deg(matched.theta), level, cmap=FIELD_MAP,
                               vmin=top - RANGE_DB, vmax=top,
                               shading="nearest", rasterized=True)  # fmt: skip
        left.invert_yaxis()
        left.grid(visible=False)
        left.set_xlabel("phi / deg")
        left.set_ylabel("theta / deg")
        left.set_title(f"Difference at {frequency_hz / 1e9:.3f} GHz")
        figure.colorbar(mesh, ax=left, label="dB re peak", pad=0.02)
        middle = np.array([0.5 * (one.low_db + one.high_db) for one in levels])
        for name, colour, values in (
            ("rms", CO, [one.error_db for one in levels]),
            ("largest", CROSS, [one.worst_db for one in levels]),
        ):
            right.plot(middle, values, color=colour, marker="o", markersize=3.0)
            right.annotate(
                name, (float(middle[0]), values[0]), xytext=(6, -3), textcoords="offset points", color=colour
            )
        right.set_xlabel("level of the first pattern / dB re peak")
        right.set_ylabel("field error / dB re peak")
        right.set_title("Equivalent error level")
        right.set_xlim(right=12.0)  # room for the lines' names
        return figure


def _overlay(ax: Any, one: Overlay, names: tuple[str, str]) -> None:
    top = max(float(np.nanmax(level)) for level in one.level)
    for number, (colour, dash) in enumerate(((CO, "-"), (ACCENT, "--"))):
        if np.any(np.isfinite(one.upper[number])):
            ax.fill_between(one.angle_deg, one.lower[number], one.upper[number], color=colour, alpha=0.2, linewidth=0)
        ax.plot(one.angle_deg, one.level[number], color=colour, linestyle=dash, label=names[number])
    ax.set_ylim(top - LOWEST_DB, top + 6.0)
    ax.set_xlim(-180.0, 180.0)
    ax.set_xlabel("angle from the first one's peak / deg")
    ax.set_ylabel("co-polar level / dBi")
    ax.set_title(f"{one.plane}; shaded: 95 % intervals")
    ax.legend(frameon=False, fontsize=7, loc="upper right")


def series_chart(
    names: Sequence[str], runs: Sequence[str], e_n: Sequence[Sequence[float]], golden: str, frequency_hz: float
) -> Drawing:
    """Draw every device's figures against the golden unit: E_n by figure (rows), within +-1 they agree.

    e_n
        By figure, then by run.
    """
    table = np.array(e_n, float)
    with styled():
        figure = canvas(7.2, 0.9 + 0.22 * len(names))
        ax = figure.subplots()
        ax.axvspan(-1.0, 1.0, color=BAND, alpha=0.45, linewidth=0)
        rows = np.arange(len(names))
        marks, colours = ("o", "s", "^", "D", "v", "P"), (CO, CROSS, ACCENT, INK, MUTED)
        for i, run in enumerate(runs):
            if run != golden:
                ax.plot(table[:, i], rows, linestyle="none", marker=marks[i % len(marks)],
                        color=colours[i % len(colours)],
                        markersize=4.0, label=run)  # fmt: skip
        ax.set_yticks(rows, names)
        ax.invert_yaxis()
        reach = max(1.5, 1.1 * float(np.nanmax(np.abs(table))))
        ax.set_xlim(-reach, reach)
        ax.set_xlabel(f"E_n against {golden} at {frequency_hz / 1e9:.3f} GHz (shaded: agrees)")
        figure.legend(loc="outside upper right", ncols=4, frameon=False)
        return figure
