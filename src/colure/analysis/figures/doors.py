"""Figures of other packages, entry points `colure.figures`: read from every changed pattern, so that the budget gives their interval."""

from __future__ import annotations

import sys
from dataclasses import replace
from functools import lru_cache
from typing import Protocol

from colure.analysis.figures.one_pattern import OnePattern
from colure.analysis.figures.readings import BAND_READINGS, READINGS, FigureReading
from colure.model.definitions import BAND_DEFINITIONS, Definition
from colure.model.doors import Brought, brought


class FigureDoor(Protocol):
    """What an object behind `colure.figures` must have.

    definition
        Name, label, unit, meaning, source, and how the native variable is shown.
    """

    definition: Definition

    def read(self, pattern: OnePattern) -> float:
        """Return the native value of one pattern at one frequency; nan where the figure does not exist."""
        ...


def definitions_of_others() -> tuple[Definition, ...]:
    """Return the definitions that other packages bring.

    Raises
    ------
    InputError
        If one is no definition, or has the name of another figure; the package is named.
    """
    return tuple(what for what, _ in _found(tuple(sys.path)))


def reading_of(key: str) -> FigureReading:
    """Return how a figure is read, by the key of its definition."""
    own = READINGS.get(key)
    if own is not None:
        return own
    return next(reading for what, reading in _found(tuple(sys.path)) if what.key == key)


@lru_cache(maxsize=16)
def _found(path: tuple[str, ...]) -> tuple[tuple[Definition, FigureReading], ...]:
    taken = {what.name for what in BAND_DEFINITIONS} | set(READINGS) | set(BAND_READINGS)
    out = []
    for one in brought("colure.figures"):
        what = one.thing.definition
        if not isinstance(what, Definition):
            raise one.refusal(f"definition is {type(what).__name__}, must be colure.model.definitions.Definition")
        if what.name in taken or what.key in taken:
            raise one.refusal(f"name = {what.name!r}: is another figure's already")
        if what.band:
            raise one.refusal("band = True: must be False, a figure of another package is read at one frequency")
        taken |= {what.name, what.key}
        foreign = f"{one.package} brings this figure"
        known = replace(what, anew=True, power=False, no_forecast=foreign, no_truth=foreign)
        out.append((known, _reading(one)))
    return tuple(out)


def _reading(one: Brought) -> FigureReading:
    def read(pattern: OnePattern, what: Definition) -> float:
        return one.call(float, one.thing.read, pattern)

    return read
