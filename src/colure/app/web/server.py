"""The control room's server: Starlette behind the guard, uvicorn in front."""

from __future__ import annotations

import asyncio
import gzip
from collections.abc import AsyncIterator, Awaitable, Callable
from contextlib import asynccontextmanager, suppress
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from pydantic import ValidationError
from starlette.applications import Starlette
from starlette.requests import Request
from starlette.responses import HTMLResponse, Response
from starlette.routing import Route, WebSocketRoute
from starlette.websockets import WebSocket, WebSocketDisconnect

from colure.app.web.guard.guard import HEADERS, POLICY, REPORT_POLICY, AccessControl
from colure.app.web.guard.refused_page import REFUSED_POLICY, refused_page, wants_page
from colure.app.web.guard.roles import SessionRole
from colure.app.web.guard.routes import Door
from colure.app.web.guard.sessions import SESSION_LIFE_S
from colure.app.web.room import Room, Stale
from colure.app.web.routes import DOORS
from colure.app.web.scan.live import LiveScan
from colure.app.web.views import explore as explore_view
from colure.errors import InputError, system_fault
from colure.model.strict_json import shown_json

STATIC = Path(__file__).parent / "static"
KINDS = {".html": "text/html; charset=utf-8", ".js": "text/javascript", ".css": "text/css", ".svg": "image/svg+xml"}
#: Answers below this are sent as they are, bytes; those of these doors hold a token or a code.
LEAST_PACKED = 2000
SECRET = ("/api/me", "/api/lease", "/api/invite")
#: A watcher gets at most this many pictures a second, and never one before it took the last.
FRAMES_PER_S = 12.0
#: A watcher that takes no picture for this long is let go.
PATIENCE_S = 30.0
#: A watcher hears something at least this often; a page that hears nothing for three times as long says that the server is gone.
HEARTBEAT_S = 2.0
ALIVE = '{"type":"alive"}'
ENTERED = '<!doctype html><meta charset="utf-8"><meta http-equiv="refresh" content="0; url=/"><link rel="icon" href="data:,"><title>Colure</title><p>Opening the control room.'


def build(
    room: Room, *, hosts: frozenset[str], cookie: str, secure: bool = False, doors: tuple[Door, ...] = DOORS
) -> AccessControl:
    """Return the guarded application of a room."""
    files = _files()

    @asynccontextmanager
    async def life(app: Starlette) -> AsyncIterator[None]:
        room.desk.open()
        yield
        await room.close()

    special: dict[str, Callable[[Request], Awaitable[Response]]] = {
        "/launch": _launch(room, cookie, secure=secure),
        "/": _file_of(files, "index.html"),
        "/assets/{name}": _file_of(files, None),
        "/api/openapi": _openapi(doors),
        "/api/report/{campaign}/{run}/{kind}": _report(room),
    }
    routes: list[Route | WebSocketRoute] = []
    for door in doors:
        if door.method == "WS":
            routes.append(WebSocketRoute(door.path, _live(room)))
        else:
            endpoint = special.get(door.path) or _answer(room, door)
            routes.append(Route(door.path, endpoint, methods=[door.method]))
    inner = Starlette(routes=routes, lifespan=life, exception_handlers={500: _broken})
    return AccessControl(inner, doors, room.sessions, room.lease, hosts, cookie, secure)


def _headers(policy: str = POLICY, *, keep: bool = False) -> dict[str, str]:
    return {
        **HEADERS,
        "content-security-policy": policy,
        "cache-control": "private, max-age=31536000, immutable" if keep else "no-store",
    }


def _json(content: Any, status: int = 200) -> Response:
    return Response(shown_json(content).encode(), status, media_type="application/json", headers=_headers())


def _packed(content: Any) -> Response:
    """Return an answer packed where that is worth it: levels over a sphere are a tenth then."""
    plain = shown_json(content).encode()
    if len(plain) < LEAST_PACKED:
        return Response(plain, media_type="application/json", headers=_headers())
    headers = {**_headers(), "content-encoding": "gzip"}
    return Response(gzip.compress(plain, 5, mtime=0), media_type="application/json", headers=headers)


async def _broken(request: Request, error: Exception) -> Response:
    """Say that something broke, and nothing about how: the server's own output says that."""
    return _json({"errors": ["something broke on the server; its own output says what"]}, 500)


