"""The server as programs meet it: its answers, its bounds, and stop when everything else is busy."""

from __future__ import annotations

import asyncio
import http.client
import json
import re
import shutil
import socket
import ssl
import subprocess
import sys
import threading
import time
from contextlib import suppress
from pathlib import Path

import httpx
import numpy as np
import pytest
from websockets.sync.client import connect

from colure.app import services
from colure.app.services.bench_check import keep_check
from colure.app.web.guard import connections
from colure.app.web.guard.refused_page import REFUSED_POLICY
from colure.app.web.guard.roles import SessionRole
from colure.app.web.guard.sessions import Bucket
from colure.app.web.room import campaign_id


def post(served, path, body, role=SessionRole.CONFIGURE, headers=None):
    return httpx.post(served.base + path, json=body, headers=headers or served.headers(role), timeout=60)


def test_the_page_and_its_headers(served):
    with httpx.Client(base_url=served.base) as client:
        refused = client.get("/")
        assert refused.status_code == 401 and "errors" in refused.json()
        link = served.link(SessionRole.VIEW)
        entered = client.get(link)
        cookie = entered.headers["set-cookie"].lower()
        assert "httponly" in cookie and "samesite=strict" in cookie and "path=/" in cookie
        assert client.get(link).status_code == 401  # a link opens once
        # A person's browser gets a page in words, a program an answer.
        for path in (link, "/"):
            with httpx.Client(base_url=served.base, headers={"Accept": "text/html,*/*;q=0.8"}) as stranger:
                shown = stranger.get(path)
            assert shown.status_code == 401 and shown.headers["content-type"].startswith("text/html")
            body = shown.text.split("</style>")[1]
            assert "does not open the control room" in body and "{" not in body
            assert shown.headers["content-security-policy"] == REFUSED_POLICY and "<script" not in shown.text
        page = client.get("/")
        policy = page.headers["content-security-policy"]
        for part in (
            "default-src 'none'",
            "script-src 'self'",
            "frame-ancestors 'none'",
            "base-uri 'none'",
            "require-trusted-types-for",
        ):
            assert part in policy
        assert "unsafe" not in policy and page.headers["referrer-policy"] == "no-referrer"
        size = len(page.content)
        for name in (w.split('"')[0] for w in page.text.split('"/assets/')[1:]):
            found = client.get(f"/assets/{name}", headers={"Accept-Encoding": "gzip"})
            assert found.status_code == 200 and found.headers["content-encoding"] == "gzip"
            size += int(found.headers["content-length"])
        print(f"first page {size / 1000:.0f} kB packed")
        assert size < 300_000
        assert client.get("/", headers={"Host": "evil.example"}).status_code == 421
        for path in (
            "/assets/..%2f..%2fserver.py",
            "/assets/../server.py",
            "/assets/%2e%2e/guard.py",
            "/api/form/../../etc",
            "/static/x",
        ):
            assert client.get(path).status_code in (401, 404)


