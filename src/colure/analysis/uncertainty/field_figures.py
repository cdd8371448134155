"""Figures and cuts of a far field that came as a file: with intervals where the file states its errors as waves."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Literal

import numpy as np

from colure.analysis.figures.beams import Near
from colure.analysis.figures.cuts import FarField, components, find_beam
from colure.analysis.figures.evaluate import FigureSet
from colure.analysis.steps.repetition import students_factor
from colure.analysis.uncertainty.budget import build_figure
from colure.analysis.uncertainty.combination import effective_dof
from colure.analysis.uncertainty.level_cuts import LevelCut, cut_directions
from colure.geometry.conventions import ComplexArray, FloatArray, Handedness, order_of_count
from colure.model.evaluation import Evaluation
from colure.model.figure import LOOK, BudgetRow, Figure
from colure.values import holds_arrays
from colure.waves.expansion import Expansion
from colure.waves.modes import resized

#: What an interval of a file's figure does not hold: nobody declared the range that it came from.
NOT_INCLUDED = ("gain reference", "range echoes", "alignment", "receiver")
#: Nor this, where no pattern of the probe was given, and where nobody said how well it is known.
PROBE_PATTERN = "probe pattern"
#: What every figure says where nothing is known of the probe.
UNKNOWN_PROBE = (
    "look: the interval does not hold the probe's pattern: none was given, an elementary dipole was taken for it"
)
#: Waves of higher degree than the field's own.
TRUNCATION = "truncation"
COMPONENTS = ("co", "cross", "total")
UNKNOWN = ("all: the file states no errors of its field",)


#: What the stated errors of a field hold of the probe that received it.
ProbeKnowledge = Literal["known", "corrected", "unknown"]


@dataclass(frozen=True)
@holds_arrays
class FieldCause:
    """One cause of a far field's errors.

    waves
        (frequency, draw, 2, J) possible errors of the coefficients, on the scale of the field.
    basis, kind
        What it is known from in words, and `measured` or `declared`.
    size, unit
        What was declared, or the level that the data gave; None where it is not one number.
    """

    term: str
    waves: ComplexArray
    basis: str
    kind: str = "measured"
    size: float | None = None
    unit: str = ""

    @property
    def dof(self) -> int:
        """Degrees of freedom of a standard uncertainty from these draws."""
        return max(1, int(self.waves.shape[1]) - 1)


def _common_order(expansion: Expansion, causes: tuple[FieldCause, ...]) -> int:
    """Return the order at which field and errors are evaluated: errors beyond the field's waves count where they are truncation."""
    beyond = [order_of_count(one.waves.shape[-1]) for one in causes if one.term == TRUNCATION]
    return max([expansion.order, *beyond])


def figures_of_field(
    expansion: Expansion,
    frequency_hz: FloatArray,
    causes: tuple[FieldCause, ...] | None,
    *,
    settings: Evaluation,
    slant: float,
    region: float,
    absolute: bool,
    chosen: FigureSet | None = None,
    probe: ProbeKnowledge = "known",
) -> list[Figure]:
    """Return every figure of a far field (frequency, 2, J), with a budget row for every cause.

    Parameters
    ----------
    causes
        What the field may be wrong by; None where nobody states it: no intervals then.
    slant, region
        Of the co-polar vector, and up to which polar angle from +z the field is known, radians.
    absolute
        False: a relative field. Figures that move with its level are left out.
    chosen
        Which figures, read how: those of another pattern that this one is held against. `settings`, `slant` and `region` then say nothing.
    probe
        What the causes hold of the probe of a transformed near field: its pattern's uncertainty ("known"), nothing although its pattern was
        corrected ("corrected"), or nothing at all ("unknown"): then every figure says so.
    """
    if chosen is None:
        chosen = FigureSet(settings, slant, region, band=frequency_hz.size > 1)
    values, near = chosen.read(expansion)
    known = causes or ()
    standard = _standards(chosen, expansion, known, values, near)
    dof = np.array([float(one.dof) for one in known])
    together = (
        effective_dof(np.where(np.isfinite(standard), standard, 0.0), dof) if known else np.full(values.shape, np.inf)
    )
    out = []
    for f, frequency in enumerate(frequency_hz):
        for i, what in enumerate(chosen.definitions):
            if what.gain != 0.0 and not absolute:
                continue
            factor = students_factor(float(together[f, i]))
            rows = tuple(_row(one, float(standard[c, f, i]), factor) for c, one in enumerate(known))
            why = near[f].reasons.get(what.name, "")
            one = build_figure(what, float(values[f, i]), rows, float(frequency), dof=float(together[f, i]), reason=why)
            if causes is None and not why:
                one = replace(one, lower=float("nan"), upper=float("nan"))
            out.append(_told(one, causes is not None, probe))
    return out


def _told(figure: Figure, stated: bool, probe: ProbeKnowledge) -> Figure:
    """Say beside a figure what its interval does not hold."""
    left = UNKNOWN if not stated else NOT_INCLUDED if probe == "known" else (*NOT_INCLUDED, PROBE_PATTERN)
    figure = replace(figure, not_included=left)
    return figure if probe != "unknown" else replace(figure, use=LOOK, cautions=(*figure.cautions, UNKNOWN_PROBE))


