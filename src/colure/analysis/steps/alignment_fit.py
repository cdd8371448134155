"""The fit behind the alignment from the data: what a scan says of a misalignment beside noise, slices and echoes.

Whatever moves data out of the device's waves is condensed to one number for each parameter, its product with the parameter's
own trace. What noise, slice errors and rooms do to those numbers is drawn, so that the estimate weighs the data by what they
are worth: echoes that look like a misalignment leave it with what was declared. Posterior mean and covariance are those of
jointly normal variables (any textbook on linear estimation).
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass, replace
from typing import Any, Generic

import numpy as np
from scipy.special import chdtrc

from colure.analysis.steps.assemble import MeasuredSphere, finer_columns
from colure.analysis.steps.far_field import FarFieldStep
from colure.analysis.steps.misaligned import E, Reads, corrected
from colure.geometry.conventions import ComplexArray, FloatArray
from colure.geometry.kinematics import ALIGNED, Misalignment
from colure.values import holds_arrays
from colure.waves.modes import resized
from colure.waves.transform import synthesis

ROUNDS_BEFORE, ROUNDS_AFTER = 2, 2
#: Draws of noise behind the stated uncertainties, and what so few draws, of rooms too, may miss (variance ratio).
NOISE_DRAWS, SMALL_SAMPLE = 30, 1.2
#: A column that is mostly noise says nothing; it keeps this much of it at most.
MOST_DILUTION = 0.8
#: Slices that are usually measured between two ties.
TIED_SLICES = 5
#: The forward model itself, relative: data that fit better than this say no more than this.
MODEL_ACCURACY = 1e-4
#: A direction of the parameters of which the data know less than this share does not count against what is declared.
LEAST_KNOWN = 0.2
#: What the data tell of a parameter alone counts up to this many declared standard deviations.
MOST_UNSURE = 2.0
#: Data that are so many standard deviations off what was declared make the declaration give way.
GIVES_WAY = 3.0


@dataclass(frozen=True, kw_only=True)
@holds_arrays
class Disturbances:
    """What a record holds besides the device and the misalignment.

    noise (frequency,)
        Standard deviation (complex modulus) of one component of one sample; None: all that is left over is noise.
    slice_error
        Relative gain error that every slice may have of its own.
    rooms
        Stray fields (draw, frequency, 2, theta, phi) of drawn rooms, at any level.
    echo_level
        Their declared field, rms of one reading over directions, relative to the peak; the record may show more, or less.
    bends
        Fields (shape, frequency, 2, theta, phi) that a bending cable adds, each one standard deviation of its shape.
    parts
        So many draws one after the other are the walls of one room, whose phases nobody knows: the level is that of all of them.
    """

    noise: FloatArray | None = None
    slice_error: float = 0.0
    rooms: Iterable[ComplexArray] = ()
    echo_level: float = 0.0
    bends: ComplexArray | None = None
    parts: int = 1


@dataclass(frozen=True)
@holds_arrays
class Outside:
    """What of a field does not fit into the device's waves, as real numbers weighted by solid angle."""

    step: FarFieldStep
    theta: FloatArray
    columns: int

    def __call__(self, data: ComplexArray) -> FloatArray:
        """Return (..., row) for fields (..., frequency, 2, theta, phi)."""
        kept = resized(self.step.measured(data), self.step.keep_order)
        weight = np.sqrt(np.sin(self.theta) + 1e-6)[:, None]
        rest = (data - synthesis(kept, self.theta, self.columns, phi_start=self.step.phi_start)) * weight
        flat = rest.reshape(*data.shape[:-4], -1)
        return np.concatenate([flat.real, flat.imag], axis=-1)


