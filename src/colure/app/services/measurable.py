"""What a campaign asks for that its scan or its reference cannot give: said before anything is measured."""

from __future__ import annotations

from colure.errors import InputError
from colure.geometry.kinematics import Geometry
from colure.model.campaign import Campaign

#: Wishes that need a gain.
GAIN_WISHES = ("gain_dbi", "efficiency_db")
#: Entries of evaluation.toml that need a gain, and those that need the whole sphere.
GAIN_ENTRIES = ("coverage_percent", "transmit_power_dbm", "sensitivity_dbm", "sectors")
SPHERE_ENTRIES = ("coverage_percent", "horizon_bands_deg")
#: Entries that give less on part of a sphere, and what they still give.
LESS = {
    "transmit_power_dbm": ("total radiated power", "the EIRP"),
    "sensitivity_dbm": ("total isotropic sensitivity", "the EIS"),
}


def require_measurable(campaign: Campaign) -> None:
    """Raise `InputError` for figures that were asked for and that no such run can give; entry, value and limit are named."""
    goal, asked = campaign.goal, campaign.evaluation()
    wishes = [
        (table, name) for table, some in (("want", goal.want), ("until", goal.until)) if some for name in some.wishes
    ]
    faults = list[str]()
    if not campaign.chamber.reference.absolute:
        faults += [
            f"goal.toml: {table}.{name}: needs a reference: reference.method = 'none' in chamber.toml gives no gain (dB)"
            for table, name in wishes
            if name in GAIN_WISHES
        ]
        faults += [
            f"evaluation.toml: {name}: needs a reference: reference.method = 'none' in chamber.toml gives no gain (dB)"
            for name in GAIN_ENTRIES
            if getattr(asked, name)
        ]
    if goal.scan is None and goal.region_deg < 180.0:
        part = f"must be read on the whole sphere: region_deg = {goal.region_deg:g} in goal.toml must be 180 deg, or leave the entry out"
        faults += [f"evaluation.toml: {name}: {part}" for name in SPHERE_ENTRIES if getattr(asked, name)]
    if campaign.levels_alone:
        faults += _without_phase(campaign, wishes)
    if faults:
        raise InputError(faults)


def _without_phase(campaign: Campaign, wishes: list[tuple[str, str]]) -> list[str]:
    """Return what a receiver without phase cannot give."""
    from colure.planning.power_forecast import POWER_FORECASTS

    goal, geometry = campaign.goal, campaign.chamber.positioner.geometry
    receiver = f"analyzer.profile = {campaign.chamber.analyzer.profile!r} in chamber.toml is power-only"
    faults = [
        f"goal.toml: {table}.{name}: {receiver}: must be one of {', '.join(POWER_FORECASTS)}, or take an analyzer with phase"
        for table, name in wishes
        if name not in POWER_FORECASTS
    ]
    if goal.distance_steps is not None:
        faults.append(
            f"goal.toml: distance_steps: {receiver}: must be an analyzer with phase: both waves are told apart by it"
        )
    if goal.style == "fly":
        faults.append(f"goal.toml: style = 'fly': {receiver}: must be 'step': what reads power takes no pulses")
    joints = campaign.chamber.positioner.joints
    if goal.scan is None and (geometry is not Geometry.ROLL_OVER_AZIMUTH or joints):
        mount = "joints" if joints else geometry.value
        faults.append(
            f"chamber.toml: positioner.geometry: {mount}: {receiver}: must be roll-over-azimuth, whose rings the levels are read on, "
            "or take an analyzer with phase"
        )
    return faults


def without_figures(planned: Campaign) -> list[str]:
    """Return in plain words why levels alone of what was planned tell no figure; empty where they do."""
    from colure.planning.passes import polarization_scheme

    if not planned.levels_alone:
        return []
    ask_for = (
        "figures need a sphere, or a part of one around the boresight, in two polarizations, or a receiver with phase"
    )
    if planned.goal.scan is not None:
        return [f"levels of single directions without phase, no figures: {ask_for} (goal.toml: scan)"]
    if polarization_scheme(planned.goal, planned.chamber) == "one-pass":
        return [f"levels of one polarization without phase, no figures: {ask_for} (goal.toml: scheme)"]
    return []


def partly_measurable(campaign: Campaign) -> list[str]:
    """Return in plain words what part of a sphere leaves out of what evaluation.toml asks for."""
    goal, asked = campaign.goal, campaign.evaluation()
    if goal.scan is not None or goal.region_deg >= 180.0:
        return []
    return [
        f"{whole}: needs the whole sphere; region_deg = {goal.region_deg:g} gives {left} only (evaluation.toml: {name})"
        for name, (whole, left) in LESS.items()
        if getattr(asked, name) is not None
    ]
