"""A calibration of the range from an earlier run: read from its JSON, refused when it does not fit or has expired."""

from __future__ import annotations

import time
from typing import TYPE_CHECKING, Any

import numpy as np

from colure.errors import InputError
from colure.geometry.conventions import FloatArray
from colure.model.admission import read_json
from colure.model.campaign import Campaign

if TYPE_CHECKING:
    from colure.analysis.steps.gain import GainTransfer

FORMAT = "colure range calibration 1"
#: Frequencies of a calibration and of a run are the same within so many hertz.
SAME_HZ = 1e3
#: Fields of the factors, as pairs of real and imaginary parts, and as real numbers.
COMPLEX = ("factor", "response", "leak")
REAL = ("reference_gain_dbi", "noise", "expanded")


def _content(campaign: Campaign) -> dict[str, Any]:
    name = campaign.chamber.reference.calibration
    assert name is not None  # the model requires it
    path = campaign.folder / name
    try:
        content = read_json(path)
        told = content["format"]
    except (OSError, ValueError, KeyError, TypeError) as error:
        raise InputError(
            [f"{name}: cannot be read as a calibration of the range: {error} (reference.calibration)"]
        ) from None
    if told != FORMAT:
        raise InputError([f"{name}: format = {told!r}: must be {FORMAT!r} (reference.calibration)"])
    return dict(content)


def read_calibration(campaign: Campaign, frequency_hz: FloatArray) -> tuple[GainTransfer, float]:
    """Return the stored factors at the frequencies wanted, and when they were measured (seconds since 1970, UTC).

    Raises
    ------
    InputError
        If the file cannot be read, is of another range length, or lacks one of the frequencies.
    """
    from colure.analysis.steps.gain import GainTransfer

    name, content = campaign.chamber.reference.calibration, _content(campaign)
    try:
        known = np.asarray(content["frequency_hz"], float)
        arrays = {one: np.asarray(content[one][0]) + 1j * np.asarray(content[one][1]) for one in COMPLEX}
        arrays |= {one: np.asarray(content[one], float) for one in REAL}
        at_s, length, freedom = (float(content[one]) for one in ("wall_time_s", "range_length_m", "freedom"))
    except (KeyError, TypeError, ValueError, IndexError) as error:
        raise InputError([f"{name}: field missing or malformed: {error} (reference.calibration)"]) from None
    if abs(length - campaign.chamber.range_length_m) > 1e-9:
        raise InputError(
            [f"{name}: range_length_m = {length:g}: must be {campaign.chamber.range_length_m:g} m as in chamber.toml"]
        )
    rows = np.argmin(np.abs(known[None, :] - np.asarray(frequency_hz)[:, None]), axis=1)
    apart = np.abs(known[rows] - frequency_hz)
    if np.any(apart > SAME_HZ):
        missing = float(np.asarray(frequency_hz)[int(np.argmax(apart))])
        raise InputError(
            [f"{name}: holds no {missing / 1e9:.6f} GHz: must hold every frequency of the run, {known[0] / 1e9:g} to "
             f"{known[-1] / 1e9:g} GHz at {known.size} points are there; calibrate at the run's frequencies"]
        )  # fmt: skip
    return GainTransfer(freedom=freedom, **{one: values[rows] for one, values in arrays.items()}), at_s


def require_valid(campaign: Campaign, now_s: float | None = None) -> None:
    """Raise `InputError` if a stored calibration has expired before a run begins."""
    reference = campaign.chamber.reference
    if reference.method != "stored":
        return
    age = ((time.time() if now_s is None else now_s) - float(_content(campaign)["wall_time_s"])) / 86400.0
    if age > reference.valid_days:
        raise InputError(
            [f"{reference.calibration}: {age:.1f} days old: must be at most {reference.valid_days:g} days (reference.valid_days); "
             "calibrate the range again: a run with method = 'switch' or 'swap', then colure calibrate"]
        )  # fmt: skip
