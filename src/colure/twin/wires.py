"""Simulated wire antennas: dipoles, crossed dipoles, a helix; sums of elementary electric dipoles along the wire."""

from __future__ import annotations

import numpy as np

from colure.geometry.conventions import ComplexArray, FloatArray
from colure.twin.sources import Cluster

LIGHT = 299_792_458.0
#: Gauss-Legendre places on each half of a dipole; its sinusoidal current is smooth there.
PLACES_ON_A_HALF = 8
#: Straight pieces of one turn of a helix.
PIECES_OF_A_TURN = 20


def dipole(frequency_hz: FloatArray, *, axis: FloatArray, length_m: float) -> Cluster:
    """Return a thin dipole through the origin with current sin k(L/2 - |s|); an elementary one if its length is 0.

    Directivity 1.5 (elementary) and 1.64092 (half a wavelength): Balanis, Antenna Theory, ch. 4.
    """
    f = np.asarray(frequency_hz, float)
    if length_m == 0.0:
        place, current = np.zeros(1), np.ones((f.size, 1))
    else:
        nodes, weights = np.polynomial.legendre.leggauss(PLACES_ON_A_HALF)
        up = 0.25 * length_m * (nodes + 1.0)
        place = np.concatenate([-up[::-1], up])
        k = 2.0 * np.pi * f[:, None] / LIGHT
        share = np.concatenate([weights[::-1], weights])
        current = share * np.sin(k * (0.5 * length_m - np.abs(place)))
    direction = np.asarray(axis, float) / np.linalg.norm(axis)
    electric = np.tile(direction.astype(complex), (place.size, 1))
    return Cluster(
        f, place[:, None] * direction, electric, np.zeros_like(electric), current.astype(complex), np.ones_like(f)
    )


def crossed_dipoles(frequency_hz: FloatArray, *, normal: str, right: bool, length_m: float) -> Cluster:
    """Return two equal dipoles in quadrature at right angles to an axis: circular along it, linear in their plane."""
    first, second = {"x": (1, 2), "y": (2, 0), "z": (0, 1)}[normal]
    one = dipole(frequency_hz, axis=np.eye(3)[first], length_m=length_m)
    two = dipole(frequency_hz, axis=np.eye(3)[second], length_m=length_m)
    # Right-handed with e^{+jwt}: the second component lags by 90 deg (conventions: e_phi = -j e_theta).
    return joined(one, two, 1.0, -1j if right else 1j)


def joined(one: Cluster, two: Cluster, first: complex, second: complex) -> Cluster:
    """Return both clusters together, each with a complex factor, with the first one's efficiency."""
    return Cluster(
        one.frequency_hz,
        np.concatenate([one.position, two.position], axis=-2),
        np.concatenate([one.electric, two.electric], axis=-2),
        np.concatenate([one.magnetic, two.magnetic], axis=-2),
        np.concatenate([first * one.weights, second * two.weights], axis=1),
        one.efficiency,
    )


def helix(frequency_hz: FloatArray, *, turns: int, circumference_m: float, spacing_m: float, right: bool) -> Cluster:
    """Return a helix about z in its axial mode: a travelling current, beam towards +z.

    The current's phase velocity satisfies the condition of increased directivity (Kraus, Antennas, ch. 7):
    p = (L / wavelength) / (S / wavelength + (2 n + 1) / (2 n)), L the wire length of a turn, S the spacing, n turns.
    """
    f = np.asarray(frequency_hz, float)
    count = turns * PIECES_OF_A_TURN
    angle = 2.0 * np.pi * (np.arange(count) + 0.5) / PIECES_OF_A_TURN
    sense = 1.0 if right else -1.0
    radius = circumference_m / (2.0 * np.pi)
    rise = spacing_m / (2.0 * np.pi)
    cos, sin = np.cos(angle), sense * np.sin(angle)
    position = np.stack([radius * cos, radius * sin, rise * (angle - np.pi * turns)], axis=-1)
    tangent = np.stack([-radius * sin, sense * radius * cos, np.full(count, rise)], axis=-1)
    electric = (tangent / np.hypot(radius, rise)).astype(complex)
    wavelength = LIGHT / f[:, None]
    turn_length = np.hypot(circumference_m, spacing_m)
    velocity = (turn_length / wavelength) / (spacing_m / wavelength + (2 * turns + 1) / (2 * turns))
    way = angle / (2.0 * np.pi) * turn_length
    weights: ComplexArray = np.exp(-2j * np.pi * way / (wavelength * velocity))
    return Cluster(f, position, electric, np.zeros_like(electric), weights, np.ones_like(f))
