"""The truth of a campaign's simulated device, under the conditions that its files ask for."""

from __future__ import annotations

import numpy as np

from colure.errors import InputError
from colure.geometry.conventions import FloatArray
from colure.model.campaign import Campaign
from colure.model.evaluation import Evaluation
from colure.twin.devices import maker_of, true_reflection
from colure.twin.states import in_state, responses_in
from colure.twin.truth import TrueFigure, TruthSettings, truth_of


def campaign_truth(campaign: Campaign, *, state: str | None = None) -> list[dict[str, TrueFigure]]:
    """Return every true figure of a campaign's simulated device, by name, one dictionary per frequency.

    Parameters
    ----------
    state
        Name of the device's state; the first if it has several, the device as it is built if it has none.

    Raises
    ------
    InputError
        If there is no such state, or a file of the device is not as it must be.
    """
    names = () if campaign.device.states is None else campaign.device.states.names
    if state is not None and state not in names:
        raise InputError([f"state = {state!r}: must be one of {', '.join(names) or 'none, the device has one'}"])
    device = maker_of(campaign)(campaign.goal.frequency_hz)
    if names:
        index = names.index(state) if state is not None else 0
        device = in_state(device, index, campaign.simulated(), responses_in(campaign))
    name = state if state is not None else names[0] if names else "beam"
    return truth_of(device, asked_of(campaign, campaign.evaluation(), state=name))


def asked_of(campaign: Campaign, settings: Evaluation, *, state: str = "beam") -> TruthSettings:
    """Return what a campaign's figures depend on besides the device: declared polarization, region, scheme, settings."""
    return TruthSettings(
        slant_deg=campaign.device.slant_deg if campaign.goal.co_polar_deg is None else campaign.goal.co_polar_deg,
        settings=settings,
        region_deg=campaign.goal.region_deg,
        one_polarization=campaign.goal.scheme == "one-pass",
        state=state,
        mismatch_loss_db=_mismatch_loss_db(campaign),
        hands=campaign.device.polarization != "linear",
    )


def device_truth(campaign: Campaign) -> list[dict[str, float]]:
    """Return the values of `campaign_truth` alone, nan where there is none."""
    return [{name: one.value for name, one in row.items()} for row in campaign_truth(campaign)]


def _mismatch_loss_db(campaign: Campaign) -> FloatArray | None:
    """Return (frequency,) what the simulated device's reflection costs; None where it is neither told nor measured."""
    device = campaign.simulated().device
    if device is None or device.reflection_db is None:
        return np.zeros(campaign.goal.frequency_hz.size) if campaign.goal.reflection else None
    back = np.abs(true_reflection(device, campaign.goal.frequency_hz)) ** 2
    return np.asarray(-10.0 * np.log10(1.0 - back))
