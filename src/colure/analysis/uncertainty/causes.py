"""Every cause of uncertainty, one object each, in the order of the budget's rows; the budget is a loop over them.

A cause is applied to the data as it would have been: what moves is its contribution. Adding one: write its object, put it into
`CAUSES`, and name its row in the step that leaves it open (`analysis.pipeline`).
"""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np

from colure.analysis.steps.assemble import finer_columns
from colure.analysis.steps.cable import bend_shapes
from colure.analysis.steps.distance import about_the_axes, seen_from_the_centre
from colure.analysis.uncertainty.alignment_causes import (
    ALIGNMENT_CAUSES,
    azimuth_of,
    distance_change,
    leaked,
    transformed,
)
from colure.analysis.uncertainty.inputs import Inputs
from colure.analysis.uncertainty.probe_causes import PROBE_CAUSES
from colure.analysis.uncertainty.receiver_causes import RECEIVER_CAUSES
from colure.analysis.uncertainty.rooms import in_a_room, shared_power
from colure.analysis.uncertainty.slice_causes import SLICE_CAUSES
from colure.analysis.uncertainty.trial import Cause, Declarations, Perturbation, Trial, perturbations
from colure.geometry.conventions import ComplexArray, mode_count, power_db
from colure.geometry.rotations import about_axis

NOISE_DRAWS = 16
STRAY_DRAWS = 40
DRIFT_DRAWS = 16
#: What a near horn's level may be off by without a row of its own, dB.
LEAST_UNHEARD_DB = 1e-3
#: Random fields beyond a region.
REGION_DRAWS = 16
#: Degrees of the waves that are left out to see what truncation does.
FEWER_DEGREES = 2
#: What a figure says that it does not include, in this order, unless it was declared.
MISSING = (
    "mismatch", "leakage", "linearity", "standing wave", "probe place", "probe pointing", "probe pattern",
    "polarization imbalance",
    "reconnection", "position error", "temperature", "jumps",
)  # fmt: skip


def causes(trial: Trial) -> Iterator[Perturbation]:
    """Yield what every cause that concerns a measurement adds to its waves."""
    return perturbations(trial, CAUSES)


def after_the_others(trial: Trial) -> Iterator[Perturbation]:
    """Yield what causes add whose size follows from the interval that the others give (`Trial.tilt_deg`)."""
    return perturbations(trial, AFTER_THE_OTHERS)


def not_declared(known: Declarations) -> tuple[str, ...]:
    """Return the terms of a budget that nobody declared anything about."""
    said = {one.missing for one in CAUSES if one.declared is not None and one.declared(known)}
    return tuple(name for name in MISSING if name not in said)


def _noise(cause: Cause, trial: Trial, random: np.random.Generator) -> Perturbation:
    inputs = trial.inputs
    noisy = np.stack([_noisy(inputs, random) for _ in range(NOISE_DRAWS)])
    words = "scatter of repeated sweeps in this record"
    return Perturbation(cause, trial.changed_field(noisy), words, dof=inputs.noise_dof)


def _drift(cause: Cause, trial: Trial, random: np.random.Generator) -> Perturbation:
    inputs = trial.inputs
    fields = np.stack([drifted(inputs, random) for _ in range(DRIFT_DRAWS)])
    words = f"ties predict each other; {100 * inputs.drift_residual:.2f} % are left between two of them"
    return Perturbation(cause, trial.changed_field(fields), words, inputs.drift_residual, "1")


def _echoes(cause: Cause, trial: Trial, random: np.random.Generator) -> Perturbation:
    inputs, chamber = trial.inputs, trial.inputs.chamber
    level = chamber.echo_amplitude
    rooms = in_a_room(trial, level, random)(STRAY_DRAWS)
    words = (
        f"declared stray level {chamber.echo_level_db:g} dB below the peak, from the walls of a room of "
        + ("unknown size" if not chamber.echo_excess_m else "the declared extra paths")
        + ("" if inputs.gate is None else ", less what the time gate keeps out")
    )
    shared = shared_power(trial.nominal, rooms[::2])
    # A still probe's echoes run over the sphere faster than the device's waves: transform and mode filter keep few of them. A probe
    # that swings keeps most, and a peak that many directions share takes them.
    return Perturbation(cause, rooms, words, chamber.echo_level_db, "dB", shared=shared, picked=chamber.swings_probe)


