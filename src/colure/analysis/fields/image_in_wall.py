"""The device's own image in a wall that turns with it: its plane from the degrees beyond the device's, its field from the device.

What an image sends through the device's sphere is in no high degree. But it is what the device sends towards the wall (image
theory of a conductor, any electromagnetics text; here with any complex factor): place and factor are fitted to the high degrees.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from scipy.optimize import minimize

from colure.geometry.conventions import (
    GRAD,
    ComplexArray,
    FloatArray,
    mode_count,
    mode_degrees,
    mode_orders,
    order_of_count,
)
from colure.geometry.directions import theta_phi
from colure.geometry.rotations import about_axis
from colure.geometry.sphere import gauss_legendre
from colure.values import holds_arrays
from colure.waves.expansion import Expansion
from colure.waves.modes import resized
from colure.waves.transform import synthesis

#: Steps of the search: of the normal, times the device's highest degree (rad); of the distance, wavelengths.
NORMAL_STEP, DISTANCE_STEP = 0.8, 0.1
#: The wall's image lies so many wavelengths beyond the located place at most, or before it; most normals a row.
AROUND, MOST_NORMALS = 1.5, 15
#: An image explains at least this share of the high degrees' power over the noise, and lies so many radii of the device away.
LIKE_AN_IMAGE, OUTSIDE = 0.9, 1.5
#: Searches for the place and evaluations of each; rounds at one place: image from the device, device without the image.
ROUNDS, EVALUATIONS, SETTLES = 3, 70, 12


@dataclass(frozen=True)
@holds_arrays
class HighDegrees:
    """Waves (2, N(N+2)) of which the degrees above `kept` are no device's; noise (degree,) of one coefficient, wavenumber."""

    waves: ComplexArray
    kept: int
    noise: FloatArray
    k: float

    @property
    def order(self) -> int:
        """Highest degree N."""
        return self.noise.size

    @property
    def count(self) -> int:
        """Number of high coefficients."""
        return 2 * (mode_count(self.order) - mode_count(self.kept))

    def high(self) -> float:
        """Return the power of high degrees over the noise's, summed."""
        degrees = np.arange(self.kept + 1, self.order + 1)
        over = self.per_degree(self.waves) / self.noise[degrees - 1] ** 2
        return float(np.sum(over * 2.0 * (2.0 * degrees + 1.0)))

    def per_degree(self, waves: ComplexArray) -> FloatArray:
        """Return the mean power of one coefficient of every degree above the device's."""
        degrees = np.arange(self.kept + 1, self.order + 1)
        power = np.sum(np.abs(waves[:, mode_count(self.kept) :]) ** 2, axis=0)
        return np.asarray(np.add.reduceat(power, degrees**2 - degrees[0] ** 2) / (2.0 * (2.0 * degrees + 1.0)))

    def seen(self) -> ComplexArray:
        """Return the waves with every degree above the device's weighed by the share of its power that is no noise, the others 0."""
        share = np.zeros(self.order)
        share[self.kept :] = np.maximum(
            1.0 - self.noise[self.kept :] ** 2 / np.maximum(self.per_degree(self.waves), 1e-300), 0.0
        )
        return np.asarray(self.waves * share[mode_degrees(self.order) - 1])

    def over_noise(self, waves: ComplexArray) -> ComplexArray:
        """Return the degrees above the device's over their noise, flat."""
        start = mode_count(self.kept)
        return np.asarray((waves[:, start:] / self.noise[mode_degrees(self.order)[start:] - 1]).ravel())


@dataclass(frozen=True)
@holds_arrays
class Image:
    """Image of the device's origin (m), the factor on it, its waves (2, N(N+2)), and the share of the high degrees it explains."""

    place: FloatArray
    factor: complex
    waves: ComplexArray
    share: float


def found_image(measured: HighDegrees, device_order: int, place: FloatArray) -> Image | None:
    """Return the image of the device about a located place, or None if nothing there looks like one.

    Parameters
    ----------
    measured
        All degrees as they were measured.
    device_order
        Highest degree of the device.
    place
        Where the high degrees focus, metres.
    """
    whole = resized(measured.waves, device_order)
    target = measured.over_noise(measured.waves)
    power = float(np.sum(np.abs(target) ** 2))
    at, device, image = _coarse(measured, whole, place), whole, None
    for turn in range(ROUNDS):
        at = _fine(measured, device, target, at, (0.1, 0.02, 0.002)[turn])
        for _ in range(SETTLES):
            before, image = device, _image(measured, device, target, at)
            device = whole - resized(image.waves, device_order)
            if np.linalg.norm(device - before) < 1e-7 * np.linalg.norm(device):
                break
    assert image is not None  # there are rounds
    near = float(np.linalg.norm(at)) < OUTSIDE * measured.kept / measured.k
    return None if near or image.share * power < LIKE_AN_IMAGE * (power - target.size) else image


