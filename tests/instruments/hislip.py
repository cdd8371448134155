"""A message-based wire for the simulated analyzer: as much of HiSLIP (IVI-6.1, from memory) as one client needs."""

from __future__ import annotations

import socket
import struct

from tests.instruments.loopback import Loopback, receive

HEADER = struct.Struct("!2sBBIQ")
INITIALIZE, INITIALIZE_RESPONSE = 0, 1
DATA, DATA_END, CLEAR_COMPLETE, CLEAR_ACKNOWLEDGE = 6, 7, 8, 9
MAX_SIZE, MAX_SIZE_RESPONSE, ASYNC_INITIALIZE, ASYNC_INITIALIZE_RESPONSE = 15, 16, 17, 18
ASYNC_CLEAR, ASYNC_CLEAR_ACKNOWLEDGE = 19, 23


class HislipServer(Loopback):
    """Serves `answer(line) -> bytes` on a loopback port."""

    def __init__(self, answer) -> None:
        self._answer = answer
        self.cleared = 0
        super().__init__()

    def _serve(self, connection: socket.socket) -> None:
        pending = b""
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