def _reference_gain(cause: Cause, trial: Trial, random: np.random.Generator) -> Perturbation:
    expanded = trial.inputs.chamber.reference.gain_uncertainty_db
    return Perturbation(cause, trial.scaled(expanded)[None], f"declared \u00b1{expanded:g} dB (k = 2)", expanded, "dB")


def _mismatch(cause: Cause, trial: Trial, random: np.random.Generator) -> Perturbation:
    size, words = trial.inputs.mismatch_db, "declared reflections of source, horn and device, phases unknown"
    return Perturbation(cause, trial.scaled(size)[None], words, size, "dB")


def _device_reflection(cause: Cause, trial: Trial, random: np.random.Generator) -> Perturbation:
    """What the calibration of the device's port left moves no wave: it is told from what the device accepts."""
    reflection = trial.inputs.reflection
    assert reflection is not None  # the cause concerns measured reflections only
    (low, high), loss = reflection.loss_ends_db, reflection.loss_db
    wide = np.maximum(high - loss, loss - low)
    words = f"declared one-port error terms of unknown phase, and the scatter of {reflection.readings} readings"
    return Perturbation(
        cause, trial.scaled(0.0)[None], words, dof=max(1.0, reflection.readings - 1.0),
        beside={
            "mismatch_loss_db": wide, "gain_accepted_dbi": wide, "radiation_efficiency_db": wide,
            "return_loss_db": np.maximum(reflection.high - reflection.modulus, reflection.modulus - reflection.low),
        },
        beside_ends={"mismatch_loss_db": (low, high), "return_loss_db": (reflection.low, reflection.high)},
    )  # fmt: skip


def _reference_place(cause: Cause, trial: Trial, random: np.random.Generator) -> Perturbation:
    size, reference = trial.inputs.place_db, trial.inputs.chamber.reference
    words = (
        f"declared \u00b1{reference.offset_uncertainty_mm:g} mm of the horn's place, at {list(reference.offset_mm)} mm"
    )
    return Perturbation(cause, trial.scaled(size)[None], words, size, "dB")


def _near_horn(cause: Cause, trial: Trial, random: np.random.Generator) -> Perturbation:
    size = trial.inputs.unheard_db
    words = (
        f"the probe's beam hears {size:.3f} dB less of the near horn's mouth than its axis says; it stays in the value"
    )
    return Perturbation(cause, trial.scaled(size)[None], words, size, "dB")


def _since_calibration(cause: Cause, trial: Trial, random: np.random.Generator) -> Perturbation:
    age, daily = trial.inputs.age_days, trial.inputs.chamber.reference.drift_db_day
    assert age is not None  # the cause concerns stored calibrations only
    words = f"stored {age:.1f} days before; declared \u00b1{daily:g} dB a day"
    return Perturbation(cause, trial.scaled(daily * age)[None], words, daily * age, "dB")


def _probe_polarization(cause: Cause, trial: Trial, random: np.random.Generator) -> Perturbation:
    size = trial.inputs.chamber.probe.cross_polar_db
    purity = 10.0 ** (size / 20.0)
    both = np.stack([leaked(trial.inputs.sphere.field, purity * phase) for phase in (1.0, 1j)])
    words = f"probe cross-polarization {size:g} dB, phase unknown"
    horn_db = trial.inputs.chamber.reference.cross_polar_db
    # Corrected: the probe is as pure as the horn is known to be.
    if trial.inputs.leak_noise is not None and horn_db == size:
        words = f"corrected by the horn, whose own cross-polarization is {size:g} dB, phase unknown"
    return Perturbation(cause, trial.changed_field(both), words, size, "dB")


