"""Levels over directions: all that a receiver without phase tells."""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np

from colure.geometry.conventions import FloatArray
from colure.values import holds_arrays


@dataclass(frozen=True, kw_only=True)
@holds_arrays
class PowerSphere:
    """Total gain, linear (frequency, theta, phi), rings and columns over a full turn; whole or part of the sphere.

    noise_db, drift_db
        Of a run: expanded, what noise makes of the highest level on the range, and what drift leaves between the directions.
    tied_db
        Expanded, what all directions together have against the reference, since the ties that lead there are noisy too.
    """

    frequency_hz: FloatArray
    theta: FloatArray
    phi: FloatArray
    gain: FloatArray
    noise_db: float
    drift_db: float
    tied_db: float = 0.0

    @property
    def whole(self) -> bool:
        """Tell whether the rings run from pole to pole."""
        return bool(np.isclose(self.theta[0], 0.0) and np.isclose(self.theta[-1], np.pi))

    def only(self, index: int) -> PowerSphere:
        """Return one frequency alone."""
        one = slice(index, index + 1)
        return replace(self, frequency_hz=self.frequency_hz[one], gain=self.gain[one])
