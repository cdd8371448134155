"""Drift of gain and phase, taken out with tie points; jumps are found and not smoothed over.

Between two ties the level in dB and the phase run straight in time. A connector that slips does
not: where two ties differ far more than their neighbours do, the change is placed at one moment,
which the scan's own sweeps at the boresight tell (every slice of a roll-over-azimuth scan passes it).
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

import numpy as np

from colure.geometry.conventions import ComplexArray, FloatArray, IntArray
from colure.model.files import with_step
from colure.model.plan import Role
from colure.model.record import Flag, of_role

if TYPE_CHECKING:
    import xarray as xr


#: 20/ln 10: dB per neper.
DB = 20.0 / np.log(10.0)
#: Ties that differ this many times more than ties usually do, and by this much at least, show a jump.
JUMP_TIMES, JUMP_LEAST = 6.0, 0.02


@dataclass(frozen=True)
class Jump:
    """A sudden change: when it was taken to happen, how sure that is, and how large it was.

    after_s, before_s
        The interval that it lies in: the two sweeps or ties beside it.
    """

    time_s: float
    after_s: float
    before_s: float
    level_db: float
    phase_deg: float


@dataclass(frozen=True)
class DriftTrack:
    """What the tie points say.

    time_s (tie,), ratio (tie, frequency) complex relative to the first tie, and the residual:
    rms relative error of predicting each inner tie from its neighbours, amplitude ratio. That
    spans twice the interval actually interpolated, so it errs on the high side. Jumps are left out of it.
    """

    time_s: FloatArray
    ratio: ComplexArray
    residual: float
    jumps: tuple[Jump, ...] = ()

    def at(self, frequencies: slice | IntArray) -> DriftTrack:
        """Return the track at some of its frequencies; residual and jumps are those of all together."""
        return replace(self, ratio=self.ratio[:, frequencies])

    @property
    def between(self) -> float:
        """Rms relative error that is left between two ties, for a drift that wanders.

        Leaving every second tie out doubles the interval; a random walk that is pinned at both ends strays
        sqrt(1/3) as far on average over half the interval (derivable), a smooth drift less.
        """
        return float(self.residual / 3.0**0.5)


def track(record: xr.Dataset) -> DriftTrack:
    """Read the drift from a record's tie points.

    Raises
    ------
    ValueError
        If the record holds no tie points.
    """
    ties = of_role(record, Role.TIE, Role.RESUME)
    if ties.sizes["point"] == 0:
        raise ValueError("record: 0 tie points, needs at least 1 (points)")
    order = np.argsort(ties["time_s"].values, kind="stable")
    trace = ties["trace"].values[order]
    # On a dual probe only one port sees the device well at the tie position.
    strong = int(np.argmax(np.abs(trace).mean(axis=(0, 1))))
    level = trace[:, :, strong]
    ratio = level / level[0]
    time_s = ties["time_s"].values[order]
    jumps = _jumps(record, time_s, ratio)
    smooth = _without(ratio, time_s, jumps)
    residual = 0.0
    if len(time_s) > 2:
        left, right = time_s[:-2], time_s[2:]
        share = ((time_s[1:-1] - left) / np.maximum(right - left, 1e-9))[:, None]
        predicted = smooth[:-2] * (1.0 - share) + smooth[2:] * share
        residual = float(np.sqrt(np.mean(np.abs(predicted / smooth[1:-1] - 1.0) ** 2)))
    return DriftTrack(time_s, ratio, residual, jumps)


def _jumps(record: xr.Dataset, time_s: FloatArray, ratio: ComplexArray) -> tuple[Jump, ...]:
    """Find the intervals between ties that hold a jump, and when in them it happened."""
    if len(time_s) < 5:
        return ()
    change = np.mean(np.log(ratio[1:] / ratio[:-1]), axis=1)
    size = np.abs(change)
    usual = float(np.median(size))
    found = []
    for index in np.flatnonzero(size > max(JUMP_LEAST, JUMP_TIMES * usual)):
        after, before = _bracket(record, float(time_s[index]), float(time_s[index + 1]), complex(change[index]))
        level, phase = DB * change[index].real, np.rad2deg(change[index].imag)
        found.append(Jump(0.5 * (after + before), after, before, float(level), float(phase)))
    return tuple(found)


def _bracket(record: xr.Dataset, begin_s: float, end_s: float, change: complex) -> tuple[float, float]:
    """Return the two moments beside a jump: sweeps at the tie's own place in between say on which side they lie."""
    ties, scan = of_role(record, Role.TIE), of_role(record, Role.SCAN)
    moments = scan["time_s"].values
    swept = int(np.argmax(np.ptp(scan["commanded_deg"].values, axis=0)))
    home = float(ties["commanded_deg"].values[0, swept])
    here = (moments > begin_s) & (moments < end_s) & (np.abs(scan["commanded_deg"].values[:, swept] - home) < 1e-3)
    strong = int(np.argmax(np.abs(ties["trace"].values).mean(axis=(0, 1))))
    level = ties["trace"].values[:, :, strong].mean(axis=1)
    first = level[int(np.argmin(np.abs(ties["time_s"].values - begin_s)))]
    after, before = begin_s, end_s
    passing = scan["trace"].isel(point=np.flatnonzero(here)).values[:, :, strong].mean(axis=1)
    for moment, value in zip(moments[here], passing, strict=True):
        shift = complex(np.log(value / first))
        if min(abs(shift), abs(shift - change)) > 0.5 * abs(change):
            continue  # another polarization: it says nothing
        if abs(shift) < abs(shift - change):
            after = max(after, float(moment))
        else:
            before = min(before, float(moment))
    return (after, before) if after < before else (begin_s, end_s)


