"""The page in a real browser: a whole story on the simulated range, and what hostile text does to it (nothing)."""

from __future__ import annotations

import json
import os
import re
import signal
import subprocess
import sys
import time
from contextlib import ExitStack
from pathlib import Path

import numpy as np
import psutil
import pytest

from colure.app import services
from colure.app.services.bench_check import keep_check
from colure.app.services.rehearsal import record_of_rehearsal
from colure.app.storage.folders import run_folder
from colure.app.web.guard.roles import SessionRole
from colure.app.web.room import campaign_id
from colure.app.web.scan.layout import layout_for
from colure.app.web.scan.live import LiveScan
from colure.model.campaign import Campaign
from colure.model.chamber import SimulatedChamber
from colure.model.files import save_dataset
from tests.browser.conftest import serving
from tests.endtoend.test_near_to_far import edited

#: Ways that text became script elsewhere; every one is tried in every place that shows a word from a file.
WRAPS = ("{}", "<script>{}</script>", "<img src=x onerror={}>", "<svg onload={}>", '"><script>{}</script>', "'><img src=x onerror={}>",
         "<iframe srcdoc=\"<script>{}</script>\">", "<a href=\"javascript:{}\">x</a>", "</td><script>{}</script>", "<body onload={}>",
         "<details open ontoggle={}>", "<input autofocus onfocus={}>", "<math><mi xlink:href=\"javascript:{}\">", "<style>@import 'javascript:{}'</style>",
         "<object data=\"javascript:{}\">", "<embed src=\"javascript:{}\">", "<video><source onerror={}>", "<template><script>{}</script></template>",
         "]]><script>{}</script>", "--><script>{}</script>", "${{{}}}", "{{{{{}}}}}", "<link rel=import href=\"data:text/html,<script>{}</script>\">",
         "<base href=\"javascript:{}//\">", "\\u003cscript\\u003e{}\\u003c/script\\u003e")  # fmt: skip
CALLS = ("window.__hit=1", "window.top.__hit=1", "self['__hit']=1", "eval('window.__hit=1')")
PAYLOADS = [wrap.format(call) for wrap in WRAPS for call in CALLS]


def until(page, expression: str, arg=None, seconds: float = 20.0) -> None:
    """Wait until an expression holds; the page's policy lets nobody evaluate text there, not even a waiting helper."""
    end = time.monotonic() + seconds
    while not page.evaluate(expression, arg):
        assert time.monotonic() < end, f"not within {seconds:g} s: {expression}"
        time.sleep(0.05)


def enter(page, served, where: str, role: SessionRole = SessionRole.CONFIGURE) -> None:
    """Open the room with a fresh link and go to one of its pages."""
    page.goto(served.link(role))
    page.wait_for_selector("nav")
    page.goto(f"{served.base}/#{where}")


def measured(folder, name="first", **truth):
    """A rehearsed run, sealed as a real one would be."""
    campaign, plan = services.make_plan(folder)
    run = run_folder(folder, name)
    run.path.mkdir(parents=True, exist_ok=True)
    save_dataset(record_of_rehearsal(campaign, plan, truth=SimulatedChamber(noise=False, **truth)), run.record)
    return campaign, run


