"""Who comes through which door: every door x host x origin x session x token x kind of body, against an oracle written apart.

The attacks are those of the reliability sheet, section 3: rebinding, cross-site requests and sockets, stolen and
guessed tokens, view-only sessions that reach for more, motion without the lease.
"""

from __future__ import annotations

import asyncio
import itertools
from pathlib import Path

import pytest
from starlette.applications import Starlette
from starlette.responses import PlainTextResponse
from starlette.routing import Route

from colure.app.web.guard import guard as guards
from colure.app.web.guard.guard import AccessControl
from colure.app.web.guard.roles import SessionRole
from colure.app.web.guard.routes import Door, find, is_id
from colure.app.web.guard.sessions import BURST, CODE_LIFE_S, LEASE_S, SESSION_LIFE_S, Bucket, Lease, Sessions
from colure.app.web.room import Room
from colure.app.web.routes import DOORS
from colure.app.web.server import build
from tests.app.web.loops import in_a_loop

HOST = "127.0.0.1:8024"
HOSTS = (HOST, "localhost:8024", "127.0.0.1:8025", "evil.example:8024", "127.0.0.1", "", "127.0.0.1:8024.evil.example")
ORIGINS = (None, "same", "https://evil.example", "null", "http://127.0.0.1:8025", "http://localhost.evil.example:8024")
SITES = (None, "same-origin", "cross-site")


def guarded() -> tuple[AccessControl, dict[SessionRole, tuple[str, str]]]:
    """A guard in front of an application that always answers, and a session of every role: (cookie, token)."""

    async def inner(scope, receive, send):
        await PlainTextResponse("in")(scope, receive, send)

    sessions, lease = Sessions(), Lease()
    keys = {}
    for role in (SessionRole.VIEW, SessionRole.OPERATE, SessionRole.CONFIGURE):
        session, cookie = sessions.redeem(sessions.invite(role))
        session.bucket = Bucket(rate=1e9, burst=1e9)
        keys[role] = (cookie, session.token)
    sessions._wrong = Bucket(rate=1e9, burst=1e9)
    return AccessControl(inner, DOORS, sessions, lease, frozenset({HOST, "localhost:8024"}), "colure-8024"), keys


def scope_of(door: Door, host, origin, cookie, token, site, kind="application/json", method=None):
    headers = [(b"host", host.encode())] if host else []
    if origin is not None:
        headers.append((b"origin", (f"http://{host}" if origin == "same" else origin).encode()))
    if cookie:
        headers.append((b"cookie", f"other=1; colure-8024={cookie}".encode()))
    if token:
        headers.append((b"x-colure-token", token.encode()))
    if site:
        headers.append((b"sec-fetch-site", site.encode()))
    if kind:
        headers.append((b"content-type", kind.encode()))
    path = "/".join("abc" if part.startswith("{") else part for part in door.path.split("/"))
    kind_of = "websocket" if door.method == "WS" else "http"
    return {"type": kind_of, "method": method or door.method, "path": path, "headers": headers}


def allowed(door: Door, host, origin, role, token_good, site, holds) -> bool:
    """The rules as the reliability sheet words them, without a line of the guard."""
    if host not in (HOST, "localhost:8024"):
        return False
    changing = door.method in ("POST", "WS")
    if origin is None and changing:
        return False
    if origin not in (None, "same") or site == "cross-site":
        return False
    if role < door.role:
        return False
    if door.method == "POST" and not token_good:
        return False
    return holds or not door.lease


