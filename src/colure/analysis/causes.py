"""What can be wrong, each cause applied to the data as it would have been: what moves is its contribution.

Terms and their sources:

=========================  ======================================================================
noise                      Monte Carlo of the receiver noise measured in this record
drift residual             Monte Carlo of slice-to-slice gain errors, as large as the ties' residual
reference gain             declared for the reference antenna, or its table's
mismatch                   declared reflections of source, horn and device, U-shaped
range echoes               Monte Carlo of stray signals at the chamber's declared level
alignment: ...             each tolerance (declared, or left by the correction) applied to the data in turn
probe polarization         the declared probe purity applied in phase and in quadrature
cable flexing              the declared phase change with the azimuth axis, or what dedicated turns left
leakage                    the declared isolation added to every sweep, in phase and in quadrature
receiver linearity         the declared compression per 10 dB of level
sampling and truncation    the two highest degrees of the waves left out
time gate                  the same recipe with a gate a fifth narrower or wider
finite distance            one polarization only: what a transform would change if the other were nothing
=========================  ======================================================================
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from typing import Literal

import numpy as np

from colure.analysis.assembly import MeasuredSphere, finer_columns
from colure.analysis.bench import Bench, Cause, Inputs
from colure.analysis.rooms import in_a_room, without_what_is_there
from colure.geometry.conventions import ComplexArray, FloatArray, wavenumber
from colure.geometry.directions import theta_phi, unit_vector
from colure.geometry.polarization import to_ludwig_1
from colure.geometry.rotations import about_axis
from colure.waves.probe import first_order_response, ideal_response
from colure.waves.scattered import synthesis_at

NOISE_DRAWS = 16
STRAY_DRAWS = 40
DRIFT_DRAWS = 16
#: Of a bound with unknown phase (arcsine, "U-shaped") 95 % lie within 0.997 of it; with normal errors a fifth to a third as
#: large beside it, its share in a root sum of squares that holds 95 % is 1.11 to 1.16 (derivable by simulation). Twice
#: its standard deviation, sqrt 2 of the bound, would be more than all.
U_SHAPED = 1.14
#: Degrees of the waves that are left out to see what truncation does.
FEWER_DEGREES = 2


def causes(bench: Bench) -> Iterator[Cause]:
    """Yield every cause that applies to a measurement."""
    random = np.random.default_rng(bench.inputs.seed)
    yield from _random(bench, random)
    yield from _level(bench)
    yield from _alignment(bench)
    yield from _chain(bench)


def _random(bench: Bench, random: np.random.Generator) -> Iterator[Cause]:
    inputs, step = bench.inputs, bench.inputs.step
    chamber = inputs.chamber
    noise, shift = bench.monte_carlo(lambda: step.expansion(_noise(inputs, random)), NOISE_DRAWS)
    yield Cause("noise", noise, "scatter of repeated sweeps in this record", "measured", "Monte Carlo", shift=shift)
    drift, _ = bench.monte_carlo(lambda: step.expansion(_drift(inputs, random)), DRIFT_DRAWS)
    words = f"ties predict each other; {100 * inputs.drift_residual:.2f} % are left between two of them"
    yield Cause("drift residual", drift, words, "measured", "Monte Carlo", 2.0 * inputs.drift_residual, "1")
    level = 10.0 ** (chamber.echo_level_db / 20.0)
    draw = in_a_room(bench, level, random)
    drawn = [draw() for _ in range(STRAY_DRAWS)]
    found = np.stack([bench.changed(one) for one in drawn])
    found = without_what_is_there(found, inputs.figures.radiated, bench.nominal, drawn)
    stray, shift = bench.spread(found, tails=True)
    words = (
        f"declared stray level {chamber.echo_level_db:g} dB below the peak, from the walls of a room of unknown size"
    )
    yield Cause("range echoes", stray, words, "declared", "Monte Carlo", chamber.echo_level_db, "dB", shift)


def _level(bench: Bench) -> Iterator[Cause]:
    inputs = bench.inputs
    one_db = np.zeros_like(bench.values)
    for index, what in enumerate(inputs.figures.definitions):
        one_db[:, index] = what.gain
    expanded = inputs.chamber.reference.gain_uncertainty_db
    yield Cause("reference gain", expanded * one_db[None], f"declared \u00b1{expanded:g} dB (k = 2)", "declared", "normal",
                expanded, "dB")  # fmt: skip
    if inputs.mismatch_db > 0.0:
        words = "declared reflections of source, horn and device, phases unknown"
        yield Cause(
            "mismatch", inputs.mismatch_db * one_db[None], words, "declared", "U-shaped", inputs.mismatch_db, "dB"
        )


def _chain(bench: Bench) -> Iterator[Cause]:
    inputs = bench.inputs
    chamber, sphere = inputs.chamber, inputs.sphere
    purity = 10.0 ** (chamber.probe.cross_polar_db / 20.0)
    both = [U_SHAPED * bench.changed_field(_leak(sphere.field, purity * phase)) for phase in (1.0, 1j)]
    words = f"probe cross-polarization {chamber.probe.cross_polar_db:g} dB, phase unknown"
    yield Cause("probe polarization", np.stack(both), words, "declared", "U-shaped", chamber.probe.cross_polar_db, "dB")
    flex = float(np.deg2rad(chamber.cable_flex_deg)) / np.sqrt(3.0)
    swing, turn = _swing(sphere), np.cos(sphere.theta)[:, None] + 0.0 * sphere.readout_sign
    shapes = [swing, 1.0 - turn, 2.0 * swing * turn]
    if inputs.aligned:
        # What goes with sin a looks like axes beside each other: an alignment from the data took it out with them.
        lit = np.sum(np.abs(sphere.field) ** 2, axis=(0, 1)) * np.sin(sphere.theta)[:, None]
        shapes = [one - swing * np.sum(lit * one * swing) / np.sum(lit * swing**2) for one in shapes[1:]]
    bent = [bench.changed_field(sphere.field * np.exp(1j * flex * one)) for one in shapes]
    words = f"{chamber.cable_flex_deg:.2g} deg over a turn" + (
        ", less what looks like an offset of the axes" if inputs.aligned else ""
    )
    yield Cause("cable flexing", np.stack(bent), words, "declared", "change", chamber.cable_flex_deg, "deg")
    yield from _receiver(bench)
    if inputs.step.rings is None and inputs.step.keep_order > FEWER_DEGREES + 2:
        fewer = bench.nominal.truncated(inputs.step.keep_order - FEWER_DEGREES)
        words = f"waves up to degree {fewer.order} instead of {inputs.step.keep_order}"
        yield Cause("sampling and truncation", bench.changed(fewer)[None], words, "measured", "change")
    if inputs.other_gate is not None:
        words = "change with a gate of another width"
        yield Cause("time gate", bench.changed_field(inputs.other_gate)[None], words, "measured", "change")
    if sphere.one_polarization:
        words = "what a transform of the measured component alone would change"
        yield Cause("finite distance", _distance(bench, 0.0)[None], words, "measured", "change")


def _receiver(bench: Bench) -> Iterator[Cause]:
    inputs, analyzer = bench.inputs, bench.inputs.chamber.analyzer
    field = inputs.sphere.field
    peak = np.abs(field).max(axis=(1, 2, 3), keepdims=True)
    if analyzer.isolation_db is not None:
        share = 10.0 ** (analyzer.isolation_db / 20.0) / inputs.peak_reading
        both = [U_SHAPED * bench.changed_field(field + share * peak * phase) for phase in (1.0, 1j)]
        words = (
            f"declared isolation {analyzer.isolation_db:g} dB: {20 * np.log10(share):.0f} dB below the peak's reading"
        )
        yield Cause("leakage", np.stack(both), words, "declared", "U-shaped", analyzer.isolation_db, "dB")
    if analyzer.linearity_db > 0.0:
        power = analyzer.linearity_db / 10.0
        bent = field * np.maximum(np.abs(field) / peak, 1e-6) ** power
        words = f"declared {analyzer.linearity_db:g} dB per 10 dB of level"
        yield Cause("receiver linearity", bench.changed_field(bent)[None], words, "declared", "change", analyzer.linearity_db,
                    "dB per 10 dB")  # fmt: skip


def _alignment(bench: Bench) -> Iterator[Cause]:
    """Yield the change of every figure for each tolerance."""
    inputs = bench.inputs
    tolerance, sphere = inputs.chamber.alignment, inputs.sphere
    measured = inputs.step.measured(sphere.field)
    known = "left after the correction" if inputs.aligned else "declared"
    kind: Literal["measured", "declared"] = "measured" if inputs.aligned else "declared"
    for name, size, along in (
        ("theta zero", tolerance.theta_zero_deg, True),
        ("roll axis", tolerance.roll_axis_tilt_deg, False),
    ):
        angle = float(np.deg2rad(size))
        shifted = _looking_aside(sphere, measured, angle if along else 0.0, 0.0 if along else angle)
        yield Cause(f"alignment: {name}", bench.changed_field(shifted)[None], f"{known} \u00b1{size:.2g} deg", kind, "normal",
                    size, "deg")  # fmt: skip
    k = wavenumber(sphere.frequency_hz)[:, None, None, None]
    size = tolerance.axes_offset_mm
    moved = [sphere.field * np.exp(1j * k * 1e-3 * size * _swing(sphere))]
    # Along the range the roll axis may stand off as well, which no scan tells from a device that does.
    along_range = inputs.declared_offset_mm / np.sqrt(3.0)
    moved.append(sphere.field * np.exp(1j * k * 1e-3 * along_range * np.cos(sphere.theta)[:, None]))
    yield Cause("alignment: axes offset", np.stack([bench.changed_field(one) for one in moved]),
                f"{known} \u00b1{size:.2g} mm across, declared \u00b1{along_range:.2g} mm along the range", kind, "normal", size, "mm")  # fmt: skip
    size = tolerance.probe_roll_zero_deg
    words = (
        f"{known} \u00b1{size:.2g} deg" if size > 0.0 else "found with the reference: part of the probe's polarization"
    )
    rolled = _leak(sphere.field, np.tan(np.deg2rad(size)))
    yield Cause("alignment: probe roll", bench.changed_field(rolled)[None], words, kind, "normal", size, "deg")
    if not sphere.one_polarization:  # without a transform the distance is not used
        size = tolerance.distance_mm
        change = _distance(bench, 1e-3 * size)
        # The whole device seems to stand nearer: its phase centre keeps its distance to the crossing.
        yield Cause(
            "alignment: distance", change[None], f"declared \u00b1{size:g} mm", "declared", "normal", size, "mm"
        )
    size = tolerance.device_pose_deg
    turned = [bench.changed(bench.nominal.rotated(about_axis(axis, np.deg2rad(size)))) for axis in ("x", "y", "z")]
    yield Cause("alignment: device pose", np.stack(turned), f"declared \u00b1{size:g} deg about every axis", "declared", "normal",
                size, "deg")  # fmt: skip


def _noise(inputs: Inputs, random: np.random.Generator) -> ComplexArray:
    field = inputs.sphere.field
    raw = random.normal(size=(2, *field.shape)) / np.sqrt(2.0)
    noisy = field + (raw[0] + 1j * raw[1]) * inputs.noise_sigma[:, None, None, None]
    if inputs.once is None:
        return np.asarray(noisy)
    common = random.normal(size=(2, len(field)))
    return np.asarray(noisy * (1.0 + inputs.once * (common[0] + 1j * common[1]))[:, None, None, None])


def _drift(inputs: Inputs, random: np.random.Generator) -> ComplexArray:
    """Every slice gets its own complex gain error: the shape that interpolation between ties leaves."""
    field = inputs.sphere.field
    slices = inputs.sphere.slices_used or field.shape[-1] // 2
    raw = random.normal(size=(2, 2, slices)) / np.sqrt(2.0)
    error = np.tile(1.0 + inputs.drift_residual * (raw[0] + 1j * raw[1]), (1, 2))
    error = finer_columns(error, field.shape[-1])
    return np.asarray(field * error[None, :, None, :])


def _leak(field: ComplexArray, ratio: complex) -> ComplexArray:
    """Mix the polarizations as one impure port does when it is turned by 90 deg between passes."""
    return np.stack([field[:, 0] + ratio * field[:, 1], field[:, 1] - ratio * field[:, 0]], axis=1)


def _swing(sphere: MeasuredSphere) -> FloatArray:
    """Sine of the azimuth readout of every sample, (theta, phi): negative where theta was."""
    return np.asarray(np.sin(sphere.theta)[:, None] * sphere.readout_sign[None, :])


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


def _distance(bench: Bench, error: float) -> FloatArray:
    """Return the change when the range length is wrong by `error` metres."""
    inputs = bench.inputs
    step, length = inputs.step, inputs.chamber.range_length_m + error
    if inputs.probe is None:
        response = ideal_response(step.order, step.k, length)
    else:
        response = first_order_response(inputs.probe, step.order, length)
    other = replace(step, response=response)
    return bench.changed(other.from_measured(step.measured(inputs.sphere.field)))
