"""The figures that a cut supports, each with its interval, or why there is none.

Errors are fields: noise, echoes, the finite distance and the probe's impurity add to the field at an angle, and what they
do to a figure follows from level, slope and curvature of the measured cut there (first order, derivable).
"""

from __future__ import annotations

from dataclasses import replace

import numpy as np

from colure.analysis.cuts.curve import lobes_of, thinned
from colure.analysis.cuts.mismatch import accepted, mismatch_figures
from colure.analysis.cuts.peak import top_of
from colure.analysis.cuts.polarization import circular, cross_polar
from colure.analysis.cuts.reader import DB, HALF_POWER_DB, SOURCE, CutReader
from colure.analysis.cuts.scan import ALONG_ZERO, MOST_CUTS, CutScan, MeasuredCut
from colure.analysis.figures.beams import NO_REFERENCE
from colure.analysis.steps.reflection import DeviceReflection
from colure.geometry.conventions import amplitude_db
from colure.model.chamber import Chamber
from colure.model.device import Device
from colure.model.evaluation import Evaluation
from colure.model.figure import Figure

#: A dip counts where the lobe beyond it stands out by so many times the errors of both.
SET_APART = 1.0
#: An angle of a null says nothing where its error is a larger share of its distance from the peak.
MOST_OF_THE_WAY = 0.5


def cut_figures(
    scan: CutScan,
    chamber: Chamber,
    device: Device,
    settings: Evaluation,
    *,
    reflection: DeviceReflection | None = None,
    **context: float,
) -> list[Figure]:
    """Return every figure of every evaluated cut, one after the other, at every frequency.

    reflection
        Of the device, where the run measured it: its figures come first, and each cut's peak gain without the mismatch.
    context
        `order` of the device's waves, `mismatch_db` and `table_db` (what files say of reflections and the reference), `place_db` and `unheard_db` (of the horn), `age_days`.
    """
    out = [] if reflection is None else mismatch_figures(reflection, scan.frequency_hz)
    for cut in evaluated(scan, device):
        for f in range(scan.frequency_hz.size):
            figures = _FigureReader(scan, cut, f, chamber, device, settings, context).figures()
            out += figures if reflection is None else [figures[0], accepted(figures[0], reflection, f), *figures[1:]]
    return out


def evaluated(scan: CutScan, device: Device) -> list[MeasuredCut]:
    """Return the cuts whose figures are read: all of a few; of many the strongest, those along and across the polarization, and across them."""
    cuts = [one for one in scan.cuts if one.cut.name != "list"]
    if len(cuts) <= MOST_CUTS:
        return cuts
    middle = scan.frequency_hz.size // 2
    strongest = max(cuts, key=lambda one: float(one.total[middle].max()))
    wanted = {f"phi_{angle % 180.0:g}" for angle in (device.slant_deg, device.slant_deg + 90.0)} | set(ALONG_ZERO)
    return [*(one for one in cuts if one.cut.name in wanted or one is strongest), *scan.across]


def reader_of(
    scan: CutScan,
    cut: MeasuredCut,
    f: int,
    chamber: Chamber,
    device: Device,
    settings: Evaluation,
    context: dict[str, float],
) -> _FigureReader:
    """Return what reads one cut at one frequency."""
    return _FigureReader(scan, cut, f, chamber, device, settings, context)


