"""Misalignment from the data: the errors that make a double-sided scan agree with itself.

A device's field has no more waves than its sphere holds; a scan on a tilted, shifted or wrongly
zeroed positioner does not fit into them, because directions left and right of the pole were
seen with opposite errors. Whatever of the misalignment moves the data out of that space is
found by least squares; whatever stays inside (the device's own pose, the roll of the probe) is
reported as not seen, with the prior it came with.

The field about a nominal place is taken from the data's own waves: a shift of direction, a turn
of the polarization and a longer way are exact in geometry; the change of the radial functions
over millimetres is neglected (below 1e-3 for a millimetre at 1 m).
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace

import numpy as np

from colure.analysis.assembly import MeasuredSphere, finer_columns
from colure.analysis.nearfield import FarFieldStep
from colure.geometry.conventions import ComplexArray, FloatArray, IntArray, wavenumber
from colure.geometry.directions import phi_hat, theta_hat, theta_phi
from colure.geometry.kinematics import ALIGNED, Geometry, Misalignment, device_to_lab, probe_to_lab
from colure.model.chamber import AlignmentTolerance
from colure.waves.modes import resized
from colure.waves.scattered import synthesis_at
from colure.waves.transform import synthesis

ROUNDS, CORRECTION_ROUNDS = 4, 8
#: How many of a record's frequencies an estimate looks at.
FREQUENCIES = 3
#: Change of the data, relative, below which the correction has settled.
SETTLED = 1e-5
#: Draws of noise behind the stated uncertainties, and what so few draws may miss (variance ratio).
NOISE_DRAWS, SMALL_SAMPLE = 30, 1.2
#: A column that is mostly noise says nothing; it keeps this much of it at most.
MOST_DILUTION = 0.8
#: Slices that are usually measured between two ties.
TIED_SLICES = 5
#: The transform of the forward model need be no better than this.
FORWARD_ACCURACY = 1e-9
#: The forward model itself, relative: data that fit better than this say no more than this.
MODEL_ACCURACY = 1e-4
#: A parameter whose uncertainty the data shrink below this share of the prior was seen.
SEEN = 0.5


@dataclass(frozen=True)
class Parameter:
    """One error: name, unit shown, how many of them are one SI unit, and what to do about it."""

    name: str
    unit: str
    per_si: float
    advice: str


DEG, MM = float(np.rad2deg(1.0)), 1e3
PARAMETERS = (
    Parameter("theta_zero", "deg", DEG, "turn the azimuth axis' zero by this much towards negative readouts"),
    Parameter("roll_axis_tilt", "deg", DEG, "tilt the roll axis back about the horizontal x axis by this much"),
    Parameter("axes_offset_x", "mm", MM, "move the roll axis sideways (x) by this much towards negative x"),
    Parameter("axes_offset_y", "mm", MM, "lower the roll axis (y) by this much"),
    Parameter("probe_roll_zero", "deg", DEG, "turn the probe's roll zero back by this much"),
)
NAMES = tuple(p.name for p in PARAMETERS)
#: Wide priors (one standard deviation, SI) where nothing better is known: one degree, five millimetres.
WIDE = dict(zip(NAMES, (1 / DEG, 1 / DEG, 5 / MM, 5 / MM, 1 / DEG), strict=True))


@dataclass(frozen=True)
class Estimate:
    """What was found, SI units: values, expanded uncertainties (k = 2), and what was seen.

    residual, residual_before
        What of the data does not fit into the device's waves, relative, after and before correction.
    """

    values: dict[str, float]
    expanded: dict[str, float]
    seen: dict[str, bool]
    residual: float
    residual_before: float

    def sentences(self) -> list[str]:
        """Say in plain words what to turn and which way, largest effect in units of its uncertainty first."""
        table = {p.name: p for p in PARAMETERS}
        order = sorted(self.values, key=lambda name: -abs(self.values[name]) / self.expanded[name])
        out = []
        for name in order:
            p = table[name]
            value, expanded = p.per_si * self.values[name], p.per_si * self.expanded[name]
            if not self.seen[name]:
                out.append(
                    f"{name}: not seen by this scan, which leaves it open to \u00b1{expanded:.2g} {p.unit}; the declared tolerance holds"
                )
            else:
                advice = p.advice if abs(value) > expanded else "nothing to do"
                out.append(f"{name}: {value:+.3f} \u00b1 {expanded:.3f} {p.unit}: {advice}")
        return out


def readings_of(tolerance: AlignmentTolerance) -> dict[str, float]:
    """Return what laser, level or indicator read, SI, by parameter; those not read are left out."""
    table = {p.name: p.per_si for p in PARAMETERS}
    return {name: one.value / table[name] for name, one in tolerance.readings if one is not None}


def declared_prior(tolerance: AlignmentTolerance) -> dict[str, float]:
    """Return what a set-up protocol or a reading says (k = 2) as one standard deviation per parameter, SI."""
    table = {p.name: p.per_si for p in PARAMETERS}
    read = {name: 0.5 * one.expanded / table[name] for name, one in tolerance.readings if one is not None}
    return {
        "theta_zero": 0.5 * tolerance.theta_zero_deg / DEG,
        "roll_axis_tilt": 0.5 * tolerance.roll_axis_tilt_deg / DEG,
        "axes_offset_x": 0.5 * tolerance.axes_offset_mm / MM,
        "axes_offset_y": 0.5 * tolerance.axes_offset_mm / MM,
        "probe_roll_zero": 0.5 * tolerance.probe_roll_zero_deg / DEG,
        **read,
    }


def left_over(tolerance: AlignmentTolerance, found: Estimate) -> AlignmentTolerance:
    """Return the tolerances that hold after the correction: what the data say no better keeps its own."""
    expanded = {p.name: p.per_si * found.expanded[p.name] for p in PARAMETERS}
    return tolerance.model_copy(update={
        "theta_zero_deg": min(tolerance.theta_zero_deg, expanded["theta_zero"]),
        "roll_axis_tilt_deg": min(tolerance.roll_axis_tilt_deg, expanded["roll_axis_tilt"]),
        "axes_offset_mm": min(tolerance.axes_offset_mm, expanded["axes_offset_x"]),
        "probe_roll_zero_deg": min(tolerance.probe_roll_zero_deg, expanded["probe_roll_zero"]),
    })  # fmt: skip


def misalignment_from(values: dict[str, float]) -> Misalignment:
    """Return the rigid errors that parameter values (SI) stand for."""
    return replace(
        ALIGNED,
        azimuth_zero=values["theta_zero"],
        carried_axis_tilt=(values["roll_axis_tilt"], 0.0, 0.0),
        carried_axis_offset=(values["axes_offset_x"], values["axes_offset_y"], 0.0),
        probe_roll_zero=values["probe_roll_zero"],
    )


class ForwardModel:
    """What a probe pair would read on the measured slices of a misaligned positioner, from the waves of the data."""

    def __init__(self, sphere: MeasuredSphere, distance_m: float) -> None:
        if sphere.slices_used < 1:
            raise ValueError("alignment: needs great-circle slices of a roll-over-azimuth positioner")
        self._columns = 2 * sphere.slices_used
        self._distance, self._k, self._total = distance_m, wavenumber(sphere.frequency_hz), sphere.phi.size
        phi = np.arange(self._columns) * 2.0 * np.pi / self._columns
        sign = np.where(np.arange(self._columns) < sphere.slices_used, 1.0, -1.0)
        theta, column = np.meshgrid(sphere.theta, np.arange(self._columns), indexing="ij")
        self._azimuth = theta * sign[column]
        self._roll = phi[column] - np.where(sign[column] < 0.0, np.pi, 0.0)
        self._sign = sign[column]

    def read(self, measured: ComplexArray, error: Misalignment, *, of: IntArray | None = None) -> ComplexArray:
        """Return fields (frequency, 2, theta, phi) along the nominal polar vectors.

        measured
            Coefficients (frequency, 2, N(N+2)) of the field on the nominal sphere.
        of
            Which of the sphere's frequencies these are; all of them by default.
        """
        k = self._k if of is None else self._k[of]
        motion = device_to_lab(
            Geometry.ROLL_OVER_AZIMUTH, first=self._azimuth, second=self._roll, misalignment=error
        ).inverse()
        probe = probe_to_lab(distance=self._distance, roll=np.array([0.0, 0.5 * np.pi]), misalignment=error)
        place = np.einsum("...ij,j->...i", motion.rotation, probe.translation[0]) + motion.translation
        radius = np.linalg.norm(place, axis=-1)
        t, p = theta_phi(place / radius[..., None])
        e = synthesis_at(measured, t, p, accuracy=FORWARD_ACCURACY).reshape(len(measured), 2, *t.shape)
        vectors = np.einsum("...ij,cj->c...i", motion.rotation, probe.rotation[:, :, 0])
        along = np.stack([np.sum(vectors * theta_hat(theta=t, phi=p), axis=-1),
                          np.sum(vectors * phi_hat(theta=t, phi=p), axis=-1)], axis=1)  # fmt: skip
        way = np.exp(-1j * k[:, None, None] * (radius - self._distance)) * self._distance / radius
        values = np.einsum("ca...,fa...->fc...", along, e) * self._sign * way[:, None]
        return finer_columns(np.asarray(values), self._total)


def estimate(
    sphere: MeasuredSphere,
    step: FarFieldStep,
    distance_m: float,
    *,
    prior: dict[str, float] | None = None,
    read: dict[str, float] | None = None,
    frequencies: int = FREQUENCIES,
    slice_error: float = 0.0,
) -> Estimate:
    """Find the misalignment of a whole-sphere scan; `aligned_field` takes it out of the data.

    Parameters
    ----------
    prior
        One standard deviation per parameter, SI; `WIDE` where left out.
    read
        Where each parameter is taken to be before the data are asked, SI; zero where left out.
    frequencies
        How many of the record's frequencies are looked at, spread over the band.
    slice_error
        Relative gain error that every slice may have of its own: what the drift correction leaves.

    Raises
    ------
    ValueError
        If the scan is not a whole sphere in great-circle slices.
    """
    if not sphere.whole:
        raise ValueError("alignment: needs a whole sphere; part of one does not close on itself (deg)")
    widths = np.array([{**WIDE, **(prior or {})}[name] for name in NAMES])
    chosen = looked_at(sphere.frequency_hz.size, frequencies)
    some = replace(sphere, frequency_hz=sphere.frequency_hz[chosen], field=sphere.field[chosen])
    model = ForwardModel(some, distance_m)
    expected = np.array([(read or {}).get(name, 0.0) for name in NAMES])
    found, covariance, before, after = _solve(some, step, model, widths, expected, slice_error)
    values = dict(zip(NAMES, found, strict=True))
    sigma = np.sqrt(np.diag(covariance))
    seen = dict(zip(NAMES, sigma < SEEN * widths, strict=True))
    return Estimate(values, dict(zip(NAMES, 2.0 * sigma, strict=True)), seen, after, before)


def aligned_field(sphere: MeasuredSphere, step: FarFieldStep, distance_m: float, found: Estimate) -> ComplexArray:
    """Return the field (frequency, 2, theta, phi) as an aligned range would have measured it.

    Every frequency is corrected for itself: some of them come out as all of them do.
    """
    corrected, _ = _corrected(sphere, step, ForwardModel(sphere, distance_m), found.values)
    return corrected


def looked_at(count: int, frequencies: int = FREQUENCIES) -> IntArray:
    """Return which of `count` frequencies an estimate looks at, spread over the band."""
    return np.unique(np.linspace(0, count - 1, frequencies).round().astype(int))


def _solve(
    sphere: MeasuredSphere,
    step: FarFieldStep,
    model: ForwardModel,
    widths: FloatArray,
    expected: FloatArray,
    slice_error: float,
) -> tuple[FloatArray, FloatArray, float, float]:
    """Gauss-Newton with a prior: (values, covariance, residual before, residual after)."""
    weight = np.sqrt(np.sin(sphere.theta) + 1e-6)[:, None]
    total = float(np.linalg.norm(sphere.field * weight))

    def outside(data: ComplexArray) -> FloatArray:
        kept = resized(step.measured(data), step.keep_order)
        rest = ((data - synthesis(kept, sphere.theta, sphere.phi.size)) * weight).ravel()
        return np.concatenate([rest.real, rest.imag])

    found = expected.copy()
    before = float(np.linalg.norm(outside(sphere.field)) / total)
    for _ in range(ROUNDS):
        data, waves = _corrected(sphere, step, model, dict(zip(NAMES, found, strict=True)))
        left = outside(data)
        jacobian = _jacobian(model, outside, waves, found, widths)
        spread = float(np.linalg.norm(left - jacobian @ np.linalg.lstsq(jacobian, left, rcond=1e-10)[0]) ** 2)
        spread = max(spread, (MODEL_ACCURACY * total) ** 2)
        variance = spread / _freedom(sphere, step)
        covariance = np.linalg.inv(jacobian.T @ jacobian / variance + np.diag(widths**-2.0))
        change = covariance @ (jacobian.T @ left / variance - (found - expected) / widths**2)
        found = np.asarray(found + change, np.float64)
    data, _ = _corrected(sphere, step, model, dict(zip(NAMES, found, strict=True)))
    gain = covariance @ jacobian.T / variance
    known = _noise_covariance(sphere, outside, gain, spread, slice_error)
    share = _dilution(sphere, step, model, outside, jacobian, spread, found, widths)
    wider = np.sqrt(1.0 + 2.0 * share)
    # Only what the data said can have been pulled; what the prior left open is as the prior says.
    resolved = gain @ jacobian
    pulled = share / (1.0 - share) * np.diag(resolved) * (found - expected)
    open_ = np.eye(len(widths)) - resolved
    known = known * np.outer(wider, wider) + np.diag(pulled**2) + open_ @ np.diag(widths**2) @ open_.T
    return found, known, before, float(np.linalg.norm(outside(data)) / total)


def _jacobian(
    model: ForwardModel,
    outside: Callable[[ComplexArray], FloatArray],
    waves: ComplexArray,
    at: FloatArray,
    widths: FloatArray,
) -> FloatArray:
    """Return what each parameter moves out of the device's waves, (row, parameter), by central differences."""
    columns = []
    for index in range(len(NAMES)):
        small = 0.1 * widths[index]
        high, low = (model.read(waves, misalignment_from(_with(at, index, side * small))) for side in (1.0, -1.0))
        columns.append(outside((high - low) / (2.0 * small)))
    return np.stack(columns, axis=-1)


