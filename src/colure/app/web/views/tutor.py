"""The coordinate tutor: one direction in every pair of angles, and every polarization's unit vectors there.

What the probe receives is shown in the device frame, with and without the probe following the roll.
"""

from __future__ import annotations

from pathlib import Path

import numpy as np

from colure.app.web.views import preparing
from colure.app.web.views.mount import pose_at
from colure.geometry.conventions import FloatArray
from colure.geometry.directions import unit_vector
from colure.geometry.kinematics import Geometry, sighting
from colure.geometry.polarization import Basis, basis_matrix, to_ludwig_1
from colure.model.campaign import Campaign
from colure.planning.aim import Bearing, aims

WORDS = {
    Basis.THETA_PHI: "theta and phi",
    Basis.LUDWIG_2_AZIMUTH_OVER_ELEVATION: "Ludwig 2, pole y (azimuth over elevation)",
    Basis.LUDWIG_2_ELEVATION_OVER_AZIMUTH: "Ludwig 2, pole x (elevation over azimuth)",
    Basis.LUDWIG_3: "Ludwig 3 (co along x, cross along y)",
}
FORMULAS = {
    Basis.THETA_PHI: "th = (cos th cos ph, cos th sin ph, -sin th), ph = (-sin ph, cos ph, 0)",
    Basis.LUDWIG_2_AZIMUTH_OVER_ELEVATION: "az = (cos ph th - cos th sin ph ph) / sqrt(1 - sin^2 th sin^2 ph)",
    Basis.LUDWIG_2_ELEVATION_OVER_AZIMUTH: "al = (cos th cos ph th - sin ph ph) / sqrt(1 - sin^2 th cos^2 ph)",
    Basis.LUDWIG_3: "co = cos ph th - sin ph ph, cross = sin ph th + cos ph ph",
}
#: Why slices crowd together, said once for each positioner.
POLES = {
    Geometry.ROLL_OVER_AZIMUTH: "Every slice is part of a great circle through boresight: all meet at +z, whole ones at -z too. There theta and phi turn "
    "with the slice, although the field is one; a probe that follows the roll (chi = psi - phi) keeps seeing the same component.",
    Geometry.AZIMUTH_OVER_ELEVATION: "Cuts of constant elevation shrink towards +y and -y, where all azimuths are one direction.",
    Geometry.ELEVATION_OVER_AZIMUTH: "Cuts of constant azimuth shrink towards +x and -x, where all elevations are one direction.",
}


def lesson(theta_deg: float, phi_deg: float, slant_deg: float = 0.0, folder: Path | None = None) -> preparing.Lesson:
    """Return everything about one direction of the device frame.

    Parameters
    ----------
    slant_deg
        Component that a following probe is to keep, from x towards y.
    folder
        Campaign whose own mount is asked how it looks there, where it is described by joints.
    """
    t, p = float(np.deg2rad(theta_deg)), float(np.deg2rad(phi_deg))
    bearing = Bearing.of(unit_vector(theta=np.asarray(t), phi=np.asarray(p)))
    bases: list[preparing.PolarizationBasis] = []
    for basis, words in WORDS.items():
        # Rows of the matrix are the unit vectors' theta and phi components.
        matrix = basis_matrix(basis, theta=t, phi=p).real
        first, second = (to_ludwig_1(a, b, theta=t, phi=p).real for a, b in matrix)
        names = basis.component_names
        bases.append(
            {
                "name": words,
                "formula": FORMULAS[basis],
                "components": list(names),
                "first": _short(first),
                "second": _short(second),
            }
        )
    return {
        "direction": _short(bearing.direction), "theta": theta_deg, "phi": phi_deg, "azimuth": bearing.azimuth_deg,
        "elevation": bearing.elevation_deg, "alpha": bearing.alpha_deg, "epsilon": bearing.epsilon_deg, "bases": bases,
        "positioners": [_positioner(geometry, bearing, slant_deg) for geometry in Geometry],
        "mount": None if folder is None else pose_at(Campaign.load(folder), bearing.direction),
    }  # fmt: skip


def _positioner(geometry: Geometry, bearing: Bearing, slant_deg: float) -> preparing.Stand:
    """Return how one positioner points there, and what the probe then sees."""
    ways: list[preparing.Way] = []
    for aim in aims(bearing, geometry):
        first, second = (np.deg2rad(aim.readouts_deg[name]) for name in geometry.axis_names)
        seen = sighting(geometry, first=first, second=second)
        chi = np.deg2rad(slant_deg - aim.slant_deg)
        ways.append({
            "readouts": aim.readouts_deg, "slant_fixed": aim.slant_deg, "probe_roll": float(np.rad2deg(chi)),
            "fixed": _short(seen.first_vector), "following": _short(np.cos(chi) * seen.first_vector + np.sin(chi) * seen.second_vector),
        })  # fmt: skip
    return {"name": geometry.value, "formula": f"d = {geometry.direction_formula}", "axes": list(geometry.axis_names), "pole": POLES[geometry],
            "ways": ways}  # fmt: skip


def _short(vector: FloatArray) -> list[float]:
    return [round(float(v), 6) + 0.0 for v in vector]
