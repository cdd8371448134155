"""Gain of three antennas from the transmission of their three pairs: no standard is needed.

Friis: |S21|^2 = G1 G2 (lambda / 4 pi R)^2, so with the products C12, C13, C23 in dB
G1 = (C12 + C13 - C23) / 2 and so on (H. T. Friis, Proc. IRE 34:254, 1946; IEEE Std 149, from memory).
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from colure.geometry.conventions import SPEED_OF_LIGHT, ComplexArray, FloatArray, amplitude_db, power_db, wavelength
from colure.values import holds_arrays

PAIRS = ((0, 1), (0, 2), (1, 2))


@dataclass(frozen=True)
@holds_arrays
class AntennaPair:
    """One measured pair: transmission and both reflections, (frequency,), at the antennas' connectors."""

    transmission: ComplexArray
    reflection_one: ComplexArray
    reflection_two: ComplexArray


@dataclass(frozen=True)
@holds_arrays
class Gains:
    """(antenna, frequency) dBi: realized (what a matched generator gets) and without mismatch."""

    realized_dbi: FloatArray
    gain_dbi: FloatArray


def path_off_m(pair: AntennaPair, frequency_hz: FloatArray, distance_m: float) -> float:
    """Return by how much the path that the phase of S21 turns over differs from a declared distance, metres.

    Phase over frequency repeats with the speed of light over the step, so the answer is the smallest such difference; 0 where
    frequencies are fewer than three or not equidistant, or no phase was kept. It holds what both antennas delay between connector and phase centre.
    """
    step = np.diff(frequency_hz)
    if np.all(np.abs(np.angle(pair.transmission)) < 1e-6):
        return 0.0  # levels only: no phase was kept
    if frequency_hz.size < 3 or not np.allclose(step, step[0], rtol=1e-3):
        return 0.0
    turn = np.vdot(pair.transmission[:-1], pair.transmission[1:])
    repeats = SPEED_OF_LIGHT / float(step[0])
    path = -float(np.angle(turn)) / (2.0 * np.pi) * repeats
    return (path - distance_m + 0.5 * repeats) % repeats - 0.5 * repeats


def mismatch_loss_db(reflection: ComplexArray) -> FloatArray:
    """Return -10 log10(1 - |reflection|^2): what a mismatched antenna does not accept, dB."""
    return np.asarray(-power_db(1.0 - np.abs(reflection) ** 2))


def three_antenna_gains(
    pairs: tuple[AntennaPair, AntennaPair, AntennaPair],
    frequency_hz: FloatArray,
    *,
    distance_m: float,
    phase_centre_m: tuple[float, float, float] = (0.0, 0.0, 0.0),
) -> Gains:
    """Return the gains of antennas 1, 2, 3 from pairs 1-2, 1-3 and 2-3.

    Parameters
    ----------
    distance_m
        Between the antennas' reference planes.
    phase_centre_m
        How far each antenna's phase centre lies in front of its reference plane.

    Raises
    ------
    ValueError
        If shapes differ, a reflection is not below 1, or phase centres use the distance up.
    """
    if any(p.transmission.shape != frequency_hz.shape for p in pairs):
        raise ValueError(f"pairs: must hold {frequency_hz.size} values each (frequencies)")
    for pair in pairs:
        for reflection in (pair.reflection_one, pair.reflection_two):
            if np.any(np.abs(reflection) >= 1.0):
                raise ValueError(f"reflection: {np.abs(reflection).max():.3f}, must be below 1 (ratio)")
    products, losses = [], np.zeros((3, frequency_hz.size))
    for (one, two), pair in zip(PAIRS, pairs, strict=True):
        apart = distance_m - phase_centre_m[one] - phase_centre_m[two]
        if apart <= 0.0:
            raise ValueError(f"distance: {distance_m:g} m, must be more than both phase centres lie in front (m)")
        products.append(amplitude_db(np.abs(pair.transmission) * 4.0 * np.pi * apart / wavelength(frequency_hz)))
        # Every antenna is in two pairs: its own loss is the mean of both readings.
        losses[one] += 0.5 * mismatch_loss_db(pair.reflection_one)
        losses[two] += 0.5 * mismatch_loss_db(pair.reflection_two)
    c12, c13, c23 = products
    realized = 0.5 * np.stack([c12 + c13 - c23, c12 + c23 - c13, c13 + c23 - c12])
    return Gains(np.asarray(realized), np.asarray(realized + losses))
