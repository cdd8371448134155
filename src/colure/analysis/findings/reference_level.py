"""Whether the level of the reference can be what it is said to be, and what of it no run shows.

Gain table, cable and place of the reference move gain and efficiency alike, by any amount, at every frequency by another one: all
else in a run stays as it is. Only what is known beside the run contradicts it: the horn's dimensions, and that nothing radiates more
than it accepts.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

import numpy as np

from colure.analysis.findings.finding import Finding
from colure.analysis.findings.wave_at_peak import StatedValue
from colure.analysis.steps.agreement import NOTHING_DB
from colure.analysis.steps.gain import reference_gain_dbi
from colure.geometry.conventions import FloatArray
from colure.model.chamber import Chamber
from colure.model.figure import LOOK

LEVELS = ("gain_dbi", "efficiency_db", "eirp_dbm", "trp_dbm", "eis_dbm", "tis_dbm")
#: The gain of a pyramidal horn from its dimensions is this sure at least, dB (common practice, no source: 0.3 dB; small horns less).
HORN_DB = 1.0


def horn_findings(
    gain_dbi: FloatArray,
    frequency_hz: FloatArray,
    chamber: Chamber,
    *,
    near: bool = True,
    figures: tuple[str, ...] = LEVELS,
) -> Iterator[Finding]:
    """Say that the gain (frequency,) that a table or a stored calibration gives the reference is not that of a horn of its dimensions.

    near
        The gain is the one at the range length.
    figures
        Names of the figures that the reference's level counts for.
    """
    reference = chamber.reference
    if not figures or not reference.absolute or not np.isfinite(gain_dbi).all():
        return
    distance = chamber.range_length_m if near else np.inf
    formula = reference_gain_dbi(frequency_hz, reference, distance)
    off = gain_dbi - formula
    worst = int(np.argmax(np.abs(off)))
    if abs(off[worst]) <= HORN_DB + reference.gain_uncertainty_db:
        return
    text = (
        f"the reference counts with {gain_dbi[worst]:.2f} dBi at {frequency_hz[worst] / 1e9:.3f} GHz; a pyramidal horn of its dimensions has "
        f"{formula[worst]:.2f} dBi: the gain table, the stored calibration or the dimensions are those of another horn. Correct [reference] in "
        "chamber.toml; of a horn of another kind state dimensions that give its gain"
    )
    yield Finding("reference", NOTHING_DB, text, LOOK, figures)


def unseen_findings(efficiency: Sequence[StatedValue], chamber: Chamber) -> Iterator[Finding]:
    """Say which errors of the reference's level a run would not show."""
    if not chamber.reference.absolute:
        return
    # More than 100 % is told from three standard uncertainties on.
    open_db = min((1.5 * u - v for _, v, u in efficiency), default=None)
    if open_db is not None and open_db <= 0.0:
        return
    text = (
        "gain is as right as the reference: an error of its gain table, cable or place moves it alike, and nothing else in the run. "
        "No efficiency here could contradict it. A second reference or a device of known gain tells"
        if open_db is None
        else "gain and efficiency are as right as the reference: an error of its gain table, cable or place moves both alike, and nothing "
        f"else in the run. More than 100 % contradicts a reference that reads over {open_db:.1f} dB too low, nothing one that reads too "
        "high. A second reference or a device of known gain tells"
    )
    yield Finding("reference", NOTHING_DB, text)
