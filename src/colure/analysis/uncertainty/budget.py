"""The uncertainty budget: every cause's contribution to every figure, combined, with correlations kept.

Contributions are combined in the figure's native variable, in which errors add up evenly: standard uncertainties by root sum
of squares (JCGM 100:2008), the half width from their joint distribution (JCGM 101:2008). What a cause does to several
figures at once is kept as their covariance (5.2.2).
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from math import isfinite

import numpy as np

from colure.analysis.figures.beams import unsteady_beam_reason
from colure.analysis.uncertainty.causes import after_the_others, causes, not_declared
from colure.analysis.uncertainty.combination import Contribution, correlation, effective_dof, joint_half_width
from colure.analysis.uncertainty.effects import CauseEffects, Ends
from colure.analysis.uncertainty.inputs import Inputs
from colure.analysis.uncertainty.trial import Perturbation, Trial
from colure.geometry.conventions import FloatArray, amplitude_db, power_db, power_from_db
from colure.model.definitions import Definition
from colure.model.figure import BudgetRow, Figure
from colure.values import holds_arrays
from colure.waves.expansion import Expansion

#: Of a level that errors fill at least this share is told to be the device's, in power.
LEAST_LEFT = 0.01


@dataclass(frozen=True)
@holds_arrays
class Budget:
    """Figures with their intervals, and the correlation (frequency, figure, figure) of the native variables."""

    figures: list[Figure]
    names: tuple[str, ...]
    frequency_hz: FloatArray
    correlation: FloatArray


def native_values(inputs: Inputs, expansion: Expansion) -> FloatArray:
    """Return the native figures of every frequency, shape (frequency, figure)."""
    return inputs.figures.values(expansion)


def figures_with_budget(inputs: Inputs) -> list[Figure]:
    """Return every figure at every frequency with its interval and its budget."""
    return budget_of(inputs).figures


def budget_of(inputs: Inputs) -> Budget:
    """Return every figure with its budget, and how the figures' errors go together."""
    nominal = inputs.step.expansion(inputs.sphere.field)
    trial = Trial(inputs, nominal, *inputs.figures.read(nominal))
    every = list(causes(trial))
    effects = CauseEffects(trial, every)
    combined = _combined(effects.contributions)
    more = list(after_the_others(replace(trial, tilt_deg=_tilt_deg(trial, combined))))
    if more:
        every += more
        effects = CauseEffects(trial, every)
        combined = _combined(effects.contributions)
    return _budget(trial, every, effects, combined)


