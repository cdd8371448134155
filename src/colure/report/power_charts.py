"""Pictures of power without phase: there is neither a co-polar nor a cross-polar part in them."""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np

from colure.geometry.conventions import amplitude_db
from colure.report.charts import FLOOR_DB
from colure.report.look import BAND, CO, canvas, styled

if TYPE_CHECKING:
    from colure.analysis.uncertainty.level_cuts import LevelCut
    from colure.report.drawing import Drawing


def cuts_of_power(cuts: dict[str, LevelCut], *, banded: bool) -> Drawing:
    """Draw total levels in dB over the angle from the peak, plane by plane; nothing where nothing was measured.

    banded
        True: the 95 % interval of every level is drawn, without what moves all levels together.
    """
    with styled():
        figure = canvas(7.2, 2.6 * len(cuts))
        axes = np.atleast_1d(figure.subplots(len(cuts), 1, sharex=True))
        top = max(float(np.nanmax(amplitude_db(one.amplitude["total"], least=1e-12))) for one in cuts.values())
        for ax, (plane, one) in zip(axes, cuts.items(), strict=True):
            level = amplitude_db(one.amplitude["total"], least=1e-12)
            if banded:
                peak = float(level[one.angle_deg.size // 2])
                _, low, high = one.bounds_db("total", relative=True)
                ax.fill_between(one.angle_deg, low + peak, high + peak, color=BAND, alpha=0.6, linewidth=0)
            ax.plot(one.angle_deg, level, color=CO)
            ax.set_ylim(top + FLOOR_DB, top + 4)
            ax.set_xlim(-180, 180)
            ax.set_xticks(range(-180, 181, 30))
            ax.set_ylabel("gain / dBi")
            ax.set_title(f"{plane} plane (by the declared co-polar direction), total power")
        axes[-1].set_xlabel("Angle from the peak / deg")
        return figure