def test_doors_answer_and_refuse_in_words(served):
    headers = served.headers()
    me = httpx.get(served.base + "/api/me", headers=headers).json()
    assert me["role"] == "configure" and me["lease"] is None
    (campaign,) = httpx.get(served.base + "/api/campaigns", headers=headers, timeout=60).json()
    plan = post(
        served, "/api/plan", {"campaign": campaign["id"], "edits": {"goal.wanted_level_db": -40}}, headers=headers
    )
    assert plan.status_code == 200 and dict(plan.json()["rows"])["Sampling"]
    for body, words in (
        ({"campaign": campaign["id"], "edits": {"goal.points": -3}}, "points = -3"), ({"campaign": "none"}, "none of this room's"),
        ({"campaign": campaign["id"], "edits": {"chamber.analyzer.resource": "TCPIP::x"}}, "must be one of the form's"),
        ({"campaign": campaign["id"], "other": 1}, "other"), ({"campaign": "../x"}, "campaign"),
    ):  # fmt: skip
        found = post(served, "/api/plan", body, headers=headers)
        assert found.status_code == 422 and words in " ".join(found.json()["errors"])
    start = {"campaign": campaign["id"], "run": "r", "sequence": 0, "cautions_read": True}
    assert post(served, "/api/start", start, headers=headers).status_code == 423
    assert post(served, "/api/lease", {"hold": True}, headers=headers).json()["mine"]
    assert post(served, "/api/start", {**start, "cautions_read": False}, headers=headers).status_code == 422
    assert post(served, "/api/start", {**start, "sequence": 7}, headers=headers).status_code == 409
    assert post(served, "/api/lease", {"hold": True}, role=SessionRole.OPERATE).status_code == 422
    assert post(served, "/api/lease", {"hold": True}, role=SessionRole.VIEW).status_code == 403
    assert post(served, "/api/save", {"campaign": campaign["id"]}, role=SessionRole.OPERATE).status_code == 403
    assert post(served, "/api/stop", {}, role=SessionRole.VIEW).json()["stopping"] is False


def test_a_start_after_a_failed_check_is_refused_unless_told(served, tiny_campaign, request):
    """A check that did not pass is tied to the plan; the dialog is told, a start needs a word of its own."""
    _, plan = services.make_plan(tiny_campaign)
    keep_check(tiny_campaign, plan.hash, ["level: -71.3 dBm: must be within 6 dB of -60.2 dBm"], None)
    keep_check(tiny_campaign, "another plan", [], None)  # what passes for another plan says nothing of this one
    headers, one = served.headers(), {"campaign": campaign_id(tiny_campaign), "run": "first"}
    (fault,) = post(served, "/api/before", one, headers=headers).json()["failed_checks"]
    assert fault.startswith("an earlier check of this plan did not pass: level: -71.3 dBm")
    assert post(served, "/api/lease", {"hold": True}, headers=headers).json()["mine"]
    start = {**one, "cautions_read": True}
    refused = post(served, "/api/start", {**start, "sequence": served.room.sequence}, headers=headers)
    assert refused.status_code == 422 and fault in refused.json()["errors"] and served.room.scan is None
    if not request.config.getoption("--nightly"):
        return  # the scan itself takes a while
    told = {**start, "sequence": served.room.sequence, "despite_check": True}
    assert post(served, "/api/start", told, headers=headers).status_code == 200
    deadline = time.monotonic() + 120.0
    while served.room.scan.status()["measured"] < 2:
        assert time.monotonic() < deadline and served.room.busy, served.room.scan.status()["words"]
        time.sleep(0.1)
    assert post(served, "/api/stop", {}, headers=headers).json()["stopping"]
    while served.room.busy:
        assert time.monotonic() < deadline
        time.sleep(0.05)


def test_a_form_is_written_with_its_comments_and_the_old_file_kept(served, tiny_campaign):
    before = (tiny_campaign / "device.toml").read_text("utf-8")
    body = {"campaign": campaign_id(tiny_campaign), "edits": {"device.mass_kg": 0.55, "chamber.analyzer.averages": 2}}
    assert post(served, "/api/save", body).json()["written"] == ["device.toml", "chamber.toml"]
    after = (tiny_campaign / "device.toml").read_text("utf-8")
    assert "mass_kg = 0.55" in after and after.count("#") == before.count("#")
    (kept,) = tiny_campaign.glob("device.toml.*")
    assert kept.read_text("utf-8") == before
    assert post(served, "/api/save", {**body, "edits": {"device.mass_kg": -1}}).status_code == 422
    assert (tiny_campaign / "device.toml").read_text("utf-8") == after


