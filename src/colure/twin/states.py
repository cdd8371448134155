"""The simulated device in one of its states: its beam steered, or every element as it answers its command."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import numpy as np

from colure.errors import InputError
from colure.geometry.conventions import ComplexArray
from colure.model.campaign import Campaign
from colure.model.chamber import SimulatedChamber
from colure.model.commands import Commands, commands_of
from colure.model.device import Device
from colure.twin.sources import Cluster

#: Which stream the errors of commands are drawn from.
STREAM = 24


def responses_of(truth: SimulatedChamber, device: Device, folder: Path | None) -> ComplexArray | None:
    """Return what every element radiates in every state over what it radiates as built (state, element).

    None where the states are no commands to elements.

    Raises
    ------
    InputError
        If the file of codes is not as it must be.
    """
    commands = commands_of(device, folder or Path())
    return None if commands is None else answered(commands, truth)


def answered(commands: Commands, truth: SimulatedChamber) -> ComplexArray:
    """Return commanded weights (state, element) with the errors that every element has at each of its commands, the same each time."""
    out = commands.weight.copy()
    for element, told in enumerate(commands.weight.T):
        for weight in np.unique(np.round(told[told != 0.0], 9)):
            # A command's error depends on nothing but seed, element and command: other states change nothing.
            key = np.abs(np.round([1e6 * weight.real, 1e6 * weight.imag])).astype(int)
            sign = int(weight.real < 0.0) + 2 * int(weight.imag < 0.0)
            level, phase = np.random.default_rng((truth.seed, STREAM, element, *key, sign)).normal(size=2)
            error = 10.0 ** (truth.command_error_db * level / 20.0) * np.exp(
                1j * np.deg2rad(truth.command_error_deg) * phase
            )
            out[np.abs(commands.weight[:, element] - weight) < 1e-8, element] *= error
    return np.asarray(out)


def told(device: Cluster, response: ComplexArray) -> Cluster:
    """Return an array whose elements answer with `response` (element,); what goes in is the same in every state.

    Raises
    ------
    InputError
        If the device has another number of sources than there are elements.
    """
    if device.weights.shape[1] != response.size:
        raise InputError(
            [
                f"device.toml: states.codes: {response.size} elements, the simulated device has {device.weights.shape[1]} "
                f"sources; one source an element is needed (elements)"
            ]
        )
    made = replace(device, weights=device.weights * response)
    # What is radiated is no longer what it was, and what goes in is: the field adds up from state to state.
    return replace(made, efficiency=device.efficiency * made.power() / device.power())


def steered(device: Cluster, angle: float) -> Cluster:
    """Return a device whose sources are phased to turn its beam by `angle` (radians) towards x."""
    shift = np.exp(-1j * device.k[:, None] * np.sin(angle) * device.position[None, :, 0])
    return replace(device, weights=device.weights * shift)


def in_state(device: Cluster, index: int | None, truth: SimulatedChamber, responses: ComplexArray | None) -> Cluster:
    """Return the device in one of its states; as built if there is no such state."""
    if index is None:
        return device
    if responses is not None:
        return told(device, responses[index]) if 0 <= index < len(responses) else device
    steers = truth.state_steer_deg
    return steered(device, float(np.deg2rad(steers[index]))) if 0 <= index < len(steers) else device


def responses_in(campaign: Campaign) -> ComplexArray | None:
    """Return what the elements of a campaign's simulated device answer in its states; None where states are no commands."""
    return responses_of(campaign.simulated(), campaign.device, campaign.folder)
