"""A pattern in the frame, coordinates and polarization that somebody else wants, with the formulas beside it."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

import numpy as np

from colure.analysis.figures.cuts import find_beam
from colure.errors import InputError
from colure.geometry.conventions import ComplexArray, FloatArray
from colure.geometry.directions import from_azimuth_over_elevation, theta_phi, unit_vector
from colure.geometry.polarization import Basis, to_basis
from colure.values import holds_arrays
from colure.waves.expansion import Expansion


class Coordinates(StrEnum):
    """The trade's ways to name a direction."""

    THETA_PHI = "theta-phi"
    AZIMUTH_ELEVATION = "az-el"
    ALPHA_EPSILON = "alpha-epsilon"
    U_V = "u-v"

    @property
    def names(self) -> tuple[str, str]:
        """The two coordinates, with units."""
        return {
            Coordinates.THETA_PHI: ("theta_deg", "phi_deg"),
            Coordinates.AZIMUTH_ELEVATION: ("azimuth_deg", "elevation_deg"),
            Coordinates.ALPHA_EPSILON: ("alpha_deg", "epsilon_deg"),
            Coordinates.U_V: ("u", "v"),
        }[self]

    @property
    def formula(self) -> str:
        """The direction as a function of the coordinates, device or chosen frame."""
        return {
            Coordinates.THETA_PHI: "d = (sin th cos ph, sin th sin ph, cos th)",
            Coordinates.AZIMUTH_ELEVATION: "d = (sin az cos el, sin el, cos az cos el); pole +-y",
            Coordinates.ALPHA_EPSILON: "d = (sin al, cos al sin ep, cos al cos ep); pole +-x",
            Coordinates.U_V: "d = (u, v, sqrt(1 - u^2 - v^2)); front half only",
        }[self]


#: Components of every basis in terms of theta^ and phi^.
BASIS_FORMULA = {
    Basis.THETA_PHI: "theta^, phi^",
    Basis.LUDWIG_2_AZIMUTH_OVER_ELEVATION: (
        "az^ = (cos ph th^ - cos th sin ph ph^)/sqrt(1 - sin^2 th sin^2 ph), el^ = (cos th sin ph th^ + cos ph ph^)/same"
    ),
    Basis.LUDWIG_2_ELEVATION_OVER_AZIMUTH: (
        "al^ = (cos th cos ph th^ - sin ph ph^)/sqrt(1 - sin^2 th cos^2 ph), ep^ = (sin ph th^ + cos th cos ph ph^)/same"
    ),
    Basis.LUDWIG_3: "x3 = cos(ph - slant) th^ - sin(ph - slant) ph^, y3 = sin(ph - slant) th^ + cos(ph - slant) ph^",
    Basis.CIRCULAR: "e_R = (e_th + j e_ph)/sqrt 2, e_L = (e_th - j e_ph)/sqrt 2 (exp(+jwt), outgoing; IEEE Std 145)",
}


@dataclass(frozen=True)
@holds_arrays
class View:
    """A pattern on a grid of some coordinates: (count,) coordinates, (frequency, 2, count) components."""

    coordinates: Coordinates
    basis: Basis
    first: FloatArray
    second: FloatArray
    field: ComplexArray


def rotation_to(direction: FloatArray) -> FloatArray:
    """Return the smallest rotation that takes a unit vector to +z; about x where it is -z."""
    d = np.asarray(direction, float) / np.linalg.norm(direction)
    if d[2] < -1.0 + 1e-12:
        return np.diag([1.0, -1.0, -1.0])
    # Rodrigues about d x z, which has no z component.
    x, y = d[1], -d[0]
    skew = np.array([[0.0, 0.0, y], [0.0, 0.0, -x], [-y, x, 0.0]])
    return np.asarray(np.eye(3) + skew + skew @ skew / (1.0 + d[2]))


def turned_to(expansion: Expansion, boresight: FloatArray) -> Expansion:
    """Return the expansion in the frame whose +z is `boresight` (3,) of the device frame, turned no further."""
    return expansion.rotated(rotation_to(boresight))


