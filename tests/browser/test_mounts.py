"""Mounts that are described by their joints, in the scene: every body moves with its own joints, on every page."""

from __future__ import annotations

import time

import pytest

from colure.app.web.room import campaign_id
from colure.app.web.scan.layout import layout_for
from colure.app.web.scan.live import LiveScan
from tests.browser.conftest import serving
from tests.browser.test_pages import enter, until
from tests.coverage.scenarios import HORN_2_4_GHZ, Scenario, band, mounted, sized
from tests.mounts import SOLIDS_OF_SIX, six_axes, solid, swinging_arm

#: An arch of capsules over the turntable, 1.25 m about it; the probe runs along it.
ARCH = "".join(
    solid(f"arch{i}", "room", f"[{x0}, 0, {z0}]", to_mm=f"[{x1}, 0, {z1}]", capsule_mm="40",
          may_touch=str([f"arch{j}" for j in range(6)]).replace("'", '"'))
    for i, (x0, z0, x1, z1) in enumerate([(-1250, -50, -1080, 625), (-1080, 625, -625, 1080), (-625, 1080, 0, 1250),
                                          (0, 1250, 625, 1080), (625, 1080, 1080, 625), (1080, 625, 1250, -50)])
)  # fmt: skip
#: Joints, range, ports and solids of every mount; what sweeps and what steps in the tutor.
MOUNTS = {
    "arm": (swinging_arm(800), 0.8, 1, "", "Joint arm sweeps", "Joint turntable steps"),
    "arch": (swinging_arm(1000, arm="[-100, 100]", roll=False), 1.0, 2, ARCH, "Joint arm sweeps", "Joint turntable steps"),
    "six": (six_axes(1100), 1.1, 1, SOLIDS_OF_SIX, "sweep together", "Joint turntable steps"),
}  # fmt: skip
#: Where a name in the scene stands, pixels; null where it is hidden.
LABELS = """Object.fromEntries([...document.querySelectorAll('.labels span')].filter(s => !s.hidden && s.style.transform)
    .map(s => [s.textContent, s.style.transform.match(/-?[\\d.]+/g).slice(0, 2).map(Number)]))"""


def folder(tmp_path, name):
    """A dipole on a mount, over the front half, in coarse steps."""
    joints, range_m, ports, solids, *_ = MOUNTS[name]
    made = Scenario(
        device=sized(60.0, 6.0, 6.0, 2.1, offset_mm=[20.0, 0.0, 0.0]),
        goal=band(2.45, wanted_level_db=-30, region_deg=80.0),
        chamber=mounted(joints, range_length_m=range_m, reference=HORN_2_4_GHZ, ports=ports),
        twin={"device": {"kind": "dipole", "axis": "x"}},
    ).write(tmp_path / name)
    with (made / "chamber.toml").open("a", encoding="utf-8") as out:
        out.write("\n" + solids)
    return made


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
def room(browser, tmp_path, request):
    """A page of a room over one mount, with what it complained about."""
    made, trouble = folder(tmp_path, request.param), []
    for served in serving([made]):
        context = browser.new_context(viewport={"width": 1280, "height": 800}, reduced_motion="reduce")
        page = context.new_page()
        page.set_default_timeout(40_000)
        page.on("pageerror", lambda e: trouble.append(str(e)))
        yield page, served, made, request.param
        context.close()
    assert not trouble, trouble


@pytest.mark.parametrize("room", ["arm"], indirect=True)
def test_a_move_by_hand_and_a_scan_move_the_right_body(room):
    page, served, made, _ = room
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


@pytest.mark.parametrize("room", ["arm", "arch", "six"], indirect=True)
def test_slices_are_played_as_the_joints_go(room, request):
    page, served, _, name = room
    if name != "arm" and not request.config.getoption("--nightly"):
        pytest.skip("one mount by default; the others are nightly")
    *_, swept, stepped = MOUNTS[name]
    enter(page, served, "learn")
    page.wait_for_selector("text=slices of the plan are played")
    said = page.inner_text(".learn-page")
    assert swept in said and stepped in said and "great circle through boresight" in said
    assert "not drawn" not in page.inner_text("main") and "720" not in said
    places = []
    for share in ("30", "120", "500"):
        page.get_by_label("through the slices").fill(share)
        places.append(stand(page))
    assert went(places[0], places[1], "probe") > 5 and went(places[0], places[1], "x") < 2, (
        "a sweep moves the probe alone"
    )
    assert went(places[1], places[2], "x") > 5, "a step turns the device"
    dial = page.inner_text(".dial")
    if name == "arch":
        assert "No joint of this mount turns the probe alone" in said
    else:
        page.get_by_label("probe", exact=True).select_option("following")
        until(page, "document.querySelector('.dial').innerText.includes('takes in 100 %')")
        assert "takes in 100 %" not in dial
    # By hand: the mount goes there; what it cannot reach is said, and nothing is drawn for it.
    page.get_by_label("theta in degrees").fill("30")
    page.get_by_label("phi in degrees").fill("50")
    until(page, "document.querySelector('.learn-page').innerText.includes('joint of this mount')")
    turn = page.locator("tr:has-text('turntable') td").last.inner_text()
    assert turn.startswith(("50.0", "230.0")), turn
    # Another positioner stands in its own place again.
    page.get_by_label("positioner").select_option("azimuth-over-elevation")
    page.wait_for_selector("text=Not this campaign's positioner")
    assert "turntable" not in page.evaluate(LABELS)
