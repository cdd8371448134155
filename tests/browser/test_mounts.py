"""A mount that is described by its joints, in the scene: every body moves with its own joints."""

from __future__ import annotations

import time

import pytest

from colure.app.web.room import campaign_id
from colure.app.web.scan.layout import layout_for
from colure.app.web.scan.live import LiveScan
from tests.browser.conftest import serving
from tests.browser.test_pages import enter, until
from tests.coverage.scenarios import HORN_2_4_GHZ, Scenario, band, mounted, sized
from tests.mounts import swinging_arm

#: Where a name in the scene stands, pixels; null where it is hidden.
LABELS = """Object.fromEntries([...document.querySelectorAll('.labels span')].filter(s => !s.hidden && s.style.transform)
    .map(s => [s.textContent, s.style.transform.match(/-?[\\d.]+/g).slice(0, 2).map(Number)]))"""


def folder(tmp_path):
    """A dipole on a swinging arm over a turntable, over the front half, in coarse steps."""
    return Scenario(
        device=sized(60.0, 6.0, 6.0, 2.1, offset_mm=[20.0, 0.0, 0.0]),
        goal=band(2.45, wanted_level_db=-30, region_deg=80.0),
        chamber=mounted(swinging_arm(800), range_length_m=0.8, reference=HORN_2_4_GHZ),
        twin={"device": {"kind": "dipole", "axis": "x"}},
    ).write(tmp_path / "arm")


def stand(page):
    """Names in the scene once nothing moves any more."""
    before = None
    for _ in range(60):
        time.sleep(0.15)
        now = page.evaluate(LABELS)
        if now == before and now:
            return now
        before = now
    raise AssertionError("the scene does not come to rest")


def went(before, after, name):
    """How far a name went, pixels."""
    return max(abs(a - b) for a, b in zip(before[name], after[name], strict=True))


@pytest.fixture
def room(browser, tmp_path):
    """A page of a room over one mount, with what it complained about."""
    made, trouble = folder(tmp_path), []
    for served in serving([made]):
        context = browser.new_context(viewport={"width": 1280, "height": 800}, reduced_motion="reduce")
        page = context.new_page()
        page.set_default_timeout(90_000)
        page.on("pageerror", lambda e: trouble.append(str(e)))
        yield page, served, made
        context.close()
    assert not trouble, trouble


def test_a_move_by_hand_and_a_scan_move_the_right_body(room):
    page, served, made = room
    enter(page, served, "align")
    page.wait_for_selector(".labels span:has-text('rotary')", state="attached")
    assert "not drawn" not in page.inner_text("main")
    page.get_by_role("button", name="take motion lease").click()
    page.get_by_role("button", name="where are the axes?").click()
    page.wait_for_selector("table.axes tbody tr")
    page.get_by_label("the axes are free to move").check()
    before = stand(page)
    for joint, moves, rests in (("arm", "probe", "x"), ("turntable", "x", "probe")):
        page.get_by_label(f"{joint}: go to this readout").fill("40")
        page.locator(f"tr:has-text('{joint}') button:has-text('go')").click()
        until(page, "(t => t.includes('40.0') || t.includes('39.9'))(document.querySelector(`table.axes tr:has([aria-label^='"
              + joint + "'])`)?.children[1].textContent ?? '')", seconds=60.0)  # fmt: skip
        after = stand(page)
        assert went(before, after, moves) > 20 and went(before, after, rests) < 2, (joint, before, after)
        before = after
    # What a scan reads moves them in the same way, and the tutor begins where its own slices begin.
    scan = LiveScan(campaign_id(made), "first", layout_for(made))
    served.room.scan = scan
    scan.hear({"row": [0, 0, 0.0, [40.0, -60.0, 0.0], [1.0, 0.0], 0]})
    page.goto(f"{served.base}/#scan")
    page.wait_for_selector("text=What happened")
    until(page, "document.querySelector('.big') !== null")
    one = stand(page)
    scan.hear({"row": [1, 0, 1.0, [40.0, 60.0, 0.0], [1.0, 0.0], 0]})
    deadline = time.monotonic() + 20
    while went(one, stand(page), "probe") < 20:
        assert time.monotonic() < deadline, "the scan's positions do not move the probe"
    two = stand(page)
    assert went(one, two, "x") < 2
    served.room.scan = None
