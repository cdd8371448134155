"""Which half of the sphere a map over direction cosines shows: the one that holds the beam, or both."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

import numpy as np

from colure.analysis.figures.cuts import FarField
from colure.geometry.conventions import amplitude_from_db

if TYPE_CHECKING:
    from colure.geometry.conventions import ComplexArray, Handedness

#: A half is shown if its highest level is within this of the peak, dB.
SHOWN_DB: Final = 3.0
#: Directions over the diameter of a half at which its level is read.
LOOKS: Final = 61
#: Beside pictures of Ludwig-3 components.
UNDEFINED_BEHIND: Final = "Ludwig-3 components are not defined opposite to the boresight; nothing is drawn there."


def shown_halves(coefficients: ComplexArray, *, region: float) -> tuple[tuple[bool, ...], float]:
    """Return (whether each half that is shown is the back one, z below 0; the highest amplitude of both).

    region
        Angle from +z up to which the field is known, rad. The back half is not shown where the beam is elsewhere.
    """
    u = np.linspace(-1.0, 1.0, LOOKS)
    uu, vv = np.meshgrid(u, u, indexing="xy")
    inside = uu**2 + vv**2 <= np.sin(min(region, 0.5 * np.pi)) ** 2
    z = np.sqrt(np.maximum(1.0 - uu[inside] ** 2 - vv[inside] ** 2, 0.0))
    field, highest = FarField(coefficients), []
    for sign in (1.0, -1.0):
        d = np.stack([uu[inside], vv[inside], sign * z], axis=-1)
        # Of the rim alone nothing can be drawn: it is the front half's.
        d = d[d[:, 2] >= (np.cos(region) if sign > 0.0 or region > 0.5 * np.pi else np.inf) - 1e-9]
        size = np.sqrt(np.sum(np.abs(field.at(d)) ** 2, axis=-1)) if d.size else np.zeros(1)
        highest.append(float(size.max()))
    peak = max(highest)
    least = peak * float(amplitude_from_db(-SHOWN_DB))
    return tuple(back for back, size in zip((False, True), highest, strict=True) if size >= least), peak


def component_words(hand: Handedness) -> str:
    """Return what both components of cuts are, in words; `hand` as of `colure.analysis.figures.cuts.in_hand`."""
    if not hand:
        return "Ludwig-3 components"
    return (
        "right-hand (co-polar) and left-hand components"
        if hand > 0
        else "left-hand (co-polar) and right-hand components"
    )


def half_words(at: str, *, back: bool, hand: Handedness = 0) -> str:
    """Return the caption of a half's map; `at`: the frequency in words; `hand`: which one's level is drawn first, 0: Ludwig-3."""
    ratio = "the axial ratio is drawn where the level is within 20 dB of the peak."
    if not back:
        return f"Over direction cosines u = sin \u03b8 cos \u03c6, v = sin \u03b8 sin \u03c6 of the front half, {at}; {ratio}"
    return (
        f"Over direction cosines u = sin \u03b8 cos \u03c6, v = sin \u03b8 sin \u03c6 of the back half (z below 0), {at}; {ratio}"
        f"{'' if hand else f' {UNDEFINED_BEHIND}'}"
    )