def test_cross_site_sockets_do_not_open(served):
    good = served.headers(SessionRole.VIEW)
    url = f"ws://127.0.0.1:{served.port}/api/live"
    with connect(url, additional_headers={"Cookie": good["Cookie"]}, origin=served.base) as socket:
        assert json.loads(socket.recv(timeout=10))["type"] == "status"
    for cookie, origin in (
        (good["Cookie"], "http://evil.example"),
        (good["Cookie"], None),
        ("", served.base),
        ("colure-1=x", served.base),
    ):
        with pytest.raises(Exception, match="403|rejected"):
            connect(url, additional_headers={"Cookie": cookie}, origin=origin).recv(timeout=5)


def test_the_live_link_outlives_the_patience_with_silent_connections(served, monkeypatch):
    monkeypatch.setattr(connections, "PATIENCE_S", 0.3)
    good = served.headers(SessionRole.VIEW)
    url = f"ws://127.0.0.1:{served.port}/api/live"
    with connect(url, additional_headers={"Cookie": good["Cookie"]}, origin=served.base, ping_interval=None) as live:
        assert json.loads(live.recv(timeout=10))["type"] == "status"
        with pytest.raises(TimeoutError):
            live.recv(timeout=1.2)  # nothing comes, and nobody hangs up
        assert live.ping().wait(timeout=5)


def test_a_burst_of_silent_connections_stays_within_the_bound(served, monkeypatch):
    monkeypatch.setattr(connections, "MOST_CONNECTIONS", 8)
    silent = [socket.create_connection(("127.0.0.1", served.port), timeout=5.0) for _ in range(60)]
    try:
        stopped = httpx.post(served.base + "/api/stop", json={}, headers=served.headers(SessionRole.VIEW), timeout=10)
        assert stopped.status_code == 200
        open_ = 0
        for one in silent:
            one.setblocking(False)
            try:
                open_ += one.recv(1) != b""
            except BlockingIOError:
                open_ += 1
            except ConnectionResetError:
                pass
        assert open_ <= 8
    finally:
        for one in silent:
            one.close()


def test_a_stop_that_was_sent_is_not_dropped_for_a_burst_that_came_after_it(served, monkeypatch):
    """All of them are taken in one go, before anything is read: who has spoken is no silent connection."""
    monkeypatch.setattr(connections, "MOST_CONNECTIONS", 8)
    words = "".join(f"{name}: {value}\r\n" for name, value in served.headers(SessionRole.VIEW).items())
    asked = f"POST /api/stop HTTP/1.1\r\nHost: 127.0.0.1:{served.port}\r\nContent-Type: application/json\r\nContent-Length: 2\r\n{words}\r\n{{}}"
    served.loop.call_soon_threadsafe(time.sleep, 0.5)
    time.sleep(0.1)
    stop = socket.create_connection(("127.0.0.1", served.port), timeout=5.0)
    stop.sendall(asked.encode())
    silent = [socket.create_connection(("127.0.0.1", served.port), timeout=5.0) for _ in range(60)]
    try:
        assert stop.recv(100).startswith(b"HTTP/1.1 200")
    finally:
        for one in (stop, *silent):
            one.close()


def test_a_stop_is_answered_within_a_second_beside_800_idle_connections(served):
    """They come from another process and come again when they are dropped, as a scanner's or a broken client's do."""
    flood = (
        "import socket, sys, time\n"
        "open_, port = [], int(sys.argv[1])\n"
        "for number in range(800):\n"
        "    try: open_.append(socket.create_connection(('127.0.0.1', port), timeout=2))\n"
        "    except OSError: pass\n"
        "print(len(open_), flush=True)\n"
        "sys.stdin.read()\n"
    )
    other = subprocess.Popen(
        [sys.executable, "-c", flood, str(served.port)], stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True
    )
    # The workers have started by then, as they have when a scan runs: their start is not what is timed.
    for kind in ("quick", "view", "long"):
        served.room.desk._pool(kind).submit(int).result(timeout=60)
    try:
        assert other.stdout is not None and int(other.stdout.readline()) >= 700
        headers, latencies = served.headers(SessionRole.VIEW), []
        for _ in range(40):
            begin = time.perf_counter()
            line = http.client.HTTPConnection("127.0.0.1", served.port, timeout=10)
            line.request("POST", "/api/stop", body="{}", headers={**headers, "Content-Type": "application/json"})
            assert line.getresponse().status == 200
            latencies.append(time.perf_counter() - begin)
            line.close()
    finally:
        other.communicate("")
    print(
        f"stop beside 800 idle connections: median {1e3 * float(np.median(latencies)):.0f}, most {1e3 * max(latencies):.0f} ms"
    )
    # Promised is 1 s; 3 to 16 ms were seen on two cores at a load of 8.
    assert max(latencies) < 1.0 and float(np.median(latencies)) < 0.1


