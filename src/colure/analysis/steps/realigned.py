"""What the alignment from the data makes of an error of the scan: the same echo moves the data and the alignment."""

from __future__ import annotations

from functools import cached_property

import numpy as np

from colure.analysis.steps.alignment import NAMES, AlignmentResponse, misalignment_from
from colure.analysis.steps.assemble import MeasuredSphere
from colure.analysis.steps.far_field import FarFieldStep
from colure.analysis.steps.misaligned import ForwardModel
from colure.geometry.conventions import ComplexArray, FloatArray, IntArray
from colure.geometry.kinematics import ALIGNED
from colure.waves.modes import resized

#: Two frequencies are the same within this, relative.
SAME = 1e-9
#: Small enough to be linear, large enough for the transform's accuracy: radians, metres.
SMALL = 1e-4


class Realigned:
    """Takes off the device's waves what an alignment from the data takes off with an error that is added to the scan."""

    def __init__(
        self, answer: AlignmentResponse, sphere: MeasuredSphere, step: FarFieldStep, distance_m: float
    ) -> None:
        """Take the scan as it was corrected, at the frequencies of a budget."""
        self._answer, self._sphere, self._step, self._distance = answer, sphere, step, distance_m

    @cached_property
    def _where(self) -> IntArray | None:
        """Where the frequencies that the estimate looked at are among the budget's; None if some are not there."""
        wanted, there = self._answer.sphere.frequency_hz, self._sphere.frequency_hz
        off = np.abs(there[None, :] - wanted[:, None])
        return np.asarray(off.argmin(axis=1)) if bool(np.all(off.min(axis=1) <= SAME * wanted)) else None

    @cached_property
    def _waves(self) -> ComplexArray:
        """Waves (parameter, frequency, 2, J) that come off for one SI unit of each parameter."""
        model = ForwardModel(self._sphere, self._distance)
        waves = resized(self._step.measured(self._sphere.field), self._step.keep_order)
        nominal = model.read(waves, ALIGNED)
        moved = [
            (model.read(waves, misalignment_from({**dict.fromkeys(NAMES, 0.0), name: SMALL})) - nominal) / SMALL
            for name in NAMES
        ]
        return self._step.expansion(np.stack(moved)).coefficients

    @property
    def follows(self) -> bool:
        """Tell whether the budget holds the frequencies that the estimate looked at, so that its answer can be worked out."""
        return self._where is not None

    def drawn(self, random: np.random.Generator) -> FloatArray:
        """Return what rooms may do to the parameters (parameter,), SI, on the whole."""
        return np.asarray(random.multivariate_normal(np.zeros(len(NAMES)), self._answer.by_rooms, method="eigh"))

    def along(self, stray: ComplexArray, measured: ComplexArray) -> ComplexArray:
        """Return how the parameters follow stray fields (n, frequency, 2, theta, phi): complex (n, parameter), as `AlignmentResponse.along`.

        measured
            The step's coefficients (n, frequency, 2, N(N+2)) of the same fields.

        Raises
        ------
        ValueError
            If the budget does not hold the frequencies that the estimate looked at.
        """
        if self._where is None:
            raise ValueError("alignment: the budget lacks the frequencies that the estimate looked at (Hz)")
        own, step = self._answer.step, self._step
        same = own.rings is None and step.rings is None and (own.order, own.phi_start) == (step.order, step.phi_start)
        return self._answer.along(stray[:, self._where], measured[:, self._where] if same else None)

    def off(self, moved: FloatArray) -> ComplexArray:
        """Return what comes off the waves (..., frequency, 2, J) when the parameters (..., parameter) are off."""
        return np.asarray(np.tensordot(moved, self._waves, axes=1))

    def without(self, field: ComplexArray) -> ComplexArray:
        """Return what comes off the waves (..., frequency, 2, J) when the scan's field was another; nothing where nobody can tell."""
        if self._where is None:
            return np.zeros_like(self._waves[0])
        return self.off(self._answer.to((field - self._sphere.field)[..., self._where, :, :, :]))
