"""What each step of a recipe found and did, as curves that a report can draw: one diagnosis a step."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

import numpy as np

from colure.analysis.figures.cuts import cut, find_beam
from colure.analysis.figures.phase_centre import phase_centre
from colure.analysis.findings.self_check import centre_of
from colure.analysis.pipeline.stages import stages
from colure.analysis.pipeline.sweep_steps import Stages
from colure.analysis.steps.agreement import boresight_by_slice, level_db
from colure.analysis.steps.assemble import MeasuredSphere
from colure.analysis.steps.distance import even_distance_factor
from colure.analysis.steps.drift import correct
from colure.analysis.steps.places import flown_both_ways, lag_of
from colure.analysis.steps.time_gate import gated, impulse_response
from colure.geometry.conventions import ComplexArray, FloatArray, amplitude_db, power_db
from colure.model.plan import Role
from colure.model.record import of_role
from colure.values import holds_arrays
from colure.waves.expansion import Expansion
from colure.waves.modes import resized
from colure.waves.transform import synthesis

if TYPE_CHECKING:
    import xarray as xr

    from colure.analysis.pipeline.recipe import Processed
    from colure.analysis.steps.gain import ReferenceData
    from colure.model.chamber import Chamber
    from colure.model.device import Device

#: The phase about the beam is drawn this far to both sides.
PHASE_SPAN_DEG = 30.0


@dataclass(frozen=True)
@holds_arrays
class DiagnosisCurve:
    """One line of a diagnosis; `after`: after correction (solid line), otherwise before."""

    name: str
    x: FloatArray
    y: FloatArray
    after: bool = False


@dataclass(frozen=True)
class Diagnosis:
    """What one step found: curves with axes (units in the labels), and one or two sentences."""

    step: str
    x_label: str
    y_label: str
    curves: tuple[DiagnosisCurve, ...]
    text: str


@dataclass(frozen=True)
class _DiagnosisInputs:
    """Everything the diagnoses look at."""

    record: xr.Dataset
    processed: Processed
    chamber: Chamber
    device: Device
    stages: Stages

    @property
    def middle(self) -> int:
        """Index of the middle frequency."""
        return self.processed.frequency_hz.size // 2


def diagnoses(
    record: xr.Dataset,
    processed: Processed,
    chamber: Chamber,
    device: Device,
    reference: ReferenceData | None = None,
) -> list[Diagnosis]:
    """Return a diagnosis of every step that ran, in the recipe's order, and of the phase centre.

    The drift is not among them: its track is drawn as it is.
    """
    assert processed.recipe is not None  # a processed record always says how
    bench = _DiagnosisInputs(
        record, processed, chamber, device, stages(record, chamber, device, processed.recipe, reference)
    )
    step_diagnoses = [DIAGNOSES[one.step](bench) for one in processed.recipe.steps if one.on and one.step in DIAGNOSES]
    return [one for one in [*step_diagnoses, _phase_centre(bench)] if one is not None]


def _cable(bench: _DiagnosisInputs) -> Diagnosis | None:
    flex = bench.stages.cable
    if flex is None:
        return None
    curves = tuple(
        DiagnosisCurve(one.axis, one.readout_deg, np.rad2deg(one.change.imag[:, bench.middle]), after=index == 0)
        for index, one in enumerate(flex.axes)
    )
    return Diagnosis(
        "cable",
        "readout of the axis / deg",
        "phase of one pass / deg",
        curves,
        f"The cable changes by up to {flex.largest_deg:.2f} deg and {flex.largest_db:.3f} dB over the travel; the way there "
        f"and the way back leave \u00b1{np.rad2deg(flex.expanded):.3f} deg (k = 2), which goes into the budget as cable flexing.",
    )


def _places(bench: _DiagnosisInputs) -> Diagnosis | None:
    if bench.record.attrs.get("style") != "fly":
        return None
    steady = correct(bench.record, bench.stages.drift)
    there, back = flown_both_ways(steady)
    lag = lag_of(steady)
    curves = []
    for line, name in ((there, "forward"), (back, "backward")):
        order = np.argsort(line.wanted)
        places = np.rad2deg(line.wanted[order])
        for shift, after in ((0.0, False), (np.deg2rad(lag.shift_deg), True)):
            values = line.at_wanted(shift)[order][:, bench.middle, 0]
            level = amplitude_db(values) - amplitude_db(values).max()
            near = (np.abs(places - places[int(np.argmax(level))]) < 30.0) & (level > -30.0)
            curves.append(
                DiagnosisCurve(f"{name}, {'put right' if after else 'as reported'}", places[near], level[near], after)
            )
    return Diagnosis(
        "places",
        "reported position of the swept axis / deg",
        "level / dB",
        tuple(curves),
        f"One slice flown both ways: the axis is {lag.shift_deg:+.4f} deg ahead of its readout in the direction of motion "
        f"(standard uncertainty {lag.uncertainty_deg:.4f} deg). Put right, both ways lie on each other.",
    )


def _gate(bench: _DiagnosisInputs) -> Diagnosis:
    recipe = bench.processed.recipe
    assert recipe is not None
    ties = of_role(correct(bench.record, bench.stages.drift), Role.TIE)
    frequency = bench.record["frequency"].values
    mean = ties["trace"].values.mean(axis=0)
    strong = mean[:, int(np.argmax(np.abs(mean).sum(axis=0)))]
    gate = bench.stages.gate
    assert gate is not None  # the step ran
    curves, top = [], 0.0
    for values, name in ((strong, "all"), (gated(strong, frequency, gate), "gated")):
        time, response = impulse_response(values, frequency)
        level = amplitude_db(np.maximum(np.abs(response), 1e-12))
        top = float(level.max()) if name == "all" else top
        curves.append(DiagnosisCurve(name, 1e9 * time, np.maximum(level - top, -80.0), name == "gated"))
    edges = np.repeat(1e9 * (gate.centre_s + np.array([-0.5, 0.5]) * gate.width_s), 2)
    curves.append(DiagnosisCurve("gate", edges, np.array([-80.0, 0.0, 0.0, -80.0])))
    return Diagnosis(
        "gate",
        "delay / ns",
        "impulse response of the ties / dB",
        tuple(curves),
        f"Gate {1e9 * gate.width_s:.2f} ns wide about {1e9 * gate.centre_s:.2f} ns; the span of {np.ptp(frequency) / 1e9:.3g} GHz "
        f"resolves {1e9 / np.ptp(frequency):.2f} ns." + (f" Caution: {gate.caution}." if gate.caution else ""),
    )


def _gain(bench: _DiagnosisInputs) -> Diagnosis:
    transfer, ghz = bench.stages.transfer, bench.processed.frequency_hz / 1e9
    level = amplitude_db(transfer.factor)
    curves = [
        DiagnosisCurve(
            f"port {port + 1}, transfer factor about its mean", ghz, level[:, port] - level[:, port].mean(), True
        )
        for port in range(level.shape[1])
    ]
    curves.append(
        DiagnosisCurve(
            "horn's gain about its mean", ghz, transfer.reference_gain_dbi - transfer.reference_gain_dbi.mean()
        )
    )
    middle = bench.middle
    known = 20.0 / np.log(10.0) * float(transfer.expanded[np.isfinite(transfer.expanded)].max(initial=0.0))
    return Diagnosis(
        "gain",
        "frequency / GHz",
        "level / dB",
        tuple(curves),
        f"Reference gain {transfer.reference_gain_dbi[middle]:.2f} dBi at mid-band, known to "
        f"\u00b1{bench.processed.budget.chamber.reference.gain_uncertainty_db:g} dB; the noise of its repeated sweeps adds "
        f"\u00b1{known:.4f} dB (k = 2).",
    )


def _purity(bench: _DiagnosisInputs) -> Diagnosis:
    transfer, ghz = bench.stages.transfer, bench.processed.frequency_hz / 1e9
    if transfer.factor.shape[1] == 1:
        curves: tuple[DiagnosisCurve, ...] = (
            DiagnosisCurve("port 1", ghz, amplitude_db(np.maximum(np.abs(transfer.leak), 1e-6)), True),
        )
        extra = ""
    else:
        curves = tuple(
            DiagnosisCurve(f"port {a + 1} of a field along port {b + 1}", ghz,
                  amplitude_db(np.maximum(np.abs(transfer.response[:, a, b]), 1e-6)), True)
            for a, b in ((0, 1), (1, 0))
        )  # fmt: skip
        ratio = transfer.imbalance
        extra = f" Port 2 reads {amplitude_db(ratio).mean():+.3f} dB, {np.rad2deg(np.angle(ratio.mean())):+.2f} deg against port 1."
    purest = bench.chamber.reference.cross_polar_db
    return Diagnosis(
        "purity",
        "frequency / GHz",
        "reading across over reading along / dB",
        curves,
        "What the ports read of the reference horn turned by 90 deg: their own impurity, taken out."
        + ("" if purest is None else f" The horn's own {purest:g} dB are left and go into the budget.")
        + extra,
    )


def _assemble(bench: _DiagnosisInputs) -> Diagnosis | None:
    boresight = boresight_by_slice(bench.stages.calibrated, bench.chamber)
    if boresight is None:
        return None
    phi, fixed = boresight[0], boresight[1][:, :, bench.middle]
    mean = fixed.mean(axis=1, keepdims=True)
    size = float(np.linalg.norm(mean))
    order = np.argsort(phi)
    off = amplitude_db(np.maximum(np.linalg.norm(fixed - mean, axis=0) / size, 1e-6))
    return Diagnosis(
        "assemble",
        "slice / deg",
        "difference at the boresight / dB",
        (DiagnosisCurve("against the mean of all slices", phi[order], off[order], True),),
        f"Every slice sees the boresight, from another side: they differ by {level_db(float(np.sqrt(np.mean(10 ** (off / 10))))):.1f} dB "
        "rms of the peak there. Drift, alignment, the probe's impurity and echoes are all in it.",
    )


def _distance(bench: _DiagnosisInputs) -> Diagnosis:
    sphere = bench.processed.sphere
    factor = even_distance_factor(sphere, bench.device, bench.chamber.range_length_m)[bench.middle, :, 0]
    theta = np.rad2deg(sphere.theta)
    return Diagnosis(
        "distance",
        "theta / deg (phi = 0)",
        "level correction / dB",
        (DiagnosisCurve("correction", theta, amplitude_db(factor), True),),
        "A device beside the axes' intersection changes its distance as it turns: level 1/r and phase k r are corrected.",
    )


def _room(bench: _DiagnosisInputs) -> Diagnosis | None:
    heard = bench.processed.heard
    if heard is None:
        return None
    number = np.arange(1.0, heard.factors.size + 1.0)
    shown = amplitude_db(np.abs(heard.factors), least=1e-3)
    curves = (
        DiagnosisCurve("as learned", number, np.zeros(number.size)),
        DiagnosisCurve("as this run shows it", number, shown, after=True),
    )
    return Diagnosis(
        "room",
        "number of the learned echo",
        "strength over the learned one / dB",
        curves,
        f"All learned echoes together are off by {100.0 * heard.off:.0f} % \u00b1 {100.0 * heard.off_expanded:.0f} % (k = 2), phases "
        f"included, and explain {100.0 * max(heard.explained, 0.0):.0f} % of what does not fit the device.",
    )


def _alignment(bench: _DiagnosisInputs) -> Diagnosis | None:
    estimate = bench.processed.alignment
    if estimate is None:
        return None
    curves = (
        DiagnosisCurve("before", np.rad2deg(bench.processed.sphere.theta), _outside_db(bench, bench.stages.sphere)),
        DiagnosisCurve(
            "after", np.rad2deg(bench.processed.sphere.theta), _outside_db(bench, bench.processed.sphere), True
        ),
    )
    return Diagnosis(
        "alignment",
        "theta / deg",
        "what does not fit the device's waves / dB",
        curves,
        f"Misalignment moves data out of the device's waves: {level_db(estimate.residual_before):.1f} dB before the correction, "
        f"{level_db(estimate.residual):.1f} dB after it. {' '.join(s + '.' for s in [*estimate.warnings(), *estimate.sentences()[:2]])}",
    )


def _outside_db(bench: _DiagnosisInputs, sphere: MeasuredSphere) -> FloatArray:
    """Return the rms over a ring of what does not fit, relative to the peak, (theta,)."""
    step, field = bench.processed.step, sphere.field[bench.middle][None]
    kept = resized(step.measured(field), step.keep_order)
    rest = field - synthesis(kept, sphere.theta, sphere.phi.size)
    power = np.mean(np.sum(np.abs(rest) ** 2, axis=1), axis=-1)[0]
    return power_db(power / np.max(np.sum(np.abs(field) ** 2, axis=1)), least=1e-12)


def _spectrum(coefficients: ComplexArray, k: float) -> tuple[FloatArray, FloatArray]:
    """Return (degree, power of both kinds in dB of the whole)."""
    power = Expansion(coefficients, np.asarray(k)).mode_power()
    level = power_db(power / power.sum(), least=1e-12)
    return np.arange(1, level.size + 1).astype(float), np.asarray(level)


def _far_field(bench: _DiagnosisInputs) -> Diagnosis:
    processed, middle = bench.processed, bench.middle
    measured = processed.step.measured(processed.sphere.field[middle][None])[0]
    curves = (
        DiagnosisCurve(
            "as measured, probe and distance in it", *_spectrum(measured, float(processed.expansion.k[middle]))
        ),
        DiagnosisCurve(
            "device",
            *_spectrum(processed.expansion.coefficients[middle], float(processed.expansion.k[middle])),
            after=True,
        ),
    )
    return Diagnosis(
        "far-field",
        "degree of the waves",
        "power / dB of all",
        curves,
        f"Truncated at order {processed.step.keep_order}; the grid resolves orders up to {processed.step.order}. "
        "Higher orders hold noise and stray signals and are discarded.",
    )


def _mode_filter(bench: _DiagnosisInputs) -> Diagnosis | None:
    processed, middle = bench.processed, bench.middle
    own = processed.step.own_waves
    if own is None:
        return None
    open_step = replace(processed.step, own_waves=None)
    whole = open_step.expansion(processed.sphere.field[middle][None])
    k = float(processed.expansion.k[middle])
    whole = Expansion(whole.coefficients[0], np.asarray(k))
    centred = whole.translated(-own.centre_m)
    kept = Expansion(processed.expansion.coefficients[middle], np.asarray(k)).translated(-own.centre_m)
    curves = (
        DiagnosisCurve("before", *_spectrum(centred.coefficients, k)),
        DiagnosisCurve("after", *_spectrum(kept.coefficients, k), after=True),
    )
    return Diagnosis(
        "mode-filter",
        "degree of the waves about the device's own centre",
        "power / dB of all",
        curves,
        f"About its own centre the device needs order {own.order(k)}; higher orders are stray signals and are discarded.",
    )


def _main_lobe(level: FloatArray) -> np.ndarray:
    """Return the mask of the run about the middle that stays within 20 dB of it."""
    weak, middle = np.flatnonzero(~(level > 0.1 * level[level.size // 2])), level.size // 2
    left = weak[weak < middle].max(initial=-1)
    right = weak[weak > middle].min(initial=level.size)
    return np.asarray((np.arange(level.size) > left) & (np.arange(level.size) < right))


def _phase_centre(bench: _DiagnosisInputs) -> Diagnosis:
    processed, middle = bench.processed, bench.middle
    region, slant = float(np.deg2rad(processed.sphere.region_deg)), processed.budget.slant
    coefficients, k = processed.expansion.coefficients[middle], float(processed.expansion.k[middle])
    centre = centre_of(processed, bench.device.slant_deg)
    flat = Expansion(coefficients, np.asarray(k)).translated(-centre.position_m)
    curves = []
    for name, one, after in (
        ("about the axes' intersection", coefficients, False),
        ("about the phase centre", flat.coefficients, True),
    ):
        line = cut(
            one,
            find_beam(one, slant=slant, region=region),
            plane="E",
            slant=slant,
            span_deg=PHASE_SPAN_DEG,
            region=region,
        )
        strong = _main_lobe(np.abs(line.co))
        phase = np.where(strong, np.rad2deg(np.unwrap(np.angle(np.nan_to_num(line.co)))), np.nan)
        curves.append(DiagnosisCurve(name, line.angle_deg, phase - phase[phase.size // 2], after))
    ends = [
        phase_centre(processed.expansion.coefficients[i], float(processed.expansion.k[i]), slant=slant,
        cone_deg=centre.cone_deg,
                     region=region).position_m
        for i in (0, -1)
    ]  # fmt: skip
    wander = 1e3 * float(np.linalg.norm(ends[1] - ends[0]))
    x, y, z = 1e3 * centre.position_m
    return Diagnosis(
        "phase centre",
        "angle from the peak in the E plane / deg",
        "phase / deg",
        tuple(curves),
        f"Phase centre {centre.reason}."
        if centre.reason
        else f"Phase centre at x {x:+.2f}, y {y:+.2f}, z {z:+.2f} mm; from one end of the band to the other it wanders by {wander:.2f} mm.",
    )


#: By the step's name: what it found and did.
DIAGNOSES: dict[str, Callable[[_DiagnosisInputs], Diagnosis | None]] = {
    "cable": _cable,
    "places": _places,
    "gate": _gate,
    "gain": _gain,
    "purity": _purity,
    "assemble": _assemble,
    "distance": _distance,
    "room": _room,
    "alignment": _alignment,
    "far-field": _far_field,
    "mode-filter": _mode_filter,
}
