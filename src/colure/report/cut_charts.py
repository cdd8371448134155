"""Pictures of cuts that were measured as they are drawn: levels over the angle, with their intervals."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

import numpy as np

from colure.report.drawing import OnAxes, Panels, panels
from colure.report.look import ACCENT, BAND, CO, CROSS, canvas, styled

if TYPE_CHECKING:
    from colure.analysis.cuts.levels import CutLevel
    from colure.report.drawing import Drawing

#: Below the highest level of all cuts, dB.
FLOOR_DB = -60.0
#: So many panels fit on a page.
MOST_PANELS = 6


def cuts_chart(levels: list[CutLevel], frequency_hz: float, words: tuple[str, str], *, ax: OnAxes = None) -> Panels:
    """Draw cuts at one frequency, one panel each; of many those whose intervals are known.

    words
        How the component along the probe's offset and the one across it are called.
    """
    chosen = _chosen(levels, frequency_hz)
    return _drawn(chosen, words, _top(chosen), ax)


def each_cut(levels: list[CutLevel], frequency_hz: float, words: tuple[str, str]) -> list[Panels]:
    """Draw the same as `cuts_chart`, a picture for each cut, on the same scale: pages take them one by one."""
    chosen = _chosen(levels, frequency_hz)
    return [_drawn([one], words, _top(chosen), None) for one in chosen]


def _drawn(chosen: list[CutLevel], words: tuple[str, str], top: float, ax: OnAxes) -> Panels:
    with styled():
        axes = panels(ax, [one.label for one in chosen], (7.2, 2.6 * len(chosen) + 0.4))
        for panel, one in zip(axes, chosen, strict=True):
            _panel(panel, one, words, top)
        return axes


def _top(chosen: list[CutLevel]) -> float:
    return max(float(np.nanmax(one.co_dbi)) for one in chosen)


def overlay_chart(
    first: list[CutLevel], second: list[CutLevel], frequency_hz: float, names: tuple[str, str]
) -> Drawing:
    """Draw the cuts that two runs have in common over each other, each with its interval; nothing is matched."""
    theirs = {one.name: one for one in second if one.frequency_hz == frequency_hz}
    chosen = [one for one in _chosen(first, frequency_hz) if one.name in theirs]
    top = _top(chosen)
    with styled():
        figure = canvas(7.2, 2.6 * len(chosen) + 0.4)
        for ax, one in zip(np.atleast_1d(figure.subplots(len(chosen), 1)), chosen, strict=True):
            for level, colour, name, dash in ((one, CO, names[0], "-"), (theirs[one.name], ACCENT, names[1], "--")):
                ax.fill_between(level.angle_deg, level.lower_dbi, level.upper_dbi, color=colour, alpha=0.2, linewidth=0)
                ax.plot(level.angle_deg, level.co_dbi, color=colour, linestyle=dash, label=name)
            ax.legend(frameon=False, fontsize=8, loc="upper right")
            _frame(ax, one, top)
        return figure


def _chosen(levels: list[CutLevel], frequency_hz: float) -> list[CutLevel]:
    here = [one for one in levels if one.frequency_hz == frequency_hz]
    banded = [one for one in here if np.any(np.isfinite(one.upper_dbi))]
    return (banded or here)[:MOST_PANELS]


def _panel(ax: Any, one: CutLevel, words: tuple[str, str], top: float) -> None:
    known = bool(np.any(np.isfinite(one.upper_dbi)))
    if known:
        ax.fill_between(one.angle_deg, one.lower_dbi, one.upper_dbi, color=BAND, alpha=0.6, linewidth=0)
    marker = "o" if one.angle_name == "number" else ""
    ax.plot(one.angle_deg, one.co_dbi, color=CO, marker=marker, markersize=3, linestyle="" if marker else "-")
    ax.text(
        0.015,
        0.94,
        words[0] + (", band: 95 % interval" if known else ""),
        transform=ax.transAxes,
        color=CO,
        va="top",
        fontsize=8,
    )
    if np.any(np.isfinite(one.cross_dbi)):
        ax.plot(one.angle_deg, one.cross_dbi, color=CROSS, linestyle=(0, (4, 2)))
        ax.text(0.015, 0.83, f"{words[1]} (dashed)", transform=ax.transAxes, color=CROSS, va="top", fontsize=8)
    _frame(ax, one, top)


def _frame(ax: Any, one: CutLevel, top: float) -> None:
    ax.set_ylim(top + FLOOR_DB, top + 14)
    ax.set_ylabel("gain / dBi" if one.unit == "dBi" else "relative level / dB")
    ax.set_xlabel("direction, in the order of the list" if one.angle_name == "number" else f"{one.angle_name} / deg")
    ax.set_title(f"{one.label}, {one.frequency_hz / 1e9:.3f} GHz, at the range length")
