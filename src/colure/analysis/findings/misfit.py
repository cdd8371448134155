"""What of a scan fits neither the device's waves nor a misalignment, and what a range as declared would leave there.

A device fills few waves. Noise, drift, echoes and adjustments that are off move data out of them. What they move there is
drawn as it was declared and held against what the record shows. Nothing is corrected here.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from dataclasses import field as dataclass_field
from functools import cached_property
from typing import TYPE_CHECKING

import numpy as np
from scipy.special import ndtr

from colure.analysis.steps.alignment_fit import SMALL_SAMPLE, against_declared, mixed
from colure.analysis.steps.cable import bend_shapes
from colure.analysis.steps.misaligned import ForwardModel
from colure.analysis.uncertainty.alignment_causes import JOINTS, angle_errors, azimuth_of
from colure.analysis.uncertainty.causes import drifted
from colure.analysis.uncertainty.combination import DIVISORS
from colure.analysis.uncertainty.probe_causes import PROBE_CAUSES
from colure.analysis.uncertainty.receiver_causes import RECEIVER_CAUSES
from colure.analysis.uncertainty.rooms import stray_in_a_room
from colure.analysis.uncertainty.trial import Trial, perturbations
from colure.geometry.conventions import ComplexArray, FloatArray, power_db
from colure.geometry.kinematics import ALIGNED, Geometry, Misalignment
from colure.values import holds_arrays
from colure.waves.transform import synthesis

if TYPE_CHECKING:
    from colure.analysis.pipeline.recipe import Processed
    from colure.analysis.uncertainty.inputs import Inputs
    from colure.analysis.uncertainty.trial import Cause
    from colure.model.chamber import Chamber

#: Rooms, and draws of noise and of drift, that tell how much of each is visible.
ROOMS, NOISES, DRAWS = 60, 20, 4000
#: Seed of the draws: the same record always gets the same answer.
SEED = 17
#: Step of the differences by which an adjustment's trace is found, in standard deviations.
STEP = 0.1
#: Receivers keep their noise figure within this much, one standard deviation (common practice, no source).
NOISE_FIGURE_DB = 1.0
#: What a noise power may be against the one that repeated sweeps show, dB.
NOISE_RANGE_DB = np.linspace(-12.0, 12.0, 193)


@dataclass(frozen=True)
@holds_arrays
class Shares:
    """Powers outside the device's waves, of one reading, relative to the peak.

    measured
        What the record shows.
    rooms (room,)
        What rooms of the declared level leave.
    noise (draw,), other (draw,)
        What noise as the reference's sweeps show it leaves; what the ties' drift and the declared signal chain leave.
    spread_db, weight
        How far the true noise power may lie beside that, and how likely each is.
    """

    measured: float
    rooms: FloatArray
    noise: FloatArray
    other: FloatArray
    spread_db: FloatArray
    weight: FloatArray

    def chance(self, power: float | None = None, *, echoes_db: float = 0.0, noise_db: float = 0.0) -> float:
        """Return how many ranges as declared leave as much as was found, or more.

        echoes_db, noise_db
            The same for echoes and noise that are stronger by so much.
        """
        beside = self._noisy * 10.0 ** (noise_db / 10.0) + self.other[:, None]
        logs = 0.5 * np.log(self.rooms)
        over = (self.measured if power is None else power) - beside
        with np.errstate(divide="ignore"):
            high = 0.5 * np.log(np.maximum(over, 0.0)) - logs.mean() - echoes_db * np.log(10.0) / 20.0
        # The power of a room is nearly log-normal; a hundredth of a neper is left for what so few rooms tell.
        beyond = ndtr(-high / (SMALL_SAMPLE * max(float(logs.std()), 0.01)))
        return float(self.weight @ beyond.mean(axis=0))

    def levels_db(self, declared_db: float, quantiles: tuple[float, ...]) -> list[float]:
        """Return quantiles of the stray signals' level that the record shows, dB below the peak; -inf where noise may be all of it."""
        random = np.random.default_rng(SEED)
        draw, spread = (
            random.integers(len(self.noise), size=DRAWS),
            random.choice(self.weight.size, DRAWS, p=self.weight),
        )
        beside = self._noisy[draw, spread] + self.other[draw]
        with np.errstate(divide="ignore"):
            ratio = power_db(np.maximum(self.measured - beside, 0.0) / random.choice(self.rooms, DRAWS))
        return [float(declared_db + v) for v in np.quantile(ratio, quantiles, method="closest_observation")]

    @cached_property
    def _noisy(self) -> FloatArray:
        return np.asarray(self.noise[:, None] * 10.0 ** (self.spread_db / 10.0))


