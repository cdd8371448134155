"""From readings of a few slices to the device's pattern, what is new in it, and whether the model may be believed."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from colure.analysis.innovation.causes import Causes
from colure.analysis.innovation.fit import Faulty
from colure.analysis.innovation.linear import FitBasis, LinearFit
from colure.geometry.conventions import ComplexArray, FloatArray
from colure.values import holds_arrays

#: Elements are chosen by the same readings that they are fitted to, and draws are solved with that choice: what the choice may miss
#: makes errors of the waves this many times as large (set so that intervals hold, 22 campaigns of `benchmarks/verify.py`; decision 0030).
CHOSEN = 1.5
#: The misfit that is a unit's own: it differs as a whole by more than good ones do.
OF_ELEMENTS = "elements that count as good differ from the reference"
#: What a fit is held against, each by draws: all readings; their mean over the band; what is new in elements that are named good;
#: each slice predicted by the others, all readings and their mean over the band (the worst slice).
MISFITS = (
    "readings differ from the fit",
    "readings averaged over the band differ from the fit",
    OF_ELEMENTS,
    "a slice differs from what the others predict",
    "a slice averaged over the band differs from what the others predict",
)


@dataclass(frozen=True)
@holds_arrays
class Found:
    """What a set of slices tells.

    factor
        (frequency,) complex factor between the reference's level and the readings.
    deviation
        (element,) complex relative deviation from the reference.
    sigma
        (element,) standard deviation (complex modulus) of that; a fault is known no better than the share of the reference
        that it changes.
    faulty
        Elements that are no good ones, and how sure that is.
    coefficients
        (frequency, 2, J) the device's waves.
    errors
        (draw, frequency, 2, J) what such waves miss, as drawn.
    misfit, usual
        Misfits of the readings (kind,), and (draw, kind) of readings that the model explains, in the order of `MISFITS`.
    """

    factor: ComplexArray
    deviation: ComplexArray
    sigma: FloatArray
    faulty: Faulty
    coefficients: ComplexArray
    errors: ComplexArray
    misfit: FloatArray
    usual: FloatArray


class Estimator:
    """Everything that does not depend on what was read: made once for a set of points."""

    def __init__(self, causes: Causes, noise: FloatArray, *, seed: int) -> None:
        self._causes = causes
        tolerances = causes.tolerances(causes.known.expansion.coefficients)
        self._basis = FitBasis(causes, noise, len(tolerances), seed=seed)
        self._about_reference = LinearFit(self._basis, tolerances)
        self._random = np.random.default_rng((seed, 3))

    def of(self, value: ComplexArray) -> Found:
        """Return what readings (frequency, point) tell."""
        nominal, known = self._causes.nominal, self._causes.known
        factor = np.sum(nominal.conj() * value, axis=1) / np.sum(np.abs(nominal) ** 2, axis=1)
        first = self._about_reference.solved(value, factor)
        device = self._about_reference.waves(first)
        fit = LinearFit(self._basis, self._causes.tolerances(device))
        solution = fit.solved(value, first.factor)
        factor, deviation = solution.factor, solution.deviation
        coefficients = factor[:, None, None] * fit.waves(solution)
        many, wrong, level = fit.drawn_errors(solution, self._random)
        misfits = fit.misfits(solution, many)
        size = CHOSEN * wider(misfits[0], misfits[1:]) * factor
        errors = size[:, None, None] * wrong + level[..., None, None] * coefficients
        count = len(known.elements)
        spread = np.sqrt(np.sum(np.diag(solution.solver).reshape(-1, 2), axis=1))[fit.normal.free :]
        return Found(
            factor,
            known.by_element(deviation),
            np.hypot(spread[:count], known.share_error[:count] * np.abs(deviation[:count])),
            solution.faulty,
            coefficients,
            errors,
            misfits[0],
            misfits[1:],
        )


def wider(misfit: FloatArray, usual: FloatArray) -> float:
    """Return how many times as large as drawn errors are to count: readings (kind,) that differ more than usual ones (draw, kind)
    were made by larger causes than the draws (R. T. Birge, Phys. Rev. 40 (1932) 207, the ratio of external to internal errors;
    from memory). Never fewer times than once.
    """
    return float(np.sqrt(max(1.0, *(misfit / np.median(usual, axis=0)))))
