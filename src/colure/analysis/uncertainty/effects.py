"""What every cause does to every figure at every frequency, and the intervals of figures that are moduli."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from functools import cached_property
from functools import partial as bound

import numpy as np

from colure.analysis.figures.delay import delay_ns
from colure.analysis.figures.places import FieldReading
from colure.analysis.figures.response import PatternChanges, Response
from colure.analysis.uncertainty.combination import Contribution, bounded_mean, joint_weights, which_input
from colure.analysis.uncertainty.edges_apart import farthest_widths
from colure.analysis.uncertainty.lobes_apart import vanishing
from colure.analysis.uncertainty.modulus import may_be_largest, modulus_intervals
from colure.analysis.uncertainty.rivals import corrections
from colure.analysis.uncertainty.trial import Perturbation, Trial
from colure.geometry.conventions import SPEED_OF_LIGHT, ComplexArray, FloatArray, amplitude_db, wrapped
from colure.geometry.directions import angle_between, azimuth_over_elevation

#: Joint draws of the fields that moduli are inverted from: 25 of them lie beyond either end.
MODULUS_DRAWS = 1000
#: What a first room raises low levels by on average, over what a second one as strong does on top of it. Amplitudes of minima rise
#: with the root of the echoes' power, 1 / (sqrt 2 - 1); powers alike, 1 (derivable). The rms of what lies between (common practice, no source).
FIRST_OVER_SECOND = float(np.sqrt((1.0 + (1.0 + np.sqrt(2.0)) + (1.0 + np.sqrt(2.0)) ** 2) / 3.0))
#: A wave whose axial ratio is larger is linear for every use: no sense is told (common practice, no source).
LINEAR_DB = 40.0


@dataclass(frozen=True)
class Ends:
    """Ends of a native interval."""

    low: float
    high: float


class CauseEffects:
    """All causes on all figures.

    contributions
        One a cause, effects (n, frequency, figure).
    """

    def __init__(self, trial: Trial, every: Sequence[Perturbation]) -> None:
        self._bench, self._every = trial, every
        figures, names = trial.inputs.figures, trial.inputs.figures.names
        self._responses = [
            Response(figures, c, float(k), near, dict(zip(names, row, strict=True)))
            for c, k, near, row in zip(
                trial.nominal.coefficients, trial.nominal.k, trial.near, trial.values, strict=True
            )
        ]
        self._answers = [
            one.answer(np.concatenate([cause.changes[:, f] for cause in every]))
            for f, one in enumerate(self._responses)
        ]
        effects = self._table()
        ends = np.cumsum([len(one.changes) for one in every])[:-1]
        self.contributions: list[Contribution] = [
            trial.contribution(one, one.with_beside(part, names))
            for one, part in zip(every, np.split(effects, ends), strict=True)
        ]

    def _table(self) -> FloatArray:
        """Return effects (n, frequency, figure)."""
        names = self._bench.inputs.figures.names
        count = sum(len(one.changes) for one in self._every)
        out = np.zeros((count, len(self._answers), len(names)))
        band = along_the_band(self._answers, self._responses) if len(self._answers) > 1 else {}
        anew = [i for i, what in enumerate(self._bench.inputs.figures.definitions) if what.anew]
        for i, name in enumerate(names):
            if name in band:
                out[:, :, i] = band[name]
                continue
            for f, one in enumerate(self._answers):
                out[:, f, i] = one.changes.get(name, 0.0)
        self._against_rivals(out)
        if anew:
            out[:, :, anew] = self._read_anew([names[i] for i in anew]) - self._bench.values[:, anew]
            self._as_the_record_was_filled(out, anew)
        return np.where(np.isfinite(out), out, np.inf)

    def _as_the_record_was_filled(self, out: FloatArray, columns: Sequence[int]) -> None:
        """Widen what draws that stand for a bound raise levels by on average, in effects (n, frequency, figure), for what raised them before.

        A draw fills minima of a record that errors as strong have filled already: the first room did more than a second one does.
        """
        ends = np.cumsum([0, *(len(one.changes) for one in self._every)])
        for one, begin, end in zip(self._every, ends[:-1], ends[1:], strict=True):
            if one.cause.distribution == "as drawn" and not one.cause.known_mean:
                part = np.ix_(np.arange(begin, end), np.arange(out.shape[1]), np.asarray(columns))
                out[part] += (FIRST_OVER_SECOND - 1.0) * np.maximum(bounded_mean(out[part]), 0.0)

    def _read_anew(self, names: Sequence[str]) -> FloatArray:
        """Return figures (n, frequency, name) of every changed pattern that are read over many directions."""
        figures, nominal = self._bench.inputs.figures, self._bench.nominal.coefficients
        rows = []
        for cause in self._every:
            for change in cause.changes:
                by_frequency = [
                    figures.read_anew(one, float(k), near)
                    for one, k, near in zip(nominal + change, self._bench.nominal.k, self._bench.near, strict=True)
                ]
                rows.append([[one[name] for name in names] for one in by_frequency])
        return np.array(rows)

    def _against_rivals(self, out: FloatArray) -> None:
        """Let noise, and echoes that swing with the probe, choose among nearly equal maxima, in effects (n, frequency, figure)."""
        names = self._bench.inputs.figures.names
        ends = np.cumsum([0, *(len(one.changes) for one in self._every)])
        for one, begin, end in zip(self._every, ends[:-1], ends[1:], strict=True):
            for f, (response, answer) in enumerate(zip(self._responses, self._answers, strict=True)):
                if one.cause.known_mean or one.picked:
                    part = slice(int(begin), int(end))
                    fields, gain_db = answer.fields[part], answer.gain_db[part]
                    more_of = corrections(response, fields, gain_db, at_most=not one.cause.known_mean)
                    for name, more in more_of.items():
                        if name in names:
                            out[part, f, names.index(name)] += more

    def ends(self) -> list[dict[str, Ends]]:
        """Return the native intervals of moduli, for every frequency by the figure's name."""
        return self._ends

    @cached_property
    def _ends(self) -> list[dict[str, Ends]]:
        both = zip(self._responses, self._answers, strict=True)
        ends = [moduli(one, answer, self._joint, self._always, self._drawn) for one, answer in both]
        for cause in self._every:
            for name, (low, high) in cause.beside_ends.items():
                for one, a, b in zip(ends, low, high, strict=True):
                    one[name] = Ends(float(a), float(b))
        return ends

    def widths(self) -> list[dict[str, tuple[float, float]]]:
        """Return by how much beamwidths may be narrower and wider where an edge lies on a shoulder, for every frequency by name."""
        both = zip(self._responses, self._answers, strict=True)
        return [farthest_widths(one, answer, self._joint, self._always) for one, answer in both]

    def reasons(self) -> list[dict[str, str]]:
        """Return why figures are not defined within the errors, for every frequency by name."""
        by_frequency = [
            vanishing(one, answer, self._joint) for one, answer in zip(self._responses, self._answers, strict=True)
        ]
        return (
            [{**why, **_senseless(ends)} for why, ends in zip(by_frequency, self.ends(), strict=True)]
            if self._hands
            else by_frequency
        )

    @property
    def _hands(self) -> bool:
        return "circular" in self._bench.inputs.figures.bases

    @cached_property
    def _joint(self) -> ComplexArray:
        """Weights (draw, change) of all causes in joint draws, without what every draw holds."""
        return np.asarray(np.concatenate(self._weights, axis=1) - self._always, complex)

    @cached_property
    def _weights(self) -> list[FloatArray | ComplexArray]:
        return joint_weights(self.contributions, MODULUS_DRAWS, seed=self._bench.inputs.seed, turned=True)

    @cached_property
    def _drawn(self) -> list[FloatArray]:
        """Which input each joint draw holds (draw, input), of every cause that was drawn."""
        both = zip(self._weights, self.contributions, strict=True)
        return [which_input(weights.real) for weights, one in both if one.distribution == "as drawn"]

    @cached_property
    def _always(self) -> FloatArray:
        """Weights (change,) that every draw holds: those of known biases that stay in the value."""
        parts = [np.full(len(one.changes), float(one.cause.distribution == "bias")) for one in self._every]
        return np.concatenate(parts)


