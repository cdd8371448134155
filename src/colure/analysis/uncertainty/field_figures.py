"""Figures and cuts of a far field that came as a file: with intervals where the file states its errors as waves."""

from __future__ import annotations

from dataclasses import replace

import numpy as np

from colure.analysis.figures.cuts import FarField, find_beam, ludwig_3
from colure.analysis.figures.evaluate import FigureSet
from colure.analysis.steps.repetition import students_factor
from colure.analysis.uncertainty.budget import build_figure
from colure.analysis.uncertainty.level_cuts import LevelCut, cut_directions
from colure.geometry.conventions import ComplexArray, FloatArray
from colure.model.evaluation import Evaluation
from colure.model.figure import BudgetRow, Figure
from colure.waves.expansion import Expansion
from colure.waves.modes import resized

#: What an interval of a file's figure does not hold: nobody declared the range that it came from.
NOT_INCLUDED = ("gain reference", "range echoes", "alignment", "receiver")
COMPONENTS = ("co", "cross", "total")
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
    return np.asarray(students_factor(max(1, draws - 1)) * np.sqrt(np.mean(np.array(moved) ** 2, axis=0)))


def cuts_of_field(
    expansion: Expansion,
    frequency_hz: FloatArray,
    error_waves: ComplexArray | None,
    planes_deg: tuple[float, ...],
    *,
    slant: float,
    region: float,
    step_deg: float = 1.0,
) -> dict[float, list[LevelCut]]:
    """Return cuts through the peak of a far field (frequency, 2, J) by frequency, in planes in degrees from E towards H.

    Amplitudes are nan beyond `region`, radians from +z. Expanded uncertainties are infinite where `error_waves` is None:
    nothing is known of them. Other arguments as in `figures_of_field`.
    """
    angle = np.linspace(-180.0, 180.0, 2 * round(180.0 / step_deg) + 1)
    out: dict[float, list[LevelCut]] = {}
    for f, frequency in enumerate(frequency_hz):
        beam = find_beam(expansion.coefficients[f], slant=slant, region=region)
        d = cut_directions(beam, planes_deg, angle)
        level = _amplitudes(expansion.coefficients[f], d, slant)
        expanded = np.full(level.shape, np.inf)
        if error_waves is not None:
            moved = [
                _amplitudes(expansion.coefficients[f] + resized(one, expansion.order), d, slant) - level
                for one in error_waves[f]
            ]
            expanded = students_factor(max(1, len(moved) - 1)) * np.sqrt(np.mean(np.array(moved) ** 2, axis=0))
        level = np.where(np.arccos(np.clip(d[:, 2], -1.0, 1.0)) <= region + 1e-9, level, np.nan)
        shape = (3, len(planes_deg), angle.size)
        a, u = level.reshape(shape), np.asarray(expanded).reshape(shape)
        out[float(frequency)] = [
            LevelCut(
                plane, float(frequency), angle, dict(zip(COMPONENTS, a[:, i], strict=True)),
                dict(zip(COMPONENTS, u[:, i], strict=True)), 0.0,
            )
            for i, plane in enumerate(planes_deg)
        ]  # fmt: skip
    return out


def _amplitudes(coefficients: ComplexArray, directions: FloatArray, slant: float) -> FloatArray:
    """Return (component, direction): co-polar, cross-polar (Ludwig 3) and total."""
    field = FarField(coefficients).at(directions)
    co, cross = ludwig_3(field, directions, slant)
    return np.stack([np.abs(co), np.abs(cross), np.sqrt(np.sum(np.abs(field) ** 2, axis=-1))])
