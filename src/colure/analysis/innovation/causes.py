"""What readings hold besides the device and its noise: a room, a misaligned range, drift, a cable, an imperfect reference."""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import cached_property

import numpy as np

from colure.analysis.innovation.known_unit import KnownUnit, over_band, wave_error
from colure.analysis.innovation.range_model import RangeModel
from colure.analysis.steps.cable import bend_shapes
from colure.analysis.stray.mirrors import draw_walls, hearing, of_reference
from colure.analysis.uncertainty.rooms import RIM_DB
from colure.geometry.conventions import ComplexArray, FloatArray, IntArray, wavenumber
from colure.geometry.kinematics import ALIGNED, Misalignment
from colure.model.chamber import Chamber
from colure.values import holds_arrays
from colure.waves.expansion import Expansion

#: Of a drift between boresight checks, this share may go by slices instead of evenly with time (common practice, no source).
UNEVEN = 0.3
#: A mount that a device is put on by hand, beside what is declared of the axes: millimetres, expanded (common practice, no source).
SEAT_MM = 0.3


@dataclass(frozen=True)
@holds_arrays
class Drawn:
    """Draws of what readings hold and what a pattern made of them misses.

    steady (n, frequency, point)
        Added to the readings of the true device, whatever is new in it: rooms, errors of the reference, noise.
    sizes (n, cause)
        Of the tolerances, in standard deviations: what these add depends on the device.
    level (n, frequency)
        Relative error of the level that the reference horn brings; phases are not compared.
    waves (n, frequency, 2, J)
        What the reference's waves lack of the true device's.
    """

    steady: ComplexArray
    sizes: FloatArray
    level: FloatArray
    waves: ComplexArray


