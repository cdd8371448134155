"""Where on a pattern its figures are read: what errors do to the field there is what they do to the figures."""

from __future__ import annotations

from dataclasses import dataclass, field, replace
from typing import Literal

import numpy as np
from numpy.typing import NDArray

from colure.analysis.figures.beams import Near
from colure.analysis.figures.cuts import (
    Beam,
    FarField,
    GreatCircleCut,
    beam_at,
    climbed_together,
    cuts,
    local_maxima,
    ludwig_3,
    tangent_at,
)
from colure.analysis.figures.evaluate import FigureSet
from colure.analysis.figures.following import FollowingCuts, Inexact, slopes_of_sides
from colure.analysis.figures.lobes import HALF_POWER_DB, dip_angles_deg, edges_deg, first_lobe_paths_deg, top_angles_deg
from colure.analysis.figures.one_pattern import PLANES, SPAN_DEG, reference_axis
from colure.analysis.figures.own_lobes import all_apart, ways_to_doubtful
from colure.analysis.figures.sphere import Sky
from colure.geometry.conventions import ComplexArray, FloatArray, IntArray
from colure.geometry.directions import cross, tangents, unit_vector
from colure.values import holds_arrays

#: Stencil about the peak, as a share of what the waves resolve.
STENCIL = 0.1
#: Along either axis of the beam its top is smoothed over so large a part of the way to half power,
TOP = 0.5
#: looked at every so many shares of what the waves resolve,
ON_TOP = 0.25
#: and a parabola fitted there is so much flatter than a beam of the usual shape is at its peak (from a Gaussian beam).
FLATTER = 0.925
#: A place is moved, or its cut turned, by so much of what the waves resolve to see what that changes.
TURN = 0.02
#: Lobes this far below the highest one, in power, may be the highest in truth; so many of them.
MAY_RISE, MOST_LOBES = 0.1, 10
#: Without a single beam, directions with so much of the largest intensity are its rivals; so many of them.
RIVAL, MOST_RIVALS = 0.8, 400
#: Where along the rays of the worst cross-polarization it is looked at, as shares of the way to the beam's edge.
ALONG_RAYS = (0.25, 0.5, 0.75, 1.0)

#: How far apart a first side lobe is looked at on the way, as a share of what the waves resolve.
ON_PATH = 1.0 / 3.0

ReadingKind = Literal["level", "cross over co"]


@dataclass(frozen=True)
@holds_arrays
class FieldReading:
    """A figure that is the modulus of a field at one direction, or the largest of several.

    kind
        `level`: relative to the peak's amplitude. `cross over co`: of the two components in the same direction.
    where (n,)
        Which of the directions.
    slope (n, 2)
        Of a minimum: along what the field (co, cross) runs on the cut there. What an error adds along it moves the minimum, the rest
        fills it. Its square is the share that moves it: 1 through a null, less where the level bends beside that.
    turn (n, 2)
        How the field runs across the cut, per radian that the E plane turns about the peak; None where the plane is declared.
        Where the measured ellipse names it, errors at the peak turn the cut, and a minimum beside it is met elsewhere.
    co
        True: the co-polar component alone counts.
    drift (n, 2, 2)
        Of places that follow the peak, as those on cuts and those opposite to it: how the field (co, cross) runs, in modulus, per radian that the peak
        moves along either of its axes. The larger of two edges grows whichever way a sector is turned. Of cross over co at the peak:
        how that ratio runs (1, 2, 1), times the peak's size.
    """

    name: str
    kind: ReadingKind
    where: IntArray
    slope: ComplexArray | None = None
    turn: ComplexArray | None = None
    co: bool = False
    drift: ComplexArray | None = None


@dataclass(frozen=True)
@holds_arrays
class Width:
    """A beamwidth: which two directions are the main lobe's edges, how the power falls there (per radian), and to which share.

    cut
        What it is read from.
    runs (2, axis)
        How the power at the edges runs per radian that the peak moves along the beam's axes, and the cut with it.
    """

    name: str
    where: IntArray
    fall: FloatArray
    share: float
    co: bool
    cut: GreatCircleCut
    runs: FloatArray


@dataclass(frozen=True)
@holds_arrays
class LobePath:
    """How a first side lobe of one side is met: directions from the main lobe's skirt outwards to the next lobe but one.

    Of the highest lobe: the way from the peak to a maximum that may be a lobe or none, the highest first.

    name
        The figure's.
    along
        Their fields, as a level; `along.where` are the directions in that order.
    """

    name: str
    along: FieldReading


