"""A cause of uncertainty, the trial in which it is applied, and what it adds to the device's waves and so to every figure."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from functools import cached_property
from typing import Literal, Protocol

import numpy as np

from colure.analysis.figures.beams import Near
from colure.analysis.steps.misaligned import ForwardModel
from colure.analysis.steps.realigned import Realigned
from colure.analysis.uncertainty.combination import DIVISORS, DRAWN, Contribution, Distribution
from colure.analysis.uncertainty.inputs import Inputs
from colure.geometry.conventions import ComplexArray, FloatArray, power_db
from colure.geometry.kinematics import ALIGNED, Misalignment
from colure.model.chamber import Chamber
from colure.values import holds_arrays
from colure.waves.expansion import Expansion
from colure.waves.modes import resized

#: Fields that are transformed together; bounds the memory.
BLOCK = 8
CauseKind = Literal["measured", "declared"]


class Declarations(Protocol):
    """What a cause asks whether it was declared."""

    @property
    def chamber(self) -> Chamber:
        """The chamber as it was declared."""
        ...

    @property
    def mismatch_db(self) -> float:
        """Expanded uncertainty by declared reflections, dB; 0 where none are known."""
        ...


def _always(inputs: Inputs) -> bool:
    return True


@dataclass(frozen=True, kw_only=True)
class Cause:
    """One cause of uncertainty: all that the budget knows of it, whatever was measured.

    key
        Its name; budget rows of a group are called `group: key`.
    text
        What is wrong, and how the cause is applied to the data.
    needs
        What of the record or the declarations it looks at.
    perturb
        Returns what the cause adds to the waves of a trial, drawn from a random stream where it is drawn.
    distribution
        Says by what the half width is divided (`combination.DIVISORS`). `Monte Carlo`: draws of something normal. `as drawn`:
        draws whose own distribution counts, each of any phase: two changes a draw, in phase and in quadrature.
    kind
        Whether the size is `measured` by the record or `declared` beforehand, unless a perturbation says otherwise.
    type_a
        True: evaluated by statistics (JCGM 100:2008, 4.2).
    known_mean
        True: what draws do on average is known and is taken off the value (JCGM 100:2008, 3.2.4). False: they stand for a
        bound; the value stays, and the interval is long enough for a source as strong as the bound and for none.
    common
        True: it moves all levels alike, and nothing that is relative to the peak.
    declared
        Tells whether it was declared; None where nothing needs to be.
    applies
        Tells whether it exists in such a measurement.
    missing
        Under what name a figure says that it is not included, where nobody declared it; empty where it always is.
    stream
        Which random stream it draws from. Causes of one stream draw from it one after the other.
    """

    key: str
    text: str
    needs: str
    perturb: Callable[[Cause, Trial, np.random.Generator], Perturbation]
    distribution: Distribution
    kind: CauseKind = "declared"
    group: str = ""
    type_a: bool = False
    known_mean: bool = False
    common: bool = False
    declared: Callable[[Declarations], bool] | None = None
    applies: Callable[[Inputs], bool] = _always
    missing: str = ""
    stream: tuple[int, ...] = ()

    @property
    def row(self) -> str:
        """Name of the budget's row."""
        return f"{self.group}: {self.key}" if self.group else self.key

    @property
    def drawn(self) -> bool:
        """Tell whether its changes are draws."""
        return self.distribution in DRAWN

    @property
    def divisor(self) -> float:
        """Half width over standard uncertainty."""
        return DIVISORS[self.distribution]

    def concerns(self, inputs: Inputs) -> bool:
        """Tell whether a budget of these inputs has a row for it."""
        return (self.declared is None or self.declared(inputs)) and self.applies(inputs)


@dataclass(frozen=True)
@holds_arrays
class Perturbation:
    """What one cause adds to the device's waves.

    changes (n, frequency, 2, J)
        Change of the waves when the source is off by its half width, one for every direction in which it may be (a phase that
        is unknown: in phase and in quadrature); of drawn causes one a draw. The figures' changes are worked out from them.
    basis
        What the size is known from, in words.
    size, unit
        The half width that was applied, where it is one number.
    kind
        `measured` by this record, or `declared` beforehand; the cause's own if None.
    dof
        Degrees of freedom of the half width as it is known.
    beside
        Figures that the cause moves without moving the waves: by name, the change (frequency,) of the native value.
    beside_ends
        Native intervals (low and high, each (frequency,)) of figures that nothing else moves, by name.
    shared (frequency,)
        Mean square, in dB of the radiated power, of what draws have in common with the same errors that the record holds.
    picked
        True: the largest of many like directions may be one that the record's own errors of this kind raised.
    """

    cause: Cause
    changes: ComplexArray
    basis: str
    size: float | None = None
    unit: str = ""
    kind: CauseKind | None = None
    dof: float = float("inf")
    shared: FloatArray | None = None
    picked: bool = False
    beside: Mapping[str, FloatArray] = field(default_factory=dict)
    beside_ends: Mapping[str, tuple[FloatArray, FloatArray]] = field(default_factory=dict)

    def with_beside(self, effects: FloatArray, names: Sequence[str]) -> FloatArray:
        """Return effects (n, frequency, figure) of the changed waves with what the cause moves beside them."""
        if not self.beside:
            return effects
        out = effects.copy()
        for name, change in self.beside.items():
            if name in names:
                out[:, :, list(names).index(name)] += change
        return out

    @property
    def known_as(self) -> CauseKind:
        """`measured` or `declared`."""
        return self.cause.kind if self.kind is None else self.kind


