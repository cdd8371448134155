"""Drift of gain and phase, taken out with tie points; jumps are found and not smoothed over.

Level and phase are smooth random functions of time (`drift_curve`): ties are weighed by their own noise, and
ties that are mostly noise correct nothing. A connector that slips is not smooth: where two ties differ far more
than their neighbours do, the change is placed at one moment, which the scan's own sweeps at the boresight tell
(every slice of a roll-over-azimuth scan passes it). What changes between two sessions of a run, while nothing is
measured, is neither drift nor a jump: ties at both ends tell it.
"""

from __future__ import annotations

from dataclasses import dataclass, field, replace
from typing import TYPE_CHECKING

import numpy as np

from colure.analysis.steps.drift_curve import DriftCurve, fit
from colure.geometry.conventions import ComplexArray, FloatArray, IntArray
from colure.model.bands import relative_noise
from colure.model.files import with_step
from colure.model.plan import ROLES, Role
from colure.model.record import Flag, of_role
from colure.values import holds_arrays

if TYPE_CHECKING:
    import xarray as xr

    from colure.model.chamber import Chamber


#: 20/ln 10: dB per neper.
DB = 20.0 / np.log(10.0)
#: Ties that differ this many times more than ties usually do, and by this much at least, show a jump.
JUMP_TIMES, JUMP_LEAST = 6.0, 0.02
#: Median over standard deviation of a quadrature: of a modulus of two (Rayleigh, sqrt(2 ln 2)) over that of one (0.6745).
MEDIAN_WITHOUT_PHASE = 1.1774 / 0.6745
#: Correlation time of a drift that takes half an hour to reach what is declared (common practice, no source).
DRIFT_TIME_S = 900.0
#: Level (nepers) and phase (rad) of a drift that nobody declared: 0.3 dB and 8 deg.
UNDECLARED = 0.3 / DB + 1j * np.deg2rad(8.0)
#: Below this signal-to-noise ratio a logarithm of a reading says nothing of level and phase: 10 dB.
READABLE = 10.0**0.5
#: No receiver repeats better than this, relative.
REPEATS = 1e-5
#: How a drift depends on frequency, against what all frequencies share: in proportion to it, and freely.
ACROSS_BAND = (1.0, 0.1, 0.02)
#: Share of what the correction leaves that its modes hold.
MODES_HOLD = 0.98
#: Moments of the scan at which the drift left is worked out.
MOMENTS = 160


@dataclass(frozen=True, kw_only=True)
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


@dataclass(frozen=True, kw_only=True)
class Left:
    """What the correction leaves, relative rms: between the parts of a scan (level in nepers, phase in rad), and in common.

    common
        Each quadrature of what the whole scan has against the reference's sweeps.
    """

    level: float
    phase: float
    common: float


