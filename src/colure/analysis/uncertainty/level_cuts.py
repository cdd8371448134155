"""Cuts with their uncertainty at every angle: what masks, plots and comparisons of levels need.

The same causes as the figures' are applied to the data; the level-dependent interval follows by itself:
a field error that hardly moves the peak moves a lobe 35 dB below it by decibels.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from colure.analysis.figures.cuts import Beam, FarField, components, find_beam, in_hand, tangent_at
from colure.analysis.uncertainty.causes import causes
from colure.analysis.uncertainty.combination import joint_half_width
from colure.analysis.uncertainty.inputs import Inputs
from colure.analysis.uncertainty.trial import Trial
from colure.geometry.conventions import ComplexArray, FloatArray, Handedness, amplitude_db, order_of_count
from colure.geometry.directions import theta_phi
from colure.values import holds_arrays
from colure.waves.harmonics import FieldsAt


@dataclass(frozen=True, kw_only=True)
@holds_arrays
class LevelCut:
    """One cut at one frequency: amplitudes (sqrt of gain) and their expanded uncertainties, by component.

    angle_deg (n,); amplitude and expanded (n,) of `co`, `cross` and `total`: co is the Ludwig-3 component along the declared
    direction, or the hand that the device is declared circular with; cross is the other one. common_db is the common gain uncertainty
    (reference gain, mismatch): it counts for absolute levels only.
    """

    plane_deg: float
    frequency_hz: float
    angle_deg: FloatArray
    amplitude: dict[str, FloatArray]
    expanded: dict[str, FloatArray]
    common_db: float

    def bounds_db(self, component: str, *, relative: bool) -> tuple[FloatArray, FloatArray, FloatArray]:
        """Return (level, lower, upper) in dBi, or in dB re the co-polar peak."""
        a, u = self.amplitude[component], self.expanded[component]
        top = float(self.amplitude["co"][self.angle_deg.size // 2]) if relative else 1.0
        common = 0.0 if relative else 10.0 ** (self.common_db / 20.0) - 1.0
        half = np.hypot(u, common * a)
        level, low, high = (amplitude_db(np.maximum(x, 1e-10) / top) for x in (a, a - half, a + half))
        return level, low, high


class _FixedDirections:
    """Amplitudes at fixed directions: none of them moves with the radiated power alone."""

    radiated = np.zeros(1)


def _amplitudes(
    coefficients: ComplexArray,
    changes: Sequence[ComplexArray],
    directions: FloatArray,
    slant: float,
    hand: Handedness = 0,
) -> tuple[FloatArray, FloatArray]:
    """Return amplitudes (3 x direction,) of co, cross and total, and those (n, 3 x direction) with changes of the waves.

    hand
        Co- and cross-polar are this hand and the other one; the Ludwig-3 pair where it is 0.
    """
    theta, phi = theta_phi(directions)
    at = FieldsAt(order_of_count(coefficients.shape[-1]), theta, phi)
    then = FarField(coefficients).at(directions)
    pair = components(then, directions, slant, hand)
    # A hand counts from no direction: theta and phi are as good as any pair.
    turn = np.zeros_like(phi) if hand else slant - phi
    c, s = np.cos(turn), np.sin(turn)
    added = at.of(np.concatenate(changes))
    more = in_hand(c * added[..., 0] + s * added[..., 1], c * added[..., 1] - s * added[..., 0], hand)
    co, cross = pair[0] + more[0], pair[1] + more[1]
    now = np.stack([np.abs(co), np.abs(cross), np.hypot(np.abs(co), np.abs(cross))], axis=1)
    both = np.abs(pair)
    return np.concatenate([*both, np.hypot(*both)]), now.reshape(len(now), -1)


def level_cuts(
    inputs: Inputs,
    planes_deg: tuple[float, ...],
    *,
    step_deg: float = 1.0,
    span_deg: float = 180.0,
    beam: Beam | None = None,
) -> list[list[LevelCut]]:
    """Return cuts through the peak with their intervals: by frequency, then by plane (degrees from E towards H).

    beam
        Through this beam instead of the own peak, at every frequency.
    """
    nominal = inputs.step.expansion(inputs.sphere.field)
    base = inputs.figures
    count = round(span_deg / step_deg)
    angle = np.linspace(-span_deg, span_deg, 2 * count + 1)
    trial = Trial(inputs, nominal, np.zeros((nominal.k.size, 1)), [], _FixedDirections())
    every = [one for one in causes(trial) if not one.cause.common]
    values, expanded = [], []
    for f, coefficients in enumerate(nominal.coefficients):
        through = find_beam(coefficients, slant=base.slant, region=base.region) if beam is None else beam
        directions = cut_directions(through, planes_deg, angle)
        then, now = _amplitudes(coefficients, [one.changes[:, f] for one in every], directions, base.slant, base.hand)
        moved = np.split(now - then, np.cumsum([len(one.changes) for one in every])[:-1])
        contributions = [trial.contribution(one, part[:, None]) for one, part in zip(every, moved, strict=True)]
        values.append(then)
        expanded.append(joint_half_width(contributions)[0])
    common = common_db(inputs)
    out = []
    for f, frequency in enumerate(inputs.sphere.frequency_hz):
        shape = (3, len(planes_deg), angle.size)
        a, u = (table[f].reshape(shape) for table in (values, expanded))
        out.append([
            LevelCut(plane_deg=plane, frequency_hz=float(frequency), angle_deg=angle, amplitude=_by_component(a[:, i]),
            expanded=_by_component(u[:, i]), common_db=common)
            for i, plane in enumerate(planes_deg)
        ])  # fmt: skip
    return out


def common_db(inputs: Inputs) -> float:
    """Return the expanded uncertainty in dB that all levels have in common; 0 where they are relative."""
    reference = inputs.chamber.reference
    if not reference.absolute:
        return 0.0
    since = reference.drift_db_day * (inputs.age_days or 0.0)
    return float(
        np.linalg.norm([reference.gain_uncertainty_db, inputs.mismatch_db, inputs.place_db, inputs.unheard_db, since])
    )


def _by_component(table: FloatArray) -> dict[str, FloatArray]:
    return dict(zip(("co", "cross", "total"), table, strict=True))


def cut_directions(beam: Beam, planes_deg: tuple[float, ...], angle_deg: FloatArray) -> FloatArray:
    """Return directions (plane x angle, 3) on great circles through the peak."""
    a = np.deg2rad(angle_deg)[:, None]
    return np.concatenate([np.cos(a) * beam.direction + np.sin(a) * tangent_at(beam, plane) for plane in planes_deg])
