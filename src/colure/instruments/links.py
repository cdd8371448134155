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
import time
from collections.abc import Callable
from contextlib import suppress
from dataclasses import dataclass
from importlib.util import find_spec
from typing import Any, Literal, Protocol

import numpy as np

from colure.errors import InstrumentError
from colure.geometry.conventions import FloatArray
from colure.instruments.protocols import LostError
from colure.instruments.resources import resource_name, socket_address

_manager_lock = threading.Lock()
_managers: dict[str, Any] = {}

LARGEST_BLOCK_BYTES = 1 << 28
#: A message is read in parts of this size.
MESSAGE_BYTES = 1 << 20
NumberFormat = Literal["real64", "real32", "ascii"]


@dataclass(frozen=True, kw_only=True)
class LineEnds:
    """How lines end on the wire, and the settings of a serial port."""

    read: str = "\n"
    write: str = "\n"
    baud_rate: int = 115200
    parity: Literal["none", "even", "odd", "mark", "space"] = "none"
    data_bits: int = 8
    stop_bits: float = 1
    flow: Literal["none", "xonxoff", "rtscts", "dsrdtr"] = "none"
    visa: str = "@py"


class Link(Protocol):
    """One connection to one instrument; every method raises `LostError` when it does not answer."""

    resource: str

    def write(self, text: str) -> None: ...
    def write_raw(self, text: str) -> None: ...
    def read(self, limit_s: float | None = None) -> str: ...
    def query(self, text: str, limit_s: float | None = None) -> str: ...
    def query_numbers(self, text: str, *, form: NumberFormat, big_endian: bool, expected: int) -> FloatArray: ...
    def reopen(self) -> None: ...
    def close(self) -> None: ...


class Opener(Protocol):
    """Opens a link: `VisaLink` itself, or what a test puts in its place."""

    def __call__(self, resource: str, *, timeout_s: float, ends: LineEnds = ...) -> Link: ...


def _resource_manager(backend: str) -> Any:
    """Return the process-wide VISA manager of a backend: `@py`, `@ivi`, or the path of a library."""
    with _manager_lock:
        if backend not in _managers:
            import pyvisa

            _managers[backend] = pyvisa.ResourceManager(backend)
        return _managers[backend]


def _send_at_once(resource: Any) -> None:
    """Let a socket send small packets at once: a command followed by a query else waits 40 ms for an acknowledgement.

    The pure-Python backend accepts the VISA attribute for this and does not act on it (0.8).
    """
    session = getattr(resource.visalib, "sessions", {}).get(resource.session)
    wire = getattr(session, "interface", None)
    if isinstance(wire, socket.socket):
        wire.setsockopt(socket.IPPROTO_TCP, socket.TCP_NODELAY, 1)


def _let_go(link: Any) -> None:
    """Close a connection that may be broken: backends say goodbye first, and keep the socket if nobody answers (0.8)."""
    session = None
    with suppress(Exception):  # a link that is closed already has no session to ask for
        session = getattr(link.visalib, "sessions", {}).get(link.session) if hasattr(link, "visalib") else None
    wire = getattr(getattr(session, "interface", None), "sock", None)
    with suppress(Exception):
        link.close()
    with suppress(Exception):
        if wire is not None:
            wire.close()


def _serial_options(ends: LineEnds) -> dict[str, Any]:
    """Return the settings of a serial port in the words of VISA."""
    from pyvisa.constants import ControlFlow, Parity, StopBits

    stop = {1.0: StopBits.one, 1.5: StopBits.one_and_a_half, 2.0: StopBits.two}
    flow = {"none": ControlFlow.none, "xonxoff": ControlFlow.xon_xoff, "rtscts": ControlFlow.rts_cts,
            "dsrdtr": ControlFlow.dtr_dsr}  # fmt: skip
    return {"baud_rate": ends.baud_rate, "parity": Parity[ends.parity], "data_bits": ends.data_bits,
            "stop_bits": stop[float(ends.stop_bits)], "flow_control": flow[ends.flow]}  # fmt: skip


def _missing_part(resource: str) -> str:
    """Say which part of the installation a kind of line needs; empty if none is known to be missing."""
    for kind, (module, extra) in {"USB": ("usb", "usb"), "GPIB": ("gpib_ctypes", "gpib")}.items():
        if resource.upper().startswith(kind) and find_spec(module) is None:
            return f"; {kind} needs a library: pip install 'colure[{extra}]'"
    return ""


def _timed_out(error: Exception) -> bool:
    """Tell whether a backend's error says that nothing came in time."""
    import pyvisa

    return isinstance(error, pyvisa.VisaIOError) and error.error_code == pyvisa.constants.StatusCode.error_timeout


