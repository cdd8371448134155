"""How much signal, how much noise, and what that does to a level in dB."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from colure.geometry.conventions import SPEED_OF_LIGHT, amplitude_db, power_db
from colure.model.bands import Segment
from colure.model.campaign import Campaign
from colure.planning.duration import segments

THERMAL_DBM_HZ = -173.975  # k T0 at 290 K, section 8 of the standards sheet (derived)


@dataclass(frozen=True, kw_only=True)
class LinkBudget:
    """Levels in dBm, ratios in dB, at the beam peak."""

    power_dbm: float
    if_bandwidth_hz: float
    path_loss_db: float
    received_dbm: float
    noise_dbm: float
    snr_peak_db: float
    snr_wanted_db: float
    noise_error_db: float
    frequency_hz: float


def free_space_loss_db(*, frequency_hz: float, distance_m: float) -> float:
    """Return 20 log10(4 pi d f / c) (H. T. Friis, Proc. IRE 34:254, 1946)."""
    return float(amplitude_db(4.0 * np.pi * distance_m * frequency_hz / SPEED_OF_LIGHT))


def noise_error_db(snr_db: float) -> float:
    """Return the standard deviation of a level in dB at a signal-to-noise ratio in dB.

    8.686 10^(-snr/20) / sqrt 2 (section 7 of the standards sheet, derived).
    """
    return float(20.0 / np.log(10.0) * 10.0 ** (-snr_db / 20.0) / np.sqrt(2.0))


def link_budget(
    *,
    frequency_hz: float,
    distance_m: float,
    power_dbm: float,
    device_gain_dbi: float,
    probe_gain_dbi: float,
    cable_loss_db: float,
    noise_figure_db: float,
    if_bandwidth_hz: float,
    wanted_level_db: float,
) -> LinkBudget:
    """Return received level, noise and signal-to-noise ratio at the peak and at a wanted level."""
    loss = free_space_loss_db(frequency_hz=frequency_hz, distance_m=distance_m)
    received = power_dbm + device_gain_dbi + probe_gain_dbi - loss - cable_loss_db
    noise = THERMAL_DBM_HZ + noise_figure_db + power_db(if_bandwidth_hz)
    snr = float(received - noise)
    return LinkBudget(
        power_dbm=power_dbm,
        if_bandwidth_hz=if_bandwidth_hz,
        path_loss_db=loss,
        received_dbm=received,
        noise_dbm=float(noise),
        snr_peak_db=snr,
        snr_wanted_db=snr + wanted_level_db,
        noise_error_db=noise_error_db(max(0.0, snr + wanted_level_db)),
        frequency_hz=frequency_hz,
    )


def segment_budgets(campaign: Campaign) -> list[tuple[Segment, LinkBudget]]:
    """Return every segment of a campaign's sweep with its link budget at its highest frequency; averaging narrows the bandwidth."""
    goal, chamber, analyzer = campaign.goal, campaign.chamber, campaign.chamber.analyzer
    return [
        (
            one,
            link_budget(
                frequency_hz=one.stop_hz,
                distance_m=chamber.range_length_m,
                power_dbm=campaign.device.power_dbm(one.power_dbm),
                device_gain_dbi=campaign.device.expected_gain_dbi,
                probe_gain_dbi=chamber.probe.gain_dbi,
                cable_loss_db=analyzer.cable_loss_db,
                noise_figure_db=analyzer.noise_figure_db,
                if_bandwidth_hz=one.if_bandwidth_hz / analyzer.averages,
                wanted_level_db=goal.wanted_level_db,
            ),
        )
        for one in segments(goal, analyzer)
    ]


def campaign_budget(campaign: Campaign) -> LinkBudget:
    """Return the link budget of a campaign at the highest frequency of the segment whose signal-to-noise ratio is lowest."""
    return min((level for _, level in segment_budgets(campaign)), key=lambda level: level.snr_peak_db)
