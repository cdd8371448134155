"""Whether the reference's sweeps are the device's own: a switch that stood still while it was told to change over.

The data are then clean, and the gain is that of the reference horn, which is often near the device's. Two antennas on two cables
never read the same complex trace; one antenna read twice in the same place does.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

import numpy as np

from colure.analysis.findings.finding import Finding
from colure.analysis.steps.agreement import level_db
from colure.analysis.steps.gain import method_of
from colure.geometry.conventions import ComplexArray
from colure.model.figure import NOT_TO_BE_USED
from colure.model.plan import Role
from colure.model.record import of_role

if TYPE_CHECKING:
    import xarray as xr

#: Two sweeps of one place are of one antenna if no more than this lies between them, dB. By chance two antennas come so near
#: at one frequency once in some sixteen thousand pairs of cables.
SAME_DB: Final = -36.0
#: Places that differ by less are one, degrees.
PLACE_DEG: Final = 0.01
#: A reference sweep this far below the strongest one is noise or impurity, and is not compared, dB.
WEAK_DB: Final = 20.0


def switch_findings(record: xr.Dataset) -> list[Finding]:
    """Return that the switch stood still, if a record's reference reads what the device reads in the same place."""
    if method_of(record) != "switch":
        return []
    apart_db = nearest_db(record)
    if apart_db is None or apart_db > SAME_DB:
        return []
    text = (
        f"the reference reads what the device reads in the same place, to {apart_db:.0f} dB: the switch did not change over, and gain is that of the "
        "reference. Look at the switch and its cables, and measure again; where the pattern is the device's, the reference is enough: "
        "colure acquire --again reference"
    )
    return [Finding("reference", apart_db, text, NOT_TO_BE_USED)]


def nearest_db(record: xr.Dataset) -> float | None:
    """Return how near a sweep of the device comes to one of the reference's strong ones, of the same place of all axes.

    Relative to the reference's sweep, over all frequencies and ports; None if no place has both.
    """
    reference, device = of_role(record, Role.REFERENCE), of_role(record, Role.SCAN, Role.TIE)
    theirs: ComplexArray = reference["trace"].values
    if not theirs.size:
        return None
    strength = np.sqrt(np.sum(np.abs(theirs) ** 2, axis=(1, 2)))
    strong = np.flatnonzero(strength > strength.max() * 10.0 ** (-WEAK_DB / 20.0))
    places = device["commanded_deg"].values
    nearest = None
    for one in strong:
        here = np.all(np.abs(places - reference["commanded_deg"].values[one]) < PLACE_DEG, axis=1)
        if here.any():
            off = np.sqrt(np.sum(np.abs(device["trace"].values[here] - theirs[one]) ** 2, axis=(1, 2)))
            apart = float(off.min() / strength[one])
            nearest = apart if nearest is None else min(nearest, apart)
    return None if nearest is None else level_db(nearest)