class VisaLink:
    """A link over PyVISA.

    Raises
    ------
    LostError
        From every method, when the instrument cannot be reached or does not answer in time.
    """

    def __init__(self, resource: str, *, timeout_s: float, ends: LineEnds = LineEnds()) -> None:
        self.resource = resource
        self._timeout_s = timeout_s
        self._ends = ends
        self._link: Any = None
        self._open()

    def _open(self) -> None:
        name = self.resource = resource_name(self.resource)
        if name.startswith("rfc2217://"):
            raise LostError(
                f"{name}: serial URLs carry axis controllers only; name the analyzer as host:port or by a VISA name"
            )
        options: dict[str, Any] = {"read_termination": self._ends.read, "write_termination": self._ends.write}
        serial = name.upper().startswith("ASRL")
        if serial:
            options |= _serial_options(self._ends)
        # A stream has no message ends: how many bytes belong together only the bytes tell.
        self._stream = serial or socket_address(name) is not None
        try:
            self._link = _resource_manager(self._ends.visa).open_resource(
                name, open_timeout=int(1000 * min(self._timeout_s, 5.0)), **options
            )
            self._link.timeout = int(1000 * self._timeout_s)
            _send_at_once(self._link)
        except Exception as error:  # backends raise whatever they like, and so do all calls below
            raise LostError(f"{name}: cannot be opened: {error}{_missing_part(name)}") from None

    def reopen(self) -> None:
        """Clear the device where the wire knows that (IEEE 488.1), else open the connection anew."""
        _let_go(self._link)
        self._open()
        with suppress(Exception):
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
        except Exception as error:
            raise LostError(f"{self.resource}: did not take {text!r}: {error}") from None

    def read(self, limit_s: float | None = None) -> str:
        """Read one line, waiting for a time of its own if one is given."""
        return self._answer("", limit_s)

    def _answer(self, to: str, limit_s: float | None) -> str:
        """Read one line; `to` names the question where it does not come."""
        if limit_s is None:
            return self._read(to, self._timeout_s)
        try:
            self._link.timeout = max(1, int(1000 * limit_s))
            return self._read(to, limit_s)
        finally:
            with suppress(Exception):  # a line that is closed meanwhile has no time-out to set
                self._link.timeout = int(1000 * self._timeout_s)

    def _read(self, to: str, limit_s: float) -> str:
        try:
            return str(self._link.read()).strip() if self._stream else self._message().decode("latin-1").strip()
        except LostError:
            raise
        except UnicodeDecodeError:
            raise LostError(
                f"{self.resource}: the answer{to} is no text: is `number_format` of the profile the instrument's?"
            ) from None
        except Exception as error:
            why = f" within {limit_s:g} s" if _timed_out(error) else f": {error}"
            raise LostError(f"{self.resource}: no answer{to}{why}") from None

    def query(self, text: str, limit_s: float | None = None) -> str:
        """Send one line and read one line, waiting for a time of its own if one is given."""
        self.write(text)
        return self._answer(f" to {text!r}", limit_s)

    def read_available(self, limit_s: float) -> bytes:
        """Return one message, nothing if none arrives within a time."""
        self._link.timeout = max(1, int(1000 * limit_s))
        try:
            return bytes(self._link.read_raw())
        except Exception as error:
            if _timed_out(error):
                return b""
            raise LostError(f"{self.resource}: no answer: {error}") from None
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
        width = 4 if form == "real32" else 8
        try:
            # A binary byte may equal the line end: the terminator must not end the read.
            self._link.read_termination = ""
            payload = self._block(text, width * expected)
        except LostError:
            raise
        except Exception as error:
            why = f" within {self._timeout_s:g} s" if _timed_out(error) else f": {error}"
            raise LostError(f"{self.resource}: no whole block after {text!r}{why}") from None
        finally:
            with suppress(Exception):
                self._link.read_termination = self._ends.read
        return block_numbers(payload, self.resource, form=form, big_endian=big_endian, expected=expected)

    def _block(self, text: str, expected: int) -> bytes:
        """Read a block (IEEE 488.2, 8.7.9 and 8.7.10); one of unannounced size has the expected one on a stream."""
        if not self._stream:
            return _payload_of(self._message(), self.resource, text)
        head = self._exactly(2, text)
        if head[:1] != b"#" or not head[1:].isdigit():
            raise LostError(f"{self.resource}: {text!r} was not answered by a block but by {head!r}")
        size = expected if head == b"#0" else int(self._exactly(int(head[1:]), text))
        if size > LARGEST_BLOCK_BYTES:
            raise LostError(f"{self.resource}: block of {size} bytes, limit {LARGEST_BLOCK_BYTES} bytes")
        payload = self._exactly(size, text)
        last = self._exactly(1, text)
        if last == b"\r" and self._ends.read != "\r":
            last = self._exactly(1, text)
        if last not in (b"\n", b"\r"):
            # The instrument sent more than it announced: nothing on this line can be trusted now.
            raise LostError(f"{self.resource}: block is longer than the {size} bytes it announced")
        return payload

    def _exactly(self, count: int, text: str) -> bytes:
        """Read so many bytes of a stream."""
        out, end_s = b"", time.monotonic() + self._timeout_s
        while len(out) < count:
            data, _ = self._chunk(count - len(out))
            out += data
            if not data and time.monotonic() > end_s:
                raise LostError(f"{self.resource}: answer to {text!r} stopped after {len(out)} of {count} bytes")
        return out

    def _chunk(self, count: int) -> tuple[bytes, bool]:
        """Read up to so many bytes; True if a message ends with them, which only message-based wires tell."""
        from pyvisa.constants import StatusCode

        with self._link.ignore_warning(
            self._link.session, StatusCode.success_device_not_present, StatusCode.success_max_count_read
        ):
            data, status = self._link.visalib.read(self._link.session, count)
        whole = (StatusCode.success, StatusCode.success_termination_character_read)
        return bytes(data), not self._stream and status in whole

    def _message(self) -> bytes:
        """Read to the END of a message; the bytes before it, line end included."""
        out, end_s = b"", time.monotonic() + self._timeout_s
        while True:
            data, ended = self._chunk(MESSAGE_BYTES)
            out += data
            if ended:
                return out
            if len(out) > LARGEST_BLOCK_BYTES + 100 or time.monotonic() > end_s:
                raise LostError(f"{self.resource}: answer does not end after {len(out)} bytes")

    def close(self) -> None:
        """Close the connection."""
        _let_go(self._link)


