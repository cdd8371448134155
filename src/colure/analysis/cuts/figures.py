"""The figures that a cut supports, each with its interval, or why there is none.

Errors are fields: noise, echoes, the finite distance and the probe's impurity add to the field at an angle, and what they
do to a figure follows from level, slope and curvature of the measured cut there (first order, derivable).
"""

from __future__ import annotations

from dataclasses import replace

import numpy as np

from colure.analysis.cuts.curve import Curve, curve_of, lobes_of, thinned
from colure.analysis.cuts.distance import DistanceError, distance_error, extent_m
from colure.analysis.cuts.errors import BASIS, KIND, Errors
from colure.analysis.cuts.peak import TALLER_DB, TOP_DB, top_of
from colure.analysis.cuts.scan import CutScan, MeasuredCut
from colure.analysis.figures.beams import NO_REFERENCE
from colure.geometry.conventions import ComplexArray, FloatArray
from colure.geometry.kinematics import Geometry
from colure.model.chamber import Chamber
from colure.model.device import Device
from colure.model.evaluation import Evaluation
from colure.model.figure import BudgetRow, Figure

DB = 20.0 / np.log(10.0)
#: Half power is -3.0103 dB (IEEE Std 145, half-power beamwidth).
HALF_POWER_DB = float(10.0 * np.log10(2.0))
#: While the beam faces a wall, echoes are this much above their mean over all directions (as forecasts take it).
FACING = 1.6
#: Other lobes within this of the highest leave open which one is the peak, dB.
EQUAL_DB = 0.5
#: A level that varies by less along the whole cut has no peak, dB.
FLAT_DB = 1.0
SOURCE = "IEEE Std 145; read along the measured cut at the range length, no transform"
#: At most so many cuts are evaluated; of more, those a person asks for first.
MOST_CUTS = 8


def cut_figures(
    scan: CutScan, chamber: Chamber, device: Device, settings: Evaluation, **context: float
) -> list[Figure]:
    """Return every figure of every evaluated cut, one after the other, at every frequency.

    context
        `order` of the device's waves, `mismatch_db` and `table_db` (what files say of reflections and the reference), `place_db` (of the horn), `age_days`.
    """
    out = list[Figure]()
    for cut in evaluated(scan, device):
        for f in range(scan.frequency_hz.size):
            out += _Reader(scan, cut, f, chamber, device, settings, context).figures()
    return out


def evaluated(scan: CutScan, device: Device) -> list[MeasuredCut]:
    """Return the cuts whose figures are read: all of a few; of many the strongest, and those along and across the polarization."""
    cuts = [one for one in scan.cuts if one.cut.name != "list"]
    if len(cuts) <= MOST_CUTS:
        return cuts
    middle = scan.frequency_hz.size // 2
    strongest = max(cuts, key=lambda one: float(one.total[middle].max()))
    wanted = {f"phi_{angle % 180.0:g}" for angle in (device.slant_deg, device.slant_deg + 90.0)} | {"el_0", "az_0"}
    return [one for one in cuts if one.cut.name in wanted or one is strongest]


def reader_of(
    scan: CutScan,
    cut: MeasuredCut,
    f: int,
    chamber: Chamber,
    device: Device,
    settings: Evaluation,
    context: dict[str, float],
) -> _Reader:
    """Return what reads one cut at one frequency."""
    return _Reader(scan, cut, f, chamber, device, settings, context)


