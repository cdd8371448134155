"""Access control of the control room: denies by default.

Over HTTP and WebSocket alike, before anything is read: the exact host (against rebinding), the exact
origin (against foreign pages), a listed door, a session, its role, the token, size, rate and load.
"""

from __future__ import annotations

import asyncio
from collections.abc import Awaitable, Callable, MutableMapping
from dataclasses import dataclass, field
from http.cookies import CookieError, SimpleCookie
from typing import Any

from colure.app.web.guard.refused_page import REFUSED_POLICY, refused_page, wants_page
from colure.app.web.guard.roles import SessionRole
from colure.app.web.guard.routes import Door, find
from colure.app.web.guard.sessions import Lease, Session, Sessions
from colure.model.strict_json import json_text

Scope = MutableMapping[str, Any]
Message = MutableMapping[str, Any]
Receive = Callable[[], Awaitable[Message]]
Send = Callable[[Message], Awaitable[None]]
App = Callable[[Scope, Receive, Send], Awaitable[None]]

LARGEST_BODY = 1_000_000
BODY_TIMEOUT_S = 10.0
MOST_REQUESTS, MOST_SOCKETS = 48, 32
TOKEN_HEADER = b"x-colure-token"

POLICY = (
    "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data: blob:; connect-src 'self'; "
    "base-uri 'none'; form-action 'none'; frame-ancestors 'none'; require-trusted-types-for 'script'; trusted-types 'none'"
)
#: A report is a file of its own with its styles inside; it may do nothing but be read.
REPORT_POLICY = (
    "default-src 'none'; style-src 'unsafe-inline'; img-src data:; frame-ancestors 'none'; sandbox allow-downloads"
)
HEADERS = {
    "referrer-policy": "no-referrer",
    "x-content-type-options": "nosniff",
    "x-frame-options": "DENY",
    "cross-origin-opener-policy": "same-origin",
    "cross-origin-resource-policy": "same-origin",
    "permissions-policy": "camera=(), microphone=(), geolocation=(), usb=(), serial=()",
}


class Refused(Exception):  # noqa: N818 - a refusal is an answer, not an error
    """The guard's answer to what may not come in."""

    def __init__(self, status: int, text: str) -> None:
        super().__init__(text)
        self.status = status


@dataclass
class AccessControl:
    """ASGI application that lets through what the doors' rules allow.

    hosts
        Values of the Host header that are this server's, `name:port`.
    secure
        True: served over TLS, so that origins begin with https.
    """

    app: App
    doors: tuple[Door, ...]
    sessions: Sessions
    lease: Lease
    hosts: frozenset[str]
    cookie: str
    secure: bool = False
    _requests: int = field(default=0, init=False)
    _sockets: int = field(default=0, init=False)

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        if scope["type"] not in ("http", "websocket"):
            await self.app(scope, receive, send)
            return
        try:
            door = self._admit(scope)
            read = receive if scope["type"] == "websocket" else await _whole_body(receive, scope)
        except Refused as refused:
            await _refuse(scope, receive, send, refused)
            return
        await self._through(door, scope, read, send)

    async def _through(self, door: Door, scope: Scope, receive: Receive, send: Send) -> None:
        """Pass a request on and count it while it lasts."""
        socket = scope["type"] == "websocket"
        self._sockets += socket
        self._requests += not socket
        try:
            await self.app(scope, receive, send)
        finally:
            self._sockets -= socket
            self._requests -= not socket

    def _admit(self, scope: Scope) -> Door:
        """Return the door of a request that may pass, with `door`, `ids` and `session` in its scope.

        Raises
        ------
        Refused
            With the status of what is wrong first.
        """
        headers = _single(scope)
        socket = scope["type"] == "websocket"
        method = "WS" if socket else scope["method"]
        host = headers.get(b"host", b"").decode("latin-1").lower()
        if host not in self.hosts:
            raise Refused(421, "this is not a name of this server")
        self._check_origin(headers, host, changing=socket or method != "GET")
        route = find(self.doors, method, scope["path"])
        if route is None:
            raise Refused(404, "there is no such door")
        door, ids = route
        session = self._session(headers)
        if session is None and door.role > SessionRole.NOBODY:
            raise Refused(401 if self.sessions.may_fail() else 429, "open the link that colure serve printed")
        if session is not None and session.role < door.role:
            raise Refused(403, f"needs a session that may {door.role.word}; this one may {session.role.word}")
        if method == "POST":
            self._check_change(headers, session)
        self._check_load(door, session, socket=socket)
        if door.lease and (session is None or self.lease.holder is not session):
            raise Refused(423, "the motion lease is not held by this session; take it first")
        scope["door"], scope["ids"], scope["session"] = door, ids, session
        return door

    def _check_origin(self, headers: dict[bytes, bytes], host: str, *, changing: bool) -> None:
        """Refuse what another page sends; what changes something must say where it comes from."""
        origin = headers.get(b"origin")
        expected = f"{'https' if self.secure else 'http'}://{host}".encode("latin-1")
        if origin is None:
            if changing:
                raise Refused(403, "Origin is missing")
        elif origin.lower() != expected:
            raise Refused(403, "Origin is another page's")
        if headers.get(b"sec-fetch-site", b"same-origin") not in (b"same-origin", b"none"):
            raise Refused(403, "the request comes from another site")

    def _session(self, headers: dict[bytes, bytes]) -> Session | None:
        try:
            jar = SimpleCookie(headers.get(b"cookie", b"").decode("latin-1"))
        except CookieError:
            return None
        return self.sessions.find(jar[self.cookie].value) if self.cookie in jar else None

    def _check_change(self, headers: dict[bytes, bytes], session: Session | None) -> None:
        if headers.get(b"content-type", b"").split(b";")[0].strip().lower() != b"application/json":
            raise Refused(415, "Content-Type must be application/json")
        token = headers.get(TOKEN_HEADER, b"").decode("latin-1")
        if session is None or not self.sessions.token_fits(session, token):
            raise Refused(403, "the session's token is missing or wrong")

    def _check_load(self, door: Door, session: Session | None, *, socket: bool) -> None:
        """Refuse what is too much; stop is never too much."""
        if door.reserved:
            return
        if socket and self._sockets >= MOST_SOCKETS:
            raise Refused(503, f"{MOST_SOCKETS} pages watch already")
        if not socket and self._requests >= MOST_REQUESTS:
            raise Refused(503, "too many requests at once")
        if session is not None and not self.sessions.within_rate(session):
            raise Refused(429, "too many requests a second")