def _tilt_deg(trial: Trial, combined: _Combined) -> float | None:
    """Return half of the tilt's interval at the middle frequency; None where no tilt is read."""
    names = trial.inputs.figures.names
    return float(combined.half[len(trial.values) // 2, names.index("tilt_deg")]) if "tilt_deg" in names else None


def _budget(trial: Trial, every: list[Perturbation], effects: CauseEffects, combined: _Combined) -> Budget:
    inputs, contributions = trial.inputs, effects.contributions
    ends, gone, edges = effects.ends(), effects.reasons(), effects.widths()
    plain = corrected(trial.values, contributions)
    left_out = not_declared(inputs)
    figures = []
    for f, frequency in enumerate(inputs.sphere.frequency_hz):
        reasons = {**_unsteady(trial, combined, f), **gone[f], **trial.near[f].reasons}
        for i, what in enumerate(inputs.figures.definitions):
            parts = zip(every, combined.parts[:, f, i], combined.dof_of_parts, strict=True)
            rows = tuple(_row(one, float(u), dof, combined, f, i) for one, u, dof in parts)
            half = float(combined.half[f, i])
            modulus = _of_least(float(trial.values[f, i]), half) if what.least else ends[f].get(what.name)
            native = float(trial.values[f, i] if modulus else plain[f, i])
            modulus = modulus or _beyond(edges[f].get(what.name), native, half)
            if what.filled:
                measured = float(trial.values[f, i])
                native = _less_power(measured, measured - native)
                modulus = _even_in_power(native, half, measured)
            figures.append(
                build_figure(what, native, rows, float(frequency), half_width=half, ends=modulus,
                             dof=float(combined.dof[f, i]), left_out=left_out, reason=reasons.get(what.name, ""))
            )  # fmt: skip
    names = inputs.figures.names
    return Budget(figures, names, inputs.sphere.frequency_hz, correlation([_bounded(one) for one in contributions]))


def _beyond(more: tuple[float, float] | None, value: float, half: float) -> Ends | None:
    """Return the interval of a width one of whose edges may be farther off than the slope at it says; None where it is not."""
    return Ends(value - half - more[0], value + half + more[1]) if more and any(more) else None


def _less_power(measured_db: float, raised_db: float) -> float:
    """Return a level less the power that errors added on average, from how much they raise it when they come once more."""
    left = 2.0 - float(power_from_db(raised_db))
    return measured_db + float(power_db(max(left, LEAST_LEFT)))


def _even_in_power(value_db: float, half_db: float, measured_db: float) -> Ends:
    """Return the interval of a level that errors fill: what they add is a power, and where that is all of the level nothing may be left.

    half_db
        Half width at the level as it was measured.
    """
    share = half_db * np.log(10.0) / 10.0 * float(power_from_db(measured_db - value_db))
    low = value_db + float(power_db(1.0 - share)) if share < 1.0 else -np.inf
    return Ends(float(low), float(value_db + power_db(1.0 + share)))


def _of_least(value_db: float, half_db: float) -> Ends:
    """Return the interval of a smallest modulus: even in amplitude, for an error adds to the field, not to its level."""
    share = half_db * np.log(10.0) / 20.0
    low = value_db + amplitude_db(1.0 - share) if share < 1.0 else -np.inf
    return Ends(float(low), float(value_db + amplitude_db(1.0 + share)))


def corrected(values: FloatArray, contributions: Sequence[Contribution]) -> FloatArray:
    """Return values less what drawn errors add to them on average, where that is known (JCGM 100:2008, 3.2.4)."""
    for one in contributions:
        if one.centred:
            values = values - one.mean
    return values


def _unsteady(trial: Trial, combined: _Combined, f: int) -> dict[str, str]:
    """Return why figures of a single beam are not defined where errors move it by about its width, by name."""
    figures, near = trial.inputs.figures, trial.near[f]
    azimuth, elevation = (combined.half[f, figures.names.index(f"beam_{n}_deg")] for n in ("azimuth", "elevation"))
    reason = unsteady_beam_reason(near, azimuth_deg=float(azimuth), elevation_deg=float(elevation))
    return dict.fromkeys((d.name for d in figures.definitions if d.single_beam), reason) if reason else {}


@dataclass(frozen=True)
class _Combined:
    """Of every figure (frequency, figure): combined standard uncertainty, half width, effective degrees of freedom.

    parts (cause, frequency, figure), dof_of_parts
        Of every cause alone.
    """

    standard: FloatArray
    half: FloatArray
    dof: FloatArray
    parts: FloatArray
    dof_of_parts: list[float]


def _combined(contributions: list[Contribution]) -> _Combined:
    standard = np.array([one.standard for one in contributions])
    total = np.sqrt(np.sum(standard**2, axis=0))
    half = joint_half_width([_bounded(one) for one in contributions])
    dof = [one.degrees_of_freedom for one in contributions]
    return _Combined(
        total,
        np.where(np.isfinite(total), half, np.inf),
        effective_dof(np.where(np.isfinite(standard), standard, 0.0), np.array(dof)),
        standard,
        dof,
    )


def _bounded(one: Contribution) -> Contribution:
    """Return a contribution without what is unbounded."""
    finite = np.isfinite(one.effects)
    if finite.all():
        return one
    return Contribution(np.where(finite, one.effects, 0.0), one.distribution, one.dof, one.centred)


def _row(one: Perturbation, standard: float, dof: float, combined: _Combined, f: int, i: int) -> BudgetRow:
    total, half = combined.standard[f, i], combined.half[f, i]
    factor = float(half / total) if np.isfinite(total) and total > 0.0 else 2.0
    cause = one.cause
    return BudgetRow(term=cause.row, expanded=factor * standard, basis=one.basis, kind=one.known_as,
                     distribution=cause.distribution, size=one.size, unit=one.unit,
                     evaluation="A" if cause.type_a else "B", divisor=cause.divisor, dof=dof, coverage_factor=factor)  # fmt: skip


def build_figure(
    what: Definition,
    native: float,
    budget: tuple[BudgetRow, ...],
    frequency_hz: float,
    *,
    half_width: float | None = None,
    ends: Ends | None = None,
    dof: float = float("inf"),
    left_out: tuple[str, ...] = (),
    reason: str = "",
) -> Figure:
    """Show value and interval as people read them; the interval lies about the value in the native variable.

    half_width
        Of the interval, native; the root sum of squares of the budget's expanded contributions if None.
    ends
        Of the native interval, where it does not lie evenly about the value.
    dof
        Effective degrees of freedom.
    left_out
        Terms that the interval does not hold.
    reason
        Why there is no value: it is nan then, and nothing is said of its uncertainty.
    """
    if reason:
        nan = float("nan")
        return Figure(name=what.name, label=what.label, value=nan, unit=what.unit, frequency_hz=frequency_hz, lower=nan,
                      upper=nan, definition=what.text, source=what.source, topic=what.topic,
                      reason=reason)  # fmt: skip
    total = float(np.sqrt(sum(row.expanded**2 for row in budget))) if half_width is None else half_width
    low, high = (native - total, native + total) if ends is None else (ends.low, ends.high)
    shown = sorted((what.display(low), what.display(high)))
    return Figure(
        name=what.name,
        label=what.label,
        value=what.display(native),
        unit=what.unit,
        frequency_hz=frequency_hz,
        lower=shown[0],
        upper=shown[1],
        definition=what.text,
        source=what.source,
        coverage_factor=budget[0].coverage_factor if budget else 2.0,
        topic=what.topic,
        budget=tuple(row.of_size(_shown_half_width(what, native, row.expanded)) for row in budget),
        effective_dof=dof,
        not_included=left_out,
    )


def _shown_half_width(what: Definition, native: float, spread: float) -> float:
    """Return a contribution in the figure's own unit (mean of both sides where they differ)."""
    low, high = what.display(native - spread), what.display(native + spread)
    if isfinite(low) and isfinite(high):
        return abs(high - low) / 2.0
    return abs(what.display(native + spread) - what.display(native))
