"""A calibration of the range for later runs without a horn: made from a run's reference sweeps, kept as JSON with its day."""

from __future__ import annotations

from datetime import UTC, datetime
from pathlib import Path
from typing import Any

import numpy as np

from colure.app.services.processing import one_distance, opened
from colure.app.services.reference import reference_of
from colure.app.services.stored_calibration import COMPLEX, FORMAT, REAL
from colure.app.storage.folders import RunFolder, require_free
from colure.errors import InputError
from colure.model.campaign import Campaign
from colure.model.strict_json import json_text
from colure.model.whole import write_whole


def calibrate(campaign: Campaign, run: RunFolder, target: Path) -> dict[str, Any]:
    """Keep what a run's reference sweeps say of the range; refuses to overwrite.

    Raises
    ------
    InputError
        If the run read no horn, its record lacks sweeps, or the file is there already.
    """
    from colure.analysis.steps.cable import cable_flex, correct_cable, has_turns
    from colure.analysis.steps.drift import correct, declared_drift, track
    from colure.analysis.steps.gain import gain_transfer

    chamber = campaign.chamber
    if not chamber.reference.has_horn:
        raise InputError(
            [
                f"chamber.toml: reference.method = {chamber.reference.method!r}: must be 'switch' or 'swap' to calibrate the range"
            ]
        )
    require_free(target)
    record = one_distance(campaign, opened(run))
    try:
        steady = correct(record, track(record, declared=declared_drift(chamber)))
        if has_turns(record):
            steady = correct_cable(
                steady, cable_flex(record, passes=2 if chamber.cable is None else chamber.cable.passes)
            )
        transfer = gain_transfer(steady, chamber, reference_of(campaign, record["frequency"].values))
    except ValueError as error:
        raise InputError([str(error)]) from None
    begin = float(np.min(record["wall_time"].values))
    content = {
        "format": FORMAT,
        "run": run.path.name,
        "chamber": chamber.name,
        "calibrated_at": datetime.fromtimestamp(begin, UTC).isoformat(),
        "wall_time_s": begin,
        "range_length_m": chamber.range_length_m,
        "freedom": transfer.freedom,
        "frequency_hz": record["frequency"].values.tolist(),
        **{name: _pairs(getattr(transfer, name)) for name in COMPLEX},
        **{name: getattr(transfer, name).tolist() for name in REAL},
    }
    write_whole(target, json_text(content, indent=1))
    return content


def _pairs(values: Any) -> list[Any]:
    return [np.real(values).tolist(), np.imag(values).tolist()]
