"""A figure: a number with a unit, an interval and the source of its definition."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, field, fields, replace
from typing import Any, Final

import numpy as np

from colure.values import briefly_shown


@dataclass(frozen=True, kw_only=True)
class BudgetRow:
    """One contribution to a figure's uncertainty, as the GUM tabulates it (JCGM 100:2008, H.1.7).

    expanded
        Half width that the term alone would give the interval, in the figure's unit: contribution times coverage factor.
    kind
        `measured` by this record, or `declared` beforehand.
    size, unit
        Half width of the input that was applied, where it is one number.
    evaluation
        `A` by statistics, `B` by other means.
    divisor
        Half width over standard uncertainty of the input, as its distribution has it.
    dof
        Degrees of freedom of the input's standard uncertainty.
    coverage_factor
        The figure's own.
    """

    term: str
    expanded: float
    basis: str
    kind: str = "declared"
    distribution: str = "normal"
    size: float | None = None
    unit: str = ""
    evaluation: str = "B"
    divisor: float = 2.0
    dof: float = float("inf")
    coverage_factor: float = 2.0

    @property
    def group(self) -> str:
        """The term without its detail: all alignments together."""
        return self.term.split(":")[0]

    @property
    def contribution(self) -> float:
        """Standard uncertainty of the figure by this term alone."""
        return self.expanded / self.coverage_factor

    @property
    def standard(self) -> float | None:
        """Standard uncertainty of the input in its own unit; None where it is not one number, or a level in dB."""
        return None if self.size is None or self.size <= 0.0 else self.size / self.divisor

    @property
    def sensitivity(self) -> float | None:
        """Change of the figure for one unit of the input; None where the input is not one number."""
        standard = self.standard
        return None if standard is None else self.contribution / standard

    def of_size(self, expanded: float) -> BudgetRow:
        """Return the row with another half width."""
        return replace(self, expanded=expanded)

    def as_dict(self) -> dict[str, Any]:
        """Return plain JSON-ready data (infinities become null)."""
        # No field holds a container: nothing is to be copied deeply, as `dataclasses.asdict` does.
        return _finite({name: getattr(self, name) for name in _ROW_NAMES})


#: What a figure says of itself: nothing is known against it, a person must look, or it must not be used.
USABLE: Final = "yes"
LOOK: Final = "look"
NOT_TO_BE_USED: Final = "not to be used"


@dataclass(frozen=True, kw_only=True)
@briefly_shown
class Figure:
    """One value at one frequency.

    lower, upper
        Ends of the 95 % interval; `upper` may be infinite where only a bound is known.
    coverage_factor
        Half width over combined standard uncertainty, as it was really used.
    budget
        Contributions, combined by root sum of squares.
    effective_dof
        Effective degrees of freedom of the combined standard uncertainty (Welch-Satterthwaite).
    not_included
        Terms that nobody declared: the interval does not hold them.
    reason
        Why there is no value, where it is nan: shown in its place.
    use, cautions
        Whether the figure may be used (`yes`, `look`, `not to be used`), and what the data say against it,
        each after `look: ` or `not to be used: `.
    """

    name: str
    label: str
    value: float
    unit: str
    frequency_hz: float
    lower: float
    upper: float
    definition: str
    source: str
    coverage_factor: float = 2.0
    topic: str = "beam"
    budget: tuple[BudgetRow, ...] = field(default=())
    effective_dof: float = float("inf")
    not_included: tuple[str, ...] = ()
    reason: str = ""
    use: str = USABLE
    cautions: tuple[str, ...] = ()

    @property
    def zero_by_definition(self) -> bool:
        """Tell whether it is zero whatever the device does: compared with its own frequency, or without any other one to differ from."""
        return not self.reason and self.lower == self.upper == self.value == 0.0

    @property
    def expanded_uncertainty(self) -> float:
        """Larger half width of the interval, in the figure's unit."""
        return max(self.value - self.lower, self.upper - self.value)

    def groups(self) -> dict[str, float]:
        """Return the expanded contribution of every group of terms."""
        contributions: dict[str, float] = {}
        for row in self.budget:
            contributions[row.group] = float(np.hypot(contributions.get(row.group, 0.0), row.expanded))
        return contributions

    def contains(self, truth: float) -> bool:
        """Tell whether a value lies inside the interval."""
        return bool(self.lower <= truth <= self.upper or (np.isnan(truth) and np.isnan(self.value)))

    def text(self) -> str:
        """Return value and uncertainty with digits that the uncertainty supports, or why there is none."""
        if self.reason:
            return self.reason
        return f"{format_value(self.value, uncertainty=self.expanded_uncertainty)} {self.interval_text()}"

    def cells(self) -> tuple[str, str]:
        """Return value and interval as the two cells of a table; a dash, and why, where there is no value."""
        if self.reason:
            return "-", self.reason
        warning = "" if self.use == USABLE else f" ({self.use})"
        return format_value(self.value, uncertainty=self.expanded_uncertainty), self.interval_text() + warning

    def text_with_unit(self) -> str:
        """Return value, uncertainty and unit, or why there is no value."""
        return self.reason or f"{self.text()} {self.unit}"

    def interval_text(self) -> str:
        """Return the uncertainty as +- or, when lopsided, as separate ends; nothing where there is no value."""
        if self.reason:
            return ""
        up, down = self.upper - self.value, self.value - self.lower
        if np.isnan(up) and np.isnan(down):
            return "(no interval: errors unknown)"
        if not np.isfinite(up) and not np.isfinite(down):
            return "(no bound: some of its errors leave no such figure)"
        if not np.isfinite(up):
            return f"(at least {format_value(self.lower, uncertainty=down)})"
        if not np.isfinite(down):
            return f"(at most {format_value(self.upper, uncertainty=up)})"
        if max(up, down) > 1.25 * min(up, down):
            digits = max(up, down)
            return f"+{format_value(up, uncertainty=digits)}/-{format_value(down, uncertainty=digits)}"
        return f"\u00b1 {format_value(self.expanded_uncertainty, uncertainty=self.expanded_uncertainty)}"

    def as_dict(self) -> dict[str, Any]:
        """Return plain JSON-ready data (infinities become null)."""
        data = {one.name: getattr(self, one.name) for one in fields(self)}
        data["budget"] = [row.as_dict() for row in self.budget]
        data["expanded_uncertainty"] = self.expanded_uncertainty
        return _finite(data)


