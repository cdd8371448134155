"""A figure: a number with a unit, an interval and the source of its definition."""

from __future__ import annotations

from dataclasses import asdict, dataclass, field, replace
from typing import Any

import numpy as np


@dataclass(frozen=True)
class BudgetRow:
    """One contribution to a figure's uncertainty, as an expanded (k = 2) half width.

    kind
        `measured` by this record, or `declared` beforehand.
    size, unit
        What was applied (expanded), where it is one number: `expanded / size` is the sensitivity.
    """

    term: str
    expanded: float
    basis: str
    kind: str = "declared"
    distribution: str = "normal"
    size: float | None = None
    unit: str = ""

    @property
    def group(self) -> str:
        """The term without its detail: all alignments together."""
        return self.term.split(":")[0]

    def of_size(self, expanded: float) -> BudgetRow:
        """Return the row with another half width."""
        return replace(self, expanded=expanded)


@dataclass(frozen=True)
class Figure:
    """One value at one frequency.

    lower, upper
        Ends of the 95 % interval; `upper` may be infinite where only a bound is known.
    budget
        Contributions, combined by root sum of squares.
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

    @property
    def expanded_uncertainty(self) -> float:
        """Larger half width of the interval, in the figure's unit."""
        return max(self.value - self.lower, self.upper - self.value)

    def groups(self) -> dict[str, float]:
        """Return the expanded contribution of every group of terms."""
        found: dict[str, float] = {}
        for row in self.budget:
            found[row.group] = float(np.hypot(found.get(row.group, 0.0), row.expanded))
        return found

    def contains(self, truth: float) -> bool:
        """Tell whether a value lies inside the interval."""
        return bool(self.lower <= truth <= self.upper or (np.isnan(truth) and np.isnan(self.value)))

    def text(self) -> str:
        """Return value and uncertainty with digits that the uncertainty supports."""
        return f"{format_value(self.value, self.expanded_uncertainty)} {self.interval_text()}"

    def interval_text(self) -> str:
        """Return the uncertainty as +- or, when lopsided, as separate ends."""
        up, down = self.upper - self.value, self.value - self.lower
        if not np.isfinite(up):
            return f"(at least {format_value(self.lower, down)})"
        if max(up, down) > 1.25 * min(up, down):
            digits = max(up, down)
            return f"+{format_value(up, digits)}/-{format_value(down, digits)}"
        return f"\u00b1 {format_value(self.expanded_uncertainty, self.expanded_uncertainty)}"

    def as_dict(self) -> dict[str, Any]:
        """Return plain JSON-ready data (infinities become null)."""
        data = asdict(self)
        data["expanded_uncertainty"] = self.expanded_uncertainty
        return {
            key: None if isinstance(value, float) and not np.isfinite(value) else value for key, value in data.items()
        }


def format_value(value: float, uncertainty: float) -> str:
    """Format a value with as many decimals as two digits of its uncertainty need."""
    if not np.isfinite(value):
        return str(value)
    if not np.isfinite(uncertainty) or uncertainty <= 0.0:
        return f"{value:.2f}"
    decimals = int(np.clip(1 - np.floor(np.log10(uncertainty)), 0, 4))
    return f"{value:.{decimals}f}"
