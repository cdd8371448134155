"""Connections that ask nothing: they are dropped after a while, and make room for those that ask.

The guard bounds requests and sockets; what never completes a request line never reaches it.
"""

from __future__ import annotations

import asyncio
import select
from dataclasses import dataclass, field
from weakref import WeakKeyDictionary

from uvicorn.protocols.http.h11_impl import H11Protocol

#: A request's line and headers must be there within this time.
PATIENCE_S = 10.0
#: Connections at once; beyond it the one that has been silent longest is dropped for the newcomer, who may want to stop a scan.
MOST_CONNECTIONS = 256


@dataclass
class _Connected:
    """Connections of one server that speak HTTP, the one that has been silent longest first; and how many were let go.

    What was let go is still listed by the server for a moment, and makes room for nobody else.
    """

    in_line: dict[BoundedProtocol, None] = field(default_factory=dict)
    leaving: int = 0


_servers: WeakKeyDictionary[object, _Connected] = WeakKeyDictionary()


class BoundedProtocol(H11Protocol):
    """HTTP/1.1 as uvicorn speaks it, with a limit to how long and how many may be silent."""

    _deadline: asyncio.TimerHandle | None = None
    _upgraded = False
    _dropped = False

    @property
    def silent(self) -> bool:
        """Tell whether no request is being answered here."""
        return self.cycle is None or self.cycle.response_complete

    def connection_made(self, transport: asyncio.Transport) -> None:  # type: ignore[override]
        """Take a connection, if need be in place of a silent one."""
        super().connection_made(transport)
        self._all.in_line[self] = None
        self._wait()
        if len(self.connections) - self._all.leaving > MOST_CONNECTIONS:
            self._make_room()

    @property
    def _all(self) -> _Connected:
        return _servers.setdefault(self.server_state, _Connected())

    def _make_room(self) -> None:
        """Drop whoever has been silent longest."""
        for one in self._all.in_line:
            # Of hundreds that come at once, one may have said STOP already and not been read yet.
            if one is not self and one.silent and not one.spoken:
                one._drop()
                return

    @property
    def spoken(self) -> bool:
        """Tell whether something came that was not read yet."""
        line = self.transport.get_extra_info("socket")
        if line is None or line.fileno() < 0 or not hasattr(select, "poll"):
            return False
        poll = select.poll()
        poll.register(line.fileno(), select.POLLIN)
        return bool(poll.poll(0))

    def data_received(self, data: bytes) -> None:
        """Read; what completes a request ends the wait for it."""
        before = self.cycle
        super().data_received(data)
        if self.cycle is not before:
            line = self._all.in_line
            if line.pop(self, 0) is None:
                line[self] = None
            self._rest()
        elif self.silent and self._deadline is None and not self._upgraded:
            self._wait()

    def connection_lost(self, exc: Exception | None) -> None:
        """Forget the wait with the connection."""
        self._rest()
        self._all.in_line.pop(self, None)
        if self._dropped:
            self._all.leaving -= 1
        super().connection_lost(exc)

    def handle_websocket_upgrade(self, event: object) -> None:
        """A socket has its own limits from here on: no deadline may be set again for what is silent by nature."""
        self._upgraded = True
        self._rest()
        self._all.in_line.pop(self, None)
        super().handle_websocket_upgrade(event)  # type: ignore[arg-type]

    def _wait(self) -> None:
        self._deadline = self.loop.call_later(PATIENCE_S, self._drop)

    def _rest(self) -> None:
        if self._deadline is not None:
            self._deadline.cancel()
            self._deadline = None

    def _drop(self) -> None:
        self._rest()
        if self.silent and not self.transport.is_closing():
            self._all.in_line.pop(self, None)
            self._all.leaving += 1
            self._dropped = True
            self.transport.abort()