@dataclass(frozen=True, kw_only=True)
@holds_arrays
class AlignmentFit:
    """What the data say, in units of the declared standard deviations about the expected values.

    parameters, covariance
        Posterior mean (parameter,) and covariance (parameter, parameter).
    quiet
        The part of the covariance that is not the rooms' and the cable's.
    alone, alone_sigma
        What the data say without the declaration of that parameter; infinite sigma where they say nothing.
    wider
        Factors (parameter,) by which the declaration gave way to the data.
    conflict
        Probability that data as far off what was declared, or farther, come of a range as declared.
    known
        (parameter, parameter): how the estimate follows the parameters themselves; the unit matrix where the data tell all.
    weights
        (parameter, row): how the estimate answers what is added outside the device's waves.
    before, after
        Relative size of what does not fit into the device's waves.
    """

    parameters: FloatArray
    covariance: FloatArray
    quiet: FloatArray
    alone: FloatArray
    alone_sigma: FloatArray
    wider: FloatArray
    conflict: float
    known: FloatArray
    weights: FloatArray
    before: float
    after: float


class AlignmentMisfit(Generic[E]):
    """One scan with the errors that it may hold; parameters count in units of their declared standard deviations."""

    def __init__(
        self,
        sphere: MeasuredSphere,
        step: FarFieldStep,
        model: Reads[E],
        error: Callable[[FloatArray], E],
        count: int,
        *,
        draws: int = NOISE_DRAWS,
        floor: FloatArray | None = None,
    ) -> None:
        """Take what turns `count` parameters into an error of the range, and how many draws of noise are made.

        floor
            (frequency,) size below which a wave's coefficient is not the device's: traces do without it. None: traces take all.
        """
        self._floor = floor
        self._sphere, self._step, self._model, self.error = sphere, step, model, error
        self._count, self._draws, self._aligned = count, draws, error(np.zeros(count))
        self.outside = Outside(step, sphere.theta, sphere.phi.size)
        weight = np.sqrt(np.sin(sphere.theta) + 1e-6)[:, None]
        self._total = float(np.linalg.norm(sphere.field * weight))

    def solve(self, expected: FloatArray, disturbances: Disturbances, start: FloatArray | None = None) -> AlignmentFit:
        """Return the posterior by Gauss-Newton; expected and start (parameter,) in the same units, start at the expected by default."""
        parameters, moved = (expected if start is None else start).copy(), np.zeros((len(expected), len(expected)))
        scatter: tuple[FloatArray, FloatArray] | None = None
        prior = np.ones(len(expected))
        left = self.outside(self._sphere.field)
        before = float(np.linalg.norm(left) / self._total)
        jacobian: FloatArray | None = None
        for turn in range(ROUNDS_BEFORE + ROUNDS_AFTER):
            # The traces hardly change on the way: they are taken at the start and near the end.
            left, jacobian, spread = self._at(parameters, None if turn in (0, ROUNDS_BEFORE) else jacobian)
            seen = jacobian.T @ jacobian
            if scatter is None:
                moved = seen * spread / self._freedom()
            if turn == ROUNDS_BEFORE:
                scatter = self._scatter(jacobian, spread, disturbances)
                moved = scatter[0] + scatter[1]
            gain = _gain(seen, moved, prior)
            reading = jacobian.T @ left + seen @ (parameters - expected)
            if turn == ROUNDS_BEFORE:
                alone, alone_sigma, conflict = against_declared(seen, moved, reading)
                off = (alone_sigma < MOST_UNSURE) & (np.abs(alone) > GIVES_WAY * np.sqrt(1.0 + alone_sigma**2))
                prior = np.where(off, np.maximum(1.0, alone**2), 1.0)
                gain = _gain(seen, moved, prior)
            parameters = np.asarray(expected + gain @ reading)
        assert scatter is not None  # the rounds reach it
        left, jacobian, spread = self._at(parameters, jacobian)
        after = float(np.linalg.norm(left) / self._total)
        share = self._dilution(jacobian, spread, parameters)
        open_ = np.eye(len(parameters)) - gain @ seen
        quiet = open_ @ np.diag(prior) @ open_.T + gain @ scatter[0] @ gain.T
        # Only what the data said can have been pulled; what the prior left open is as the prior says.
        pulled = share / (1.0 - share) * np.diag(gain @ seen) * (parameters - expected)
        wider = np.sqrt(1.0 + 2.0 * share)
        rooms = gain @ scatter[1] @ gain.T
        more = np.outer(wider, wider) - 1.0
        quiet = quiet + more * (gain @ scatter[0] @ gain.T) + np.diag(pulled**2)
        return AlignmentFit(
            parameters=parameters,
            covariance=quiet + (1.0 + more) * rooms,
            quiet=quiet,
            alone=alone,
            alone_sigma=alone_sigma,
            wider=np.sqrt(prior),
            conflict=conflict,
            known=gain @ seen,
            weights=gain @ jacobian.T,
            before=before,
            after=after,
        )

    def _at(self, parameters: FloatArray, jacobian: FloatArray | None) -> tuple[FloatArray, FloatArray, float]:
        """Return (what remains outside, what each parameter moves out, square of what no parameter explains).

        jacobian
            What each parameter moves out, if that is known well enough.
        """
        data, waves = corrected(self._sphere, self._step, self._model, self.error(parameters), self._aligned)
        left = self.outside(data)
        if jacobian is None:
            self._clear = clear_waves(waves, self._floor)
            jacobian = self._jacobian(waves, parameters)
        rest = left - jacobian @ np.linalg.lstsq(jacobian, left, rcond=1e-10)[0]
        return left, jacobian, max(float(rest @ rest), (MODEL_ACCURACY * self._total) ** 2)

    def _jacobian(self, waves: ComplexArray, at: FloatArray) -> FloatArray:
        """Return what each parameter moves out of the device's waves, (row, parameter), by central differences."""
        waves = waves * self._clear
        columns = []
        for index in range(len(at)):
            small = np.zeros(len(at))
            small[index] = 0.1
            high, low = (self._model.read(waves, self.error(at + side * small)) for side in (1.0, -1.0))
            moved = (high - low) / 0.2
            if self._floor is not None:
                # The waves answer a motion as seen by a range that is already off: what they take up is no trace.
                own = replace(self._sphere, field=moved)
                moved = corrected(own, self._step, self._model, self.error(at), self._aligned)[0]
            columns.append(self.outside(moved))
        return np.stack(columns, axis=-1)

    def _scatter(
        self, jacobian: FloatArray, spread: float, disturbances: Disturbances
    ) -> tuple[FloatArray, FloatArray]:
        """Return what noise with slice errors, and what rooms and cable do to the products with the traces: two covariances.

        What no parameter explains is noise, as strong as it was measured, slice errors, and echoes: every drawn room is
        made so strong that it leaves as much unexplained as echoes have part in it.
        """
        told = _Told(jacobian)
        random = np.random.default_rng(1)
        drawn = [[told.of(one[None]) for one in self._drawn(random, disturbances)] for _ in range(self._draws)]
        (by_noise, noise), (by_slices, slices) = (
            tuple(np.concatenate(x) for x in zip(*kind, strict=True)) for kind in zip(*drawn, strict=True)
        )
        echoes, declared = self._rooms(told, disturbances)
        if declared is None or disturbances.noise is None:
            noise = noise * np.sqrt(max(spread - float(by_slices.mean()), 0.1 * spread) / float(by_noise.mean()))
            echoes = np.zeros_like(echoes)
        else:
            # As strong as was declared, stronger if noise and slices leave more to explain, never more than there is.
            shown = spread - float(by_noise.mean() + by_slices.mean())
            echoes = echoes * min(max(shown, declared, (MODEL_ACCURACY * self._total) ** 2), spread)
        quiet = _missed(self._draws) / self._draws * (noise.T @ noise + slices.T @ slices)
        if disturbances.bends is not None:
            bent = told.of(self.outside(disturbances.bends))[1]
            echoes = echoes + bent.T @ bent
        return np.asarray(quiet), np.asarray(echoes)

    def _rooms(self, told: _Told, disturbances: Disturbances) -> tuple[FloatArray, float | None]:
        """Return the products' covariance for rooms that leave 1 unexplained, and what rooms as declared leave; None without rooms."""
        echoes: FloatArray = np.zeros((self._count, self._count))
        declared: list[FloatArray] = []
        count = 0
        for stray in disturbances.rooms:
            rest = self.outside(stray)
            half = rest.shape[1] // 2
            left = _of_rooms(told.of(rest)[0], disturbances.parts)
            declared.append(left * self._as_declared(stray, disturbances.echo_level, disturbances.parts))
            for turned in (rest, np.concatenate([-rest[:, half:], rest[:, :half]], axis=1)):
                size, one = told.of(turned)
                size = _of_rooms(size, disturbances.parts)
                echoes = echoes + (one / size[:, None]).T @ one
                count += len(one) // disturbances.parts
        return SMALL_SAMPLE / max(count, 1) * echoes, float(np.mean(declared)) if declared else None

    def _as_declared(self, stray: ComplexArray, level: float, parts: int) -> FloatArray:
        """Return the power factors (draw,) that bring stray fields (draw, frequency, 2, theta, phi) to a level below the peak."""
        power = self._sphere.reading_power(stray)
        peak = np.max(np.sum(np.abs(self._sphere.field) ** 2, axis=1), axis=(1, 2))
        return np.asarray(level**2 * np.mean(peak) / np.maximum(_of_rooms(np.mean(power, axis=1), parts), 1e-300))

    def _drawn(self, random: np.random.Generator, disturbances: Disturbances) -> tuple[FloatArray, FloatArray]:
        """Return (noise, slice errors) outside the device's waves, one draw of each."""
        sphere = self._sphere
        sigma = np.ones(sphere.frequency_hz.size) if disturbances.noise is None else disturbances.noise
        noise = self._white(random) * sigma[:, None, None, None]
        # A slice holds both sides of the pole and is measured once for each component; neighbours between
        # the same two ties also share an error.
        if sphere.slices_used == 0:
            # Slices of azimuth/elevation positioners are rings.
            each, several = (_per_slice(random, sphere.theta.size, n) for n in (1, TIED_SLICES))
            sway = disturbances.slice_error * (each + several)[None, :, :, None]
            return self.outside(noise), self.outside(sphere.field * sway)
        each, several = (_per_slice(random, sphere.slices_used, n) for n in (1, TIED_SLICES))
        sway = np.tile(disturbances.slice_error * (each + several), (1, 2))[None, :, None, :]
        total = sphere.phi.size
        return self.outside(noise), self.outside(sphere.field * finer_columns(sway, total))

    def _white(self, random: np.random.Generator) -> ComplexArray:
        """Return noise of standard deviation 1 in every sample.

        With a floor as the assembly makes it, with the mean of all slices at the poles; without one every column has a sample of its own
        there, as the misalignment of two axes has been counted with.
        """
        sphere = self._sphere
        if self._floor is not None:
            return sphere.white_noise(random)
        shape = (sphere.frequency_hz.size, 2, sphere.theta.size, 2 * sphere.slices_used)
        noise = (random.normal(size=shape) + 1j * random.normal(size=shape)) / np.sqrt(2.0)
        return finer_columns(noise, sphere.phi.size)

    def _dilution(self, jacobian: FloatArray, spread: float, at: FloatArray) -> FloatArray:
        """Return the share of each column's size that is noise of the waves themselves, (parameter,).

        The waves that the forward model turns carry noise too: what it adds to a column looks like
        sensitivity that is not there, and would pull the value towards zero (regression dilution).
        """
        random = np.random.default_rng(2)
        noise = self._white(random)
        left = self.outside(noise)
        noise = noise * np.sqrt(spread / float(left @ left))
        own = self._jacobian(resized(self._step.measured(noise), self._step.keep_order), at)
        share = np.sum(own**2, axis=0) / np.maximum(np.sum(jacobian**2, axis=0), 1e-300)
        return np.asarray(np.minimum(share, MOST_DILUTION))

    def _freedom(self) -> float:
        """Return how many real numbers of the data are not taken up by waves."""
        sphere, keep = self._sphere, self._step.keep_order
        columns = 2.0 * sphere.slices_used if sphere.slices_used else sphere.phi.size
        samples = 4.0 * sphere.frequency_hz.size * sphere.theta.size * columns
        return float(max(0.05 * samples, samples - 4.0 * sphere.frequency_hz.size * keep * (keep + 2)))