def test_hostile_text_stays_text(page, served, tiny_campaign):
    """A hundred payloads in names of files, words of a scan, labels of figures and findings: none of them runs."""
    assert len(PAYLOADS) == 100
    campaign, run = measured(tiny_campaign)
    figures = services.evaluate(services.process(campaign, run), run)
    rows = [
        {**figures[0].as_dict(), "name": f"f{i}", "label": p, "unit": p[:40], "definition": p}
        for i, p in enumerate(PAYLOADS)
    ]
    run.figures.write_text(json.dumps(rows), "utf-8")
    hostile = [p for p in PAYLOADS if '"' not in p and "\\" not in p]
    edited(tiny_campaign, "goal.toml", ('name = "small"', f'name = "{hostile[5]}"'))
    device = (tiny_campaign / "device.toml").read_text("utf-8")
    (tiny_campaign / "device.toml").write_text(
        re.sub(r'name = ".*"', f'name = "{hostile[9]}"', device, count=1), "utf-8"
    )
    scan = LiveScan(campaign_id(tiny_campaign), "first", layout_for(tiny_campaign))
    served.room.scan = scan
    page.add_init_script("window.__hit = 0;")
    enter(page, served, "plan")
    page.wait_for_selector(".verdict")
    assert hostile[5] in page.inner_text("h1")
    page.goto(served.base + "/#scan")
    for begin in (0, 50):
        for text in PAYLOADS[begin : begin + 50]:
            scan.hear({"kind": "warning", "text": text})
        scan.hear({"kind": "state", "state": "paused", "text": f"paused: {PAYLOADS[begin + 4]}"})
        until(page, f"document.querySelectorAll('.words li').length >= {min(60, begin + 50)}")
        time.sleep(0.3)
    page.goto(served.base + "/#explore")
    page.wait_for_selector("table.figures tbody tr:nth-child(100)")
    # The tab of cuts has a table of the same look, which may be there already.
    labels = ".figures-panel table.figures tbody tr td:first-child"
    assert page.eval_on_selector_all(labels, "cells => cells.map(c => c.textContent)") == PAYLOADS
    page.goto(served.base + "/#plan")
    box = page.get_by_label("between slices")
    box.evaluate("(e, v) => { e.type = 'text'; e.value = v; e.dispatchEvent(new Event('input')); }", PAYLOADS[8])
    time.sleep(0.5)
    assert page.evaluate("window.__hit") == 0
    assert (
        page.evaluate("document.querySelectorAll('main script, main iframe, main img, main object, main embed').length")
        == 0
    )
    served.room.scan = None


def test_plan_follows_what_is_typed(page, served):
    enter(page, served, "plan")
    page.wait_for_selector(".verdict")
    before = page.inner_text(".plan-answer .large")
    # Typing to answer, as the person sees it; three seconds leave room for a loaded machine.
    page.get_by_label("averages").fill("400")
    until(
        page,
        "old => (document.querySelector('.plan-answer .large')?.textContent ?? old) !== old",
        arg=before,
        seconds=3.0,
    )
    page.get_by_label("averages").fill("0")
    until(page, "document.querySelector('.plan-answer .faults').textContent.includes('averages = 0')")
    # What is wrong is marked where it was typed, and nothing of the former answer stands beside it.
    until(page, "document.querySelector('.field.wrong')?.textContent.includes('averages')")
    assert page.locator(".plan-answer .verdict").count() == 0
    page.get_by_label("averages").fill("1")
    until(page, "document.querySelector('.plan-answer .faults').textContent === ''")
    page.wait_for_selector(".plan-answer .verdict")
    page.get_by_label("through the scan").fill("20")
    assert "point 21" in page.inner_text(".walk")
    # Whoever stands at a point stays there while another answer comes.
    with page.expect_response("**/api/motion"):
        page.get_by_label("averages").fill("4")
    until(page, "document.querySelector('.walk').innerText.includes('point 21')")
    page.wait_for_timeout(200)
    assert "point 21" in page.inner_text(".walk")
    # What was typed stays over pages and a reload, until it is written or given up.
    page.goto(f"{served.base}/#learn")
    page.get_by_label("theta in degrees").fill("90")
    page.get_by_label("phi in degrees").fill("0")
    until(page, "document.body.innerText.includes('90.0, 0.0')")
    page.goto(f"{served.base}/#plan")
    assert page.get_by_label("averages").input_value() == "4"
    page.wait_for_selector("text=1 unsaved value")
    page.get_by_role("button", name="as saved").click()
    until(page, "document.querySelector('.chip.draft').hidden")
    # The keyboard reaches everything: tab goes from the pages to the form.
    page.keyboard.press("Tab")
    assert page.evaluate("document.activeElement !== document.body")


def test_every_page_opens_and_stop_is_in_reach(page, served, tiny_campaign):
    """All pages one after the other in one window; afterwards the lease still opens the start, and stop ends a scan."""
    measured(tiny_campaign, "measured")
    enter(page, served, "plan")
    page.wait_for_selector(".verdict")
    for where, sign in (
        ("align", "text=Flip test"),
        ("explore", "table.figures tbody tr"),
        ("scan", "text=What happened"),
    ):
        page.goto(f"{served.base}/#{where}")
        page.wait_for_selector(sign)
    begin_scan(page)
    stop = page.get_by_role("button", name="STOP")
    until(page, "document.querySelector('.control-bar.moving') !== null")
    stop.click()
    until(page, "document.querySelector('.control-bar.moving') === null", seconds=30.0)
    assert served.room.scan.state in ("stopped", "done")
    page.goto(served.base + "/#explore")
    for tab in ("Map", "Over frequency", "Impulse", "Recipe", "Findings", "Verdict", "Report", "Aperture"):
        page.get_by_role("tab", name=tab).click()
        page.wait_for_selector(f"[role=tab][aria-selected=true]:has-text('{tab}')")


