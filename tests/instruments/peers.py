"""Controllers that nobody of the drivers' side wrote for: motors, a socket or a pseudo-terminal, a language each."""

from __future__ import annotations

import os
import socket
import threading
import time
from collections.abc import Callable
from contextlib import suppress

from colure.model.chamber import Axis
from tests.instruments.loopback import Loopback

SPEED_DEG_S = 400.0
AXES = {
    name: Axis(min_deg=-170, max_deg=170, speed_deg_s=SPEED_DEG_S, acceleration_deg_s2=9000, settle_s=0.0)
    for name in ("azimuth", "roll", "probe")
}


class Motors:
    """Three axes at constant speed in real time; positions in degrees."""

    def __init__(self, speed_deg_s: float = SPEED_DEG_S) -> None:
        self.speed = speed_deg_s
        self.held = False
        self.log: list[tuple[str, float]] = []
        self.heard: list[str] = []  # every line, in order
        self._ways = dict.fromkeys(AXES, (0.0, 0.0, 0.0, 0.0))  # from, to, begin, end
        self._lock = threading.RLock()

    def at(self, name: str) -> float:
        with self._lock:
            start, target, begin, end = self._ways[name]
            now = time.monotonic()
            return (
                target
                if now >= end or end == begin
                else start + (target - start) * max(now - begin, 0.0) / (end - begin)
            )

    def moving(self, name: str | None = None) -> bool:
        now = time.monotonic()
        with self._lock:
            return any(now < way[3] for key, way in self._ways.items() if name in (None, key))

    def go(self, name: str, target: float, *, after: bool = False) -> float:
        """Start a move (`after` those that run) and return when it ends."""
        with self._lock:
            begin = max([time.monotonic(), *((way[3] for way in self._ways.values()) if after else ())])
            start = self.at(name)
            end = begin + abs(target - start) / self.speed
            self._ways[name] = (start, target, begin, end)
            self.log.append((name, target))
            return end

    def hold(self) -> None:
        with self._lock:
            self.held = True
            now = time.monotonic()
            self._ways = {name: (self.at(name), self.at(name), now, now) for name in self._ways}

    def wait(self, until: Callable[[], bool] | None = None) -> None:
        while self.moving() and not (until is not None and until()):
            time.sleep(0.002)


class Peer:
    """One controller; a subclass gives `took(data)` the bytes and says things by `say`."""

    def __init__(self, motors: Motors | None = None) -> None:
        self.motors = motors or Motors()
        self.pending = b""
        self.say: Callable[[str], None] = lambda text: None

    def greeted(self) -> None:
        """A connection begins."""

    def took(self, data: bytes) -> None:
        raise NotImplementedError

    def lines(self, data: bytes, end: bytes, raw: bytes = b"") -> list[str]:
        """Cut lines off; characters of `raw` come out by themselves, at once."""
        out = []
        for value in data:
            character = bytes([value])
            if character in raw and raw:
                out.append(character.decode("latin-1"))
            else:
                self.pending += character
                if self.pending.endswith(end):
                    out.append(self.pending[: -len(end)].decode("latin-1"))
                    self.motors.heard.append(out[-1])
                    self.pending = b""
        return out


class Tcp(Loopback):
    """Serves a peer on a loopback port; every connection has a `Peer` of its own that shares the motors."""

    def __init__(self, make: Callable[[], Peer]) -> None:
        self._make = make
        super().__init__()

    def _serve(self, connection: socket.socket) -> None:
        peer = self._make()

        def say(text: str) -> None:
            with suppress(OSError):
                connection.sendall(text.encode("latin-1"))

        peer.say = say
        peer.greeted()
        while data := connection.recv(4096):
            peer.took(data)


class Terminal:
    """Serves a peer on a pseudo-terminal; bytes pass at a baud rate if one is given."""

    def __init__(self, make: Callable[[], Peer], *, baud: float = 0.0) -> None:
        import tty

        self._near, self._far = os.openpty()
        tty.setraw(self._far)
        self.resource = os.ttyname(self._far)
        self._byte_s = 10.0 / baud if baud else 0.0
        self._lock, self._closed = threading.Lock(), False
        self.peer = make()
        self.peer.say = self._say
        threading.Thread(target=self._serve, daemon=True).start()

    def _say(self, text: str) -> None:
        for character in [text] if not self._byte_s else text:
            time.sleep(self._byte_s)
            with self._lock, suppress(OSError):
                if not self._closed:  # its number may be another terminal's by then
                    os.write(self._near, character.encode("latin-1"))

    def _serve(self) -> None:
        self.peer.greeted()
        with suppress(OSError):
            while data := os.read(self._near, 4096 if not self._byte_s else 1):
                time.sleep(self._byte_s)
                self.peer.took(data)
        with self._lock:
            self._closed = True
            os.close(self._near)

    def close(self) -> None:
        with self._lock, suppress(OSError):
            self._closed = True
            os.close(self._far)  # wakes the reader, which then closes its own end


def later(action: Callable[[], None]) -> None:
    """Do something beside the line's reader."""
    threading.Thread(target=action, daemon=True).start()
