"""Misalignment from the data: the errors that make a double-sided scan agree with itself.

A device's field has no more waves than its sphere holds; a scan on a tilted, shifted or wrongly
zeroed positioner does not fit into them, because directions left and right of the pole were
seen with opposite errors. Whatever of the misalignment moves the data out of that space is
found by least squares; whatever stays inside (the device's own pose, the roll of the probe) is
reported as not seen, with the prior it came with. Echoes do not fit either: what drawn rooms as strong as the record
shows would do to the estimate is part of its covariance, and an estimate that echoes cover stays with what was declared.
"""

from __future__ import annotations

from dataclasses import dataclass, field, replace
from functools import cached_property, partial

import numpy as np

from colure.analysis.steps.alignment_fit import GIVES_WAY, MOST_UNSURE, AlignmentMisfit, Disturbances, Outside, mixed
from colure.analysis.steps.assemble import MeasuredSphere
from colure.analysis.steps.far_field import FarFieldStep
from colure.analysis.steps.misaligned import ForwardModel, corrected
from colure.geometry.conventions import ComplexArray, FloatArray, IntArray, wavenumber
from colure.geometry.kinematics import ALIGNED, Misalignment
from colure.model.chamber import AlignmentTolerance
from colure.values import briefly_shown, holds_arrays
from colure.waves.modes import resized
from colure.waves.transform import adjoint_synthesis

#: How many of a record's frequencies an estimate looks at.
FREQUENCIES = 3
#: A misalignment as declared that looks as far off as this in fewer cases is called more than declared.
RARE = 0.002
#: A parameter whose uncertainty the data shrink below this share of the prior was seen.
SEEN = 0.5


@dataclass(frozen=True)
class Parameter:
    """One error: name, unit shown, how many of them are one SI unit, what one SI unit of it is, and what to do about it."""

    name: str
    unit: str
    per_si: float
    error: Misalignment
    advice: str

    @property
    def called(self) -> str:
        """What the parameter is called in a sentence, with its key."""
        return f"{CALLED[self.name]} ({self.name})"


DEG, MM = float(np.rad2deg(1.0)), 1e3
PARAMETERS = (
    Parameter("theta_zero", "deg", DEG, replace(ALIGNED, azimuth_zero=1.0),
              "turn the azimuth axis' zero by this much towards negative readouts"),
    Parameter("roll_axis_tilt", "deg", DEG, replace(ALIGNED, carried_axis_tilt=(1.0, 0.0, 0.0)),
              "tilt the roll axis back about the horizontal x axis by this much"),
    Parameter("axes_offset_x", "mm", MM, replace(ALIGNED, carried_axis_offset=(1.0, 0.0, 0.0)),
              "move the roll axis sideways (x) by this much towards negative x"),
    Parameter("axes_offset_y", "mm", MM, replace(ALIGNED, carried_axis_offset=(0.0, 1.0, 0.0)),
              "lower the roll axis (y) by this much"),
    Parameter("probe_roll_zero", "deg", DEG, replace(ALIGNED, probe_roll_zero=1.0),
              "turn the probe's roll zero back by this much"),
)  # fmt: skip
NAMES = tuple(p.name for p in PARAMETERS)
#: What every parameter is called in a sentence.
CALLED = {
    "theta_zero": "zero of the azimuth axis",
    "roll_axis_tilt": "tilt of the roll axis",
    "axes_offset_x": "offset of the axes along x",
    "axes_offset_y": "offset of the axes along y",
    "probe_roll_zero": "zero of the probe's roll",
}
#: Wide priors (one standard deviation, SI) where nothing better is known: one degree, five millimetres.
WIDE = dict(zip(NAMES, (1 / DEG, 1 / DEG, 5 / MM, 5 / MM, 1 / DEG), strict=True))
#: A tolerance of zero says that nothing is to be found: a ten-thousandth of a degree, half a micrometre stand for it.
NARROWEST = 1e-4


