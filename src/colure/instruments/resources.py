"""The ways to name a line, and the one spelling that the drivers use."""

from __future__ import annotations

import re

from colure.errors import InstrumentError

SPELLINGS = (
    "host:port, /dev/ttyUSB0, COM3, TCPIP::host::port::SOCKET, TCPIP::host::INSTR, TCPIP::host::hislip0::INSTR, "
    "USB0::...::INSTR, GPIB0::12::INSTR, rfc2217://host:port or socket://host:port"
)
_HOST_PORT = re.compile(r"(?P<host>\[[0-9A-Fa-f:.]+\]|[A-Za-z0-9_.-]+):(?P<port>\d{1,5})")
_COM = re.compile(r"COM(?P<number>\d{1,3})", re.IGNORECASE)


def resource_name(text: str) -> str:
    """Return the VISA resource name (or serial URL) that a friendly name stands for.

    Raises
    ------
    InstrumentError
        If nothing can be made of it; the known spellings are listed.
    """
    name = text.strip()
    if ("::" in name and not name.startswith("[")) or name.startswith("rfc2217://"):
        return name
    if name.startswith("socket://"):
        name = name.removeprefix("socket://").rstrip("/")
    com = _COM.fullmatch(name)
    if com is not None:
        return f"ASRL{com['number']}::INSTR"
    if name.startswith("/dev/"):
        return f"ASRL{name}::INSTR"
    wire = _HOST_PORT.fullmatch(name)
    if wire is not None and 0 < int(wire["port"]) < 65536:
        return f"TCPIP::{wire['host']}::{wire['port']}::SOCKET"
    if re.fullmatch(r"[A-Za-z0-9_.-]+", name):
        raise InstrumentError(
            f"resource = {text!r}: no port: write {name}:5025 for a socket, TCPIP::{name}::INSTR for VXI-11, or "
            f"TCPIP::{name}::hislip0::INSTR for HiSLIP"
        )
    raise InstrumentError(f"resource = {text!r}: is no name of a line; must be one of {SPELLINGS}")


def serial_port(resource: str) -> str:
    """Return what the serial library opens for a resource; empty if it is no serial line."""
    if resource.startswith("rfc2217://"):
        return resource
    match = re.fullmatch(r"ASRL(?P<port>.+?)(::INSTR)?", resource, re.IGNORECASE)
    if match is None:
        return ""
    return f"COM{match['port']}" if match["port"].isdigit() else match["port"]


def socket_address(resource: str) -> tuple[str, int] | None:
    """Return host and port of a `TCPIP::host::port::SOCKET` resource, else None."""
    parts = resource.split("::")
    # An IPv6 address holds the separator itself; it stands in brackets.
    match = re.fullmatch(r"TCPIP\d*::(?P<host>\[.+\]|[^:]+)::(?P<port>\d+)::SOCKET", resource, re.IGNORECASE)
    if match is None or len(parts) < 4:
        return None
    return match["host"].strip("[]"), int(match["port"])