@dataclass(frozen=True)
@holds_arrays
class Places:
    """All directions (n, 3) of one pattern that figures are read at, and the fields (n, 2) there: co and cross.

    The first is the peak; the next four lie `step` radians to both sides of it along `axes` (2, 3). bend (2, 2): second
    derivatives of the intensity. rivals (n,): of a pattern without a single beam, directions that may be the strongest in truth.
    """

    directions: FloatArray
    fields: ComplexArray
    beam: Beam
    axes: FloatArray
    step: float
    bend: FloatArray
    widths: list[Width]
    readings: list[FieldReading]
    rivals: IntArray
    paths: list[LobePath] = field(default_factory=list)


@dataclass
class _Collected:
    """Directions as they are asked for."""

    parts: list[FloatArray] = field(default_factory=list)
    count: int = 0

    def add(self, directions: FloatArray) -> IntArray:
        """Keep directions (n, 3) and return their numbers."""
        self.parts.append(directions)
        self.count += len(directions)
        return np.arange(self.count - len(directions), self.count)


def places_of(figures: FigureSet, coefficients: ComplexArray, near: Near) -> Places:
    """Return where the figures of one expansion (2, J) are read."""
    field_ = FarField(coefficients)
    peak = near.direction
    beam = beam_at(peak, field_.at(peak[None])[0], figures.slant, plane=near.plane)
    kept = _Collected()
    step = STENCIL * np.pi / field_.order
    axes = np.stack(tangents(peak))
    kept.add(peak[None])
    sides = _unit(peak + step * np.stack([axes[0], -axes[0], axes[1], -axes[1]]))
    kept.add(sides)
    following = FollowingCuts(field_, beam, sides, step=step, slant=figures.slant)
    widths, readings, paths = _on_cuts(figures, field_, beam, kept, following)
    names = set(figures.names)
    if (name := "side_lobe_highest_db") in names:
        lobes, doubtful = _lobes(field_, peak, figures.region)
        if len(lobes):
            readings.append(FieldReading(name, "level", kept.add(lobes)))
        paths += [LobePath(name, FieldReading(name, "level", kept.add(way))) for way in doubtful]
    if "front_to_back_db" in names:
        back = -peak[None]
        drift = _drift(figures, field_, peak, back, axes, step)
        readings.append(FieldReading("front_to_back_db", "level", kept.add(back), drift=drift))
    axis = reference_axis(figures.settings)
    if "front_to_back_axis_db" in names and axis is not None:
        readings.append(FieldReading("front_to_back_axis_db", "level", kept.add(-axis[None])))
    if "front_to_rear_db" in names:
        half_angle = float(np.deg2rad(figures.settings.rear_sector_deg))
        rear = _cap(-peak, half_angle, np.pi / (field_.order + 1))
        # A lobe's top inside stays what it is; what the edge takes in or leaves out counts.
        edge = rear @ -peak <= np.cos(half_angle) + 1e-9
        drift = np.where(edge[:, None, None], _drift(figures, field_, peak, rear, axes, step), 0.0)
        readings.append(FieldReading("front_to_rear_db", "level", kept.add(rear), drift=drift))
    if "xpd_db" in names:
        readings.append(FieldReading("xpd_db", "cross over co", np.zeros(1, int)))
        rays, runs = _rays(figures, field_, beam, following)
        where = np.concatenate([[0], kept.add(rays)])
        readings.append(FieldReading("xpd_worst_db", "cross over co", where, drift=runs))
    rivals = kept.add(_rivals(field_, figures.region) if near.reasons.get("beam_azimuth_deg") else np.zeros((0, 3)))
    directions = np.concatenate(kept.parts)
    fields = np.stack(ludwig_3(field_.at(directions), directions, figures.slant), axis=-1)
    readings = [_with_the_peak(one, _turning(fields, step)) for one in readings]
    return Places(
        directions, fields, beam, axes, step, _bend(field_, peak, axes, step), widths, readings, rivals, paths
    )


def _unit(vectors: FloatArray) -> FloatArray:
    return np.asarray(vectors / np.linalg.norm(vectors, axis=-1, keepdims=True))


