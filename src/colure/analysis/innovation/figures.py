"""Figures of a fitted pattern with their intervals, from draws of what the fit may miss."""

from __future__ import annotations

import numpy as np

from colure.analysis.figures.evaluate import FigureSet
from colure.analysis.figures.response import PatternChanges, Response
from colure.analysis.uncertainty.budget import build_figure
from colure.analysis.uncertainty.combination import Contribution, joint_half_width, joint_weights
from colure.analysis.uncertainty.effects import MODULUS_DRAWS, moduli
from colure.analysis.uncertainty.lobes_apart import vanishing
from colure.geometry.conventions import ComplexArray, FloatArray
from colure.model.definitions import Definition
from colure.model.figure import Figure
from colure.waves.expansion import Expansion


def stated(what: Definition) -> bool:
    """Tell whether a figure is one that levels alone decide: phases of two runs are not compared, nulls are filled by errors."""
    return not (what.phase_centre or what.anew or what.band or what.floor)


def innovation_figures(
    figures: FigureSet, expansion: Expansion, errors: ComplexArray, frequency_hz: FloatArray, *, seed: int
) -> list[Figure]:
    """Return every figure that levels decide, with its interval.

    Parameters
    ----------
    errors
        (draw, frequency, 2, J) draws of what the waves miss.
    """
    values, near = figures.read(expansion)
    out = []
    for f, frequency in enumerate(frequency_hz):
        own = dict(zip(figures.names, values[f], strict=True))
        response = Response(figures, expansion.coefficients[f], float(expansion.k[f]), near[f], own)
        answer = response.answer(errors[:, f])
        out += _of_one(figures, own, response, answer, near[f].reasons, float(frequency), seed)
    return out


def _of_one(
    figures: FigureSet, values: dict[str, float], response: Response, answer: PatternChanges, reasons: dict[str, str],
    frequency_hz: float, seed: int,
) -> list[Figure]:  # fmt: skip
    wanted = [what for what in figures.definitions if stated(what)]
    effects = np.stack([_bounded(answer.changes.get(what.name), len(answer.fields)) for what in wanted], axis=-1)
    drawn = [Contribution(np.nan_to_num(effects, posinf=0.0), "Monte Carlo", centred=False)]
    half = np.where(np.isfinite(effects).all(axis=0), joint_half_width(drawn, seed=seed), np.inf)
    joint = np.asarray(joint_weights(drawn, MODULUS_DRAWS, seed=seed, turned=True)[0], complex)
    ends = moduli(response, answer, joint, np.zeros(len(effects)))
    gone = {**vanishing(response, answer, joint), **reasons}
    out = []
    for i, what in enumerate(wanted):
        out.append(
            build_figure(what, values[what.name], (), frequency_hz, half_width=float(half[i]), ends=ends.get(what.name),
                         dof=len(effects) - 1.0, reason=gone.get(what.name, ""))
        )  # fmt: skip
    return out


def _bounded(change: FloatArray | None, count: int) -> FloatArray:
    """Return the change of a figure (draw,); without bound where nothing says how errors move it."""
    return np.full(count, np.inf) if change is None else np.where(np.isfinite(change), change, np.inf)