def _answer(room: Room, door: Door) -> Callable[[Request], Awaitable[Response]]:
    async def endpoint(request: Request) -> Response:
        try:
            body = None if door.body is None else door.body.model_validate_json(await request.body())
        except ValidationError as error:
            return _json({"errors": [_fault(one) for one in error.errors(include_url=False)[:20]]}, 422)
        assert door.handler is not None  # every listed door that is not special has one
        try:
            answer = await door.handler(room, request.scope["session"], request.scope["ids"], body)
            # Answers with a secret in them are never packed: their size must tell nothing.
            pack = door.path not in SECRET and "gzip" in request.headers.get("accept-encoding", "")
            return _packed(answer) if pack else _json(answer)
        except InputError as error:
            return _json({"errors": [room.shown(one) for one in error.faults]}, 422)
        except OSError as error:
            words = system_fault(error, whole_path=False)
            if words is None:
                raise
            return _json({"errors": [words]}, 422)
        except Stale as error:
            return _json({"errors": [str(error)]}, 409)

    return endpoint


def _fault(error: Any) -> str:
    where = ".".join(str(part) for part in error["loc"]) or "body"
    return f"{where}: {error['msg']}"


@dataclass(frozen=True)
class _File:
    plain: bytes
    packed: bytes
    kind: str


def _files() -> dict[str, _File]:
    """Read the page's files once: what is not among them is not served, whatever a path says."""
    files = {}
    for path in STATIC.rglob("*"):
        if path.is_file() and path.suffix in KINDS:
            content = path.read_bytes()
            files[path.name] = _File(content, gzip.compress(content, mtime=0), KINDS[path.suffix])
    return files


def _file_of(files: dict[str, _File], fixed: str | None) -> Callable[[Request], Awaitable[Response]]:
    async def endpoint(request: Request) -> Response:
        name = fixed or request.path_params["name"]
        if name not in files:
            return _json({"errors": ["there is no such file"]}, 404)
        file, headers = files[name], _headers(keep=fixed is None)
        packed = "gzip" in request.headers.get("accept-encoding", "")
        if packed:
            headers["content-encoding"] = "gzip"
        return Response(file.packed if packed else file.plain, media_type=file.kind, headers=headers)

    return endpoint


def _launch(room: Room, cookie: str, *, secure: bool) -> Callable[[Request], Awaitable[Response]]:
    async def endpoint(request: Request) -> Response:
        admission = room.sessions.redeem(request.query_params.get("code", ""))
        if admission is None:
            wrong = 401 if room.sessions.may_fail() else 429
            told = "this link was used already or is too old; colure serve prints a new one"
            if wants_page(request.headers.get("accept", "")):
                return HTMLResponse(refused_page(told), wrong, headers=_headers(REFUSED_POLICY))
            return _json({"errors": [told]}, wrong)
        response = HTMLResponse(ENTERED, headers=_headers())
        response.set_cookie(
            cookie, admission[1], max_age=int(SESSION_LIFE_S), httponly=True, samesite="strict", secure=secure, path="/"
        )
        return response

    return endpoint


def _report(room: Room) -> Callable[[Request], Awaitable[Response]]:
    async def endpoint(request: Request) -> Response:
        ids = request.scope["ids"]
        kind = ids["kind"]
        try:
            if kind not in ("html", "pdf"):
                raise InputError([f"kind = {kind!r}: must be html or pdf"])
            asked = (ids["run"], kind, request.query_params.get("state"))
            content = await room.desk.do(explore_view.report_file, room.folder(ids["campaign"]), *asked)
        except InputError as error:
            return _json({"errors": [room.shown(one) for one in error.faults]}, 422)
        media = "application/pdf" if kind == "pdf" else "text/html; charset=utf-8"
        return Response(content, media_type=media, headers=_headers(REPORT_POLICY))

    return endpoint


def _openapi(doors: tuple[Door, ...]) -> Callable[[Request], Awaitable[Response]]:
    schemas: dict[str, Any] = {}
    paths: dict[str, Any] = {}
    answers = {str(code): {"description": text} for code, text in (
        (200, "done"), (400, "malformed"), (401, "no session"), (403, "not allowed"), (404, "not there"), (409,
        "stale command"),
        (413, "too large"), (415, "not JSON"), (421, "wrong host"), (422, "refused, with reasons"), (423, "no lease"),
        (429, "too many"), (503, "too much at once"),
    )}  # fmt: skip
    for door in doors:
        if door.method == "WS" or not door.path.startswith("/api/"):
            continue
        ids = [part[1:-1] for part in door.path.split("/") if part.startswith("{")]
        entry: dict[str, Any] = {
            "summary": door.summary, "responses": answers, "x-role": door.role.word,
            "parameters": [{"name": n, "in": "path", "required": True, "schema": {"type": "string",
            "pattern": "^[A-Za-z0-9_-]{1,80}$"}}
                           for n in ids],
        }  # fmt: skip
        if door.body is not None:
            schema = door.body.model_json_schema(ref_template="#/components/schemas/{model}")
            schemas.update(schema.pop("$defs", {}))
            entry["requestBody"] = {"required": True, "content": {"application/json": {"schema": schema}}}
        paths.setdefault(door.path, {})[door.method.lower()] = entry
    table = {
        "openapi": "3.1.0",
        "info": {"title": "Colure control room", "version": "1"},
        "paths": paths,
        "components": {"schemas": schemas},
    }

    async def endpoint(request: Request) -> Response:
        return _json(table)

    return endpoint


