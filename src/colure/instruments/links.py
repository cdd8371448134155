"""Lines to instruments: text, binary blocks, plain errors, over any VISA resource.

A resource name decides the wire: `TCPIP::host::port::SOCKET`, `TCPIP::host::INSTR` (VXI-11),
`TCPIP::host::hislip0::INSTR`, `USB::...`, `GPIB::...`, `ASRL/dev/ttyUSB0::INSTR` (COM ports on
Windows), as far as PyVISA's pure-Python backend and the system's drivers carry it.
"""

from __future__ import annotations

import math
import re
import socket
import threading
from collections.abc import Callable
from contextlib import suppress
from dataclasses import dataclass
from typing import Any, Literal, Protocol

import numpy as np

from colure.geometry.conventions import FloatArray
from colure.instruments.protocols import InstrumentError, LostError

_manager_lock = threading.Lock()
_manager: Any = None

LARGEST_BLOCK_BYTES = 1 << 28
NumberFormat = Literal["real64", "real32", "ascii"]


@dataclass(frozen=True)
class LineEnds:
    """How lines end on the wire, and the settings of a serial port."""

    read: str = "\n"
    write: str = "\n"
    baud_rate: int = 115200
    parity: Literal["none", "even", "odd", "mark", "space"] = "none"
    data_bits: int = 8
    stop_bits: float = 1
    flow: Literal["none", "xonxoff", "rtscts", "dsrdtr"] = "none"


class Link(Protocol):
    """One connection to one instrument; every method raises `LostError` when it does not answer."""

    resource: str

    def write(self, text: str) -> None: ...
    def write_raw(self, text: str) -> None: ...
    def read(self) -> str: ...
    def query(self, text: str) -> str: ...
    def query_numbers(self, text: str, *, form: NumberFormat, big_endian: bool, expected: int) -> FloatArray: ...
    def drain(self) -> None: ...
    def reopen(self) -> None: ...
    def close(self) -> None: ...


class Opener(Protocol):
    """Opens a link: `VisaLink` itself, or what a test puts in its place."""

    def __call__(self, resource: str, *, timeout_s: float, ends: LineEnds = ...) -> Link: ...


def _resource_manager() -> Any:
    """Return the process-wide VISA manager on the pure-Python backend."""
    global _manager  # noqa: PLW0603 - PyVISA itself keeps one per process
    with _manager_lock:
        if _manager is None:
            import pyvisa

            _manager = pyvisa.ResourceManager("@py")
        return _manager


def _send_at_once(resource: Any) -> None:
    """Let a socket send small packets at once: a command followed by a query else waits 40 ms for an acknowledgement.

    The pure-Python backend accepts the VISA attribute for this and does not act on it (0.8).
    """
    session = getattr(resource.visalib, "sessions", {}).get(resource.session)
    wire = getattr(session, "interface", None)
    if isinstance(wire, socket.socket):
        wire.setsockopt(socket.IPPROTO_TCP, socket.TCP_NODELAY, 1)


