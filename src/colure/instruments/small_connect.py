"""From an instrument of chamber.toml to its driver: sources, switches, contacts, device states and sensors."""

from __future__ import annotations

from pathlib import Path
from typing import Any, cast

from colure.instruments.links import Opener, VisaLink
from colure.instruments.plugins import GROUPS, is_driver, make_driver
from colure.instruments.protocols import ContactDriver, SensorDriver, SourceDriver, StateDriver, SwitchDriver
from colure.instruments.role_profiles import role_profile
from colure.instruments.small_instruments import WordsContact, WordsSensor, WordsSource, WordsStates, WordsSwitch
from colure.model.instrument import Instrument

MAKERS: dict[str, Any] = {
    "source": WordsSource, "switch": WordsSwitch, "interlock": WordsContact, "state": WordsStates, "sensor": WordsSensor,
}  # fmt: skip


def connect_small(instrument: Instrument, resource: str, folder: Path | None, *, opener: Opener = VisaLink) -> Any:
    """Open what a profile describes, or the driver of another package (`driver:NAME`).

    Raises
    ------
    InputError
        If the profile is none for this role.
    InstrumentError
        If it cannot be reached, or no package brings the driver.
    """
    if is_driver(instrument.words):
        return make_driver(
            GROUPS[instrument.role], instrument.words, resource, timeout_s=instrument.limit_s, folder=folder
        )
    profile = role_profile(instrument.words, folder, role=instrument.role)
    return MAKERS[instrument.role](resource, profile, timeout_s=instrument.limit_s, opener=opener)


def connect_source(instrument: Instrument, resource: str, folder: Path | None) -> SourceDriver:
    """Open a signal generator."""
    return cast(SourceDriver, connect_small(instrument, resource, folder))


def connect_switch(instrument: Instrument, resource: str, folder: Path | None) -> SwitchDriver:
    """Open a switch box."""
    return cast(SwitchDriver, connect_small(instrument, resource, folder))


def connect_contact(instrument: Instrument, resource: str, folder: Path | None) -> ContactDriver:
    """Open a contact."""
    return cast(ContactDriver, connect_small(instrument, resource, folder))


def connect_sensor(instrument: Instrument, resource: str, folder: Path | None) -> SensorDriver:
    """Open a sensor."""
    return cast(SensorDriver, connect_small(instrument, resource, folder))


def connect_state(instrument: Instrument, resource: str, folder: Path | None) -> StateDriver:
    """Open what puts the device into its states."""
    return cast(StateDriver, connect_small(instrument, resource, folder))
