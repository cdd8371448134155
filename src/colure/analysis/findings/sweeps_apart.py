"""Single sweeps that went wrong: a connector, a cable caught, a door, a second transmitter for a moment.

A device's waves fill fewer numbers than a scan measures. One wrong sweep does not fit them, and spoils what is read around it:
three of a thousand move a beam by degrees. Without it everything fits, which tells it from echoes and from a larger device.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np

from colure.analysis.findings.slice_numbers import as_ranges
from colure.analysis.steps.agreement import level_db
from colure.geometry.conventions import BoolArray, ComplexArray, FloatArray

if TYPE_CHECKING:
    from colure.analysis.steps.assemble import MeasuredSphere
    from colure.analysis.steps.far_field import FarFieldStep

#: Directions are named if without this share of them (so many at least, and at most) so much less is left that does not fit, dB.
LEAST, MOST, SHARE, EXPLAINED_DB = 3, 8, 0.01, 8.0
#: Rounds in which what directions that are left out should read settles.
ROUNDS = 6
#: Nearer to a pole than this all slices see one direction; what they say of each other is looked at by itself, radians.
POLE = 1e-6


@dataclass(frozen=True)
class SweepsApart:
    """Directions (theta, phi) in degrees that do not fit all others, and what does not fit with and without them, dB re peak."""

    directions_deg: tuple[tuple[float, float], ...]
    with_db: float
    without_db: float

    def text(self, slices: Iterable[int]) -> str:
        """Which sweeps they are, and which slices to measure again."""
        where = "; ".join(f"theta {theta:.4g}, phi {phi:.4g}" for theta, phi in self.directions_deg)
        return (
            f"sweeps went wrong at {where} deg: a part of {self.with_db:.1f} dB relative to the peak does not fit the device, and "
            f"{self.without_db:.1f} dB without them. Look at connectors and cable, then measure these slices again: colure acquire --again {as_ranges(slices)}"
        )


def sweeps_apart(sphere: MeasuredSphere, step: FarFieldStep, *, poles: bool) -> SweepsApart | None:
    """Return the few directions without which the others fit the device's waves; None if there are no such.

    One after the other the direction that fits least is taken for unknown, and all unknown ones are filled in from the others.

    poles
        True: what was read at the poles is not to be trusted either.
    """
    field, inner = sphere.field.copy(), np.sin(sphere.theta) > POLE
    size = np.max(np.sum(np.abs(field) ** 2, axis=1), axis=(-2, -1))[:, None, None]
    unknown = np.zeros(field.shape[-2:], bool)
    unknown[~inner] = poles
    rest = _settled(field, unknown, step) if poles else field - step.refitted(field)
    before_db = _left_db(rest, size, sphere)
    chosen: list[tuple[int, int]] = []
    for _ in range(int(np.clip(SHARE * inner.sum() * sphere.phi.size, LEAST, MOST))):
        off = np.sum(np.sum(np.abs(rest) ** 2, axis=1) / size, axis=0)
        off[unknown | ~inner[:, None]] = 0.0
        chosen.append(divmod(int(np.argmax(off)), sphere.phi.size))
        unknown[chosen[-1]] = True
        rest = _settled(field, unknown, step)
        if (left_db := _left_db(rest, size, sphere)) <= before_db - EXPLAINED_DB:
            angles = [(float(sphere.theta[t]), float(sphere.phi[p])) for t, p in chosen]
            return SweepsApart(_in_degrees(angles), before_db, left_db)
    return None


def misfit_power(sphere: MeasuredSphere, rest: ComplexArray) -> FloatArray:
    """Return by frequency the mean power over the sphere of what does not fit, (frequency, 2, theta, phi)."""
    weight = np.sin(sphere.theta)[:, None]
    power = np.sum(np.abs(rest) ** 2, axis=1) * weight
    return np.asarray(np.sum(power, axis=(-2, -1)) / (np.sum(weight) * sphere.phi.size))


def _settled(field: ComplexArray, unknown: BoolArray, step: FarFieldStep) -> ComplexArray:
    """Fill unknown directions of `field` in from the others, in place; return what does not fit."""
    rest = field - step.refitted(field)
    for _ in range(ROUNDS):
        field[..., unknown] -= rest[..., unknown]
        rest = field - step.refitted(field)
    return rest


def _left_db(rest: ComplexArray, size: FloatArray, sphere: MeasuredSphere) -> float:
    """Return the rms over the sphere of what does not fit, relative to the peak, at the frequency where it is most."""
    return level_db(float(np.sqrt(np.max(misfit_power(sphere, rest) / size[:, 0, 0]))))


def _in_degrees(angles: Sequence[tuple[float, float]]) -> tuple[tuple[float, float], ...]:
    return tuple((float(np.rad2deg(theta)), float(np.rad2deg(phi))) for theta, phi in angles)
