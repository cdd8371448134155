"""Bytes to and from an instrument, without any notion of lines: sockets, serial ports, messages over VISA."""

from __future__ import annotations

import errno
import os
import selectors
import socket
import threading
from contextlib import suppress
from typing import Any, Protocol

from colure.instruments.links import LineEnds, VisaLink
from colure.instruments.protocols import LostError
from colure.instruments.resources import resource_name, serial_port, socket_address

#: A serial port is looked at this often; an answer wakes the reader at once, seconds.
SERIAL_LOOK_S = 0.05
#: Bytes that a port does not take within this time are lost, seconds.
SEND_LIMIT_S = 2.0
PARITIES = {"none": "N", "even": "E", "odd": "O", "mark": "M", "space": "S"}


class Wire(Protocol):
    """One connection; every method raises `LostError` when it is broken.

    threaded
        One thread may wait in `receive` while another sends.
    fresh
        A new connection begins with nothing under way.
    """

    threaded: bool
    fresh: bool

    def send(self, data: bytes) -> None: ...
    def receive(self, limit_s: float) -> bytes: ...
    def close(self) -> None: ...


class WireOpener(Protocol):
    """Opens a wire by its resource name: `open_wire`, or what a test puts in its place."""

    def __call__(self, resource: str, *, timeout_s: float, ends: LineEnds) -> Wire: ...


class SocketWire:
    """A TCP connection."""

    threaded, fresh = True, True

    def __init__(self, resource: str, host: str, port: int, timeout_s: float) -> None:
        self._resource = resource
        try:
            self._socket = socket.create_connection((host, port), timeout=min(timeout_s, 5.0))
        except OSError as error:
            raise LostError(f"{resource}: cannot be opened: {error.strerror or error}") from None
        self._socket.settimeout(SEND_LIMIT_S)
        self._socket.setsockopt(socket.IPPROTO_TCP, socket.TCP_NODELAY, 1)
        self._selector = selectors.DefaultSelector()
        self._selector.register(self._socket, selectors.EVENT_READ)

    def send(self, data: bytes) -> None:
        """Send bytes."""
        try:
            self._socket.sendall(data)
        except OSError as error:
            raise LostError(f"{self._resource}: did not take {data!r}: {error.strerror or error}") from None

    def receive(self, limit_s: float) -> bytes:
        """Return what arrives within a time, nothing if nothing does."""
        try:
            if not self._selector.select(limit_s):
                return b""
            data = self._socket.recv(4096)
        except (OSError, ValueError, KeyError, RuntimeError) as error:
            raise LostError(f"{self._resource}: connection broke: {error}") from None
        if not data:
            raise LostError(f"{self._resource}: the instrument hung up")
        return data

    def close(self) -> None:
        """Hang up; a reader that waits is woken."""
        with suppress(OSError):
            self._socket.shutdown(socket.SHUT_RDWR)
        self._socket.close()


def _refused(port: str, ends: LineEnds, error: Exception) -> str:
    """Say why a port could not be opened; the system says no more than "Invalid argument" where it does not take the settings."""
    if not error.args or error.args[0] != errno.EINVAL:
        return str(error)
    settings = (
        f"{ends.data_bits} data bits, parity {ends.parity!r}, {ends.stop_bits:g} stop bits, {ends.baud_rate} baud"
    )
    if os.path.realpath(port).startswith("/dev/pts/"):
        return (
            f"{settings}: not taken ({error.args[-1]}): a pseudo-terminal has 8 data bits and no parity, and its system refuses others "
            'when it is opened again; set `data_bits = 8` and `parity = "none"` in [line]'
        )
    return f"{settings}: not taken by the port ({error.args[-1]}); set what it can in [line]"


class SerialWire:
    """A serial port of this computer, or of another one over RFC 2217."""

    threaded, fresh = True, False

    def __init__(self, resource: str, port: str, ends: LineEnds) -> None:
        import serial

        self._resource = resource
        self._closed = False
        self._reading = threading.Lock()
        options: dict[str, Any] = {"write_timeout": SEND_LIMIT_S, "exclusive": True if os.name != "nt" else None}
        if port.startswith("rfc2217://"):
            options = {}  # the library refuses both here; what it sends goes into a socket with a time-out of its own
        try:
            self._port = serial.serial_for_url(
                port, baudrate=ends.baud_rate, bytesize=ends.data_bits, parity=PARITIES[ends.parity],
                stopbits=ends.stop_bits, xonxoff=ends.flow == "xonxoff", rtscts=ends.flow == "rtscts",
                dsrdtr=ends.flow == "dsrdtr", timeout=SERIAL_LOOK_S, **options,
            )  # fmt: skip
            self._port.reset_input_buffer()
        except Exception as error:  # the library raises what its protocol handlers raise
            raise LostError(f"{resource}: cannot be opened: {_refused(port, ends, error)}") from None

    def send(self, data: bytes) -> None:
        """Send bytes."""
        try:
            self._port.write(data)
        except Exception as error:
            raise LostError(f"{self._resource}: did not take {data!r}: {error}") from None

    def send_on(self) -> None:
        """Send on although the other end asked for silence (XOFF), or a disturbed line made it look so: a hold may not wait for that."""
        with suppress(Exception):  # not every port can; sending says then that nothing is taken
            # Linux starts anew only what was stopped by the same call (tcflow, its source; the manual does not say so).
            self._port.set_output_flow_control(False)
            self._port.set_output_flow_control(True)

    def receive(self, limit_s: float) -> bytes:
        """Return what arrives within a time, nothing if nothing does."""
        with self._reading:
            if self._closed:
                raise LostError(f"{self._resource}: port is closed")
            try:
                data = bytes(self._port.read(1))
                if data and self._port.in_waiting:
                    data += bytes(self._port.read(self._port.in_waiting))
            except Exception as error:
                raise LostError(f"{self._resource}: port broke: {error}") from None
        return data

    def close(self) -> None:
        """Let go of the port, once its reader has left it: until then the system keeps it taken, and its number is in use."""
        self._closed = True
        with suppress(Exception):
            self._port.cancel_read()
        with self._reading:
            # Of a connection that is broken already the library forgets to close its socket.
            behind = getattr(self._port, "_socket", None)
            with suppress(Exception):
                self._port.close()
            if behind is not None:
                behind.close()


class MessageWire:
    """GPIB, USB, VXI-11 or HiSLIP: whole messages, one at a time, so that a hold waits for a short look at most."""

    threaded, fresh = False, True

    def __init__(self, resource: str, *, timeout_s: float, ends: LineEnds) -> None:
        self._link = VisaLink(resource, timeout_s=timeout_s, ends=ends)
        self._lock = threading.Lock()

    def send(self, data: bytes) -> None:
        """Send one message."""
        with self._lock:
            self._link.write_raw(data.decode("ascii"))

    def receive(self, limit_s: float) -> bytes:
        """Return one message, nothing if none arrives within a time."""
        with self._lock:
            return self._link.read_available(limit_s)

    def close(self) -> None:
        """Close the session."""
        self._link.close()


def open_wire(resource: str, *, timeout_s: float, ends: LineEnds) -> Wire:
    """Open the wire that a resource names; raises `LostError` if it cannot be reached."""
    name = resource_name(resource)
    address = socket_address(name)
    if address is not None:
        return SocketWire(name, *address, timeout_s)
    port = serial_port(name)
    if port:
        return SerialWire(name, port, ends)
    return MessageWire(name, timeout_s=timeout_s, ends=ends)
