"""How quickly the page draws, what its first look costs, and that eight hours of a scan do not make it grow."""

from __future__ import annotations

import os
import time

import numpy as np
import pytest

from colure.app import services
from colure.app.web.room import campaign_id
from colure.app.web.scan.layout import layout_for
from colure.app.web.scan.live import LiveScan
from colure.model.plan import ROLES
from colure.model.plan import Role as PointRole
from tests.browser.conftest import CHROMIUM, serving
from tests.browser.test_pages import enter, measured, until

pytestmark = [
    pytest.mark.nightly,
    pytest.mark.usefixtures("nightly"),
    pytest.mark.skipif(CHROMIUM is None, reason="no Chromium is installed: nothing can be looked at"),
]
#: Every picture of the scene begins by clearing it: that is counted, in the page itself.
COUNT = """
window.__drawn = 0;
const clear = WebGL2RenderingContext.prototype.clear;
WebGL2RenderingContext.prototype.clear = function (...all) { window.__drawn++; return clear.apply(this, all); };
"""
WANTED_PER_S, SECONDS = 30.0, 4.0
HOURS, GROWTH = 8, 0.20
FIRST_LOOK_BYTES = 300_000


@pytest.fixture
def idle():
    """Frames are only worth counting on a machine that does nothing else."""
    load, cores = os.getloadavg()[0], os.cpu_count() or 1
    if load > 0.75 * cores:
        pytest.skip(f"the machine is busy (load {load:.1f} of {cores} cores): frames would count that")


def counted(page, seconds: float, act) -> float:
    """Return how many pictures a second are drawn while something is done again and again."""
    page.evaluate("window.__drawn = 0")
    begin = time.perf_counter()
    while time.perf_counter() - begin < seconds:
        act()
    return page.evaluate("window.__drawn") / (time.perf_counter() - begin)


@pytest.fixture
def scene(browser, served, tiny_campaign):
    """A window that counts its pictures, over a campaign with a measured run."""
    measured(tiny_campaign, "one")
    context = browser.new_context(viewport={"width": 1280, "height": 800})
    page = context.new_page()
    page.set_default_timeout(60_000)
    page.add_init_script(COUNT)
    enter(page, served, "plan")
    yield page
    context.close()


def test_thirty_pictures_a_second(scene, served, tiny_campaign, idle):
    """While a scan runs at 100 points a second, and while the final pattern is turned by hand; drawn by software."""
    scan = LiveScan(campaign_id(tiny_campaign), "live", layout_for(tiny_campaign))
    served.room.scan = scan
    scan.hear({"kind": "state", "state": "running", "text": "running"})
    points = np.flatnonzero(scan.layout.cell >= 0)
    scene.goto(f"{served.base}/#scan")
    scene.wait_for_selector("text=What happened")
    at = [0]

    def point() -> None:
        at[0] += 1
        row = [
            int(points[at[0] % points.size]),
            0,
            float(at[0]),
            [float(at[0] % 90), 0.0, 0.0],
            [0.1 * np.cos(at[0] / 9), 0.02],
            0,
        ]
        scan.hear({"kind": "point", "row": row})
        scene.wait_for_timeout(10)

    scanning = counted(scene, SECONDS, point)
    served.room.scan = None
    scene.goto(f"{served.base}/#explore?run=one")
    scene.wait_for_selector(".tab-card .chart svg path")
    scene.wait_for_timeout(500)
    box = scene.locator(".stage canvas").first.bounding_box()
    x, y, step = box["x"] + box["width"] / 2, box["y"] + box["height"] / 2, [0]
    scene.mouse.move(x, y)
    scene.mouse.down()

    def turn() -> None:
        step[0] += 1
        scene.mouse.move(x + 120 * np.sin(step[0] / 15), y + 40 * np.cos(step[0] / 15))

    turning = counted(scene, SECONDS, turn)
    scene.mouse.up()
    print(f"pictures a second: {scanning:.0f} while a scan runs, {turning:.0f} while the pattern is turned")
    assert scanning >= WANTED_PER_S and turning >= WANTED_PER_S


def enlarged(answer: dict, rows: int = 181, columns: int = 361) -> dict:
    """The same pattern on a grid of 1 deg by 1 deg: each cell takes the nearest one's levels."""
    theta, phi = np.linspace(0.0, 180.0, rows), np.linspace(0.0, 360.0, columns)
    at_row = np.abs(np.subtract.outer(theta, answer["rows"])).argmin(axis=1)
    at_column = np.abs(np.subtract.outer(phi % 360.0, answer["columns"])).argmin(axis=1)
    n = len(answer["columns"])
    cells = (at_row[:, None] * n + at_column[None, :]).ravel()
    levels = {name: [answer[name][i] for i in cells] for name in ("first", "second", "total")}
    return {**answer, **levels, "rows": theta.tolist(), "columns": phi.tolist()}


#: Triangles of the picture that was drawn last, as the graphics card was told them.
CORNERS = """
window.__corners = 0; window.__fewest = Infinity;
const draw = WebGL2RenderingContext.prototype.drawElements;
WebGL2RenderingContext.prototype.drawElements = function (mode, count, ...rest) {
  if (count > 3000) { window.__corners = count; window.__fewest = Math.min(window.__fewest, count); }
  return draw.call(this, mode, count, ...rest);
};
"""


