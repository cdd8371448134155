"""All figures of a pattern, from its expansion in spherical waves."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field, replace
from functools import partial

import numpy as np

from colure.analysis.figures.beams import (
    AT_THE_PEAK,
    BEHIND_COS,
    CIRCULAR_DB,
    EDGE,
    NO_PLANE,
    NO_REFERENCE,
    Near,
    single_beam_reason,
)
from colure.analysis.figures.cuts import (
    FIRST_STENCIL,
    LINEAR_DB,
    MAY_BE_HIGHEST,
    MOST_CANDIDATES,
    Beam,
    Cut,
    FarField,
    Plane,
    beam_at,
    circles,
    climbed,
    climbs,
    cuts_of,
    ludwig_3,
    tangent_at,
    to_the_edge,
)
from colure.analysis.figures.definitions import Definition, definitions_for
from colure.analysis.figures.lobes import beamwidth_deg, edges_deg, first_null, first_side_lobe
from colure.analysis.figures.phase_centre import beam_cone_deg, centre_in, cone_of, copolar, ripple_deg, ripple_reason
from colure.analysis.figures.sphere import UP, Sky, coverage, rim, rim_peak
from colure.geometry.conventions import SPEED_OF_LIGHT, BoolArray, ComplexArray, FloatArray
from colure.geometry.directions import angle_between, azimuth_over_elevation, from_azimuth_over_elevation
from colure.model.evaluation import Evaluation, Window
from colure.waves.expansion import Expansion

#: Rays from the peak along which cross-polarization is looked at: half as many planes.
PLANES = 8
#: Local maxima of the samples that are climbed at most, in four goes, until one is a lobe besides the peak.
MOST_TRIED = 64
#: Lowest samples of a sector about which its smallest value is looked for.
MINIMA = 8
#: Rings over which levels are counted for coverage, at least.
COVERAGE_RINGS = 91
#: Delays are told to so many digits, ns: finer is arithmetic.
DELAY_DIGITS = 9
#: How far cuts reach: the whole circle, and so much more that a lobe opposite to the peak is seen as one.
SPAN_DEG = 182.0


@dataclass(frozen=True)
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
    circular
        True: the device is declared circularly polarized, so that no plane is its E plane.
    relative
        True: the run has no reference, so that figures that need a gain do not exist.
    """

    settings: Evaluation = field(default_factory=Evaluation)
    slant: float = 0.0
    region: float = float(np.pi)
    one_polarization: bool = False
    state: str = "beam"
    band: bool = False
    mismatch_loss_db: FloatArray | None = None
    circular: bool = False
    relative: bool = False
    definitions: tuple[Definition, ...] = field(init=False)

    def __post_init__(self) -> None:
        wanted = self.settings
        if self.state not in wanted.commanded_deg:
            wanted = wanted.model_copy(update={"commanded_deg": {}})
        known = [
            d
            for d in definitions_for(
                wanted,
                band=self.band,
                reflection=self.mismatch_loss_db is not None,
                partial=self.one_polarization,
                circular=self.circular,
            )
            if (self.region >= np.pi - 1e-9 or not d.sphere) and not (d.pair and self.one_polarization)
        ]
        object.__setattr__(self, "definitions", tuple(known))

    @property
    def names(self) -> tuple[str, ...]:
        """Names of the figures, in their order."""
        return tuple(d.name for d in self.definitions)

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
        found = [
            self._at(c, float(k), None if near is None else near[i])
            for i, (c, k) in enumerate(zip(expansion.coefficients, expansion.k, strict=True))
        ]
        known = found if near is None else near
        return self._table(self._rows(found, expansion.k), [one.reasons for one in known])

    def places(self, expansion: Expansion) -> list[Near]:
        """Return where peak and phase centre are at every frequency, and why figures do not exist."""
        return self.read(expansion)[1]

    def read(self, expansion: Expansion) -> tuple[FloatArray, list[Near]]:
        """Return what `values` and `places` return, of an unperturbed expansion, with one look at the pattern."""
        found = [self._at(c, float(k), None) for c, k in zip(expansion.coefficients, expansion.k, strict=True)]
        rows = self._rows(found, expansion.k)
        return self._table(rows, [one.reasons for one in found]), self._nearby(found, rows)

    def _table(self, rows: list[dict[str, float]], reasons: Sequence[dict[str, str]]) -> FloatArray:
        """Return values (frequency, figure); nan where a figure does not exist."""
        known = [{**row, **dict.fromkeys(why, float("nan"))} for row, why in zip(rows, reasons, strict=True)]
        return np.array([[float(row[name]) for name in self.names] for row in known])

    def _nearby(self, found: list[_One], rows: list[dict[str, float]]) -> list[Near]:
        middle = found[len(found) // 2].reasons
        along = {
            name: middle[source]
            for name, source in (("squint_deg", "beam_azimuth_deg"), ("phase_centre_wander_mm", "phase_centre_x_mm"))
            if source in middle and name in self.names
        }
        out = []
        for one, row in zip(found, rows, strict=True):
            reasons = {**along, **one.reasons}
            for name in self.names:
                if np.isnan(row[name]) and name not in reasons:
                    reasons[name] = self._why(name)
            out.append(Near(one.beam.direction, one.centre_m, one.beam.plane, one.cone_deg, one.width_deg, reasons))
        return out

    def _why(self, name: str) -> str:
        """Return why a figure that is nan in a single-beam pattern does not exist."""
        inside = "" if self.region >= np.pi - 1e-9 else f" within {np.rad2deg(self.region):.4g} deg of +z"
        if name.startswith("beamwidth"):
            return f"{'undefined' if inside else 'omnidirectional in this cut'}: it never falls so far below the peak{inside}"
        if name.startswith("side_lobe"):
            return f"undefined: there is no side lobe{inside}"
        if name.startswith("null"):
            return f"undefined: there is no minimum beside the main lobe{inside}"
        return "undefined: it depends on a figure that is"

    def _rows(self, found: list[_One], k: FloatArray) -> list[dict[str, float]]:
        """Return the values of every frequency by name, those along the band among them."""
        along = _along_the_band(found, k) if self.band else {}
        rows = [{**one.values, **{name: v[i] for name, v in along.items()}} for i, one in enumerate(found)]
        if self.mismatch_loss_db is not None:
            for row, loss in zip(rows, self.mismatch_loss_db, strict=True):
                row["gain_accepted_dbi"] = row["gain_dbi"] + float(loss)
                row["radiation_efficiency_db"] = row["efficiency_db"] + float(loss)
        return rows

    def _at(self, coefficients: ComplexArray, k: float, near: Near | None) -> _One:
        field, slant = FarField(coefficients), self.slant
        sky = Sky.of(field)
        peak, lobes, rear = self._climb(field, sky)
        half_angle = float(np.deg2rad(self.settings.rear_sector_deg))
        ends, at_lobes, at_rear, at_rim = field.at_each(
            np.stack([peak, -peak]), lobes, rear, rim(field.order, -peak, half_angle)[None]
        )
        other = lobes @ peak < np.cos(sky.step)
        several = ""
        if near is None:
            intensity = float(np.sum(np.abs(ends[0]) ** 2))
            several = single_beam_reason(sky, peak, intensity, lobes[other], at_lobes[other], region=self.region)
        plane = self._plane if near is None else near.plane
        beam = beam_at(peak, ends[0], slant, plane=plane, several=bool(several))
        tangents_ = [tangent_at(beam, a) for a in self._planes]
        (circle,) = field.at_each(circles(field.order, beam, tangents_))
        values, phase = self._beam_values(coefficients, beam, ends)
        cut_values, every = self._cut_values(beam, circle, tangents_)
        inside = rear @ -peak >= np.cos(half_angle)
        values |= cut_values | {
            "side_lobe_highest_db": _relative(at_lobes[other], beam.intensity),
            "front_to_rear_db": max(
                _relative(at_rear[inside], beam.intensity, none=0.0), float(np.sqrt(rim_peak(at_rim) / beam.intensity))
            ),
        }
        values |= self._power_values(coefficients, k, sky, values)
        cone_deg = beam_cone_deg(every, peak, region=self.region) if near is None else near.cone_deg
        centre, ripple = self._phase_centre(field, beam, cone_deg, k, None if near is None else near.centre_m)
        values |= {f"phase_centre_{axis}_mm": 1e3 * float(v) for axis, v in zip("xyz", centre, strict=True)}
        width = float(np.nanmin([values["beamwidth_e_deg"], values["beamwidth_h_deg"], 360.0]))
        reasons = (
            self._reasons(
                beam,
                several,
                ripple_reason(ripple, cone_deg),
                -20.0 * float(np.log10(max(values["axial_ratio_db"], 1e-15))),
            )
            if near is None
            else {}
        )
        return _One(values, beam, phase, ends[0], centre, cone_deg, width, reasons)

    @property
    def _plane(self) -> Plane | None:
        return None if self.settings.principal_planes == "auto" else "declared"

    def _phase_centre(
        self, field: FarField, beam: Beam, cone_deg: float, k: float, start: FloatArray | None
    ) -> tuple[FloatArray, float]:
        """Return the phase centre (3,) in metres, and the ripple about it in degrees."""
        cone = cone_of(beam.direction, cone_deg)
        grown = cone if start is not None else cone_of(beam.direction, cone_deg, grown=True)
        every = copolar(field.at(grown.directions), beam, grown.directions)
        co = every[-len(cone.directions) :]
        centre = centre_in(cone, co, k, start=start, grown=(grown, every))
        return centre, ripple_deg(cone, co, k, centre)

    def _reasons(self, beam: Beam, several: str, ripple: str, axial_ratio_db: float) -> dict[str, str]:
        """Return why figures do not exist, by name."""
        reasons: dict[str, str] = {}
        if self.relative:
            reasons |= {d.name: NO_REFERENCE for d in self.definitions if d.gain or d.name == "group_delay_ns"}
        if ripple:
            reasons |= {name: ripple for name in self.names if name.startswith("phase_centre")}
        if abs(beam.direction[1]) > np.cos(np.deg2rad(0.1)):
            reasons["beam_azimuth_deg"] = "undefined: the beam points along y, where azimuth is not defined"
        if beam.direction[2] < BEHIND_COS:
            why = "undefined: Ludwig's third co-polar vector is not defined near -z"
            reasons |= dict.fromkeys(("xpd_db", "xpd_worst_db", "tilt_deg"), why)
        if axial_ratio_db < CIRCULAR_DB:
            reasons["tilt_deg"] = (
                f"undefined: the wave is circular (axial ratio {axial_ratio_db:.2g} dB), its ellipse has no axis"
            )
        if several:
            reasons |= {d.name: several for d in self.definitions if d.single_beam}
            if axial_ratio_db < LINEAR_DB and abs(beam.direction[2]) < np.cos(np.deg2rad(30.0)):
                reasons |= {name: NO_PLANE for name in self.names if name.startswith(("beamwidth", "null"))}
        if self.region < np.pi - 1e-9 and beam.direction[2] <= np.cos(self.region - 1e-6):
            edge = EDGE.format(np.rad2deg(self.region))
            reasons |= {d.name: edge for d in self.definitions if d.single_beam or d.name in AT_THE_PEAK}
            reasons |= {name: edge for name in self.names if name.startswith(("beamwidth", "null"))}
        return {name: why for name, why in reasons.items() if name in self.names}

    @property
    def _planes(self) -> list[float]:
        """Planes of the cuts, degrees from E: E, H, what settings add, and those between for the polarization."""
        between = [180.0 * i / PLANES for i in range(PLANES) if i not in (0, PLANES // 2)]
        return [0.0, 90.0, *self.settings.cut_planes_deg, *between]

    def _climb(self, field: FarField, sky: Sky) -> tuple[FloatArray, FloatArray, FloatArray]:
        """Return the peak (3,), the tops (n, 3) that may be the highest lobe besides it, and those (n, 3) near the rear sector.

        Looked for over the whole region, whatever was found before: a perturbation may move a broad beam far, and from one of
        two nearly equal lobes to the other.
        """
        places, level = sky.lobes(region=self.region)
        rear = sky.lobes_within(-places[0], float(np.deg2rad(self.settings.rear_sector_deg)))
        first = np.flatnonzero(level >= MAY_BE_HIGHEST * level[0])[:MOST_CANDIDATES]
        other = np.flatnonzero(places @ places[0] < np.cos(2.5 * sky.step))
        some = np.union1d(first, other[:MOST_CANDIDATES])
        at, arrived = self._tops(field, sky, np.concatenate([places[some], rear]))
        tops, at_rear = to_the_edge(at[: len(some)], self.region), at[len(some) :]
        best = int(np.argmax(field.power_at(tops)))
        peak = tops[best] if arrived[best] else to_the_edge(climbed(field, at[best], sky.step)[None], self.region)[0]
        lobes = tops[arrived[: len(some)]]
        # On the ridge of a fan beam samples make lobes that are none: nobody arrives but at the peak, and others are tried.
        for begin in range(MOST_CANDIDATES, min(len(other), MOST_TRIED), MOST_TRIED // 4):
            if (lobes @ peak < np.cos(sky.step)).any():
                break
            more, arrived = self._tops(field, sky, places[other[begin : begin + MOST_TRIED // 4]])
            lobes = np.concatenate([lobes, to_the_edge(more[arrived], self.region)])
        return np.asarray(peak), lobes, at_rear

    @staticmethod
    def _tops(field: FarField, sky: Sky, starts: FloatArray) -> tuple[FloatArray, BoolArray]:
        return climbs(field, starts, np.full(len(starts), FIRST_STENCIL * sky.step))

    def _beam_values(
        self, coefficients: ComplexArray, beam: Beam, ends: ComplexArray
    ) -> tuple[dict[str, float], float]:
        """Return figures from the field at the peak and opposite to it (2, 3), and the phase along the E plane's tangent."""
        total = float(np.sum(np.abs(coefficients) ** 2))
        gain = 10.0 * np.log10(beam.intensity)
        directivity = 10.0 * np.log10(4.0 * np.pi * beam.intensity / total)
        co, cross = (complex(x[0]) for x in ludwig_3(ends[:1], beam.direction[None], self.slant))
        azimuth, elevation = (float(np.rad2deg(v)) for v in azimuth_over_elevation(beam.direction))
        size, product = abs(co) ** 2 + abs(cross) ** 2, co * np.conj(cross)
        # R^2 - L^2 = 2 Im(co cross*), with e_R = (co + j cross)/sqrt 2 (exp(+jwt), outgoing; IEEE Std 145).
        circularity = 2.0 * product.imag / size
        values = {
            "gain_dbi": gain,
            "directivity_dbi": directivity,
            "efficiency_db": gain - directivity,
            "beam_azimuth_deg": azimuth,
            "beam_elevation_deg": elevation,
            "xpd_db": abs(cross) / max(abs(co), 1e-300),
            "axial_ratio_db": abs(float(np.tan(0.5 * np.arcsin(np.clip(circularity, -1.0, 1.0))))),
            "tilt_deg": float(np.rad2deg(0.5 * np.arctan2(2.0 * product.real, abs(co) ** 2 - abs(cross) ** 2))),
            "circularity": float(circularity),
            "front_to_back_db": float(np.sqrt(np.sum(np.abs(ends[1]) ** 2) / beam.intensity)),
        }
        if self.state in self.settings.commanded_deg:
            az, el = np.deg2rad(self.settings.commanded_deg[self.state])
            told = from_azimuth_over_elevation(azimuth=az, elevation=el)
            values["pointing_error_deg"] = float(np.rad2deg(angle_between(told, beam.direction)))
        return values, float(np.angle(ends[0] @ beam.tangent))

    def _cut_values(
        self, beam: Beam, circle: ComplexArray, tangents_: list[FloatArray]
    ) -> tuple[dict[str, float], list[Cut]]:
        """Return figures of the cuts, from fields (plane, sample, 3) on great circles through the peak, and the cuts."""
        settings, count = self.settings, 2 + len(self.settings.cut_planes_deg)
        read = partial(cuts_of, beam=beam, slant=self.slant, span_deg=SPAN_DEG, region=self.region, of=settings.cuts_of)
        main = read(circle[:count], tangents_=tangents_[:count])
        other = read(circle[count:], tangents_=tangents_[count:], step_deg=0.5)
        e_cut, h_cut = main[:2]
        values = {"xpd_worst_db": _worst([e_cut, h_cut, *other], settings.cone_deg)}
        for plane, one in (("e", e_cut), ("h", h_cut)):
            values[f"beamwidth_{plane}_deg"] = beamwidth_deg(one)
            values[f"side_lobe_{plane}_db"] = first_side_lobe(one)
            values[f"null_{plane}_db"] = first_null(one)
            for level in settings.beamwidth_levels_db:
                values[f"beamwidth_{plane}_{level:g}db_deg"] = beamwidth_deg(one, level)
        for angle, one in zip(settings.cut_planes_deg, main[2:], strict=True):
            values[f"beamwidth_at_{angle:g}_deg"] = beamwidth_deg(one)
            values[f"side_lobe_at_{angle:g}_db"] = first_side_lobe(one)
        return values, [*main, *other]

    def _power_values(
        self, coefficients: ComplexArray, k: float, sky: Sky, at_peak: dict[str, float]
    ) -> dict[str, float]:
        settings, values = self.settings, dict[str, float]()
        if settings.transmit_power_dbm is not None:
            values["eirp_dbm"] = settings.transmit_power_dbm + at_peak["gain_dbi"]
            values["trp_dbm"] = settings.transmit_power_dbm + at_peak["efficiency_db"]
        if settings.sensitivity_dbm is not None:
            values["eis_dbm"] = settings.sensitivity_dbm - at_peak["gain_dbi"]
            values["tis_dbm"] = settings.sensitivity_dbm - at_peak["efficiency_db"]
        values |= self._over_directions(sky)
        if self.region < np.pi - 1e-9 or self.one_polarization:
            return values
        total = float(np.sum(np.abs(coefficients) ** 2))
        values["upper_share_db"] = sky.power_on_one_side(settings.up) / total
        if settings.horizon_bands_deg:
            turned = Sky.of(Expansion(coefficients, np.asarray(k)).rotated(UP[settings.up]).coefficients)
            for band in settings.horizon_bands_deg:
                b = float(np.deg2rad(band))
                values[f"horizon_{band:g}_db"] = turned.power_between(0.5 * np.pi - b, 0.5 * np.pi + b) / total
        return values

    def _over_directions(self, sky: Sky) -> dict[str, float]:
        """Return the figures that are read over many directions of one pattern, by name."""
        settings, values = self.settings, dict[str, float]()
        for window in settings.sectors:
            mean, least = _sector(sky, window)
            values[f"sector_{window.name}_mean_dbi"] = 10.0 * np.log10(mean)
            values[f"sector_{window.name}_min_dbi"] = 10.0 * np.log10(max(least, 1e-20))
        if settings.coverage_percent and self.region >= np.pi - 1e-9 and not self.one_polarization:
            finer = Sky.of(sky.field, least_rings=COVERAGE_RINGS)
            levels = coverage(finer.power, finer.theta, settings.coverage_percent)
            for percent, level in zip(settings.coverage_percent, levels, strict=True):
                values[f"coverage_{percent:g}_dbi"] = 10.0 * np.log10(max(float(level), 1e-20))
        return values

    def over_directions(self, coefficients: ComplexArray) -> dict[str, float]:
        """Return the native figures of sectors and coverage of one pattern (2, J) by name: they need no beam."""
        return self._over_directions(Sky.of(coefficients))


@dataclass(frozen=True)
class _One:
    """Figures of one frequency, what figures along the band need, and why figures do not exist."""

    values: dict[str, float]
    beam: Beam
    phase: float
    at_peak: ComplexArray
    centre_m: FloatArray
    cone_deg: float
    width_deg: float
    reasons: dict[str, str]


def _relative(fields: ComplexArray, intensity: float, *, none: float = float("nan")) -> float:
    """Return the largest of fields (n, 3) as an amplitude ratio to the peak; `none` if there is none."""
    power = np.sum(np.abs(fields) ** 2, axis=-1)
    return float(np.sqrt(power.max() / intensity)) if power.size else none


def _worst(planes: list[Cut], cone_deg: float | None) -> float:
    """Return the largest cross- over co-polar amplitude along the rays of some planes."""
    worst = 0.0
    for one in planes:
        # A cut that never falls to half power counts to 90 deg.
        ends = [e if np.isfinite(e) else 90.0 for e in edges_deg(one)] if cone_deg is None else [cone_deg, cone_deg]
        inside = (one.angle_deg <= ends[0]) & (one.angle_deg >= -ends[1]) & np.isfinite(one.co)
        if not inside.any():
            continue
        ratio = np.abs(one.cross) / np.maximum(np.abs(one.co), 1e-300)
        edge = np.interp([-ends[1], ends[0]], one.angle_deg, ratio)
        worst = max(worst, float(np.nanmax(ratio[inside])), float(np.nanmax(np.nan_to_num(edge))))
    return worst


def _sector(sky: Sky, window: Window) -> tuple[float, float]:
    """Return (mean over solid angle, smallest) of |e|^2 in a sector, on a grid as fine as the lobes ask for."""
    step = float(np.rad2deg(sky.theta[1])) / 2.0
    (a, b), (c, d) = window.azimuth_deg, window.elevation_deg
    az = np.deg2rad(np.linspace(a, b, max(3, int(np.ceil((b - a) / step)) + 1)))
    el = np.deg2rad(np.linspace(c, d, max(3, int(np.ceil((d - c) / step)) + 1)))
    z, y = np.meshgrid(az, el, indexing="ij")
    places = from_azimuth_over_elevation(azimuth=z, elevation=y)
    power = sky.field.power_at(places.reshape(-1, 3)).reshape(z.shape)
    weight = np.cos(y)
    weight[[0, -1]] *= 0.5
    weight[:, [0, -1]] *= 0.5
    least = _least_within(sky, window, places.reshape(-1, 3)[np.argsort(power.ravel())[:MINIMA]])
    return float(np.sum(power * weight) / np.sum(weight)), min(float(power.min()), least)


def _least_within(sky: Sky, window: Window, starts: FloatArray) -> float:
    """Return the smallest |e|^2 near some directions (n, 3) of a sector, on little grids that close in on it."""
    low, high = np.deg2rad(np.transpose([window.azimuth_deg, window.elevation_deg]))
    here = np.stack(azimuth_over_elevation(starts), axis=-1)
    here[:, 0] = low[0] + np.mod(here[:, 0] - low[0], 2.0 * np.pi)
    line = np.linspace(-1.0, 1.0, 5)
    grid = np.stack(np.meshgrid(line, line, indexing="ij"), axis=-1).reshape(-1, 2)
    size, least = 0.5 * float(sky.theta[1]), np.inf
    for _ in range(6):
        at = np.clip(here[:, None] + size * grid, low, high)
        power = sky.field.power_at(
            from_azimuth_over_elevation(azimuth=at[..., 0], elevation=at[..., 1]).reshape(-1, 3)
        ).reshape(at.shape[:2])
        here = at[np.arange(len(at)), np.argmin(power, axis=1)]
        size, least = 0.4 * size, min(least, float(power.min()))
    return least


def _along_the_band(found: list[_One], k: FloatArray) -> dict[str, FloatArray]:
    """Return figures that need the neighbours: group delay about its mean (ns), squint (deg), phase centre's wander (mm)."""
    frequency = k * SPEED_OF_LIGHT / (2.0 * np.pi)
    middle = found[len(found) // 2]
    # An ellipse's axis has no sign: every one is taken along the middle frequency's.
    turned = [0.0 if one.beam.tangent @ middle.beam.tangent >= 0.0 else np.pi for one in found]
    phase = np.unwrap([one.phase + turn for one, turn in zip(found, turned, strict=True)])
    delay = -1e9 * np.gradient(phase, frequency) / (2.0 * np.pi)
    squint = []
    for one in found:
        az, el = (
            float(np.mod(x - y + np.pi, 2.0 * np.pi) - np.pi)
            for x, y in zip(
                azimuth_over_elevation(one.beam.direction), azimuth_over_elevation(middle.beam.direction), strict=True
            )
        )
        sign = np.sign(az if abs(az) >= abs(el) else el)
        squint.append(float(sign * np.rad2deg(angle_between(one.beam.direction, middle.beam.direction))))
    moved = [1e3 * (one.centre_m - middle.centre_m) for one in found]
    wander = [float(np.linalg.norm(m) * np.sign(m[int(np.argmax(np.abs(m)))])) for m in moved]
    return {
        # Of three frequencies the middle one's delay is the mean, exactly: no rounding is left of it.
        "group_delay_ns": np.round(delay - delay.mean(), DELAY_DIGITS),
        "squint_deg": np.array(squint),
        "phase_centre_wander_mm": np.array(wander),
    }


def evaluate(coefficients: ComplexArray, *, slant: float, region: float = np.pi) -> FloatArray:
    """Return the native values of the usual figures of one expansion (2, J), in the order of `NAMES`.

    Within `region` (radians) of +z; figures that need the whole sphere are nan with less.
    """
    whole = FigureSet(slant=slant)
    own = replace(whole, region=region)
    one = Expansion(coefficients[None], np.ones(1))
    values = dict(zip(own.names, own.values(one)[0], strict=True))
    return np.array([values.get(name, np.nan) for name in whole.names])
