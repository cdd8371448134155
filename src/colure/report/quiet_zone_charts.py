"""Pictures of field probing."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

import numpy as np

from colure.report.look import CO, MUTED, canvas, styled

if TYPE_CHECKING:
    from colure.analysis.stray.quiet_zone import Probed
    from colure.report.drawing import Drawing

#: Lines in one picture; more would not be told apart.
MOST_LINES = 8


def ripple_chart(lines: Sequence[Probed]) -> Drawing:
    """Draw what ripples about the direct wave along each line, one panel a line, all on one scale."""
    shown = lines[:MOST_LINES]
    with styled():
        figure = canvas(7.2, 0.9 + 1.5 * len(shown))
        axes = np.atleast_1d(figure.subplots(len(shown), 1, sharex=True, sharey=True))
        for ax, one in zip(axes, shown, strict=True):
            line = one.line
            ax.plot(1e3 * line.position_m, one.residual_db, color=CO)
            ax.axhline(0.0, color=MUTED, linewidth=0.6)
            ax.set_ylabel("ripple / dB")
            ax.set_title(
                f"{line.name}, {line.frequency_hz / 1e9:.6g} GHz: {one.ripple_db:.2g} dB peak to peak, "
                f"echoes {one.reflectivity_db:.1f} dB"
            )
        axes[-1].set_xlabel("position on the line / mm")
        return figure
