"""All figures of a pattern, from its expansion in spherical waves."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field, replace

import numpy as np

from colure.analysis.figures.cuts import (
    COARSE_STEPS_PER_ORDER,
    NEAR,
    Beam,
    Cut,
    FarField,
    beam_at,
    circles,
    climbed_together,
    cuts_of,
    find_beam,
    ludwig_3,
    tangent_at,
)
from colure.analysis.figures.definitions import Definition, definitions_for
from colure.analysis.figures.lobes import beamwidth_deg, edges_deg, first_null, first_side_lobe
from colure.analysis.figures.sphere import UP, Sky, coverage
from colure.analysis.phase_centre import centre_in, cone_of
from colure.geometry.conventions import SPEED_OF_LIGHT, BoolArray, ComplexArray, FloatArray
from colure.geometry.directions import angle_between, azimuth_over_elevation, from_azimuth_over_elevation
from colure.model.evaluation import Evaluation, Window
from colure.waves.expansion import Expansion

#: Rays from the peak along which cross-polarization is looked at: half as many planes.
PLANES = 8
#: Rings over which levels are counted for coverage, at least.
COVERAGE_RINGS = 91
#: Cone of the phase centre, degrees; half of a smaller region.
PHASE_CONE_DEG = 8.0


@dataclass(frozen=True)
class Near:
    """Where a pattern's peak (3,) and phase centre (3,) in metres are, at least nearly."""

    direction: FloatArray
    centre_m: FloatArray | None


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
    """

    settings: Evaluation = field(default_factory=Evaluation)
    slant: float = 0.0
    region: float = float(np.pi)
    one_polarization: bool = False
    state: str = "beam"
    band: bool = False
    mismatch_loss_db: FloatArray | None = None
    definitions: tuple[Definition, ...] = field(init=False)

    def __post_init__(self) -> None:
        wanted = self.settings
        if self.state not in wanted.commanded_deg:
            wanted = wanted.model_copy(update={"commanded_deg": {}})
        known = [
            d
            for d in definitions_for(wanted, band=self.band, reflection=self.mismatch_loss_db is not None)
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

        near
            Where peak and phase centre are nearly, at every frequency: spares the search.
        """
        found = [
            self._at(c, float(k), None if near is None else near[i])
            for i, (c, k) in enumerate(zip(expansion.coefficients, expansion.k, strict=True))
        ]
        along = _along_the_band(found, expansion.k) if self.band else {}
        rows = [{**one.values, **{name: v[i] for name, v in along.items()}} for i, one in enumerate(found)]
        if self.mismatch_loss_db is not None:
            for row, loss in zip(rows, self.mismatch_loss_db, strict=True):
                row["gain_accepted_dbi"] = row["gain_dbi"] + float(loss)
                row["radiation_efficiency_db"] = row["efficiency_db"] + float(loss)
        return np.array([[float(row[name]) for name in self.names] for row in rows])

    def places(self, expansion: Expansion) -> list[Near]:
        """Return where peak and phase centre are, at every frequency."""
        found = [self._at(c, float(k), None) for c, k in zip(expansion.coefficients, expansion.k, strict=True)]
        return [Near(one.direction, one.centre_m) for one in found]

    def _at(self, coefficients: ComplexArray, k: float, near: Near | None) -> _One:
        field, slant = FarField(coefficients), self.slant
        sky = Sky.of(field)
        if near is None:
            near = Near(find_beam(field, slant=slant, region=self.region).direction, None)
        peak, lobes, rear = self._climb(field, sky, near.direction)
        shape = beam_at(peak, slant, 1.0)
        tangents_ = [tangent_at(shape, a) for a in self._planes]
        cone = cone_of(peak, self.cone_deg)
        ends, at_lobes, at_rear, circle, in_cone = field.at_each(
            np.stack([peak, -peak]), lobes, rear, circles(field.order, shape, tangents_), cone.directions
        )
        beam = replace(shape, intensity=float(np.sum(np.abs(ends[0]) ** 2)))
        values, phase = self._beam_values(coefficients, beam, ends)
        values |= self._cut_values(beam, circle, tangents_)
        values |= {
            "side_lobe_highest_db": _relative(at_lobes, lobes @ peak < np.cos(sky.step), beam.intensity),
            "front_to_rear_db": _relative(at_rear, np.ones(len(rear), bool), beam.intensity),
        }
        values |= self._power_values(coefficients, k, sky, values)
        co, _ = ludwig_3(in_cone, cone.directions, slant)
        centre = centre_in(cone, co, k, start=near.centre_m)
        values |= {f"phase_centre_{axis}_mm": 1e3 * float(v) for axis, v in zip("xyz", centre, strict=True)}
        return _One(values, peak, phase, centre)

    @property
    def cone_deg(self) -> float:
        """Half angle of the cone in which the phase centre is found: it stays inside the region."""
        return min(PHASE_CONE_DEG, 0.5 * float(np.rad2deg(self.region)))

    @property
    def _planes(self) -> list[float]:
        """Planes of the cuts, degrees from E: E, H, what settings add, and those between for the polarization."""
        between = [180.0 * i / PLANES for i in range(PLANES) if i not in (0, PLANES // 2)]
        return [0.0, 90.0, *self.settings.cut_planes_deg, *between]

    def _climb(self, field: FarField, sky: Sky, near: FloatArray) -> tuple[FloatArray, FloatArray, FloatArray]:
        """Return the peak (3,), the highest other lobes (n, 3), and where the rear sector is strongest (n, 3)."""
        lobes = sky.other_lobes(near, region=self.region)
        half_angle = float(np.deg2rad(self.settings.rear_sector_deg))
        rear = sky.largest_within(-near, half_angle)[None]
        starts = np.concatenate([near[None], lobes, rear])
        sizes = np.full(len(starts), sky.step)
        sizes[0] = NEAR * np.pi / (COARSE_STEPS_PER_ORDER * field.order)
        at = climbed_together(field, starts, sizes, 2)
        # A maximum beyond the sector's edge does not count: the best sample inside does.
        top = at[-1:] if float(-at[-1] @ at[0]) >= np.cos(half_angle) else rear
        return at[0], at[1:-1], top

    def _beam_values(
        self, coefficients: ComplexArray, beam: Beam, ends: ComplexArray
    ) -> tuple[dict[str, float], float]:
        """Return figures from the field at the peak and opposite to it (2, 3), and the phase of the co-polar field."""
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
        return values, float(np.angle(co))

    def _cut_values(self, beam: Beam, circle: ComplexArray, tangents_: list[FloatArray]) -> dict[str, float]:
        """Return figures of the cuts, from fields (plane, sample, 3) on great circles through the peak."""
        settings, count = self.settings, 2 + len(self.settings.cut_planes_deg)
        main, other = (
            cuts_of(
                circle[part], beam, tangents_[part], slant=self.slant, span_deg=90.0, region=self.region, step_deg=step
            )
            for part, step in ((slice(None, count), None), (slice(count, None), 0.5))
        )
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
        return values

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
        for window in settings.sectors:
            mean, least = _sector(sky, window)
            values[f"sector_{window.name}_mean_dbi"] = 10.0 * np.log10(mean)
            values[f"sector_{window.name}_min_dbi"] = 10.0 * np.log10(max(least, 1e-20))
        if self.region < np.pi - 1e-9 or self.one_polarization:
            return values
        total = float(np.sum(np.abs(coefficients) ** 2))
        values["upper_share_db"] = sky.power_on_one_side(settings.up) / total
        if settings.horizon_bands_deg:
            turned = Sky.of(Expansion(coefficients, np.asarray(k)).rotated(UP[settings.up]).coefficients)
            for band in settings.horizon_bands_deg:
                b = float(np.deg2rad(band))
                values[f"horizon_{band:g}_db"] = turned.power_between(0.5 * np.pi - b, 0.5 * np.pi + b) / total
        if settings.coverage_percent:
            finer = Sky.of(sky.field, least_rings=COVERAGE_RINGS)
            levels = coverage(finer.power, finer.theta, settings.coverage_percent)
            for percent, level in zip(settings.coverage_percent, levels, strict=True):
                values[f"coverage_{percent:g}_dbi"] = 10.0 * np.log10(max(float(level), 1e-20))
        return values


@dataclass(frozen=True)
class _One:
    """Figures of one frequency, and what figures along the band need."""

    values: dict[str, float]
    direction: FloatArray
    phase: float
    centre_m: FloatArray


def _relative(fields: ComplexArray, counts: np.ndarray, intensity: float) -> float:
    """Return the largest of fields (n, 3) that count, as an amplitude ratio to the peak; NaN if none does."""
    power = np.sum(np.abs(fields) ** 2, axis=-1)[counts]
    return float(np.sqrt(power.max() / intensity)) if power.size else float("nan")


def _worst(planes: list[Cut], cone_deg: float | None) -> float:
    """Return the largest cross- over co-polar amplitude along the rays of some planes."""
    worst = 0.0
    for one in planes:
        ends = edges_deg(one) if cone_deg is None else (cone_deg, cone_deg)
        inside = (one.angle_deg <= ends[0]) & (one.angle_deg >= -ends[1])
        if not inside.any():
            continue
        ratio = np.abs(one.cross) / np.abs(one.co)
        edge = np.interp([-ends[1], ends[0]], one.angle_deg, ratio)
        worst = max(worst, float(np.nanmax(ratio[inside])), float(np.nanmax(edge)))
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
    return float(np.sum(power * weight) / np.sum(weight)), float(power.min())


def _along_the_band(found: list[_One], k: FloatArray) -> dict[str, FloatArray]:
    """Return figures that need the neighbours: group delay about its mean (ns), squint (deg), phase centre's wander (mm)."""
    frequency = k * SPEED_OF_LIGHT / (2.0 * np.pi)
    phase = np.unwrap([one.phase for one in found])
    delay = -1e9 * np.gradient(phase, frequency) / (2.0 * np.pi)
    middle = found[len(found) // 2].direction
    squint = []
    for one in found:
        az, el = (
            x - y for x, y in zip(azimuth_over_elevation(one.direction), azimuth_over_elevation(middle), strict=True)
        )
        sign = np.sign(az if abs(az) >= abs(el) else el)
        squint.append(float(sign * np.rad2deg(angle_between(one.direction, middle))))
    moved = [1e3 * (one.centre_m - found[len(found) // 2].centre_m) for one in found]
    wander = [float(np.linalg.norm(m) * np.sign(m[int(np.argmax(np.abs(m)))])) for m in moved]
    return {
        "group_delay_ns": delay - delay.mean(),
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
