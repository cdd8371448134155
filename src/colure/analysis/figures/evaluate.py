"""All figures of a pattern, from its expansion in spherical waves."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field, replace

import numpy as np

from colure.analysis.figures.beams import BEHIND_COS, CIRCULAR_DB, EDGE, NO_PLANE, NO_REFERENCE, Near
from colure.analysis.figures.components import pole_reasons
from colure.analysis.figures.cuts import LINEAR_DB
from colure.analysis.figures.doors import definitions_of_others, reading_of
from colure.analysis.figures.equal_beams import plane_of, unlike_planes
from colure.analysis.figures.one_pattern import OnePattern, PatternSettings
from colure.analysis.figures.phase_centre import ripple_reason
from colure.analysis.figures.readings import BAND_READINGS
from colure.analysis.steps.reflection import READ_ONCE
from colure.geometry.conventions import BoolArray, ComplexArray, FloatArray, Handedness, amplitude_db
from colure.model.components import wanted as bases_wanted
from colure.model.definitions import NEVER_FALLS, Definition, definitions_for
from colure.model.evaluation import Evaluation
from colure.values import holds_arrays
from colure.waves.expansion import Expansion

#: Figures that do not exist where the device's reflection is not known well enough.
OF_REFLECTION = ("gain_accepted_dbi", "radiation_efficiency_db", "mismatch_loss_db", "return_loss_db")


@dataclass(frozen=True)
@holds_arrays
class FigureSet:
    """Which figures are read, and how: the same for every frequency, state and perturbation.

    slant
        Reference of the co-polar vector, radians from x towards y.
    region
        Polar angle from +z up to which the pattern is known, radians.
    state
        Name of the device's state, `beam` if it has none: picks the commanded direction.
    band
        True: several frequencies.
    mismatch_loss_db
        (frequency,) what the device's own reflection costs, positive; None where it is not known.
    hand
        Sense that the device is declared circularly polarized with: no plane is its E plane, and co-polar levels are of this
        hand. 0: it is not.
    relative
        True: the run has no reference, so that figures that need a gain do not exist.
    hands
        True: the device is declared not linear, so that the gains of both hands are figures.
    reflection_measured
        True: the device's reflection was measured in this run, so that it and its cost are figures.
    """

    settings: Evaluation = field(default_factory=Evaluation)
    slant: float = 0.0
    region: float = float(np.pi)
    one_polarization: bool = False
    state: str = "beam"
    band: bool = False
    mismatch_loss_db: FloatArray | None = None
    hand: Handedness = 0
    relative: bool = False
    hands: bool = False
    reflection_measured: bool = False
    definitions: tuple[Definition, ...] = field(init=False)

    def __post_init__(self) -> None:
        wanted = self.settings
        if self.state not in wanted.commanded_deg:
            wanted = wanted.model_copy(update={"commanded_deg": {}})
        known = [
            d
            for d in (
                *definitions_for(
                    wanted,
                    band=self.band,
                    reflection=self.mismatch_loss_db is not None,
                    partial=self.one_polarization,
                    circular=bool(self.hand),
                    hands=self.hands,
                    reflection_measured=self.reflection_measured,
                ),
                *definitions_of_others(),
            )
            if (self.region >= np.pi - 1e-9 or not d.sphere) and not (d.pair and self.one_polarization)
        ]
        object.__setattr__(self, "definitions", tuple(known))

    @property
    def names(self) -> tuple[str, ...]:
        """Names of the figures, in their order."""
        return tuple(d.name for d in self.definitions)

    @property
    def bases(self) -> tuple[str, ...]:
        """Bases whose components at the peak are figures."""
        return () if self.one_polarization else bases_wanted(self.settings, circular=self.hands)

    @property
    def floors(self) -> BoolArray:
        """Which columns of the values are depths that errors mostly fill."""
        return np.array([d.floor for d in self.definitions], bool)

    @property
    def radiated(self) -> FloatArray:
        """By how many dB each figure moves when the radiated power grows by 1 dB and the peak stays."""
        return np.array([d.radiated for d in self.definitions], float)

    def values(self, expansion: Expansion, *, near: Sequence[Near] | None = None) -> FloatArray:
        """Return the native values (frequency, figure) of an expansion (frequency, 2, J).

        Values that do not exist are nan; `places` says why.

        near
            What `places` said of the unperturbed pattern: it decides which figures exist, where the E plane comes from and
            how wide the cone of the phase centre is. The peak is looked for again over the whole region.
        """
        every = self.patterns(expansion, near=near)
        known = [self._reasons(one) for one in every] if near is None else [one.reasons for one in near]
        return self._table(self._rows(every), known)

    def places(self, expansion: Expansion) -> list[Near]:
        """Return where peak and phase centre are at every frequency, and why figures do not exist."""
        return self.read(expansion)[1]

    def read(self, expansion: Expansion) -> tuple[FloatArray, list[Near]]:
        """Return what `values` and `places` return, of an unperturbed expansion, with one look at the pattern."""
        every = self.patterns(expansion)
        rows, reasons = self._rows(every), [self._reasons(one) for one in every]
        return self._table(rows, reasons), self._nearby(every, rows, reasons)

    def patterns(self, expansion: Expansion, *, near: Sequence[Near] | None = None) -> list[OnePattern]:
        """Return the patterns of every frequency, from which figures are read; `near` as in `values`."""
        wanted = PatternSettings(self.settings, self.slant, self.region, self.settings.commanded_deg.get(self.state))
        losses = np.full(expansion.k.size, np.nan) if self.mismatch_loss_db is None else self.mismatch_loss_db
        decided = [None] * expansion.k.size if near is None else near
        return [
            OnePattern(c, float(k), wanted, known, float(loss))
            for c, k, known, loss in zip(expansion.coefficients, expansion.k, decided, losses, strict=True)
        ]

    def _table(self, rows: list[dict[str, float]], reasons: Sequence[dict[str, str]]) -> FloatArray:
        """Return values (frequency, figure); nan where a figure does not exist."""
        known = [{**row, **dict.fromkeys(why, float("nan"))} for row, why in zip(rows, reasons, strict=True)]
        return np.array([[float(row[name]) for name in self.names] for row in known])

    def _nearby(
        self, every: list[OnePattern], rows: list[dict[str, float]], own_reasons: list[dict[str, str]]
    ) -> list[Near]:
        middle = own_reasons[len(own_reasons) // 2]
        along = {what.name: middle[what.middle] for what in self.definitions if what.middle in middle}
        out = []
        for one, row, own in zip(every, rows, own_reasons, strict=True):
            reasons = {**along, **own}
            for what in self.definitions:
                if np.isnan(row[what.name]) and what.name not in reasons:
                    reasons[what.name] = self._why(what)
            beam = one.beam
            out.append(
                Near(beam.direction, one.centre_m, beam.plane, one.cone_deg, beam.tangent, one.widths_deg, reasons)
            )
        return out

    def _why(self, what: Definition) -> str:
        """Return why a figure that is nan in a single-beam pattern does not exist."""
        inside = "" if self.region >= np.pi - 1e-9 else f" within {np.rad2deg(self.region):.4g} deg of +z"
        if not what.absent:
            return "undefined: it depends on a figure that is"
        never = what.absent == NEVER_FALLS and not inside
        return f"{'omnidirectional in this cut' if never else 'undefined'}: {what.absent}{inside}"

    def _rows(self, every: Sequence[OnePattern]) -> list[dict[str, float]]:
        """Return the native values of every frequency by name."""
        along = {what.name: BAND_READINGS[what.key](every) for what in self.definitions if what.band}
        return [
            {
                what.name: along[what.name][i] if what.band else reading_of(what.key)(one, what)
                for what in self.definitions
            }
            for i, one in enumerate(every)
        ]

    def _reasons(self, one: OnePattern) -> dict[str, str]:
        """Return why figures do not exist in an unperturbed pattern, by name."""
        beam, several = one.beam, one.several
        ripple = ripple_reason(one.ripple_deg, one.cone_deg)
        axial_ratio_db = -float(amplitude_db(max(one.minor_over_major, 1e-15)))
        reasons: dict[str, str] = {}
        if self.relative:
            reasons |= {d.name: NO_REFERENCE for d in self.definitions if d.gain or d.absolute}
        if ripple:
            reasons |= {d.name: ripple for d in self.definitions if d.phase_centre}
        if abs(beam.direction[1]) > np.cos(np.deg2rad(0.1)):
            reasons["beam_azimuth_deg"] = "undefined: the beam points along y, where azimuth is not defined"
        if self.reflection_measured and np.isnan(one.mismatch_loss_db):
            reasons |= dict.fromkeys(OF_REFLECTION, READ_ONCE)
        reasons |= pole_reasons(beam.direction, self.bases)
        if beam.direction[2] < BEHIND_COS:
            why = "undefined: Ludwig's third co-polar vector is not defined near -z"
            reasons |= dict.fromkeys(("xpd_db", "xpd_worst_db", "tilt_deg"), why)
        if axial_ratio_db < CIRCULAR_DB:
            reasons["tilt_deg"] = (
                f"undefined: the wave is circular (axial ratio {axial_ratio_db:.2g} dB), its ellipse has no axis"
            )
        if several:
            reasons |= {d.name: several for d in self.definitions if d.single_beam}
            for plane, why in unlike_planes(one).items():
                reasons |= {d.name: why for d in self.definitions if d.in_plane and plane_of(d.name) == plane}
            if axial_ratio_db < LINEAR_DB and abs(beam.direction[2]) < np.cos(np.deg2rad(30.0)):
                reasons |= {d.name: NO_PLANE for d in self.definitions if d.in_plane}
        if self.region < np.pi - 1e-9 and beam.direction[2] <= np.cos(self.region - 1e-6):
            edge = EDGE.format(np.rad2deg(self.region))
            reasons |= {d.name: edge for d in self.definitions if d.single_beam or d.at_peak}
        return {name: why for name, why in reasons.items() if name in self.names}

    def read_anew(self, coefficients: ComplexArray, k: float, near: Near) -> dict[str, float]:
        """Return the native values of the figures that every changed pattern (2, J) is read anew for, by name."""
        wanted = PatternSettings(self.settings, self.slant, self.region, self.settings.commanded_deg.get(self.state))
        one = OnePattern(coefficients, k, wanted, near)
        return {what.name: reading_of(what.key)(one, what) for what in self.definitions if what.anew}


def evaluate(coefficients: ComplexArray, *, slant: float, region: float = np.pi) -> FloatArray:
    """Return the native values of the usual figures of one expansion (2, J), in the order of `NAMES`.

    Within `region` (radians) of +z; figures that need the whole sphere are nan with less.
    """
    whole = FigureSet(slant=slant)
    own = replace(whole, region=region)
    one = Expansion(coefficients[None], np.ones(1))
    values = dict(zip(own.names, own.values(one)[0], strict=True))
    return np.array([values.get(name, np.nan) for name in whole.names])
