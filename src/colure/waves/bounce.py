"""A wave that runs back and forth between two antennas, told from the direct one by the distance that both run.

At the distance R + s the direct wave has the phase of k s less, the one that bounced once that of 3 k s. With the direct path
taken off, a reading is D + C exp(-2jks) (derivable): two unknowns at every frequency, as many equations as distances.
"""

from __future__ import annotations

import numpy as np

from colure.geometry.conventions import ComplexArray, FloatArray, wavenumber


def bounce_phase(frequency_hz: FloatArray, steps_m: FloatArray) -> ComplexArray:
    """Return exp(-2jks), (frequency, distance), of steps (distance,) in metres."""
    return np.asarray(np.exp(-2j * wavenumber(frequency_hz)[:, None] * steps_m))


def distance_weights(frequency_hz: FloatArray, steps_m: FloatArray) -> ComplexArray:
    """Return the least-squares weights (2, frequency, distance) of the direct wave and of the one that bounced."""
    turned = bounce_phase(frequency_hz, steps_m)
    design = np.stack([np.ones_like(turned), turned], axis=-1)
    return np.asarray(np.moveaxis(np.linalg.pinv(design), 1, 0))


def noise_over_mean(weights: ComplexArray) -> FloatArray:
    """Return (frequency,) the noise of the direct wave over that of the plain mean of all distances; 1 at best."""
    return np.asarray(np.linalg.norm(weights[0], axis=-1) * np.sqrt(weights.shape[-1]))