@dataclass(frozen=True)
@holds_arrays
class DriftTrack:
    """What the tie points say.

    time_s (tie,), ratio (tie, frequency) complex relative to the first tie, and the residual:
    rms relative error of predicting each inner tie from its neighbours, amplitude ratio. That
    spans twice the interval actually interpolated, so it errs on the high side. Jumps are left out of it.

    level, phase
        The drift as functions of time: what all frequencies share, what goes with frequency, and the rest.
    breaks_s
        Moments between sessions: a tie on either side, and no sweep between them.
    noise
        Relative noise of one tie (complex modulus).
    """

    time_s: FloatArray
    ratio: ComplexArray
    residual: float
    jumps: tuple[Jump, ...] = ()
    level: tuple[DriftCurve, ...] = ()
    phase: tuple[DriftCurve, ...] = ()
    noise: float = 0.0
    breaks_s: FloatArray = field(default_factory=lambda: np.empty(0))
    left: Left = Left(level=0.0, phase=0.0, common=0.0)

    def at(self, frequencies: slice | IntArray) -> DriftTrack:
        """Return the track at some of its frequencies; residual, jumps and what is left are those of all together."""
        return replace(
            self,
            ratio=self.ratio[:, frequencies],
            level=tuple(one.only(frequencies) for one in self.level),
            phase=tuple(one.only(frequencies) for one in self.phase),
        )

    @property
    def between(self) -> float:
        """Rms relative error (complex modulus) that the correction leaves between the parts of a scan."""
        return float(np.hypot(self.left.level, self.left.phase))

    @property
    def readable(self) -> bool:
        """Tell whether the ties stand far enough above the noise to say anything of the drift."""
        return self.noise * READABLE < 1.0

    def modes(self, moments_s: FloatArray) -> ComplexArray:
        """Return independent errors (mode, moment) that the correction leaves, each one standard deviation: nepers, and radians as imaginary part.

        What all moments have in common is left out. The errors of neighbouring moments go together as the ties leave them: few ties
        leave a slope over the whole scan, and with it a difference between its polarization passes.
        """
        moments = np.asarray(moments_s, float)
        count = self.ratio.shape[1]
        errors = []
        for curves, unit in ((self.level, 1.0), (self.phase, 1j)):
            total = np.zeros((moments.size, moments.size))
            for index, one in enumerate(curves):
                share = max(1, count - 2) / count if index == 2 else 1.0 / count
                total += share * one.covariance(moments)
            apart = np.eye(moments.size) - 1.0 / moments.size
            values, vectors = np.linalg.eigh(apart @ total @ apart)
            power: FloatArray = np.clip(values[::-1], 0.0, None)
            kept = int(np.searchsorted(np.cumsum(power), MODES_HOLD * power.sum())) + 1
            # What is left out of the sum counts with the rest.
            scale = np.sqrt(power[:kept] * (power.sum() / max(power[:kept].sum(), 1e-300)))
            errors.append(unit * (vectors[:, ::-1][:, :kept] * scale).T)
        return np.concatenate(errors)

    @property
    def longest_session_s(self) -> FloatArray:
        """When the ties of the session with the most of them were read."""
        session = np.searchsorted(self.breaks_s, self.time_s)
        return np.asarray(self.time_s[session == np.argmax(np.bincount(session))])

    def log_gain(self, moments_s: FloatArray) -> ComplexArray:
        """Return the drift without its jumps (moment, frequency): nepers, and radians as the imaginary part."""
        level, phase = (sum((c.at(moments_s) for c in curves), np.zeros(())) for curves in (self.level, self.phase))
        start = np.asarray(self.time_s[:1])
        first = (
            sum((c.at(start) for c in self.level), np.zeros(())),
            sum((c.at(start) for c in self.phase), np.zeros(())),
        )
        return np.asarray((level - first[0]) + 1j * (phase - first[1]))


def declared_drift(chamber: Chamber) -> complex:
    """Return how far a chamber says that it drifts: nepers, and radians as the imaginary part."""
    return complex(chamber.tie_drift_db / DB, np.deg2rad(chamber.tie_drift_deg))