def test_access_matrix():
    guard, keys = guarded()
    cells = wrong = 0
    for holding in (None, SessionRole.OPERATE):
        guard.lease._holder = None
        if holding is not None:
            session = guard.sessions.find(keys[holding][0])
            assert guard.lease.take(session)
        for door, host, origin, role, token, site in itertools.product(
            DOORS, HOSTS, ORIGINS, SessionRole, ("own", "other", "none"), SITES
        ):
            cookie = "" if role is SessionRole.NOBODY else keys[role][0]
            secret = {
                "own": "" if role is SessionRole.NOBODY else keys[role][1],
                "other": keys[SessionRole.CONFIGURE][1][::-1],
                "none": "",
            }[token]
            scope = scope_of(door, host, origin, cookie, secret, site)
            try:
                guard._admit(scope)
                found = True
            except guards.Refused:
                found = False
            expected = allowed(door, host, origin, role, token == "own", site, role is holding and holding is not None)
            cells += 1
            wrong += found != expected
            assert found == expected, (door.path, host, origin, role, token, site, holding)
    print(f"{cells} cells, {wrong} wrong")
    assert cells >= 5000


@pytest.mark.parametrize(
    "kind", ["", "text/plain", "application/x-www-form-urlencoded", "multipart/form-data; boundary=x"]
)
def test_what_a_foreign_form_can_send_is_not_taken(kind):
    guard, keys = guarded()
    stop = next(d for d in DOORS if d.path == "/api/stop")
    with pytest.raises(guards.Refused) as refused:
        guard._admit(scope_of(stop, HOST, "same", *keys[SessionRole.VIEW], "same-origin", kind))
    assert refused.value.status == 415


def test_twice_the_same_header_is_refused():
    guard, keys = guarded()
    for name, value in ((b"host", HOST.encode()), (b"origin", f"http://{HOST}".encode()), (b"x-colure-token", b"x")):
        scope = scope_of(DOORS[3], HOST, "same", *keys[SessionRole.VIEW], None)
        scope["headers"] += [(name, value), (name, value)]
        with pytest.raises(guards.Refused):
            guard._admit(scope)


def test_a_route_without_a_rule_does_not_open(tmp_path):
    """Whatever the application serves, the guard lets in only what the table lists; and all of the table is served."""
    app = build(Room([tmp_path]), hosts=frozenset({HOST}), cookie="colure-8024")
    inner = app.app
    assert isinstance(inner, Starlette)
    listed = {door.path for door in DOORS}
    assert {route.path for route in inner.routes} == listed
    inner.router.routes.append(Route("/api/secret", lambda request: PlainTextResponse("in")))
    session, cookie = app.sessions.redeem(app.sessions.invite(SessionRole.CONFIGURE))
    scope = scope_of(Door("GET", "/api/secret", SessionRole.VIEW, ""), HOST, "same", cookie, session.token, None)
    with pytest.raises(guards.Refused) as refused:
        app._admit(scope)
    assert refused.value.status == 404
    # Every rule is a choice: nobody without a session comes further than the launch link.
    assert [d.path for d in DOORS if d.role is SessionRole.NOBODY] == ["/launch"]
    assert [d.path for d in DOORS if d.reserved] == ["/api/stop"]
    assert {d.path for d in DOORS if d.lease} == {
        "/api/start",
        "/api/move",
        "/api/point",
        "/api/rest",
        "/api/sweep",
        "/api/pause",
        "/api/resume",
    }


def test_ids_hold_no_way_out():
    for bad in (
        "..",
        ".",
        "a/b",
        "a\\b",
        "%2e%2e",
        "a.b",
        "",
        "x" * 81,
        "CON ",
        "C:",
        "\u202e",
        "a\x00b",
        "//host",
        "~",
    ):
        assert not is_id(bad)
        assert find(DOORS, "GET", f"/api/form/{bad}") is None
        assert find(DOORS, "GET", f"/api/report/{bad}/first/html") is None
    for bad in ("..", "../server.py", "a.b.c", "..%2fguard.py", ".", "/etc/passwd"):
        found = find(DOORS, "GET", f"/assets/{bad}")
        assert found is None or found[1]["name"] not in {p.name for p in Path("/").iterdir()}


def test_codes_open_once_and_not_for_ever():
    now = [0.0]
    sessions = Sessions(lambda: now[0])
    code = sessions.invite(SessionRole.VIEW)
    session, cookie = sessions.redeem(code)
    assert sessions.redeem(code) is None and sessions.find(cookie) is session and sessions.find(cookie + "x") is None
    late = sessions.invite(SessionRole.CONFIGURE)
    now[0] = CODE_LIFE_S + 1.0
    assert sessions.redeem(late) is None
    now[0] = SESSION_LIFE_S + 1.0
    assert sessions.find(cookie) is None
    assert len(code) >= 43 and len(cookie) >= 43  # 256 bits in base64


