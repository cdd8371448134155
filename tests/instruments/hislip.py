"""A message-based wire for the simulated analyzer: as much of HiSLIP (IVI-6.1, from memory) as one client needs."""

from __future__ import annotations

import socket
import struct
import threading
from contextlib import suppress

HEADER = struct.Struct("!2sBBIQ")
INITIALIZE, INITIALIZE_RESPONSE = 0, 1
DATA, DATA_END, CLEAR_COMPLETE, CLEAR_ACKNOWLEDGE = 6, 7, 8, 9
MAX_SIZE, MAX_SIZE_RESPONSE, ASYNC_INITIALIZE, ASYNC_INITIALIZE_RESPONSE = 15, 16, 17, 18
ASYNC_CLEAR, ASYNC_CLEAR_ACKNOWLEDGE = 19, 23


def receive(connection: socket.socket, count: int) -> bytes:
    out = b""
    while len(out) < count:
        block = connection.recv(count - len(out))
        if not block:
            raise ConnectionError
        out += block
    return out


class HislipServer:
    """Serves `answer(line) -> bytes` on a loopback port."""

    def __init__(self, answer) -> None:
        self._answer = answer
        self._socket = socket.create_server(("127.0.0.1", 0))
        self.port = self._socket.getsockname()[1]
        self.cleared = 0
        threading.Thread(target=self._accept, daemon=True).start()

    def _accept(self) -> None:
        while True:
            try:
                connection, _ = self._socket.accept()
            except OSError:
                return
            threading.Thread(target=self._serve, args=(connection,), daemon=True).start()

    def _serve(self, connection: socket.socket) -> None:
        pending = b""
        try:
            while True:
                _, kind, _, parameter, size = HEADER.unpack(receive(connection, HEADER.size))
                payload = receive(connection, size)

                def send(kind: int, parameter: int = 0, payload: bytes = b"") -> None:
                    connection.sendall(HEADER.pack(b"HS", kind, 0, parameter, len(payload)) + payload)

                if kind == INITIALIZE:
                    send(INITIALIZE_RESPONSE, 0x01000001)
                elif kind == ASYNC_INITIALIZE:
                    send(ASYNC_INITIALIZE_RESPONSE)
                elif kind == MAX_SIZE:
                    send(MAX_SIZE_RESPONSE, 0, struct.pack("!Q", 1 << 20))
                elif kind == ASYNC_CLEAR:
                    self.cleared += 1
                    send(ASYNC_CLEAR_ACKNOWLEDGE)
                elif kind == CLEAR_COMPLETE:
                    send(CLEAR_ACKNOWLEDGE)
                elif kind in (DATA, DATA_END):
                    pending += payload
                    if kind == DATA_END:
                        reply, pending = self._answer(pending.decode("ascii").strip()), b""
                        if reply:
                            send(DATA_END, parameter, reply)
        except ConnectionError:
            connection.close()

    def close(self) -> None:
        with suppress(OSError):
            self._socket.shutdown(socket.SHUT_RDWR)  # wakes whoever waits in accept
        self._socket.close()