@dataclass(frozen=True)
@holds_arrays
class AlignmentResponse:
    """How an estimate answers what is added to a scan: the same echo moves the data and the alignment.

    sphere, step
        The scan and the step at the frequencies that the estimate looked at.
    weights
        (parameter, row) SI values for what lies outside the device's waves.
    by_rooms
        (parameter, parameter) covariance, SI, that drawn rooms and the cable leave in the estimate.
    """

    sphere: MeasuredSphere
    step: FarFieldStep
    weights: FloatArray
    by_rooms: FloatArray

    def to(self, added: ComplexArray) -> FloatArray:
        """Return by how much the parameters (..., parameter), SI, follow fields (..., frequency, 2, theta, phi) that are added."""
        rows = Outside(self.step, self.sphere.theta, self.sphere.phi.size)(added)
        return np.asarray(rows @ self.weights.T)

    def along(self, added: ComplexArray, measured: ComplexArray | None = None) -> ComplexArray:
        """Return complex (n, parameter) whose real part is `to`: when what is added turns in phase, they turn along.

        measured
            The step's coefficients (n, frequency, 2, N(N+2)) of the same fields, if they are known.
        """
        by_field, by_wave = self._traces
        kept = resized(self.step.measured(added) if measured is None else measured, self.step.keep_order)
        n = len(added)
        return np.asarray(added.reshape(n, -1) @ by_field.T - kept.reshape(n, -1) @ by_wave.T)

    @cached_property
    def _traces(self) -> tuple[ComplexArray, ComplexArray]:
        """What fields count (parameter, sample), and what the part of them that fits the device's waves counts (parameter, wave)."""
        half = self.weights.shape[1] // 2
        turned = (self.weights[:, :half] - 1j * self.weights[:, half:]).reshape(-1, *self.sphere.field.shape)
        weighted = turned * np.sqrt(np.sin(self.sphere.theta) + 1e-6)[:, None]
        fitting = adjoint_synthesis(weighted.conj(), self.step.keep_order, self.sphere.theta).conj()
        return weighted.reshape(len(weighted), -1), fitting.reshape(len(weighted), -1)


@dataclass(frozen=True, kw_only=True)
@briefly_shown
class Estimate:
    """What was found, SI units: values, expanded uncertainties (k = 2), and what was seen.

    residual, residual_before
        What of the data does not fit into the device's waves, relative, after and before correction.
    declared
        What was expected of each parameter beforehand and how well (k = 2).
    alone
        What the data say without that: values and expanded uncertainties (k = 2) of the parameters they say something of.
    conflict
        Probability that a range as declared gives data as far off the declaration, or farther.
    apart
        Expanded uncertainties without the part of echoes and cable, which the budget lets pass through the estimate themselves.
    alike
        What cannot be told from a parameter, in words: its value is the sum.
    answer
        What the estimate makes of fields that are added to the scan.
    """

    values: dict[str, float]
    expanded: dict[str, float]
    seen: dict[str, bool]
    residual: float
    residual_before: float
    declared: dict[str, tuple[float, float]] = field(default_factory=dict)
    alone: dict[str, tuple[float, float]] = field(default_factory=dict)
    conflict: float = 1.0
    apart: dict[str, float] = field(default_factory=dict)
    alike: dict[str, str] = field(default_factory=dict)
    answer: AlignmentResponse | None = None

    def beyond(self) -> dict[str, float]:
        """Return by how many standard deviations the data are off what was declared, for parameters that are clearly so."""
        out = {}
        for name, (value, expanded) in self.alone.items():
            expected, allowed = self.declared[name]
            off = abs(value - expected) / (0.5 * float(np.hypot(expanded, allowed)))
            if off > GIVES_WAY:
                out[name] = off
        return out

    def sentences(self) -> list[str]:
        """Say in plain words what to turn and which way, largest effect in units of its uncertainty first; see `warnings` too."""
        table = {p.name: p for p in PARAMETERS}
        order = sorted(self.values, key=lambda name: -abs(self.values[name]) / self.expanded[name])
        return [self._sentence(table[name]) for name in order]

    def warnings(self) -> list[str]:
        """Say which adjustments are off by more than was declared, in plain words."""
        table = {p.name: p for p in PARAMETERS}
        out = []
        for name in self.beyond():
            p, (value, expanded), (expected, allowed) = table[name], self.alone[name], self.declared[name]
            about = f" about {p.per_si * expected:+.3g}" if expected else ""
            out.append(
                f"{p.called} is MORE than what is declared: {p.per_si * value:+.3f} \u00b1 {p.per_si * expanded:.3f} {p.unit} from the data"
                f" alone, declared \u00b1{p.per_si * allowed:.2g} {p.unit}{about}: adjust it, or correct [alignment] in chamber.toml"
            )
        if not out and self.conflict < RARE:
            out.append(
                "the misalignment as a whole is MORE than what is declared: a range as declared looks like this in "
                f"{100 * self.conflict:.2g} % of cases; check every entry of [alignment] in chamber.toml"
            )
        return out

    def _sentence(self, p: Parameter) -> str:
        value, expanded = p.per_si * self.values[p.name], p.per_si * self.expanded[p.name]
        if not self.seen[p.name]:
            return f"{p.called}: not seen by this scan, which leaves it open to \u00b1{expanded:.2g} {p.unit}; the declared tolerance holds"
        alike = f" ({self.alike[p.name]})" if p.name in self.alike else ""
        advice = p.advice if abs(value) > expanded else "nothing to do"
        return f"{p.called}: {value:+.3f} \u00b1 {expanded:.3f} {p.unit}{alike}: {advice}"


