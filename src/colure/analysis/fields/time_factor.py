"""Whether near fields are conjugate: with the time factor exp(-jwt) phases rise with distance, and the waves fit as well as before.

A conjugate near field is no mirror of the right one: the transform takes the distance out the wrong way round.
"""

from __future__ import annotations

from itertools import pairwise
from typing import TYPE_CHECKING

import numpy as np

from colure.analysis.fields.expand import expand, whole_sphere
from colure.geometry.conventions import SPEED_OF_LIGHT, power_db, wavenumber
from colure.model.fields import FieldSamples, recognize_grid
from colure.waves.expansion import Expansion

if TYPE_CHECKING:
    from colure.geometry.conventions import FloatArray

#: Two frequencies tell a delay where it is below this share of a turn of their difference.
UNAMBIGUOUS = 0.25
#: A delay counts as that of the radius if it is as near to it, as a share of it. Devices add 2 % and take 8 % off (five, 120 mm off the
#: origin among them); a phase that was referred to a direction has none, cables left in the traces any.
NEAR = 0.25
#: Fields of two frequencies are compared if they are as alike (common practice, no source).
ALIKE = 0.9
#: A conjugate field that changes the directivity by less is not worth a number, dB.
LEAST_DB = 0.05


def delay_s(sets: list[FieldSamples]) -> float | None:
    """Return the delay that phases show between the two closest frequencies of near fields; None where they cannot.

    Negative where the phase rises with frequency, as of a conjugate field.
    """
    pairs = [
        (two.frequency_hz - one.frequency_hz, one, two)
        for one, two in pairwise(sets)
        if two.frequency_hz > one.frequency_hz and _same_places(one, two)
    ]
    if not pairs:
        return None
    apart, one, two = min(pairs, key=lambda pair: pair[0])
    known = np.isfinite(one.field).all(axis=0) & np.isfinite(two.field).all(axis=0)
    product = np.vdot(one.field[:, known], two.field[:, known])
    size = float(np.linalg.norm(one.field[:, known]) * np.linalg.norm(two.field[:, known]))
    if size <= 0.0 or abs(product) < ALIKE * size or apart * _path_s(one) > UNAMBIGUOUS:
        return None
    return float(-np.angle(product) / (2.0 * np.pi * apart))


def _same_places(one: FieldSamples, two: FieldSamples) -> bool:
    places = [(s.theta, s.phi, s.radius_m) for s in (one, two)]
    return one.field.shape == two.field.shape and all(
        a is not None and b is not None and np.allclose(a, b, atol=1e-9) for a, b in zip(*places, strict=True)
    )


def _path_s(samples: FieldSamples) -> float:
    radius: FloatArray = np.asarray(samples.radius_m)
    return float(np.mean(radius)) / SPEED_OF_LIGHT


def conjugate_words(sets: list[FieldSamples], *, behind_probe: bool = False) -> tuple[str, str]:
    """Return (a caution that near fields are conjugate, what was taken where nothing tells); each empty where it does not apply."""
    if any(one.radius_m is None for one in sets):
        return "", ""
    delay, path = delay_s(sets), _path_s(sets[0])
    if delay is not None and abs(delay - path) < NEAR * path:
        return "", ""
    if delay is not None and abs(delay + path) < NEAR * path:
        return (
            f"phases rise with frequency by {-1e9 * delay:.3g} ns, the path of the radius ({1e9 * path:.3g} ns): the field looks conjugate "
            "(time factor exp(-jwt), or the sign of the imaginary parts). Far field, hands and phase centre are wrong then: change the sign of "
            "every imaginary part"
        ), ""
    why = (
        "one frequency, or frequencies too far apart, cannot tell"
        if delay is None
        else f"the phases' delay of {1e9 * delay:.3g} ns is not that of the radius ({1e9 * path:.3g} ns)"
    )
    return "", (
        f"taken for fields with the time factor exp(+jwt), whose phase falls with distance: {why}"
        + _changed(sets[len(sets) // 2], behind_probe=behind_probe)
    )


def _changed(samples: FieldSamples, *, behind_probe: bool) -> str:
    """Say what the directivity would be if a whole sphere's field were conjugate; empty where that is not known or nothing."""
    grid = None if behind_probe else recognize_grid(samples)
    if grid is None or not np.isfinite(grid.field).all() or whole_sphere(grid) is None:
        return ""
    other = FieldSamples(
        samples.frequency_hz, samples.theta, samples.phi, samples.field.conj(), samples.radius_m, samples.weight
    )
    read, conjugate = (_directivity_dbi(one) for one in (samples, other))
    if abs(conjugate - read) < LEAST_DB:
        return "; hands and phase centre hang on it"
    return f"; of a conjugate file the directivity would be {conjugate:.2f} dBi instead of {read:.2f}, with hands and phase centre"


def _directivity_dbi(samples: FieldSamples) -> float:
    coefficients = expand(samples).coefficients
    own = Expansion(coefficients, np.array(float(wavenumber(samples.frequency_hz))))
    field = own.far_field(np.linspace(0.0, np.pi, 181), 360)
    peak = float(np.max(np.sum(np.abs(field) ** 2, axis=0)))
    return float(power_db(4.0 * np.pi * peak / float(np.sum(np.abs(coefficients) ** 2))))
