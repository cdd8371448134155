"""Mounts that are described by their joints, in the scene: every body moves with its own joints, on every page."""

from __future__ import annotations

import time
from typing import NamedTuple

import pytest

from colure.app.web.room import campaign_id
from colure.app.web.scan.layout import layout_for
from colure.app.web.scan.live import LiveScan
from colure.model.campaign import Campaign
from tests.browser.conftest import serving
from tests.browser.test_pages import enter, until
from tests.coverage.scenarios import HORN_2_4_GHZ, Scenario, band, mounted, sized
from tests.mounts import SOLIDS_OF_SIX, six_axes, solid, swinging_arm, telescope

#: The page without a browser (web/src/align, web/src/tutor) and the server's part are tested in every run.
pytestmark = [pytest.mark.nightly, pytest.mark.usefixtures("nightly")]
#: An arch of capsules over the turntable, 1.25 m about it; the probe runs along it.
ARCH = "".join(
    solid(f"arch{i}", "room", f"[{x0}, 0, {z0}]", to_mm=f"[{x1}, 0, {z1}]", capsule_mm="40",
          may_touch=str([f"arch{j}" for j in range(6)]).replace("'", '"'))
    for i, (x0, z0, x1, z1) in enumerate([(-1250, -50, -1080, 625), (-1080, 625, -625, 1080), (-625, 1080, 0, 1250),
                                          (0, 1250, 625, 1080), (625, 1080, 1080, 625), (1080, 625, 1250, -50)])
)  # fmt: skip


class Swings(NamedTuple):
    """A mount, and what the tutor must say of it."""

    joints: str
    range_m: float
    sweeps: str
    solids: str = ""
    ports: int = 1
    region_deg: float = 80.0


MOUNTS = {
    "arm": Swings(swinging_arm(800), 0.8, "Joint arm sweeps"),
    "arch": Swings(swinging_arm(1000, arm="[-120, 120]", roll=False), 1.0, "Joint arm sweeps", ARCH, ports=2),
    "six axes": Swings(six_axes(600), 0.6, "sweep together", SOLIDS_OF_SIX, region_deg=40.0),
    "telescope": Swings(telescope(800), 0.8, "Joints arm, telescope and tilt sweep together"),
}
#: Where a name in the scene stands, pixels; null where it is hidden.
LABELS = """Object.fromEntries([...document.querySelectorAll('.labels span')].filter(s => !s.hidden && s.style.transform)
    .map(s => [s.textContent, s.style.transform.match(/-?[\\d.]+/g).slice(0, 2).map(Number)]))"""


def folder(tmp_path, name):
    """A dipole on a mount, over the front, in coarse steps."""
    it = MOUNTS[name]
    made = Scenario(
        device=sized(60.0, 6.0, 6.0, 2.1, offset_mm=[20.0, 0.0, 0.0]),
        goal=band(2.45, wanted_level_db=-30, region_deg=it.region_deg, scheme="auto"),
        chamber=mounted(it.joints, range_length_m=it.range_m, reference=HORN_2_4_GHZ, ports=it.ports),
        twin={"device": {"kind": "dipole", "axis": "x"}},
    ).write(tmp_path / name.replace(" ", "-"))
    with (made / "chamber.toml").open("a", encoding="utf-8") as out:
        out.write("\n" + it.solids)
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
    name = getattr(request, "param", "arm")
    made, trouble = folder(tmp_path, name), []
    for served in serving([made]):
        context = browser.new_context(viewport={"width": 1280, "height": 800}, reduced_motion="reduce")
        page = context.new_page()
        page.set_default_timeout(90_000)
        page.on("pageerror", lambda e: trouble.append(str(e)))
        yield page, served, made, name
        context.close()
    assert not trouble, trouble


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
    # The picture from above stands as the joints were told, and what was read becomes their home.
    above = page.locator(".range-picture").get_attribute("aria-label")
    assert "arm 40.0 deg" in above or "arm 39.9 deg" in above
    page.get_by_role("button", name="make this home").click()
    page.locator("[role=dialog]").get_by_role("button", name="make this home").click()
    page.wait_for_selector("[role=dialog]", state="detached")
    homes = {one.name: one.home_deg for one in Campaign.load(made).chamber.positioner.joints}
    assert homes["arm"] == pytest.approx(40.0, abs=0.1) and homes["turntable"] == pytest.approx(40.0, abs=0.1)
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


@pytest.mark.parametrize("room", list(MOUNTS), indirect=True)
def test_slices_are_played_as_the_joints_go(room):
    """The play grows great circles of the directions that the joints really look in; limits are said and held."""
    page, served, made, name = room
    enter(page, served, "learn")
    page.wait_for_selector("text=slices of the plan are played")
    said = page.inner_text(".learn-page")
    for joint in Campaign.load(made).chamber.positioner.joints:
        unit = joint.unit
        assert f"{joint.name} {joint.min_deg:g} to {joint.max_deg:g} {unit}" in said
    assert MOUNTS[name].sweeps in said and "Joint turntable steps" in said and "great circle through boresight" in said
    # The region ends before -z: the slices do not meet there, and nothing on the page says that they do.
    assert "do not come to -z" in said and "and at -z" not in said
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
    until(page, "/^(50|230)[.]0/.test([...document.querySelectorAll('.learn-page tr')]"
          ".find(r => r.innerText.startsWith('turntable'))?.lastElementChild.innerText ?? '')")  # fmt: skip
    assert "do not come to -z" in page.inner_text(".learn-page") and "-z too" not in page.inner_text(".learn-page")
    # Another positioner stands in its own place again.
    page.get_by_label("positioner", exact=True).select_option("azimuth-over-elevation")
    page.wait_for_selector("text=Not this campaign's positioner")
    assert "turntable" not in page.evaluate(LABELS)