def mixed(errors: tuple[Misalignment, ...], units: FloatArray) -> Misalignment:
    """Return the misalignment that is so many times each of some errors."""
    total: dict[str, Any] = {}
    for name in ALIGNED.__dict__:
        x = sum(u * np.asarray(getattr(one, name), float) for one, u in zip(errors, units, strict=True))
        total[name] = float(x) if np.ndim(x) == 0 else tuple(float(y) for y in x)
    return replace(ALIGNED, **total)


def _gain(seen: FloatArray, moved: FloatArray, prior: FloatArray) -> FloatArray:
    """Return what turns readings into parameters: those that noise covers stay where they were expected."""
    both = seen @ np.diag(prior) @ seen + moved
    tiny = 1e-12 * np.trace(both) / len(both)
    return np.asarray(np.linalg.solve(both + tiny * np.eye(len(both)), seen @ np.diag(prior)).T)


def against_declared(seen: FloatArray, moved: FloatArray, reading: FloatArray) -> tuple[FloatArray, FloatArray, float]:
    """Hold the data against what was declared: (values by the data alone, their sigma, probability of such data)."""
    gain = _gain(seen, moved, np.ones(len(reading)))
    known, estimate = gain @ seen, gain @ reading
    left = np.clip(1.0 - np.diag(known), 1e-12, 1.0)
    with np.errstate(divide="ignore"):
        variance = np.where(left < 1.0 - 1e-6, left / (1.0 - left), np.inf)
    alone = np.where(np.isfinite(variance), estimate / (1.0 - left + 1e-12), 0.0)
    size, axes = np.linalg.eigh(0.5 * (known + known.T))
    told = size > LEAST_KNOWN
    square = float(np.sum((axes.T @ estimate)[told] ** 2 / size[told]))
    return alone, np.sqrt(variance), float(chdtrc(int(told.sum()), square)) if told.any() else 1.0


