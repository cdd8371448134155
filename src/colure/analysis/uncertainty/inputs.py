"""What the budget needs from the processing chain."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING, Protocol

from colure.analysis.figures.evaluate import FigureSet
from colure.analysis.steps.alignment import AlignmentResponse
from colure.analysis.steps.assemble import MeasuredSphere
from colure.analysis.steps.distance_steps import Bounce
from colure.analysis.steps.far_field import FarFieldStep
from colure.analysis.steps.reflection import DeviceReflection
from colure.analysis.steps.time_gate import GateResponse
from colure.geometry.conventions import ComplexArray, FloatArray
from colure.model.chamber import Chamber
from colure.model.device import Device
from colure.values import holds_arrays
from colure.waves.expansion import Expansion

if TYPE_CHECKING:
    import xarray as xr


class Sweeps(Protocol):
    """The way from a record's sweeps to the measured sphere, to be gone again with other sweeps."""

    @property
    def record(self) -> xr.Dataset:
        """The record as it was read."""
        ...

    @property
    def device(self) -> Device:
        """What was measured."""
        ...

    @property
    def trace(self) -> ComplexArray:
        """Sweeps as they were read, (point, frequency, port)."""
        ...

    def only(self, index: int) -> Sweeps:
        """Return the way of one frequency alone."""
        ...

    def change(self, trace: ComplexArray) -> ComplexArray:
        """Return what other sweeps (point, frequency, port) change of the sphere's field (frequency, 2, theta, phi)."""
        ...


@dataclass(frozen=True, kw_only=True)
@holds_arrays
class Inputs:
    """What the budget needs from the processing chain.

    noise_sigma (frequency,): standard deviation (complex modulus) of one component of one
    sample, in the units of the measured field. aligned: the chamber's tolerances are what the
    correction from the data left. other_gate (as the sphere's field): what another time gate makes of it.
    gate: what the time gate leaves of later rays, where one was used.
    once (frequency,): relative noise, each of the two quadratures, of the sweeps that are common to all points
    (first tie, reference). peak_reading: largest wave ratio of the scan, for what is declared of the receiver. mismatch_db: expanded,
    of declared reflections. declared_offset_mm: what the protocol says of the axes' offset, any direction.
    drift_parts: intervals between ties in one pass; what drift leaves is one error in each. 0: one a slice.
    drift_errors (mode, 2, 2, column): what independent errors of one standard deviation, that drift leaves, do to the sphere's
    components; None: by `drift_parts`.
    answer: how the alignment from the data answers what is added to the scan; None where none was estimated.
    sweeps: the record and the steps that made the sphere of it, to be gone again.
    noise_dof: degrees of freedom of `noise_sigma`.
    seed: what every random draw begins with.
    place_db: expanded, of the reference horn's place. unheard_db: of a near horn's level, known, not corrected. age_days: of a stored calibration when the record was measured; None without.
    horn_louder: how much louder echoes of the reference horn are than the chamber's level says: a learned room takes
        out the device's echoes, of the horn's back and rim it knows little.
    reflection: of the device, where the run measured it.
    commands (draw, frequency, 2, theta, phi): what errors of an array's element commands add to the field, as drawn; None where
    the device is measured in the state that counts.
    leak_noise (frequency,): noise, each of the two quadratures, of the probe's impurity as the horn's sweeps told it.
    """

    sphere: MeasuredSphere
    step: FarFieldStep
    chamber: Chamber
    figures: FigureSet
    noise_sigma: FloatArray
    drift_residual: float
    probe: Expansion | None
    sweeps: Sweeps
    seed: int = 1
    aligned: bool = False
    other_gate: ComplexArray | None = None
    gate: GateResponse | None = None
    once: FloatArray | None = None
    peak_reading: float = 1.0
    declared_offset_mm: float = 0.0
    mismatch_db: float = 0.0
    answer: AlignmentResponse | None = None
    drift_parts: int = 0
    drift_errors: ComplexArray | None = None
    leak_noise: FloatArray | None = None
    place_db: float = 0.0
    unheard_db: float = 0.0
    age_days: float | None = None
    noise_dof: float = float("inf")
    reflection: DeviceReflection | None = None
    commands: ComplexArray | None = None
    bounce: Bounce | None = None
    horn_louder: float = 1.0

    def only(self, index: int) -> Inputs:
        """Return the inputs of one frequency alone."""
        one = slice(index, index + 1)
        response = self.step.response
        narrow = replace(
            self.step,
            k=self.step.k[one],
            response=replace(
                response,
                grad=response.grad[one],
                curl=response.curl[one],
                first_order_share=response.first_order_share[one],
            ),
        )
        probe = None if self.probe is None else self.probe.at_frequency(index)
        return replace(
            self,
            sphere=replace(self.sphere, frequency_hz=self.sphere.frequency_hz[one], field=self.sphere.field[one]),
            step=narrow,
            figures=replace(
                self.figures,
                band=False,
                mismatch_loss_db=None if self.figures.mismatch_loss_db is None else self.figures.mismatch_loss_db[one],
            ),
            noise_sigma=self.noise_sigma[one],
            once=None if self.once is None else self.once[one],
            leak_noise=None if self.leak_noise is None else self.leak_noise[one],
            probe=probe,
            reflection=None if self.reflection is None else self.reflection.at(one),
            sweeps=self.sweeps.only(index),
            other_gate=None if self.other_gate is None else self.other_gate[one],
            commands=None if self.commands is None else self.commands[:, one],
            gate=None if self.gate is None else self.gate.only(index),
        )

    @property
    def slant(self) -> float:
        """Reference of the co-polar vector, radians."""
        return self.figures.slant