def _single(scope: Scope) -> dict[bytes, bytes]:
    """Return the headers by name; what is sent twice where one counts is refused."""
    headers: dict[bytes, bytes] = {}
    for name, value in scope["headers"]:
        key = bytes(name).lower()
        if key in headers and key in (b"host", b"origin", b"content-length", b"content-type", TOKEN_HEADER):
            raise Refused(400, f"header {key.decode('latin-1')} is sent twice")
        headers[key] = headers[key] + b"; " + value if key in headers and key == b"cookie" else bytes(value)
    return headers


async def _whole_body(receive: Receive, scope: Scope) -> Receive:
    """Read a request's body within its limits of size and time, and return it as one message."""
    stated = _single(scope).get(b"content-length", b"0")
    if not stated.isdigit() or int(stated) > LARGEST_BODY:
        raise Refused(413, f"body: must be at most {LARGEST_BODY} bytes")
    body, more = b"", True
    try:
        async with asyncio.timeout(BODY_TIMEOUT_S):
            while more:
                message = await receive()
                if message["type"] == "http.disconnect":
                    raise Refused(400, "the request broke off")
                body += message.get("body", b"")
                more = bool(message.get("more_body", False))
                if len(body) > LARGEST_BODY:
                    raise Refused(413, f"body: must be at most {LARGEST_BODY} bytes")
    except TimeoutError:
        raise Refused(408, f"body: must come within {BODY_TIMEOUT_S:g} s") from None
    sent = False

    async def again() -> Message:
        nonlocal sent
        if sent:
            return await receive()
        sent = True
        return {"type": "http.request", "body": body, "more_body": False}

    return again


async def _refuse(scope: Scope, receive: Receive, send: Send, refused: Refused) -> None:
    if scope["type"] == "websocket":
        await receive()
        await send({"type": "websocket.close", "code": 1008, "reason": str(refused)})
        return
    page = refused.status in (401, 429) and wants_page(_single(scope).get(b"accept", b"").decode("latin-1"))
    content = refused_page(str(refused)) if page else json_text({"errors": [str(refused)]}).encode()
    headers = {**HEADERS, "content-security-policy": REFUSED_POLICY if page else POLICY,
               "content-type": "text/html; charset=utf-8" if page else "application/json",
               "cache-control": "no-store",
               "content-length": str(len(content))}  # fmt: skip
    listed = [(name.encode(), value.encode()) for name, value in headers.items()]
    await send({"type": "http.response.start", "status": refused.status, "headers": listed})
    await send({"type": "http.response.body", "body": content})
