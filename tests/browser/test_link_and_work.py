"""The live link and long work in a real browser: a server that falls silent, comes again or begins anew; work that survives a reload."""

from __future__ import annotations

import os
import signal
import subprocess
import sys
import time

import numpy as np
import pytest

from colure.app.web import jobs as jobs_module
from colure.app.web.guard.roles import SessionRole
from colure.app.web.room import campaign_id
from colure.app.web.scan.layout import layout_for
from colure.app.web.scan.live import LiveScan
from tests.browser.conftest import CHROMIUM
from tests.browser.test_pages import enter, measured, until

pytestmark = [
    pytest.mark.nightly,
    pytest.mark.usefixtures("nightly"),
    pytest.mark.skipif(CHROMIUM is None, reason="no Chromium is installed: nothing can be looked at"),
]


def scan_with(folder, points=30, words=()):
    """A scan that has measured so many points."""
    scan = LiveScan(campaign_id(folder), "first", layout_for(folder))
    scan.hear({"kind": "state", "state": "running", "text": "running"})
    for index in np.flatnonzero(scan.layout.cell >= 0)[:points]:
        scan.hear({"kind": "point", "row": [int(index), 0, 1.0, [0.0, 0.0, 0.0], [0.1, 0.02], 0]})
    for text in words:
        scan.hear({"kind": "warning", "text": text})
    return scan


def drawn(scan) -> int:
    """How many directions of a scan have a level: the cells at a pole are one direction."""
    cells = np.isfinite(np.frombuffer(scan.frame(), "<f4"))
    return len(np.unique(np.round(scan.layout.directions[cells], 4) + 0.0, axis=0))


def watched(browser, uncaught):
    context = browser.new_context(viewport={"width": 1280, "height": 800})
    page = context.new_page()
    page.set_default_timeout(60_000)
    page.on("pageerror", lambda error: uncaught.append(str(error)))
    page.on("console", lambda m: uncaught.append(m.text) if "Uncaught" in m.text else None)
    return context, page


def test_a_server_that_holds_its_line_and_says_nothing_is_gone(browser, tiny_campaign):
    """A stopped process keeps its sockets open: only silence tells. It goes on, and so does the page, with all its events."""
    words = [sys.executable, "-m", "colure", "serve", str(tiny_campaign), "--port", "0"]
    process = subprocess.Popen(words, stdout=subprocess.PIPE, text=True)
    uncaught: list[str] = []
    context, page = watched(browser, uncaught)
    try:
        link = ""
        while "http" not in link:
            link = process.stdout.readline()
        page.goto(link[link.index("http") :].strip())
        page.wait_for_selector("nav")
        until(page, "document.querySelector('.bar-told')?.textContent.includes('no scan') ?? false")
        page.wait_for_timeout(3000)
        os.kill(process.pid, signal.SIGSTOP)
        until(page, "document.querySelector('.alarm').textContent.includes('HAS NOT ANSWERED')", seconds=20.0)
        # Every page and panel meets the silence without an error that nobody caught.
        for name in ("align", "explore", "learn", "scan"):
            page.evaluate("name => { location.hash = '#' + name; }", name)
            page.wait_for_timeout(300)
        os.kill(process.pid, signal.SIGCONT)
        until(page, "document.querySelector('.alarm').textContent === ''", seconds=30.0)
        assert "not connected" not in page.inner_text("header.top")
    finally:
        os.kill(process.pid, signal.SIGCONT)
        process.terminate()
        process.wait(timeout=30)
        process.stdout.close()
        context.close()
    assert not uncaught, uncaught


def test_a_link_that_broke_comes_back_with_the_events_and_the_picture(browser, served, tiny_campaign):
    uncaught: list[str] = []
    context, page = watched(browser, uncaught)
    served.room.scan = scan_with(tiny_campaign, words=("the first word",))
    page.add_init_script(
        "const Real = WebSocket; window.lines = [];"
        "window.WebSocket = class extends Real { constructor(...all) { super(...all); window.lines.push(this); } };"
    )
    enter(page, served, "scan")
    page.wait_for_selector("text=the first word")
    until(page, f"document.querySelector('.stage-caption').textContent.includes('{drawn(served.room.scan)} of')")
    page.evaluate("window.lines.at(-1).close()")
    served.room.scan.hear({"kind": "warning", "text": "said while nobody listened"})
    index = int(np.flatnonzero(served.room.scan.layout.cell >= 0)[40])
    served.room.scan.hear({"kind": "point", "row": [index, 0, 1.0, [0.0, 0.0, 0.0], [0.1, 0.02], 0]})
    page.wait_for_selector("text=said while nobody listened")
    page.wait_for_selector("text=the first word")
    until(page, f"document.querySelector('.stage-caption').textContent.includes('{drawn(served.room.scan)} of')")
    assert page.evaluate("window.lines.length") >= 2
    context.close()
    assert not uncaught, uncaught


