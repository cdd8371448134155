"""Wires: a port that is let go of can be taken again at once, whoever was reading."""

from __future__ import annotations

import os
import select
import socketserver
import sys
import threading
import time
from contextlib import suppress

import pytest

from colure.instruments.line import ControllerLine, ExpectedReply, LineRules
from colure.instruments.links import LineEnds
from colure.instruments.protocols import HeldError, LostError
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


@pytest.mark.skipif(not sys.platform.startswith("linux"), reason="a Linux pseudo-terminal")
def test_settings_that_a_pseudo_terminal_does_not_have_are_named_when_it_is_opened_again():
    """Linux, drivers/tty/pty.c, pty_set_termios: CSIZE and PARENB are cleared, CS8 is set, whatever was asked."""
    near, far = os.openpty()
    port, ends = os.ttyname(far), LineEnds(baud_rate=9600, data_bits=7, parity="even", stop_bits=2)
    try:
        SerialWire(
            port, port, ends
        ).close()  # the first time its line speed is new: the system took a part of it, and says yes
        try:
            SerialWire(port, port, ends).close()
        except LostError as error:
            assert "7 data bits, parity 'even', 2 stop bits, 9600 baud: not taken" in str(error)
            assert 'set `data_bits = 8` and `parity = "none"`' in str(error)
        else:
            pytest.skip("this system's C library takes 7E2 for a pseudo-terminal, which has 8N1 all the same")
        SerialWire(port, port, LineEnds(baud_rate=9600)).close()
    finally:
        os.close(near)
        os.close(far)


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


@pytest.mark.skipif(os.name == "nt", reason="wants a pseudo-terminal")
@pytest.mark.parametrize("waiting", [False, True], ids=["idle", "somebody waits to send"])
def test_a_hold_is_sent_although_the_controller_has_asked_for_silence(waiting):
    """XOFF (DC3, ISO/IEC 646) may come from a full buffer or from a disturbed line; the hold came 2 s later, or never."""
    import tty

    near, far = os.openpty()
    tty.setraw(near)
    ends = LineEnds(read="\r", write="\r", flow="xonxoff")
    line = ControllerLine(os.ttyname(far), LineRules(ends=ends), timeout_s=0.5)
    heard = bytearray()

    def hear(until: bytes) -> bytes:
        while until not in heard and select.select([near], [], [], 1.5)[0]:
            heard.extend(os.read(near, 1000))
        return bytes(heard)

    try:
        os.write(near, b"\x13")
        time.sleep(0.05)
        asking = threading.Thread(target=_asked, args=(line,))
        if waiting:
            asking.start()
            time.sleep(0.05)
        assert heard == b""
        line.shout("HALT\r")
        assert hear(b"HALT\r").endswith(b"HALT\r")
        if waiting:
            asking.join()
            assert bytes(heard) == b"WHERE\rHALT\r"
    finally:
        line.close()
        os.close(near)
        os.close(far)


def _asked(line: ControllerLine) -> None:
    with suppress(LostError, HeldError):
        line.exchange("WHERE", ExpectedReply())