_ROW_NAMES = (*(one.name for one in fields(BudgetRow)), "contribution", "standard", "sensitivity")


def _finite(data: dict[str, Any]) -> dict[str, Any]:
    return {
        key: None if isinstance(value, float) and not math.isfinite(value) else value for key, value in data.items()
    }


def format_value(value: float, *, uncertainty: float) -> str:
    """Format a value with as many decimals as two digits of its uncertainty need."""
    if not np.isfinite(value):
        return str(value)
    if not np.isfinite(uncertainty) or uncertainty <= 0.0:
        return _unsigned_zero(f"{value:.2f}")
    decimals = int(np.clip(1 - np.floor(np.log10(uncertainty)), 0, 4))
    return _unsigned_zero(f"{value:.{decimals}f}")


def _unsigned_zero(text: str) -> str:
    """Return a number's text; a zero without its sign."""
    return text.lstrip("-") if float(text) == 0.0 else text


def undefined_words(figures: Sequence[Figure]) -> list[str]:
    """Return one sentence a reason: which figures do not exist, and why."""
    told: dict[str, list[str]] = {}
    for figure in figures:
        if figure.reason and figure.label not in told.setdefault(figure.reason, []):
            told[figure.reason].append(figure.label)
    return [f"{'; '.join(labels)}: {reason}." for reason, labels in told.items()]


@dataclass(frozen=True)
class Objection:
    """One thing that the data say against figures.

    words
        The sentence, after `look: ` or `not to be used: `.
    labels
        The figures it concerns, by label.
    all_figures
        Whether no figure that has a value is left out.
    """

    words: str
    labels: tuple[str, ...]
    all_figures: bool


def objections(figures: Sequence[Figure]) -> list[Objection]:
    """Return what the data say against figures, each sentence once, with the figures it concerns."""
    labels: dict[str, dict[str, None]] = {}
    for figure in figures:
        for words in figure.cautions:
            labels.setdefault(words, {})[figure.label] = None
    everything = len({figure.label for figure in figures if not figure.reason})
    return [Objection(words, tuple(some), len(some) >= everything) for words, some in labels.items()]
