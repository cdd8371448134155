"""Whether the slices agree about the boresight, which every one of them sees, and which axis is at fault if they do not.

The roll, and the probe's roll that follows it, are the easiest to set up the wrong way. Nothing else shows it: the data are clean,
and gain is off by a decibel or two.
"""

from __future__ import annotations

from collections.abc import Iterable
from typing import TYPE_CHECKING

import numpy as np

from colure.analysis.findings.finding import Finding
from colure.analysis.findings.slice_numbers import as_ranges, slices_through
from colure.analysis.steps.agreement import BoresightAgreement, level_db
from colure.model.figure import NOT_TO_BE_USED

if TYPE_CHECKING:
    from colure.analysis.pipeline.recipe import Processed
    from colure.model.chamber import Chamber

#: Slices that disagree by more than this wait for a person; or by this much more than declared echoes, or noise, make them, dB.
LOOK_DB, ABOVE_ECHOES_DB, ABOVE_NOISE_DB = -20.0, 10.0, 6.0


def disagreement(processed: Processed, chamber: Chamber) -> BoresightAgreement | None:
    """Return how the slices disagree about the boresight, if they do so by more than room and noise make them."""
    agreement = processed.boresight
    return None if agreement is None or agreement.spread_db <= _limit_db(processed, chamber) else agreement


def slice_findings(processed: Processed, chamber: Chamber) -> list[Finding]:
    """Return what the slices say of each other at the boresight."""
    if processed.boresight is None:
        return []
    spread = processed.boresight.spread_db
    bad = disagreement(processed, chamber)
    if bad is None:
        text = f"every slice saw the boresight; the readings differ by {spread:.1f} dB rms relative to the peak"
        return [Finding("pole", spread, text)]
    if bad.turned or bad.apart_deg:
        places = [(0.0, roll) for roll in bad.apart_deg]
        slices = slices_through(processed.budget.sweeps.record, chamber, places)
        return [Finding("pole", spread, _accused(bad, slices), NOT_TO_BE_USED)]
    text = (
        f"every slice saw the boresight; the readings differ by {spread:.1f} dB rms relative to the peak. No sense of a roll explains it: "
        "look at the cable, the reference points and the device's mount"
    )
    return [Finding("pole", spread, text, "look")]


def _accused(bad: BoresightAgreement, slices: Iterable[int]) -> str:
    spread, left = bad.spread_db, bad.left_db
    if bad.turned == "reversed":
        return (
            f"the slices disagree about the boresight by {spread:.1f} dB relative to the peak, and by {left:.1f} dB if the roll or the probe's "
            "roll turns the other way, or one of two ports has the other sign. Jog both rolls by a degree, correct the sense, and "
            "measure again"
        )
    if bad.turned == "probe still":
        return (
            f"the slices disagree about the boresight by {spread:.1f} dB relative to the peak, and by {left:.1f} dB if the probe's roll stood "
            "still while it was to follow. Look at its motor and its word, and measure again"
        )
    if bad.turned == "roll still":
        return (
            f"the slices disagree about the boresight by {spread:.1f} dB relative to the peak, and by {left:.1f} dB if the roll stood still, or "
            "the probe's roll turned twice as far. Look at their motors and counts, and measure again"
        )
    if bad.turned == "one still":
        return (
            f"the slices disagree about the boresight by {spread:.1f} dB relative to the peak, and by {left:.1f} dB if the roll or the probe's roll "
            "stood still while the other one turned. Look at their motors, couplings and words, and measure again"
        )
    rolls = ", ".join(f"{one:g}" for one in bad.apart_deg)
    return (
        f"the slices disagree about the boresight by {spread:.1f} dB relative to the peak, and by {left:.1f} dB without those at {rolls} deg: "
        f"sweeps there went wrong. Look at connectors and cable, then measure these slices again: colure acquire --again {as_ranges(slices)}"
    )


def _limit_db(processed: Processed, chamber: Chamber) -> float:
    peak = float(np.abs(processed.sphere.field).max())
    noise_db = level_db(float(np.max(processed.budget.noise_sigma)) / peak)
    return max(LOOK_DB, chamber.echo_level_db + ABOVE_ECHOES_DB, noise_db + ABOVE_NOISE_DB)