@pytest.mark.nightly
def test_the_beam_is_searched_from_the_page(page, served, tiny_campaign):
    """Coarse, then fine where it was strongest, then what was found in words."""
    enter(page, served, "align")
    page.get_by_role("button", name="take motion lease").click()
    for name, sign in (("look coarsely", "text=The coarse look is done"), ("look finely", "text=beam at azimuth")):
        page.get_by_role("button", name=name).click()
        page.get_by_label("Everyone is clear").check()
        page.get_by_role("button", name="start", exact=True).click()
        page.wait_for_selector(sign, timeout=60_000)
    page.get_by_role("button", name="set as home").click()
    page.wait_for_selector("text=azimuth: home at")
    # Home is where the axes rest: no angle of the chamber changes, and a roll over azimuth is not asked for its zeros.
    axis = Campaign.load(tiny_campaign).chamber.positioner.azimuth
    assert axis.home_deg != 0.0 and axis.zero_deg == 0.0
    assert page.get_by_role("button", name="take as zeros").count() == 0


def test_two_runs_side_by_side(page, served, tiny_campaign):
    """The second device is tilted by half a degree: the fields as they stand differ a little, on an axis of its own."""
    measured(tiny_campaign, "one")
    measured(tiny_campaign, "two", device_tilt_deg=0.5)
    enter(page, served, "explore?run=one")
    page.wait_for_selector("table.figures tbody tr")
    page.get_by_role("group", name="beside").get_by_label("two").check()
    page.wait_for_selector("text=dB re peak is left")
    words = page.inner_text("p:has-text('dB re peak is left')")
    (left,) = re.findall(r"two: (-?[\d.]+) dB re peak is left", words)
    assert float(left) < -40.0 and "as they stand" in words
    charts = page.locator(".tab-card .chart svg[role=img]")
    assert charts.count() == 2 and charts.nth(1).get_attribute("aria-label").startswith("difference")
    # A click makes a mark that reads as the trace, and pins the cursor that the address keeps.
    field = charts.first.bounding_box()
    page.mouse.click(field["x"] + 56 + 0.6 * (field["width"] - 70), field["y"] + 40)
    row = page.locator("table:has(th:has-text('mark')) tbody tr").first.inner_text().split("\t")
    assert float(row[1].rstrip("\u00b0")) == pytest.approx(36.0, abs=1.0)
    until(page, "location.hash.includes('at=') && location.hash.includes('beside=two')")
    # A second browser with the same address stands at the same place.
    page.reload()
    page.wait_for_selector("text=dB re peak is left")
    assert page.get_by_role("group", name="beside").get_by_label("two").is_checked()


def test_a_drag_along_one_axis_zooms_that_axis(page, served, tiny_campaign, request):
    if not request.config.getoption("--nightly"):
        pytest.skip("nightly")
    measured(tiny_campaign, "one")
    enter(page, served, "explore?run=one")
    page.wait_for_selector(".tab-card .chart svg path")
    ticks = (
        "[...document.querySelectorAll('.tab-card .chart svg text[text-anchor=%s]')].map(t => t.textContent).join(' ')"
    )
    across, up = page.evaluate(ticks % "middle"), page.evaluate(ticks % "end")
    box = page.locator(".tab-card .chart svg").first.bounding_box()
    page.mouse.move(box["x"] + 200, box["y"] + 120)
    page.mouse.down()
    page.mouse.move(box["x"] + 320, box["y"] + 126, steps=4)
    page.mouse.up()
    assert page.evaluate(ticks % "middle") != across and page.evaluate(ticks % "end") == up
    page.get_by_role("button", name="whole").first.click()
    assert page.evaluate(ticks % "middle") == across


