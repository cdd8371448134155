"""The control room, measured in one run: first page, plan as one types, live surface, watchers, stop, and what it costs the engine.

Frames are counted where they are taken by the browser; the baseline of each line is named beside it.
"""

from __future__ import annotations

import asyncio
import json
import shutil
import socket
import statistics
import tempfile
import threading
import time
from pathlib import Path

import httpx
import numpy as np
import uvicorn

from colure.acquire.journal import Row
from colure.app import services
from colure.app.web.guard.roles import SessionRole
from colure.app.web.room import Room, campaign_id
from colure.app.web.scan.child import Teller, _of
from colure.app.web.scan.layout import Layout, layout_for
from colure.app.web.scan.live import LiveScan
from colure.app.web.server import build

ROWS, COLUMNS = 181, 361
SECONDS = 8.0


def started(folder: Path) -> tuple[Room, str, uvicorn.Server, threading.Thread]:
    """Serve a room from a thread."""
    listening = socket.socket(proto=socket.IPPROTO_TCP)  # as the server of a person does; see `serve`
    listening.bind(("127.0.0.1", 0))
    port = listening.getsockname()[1]
    room = Room([folder])
    app = build(room, hosts=frozenset({f"127.0.0.1:{port}"}), cookie=f"colure-{port}")
    server = uvicorn.Server(uvicorn.Config(app, log_level="error", access_log=False, timeout_graceful_shutdown=2))
    room.leaving = lambda: server.should_exit
    thread = threading.Thread(target=lambda: asyncio.run(server.serve([listening])), daemon=True)
    thread.start()
    while not server.started:
        time.sleep(0.02)
    return room, f"http://127.0.0.1:{port}", server, thread


def headers_of(room: Room, base: str, role: SessionRole = SessionRole.CONFIGURE) -> dict[str, str]:
    """Come in as a browser would."""
    session, cookie = room.sessions.redeem(room.sessions.invite(role))
    session.bucket.rate = session.bucket.burst = session.bucket.left = 1e9
    return {"Cookie": f"colure-{base.rsplit(':', 1)[1]}={cookie}", "Origin": base, "X-Colure-Token": session.token}


#: Every picture begins with one clearing of the canvas.
COUNTED = """
window.pictures = 0; const clear = WebGL2RenderingContext.prototype.clear;
WebGL2RenderingContext.prototype.clear = function (...a) { window.pictures++; return clear.apply(this, a) };
"""


def large(layout: Layout) -> Layout:
    """A layout of 181 x 361 cells, every one of them measured twice."""
    theta, phi = np.linspace(0, 180, ROWS), np.linspace(0, 360, COLUMNS)
    t, p = (np.deg2rad(x) for x in np.meshgrid(theta, phi, indexing="ij"))
    cells = np.arange(ROWS * COLUMNS)
    d = np.stack([np.sin(t) * np.cos(p), np.sin(t) * np.sin(p), np.cos(t)], -1).reshape(-1, 3)
    zeros, ones = np.zeros(cells.size, int), np.ones(cells.size)
    return Layout(theta, phi, "theta", "phi", cells, d, zeros, zeros, zeros, np.zeros((cells.size, 3)), layout.axes,
                  ones,
                  "bench", 1, layout.maps, layout.noise_db, zeros - 1, ())  # fmt: skip


def live_surface(room: Room, base: str, layout: Layout) -> tuple[float, float]:
    """Return (frames a second that a browser draws of 181 x 361 while the scan goes on, first page in seconds)."""
    from playwright.sync_api import sync_playwright

    scan = LiveScan("bench", "bench", large(layout))
    scan._power[:] = 1e-3
    room.scan = scan
    browser_path = shutil.which("chromium") or shutil.which("chromium-browser")
    with sync_playwright() as play:
        browser = play.chromium.launch(
            executable_path=browser_path, args=["--no-sandbox", "--enable-unsafe-swiftshader"]
        )
        page = browser.new_page(viewport={"width": 1280, "height": 800})
        page.add_init_script(COUNTED)
        begin = time.perf_counter()
        page.goto(f"{base}/launch?code={room.sessions.invite(SessionRole.VIEW)}")
        page.wait_for_selector("nav")
        first = time.perf_counter() - begin
        page.goto(f"{base}/#scan")
        time.sleep(2.0)
        page.evaluate("window.pictures = 0")
        end, i = time.perf_counter() + SECONDS, 0
        while time.perf_counter() < end:
            for _ in range(20):
                i = (i + 1) % (ROWS * COLUMNS)
                scan.hear({"kind": "point", "row": [i, 0, float(i), [0.0, 0.0, 0.0], [0.1 * np.cos(i / 900), 0.02], 0]})
            page.evaluate("0")
            time.sleep(0.02)
        drawn = page.evaluate("window.pictures") / SECONDS
        browser.close()
    room.scan = None
    return drawn, first


def listener_cost(folder: Path) -> tuple[float, float]:
    """Return (microseconds that telling costs the engine a point, the same relative to the shortest sweep)."""
    _, plan = services.make_plan(folder)
    trace = np.ones((plan.frequency_hz.size, len(plan.ports)), complex)
    row = Row(
        plan_index=5,
        role=0,
        state_index=-1,
        time_s=1.0,
        wall_time=1.0,
        monotonic_s=1.0,
        commanded_deg=plan.targets_deg[5],
        readback_deg=plan.targets_deg[5],
        rate_deg_s=0 * plan.targets_deg[5],
        trace=trace,
        flags=0,
    )
    with tempfile.TemporaryFile() as out:
        teller = Teller(out, folder)
        begin = time.perf_counter()
        for _ in range(20_000):
            teller.tell({"kind": "point", "text": "", "row": _of(row, 0)}, may_drop=True)
        cost = (time.perf_counter() - begin) / 20_000
        teller.close()
    point_s = float(plan.predicted["duration_s"]) / len(plan)
    return 1e6 * cost, cost / point_s


def main() -> None:
    """Measure and print one line of JSON."""
    with tempfile.TemporaryDirectory() as place:
        folder = Path(place) / "campaign"
        services.new_campaign(folder)
        room, base, server, thread = started(folder)
        headers, campaign = headers_of(room, base), campaign_id(folder)
        client = httpx.Client(base_url=base, headers=headers, timeout=60)
        body = {"campaign": campaign, "edits": {}}
        client.post("/api/plan", json=body)
        times, stops = [], []
        for i in range(20):
            begin = time.perf_counter()
            client.post("/api/plan", json={"campaign": campaign, "edits": {"goal.points": 5 + i}})
            times.append(time.perf_counter() - begin)
        frames, first = live_surface(room, base, layout_for(folder))
        for _ in range(200):
            begin = time.perf_counter()
            client.post("/api/stop", json={})
            stops.append(time.perf_counter() - begin)
        micro, share = listener_cost(folder)
        server.should_exit = True
        thread.join(timeout=20)
    print(json.dumps({
        "first_page_s (target 1)": round(first, 2),
        "plan_ms (median of 20 keystrokes, target 100)": round(1e3 * statistics.median(times), 1),
        "live_181x361_frames_per_s (software GL, target 10)": round(frames, 1),
        "stop_ms (worst of 200)": round(1e3 * max(stops), 1), "telling_us_per_point": round(micro, 1),
        "telling_share_of_a_point (target 0.01)": round(share, 6),
    }))  # fmt: skip


if __name__ == "__main__":
    main()