class _Reader:
    """One cut at one frequency: its curve, its errors, its figures."""

    def __init__(
        self, scan: CutScan, cut: MeasuredCut, f: int, chamber: Chamber, device: Device, settings: Evaluation,
        context: dict[str, float],
    ) -> None:  # fmt: skip
        self.scan, self.cut, self.f = scan, cut, f
        self.frequency = float(scan.frequency_hz[f])
        self.chamber, self.device = chamber, device
        self.levels = tuple(dict.fromkeys((HALF_POWER_DB, *settings.beamwidth_levels_db)))
        self.co_only = cut.cross is None or settings.cuts_of == "co"
        self.fields = self._fields(self.co_only)
        self.curve = curve_of(cut.angle_deg, self.fields)
        self.context = context

    def _fields(self, co_only: bool) -> tuple[ComplexArray, ...]:
        co = self.cut.co[self.f]
        return (co,) if co_only or self.cut.cross is None else (co, self.cut.cross[self.f])

    @property
    def amplitude(self) -> FloatArray:
        """Measured amplitude (n,) that the figures are read from."""
        return np.asarray(np.sqrt(sum(np.abs(one) ** 2 for one in self.fields)))

    def figures(self) -> list[Figure]:
        """Return every figure, with a reason in place of what the cut does not show."""
        if self.curve is None:
            return [self._none(name, label, unit, f"the cut has {self.cut.angle_deg.size} directions, at least 4 are needed")
                    for name, label, unit in (("peak_dbi", "peak", "dBi"),)]  # fmt: skip
        every = self._look(self.curve)
        self.top = top_of(self.cut.angle_deg, self.amplitude, self.lobes)
        self.fewer = [
            lobes_of(one, every, near_deg=self.lobes.peak_deg)
            for start in (0, 1)
            if (one := thinned(self.cut.angle_deg, self.fields, start)) is not None
            and np.any(np.abs(one.angle_deg - self.lobes.peak_deg) <= 5.0)
        ]
        found = [self._peak(), self._peak_angle(), *(self._width(level) for level in self.levels)]
        for side, word in ((0, "left"), (1, "right")):
            found += [self._side_lobe(side, word), self._null(side, word), self._null_angle(side, word)]
        return [*found, self._front_to_back(), *self._cross_polar()]

    def _look(self, curve: Curve) -> tuple[float, ...]:
        """Find the lobes and what is wrong with the field; return the levels that were looked for."""
        every = (TOP_DB, TALLER_DB, *self.levels)
        self.lobes = lobes_of(curve, every)
        self.distance = self._distance()
        self.errors = self._errors()
        return every

    def known_errors(self) -> Errors | None:
        """Return what is wrong with the field; None where too few directions show it."""
        if self.curve is None:
            return None
        self._look(self.curve)
        return self.errors

    # What is wrong.

    def _distance(self) -> DistanceError:
        d = self.cut.directions
        middle = d[int(np.argmax(self.amplitude))]
        along = d[min(len(d) - 1, int(np.argmax(self.amplitude)) + 1)] - d[max(0, int(np.argmax(self.amplitude)) - 1)]
        along = along / max(float(np.linalg.norm(along)), 1e-12)
        across = np.cross(middle, along)
        size = self.device.size_mm
        return distance_error(
            along_m=round(extent_m(size, along), 6), across_m=round(extent_m(size, across), 6), distance_m=self.chamber.range_length_m,
            frequency_hz=self.frequency, levels_db=self.levels,
        )  # fmt: skip

    def _errors(self) -> Errors:
        chamber, f, peak = self.chamber, self.f, self.lobes.peak
        a, geometry = chamber.alignment, chamber.positioner.geometry
        tilt = (
            a.roll_axis_tilt_deg
            if geometry is Geometry.ROLL_OVER_AZIMUTH
            else float(np.hypot(a.elevation_zero_deg, a.axes_square_deg))
        )
        shifted = float(np.rad2deg(1e-3 * a.axes_offset_mm / chamber.range_length_m))
        across = float(np.sqrt(tilt**2 + a.device_pose_deg**2 + shifted**2))
        echo = 10.0 ** (chamber.echo_level_db / 20.0) * FACING
        scatter = 0.0 if not np.isfinite(self.cut.scatter[f]) else 2.0 * float(self.cut.scatter[f]) * peak
        ratio = 10.0 ** (chamber.probe.gain_dbi / 10.0)
        off_axis = DB / 2.0 * ratio * float(np.deg2rad(self.cut.off_axis_deg)) ** 2 / 4.0
        return Errors(
            noise=max(float(np.sqrt(2.0) * self.scan.noise[f]), scatter),
            echoes=float(np.sqrt(2.0)) * echo * peak,
            floor=self.distance.floor * peak,
            impurity=self._impurity(peak),
            drift=2.0 * self.scan.drift,
            once=float(self.scan.transfer.expanded[f].max()),
            common_db=self._common_db(),
            off_axis_db=off_axis,
            along_deg=float(np.sqrt(a.theta_zero_deg**2 + a.device_pose_deg**2 + shifted**2)),
            across_deg=across,
            order=int(self.context.get("order", 10)),
        )

    def _common_db(self) -> dict[str, float]:
        """Return what moves all levels alike, by cause, dB."""
        reference, told = self.chamber.reference, self.context
        if not reference.absolute:
            return {}
        return {
            "reference gain": told.get("table_db", reference.gain_uncertainty_db),
            "mismatch": told.get("mismatch_db", 0.0),
            "reconnection": reference.reconnect_db,
            "reference place": told.get("place_db", 0.0),
            "drift since calibration": reference.drift_db_day * told.get("age_days", 0.0),
        }

    @property
    def _leak(self) -> float:
        """What the probe reads of the field across it: its impurity, and the error of its roll."""
        chamber = self.chamber
        level = chamber.reference.cross_polar_db if self.scan.pure else chamber.probe.cross_polar_db
        impurity = 10.0 ** ((chamber.probe.cross_polar_db if level is None else level) / 20.0)
        roll = 0.0 if self.scan.pure else float(np.deg2rad(chamber.alignment.probe_roll_zero_deg))
        return float(np.hypot(impurity, np.hypot(roll, np.deg2rad(chamber.alignment.device_pose_deg))))

    def _impurity(self, peak: float) -> float:
        """Return what the other component adds to the co-polar field, an amplitude."""
        if self.cut.cross is not None:
            return self._leak * float(np.abs(self.cut.cross[self.f]).max())
        simple = self.device.polarization == "linear" and self.scan.scan.probe == "follows"
        aligned = np.deg2rad(self.scan.scan.offsets_deg[0] - self.device.slant_deg)
        purity = 10.0 ** (-self.device.expected_xpd_db / 20.0) if simple else 1.0
        return float(self._leak * np.hypot(purity, abs(np.tan(aligned)) if abs(np.cos(aligned)) > 0.1 else 10.0) * peak)

    # The figures.

    def _name(self, what: str) -> str:
        return f"{self.cut.cut.name}_{what}"

    def _none(self, what: str, label: str, unit: str, why: str) -> Figure:
        nan = float("nan")
        return Figure(self._name(what), f"{self.cut.cut.label}: {label}", nan, unit, self.frequency, nan, nan, label, SOURCE,
                      topic="cut", reason=f"cannot tell, because {why}")  # fmt: skip

    def _figure(
        self, what: str, label: str, unit: str, value: float, rows: dict[str, float], text: str,
        *, bias: tuple[float, float] = (0.0, 0.0), ends: tuple[float, float] | None = None,
    ) -> Figure:  # fmt: skip
        """Return a figure; rows are expanded contributions in its unit, `bias` the extremes of measured less true."""
        half = float(np.sqrt(sum(x**2 for x in rows.values())))
        low, high = (value - half, value + half) if ends is None else ends
        budget = tuple(
            BudgetRow(term, size, BASIS.get(term, ""), KIND.get(term, "declared")) for term, size in rows.items()
        )
        return Figure(
            self._name(what), f"{self.cut.cut.label}: {label}", value, unit, self.frequency, low - bias[1], high - bias[0], text,
            SOURCE, topic="cut", budget=budget,
        )  # fmt: skip

    def _sampling(self, own: float, read: list[float]) -> float:
        """Return what every second sample alone would change; nothing where it cannot be read."""
        changes = [abs(x - own) for x in read if np.isfinite(x)]
        return max(changes, default=0.0)

    def _component(self) -> str:
        return "co-polar component" if self.co_only else "radiation intensity"

    def _peak(self) -> Figure:
        label, text = "peak gain", f"Highest partial or total realized gain on the cut ({self._component()})."
        if self.lobes.at_end:
            return self._none("peak_dbi", label, "dBi", self._rising())
        if not self.chamber.reference.absolute:
            return self._none("peak_dbi", label, "dBi", f"it {NO_REFERENCE}")
        e, p = self.errors, self.lobes.peak
        bent = 0.5 * self.top.curvature * float(np.deg2rad(e.across_deg)) ** 2
        rows = {
            **{term: size for term, size in e.common_db.items() if size > 0.0},
            "noise": DB * float(np.hypot(e.noise / p * self.top.level_per_noise, e.once)),
            "range echoes": float(np.sqrt(2.0)) * DB * e.echoes / p,
            "drift residual": DB * e.drift,
            "probe polarization": DB * e.impurity / p,
            "alignment": DB * bent + self._steepest() * e.across_deg,
            "probe pattern": e.off_axis_db,
            "sampling": float(
                np.hypot(
                    self.top.level_change, 0.5 * self._sampling(0.0, [20 * np.log10(o.peak / p) for o in self.fewer])
                )
            ),
            "finite distance": 0.0,
        }
        found = self._figure("peak_dbi", label, "dBi", self.top.level_db, rows, text, bias=self.distance.peak_db)
        return _with_row(found, "finite distance", _largest(self.distance.peak_db))

    def _steepest(self) -> float:
        """Return a slope in dB per degree for what lies beside the cut: a tenth of the main lobe's steepest flank."""
        level, angle = self.curve_db()
        inside = level > level.max() - 10.0
        slopes = np.abs(np.gradient(level, angle))[inside]
        return 0.1 * float(slopes.max()) if slopes.size else 0.0

    def curve_db(self) -> tuple[FloatArray, FloatArray]:
        """Return level and angle of the curve."""
        assert self.curve is not None  # figures are read from a curve only
        return self.curve.level_db, self.curve.angle_deg

    def _rising(self) -> str:
        return f"the level still rises where the cut ends ({self.lobes.peak_deg:g} deg)"

    def _flat(self) -> str:
        """Return why there is no single peak; empty if there is one."""
        if self.lobes.at_end:
            return self._rising()
        level, _ = self.curve_db()
        if float(np.ptp(level)) < FLAT_DB:
            return f"the level varies by only {float(np.ptp(level)):.2f} dB along the cut"
        rivals = [i for i in self.lobes.lobe_index if i >= 0 and level[i] > level[self.lobes.peak_index] - EQUAL_DB]
        if rivals:
            other = float(self.lobes.curve.angle_deg[rivals[0]])
            return f"lobes at {self.lobes.peak_deg:.1f} and {other:.1f} deg are equally high within {EQUAL_DB:g} dB"
        return ""

    def _peak_angle(self) -> Figure:
        label = f"{self.cut.cut.angle_name} of the peak (squint)"
        why = self._flat()
        if why:
            return self._none("peak_deg", label, "deg", why)
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
                    0.1 * self._spacing()
                    if not self.fewer
                    else 0.25 * self._sampling(self.lobes.peak_deg, [o.peak_deg for o in self.fewer]),
                )
            ),
        }
        value = self._shown(self.top.angle_deg)
        return self._figure("peak_deg", label, "deg", value, rows, "Angle along the cut at which the level is highest.")

    def _shown(self, angle_deg: float) -> float:
        """Return an angle of a cut that runs round within half a turn of 0."""
        return (angle_deg + 180.0) % 360.0 - 180.0 if self.lobes.curve.closed else angle_deg

    def _spacing(self) -> float:
        return float(np.median(np.abs(np.diff(np.sort(self.cut.angle_deg)))))

    def _width(self, level_db: float) -> Figure:
        name = "width_3_deg" if level_db == HALF_POWER_DB else f"width_{level_db:g}_deg".replace(".", "p")
        label = "half-power beamwidth" if level_db == HALF_POWER_DB else f"beamwidth at -{level_db:g} dB"
        if self.lobes.at_end:
            return self._none(name, label, "deg", self._rising())
        width = self.lobes.width_deg(level_db)
        if not np.isfinite(width) or width > 360.0:
            return self._none(
                name, label, "deg", f"the cut ends before the level has fallen by {level_db:.3g} dB on both sides"
            )
        e, p = self.errors, self.lobes.peak
        a = p * 10.0 ** (-level_db / 20.0)
        slopes = [abs(self._slope_at(x)) for x in self.lobes.crossing_deg[level_db]]
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
                    0.25 * self._sampling(width, [o.width_deg(level_db) for o in self.fewer]),
                )
            ),
            "finite distance": 0.0,
        }
        low, high = self.distance.width[level_db]
        bias = (low * width, high * width)
        text = f"Angle between the points {level_db:.4g} dB below the peak ({self._component()})."
        found = self._figure(name, label, "deg", width, rows, text, bias=bias)
        return _with_row(found, "finite distance", _largest(bias))

    def _slope_at(self, angle_deg: float) -> float:
        level, angle = self.curve_db()
        index = int(np.clip(np.searchsorted(angle, angle_deg), 1, angle.size - 1))
        return float((level[index] - level[index - 1]) / (angle[index] - angle[index - 1]))

    def _level(self, what: str, label: str, amplitude: float, read: list[float], text: str) -> Figure:
        """Return a level relative to the peak, dB, from an amplitude and what it is on thinner cuts."""
        p = self.lobes.peak
        value = 20.0 * np.log10(max(amplitude, 1e-12) / p)
        relative = self.errors.at(amplitude, p)
        relative["alignment"] = self._steepest() * 5.0 * self.errors.across_deg / DB
        relative["sampling"] = self._sampling(value, read) / DB
        total = float(np.sqrt(sum(x**2 for x in relative.values())))
        low = value + 20.0 * np.log10(1.0 - total) if total < 1.0 else -float("inf")
        rows = {term: DB * x for term, x in relative.items()}
        return self._figure(
            what, label, "dB", float(value), rows, text, ends=(float(low), float(value + 20.0 * np.log10(1.0 + total)))
        )

    def _side_lobe(self, side: int, word: str) -> Figure:
        what, label = f"side_lobe_{word}_db", f"highest side lobe {word}"
        index = self.lobes.lobe_index[side]
        if self.lobes.at_end or index < 0:
            why = self._rising() if self.lobes.at_end else "the cut shows no lobe beyond the main one on this side"
            return self._none(what, label, "dB", why)
        read = [
            20.0 * np.log10(o.curve.amplitude[o.lobe_index[side]] / o.peak)
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

    def _null(self, side: int, word: str) -> Figure:
        what, label = f"null_{word}_db", f"depth of the first null {word}"
        index = self.lobes.null_index[side]
        if self.lobes.at_end or index < 0:
            return self._none(what, label, "dB", "the cut shows no null on this side of the peak")
        amplitude = float(self.lobes.curve.amplitude[index])
        read = [
            20.0 * np.log10(o.curve.amplitude[o.null_index[side]] / o.peak)
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
            return self._none(what, label, "deg", "the cut shows no null on this side of the peak")
        several = self._flat()
        if several:
            return self._none(what, label, "deg", several)
        value, p = float(self.lobes.curve.angle_deg[index]), self.lobes.peak
        # Near a null the field runs through zero with this slope; an error moves the dip by its ratio to it.
        step = (
            0.5 * abs(self.lobes.width_deg(HALF_POWER_DB))
            if np.isfinite(self.lobes.width_deg(HALF_POWER_DB))
            else self._spacing()
        )
        reach = 0.25 * max(step, self._spacing())
        slope = (
            0.5 * sum(abs(self.lobes.curve.at(value + d) - self.lobes.curve.at(value)) for d in (-reach, reach)) / reach
        )
        field = float(np.sqrt(self.errors.noise**2 + self.errors.echoes**2))
        found = [float(o.curve.angle_deg[o.null_index[side]]) for o in self.fewer if o.null_index[side] >= 0]
        rows = {
            "alignment": self.errors.along_deg,
            "noise": self.errors.noise / max(slope, 1e-9),
            "range echoes": self.errors.echoes / max(slope, 1e-9),
            "finite distance": self.errors.floor / max(slope, 1e-9),
            "sampling": max(self._sampling(value, found), 0.1 * self._spacing()),
        }
        if field / max(slope, 1e-9) > 10.0 * max(step, self._spacing()) or p <= 0.0:
            return self._none(what, label, "deg", "errors are as large as what is left of the field beside the null")
        return self._figure(
            what, label, "deg", self._shown(value), rows, "Angle of the first dip beside the main lobe."
        )

    def _front_to_back(self) -> Figure:
        what, label = "front_to_back_db", "front to back"
        why = self._flat()
        back = self.lobes.peak_deg + 180.0
        angle = self.lobes.curve.angle_deg
        if not why and not self.cut.cut.great_circle:
            why = "the cut is no great circle: it does not hold the direction opposite to the peak"
        if not why and not self.lobes.curve.closed:
            back = back if back <= angle[-1] else back - 360.0
            if not angle[0] <= back <= angle[-1]:
                why = f"the cut does not reach the direction opposite to the peak ({back:g} deg)"
        if why:
            return self._none(what, label, "dB", why)
        a = self.lobes.curve.at(back)
        read = [20.0 * np.log10(o.curve.at(back) / o.peak) for o in self.fewer]
        inverse = self._level(what, label, a, read, "Level at the peak over the level in the opposite direction.")
        return Figure(inverse.name, inverse.label, -inverse.value, "dB", self.frequency, -inverse.upper, -inverse.lower,
                      inverse.definition, SOURCE, topic="cut", budget=inverse.budget)  # fmt: skip

    def _cross_polar(self) -> list[Figure]:
        asked = (("xpd_db", "cross-polar discrimination at the peak"), ("cross_peak_db", "highest cross-polar level"))
        if self.cut.cross is None:
            why = "one probe offset measured one component; a second offset 90 deg further gives both"
            return [self._none(what, label, "dB", why) for what, label in asked]
        if self.lobes.at_end:
            return [self._none(what, label, "dB", self._rising()) for what, label in asked]
        co, cross = (curve_of(self.cut.angle_deg, (one,)) for one in (self.cut.co[self.f], self.cut.cross[self.f]))
        assert co is not None and cross is not None  # a cut with figures has samples enough
        angle = self.lobes.peak_deg
        p = float(co.at(angle))
        out = []
        for (what, label), a in zip(asked, (cross.at(angle), float(cross.amplitude.max())), strict=True):
            e = self.errors
            errors = {"noise": e.noise, "range echoes": e.echoes * p / self.lobes.peak, "probe polarization": self._leak * p,
                      "drift residual": e.drift * a}  # fmt: skip
            total = float(np.sqrt(sum(x**2 for x in errors.values())))
            sign = -1.0 if what == "xpd_db" else 1.0
            ends = [
                sign * 20.0 * np.log10(x / p) if x > 0.0 else -sign * float("inf")
                for x in (max(a - total, 0.0), a + total)
            ]
            value = sign * 20.0 * float(np.log10(max(a, 1e-12) / p))
            rows = {term: DB * x / max(a, 1e-12) for term, x in errors.items()}
            text = (
                "Co-polar over cross-polar level at the peak."
                if sign < 0
                else "Highest cross-polar level on the cut, relative to the co-polar level at the peak."
            )
            out.append(self._figure(what, label, "dB", value, rows, text, ends=(min(ends), max(ends))))
        return out


def _largest(ends: tuple[float, float]) -> float:
    return max(abs(ends[0]), abs(ends[1]))


def _with_row(figure: Figure, term: str, expanded: float) -> Figure:
    """Return a figure whose budget shows a bound that its interval already holds."""
    rows = tuple(row.of_size(expanded) if row.term == term else row for row in figure.budget)
    return replace(figure, budget=rows)
