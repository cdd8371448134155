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
region truncation          Monte Carlo of fields beyond a region, as strong as towards its rim
leakage                    Monte Carlo of a wave that is added to every sweep of the record, its phase slowly wandering
receiver compression       the level at which the receiver reads 1 dB too little, or a better one
receiver linearity         the declared error per 10 dB of level on every sweep, the reference's included
reconnection               declared change of the path from the reference to the device
polarization imbalance     declared level and phase of the second polarization that the reference does not show
temperature                the declared swing on every sweep: what the ties leave of it
jumps                      Monte Carlo of declared jumps in the record: what the ties leave of them
standing wave              Monte Carlo of devices that scatter the probe's wave back to it at the declared level
probe place, pointing      declared offset across the range and turn of the probe, in two directions
probe pattern              declared uncertainty of the probe's taper, as a taper over the degrees of the waves
position error             Monte Carlo of points read beside their places
sampling and truncation    the two highest degrees of the waves left out
slice aliasing             a stopped scan only: what every second of its slices alone would change
time gate                  the same recipe with a gate that closes one resolution earlier and knows less of the delays
finite distance            without a transform: what one would change (a bias that stays in the value)
=========================  ======================================================================
"""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np

from colure.analysis.steps.assemble import finer_columns
from colure.analysis.uncertainty.alignment_causes import alignment_causes, azimuth_of, distance_change, leaked
from colure.analysis.uncertainty.inputs import Inputs
from colure.analysis.uncertainty.probe_causes import probe_causes
from colure.analysis.uncertainty.receiver_causes import receiver_causes
from colure.analysis.uncertainty.rooms import in_a_room, shared_power
from colure.analysis.uncertainty.slice_causes import slice_causes
from colure.analysis.uncertainty.trial import Bench, Cause
from colure.geometry.conventions import ComplexArray, mode_count

NOISE_DRAWS = 16
STRAY_DRAWS = 40
DRIFT_DRAWS = 16
#: Random fields beyond a region.
REGION_DRAWS = 16
#: Degrees of the waves that are left out to see what truncation does.
FEWER_DEGREES = 2


def causes(bench: Bench) -> Iterator[Cause]:
    """Yield every cause that applies to a measurement."""
    random = np.random.default_rng(bench.inputs.seed)
    yield from _random(bench, random)
    yield from _level(bench)
    yield from alignment_causes(bench)
    yield from _chain(bench)


def _random(bench: Bench, random: np.random.Generator) -> Iterator[Cause]:
    inputs, chamber = bench.inputs, bench.inputs.chamber
    noisy = np.stack([_noise(inputs, random) for _ in range(NOISE_DRAWS)])
    yield Cause("noise", bench.changed_field(noisy), "scatter of repeated sweeps in this record", "measured", "Monte Carlo",
                dof=inputs.noise_dof, known_mean=True, type_a=True)  # fmt: skip
    drifted = np.stack([_drift(inputs, random) for _ in range(DRIFT_DRAWS)])
    words = f"ties predict each other; {100 * inputs.drift_residual:.2f} % are left between two of them"
    yield Cause("drift residual", bench.changed_field(drifted), words, "measured", "Monte Carlo", inputs.drift_residual, "1",
                type_a=True)  # fmt: skip
    level = 10.0 ** (chamber.echo_level_db / 20.0)
    rooms = in_a_room(bench, level, random)(STRAY_DRAWS)
    words = (
        f"declared stray level {chamber.echo_level_db:g} dB below the peak, from the walls of a room of "
        + ("unknown size" if not chamber.echo_excess_m else "the declared extra paths")
        + ("" if inputs.gate is None else ", less what the time gate keeps out")
    )
    yield Cause("range echoes", rooms, words, "declared", "as drawn", chamber.echo_level_db, "dB",
                shared=shared_power(bench.nominal, rooms[::2]))  # fmt: skip


def _level(bench: Bench) -> Iterator[Cause]:
    inputs, reference = bench.inputs, bench.inputs.chamber.reference
    if not reference.absolute:
        return
    expanded = reference.gain_uncertainty_db
    yield Cause("reference gain", bench.scaled(expanded)[None], f"declared \u00b1{expanded:g} dB (k = 2)", "declared", "normal",
                expanded, "dB")  # fmt: skip
    if inputs.mismatch_db > 0.0:
        words = "declared reflections of source, horn and device, phases unknown"
        yield Cause(
            "mismatch", bench.scaled(inputs.mismatch_db)[None], words, "declared", "normal", inputs.mismatch_db, "dB"
        )
    if inputs.place_db > 0.0:
        words = f"declared \u00b1{reference.offset_uncertainty_mm:g} mm of the horn's place, at {list(reference.offset_mm)} mm"
        yield Cause(
            "reference place", bench.scaled(inputs.place_db)[None], words, "declared", "normal", inputs.place_db, "dB"
        )
    if inputs.age_days is not None:
        size = reference.drift_db_day * inputs.age_days
        words = f"stored {inputs.age_days:.1f} days before; declared \u00b1{reference.drift_db_day:g} dB a day"
        yield Cause("drift since calibration", bench.scaled(size)[None], words, "declared", "normal", size, "dB")


def _chain(bench: Bench) -> Iterator[Cause]:
    inputs = bench.inputs
    chamber, sphere = inputs.chamber, inputs.sphere
    purity = 10.0 ** (chamber.probe.cross_polar_db / 20.0)
    both = [bench.changed_field(leaked(sphere.field, purity * phase)) for phase in (1.0, 1j)]
    words = f"probe cross-polarization {chamber.probe.cross_polar_db:g} dB, phase unknown"
    yield Cause("probe polarization", np.stack(both), words, "declared", "U-shaped", chamber.probe.cross_polar_db, "dB")
    flex = float(np.deg2rad(chamber.cable_flex_deg)) / np.sqrt(3.0)
    azimuth = azimuth_of(sphere, chamber.positioner.geometry)
    shapes = [np.sin(azimuth), 1.0 - np.cos(azimuth), np.sin(2.0 * azimuth)]
    bent = [bench.changed_before_alignment(sphere.field * np.exp(1j * flex * one)) for one in shapes]
    words = f"{chamber.cable_flex_deg:.2g} deg over a turn" + (
        ", less what the alignment took for an offset of the axes" if inputs.aligned else ""
    )
    yield Cause("cable flexing", np.stack(bent), words, "declared", "change", chamber.cable_flex_deg, "deg")
    yield from receiver_causes(bench)
    yield from slice_causes(bench)
    yield from probe_causes(bench)
    if inputs.step.rings is None and inputs.step.keep_order > FEWER_DEGREES + 2:
        fewer = bench.nominal.truncated(inputs.step.keep_order - FEWER_DEGREES)
        words = f"waves up to degree {fewer.order} instead of {inputs.step.keep_order}"
        yield Cause("sampling and truncation", bench.changed(fewer)[None], words, "measured", "change")
    if inputs.step.rings is not None and not sphere.whole:
        yield _region(bench)
    if inputs.other_gate is not None:
        words = "change with a gate that closes one resolution 1/B earlier and knows less of the delays"
        # Another gate tells how large the error is at a frequency, not its phase there.
        change = inputs.other_gate - sphere.field
        both = [bench.changed_field(sphere.field + phase * change) for phase in (1.0, 1j)]
        yield Cause("time gate", np.stack(both), words, "measured", "change")
    if inputs.step.direct:
        words = "change by a transform, which this recipe leaves out; it stays in the value"
        if sphere.one_polarization:
            words = "change by a transform of the measured component alone; it stays in the value"
        yield Cause("finite distance", -distance_change(bench, 0.0)[None], words, "measured", "bias")


def _region(bench: Bench) -> Cause:
    """Return what the part of the sphere that was not measured may hold: any field as strong there as towards the rim of the part that was.

    The last lobe's width counts: the rim itself may lie in a minimum, with the next lobe beyond it. Of random waves that the device
    could have, those that the measured rings do not tell; the record is the same with and without them.
    """
    sphere, step = bench.inputs.sphere, bench.inputs.step
    random = np.random.default_rng((bench.inputs.seed, 7))
    rings = np.mean(np.sum(np.abs(sphere.field) ** 2, axis=1), axis=-1)
    rims = [theta for theta in (sphere.theta[0], sphere.theta[-1]) if 0.0 < theta < np.pi - 1e-9]
    near = [np.abs(sphere.theta - theta) <= np.pi / step.keep_order for theta in rims]
    intensity = np.max([rings[:, some].mean(axis=1) for some in near], axis=0)
    count = mode_count(step.order)
    raw = random.normal(size=(2, REGION_DRAWS, sphere.frequency_hz.size, 2, count))
    size = np.sqrt(4.0 * np.pi * intensity / (2.0 * count) / 2.0)
    hidden = step.unseen((raw[0] + 1j * raw[1]) * size[:, None, None])
    level = 10.0 * np.log10(float(np.max(intensity / np.max(np.sum(np.abs(sphere.field) ** 2, axis=1), axis=(1, 2)))))
    words = f"beyond what was scanned any field as strong as towards its rim, {-level:.0f} dB below the peak"
    return Cause(
        "region truncation", step.from_measured(hidden).coefficients, words, "measured", "Monte Carlo", level, "dB"
    )


def _noise(inputs: Inputs, random: np.random.Generator) -> ComplexArray:
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


def _drift(inputs: Inputs, random: np.random.Generator) -> ComplexArray:
    """Every part of the scan between two ties gets its own complex gain error, none at the ties: what interpolation leaves."""
    field = inputs.sphere.field
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
