"""Drift of gain and phase, taken out with tie points."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np

from colure.geometry.conventions import ComplexArray, FloatArray
from colure.model.files import with_step
from colure.model.plan import Role
from colure.model.record import of_role

if TYPE_CHECKING:
    import xarray as xr


@dataclass(frozen=True)
class DriftTrack:
    """What the tie points say.

    time_s (tie,), ratio (tie, frequency) complex relative to the first tie, and the residual:
    rms relative error of predicting each inner tie from its neighbours, amplitude ratio. That
    spans twice the interval actually interpolated, so it errs on the high side.
    """

    time_s: FloatArray
    ratio: ComplexArray
    residual: float


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
    residual = 0.0
    if len(time_s) > 2:
        left, right = time_s[:-2], time_s[2:]
        share = ((time_s[1:-1] - left) / np.maximum(right - left, 1e-9))[:, None]
        predicted = ratio[:-2] * (1.0 - share) + ratio[2:] * share
        residual = float(np.sqrt(np.mean(np.abs(predicted / ratio[1:-1] - 1.0) ** 2)))
    return DriftTrack(time_s, ratio, residual)


def correct(record: xr.Dataset, drift: DriftTrack) -> xr.Dataset:
    """Divide every trace by the drift interpolated to its time (level in dB and phase)."""
    moments = record["time_s"].values
    order = np.argsort(drift.time_s, kind="stable")
    times = drift.time_s[order]
    logs = np.log(np.abs(drift.ratio[order]))
    phases = np.unwrap(np.angle(drift.ratio[order]), axis=0)
    columns = range(drift.ratio.shape[1])
    amplitude = np.stack([np.interp(moments, times, logs[:, i]) for i in columns], axis=-1)
    phase = np.stack([np.interp(moments, times, phases[:, i]) for i in columns], axis=-1)
    gain = np.exp(amplitude + 1j * phase)[:, :, None]
    corrected = record.assign(trace=(record["trace"].dims, record["trace"].values / gain, record["trace"].attrs))
    return with_step(corrected, "drift", ties=len(drift.time_s), residual=drift.residual)