def _dilution(
    sphere: MeasuredSphere,
    step: FarFieldStep,
    model: ForwardModel,
    outside: Callable[[ComplexArray], FloatArray],
    jacobian: FloatArray,
    spread: float,
    at: FloatArray,
    widths: FloatArray,
) -> FloatArray:
    """Return the share of each column's size that is noise of the waves themselves, (parameter,).

    The waves that the forward model turns carry noise too: what it adds to a column looks like
    sensitivity that is not there, and would pull the value towards zero (regression dilution).
    """
    random = np.random.default_rng(2)
    shape = (sphere.frequency_hz.size, 2, sphere.theta.size, 2 * sphere.slices_used)
    noise = finer_columns(random.normal(size=shape) + 1j * random.normal(size=shape), sphere.phi.size)
    left = outside(noise)
    noise = noise * np.sqrt(spread / float(left @ left))
    own = _jacobian(model, outside, resized(step.measured(noise), step.keep_order), at, widths)
    share = np.sum(own**2, axis=0) / np.maximum(np.sum(jacobian**2, axis=0), 1e-300)
    return np.asarray(np.minimum(share, MOST_DILUTION))


def _noise_covariance(
    sphere: MeasuredSphere,
    outside: Callable[[ComplexArray], FloatArray],
    gain: FloatArray,
    spread: float,
    slice_error: float,
) -> FloatArray:
    """Return the covariance that noise of the samples and of the slices leaves in the estimate.

    What is left over is taken for noise of independent samples; how much of such noise is left
    over, and what it does to the values, is drawn.
    """
    random = np.random.default_rng(1)
    shape = (sphere.frequency_hz.size, 2, sphere.theta.size, 2 * sphere.slices_used)
    total = sphere.phi.size
    sizes, moved, swayed = [], [], []
    for _ in range(NOISE_DRAWS):
        rest = outside(finer_columns(random.normal(size=shape) + 1j * random.normal(size=shape), total))
        sizes.append(float(rest @ rest))
        moved.append(gain @ rest)
        # A slice holds both sides of the pole and is measured once for each component; neighbours between
        # the same two ties also share an error.
        sway = np.tile(slice_error * (_per_slice(random, sphere.slices_used, 1)
                                      + _per_slice(random, sphere.slices_used, TIED_SLICES)), (1, 2))[None, :, None, :]  # fmt: skip
        swayed.append(gain @ outside(sphere.field * finer_columns(sway, total)))
    drawn, slices = np.stack(moved), np.stack(swayed)
    by_noise = spread / float(np.mean(sizes)) * (drawn.T @ drawn) + slices.T @ slices
    return np.asarray(by_noise * (SMALL_SAMPLE / NOISE_DRAWS))


