"""How uncertain the figures of a receiver without phase will be, as far as chamber, device and grid declare it.

Levels are read where they were sampled: no transform averages noise, keeps echoes out or takes the distance out. What lies between
the samples shows only in the levels themselves (half of them against all); it adds to what is said here.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Final

import numpy as np

from colure.geometry.directions import from_azimuth_over_elevation
from colure.model.campaign import Campaign
from colure.model.chamber import facing_backwards
from colure.planning.forecast import DB, FieldErrors, Forecast, Plane, inphase, planes, shown, summed

#: The peak lies between samples: so much of their step is open at least, as the evaluation counts it.
OPEN_SHARE: Final = 0.1


@dataclass(frozen=True, kw_only=True)
class ExpectedLevels:
    """What these forecasts are made from: the campaign, its field errors, whether the sphere is whole, the step between samples."""

    campaign: Campaign
    errors: FieldErrors
    whole: bool
    step_deg: float


def power_forecast(campaign: Campaign, errors: FieldErrors, *, whole: bool, step_deg: float) -> dict[str, Forecast]:
    """Return the forecast of every figure that levels alone give."""
    known = ExpectedLevels(campaign=campaign, errors=errors, whole=whole, step_deg=step_deg)
    return summed({key: one(known) for key, one in POWER_FORECASTS.items()})


def _levels(known: ExpectedLevels) -> dict[str, float]:
    """Return what a ratio of levels is made of: directivity is the peak over the mean of all."""
    errors, device, chamber = known.errors, known.campaign.device, known.campaign.chamber
    top_hz = float(known.campaign.goal.frequency_hz[-1])
    return {
        "noise": DB * inphase(errors.once),
        "drift residual": DB * inphase(errors.drift),
        "range echoes": 2.0 * DB * errors.echoes,
        "finite distance": device.nearness_db(range_length_m=chamber.range_length_m, frequency_hz=top_hz),
        "probe pattern": device.probe_open_db(
            range_length_m=chamber.range_length_m,
            probe_gain_dbi=chamber.probe.gain_dbi,
            pattern_db=None if chamber.probe.pattern is None else chamber.probe.pattern_uncertainty_db,
        ),
    }


def _whole_levels(known: ExpectedLevels) -> dict[str, float] | None:
    return _levels(known) if known.whole else None


def _gain(known: ExpectedLevels) -> dict[str, float] | None:
    reference = known.campaign.chamber.reference
    return {**_levels(known), "reference gain": reference.gain_uncertainty_db} if reference.absolute else None


def _efficiency(known: ExpectedLevels) -> dict[str, float] | None:
    return _gain(known) if known.whole else None


def _pointing(known: ExpectedLevels, plane: Plane) -> dict[str, float]:
    tolerance = known.campaign.chamber.alignment
    # The gradient of an error that is white over waves up to N is N/2 per radian.
    echoes = 0.5 * known.errors.order / plane.curvature * inphase(known.errors.echoes)
    return {
        "range echoes": float(np.rad2deg(echoes)),
        "alignment": float(np.hypot(tolerance.device_pose_deg, tolerance.theta_zero_deg)),
        "sampling and truncation": OPEN_SHARE * known.step_deg,
    }


def _front_to_back(known: ExpectedLevels) -> dict[str, float] | None:
    if not known.whole:
        return None
    device, distance = known.campaign.device, known.campaign.chamber.range_length_m
    weak = 10.0 ** (-device.expected_front_to_back_db / 20.0)
    # A back that is farther from the probe than the beam is raised to where the beam is heard; echoes are raised with it.
    place = 1e-3 * np.asarray(device.offset_mm, float)
    azimuth, elevation = (float(np.deg2rad(one)) for one in device.beam_deg)
    ahead = float(place @ from_azimuth_over_elevation(azimuth=azimuth, elevation=elevation))
    across = float(np.sqrt(np.maximum(ahead**2 + distance**2 - place @ place, 0.0)))
    raised = max(1.0, (across + ahead) / max(across - ahead, 1e-3))
    return {"range echoes": shown(weak, 2.0 * raised * facing_backwards(device.expected_gain) * known.errors.echoes)}


#: By the key of a figure's definition, as `colure.planning.forecast.FORECASTS`.
POWER_FORECASTS: Final[dict[str, Callable[[ExpectedLevels], dict[str, float] | None]]] = {
    "gain_dbi": _gain,
    "directivity_dbi": _whole_levels,
    "efficiency_db": _efficiency,
    "beam_azimuth_deg": lambda known: _pointing(known, planes(known.campaign)[0]),
    "beam_elevation_deg": lambda known: _pointing(known, planes(known.campaign)[1]),
    "front_to_back_db": _front_to_back,
}