class Causes:
    """Everything declared of a range and a reference, as changes of the readings on given points."""

    def __init__(
        self, model: RangeModel, known: KnownUnit, chamber: Chamber, probe: Expansion | None, time_s: FloatArray,
        slices: IntArray,
    ) -> None:  # fmt: skip
        self.model, self.known, self.chamber = model, known, chamber
        self._time_s, self.slices = time_s, slices
        self._hears = hearing(probe, chamber.probe.gain_dbi)
        self.nominal = model.read(model.measured(known.expansion.coefficients))
        self.peak = float(np.abs(self.nominal[len(self.nominal) // 2]).max())

    def tolerances(self, waves: ComplexArray) -> ComplexArray:
        """One standard deviation of every declared adjustment, drift, cable and the probe's impurity (cause, frequency, point).

        Parameters
        ----------
        waves
            (frequency, 2, J) of the device that stands misaligned. A faulty one is moved as it is: where its pattern is off
            by -20 dB, so is what a shift of 0.07 rad does to it, and few slices see -50 dB.
        """
        measured = self.model.measured(waves)
        own = self.model.read(measured)
        moved = [self.model.change(measured, one) for one in _adjustments(self.chamber)]
        relative = np.concatenate([self._drift(), self._cable()]) * own
        across = replace(self.model, roll=self.model.roll + 0.5 * np.pi).read(measured)
        leak = np.sqrt(0.5) * 10.0 ** (self.chamber.probe.cross_polar_db / 20.0) * np.stack([across, 1j * across])
        every = np.concatenate([np.stack(moved), relative, leak])
        return without_common_phase(every, own)

    def _drift(self) -> ComplexArray:
        """Return relative changes (cause, 1, point) by drift since the reference was read."""
        ran = self._time_s / self.chamber.tie_interval_s
        level = 0.5 * self.chamber.tie_drift_db * np.log(10.0) / 20.0
        phase = 0.5j * np.deg2rad(self.chamber.tie_drift_deg)
        by_slice = [np.where(self.slices == one, UNEVEN * ran, 0.0) for one in np.unique(self.slices)]
        shapes = np.array([ran, *by_slice])
        return np.concatenate([level * shapes, phase * shapes])[:, None]

    def _cable(self) -> ComplexArray:
        """Return relative changes (shape, 1, point) by the moving cable."""
        shapes = bend_shapes(self.model.first, joints=False)
        return np.asarray(0.5j * np.deg2rad(self.chamber.cable_flex_deg) / np.sqrt(3.0) * shapes)[:, None]

    def rooms(self, random: np.random.Generator, count: int) -> tuple[ComplexArray, ComplexArray]:
        """Return what drawn rooms add (room, frequency, point), and the relative echo of the horn (room, frequency)."""
        chamber, k = self.chamber, wavenumber(self.model.frequency_hz)
        drawn = [draw_walls(random, chamber.range_length_m, self._hears, chamber.echo_excess_m) for _ in range(count)]
        turn = [np.exp(-1j * k[:, None] * way)[..., None, None] for _, way, _ in drawn]
        mirrors = np.stack([mirror * one for (_, _, mirror), one in zip(drawn, turn, strict=True)])
        directions = np.stack([one for one, _, _ in drawn])
        stray = self.model.through_walls(self.known.expansion.coefficients, directions, mirrors)
        middle, weight = len(k) // 2, np.abs(np.sin(self.model.first))
        own = np.sqrt(np.sum(np.abs(stray[:, middle]) ** 2 * weight, axis=-1) / weight.sum())
        scale = chamber.echo_amplitude * self.peak / own
        sent = of_reference(chamber, self.model.frequency_hz, directions.reshape(-1, 3))
        sent = sent.reshape(k.size, *directions.shape[:2], 2)
        rim = 10.0 ** random.normal(0.0, RIM_DB / 20.0, directions.shape[:2])
        horn = np.einsum("frwt,rfwt,rw->rf", sent, mirrors[..., 0, :], rim)
        return scale[:, None, None] * stray, scale[:, None] * horn

    @cached_property
    def _of_waves(self) -> ComplexArray:
        """Readings (wave, point) of every wave of the reference at the middle of the band."""
        c = self.known.expansion.coefficients
        middle = len(c) // 2
        every = np.eye(c[0].size, dtype=complex).reshape(-1, *c[0].shape)
        one = replace(
            self.model,
            frequency_hz=self.model.frequency_hz[middle:][:1],
            response=self.model.response.at(np.array([middle])),
        )
        return np.asarray(one.read(one.measured(every[:, None]))[:, 0])

    @property
    def _over_band(self) -> FloatArray:
        return over_band(self.model.frequency_hz.size)

    @property
    def _one_wave(self) -> float:
        return wave_error(self.known.likeness, self.peak, self.known.expansion.coefficients.shape[-1])

    def reference_errors(self, random: np.random.Generator, count: int) -> ComplexArray:
        """Return draws (n, frequency, 2, J) of what the reference's waves lack: as strong in all of them, straight over the band."""
        shape = self.known.expansion.coefficients.shape[1:]
        raw = random.normal(size=(2, 2, count, *shape)) / np.sqrt(2.0)
        return np.asarray(self._one_wave * np.einsum("an...,af->nf...", raw[0] + 1j * raw[1], self._over_band))

    def reference_shapes(self) -> ComplexArray:
        """Return what errors of the reference do to the readings (cause, frequency, point), one standard deviation each, of any phase.

        All waves are equally strong, so that the readings' covariance at one frequency is known without draws; over the band
        it is taken for that of the middle.
        """
        values, vectors = np.linalg.eigh(self._of_waves.conj().T @ self._of_waves)
        kept = values > 1e-8 * values[-1]
        shapes = self._one_wave * (np.sqrt(values[kept]) * vectors[:, kept].conj()).T
        over = self._over_band[:, None, :, None] * shapes[None, :, None]
        return np.asarray(over.reshape(-1, over.shape[2], over.shape[3]))

    def lacking(self, told: ComplexArray) -> ComplexArray:
        """Return what the reference's waves lack (n, frequency, 2, J) by what C^-1 makes of what is left of readings (n, frequency, point)."""
        by_wave = np.einsum("nfp,af,wp->naw", told, self._over_band, self._of_waves.conj(), optimize=True)
        missing_waves = 0.5 * self._one_wave**2 * np.einsum("naw,af->nfw", by_wave, self._over_band)
        return np.asarray(missing_waves.reshape(*missing_waves.shape[:2], *self.known.expansion.coefficients.shape[1:]))

    def draws(self, random: np.random.Generator, count: int, noise: FloatArray, tolerances: int) -> Drawn:
        """Return draws of everything, with so many tolerances; the device's own likeness is left out."""
        stray, horn = self.rooms(random, count)
        waves = self.reference_errors(random, count)
        read = self.model.read(self.model.measured(waves))
        sizes = random.normal(size=(count, tolerances))
        raw = random.normal(size=(2, *stray.shape)) / np.sqrt(2.0)
        white = (raw[0] + 1j * raw[1]) * noise[:, None]
        phase = np.exp(2j * np.pi * random.random((count, 1)))
        horn_db = np.hypot(self.chamber.reference.gain_uncertainty_db, self.chamber.reference.reconnect_db)
        gain = random.normal(size=(count, 1)) * 0.5 * horn_db * np.log(10.0) / 20.0
        return Drawn(stray + read + white, sizes, gain - (phase * horn).real, waves)


def without_common_phase(changes: ComplexArray, readings: ComplexArray) -> ComplexArray:
    """Return changes (cause, frequency, point) of readings (frequency, point) without the phase that all points of a frequency share.

    That phase is in the fit's factor, and exactly so, where a change has it to first order only. The level stays: it is a
    gain's error.
    """
    common = np.sum(readings.conj() * changes, axis=-1) / np.sum(np.abs(readings) ** 2, axis=-1)
    return np.asarray(changes - 1j * common.imag[..., None] * readings)


def _adjustments(chamber: Chamber) -> list[Misalignment]:
    """Return one standard deviation of every adjustment of range, probe and device, each alone."""
    a = chamber.alignment
    seat = 0.5e-3 * float(np.hypot(SEAT_MM, a.axes_offset_mm))
    pose = np.deg2rad(0.5 * a.device_pose_deg) * np.sqrt(2.0)  # the reference sat as well as the device does
    axes, side = 0.5e-3 * a.axes_offset_mm, 0.5e-3 * max(a.probe_lateral_mm, a.axes_offset_mm)
    along = 0.5e-3 * a.distance_mm
    unit = np.eye(3)
    misalignments = [replace(ALIGNED, azimuth_zero=np.deg2rad(0.5 * a.theta_zero_deg)),
             replace(ALIGNED, carried_axis_tilt=(np.deg2rad(0.5 * a.roll_axis_tilt_deg), 0.0, 0.0)),
             replace(ALIGNED, probe_roll_zero=np.deg2rad(0.5 * a.probe_roll_zero_deg))]  # fmt: skip
    misalignments += [replace(ALIGNED, carried_axis_offset=tuple(axes * one)) for one in unit]
    misalignments += [replace(ALIGNED, device_tilt=tuple(pose * one)) for one in unit]
    misalignments += [replace(ALIGNED, device_offset=tuple(seat * one)) for one in unit]
    misalignments += [
        replace(ALIGNED, probe_offset=tuple(size * one)) for size, one in zip((side, side, along), unit, strict=True)
    ]
    return misalignments