def _row(cause: FieldCause, standard: float, factor: float) -> BudgetRow:
    return BudgetRow(
        term=cause.term, expanded=factor * standard, basis=cause.basis, kind=cause.kind,
        distribution="draws of the field", size=cause.size, unit=cause.unit,
        evaluation="A" if cause.kind == "measured" else "B", divisor=1.0, dof=float(cause.dof), coverage_factor=factor,
    )  # fmt: skip


def _standards(
    chosen: FigureSet, expansion: Expansion, causes: tuple[FieldCause, ...], values: FloatArray, near: Sequence[Near]
) -> FloatArray:
    """Return the standard uncertainty (cause, frequency, figure): rms change over the draws (JCGM 101:2008, 7.6).

    Infinite where a possible error leaves no such figure.
    """
    if not causes:
        return np.zeros((0, *values.shape))
    order = _common_order(expansion, causes)
    nominal = resized(expansion.coefficients, order)
    out = []
    for cause in causes:
        moved = [
            chosen.values(expansion.with_coefficients(nominal + resized(cause.waves[:, d], order)), near=near) - values
            for d in range(cause.waves.shape[1])
        ]
        change = np.array(moved)
        out.append(np.sqrt(np.mean(np.where(np.isfinite(change) | np.isnan(values), change, np.inf) ** 2, axis=0)))
    return np.array(out)


def cuts_of_field(
    expansion: Expansion,
    frequency_hz: FloatArray,
    causes: tuple[FieldCause, ...] | None,
    planes_deg: tuple[float, ...],
    *,
    slant: float,
    region: float,
    step_deg: float = 1.0,
    hand: Handedness = 0,
) -> dict[float, list[LevelCut]]:
    """Return cuts through the peak of a far field (frequency, 2, J) by frequency, in planes in degrees from E towards H.

    Amplitudes are nan beyond `region`, radians from +z. Expanded uncertainties are infinite where `causes` is None:
    nothing is known of them. `hand`: as in `colure.analysis.figures.cuts.in_hand`. Other arguments as in `figures_of_field`.
    """
    angle = np.linspace(-180.0, 180.0, 2 * round(180.0 / step_deg) + 1)
    out: dict[float, list[LevelCut]] = {}
    for f, frequency in enumerate(frequency_hz):
        beam = find_beam(expansion.coefficients[f], slant=slant, region=region)
        d = cut_directions(beam, planes_deg, angle)
        level = _amplitudes(expansion.coefficients[f], d, slant, hand)
        expanded = (
            np.full(level.shape, np.inf) if causes is None else _expanded(expansion, f, causes, d, level, slant, hand)
        )
        level = np.where(np.arccos(np.clip(d[:, 2], -1.0, 1.0)) <= region + 1e-9, level, np.nan)
        shape = (3, len(planes_deg), angle.size)
        a, u = level.reshape(shape), np.asarray(expanded).reshape(shape)
        out[float(frequency)] = [
            LevelCut(
                plane_deg=plane, frequency_hz=float(frequency), angle_deg=angle, amplitude=dict(zip(COMPONENTS, a[:, i],
                strict=True)),
                expanded=dict(zip(COMPONENTS, u[:, i], strict=True)), common_db=0.0,
            )
            for i, plane in enumerate(planes_deg)
        ]  # fmt: skip
    return out


def levels_towards(
    expansion: Expansion,
    f: int,
    causes: tuple[FieldCause, ...] | None,
    directions: FloatArray,
    slant: float,
    hand: Handedness = 0,
) -> tuple[FloatArray, FloatArray]:
    """Return amplitudes (co, cross, total; direction) of frequency number f, and their expanded uncertainties; nan if nobody states them."""
    level = _amplitudes(expansion.coefficients[f], directions, slant, hand)
    if causes is None:
        return level, np.full(level.shape, np.nan)
    return level, _expanded(expansion, f, causes, directions, level, slant, hand)


def _expanded(
    expansion: Expansion,
    f: int,
    causes: tuple[FieldCause, ...],
    d: FloatArray,
    level: FloatArray,
    slant: float,
    hand: Handedness,
) -> FloatArray:
    """Return the expanded uncertainty of amplitudes (component, direction) by all causes together."""
    order = _common_order(expansion, causes)
    nominal = resized(expansion.coefficients[f], order)
    standard = [
        np.sqrt(
            np.mean(
                [(_amplitudes(nominal + resized(one, order), d, slant, hand) - level) ** 2 for one in cause.waves[f]],
                axis=0,
            )
        )
        for cause in causes
    ]
    dof = effective_dof(np.array(standard), np.array([float(one.dof) for one in causes]))
    factor = np.vectorize(students_factor, otypes=[float])(np.floor(dof))
    return np.asarray(factor * np.sqrt(np.sum(np.square(standard), axis=0)))


def _amplitudes(coefficients: ComplexArray, directions: FloatArray, slant: float, hand: Handedness) -> FloatArray:
    """Return (component, direction): co-polar, cross-polar (`components`) and total."""
    field = FarField(coefficients).at(directions)
    co, cross = components(field, directions, slant, hand)
    return np.stack([np.abs(co), np.abs(cross), np.sqrt(np.sum(np.abs(field) ** 2, axis=-1))])
