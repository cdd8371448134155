"""A serial port of another computer: the server class of the serial library (RFC 2217 over Telnet) in front of a pseudo-terminal."""

from __future__ import annotations

import socket
import threading
from contextlib import suppress

import serial
import serial.rfc2217

from tests.instruments.loopback import Loopback


class Unwired(serial.Serial):
    """A pseudo-terminal has no modem lines and passes bytes of eight bits only: what it is told is kept, and it stays as it is."""

    cts = dsr = cd = True
    ri = False
    rts = dtr = True
    bytesize: int = 8
    parity: str = "N"
    stopbits: float = 1

    def _reconfigure_port(self, force_update: bool = False) -> None:
        self._bytesize, self._parity, self._stopbits = 8, "N", 1
        super()._reconfigure_port(force_update)


class RemoteSerial(Loopback):
    """Serves one port, to one client after the other; settings are kept to be looked at."""

    def __init__(self, port: str) -> None:
        self._name = port
        self.settings: dict[str, object] = {}
        super().__init__()
        self.resource = f"rfc2217://127.0.0.1:{self.port}"

    def write(self, data: bytes) -> None:
        """Send what the manager says by itself; the library asks for this name."""
        with self._sending, suppress(OSError):
            self._line.sendall(data)

    def _serve(self, connection: socket.socket) -> None:
        self._line, self._sending = connection, threading.Lock()
        with Unwired(self._name, timeout=0.05) as port:
            manager = serial.rfc2217.PortManager(port, self)
            over = threading.Event()

            def bring() -> None:
                while not over.is_set():
                    data = port.read(port.in_waiting or 1)
                    if data:
                        self.write(b"".join(manager.escape(data)))

            reader = threading.Thread(target=bring, daemon=True)
            reader.start()
            try:
                while data := connection.recv(1024):
                    port.write(b"".join(manager.filter(data)))
                    self.settings = {
                        name: getattr(port, name) for name in ("baudrate", "bytesize", "parity", "stopbits")
                    }
            finally:
                over.set()
                reader.join(timeout=2.0)