def _live(room: Room) -> Callable[[WebSocket], Awaitable[None]]:
    async def endpoint(socket: WebSocket) -> None:
        await socket.accept()
        taken = asyncio.Event()
        taken.set()

        async def hear() -> None:
            while True:
                message = await socket.receive()
                if message["type"] == "websocket.disconnect":
                    return
                taken.set()

        hearing = asyncio.create_task(hear())
        showing = asyncio.create_task(_show(room, socket, taken))
        try:
            await asyncio.wait({hearing, showing}, return_when=asyncio.FIRST_COMPLETED)
        finally:
            hearing.cancel()
            showing.cancel()
            with suppress(asyncio.CancelledError, WebSocketDisconnect, RuntimeError):
                await showing

    return endpoint


async def _show(room: Room, socket: WebSocket, taken: asyncio.Event) -> None:
    """Send the newest picture whenever there is a newer one and the last was taken."""
    grid_of: LiveScan | None = None
    sent: tuple[int, dict[str, Any]] | None = None
    now_s = asyncio.get_running_loop().time
    told_s = shown_s = now_s()
    while not room.leaving():
        if now_s() - told_s >= HEARTBEAT_S:
            told_s = now_s()
            await socket.send_text(ALIVE)
        if not taken.is_set():
            if now_s() - shown_s > PATIENCE_S:
                return
            with suppress(TimeoutError):
                await asyncio.wait_for(taken.wait(), 1.0 / FRAMES_PER_S)
            continue
        scan, holder = room.scan, room.lease.holder
        about = {"sequence": room.sequence, "lease": "" if holder is None else holder.name, "hand": room.by_hand,
                 "jobs": sum(not one.over for one in room.jobs.all())}  # fmt: skip
        now = (-1 if scan is None else scan.version, about)
        if now != sent:
            sent, told_s, shown_s = now, now_s(), now_s()
            if scan is None or room.by_hand is not None:
                idle = {"type": "status", "state": "idle", "running": False, **about}
                await socket.send_text(shown_json(idle if scan is None else {**scan.status(), **about}))
            else:
                if grid_of is not scan:
                    grid_of = scan
                    await socket.send_text(shown_json(scan.geometry()))
                taken.clear()
                await socket.send_text(shown_json({**scan.status(), **about}))
                await socket.send_bytes(scan.frame())
        await asyncio.sleep(1.0 / FRAMES_PER_S)


def serve(folders: list[Path], *, port: int, host: str, certificate: Path | None, key: Path | None, role: SessionRole,
          announce: Callable[[str], None]) -> None:  # fmt: skip
    """Serve a control room until it is told to end."""
    import socket

    import uvicorn

    from colure.acquire.control import hear_stops_soon
    from colure.app.web.guard.connections import BoundedProtocol

    hear_stops_soon()
    # Only a socket that says that it is TCP is freed from Nagle's wait by asyncio: 40 ms for every answer on a kept connection.
    family = socket.AF_INET6 if ":" in host else socket.AF_INET
    listening = socket.socket(family, socket.SOCK_STREAM, socket.IPPROTO_TCP)
    listening.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
    listening.bind((host, port))
    # A link that is opened at once waits a moment instead of being refused.
    listening.listen(128)
    port = listening.getsockname()[1]
    secure = certificate is not None
    names = (
        {"127.0.0.1", "localhost", "[::1]"} if host in ("127.0.0.1", "::1") else {f"[{host}]" if ":" in host else host}
    )
    room = Room(folders)
    # Cookies do not know ports: two rooms on one computer keep theirs apart by name.
    app = build(room, hosts=frozenset(f"{name}:{port}" for name in names), cookie=f"colure-{port}", secure=secure)
    shown = f"[{host}]" if ":" in host else host
    announce(f"{'https' if secure else 'http'}://{shown}:{port}/launch?code={room.sessions.invite(role)}")
    config = uvicorn.Config(
        app, http=BoundedProtocol, access_log=False, log_level="warning", server_header=False, date_header=False,
        timeout_keep_alive=5, ws_max_size=65536,
        ws="auto", lifespan="on", ssl_certfile=None if certificate is None else str(certificate),
        ssl_keyfile=None if key is None else str(key),
        proxy_headers=False, forwarded_allow_ips="", h11_max_incomplete_event_size=16384, timeout_graceful_shutdown=5,
    )  # fmt: skip
    server = uvicorn.Server(config)
    room.leaving = lambda: server.should_exit
    server.run(sockets=[listening])
