"""From readings of a few slices to the device's pattern, what is new in it, and whether the model may be believed."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from colure.analysis.innovation.causes import Causes, Drawn
from colure.analysis.innovation.fit import Covariance, Faulty, Normal, faulty_elements, normal_of, product, stacked
from colure.analysis.innovation.held_out import averaged, missed, rows_of_slices
from colure.analysis.innovation.known_unit import KnownUnit
from colure.analysis.innovation.range_model import RangeModel
from colure.geometry.conventions import ComplexArray, FloatArray
from colure.values import holds_arrays

#: Rooms and reference errors that make the covariance; the same number is drawn anew to judge by.
ROOMS = 300
#: What drawn rooms miss of another room: this share of an echo's amplitude is taken for noise of its own.
MISSED = 0.2
#: Elements are chosen by the same readings that they are fitted to, and draws are solved with that choice: what the choice may miss
#: makes errors of the waves this many times as large (set so that intervals hold, 22 campaigns of `benchmarks/verify.py`; decision 0030).
CHOSEN = 1.5
#: The misfit that is a unit's own: it differs as a whole by more than good ones do.
OF_ELEMENTS = "elements that count as good differ from the reference"
#: What a fit is held against, each by draws: all readings; their mean over the band; what is new in elements that are named good;
#: each slice predicted by the others, all readings and their mean over the band (the worst slice).
MISFITS = (
    "readings differ from the fit",
    "readings averaged over the band differ from the fit",
    OF_ELEMENTS,
    "a slice differs from what the others predict",
    "a slice averaged over the band differs from what the others predict",
)
#: Rounds in which the common factor of a frequency settles.
ROUNDS = 3


@dataclass(frozen=True)
@holds_arrays
class Found:
    """What a set of slices tells.

    factor
        (frequency,) complex factor between the reference's level and the readings.
    deviation
        (element,) complex relative deviation from the reference.
    sigma
        (element,) standard deviation (complex modulus) of that.
    faulty
        Elements that are no good ones, and how sure that is.
    coefficients
        (frequency, 2, J) the device's waves.
    errors
        (draw, frequency, 2, J) what such waves miss, as drawn.
    misfit, usual
        Misfits of the readings (kind,), and (draw, kind) of readings that the model explains, in the order of `MISFITS`.
    """

    factor: ComplexArray
    deviation: ComplexArray
    sigma: FloatArray
    faulty: Faulty
    coefficients: ComplexArray
    errors: ComplexArray
    misfit: FloatArray
    usual: FloatArray


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


class Estimator:
    """Everything that does not depend on what was read: made once for a set of points."""

    def __init__(self, causes: Causes, noise: FloatArray, *, seed: int) -> None:
        self._causes, self.noise = causes, noise
        self._slices = rows_of_slices(causes.slices, len(noise))
        model, known = causes.model, causes.known
        self.known: KnownUnit = known
        self.model: RangeModel = model
        random = np.random.default_rng((seed, 1))
        stray, _ = causes.rooms(random, ROOMS)
        # A cause of any phase: in phase and in quadrature, each half of its power.
        rows = np.concatenate([stray / np.sqrt(ROOMS), causes.reference_shapes()]) / np.sqrt(2.0)
        shaken = np.concatenate([rows, 1j * rows])
        count = causes.nominal.size
        everything = np.concatenate([shaken, causes.tolerances]).reshape(-1, count)
        echo = causes.chamber.echo_amplitude * causes.peak
        floor = np.sqrt(0.5) * np.hypot(noise, MISSED * echo)
        sigma = np.repeat(floor, causes.nominal.shape[1])
        self.covariance = Covariance(np.concatenate([sigma, sigma]), stacked(everything))
        self.new = known.new
        rows = model.read(model.measured(self.new)).reshape(len(self.new), count)
        free = np.zeros((len(noise), *causes.nominal.shape), complex)
        for f in range(len(noise)):
            free[f, f] = causes.nominal[f]
        self.normal: Normal = normal_of(
            self.covariance, free.reshape(len(noise), count), rows, len(known.elements), known.usual
        )
        self._shape = causes.nominal.shape
        both = _paired(np.concatenate([free.reshape(len(noise), count), rows]))
        self._columns = stacked(both)
        self._mean_rows = both.reshape(-1, *self._shape).mean(axis=1)
        self.drawn: Drawn = causes.draws(np.random.default_rng((seed, 2)), ROOMS, noise)
        self._white_drawn = self.covariance.whiten(stacked(self.drawn.readings.reshape(ROOMS, count)))
        self._told_drawn = self.covariance.solve(stacked(self.drawn.readings.reshape(ROOMS, count)))
        self._told_columns = self.covariance.solve(self._columns)
        self._random = np.random.default_rng((seed, 3))

    def of(self, value: ComplexArray) -> Found:
        """Return what readings (frequency, point) tell."""
        nominal, known = self._causes.nominal, self.known
        factor = np.sum(nominal.conj() * value, axis=1) / np.sum(np.abs(nominal) ** 2, axis=1)
        free = self.normal.free
        for _ in range(ROUNDS):
            off = (value / factor[:, None] - nominal).reshape(1, -1)
            white = self.covariance.whiten(stacked(off))
            right = product(self.normal.columns, white)[:, 0]
            faulty = faulty_elements(self.normal, right, known.likeness.faulty)
            solver = self.normal.solver(faulty.elements)
            solution = (solver @ right).reshape(-1, 2) @ np.array([1.0, 1j])
            factor = factor * (1.0 + solution[:free])
        # The factor took its change in: what is left of it is nothing.
        deviation = solution[free:]
        one = SolvedReadings(
            total=product(white, white)[0] - right @ solver @ right,
            unknowns=solution[None],
            left=off.reshape(self._shape).mean(axis=0)[None] - (solver @ right) @ self._mean_rows,
            told=self.covariance.solve(stacked(off)) - (solver @ right)[None] @ self._told_columns,
        )
        coefficients = factor[:, None, None] * (
            known.expansion.coefficients
            + np.tensordot(deviation, self.new, axes=1)
            + self._causes.lacking(self._complex(one.told))[0]
        )
        many, wrong, level = self._drawn_errors(solver, faulty.elements)
        misfits = self._misfits(one, many, solver, faulty.elements)
        size = CHOSEN * wider(misfits[0], misfits[1:]) * factor
        errors = size[:, None, None] * wrong + level[..., None, None] * coefficients
        spread = np.sqrt(np.sum(np.diag(solver).reshape(-1, 2), axis=1))[free:]
        return Found(
            factor,
            known.by_element(deviation),
            spread[: len(known.elements)],
            faulty,
            coefficients,
            errors,
            misfits[0],
            misfits[1:],
        )

    def _complex(self, rows: FloatArray) -> ComplexArray:
        """Return stacked rows (n, 2 row) as readings (n, frequency, point)."""
        real, imaginary = np.split(rows, 2, axis=-1)
        return np.asarray((real + 1j * imaginary).reshape(len(rows), *self._shape))

    def _misfits(
        self, one: SolvedReadings, many: SolvedReadings, solver: FloatArray, faults: tuple[int, ...]
    ) -> FloatArray:
        """Return the misfits (1 + draw, kind) of readings and of draws, in the order of `MISFITS`."""
        good = np.setdiff1d(np.arange(self.normal.free, len(self.normal.usual) + self.normal.free),
                            self.normal.free + np.array(faults, int))  # fmt: skip
        told = np.concatenate([one.told, many.told])
        groups = missed(told, self._told_columns, solver, self.covariance, self._slices)
        apart = np.stack([total / total[1:].mean() for _, total in groups], axis=-1)
        bands = [averaged(error, len(self.noise)) for error, _ in groups]
        band = np.stack([_strength(error) for error in bands], axis=-1)
        return np.stack(
            [
                np.concatenate([one.total, many.total]),
                _strength(np.concatenate([one.left, many.left])),
                _strength(np.concatenate([one.unknowns, many.unknowns])[:, good]),
                apart.max(axis=-1),
                band.max(axis=-1),
            ],
            axis=-1,
        )

    def _drawn_errors(
        self, solver: FloatArray, faults: tuple[int, ...]
    ) -> tuple[SolvedReadings, ComplexArray, FloatArray]:
        """Return drawn readings, solved as the true ones are, errors of their waves (draw, frequency, 2, J), and of the level.

        The waves' are relative to the common factor of a frequency, the level's (draw, frequency) to the pattern.
        """
        free = self.normal.free
        size = np.sqrt(self.normal.prior(faults)).reshape(-1, 2)[free:]
        own = self._random.normal(size=(ROOMS, *size.shape)) * size
        deviation = own @ np.array([1.0, 1j])
        parts = np.concatenate([np.zeros((ROOMS, free, 2)), own], axis=1).reshape(ROOMS, -1)
        # Readings of the drawn device are the fit's own columns: their right sides come from its matrix.
        right = product(self._white_drawn, self.normal.columns) + parts @ self.normal.matrix
        solutions = right @ solver
        total = (
            product_of_each(self._white_drawn)
            + 2.0 * np.sum(parts * product(self._white_drawn, self.normal.columns), axis=1)
            + np.sum((parts @ self.normal.matrix) * parts, axis=1)
        )
        pair = solutions.reshape(ROOMS, -1, 2) @ np.array([1.0, 1j])
        many = SolvedReadings(
            total=total - np.sum(solutions * right, axis=1),
            unknowns=pair,
            left=self.drawn.readings.mean(axis=1) + (parts - solutions) @ self._mean_rows,
            told=self._told_drawn + (parts - solutions) @ self._told_columns,
        )
        wrong = np.tensordot(pair[:, free:] - deviation, self.new, axes=1)
        wrong = wrong + self._causes.lacking(self._complex(many.told)) - self.drawn.waves
        return many, wrong, pair[:, :free].real + self.drawn.level


def wider(misfit: FloatArray, usual: FloatArray) -> float:
    """Return how many times as large as drawn errors are to count: readings (kind,) that differ more than usual ones (draw, kind)
    were made by larger causes than the draws (R. T. Birge, Phys. Rev. 40 (1932) 207, the ratio of external to internal errors;
    from memory). Never fewer times than once.
    """
    return float(np.sqrt(max(1.0, *(misfit / np.median(usual, axis=0)))))


def product_of_each(one: tuple[FloatArray, FloatArray]) -> FloatArray:
    """Return the product (n,) of every whitened vector with itself."""
    return np.asarray(np.sum(one[0] ** 2, axis=1) - np.sum(one[1] ** 2, axis=1))


def _paired(columns: ComplexArray) -> ComplexArray:
    """Return complex columns (n, row) as those of real unknowns (2 n, row): real part, imaginary part, one after the other."""
    return np.asarray(np.stack([columns, 1j * columns], axis=1).reshape(2 * len(columns), -1))


def _strength(left: ComplexArray) -> FloatArray:
    """Return the mean square of what is left (1 + draw, part), each part against its usual size in the draws."""
    usual = np.sqrt(np.mean(np.abs(left[1:]) ** 2, axis=0))
    return np.asarray(np.mean(np.abs(left / usual) ** 2, axis=-1))
