"""The states of the simulated device, a part of twin.toml: where each steers its beam, or how elements miss their commands."""

from __future__ import annotations

from typing import Annotated

from pydantic import Field

from colure.model.loading import Section, number


class TrueStates(Section):
    """The truth of the simulated device's states, a part of twin.toml.

    state_steer_deg
        Azimuth of the beam in each device state; not for states whose elements have commands (`states.codes` of device.toml).
    command_error_db, command_error_deg
        Rms by which an element of the simulated array misses a command in level and phase: an error of its own for every element
        and command, the same each time.
    """

    state_steer_deg: tuple[Annotated[float, Field(ge=-89, le=89)], ...] = ()
    command_error_db: float = number("dB", 0, 6, 0.0)
    command_error_deg: float = number("deg", 0, 45, 0.0)
