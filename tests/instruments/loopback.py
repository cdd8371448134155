"""A server on a loopback port with a thread for every connection: what the peers of the drivers have in common."""

from __future__ import annotations

import socket
import threading
from contextlib import suppress


def receive(connection: socket.socket, count: int) -> bytes:
    """Return exactly so many bytes; `ConnectionError` if the other end leaves before."""
    out = b""
    while len(out) < count:
        block = connection.recv(count - len(out))
        if not block:
            raise ConnectionError
        out += block
    return out


class Loopback:
    """Listens at `port` until `close`; every connection is served by `_serve` in a thread of its own."""

    def __init__(self) -> None:
        self._socket = socket.create_server(("127.0.0.1", 0))
        self.port = self._socket.getsockname()[1]
        self.resource = f"127.0.0.1:{self.port}"
        self._open: list[socket.socket] = []
        threading.Thread(target=self._accept, daemon=True).start()

    def _accept(self) -> None:
        while True:
            try:
                connection, _ = self._socket.accept()
            except OSError:
                return
            connection.setsockopt(socket.IPPROTO_TCP, socket.TCP_NODELAY, 1)
            self._open.append(connection)
            threading.Thread(target=self._serve_until_gone, args=(connection,), daemon=True).start()

    def _serve_until_gone(self, connection: socket.socket) -> None:
        with suppress(OSError):  # the other end left, or the server was closed
            self._serve(connection)

    def _serve(self, connection: socket.socket) -> None:
        raise NotImplementedError

    def drop(self) -> None:
        """End every connection; new ones are taken."""
        for connection in self._open:
            with suppress(OSError):
                connection.shutdown(socket.SHUT_RDWR)

    def close(self) -> None:
        """Stop listening and end every connection."""
        with suppress(OSError):
            self._socket.shutdown(socket.SHUT_RDWR)  # wakes whoever waits in accept
        self._socket.close()
        for connection in self._open:
            with suppress(OSError):
                connection.shutdown(socket.SHUT_RDWR)
            connection.close()