def recentred(expansion: Expansion, origin_m: FloatArray) -> Expansion:
    """Return the expansion about another phase reference (3,) in metres of the device frame.

    The field in direction d gains exp(-j k d . origin): a source at the origin itself then has flat phase.
    """
    return expansion if not np.any(origin_m) else expansion.translated(-np.asarray(origin_m))


def boresight_of(text: str, coefficients: ComplexArray, *, slant: float, region: float = np.pi) -> FloatArray:
    """Return the direction (3,) that `device`, `peak` or `AZ,EL` (degrees, system with pole y) names.

    Raises
    ------
    InputError
        If the text is none of these.
    """
    if text == "device":
        return np.array([0.0, 0.0, 1.0])
    if text == "peak":
        return np.asarray(find_beam(coefficients, slant=slant, region=region).direction)
    try:
        azimuth, elevation = (float(part) for part in text.split(","))
    except ValueError:
        raise InputError([f"boresight = {text!r}: must be device, peak, or AZ,EL (deg)"]) from None
    return np.asarray(direction_of(Coordinates.AZIMUTH_ELEVATION, np.array([azimuth]), np.array([elevation]))[0])


def grid_of(coordinates: Coordinates, step: float) -> tuple[FloatArray, FloatArray]:
    """Return the two coordinates of every grid point: degrees, or direction cosines for `u-v`.

    `step` is in degrees; a grid of u and v takes sin(step).
    """
    if coordinates is Coordinates.THETA_PHI:
        one, two = np.arange(0.0, 180.0 + step / 2, step), np.arange(0.0, 360.0 - step / 2, step)
    elif coordinates is Coordinates.U_V:
        cell = float(np.sin(np.deg2rad(step)))
        one = two = np.arange(-int(1.0 / cell), int(1.0 / cell) + 1) * cell
    elif coordinates is Coordinates.AZIMUTH_ELEVATION:
        one, two = np.arange(-180.0, 180.0 - step / 2, step), np.arange(-90.0, 90.0 + step / 2, step)
    else:
        one, two = np.arange(-90.0, 90.0 + step / 2, step), np.arange(-180.0, 180.0 - step / 2, step)
    first, second = (grid.ravel() for grid in np.meshgrid(one, two, indexing="ij"))
    if coordinates is Coordinates.U_V:
        real = first**2 + second**2 <= 1.0
        return first[real], second[real]
    return first, second


def direction_of(coordinates: Coordinates, first: FloatArray, second: FloatArray) -> FloatArray:
    """Return the unit vectors (count, 3) that coordinates name."""
    if coordinates is Coordinates.U_V:
        return np.stack([first, second, np.sqrt(np.maximum(0.0, 1.0 - first**2 - second**2))], axis=-1)
    a, b = np.deg2rad(first), np.deg2rad(second)
    if coordinates is Coordinates.THETA_PHI:
        return unit_vector(theta=a, phi=b)
    if coordinates is Coordinates.AZIMUTH_ELEVATION:
        return from_azimuth_over_elevation(azimuth=a, elevation=b)
    return np.stack([np.sin(a), np.cos(a) * np.sin(b), np.cos(a) * np.cos(b)], axis=-1)


def view(expansion: Expansion, coordinates: Coordinates, basis: Basis, *, step_deg: float, slant: float) -> View:
    """Return a pattern on a grid of some coordinates in some polarization basis.

    Raises
    ------
    ValueError
        If the step is not from 0.1 to 45 deg.
    """
    if not 0.1 <= step_deg <= 45.0:
        raise ValueError(f"step: {step_deg:g}, must be from 0.1 to 45 deg")
    first, second = grid_of(coordinates, step_deg)
    t, p = theta_phi(direction_of(coordinates, first, second))
    e = expansion.far_field_at(theta=t, phi=p)
    pair = to_basis(e[:, 0], e[:, 1], basis, theta=t, phi=p, slant=slant)
    return View(coordinates, basis, first, second, np.stack(pair, axis=1))
