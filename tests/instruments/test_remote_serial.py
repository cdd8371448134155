"""Controllers behind `rfc2217://` and `socket://`: twenty points, a hold on the way, and a line that broke and came back."""

from __future__ import annotations

import os
import random
import time
from contextlib import contextmanager

import pytest

from colure.acquire.clocks import SystemClock
from colure.errors import InputError
from colure.instruments.line_axes import LineAxes
from colure.instruments.protocols import HeldError, LostError, unwatched
from tests.instruments import languages
from tests.instruments.peers import AXES, Motors, Tcp, Terminal
from tests.instruments.test_languages import go, places, profile_from

pytestmark = [
    pytest.mark.skipif(os.name == "nt", reason="pseudo-terminals"),
    pytest.mark.filterwarnings("ignore:set(Daemon|Name):DeprecationWarning"),  # the serial library's
]


@contextmanager
def remote(kind: str, *, speed_deg_s: float = 8000.0, profile: str = languages.Counter.PROFILE):
    """A controller that counts steps behind a serial port of another computer, or one that talks behind a plain socket."""
    motors = Motors(speed_deg_s)
    if kind == "rfc2217":
        from tests.instruments.remote_serial import RemoteSerial

        terminal = Terminal(lambda: languages.Counter(motors))
        server, words = RemoteSerial(terminal.resource), profile
        resource, closing = server.resource, (server, terminal)
    else:
        server, words = Tcp(lambda: languages.Talker(motors)), languages.Talker.PROFILE
        resource, closing = f"socket://{server.resource}", (server,)
    axes = None
    try:
        axes = LineAxes(resource, profile_from(words), AXES, timeout_s=2.0, timer=SystemClock())
        yield motors, axes, server
    finally:
        if axes is not None:
            axes.close()
        for one in closing:
            one.close()


@pytest.mark.parametrize("kind", ["rfc2217", "socket"])
def test_twenty_points_and_a_hold(kind, prompt):
    draw = random.Random(kind)
    with remote(kind) as (motors, axes, server):
        for _ in range(20):
            wanted = {name: draw.uniform(-160.0, 160.0) for name in AXES}
            assert go(axes, motors, wanted) == pytest.approx(wanted, abs=0.011)
            assert places(motors) == pytest.approx(wanted, abs=0.011), "the axes themselves"
        if kind == "rfc2217":
            # As the profile says, down at the port itself (RFC 2217, section 3).
            assert server.settings == {"baudrate": 9600, "bytesize": 7, "parity": "E", "stopbits": 2}
        motors.speed = 50.0
        delays = []
        for number in range(12):
            axes.begin(dict.fromkeys(AXES, 100.0 if number % 2 else -100.0))
            time.sleep(0.03)
            axes.status()
            assert motors.moving()
            sent = time.monotonic()
            axes.hold()
            while motors.moving():
                time.sleep(0.0005)
            delays.append(time.monotonic() - sent)
            with pytest.raises(HeldError):
                axes.finish(0.0, unwatched, limit_s=5.0)
            axes.release()
        prompt(delays, 0.05)


def test_a_port_that_broke_is_opened_anew():
    with remote("rfc2217") as (motors, axes, server):
        go(axes, motors, {"azimuth": 30.0, "roll": 5.0, "probe": -5.0})
        server.drop()
        with pytest.raises(LostError):
            axes.status()
        axes.reconnect()
        assert axes.status().positions_deg == pytest.approx({"azimuth": 30.0, "roll": 5.0, "probe": -5.0}, abs=0.011)


def test_nobody_at_the_port_is_said_in_one_line():
    with pytest.raises((LostError, InputError), match="rfc2217://127.0.0.1:1: cannot be opened"):
        LineAxes("rfc2217://127.0.0.1:1", profile_from(languages.Counter.PROFILE), AXES, timeout_s=0.5, timer=SystemClock())  # fmt: skip
