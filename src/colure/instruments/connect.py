"""From the names in chamber.toml and device.toml to drivers."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path
from typing import cast

from colure.instruments.device_states import CommandStates, ProgramStates
from colure.instruments.epics_axes import EpicsAxes, EpicsProfile
from colure.instruments.gcode_axes import GcodeAxes
from colure.instruments.line_axes import LineAxes
from colure.instruments.line_profile import LineProfile
from colure.instruments.links import Opener, VisaLink
from colure.instruments.plugins import is_driver, make_driver
from colure.instruments.profile import PowerProfile, analyzer_profile, axes_profile, profile_path
from colure.instruments.protocols import AnalyzerDriver, AxesDriver, StateDriver, Timer
from colure.instruments.scpi_analyzer import ScpiAnalyzer
from colure.instruments.scpi_power import ScpiPowerReceiver
from colure.instruments.wires import WireOpener, open_wire
from colure.model.chamber import Analyzer, Axis, AxisController
from colure.model.device import States
from colure.model.joints import letters_of
from colure.model.loading import load, read_toml


def connect_analyzer(
    table: Analyzer, resource: str, folder: Path | None, *, opener: Opener = VisaLink
) -> AnalyzerDriver:
    """Open the receiver that a profile describes, or the driver of another package (`driver:NAME`)."""
    if is_driver(table.profile):
        made = make_driver("colure.receivers", table.profile, resource, timeout_s=table.timeout_s, folder=folder)
        return cast(AnalyzerDriver, made)
    profile = analyzer_profile(table.profile, folder)
    if isinstance(profile, PowerProfile):
        return ScpiPowerReceiver(resource, profile, timeout_s=table.timeout_s, opener=opener)
    return ScpiAnalyzer(resource, profile, timeout_s=table.timeout_s, opener=opener)


def connect_axes(
    table: AxisController,
    resource: str,
    axes: Mapping[str, Axis],
    folder: Path | None,
    *,
    timer: Timer,
    opener: Opener = VisaLink,
    wires: WireOpener = open_wire,
) -> AxesDriver:
    """Open the axis controller that a profile describes, or the driver of another package (`driver:NAME`)."""
    if is_driver(table.profile):
        options = {"timeout_s": table.timeout_s, "timer": timer, "folder": folder}
        return cast(AxesDriver, make_driver("colure.axes", table.profile, resource, axes, **options))
    if read_toml(profile_path(table.profile, folder)).get("kind") == "epics-motors":
        motors = load(EpicsProfile, profile_path(table.profile, folder))
        return EpicsAxes(resource, motors, axes, timeout_s=table.timeout_s, timer=timer)
    profile = axes_profile(table.profile, folder)
    if isinstance(profile, LineProfile):
        return LineAxes(resource, profile, axes, timeout_s=table.timeout_s, timer=timer, opener=wires)
    profile = profile.model_copy(update={"letters": {**profile.letters, **letters_of(axes)}})
    return GcodeAxes(resource, profile, tuple(axes), timeout_s=table.timeout_s, opener=opener)


def connect_states(states: States | None, folder: Path, *, opener: Opener = VisaLink) -> StateDriver | None:
    """Open whatever sets the device's states; None if it has none."""
    if states is None:
        return None
    return CommandStates(states, opener=opener) if states.resource is not None else ProgramStates(states, folder)
