"""The probe's main lobe as one number, and how much less of a near horn's rim a probe with such a lobe hears."""

from __future__ import annotations

import numpy as np

from colure.geometry.conventions import FloatArray
from colure.model.chamber import Chamber
from colure.waves.expansion import Expansion
from colure.waves.horn import near_loss_db
from colure.waves.scattered import synthesis_at

#: Where the uncertainty of the probe's pattern is declared, radians off its axis.
DECLARED_AT = float(np.deg2rad(10.0))


def beam_of(probe: Expansion | None, gain_dbi: float) -> float:
    """Return c of the probe's beam exp(-c a^2): from its pattern 10 deg off the axis, or of a beam of its gain, 8 c."""
    if probe is None:
        return float(10.0 ** (gain_dbi / 10.0) / 8.0)
    angles = np.array([0.0, *(DECLARED_AT,) * 4])
    turns = np.array([0.0, *(np.arange(4) * np.pi / 2.0)])
    middle = probe.coefficients[len(probe.coefficients) // 2 :][:1]
    seen = np.linalg.norm(synthesis_at(middle, theta=angles, phi=turns)[0], axis=0)
    return float(-np.log(np.mean(seen[1:]) / seen[0]) / DECLARED_AT**2)


def rim_unheard_db(chamber: Chamber, frequency_hz: FloatArray, probe: Expansion | None = None) -> float:
    """Return by how many dB too low the horn is heard at most over the band, because the probe looks past its rim.

    The gain of a near horn is what it lays on its axis; a probe hears the whole mouth, each part under its own angle. Not corrected:
    every level of the device is too high by as much.
    """
    a, b, slant_e, slant_h = chamber.reference.sides_m
    beam = beam_of(probe, chamber.probe.gain_dbi)

    mouth = {"a": a, "b": b, "slant_e": slant_e, "slant_h": slant_h, "distance": chamber.range_length_m}
    heard, laid = near_loss_db(frequency_hz, **mouth, beam=beam), near_loss_db(frequency_hz, **mouth)
    return float(np.max(np.abs(heard - laid)))
