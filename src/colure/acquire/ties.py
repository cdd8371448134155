"""When a tie point is due: by the plan, by time, and by drift."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from colure.acquire.journal import Row
from colure.geometry.conventions import amplitude_db
from colure.model.chamber import Chamber

#: Ties that the plan places come about every interval; beyond this share of it one is overdue.
OVERDUE = 1.5


@dataclass(frozen=True)
class TieChange:
    """How much a tie differs from an earlier one."""

    level_db: float
    phase_deg: float

    @classmethod
    def between(cls, before: Row, after: Row) -> TieChange:
        """Compare two tie rows: mean over frequencies at the stronger port."""
        strong = int(np.argmax(np.abs(before.trace).mean(axis=0)))
        ratio = after.trace[:, strong] / before.trace[:, strong]
        return cls(float(amplitude_db(ratio).mean()), float(np.rad2deg(np.angle(ratio.mean()))))


class TieKeeper:
    """Remembers the last tie and says when the next one is due before the plan's own."""

    def __init__(self, chamber: Chamber) -> None:
        self._interval_s = chamber.tie_interval_s
        self._limit_db = chamber.tie_drift_db
        self._limit_deg = chamber.tie_drift_deg
        self._last: Row | None = None
        self._restless = False

    def measured(self, row: Row) -> TieChange | None:
        """Take note of a tie; returns its change against the one before."""
        change = None if self._last is None else TieChange.between(self._last, row)
        if change is not None:
            self._restless = not self.allows(change)
        self._last = row
        return change

    def allows(self, change: TieChange, share: float = 1.0) -> bool:
        """Tell whether a change is within a share of what the chamber may drift between two ties."""
        return abs(change.level_db) <= share * self._limit_db and abs(change.phase_deg) <= share * self._limit_deg

    def forget(self) -> None:
        """Begin anew: what comes next is not to be compared with what was."""
        self._last, self._restless = None, False

    @property
    def restless(self) -> bool:
        """Tell whether the last change was beyond the chamber's limits."""
        return self._restless

    def due(self, time_s: float) -> str:
        """Say why a tie is due at an instrument time; empty if none is."""
        if self._last is None:
            return ""
        elapsed = time_s - self._last.time_s
        if self._restless and elapsed > 0.5 * self._interval_s:
            return "the chamber drifts faster than its limits"
        if elapsed > OVERDUE * self._interval_s:
            return f"{elapsed:.0f} s since the last one"
        return ""