def readings_of(tolerance: AlignmentTolerance) -> dict[str, float]:
    """Return what laser, level or indicator read, SI, by parameter; those not read are left out."""
    table = {p.name: p.per_si for p in PARAMETERS}
    return {name: one.value / table[name] for name, one in tolerance.readings if one is not None}


def without_own(tolerance: AlignmentTolerance, run: str) -> AlignmentTolerance:
    """Return tolerances without the readings that a run told itself: it would count its data twice."""
    own = {name: None for name, one in tolerance.readings if one is not None and one.run == run}
    if not own:
        return tolerance
    return tolerance.model_copy(update={"readings": tolerance.readings.model_copy(update=own)})


def declared_prior(tolerance: AlignmentTolerance, distance_m: float = np.inf) -> dict[str, float]:
    """Return what a set-up protocol or a reading says (k = 2) as one standard deviation per parameter, SI.

    distance_m
        Range length: a probe beside its place looks like a theta zero, and what is found is their sum.
    """
    table = {p.name: p.per_si for p in PARAMETERS}
    read = {name: 0.5 * one.expanded / table[name] for name, one in tolerance.readings if one is not None}
    aside = 0.5e-3 * tolerance.probe_lateral_mm / np.sqrt(2.0) / distance_m
    read |= {"theta_zero": float(np.hypot(read["theta_zero"], aside))} if "theta_zero" in read else {}
    return {
        "theta_zero": float(np.hypot(0.5 * tolerance.theta_zero_deg / DEG, aside)),
        "roll_axis_tilt": 0.5 * tolerance.roll_axis_tilt_deg / DEG,
        "axes_offset_x": 0.5 * tolerance.axes_offset_mm / MM,
        "axes_offset_y": 0.5 * tolerance.axes_offset_mm / MM,
        "probe_roll_zero": 0.5 * tolerance.probe_roll_zero_deg / DEG,
        **read,
    }


def left_over(tolerance: AlignmentTolerance, alignment: Estimate) -> AlignmentTolerance:
    """Return the tolerances that hold after the correction, echoes apart: what the data say no better keeps its own.

    What echoes do to the estimate goes with what they do to the scan, room by room (`AlignmentResponse`).
    """
    expanded = {p.name: p.per_si * (alignment.apart or alignment.expanded)[p.name] for p in PARAMETERS}
    return tolerance.model_copy(update={
        "theta_zero_deg": expanded["theta_zero"],
        "roll_axis_tilt_deg": expanded["roll_axis_tilt"],
        "axes_offset_mm": expanded["axes_offset_x"],
        "probe_roll_zero_deg": min(tolerance.probe_roll_zero_deg, expanded["probe_roll_zero"]),
    })  # fmt: skip


def misalignment_from(values: dict[str, float]) -> Misalignment:
    """Return the rigid errors that parameter values (SI) stand for."""
    return mixed(tuple(p.error for p in PARAMETERS), np.array([values[p.name] for p in PARAMETERS]))


