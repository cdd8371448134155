"""What noise does to the largest of many directions that are nearly equal, as on an omnidirectional device.

The direction of the largest measured intensity is mostly one that noise raised, so that gain and directivity are read too high.
Echoes do the same where the probe swings: transform and mode filter keep most of them, and they run over the ring as noise does.
Noise that is added once more to the measured ring shows less than that: the ring is uneven by noise already. So the ring is first made as
even as it is in truth.
"""

from __future__ import annotations

import numpy as np

from colure.analysis.figures.response import Response
from colure.geometry.conventions import ComplexArray, FloatArray, power_db

#: Directions within so many standard deviations of the difference to the largest may be the largest in truth.
REACH = 3.0
#: Figures that rise with the largest intensity, and with which sign.
WITH_THE_PEAK = {"gain_dbi": 1.0, "gain_accepted_dbi": 1.0, "directivity_dbi": 1.0, "eirp_dbm": 1.0, "eis_dbm": -1.0}


def raised_db(fields: ComplexArray, errors: ComplexArray) -> FloatArray:
    """Return by how much draws of noise raise the largest intensity of directions, dB (draw,).

    Parameters
    ----------
    fields
        (direction, component), as measured: noise is in them already.
    errors
        (draw, direction, component)

    The variance of the measured intensities over the directions is that of the true ones and that of noise; they are drawn
    together until only the true one is left (a random effect's best linear predictor; textbook).
    """
    power = np.sum(np.abs(fields) ** 2, axis=-1)
    added = np.sum(np.abs(fields + errors) ** 2, axis=-1) - power
    # What raises all directions alike does not choose among them.
    variance = np.mean((added - added.mean(axis=1, keepdims=True)) ** 2, axis=0)
    top = int(np.argmax(power))
    kept = power >= power[top] - REACH * np.sqrt(variance + variance[top])
    measured = power[kept]
    share = max(0.0, 1.0 - float(variance[kept].mean()) / max(float(measured.var()), 1e-300))
    true = measured.mean() + share * (measured - measured.mean())
    evened = fields[kept] * np.sqrt(true / measured)[:, None]
    peaks = np.max(np.sum(np.abs(evened + errors[:, kept]) ** 2, axis=-1), axis=1)
    return power_db(peaks / true.max())


def corrections(response: Response, fields: ComplexArray, gain_db: FloatArray) -> dict[str, FloatArray]:
    """Return what comes on top of the changes (draw,) of figures by name; nothing for a pattern with a single beam.

    Parameters
    ----------
    fields
        (draw, place, 2) what noise adds at the response's places.
    gain_db
        (draw,) change of the gain at the peak as it was found without rivals.
    """
    where = response.places.rivals
    if len(where) < 2:
        return {}
    raised = raised_db(response.places.fields[where], fields[:, where])
    additions = {name: sign * (raised - gain_db) for name, sign in WITH_THE_PEAK.items()}
    top = response.places.beam.intensity * (10.0 ** (raised / 10.0) - 10.0 ** (gain_db / 10.0))
    for one in response.places.widths:
        # A higher peak leaves a narrower lobe at a level relative to it.
        additions[one.name] = -np.rad2deg(top * one.share * float(np.sum(1.0 / one.fall)))
    return additions
