"""Range lengths at which a whole scan is repeated, so that the wave that bounces back and forth comes out: table of goal.toml."""

from __future__ import annotations

from itertools import pairwise
from typing import Annotated, Any, Literal

import numpy as np
from pydantic import Field, model_validator

from colure.geometry.conventions import SPEED_OF_LIGHT, FloatArray
from colure.model.loading import Section, number

#: Fewer distances than this tell nothing apart; more than this nobody moves by hand.
FEWEST, MOST = 2, 12


class DistanceSteps(Section):
    """Distances at which the scan is repeated, and what a person moves; the run pauses before each and asks for it.

    The wave that runs from the device to the probe, back, and to the probe again turns twice as fast with the distance as the
    direct one. From known steps both are found by least squares, at every frequency by itself.

    wavelengths
        Steps from the declared range length, in wavelengths at mid-band, rising from 0: (0, 0.125, 0.25, 0.375) are four steps of
        an eighth, (0, 0.25) is one of a quarter. Either this or `mm`.
    mm
        The same steps in millimetres.
    moves
        What is moved away from the other by the step: the `probe`, or the `positioner` with the device on it. The device's place on
        the positioner must not change: it would turn with the axes.
    expanded_mm
        How well each step's length is known, expanded (k = 2).
    """

    wavelengths: tuple[Annotated[float, Field(ge=0, le=10)], ...] = ()
    mm: tuple[Annotated[float, Field(ge=0, le=1000)], ...] = ()
    moves: Literal["probe", "positioner"] = "probe"
    expanded_mm: float = number("mm", 0.0001, 10)

    @model_validator(mode="before")
    @classmethod
    def _axis_is_not_there(cls, data: Any) -> Any:
        if isinstance(data, dict) and data.get("moves") == "axis":
            raise ValueError(
                "moves = 'axis': no axis of the range's length is driven; must be 'probe' or 'positioner', moved by a person"
            )
        return data

    @model_validator(mode="after")
    def _steps(self) -> DistanceSteps:
        if bool(self.wavelengths) == bool(self.mm):
            raise ValueError(
                "wavelengths or mm: exactly one of both must list the steps (wavelengths at mid-band, or mm)"
            )
        name, steps = ("mm", self.mm) if self.mm else ("wavelengths", self.wavelengths)
        if not FEWEST <= len(steps) <= MOST:
            raise ValueError(f"{name}: {len(steps)} steps; must be {FEWEST} to {MOST} distances (steps)")
        if steps[0] != 0.0 or any(b <= a for a, b in pairwise(steps)):
            raise ValueError(f"{name} = {list(steps)}: must rise from 0, the distance that chamber.toml declares")
        return self

    def steps_m(self, frequency_hz: FloatArray) -> FloatArray:
        """Return the steps (distance,) in metres; fractions are those of the wavelength in the middle of the band."""
        if self.mm:
            return 1e-3 * np.asarray(self.mm)
        middle = 0.5 * (float(np.min(frequency_hz)) + float(np.max(frequency_hz)))
        return np.asarray(self.wavelengths) * SPEED_OF_LIGHT / middle
