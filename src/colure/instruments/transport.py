"""A thin, typed layer over PyVISA: text lines, binary blocks, plain errors."""

from __future__ import annotations

import threading
from typing import Any

import numpy as np

from colure.geometry.conventions import FloatArray
from colure.instruments.protocols import InstrumentError

_manager_lock = threading.Lock()
_manager: Any = None

LARGEST_BLOCK_BYTES = 1 << 28


def _resource_manager() -> Any:
    """Return the process-wide VISA manager on the pure-Python backend."""
    global _manager  # noqa: PLW0603 - PyVISA itself keeps one per process
    with _manager_lock:
        if _manager is None:
            import pyvisa

            _manager = pyvisa.ResourceManager("@py")
        return _manager


class Transport:
    """One connection to one instrument.

    Raises
    ------
    InstrumentError
        From every method, when the instrument cannot be reached or does not answer in time.
    """

    def __init__(self, resource: str, *, timeout_s: float) -> None:
        import pyvisa

        self.resource = resource
        self._visa_errors: tuple[type[Exception], ...] = (pyvisa.Error, OSError, ValueError)
        try:
            self._link = _resource_manager().open_resource(
                resource, read_termination="\n", write_termination="\n", open_timeout=int(1000 * min(timeout_s, 5.0))
            )
        except self._visa_errors as error:
            raise InstrumentError(f"{resource}: cannot be opened: {error}") from None
        self._link.timeout = int(1000 * timeout_s)

    def write(self, text: str) -> None:
        """Send one line."""
        try:
            self._link.write(text)
        except self._visa_errors as error:
            raise InstrumentError(f"{self.resource}: did not take {text!r}: {error}") from None

    def write_raw(self, text: str) -> None:
        """Send characters without a line end."""
        try:
            self._link.write_raw(text.encode("ascii"))
        except self._visa_errors as error:
            raise InstrumentError(f"{self.resource}: did not take {text!r}: {error}") from None

    def read(self) -> str:
        """Read one line."""
        try:
            return str(self._link.read()).strip()
        except self._visa_errors as error:
            raise InstrumentError(f"{self.resource}: no answer: {error}") from None

    def query(self, text: str) -> str:
        """Send one line and read one line."""
        self.write(text)
        return self.read()

    def query_block(self, text: str, *, big_endian: bool, expected: int) -> FloatArray:
        """Send a query and read an IEEE 488.2 definite block of doubles.

        Raises
        ------
        InstrumentError
            If the answer is no block, or does not hold exactly `expected` numbers.
        """
        self.write(text)
        try:
            # A binary byte may equal the line end: the terminator must not end the read.
            self._link.read_termination = ""
            head = self._link.read_bytes(2)
            if head[:1] != b"#" or not head[1:].isdigit() or head == b"#0":
                raise InstrumentError(f"{self.resource}: {text!r} was not answered by a block but by {head!r}")
            size = int(self._link.read_bytes(int(head[1:])))
            if size != 8 * expected:
                # Take the odd block off the line, so that the next answer is not read from its middle.
                self._link.read_bytes(min(size, LARGEST_BLOCK_BYTES) + 1)
                raise InstrumentError(f"{self.resource}: block of {size} bytes, expected {8 * expected} bytes")
            payload = self._link.read_bytes(size + 1)[:-1]
        except self._visa_errors as error:
            raise InstrumentError(f"{self.resource}: block after {text!r} broke off: {error}") from None
        finally:
            self._link.read_termination = "\n"
        return np.frombuffer(payload, ">f8" if big_endian else "<f8").astype(np.float64)

    def close(self) -> None:
        """Close the connection."""
        try:
            self._link.close()
        except self._visa_errors as error:
            raise InstrumentError(f"{self.resource}: cannot be closed: {error}") from None
