"""The uncertainty budget: every cause's contribution to every figure, combined, with correlations kept.

Half widths are expanded (k = 2) and combined by root sum of squares in the figure's native variable
(JCGM 100:2008); what a cause does to several figures at once is kept as their covariance (5.2.2).
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from colure.analysis.bench import Bench, Cause, Inputs
from colure.analysis.causes import causes
from colure.analysis.figures.definitions import Definition
from colure.geometry.conventions import FloatArray
from colure.model.figure import BudgetRow, Figure
from colure.waves.expansion import Expansion

__all__ = ["Budget", "Inputs", "budget_of", "build_figure", "figures_with_budget", "native_values"]


@dataclass(frozen=True)
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
    values = inputs.figures.values(nominal)
    bench = Bench(inputs, nominal, values, inputs.figures.places(nominal))
    found = list(causes(bench))
    shift = sum((one.shift for one in found if one.shift is not None), np.zeros_like(values))
    figures = []
    for f, frequency in enumerate(inputs.sphere.frequency_hz):
        for i, what in enumerate(inputs.figures.definitions):
            rows = tuple(_row(one, f, i) for one in found)
            figures.append(build_figure(what, float(values[f, i]), rows, float(frequency), float(shift[f, i])))
    return Budget(figures, inputs.figures.names, inputs.sphere.frequency_hz, _correlation(found))


def _row(one: Cause, f: int, i: int) -> BudgetRow:
    expanded = float(np.linalg.norm(one.vectors[:, f, i]))
    return BudgetRow(one.term, expanded, one.basis, one.kind, one.distribution, one.size, one.unit)


def _correlation(found: list[Cause]) -> FloatArray:
    """Return the correlation (frequency, figure, figure) of all causes together."""
    every = np.concatenate([one.vectors for one in found])
    covariance = np.einsum("nfi,nfj->fij", every, every)
    size = np.sqrt(np.einsum("fii->fi", covariance))
    size = np.where(size > 0.0, size, 1.0)
    return np.asarray(covariance / size[:, :, None] / size[:, None, :])


def build_figure(
    what: Definition, native: float, budget: tuple[BudgetRow, ...], frequency_hz: float, shift: float = 0.0
) -> Figure:
    """Combine a budget in the native variable and show value and interval as people read them.

    shift
        What the causes do to the native variable on average: the interval lies about the value less that, but
        never leaves the value out.
    """
    total = float(np.sqrt(sum(row.expanded**2 for row in budget)))
    centre = native - float(np.clip(shift, -total, total))
    ends = sorted((what.display(centre - total), what.display(centre + total)))
    return Figure(
        name=what.name,
        label=what.label,
        value=what.display(native),
        unit=what.unit,
        frequency_hz=frequency_hz,
        lower=ends[0],
        upper=ends[1],
        definition=what.text,
        source=what.source,
        topic=what.topic,
        budget=tuple(row.of_size(_shown_half_width(what, native, row.expanded)) for row in budget),
    )


def _shown_half_width(what: Definition, native: float, spread: float) -> float:
    """Return a contribution in the figure's own unit (mean of both sides where they differ)."""
    low, high = what.display(native - spread), what.display(native + spread)
    if np.isfinite(low) and np.isfinite(high):
        return abs(high - low) / 2.0
    return abs(what.display(native + spread) - what.display(native))
