"""Simulated apertures: rectangular and circular ones, horns with flaws, a patch; sums of Huygens sources.

Sources lie at most `SPACING` wavelengths apart at the highest frequency, so that the sum has no grating lobe in any
direction, however the beam is steered (grating lobes need a period of at least half a wavelength).
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from colure.geometry.conventions import ComplexArray, FloatArray
from colure.twin.antennas import huygens
from colure.twin.sources import Cluster
from colure.values import holds_arrays

LIGHT = 299_792_458.0
SPACING = 0.4
#: Fewest sources across an aperture: a small one has no finer structure, but an even one must not become a point.
FEWEST = 4
#: Gauss-Legendre places along a patch's radiating edge.
PLACES_ON_AN_EDGE = 5


@dataclass(frozen=True)
@holds_arrays
class Sheet:
    """Places (site, 2) in a plane with the area that each stands for, and their distance from the rim.

    across
        (site, 2) places over the half sizes: -1 to 1.
    """

    place: FloatArray
    area: FloatArray
    across: FloatArray

    def cluster(
        self,
        frequency_hz: FloatArray,
        weights: ComplexArray,
        *,
        moment: tuple[complex, complex],
        cross: complex,
        magnetic_ratio: float,
    ) -> Cluster:
        """Return Huygens sources with weights (frequency, site) or (site,) times the areas."""
        f = np.asarray(frequency_hz, float)
        electric, magnetic = huygens(moment, np.full(len(self.place), cross, complex), magnetic_ratio)
        position = np.concatenate([self.place, np.zeros((len(self.place), 1))], axis=-1)
        full = np.broadcast_to(weights * self.area, (f.size, len(self.place))).astype(complex)
        return Cluster(f, position, electric, magnetic, full, np.ones_like(f))


def rectangle(width_m: float, height_m: float, *, highest_hz: float) -> Sheet:
    """Return midpoints of an even grid over a rectangle."""
    step = SPACING * LIGHT / highest_hz
    parts = []
    for size in (width_m, height_m):
        count = max(FEWEST, int(np.ceil(size / step)))
        parts.append(((np.arange(count) + 0.5) / count - 0.5) * size)
    x, y = (grid.ravel() for grid in np.meshgrid(*parts, indexing="ij"))
    place = np.stack([x, y], axis=-1)
    area = np.full(x.size, width_m * height_m / x.size)
    return Sheet(place, area, place / (0.5 * np.array([width_m, height_m])))


def disc(diameter_m: float, *, highest_hz: float) -> Sheet:
    """Return rings of places over a circle."""
    step = SPACING * LIGHT / highest_hz
    rings = max(FEWEST // 2, int(np.ceil(0.5 * diameter_m / step)))
    width = 0.5 * diameter_m / rings
    places, areas = [], []
    for ring in range(rings):
        radius = (ring + 0.5) * width
        count = max(6, int(np.ceil(2.0 * np.pi * radius / step)))
        angle = 2.0 * np.pi * (np.arange(count) + 0.5 * (ring % 2)) / count
        places.append(radius * np.stack([np.cos(angle), np.sin(angle)], axis=-1))
        areas.append(np.full(count, 2.0 * np.pi * radius * width / count))
    place = np.concatenate(places)
    return Sheet(place, np.concatenate(areas), place / (0.5 * diameter_m))


def steering(place: FloatArray, k: FloatArray, azimuth_elevation: tuple[float, float]) -> ComplexArray:
    """Return the phases (frequency, site) that turn a beam to (azimuth towards x, elevation towards y), radians."""
    azimuth, elevation = azimuth_elevation
    direction = np.array([np.sin(azimuth) * np.cos(elevation), np.sin(elevation)])
    return np.asarray(np.exp(-1j * np.asarray(k)[:, None] * (place[:, :2] @ direction)))


def rough(place: FloatArray, alike_m: float, *, seed: int) -> FloatArray:
    """Return random numbers (site,) of unit variance that are alike within a radius: correlation exp(-d^2 / (2 r^2))."""
    apart = np.sum((place[:, None, :] - place[None, :, :]) ** 2, axis=-1)
    spread = np.exp(-apart / alike_m**2)
    spread /= np.sqrt(np.sum(spread**2, axis=-1, keepdims=True))
    return np.asarray(spread @ np.random.default_rng(seed).normal(size=len(place)))


@dataclass(frozen=True, kw_only=True)
class HornFlaws:
    """What makes a horn differ from the textbook's: see `SimulatedHorn`."""

    edge_db: float = 0.0
    asymmetry: float = 0.0
    bent_wall_m: float = 0.0
    lump_m: tuple[float, float] = (0.0, 0.0)
    lump: complex = 0.0


def flared_horn(
    frequency_hz: FloatArray,
    *,
    a_m: float,
    b_m: float,
    slant_e_m: float,
    slant_h_m: float,
    flaws: HornFlaws,
    highest_hz: float,
    cross: complex,
    magnetic_ratio: float,
) -> Cluster:
    """Return a pyramidal horn polarized along x: cos(pi y / a) and the quadratic phase of both flares, with flaws."""
    sheet = rectangle(b_m, a_m, highest_hz=highest_hz)
    (x, y), across = sheet.place.T, sheet.across[:, 0]
    level = np.cos(np.pi * y / a_m) * 10.0 ** (flaws.edge_db / 20.0 * across**2) * (1.0 + flaws.asymmetry * across)
    path = x**2 / (2.0 * slant_e_m) + y**2 / (2.0 * slant_h_m) + flaws.bent_wall_m * np.maximum(across, 0.0) ** 2
    k = 2.0 * np.pi * np.asarray(frequency_hz, float) / LIGHT
    horn = sheet.cluster(
        frequency_hz,
        level * np.exp(-1j * k[:, None] * path),
        moment=(1.0, 0.0),
        cross=cross,
        magnetic_ratio=magnetic_ratio,
    )
    if not flaws.lump:
        return horn
    whole = float(np.sum(level * sheet.area))
    return Cluster(
        horn.frequency_hz,
        np.concatenate([horn.position, [[*flaws.lump_m, 0.0]]]),
        np.concatenate([horn.electric, [[1.0, 0.0, 0.0]]]),
        np.concatenate([horn.magnetic, [[0.0, 0.0, 0.0]]]),
        np.concatenate([horn.weights, np.full((horn.weights.shape[0], 1), whole * flaws.lump)], axis=1),
        horn.efficiency,
    )


def patch(
    frequency_hz: FloatArray, *, length_m: float, width_m: float, cross: complex, magnetic_ratio: float
) -> Cluster:
    """Return a patch polarized along x: two even radiating edges along y, one length apart, in phase.

    The two-slot model (Balanis, Antenna Theory, ch. 14): cos(k L sin(theta) / 2) in the E plane, sinc(k W sin(theta)
    / 2) in the H plane, here times the Huygens sources' own pattern, because the ground plane is finite.
    """
    nodes, weights = np.polynomial.legendre.leggauss(PLACES_ON_AN_EDGE)
    place = np.array([[side * 0.5 * length_m, 0.5 * width_m * node] for side in (-1.0, 1.0) for node in nodes])
    sheet = Sheet(place, np.tile(weights, 2), place)
    return sheet.cluster(
        frequency_hz, np.ones(len(place), complex), moment=(1.0, 0.0), cross=cross, magnetic_ratio=magnetic_ratio
    )