def _flexing(cause: Cause, trial: Trial, random: np.random.Generator) -> Perturbation:
    inputs, chamber, sphere = trial.inputs, trial.inputs.chamber, trial.inputs.sphere
    flex = float(np.deg2rad(chamber.cable_flex_deg)) / np.sqrt(3.0)
    azimuth = azimuth_of(sphere, chamber.positioner.geometry)
    shapes = bend_shapes(azimuth, joints=bool(chamber.positioner.joints))
    bent = trial.each_before_alignment([sphere.field * np.exp(1j * flex * one) for one in shapes])
    words = f"{chamber.cable_flex_deg:.2g} deg over a turn" + (
        ", less what the alignment took for an offset of the axes" if inputs.aligned else ""
    )
    return Perturbation(cause, bent, words, chamber.cable_flex_deg, "deg")


def _truncation(cause: Cause, trial: Trial, random: np.random.Generator) -> Perturbation:
    order = trial.inputs.step.keep_order
    fewer = trial.nominal.truncated(order - FEWER_DEGREES)
    words = f"waves up to degree {fewer.order} instead of {order}"
    return Perturbation(cause, trial.changed(fewer)[None], words)


def _time_gate(cause: Cause, trial: Trial, random: np.random.Generator) -> Perturbation:
    """Another gate tells how large the error is at a frequency, not its phase there."""
    other, field = trial.inputs.other_gate, trial.inputs.sphere.field
    assert other is not None  # the cause concerns gated records only
    words = "change with a gate that closes one resolution 1/B earlier and knows less of the delays"
    both = np.stack([field + phase * (other - field) for phase in (1.0, 1j)])
    return Perturbation(cause, trial.changed_field(both), words)


def _commands(cause: Cause, trial: Trial, random: np.random.Generator) -> Perturbation:
    """What the beam is told was not measured: its elements answer otherwise than the states say."""
    drawn, field = trial.inputs.commands, trial.inputs.sphere.field
    assert drawn is not None  # the cause concerns sums of states only
    words = "errors of the elements' commands as declared, in the states that were added up and in the beam itself"
    return Perturbation(cause, trial.changed_field(field + drawn), words)


def _finite_distance(cause: Cause, trial: Trial, random: np.random.Generator) -> Perturbation:
    inputs, words = trial.inputs, "change by a transform, which this recipe leaves out; it stays in the value"
    sphere, device = inputs.sphere, inputs.sweeps.device
    if not sphere.one_polarization:
        return Perturbation(cause, -distance_change(trial, 0.0)[None], words)
    words = "change by a transform of the measured component alone; it stays in the value"
    if not any(device.offset_mm):
        return Perturbation(cause, -distance_change(trial, 0.0)[None], words)
    words = (
        "change by a transform of the measured component alone about the device's centre, for which the probe stands elsewhere than "
        "for the axes; it stays in the value"
    )
    # Level and phase were brought to one distance already: about the axes a transform would take them for those of another device.
    beside = seen_from_the_centre(sphere, trial.nominal, device, inputs.chamber.range_length_m, slant=inputs.slant)
    far = about_the_axes(sphere, transformed(trial, beside), device)
    return Perturbation(cause, -trial.changed(inputs.step.expansion(far))[None], words)


def _measured_plane(cause: Cause, trial: Trial, random: np.random.Generator) -> Perturbation:
    """The co-polar vector itself was measured, at the middle frequency."""
    tilt = trial.tilt_deg
    assert tilt is not None  # the other causes were combined before
    turned = trial.changed(trial.nominal.rotated(about_axis("z", np.deg2rad(tilt))))
    words = "the ellipse's axis, which names the E plane, is as uncertain as its tilt"
    return Perturbation(cause, turned[None], words, tilt, "deg")


