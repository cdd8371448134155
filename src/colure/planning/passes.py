"""Polarization passes: how many a goal needs, and with which offsets."""

from __future__ import annotations

import numpy as np

from colure.errors import InputError
from colure.geometry.kinematics import Geometry
from colure.geometry.polarization import noise_factor
from colure.model.chamber import Chamber
from colure.model.device import Device
from colure.model.goal import Goal
from colure.model.scan import angles_of

#: Passes whose offsets raise the noise of the vector more than this (10 deg apart) do not give one.
MOST_NOISE = 6.0


def polarization_scheme(goal: Goal, chamber: Chamber) -> str:
    """Return `two-pass`, `dual-port` or `one-pass`, resolving `auto`."""
    if goal.scheme != "auto":
        return goal.scheme
    return "dual-port" if chamber.probe.ports == 2 else "two-pass"


def pass_offsets(goal: Goal, chamber: Chamber, device: Device) -> tuple[float, ...]:
    """Return the polarization offset of every pass, degrees.

    Raises
    ------
    InputError
        If the offsets do not suit the scheme or give no full vector; the entry is named.
    """
    scheme = polarization_scheme(goal, chamber)
    default = {"two-pass": (0.0, 90.0), "dual-port": (0.0,), "one-pass": (device.slant_deg,)}[scheme]
    if scheme == "one-pass" and goal.probe == "fixed" and chamber.positioner.geometry is Geometry.ROLL_OVER_AZIMUTH:
        raise InputError(
            [
                "goal.toml: probe = 'fixed': must be 'follows' in one pass: a fixed probe sees no one polarization of the device"
            ]
        )
    if goal.offset_deg is None:
        return default
    given = tuple(float(x) for x in angles_of(goal.offset_deg))
    if scheme == "two-pass":
        given = (given[0], given[0] + 90.0) if len(given) == 1 else given
        if noise_factor(np.deg2rad(given)) > MOST_NOISE:
            raise InputError(
                [
                    f"goal.toml: offset_deg = {list(given)}: two of them must differ by at least 10 deg, and not by half a turn (deg)"
                ]
            )
    elif len(given) != 1:
        raise InputError([f"goal.toml: offset_deg = {list(given)}: must be one angle with scheme = '{scheme}' (deg)"])
    elif scheme == "dual-port" and chamber.probe.roll is None and given[0] != 0.0:
        raise InputError([f"goal.toml: offset_deg = {given[0]:g}: must be 0 deg without chamber.toml probe.roll"])
    return given
