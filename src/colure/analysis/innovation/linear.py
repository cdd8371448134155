"""The linear fit about one device: what its readings may hold, its unknowns, and draws that are solved as readings are.

Misaligned readings are a product: what a shift does to them depends on the device, whose faults are unknown. The fit is made
about the reference first, and again about the device that came out (Gauss-Newton, any text on least squares).
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from colure.analysis.innovation.causes import Causes, Drawn
from colure.analysis.innovation.fit import Covariance, Faulty, Normal, faulty_elements, normal_of, product, stacked
from colure.analysis.innovation.held_out import averaged, missed, rows_of_slices
from colure.geometry.conventions import ComplexArray, FloatArray
from colure.values import holds_arrays

#: Rooms and reference errors that make the covariance; the same number is drawn anew to judge by.
ROOMS = 300
#: What drawn rooms miss of another room: this share of an echo's amplitude is taken for noise of its own.
MISSED = 0.2
#: Rounds in which the common factor of a frequency settles.
ROUNDS = 3


@dataclass(frozen=True, kw_only=True)
@holds_arrays
class SolvedReadings:
    """Readings (n) that were solved: what a fit makes of them.

    total
        (n,) misfit of all readings by their covariance.
    unknowns
        (n, unknown) complex estimates.
    left
        (n, point) what is left of the readings' mean over the band, in which a device shows and a room does not.
    told
        (n, row) K^-1 of the readings, K their covariance with the unknowns in it.
    """

    total: FloatArray
    unknowns: ComplexArray
    left: ComplexArray
    told: FloatArray


@dataclass(frozen=True)
@holds_arrays
class Solution:
    """One solved set of readings.

    factor
        (frequency,) complex factor between the reference's level and the readings.
    deviation
        (element + shape + element,) complex relative deviation from the reference, as `KnownUnit.new` has it.
    """

    factor: ComplexArray
    deviation: ComplexArray
    faulty: Faulty
    solver: FloatArray
    readings: SolvedReadings


class FitBasis:
    """What does not depend on the device: places, rooms, errors of the reference, noise, the unknowns' columns, draws of all of it."""

    def __init__(self, causes: Causes, noise: FloatArray, tolerances: int, *, seed: int) -> None:
        self.causes, self.noise = causes, noise
        self.slices = rows_of_slices(causes.slices, len(noise))
        known, nominal = causes.known, causes.nominal
        self.shape, count = nominal.shape, nominal.size
        stray, _ = causes.rooms(np.random.default_rng((seed, 1)), ROOMS)
        # A cause of any phase: in phase and in quadrature, each half of its power.
        rows = np.concatenate([stray / np.sqrt(ROOMS), causes.reference_shapes()]) / np.sqrt(2.0)
        self.shaken = np.concatenate([rows, 1j * rows]).reshape(-1, count)
        floor = np.sqrt(0.5) * np.hypot(noise, MISSED * causes.chamber.echo_amplitude * causes.peak)
        sigma = np.repeat(floor, self.shape[1])
        self.sigma = np.concatenate([sigma, sigma])
        free = np.zeros((len(noise), *self.shape), complex)
        for f in range(len(noise)):
            free[f, f] = nominal[f]
        self.free = free.reshape(len(noise), count)
        new = causes.model.read(causes.model.measured(known.new))
        self.new = new.reshape(len(new), count)
        both = _paired(np.concatenate([self.free, self.new]))
        self.columns = stacked(both)
        self.mean_rows = both.reshape(-1, *self.shape).mean(axis=1)
        self.drawn: Drawn = causes.draws(np.random.default_rng((seed, 2)), ROOMS, noise, tolerances)