def perturbations(trial: Trial, causes: Iterable[Cause]) -> Iterator[Perturbation]:
    """Yield what each of the causes that concern a measurement adds to its waves."""
    seed = trial.inputs.seed
    streams: dict[tuple[int, ...], np.random.Generator] = {}
    for one in causes:
        if not one.concerns(trial.inputs):
            continue
        if one.stream not in streams:
            streams[one.stream] = np.random.default_rng((seed, *one.stream) if one.stream else seed)
        yield one.perturb(one, trial, streams[one.stream])


class Readout(Protocol):
    """What causes move: figures, or levels of a cut."""

    @property
    def radiated(self) -> FloatArray:
        """By how many dB each of them moves when the radiated power grows by 1 dB and the peak stays."""
        ...


@dataclass(frozen=True)
@holds_arrays
class Trial:
    """The nominal result that every cause is compared with.

    readout
        What is read from it; the figures of the inputs if None.
    tilt_deg
        Half of the interval that the other causes give the tilt of the ellipse at the middle frequency; None before that is known.
    """

    inputs: Inputs
    nominal: Expansion
    values: FloatArray
    near: list[Near]
    readout: Readout | None = None
    tilt_deg: float | None = None

    @cached_property
    def realigned(self) -> Realigned | None:
        """What the alignment from the data takes off together with an error; None where no alignment was estimated."""
        inputs = self.inputs
        if inputs.answer is None:
            return None
        return Realigned(inputs.answer, inputs.sphere, inputs.step, inputs.chamber.range_length_m)

    @cached_property
    def measured(self) -> ComplexArray:
        """Waves that the probe measured (frequency, 2, J): those of the device before the probe's response is taken out."""
        return self.inputs.step.measured(self.inputs.sphere.field)

    @cached_property
    def misaligned(self) -> ForwardModel:
        """What a misaligned positioner or probe makes of the measured field."""
        chamber = self.inputs.chamber
        return ForwardModel(self.inputs.sphere, chamber.range_length_m, chamber.positioner.geometry)

    @cached_property
    def _as_it_should(self) -> ComplexArray:
        """The field (frequency, 2, theta, phi) as the waves have it where nothing is misaligned."""
        return self.misaligned.read(self.measured, ALIGNED)

    def misread(self, error: Misalignment) -> ComplexArray:
        """Return what a misalignment adds to the measured field."""
        return np.asarray(self.misaligned.read(self.measured, error) - self._as_it_should)

    def each_before_alignment(self, fields: Sequence[ComplexArray]) -> ComplexArray:
        """Return the changes of the waves (n, frequency, 2, J) when the field before the alignment was one of several others."""
        blocks = [np.stack(fields[begin : begin + BLOCK]) for begin in range(0, len(fields), BLOCK)]
        return np.concatenate([self.changed_before_alignment(one) for one in blocks])

    def changed_before_alignment(self, field: ComplexArray) -> ComplexArray:
        """Return the change of the waves (..., frequency, 2, J) when the field before the alignment was another by as much."""
        change = self.changed_field(field)
        return change if self.realigned is None else np.asarray(change - self.realigned.without(field))

    def changed_field(self, field: ComplexArray) -> ComplexArray:
        """Return the change of the waves (..., frequency, 2, J) when the measured field (..., frequency, 2, theta, phi) is another."""
        sphere = self.inputs.sphere
        field, many = sphere.field + sphere.as_assembled(field - sphere.field), field.ndim > sphere.field.ndim
        changes = self.changed(self.inputs.step.expansion(field if many else field[None]))
        return changes if many else np.asarray(changes[0])

    def changed(self, expansion: Expansion) -> ComplexArray:
        """Return the change of the waves (..., frequency, 2, J) with another expansion."""
        return np.asarray(resized(expansion.coefficients, self.nominal.order) - self.nominal.coefficients)

    def scaled(self, level_db: float) -> ComplexArray:
        """Return the change of the waves (frequency, 2, J) when every level is higher by so much."""
        return np.asarray((10.0 ** (level_db / 20.0) - 1.0) * self.nominal.coefficients)

    def contribution(self, one: Perturbation, effects: FloatArray | None = None) -> Contribution:
        """Return what a perturbation does to every figure: effects (n, frequency, figure), read anew from every changed pattern if None."""
        if effects is None:
            effects = self.effects(one.changes)
        radiated = (self.inputs.figures if self.readout is None else self.readout).radiated
        if one.shared is not None and radiated.any():
            effects = _less(effects, radiated, one.shared)
        if one.cause.known_mean:
            power = np.sum(np.abs(self.nominal.coefficients) ** 2, axis=(-2, -1))
            share = np.sum(np.abs(one.changes) ** 2, axis=(-2, -1)).mean(axis=0) / power
            effects = _with_mean_in_doubt(effects, radiated, share, one.dof)
        return Contribution(effects, one.cause.distribution, one.dof, one.cause.known_mean)

    def effects(self, changes: ComplexArray) -> FloatArray:
        """Return by how much figures (n, frequency, figure) move with changes of the waves (n, frequency, 2, J).

        Every changed pattern is read anew. A figure that a change makes vanish is moved without bound: its effect is infinite.
        """
        return np.stack([self._effect(one) for one in changes])

    def _effect(self, change: ComplexArray) -> FloatArray:
        figures = self.inputs.figures
        figure_values = figures.values(
            self.nominal.with_coefficients(self.nominal.coefficients + change), near=self.near
        )
        moved = _turned_back(figure_values - self.values, figures.names)
        gone = ~np.isfinite(figure_values) & np.isfinite(self.values)
        return np.asarray(np.where(gone, np.inf, np.nan_to_num(moved)))