class _FigureReader(CutReader):
    """Every figure of one cut at one frequency."""

    def figures(self) -> list[Figure]:
        """Return every figure, with a reason in place of what the cut does not show."""
        if self.curve is None:
            return [self.none(name, label, unit,
                    f"the cut has {self.cut.angle_deg.size} directions, at least 4 are needed")
                    for name, label, unit in (("peak_dbi", "peak", "dBi"),)]  # fmt: skip
        every = self._look(self.curve)
        self.top = top_of(self.cut.angle_deg, self.amplitude, self.lobes)
        self.fewer = [
            lobes_of(one, every, near_deg=self.lobes.peak_deg)
            for start in (0, 1)
            if (one := thinned(self.cut.angle_deg, self.fields, start)) is not None
            and np.any(np.abs(one.angle_deg - self.lobes.peak_deg) <= 5.0)
        ]
        readings = [self._peak(), self._peak_angle(), *(self._width(level) for level in self.levels)]
        for side, word in ((0, "left"), (1, "right")):
            readings += [self._side_lobe(side, word), self._null(side, word), self._null_angle(side, word)]
        return [*readings, self._front_to_back(), *cross_polar(self), *(circular(self) if self.hands else [])]

    def _component(self) -> str:
        return "co-polar component" if self.co_only else "radiation intensity"

    def _peak(self) -> Figure:
        label = "peak partial gain" if self.co_only else "peak gain"
        text = f"Highest partial or total realized gain on the cut ({self._component()})."
        if self.lobes.at_end:
            return self.none("peak_dbi", label, "dBi", self.rising())
        if not self.chamber.reference.absolute:
            return self.none("peak_dbi", label, "dBi", f"it {NO_REFERENCE}")
        e, p = self.errors, self.lobes.peak
        bent = 0.5 * self.top.curvature * float(np.deg2rad(e.across_deg)) ** 2
        rows = {
            **{term: size for term, size in e.common_db.items() if size > 0.0},
            "noise": DB * float(np.hypot(e.noise / p * self.top.level_per_noise, e.once)),
            "range echoes": float(np.sqrt(2.0)) * DB * e.echoes / p,
            "drift residual": DB * e.drift,
            "probe polarization": DB * e.impurity / p,
            "alignment": DB * bent + self.steepest() * e.across_deg,
            "probe pattern": e.off_axis_db,
            "sampling": float(
                np.hypot(
                    self.top.level_change,
                    0.5 * self.sampling(0.0, [float(amplitude_db(o.peak / p)) for o in self.fewer]),
                )
            ),
            "finite distance": 0.0,
        }
        figure = self.figure("peak_dbi", label, "dBi", self.top.level_db, rows, text, bias=self.distance.peak_db)
        return _with_row(figure, "finite distance", _largest(self.distance.peak_db))

    def _peak_angle(self) -> Figure:
        label = f"{self.cut.cut.angle_name} of the peak (squint)"
        why = self.flat() or self.beside_end()
        if why:
            return self.none("peak_deg", label, "deg", why)
        e, p = self.errors, self.lobes.peak
        turn = float(np.rad2deg(1.0)) * 0.5 * e.order / max(self.top.curvature, 1e-9)
        rows = {
            "alignment": e.along_deg,
            "noise": DB * e.noise / p * self.top.angle_per_noise,
            "range echoes": turn * e.echoes / p,
            "drift residual": DB * e.drift * self.top.angle_per_noise,
            "sampling": float(
                np.hypot(
                    self.top.angle_change,
                    0.1 * self.spacing()
                    if not self.fewer
                    else 0.25 * self.sampling(self.lobes.peak_deg, [o.peak_deg for o in self.fewer]),
                )
            ),
        }
        value = self.shown(self.top.angle_deg)
        return self.figure("peak_deg", label, "deg", value, rows, "Angle along the cut at which the level is highest.")

    def _width(self, level_db: float) -> Figure:
        name = "width_3_deg" if level_db == HALF_POWER_DB else f"width_{level_db:g}_deg".replace(".", "p")
        label = "half-power beamwidth" if level_db == HALF_POWER_DB else f"beamwidth at -{level_db:g} dB"
        if self.lobes.at_end:
            return self.none(name, label, "deg", self.rising())
        width = self.lobes.width_deg(level_db)
        if not np.isfinite(width) or width > 360.0:
            return self.none(
                name, label, "deg", f"the cut ends before the level has fallen by {level_db:.3g} dB on both sides"
            )
        e, p = self.errors, self.lobes.peak
        a = p * 10.0 ** (-level_db / 20.0)
        slopes = [abs(self.slope_at(x)) for x in self.lobes.crossing_deg[level_db]]
        # Two crossings with errors of their own, both against the peak.
        per_db = float(np.sqrt(sum(1.0 / max(s, 1e-6) ** 2 for s in slopes)))
        both = float(sum(1.0 / max(s, 1e-6) for s in slopes))
        rows = {
            "noise": DB * float(np.hypot(e.noise / a * per_db, e.noise / p * self.top.level_per_noise * both)),
            "range echoes": DB * float(np.hypot(e.echoes / a * per_db, e.echoes / p * both)),
            "drift residual": DB * e.drift * per_db,
            "probe polarization": DB * e.impurity / a * per_db,
            "alignment": 0.7 * float(np.hypot(e.along_deg, e.across_deg)),
            "sampling": float(
                np.hypot(
                    self.top.level_change * both,
                    0.25 * self.sampling(width, [o.width_deg(level_db) for o in self.fewer]),
                )
            ),
            "finite distance": 0.0,
        }
        low, high = self.distance.width[level_db]
        bias = (low * width, high * width)
        text = f"Angle between the points {level_db:.4g} dB below the peak ({self._component()})."
        figure = self.figure(name, label, "deg", width, rows, text, bias=bias)
        return _with_row(figure, "finite distance", _largest(bias))

    def _level(self, what: str, label: str, amplitude: float, read: list[float], text: str) -> Figure:
        """Return a level relative to the peak, dB, from an amplitude and what it is on thinner cuts."""
        p = self.lobes.peak
        value = float(amplitude_db(max(amplitude, 1e-12) / p))
        relative = self.errors.at(amplitude, p)
        relative["alignment"] = self.steepest() * 5.0 * self.errors.across_deg / DB
        relative["sampling"] = self.sampling(value, read) / DB
        total = float(np.sqrt(sum(x**2 for x in relative.values())))
        low = value + amplitude_db(1.0 - total) if total < 1.0 else -float("inf")
        rows = {term: DB * x for term, x in relative.items()}
        return self.figure(
            what, label, "dB", float(value), rows, text, ends=(float(low), float(value + amplitude_db(1.0 + total)))
        )

    def _side_lobe(self, side: int, word: str) -> Figure:
        what, label = f"side_lobe_{word}_db", f"highest side lobe {word}"
        index = self.lobes.lobe_index[side]
        if self.lobes.at_end or index < 0:
            why = self.rising() if self.lobes.at_end else "the cut shows no lobe beyond the main one on this side"
            return self.none(what, label, "dB", why)
        ripple = self._ripple(side)
        if ripple:
            return self.none(what, label, "dB", ripple)
        read = [
            float(amplitude_db(o.curve.amplitude[o.lobe_index[side]] / o.peak))
            for o in self.fewer
            if o.lobe_index[side] >= 0
        ]
        return self._level(
            what,
            label,
            float(self.lobes.curve.amplitude[index]),
            read,
            "Highest lobe beyond the first null, relative to the peak.",
        )

    def _ripple(self, side: int) -> str:
        """Return why the first dip on a side is no null: what rises beyond it is no higher than errors; empty if it is."""
        index, step = self.lobes.null_index[side], -1 if side == 0 else 1
        beyond = self.lobes.curve.amplitude[index::step]
        falls = np.flatnonzero(np.diff(beyond) < 0.0)
        top, dip = float(beyond[falls[0]] if falls.size else beyond[-1]), float(beyond[0])
        e = self.errors
        field = float(np.sqrt(2.0 * (e.noise**2 + e.echoes**2) + e.floor**2))
        if top - dip > SET_APART * field:
            return ""
        stands = f"stands {amplitude_db(top / max(dip, 1e-12)):.1f} dB above the dip before it"
        return f"what lies beyond the dip at {self.shown(float(self.lobes.curve.angle_deg[index])):.0f} deg {stands}, within the errors"

    def _null(self, side: int, word: str) -> Figure:
        what, label = f"null_{word}_db", f"depth of the first null {word}"
        index = self.lobes.null_index[side]
        if self.lobes.at_end or index < 0:
            return self.none(what, label, "dB", "the cut shows no null on this side of the peak")
        ripple = self._ripple(side)
        if ripple:
            return self.none(what, label, "dB", ripple)
        amplitude = float(self.lobes.curve.amplitude[index])
        read = [
            float(amplitude_db(o.curve.amplitude[o.null_index[side]] / o.peak))
            for o in self.fewer
            if o.null_index[side] >= 0
        ]
        return self._level(
            what, label, amplitude, read, "Level of the first dip beside the main lobe, relative to the peak."
        )

    def _null_angle(self, side: int, word: str) -> Figure:
        what, label = f"null_{word}_deg", f"angle of the first null {word}"
        index = self.lobes.null_index[side]
        if self.lobes.at_end or index < 0:
            return self.none(what, label, "deg", "the cut shows no null on this side of the peak")
        several = self.flat() or self._ripple(side)
        if several:
            return self.none(what, label, "deg", several)
        value, p = float(self.lobes.curve.angle_deg[index]), self.lobes.peak
        # Near a null the field runs through zero with this slope; an error moves the dip by its ratio to it.
        step = (
            0.5 * abs(self.lobes.width_deg(HALF_POWER_DB))
            if np.isfinite(self.lobes.width_deg(HALF_POWER_DB))
            else self.spacing()
        )
        reach = 0.25 * max(step, self.spacing())
        slope = (
            0.5 * sum(abs(self.lobes.curve.at(value + d) - self.lobes.curve.at(value)) for d in (-reach, reach)) / reach
        )
        field = float(np.sqrt(self.errors.noise**2 + self.errors.echoes**2))
        angles_deg = [float(o.curve.angle_deg[o.null_index[side]]) for o in self.fewer if o.null_index[side] >= 0]
        rows = {
            "alignment": self.errors.along_deg,
            "noise": self.errors.noise / max(slope, 1e-9),
            "range echoes": self.errors.echoes / max(slope, 1e-9),
            "finite distance": self.errors.floor / max(slope, 1e-9),
            "sampling": max(self.sampling(value, angles_deg), 0.1 * self.spacing()),
        }
        if field / max(slope, 1e-9) > 10.0 * max(step, self.spacing()) or p <= 0.0:
            return self.none(what, label, "deg", "errors are as large as the field beside the null")
        half = float(np.sqrt(sum(x**2 for x in rows.values())))
        away = abs(value - self.lobes.peak_deg)
        if half > MOST_OF_THE_WAY * away:
            why = f"the dip lies {away:.0f} deg from the peak, and errors of the field move it by up to {half:.0f} deg"
            return self.none(what, label, "deg", why)
        return self.figure(what, label, "deg", self.shown(value), rows, "Angle of the first dip beside the main lobe.")

    def _front_to_back(self) -> Figure:
        what, label = "front_to_back_db", "front to back"
        why = self.flat()
        back = self.lobes.peak_deg + 180.0
        angle = self.lobes.curve.angle_deg
        if not why and not self.cut.cut.great_circle:
            why = "the cut is no great circle: it does not hold the direction opposite to the peak"
        if not why and not self.lobes.curve.closed:
            back = back if back <= angle[-1] else back - 360.0
            if not angle[0] <= back <= angle[-1]:
                why = f"the cut does not reach the direction opposite to the peak ({back:.1f} deg)"
        if why:
            return self.none(what, label, "dB", why)
        a = self.lobes.curve.at(back)
        read = [float(amplitude_db(o.curve.at(back) / o.peak)) for o in self.fewer]
        inverse = self._level(what, label, a, read, "Level at the peak over the level in the opposite direction.")
        return Figure(name=inverse.name, label=inverse.label, value=-inverse.value, unit="dB",
                      frequency_hz=self.frequency, lower=-inverse.upper, upper=-inverse.lower,
                      definition=inverse.definition, source=SOURCE, topic="cut", budget=inverse.budget)  # fmt: skip


def _largest(ends: tuple[float, float]) -> float:
    return max(abs(ends[0]), abs(ends[1]))


def _with_row(figure: Figure, term: str, expanded: float) -> Figure:
    """Return a figure whose budget shows a bound that its interval already holds."""
    rows = tuple(row.of_size(expanded) if row.term == term else row for row in figure.budget)
    return replace(figure, budget=rows)
