"""Group delay over frequencies that may have gaps between bands."""

from __future__ import annotations

import numpy as np

from colure.geometry.conventions import FloatArray
from colure.model.bands import stretches

#: Digits of a delay in ns that are kept.
DELAY_DIGITS = 9


def delay_ns(phase: FloatArray, frequency_hz: FloatArray, *, change: bool = False) -> FloatArray:
    """Return -(1/2 pi) d phase / d frequency in ns about its mean over each band without a gap; `nan` where a band has one frequency.

    Parameters
    ----------
    phase
        (..., frequency) radians.
    frequency_hz
        (frequency,), rising. What lies across a gap says nothing of the phase inside it.
    change
        True: `phase` is a small change of phases, which has no turns to count; 0 where a band has one frequency.
    """
    out = np.full(np.shape(phase), 0.0 if change else np.nan)
    for one in stretches(frequency_hz):
        if one.stop - one.start < 2:
            continue
        inside = phase[..., one] if change else np.unwrap(phase[..., one], axis=-1)
        delay = -1e9 * np.gradient(inside, frequency_hz[one], axis=-1) / (2.0 * np.pi)
        # Of three frequencies the middle one's delay is the mean, exactly: no rounding is left of it.
        out[..., one] = np.round(delay - delay.mean(axis=-1, keepdims=True), DELAY_DIGITS)
    return out