def test_a_large_pattern_turns_at_thirty_pictures_a_second(browser, served, tiny_campaign):
    """181 x 361 cells: thinned while they turn, every one of them at rest. The rate is only judged on an idle machine."""
    measured(tiny_campaign, "one")
    context = browser.new_context(viewport={"width": 1280, "height": 800})
    page = context.new_page()
    page.set_default_timeout(60_000)
    page.add_init_script(COUNT + CORNERS)
    page.route("**/api/map", lambda route: route.fulfill(json=enlarged(route.fetch().json())))
    enter(page, served, "explore?run=one")
    page.wait_for_selector(".tab-card .chart svg path")
    whole = "window.__corners >= 6 * 170 * 360"
    until(page, whole)
    box = page.locator(".stage canvas").first.bounding_box()
    x, y, step = box["x"] + box["width"] / 2, box["y"] + box["height"] / 2, [0]
    page.mouse.move(x, y)
    page.mouse.down()

    def turn() -> None:
        step[0] += 1
        page.mouse.move(x + 120 * np.sin(step[0] / 15), y + 40 * np.cos(step[0] / 15))

    page.evaluate("window.__fewest = Infinity")
    turning = counted(page, SECONDS, turn)
    # A busy machine rests between two moves, and what rests is drawn whole: the fewest tell what moves.
    moving = page.evaluate("window.__fewest")
    page.mouse.up()
    load = os.getloadavg()[0]
    print(f"pictures a second of 181 x 361 cells: {turning:.0f} ({moving // 3} triangles, load {load:.1f})")
    assert 3 * 1000 < moving < 6 * 4000, "the surface is thinned while it moves"
    until(page, whole)
    context.close()
    if load <= 0.75 * (os.cpu_count() or 1):
        assert turning >= WANTED_PER_S


def test_the_first_look_is_small(browser, tmp_path):
    """Everything that goes over the line until the demo's plan is on screen: page, script, style and first data, packed."""
    services.new_campaign(tmp_path / "c")
    for served in serving([tmp_path / "c"]):
        context = browser.new_context(viewport={"width": 1280, "height": 800})
        page = context.new_page()
        page.set_default_timeout(60_000)
        line = context.new_cdp_session(page)
        line.send("Network.enable")
        names: dict[str, str] = {}
        sizes: dict[str, float] = {}
        line.on("Network.responseReceived", lambda e, n=names: n.__setitem__(e["requestId"], e["response"]["url"]))
        line.on("Network.loadingFinished", lambda e, s=sizes: s.__setitem__(e["requestId"], e["encodedDataLength"]))
        enter(page, served, "plan")
        page.wait_for_selector(".plan-answer .verdict")
        until(page, "document.querySelector('.walk')?.innerText.includes('point 1') ?? false")
        page.wait_for_timeout(500)
        context.close()
    parts = {names[key].rsplit("/", 1)[-1][:40]: round(size / 1000, 1) for key, size in sizes.items() if key in names}
    total = sum(sizes.values())
    print(f"first look: {total / 1000:.0f} kB packed: {parts}")
    assert total <= FIRST_LOOK_BYTES


def heap(line) -> tuple[float, float]:
    """Return the page's live memory after its garbage was collected, bytes, and its nodes of all documents."""
    for _ in range(3):
        line.send("HeapProfiler.collectGarbage")
    found = {one["name"]: one["value"] for one in line.send("Performance.getMetrics")["metrics"]}
    return float(found["JSHeapUsedSize"]), float(found["Nodes"])


def test_eight_hours_do_not_make_it_grow(scene, served, tiny_campaign):
    """A sweep every 1.2 s, a check every 3 min and a word every minute for eight hours, one simulated minute a round; pages change."""
    layout = layout_for(tiny_campaign)
    scan = LiveScan(campaign_id(tiny_campaign), "long", layout)
    served.room.scan = scan
    scan.hear({"kind": "state", "state": "running", "text": "running"})
    points = np.flatnonzero(layout.cell >= 0)
    tie = int(np.flatnonzero(layout.role == ROLES.index(PointRole.TIE))[0])
    line = scene.context.new_cdp_session(scene)
    line.send("Performance.enable")
    places, sizes = ("scan", "plan", "explore?run=one", "scan", "align", "learn"), []
    for minute in range(60 * HOURS):
        for i in range(50):
            row = [
                int(points[(50 * minute + i) % points.size]),
                0,
                60.0 * minute + 1.2 * i,
                [float(i), 0.0, 0.0],
                [0.1 * np.cos(i), 0.02],
                0,
            ]
            scan.hear({"kind": "point", "row": row})
        scan.hear({"kind": "warning", "text": f"minute {minute}"})
        if minute % 3 == 0:
            scan.hear(
                {
                    "kind": "tie",
                    "row": [tie, ROLES.index(PointRole.TIE), 60.0 * minute, [0.0, 0.0, 0.0], [0.1, 0.01], 0],
                    "text": "tie",
                }
            )
        if minute % 10 == 0:
            scene.goto(f"{served.base}/#{places[(minute // 10) % len(places)]}")
            scene.wait_for_timeout(250)
        scene.wait_for_timeout(40)
        # The first hour fills the lists that are kept: events, checks, shapes.
        if minute % 60 == 59:
            scene.goto(f"{served.base}/#scan")
            # Answers that left pages still waited for have come by then.
            scene.wait_for_timeout(3000)
            sizes.append(heap(line))
    served.room.scan = None
    memory, nodes = np.array(sizes).T
    print("memory after every hour / MB:", (memory / 1e6).round(1).tolist(), "nodes:", nodes.astype(int).tolist())
    assert memory[-1] <= (1.0 + GROWTH) * memory[0] and nodes[-1] <= (1.0 + GROWTH) * nodes[0]
