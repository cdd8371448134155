"""One cut at one frequency, ready to be read: its curve, what is wrong with its field, and how a figure of it is made."""

from __future__ import annotations

import numpy as np

from colure.analysis.cuts.curve import CutCurve, curve_of, lobes_of
from colure.analysis.cuts.distance import DistanceError, distance_error, extent_m
from colure.analysis.cuts.errors import BASIS, KIND, Errors
from colure.analysis.cuts.peak import TALLER_DB, TOP_DB
from colure.analysis.cuts.scan import CutScan, MeasuredCut
from colure.geometry.conventions import ComplexArray, FloatArray, power_db
from colure.geometry.kinematics import Geometry
from colure.model.chamber import Chamber
from colure.model.device import Device
from colure.model.evaluation import Evaluation
from colure.model.figure import BudgetRow, Figure

DB = 20.0 / np.log(10.0)
#: Half power is -3.0103 dB (IEEE Std 145, half-power beamwidth).
HALF_POWER_DB = float(power_db(2.0))
#: Other lobes within this of the highest leave open which one is the peak, dB.
EQUAL_DB = 0.5
#: A level that varies by less along the whole cut has no peak, dB.
FLAT_DB = 1.0
SOURCE = "IEEE Std 145; read along the measured cut at the range length, no transform"
#: What no interval of a cut holds, but for mismatch and reconnection where they are declared.
LEFT_OUT = ("mismatch", "leakage", "linearity", "standing wave", "probe place", "probe pointing", "reconnection",
            "position error",
            "temperature", "jumps")  # fmt: skip