def _region(cause: Cause, trial: Trial, random: np.random.Generator) -> Perturbation:
    """Return what the part of the sphere that was not measured may hold: any field as strong there as towards the rim of the part that was.

    The last lobe's width counts: the rim itself may lie in a minimum, with the next lobe beyond it. Of random waves that the device
    could have, those that the measured rings do not tell; the record is the same with and without them.
    """
    sphere, step = trial.inputs.sphere, trial.inputs.step
    rings = np.mean(np.sum(np.abs(sphere.field) ** 2, axis=1), axis=-1)
    rims = [theta for theta in (sphere.theta[0], sphere.theta[-1]) if 0.0 < theta < np.pi - 1e-9]
    near = [np.abs(sphere.theta - theta) <= np.pi / step.keep_order for theta in rims]
    intensity = np.max([rings[:, some].mean(axis=1) for some in near], axis=0)
    count = mode_count(step.order)
    raw = random.normal(size=(2, REGION_DRAWS, sphere.frequency_hz.size, 2, count))
    size = np.sqrt(4.0 * np.pi * intensity / (2.0 * count) / 2.0)
    hidden = step.unseen((raw[0] + 1j * raw[1]) * size[:, None, None])
    level = float(power_db(np.max(intensity / np.max(np.sum(np.abs(sphere.field) ** 2, axis=1), axis=(1, 2)))))
    words = f"beyond what was scanned any field as strong as towards its rim, {-level:.0f} dB below the peak"
    return Perturbation(cause, step.from_measured(hidden).coefficients, words, level, "dB")


def _noisy(inputs: Inputs, random: np.random.Generator) -> ComplexArray:
    field = inputs.sphere.field
    noisy = field + inputs.sphere.white_noise(random) * inputs.noise_sigma[:, None, None, None]
    if inputs.leak_noise is not None:
        # What was taken out as the probe's impurity is as noisy as the horn's sweeps; each of two ports has its own.
        told = random.normal(size=(2, 2, len(field))) * inputs.leak_noise
        first, second = told[0] + 1j * told[1]
        if inputs.chamber.probe.ports == 1:
            second = -first
        mixed = [first[:, None, None] * field[:, 1], second[:, None, None] * field[:, 0]]
        noisy = noisy + np.stack(mixed, axis=1)
    if inputs.once is None:
        return np.asarray(noisy)
    common = random.normal(size=(2, len(field)))
    return np.asarray(noisy * (1.0 + inputs.once * (common[0] + 1j * common[1]))[:, None, None, None])


def drifted(inputs: Inputs, random: np.random.Generator) -> ComplexArray:
    """Return a field with what interpolation between ties leaves: errors that go together as the ties leave them, of every pass its own.

    Where slices are no columns, every part of the scan between two ties gets its own complex gain error, none at the ties.
    """
    field = inputs.sphere.field
    if inputs.drift_errors is not None:
        turned = np.tensordot(random.normal(size=len(inputs.drift_errors)), inputs.drift_errors, axes=1)
        return np.asarray(field + np.einsum("abp,fbtp->fatp", turned, field))
    slices = inputs.sphere.slices_used or field.shape[-1] // 2
    parts = inputs.drift_parts if 0 < inputs.drift_parts < slices else slices
    raw = random.normal(size=(2, 2, parts)) / np.sqrt(2.0)
    where = (np.arange(slices) + 0.5) * parts / slices
    bump = np.sin(np.pi * (where % 1.0)) if parts < slices else np.ones(slices)
    bump = bump / np.sqrt(np.mean(bump**2))
    each = (raw[0] + 1j * raw[1])[:, where.astype(int)] * bump
    error = np.tile(1.0 + inputs.drift_residual * each, (1, 2))
    error = finer_columns(error, field.shape[-1])
    return np.asarray(field * error[None, :, None, :])


def _absolute(inputs: Inputs) -> bool:
    return inputs.chamber.reference.absolute