def moduli(
    response: Response,
    answer: PatternChanges,
    joint: ComplexArray,
    always: FloatArray,
    drawn: Sequence[FloatArray] = (),
) -> dict[str, Ends]:
    """Return the intervals of one pattern's moduli; `always` (change,) as in `CauseEffects`, `drawn` as in `modulus_intervals`."""
    readings = response.places.readings
    asked = [_asked(response, one, answer, joint, always) for one in readings]
    ellipse = "axial_ratio_db" in response.values
    moves = response.moves(answer.fields)

    def at_the_peak(value: complex, errors: ComplexArray, following: Callable[[FloatArray], ComplexArray]) -> None:
        # Read where the peak is thought to be: of a sum of errors, not the sum of their moves.
        known = always @ (errors + following(moves.real))
        drawn_there = joint @ errors + following((joint @ moves).real)
        asked.append((np.array([[value - known]]), drawn_there[:, None, None]))

    if ellipse:
        at_the_peak(response.circular, response.circular_error(answer.fields), response.circular_moves)
    partial = response.components(answer.fields[:, 0]) if response.figures.bases else {}
    for name, (value, errors) in partial.items():
        at_the_peak(value, errors, bound(response.component_moves, name))
    intervals = modulus_intervals(asked, drawn=drawn)
    out = {one.name: _scaled(response, one, *ends) for one, ends in zip(readings, intervals, strict=False)}
    if ellipse:
        out |= _of_ellipse(*intervals[len(readings)], float(np.sign(response.values["circularity"])))
    ends = intervals[len(readings) + int(ellipse) :]
    for (name, (value, _)), (low, high) in zip(partial.items(), ends, strict=True):
        out[name] = Ends(min(low, abs(value)), max(high, abs(value)))
    return out