def _image(measured: HighDegrees, device: ComplexArray, target: ComplexArray, place: FloatArray) -> Image:
    """Return the image of a device at a place with the factor that explains most of the high degrees."""
    waves = mirrored(device, place, measured.k, measured.order)
    shape = measured.over_noise(waves)
    factor = complex(np.vdot(shape, target) / np.vdot(shape, shape))
    left = float(np.sum(np.abs(target - factor * shape) ** 2))
    return Image(place, factor, factor * waves, 1.0 - left / float(np.sum(np.abs(target) ** 2)))


def mirrored(device: ComplexArray, place: FloatArray, k: float, order: int) -> ComplexArray:
    """Return the waves (2, N(N+2)) of a device (2, n(n+2)) reflected in the plane half way to `place`, about the same origin."""
    turn, number = to_z(place), np.array(k)
    own = _reflected(Expansion(device, number).rotated(turn).coefficients)
    moved = Expansion(own, number).translated([0.0, 0.0, float(np.linalg.norm(place))], order=order)
    return moved.rotated(turn.T).coefficients


def to_z(place: FloatArray) -> FloatArray:
    """Return the rotation that brings a place onto the z axis."""
    theta, phi = (float(one[0]) for one in theta_phi(place[None]))
    return np.asarray(about_axis("y", -theta) @ about_axis("z", -phi))


def _reflected(coefficients: ComplexArray) -> ComplexArray:
    """Return waves reflected in the plane z = 0: a gradient stays one, a curl changes its sign (parity of harmonics)."""
    order = order_of_count(coefficients.shape[-1])
    sign = np.where((mode_degrees(order) + mode_orders(order)) % 2 == 0, 1.0, -1.0)
    kinds = np.array([1.0, -1.0] if GRAD == 0 else [-1.0, 1.0])
    return np.asarray(coefficients * kinds[:, None] * sign)


def _coarse(measured: HighDegrees, device: ComplexArray, place: FloatArray) -> FloatArray:
    """Return the image of the origin whose field correlates best with the high degrees, near a located place."""
    wave, far = 2.0 * np.pi / measured.k, float(np.linalg.norm(place))
    size = measured.kept / measured.k
    step, wide = NORMAL_STEP / max(measured.kept, 2), float(np.arctan2(0.8 * size, far))
    count = min(int(np.ceil(wide / step)), MOST_NORMALS // 2)
    offsets = step * np.arange(-count, count + 1)
    near = max(far - size - AROUND * wave, OUTSIDE * size)
    distances = np.arange(near, far + size + AROUND * wave, DISTANCE_STEP * wave)
    first, best, image = to_z(place), 0.0, place
    for one in offsets:
        for two in offsets:
            normal = first.T @ np.array([np.tan(one), np.tan(two), 1.0])
            normal /= np.linalg.norm(normal)
            like = _correlation(measured, device, normal, distances)
            if float(like.max()) > best:
                best, image = float(like.max()), normal * distances[int(np.argmax(like))]
    return np.asarray(image)


def _correlation(measured: HighDegrees, device: ComplexArray, normal: FloatArray, distances: FloatArray) -> FloatArray:
    """Return |product| (distance,) of the high degrees with images of the device behind walls of one normal."""
    turn, number = to_z(normal), np.array(measured.k)
    high = measured.seen()
    rings, columns = measured.order + 8, 2 * measured.order + 8
    grid = gauss_legendre(rings=rings, phi_count=1)
    theta = grid.theta
    image = synthesis(_reflected(Expansion(device, number).rotated(turn).coefficients), theta, columns)
    seen = synthesis(Expansion(high, number).rotated(turn).coefficients, theta, columns)
    product = np.sum(image.conj() * seen, axis=(0, 2)) * grid.ring_weights
    return np.asarray(np.abs(np.exp(-1j * measured.k * distances[:, None] * np.cos(theta)) @ product))


def _fine(
    measured: HighDegrees, device: ComplexArray, target: ComplexArray, place: FloatArray, step: float
) -> FloatArray:
    """Return the place near by whose image explains most; `step` of the search in wavelengths."""
    wave = 2.0 * np.pi / measured.k

    def unlike(at: FloatArray) -> float:
        shape = measured.over_noise(mirrored(device, at, measured.k, measured.order))
        return -float(np.abs(np.vdot(shape, target)) ** 2 / np.vdot(shape, shape).real)

    simplex = place + step * wave * np.concatenate([np.zeros((1, 3)), np.eye(3)])
    options = {"initial_simplex": simplex, "maxfev": EVALUATIONS, "xatol": 1e-5 * wave, "fatol": 0.0}
    return np.asarray(minimize(unlike, place, method="Nelder-Mead", options=options).x)
