"""Numbers of the command line: finite ones. `nan` lies in every range, since it compares with nothing."""

from __future__ import annotations

import math
from typing import Any

import click


class FiniteNumber(click.types.FloatParamType):
    """A number that is neither `nan` nor infinite."""

    def convert(self, value: Any, param: click.Parameter | None, ctx: click.Context | None) -> float:
        """Return the number; refuses what is none, as click does."""
        number = float(super().convert(value, param, ctx))
        return number if math.isfinite(number) else self.fail(f"{value} is no finite number.", param, ctx)


class FiniteRange(click.FloatRange):
    """A number within limits that is neither `nan` nor infinite."""

    def convert(self, value: Any, param: click.Parameter | None, ctx: click.Context | None) -> float:
        """Return the number; refuses what lies outside, as click does."""
        number = float(super().convert(value, param, ctx))
        if math.isfinite(number):
            return number
        return self.fail(f"{value} is not in the range {self._describe_range()}.", param, ctx)


FINITE = FiniteNumber()
