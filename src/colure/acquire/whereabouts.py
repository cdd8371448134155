"""Where the axes were left, journalled, and compared with where they are found: a lost count must not go unseen.

A controller that lost power counts from zero again; somebody may have turned an axis by hand. Both read like a sound
position. So the readouts at rest are kept with the run, and those found at the next start must agree.
"""

from __future__ import annotations

from contextlib import suppress
from typing import Any

import numpy as np

from colure.acquire.guard import Guard
from colure.acquire.journal import Journal, Row
from colure.acquire.station import Station, blame
from colure.errors import InstrumentError, JournalError
from colure.geometry.conventions import FloatArray

#: How often braking axes are looked at before their place is kept, and how long after each other (seconds).
LOOKS, LOOK_S = 30, 0.1
#: Axes at rest may creep by so many read-back tolerances while nobody looks.
CREEP_TOLERANCES = 2.0


class Whereabouts:
    """Keeps readouts at rest and the ends of unplanned moves in the journal, and judges what is found later."""

    def __init__(self, station: Station, journal: Journal) -> None:
        self._station = station
        self._journal = journal
        #: What is found now follows from what was kept: only then it may be kept in its place.
        self._known = False

    def at_rest(self) -> None:
        """Keep where the axes stand; nothing is kept if they cannot be asked, were never proven, or have lost their count."""
        guard, sent = self._station.guard, self._station.sent_deg
        if not self._known:
            return
        with suppress(InstrumentError, JournalError):
            before = guard.last_deg
            readouts = guard.readouts(self._station.axes.status())
            lost = guard.unproven
            if not lost and before is not None and sent is not None:
                lost = lost_count(guard, before, sent, readouts)
            if lost:
                # Kept as a place at rest it would be believed by whoever goes on.
                guard.last_deg = before
                self._journal.set_meta("distrust", f"{lost}: its count may be lost, or somebody turned it")
                return
            for _ in range(LOOKS):
                before = readouts
                self._station.clock.sleep(LOOK_S)
                readouts = guard.readouts(self._station.axes.status())
                if np.all(np.abs(readouts - before) < 1e-3):
                    self._journal.set_meta("rest", dict(zip(guard.names, readouts.tolist(), strict=True)))
                    return

    def setting_out(self) -> None:
        """From now on the axes move; what was kept at rest no longer holds."""
        self._known = True
        if self._journal.meta("rest") is not None:
            self._journal.set_meta("rest", None)

    def heading(self, *targets_deg: FloatArray, line: int = -1) -> None:
        """Keep the ends of a move that the plan's order does not tell, and where it begins.

        line
            The line that is flown: axes run on behind its last point.
        """
        here = self._station.guard.last_deg
        ends = [[float(v) for v in place] for place in (*targets_deg, *(() if here is None else (here,)))]
        self._journal.set_meta("heading", {"deg": ends, "rows": self._journal.count, "line": line})

    def doubt(self, next_deg: FloatArray | None) -> str:
        """Say why the readouts found now do not follow from what was kept; empty if they do.

        next_deg
            Where the plan goes from here: a process that died was on its way there.
        """
        guard = self._station.guard
        with blame("axes"):
            readouts = guard.readouts(self._station.axes.status())
        rest = self._journal.meta("rest")
        if rest is not None and set(rest) == set(guard.names):
            kept = np.array([rest[name] for name in guard.names])
            slack = np.array([CREEP_TOLERANCES * axis.readback_tolerance_deg for axis in guard.axes.values()])
            return self._words(readouts, kept - slack, kept + slack, "this run left it at")
        span = self._between(next_deg)
        if span is None:
            return ""
        axes = guard.axes.values()
        slack = np.array([axis.following_error_deg + CREEP_TOLERANCES * axis.readback_tolerance_deg for axis in axes])
        below = np.array([axis.approach_deg for axis in axes])
        return self._words(
            readouts,
            span.min(axis=0) - slack - below,
            span.max(axis=0) + slack,
            "this run broke off while it moved from",
        )

    def _between(self, next_deg: FloatArray | None) -> FloatArray | None:
        """Return the places (place, axis) that the axes were between when the last process died; None if unknown."""
        last = self._journal.last_row()
        if last is None or next_deg is None or last.readback_deg.size != len(self._station.guard.names):
            return None
        places = [last.readback_deg, last.commanded_deg, *np.atleast_2d(next_deg)]
        heading = self._journal.meta("heading")
        if heading is not None and (heading["rows"] >= self._journal.count - 1 or self._is_of(last, heading)):
            places += [np.asarray(one, float) for one in heading["deg"]]
        return np.stack(places)

    def _is_of(self, row: Row, heading: dict[str, Any]) -> bool:
        """Tell whether a row is of the line that was headed for: its run-out comes after its last row."""
        line = heading.get("line", -1)
        return bool(line >= 0 and row.plan_index >= 0 and self._station.plan.line_index[row.plan_index] == line)

    def _words(self, readouts: FloatArray, low: FloatArray, high: FloatArray, what: str) -> str:
        for name, value, least, most in zip(self._station.guard.names, readouts, low, high, strict=True):
            if not least <= value <= most:
                middle, half = 0.5 * (least + most), 0.5 * (most - least)
                return (
                    f"axis {name} stands at {value:.3f} deg, but {what} {middle - half:.3f} to {middle + half:.3f} deg: "
                    "its count may be lost, or somebody turned it"
                )
        return ""


