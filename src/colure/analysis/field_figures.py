"""Figures of a far field that came as a file: with intervals where the file states its errors as waves."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
from scipy.stats import t as student

from colure.analysis.figures.evaluate import FigureSet
from colure.analysis.uncertainty import build_figure
from colure.geometry.conventions import ComplexArray, FloatArray
from colure.model.evaluation import Evaluation
from colure.model.figure import BudgetRow, Figure
from colure.waves.expansion import Expansion
from colure.waves.modes import resized

#: What an interval of a file's figure does not hold: nobody declared the range that it came from.
NOT_INCLUDED = ("gain reference", "range echoes", "alignment", "receiver")
UNKNOWN = ("all: the file states no errors of its field",)


def figures_of_field(
    expansion: Expansion,
    frequency_hz: FloatArray,
    error_waves: ComplexArray | None,
    *,
    settings: Evaluation,
    slant: float,
    region: float,
    absolute: bool,
) -> list[Figure]:
    """Return every figure of a far field (frequency, 2, J).

    Parameters
    ----------
    error_waves
        (frequency, draw, 2, J') possible errors of the coefficients; None where the file states none: no intervals then.
    slant, region
        Of the co-polar vector, and up to which polar angle from +z the field is known, radians.
    absolute
        False: a relative field. Figures that move with its level are left out.
    """
    chosen = FigureSet(settings, slant, region, band=frequency_hz.size > 1)
    values = chosen.values(expansion)
    spread = None if error_waves is None else _spread(chosen, expansion, error_waves, values)
    out = []
    for f, frequency in enumerate(frequency_hz):
        for i, what in enumerate(chosen.definitions):
            if what.gain != 0.0 and not absolute:
                continue
            rows: tuple[BudgetRow, ...] = ()
            if spread is not None:
                rows = (
                    BudgetRow(
                        "field of the file",
                        float(spread[f, i]),
                        "errors stated in the file (error_waves)",
                        "measured",
                        "Monte Carlo",
                    ),
                )
            one = build_figure(what, float(values[f, i]), rows, float(frequency))
            if spread is None:
                one = replace(one, lower=float("nan"), upper=float("nan"), not_included=UNKNOWN)
            else:
                one = replace(one, not_included=NOT_INCLUDED)
            out.append(one)
    return out


def _spread(chosen: FigureSet, expansion: Expansion, error_waves: ComplexArray, values: FloatArray) -> FloatArray:
    """Return the 95 % half width (frequency, figure) over the draws, Student's factor for their number (JCGM 100:2008, G.3)."""
    near = chosen.places(expansion)
    draws = error_waves.shape[1]
    moved = []
    for d in range(draws):
        error = resized(error_waves[:, d], expansion.order)
        changed = expansion.with_coefficients(expansion.coefficients + error)
        moved.append(np.nan_to_num(chosen.values(changed, near=near) - values))
    return np.asarray(student.ppf(0.975, max(1, draws - 1)) * np.sqrt(np.mean(np.array(moved) ** 2, axis=0)))