class LinearFit:
    """The fit about a device whose misaligned readings change by `tolerances` (cause, frequency, point)."""

    def __init__(self, basis: FitBasis, tolerances: ComplexArray) -> None:
        self._basis, self._tolerances = basis, tolerances
        known = basis.causes.known
        everything = np.concatenate([basis.shaken, tolerances.reshape(len(tolerances), -1)])
        self.covariance = Covariance(basis.sigma, stacked(everything))
        self.normal: Normal = normal_of(
            self.covariance, basis.free, basis.new, len(known.elements), known.usual, known.share_error
        )
        self._told_columns = self.covariance.solve(basis.columns)

    def solved(self, value: ComplexArray, factor: ComplexArray) -> Solution:
        """Solve readings (frequency, point), beginning with a factor (frequency,) between them and the reference's."""
        basis, free = self._basis, self.normal.free
        for _ in range(ROUNDS):
            off = (value / factor[:, None] - basis.causes.nominal).reshape(1, -1)
            white = self.covariance.whiten(stacked(off))
            right = product(self.normal.columns, white)[:, 0]
            faulty = faulty_elements(self.normal, right, basis.causes.known.likeness.faulty)
            solver = self.normal.solver(faulty.elements)
            solution = (solver @ right).reshape(-1, 2) @ np.array([1.0, 1j])
            factor = factor * (1.0 + solution[:free])
        # The factor took its change in: what is left of it is nothing.
        one = SolvedReadings(
            total=product(white, white)[0] - right @ solver @ right,
            unknowns=solution[None],
            left=off.reshape(basis.shape).mean(axis=0)[None] - (solver @ right) @ basis.mean_rows,
            told=self.covariance.solve(stacked(off)) - (solver @ right)[None] @ self._told_columns,
        )
        return Solution(factor, solution[free:], faulty, solver, one)

    def waves(self, solution: Solution) -> ComplexArray:
        """Return the device's waves (frequency, 2, J) at the reference's level."""
        known = self._basis.causes.known
        new = np.tensordot(solution.deviation, known.new, axes=1)
        return np.asarray(known.expansion.coefficients + new + self._lacking(solution.readings.told)[0])

    def _lacking(self, told: FloatArray) -> ComplexArray:
        """Return what the reference's waves lack by stacked rows (n, 2 row)."""
        real, imaginary = np.split(told, 2, axis=-1)
        return self._basis.causes.lacking((real + 1j * imaginary).reshape(len(told), *self._basis.shape))

    def misfits(self, solution: Solution, many: SolvedReadings) -> FloatArray:
        """Return the misfits (1 + draw, kind) of readings and of draws, in the order of `MISFITS`."""
        basis, one = self._basis, solution.readings
        normal = self.normal
        even = np.arange(normal.free, normal.free + len(normal.usual) - normal.share_error.size)
        good = np.setdiff1d(even, normal.unknowns_of(solution.faulty.elements))
        told = np.concatenate([one.told, many.told])
        groups = missed(told, self._told_columns, solution.solver, self.covariance, basis.slices)
        apart = np.stack([total / total[1:].mean() for _, total in groups], axis=-1)
        bands = [averaged(error, len(basis.noise)) for error, _ in groups]
        band = np.stack([strength(error) for error in bands], axis=-1)
        return np.stack(
            [
                np.concatenate([one.total, many.total]),
                strength(np.concatenate([one.left, many.left])),
                strength(np.concatenate([one.unknowns, many.unknowns])[:, good]),
                apart.max(axis=-1),
                band.max(axis=-1),
            ],
            axis=-1,
        )

    def drawn_errors(
        self, solution: Solution, random: np.random.Generator
    ) -> tuple[SolvedReadings, ComplexArray, FloatArray]:
        """Return drawn readings, solved as the true ones are, errors of their waves (draw, frequency, 2, J), and of the level.

        The waves' are relative to the common factor of a frequency, the level's (draw, frequency) to the pattern.
        """
        free, basis, solver = self.normal.free, self._basis, solution.solver
        size = np.sqrt(self.normal.prior(solution.faulty.elements)).reshape(-1, 2)[free:]
        own = random.normal(size=(ROOMS, *size.shape)) * size
        deviation = own @ np.array([1.0, 1j])
        parts = np.concatenate([np.zeros((ROOMS, free, 2)), own], axis=1).reshape(ROOMS, -1)
        readings = basis.drawn.steady + np.tensordot(basis.drawn.sizes, self._tolerances, axes=1)
        rows = stacked(readings.reshape(ROOMS, -1))
        white = self.covariance.whiten(rows)
        across = product(white, self.normal.columns)
        # Readings of the drawn device are the fit's own columns: their right sides come from its matrix.
        right = across + parts @ self.normal.matrix
        solutions = right @ solver
        total = (
            product_of_each(white)
            + 2.0 * np.sum(parts * across, axis=1)
            + np.sum((parts @ self.normal.matrix) * parts, axis=1)
        )
        pair = solutions.reshape(ROOMS, -1, 2) @ np.array([1.0, 1j])
        many = SolvedReadings(
            total=total - np.sum(solutions * right, axis=1),
            unknowns=pair,
            left=readings.mean(axis=1) + (parts - solutions) @ basis.mean_rows,
            told=self.covariance.solve(rows) + (parts - solutions) @ self._told_columns,
        )
        wrong = np.tensordot(pair[:, free:] - deviation, basis.causes.known.new, axes=1)
        wrong = wrong + self._lacking(many.told) - basis.drawn.waves
        return many, wrong, pair[:, :free].real + basis.drawn.level


def product_of_each(one: tuple[FloatArray, FloatArray]) -> FloatArray:
    """Return the product (n,) of every whitened vector with itself."""
    return np.asarray(np.sum(one[0] ** 2, axis=1) - np.sum(one[1] ** 2, axis=1))


def _paired(columns: ComplexArray) -> ComplexArray:
    """Return complex columns (n, row) as those of real unknowns (2 n, row): real part, imaginary part, one after the other."""
    return np.asarray(np.stack([columns, 1j * columns], axis=1).reshape(2 * len(columns), -1))


def strength(left: ComplexArray) -> FloatArray:
    """Return the mean square of what is left (1 + draw, part), each part against its usual size in the draws."""
    usual = np.sqrt(np.mean(np.abs(left[1:]) ** 2, axis=0))
    return np.asarray(np.mean(np.abs(left / usual) ** 2, axis=-1))
