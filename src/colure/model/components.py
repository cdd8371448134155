"""Which partial gains at the peak are figures, what they are called and what they mean; other units of gain."""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np

from colure.geometry.conventions import amplitude_db
from colure.model.evaluation import Evaluation

#: A half-wave dipole over an isotropic radiator, dB, as the trade rounds it (common practice, no source).
DIPOLE_DBI = 2.15
#: Names of the figures, components of a basis at a time, by what evaluation.toml calls it.
NAMES = {
    "circular": ("gain_right_dbic", "gain_left_dbic"),
    "theta-phi": ("gain_theta_dbi", "gain_phi_dbi"),
    "ludwig-2": ("gain_azimuth_dbi", "gain_elevation_dbi"),
}

#: As formulas write them.
SYMBOLS = {
    "gain_right_dbic": "G_R",
    "gain_left_dbic": "G_L",
    "xpd_circular_db": "XPD_c",
    "axial_ratio_signed_db": "AR_s",
    "gain_theta_dbi": "G_theta",
    "gain_phi_dbi": "G_phi",
    "gain_azimuth_dbi": "G_az",
    "gain_elevation_dbi": "G_el",
    "gain_dbd": "G_d",
    "gain_linear": "G_lin",
}


def wanted(settings: Evaluation, *, circular: bool) -> tuple[str, ...]:
    """Return the bases whose components are figures: those asked for, and both hands of a device that is declared not linear."""
    return tuple(name for name in NAMES if name in settings.components or (name == "circular" and circular))


def signed_ratio_db(inverse: float) -> float:
    """Return an axial ratio in dB with the sign of its sense: + right-handed, - left-handed, from minor over major axis."""
    if inverse == 0.0:
        return float("inf")
    return float(np.copysign(-amplitude_db(abs(inverse)), inverse))


def component_definitions(bases: tuple[str, ...], units: tuple[str, ...]) -> Iterator[tuple[str, str, str, str, str]]:
    """Yield name, label, unit, meaning and kind (`amplitude`, `ratio`, `signed`, `dbd` or `linear`) of every figure."""
    if "circular" in bases:
        for name, hand, sign in ((NAMES["circular"][0], "right", "+ j"), (NAMES["circular"][1], "left", "- j")):
            yield (name, f"Partial gain at peak, {hand}-hand", "dBic",
                   f"Gain (realized) of the {hand}-hand circular component at the peak of the total intensity, "
                   f"(e_theta {sign} e_phi)/sqrt 2, over an isotropic radiator of that sense.", "amplitude")  # fmt: skip
        yield ("xpd_circular_db", "Circular cross-polar discrimination at peak", "dB",
               "Stronger over weaker circular component at the peak.", "ratio")  # fmt: skip
        yield ("axial_ratio_signed_db", "Axial ratio at peak with its sense", "dB",
               "Major over minor axis of the polarization ellipse at the peak, + right-handed, - left-handed.", "signed")  # fmt: skip
    words = {"theta-phi": ("theta", "phi"), "ludwig-2": ("azimuth", "elevation")}
    for basis, pair in words.items():
        for name, axis in zip(NAMES[basis], pair, strict=True) if basis in bases else ():
            yield (name, f"Partial gain at peak, along {axis}", "dBi",
                   f"Gain (realized) of the component along growing {axis} at the peak of the total intensity"
                   + (" (Ludwig's second definition, pole y)." if basis == "ludwig-2" else "."), "amplitude")  # fmt: skip
    if "dBd" in units:
        yield ("gain_dbd", "Peak gain over a half-wave dipole", "dBd",
               f"Peak gain less {DIPOLE_DBI:g} dB.", "dbd")  # fmt: skip
    if "linear" in units:
        yield ("gain_linear", "Peak gain, as a ratio", "1", "Peak gain as a ratio of intensities.", "linear")