def test_no_panel_shows_another_runs_numbers(page, served, tiny_campaign):
    """A run that is half measured, and a slow answer that comes after a quick one: neither leaves strange figures."""
    measured(tiny_campaign, "one")
    measured(tiny_campaign, "two", device_tilt_deg=0.5)
    half = run_folder(tiny_campaign, "half").path
    half.mkdir()
    (half / "journal.sqlite").write_bytes(b"")
    page.route(
        "**/api/overview",
        lambda route: (time.sleep(0.6 if '"one"' in route.request.post_data else 0.0), route.continue_()),
    )
    enter(page, served, "explore?run=two")
    page.wait_for_selector("table.figures tbody tr")
    page.locator("details.drawer > summary").click()  # closed where the address names a run
    page.locator("button[data-run=one]").click()
    page.locator("button[data-run=two]").click()
    page.wait_for_selector(".figures-panel .subject:has-text('run two')")
    time.sleep(1.0)
    named = page.eval_on_selector_all(
        ".opened .subject, .figures-panel .subject, .tab-card .subject", "all => all.map(s => s.textContent)"
    )
    assert named and all("run two" in text for text in named), named
    page.locator("button[data-run=half]").click()
    until(page, "document.querySelector('.opened .faults').textContent.includes('holds no record')")
    assert page.locator("table.figures").count() == 0 and page.locator(".tab-card").count() == 0
    assert "run half" in page.inner_text(".opened .subject")


@pytest.mark.parametrize("width", [320, 1280, 3840])
def test_stop_never_leaves_the_window(page, served, width, request):
    """With a dialog open and at any width, STOP lies inside the window, on top, and is heard."""
    if width > 320 and not request.config.getoption("--nightly"):
        pytest.skip("the narrowest is looked at by default; the others are nightly")
    page.set_viewport_size({"width": width, "height": 700})
    enter(page, served, "scan")
    page.get_by_role("button", name="take motion lease").click()
    page.get_by_role("button", name="start or go on").click()
    page.wait_for_selector("[role=dialog]")
    assert "on disk" in page.inner_text("[role=dialog]") and "nothing yet" in page.inner_text("[role=dialog]")
    box = page.locator("button.stop").bounding_box()
    assert box["x"] >= 0 and box["x"] + box["width"] <= width and box["y"] + box["height"] <= 700
    on_top = "([x, y]) => document.elementFromPoint(x, y).closest('button')?.className.includes('stop') ?? false"
    assert page.evaluate(on_top, [box["x"] + box["width"] / 2, box["y"] + box["height"] / 2])
    with page.expect_response("**/api/stop") as heard:
        page.locator("button.stop").click()
    assert heard.value.status == 200


def test_a_finished_runs_name_is_not_gone_on_with(page, served, tiny_campaign):
    measured(tiny_campaign, "first")
    enter(page, served, "scan")
    page.get_by_role("button", name="take motion lease").click()
    page.get_by_role("button", name="start or go on").click()
    page.wait_for_selector("text=run first is complete")
    assert page.get_by_label("Everyone is clear").is_disabled()
    page.get_by_role("button", name="take the name first-2").click()
    until(page, "(document.querySelector('[role=dialog] table')?.innerText ?? '').includes('first-2')")
    assert not page.get_by_label("Everyone is clear").is_disabled()


def test_a_start_in_spite_of_a_failed_check_takes_a_second_tick(page, served, tiny_campaign, nightly):
    keep_check(tiny_campaign, "any", ["axis roll: held, but reads as free after a hold"], None)
    enter(page, served, "scan")
    page.get_by_role("button", name="take motion lease").click()
    page.get_by_role("button", name="start or go on").click()
    page.wait_for_selector("text=did not pass: axis roll: held, but reads as free")
    start = page.get_by_role("button", name="start", exact=True)
    page.get_by_label("Everyone is clear").check()
    assert start.is_disabled()
    page.get_by_label("Start in spite of it").check()
    assert not start.is_disabled()


def test_a_server_that_is_gone_is_said_loudly(browser, tiny_campaign):
    room = serving([tiny_campaign])
    served = next(room)
    context = browser.new_context()
    page = context.new_page()
    uncaught: list[str] = []
    page.on("pageerror", lambda e: uncaught.append(str(e)))
    enter(page, served, "scan")
    until(page, "document.querySelector('.bar-told')?.textContent.includes('no scan') ?? false")
    next(room, None)  # the server ends here
    until(page, "document.querySelector('.alarm').textContent.includes('HAS NOT ANSWERED')", seconds=15.0)
    page.locator("button.stop").click()
    until(page, "document.querySelector('.alarm').textContent.includes('STOP WAS NOT HEARD')", seconds=15.0)
    context.close()
    assert not uncaught, uncaught