def noise_known(measured_db: float, promised_db: float | None, freedom: int) -> tuple[FloatArray, FloatArray]:
    """Return (dB beside the measured noise power, how likely the true one is there).

    Repeated sweeps tell a power to chi-square over their degrees of freedom (JCGM 100:2008, G.3). The promise of the noise figure
    counts half: it may be wrong altogether.
    """
    ratio = 10.0 ** (-NOISE_RANGE_DB / 10.0)
    likely = 0.5 * freedom * (np.log(ratio) - ratio)
    known = np.full(NOISE_RANGE_DB.size, 1.0 / np.ptp(NOISE_RANGE_DB))
    if promised_db is not None:
        off = (NOISE_RANGE_DB + measured_db - promised_db) / NOISE_FIGURE_DB
        known = 0.5 * known + 0.5 * np.exp(-0.5 * off**2) / (NOISE_FIGURE_DB * np.sqrt(2.0 * np.pi))
    weight = np.exp(likely - likely.max()) * known
    return NOISE_RANGE_DB, np.asarray(weight / weight.sum())


@dataclass(frozen=True)
class ScanMisfit:
    """A scan at one frequency, and what of fields lies outside the device's waves.

    errors
        Adjustments off by one standard deviation as declared, which were not taken out of the data.
    """

    inputs: Inputs
    errors: tuple[Misalignment, ...] = ()

    def rows(self, fields: ComplexArray) -> FloatArray:
        """Return real rows (draw, row) of fields (draw, 1, 2, theta, phi), whose squares add up to the power outside."""
        return self.weighted(self.outside(fields))

    def outside(self, fields: ComplexArray) -> ComplexArray:
        """Return what of fields (draw, 1, 2, theta, phi) does not fit into the device's waves."""
        return np.asarray(fields - self.fitted(fields))

    def fitted(self, fields: ComplexArray) -> ComplexArray:
        """Return what of fields (draw, 1, 2, theta, phi) are the device's waves."""
        sphere, step = self.inputs.sphere, self.inputs.step
        if step.rings is None and not step.direct:
            return step.refitted(fields)
        return synthesis(step.measured(fields), sphere.theta, sphere.phi.size, phi_start=float(sphere.phi[0]))

    def weighted(self, fields: ComplexArray) -> FloatArray:
        """Return real rows (draw, row) of fields as they are, whose squares add up to their power."""
        sphere = self.inputs.sphere
        # By solid angle, half of both components together: the power of one reading.
        area = np.maximum(np.sin(sphere.theta), 0.0)
        weight = np.sqrt(0.5 * area / (area.sum() * sphere.phi.size))[:, None]
        flat = (fields * (weight / self._peak)).reshape(len(fields), -1)
        return np.concatenate([flat.real, flat.imag], axis=-1)

    def unexplained(self, fields: ComplexArray) -> FloatArray:
        """Return rows (draw, row) as `rows` does, less what adjustments explain."""
        rows = self.rows(fields)
        return rows if not self.errors else np.asarray(rows - (rows @ self._basis) @ self._basis.T)

    def power(self, fields: ComplexArray) -> FloatArray:
        """Return the power (draw,) outside that no adjustment explains."""
        rows = self.rows(fields)
        total = np.sum(rows**2, axis=1)
        return np.asarray(total if not self.errors else total - np.sum((rows @ self._basis) ** 2, axis=1))

    @cached_property
    def traces(self) -> FloatArray:
        """What each adjustment moves out, (row, parameter)."""
        inputs = self.inputs
        model = ForwardModel(inputs.sphere, inputs.chamber.range_length_m, inputs.chamber.positioner.geometry)
        waves = inputs.step.measured(inputs.sphere.field)
        pairs = [[model.read(waves, times(one, side * STEP)) for side in (1.0, -1.0)] for one in self.errors]
        return self.rows(np.stack([(high - low) / (2.0 * STEP) for high, low in pairs])).T

    @cached_property
    def _basis(self) -> FloatArray:
        u, size, _ = np.linalg.svd(self.traces, full_matrices=False)
        return np.asarray(u[:, size > 1e-6 * max(float(size.max()), 1e-300)])

    @cached_property
    def _peak(self) -> float:
        return float(np.sqrt(np.max(np.sum(np.abs(self.inputs.sphere.field) ** 2, axis=1))))