class VisaLink:
    """A link over PyVISA.

    Raises
    ------
    LostError
        From every method, when the instrument cannot be reached or does not answer in time.
    """

    def __init__(self, resource: str, *, timeout_s: float, ends: LineEnds = LineEnds()) -> None:
        import pyvisa

        self.resource = resource
        self._timeout_s = timeout_s
        self._ends = ends
        self._visa_errors: tuple[type[Exception], ...] = (pyvisa.Error, OSError, ValueError)
        self._link: Any = None
        self._open()

    def _open(self) -> None:
        options: dict[str, Any] = {"read_termination": self._ends.read, "write_termination": self._ends.write}
        if self.resource.upper().startswith("ASRL"):
            options["baud_rate"] = self._ends.baud_rate
        try:
            self._link = _resource_manager().open_resource(
                self.resource, open_timeout=int(1000 * min(self._timeout_s, 5.0)), **options
            )
            self._link.timeout = int(1000 * self._timeout_s)
            _send_at_once(self._link)
        except Exception as error:  # the backend raises bare Exception where a host does not answer
            raise LostError(f"{self.resource}: cannot be opened: {error}") from None

    def reopen(self) -> None:
        """Clear the device where the wire knows that (IEEE 488.1), else open the connection anew."""
        with suppress(Exception):  # a broken line cannot always be closed; a new one is opened either way
            self._link.close()
        self._open()
        with suppress(*self._visa_errors, AttributeError, NotImplementedError):
            self._link.clear()

    def write(self, text: str) -> None:
        """Send one line."""
        self._send(lambda: self._link.write(text), text)

    def write_raw(self, text: str) -> None:
        """Send characters without a line end."""
        self._send(lambda: self._link.write_raw(text.encode("ascii")), text)

    def _send(self, action: Callable[[], object], text: str) -> None:
        try:
            action()
        except self._visa_errors as error:
            raise LostError(f"{self.resource}: did not take {text!r}: {error}") from None

    def read(self) -> str:
        """Read one line."""
        try:
            return str(self._link.read()).strip()
        except self._visa_errors as error:
            raise LostError(f"{self.resource}: no answer: {error}") from None

    def query(self, text: str) -> str:
        """Send one line and read one line."""
        self.write(text)
        return self.read()

    def read_available(self, limit_s: float) -> bytes:
        """Return one message, nothing if none arrives within a time."""
        import pyvisa

        self._link.timeout = max(1, int(1000 * limit_s))
        try:
            return bytes(self._link.read_raw())
        except self._visa_errors as error:
            if isinstance(error, pyvisa.VisaIOError) and error.error_code == pyvisa.constants.StatusCode.error_timeout:
                return b""
            raise LostError(f"{self.resource}: no answer: {error}") from None
        finally:
            self._link.timeout = int(1000 * self._timeout_s)

    def drain(self) -> None:
        """Throw away what still arrives, so that the next answer is the answer to the next question."""
        self._link.timeout = 30
        try:
            for _ in range(1000):
                self._link.read_bytes(1)
        except self._visa_errors:
            pass
        finally:
            self._link.timeout = int(1000 * self._timeout_s)

    def query_numbers(self, text: str, *, form: NumberFormat, big_endian: bool, expected: int) -> FloatArray:
        """Send a query and read numbers: comma-separated text, or an IEEE 488.2 block.

        Raises
        ------
        InstrumentError
            If the answer does not hold exactly `expected` numbers.
        """
        if form == "ascii":
            return _ascii_numbers(self.query(text), self.resource, expected)
        self.write(text)
        try:
            # A binary byte may equal the line end: the terminator must not end the read.
            self._link.read_termination = ""
            payload = self._block(text)
        except self._visa_errors as error:
            raise LostError(f"{self.resource}: block after {text!r} broke off: {error}") from None
        finally:
            self._link.read_termination = self._ends.read
        return block_numbers(payload, self.resource, form=form, big_endian=big_endian, expected=expected)

    def _block(self, text: str) -> bytes:
        head = bytes(self._link.read_bytes(2))
        if head == b"#0":
            return self._indefinite()
        if head[:1] != b"#" or not head[1:].isdigit():
            raise LostError(f"{self.resource}: {text!r} was not answered by a block but by {head!r}")
        size = int(self._link.read_bytes(int(head[1:])))
        if size > LARGEST_BLOCK_BYTES:
            raise LostError(f"{self.resource}: block of {size} bytes, limit {LARGEST_BLOCK_BYTES} bytes")
        payload = bytes(self._link.read_bytes(size + 1))
        if payload[-1:] != b"\n":
            # The instrument sent more than it announced: nothing on this line can be trusted now.
            raise LostError(f"{self.resource}: block is longer than the {size} bytes it announced")
        return payload[:-1]

    def _indefinite(self) -> bytes:
        """Read a block of unannounced size, which ends with the message (END) after a newline."""
        payload = bytes(self._link.read_raw())
        while not payload.endswith(b"\n"):
            payload += bytes(self._link.read_raw())
        return payload[:-1]

    def close(self) -> None:
        """Close the connection."""
        try:
            self._link.close()
        except self._visa_errors as error:
            raise LostError(f"{self.resource}: cannot be closed: {error}") from None


def block_numbers(payload: bytes, resource: str, *, form: NumberFormat, big_endian: bool, expected: int) -> FloatArray:
    """Turn a block's payload into numbers; raises `InstrumentError` naming both sizes."""
    width = 4 if form == "real32" else 8
    if len(payload) != width * expected:
        raise InstrumentError(f"{resource}: block of {len(payload)} bytes, expected {width * expected} bytes")
    return np.frombuffer(payload, f"{'>' if big_endian else '<'}f{width}").astype(np.float64)


def _ascii_numbers(text: str, resource: str, expected: int) -> FloatArray:
    try:
        values = np.array([float(part) for part in text.split(",")])
    except ValueError:
        raise InstrumentError(f"{resource}: {text[:60]!r} is no list of numbers") from None
    if values.size != expected:
        raise InstrumentError(f"{resource}: {values.size} numbers, expected {expected} numbers")
    return values


def real_number(text: str, resource: str, what: str) -> float:
    """Read one finite number, a unit behind it at most, or raise `InstrumentError` that says what it should be."""
    match = re.fullmatch(r"\s*([-+]?(?:\d+\.?\d*|\.\d+)(?:[eE][-+]?\d+)?)\s*[A-Za-z%/]*\s*", text)
    value = float(match.group(1)) if match else math.nan
    if not math.isfinite(value):
        raise InstrumentError(f"{resource}: {text[:60]!r} is no {what}")
    return value