def _payload_of(message: bytes, resource: str, text: str) -> bytes:
    """Return the payload of a block that is a whole message; raises `LostError` if it is none."""
    digits = message[1:2]
    if message[:1] != b"#" or not digits.isdigit():
        raise LostError(f"{resource}: {text!r} was not answered by a block but by {message[:2]!r}")
    begin = 2 + int(digits)
    if digits == b"0":
        return message[begin:].removesuffix(b"\n")
    if not message[2:begin].isdigit():
        raise LostError(f"{resource}: block announces {message[2:begin]!r} bytes")
    size = int(message[2:begin])
    if len(message) < begin + size:
        raise LostError(
            f"{resource}: answer to {text!r} ended after {len(message) - begin} bytes, expected {size} bytes"
        )
    if message[begin + size :].strip(b"\r\n"):
        raise LostError(f"{resource}: block is longer than the {size} bytes it announced")
    return message[begin : begin + size]


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
        raise InstrumentError(
            f"{resource}: {text[:60]!r} is no list of numbers: is `number_format` of the profile the instrument's?"
        ) from None
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


#: A number goes on behind what was read of it: further digits, a point or an exponent; where no point was read also a decimal comma, or
#: minutes behind degrees.
_GOES_ON, _OR_PARTS = re.compile(r"\d|\.\d|[eE][-+]?\d"), re.compile(r",\d|(:|'|\xb0|\xc2\xb0)\s?\d")


def whole_number(match: re.Match[str], group: str, resource: str, what: str) -> str:
    """Return what a pattern has found of a number; raises `InstrumentError` if the number begins before or goes on behind it.

    A pattern without a decimal comma reads 23 of `23,5`, one without a sign 5 of `-5`, one of whole degrees 12 of `12:34:56`, and all
    look like numbers. What the pattern itself takes in front of its group or behind it is no part of the number.
    """
    text, value, (begin, end) = match.string, match[group], match.span(group)
    if value is None:
        raise InstrumentError(f"{resource}: {what}: the pattern finds no number in {text[:60]!r}")
    cut = match.start() == begin and re.search(r"[-\d.]$", text[:begin]) is not None
    if match.end() == end:
        cut |= _GOES_ON.match(text, end) is not None
        cut |= "." not in value and _OR_PARTS.match(text, end) is not None
    if cut:
        raise InstrumentError(
            f"{resource}: {what}: the pattern takes {value!r} of {text[:60]!r}: must take the whole number, sign and decimals (a decimal "
            "comma and degrees with minutes cannot be read), or also what parts it from the next one"
        )
    return value
