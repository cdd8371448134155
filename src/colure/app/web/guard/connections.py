"""Connections that ask nothing: they are dropped after a while, and make room for those that ask.

The guard bounds requests and sockets; what never completes a request line never reaches it.
"""

from __future__ import annotations

import asyncio

from uvicorn.protocols.http.h11_impl import H11Protocol

#: A request's line and headers must be there within this time.
PATIENCE_S = 10.0
#: Connections at once; beyond it the one that has been silent longest is dropped for the newcomer, who may want to stop a scan.
MOST_CONNECTIONS = 256


class BoundedProtocol(H11Protocol):
    """HTTP/1.1 as uvicorn speaks it, with a limit to how long and how many may be silent."""

    _deadline: asyncio.TimerHandle | None = None
    _since = 0.0
    _upgraded = False

    @property
    def silent(self) -> bool:
        """Tell whether no request is being answered here."""
        return self.cycle is None or self.cycle.response_complete

    def connection_made(self, transport: asyncio.Transport) -> None:  # type: ignore[override]
        """Take a connection, if need be in place of a silent one."""
        super().connection_made(transport)
        self._since = self.loop.time()
        self._wait()
        if len(self.connections) > MOST_CONNECTIONS:
            # Those that were dropped a moment ago are still listed: they make room for nobody else.
            others = [
                one
                for one in self.connections
                if isinstance(one, BoundedProtocol)
                and one is not self
                and one.silent
                and not one.transport.is_closing()
            ]
            if others:
                min(others, key=lambda one: one._since).transport.abort()

    def data_received(self, data: bytes) -> None:
        """Read; what completes a request ends the wait for it."""
        before = self.cycle
        super().data_received(data)
        if self.cycle is not before:
            self._since = self.loop.time()
            self._rest()
        elif self.silent and self._deadline is None and not self._upgraded:
            self._wait()

    def connection_lost(self, exc: Exception | None) -> None:
        """Forget the wait with the connection."""
        self._rest()
        super().connection_lost(exc)

    def handle_websocket_upgrade(self, event: object) -> None:
        """A socket has its own limits from here on: no deadline may be set again for what is silent by nature."""
        self._upgraded = True
        self._rest()
        super().handle_websocket_upgrade(event)  # type: ignore[arg-type]

    def _wait(self) -> None:
        self._deadline = self.loop.call_later(PATIENCE_S, self._drop)

    def _rest(self) -> None:
        if self._deadline is not None:
            self._deadline.cancel()
            self._deadline = None

    def _drop(self) -> None:
        self._deadline = None
        if self.silent and not self.transport.is_closing():
            self.transport.abort()
