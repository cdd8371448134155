"""Wires: a port that is let go of can be taken again at once, whoever was reading."""

from __future__ import annotations

import os
import threading
from contextlib import suppress

import pytest

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