def test_a_server_that_began_anew_leaves_no_former_scan_on_the_page(browser, served, tiny_campaign):
    uncaught: list[str] = []
    context, page = watched(browser, uncaught)
    served.room.scan = scan_with(tiny_campaign)
    enter(page, served, "scan")
    until(page, "document.querySelector('.stage-caption').textContent.startsWith('Run first: ')")
    served.room.scan = None
    until(page, "document.querySelector('.stage-caption').textContent.startsWith('Planned:')")
    text = page.inner_text("main")
    assert "run first" not in text and "undefined" not in text
    assert page.locator("[aria-label='Measured so far'] canvas").count() == 0
    context.close()
    assert not uncaught, uncaught


def slow(folder, run, state):
    """Work of a few seconds, in the worker for long work."""
    time.sleep(4.0)
    return ["report.html"]


@pytest.fixture
def slow_reports(monkeypatch):
    """Reports that take 4 s and write nothing: what is tested is the waiting."""
    from colure.app.web.views import explore

    monkeypatch.setattr(explore, "reported", slow)


def test_work_survives_a_reload_is_told_and_given_up(browser, served, tiny_campaign, slow_reports):
    measured(tiny_campaign, "one")
    uncaught: list[str] = []
    context, page = watched(browser, uncaught)
    context.grant_permissions(["notifications"], origin=served.base)
    page.add_init_script(
        "window.notes = []; class Note { static permission = 'granted'; constructor(title, more) "
        "{ window.notes.push(more.body); } } window.Notification = Note;"
    )
    enter(page, served, "explore?run=one&tab=report")
    page.get_by_role("button", name="write the report").click()
    page.wait_for_selector(".jobs summary:has-text('work: 1')")
    page.reload()
    # Who comes back finds the work, and hears of its end although this page did not begin it; it looks elsewhere meanwhile.
    page.wait_for_selector(".jobs summary:has-text('work: 1')")
    page.evaluate(
        "Object.defineProperty(document, 'hidden', { get: () => window.away ?? true, configurable: true }); document.hidden"
    )
    until(page, "document.title.startsWith('(1) report of run one: done')", seconds=30.0)
    assert page.evaluate("window.notes") == ["report of run one: done"]
    assert "report of run one: done" in page.inner_text("header.top")
    page.evaluate("window.away = false; document.dispatchEvent(new Event('visibilitychange'))")
    assert page.title() == "Colure: Explore"
    # Another one is given up while it is at work, and the page goes on.
    page.get_by_role("tab", name="Report").click()
    page.get_by_role("button", name="write the report").click()
    page.wait_for_selector(".jobs summary:has-text('work: 1')")
    page.locator(".jobs summary").click()
    page.locator(".job-list").get_by_role("button", name="give up").click()
    page.wait_for_selector(".job-list :text('given up')")
    until(page, "document.querySelector('.jobs summary').textContent === 'work'")
    context.close()
    assert not uncaught, uncaught


def test_a_view_does_not_wait_behind_long_work_and_who_watches_starts_none(
    browser, served, tiny_campaign, slow_reports
):
    """Another session opens a run while a report is written; a session that may view has no way to start one."""
    measured(tiny_campaign, "one")
    uncaught: list[str] = []
    context, page = watched(browser, uncaught)
    enter(page, served, "explore?run=one")
    page.wait_for_selector(".tab-card .chart svg path")
    other, watcher = watched(browser, uncaught)
    enter(watcher, served, "explore?run=one&tab=report", SessionRole.VIEW)
    watcher.wait_for_selector(".tab-card")
    assert watcher.get_by_role("button", name="write the report").is_disabled()
    status = watcher.evaluate(
        "async ([campaign]) => { const me = await (await fetch('/api/me')).json(); const r = await fetch('/api/report', "
        "{ method: 'POST', headers: { 'Content-Type': 'application/json', 'X-Colure-Token': me.token }, "
        "body: JSON.stringify({ campaign, run: 'one' }) }); return r.status; }",
        [campaign_id(tiny_campaign)],
    )
    assert status == 403
    page.get_by_role("tab", name="Report").click()
    page.get_by_role("button", name="write the report").click()
    page.wait_for_selector(".jobs summary:has-text('work: 1')")
    watcher.get_by_role("tab", name="Map").click()
    watcher.wait_for_selector(".tab-card canvas")
    states = [job.state for job in served.room.jobs.all()]
    assert states == ["at work"], states
    other.close()
    context.close()
    assert not uncaught, uncaught
    assert jobs_module.MOST_JOBS >= 2