def test_stop_is_heard_while_everything_else_is_busy(served, tiny_campaign):
    """All workers hang and requests wait at the door; stop still reaches the scan's own pipe at once."""
    headers, campaign = served.headers(), campaign_id(tiny_campaign)
    watcher = served.headers(SessionRole.VIEW)
    post(served, "/api/lease", {"hold": True}, headers=headers)
    for kind in ("quick", "view", "long"):
        asyncio.run_coroutine_threadsafe(served.room.desk.do(time.sleep, 20.0, kind=kind), served.loop)
    # Sessions belong to the server's own thread: everybody is let in before anybody asks.
    asking = ("/api/plan", {"campaign": campaign}, served.headers())
    waiting = [threading.Thread(target=_ignore, args=(served, *asking), daemon=True) for _ in range(8)]
    for one in waiting:
        one.start()
    latencies = []
    with httpx.Client(base_url=served.base) as client:
        for _ in range(40):
            begin = time.perf_counter()
            assert client.post("/api/stop", json={}, headers=watcher).status_code == 200
            latencies.append(time.perf_counter() - begin)
    worst, usual = 1e3 * max(latencies), 1e3 * float(np.quantile(latencies, 0.99))
    print(f"stop: 99 % within {usual:.1f} ms, all within {worst:.1f} ms")
    assert usual < 200.0


def test_silent_connections_make_room_and_are_dropped(served, monkeypatch):
    """What never completes a request line neither fills the room nor keeps a stop out."""
    monkeypatch.setattr(connections, "PATIENCE_S", 1.0)
    monkeypatch.setattr(connections, "MOST_CONNECTIONS", 8)
    headers = served.headers(SessionRole.VIEW)
    silent = [socket.create_connection(("127.0.0.1", served.port), timeout=5.0) for _ in range(24)]
    try:
        for one in silent[::2]:
            with suppress(OSError):
                one.sendall(b"GET / HTTP/1.1\r\nHost: ")
        stopped = httpx.post(served.base + "/api/stop", json={}, headers=headers, timeout=10)
        assert stopped.status_code == 200
        for one in silent:
            with suppress(ConnectionResetError):
                assert one.recv(100) == b""  # the server closed it
    finally:
        for one in silent:
            one.close()


@pytest.mark.skipif(shutil.which("openssl") is None, reason="makes its certificate with openssl")
def test_another_address_is_served_with_tls_only(tiny_campaign, tmp_path):
    key, certificate = tmp_path / "key.pem", tmp_path / "cert.pem"
    make = ["openssl", "req", "-x509", "-newkey", "rsa:2048", "-nodes", "-days", "1", "-subj", "/CN=127.0.0.1",
            "-addext", "subjectAltName=IP:127.0.0.1", "-keyout", str(key), "-out", str(certificate)]  # fmt: skip
    subprocess.run(make, check=True, capture_output=True)
    begin = [sys.executable, "-m", "colure", "serve", str(tiny_campaign), "--port", "0"]
    open_to_all = subprocess.run([*begin, "--host", "0.0.0.0"], capture_output=True, text=True, timeout=60)
    assert open_to_all.returncode == 2 and "in the clear" in open_to_all.stderr
    room = subprocess.Popen(
        [*begin, "--certificate", str(certificate), "--key", str(key)], stdout=subprocess.PIPE, text=True
    )
    try:
        assert room.stdout is not None
        link = next(line.strip() for line in room.stdout if "https://" in line)
        with httpx.Client(verify=ssl.create_default_context(cafile=str(certificate)), timeout=30) as client:
            entered = client.get(link)
            assert entered.status_code == 200 and "secure" in entered.headers["set-cookie"].lower()
            assert client.get(link.split("/launch")[0] + "/api/me").status_code == 200
    finally:
        room.terminate()
        room.wait(timeout=20)
        room.stdout.close()


