"""Where on a whole sphere samples do not fit waves from a device: noise is on every ring, a mistake shows on some.

Near a pole all columns see nearly one vector, from other sides. A component or a column at another level and a row whose theta is
another one contradict that there, by far more than they change the misfit of the whole sphere.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np

from colure.analysis.fields.expand import FLOOR_DEGREES, signal_order, whole_sphere
from colure.geometry.conventions import FloatArray, power_db
from colure.model.fields import recognize_grid
from colure.waves.modes import resized
from colure.waves.transform import analysis, synthesis

if TYPE_CHECKING:
    from colure.model.fields import FieldSamples

#: Waves take so much of the degrees that a grid carries, or as many as stand out of its noise: the rest shows what is no wave.
TAKEN = 0.75
#: Fewer degrees leave too few over.
LEAST_ORDER = 8
#: What a ring leaves is told beyond this, dB of the peak, if it stands so far above the median ring. Right spheres leave -42 dB at most
#: where they do (192 of 8 devices, echoes of -40 dB and weaker, counted); e_phi 1 dB low leaves -27, half of the columns 1 dB low -31.
RING_DB, ABOVE_DB = -36.0, 7.0
#: Rings within so much of the strongest, and no nearer to a pole than the second, show what goes with the field: places, drift.
STRONG, POLAR = 0.1, 2
#: A mistake is the same at all frequencies: so many of them are looked at.
FREQUENCIES = 3


@dataclass(frozen=True, kw_only=True)
class WorstRing:
    """The ring whose samples fit least, theta in degrees: what is left there and what the others let expect, dB of the peak."""

    frequency_hz: float
    theta_deg: float
    left_db: float
    expected_db: float
    at_pole: bool

    @property
    def told(self) -> bool:
        """Tell whether the ring stands out as no noise does."""
        return self.left_db > max(RING_DB, self.expected_db + ABOVE_DB)


def worst_ring(samples: FieldSamples) -> WorstRing | None:
    """Return the ring that fits least; None where the samples are no whole sphere, or carry too few degrees to tell."""
    grid = recognize_grid(samples)
    whole = None if grid is None or not np.isfinite(grid.field).all() else whole_sphere(grid)
    if whole is None or whole.highest_order < LEAST_ORDER:
        return None
    top, (rings, columns) = whole.highest_order, whole.field.shape[-2:]
    waves = analysis(whole.field, top, layout=whole.layout, phi_start=whole.phi_start)
    own, least = signal_order(waves), int(TAKEN * top)
    taken = own if least < own <= top - FLOOR_DEGREES else least
    fitted = synthesis(resized(waves, taken), whole.theta, columns, phi_start=whole.phi_start)
    peak = float(np.max(np.sum(np.abs(whole.field) ** 2, axis=0)))
    if peak <= 0.0:
        return None
    power = np.mean(np.sum(np.abs(whole.field) ** 2, axis=0), axis=-1) / peak
    left = np.mean(np.sum(np.abs(whole.field - fitted) ** 2, axis=0), axis=-1) / peak
    expected = _noise(left, power)
    worst = int(np.argmax(np.where(left > 10.0 ** (ABOVE_DB / 10.0) * expected, left, 0.0)))
    return WorstRing(
        frequency_hz=samples.frequency_hz,
        theta_deg=float(np.rad2deg(whole.theta[worst])),
        left_db=float(power_db(left[worst], least=1e-40)),
        expected_db=float(power_db(expected[worst], least=1e-40)),
        at_pole=worst in (0, 1, rings - 2, rings - 1),
    )


def _noise(left: FloatArray, power: FloatArray) -> FloatArray:
    """Return what each ring should leave (ring,): as much as the median one, or as goes with its power on strong rings."""
    inner = slice(POLAR, power.size - POLAR)
    strong = power[inner] > STRONG * float(power[inner].max())
    return np.asarray(np.maximum(np.median(left), power * np.median(left[inner][strong] / power[inner][strong])))


def ring_words(sets: list[FieldSamples], noise_db: float | None = None) -> str:
    """Say which ring of samples stands out of all others, and which mistakes look so; empty where none does.

    noise_db
        What the user states of the noise of one sample, dB of the largest.
    """
    chosen = np.unique(np.linspace(0, len(sets) - 1, FREQUENCIES).round().astype(int))
    rings = [one for one in (worst_ring(sets[n]) for n in chosen) if one is not None and one.told]
    worst = max(rings, key=lambda one: one.left_db, default=None)
    if worst is None or (noise_db is not None and worst.left_db < noise_db + ABOVE_DB):
        return ""
    cause = (
        "Near a pole all columns see nearly one vector: e_theta and e_phi have different levels or phases, columns of phi_deg another level "
        "than others, or rows another theta_deg than stated"
        if worst.at_pole
        else "Rows or sweeps there have another level, phase or place than others"
    )
    return (
        f"at theta {worst.theta_deg:.4g} deg {worst.left_db:.1f} dB of the peak, rms over phi, do not fit waves from a device at "
        f"{worst.frequency_hz / 1e9:.6g} GHz, where the others let expect {worst.expected_db:.1f} dB. {cause}; or the step is too coarse, or echoes are "
        "strong. No stated error holds that. Look at the samples"
    )