def test_the_lease_has_one_holder_and_runs_out():
    now = [0.0]
    sessions, lease = Sessions(lambda: now[0]), Lease(lambda: now[0])
    one, other = (sessions.redeem(sessions.invite(SessionRole.OPERATE))[0] for _ in range(2))
    assert lease.take(one) and lease.take(one) and not lease.take(other)
    now[0] = LEASE_S + 1.0
    assert lease.holder is None and lease.take(other) and not lease.take(one)
    lease.give(one)
    assert lease.holder is other
    lease.give(other)
    assert lease.take(one)


def test_guessing_and_flooding_are_slowed_down_but_stop_is_not():
    guard, keys = guarded()
    guard.sessions._wrong = Bucket(rate=0.0, burst=3.0)
    me = next(d for d in DOORS if d.path == "/api/me")
    statuses = []
    for i in range(5):
        with pytest.raises(guards.Refused) as refused:
            guard._admit(scope_of(me, HOST, None, f"guess{i}", "", None))
        statuses.append(refused.value.status)
    assert statuses == [401, 401, 401, 429, 429]
    session = guard.sessions.find(keys[SessionRole.VIEW][0])
    session.bucket = Bucket(rate=0.0, burst=BURST)
    plan, stop = (next(d for d in DOORS if d.path == path) for path in ("/api/plan", "/api/stop"))
    passed = 0
    for _ in range(int(BURST) + 20):
        try:
            guard._admit(scope_of(plan, HOST, "same", *keys[SessionRole.VIEW], "same-origin"))
            passed += 1
        except guards.Refused as refused_:
            assert refused_.status == 429
    assert passed == int(BURST)
    guard._requests = guards.MOST_REQUESTS
    for _ in range(200):
        guard._admit(scope_of(stop, HOST, "same", *keys[SessionRole.VIEW], "same-origin"))
    live = next(d for d in DOORS if d.method == "WS")
    session.bucket = Bucket(rate=1e9, burst=1e9)
    guard._sockets = guards.MOST_SOCKETS
    with pytest.raises(guards.Refused) as refused:
        guard._admit(scope_of(live, HOST, "same", keys[SessionRole.VIEW][0], "", "same-origin"))
    assert refused.value.status == 503


@pytest.mark.parametrize(("length", "chunks", "status"), [
    (b"2000000", [b""], 413), (b"-1", [b""], 413), (b"abc", [b""], 413), (b"10", [b"x" * 600_000, b"x" * 600_000], 413),
])  # fmt: skip
def test_bodies_are_bounded(length, chunks, status):
    guard, keys = guarded()
    stop = next(d for d in DOORS if d.path == "/api/stop")
    scope = scope_of(stop, HOST, "same", *keys[SessionRole.VIEW], "same-origin")
    scope["headers"].append((b"content-length", length))
    messages = [{"type": "http.request", "body": c, "more_body": i + 1 < len(chunks)} for i, c in enumerate(chunks)]
    sent = []

    async def receive():
        return messages.pop(0)

    async def send(message):
        sent.append(message)

    in_a_loop(guard(scope, receive, send))
    assert sent[0]["status"] == status


def test_a_body_that_never_comes_is_given_up(monkeypatch):
    guard, keys = guarded()
    monkeypatch.setattr(guards, "BODY_TIMEOUT_S", 0.05)
    stop = next(d for d in DOORS if d.path == "/api/stop")
    sent = []

    async def receive():
        await asyncio.sleep(60)

    async def send(message):
        sent.append(message)

    in_a_loop(guard(scope_of(stop, HOST, "same", *keys[SessionRole.VIEW], "same-origin"), receive, send))
    assert sent[0]["status"] == 408