def _ignore(served, path, body, headers):
    with suppress(httpx.HTTPError):
        post(served, path, body, headers=headers)


def test_any_program_can_ask_anything_and_nothing_breaks(served, request):
    """Schemathesis asks every door of the table whatever its description allows, and what it does not: no 5xx."""
    headers = served.headers()
    session = served.room.sessions.find(headers["Cookie"].split("=", 1)[1])
    session.bucket = Bucket(rate=1e9, burst=1e9)
    nightly = request.config.getoption("--nightly")
    each = 60 if nightly else 5
    script = Path(__file__).parent / "any_request.py"
    words = [sys.executable, str(script), served.base, headers["Cookie"], headers["X-Colure-Token"], str(each)]
    done = subprocess.run(words, capture_output=True, text=True, timeout=500)
    assert done.returncode == 0, done.stderr[-2000:]
    found = json.loads(done.stdout.splitlines()[-1])
    print(found)
    assert not found["broken"] and found["count"] >= (2000 if nightly else 100)
    assert served.room.scan is None  # nothing moved


def test_stop_ends_a_move_by_hand(served, tiny_campaign, request):
    """Somebody who only watches stops a move that another session began: it says so, and no new one is in the way."""
    if not request.config.getoption("--nightly"):
        pytest.skip("nightly")
    # In virtual time a move is over before anybody can stop it.
    truth = tiny_campaign / "twin.toml"
    words = truth.read_text("utf-8") if truth.is_file() else ""
    truth.write_text("time_factor = 1.0\n" + re.sub(r"time_factor.*\n", "", words), "utf-8")
    headers, watcher, campaign = served.headers(), served.headers(SessionRole.VIEW), campaign_id(tiny_campaign)
    post(served, "/api/lease", {"hold": True}, headers=headers)
    answers = []

    def azimuth() -> dict[str, float]:
        found = httpx.post(f"{served.base}/api/where", json={"campaign": campaign}, headers=headers, timeout=120).json()
        (one,) = [one for one in found["axes"] if one["axis"] == "azimuth"]
        return one

    before = azimuth()
    far = max((before["min_deg"], before["max_deg"]), key=lambda end: abs(end - before["readout_deg"]))
    body = {"campaign": campaign, "to_deg": {"azimuth": far}, "clear": True}
    mover = threading.Thread(
        target=lambda: answers.append(httpx.post(f"{served.base}/api/move", json=body, headers=headers, timeout=120))
    )
    mover.start()
    for _ in range(600):
        if served.room.busy:
            break
        time.sleep(0.02)
    assert served.room.by_hand is not None
    time.sleep(3.0)  # its process starts, and the axis turns
    stopped = httpx.post(f"{served.base}/api/stop", json={}, headers=watcher, timeout=20).json()
    mover.join(timeout=120)
    assert stopped["stopping"] is True
    assert answers[0].status_code == 422 and "stopped from the control room" in answers[0].text
    assert not served.room.busy and served.room.by_hand is None
    # The axes are where they were braked, short of the target, and can be asked.
    assert abs(azimuth()["readout_deg"] - far) > 1.0
