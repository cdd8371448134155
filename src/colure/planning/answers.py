"""Plain answers to goals that cannot be met: what is missing, and by how much."""

from __future__ import annotations

from colure.errors import InputError
from colure.geometry.conventions import wavenumber
from colure.model.campaign import Campaign
from colure.planning.choose import Proposal
from colure.planning.duration import segments
from colure.planning.exposure import Exposure, assess_exposure
from colure.planning.frequency_grid import gate_verdict
from colure.planning.reach import TRANSFORM, Reach, assess
from colure.planning.sampling import order_of_step, step_for
from colure.planning.scan import SURROUNDINGS

#: Signal-to-noise at the wanted level below which that level is not measured, dB (common practice, no source).
LEAST_SNR_DB = 10.0


def range_of(campaign: Campaign, order: int) -> Reach:
    """Judge a campaign's range length at its highest frequency."""
    return assess(
        range_length_m=campaign.chamber.range_length_m,
        reach_m=campaign.device.reach_m,
        largest_m=campaign.device.largest_dimension_m,
        frequency_hz=float(campaign.goal.frequency_hz[-1]),
        probe_gain_dbi=campaign.chamber.probe.gain_dbi,
        wanted_level_db=campaign.goal.wanted_level_db,
        order=order,
    )


def exposure_of(campaign: Campaign) -> Exposure:
    """Return the exposure at a campaign's door."""
    return assess_exposure(
        power_dbm=campaign.device.power_dbm(
            max(one.power_dbm for one in segments(campaign.goal, campaign.chamber.analyzer))
        ),
        gain_dbi=campaign.device.expected_gain_dbi,
        distance_m=campaign.chamber.door_distance_m,
        frequency_hz=float(campaign.goal.frequency_hz[-1]),
    )


def require_possible(best: Proposal) -> None:
    """Raise `InputError` for what no processing can make good: a gate without a band, a probe too near."""
    campaign = best.campaign
    goal, chamber = campaign.goal, campaign.chamber
    faults = []
    if goal.gate:
        verdict = gate_verdict(goal.frequency_hz, chamber.echo_excess_m)
        if verdict != "gating possible":
            faults.append(f"goal.toml: gate = true: {verdict}")
    reach = range_of(campaign, best.order)
    if chamber.range_length_m < reach.nearest_m:
        faults.append(
            f"chamber.toml: range_length_m = {chamber.range_length_m:g}: must be at least {reach.nearest_m:.3g} m for "
            f"waves of order {best.order}; {reach.nearest_m - chamber.range_length_m:.3g} m are missing"
        )
    if faults:
        raise InputError(faults)


def shortfalls(best: Proposal) -> list[str]:
    """Return in words what the plan will not give although it was wanted; it can still be measured."""
    out = []
    level, goal, analyzer = best.level, best.campaign.goal, best.campaign.chamber.analyzer
    missing = LEAST_SNR_DB - level.snr_wanted_db
    if missing > 0.0:
        narrower = analyzer.if_bandwidth_hz / 10.0 ** (missing / 10.0)
        out.append(
            f"level: {goal.wanted_level_db:g} dB below the peak lies {level.snr_wanted_db:.1f} dB above the noise, "
            f"{LEAST_SNR_DB:g} dB are needed: {missing:.1f} dB are missing; {missing:.1f} dB more power, or a bandwidth of "
            f"{narrower:.3g} Hz instead of {analyzer.if_bandwidth_hz:g} Hz"
        )
    echoes = best.campaign.chamber.echo_level_db - goal.wanted_level_db
    if echoes > 0.0:
        out.append(
            f"echoes: the chamber's stray signals ({best.campaign.chamber.echo_level_db:g} dB) are {echoes:.1f} dB above "
            f"the wanted level of {goal.wanted_level_db:g} dB"
        )
    reach = range_of(best.campaign, best.order)
    if goal.scheme == "one-pass" and reach.verdict == TRANSFORM:
        far = max(reach.far_field_m, reach.side_lobe_m)
        out.append(
            f"range: one polarization cannot be transformed, and {best.campaign.chamber.range_length_m:g} m is too near for a "
            f"direct pattern: {far - best.campaign.chamber.range_length_m:.3g} m are missing"
        )
    finest = best.order + SURROUNDINGS
    if goal.pulse_each == "frequency" and order_of_step(best.grid.swept_step_deg) < finest:
        out.append(
            f"pulses: frequencies are read up to {best.grid.swept_step_deg:g} deg from their places, and what lies between is resolved to "
            f"order {order_of_step(best.grid.swept_step_deg)}; {finest} are needed: swept_step_deg of at most {step_for(finest):g} deg"
        )
    blind = best.campaign.chamber.positioner.bracket_half_angle_deg
    if blind > 0.0 and goal.region_deg > 180.0 - blind:
        out.append(
            f"blockage: what holds the device hides everything beyond {180.0 - blind:g} deg; "
            f"{goal.region_deg - 180.0 + blind:g} deg of the region are missing"
        )
    k = float(wavenumber(float(goal.frequency_hz[0])))
    if k * best.campaign.device.reach_m < 1.0:
        out.append("size: the device is smaller than a sixth of a wavelength; its pattern is a dipole's or a loop's")
    return out
