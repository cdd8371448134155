"""The trade's lists of error terms against this budget: what covers each, or why nothing does."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from colure.model.chamber import Chamber

#: The 18 terms of near-field measurements (A. C. Newell, IEEE Trans. Antennas Propag. 36(6):754-768, 1988; list from memory).
NEAR_FIELD: tuple[tuple[str, str], ...] = (
    ("probe relative pattern", "probe pattern (beyond the correction with the pattern that is named)"),
    ("probe polarization ratio", "probe polarization"),
    ("probe gain", "cancels in the substitution with the reference"),
    ("probe alignment", "alignment: probe roll; probe pointing"),
    ("normalization constant", "reference gain"),
    ("impedance mismatch", "mismatch"),
    ("alignment of the device", "alignment: device pose"),
    ("data point spacing", "sampling and truncation"),
    (
        "truncation of the measured surface",
        "whole sphere: none; a region: its margin is planned for, not considered here",
    ),
    (
        "probe position across the range",
        "alignment: theta zero, roll axis, axes offset, joints; probe place, position error",
    ),
    ("probe position along the range", "alignment: distance, axes offset, joints"),
    ("multiple reflections probe to device", "standing wave; a second distance shows it (colure set-ups)"),
    ("receiver amplitude nonlinearity", "receiver linearity, receiver compression"),
    ("system phase error", "cable flexing, drift residual, temperature, jumps"),
    ("receiver dynamic range", "noise"),
    ("room scattering", "range echoes"),
    ("leakage and crosstalk", "leakage"),
    ("random errors", "noise, drift residual"),
)
#: Headings of over-the-air test methods (3GPP TR 38.903, B.2.1, list of headings).
OVER_THE_AIR: tuple[tuple[str, str], ...] = (
    ("positioning misalignment, pointing, positioner", "alignment: device pose, theta zero, roll axis, joints"),
    ("measurement distance, phase curvature", "alignment: distance (the transform removes the curvature itself)"),
    ("quality of the quiet zone", "range echoes"),
    ("mismatch, standing wave", "mismatch; standing wave"),
    ("measurement receiver, network analyzer", "noise, receiver linearity, receiver compression"),
    ("amplifier", "none in use; drift residual if there is one"),
    ("random uncertainty", "noise"),
    ("cross-polar discrimination", "probe polarization"),
    ("insertion-loss variation, feed cable", "drift residual, cable flexing, reconnection"),
    ("leakage", "leakage"),
    ("calibration antenna's gain", "reference gain"),
    ("phase-centre offset, quiet zone in calibration", "part of the reference gain as declared"),
    ("grids for total power and for the peak, quadrature", "none: figures come from the continuous pattern"),
)

#: Terms that a budget holds where chamber.toml declares them.
DECLARED = (
    "mismatch",
    "leakage",
    "receiver linearity",
    "receiver compression",
    "standing wave",
    "probe pattern",
    "probe pointing",
    "probe place",
    "position error",
    "reconnection",
    "temperature",
    "jumps",
)


def covered(words: str, present: set[str]) -> str:
    """Return what covers a heading; a term that this budget does not hold is said to be not declared."""
    missing = [name for name in DECLARED if name in words and name not in present]
    if not missing:
        return words
    return f"{words}. NOT INCLUDED, no data given: {', '.join(missing)}"


def gain_source(declared: Chamber, counted: Chamber) -> str:
    """Say what the reference is, where its gain comes from, and how well it is known: what the run's budget counted."""
    reference, expanded = declared.reference, counted.reference.gain_uncertainty_db
    if not reference.absolute:
        return "none: levels are relative, and figures that need a gain are not given"
    a, b, _, _ = reference.sides_m
    words = (
        "gain from its dimensions" if reference.gain_table is None else f"gain from the table {reference.gain_table}"
    )
    horn = f"pyramidal horn {1e3 * a:g} x {1e3 * b:g} mm, {words}, \u00b1{expanded:g} dB (k = 2)"
    if any(reference.offset_mm):
        horn += f", at {list(reference.offset_mm)} mm from the axes' intersection (corrected)"
    how = {
        "switch": "",
        "swap": "; device and horn were exchanged by hand",
        "stored": f"; read when the range was calibrated ({reference.calibration}), not in this run",
    }
    return horn + how[reference.method]