def _without(ratio: ComplexArray, time_s: FloatArray, jumps: tuple[Jump, ...]) -> ComplexArray:
    """Return tie ratios as if no jump had happened."""
    out = ratio.copy()
    for jump in jumps:
        before, after = np.flatnonzero(time_s <= jump.after_s)[-1], np.flatnonzero(time_s >= jump.before_s)[0]
        out[after:] /= (ratio[after] / ratio[before])[None, :]
    return out


def _steps(moments: FloatArray, drift: DriftTrack) -> ComplexArray:
    """Return the product of all jumps that happened before each moment, (point, frequency)."""
    out = np.ones((moments.size, drift.ratio.shape[1]), complex)
    for jump in drift.jumps:
        before = np.flatnonzero(drift.time_s <= jump.after_s)[-1]
        after = np.flatnonzero(drift.time_s >= jump.before_s)[0]
        out[moments > jump.time_s] *= drift.ratio[after] / drift.ratio[before]
    return out


def correct(record: xr.Dataset, drift: DriftTrack) -> xr.Dataset:
    """Divide every trace by the drift interpolated to its time (level in dB and phase)."""
    moments = record["time_s"].values
    order = np.argsort(drift.time_s, kind="stable")
    times = drift.time_s[order]
    smooth = _without(drift.ratio[order], times, drift.jumps)
    logs = np.log(np.abs(smooth))
    phases = np.unwrap(np.angle(smooth), axis=0)
    columns = range(drift.ratio.shape[1])
    amplitude = np.stack([np.interp(moments, times, logs[:, i]) for i in columns], axis=-1)
    phase = np.stack([np.interp(moments, times, phases[:, i]) for i in columns], axis=-1)
    gain = (np.exp(amplitude + 1j * phase) * _steps(moments, drift))[:, :, None]
    corrected = record.assign(trace=(record["trace"].dims, record["trace"].values / gain, record["trace"].attrs))
    doubtful = np.zeros(moments.size, bool)
    for jump in drift.jumps:
        doubtful |= (moments > jump.after_s) & (moments < jump.before_s)
    if doubtful.any():
        flags = record["flags"].values | np.where(doubtful, int(Flag.UNDECIDED), 0)
        corrected = corrected.assign(flags=(record["flags"].dims, flags, record["flags"].attrs))
    jumps = [[round(j.time_s, 3), round(j.level_db, 3), round(j.phase_deg, 2)] for j in drift.jumps]
    return with_step(corrected, "drift", ties=len(drift.time_s), residual=drift.residual, jumps_s_db_deg=jumps)