def _bend(field_: FarField, peak: FloatArray, axes: FloatArray, step: float) -> FloatArray:
    """Return the second derivatives (2, 2) of the intensity at the peak along two axes, those of its top where errors bend it more.

    The highest place on the flat ridge of a fan beam is one that echoes raised: there the record is bent by them, and a peak that is
    held by such a bend would seem to stand still.
    """
    local = _bend_at(field_, peak, axes, step)
    bent, turn = np.linalg.eigh(local)
    smooth = [_bend_of_top(field_, peak, one @ axes) for one in turn.T]
    return np.asarray((turn * np.maximum(bent, smooth)) @ turn.T)


def _bend_of_top(field_: FarField, peak: FloatArray, axis: FloatArray) -> float:
    """Return the second derivative of the intensity along an axis (3,) as its top down towards half power has it; -inf without a top."""
    fine = ON_TOP * np.pi / field_.order
    angle = fine * np.arange(-int(0.5 * np.pi / fine), int(0.5 * np.pi / fine) + 1)
    power = field_.power_at(np.cos(angle)[:, None] * peak + np.sin(angle)[:, None] * axis)
    low = np.abs(angle[power < 0.5 * power[angle.size // 2]])
    top = np.abs(angle) <= TOP * low.min(initial=0.5 * np.pi)
    if np.count_nonzero(top) < 5:
        return -np.inf
    parabola = 2.0 * float(np.polyfit(angle[top], power[top], 2)[0])
    return parabola / FLATTER if parabola < 0.0 else -np.inf


def _bend_at(field_: FarField, peak: FloatArray, axes: FloatArray, step: float) -> FloatArray:
    """Return the second derivatives (2, 2) of the intensity at the peak itself."""
    grid = np.array([[i, j] for i in (-1, 0, 1) for j in (-1, 0, 1)], float)
    power = field_.power_at(_unit(peak + step * grid @ axes)).reshape(3, 3)
    along = power[2, 1] - 2.0 * power[1, 1] + power[0, 1]
    across = power[1, 2] - 2.0 * power[1, 1] + power[1, 0]
    mixed = 0.25 * (power[2, 2] - power[2, 0] - power[0, 2] + power[0, 0])
    return np.array([[along, mixed], [mixed, across]]) / step**2


def _on_cuts(
    figures: FigureSet, field_: FarField, beam: Beam, kept: _Collected, following: FollowingCuts
) -> tuple[list[Width], list[FieldReading], list[LobePath]]:
    """Return widths, side lobes and nulls of the cuts that the settings ask for, and how side lobes are met."""
    settings = figures.settings
    planes = {"e": 0.0, "h": 90.0, **{f"at_{angle:g}": angle for angle in settings.cut_planes_deg}}
    tangents_ = [tangent_at(beam, angle) for angle in planes.values()]
    read = cuts(
        field_, beam, tangents_, slant=figures.slant, span_deg=SPAN_DEG, region=figures.region, of=settings.cuts_of
    )
    widths, readings, paths, names = [], [], list[LobePath](), set(figures.names)
    for plane, tangent, one in zip(planes, tangents_, read, strict=True):
        levels = {f"beamwidth_{plane}_deg": HALF_POWER_DB}
        levels |= {f"beamwidth_{plane}_{level:g}db_deg": level for level in settings.beamwidth_levels_db}
        for name, level in levels.items():
            ends = edges_deg(one, level)
            if name in names and np.all(np.isfinite(ends)):
                angles = np.array([ends[0], -ends[1]])
                where = kept.add(_along(beam, tangent, angles))
                runs = following.power_runs(planes[plane], angles, co=one.of == "co")
                widths.append(
                    Width(name, where, _fall(one, angles), 10.0 ** (-level / 10.0), one.of == "co", one, runs)
                )
        for name, angles in ((f"side_lobe_{plane}_db", top_angles_deg(one)), (f"null_{plane}_db", dip_angles_deg(one))):
            if name in names and angles.size:
                slope = None
                if name.startswith("null"):
                    slope = _slope(field_, beam, tangent, angles, figures.slant, co=one.of == "co")
                turn = _turn(field_, beam, tangent, angles, figures.slant) if beam.plane == "ellipse" else None
                there = _along(beam, tangent, angles)
                fields = np.stack(ludwig_3(field_.at(there), there, figures.slant), axis=-1)
                drift = following.drift(planes[plane], angles, fields, co=one.of == "co")
                readings.append(FieldReading(name, "level", kept.add(there), slope, turn, one.of == "co", drift))
        if (name := f"side_lobe_{plane}_db") in names:
            for path in first_lobe_paths_deg(one, np.rad2deg(ON_PATH * np.pi / field_.order)):
                along = kept.add(_along(beam, tangent, path))
                paths.append(LobePath(name, FieldReading(name, "level", along, co=one.of == "co")))
    return widths, readings, paths


def _turn(field_: FarField, beam: Beam, tangent: FloatArray, angles_deg: FloatArray, slant: float) -> ComplexArray:
    """Return the derivative (n, 2) of co and cross when the cut turns about the peak, per radian, at angles (n,) of it."""
    small, aside = TURN * np.pi / field_.order, cross(beam.direction, tangent)
    sides = [_along(beam, np.cos(a) * tangent + np.sin(a) * aside, angles_deg) for a in (small, -small)]
    one, other = field_.at_each(*sides)
    return _run(one - other, 2.0 * small, _along(beam, tangent, angles_deg), slant)


def _along(beam: Beam, tangent: FloatArray, angles_deg: FloatArray) -> FloatArray:
    a = np.deg2rad(angles_deg)[:, None]
    return np.asarray(np.cos(a) * beam.direction + np.sin(a) * tangent)


def _fall(one: GreatCircleCut, angles_deg: FloatArray) -> FloatArray:
    """Return by how much the power falls outwards, per radian, at angles (n,) of a cut."""
    slope = np.gradient(one.amplitude**2, np.deg2rad(one.angle_deg))
    return np.asarray(-np.sign(angles_deg) * np.interp(angles_deg, one.angle_deg, slope))


def _slope(
    field_: FarField, beam: Beam, tangent: FloatArray, angles_deg: FloatArray, slant: float, *, co: bool
) -> ComplexArray:
    """Return how the field (n, 2: co, cross) runs along a cut through its minima at angles (n,), as `FieldReading.slope` says."""
    small = TURN * np.pi / field_.order
    places = [_along(beam, tangent, angles_deg + np.rad2deg(a)) for a in (-small, 0.0, small)]
    before, at, after = field_.at_each(*places)
    run = _run(after - before, 2.0 * small, places[1], slant)
    if co:
        run[:, 1] = 0.0
    levels = [
        np.abs(ludwig_3(e, d, slant)[0]) ** 2 if co else np.sum(np.abs(e) ** 2, axis=-1)
        for e, d in zip((before, at, after), places, strict=True)
    ]
    # Half the bend of |E|^2 is |E'|^2 + Re(E* E''): through a null nothing but the first, at a shallow minimum mostly the other.
    bend = (levels[0] - 2.0 * levels[1] + levels[2]) / (2.0 * small**2)
    steep = np.sum(np.abs(run) ** 2, axis=-1)
    share = np.clip(steep / np.maximum(bend, 1e-300), 0.0, 1.0)
    return np.asarray(run * np.sqrt(share / np.maximum(steep, 1e-300))[:, None])


def _run(difference: ComplexArray, between: float, directions: FloatArray, slant: float) -> ComplexArray:
    """Return the derivative (n, 2) of co and cross from differences (n, 3) of fields on both sides of directions, radians apart.

    As vectors: near -z the frame of co and cross itself turns fast. A field that turns with its direction changes along that
    direction too, which is no part of co or cross.
    """
    runs = difference / between
    runs = runs - np.sum(runs * directions, axis=-1, keepdims=True) * directions
    return np.asarray(np.stack(ludwig_3(runs, directions, slant), axis=-1))


def _lobes(field_: FarField, peak: FloatArray, region: float) -> tuple[FloatArray, list[FloatArray]]:
    """Return the tops (n, 3) of the lobes besides the main one that may be the highest, and the ways to maxima that may be lobes or none."""
    sky = Sky.of(field_)
    i, j, level = local_maxima(sky.power, sky.theta <= region + 1e-9)
    places = unit_vector(theta=sky.theta[i], phi=sky.phi[j])
    other = places @ peak < np.cos(2.5 * sky.step)
    doubtful = ways_to_doubtful(field_, peak, places[other], level[other])
    starts = all_apart(field_, peak, places[other], level[other], down_to=MAY_RISE, most=MOST_LOBES)
    if not len(starts):
        return np.asarray(starts), doubtful
    tops = climbed_together(field_, starts, np.full(len(starts), sky.step), region=region)
    return np.asarray(tops[tops @ peak < np.cos(sky.step)]), doubtful


def _rivals(field_: FarField, region: float) -> FloatArray:
    """Return directions (n, 3) within `RIVAL` of the strongest one, the strongest first where they are many."""
    sky = Sky.of(field_)
    power = np.where((sky.theta <= region + 1e-9)[:, None], sky.power, 0.0)
    i, j = np.nonzero(power >= RIVAL * power.max())
    strongest = np.argsort(-power[i, j])[:MOST_RIVALS]
    return np.asarray(unit_vector(theta=sky.theta[i], phi=sky.phi[j])[strongest])


def _cap(axis: FloatArray, half_angle: float, step: float) -> FloatArray:
    """Return directions (n, 3) about as far apart as `step` within a cone (radians) about an axis, its edge included."""
    first, second = tangents(axis)
    out = [axis[None]]
    rings = max(1, int(np.ceil(half_angle / step)))
    for a in half_angle * np.arange(1, rings + 1) / rings:
        columns = max(6, int(np.ceil(2.0 * np.pi * np.sin(a) / step)))
        turn = (np.arange(columns) * 2.0 * np.pi / columns)[:, None]
        out.append(np.cos(a) * axis + np.sin(a) * (np.cos(turn) * first + np.sin(turn) * second))
    return np.concatenate(out)


def _turning(fields: ComplexArray, step: float) -> ComplexArray:
    """Return how cross over co at the peak runs (1, 2, 1) per radian that the peak moves along its axes, in fields of the peak's size."""
    return np.asarray(np.linalg.norm(fields[0]) * slopes_at_peak(fields[:5, 1] / fields[:5, 0], step))[None, :, None]


def slopes_at_peak(values: NDArray[Inexact], step: float) -> NDArray[Inexact]:
    """Return the slopes (..., 2) along two axes of what lies at the peak and at both sides of it on either axis (..., 5)."""
    return slopes_of_sides(values[..., 1:], step)


def _with_the_peak(one: FieldReading, turning: ComplexArray) -> FieldReading:
    """Return a reading of cross-polarization with how it runs at the peak itself (1, 2, 1) before how it runs on the rays."""
    if one.name not in ("xpd_db", "xpd_worst_db"):
        return one
    return replace(one, drift=turning if one.drift is None else np.concatenate([turning, one.drift]))


def _drift(
    figures: FigureSet, field_: FarField, peak: FloatArray, places: FloatArray, axes: FloatArray, step: float
) -> ComplexArray:
    """Return how fields (place, axis, component) run in modulus as their places turn with the peak along either axis, per radian."""
    turned = [np.cross(cross(peak, one), places) for one in axes]
    there = np.stack([_unit(places + sign * step * one) for one in turned for sign in (1.0, -1.0)])
    here, around = field_.at_each(places, there)
    fields = np.stack(ludwig_3(here, places, figures.slant), axis=-1)
    size = np.linalg.norm(fields, axis=-1)
    power = np.sum(np.abs(around) ** 2, axis=-1).reshape(2, 2, len(places))
    runs = (power[:, 0] - power[:, 1]) / (4.0 * step * np.maximum(size, 1e-300))  # axis, place
    return np.asarray(runs.T[:, :, None] * (fields / np.maximum(size, 1e-300)[:, None])[:, None])


def _rays(
    figures: FigureSet, field_: FarField, beam: Beam, following: FollowingCuts
) -> tuple[FloatArray, ComplexArray]:
    """Return directions (n, 3) along the rays from the peak on which the worst cross-polarization is looked for.

    Also how cross over co runs there as the peak moves and the rays with it, times the peak's size, as `FieldReading.drift` says.
    """
    tangents_ = [tangent_at(beam, 180.0 * i / PLANES) for i in range(PLANES)]
    cone = figures.settings.cone_deg
    read = cuts(field_, beam, tangents_, slant=figures.slant, span_deg=SPAN_DEG, region=figures.region, step_deg=0.5)
    out, runs = [], []
    for i, (tangent, one) in enumerate(zip(tangents_, read, strict=True)):
        ends = np.array(edges_deg(one) if cone is None else (cone, cone))
        ends = np.where(np.isfinite(ends), ends, 90.0) * [1.0, -1.0]
        angles = np.outer(ALONG_RAYS, ends).ravel()
        out.append(_along(beam, tangent, angles))
        runs.append(following.ratio_runs(180.0 * i / PLANES, angles))
    directions, drift = np.concatenate(out), np.sqrt(beam.intensity) * np.concatenate(runs)[..., None]
    seen = directions[:, 2] >= np.cos(min(figures.region + 1e-9, np.pi)) - 1e-12
    return np.asarray(directions[seen]), np.asarray(drift[seen])
