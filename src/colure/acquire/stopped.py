"""What a stop inside a flown slice leaves proven: positions latched at its first pulses, and the sweeps that these started.

Nothing is kept after an abort or a fault of the motion. An abort is to take the drives' power away at once: to wait until axes
stand and to fetch sweeps, with the source on, would put that off by seconds. After a fault of the motion (slip, jump, lost count)
latched positions are counts that are wrong since nobody knows when, and each of them looks as planned.
"""

from __future__ import annotations

import numpy as np

from colure.acquire.latched import OFF_SHARE, SPEED_SHARE, PulseTrain
from colure.acquire.station import Station
from colure.errors import InstrumentError, MotionError
from colure.geometry.conventions import FloatArray
from colure.geometry.move_times import ramp_time
from colure.instruments.protocols import PositionLatch, Sweep, point_taker_of, sweep_keeper_of

#: Braked axes are looked at so often, stand if no readout changes by more than the second number meanwhile, and are waited for so
#: much longer than they should take to brake: seconds, degrees, seconds.
LOOK_S, SAME_DEG, SPARE_S = 0.1, 1e-3, 0.5
#: So long the analyzer is asked for its sweeps after a stop, seconds: until then its source stays on.
FETCH_LIMIT_S = 3.0


def kept_at_stop(station: Station, train: PulseTrain, latch: PositionLatch) -> list[Sweep]:
    """Return the sweeps of a slice's first pulses, those that began at full speed; none unless every pulse given was heard.

    Pulses and sweeps are counted against each other once the axes stand, as at the end of a slice. A line that cannot tell that
    in time proves nothing: its slice is flown again.
    """
    if not station.stopped_softly:
        return []
    try:
        _await_rest(station, train)
        given = train.require_first(latch.latched(train.name, train.pulses))
        return station.in_time(lambda: _counted(station, train, given.size), FETCH_LIMIT_S)
    except InstrumentError:
        return []


def latched_at_stop(train: PulseTrain, latch: PositionLatch) -> FloatArray:
    """Return the readouts of the sweeps all whose pulses were latched before a stop; none where they are not those planned."""
    try:
        latched = train.require_first(latch.latched(train.name, train.pulses))
    except InstrumentError:
        return np.empty(0)
    return train.by_sweep(latched)


def _await_rest(station: Station, train: PulseTrain) -> None:
    """Wait until braked axes stand: pulses come on their last way too."""
    axis = station.guard.axes[train.name]
    limit_s = 2.0 * float(ramp_time(train.speed_deg_s, axis.acceleration_deg_s2, axis.jerk)) + SPARE_S
    begin, before = station.clock.monotonic(), station.axes.status().positions_deg
    while station.clock.monotonic() - begin < limit_s:
        station.clock.sleep(LOOK_S)
        now = station.axes.status().positions_deg
        if all(abs(now[name] - before[name]) < SAME_DEG for name in now):
            return
        before = now
    raise MotionError(f"axes do not come to rest after a hold, still moving after {limit_s:.1f} s")


def _counted(station: Station, train: PulseTrain, given: int) -> list[Sweep]:
    """Return the sweeps that began at full speed if the analyzer has heard as many pulses as the controller gave."""
    keeper = sweep_keeper_of(station.analyzer)
    taker = point_taker_of(station.analyzer) if train.each > 1 else None
    kept = keeper.kept()
    heard = kept if taker is None else taker.pulses_heard()
    if not kept or heard != given or kept != given // train.each:
        return []
    begun_s = keeper.moments(kept) if taker is None else taker.point_moments(heard)
    count = 0 if begun_s is None else at_full_speed(train, begun_s) // train.each
    return keeper.fetch(kept)[:count] if count else []


def at_full_speed(train: PulseTrain, begun_s: FloatArray) -> int:
    """Return how many of the first pulses came at the planned speed, by the moments at which they were heard.

    The one before the first that is late may be of an axis that brakes already: it is left out. A braking axis gives its pulses ever
    more slowly: one that comes sooner after its neighbour was heard twice, and makes up for another that was lost. None counts then.
    """
    period_s = abs(train.pulse_step_deg) / train.speed_deg_s
    gaps_s = np.diff(begun_s)
    least_s = (1.0 - OFF_SHARE) * np.maximum.accumulate(np.concatenate([[period_s], gaps_s[:-1]]))
    # Said so that a `nan` is refused as well.
    if not np.all(gaps_s >= least_s[: gaps_s.size]):
        return 0
    uneven = np.flatnonzero(np.abs(gaps_s - period_s) > OFF_SHARE * period_s)
    count = int(uneven[0]) if uneven.size else gaps_s.size
    if count == 0 or abs(float(np.mean(gaps_s[:count])) / period_s - 1.0) > SPEED_SHARE:
        return 0
    return count