LEVEL_CAUSES = (
    Cause(key="reference gain", text="declared for the reference antenna, or its table's", needs="a reference",
    perturb=_reference_gain,
          distribution="normal", common=True, applies=_absolute),
    Cause(key="mismatch", text="declared reflections of source, horn and device", needs="a reference and reflections",
          perturb=_mismatch, distribution="normal", common=True, declared=lambda known: known.mismatch_db > 0.0,
          applies=_absolute,
          missing="mismatch"),
    Cause(key="reference place", text="declared doubt of the reference horn's place", needs="offset_uncertainty_mm",
          perturb=_reference_place, distribution="normal", common=True,
          applies=lambda inputs: _absolute(inputs) and inputs.place_db > 0.0),
    Cause(key="near horn", text="how much less of a near horn's mouth a probe with a beam hears", needs="a reference",
          perturb=_near_horn, distribution="bias", common=True,
          applies=lambda inputs: _absolute(inputs) and inputs.unheard_db > LEAST_UNHEARD_DB),
    Cause(key="device reflection", text="what the one-port calibration leaves, and the scatter of the readings",
    needs="a measured reflection",
          perturb=_device_reflection, kind="measured", distribution="normal",
          applies=lambda inputs: inputs.reflection is not None),
    Cause(key="drift since calibration", text="declared change for every day since a stored calibration",
    needs="drift_db_day",
          perturb=_since_calibration, distribution="normal", common=True,
          applies=lambda inputs: _absolute(inputs) and inputs.age_days is not None),
)  # fmt: skip

#: In the order of the budget's rows; random streams are drawn from in this order.
CAUSES: tuple[Cause, ...] = (
    Cause(key="noise", text="the receiver noise measured in this record", needs="repeated sweeps", perturb=_noise,
    kind="measured",
          distribution="Monte Carlo", type_a=True, known_mean=True),
    Cause(key="drift residual", text="slice-to-slice gain errors as large as the ties' residual",
    needs="boresight checks (ties)",
          perturb=_drift, kind="measured", distribution="Monte Carlo", type_a=True),
    Cause(key="range echoes", text="stray signals at the chamber's declared level, sent back by walls of a room",
    needs="echo_level_db",
          perturb=_echoes, distribution="as drawn"),
    *LEVEL_CAUSES,
    *ALIGNMENT_CAUSES,
    Cause(key="probe polarization", text="the declared probe purity applied in phase and in quadrature",
    needs="cross_polar_db",
          perturb=_probe_polarization, distribution="U-shaped"),
    Cause(key="cable flexing", text="the declared phase change with the azimuth axis, or what dedicated turns left",
          needs="cable_flex_deg", perturb=_flexing, distribution="change"),
    *RECEIVER_CAUSES,
    *SLICE_CAUSES,
    *PROBE_CAUSES,
    Cause(key="sampling and truncation", text="the two highest degrees of the waves left out",
    needs="a transform on whole rings",
          perturb=_truncation, kind="measured", distribution="change",
          applies=lambda inputs: inputs.step.rings is None and inputs.step.keep_order > FEWER_DEGREES + 2),
    Cause(key="region truncation", text="fields beyond a region, as strong as towards its rim",
    needs="a part of a sphere",
          perturb=_region, kind="measured", distribution="Monte Carlo", stream=(7,),
          applies=lambda inputs: inputs.step.rings is not None and not inputs.sphere.whole),
    Cause(key="time gate",
    text="the same recipe with a gate that closes one resolution earlier and knows less of the delays",
          needs="a time gate", perturb=_time_gate, kind="measured", distribution="change",
          applies=lambda inputs: inputs.other_gate is not None),
    Cause(key="element commands",
    text="a beam synthesized from other states: declared errors of the elements' commands",
          needs="states.codes with command_error_db or command_error_deg", perturb=_commands,
          distribution="Monte Carlo",
          applies=lambda inputs: inputs.commands is not None),
    Cause(key="finite distance", text="without a transform: what one would change (a bias that stays in the value)",
          needs="a recipe without a transform", perturb=_finite_distance, kind="measured", distribution="bias",
          applies=lambda inputs: inputs.step.direct),
)  # fmt: skip
AFTER_THE_OTHERS: tuple[Cause, ...] = (
    Cause(key="measured principal plane",
    text="the co-polar vector itself was measured: turned by the interval of its tilt",
          needs='principal_planes = "measured"', perturb=_measured_plane, kind="measured", distribution="normal",
          applies=lambda inputs: inputs.figures.settings.principal_planes == "measured" and "tilt_deg" in inputs.figures.names),
)  # fmt: skip
