"""Contacts and sensors behind Modbus (application protocol 1.1b3): coils, discrete inputs and registers, over TCP or serial.

The packages of the extra `modbus` are needed. Addresses count from 0, as on the wire.
"""

from __future__ import annotations

import math
import re
import threading
from typing import Any, Literal

import numpy as np
from pydantic import Field, field_validator

from colure.errors import InstrumentError
from colure.instruments.links import LineEnds
from colure.instruments.protocols import LostError
from colure.instruments.resources import serial_port
from colure.instruments.sensors import require_unit_names
from colure.instruments.wires import PARITIES
from colure.model.loading import Section

#: The port that the standard gives to Modbus over TCP.
PORT = 502
BITS = {"coil": "read_coils", "discrete-input": "read_discrete_inputs"}
REGISTERS = {"holding-register": "read_holding_registers", "input-register": "read_input_registers"}
#: Registers of 16 bits, and how numpy reads them, by type of number.
TYPES = {"int16": (1, ">i2"), "uint16": (1, ">u2"), "int32": (2, ">i4"), "uint32": (2, ">u4"), "float32": (2, ">f4"),
         "float64": (4, ">f8")}  # fmt: skip


class SerialTable(Section):
    """Settings of a serial line; they do not matter over TCP."""

    baud_rate: int = Field(default=19200, ge=300, le=4_000_000)
    parity: Literal["none", "even", "odd"] = "even"
    stop_bits: Literal[1, 2] = 1

    @property
    def ends(self) -> LineEnds:
        """The settings as the lines know them."""
        return LineEnds(baud_rate=self.baud_rate, parity=self.parity, stop_bits=self.stop_bits)


class ModbusProfile(Section):
    """What both kinds share.

    unit
        Address of the device behind the line.
    """

    foreign_words = True

    kind: str
    line: SerialTable = SerialTable()
    unit: int = Field(default=1, ge=0, le=247)


class ModbusContactProfile(ModbusProfile):
    """One bit that says whether a contact is closed.

    read, address
        Kind of the bit, and its address.
    closed
        Value of the bit while the contact is closed. A chain whose broken wire reads 0 is safe only with 1.
    """

    kind: Literal["modbus-contact"]
    read: Literal["coil", "discrete-input"] = "discrete-input"
    address: int = Field(ge=0, le=65535)
    closed: Literal[0, 1] = 1


class ModbusQuantity(Section):
    """One quantity in one or several registers.

    type
        Type of the number; the word of the highest order comes first unless `low_word_first`.
    scale, offset
        The value is scale times the number plus offset.
    least, most
        A value outside is no reading.
    """

    read: Literal["holding-register", "input-register"] = "input-register"
    address: int = Field(ge=0, le=65535)
    type: Literal["int16", "uint16", "int32", "uint32", "float32", "float64"] = "int16"
    low_word_first: bool = False
    scale: float = 1.0
    offset: float = 0.0
    least: float = -1e9
    most: float = 1e9


class ModbusSensorProfile(ModbusProfile):
    """Registers of a sensor by quantity, the unit at the end of its name: `temperature_c`."""

    kind: Literal["modbus-sensor"]
    quantities: dict[str, ModbusQuantity] = Field(min_length=1, max_length=20)

    @field_validator("quantities")
    @classmethod
    def _names(cls, value: dict[str, ModbusQuantity]) -> dict[str, ModbusQuantity]:
        require_unit_names(value)
        return value


