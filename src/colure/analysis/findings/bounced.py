"""What distance steps say: how much bounced between probe and antenna, and whether the steps were made as planned."""

from __future__ import annotations

import numpy as np

from colure.analysis.findings.finding import Finding
from colure.analysis.steps.agreement import level_db
from colure.analysis.steps.distance_steps import Bounce
from colure.geometry.conventions import amplitude_from_db
from colure.model.chamber import Chamber

#: Phase that the path may have moved between two distances beyond the step, deg: an eighth of a wavelength the wrong way is 90.
STRANGE_DEG = 45.0


def distance_findings(bounce: Bounce | None, chamber: Chamber) -> list[Finding]:
    """Return how much of a bounce was found and removed, and what contradicts the steps; nothing where there was one distance."""
    if bounce is None:
        return []
    declared_db = chamber.standing_wave_db
    count, listed = len(bounce.steps_mm), ", ".join(f"{one:.4g}" for one in bounce.steps_mm)
    device, most, left = level_db(bounce.rms), level_db(bounce.strongest), level_db(bounce.residual(declared_db))
    text = (
        f"from {count} distances ({listed} mm): {device:.1f} dB rms of the direct wave bounced between probe and device, below "
        f"{most:.1f} dB in 19 of 20 strong directions. It was removed; at most {left:.0f} dB remain, as the budget's row says. "
        "What all directions have in common is not in this level"
    )
    out = [Finding("standing wave", level_db(bounce.rms), text)]
    if not np.isnan(bounce.reference):
        horn = f"{level_db(bounce.reference):.1f} dB of the direct wave bounced between probe and reference; it was removed"
        out.append(Finding("standing wave", level_db(bounce.reference), horn))
    if bounce.dropped:
        extra = f"{bounce.dropped} extra boresight checks were left out: they were not read at every distance"
        out.append(Finding("standing wave", level_db(bounce.left), extra))
    if abs(bounce.path_deg) > STRANGE_DEG:
        strange = (
            f"between two distances the path changed by {bounce.path_deg:+.0f} deg and {bounce.path_db:+.2f} dB beyond the planned step: look "
            f"whether probe or positioner was moved as far as asked and the right way, and at the cable that was moved with it"
        )
        out.append(Finding("standing wave", level_db(bounce.strongest), strange, "look"))
    if declared_db is not None and bounce.strongest > amplitude_from_db(declared_db):
        more = (
            f"the bounce is stronger ({level_db(bounce.strongest):.1f} dB) than standing_wave_db = {declared_db:g} dB in "
            "chamber.toml: runs at one distance state too small an interval"
        )
        out.append(Finding("standing wave", level_db(bounce.strongest), more, "look"))
    return out
