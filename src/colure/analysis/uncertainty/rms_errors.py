"""How large the error of a whole pattern is, cause by cause: where the field counts, not one figure."""

from __future__ import annotations

import numpy as np

from colure.analysis.uncertainty.causes import causes
from colure.analysis.uncertainty.combination import DIVISORS, DRAWN
from colure.analysis.uncertainty.inputs import Inputs
from colure.analysis.uncertainty.trial import Trial
from colure.geometry.conventions import FloatArray


def rms_errors(inputs: Inputs) -> dict[str, FloatArray]:
    """Return by cause the error of the far field (frequency,), rms over all directions, in the pattern's own units.

    Standard uncertainties, by Parseval from what each cause adds to the waves.
    """
    nominal = inputs.step.expansion(inputs.sphere.field)
    trial = Trial(inputs, nominal, *inputs.figures.read(nominal))
    out = {}
    for one in causes(trial):
        power = np.sum(np.abs(one.changes) ** 2, axis=(-2, -1))
        drawn = one.cause.distribution in DRAWN
        square = power.mean(axis=0) if drawn else power.sum(axis=0) / DIVISORS[one.cause.distribution] ** 2
        out[one.cause.row] = np.sqrt(square / (4.0 * np.pi))
    return out