def _senseless(ends: dict[str, Ends]) -> dict[str, str]:
    """Return why an axial ratio has no sense that can be told, by the figure's name."""
    ratio = ends.get("axial_ratio_signed_db")
    if ratio is None:
        return {}
    least = max(abs(ratio.low), abs(ratio.high))
    if ratio.low * ratio.high > 0.0 and least > 10.0 ** (-LINEAR_DB / 20.0):
        return {}
    said = f"at least {-amplitude_db(least):.0f} dB" if least > 0.0 else "without bound"
    return {
        "axial_ratio_signed_db": f"cannot tell the sense, because the wave is linear within its errors (axial ratio {said})"
    }


def _asked(
    response: Response, one: FieldReading, answer: PatternChanges, joint: ComplexArray, always: FloatArray
) -> tuple[ComplexArray, ComplexArray]:
    """Return the fields of one reading less known biases, those that may be the largest, and what joint draws add to them."""
    ratio, errors = response.ratios(one), response.errors(one, answer.fields)
    # A minimum is met a little beside its place, where the field has run on: that is no part of what fills it.
    true = response.filling(one, ratio - np.tensordot(always, errors, axes=1))
    spread = np.sqrt(np.sum(np.abs(_rms(errors)) ** 2, axis=-1))
    kept = may_be_largest(true, spread)
    few = (errors if one.slope is None else response.errors(one, answer.fields, slid=False))[:, kept]
    if one.drift is not None:
        # The peak moves by a real angle, however draws turn in phase: of their sum, not the sum of their moves.
        moves = response.moves(answer.fields)
        few = few - response.drifts(one, moves.real)[:, kept]
    drawn = (joint @ few.reshape(len(few), -1)).reshape(-1, *few.shape[1:])
    if one.drift is not None:
        drawn = drawn + response.drifts(one, (joint @ moves).real)[:, kept]
    # Draws turn in phase: only then is known what of them moves a minimum along the cut.
    drawn = response.filling(replace(one, slope=None if one.slope is None else one.slope[kept]), drawn)
    return true[kept], drawn


