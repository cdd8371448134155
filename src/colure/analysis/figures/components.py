"""Partial gains at the peak: by the sense of rotation, along theta and phi, along a grid of azimuth and elevation."""

from __future__ import annotations

import numpy as np

from colure.geometry.conventions import ComplexArray, FloatArray
from colure.geometry.directions import theta_phi
from colure.geometry.polarization import Basis, basis_matrix
from colure.model.components import NAMES

#: Nearer than this to the pole of a grid, degrees, its two components have no direction of their own.
POLE_DEG = 2.0
BASES = {
    "circular": Basis.CIRCULAR,
    "theta-phi": Basis.THETA_PHI,
    "ludwig-2": Basis.LUDWIG_2_AZIMUTH_OVER_ELEVATION,
}
POLES = {"theta-phi": ("z", (0.0, 0.0, 1.0)), "ludwig-2": ("y", (0.0, 1.0, 0.0))}


def component_rows(direction: FloatArray, slant: float, bases: tuple[str, ...]) -> dict[str, ComplexArray]:
    """Return by figure the row (2,) that makes its component of co and cross (Ludwig 3) in a direction (3,)."""
    theta, phi = (float(x[0]) for x in theta_phi(direction[None]))
    to_co = basis_matrix(Basis.LUDWIG_3, theta=theta, phi=phi, slant=slant)
    rows_by_figure: dict[str, ComplexArray] = {}
    for name in bases:
        rows = basis_matrix(BASES[name], theta=theta, phi=phi) @ to_co.conj().T
        rows_by_figure |= dict(zip(NAMES[name], rows, strict=True))
    return rows_by_figure


def pole_reasons(direction: FloatArray, bases: tuple[str, ...]) -> dict[str, str]:
    """Return why components of a grid say nothing where the beam points at its pole, by name."""
    reasons: dict[str, str] = {}
    for name in bases:
        letter, pole = POLES.get(name, ("", (0.0, 0.0, 0.0)))
        if abs(float(np.dot(direction, pole))) > np.cos(np.deg2rad(POLE_DEG)):
            why = f"undefined: the beam points along {letter}, where these two components turn with the smallest change of direction"
            reasons |= dict.fromkeys(NAMES[name], why)
    return reasons
