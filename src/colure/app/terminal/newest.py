"""The newest sweep of a run in one line of the terminal: level, where the axes stand, and the trace as a small chart."""

from __future__ import annotations

import time
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from colure.acquire.journal import Row

#: Levels of the chart, its most columns, and how often it is drawn anew (seconds).
BLOCKS, MOST_COLUMNS, EVERY_S = "\u2581\u2582\u2583\u2584\u2585\u2586\u2587\u2588", 24, 0.25


class NewestTrace:
    """Keeps the line that is shown; drawing it costs nothing that the scan would feel."""

    def __init__(self) -> None:
        self.text, self._at = "", 0.0

    def see(self, row: Row | None) -> None:
        """Take a point; the line stays as it is if it is recent."""
        if row is not None and time.monotonic() - self._at > EVERY_S:
            self.text, self._at = trace_line(row), time.monotonic()


def trace_line(row: Row) -> str:
    """Return level (dB, strongest frequency), readouts (degrees) and the trace over the band as a chart from its lowest to its highest level."""
    import numpy as np

    from colure.geometry.conventions import power_db

    level = power_db(np.sum(np.abs(row.trace) ** 2, axis=1), least=1e-30)
    where = " ".join(f"{value:.1f}" for value in row.readback_deg)
    words = f"{level.max():.1f} dB at {where} deg"
    if level.size == 1:
        return words
    bins = np.array([part.max() for part in np.array_split(level, min(level.size, MOST_COLUMNS))])
    span = float(np.ptp(bins))
    steps = np.round((len(BLOCKS) - 1) * (bins - bins.min()) / span) if span > 0.0 else np.zeros(bins.size)
    chart = "".join(BLOCKS[int(i)] for i in steps)
    return f"{words}  {chart} {bins.min():.0f}..{bins.max():.0f} dB"
