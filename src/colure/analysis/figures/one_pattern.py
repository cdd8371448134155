"""One pattern at one frequency as figures are read from it: everything is worked out once, when it is first asked for."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property, partial

import numpy as np

from colure.analysis.figures.beams import Near, single_beam_reason
from colure.analysis.figures.cuts import (
    FIRST_STENCIL,
    MAY_BE_HIGHEST,
    MOST_CANDIDATES,
    Beam,
    CutPlanes,
    FarField,
    GreatCircleCut,
    beam_at,
    circles,
    climbed,
    climbs,
    cuts_of,
    ludwig_3,
    tangent_at,
    to_the_edge,
)
from colure.analysis.figures.lobes import beamwidth_deg
from colure.analysis.figures.own_lobes import highest_apart
from colure.analysis.figures.phase_centre import beam_cone_deg, centre_in, cone_of, copolar, ripple_deg
from colure.analysis.figures.sectors import sector
from colure.analysis.figures.sphere import UP, Sky, coverage, rim, rim_peak
from colure.geometry.conventions import BoolArray, ComplexArray, FloatArray, power_db
from colure.geometry.directions import angle_between, from_azimuth_over_elevation
from colure.model.evaluation import Evaluation
from colure.values import holds_arrays
from colure.waves.expansion import Expansion

#: Rays from the peak along which cross-polarization is looked at: half as many planes.
PLANES = 8
#: Local maxima of the samples that are climbed at most, in four goes, until one is a lobe besides the peak.
MOST_TRIED = 64
#: Rings over which levels are counted for coverage, at least.
COVERAGE_RINGS = 91
#: How far cuts reach: the whole circle, and so much more that a lobe opposite to the peak is seen as one.
SPAN_DEG = 182.0


@dataclass(frozen=True)
class PatternSettings:
    """How patterns are read: the same for every frequency and perturbation.

    slant
        Reference of the co-polar vector, radians from x towards y.
    region
        Polar angle from +z up to which the pattern is known, radians.
    commanded_deg
        Azimuth and elevation that the device was told to point at; None if it was told nothing.
    """

    settings: Evaluation
    slant: float
    region: float
    commanded_deg: tuple[float, float] | None

    @property
    def plane(self) -> CutPlanes | None:
        """Where the E plane comes from; None: as the pattern itself says."""
        return None if self.settings.principal_planes == "auto" else "declared"


@dataclass(frozen=True)
@holds_arrays
class OnePattern:
    """A pattern at one frequency, as spherical waves (2, J), and what figures are read from.

    k
        Wavenumber, radians per metre.
    wanted
        How it is read.
    near
        What the unperturbed pattern decided; None for an unperturbed pattern.
    mismatch_loss_db
        What the device's own reflection costs here, positive; nan where it is not known.
    """

    coefficients: ComplexArray
    k: float
    wanted: PatternSettings
    near: Near | None = None
    mismatch_loss_db: float = float("nan")

    @cached_property
    def field(self) -> FarField:
        """The far field in any direction."""
        return FarField(self.coefficients)

    @cached_property
    def sky(self) -> Sky:
        """Total power over all directions."""
        return Sky.of(self.field)

    @cached_property
    def _tops_found(self) -> tuple[FloatArray, FloatArray, FloatArray]:
        return self._climb(self.field, self.sky)

    @cached_property
    def _fields(self) -> list[ComplexArray]:
        """Fields at the peak and opposite to it, at the other lobes, in the rear sector and on its rim."""
        peak, lobes, rear = self._tops_found
        half_angle = float(np.deg2rad(self.wanted.settings.rear_sector_deg))
        return self.field.at_each(np.stack([peak, -peak]), lobes, rear, rim(self.field.order, -peak, half_angle)[None])

    @property
    def ends(self) -> ComplexArray:
        """Fields (2, 3) at the peak and opposite to it."""
        return self._fields[0]

    @cached_property
    def _other(self) -> BoolArray:
        peak, lobes, _ = self._tops_found
        return np.asarray(lobes @ peak < np.cos(self.sky.step))

    @cached_property
    def several(self) -> str:
        """Why there is no single beam; empty if there is one, or the unperturbed pattern decided it."""
        if self.near is not None:
            return ""
        peak, lobes, _ = self._tops_found
        intensity = float(np.sum(np.abs(self.ends[0]) ** 2))
        other = self._other
        return single_beam_reason(
            self.sky, peak, intensity, lobes[other], self._fields[1][other], region=self.wanted.region
        )

    @cached_property
    def beam(self) -> Beam:
        """The peak: its direction, its intensity and the tangent of the E plane."""
        plane = self.wanted.plane if self.near is None else self.near.plane
        return beam_at(self._tops_found[0], self.ends[0], self.wanted.slant, plane=plane, several=bool(self.several))

    @property
    def phase(self) -> float:
        """Phase of the field at the peak along the E plane's tangent, radians."""
        return float(np.angle(self.ends[0] @ self.beam.tangent))

    @property
    def _planes(self) -> list[float]:
        """Planes of the cuts, degrees from E: E, H, what settings add, and those between for the polarization."""
        between = [180.0 * i / PLANES for i in range(PLANES) if i not in (0, PLANES // 2)]
        return [0.0, 90.0, *self.wanted.settings.cut_planes_deg, *between]

    @cached_property
    def _cuts(self) -> tuple[list[GreatCircleCut], list[GreatCircleCut]]:
        """Cuts that figures are read from, and those between them."""
        settings, count = self.wanted.settings, 2 + len(self.wanted.settings.cut_planes_deg)
        tangents_ = [tangent_at(self.beam, a) for a in self._planes]
        (circle,) = self.field.at_each(circles(self.field.order, self.beam, tangents_))
        read = partial(
            cuts_of, beam=self.beam, slant=self.wanted.slant, span_deg=SPAN_DEG, region=self.wanted.region, of=settings.cuts_of
        )  # fmt: skip
        main = read(circle[:count], tangents_=tangents_[:count])
        return main, read(circle[count:], tangents_=tangents_[count:], step_deg=0.5)

    @property
    def every_cut(self) -> list[GreatCircleCut]:
        """All cuts, those of the principal planes first."""
        main, other = self._cuts
        return [*main, *other]

    @property
    def cuts_of_polarization(self) -> list[GreatCircleCut]:
        """The principal cuts and those between them, rays along which cross-polarization is looked at."""
        main, other = self._cuts
        return [*main[:2], *other]

    def cut(self, plane: str | float) -> GreatCircleCut:
        """Return the cut in a plane: `e`, `h`, or one of the settings' planes in degrees from E towards H."""
        main, _ = self._cuts
        if isinstance(plane, str):
            return main["eh".index(plane)]
        return main[2 + self.wanted.settings.cut_planes_deg.index(plane)]

    @cached_property
    def gain_dbi(self) -> float:
        """Level of the peak over an isotropic radiator with unit power."""
        return float(power_db(self.beam.intensity))

    @cached_property
    def directivity_dbi(self) -> float:
        """Level of the peak over the mean of all directions."""
        return float(power_db(4.0 * np.pi * self.beam.intensity / self.radiated))

    @cached_property
    def radiated(self) -> float:
        """Intensity integrated over all directions."""
        return float(np.sum(np.abs(self.coefficients) ** 2))

    @cached_property
    def co_cross(self) -> tuple[complex, complex]:
        """Co- and cross-polar field at the peak (Ludwig's third definition)."""
        direction = self.beam.direction[None]
        co, cross = (complex(x[0]) for x in ludwig_3(self.ends[:1], direction, self.wanted.slant))
        return co, cross

    @cached_property
    def circularity(self) -> float:
        """(R^2 - L^2)/(R^2 + L^2) at the peak.

        R^2 - L^2 = 2 Im(co cross*), with e_R = (co + j cross)/sqrt 2 (exp(+jwt), outgoing; IEEE Std 145).
        """
        co, cross = self.co_cross
        return float(2.0 * (co * np.conj(cross)).imag / (abs(co) ** 2 + abs(cross) ** 2))

    @cached_property
    def minor_over_major(self) -> float:
        """Minor over major axis of the ellipse at the peak."""
        return abs(float(np.tan(0.5 * np.arcsin(np.clip(self.circularity, -1.0, 1.0)))))

    @cached_property
    def highest_lobe(self) -> float:
        """Amplitude of the highest lobe besides the peak, relative to it; nan if there is none."""
        peak, lobes, _ = self._tops_found
        power = np.sum(np.abs(self._fields[1][self._other]) ** 2, axis=-1)
        highest = highest_apart(self.field, peak, lobes[self._other], power)
        return float("nan") if highest is None else float(np.sqrt(power[highest] / self.beam.intensity))

    @cached_property
    def rear(self) -> float:
        """Largest amplitude in the rear sector, its edge included, relative to the peak."""
        peak, _, rear = self._tops_found
        half_angle = float(np.deg2rad(self.wanted.settings.rear_sector_deg))
        inside = rear @ -peak >= np.cos(half_angle)
        return max(
            relative(self._fields[2][inside], self.beam.intensity, none=0.0),
            float(np.sqrt(rim_peak(self._fields[3]) / self.beam.intensity)),
        )

    @cached_property
    def sectors(self) -> dict[str, tuple[float, float]]:
        """(mean over solid angle, smallest) of the intensity in every sector that settings name."""
        return {window.name: sector(self.sky, window) for window in self.wanted.settings.sectors}

    @cached_property
    def coverage_dbi(self) -> dict[float, float]:
        """Total gain that so many percent of all solid angles do not exceed."""
        percents = self.wanted.settings.coverage_percent
        finer = Sky.of(self.field, least_rings=COVERAGE_RINGS)
        levels = coverage(finer.power, finer.theta, percents)
        return {
            percent: float(power_db(max(float(level), 1e-20))) for percent, level in zip(percents, levels, strict=True)
        }

    @cached_property
    def sky_about_up(self) -> Sky:
        """Total power over all directions, about the axis of the device that points up."""
        turned = Expansion(self.coefficients, np.asarray(self.k)).rotated(UP[self.wanted.settings.up])
        return Sky.of(turned.coefficients)

    @cached_property
    def pointing_error_deg(self) -> float:
        """Angle between the peak and the commanded direction; nan if the device was told nothing."""
        if self.wanted.commanded_deg is None:
            return float("nan")
        az, el = np.deg2rad(self.wanted.commanded_deg)
        told = from_azimuth_over_elevation(azimuth=az, elevation=el)
        return float(np.rad2deg(angle_between(told, self.beam.direction)))

    @property
    def squint_axis_deg(self) -> float:
        """Angle between the peak and the stated reference axis; nan if none is stated."""
        axis = reference_axis(self.wanted.settings)
        return float("nan") if axis is None else float(np.rad2deg(angle_between(axis, self.beam.direction)))

    @property
    def behind_axis(self) -> float:
        """Total amplitude opposite to the stated reference axis, relative to the peak; nan if none is stated."""
        axis = reference_axis(self.wanted.settings)
        return float("nan") if axis is None else relative(self.field.at(-axis[None]), self.beam.intensity)

    @cached_property
    def cone_deg(self) -> float:
        """Half angle of the cone in which the phase centre is looked for."""
        if self.near is not None:
            return self.near.cone_deg
        return beam_cone_deg(self.every_cut, self.beam.direction, region=self.wanted.region)

    @cached_property
    def _centre(self) -> tuple[FloatArray, float]:
        return self._phase_centre(
            self.field, self.beam, self.cone_deg, self.k, None if self.near is None else self.near.centre_m
        )

    @property
    def centre_m(self) -> FloatArray:
        """The phase centre (3,) in metres."""
        return self._centre[0]

    @property
    def ripple_deg(self) -> float:
        """Ripple of the phase about the phase centre."""
        return self._centre[1]

    @cached_property
    def widths_deg(self) -> tuple[float, float]:
        """Half-power widths in the E and the H plane, 360 where there is none."""
        e, h = (float(np.nan_to_num(beamwidth_deg(self.cut(plane)), nan=360.0)) for plane in "eh")
        return e, h

    @staticmethod
    def _phase_centre(
        field: FarField, beam: Beam, cone_deg: float, k: float, start: FloatArray | None
    ) -> tuple[FloatArray, float]:
        """Return the phase centre (3,) in metres, and the ripple about it in degrees."""
        cone = cone_of(beam.direction, cone_deg)
        grown = cone if start is not None else cone_of(beam.direction, cone_deg, grown=True)
        every = copolar(field.at(grown.directions), beam, grown.directions)
        co = every[-len(cone.directions) :]
        centre = centre_in(cone, co, k, start=start, grown=(grown, every))
        return centre, ripple_deg(cone, co, k, centre)

    def _climb(self, field: FarField, sky: Sky) -> tuple[FloatArray, FloatArray, FloatArray]:
        """Return the peak (3,), the tops (n, 3) that may be the highest lobe besides it, and those (n, 3) near the rear sector.

        Looked for over the whole region, whatever was found before: a perturbation may move a broad beam far, and from one of
        two nearly equal lobes to the other.
        """
        places, level = sky.lobes(region=self.wanted.region)
        rear = sky.lobes_within(-places[0], float(np.deg2rad(self.wanted.settings.rear_sector_deg)))
        first = np.flatnonzero(level >= MAY_BE_HIGHEST * level[0])[:MOST_CANDIDATES]
        other = np.flatnonzero(places @ places[0] < np.cos(2.5 * sky.step))
        some = np.union1d(first, other[:MOST_CANDIDATES])
        at, arrived = self._tops(field, sky, np.concatenate([places[some], rear]))
        tops, at_rear = to_the_edge(field, at[: len(some)], self.wanted.region), at[len(some) :]
        best = int(np.argmax(field.power_at(tops)))
        peak = (
            tops[best]
            if arrived[best]
            else to_the_edge(field, climbed(field, at[best], sky.step)[None], self.wanted.region)[0]
        )
        lobes = tops[arrived[: len(some)]]
        # On the ridge of a fan beam samples and echoes make lobes that are none: others are tried.
        for begin in range(MOST_CANDIDATES, min(len(other), MOST_TRIED), MOST_TRIED // 4):
            beside = lobes[lobes @ peak < np.cos(sky.step)]
            if len(beside) and highest_apart(field, peak, beside, field.power_at(beside)) is not None:
                break
            more, arrived = self._tops(field, sky, places[other[begin : begin + MOST_TRIED // 4]])
            lobes = np.concatenate([lobes, to_the_edge(field, more[arrived], self.wanted.region)])
        return np.asarray(peak), lobes, at_rear

    @staticmethod
    def _tops(field: FarField, sky: Sky, starts: FloatArray) -> tuple[FloatArray, BoolArray]:
        return climbs(field, starts, np.full(len(starts), FIRST_STENCIL * sky.step))


def reference_axis(settings: Evaluation) -> FloatArray | None:
    """Return the unit vector (3,) of the axis that squint is stated against; None if settings state none."""
    if settings.reference_axis_deg is None:
        return None
    azimuth, elevation = np.deg2rad(settings.reference_axis_deg)
    return from_azimuth_over_elevation(azimuth=azimuth, elevation=elevation)


def relative(fields: ComplexArray, intensity: float, *, none: float = float("nan")) -> float:
    """Return the largest of fields (n, 3) as an amplitude ratio to the peak; `none` if there is none."""
    power = np.sum(np.abs(fields) ** 2, axis=-1)
    return float(np.sqrt(power.max() / intensity)) if power.size else none