def _scaled(response: Response, one: FieldReading, low: float, high: float) -> Ends:
    """Return the interval of one reading, never without the value."""
    # Read between the places as well, the figure itself is a little larger.
    value = response.values[one.name]
    scale = value / float(np.max(np.linalg.norm(response.filling(one, response.ratios(one)), axis=-1)))
    return Ends(min(low * scale, value), max(high * scale, value))


def _rms(errors: ComplexArray) -> FloatArray:
    """Return about how large errors (n, place, component) of all causes are together."""
    return np.asarray(np.sqrt(np.sum(np.abs(errors) ** 2, axis=0) / max(1.0, 0.25 * len(errors))))


def _of_ellipse(low: float, high: float, sense: float) -> dict[str, Ends]:
    """Return the intervals of axial ratio and circularity from that of the weaker circular component over the stronger."""
    ratio = sorted(abs(1.0 - w) / (1.0 + w) for w in (low, high))
    least = 0.0 if low <= 1.0 <= high else ratio[0]
    circular = sorted(sense * (1.0 - w * w) / (1.0 + w * w) for w in (low, high))
    signed = sorted((sense * least, sense * ratio[1]))
    return {"axial_ratio_db": Ends(least, ratio[1]), "circularity": Ends(*circular),
            "axial_ratio_signed_db": Ends(*signed),
            "xpd_circular_db": Ends(max(low, 0.0), high)}  # fmt: skip


def along_the_band(answers: Sequence[PatternChanges], responses: Sequence[Response]) -> dict[str, FloatArray]:
    """Return changes (n, frequency) of the figures that need the neighbours, by name."""
    k = np.array([one.k for one in responses])
    frequency = k * SPEED_OF_LIGHT / (2.0 * np.pi)
    phase = np.stack([one.phase for one in answers], axis=1)
    then = np.stack([one.places.directions[0] for one in responses])
    now = np.stack([one.direction for one in answers], axis=1)  # (n, frequency, 3)
    middle = len(responses) // 2
    squint = _squint(now, middle) - _squint(then, middle)
    centre = [one.near.centre_m for one in responses]
    changes = {"group_delay_ns": delay_ns(phase, frequency, change=True), "squint_deg": squint}
    if all(one is not None for one in centre):
        place = np.stack([one for one in centre if one is not None])
        moved = np.stack([one.centre_m for one in answers], axis=1)
        changes["phase_centre_wander_mm"] = _wander(place + moved, middle) - _wander(place, middle)
    return changes


def _squint(directions: FloatArray, middle: int) -> FloatArray:
    """Return the angle to the middle frequency's direction in degrees, with the sign of the larger of azimuth and elevation.

    directions (..., frequency, 3); result (..., frequency).
    """
    at_middle = directions[..., middle : middle + 1, :]
    here, there = azimuth_over_elevation(directions), azimuth_over_elevation(at_middle)
    az, el = (wrapped(a - b) for a, b in zip(here, there, strict=True))
    sign = np.sign(np.where(np.abs(az) >= np.abs(el), az, el))
    return np.asarray(sign * np.rad2deg(angle_between(directions, at_middle)))


def _wander(centre_m: FloatArray, middle: int) -> FloatArray:
    """Return the distance to the middle frequency's phase centre in millimetres, with the sign of its largest component.

    centre_m (..., frequency, 3); result (..., frequency).
    """
    moved = 1e3 * (centre_m - centre_m[..., middle : middle + 1, :])
    largest = np.take_along_axis(moved, np.argmax(np.abs(moved), axis=-1)[..., None], axis=-1)[..., 0]
    return np.asarray(np.linalg.norm(moved, axis=-1) * np.sign(largest))
