"""Pictures of power without phase: there is neither a co-polar nor a cross-polar part in them."""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np

from colure.geometry.conventions import amplitude_db
from colure.report.charts import FLOOR_DB
from colure.report.drawing import OnAxes, Panels, panels
from colure.report.look import BAND, CO, styled

if TYPE_CHECKING:
    from colure.analysis.uncertainty.level_cuts import LevelCut


def cuts_of_power(cuts: dict[str, LevelCut], *, banded: bool, ax: OnAxes = None) -> Panels:
    """Draw total levels in dB over the angle from the peak, plane by plane; nothing where nothing was measured.

    banded
        True: the 95 % interval of every level is drawn; the common gain uncertainty is not included.
    """
    with styled():
        axes = panels(ax, [f"{name} plane" for name in cuts], (7.2, 2.6 * len(cuts)), sharex=True)
        top = max(float(np.nanmax(amplitude_db(one.amplitude["total"], least=1e-12))) for one in cuts.values())
        for panel, (plane, one) in zip(axes, cuts.items(), strict=True):
            level = amplitude_db(one.amplitude["total"], least=1e-12)
            if banded:
                peak = float(level[one.angle_deg.size // 2])
                _, low, high = one.bounds_db("total", relative=True)
                panel.fill_between(one.angle_deg, low + peak, high + peak, color=BAND, alpha=0.6, linewidth=0)
            panel.plot(one.angle_deg, level, color=CO)
            panel.set_ylim(top + FLOOR_DB, top + 4)
            panel.set_xlim(-180, 180)
            panel.set_xticks(range(-180, 181, 30 if axes.own else 60))
            panel.set_ylabel("gain / dBi")
            panel.set_title(f"{plane} plane (by the declared co-polar direction), total power")
        axes[-1].set_xlabel("angle from the peak / deg")
        return axes