def track(record: xr.Dataset, *, declared: complex = UNDECLARED) -> DriftTrack:
    """Read the drift from a record's tie points.

    Parameters
    ----------
    declared
        How far the chamber drifts in half an hour: nepers, and radians as the imaginary part. What the ties cannot tell
        is taken to be as large.

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
    noise = np.maximum(sweep_noise(record)[:, strong] / np.abs(level).mean(axis=0), REPEATS)
    breaks_s = _breaks(record, time_s, ties["role"].values[order])
    jumps = _jumps(record, time_s, ratio, float(np.sqrt(np.mean(noise**2))), breaks_s)
    smooth = _without(ratio, time_s, jumps)
    residual = _residual(smooth, time_s, breaks_s)
    drift = DriftTrack(time_s, ratio, residual, jumps, noise=float(np.sqrt(np.mean(noise**2))), breaks_s=breaks_s)
    drift = _with_curves(drift, smooth, noise, declared, record["frequency"].values)
    return replace(drift, left=_left(drift, record))


def _residual(smooth: ComplexArray, time_s: FloatArray, breaks_s: FloatArray) -> float:
    """Return the rms relative error of predicting each inner tie from its neighbours of the same session."""
    left, right = time_s[:-2], time_s[2:]
    together = np.searchsorted(breaks_s, left) == np.searchsorted(breaks_s, right)
    if not together.any():
        return 0.0
    share = ((time_s[1:-1] - left) / np.maximum(right - left, 1e-9))[:, None]
    predicted = smooth[:-2] * (1.0 - share) + smooth[2:] * share
    return float(np.sqrt(np.mean(np.abs(predicted / smooth[1:-1] - 1.0)[together] ** 2)))


def _breaks(record: xr.Dataset, time_s: FloatArray, role: IntArray) -> FloatArray:
    """Return moments between sessions: a tie read on resuming, and nothing since the tie before it.

    Where something was measured between them, both tell of its drift, and it stays one session.
    """
    moments = np.sort(record["time_s"].values)
    begun = np.flatnonzero(role[1:] == ROLES.index(Role.RESUME)) + 1
    alone = np.searchsorted(moments, time_s[begun]) - np.searchsorted(moments, time_s[begun - 1], side="right") == 0
    return np.asarray(0.5 * (time_s[begun] + time_s[begun - 1])[alone])


def sweep_noise(record: xr.Dataset) -> FloatArray:
    """Return the noise of one sweep (frequency, port), complex modulus, from what the reference's sweeps repeat; 0 if none repeats."""
    points = of_role(record, Role.REFERENCE)
    trace, shown = points["trace"].values, np.round(points["commanded_deg"].values, 4)
    same = np.all(shown[1:] == shown[:-1], axis=1) if len(trace) > 1 else np.zeros(0, bool)
    if not same.any():
        return np.zeros(trace.shape[1:])
    # Neighbours differ by sqrt 2 of the noise, and drift hardly counts between them.
    each = np.mean(np.abs(np.diff(trace, axis=0)[same]) ** 2, axis=0) / 2.0
    if not np.any(trace.imag):
        each *= 2.0  # a level far above the noise shows one of two quadratures
    # Bandwidth and power of each band are known: their noise is one number, seen through all of them.
    beside = relative_noise(record.attrs, record["frequency"].values)[:, None]
    return np.asarray(np.sqrt(np.mean(each / beside, axis=0) * beside))


def _with_curves(
    drift: DriftTrack, smooth: ComplexArray, noise: FloatArray, declared: complex, frequency_hz: FloatArray
) -> DriftTrack:
    """Return the track with its drift as functions of time."""
    logs = np.log(np.abs(smooth)) + 1j * np.unwrap(np.angle(smooth), axis=0)
    if not drift.readable:
        logs = np.zeros_like(logs)
    count = logs.shape[1]
    parts = [np.full(count, count**-0.5)]
    if count > 1:
        ramp = frequency_hz - frequency_hz.mean()
        parts.append(ramp / np.linalg.norm(ramp))
    shared = [np.outer(logs @ one, one) for one in parts]
    # Far below the signal the noise of level and of phase is that of one quadrature each.
    variance = np.full(drift.time_s.size, float(np.mean(noise**2)) / 2.0 if drift.readable else 1e6)
    # Ties that say nothing tell no steps.
    breaks = drift.breaks_s if drift.readable else None
    level: list[DriftCurve] = []
    phase: list[DriftCurve] = []
    for share, one, left in zip(ACROSS_BAND, [*parts, None], [*shared, logs - sum(shared)], strict=False):
        if one is None and count < 3:
            break
        # In an orthonormal part of the band a drift that all share is sqrt(frequencies) as large.
        series = left if one is None else left @ one[:, None]
        size = share * (1.0 if one is None else count**0.5)
        for curves, data, known in ((level, series.real, declared.real), (phase, series.imag, declared.imag)):
            curve = fit(
                drift.time_s, data, variance=variance, size=size * known, length_s=DRIFT_TIME_S, breaks_s=breaks
            )
            curves.append(curve if one is None else replace(curve, weights=curve.weights * one[None, :]))
    return replace(drift, level=tuple(level), phase=tuple(phase))