def lost_count(
    guard: Guard, before_deg: FloatArray, sent_deg: FloatArray, found_deg: FloatArray, *, since_s: float = 0.0
) -> str:
    """Say which axis stands where its last move cannot have left it; empty if all can.

    A move that was braked leaves an axis between the last readout and its target. A controller that lost power reads zero,
    which may lie between them by chance: zero is believed only of an axis that stood there or was sent there. Where all axes
    were sent to zero and read it, only those can have arrived that had the time for it.

    Parameters
    ----------
    before_deg
        Last readouts before the line was lost.
    sent_deg
        Target of the move that was under way, or of the last one.
    found_deg
        Readouts at rest now.
    since_s
        How long the axes may have run on after the last readouts before they were braked; 0: they were not looked for.
    """
    slack = _slack_deg(guard)
    beyond = np.array([axis.following_error_deg for axis in guard.axes.values()])
    way = sent_deg - before_deg
    low = np.where(way < -slack, sent_deg - beyond, before_deg) - slack
    high = np.where(way > slack, sent_deg + beyond, before_deg) + slack
    zero, stood, sent = (np.abs(one) <= slack for one in (found_deg, before_deg, sent_deg))
    arrived = sent & (not zero.all() or np.abs(before_deg) <= _reach_deg(guard, since_s))
    started = zero & ~stood & ~arrived
    for place, name in enumerate(guard.names):
        if not low[place] <= found_deg[place] <= high[place]:
            return (
                f"axis {name} stands at {found_deg[place]:.3f} deg, but its last move was from {before_deg[place]:.3f} to "
                f"{sent_deg[place]:.3f} deg"
            )
        if started[place]:
            return f"axis {name} reads {found_deg[place]:.3f} deg, as after a power cut, and stood at {before_deg[place]:.3f} deg"
    return ""


def arrived_or_lost(guard: Guard, before_deg: FloatArray, found_deg: FloatArray) -> str:
    """Say what speaks for a lost count where all axes read zero after a move there that nobody saw; empty if nothing does.

    Readouts cannot tell an arrival from a controller that started anew on the last piece of the way.
    """
    slack = _slack_deg(guard)
    gone = np.abs(before_deg) > slack
    if not gone.any() or np.any(np.abs(found_deg) > slack):
        return ""
    place = int(np.flatnonzero(gone)[0])
    return f"all axes read 0, as after a power cut; axis {guard.names[place]} was last seen at {before_deg[place]:.3f} deg on its way there"


def _slack_deg(guard: Guard) -> FloatArray:
    return np.array([CREEP_TOLERANCES * axis.readback_tolerance_deg for axis in guard.axes.values()])


def _reach_deg(guard: Guard, since_s: float) -> FloatArray:
    """Return how far each axis can have come in a time at full speed, while it braked after it, and in its readout's age."""
    if since_s <= 0.0:
        return np.zeros(len(guard.names))
    axes = guard.axes.values()
    brake_s = np.array([0.5 * axis.speed_deg_s / axis.acceleration_deg_s2 for axis in axes])
    speed = np.array([axis.speed_deg_s for axis in axes])
    lag_deg = np.array([axis.following_error_deg for axis in axes])
    return np.asarray(speed * (since_s + brake_s + guard.age_s) + lag_deg)
