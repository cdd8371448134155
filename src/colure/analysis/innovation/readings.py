"""Calibrated readings of one probe port along slices, wherever they were taken: no grid is needed."""

from __future__ import annotations

from dataclasses import dataclass, replace
from math import comb
from typing import TYPE_CHECKING

import numpy as np

from colure.analysis.pipeline.sweep_steps import Work, sweep_steps
from colure.analysis.steps.drift import declared_drift, track
from colure.analysis.steps.gain import apply_gain
from colure.geometry.conventions import ComplexArray, FloatArray, IntArray
from colure.model.plan import Role
from colure.model.record import of_role
from colure.values import holds_arrays

if TYPE_CHECKING:
    import xarray as xr

    from colure.analysis.steps.gain import ReferenceData
    from colure.model.chamber import Chamber
    from colure.model.device import Device
    from colure.model.recipe import Recipe

#: Steps of the recipe after the gain: they make a grid of what is none here.
GRIDDED = ("assemble", "distance")


@dataclass(frozen=True)
@holds_arrays
class SliceReadings:
    """What one probe port read, as field at the probe in units of sqrt(gain).

    value
        (frequency, point) complex.
    first, second, roll
        (point,) angles of azimuth, roll axis and probe's roll, radians.
    slice_index
        (point,) great-circle slice.
    time_s
        (point,) since the first sweep of the reference.
    noise
        (frequency,) standard deviation (complex modulus) of one reading.
    """

    frequency_hz: FloatArray
    value: ComplexArray
    first: FloatArray
    second: FloatArray
    roll: FloatArray
    slice_index: IntArray
    time_s: FloatArray
    noise: FloatArray

    def at(self, points: IntArray, frequencies: IntArray | slice = slice(None)) -> SliceReadings:
        """Return some of the points at some of the frequencies."""
        return SliceReadings(
            self.frequency_hz[frequencies], self.value[frequencies][:, points], self.first[points], self.second[points],
            self.roll[points], self.slice_index[points], self.time_s[points], self.noise[frequencies],
        )  # fmt: skip


def readings_of(
    record: xr.Dataset, chamber: Chamber, device: Device, recipe: Recipe, reference: ReferenceData | None = None
) -> SliceReadings:
    """Run a recipe as far as the gain and return what port 1 read on the scan's slices.

    Raises
    ------
    ValueError
        If the record lacks ties or reference sweeps.
    """
    work = Work(record, chamber, device, recipe, reference, track(record, declared=declared_drift(chamber)), record)
    for step in sweep_steps():
        if step.name not in GRIDDED:
            work = step.run(work, recipe.runs(step.name))
    transfer = work.transfer
    assert transfer is not None  # the gain runs in every recipe
    work = replace(work, calibrated=apply_gain(work.steady, transfer))
    assert work.calibrated is not None
    scan = of_role(work.calibrated, Role.SCAN)
    table = chamber.axis_table
    names = [str(name) for name in record["axis"].values]
    shown = scan["commanded_deg"].values
    angle = {name: np.deg2rad(table[name].map.angle_deg(shown[:, i])) for i, name in enumerate(names)}
    first, second = (angle[name] for name in chamber.positioner.geometry.axis_names)
    value = scan["trace"].values[:, :, 0].T
    noise = noise_over_band(value)
    if noise is None:
        noise = transfer.noise.max(axis=1) * np.abs(transfer.factor).max(axis=1)
    return SliceReadings(
        record["frequency"].values, value, first, second, angle.get("probe", np.zeros(first.size)),
        scan["slice_index"].values.astype(np.int64), scan["time_s"].values - float(record["time_s"].values.min()),
        noise,
    )  # fmt: skip


#: Differences of this order over frequency leave noise alone: what a device and its room do changes slowly over a band.
DIFFERENCE = 4


def noise_over_band(value: ComplexArray) -> FloatArray | None:
    """Return the noise (frequency,) of readings (frequency, point), the same for all, from what changes between frequencies.

    None where there are too few frequencies. The n-th difference of white noise has the variance binomial(2n, n) (derivable).
    """
    if len(value) < 2 * DIFFERENCE:
        return None
    middle = value[len(value) // 2]
    common = value @ middle.conj() / np.vdot(middle, middle)
    left = np.diff(value / common[:, None], n=DIFFERENCE, axis=0)
    size = float(np.sqrt(np.mean(np.abs(left) ** 2) / comb(2 * DIFFERENCE, DIFFERENCE)))
    return np.asarray(size * np.abs(common))
