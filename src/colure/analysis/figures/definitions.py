"""Names, units, definitions and sources of every figure, in the order of the reports.

A figure is computed and its uncertainty propagated in its *native* variable, in which errors
add up evenly (a field ratio, an angle, a level); `display` turns that into what people read.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np

IEEE_145 = "IEEE Std 145-2013 (from memory)"
LUDWIG = "A. C. Ludwig, IEEE Trans. Antennas Propag. 21(1):116-119, 1973, third definition"
GUM = "definition derivable"


@dataclass(frozen=True)
class Definition:
    """One figure: how it is called, what it means, and how its native variable is shown."""

    name: str
    label: str
    unit: str
    text: str
    source: str
    display: Callable[[float], float]


def _same(x: float) -> float:
    return x


def _ratio_down_db(x: float) -> float:
    """Level of a ratio below one, as a positive number of dB; zero ratio is infinitely far down."""
    return float("inf") if x <= 0.0 else float(-20.0 * np.log10(x))


def _level_db(x: float) -> float:
    return float("-inf") if x <= 0.0 else float(20.0 * np.log10(x))


DEFINITIONS: tuple[Definition, ...] = (
    Definition("gain_dbi", "Peak gain (realized)", "dBi",
               "Largest radiation intensity over that of an isotropic radiator fed with the available power; "
               "mismatch of the device is not removed.", IEEE_145, _same),
    Definition("directivity_dbi", "Peak directivity", "dBi",
               "Largest radiation intensity over its mean over all directions, both polarizations.", IEEE_145, _same),
    Definition("efficiency_db", "Efficiency", "dB",
               "Gain minus directivity: radiated power over available power.", IEEE_145, _same),
    Definition("beam_azimuth_deg", "Beam azimuth", "deg",
               "atan2(u, w) of the direction of the peak; positive towards +x of the device.", GUM, _same),
    Definition("beam_elevation_deg", "Beam elevation", "deg",
               "asin(v) of the direction of the peak; positive towards +y of the device.", GUM, _same),
    Definition("beamwidth_e_deg", "Half-power beamwidth, E plane", "deg",
               "Angle between the half-power directions of the co-polar cut through the peak that contains the "
               "co-polar vector.", IEEE_145, _same),
    Definition("beamwidth_h_deg", "Half-power beamwidth, H plane", "deg",
               "The same in the great-circle cut square to the E plane.", IEEE_145, _same),
    Definition("side_lobe_e_db", "First side lobe, E plane", "dB",
               "Higher of the two first maxima beside the main lobe in the co-polar E-plane cut, relative to the "
               "peak.", IEEE_145, _level_db),
    Definition("side_lobe_h_db", "First side lobe, H plane", "dB",
               "The same in the H-plane cut.", IEEE_145, _level_db),
    Definition("xpd_db", "Cross-polar discrimination at peak", "dB",
               "Co-polar over cross-polar amplitude (Ludwig 3, reference of the device) at the peak.", LUDWIG,
               _ratio_down_db),
    Definition("axial_ratio_db", "Axial ratio at peak", "dB",
               "Major over minor axis of the polarization ellipse at the peak.", IEEE_145, _ratio_down_db),
    Definition("front_to_back_db", "Front-to-back ratio", "dB",
               "Total amplitude at the peak over that in the opposite direction.", IEEE_145, _ratio_down_db),
)  # fmt: skip

NAMES = tuple(d.name for d in DEFINITIONS)
#: Figures that a part of the sphere says nothing about.
WHOLE_SPHERE_ONLY = ("directivity_dbi", "efficiency_db", "front_to_back_db")
#: Figures that one polarization says nothing about.
TWO_POLARIZATIONS_ONLY = ("xpd_db", "axial_ratio_db", "directivity_dbi", "efficiency_db")


def definition(name: str) -> Definition:
    """Return the definition of a figure by name."""
    return DEFINITIONS[NAMES.index(name)]
