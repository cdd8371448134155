"""What the pattern of a probe does to near fields that were taken for an elementary dipole's.

A first-order probe only multiplies every degree (`waves.probe`). So what it would have changed follows from the waves that
were found, without a new fit: its response over that of the dipole, less what changes the level of all waves alike.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from colure.analysis.fields.errors import Declared
from colure.analysis.fields.result import ratio_db
from colure.geometry.conventions import BoolArray, ComplexArray, FloatArray, order_of_count
from colure.model.fields import FieldSamples
from colure.values import holds_arrays
from colure.waves.expansion import Expansion
from colure.waves.modes import resized
from colure.waves.probe import apply_response, first_order_response, ideal_response, remove_response
from colure.waves.probe_models import conical_horn, open_waveguide, tapered_source

#: Sides of an open guide and radius and slant length of a conical horn of 15 dBi that stand for usual probes, wavelengths.
GUIDE, HORN = (0.7, 0.35), (1.0, 4.0)
GUIDE_WORDS = f"an open guide of {GUIDE[0]:g} x {GUIDE[1]:g} wavelengths"
HORN_WORDS = "a horn of 15 dBi"
#: Where the uncertainty of the probe's pattern is declared, radians off its axis.
DECLARED_AT = float(np.deg2rad(10.0))
#: Power of the device's highest degrees that no probe needs to answer for, relative.
TAIL = 1e-12


@dataclass(frozen=True)
@holds_arrays
class ProbeErrors:
    """Draws of what the probe's pattern may change, (draw, 2, n(n+2)), and which uncertainty was declared (dB)."""

    waves: ComplexArray
    declared_db: float


def probe_errors(
    coefficients: ComplexArray, k: float, samples: FieldSamples, declared: Declared, draws: int
) -> ProbeErrors | None:
    """Return what the declared uncertainty of the probe's pattern does to waves; None where none is declared or no probe acts.

    Parameters
    ----------
    coefficients
        (2, n(n+2)) far-field waves about the coordinate origin.

    The taper may be off by the declared size in both planes alike, and by as much in one against the other.

    Raises
    ------
    ValueError
        If the probe stands too near for waves of that order.
    """
    if declared.probe_db is None or samples.radius_m is None:
        return None
    if declared.probe_db == 0.0:
        return ProbeErrors(np.zeros((draws, *coefficients.shape), complex), 0.0)
    bend = declared.probe_db * np.log(10.0) / 20.0 / DECLARED_AT**2
    distance = float(np.min(samples.radius_m))
    plain, along_e, along_h = (
        tapered_source(np.array([k]), bends=one) for one in ((0.0, 0.0), (bend, 0.0), (0.0, bend))
    )
    e, h = (_changed(coefficients, k, distance, one, of=plain) for one in (along_e, along_h))
    # Draws of exact size, whatever their number: the declared size is k = 2.
    raw = np.random.default_rng(11).normal(size=(max(draws, 2), 2))
    sizes = 0.5 * np.sqrt(len(raw)) * np.linalg.qr(raw)[0][:draws]
    both = sizes[:, :1, None] * (e + h) + sizes[:, 1:, None] * (e - h)
    return ProbeErrors(both, declared.probe_db)


def usual_probes(coefficients: ComplexArray, k: float, samples: FieldSamples, inside: BoolArray) -> str:
    """Say by how much usual probes would change a field at worst where it is determined, dB of its peak.

    Parameters
    ----------
    coefficients
        (2, n(n+2)) far-field waves about the coordinate origin, as an elementary dipole would have seen them.
    inside
        (theta, phi) where the field is determined, from pole to pole.
    """
    assert samples.radius_m is not None  # a near field
    distance, one = float(np.min(samples.radius_m)), np.array([k])
    length = 2.0 * np.pi / k
    at = f"at {samples.frequency_hz / 1e9:.6g} GHz and {distance:.4g} m"
    try:
        probes = (
            (GUIDE_WORDS, open_waveguide(one, a=GUIDE[0] * length, b=GUIDE[1] * length)),
            (HORN_WORDS, conical_horn(one, radius=HORN[0] * length, slant=HORN[1] * length)),
        )
        levels = [(name, _worst(coefficients, k, distance, probe, inside)) for name, probe in probes]
    except ValueError:
        return f"How much that is cannot be told: {at} the device's waves reach too near to the probe."
    told = ", ".join(f"{name} {ratio_db(level):.0f} dB" for name, level in levels)
    return f"What usual probes would change {at}, at worst, of the peak: {told}."


def _worst(coefficients: ComplexArray, k: float, distance: float, probe: Expansion, inside: BoolArray) -> float:
    rings, columns = inside.shape
    theta = np.linspace(0.0, np.pi, rings)
    kept = _signal(coefficients)
    changed = _changed(kept, k, distance, probe)
    error, field = (
        np.sqrt(np.sum(np.abs(Expansion(one, np.array(k)).far_field(theta, columns)) ** 2, axis=0))
        for one in (changed, kept)
    )
    return float(np.max(error[inside]) / np.max(field[inside])) if inside.any() else float("nan")


def _signal(coefficients: ComplexArray) -> ComplexArray:
    """Return waves without the highest degrees, which hold nothing that counts."""
    power: FloatArray = np.sum(np.abs(coefficients) ** 2, axis=0)
    order = order_of_count(power.size)
    rest = np.cumsum(np.add.reduceat(power, np.arange(1, order + 1) ** 2 - 1)[::-1])[::-1]
    return resized(coefficients, max(1, int(np.count_nonzero(rest > TAIL * rest[0]))))


def _changed(
    coefficients: ComplexArray, k: float, distance: float, probe: Expansion, *, of: Expansion | None = None
) -> ComplexArray:
    """Return what waves (2, n(n+2)) hold too much if a probe received them that was taken for another one (a dipole if None).

    Less what it changes of the level of all waves alike.
    """
    kept = _signal(coefficients)
    order = order_of_count(kept.shape[-1])
    taken = ideal_response(order, np.array([k]), distance) if of is None else first_order_response(of, order, distance)
    true = remove_response(apply_response(kept, taken.at(0)), first_order_response(probe, order, distance).at(0))
    level = np.vdot(true, kept) / np.vdot(true, true)
    return resized(kept - level * true, order_of_count(coefficients.shape[-1]))
