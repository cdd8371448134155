"""The device's own reflection, from readings at its connector during the run: what its mismatch costs, and how well that is known.

A reading is the device's reflection G through what the analyzer's one-port calibration left, to first order
D + (1 + T) G + M G^2 with residual directivity, tracking and source match (EURAMET Calibration Guide 12, derivable from the
three-term model). Their phases are not known. Readings are taken at the start and before every boresight check, where the axes
happen to stand: their scatter holds noise, the moving cable, drift, and what the chamber sends back into the device.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np

from colure.analysis.steps.repetition import students_factor
from colure.geometry.conventions import ComplexArray, FloatArray, IntArray, power_db
from colure.model.plan import Role
from colure.model.record import of_role
from colure.model.signal_chain import OnePort
from colure.values import holds_arrays

if TYPE_CHECKING:
    import xarray as xr

#: Joint draws of the phases of the error terms and of the scatter.
DRAWS = 4000
COVERAGE = 0.95
#: A reflection of less than so many intervals has no direction of its own: its modulus is off by the whole error, not by the part along it.
OWN_DIRECTION = 2.0
#: No device reflects more than nearly all (an open connector).
MOST = 1.0 - 1e-9
#: Why a run that was stopped early has no figures of the reflection.
READ_ONCE = "undefined: the device's reflection was read once, and its error needs at least 2 readings (the next comes before the next boresight check)"


@dataclass(frozen=True)
@holds_arrays
class DeviceReflection:
    """Reflection of the device (frequency,), complex, and the 95 % interval of its modulus.

    readings
        How often it was read.
    """

    coefficient: ComplexArray
    low: FloatArray
    high: FloatArray
    readings: int

    def at(self, frequencies: slice | IntArray) -> DeviceReflection:
        """Return the reflection at some of its frequencies."""
        return DeviceReflection(
            self.coefficient[frequencies], self.low[frequencies], self.high[frequencies], self.readings
        )

    @property
    def modulus(self) -> FloatArray:
        """Modulus (frequency,), below 1."""
        return np.asarray(np.minimum(np.abs(self.coefficient), MOST))

    @property
    def loss_db(self) -> FloatArray:
        """What the mismatch costs (frequency,), dB, positive."""
        return loss_db(self.modulus)

    @property
    def loss_ends_db(self) -> tuple[FloatArray, FloatArray]:
        """Ends of the interval of the loss (frequency,), dB."""
        return loss_db(self.low), loss_db(self.high)


def loss_db(modulus: FloatArray) -> FloatArray:
    """Return -10 log(1 - |G|^2): what an antenna does not accept of the available power, dB."""
    return np.asarray(-power_db(1.0 - modulus**2))


def device_reflection(record: xr.Dataset, left: OnePort | None) -> DeviceReflection | None:
    """Return the reflection that a record of one device state holds; None where it was not measured.

    left
        What the one-port calibration leaves.

    Raises
    ------
    ValueError
        If it was measured and nobody says what the calibration leaves, or fewer than 2 readings are there.
    """
    points = of_role(record, Role.REFLECTION)
    count = points.sizes["point"]
    if count == 0:
        return None
    if left is None:
        raise ValueError("chamber.toml: one_port: missing; the record holds the device's reflection (dB)")
    if count < 2:
        raise ValueError(f"record: {count} reading of the device's reflection, needs at least 2 (readings)")
    readings = points["trace"].values[:, :, 0]
    mean = readings.mean(axis=0)
    scatter = np.sqrt(np.sum(np.abs(readings - mean) ** 2, axis=0) / (2.0 * (count - 1)))
    along, whole = _errors(mean, scatter, left, count - 1)
    modulus = np.abs(mean)
    down = np.where(modulus > OWN_DIRECTION * whole, along, whole)
    return DeviceReflection(mean, np.maximum(modulus - down, 0.0), np.minimum(modulus + along, MOST), count)


def read_once(record: xr.Dataset) -> bool:
    """Tell whether a record of one device state holds a single reading of the reflection: no interval, though one is coming."""
    return of_role(record, Role.REFLECTION).sizes["point"] == 1


def _errors(mean: ComplexArray, scatter: FloatArray, left: OnePort, freedom: int) -> tuple[FloatArray, FloatArray]:
    """Return by how much readings may be off (frequency,): along the reflection itself, and in modulus; 95 % each.

    scatter
        (frequency,) standard deviation of one reading, per quadrature. What moves the readings slowly moves their mean by as
        much: it is not divided by the square root of their number.
    """
    random = np.random.default_rng(20)
    turns = np.exp(2j * np.pi * random.random((3, DRAWS, 1)))
    normal = random.normal(size=(2, DRAWS, 1))
    sizes = (
        np.full(mean.size, 10.0 ** (left.directivity_db / 20.0)),
        (10.0 ** (left.tracking_db / 20.0) - 1.0) * np.abs(mean),
        10.0 ** (left.match_db / 20.0) * np.abs(mean) ** 2,
    )
    wide = scatter * students_factor(freedom) / students_factor(np.inf)
    error = sum(turn * size for turn, size in zip(turns, sizes, strict=True)) + (normal[0] + 1j * normal[1]) * wide
    return (
        np.quantile(np.abs(np.real(error)), COVERAGE, axis=0),
        np.quantile(np.abs(error), COVERAGE, axis=0),
    )