class CutReader:
    """One cut at one frequency: its curve and its errors; figures are read from it."""

    def __init__(
        self, scan: CutScan, cut: MeasuredCut, f: int, chamber: Chamber, device: Device, settings: Evaluation,
        context: dict[str, float],
    ) -> None:  # fmt: skip
        self.scan, self.cut, self.f = scan, cut, f
        self.frequency = float(scan.frequency_hz[f])
        self.chamber, self.device = chamber, device
        self.levels = tuple(dict.fromkeys((HALF_POWER_DB, *settings.beamwidth_levels_db)))
        self.settings = settings
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

    def _look(self, curve: CutCurve) -> tuple[float, ...]:
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
            along_m=round(extent_m(size, along), 6), across_m=round(extent_m(size, across), 6),
            distance_m=self.chamber.range_length_m,
            frequency_hz=self.frequency, levels_db=self.levels,
            widths_deg=tuple(round(self.lobes.width_deg(level), 1) for level in self.levels),
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
        echo = chamber.facing_echo_amplitude
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
            along_deg=float(
                np.sqrt(a.theta_zero_deg**2 + a.device_pose_deg**2 + shifted**2 + (2.0 * self.scan.lag_deg) ** 2)
            ),
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
            "near horn": told.get("unheard_db", 0.0),
            "drift since calibration": reference.drift_db_day * told.get("age_days", 0.0),
        }

    @property
    def purity(self) -> float:
        """What the probe reads of the field across it by its own impurity, or the horn's that took it out."""
        chamber = self.chamber
        level = chamber.reference.cross_polar_db if self.scan.pure else chamber.probe.cross_polar_db
        return float(10.0 ** ((chamber.probe.cross_polar_db if level is None else level) / 20.0))

    @property
    def leak(self) -> float:
        """What the probe reads of the field across it: its impurity, and the error of its roll."""
        chamber = self.chamber
        roll = 0.0 if self.scan.pure else float(np.deg2rad(chamber.alignment.probe_roll_zero_deg))
        return float(np.hypot(self.purity, np.hypot(roll, np.deg2rad(chamber.alignment.device_pose_deg))))

    @property
    def hands(self) -> bool:
        """Tell whether gains of both hands are asked for: of a device that is declared not linear, or by evaluation.toml."""
        return self.device.polarization != "linear" or "circular" in self.settings.components

    def _impurity(self, peak: float) -> float:
        """Return what the other component adds to the co-polar field, an amplitude."""
        if self.cut.cross is not None:
            return self.leak * float(np.abs(self.cut.cross[self.f]).max())
        simple = self.device.polarization == "linear" and self.scan.scan.probe == "follows"
        aligned = np.deg2rad(self.scan.scan.offsets_deg[0] - self.device.slant_deg)
        purity = 10.0 ** (-self.device.expected_xpd_db / 20.0) if simple else 1.0
        return float(self.leak * np.hypot(purity, abs(np.tan(aligned)) if abs(np.cos(aligned)) > 0.1 else 10.0) * peak)

    def name(self, what: str) -> str:
        return f"{self.cut.cut.name}_{what}"

    def none(self, what: str, label: str, unit: str, why: str) -> Figure:
        nan = float("nan")
        return Figure(name=self.name(what), label=f"{self.cut.cut.label}: {label}", value=nan, unit=unit,
                      frequency_hz=self.frequency, lower=nan, upper=nan, definition=label, source=SOURCE,
                      topic="cut", reason=f"cannot tell, because {why}")  # fmt: skip

    def figure(
        self, what: str, label: str, unit: str, value: float, rows: dict[str, float], text: str,
        *, bias: tuple[float, float] = (0.0, 0.0), ends: tuple[float, float] | None = None,
    ) -> Figure:  # fmt: skip
        """Return a figure; rows are expanded contributions in its unit, `bias` the extremes of measured less true."""
        half = float(np.sqrt(sum(x**2 for x in rows.values())))
        low, high = (value - half, value + half) if ends is None else ends
        budget = tuple(
            BudgetRow(term=term, expanded=size, basis=BASIS.get(term, ""), kind=KIND.get(term, "declared"))
            for term, size in rows.items()
        )
        return Figure(
            name=self.name(what), label=f"{self.cut.cut.label}: {label}", value=value, unit=unit,
            frequency_hz=self.frequency, lower=low - bias[1], upper=high - bias[0], definition=text,
            source=SOURCE, topic="cut", budget=budget, not_included=self.left_out(),
        )  # fmt: skip

    def left_out(self) -> tuple[str, ...]:
        """Return what no interval of a cut holds: mismatch and reconnection only where nothing is declared of them."""
        declared = {name for name, size in self._common_db().items() if size > 0.0}
        return tuple(name for name in LEFT_OUT if name not in declared)

    def sampling(self, own: float, read: list[float]) -> float:
        """Return what every second sample alone would change; nothing where it cannot be read."""
        changes = [abs(x - own) for x in read if np.isfinite(x)]
        return max(changes, default=0.0)

    def steepest(self) -> float:
        """Return a slope in dB per degree for what lies beside the cut: a tenth of the main lobe's steepest flank."""
        level, angle = self.curve_db()
        inside = level > level.max() - 10.0
        slopes = np.abs(np.gradient(level, angle))[inside]
        return 0.1 * float(slopes.max()) if slopes.size else 0.0

    def curve_db(self) -> tuple[FloatArray, FloatArray]:
        """Return level and angle of the curve."""
        assert self.curve is not None  # figures are read from a curve only
        return self.curve.level_db, self.curve.angle_deg

    def rising(self) -> str:
        return f"the level still rises where the cut ends ({self.lobes.peak_deg:g} deg)"

    def beside_end(self) -> str:
        """Return why the angle of the peak is not told: samples lie on one side of it only; empty if they lie on both."""
        if not self.lobes.within_of_end(self.spacing()):
            return ""
        peak = self.lobes.peak_deg
        return f"the peak lies less than one step from the cut's end ({peak:g} deg): a cut that goes on beyond it tells"

    def flat(self) -> str:
        """Return why there is no single peak; empty if there is one."""
        if self.lobes.at_end:
            return self.rising()
        level, _ = self.curve_db()
        if float(np.ptp(level)) < FLAT_DB:
            return f"the level varies by only {float(np.ptp(level)):.2f} dB along the cut"
        rivals = [i for i in self.lobes.lobe_index if i >= 0 and level[i] > level[self.lobes.peak_index] - EQUAL_DB]
        if rivals:
            other = float(self.lobes.curve.angle_deg[rivals[0]])
            return f"lobes at {self.lobes.peak_deg:.1f} and {other:.1f} deg are equally high within {EQUAL_DB:g} dB"
        return ""

    def shown(self, angle_deg: float) -> float:
        """Return an angle of a cut that runs round within half a turn of 0."""
        return (angle_deg + 180.0) % 360.0 - 180.0 if self.lobes.curve.closed else angle_deg

    def spacing(self) -> float:
        return float(np.median(np.abs(np.diff(np.sort(self.cut.angle_deg)))))

    def slope_at(self, angle_deg: float) -> float:
        level, angle = self.curve_db()
        index = int(np.clip(np.searchsorted(angle, angle_deg), 1, angle.size - 1))
        return float((level[index] - level[index - 1]) / (angle[index] - angle[index - 1]))