def azimuth_by_hand(page, served, readout_deg):
    """Take the lease on the page `align`, read the axes, and send the azimuth axis to a readout."""
    enter(page, served, "align")
    page.get_by_role("button", name="take motion lease").click()
    page.get_by_role("button", name="where are the axes?").click()
    page.wait_for_selector("table.axes tbody tr")
    page.get_by_label("the axes are free to move").check()
    page.get_by_label("azimuth: go to this readout").fill(f"{readout_deg:g}")
    page.locator("tr:has-text('azimuth') button:has-text('go')").click()
    until(page, f"(document.querySelector('table.axes')?.innerText ?? '').includes('{readout_deg:.3f}')", seconds=60.0)


def test_axes_by_hand(page, served, request):
    """Where the axes are, a jog within limits, one beyond them refused in words, one sweep."""
    if not request.config.getoption("--nightly"):
        pytest.skip("nightly")
    azimuth_by_hand(page, served, 5.0)
    page.get_by_label("azimuth: go to this readout").fill("500")
    page.locator("tr:has-text('azimuth') button:has-text('go')").click()
    page.wait_for_selector(".step .faults:has-text('500')")
    page.get_by_role("button", name="take one sweep").click()
    page.wait_for_selector(".step .chart svg", timeout=30_000)


@pytest.fixture
def shop(campaign_folder, browser):
    """A control room as its own process, as `colure serve` starts it: it can be killed."""
    few = ("points = 11", "points = 1\nregion_deg = 90"), ("stop_ghz = 24.25", "stop_ghz = 24.0")
    edited(campaign_folder, "goal.toml", *few)
    # The demo's limits are for another band.
    (campaign_folder / "limits.toml").unlink()
    started = []

    def start():
        words = [sys.executable, "-m", "colure", "serve", str(campaign_folder), "--port", "0"]
        process = subprocess.Popen(words, stdout=subprocess.PIPE, text=True)
        started.append(process)
        link = ""
        while not link:
            link = (re.search(r"http://\S+", process.stdout.readline()) or [""])[0]
        return process, link

    yield start
    for process in started:
        process.terminate()
        process.wait(timeout=30)
        process.stdout.close()


def test_a_whole_story(nightly, shop, browser, campaign_folder):
    """Plan, rehearse, start, watch, close and reopen, pause, resume, kill the server, go on, explore, report."""
    process, link = shop()
    trouble: list[str] = []

    def opened(link):
        context = browser.new_context(viewport={"width": 1280, "height": 800})
        page = context.new_page()
        page.set_default_timeout(60_000)
        page.on("pageerror", lambda e: trouble.append(str(e)))
        page.goto(link)
        page.wait_for_selector(".verdict")
        return context, page

    context, page = opened(link)
    page.get_by_role("button", name="rehearse").click()
    page.wait_for_selector("text=of all stated intervals hold the truth")
    base = link.split("/launch")[0]
    page.goto(base + "/#align")
    page.wait_for_selector("text=Flip test")
    page.goto(base + "/#scan")
    begin_scan(page)
    until(page, "parseFloat(document.querySelector('.big').textContent) > 4", seconds=60.0)
    page.get_by_role("button", name="pause").click()
    page.wait_for_selector("main .large:has-text('paused')")
    cookies = context.cookies()
    context.close()
    # The browser is gone; a new window with the same cookie finds the scan as it is.
    context = browser.new_context()
    context.add_cookies(cookies)
    page = context.new_page()
    page.set_default_timeout(60_000)
    page.goto(base + "/#scan")
    page.wait_for_selector("main .large:has-text('paused')")
    page.get_by_role("button", name="resume").click()
    page.wait_for_selector("main .large:has-text('running')")
    before = page.inner_text(".big")
    until(page, "old => document.querySelector('.big').textContent !== old", arg=before)
    workers = [
        child.pid for child in psutil.Process(process.pid).children() if "spawn_main" in " ".join(child.cmdline())
    ]
    assert len(workers) == 3
    process.send_signal(signal.SIGKILL)
    process.wait(timeout=10)
    context.close()
    journal = campaign_folder / "runs" / "first" / "journal.sqlite"
    wait_until_free(journal)
    assert not any(psutil.pid_exists(pid) and psutil.Process(pid).status() != psutil.STATUS_ZOMBIE for pid in workers)
    process, link = shop()
    context, page = opened(link)
    base = link.split("/launch")[0]
    page.goto(base + "/#scan")
    begin_scan(page)
    page.wait_for_selector("main .large:has-text('done')", timeout=120_000)
    page.goto(base + "/#explore")
    page.wait_for_selector("table.figures tbody tr")
    page.get_by_role("tab", name="Report").click()
    page.get_by_role("button", name="write the report").click()
    page.wait_for_selector("text=open the report (pdf)", timeout=120_000)
    with context.expect_page() as event:
        page.get_by_role("link", name="open the report (html)").click()
    report = event.value
    report.wait_for_load_state()
    assert "Invented demo" in report.inner_text("body") or "invented" in report.inner_text("body").lower()
    context.close()
    assert (campaign_folder / "runs" / "first" / "report.pdf").read_bytes().startswith(b"%PDF")
    assert services.verify(run_folder(campaign_folder, "first")).whole
    assert not trouble, trouble


