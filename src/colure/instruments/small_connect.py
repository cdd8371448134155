"""From an instrument of chamber.toml to its driver: sources, switches, contacts, device states and sensors."""

from __future__ import annotations

from functools import partial
from pathlib import Path
from typing import Any, cast

from colure.errors import InstrumentError
from colure.instruments.links import Opener, VisaLink
from colure.instruments.modbus import ModbusContact, ModbusContactProfile, ModbusSensor, ModbusSensorProfile
from colure.instruments.plugins import GROUPS, is_driver, make_driver
from colure.instruments.protocols import ContactDriver, SensorDriver, SourceDriver, StateDriver, SwitchDriver
from colure.instruments.role_profiles import SensorProfile, role_profile
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
    if isinstance(profile, ModbusContactProfile):
        return ModbusContact(resource, profile, timeout_s=instrument.limit_s)
    if isinstance(profile, ModbusSensorProfile):
        return ModbusSensor(resource, profile, timeout_s=instrument.limit_s)
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
    """Open a sensor; one that does not answer is tried again at every reading, as long as its words tell what it reads."""
    try:
        return cast(SensorDriver, connect_small(instrument, resource, folder))
    except InstrumentError:
        if is_driver(instrument.words):
            raise
        return AbsentSensor(instrument, resource, folder)


class AbsentSensor:
    """A sensor that could not be opened yet; see `SensorDriver`."""

    def __init__(self, instrument: Instrument, resource: str, folder: Path | None) -> None:
        profile = role_profile(instrument.words, folder, role=instrument.role)
        assert isinstance(profile, SensorProfile | ModbusSensorProfile)  # the role guarantees it
        self.quantities = tuple(profile.quantities)
        self._open = partial(connect_small, instrument, resource, folder)
        self._driver: SensorDriver | None = None

    def _there(self) -> SensorDriver:
        if self._driver is None:
            self._driver = cast(SensorDriver, self._open())
        return self._driver

    def identity(self) -> str:
        """Return who answers."""
        return self._there().identity()

    def read(self) -> dict[str, float]:
        """Return every quantity; raises `InstrumentError` while it is away."""
        return self._there().read()

    def reconnect(self) -> None:
        """Open the line anew."""
        self._there().reconnect()

    def close(self) -> None:
        """Close the line."""
        if self._driver is not None:
            self._driver.close()


def connect_state(instrument: Instrument, resource: str, folder: Path | None) -> StateDriver:
    """Open what puts the device into its states."""
    return cast(StateDriver, connect_small(instrument, resource, folder))