def _left(drift: DriftTrack, record: xr.Dataset) -> Left:
    """Return what the ties leave open of the drift."""
    scan, start = of_role(record, Role.SCAN)["time_s"].values, of_role(record, Role.REFERENCE)["time_s"].values
    if scan.size == 0:
        return Left(level=0.0, phase=0.0, common=0.0)
    moments = np.quantile(scan, np.linspace(0.0, 1.0, min(MOMENTS, scan.size)))
    begin = float(start.mean()) if start.size else float(drift.time_s[0])
    count = drift.ratio.shape[1]
    weight = np.full(moments.size, 1.0 / moments.size)
    apart, common = [0.0, 0.0], 0.0
    for which, curves in enumerate((drift.level, drift.phase)):
        for index, one in enumerate(curves):
            share = max(1, count - 2) / count if index == 2 else 1.0 / count
            own = one.covariance(np.append(moments, begin))
            inner, cross = own[:-1, :-1], own[:-1, -1]
            mean = float(weight @ inner @ weight)
            apart[which] += share * max(0.0, float(np.diag(inner).mean()) - mean)
            common += 0.5 * share * max(0.0, mean - 2.0 * float(weight @ cross) + float(own[-1, -1]))
    return Left(level=float(np.sqrt(apart[0])), phase=float(np.sqrt(apart[1])), common=float(np.sqrt(common)))


def _jumps(
    record: xr.Dataset, time_s: FloatArray, ratio: ComplexArray, noise: float, breaks_s: FloatArray
) -> tuple[Jump, ...]:
    """Find the intervals between ties that hold a jump, and when in them it happened."""
    if len(time_s) < 5:
        return ()
    change = np.mean(np.log(ratio[1:] / ratio[:-1]), axis=1)
    size = np.where(np.diff(np.searchsorted(breaks_s, time_s)) > 0, 0.0, np.abs(change))
    # A level alone scatters about zero more often than a level with its phase: the median is lower against the standard deviation.
    times = JUMP_TIMES * (1.0 if np.any(change.imag) else MEDIAN_WITHOUT_PHASE)
    usual = float(np.median(size))
    jumps = []
    for index in np.flatnonzero(size > max(JUMP_LEAST, times * max(usual, noise))):
        after, before = _bracket(record, float(time_s[index]), float(time_s[index + 1]), complex(change[index]))
        level, phase = DB * change[index].real, np.rad2deg(change[index].imag)
        jumps.append(
            Jump(
                time_s=0.5 * (after + before),
                after_s=after,
                before_s=before,
                level_db=float(level),
                phase_deg=float(phase),
            )
        )
    return tuple(jumps)


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
    """Divide every trace by the drift at its time (level and phase)."""
    moments = record["time_s"].values
    gain = (np.exp(drift.log_gain(moments)) * _steps(moments, drift))[:, :, None]
    corrected = record.assign(trace=(record["trace"].dims, record["trace"].values / gain, record["trace"].attrs))
    doubtful = np.zeros(moments.size, bool)
    for jump in drift.jumps:
        doubtful |= (moments > jump.after_s) & (moments < jump.before_s)
    if doubtful.any():
        flags = record["flags"].values | np.where(doubtful, int(Flag.UNDECIDED), 0)
        corrected = corrected.assign(flags=(record["flags"].dims, flags, record["flags"].attrs))
    jumps = [[round(j.time_s, 3), round(j.level_db, 3), round(j.phase_deg, 2)] for j in drift.jumps]
    return with_step(
        corrected, "drift", ties=len(drift.time_s), residual=drift.residual, left=drift.between, jumps_s_db_deg=jumps
    )
