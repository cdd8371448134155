"""Readings of one direction and polarization held against each other: a device that slipped reads otherwise from one moment on."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from colure.geometry.conventions import ComplexArray, FloatArray, IntArray, amplitude_db
from colure.values import holds_arrays

#: Two readings differ if their power apart is so many times what noise, drift and these shares make it: of the level, of the peak
#: (common practice, no source).
APART, OF_LEVEL, OF_PEAK = 16.0, 1e-2, 1e-3
#: A slip shows in so many pairs at least, and in this share of those it lies between; fewer are single sweeps that went wrong.
LEAST_PAIRS, LEAST_SHARE = 3, 0.5
#: Directions and angles that differ by less are the same, radians.
SAME = 1e-4


@dataclass(frozen=True, kw_only=True)
class SlipMoment:
    """When a device slipped, and how much tells so.

    earliest, latest
        Between these sweeps of the scan it happened, counted from 1 in the order of time.
    sweeps
        How many sweeps the scan has.
    earliest_s, latest_s
        Moments of those two sweeps since the run began.
    level_db
        What does not fit because of it, rms, relative to the peak.
    """

    earliest: int
    latest: int
    sweeps: int
    earliest_s: float
    latest_s: float
    level_db: float


class CutSlip(SlipMoment):
    """A slip that repeated readings tell: their differences are what does not fit."""

    @property
    def text(self) -> str:
        """When it was, and what to do."""
        return (
            f"the device slipped on its mount, or an axis lost its place, between sweeps {self.earliest} and {self.latest} of {self.sweeps} "
            f"({self.earliest_s:.0f} to {self.latest_s:.0f} s): the same directions read otherwise after it, by {self.level_db:.1f} dB rms relative "
            "to the peak. Look at mount, flange and couplings, and measure all of it again"
        )


@dataclass(frozen=True, kw_only=True)
@holds_arrays
class RepeatedReadings:
    """Readings in the order of time.

    cut (n,), directions (n, 3)
        Which cut each belongs to, and where it looked.
    turn (n,), values (n, frequency, port)
        Angle of the first port from the co vector, radians, and what was read, gain scale.
    time_s (n,), noise (frequency,), drift
        Moments; noise of a reading; relative rms that drift leaves.
    """

    cut: IntArray
    directions: FloatArray
    turn: FloatArray
    values: ComplexArray
    time_s: FloatArray
    noise: FloatArray
    drift: float


def slipped(readings: RepeatedReadings) -> CutSlip | None:
    """Return between which sweeps the device slipped; None if it did not, or if nothing was read twice.

    Readings of one cut alone are compared: another cut through the same direction meets other echoes.
    """
    first, second = _pairs(readings)
    if first.size < LEAST_PAIRS:
        return None
    size = np.abs(readings.values)
    peak = np.maximum(size.max(axis=(0, 2)), 1e-300)[:, None]
    off = np.abs(readings.values[second] - readings.values[first])
    usual = readings.noise[:, None] ** 2 + ((readings.drift + OF_LEVEL) * size[first]) ** 2 + (OF_PEAK * peak) ** 2
    apart = np.mean(off**2 / (2.0 * usual), axis=(1, 2)) > APART
    if apart.sum() < LEAST_PAIRS:
        return None
    before, after = int(first[apart].max()), int(second[apart].min())
    if before >= after:
        return None
    between = (first <= before) & (second >= after)
    if apart[between].mean() < LEAST_SHARE:
        return None
    return CutSlip(
        earliest=before + 1,
        latest=after + 1,
        sweeps=readings.time_s.size,
        earliest_s=float(readings.time_s[before]),
        latest_s=float(readings.time_s[after]),
        level_db=float(amplitude_db(np.sqrt(np.mean((off[between] / peak) ** 2)))),
    )


def _pairs(readings: RepeatedReadings) -> tuple[IntArray, IntArray]:
    """Return numbers (pair,) of readings of one cut, direction and polarization, each with the next one of the same."""
    angles = np.stack([np.cos(readings.turn), np.sin(readings.turn)], axis=-1)
    key = np.round(np.concatenate([readings.cut[:, None], readings.directions / SAME, angles / SAME], axis=1))
    _, group = np.unique(key, axis=0, return_inverse=True)
    order = np.lexsort((np.arange(group.size), group.reshape(-1)))
    same = np.diff(group.reshape(-1)[order]) == 0
    return order[:-1][same], order[1:][same]