#: 10 / ln 10: dB of a power per relative change of it.
DB_PER_SHARE = 10.0 / float(np.log(10.0))
#: Noise that carries a larger share of the measured power leaves the radiated power open.
MOST_NOISE = 0.5
#: Of a variance over draws at most this much is taken for what they have in common with the record.
MOST_SHARED = 0.75


def _with_mean_in_doubt(effects: FloatArray, radiated: FloatArray, share: FloatArray, dof: float) -> FloatArray:
    """Return effects of noise (draw, frequency, figure) whose mean is what the record's own noise did, and as uncertain as its power.

    Added once more, noise of a share x (frequency,) of the measured power raises that by 10 log(1 + x) dB; in the record it raised
    the device's by -10 log(1 - x). A variance with so many degrees of freedom is known to sqrt(2 / dof) of itself (JCGM
    100:2008, E.4.3), a mean of n draws to 1 / sqrt(n) of their scatter: both widen the draws.
    """
    few = np.minimum(share, MOST_NOISE)[:, None]
    with np.errstate(invalid="ignore"):
        mean = effects.mean(axis=0)
        true = mean - power_db(1.0 - few**2) * radiated
        steep = DB_PER_SHARE * few / (1.0 - few) * np.abs(radiated)
        unknown = np.maximum(np.abs(true), steep) * np.sqrt(2.0 / dof)
        variance = np.maximum(np.mean((effects - mean) ** 2, axis=0), 1e-300)
        wider = true + np.sqrt(1.0 + 1.0 / len(effects) + unknown**2 / variance) * (effects - mean)
    wider = np.where(np.isfinite(wider), wider, effects)
    return np.where((share[:, None] > MOST_NOISE) & (radiated != 0.0), np.inf, wider)


def _less(effects: FloatArray, radiated: FloatArray, shared: FloatArray) -> FloatArray:
    """Return effects of draws (draw, frequency, figure), less what draws have in common with the record's own errors.

    The record that draws are added to holds errors already, and power is a square: a draw meets not only the device's waves but
    also those errors, which no true error did. `shared` (frequency,) says how much of the variance of the radiated power
    (dB^2) that is; figures that it moves dB for dB are `radiated` (figure,).
    """
    # A figure that vanishes in a draw has an infinite effect; nothing is to be taken off that.
    with np.errstate(invalid="ignore"):
        mean = effects.mean(axis=0)
        variance = np.mean((effects - mean) ** 2, axis=0)
        share = radiated**2 * shared[:, None] / np.maximum(variance, 1e-300)
        less = mean + np.sqrt(1.0 - np.minimum(share, MOST_SHARED)) * (effects - mean)
    return np.asarray(np.where(share > 0.0, less, effects))


def _turned_back(change: FloatArray, names: tuple[str, ...]) -> FloatArray:
    """Take whole half turns out of the change of a tilt: an ellipse's axis has no direction."""
    if "tilt_deg" in names:
        column = names.index("tilt_deg")
        change[:, column] = (change[:, column] + 90.0) % 180.0 - 90.0
    return change