def begin_scan(page):
    """Take the lease, read the cautions and start."""
    page.get_by_role("button", name="take motion lease").click()
    page.get_by_text("you may move the axes").wait_for()
    page.get_by_role("button", name="start or go on").click()
    page.get_by_label("Everyone is clear").check()
    page.get_by_role("button", name="start", exact=True).click()


def wait_until_free(journal):
    """The scan's own process hears that the room is gone, brakes and lets the journal go."""
    pid_file = journal.with_name(journal.name + ".lock.pid")
    for _ in range(300):
        pid = int(pid_file.read_text() or 0) if pid_file.exists() else 0
        if not pid or not alive(pid):
            return
        time.sleep(0.1)
    raise AssertionError("the scan's process outlived its room")


def alive(pid: int) -> bool:
    try:
        os.kill(pid, 0)
    except OSError:
        return False
    return Path(f"/proc/{pid}/stat").read_text("utf-8").split()[2] != "Z"


def test_twenty_watch_and_the_picture_is_the_same_for_all(tiny_campaign):
    from websockets.sync.client import connect

    for served in serving([tiny_campaign]):
        scan = LiveScan("c", "first", layout_for(tiny_campaign))
        served.room.scan = scan
        points = np.flatnonzero(scan.layout.cell >= 0)[:40]
        url, pictures = f"ws://127.0.0.1:{served.port}/api/live", set()
        with ExitStack() as stack:
            cookies = [served.headers(SessionRole.VIEW)["Cookie"] for _ in range(20)]
            sockets = [
                stack.enter_context(connect(url, additional_headers={"Cookie": c}, origin=served.base)) for c in cookies
            ]
            for i in points:
                scan.hear({"kind": "point", "row": [int(i), 0, 1.0, [0.0, 0.0, 0.0], [0.1, 0.0], 0]})
            cells = int(np.isfinite(np.frombuffer(scan.frame(), "<f4")).sum())
            for one in sockets:
                pictures.add(newest(one, cells))
        assert len(pictures) == 1 and len(next(iter(pictures))) == 4 * scan.layout.shape[0] * scan.layout.shape[1]


def newest(socket, cells: int) -> bytes:
    """Take pictures until one shows so many cells."""
    for _ in range(40):
        got = socket.recv(timeout=10)
        if isinstance(got, bytes):
            socket.send("taken")
            if np.isfinite(np.frombuffer(got, "<f4")).sum() == cells:
                return got
    raise AssertionError("the whole picture never came")


def test_back_leads_to_the_view_before(page, served, tiny_campaign):
    """The way back, and a link to another view of the run that is open already."""
    measured(tiny_campaign, "one")
    enter(page, served, "explore?run=one")
    page.wait_for_selector(".tab-card .chart svg path")
    page.get_by_role("tab", name="Recipe").click()
    page.wait_for_selector(".steps-list")
    page.go_back()
    page.wait_for_selector("[role=tab][aria-selected=true]:has-text('Cuts')")
    page.wait_for_selector(".tab-card .chart svg path")
    page.goto(f"{served.base}/#explore?run=one&tab=recipe&plane=90")
    page.wait_for_selector(".steps-list")
    page.get_by_role("tab", name="Cuts").click()
    until(page, "location.hash.includes('plane=90')")
