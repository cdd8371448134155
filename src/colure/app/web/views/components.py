"""Levels of two components for the page: None where nothing was measured and where a component has no direction.

Every pair of unit vectors on a sphere is undefined somewhere. Beside such a direction the pair turns so quickly that a smooth
field is drawn as a row of spikes; nothing is drawn there, and a cut says so.
"""

from __future__ import annotations

import numpy as np

from colure.geometry.conventions import BoolArray, ComplexArray, FloatArray, amplitude_db
from colure.geometry.directions import theta_phi
from colure.geometry.polarization import Basis, from_cartesian, to_basis

FLOOR_DB = -120.0
#: A component has no direction this near to the pole of its own unit vectors, degrees: nothing is drawn there.
POLE_DEG = 0.75
#: Along a cut the unit vectors may turn by this from one angle to the next, degrees. A turn of 10 deg alone makes a level of
#: 20 log10(sin 10 deg) = -15 dB of the other component: what turns faster shows the definition, not the device.
MOST_TURN_DEG = 10.0
#: A cut that comes nearer than this to a direction without unit vectors says so, degrees, where the field is within this of its peak.
NEAR_DEG, WITHIN_DB = 10.0, 30.0
#: Directions where the unit vectors are undefined: none for circular components, whose levels do not turn.
SINGULAR: dict[Basis, dict[str, tuple[float, float, float]]] = {
    Basis.THETA_PHI: {"+z": (0, 0, 1), "-z": (0, 0, -1)},
    Basis.LUDWIG_2_AZIMUTH_OVER_ELEVATION: {"+y": (0, 1, 0), "-y": (0, -1, 0)},
    Basis.LUDWIG_2_ELEVATION_OVER_AZIMUTH: {"+x": (1, 0, 0), "-x": (-1, 0, 0)},
    Basis.LUDWIG_3: {"-z": (0, 0, -1)},
    Basis.CIRCULAR: {},
}  # fmt: skip


def level(values: ComplexArray | FloatArray, known: BoolArray) -> list[float | None]:
    """Return levels in dBi rounded for the page; None where nothing is known."""
    shown = np.round(amplitude_db(values, least=10.0 ** (FLOOR_DB / 20.0)), 3)
    return [float(v) if k else None for v, k in zip(shown, known, strict=True)]


def drawn(
    pair: tuple[ComplexArray, ComplexArray], *, known: BoolArray, clear: BoolArray
) -> tuple[list[float | None], list[float | None], list[float | None]]:
    """Return levels of both components and of the total.

    known
        Where something was measured.
    clear
        Where the components have a direction, of `clear_at` or `clear_along`.
    """
    total = np.hypot(np.abs(pair[0]), np.abs(pair[1]))
    return level(pair[0], known & clear), level(pair[1], known & clear), level(total, known)


def clear_at(kind: Basis, direction: FloatArray) -> BoolArray:
    """Tell which directions, (..., 3), lie off the poles of a pair of components."""
    clear = np.ones(direction.shape[:-1], bool)
    for pole in SINGULAR[kind].values():
        clear &= direction @ np.asarray(pole) < np.cos(np.deg2rad(POLE_DEG))
    return clear


def clear_along(kind: Basis, direction: FloatArray) -> BoolArray:
    """Tell where along a great circle, (angle, 3), the components have a direction that stands still enough to be read.

    The unit vectors are compared with the circle's own pair, along it and across it, which turns with nothing. A turn by half
    a circle changes signs alone, no level.
    """
    clear = clear_at(kind, direction)
    if not SINGULAR[kind] or len(direction) < 3:
        return clear
    across = np.cross(direction[0], direction[len(direction) // 3])
    across /= np.linalg.norm(across)
    theta, phi = theta_phi(direction)
    pair = from_cartesian(np.broadcast_to(across, direction.shape), theta=theta, phi=phi)
    first, second = to_basis(*pair, kind, theta=theta, phi=phi)
    turned = np.diff(np.arctan2(first.real, second.real))
    turned = np.abs((turned + 0.5 * np.pi) % np.pi - 0.5 * np.pi) > np.deg2rad(MOST_TURN_DEG)
    clear[:-1] &= ~turned
    clear[1:] &= ~turned
    return clear


def said_of(
    kind: Basis, angle_deg: FloatArray, direction: FloatArray, *, total_db: list[float | None], clear: BoolArray
) -> str:
    """Say where a cut passes a direction in which its components are undefined, and what is not drawn; empty if it does not."""
    levels = np.array([np.nan if v is None else v for v in total_db])
    strong = np.nan_to_num(levels, nan=-np.inf) >= np.nanmax(levels, initial=FLOOR_DB) - WITHIN_DB
    words = []
    for name, pole in SINGULAR[kind].items():
        apart = np.rad2deg(np.arccos(np.clip(direction @ np.asarray(pole, float), -1.0, 1.0)))
        nearest = int(np.argmin(apart))
        if apart[nearest] < NEAR_DEG and strong[nearest]:
            words.append(
                f"{name} ({apart[nearest]:.1f} deg beside this cut at {angle_deg[nearest]:.1f} deg from the peak)"
            )
    if not words:
        return ""
    one, two = kind.component_names
    gone = " They are not drawn where they turn too quickly to be read." if np.any(~clear & np.isfinite(levels)) else ""
    return (
        f"The components {one} and {two} have no direction at {' and '.join(words)} and turn about it: what they show near it is "
        f"their definition, not the device.{gone} Read the total there, or choose other components."
    )