class ModbusLine:
    """One device behind a line; one question at a time, from any thread.

    After an answer that did not come the line is opened anew: a late one must not be taken for that of a later question.

    Raises
    ------
    LostError
        From every question that is not answered, or answered by an exception of the protocol.
    """

    def __init__(self, resource: str, profile: ModbusProfile, *, timeout_s: float) -> None:
        self.resource = resource
        self._profile, self._timeout_s = profile, timeout_s
        self._lock = threading.Lock()
        self._client: Any = None
        self._open()

    def _open(self) -> None:
        try:
            from pymodbus.client import ModbusSerialClient, ModbusTcpClient
        except ImportError:
            raise InstrumentError(f"{self.resource}: Modbus needs a library: pip install 'colure[modbus]'") from None
        port = serial_port(self.resource)
        options: dict[str, Any] = {"timeout": self._timeout_s, "retries": 0}
        if port or self.resource.startswith("/dev/"):
            ends = self._profile.line.ends
            self._client = ModbusSerialClient(
                port or self.resource, baudrate=ends.baud_rate, parity=PARITIES[ends.parity],
                stopbits=int(ends.stop_bits), **options,
            )  # fmt: skip
        else:
            host, number = _address(self.resource)
            self._client = ModbusTcpClient(host, port=number, **options)
        if not self._client.connect():
            raise LostError(f"{self.resource}: cannot be opened (Modbus)")

    def ask(self, function: str, address: int, count: int) -> Any:
        """Return what the device answers to a reading function."""
        with self._lock:
            if self._client is None:
                self._open()
            try:
                answer = getattr(self._client, function)(address, count=count, device_id=self._profile.unit)
            except Exception as error:  # the library raises what its transports raise
                self._drop()
                raise LostError(f"{self.resource}: {function} {address}: {error}") from None
            if answer.isError():
                self._drop()
                raise LostError(f"{self.resource}: {function} {address} was refused: {answer}")
            return answer

    def _drop(self) -> None:
        client, self._client = self._client, None
        if client is not None:
            client.close()

    def identity(self) -> str:
        """Return how the device is spoken to: the protocol tells no name that all devices have."""
        return f"Modbus unit {self._profile.unit}"

    def reconnect(self) -> None:
        """Open the line anew."""
        with self._lock:
            self._drop()
            self._open()

    def close(self) -> None:
        """Close the line."""
        with self._lock:
            self._drop()


class ModbusContact(ModbusLine):
    """A contact; see `ContactDriver`."""

    def __init__(self, resource: str, profile: ModbusContactProfile, *, timeout_s: float) -> None:
        self._contact = profile
        super().__init__(resource, profile, timeout_s=timeout_s)

    def closed(self) -> bool:
        """Tell whether the contact is closed; raises `LostError` if the bit cannot be read."""
        bits = self.ask(BITS[self._contact.read], self._contact.address, 1).bits
        if not bits:
            raise LostError(f"{self.resource}: {self._contact.read} {self._contact.address} answered without a bit")
        return bool(bits[0]) == bool(self._contact.closed)


class ModbusSensor(ModbusLine):
    """A sensor; see `SensorDriver`."""

    def __init__(self, resource: str, profile: ModbusSensorProfile, *, timeout_s: float) -> None:
        self._table = profile.quantities
        self.quantities = tuple(profile.quantities)
        super().__init__(resource, profile, timeout_s=timeout_s)

    def read(self) -> dict[str, float]:
        """Return every quantity; raises `InstrumentError` if one cannot be read or is beyond what it can be."""
        return {name: self._quantity(name, one) for name, one in self._table.items()}

    def _quantity(self, name: str, one: ModbusQuantity) -> float:
        count, form = TYPES[one.type]
        words = list(self.ask(REGISTERS[one.read], one.address, count).registers)
        if len(words) != count:
            raise LostError(f"{self.resource}: {name}: {len(words)} registers came, expected {count}")
        ordered = words[::-1] if one.low_word_first else words
        value = one.scale * float(np.array(ordered, ">u2").view(form)[0]) + one.offset
        if not (math.isfinite(value) and one.least <= value <= one.most):
            raise InstrumentError(
                f"{self.resource}: {name} reads {value:g}: must be a number from {one.least:g} to {one.most:g}"
            )
        return value


def _address(resource: str) -> tuple[str, int]:
    """Return host and port of `host`, `host:port`, or a socket's VISA name."""
    match = re.fullmatch(
        r"(?:TCPIP\d*::)?(?P<host>\[[0-9A-Fa-f:.]+\]|[A-Za-z0-9_.-]+)(?:::?(?P<port>\d{1,5}))?(?:::SOCKET)?",
        resource.strip(),
    )
    if match is None:
        raise InstrumentError(f"resource = {resource!r}: must be host, host:port or a serial port (Modbus)")
    return match["host"].strip("[]"), int(match["port"] or PORT)