class _Told:
    """What the parameters' traces, columns of (row, parameter), tell of errors outside the device's waves."""

    def __init__(self, jacobian: FloatArray) -> None:
        self._jacobian, self._basis = jacobian, np.linalg.qr(jacobian)[0]

    def of(self, rest: FloatArray) -> tuple[FloatArray, FloatArray]:
        """Return (squares (draw,) of what no parameter explains, products (draw, parameter) with the traces)."""
        left = np.sum(rest**2, axis=1) - np.sum((rest @ self._basis) ** 2, axis=1)
        return np.asarray(left), np.asarray(rest @ self._jacobian)


def clear_waves(waves: ComplexArray, floor: FloatArray | None) -> FloatArray:
    """Return 1 for coefficients (frequency, 2, J) that stand out of a floor (frequency,), 0 for others; 1 for all without a floor."""
    if floor is None:
        return np.ones(waves.shape)
    return np.asarray((np.abs(waves) > floor[:, None, None]).astype(float))


def _missed(draws: int) -> float:
    """Return what so few draws of noise may miss (variance ratio)."""
    return 1.0 + (SMALL_SAMPLE - 1.0) * NOISE_DRAWS / draws


def _of_rooms(power: FloatArray, parts: int) -> FloatArray:
    """Return the power (draw,) of the whole room that every draw is a part of."""
    return power if parts == 1 else np.repeat(power.reshape(-1, parts).sum(axis=1), parts)


def _per_slice(random: np.random.Generator, slices: int, together: int) -> ComplexArray:
    """Return unit complex errors (component, slice), the same for every `together` neighbours."""
    blocks = -(-slices // together)
    drawn = random.normal(size=(2, 2, blocks)) / np.sqrt(2.0)
    return np.asarray(np.repeat(drawn[0] + 1j * drawn[1], together, axis=1)[:, :slices])
