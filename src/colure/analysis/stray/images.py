"""The probe's images in the walls of a room, and what each adds to a scan: the same for every device that turns there.

An echo by way of a wall is what the probe's image behind the wall would receive. Its place does not move while the device turns and
when the device is changed. What the wall does to strength, phase and polarization is one complex number beside the mirror of a plane
conductor, and three smaller ones that turn the polarization.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np

from colure.analysis.steps.assemble import MeasuredSphere
from colure.analysis.steps.far_field import FarFieldStep
from colure.analysis.stray.mirrors import Wall
from colure.geometry.conventions import ComplexArray, FloatArray, mode_degrees
from colure.geometry.directions import cross, tangents
from colure.geometry.kinematics import Geometry
from colure.values import holds_arrays
from colure.waves.expansion import Expansion
from colure.waves.radial import outgoing

#: Complex numbers of an image: as a plane conductor, its two polarizations unlike, and both turned into each other.
KINDS = 4


@dataclass(frozen=True)
@holds_arrays
class Surround:
    """The range that images stand around.

    range_m
        Distance from the axes' intersection to the probe.
    middle_k
        Wavenumber at which weights are what they are; at others the longer path turns them.
    hears
        The probe's two responses by direction of travel: `mirrors.hearing`.
    """

    geometry: Geometry
    range_m: float
    middle_k: float
    hears: Callable[[FloatArray], ComplexArray]

    def mirrors(self, place: FloatArray) -> ComplexArray:
        """Return what an image at a place (3,) of the lab makes of a wave (kind, lab axis, tangent).

        The plane half way between probe and image is the wall. The first kind is a plane conductor, exact for a probe far from
        the wall (geometrical optics); the others are the same after another sign, a swap or a turn of its two polarizations.
        """
        probe = np.array([0.0, 0.0, self.range_m])
        normal = (place - probe) / np.linalg.norm(place - probe)
        travel = probe - normal * float(normal @ (probe + place))
        direction = place / np.linalg.norm(place)
        across = np.stack(tangents(direction))
        turned = 2.0 * (across @ normal)[:, None] * normal - across
        plain = self.hears((travel / np.linalg.norm(travel))[None])[0] @ turned.T
        aside = cross(direction, normal)
        size = float(np.linalg.norm(aside))
        own = across @ (aside / size if size > 1e-6 else across[0])
        other = np.array([-own[1], own[0]])
        unlike = np.outer(own, own) - np.outer(other, other)
        swapped = np.outer(own, other) + np.outer(other, own)
        kinds = np.stack([np.eye(2), unlike, swapped, np.array([[0.0, -1.0], [1.0, 0.0]])])
        return np.asarray(plain @ kinds)


class Scanned:
    """One run as images see it: its poses, its device's waves, and what of its readings does not fit the device."""

    def __init__(self, sphere: MeasuredSphere, step: FarFieldStep, device: Expansion, surround: Surround) -> None:
        self.sphere, self.step, self.device, self.surround = sphere, step, device, surround
        self.wall = Wall(sphere, step, device, surround.geometry)

    def per_kind(self, place: FloatArray, index: int) -> ComplexArray:
        """Return what an image of unit strength at a place (3,) adds at one frequency, (kind, 2, theta, phi)."""
        distance, k = float(np.linalg.norm(place)), float(self.device.k[index])
        functions = outgoing(self.device.order, k * distance).tangential()[..., mode_degrees(self.device.order) - 1]
        length = self.surround.range_m
        waves = self.device.coefficients[index] * functions
        waves = waves * (np.exp(-1j * (k - self.surround.middle_k) * (distance - length)) * length / distance)
        (four,) = self.wall.readings((place / distance)[None], index, device=waves)
        mirrors = self.surround.mirrors(place).reshape(KINDS, 4)
        return np.asarray(np.tensordot(mirrors, four, 1))

    def echo(self, places: FloatArray, weights: ComplexArray, index: int) -> ComplexArray:
        """Return what images at places (image, 3) of weights (image, kind) add at one frequency, (2, theta, phi)."""
        out = np.zeros(self.wall.shape, complex)
        for place, four in zip(places, weights, strict=True):
            out += np.tensordot(four, self.per_kind(place, index), 1)
        return out

    def echoes(self, places: FloatArray, weights: ComplexArray) -> ComplexArray:
        """Return the same at every frequency, (frequency, 2, theta, phi)."""
        return np.stack([self.echo(places, weights, index) for index in range(self.sphere.frequency_hz.size)])

    def outside(self, field: ComplexArray, index: int) -> ComplexArray:
        """Return what of fields (..., 2, theta, phi) the device's waves cannot hold, (..., sample)."""
        # With a dimension of frequency a mode filter along z is a product of matrices.
        return self.wall.outside(field[..., None, :, :, :], index).reshape(*field.shape[:-3], -1)