def estimate(
    sphere: MeasuredSphere,
    step: FarFieldStep,
    distance_m: float,
    *,
    prior: dict[str, float] | None = None,
    read: dict[str, float] | None = None,
    frequencies: int = FREQUENCIES,
    disturbances: Disturbances | None = None,
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
    disturbances
        What else the record holds, at the frequencies looked at; noise alone if None.

    Raises
    ------
    ValueError
        If the scan is not a whole sphere in great-circle slices.
    """
    if not sphere.whole:
        raise ValueError("alignment: needs a whole sphere; part of one does not close on itself (deg)")
    widths = np.array([max({**WIDE, **(prior or {})}[name], NARROWEST * WIDE[name]) for name in NAMES])
    some, there = looked_upon(sphere, step, frequencies)
    expected = np.array([(read or {}).get(name, 0.0) for name in NAMES])
    errors = tuple(mixed((p.error,), np.array([width])) for p, width in zip(PARAMETERS, widths, strict=True))
    fit = AlignmentMisfit(some, there, ForwardModel(some, distance_m), partial(mixed, errors), len(errors)).solve(
        expected / widths, Disturbances() if disturbances is None else disturbances
    )
    sigma, apart = (widths * np.sqrt(np.diag(one)) for one in (fit.covariance, fit.quiet))
    told = fit.alone_sigma < MOST_UNSURE
    alone = {
        name: (float(expected[i] + widths[i] * fit.alone[i]), float(2.0 * widths[i] * fit.alone_sigma[i]))
        for i, name in enumerate(NAMES)
        if told[i]
    }
    return Estimate(
        values=_named(widths * fit.parameters),
        expanded=_named(2.0 * sigma),
        # What is off by more than declared was looked for more widely.
        seen=dict(zip(NAMES, (bool(x) for x in sigma < SEEN * widths * fit.wider), strict=True)),
        residual=fit.after,
        residual_before=fit.before,
        declared={name: (float(expected[i]), float(2.0 * widths[i])) for i, name in enumerate(NAMES)},
        alone=alone,
        conflict=fit.conflict,
        apart=_named(2.0 * apart),
        alike=_alike(float(np.mean(wavenumber(some.frequency_hz))), distance_m),
        answer=AlignmentResponse(
            some, there, widths[:, None] * fit.weights, np.outer(widths, widths) * (fit.covariance - fit.quiet)
        ),
    )


def _named(values: FloatArray) -> dict[str, float]:
    return {name: float(value) for name, value in zip(NAMES, values, strict=True)}


def _alike(k: float, distance_m: float) -> dict[str, str]:
    """Return what cannot be told from a parameter, in words with its size."""
    return {
        "theta_zero": f"with the probe's place across the range: 1 mm of it looks like {DEG * 1e-3 / distance_m:.3f} deg",
        "axes_offset_x": f"with the cable's bend: 1 deg of phase at 90 deg of azimuth looks like {MM / DEG / k:.3f} mm",
    }


def looked_upon(sphere: MeasuredSphere, step: FarFieldStep, frequencies: int) -> tuple[MeasuredSphere, FarFieldStep]:
    """Return a scan and its step at the frequencies that an estimate looks at."""
    chosen = looked_at(sphere.frequency_hz.size, frequencies)
    some = replace(sphere, frequency_hz=sphere.frequency_hz[chosen], field=sphere.field[chosen])
    return some, replace(step, k=step.k[chosen], response=step.response.at(chosen))


def aligned_field(sphere: MeasuredSphere, step: FarFieldStep, distance_m: float, alignment: Estimate) -> ComplexArray:
    """Return the field (frequency, 2, theta, phi) as an aligned range would have measured it.

    Every frequency is corrected for itself: some of them come out as all of them do.
    """
    return corrected(sphere, step, ForwardModel(sphere, distance_m), misalignment_from(alignment.values), ALIGNED)[0]


def looked_at(count: int, frequencies: int = FREQUENCIES) -> IntArray:
    """Return which of `count` frequencies an estimate looks at, spread over the band."""
    return np.unique(np.linspace(0, count - 1, frequencies).round().astype(int))
