"""The message-based wire VXI-11 (TCP/IP Instrument Protocol, revision 1.0, appendix B: RPCL) over ONC RPC (RFC 5531) and
XDR (RFC 4506): as much as one client needs. Clients that name a port need no port mapper."""

from __future__ import annotations

import socket
import struct
from collections.abc import Callable

from tests.instruments.loopback import Loopback, receive

CORE, VERSION = 0x0607AF, 1
CREATE_LINK, WRITE, READ, READ_STB, CLEAR, DESTROY_LINK = 10, 11, 12, 13, 15, 23
END_FLAG, REASON_COUNT, REASON_END = 8, 1, 4
IO_TIMEOUT = 15


def words(*values: int) -> bytes:
    return struct.pack(f">{len(values)}I", *values)


def opaque(data: bytes) -> bytes:
    return words(len(data)) + data + bytes(-len(data) % 4)


class Vxi11Server(Loopback):
    """Serves `answer(line) -> bytes` on a loopback port; answers end by END, with a newline or without."""

    def __init__(self, answer: Callable[[str], bytes]) -> None:
        self._answer = answer
        self.cleared = 0
        super().__init__()
        self.resource = f"TCPIP::127.0.0.1,{self.port}::inst0::INSTR"

    def _serve(self, connection: socket.socket) -> None:
        state = {"in": b"", "out": b""}
        while True:
            (mark,) = struct.unpack(">I", receive(connection, 4))
            call = receive(connection, mark & 0x7FFFFFFF)
            transaction, kind, rpc, program, version, procedure = struct.unpack(">6I", call[:24])
            assert (kind, rpc, program, version) == (0, 2, CORE, VERSION)
            body = call[24:]
            for _ in range(2):  # credentials and verifier
                (length,) = struct.unpack(">I", body[4:8])
                body = body[8 + length + -length % 4 :]
            result = self._do(procedure, body, state)
            reply = words(transaction, 1, 0, 0, 0, 0) + result
            connection.sendall(words(0x80000000 | len(reply)) + reply)

    def _do(self, procedure: int, body: bytes, state: dict[str, bytes]) -> bytes:
        if procedure == CREATE_LINK:
            return words(0, 1, 0, 65536)  # no error, link 1, abort port, largest write
        if procedure == WRITE:
            _, _, _, flags, length = struct.unpack(">5I", body[:20])
            state["in"] += body[20 : 20 + length]
            if flags & END_FLAG:
                state["out"] += self._answer(state["in"].decode("ascii").strip())
                state["in"] = b""
            return words(0, length)
        if procedure == READ:
            _, size, _, _, _, _ = struct.unpack(">6I", body[:24])
            if not state["out"]:
                return words(IO_TIMEOUT, 0) + opaque(b"")
            data, state["out"] = state["out"][:size], state["out"][size:]
            return words(0, REASON_COUNT if state["out"] else REASON_END) + opaque(data)
        if procedure == CLEAR:
            self.cleared += 1
            state["in"] = state["out"] = b""
        return words(0, 0) if procedure == READ_STB else words(0)
