"""What every cause does to a pattern as a field: its size over all directions, and its value in one of them."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from colure.analysis.uncertainty.causes import causes
from colure.analysis.uncertainty.combination import DIVISORS, DRAWN
from colure.analysis.uncertainty.inputs import Inputs
from colure.analysis.uncertainty.trial import Trial
from colure.geometry.conventions import ComplexArray, FloatArray
from colure.values import holds_arrays


@dataclass(frozen=True)
@holds_arrays
class PatternError:
    """What one cause adds to a far field, in the field's own units.

    rms (frequency,)
        Standard uncertainty, rms over all directions.
    towards (change, frequency)
        Changes of one component in one direction, whose squares add up to a variance.
    """

    rms: FloatArray
    towards: ComplexArray


def pattern_errors(inputs: Inputs, component: ComplexArray) -> dict[str, PatternError]:
    """Return the error of a far field by cause: by Parseval over all directions, and of one component of it.

    component (2, J)
        What multiplies the waves to give the component in its direction.
    """
    nominal = inputs.step.expansion(inputs.sphere.field)
    trial = Trial(inputs, nominal, *inputs.figures.read(nominal))
    out = {}
    for one in causes(trial):
        # Draws are averaged, directions in which an error may point are added.
        drawn = one.cause.distribution in DRAWN
        scale = 1.0 / np.sqrt(len(one.changes)) if drawn else 1.0 / DIVISORS[one.cause.distribution]
        changes = scale * one.changes
        power = np.sum(np.abs(changes) ** 2, axis=(0, -2, -1))
        towards = np.tensordot(changes, component, axes=2)
        out[one.cause.row] = PatternError(np.sqrt(power / (4.0 * np.pi)), towards)
    return out
