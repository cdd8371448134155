"""Cuts of a pattern whose strongest direction is one of several: which of them was picked must not decide a figure.

Of two equal lobes, or of a ring of maxima, the search returns one, by rounding or noise. A width that is another one at the next of
them, or in the plane that the declared vector names there, belongs to no beam.
"""

from __future__ import annotations

import numpy as np

from colure.analysis.figures.beams import EQUAL_DB
from colure.analysis.figures.cuts import OMNIDIRECTIONAL, beam_at, climbed_together, cuts, tangent_at
from colure.analysis.figures.lobes import beamwidth_deg
from colure.analysis.figures.one_pattern import SPAN_DEG, OnePattern
from colure.geometry.conventions import FloatArray
from colure.geometry.directions import unit_vector

#: Widths that differ by less than this share are one (common practice, no source).
ALIKE = 0.1
#: Directions of a ring of maxima that are looked at.
ON_A_RING = 6
OTHER_BEAM = (
    "undefined: no single beam (at another direction as strong as the peak the half-power width in this plane is {:.3g} deg, "
    "here {:.3g} deg)"
)
SOME_HAVE_NONE = (
    "undefined: no single beam (in this plane some of the directions as strong as the peak have no half-power width)"
)


def unlike_planes(one: OnePattern) -> dict[float, str]:
    """Return why cuts have no beam of their own, by their angle from E towards H, degrees; nothing where all equal beams agree."""
    others = _equal_tops(one)
    if not len(others):
        return {}
    planes = [0.0, 90.0, *one.wanted.settings.cut_planes_deg]
    here, there = _widths(one, one.beam.direction, planes), [_widths(one, top, planes) for top in others]
    out = {}
    for i, plane in enumerate(planes):
        for other in there:
            if np.isnan(here[i]) != np.isnan(other[i]):
                out[plane] = SOME_HAVE_NONE
            elif abs(here[i] - other[i]) > ALIKE * max(here[i], other[i]):
                out[plane] = OTHER_BEAM.format(other[i], here[i])
    return out


def plane_of(name: str) -> float:
    """Return the angle from E towards H of the plane that a cut's figure is read in, from its name: `e`, `h` or `at_30`."""
    words = name.split("_")
    return float(words[words.index("at") + 1]) if "at" in words else 90.0 * (words[1] == "h")


def _equal_tops(one: OnePattern) -> FloatArray:
    """Return directions (n, 3) other than the peak that are as strong as it: of two equal lobes the others, of a ring some all around."""
    peak, intensity = one.beam.direction, one.beam.intensity
    sky, region = one.sky, one.wanted.region
    ring = sky.largest_beyond(peak, 0.5 * np.pi, region=region) >= OMNIDIRECTIONAL * intensity
    least = OMNIDIRECTIONAL if ring else 10.0 ** (-EQUAL_DB / 10.0)
    power = np.where((sky.theta <= region + 1e-9)[:, None], sky.power, 0.0)
    i, j = np.nonzero(power >= (OMNIDIRECTIONAL if ring else 0.9) * intensity)
    places = np.asarray(unit_vector(theta=sky.theta[i], phi=sky.phi[j]))
    if not len(places):  # a top that falls between the directions of the sky is alone
        return np.zeros((0, 3))
    starts = [peak]
    for _ in range(ON_A_RING):
        # The place farthest from all that were chosen; none of them lies on the peak's own top.
        nearest = np.max(places @ np.stack(starts).T, axis=1)
        if nearest.min() > np.cos(2.5 * sky.step):
            break
        starts.append(places[int(np.argmin(nearest))])
    if len(starts) == 1:
        return np.zeros((0, 3))
    tops = climbed_together(one.field, np.stack(starts[1:]), np.full(len(starts) - 1, sky.step), region=region)
    strong = one.field.power_at(tops) >= least * intensity
    return np.asarray(tops[strong & (tops @ peak < np.cos(sky.step))])


def _widths(one: OnePattern, direction: FloatArray, planes: list[float]) -> list[float]:
    """Return the half-power widths about a direction in planes, degrees; nan where a cut never falls so far."""
    wanted = one.wanted
    beam = beam_at(direction, one.field.at(direction[None])[0], wanted.slant, plane=wanted.plane, several=True)
    tangents_ = [tangent_at(beam, plane) for plane in planes]
    read = cuts(one.field, beam, tangents_, slant=wanted.slant, span_deg=SPAN_DEG, region=wanted.region,
                of=wanted.settings.cuts_of)  # fmt: skip
    return [beamwidth_deg(cut) for cut in read]
