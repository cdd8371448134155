"""Wires: a port that is let go of can be taken again at once, whoever was reading."""

from __future__ import annotations

import os
import socketserver
import threading
from contextlib import suppress

import pytest

from colure.instruments.line import ControllerLine, ExpectedReply, LineRules
from colure.instruments.links import LineEnds
from colure.instruments.protocols import LostError
from colure.instruments.wires import SerialWire


@pytest.mark.skipif(os.name == "nt", reason="wants a pseudo-terminal")
def test_a_serial_port_is_free_once_it_is_closed_although_its_reader_waits():
    """The system lets go of a port when the last call that waits on it returns (POSIX close and select)."""
    near, far = os.openpty()
    port = os.ttyname(far)

    def read(wire):
        with suppress(LostError):
            while True:
                wire.receive(1.0)

    try:
        for _ in range(40):
            wire = SerialWire(port, port, LineEnds())
            reader = threading.Thread(target=read, args=(wire,))
            reader.start()
            os.write(near, b"x" * 50)
            wire.close()
            SerialWire(port, port, LineEnds()).close()
            reader.join(timeout=5.0)
            assert not reader.is_alive()
    finally:
        os.close(near)
        os.close(far)


class Answering(socketserver.StreamRequestHandler):
    """Answers every line by itself in capitals."""

    def handle(self):
        while line := self.rfile.readline():
            self.wfile.write(line.upper())


def answering(port: int = 0) -> socketserver.ThreadingTCPServer:
    """Serve at a port of this computer."""

    class Server(socketserver.ThreadingTCPServer):
        allow_reuse_address, daemon_threads = True, True

    server = Server(("127.0.0.1", port), Answering)
    threading.Thread(target=server.serve_forever, args=(0.02,), daemon=True).start()
    return server


@pytest.mark.parametrize("sync", ["id?", ""], ids=["with a sentinel", "without"])
def test_a_line_that_could_not_be_opened_anew_says_so_until_it_is(sync):
    """The controller is switched off and on again (common practice, no source)."""
    server = answering()
    port = server.server_address[1]
    line = ControllerLine(f"127.0.0.1:{port}", LineRules(sync=sync, sync_pattern="^ID[?]$"), timeout_s=1.0)
    assert line.exchange("pos", ExpectedReply()) == ["POS"]
    server.shutdown()
    server.server_close()
    with pytest.raises(LostError, match="cannot be opened"):
        line.reopen()
    for ask in (
        lambda: line.exchange("pos", ExpectedReply()),
        lambda: line.shout("stop"),
        lambda: line.first("pos", ExpectedReply(), limit_s=1.0),
    ):
        with pytest.raises(LostError, match="cannot be opened"):
            ask()
    server = answering(port)
    line.reopen()
    assert line.exchange("pos", ExpectedReply()) == ["POS"]
    line.shout("stop")
    line.close()
    server.shutdown()
    server.server_close()