def _per_slice(random: np.random.Generator, slices: int, together: int) -> ComplexArray:
    """Return unit complex errors (component, slice), the same for every `together` neighbours."""
    blocks = -(-slices // together)
    drawn = random.normal(size=(2, 2, blocks)) / np.sqrt(2.0)
    return np.asarray(np.repeat(drawn[0] + 1j * drawn[1], together, axis=1)[:, :slices])


def _freedom(sphere: MeasuredSphere, step: FarFieldStep) -> float:
    """Return how many real numbers of the data are not taken up by waves."""
    frequencies = float(sphere.frequency_hz.size)
    samples = 4.0 * frequencies * sphere.theta.size * 2.0 * sphere.slices_used
    waves = 4.0 * frequencies * step.keep_order * (step.keep_order + 2)
    return float(max(0.05 * samples, samples - waves))


def _with(values: FloatArray, index: int, change: float) -> dict[str, float]:
    out = values.copy()
    out[index] += change
    return dict(zip(NAMES, out, strict=True))


def _corrected(
    sphere: MeasuredSphere, step: FarFieldStep, model: ForwardModel, values: dict[str, float]
) -> tuple[ComplexArray, ComplexArray]:
    """Return (data as on an aligned range, their waves): what the error adds is taken off, waves found anew."""
    error = misalignment_from(values)
    data = sphere.field.copy()
    waves = resized(step.measured(data), step.keep_order)
    if not any(values.values()):
        return data, waves
    size = np.linalg.norm(data.reshape(len(data), -1), axis=1)
    moving = np.arange(len(data))
    for _ in range(CORRECTION_ROUNDS):
        extra = model.read(waves[moving], error, of=moving) - model.read(waves[moving], ALIGNED, of=moving)
        better = sphere.field[moving] - extra
        change = np.linalg.norm((better - data[moving]).reshape(len(moving), -1), axis=1)
        data[moving] = better
        waves[moving] = resized(step.measured(better), step.keep_order)
        moving = moving[change >= SETTLED * size[moving]]
        if not moving.size:
            break
    return data, waves
