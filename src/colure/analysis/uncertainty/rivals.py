"""What noise does to the largest of many directions that are nearly equal, as on an omnidirectional device.

The direction of the largest measured intensity is mostly one that noise raised, so that gain and directivity are read too high.
Echoes do the same where the probe swings: transform and mode filter keep most of them, and they run over the ring as noise does.
Noise that is added once more to the measured ring shows less than that: the ring is uneven by noise already. So the ring is first made as
even as it is in truth.
"""

from __future__ import annotations

from collections.abc import Callable

import numpy as np

from colure.analysis.figures.response import Response
from colure.geometry.conventions import ComplexArray, FloatArray, power_db

#: Directions within so many standard deviations of the difference to the largest may be the largest in truth.
REACH = 3.0
#: A ring is as even in truth as it can be, unless its largest is one that draws of an even one exceed less often than this.
CHANCE = 0.05
#: How even that is, to so many binary digits.
HALVINGS = 6
#: Figures that rise with the largest intensity, and with which sign.
WITH_THE_PEAK = {"gain_dbi": 1.0, "gain_accepted_dbi": 1.0, "directivity_dbi": 1.0, "eirp_dbm": 1.0, "eis_dbm": -1.0}


def raised_db(fields: ComplexArray, errors: ComplexArray, *, at_most: bool = False) -> FloatArray:
    """Return by how much draws of errors raise the largest intensity of directions, dB (draw,).

    Parameters
    ----------
    fields
        (direction, component), as measured: errors are in them already.
    errors
        (draw, direction, component)
    at_most
        True: by as much as the record does not contradict, for errors that stay in the value. False: on average, for what is
        taken off the value.

    On average the variance of the measured intensities over the directions is that of the true ones and that of noise; they are drawn
    together until only the true one is left (a random effect's best linear predictor; textbook). A ring of maxima falls to both of
    its sides without any error, so that this leaves too much of what errors did: at most, the ring is even unless its largest
    intensity itself is more than errors do to an even one.
    """
    power = np.sum(np.abs(fields) ** 2, axis=-1)
    added = np.sum(np.abs(fields + errors) ** 2, axis=-1) - power
    # What raises all directions alike does not choose among them.
    variance = np.mean((added - added.mean(axis=1, keepdims=True)) ** 2, axis=0)
    top = int(np.argmax(power))
    kept = power >= power[top] - REACH * np.sqrt(variance + variance[top])
    measured = power[kept]
    drawn = errors[:, kept]

    def peaks(share: float) -> tuple[FloatArray, float]:
        """Return the largest drawn intensities (draw,) of a ring that is as uneven as a share of the measured one, and its own."""
        true = measured.mean() + share * (measured - measured.mean())
        evened = fields[kept] * np.sqrt(true / measured)[:, None]
        return np.max(np.sum(np.abs(evened + drawn) ** 2, axis=-1), axis=1), float(true.max())

    if at_most:
        share = _least_uneven(lambda one: peaks(one)[0], float(measured.max()))
    else:
        share = max(0.0, 1.0 - float(variance[kept].mean()) / max(float(measured.var()), 1e-300))
    raised, largest = peaks(share)
    return power_db(raised / largest)


def _least_uneven(peaks: Callable[[float], FloatArray], measured: float) -> float:
    """Return the smallest share of the measured unevenness with which draws reach the measured peak often enough."""

    def reached(share: float) -> bool:
        return float(np.quantile(peaks(share), 1.0 - CHANCE)) >= measured

    low, high = 0.0, 1.0
    if reached(low):
        return low
    for _ in range(HALVINGS):
        share = 0.5 * (low + high)
        low, high = (low, share) if reached(share) else (share, high)
    return high


def corrections(
    response: Response, fields: ComplexArray, gain_db: FloatArray, *, at_most: bool
) -> dict[str, FloatArray]:
    """Return what comes on top of the changes (draw,) of figures by name; nothing for a pattern with a single beam.

    Parameters
    ----------
    fields
        (draw, place, 2) what noise adds at the response's places.
    gain_db
        (draw,) change of the gain at the peak as it was found without rivals.
    at_most
        As in `raised_db`.
    """
    where = response.places.rivals
    if len(where) < 2:
        return {}
    raised = raised_db(response.places.fields[where], fields[:, where], at_most=at_most)
    additions = {name: sign * (raised - gain_db) for name, sign in WITH_THE_PEAK.items()}
    top = response.places.beam.intensity * (10.0 ** (raised / 10.0) - 10.0 ** (gain_db / 10.0))
    for one in response.places.widths:
        # A higher peak leaves a narrower lobe at a level relative to it.
        additions[one.name] = -np.rad2deg(top * one.share * float(np.sum(1.0 / one.fall)))
    return additions
