"""What a transformed field may be wrong by: noise, what the data leave open, truncation, position.

Every error is a set of draws of coefficients, carried through the same steps as the result. So one
error per direction can be stated, and every figure of the result can be evaluated with its errors.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from colure.geometry.conventions import BoolArray, ComplexArray, FloatArray, order_of_count
from colure.values import holds_arrays
from colure.waves.modes import resized
from colure.waves.scattered import synthesis_at

#: Coverage factor of the stated error of the field vector; two complex components, so above 95 %.
COVERAGE_FACTOR = 2.0
#: Draws of noise and of positions for a whole-sphere grid.
GRID_DRAWS = 36
#: A direction is determined where its error is below this (dB of the peak) ...
ERROR_LIMIT_DB = -40.0
#: ... or no more than this many times what it is where samples lie.
AMPLIFICATION = 2.0


@dataclass(frozen=True, kw_only=True)
class Declared:
    """What the user knows of the measurement; None or 0 where it is taken from the data.

    noise_db
        Noise of one component of one sample, dB of the largest sample.
    position_m, angle
        Standard uncertainty of a sample's place in every direction (m), and of its angles (rad),
        independent from sample to sample.
    probe_db
        Expanded uncertainty (k = 2) of the taper of the probe's pattern 10 deg off its axis, dB; 0 where no probe acts, as in
        fields that were computed or corrected before; None where nothing is known of it.
    error_limit_db
        Error that a determined direction may have, dB of the peak.
    """

    noise_db: float | None = None
    probe_db: float | None = None
    position_m: float = 0.0
    angle: float = 0.0
    error_limit_db: float = ERROR_LIMIT_DB


@dataclass(frozen=True)
@holds_arrays
class ErrorDraws:
    """Draws of errors of far-field coefficients (draw, 2, n(n+2)), one set per contribution.

    noise
        Noise, and what the data leave undetermined.
    position
        Places of the samples; None if nothing is declared.
    truncation
        Rms of the field that degrees above the order may add, the same in all directions.
    """

    noise: ComplexArray
    position: ComplexArray | None
    truncation: float

    def all(self) -> ComplexArray:
        """Return draws of noise and position together."""
        if self.position is None:
            return self.noise
        count = min(len(self.noise), len(self.position))
        top = order_of_count(max(self.noise.shape[-1], self.position.shape[-1]))
        return np.asarray(resized(self.noise[:count], top) + resized(self.position[:count], top))


def displaced(
    near: ComplexArray,
    theta: FloatArray,
    phi: FloatArray,
    *,
    k: float,
    radius: FloatArray | None,
    declared: Declared,
    random: np.random.Generator,
) -> ComplexArray:
    """Return what random displacements of the samples change in their field, (2, count).

    near
        (2, n(n+2)) tangential coefficients on the measurement sphere.
    """
    across = declared.angle
    along = 0.0
    if radius is not None:
        across = float(np.hypot(across, declared.position_m / float(np.mean(radius))))
        along = declared.position_m
    step_t, step_p = random.normal(size=(2, theta.size)) * across
    sine = np.maximum(np.sin(theta), 1e-6)
    turn = step_p / sine
    steady = np.abs(turn) < 0.2  # beside a pole the vectors turn with phi; there only theta is moved
    moved = synthesis_at(near, theta=np.clip(theta + step_t, 0.0, np.pi), phi=phi + np.where(steady, turn, 0.0))
    change = moved * np.exp(-1j * k * along * random.normal(size=theta.size)) - synthesis_at(near, theta=theta, phi=phi)
    return np.asarray(change)


def spread_of(field_draws: ComplexArray) -> FloatArray:
    """Return the rms size of the error vector, draws (draw, 2, theta, phi) to (theta, phi)."""
    return np.asarray(np.sqrt(np.mean(np.sum(np.abs(field_draws) ** 2, axis=1), axis=0)))


def determined(bound: FloatArray, *, peak: float, sampled: BoolArray | None, limit_db: float) -> BoolArray:
    """Tell which directions are determined, in the worst direction and not on average.

    bound
        (theta, phi) stated error of the field vector, with its coverage factor.
    peak
        Largest field of the determined part.
    sampled
        (theta, phi) where samples lie; None for a whole-sphere grid.
    """
    limit = peak * 10.0 ** (limit_db / 20.0)
    typical = float(np.median(bound if sampled is None or not sampled.any() else bound[sampled]))
    return np.asarray(bound <= max(limit, AMPLIFICATION * typical))
