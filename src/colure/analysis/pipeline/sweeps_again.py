"""The way from sweeps to the measured sphere, gone again with other sweeps: what is wrong with a sweep goes through ties and reference too."""

from __future__ import annotations

from dataclasses import dataclass, field, replace
from functools import cached_property
from typing import TYPE_CHECKING

import numpy as np

from colure.analysis.pipeline.stages import stages
from colure.analysis.pipeline.sweep_steps import sweep_steps
from colure.analysis.steps.gain import ReferenceData
from colure.analysis.steps.time_gate import Gate
from colure.geometry.conventions import ComplexArray
from colure.model.chamber import Chamber
from colure.model.device import Device
from colure.model.recipe import Recipe
from colure.values import holds_arrays

if TYPE_CHECKING:
    import xarray as xr


@dataclass(frozen=True)
@holds_arrays
class SweepsAgain:
    """A record and the steps that made a sphere of it.

    gate
        The time gate that was used.
    kept
        Which of the record's frequencies are wanted.
    """

    record: xr.Dataset
    chamber: Chamber
    device: Device
    recipe: Recipe
    reference: ReferenceData | None
    gate: Gate | None
    kept: slice = field(default_factory=lambda: slice(None))

    @property
    def trace(self) -> ComplexArray:
        """Sweeps as they were read, (point, frequency, port)."""
        return np.asarray(self.record["trace"].values)

    def only(self, index: int) -> SweepsAgain:
        """Return the way of one frequency alone."""
        first = self.kept.indices(self.record.sizes["frequency"])[0] + index
        one = slice(first, first + 1)
        if any(step.whole_band and self.recipe.runs(step.name) for step in sweep_steps()):
            return replace(self, kept=one)  # these steps need the whole band
        return replace(
            self,
            record=self.record.isel(frequency=one),
            reference=None if self.reference is None else self.reference.at(one),
        )

    def change(self, trace: ComplexArray) -> ComplexArray:
        """Return what other sweeps (point, frequency, port) change of the sphere's field (frequency, 2, theta, phi)."""
        return np.asarray(self._field(trace) - self._nominal)

    @cached_property
    def _nominal(self) -> ComplexArray:
        return self._field(self.trace)

    def _field(self, trace: ComplexArray) -> ComplexArray:
        other = self.record.assign(trace=(self.record["trace"].dims, trace, self.record["trace"].attrs))
        sweep_stages = stages(other, self.chamber, self.device, self.recipe, self.reference, gate=self.gate)
        return sweep_stages.sphere.field[self.kept]
