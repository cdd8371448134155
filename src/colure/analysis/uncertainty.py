"""The uncertainty budget: corrupt the data as each cause would, reprocess, see what moves.

Terms and their sources:

==================  ======================================================================
noise               Monte Carlo of the receiver noise measured in this record
drift residual      Monte Carlo of slice-to-slice gain errors, as large as the ties' residual
reference gain      declared for the reference antenna
range echoes        Monte Carlo of stray signals at the chamber's declared level
alignment           each declared tolerance applied to the data in turn
probe polarization  the declared probe purity applied in phase and in quadrature
cable flexing       the declared phase change with the azimuth axis, or what dedicated turns left
time gate           the same recipe with a gate a fifth narrower or wider
finite distance     one polarization only: what a transform would change if the other were nothing
==================  ======================================================================

Half widths are expanded (k = 2) and combined by root sum of squares (JCGM 100:2008).
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace

import numpy as np

from colure.analysis.assembly import MeasuredSphere, finer_columns
from colure.analysis.figures.definitions import (
    DEFINITIONS,
    NAMES,
    TWO_POLARIZATIONS_ONLY,
    WHOLE_SPHERE_ONLY,
    Definition,
)
from colure.analysis.figures.evaluate import evaluate
from colure.analysis.nearfield import FarFieldStep
from colure.geometry.conventions import ComplexArray, FloatArray, mode_count, wavenumber
from colure.geometry.directions import theta_phi, unit_vector
from colure.geometry.polarization import to_ludwig_1
from colure.geometry.rotations import about_axis
from colure.model.chamber import Chamber
from colure.model.figure import BudgetRow, Figure
from colure.waves.expansion import Expansion
from colure.waves.probe import first_order_response, ideal_response
from colure.waves.scattered import synthesis_at

NOISE_DRAWS = 10
STRAY_DRAWS = 24
DRIFT_DRAWS = 10
#: Allows for the scatter of a standard deviation estimated from few draws (95 % of chi).
SMALL_SAMPLE = 1.25


@dataclass(frozen=True)
class Inputs:
    """What the budget needs from the processing chain.

    noise_sigma (frequency,): standard deviation (complex modulus) of one component of one
    sample, in the units of the measured field. aligned: the chamber's tolerances are what the
    correction from the data left. other_gate (as the sphere's field): what another time gate makes of it.
    """

    sphere: MeasuredSphere
    step: FarFieldStep
    chamber: Chamber
    slant: float
    noise_sigma: FloatArray
    drift_residual: float
    probe: Expansion | None
    seed: int = 1
    aligned: bool = False
    other_gate: ComplexArray | None = None


def native_values(inputs: Inputs, expansion: Expansion) -> FloatArray:
    """Return the native figures of every frequency, shape (frequency, figure)."""
    region = float(np.deg2rad(inputs.sphere.region_deg))
    return np.stack([evaluate(c, slant=inputs.slant, region=region) for c in expansion.coefficients])


def figures_with_budget(inputs: Inputs) -> list[Figure]:
    """Return every figure at every frequency with its interval and its budget."""
    nominal = inputs.step.expansion(inputs.sphere.field)
    values = native_values(inputs, nominal)
    rows: dict[str, FloatArray] = {}
    basis: dict[str, str] = {}
    for term, spread, words in _terms(inputs, nominal, values):
        rows[term] = np.hypot(rows.get(term, np.zeros_like(values)), np.nan_to_num(spread))
        basis[term] = words
    out = []
    silent: tuple[str, ...] = () if inputs.sphere.whole else WHOLE_SPHERE_ONLY
    silent += TWO_POLARIZATIONS_ONLY if inputs.sphere.one_polarization else ()
    for f, frequency in enumerate(inputs.sphere.frequency_hz):
        for i, what in enumerate(DEFINITIONS):
            if what.name in silent:
                continue
            budget = tuple(BudgetRow(term, float(rows[term][f, i]), basis[term]) for term in rows)
            out.append(build_figure(what, float(values[f, i]), budget, float(frequency)))
    return out


def build_figure(what: Definition, native: float, budget: tuple[BudgetRow, ...], frequency_hz: float) -> Figure:
    """Combine a budget in the native variable and show value and interval as people read them."""
    total = float(np.sqrt(sum(row.expanded**2 for row in budget)))
    ends = sorted((what.display(native - total), what.display(native + total)))
    return Figure(
        name=what.name,
        label=what.label,
        value=what.display(native),
        unit=what.unit,
        frequency_hz=frequency_hz,
        lower=ends[0],
        upper=ends[1],
        definition=what.text,
        source=what.source,
        budget=tuple(BudgetRow(r.term, _shown_half_width(what, native, r.expanded), r.basis) for r in budget),
    )


def _shown_half_width(what: Definition, native: float, spread: float) -> float:
    """Return a contribution in the figure's own unit (mean of both sides where they differ)."""
    low, high = what.display(native - spread), what.display(native + spread)
    if np.isfinite(low) and np.isfinite(high):
        return abs(high - low) / 2.0
    return abs(what.display(native + spread) - what.display(native))


def _terms(inputs: Inputs, nominal: Expansion, values: FloatArray) -> Iterator[tuple[str, FloatArray, str]]:
    """Yield (term, expanded native half widths (frequency, figure), basis) for every cause."""
    random = np.random.default_rng(inputs.seed)
    chamber, tolerance = inputs.chamber, inputs.chamber.alignment
    yield "noise", _monte_carlo(inputs, values, NOISE_DRAWS, lambda: _noise(inputs, random)), "measured in this record"
    yield (
        "drift residual",
        _monte_carlo(inputs, values, DRIFT_DRAWS, lambda: _drift(inputs, random)),
        f"tie points predict each other within {100 * inputs.drift_residual:.2f} %",
    )
    reference = np.zeros_like(values)
    for name in ("gain_dbi", "efficiency_db"):
        reference[:, NAMES.index(name)] = chamber.reference.gain_uncertainty_db
    yield "reference gain", reference, f"declared \u00b1{chamber.reference.gain_uncertainty_db:g} dB (k = 2)"
    level = 10.0 ** (chamber.echo_level_db / 20.0)
    yield (
        "range echoes",
        _monte_carlo_modes(inputs, nominal, values, STRAY_DRAWS, level, random),
        f"declared stray level {chamber.echo_level_db:g} dB below the peak",
    )
    for spread in _alignment(inputs, nominal, values):
        yield (
            "alignment",
            spread,
            f"{'left after the correction' if inputs.aligned else 'declared'}: theta zero {tolerance.theta_zero_deg:.2g} deg, "
            f"roll axis {tolerance.roll_axis_tilt_deg:.2g} deg, axes offset {tolerance.axes_offset_mm:.2g} mm, "
            f"probe roll {tolerance.probe_roll_zero_deg:.2g} deg, distance {tolerance.distance_mm:g} mm, "
            f"device pose {tolerance.device_pose_deg:g} deg",
        )
    purity = 10.0 ** (chamber.probe.cross_polar_db / 20.0)
    both = [_changed(inputs, values, _leak(inputs.sphere.field, purity * phase)) for phase in (1.0, 1j)]
    yield (
        "probe polarization",
        np.maximum(*both),
        f"declared probe cross-polarization {chamber.probe.cross_polar_db:g} dB",
    )
    if inputs.sphere.one_polarization:
        yield (
            "finite distance",
            _distance(inputs, inputs.step.measured(inputs.sphere.field), values, 0.0),
            "what a transform of the measured component alone would change",
        )
    flex = np.deg2rad(chamber.cable_flex_deg)
    bent = inputs.sphere.field * np.exp(1j * flex * _swing(inputs.sphere))
    yield "cable flexing", _changed(inputs, values, bent), f"{chamber.cable_flex_deg:.2g} deg over a turn"
    if inputs.other_gate is not None:
        yield "time gate", _changed(inputs, values, inputs.other_gate), "change with a gate of another width"


def _monte_carlo(inputs: Inputs, values: FloatArray, draws: int, field: Callable[[], ComplexArray]) -> FloatArray:
    """Return 2 standard deviations of the figures over random data."""
    found = [native_values(inputs, inputs.step.expansion(field())) - values for _ in range(draws)]
    return np.asarray(2.0 * SMALL_SAMPLE * np.sqrt(np.nanmean(np.square(found), axis=0)))


def _monte_carlo_modes(
    inputs: Inputs, nominal: Expansion, values: FloatArray, draws: int, level: float, random: np.random.Generator
) -> FloatArray:
    """Return 2 standard deviations over stray fields of rms `level` below the peak, white in modes."""
    count = mode_count(nominal.order)
    peak = np.sqrt(np.maximum(10.0 ** (values[:, NAMES.index("gain_dbi")] / 10.0), 1e-300))
    # 2 count coefficients of unit variance give a mean |e|^2 of 2 count / 4 pi.
    scale = level * peak / np.sqrt(2.0 * count / (4.0 * np.pi))
    found = []
    for _ in range(draws):
        raw = random.normal(size=(2, *nominal.coefficients.shape[:-1], count)) / np.sqrt(2.0)
        stray = (raw[0] + 1j * raw[1]) * scale[:, None, None]
        found.append(native_values(inputs, nominal.with_coefficients(nominal.coefficients + stray)) - values)
    return np.asarray(2.0 * np.sqrt(np.nanmean(np.square(found), axis=0)))


def _noise(inputs: Inputs, random: np.random.Generator) -> ComplexArray:
    field = inputs.sphere.field
    raw = random.normal(size=(2, *field.shape)) / np.sqrt(2.0)
    return np.asarray(field + (raw[0] + 1j * raw[1]) * inputs.noise_sigma[:, None, None, None])


def _drift(inputs: Inputs, random: np.random.Generator) -> ComplexArray:
    """Every slice gets its own complex gain error: the shape that interpolation between ties leaves."""
    field = inputs.sphere.field
    slices = inputs.sphere.slices_used or field.shape[-1] // 2
    raw = random.normal(size=(2, 2, slices)) / np.sqrt(2.0)
    error = np.tile(1.0 + inputs.drift_residual * (raw[0] + 1j * raw[1]), (1, 2))
    error = finer_columns(error, field.shape[-1])
    return np.asarray(field * error[None, :, None, :])


def _changed(inputs: Inputs, values: FloatArray, field: ComplexArray) -> FloatArray:
    return np.asarray(np.abs(native_values(inputs, inputs.step.expansion(field)) - values))


def _leak(field: ComplexArray, ratio: complex) -> ComplexArray:
    """Mix the polarizations as one impure port does when it is turned by 90 deg between passes."""
    return np.stack([field[:, 0] + ratio * field[:, 1], field[:, 1] - ratio * field[:, 0]], axis=1)


def _swing(sphere: MeasuredSphere) -> FloatArray:
    """Sine of the azimuth readout of every sample, (theta, phi): negative where theta was."""
    return np.asarray(np.sin(sphere.theta)[:, None] * sphere.readout_sign[None, :])


def _alignment(inputs: Inputs, nominal: Expansion, values: FloatArray) -> Iterator[FloatArray]:
    """Yield the change of every figure for each declared tolerance."""
    tolerance, sphere = inputs.chamber.alignment, inputs.sphere
    measured = inputs.step.measured(sphere.field)
    for along, across in ((tolerance.theta_zero_deg, 0.0), (0.0, tolerance.roll_axis_tilt_deg)):
        shifted = _looking_aside(sphere, measured, np.deg2rad(along), np.deg2rad(across))
        yield _changed(inputs, values, shifted)
    k = wavenumber(sphere.frequency_hz)[:, None, None, None]
    offset = 1e-3 * tolerance.axes_offset_mm
    yield _changed(inputs, values, sphere.field * np.exp(1j * k * offset * _swing(sphere)))
    yield _changed(inputs, values, _leak(sphere.field, np.tan(np.deg2rad(tolerance.probe_roll_zero_deg))))
    if not sphere.one_polarization:  # without a transform the distance is not used
        yield _distance(inputs, measured, values, 1e-3 * tolerance.distance_mm)
    for axis in ("x", "y", "z"):
        turned = nominal.rotated(about_axis(axis, np.deg2rad(tolerance.device_pose_deg)))
        yield np.abs(native_values(inputs, turned) - values)


def _looking_aside(sphere: MeasuredSphere, measured: ComplexArray, along: float, across: float) -> ComplexArray:
    """Return the field as if every direction had been off by angles along and across the slice.

    The polarization vectors are carried along rigidly (a tilted positioner turns them too).
    """
    t, p = np.meshgrid(sphere.theta, sphere.phi, indexing="ij")
    sign = np.broadcast_to(sphere.readout_sign[None, :], t.shape)
    d = unit_vector(theta=t, phi=p)
    e1 = to_ludwig_1(1.0, 0.0, theta=t, phi=p).real * sign[..., None]
    e2 = to_ludwig_1(0.0, 1.0, theta=t, phi=p).real * sign[..., None]
    seen = d + along * e1 + across * e2
    seen = seen / np.linalg.norm(seen, axis=-1, keepdims=True)
    first, second = e1 - along * d, e2 - across * d
    where = theta_phi(seen)
    e = synthesis_at(measured, where.theta, where.phi)
    flat_t, flat_p = where.theta.ravel(), where.phi.ravel()
    vector = to_ludwig_1(e[..., 0, :], e[..., 1, :], theta=flat_t, phi=flat_p)
    along_first = np.sum(vector * first.reshape(-1, 3), axis=-1) * sign.ravel()
    along_second = np.sum(vector * second.reshape(-1, 3), axis=-1) * sign.ravel()
    return np.stack([along_first, along_second], axis=1).reshape(len(measured), 2, *t.shape)


def _distance(inputs: Inputs, measured: ComplexArray, values: FloatArray, error: float) -> FloatArray:
    """Return the change when the range length is wrong by `error` metres."""
    step, length = inputs.step, inputs.chamber.range_length_m + error
    if inputs.probe is None:
        response = ideal_response(step.order, step.k, length)
    else:
        response = first_order_response(inputs.probe, step.order, length)
    other = replace(step, response=response)
    return np.asarray(np.abs(native_values(inputs, other.from_measured(measured)) - values))