def misfit_of(processed: Processed) -> ScanMisfit | None:
    """Return the scan at the middle frequency; None where a scan says nothing of this kind."""
    sphere, step, chamber = processed.sphere, processed.step, processed.chamber
    if chamber is None or step.direct or sphere.one_polarization:
        return None
    if chamber.positioner.geometry is Geometry.ROLL_OVER_AZIMUTH and sphere.slices_used < 1:
        return None
    inputs = processed.budget.only(processed.frequency_hz.size // 2)
    return ScanMisfit(inputs, () if processed.alignment is not None else standard_errors(inputs.chamber))


def times(error: Misalignment, factor: float) -> Misalignment:
    """Return an error that is so many times as large."""
    return mixed((error,), np.array([factor]))


def standard_errors(chamber: Chamber) -> tuple[Misalignment, ...]:
    """Return every declared adjustment off by one standard deviation; those of no size are left out."""
    tolerance = chamber.alignment
    across = 0.5e-3 * tolerance.axes_offset_mm / 3**0.5
    misalignments = [times(one, 0.5) for _, _, one in angle_errors(chamber.positioner.geometry, tolerance)]
    misalignments += [
        replace(ALIGNED, carried_axis_offset=one)
        for one in ((across, 0.0, 0.0), (0.0, across, 0.0), (0.0, 0.0, across))
    ]
    misalignments.append(replace(ALIGNED, probe_roll_zero=float(0.5 * np.deg2rad(tolerance.probe_roll_zero_deg))))
    return tuple(one for one in misalignments if one != ALIGNED)


def shares_of(processed: Processed, misfit: ScanMisfit) -> Shares:
    """Return the powers outside the device's waves: found, and what a range as declared leaves."""
    inputs = misfit.inputs
    random = np.random.default_rng(SEED)
    trial = Trial(inputs, inputs.step.expansion(inputs.sphere.field), np.zeros((1, 0)), [])
    draw = stray_in_a_room(trial, inputs.chamber.echo_amplitude, random)
    noise = np.stack([inputs.sphere.white_noise(random) * inputs.noise_sigma[0] for _ in range(NOISES)])
    # Sweeps of all frequencies tell the noise better than those of one.
    known, middle = processed.transfer.noise[:, 0] ** 2, processed.frequency_hz.size // 2
    alike = known if processed.noise_by_frequency is None else known / processed.noise_by_frequency
    pooled = float(alike.mean() / max(alike[middle], 1e-300))
    measured_db = float(power_db(known.mean(), least=1e-30))
    return Shares(
        float(misfit.power(inputs.sphere.field[None])[0]),
        np.array([misfit.power(draw()[0][None])[0] for _ in range(ROOMS)]),
        pooled * misfit.power(noise),
        misfit.power(np.stack([_drifting(inputs, random) for _ in range(NOISES)])) + _chain_power(misfit, random),
        *noise_known(measured_db, processed.noise_promised_db, freedom_of(processed)),
    )


def freedom_of(processed: Processed) -> int:
    """Return the degrees of freedom of the noise as the reference's repeated sweeps tell it."""
    sweeps = 1 if processed.chamber is None else processed.chamber.reference.sweeps
    return 2 * max(1, sweeps - 1) * processed.frequency_hz.size


def chance_of_adjustments(misfit: ScanMisfit, echoes_db: float) -> float | None:
    """Return how many ranges as declared would move as much out of the waves by their adjustments; None if none is looked at.

    echoes_db
        How much stronger echoes are than declared, as far as the record shows it: they look like a misalignment as well.
    """
    if not misfit.errors:
        return None
    traces = misfit.traces
    seen = traces.T @ traces
    moved = sum(
        (group.T @ group for group in (misfit.rows(one) @ traces for one in _drawn(misfit.inputs, echoes_db))),
        np.zeros((len(misfit.errors), len(misfit.errors))),
    )
    outside = misfit.rows(misfit.inputs.sphere.field[None])[0]
    _, sigma, chance = against_declared(seen, moved, traces.T @ outside)
    # A parameter whose uncertainty the data alone know no better than the declaration says nothing.
    return chance if float(np.min(sigma)) < 1.0 else None


def _drawn(inputs: Inputs, echoes_db: float) -> Iterator[ComplexArray]:
    """Yield fields (draw, 1, 2, theta, phi) whose squares add up to each cause's variance: noise, drift, rooms, cable, chain."""
    random = np.random.default_rng(SEED + 1)
    each = np.sqrt(SMALL_SAMPLE / NOISES)
    yield each * np.stack([inputs.sphere.white_noise(random) * inputs.noise_sigma[0] for _ in range(NOISES)])
    yield each * np.stack([_drifting(inputs, random) for _ in range(NOISES)])
    trial = Trial(inputs, inputs.step.expansion(inputs.sphere.field), np.zeros((1, 0)), [])
    draw = stray_in_a_room(trial, 10.0 ** ((inputs.chamber.echo_level_db + echoes_db) / 20.0), random)
    yield each * np.stack([draw()[0] for _ in range(NOISES)])
    yield _bends(inputs)
    for cause, fields in _chain(inputs):
        yield fields * (len(fields) ** -0.5 if cause.drawn else 1.0 / DIVISORS[cause.distribution])


def as_declared(misfit: ScanMisfit, draws: int, random: np.random.Generator) -> FloatArray:
    """Return rows (draw, row) of what ranges as declared leave outside that no adjustment explains; an even number of draws."""
    inputs = misfit.inputs
    trial = Trial(inputs, inputs.step.expansion(inputs.sphere.field), np.zeros((1, 0)), [])
    draw = stray_in_a_room(trial, inputs.chamber.echo_amplitude, random)
    rooms = np.stack([draw()[0] for _ in range(draws // 2)])
    fields = np.concatenate([rooms, 1j * rooms])
    for index in range(len(fields)):
        fields[index] += (
            inputs.sphere.white_noise(random) * inputs.noise_sigma[0] + drifted(inputs, random) - inputs.sphere.field
        )
    bends = _bends(inputs)
    fields += np.tensordot(random.normal(size=(len(fields), len(bends))), bends, axes=1)
    for cause, added in _chain(inputs):
        if cause.drawn:
            fields += added[random.integers(len(added), size=len(fields))]
        else:
            size = random.normal(size=(len(fields), len(added))) / DIVISORS[cause.distribution]
            fields += np.tensordot(size, added, axes=1)
    return misfit.unexplained(fields)


def _bends(inputs: Inputs) -> ComplexArray:
    """Return what one standard deviation of each shape of the cable's bend adds, (shape, 1, 2, theta, phi)."""
    a = azimuth_of(inputs.sphere, inputs.chamber.positioner.geometry)
    bend = 0.5 * np.deg2rad(inputs.chamber.cable_flex_deg) / np.sqrt(3.0)
    shapes = bend_shapes(a, joints=bool(inputs.chamber.positioner.joints))
    return np.asarray(1j * bend * shapes[:, None, None] * inputs.sphere.field)


def _drifting(inputs: Inputs, random: np.random.Generator) -> ComplexArray:
    """Return what the ties leave of the drift (1, 2, theta, phi): one error for each slice, two of whose columns are opposite."""
    field = inputs.sphere.field
    half = -(-field.shape[-1] // 2)
    raw = random.normal(size=(2, 2, half)) / np.sqrt(2.0)
    error = np.tile(inputs.drift_residual * (raw[0] + 1j * raw[1]), (1, 2))[:, : field.shape[-1]]
    return np.asarray(field * error[None, :, None, :])


@dataclass(frozen=True)
class _Recorder(Trial):
    """Keeps what causes add to the measured field, instead of what that does to the waves."""

    kept: list[ComplexArray] = dataclass_field(default_factory=list)

    def changed_before_alignment(self, field: ComplexArray) -> ComplexArray:
        """Keep the change of several fields."""
        self.kept.extend(field - self.inputs.sphere.field)
        return np.zeros((len(field), 1, 2, 0), complex)


def _chain(inputs: Inputs) -> Iterator[tuple[Cause, ComplexArray]]:
    """Yield every declared cause of receiver, probe, positions and joints with the fields (n, 1, 2, theta, phi) that it adds."""
    trial = _Recorder(inputs, inputs.step.expansion(inputs.sphere.field), np.zeros((1, 0)), [])
    for one in perturbations(trial, (*RECEIVER_CAUSES, *PROBE_CAUSES, JOINTS)):
        if trial.kept:
            yield one.cause, np.stack(trial.kept)
            trial.kept.clear()


def _chain_power(misfit: ScanMisfit, random: np.random.Generator) -> FloatArray:
    """Return draws (draw,) of the power outside by what is declared of receiver, probe, positions and joints."""
    total = np.zeros(NOISES)
    for cause, fields in _chain(misfit.inputs):
        power = misfit.power(fields)
        if cause.drawn:
            total += random.choice(power, NOISES)
        else:
            total += random.normal(size=(NOISES, power.size)) ** 2 @ power / DIVISORS[cause.distribution] ** 2
    return total
